"""Reports: nothing that a member writes gets out of its place, in file names or on pages."""

import re
from base64 import b64encode
from fractions import Fraction
from hashlib import sha256

from hypothesis import example, given, settings
from hypothesis import strategies as st

from checker.course import PATHS
from checker.judging.verdict import KINDS, Finding, Verdict
from checker.marks.marksheet import member_marks
from checker.marks.store import Override
from checker.report.names import report_names
from checker.submissions.likeness import Alike, AlikeExercise, Side
from checker.text import escape_unseen
from tests.checker import made
from tests.checker.report_pages import SCRIPT, STYLE, pages

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


ELEMENTS = re.findall(
    r"\w+",
    """html head meta title style body a header p main h1 h2 h3 h4 bdi strong section ul li ol article div span code dl dt dd
    pre table caption thead tbody tfoot tr th td footer b i figure figcaption mark small""",
)
ATTRIBUTES = re.findall(
    r"\S+",
    """lang charset http-equiv content name class href id aria-labelledby aria-label aria-hidden role tabindex scope colspan
    style""",
)
OF_THE_CLASS = (
    {"script", "label", "input", "select", "option"},
    {"type", "autocomplete", "value", "hidden", "data-column", "data-place", "data-has"},
)


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
    for file, page in written.items():
        tags, names = OF_THE_CLASS if file == "index.html" else (set(), set())
        assert {tag for tag, _ in page.elements} <= set(ELEMENTS) | tags
        assert {name for _, attributes in page.elements for name in attributes} <= set(ATTRIBUTES) | names
        assert sum(tag == "script" for tag, _ in page.elements) == (file == "index.html")
        assert all(re.fullmatch(r"(members/)?[a-z0-9-]*(\.html)?(#[a-z0-9_]+)?", link) for link in page.links)
        assert all(
            re.fullmatch(r"width: \d{1,3}%", attributes["style"]) for _, attributes in page.elements if "style" in attributes
        )
        assert escape_unseen(page.text) == page.text
    for name, *_ in members:
        assert any(escape_unseen(name) in page.text for page in written.values())


@example("\x00\x1b[31m\x85\u202e\u2066\u200b\ufeff\u2028\r")
@given(st.text())
def test_characters_that_do_not_show_are_written_out(text):
    shown = escape_unseen(text)
    assert all(char.isprintable() or char in "\n\t\xa0" or char.isspace() for char in shown)
    assert not set(shown) & set("\x00\x1b\x85\u202e\u2066\u200b\ufeff\u2028\r")
    if text.isprintable():
        assert shown == text


def test_pages_need_nothing_else_and_forbid_scripts_but_for_the_class_page_s_own(sample_class, tmp_path):
    for file, page in pages(sample_class, tmp_path).items():
        allowed = next(a["content"] for tag, a in page.elements if a.get("http-equiv") == "Content-Security-Policy")
        tags = [tag for tag, _ in page.elements]
        assert "default-src 'none'" in allowed and not {"link", "img", "iframe", "object"} & set(tags), file
        assert tags.count("script") == (file == "index.html")
        assert re.findall(r"script-src ([^;]*);", allowed) == (
            [f"'sha256-{b64encode(sha256(SCRIPT).digest()).decode()}'"] if file == "index.html" else []
        )
    assert SCRIPT in (tmp_path / "index.html").read_bytes()
    assert "@import" not in STYLE
    assert all(url.startswith('url("data:') for url in re.findall(r"url\([^)]{6}", STYLE))
