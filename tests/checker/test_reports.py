"""Reports: nothing that a member writes gets out of its place, and everything that counts is said."""

import re
import tomllib
from datetime import date
from fractions import Fraction
from html.parser import HTMLParser

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from checker.course import PATHS, ROOT, load_exercise
from checker.likeness import Alike, AlikeExercise, Side
from checker.marksheet import member_marks
from checker.report import write_reports
from checker.report.names import report_names
from checker.report.pages import written_out
from checker.report.summary import Summary
from checker.store import Override
from checker.verdict import KINDS, Finding, Part, Verdict
from tests.checker import made, sample

DAY = date(2031, 5, 4)
STYLE = (ROOT / "checker/report/report.css").read_text("utf-8")


# File names


@given(
    st.lists(
        made.any_text
        | st.sampled_from(
            [
                "Ann",
                "ann",
                "ANN",
                "Änn",
                "../../etc/passwd",
                "CON",
                "nul",
                ".",
                "",
                "a" * 300,
                "a" * 299 + "b",
                "Καλλιόπη",
                "李",
                "ann-0123456789ab",
                "C:\\x",
                "~",
                "-",
            ]
        )
    )
)
def test_file_names_are_safe_and_no_two_alike_on_any_file_system(names):
    files = report_names(names)
    assert len(files) == len(names) == len(set(files))
    for file in files:
        assert re.fullmatch(r"[a-z0-9]+(-[a-z0-9]+)*", file) and len(file) < 100
        assert file not in {"con", "prn", "aux", "nul", "com1", "lpt9"}


def test_file_names_read_as_the_names_do():
    assert report_names(["Isla Marrow", "Ágnes Ørsted", "jasper_thrift"]) == ["isla-marrow", "agnes-rsted", "jasper-thrift"]
    alone, *_ = report_names(["Dot Bittern"])
    first, second = report_names(["Dot Bittern", "DOT BITTERN"])
    assert alone == "dot-bittern" and first != second and first.startswith("dot-bittern-")


def test_a_name_chosen_to_look_like_another_s_file_name_gets_one_of_its_own():
    files = report_names(["Ann", "ann"])
    assert len(set(report_names(["Ann", "ann", *files]))) == 4


# What members write


class Page(HTMLParser):
    """A page taken apart: elements with their attributes, ids, links, and all text."""

    def __init__(self, html):
        super().__init__()
        self.elements, self.words = [], []
        self.feed(html)

    def handle_starttag(self, tag, attributes):
        self.elements.append((tag, dict(attributes)))

    def handle_data(self, data):
        self.words.append(data)

    @property
    def text(self):
        return "".join(self.words)

    @property
    def ids(self):
        return [attributes["id"] for _, attributes in self.elements if "id" in attributes]

    @property
    def links(self):
        return [attributes["href"] for tag, attributes in self.elements if tag == "a"]


ELEMENTS = re.findall(
    r"\w+",
    """html head meta title style body a header p main h1 h2 h3 h4 bdi strong section ul li ol article div span code dl dt dd
    pre table caption thead tbody tfoot tr th td footer b i figure figcaption mark""",
)
ATTRIBUTES = re.findall(
    r"\S+",
    """lang charset http-equiv content name class href id aria-labelledby aria-label aria-hidden role tabindex scope colspan
    style""",
)


def pages(members, folder, alike=()):
    """Name to page, of all that is written for a class."""
    index = write_reports(members, PATHS, folder, DAY, alike)
    return {file.relative_to(folder).as_posix(): Page(file.read_text("utf-8")) for file in index.parent.rglob("*.html")}


