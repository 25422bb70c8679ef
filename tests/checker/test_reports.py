"""Reports: everything that counts is said."""

import re
import tomllib
from fractions import Fraction

import pytest

from checker.course import PATHS, ROOT, load_exercise
from checker.judging.verdict import Finding, Part, Verdict
from checker.marks.marksheet import member_marks
from checker.marks.store import Override
from checker.report.summary import Summary
from checker.text import escape_unseen
from tests.checker import sample
from tests.checker.report_pages import STYLE, pages

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
        "1 passed (0 of 1 core, 1 of 1 further), 1 to look at.",
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
    assert all(escape_unseen(member.name) in page.text for member in sample_class)
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
    palette = tomllib.loads((ROOT / "course/figures/kit/palette.toml").read_text("utf-8"))
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