hostile = made.any_text | st.sampled_from(
    [
        "<img src=x onerror=alert(1)>",
        '"><script>alert(1)</script>',
        "' onmouseover='alert(1)",
        "</style><script>",
        "</pre></body>",
        "javascript:alert(1)",
        "{{ 7 * 7 }}",
        "{% include '/etc/passwd' %}",
        "<!--",
        "&lt;b&gt;",
        "‮evil",
        "http://evil.example/",
    ]
)
hostile_findings = st.builds(
    Finding,
    st.sampled_from(KINDS),
    hostile,
    hostile,
    st.lists(st.tuples(hostile, hostile), max_size=2).map(tuple),
    hostile,
    hostile,
    hostile,
    hostile,
    st.none() | st.tuples(hostile, st.integers(1, 99), hostile),
)
hostile_verdicts = st.builds(
    Verdict,
    st.sampled_from(PATHS),
    st.sampled_from(KINDS),
    st.just(10),
    st.lists(made.parts, max_size=2).map(tuple),
    st.lists(hostile_findings, max_size=2).map(tuple),
    hostile,
)
hostile_lines = st.lists(st.tuples(st.integers(1, 99), hostile, st.booleans()), max_size=2).map(tuple)
hostile_alike = st.builds(
    lambda a, b, lines: Alike((a, b), (AlikeExercise(PATHS[0], "in shape", 80, 90, 2, (Side(a, lines), Side(b, lines))),)),
    hostile,
    hostile,
    hostile_lines,
)


@settings(max_examples=60, deadline=None)
@given(st.lists(st.tuples(hostile, hostile, hostile_verdicts, hostile), max_size=3), st.lists(hostile_alike, max_size=1))
def test_nothing_that_a_member_writes_gets_out_of_its_place(tmp_path_factory, members, alike):
    def of(name, problem, verdict, reason):
        override = Override(name, verdict.exercise, Fraction(1), reason, "Wren Dalby", "2031-05-03T18:20:00+00:00")
        return member_marks(name, [problem], [verdict], {(name, verdict.exercise): override})

    written = pages([of(*member) for member in members], tmp_path_factory.mktemp("reports"), alike)
    assert len(written) == 1 + len(members) + len(alike)
    for page in written.values():
        assert {tag for tag, _ in page.elements} <= set(ELEMENTS)
        assert {name for _, attributes in page.elements for name in attributes} <= set(ATTRIBUTES)
        assert all(re.fullmatch(r"(members/)?[a-z0-9-]*(\.html)?(#[a-z0-9_]+)?", link) for link in page.links)
        assert all(
            re.fullmatch(r"width: \d{1,3}%", attributes["style"]) for _, attributes in page.elements if "style" in attributes
        )
        assert written_out(page.text) == page.text
    for name, *_ in members:
        assert any(written_out(name) in page.text for page in written.values())


@example("\x00\x1b[31m\x85\u202e\u2066\u200b\ufeff\u2028\r")
@given(st.text())
def test_characters_that_do_not_show_are_written_out(text):
    shown = written_out(text)
    assert all(char.isprintable() or char in "\n\t\xa0" or char.isspace() for char in shown)
    assert not set(shown) & set("\x00\x1b\x85\u202e\u2066\u200b\ufeff\u2028\r")
    if text.isprintable():
        assert shown == text


def test_pages_need_nothing_else_and_forbid_scripts(sample_class, tmp_path):
    for file, page in pages(sample_class, tmp_path).items():
        assert "default-src 'none'" in next(
            a["content"] for tag, a in page.elements if a.get("http-equiv") == "Content-Security-Policy"
        )
        assert not {"script", "link", "img", "iframe", "object"} & {tag for tag, _ in page.elements}, file
    assert "@import" not in STYLE
    assert all(url.startswith('url("data:') for url in re.findall(r"url\([^)]{6}", STYLE))


# What is said


def report_of(name, members, folder):
    written = pages(members, folder)
    return next(page for page in written.values() if name in page.words and "Marks report" in page.text)


def in_order(text, *pieces):
    """Whether the pieces stand in the text, one after the other."""
    at = 0
    for piece in pieces:
        assert piece in text[at:], f"{piece!r} is not there, or not in its turn"
        at = text.index(piece, at) + len(piece)
    return True


def test_a_report_says_what_the_style_page_shows_feedback_before_marks(sample_class, tmp_path):
    text = report_of("Orla Quill", sample_class, tmp_path).text
    assert in_order(
        text,
        "Orla Quill",
        "16 of 20 marks",
        "1 passed, 1 to look at, 0 not attempted",
        "To look at",
        "Where does it tune?",
        "resonance",
        "wrong",
        "resonant_frequency",
        "inductance",
        "capacitance",
        "yours",
        "Hz",
        "wanted",
        "Hz",
        "yours is 2π times too large",
        "You may have returned the angular frequency, in radians a second.",
        "Marks by part, resonance",
        "resonant_frequency",
        "0 of 2.5",
        "All marks",
        "16 of 20",
    )


def test_a_report_shows_the_member_s_own_line(sample_class, tmp_path):
    page = report_of("Kit Harrow", sample_class, tmp_path)
    assert in_order(
        page.text,
        "NameError",
        "unit03_tuned_circuit/resonance.py, line",
        "return 1 / (2 * np.pi * np.sqrt(inductance * capacitanse))",
    )


def test_a_mark_set_by_hand_stands_with_its_reason_and_counts(sample_class, tmp_path):
    text = report_of("Tobias Fenn", sample_class, tmp_path).text
    assert in_order(
        text,
        "17.5 of 20 marks",
        "Set by hand: 7.5 of 10 (worked out: 6). Derived it rightly on the blackboard. Wren Dalby, 2031-05-03.",
    )
    passed = [
        member_marks(
            "Isla Marrow",
            [],
            [mark.verdict for mark in sample_class[0].marks],
            {
                ("Isla Marrow", sample.RESONANCE): Override(
                    "Isla Marrow",
                    sample.RESONANCE,
                    Fraction(5),
                    "Copied; she agrees.",
                    "Wren Dalby",
                    "2031-05-03T18:20:00+00:00",
                )
            },
        )
    ]
    text = report_of("Isla Marrow", passed, tmp_path / "other").text
    assert in_order(text, "15 of 20 marks", "Set by hand: 5 of 10 (worked out: 10). Copied; she agrees.")


def test_files_that_could_not_be_read_are_named(sample_class, tmp_path):
    assert "notes.txt could not be read." in report_of("Nell Samphire", sample_class, tmp_path).text


def test_a_report_holds_no_hint_and_names_nobody_else(sample_class, tmp_path):
    for file, page in pages(sample_class, tmp_path).items():
        if file.startswith("members/"):
            for path in sample.PATHS:
                assert not any(hint[:40] in page.text for hint in load_exercise(path).hints)
            assert sum(member.name in page.text for member in sample_class) == 1


def test_the_class_page_has_every_member_and_every_link_leads_somewhere(sample_class, tmp_path):
    written = pages(sample_class, tmp_path)
    page = written["index.html"]
    assert all(written_out(member.name) in page.text for member in sample_class)
    for file, page in written.items():
        folder = file.rpartition("/")[0]
        for link in page.links:
            target, _, anchor = link.partition("#")
            to = written[f"{folder}/{target}".lstrip("/") if target else file]
            assert not anchor or anchor in to.ids, link
        assert len(page.ids) == len(set(page.ids))


def test_the_class_page_says_what_to_teach_again(sample_class, tmp_path):
    text = pages(sample_class, tmp_path)["index.html"].text
    assert in_order(
        text,
        "What to teach again",
        "2 of 10",
        "You may have returned the angular frequency, in radians a second.",
        "resonant_frequency",
        "Tobias Fenn",
        "Orla Quill",
    )
    assert in_order(text, "How each exercise went", "resonance", "8", "1", "solenoid_inductance", "8", "8", "10 of 10")
    assert in_order(
        text, "Marks", "Isla Marrow", "20", "10", "10", "Tobias Fenn", "17.5", "10", "7.5*", "Jasper Thrift", "0", "–", "–"
    )


def verdict(path, slip, function="f", says="", kind="wrong", earned=0):
    return Verdict(
        path,
        kind,
        10,
        (Part(function, "numbers", Fraction(10), Fraction(earned)),),
        (Finding(kind, function, says, slip=slip),),
    )


def test_slips_are_counted_by_member_and_the_commonest_come_first():
    summary = Summary(PATHS[:2])
    for name, slips in (("a", "xy"), ("b", "x"), ("c", "xz"), ("d", "")):
        verdicts = [verdict(PATHS[place], slip) for place, slip in enumerate(slips)]
        summary.add(member_marks(name, [], verdicts, {}))
    assert [(trouble.path, trouble.says, trouble.members) for trouble in summary.commonest()] == [
        (PATHS[0], "You may have x.", (0, 1, 2)),
        (PATHS[1], "You may have y.", (0,)),
        (PATHS[1], "You may have z.", (2,)),
    ]
    for slip in "yyy":
        summary.add(member_marks("e", [], [verdict(PATHS[1], slip)], {}))
    assert [len(trouble.members) for trouble in summary.commonest()] == [4, 3, 1]


def test_a_broken_law_counts_when_several_broke_it_and_an_error_never():
    summary = Summary(PATHS[:1])
    for says, kind in (
        ("This should hold, and does not: a.", "wrong"),
        ("This should hold, and does not: a.", "wrong"),
        ("This should hold, and does not: b.", "wrong"),
        ("f stopped with KeyError: 1", "raised"),
        ("f stopped with KeyError: 1", "raised"),
    ):
        summary.add(member_marks("x", [], [verdict(PATHS[0], "", says=says, kind=kind)], {}))
    assert [(trouble.says, len(trouble.members)) for trouble in summary.commonest()] == [
        ("This should hold, and does not: a.", 2)
    ]


def test_the_hardest_exercise_is_the_one_with_the_least_of_its_marks_among_those_who_tried():
    summary = Summary(PATHS[:3])
    for first, second in ((2, 9), (4, 9)):
        summary.add(
            member_marks(
                "x",
                [],
                [
                    verdict(PATHS[0], "", earned=first),
                    verdict(PATHS[1], "", earned=second),
                    verdict(PATHS[2], "", kind="not attempted"),
                ],
                {},
            )
        )
    assert [(one.path, one.tried, one.mean) for one in summary.hardest()] == [(PATHS[0], 2, 3), (PATHS[1], 2, 9)]


def test_the_same_marks_give_the_same_pages_and_leave_no_drafts(sample_class, tmp_path):
    for folder in ("one", "two"):
        pages(sample_class, tmp_path / folder)
        pages(sample_class, tmp_path / folder)
    files = sorted(file.relative_to(tmp_path / "one") for file in (tmp_path / "one").rglob("*") if file.is_file())
    assert len(files) == 1 + len(sample_class)
    assert all((tmp_path / "one" / file).read_bytes() == (tmp_path / "two" / file).read_bytes() for file in files)


# Colours


def colours(block):
    return dict(re.findall(r"--(\w+): (#[0-9a-f]{6})", block))


LIGHT, DARK = (colours(block) for block in re.findall(r":root \{(.*?)\}", STYLE, re.DOTALL)[:2])


def test_colours_are_those_of_the_site():
    palette = tomllib.loads((ROOT / "course/figures/palette.toml").read_text("utf-8"))
    assert {name: palette[name][0] for name in LIGHT} == LIGHT
    assert {name: palette[name][1] for name in DARK} == DARK
    assert LIGHT.keys() == DARK.keys()


@pytest.mark.parametrize("palette", [LIGHT, DARK], ids=["light", "dark"])
def test_every_ink_reaches_the_contrast_of_wcag_on_every_surface(palette):
    """WCAG 2.2, success criterion 1.4.3: 4.5 to 1 for text (formula of relative luminance from memory)."""

    def luminance(colour):
        channels = [int(colour[at : at + 2], 16) / 255 for at in (1, 3, 5)]
        linear = [c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in channels]
        return sum(weight * c for weight, c in zip((0.2126, 0.7152, 0.0722), linear, strict=True))

    for ink in set(palette) - {"paper", "slip", "edge"}:
        for surface in ("paper", "slip"):
            lighter, darker = sorted((luminance(palette[ink]), luminance(palette[surface])), reverse=True)
            assert (lighter + 0.05) / (darker + 0.05) >= 4.5, f"{ink} on {surface}"


def test_verdicts_are_told_by_a_sign_and_a_word_not_by_colour_alone(sample_class, tmp_path):
    signs = {}
    for page in pages(sample_class, tmp_path).values():
        for sign, kind in re.findall(r"(\S)\s+(passed|wrong|raised|too slow|refused|not attempted)", page.text):
            signs.setdefault(kind, set()).add(sign)
    assert {kind: {"✓", "✗", "!", "–"} & found for kind, found in signs.items()} == {
        "passed": {"✓"},
        "wrong": {"✗"},
        "raised": {"!"},
        "too slow": {"!"},
        "refused": {"!"},
        "not attempted": {"–"},
    }
