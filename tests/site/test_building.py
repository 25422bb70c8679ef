"""The site builds strictly, and every fault that an author can make stops it with a sentence that says where."""

import html
import os
import re
import shutil
import subprocess
import sys
from html.parser import HTMLParser
from pathlib import Path
from urllib.parse import unquote, urlsplit

import pytest
from markdown import Markdown

from course.press.text.markdown import CourseMarkdown
from course.press.text.printed import printed

from .conftest import build


class Seen(HTMLParser):
    def __init__(self, page: Path):
        super().__init__()
        self.ids, self.links = set(), []
        self.feed(page.read_text("utf-8"))

    def handle_starttag(self, tag, attrs):
        found = dict(attrs)
        self.ids.add(found.get("id"))
        self.links += [found[name] for name in ("href", "src") if found.get(name)]


def test_every_link_and_anchor_of_the_built_site_resolves(course):
    site = course / "course" / "site"
    pages = {page.resolve(): Seen(page) for page in site.rglob("*.html")}
    followed = 0
    for page, seen in pages.items():
        for link in seen.links:
            parts = urlsplit(link)
            if parts.scheme or parts.netloc:
                continue
            target = (page.parent / unquote(parts.path)).resolve() if parts.path else page
            assert target.is_file(), f"{page.name}: {link}"
            if parts.fragment and not parts.fragment.startswith("set="):  # a bench's setting: checked when the page is made
                assert unquote(parts.fragment) in pages[target].ids, f"{page.name}: {link}"
            followed += 1
    assert followed > 20 * len(pages) / 2


def test_nothing_in_the_built_site_points_to_another_machine_but_for_plain_links(course):
    site = course / "course" / "site"
    for sheet in site.rglob("*.css"):
        assert not re.search(r"url\(['\"]?(?:https?:)?//|@import", sheet.read_text("utf-8")), sheet
    for page in site.rglob("*.html"):
        for tag in re.findall(r"<(?:script|link|img|audio|source|iframe)\b[^>]*>", page.read_text("utf-8")):
            assert not re.search(r"(?:src|href)=\"(?:https?:)?//", tag), f"{page.name}: {tag}"


def test_only_woff2_fonts_are_taken_and_every_one_that_katex_names(course):
    katex = course / "course" / "site" / "katex"
    named = set(re.findall(r"fonts/([^)]+)", (katex / "katex.css").read_text("utf-8")))
    assert named == {font.name for font in (katex / "fonts").iterdir()} and len(named) == 20
    assert all(name.endswith(".woff2") for name in named)


def test_a_stop_after_a_formula_is_set_with_it():
    asked = []

    def formula(tex, display, stop=""):
        asked.append((tex, stop))
        return "<b>formula</b>"

    html = Markdown(extensions=[CourseMarkdown(formula, str, print)]).convert("With $x$, $y = 2$. And $z$ alone")
    assert asked == [("x", ","), ("y = 2", "."), ("z", "")]
    assert html == "<p>With <b>formula</b> <b>formula</b> And <b>formula</b> alone</p>"


CONTENT_FAULTS = {
    r"$\frac{1}{$": r"formula \frac{1}{ is not right",
    r"$\unknownsign$": r"formula \unknownsign is not right",
    "$x \u2615$": "formula x \u2615 is not right",
    '{{ figure("home/no_such_picture") }}': "has no function no_such_picture",
    '{{ figure("nowhere/picture") }}': "course/figures/nowhere.py does not exist",
    '{{ figure("../../etc/passwd") }}': "is named",
    '{{ sound("home/no_such_sound") }}': "has no function no_such_sound",
    '{{ exercise("unit99_nothing/at_all") }}': "cannot be shown",
    '{{ number("unit03_tuned_circuit.resonance:no_such", 1, unit="Hz") }}': "there is no function",
    '{{ number("unit03_tuned_circuit.resonance:resonant_frequency", 1, unit="Hz") }}': "missing 1 required",
    '{{ number("unit03_tuned_circuit.resonance:resonant_frequency", 1, 1) }}': "unit",
    '{{ figure(open("x")) }}': "open",
    '{{ figure("home/under_the_local" }) }}': "is not of the form",
    '{{ picture("home/under_the_local") }}': "picture, which is not one of",
    '{{ term("flux capacitor") }}': "is not in the glossary",
    "A valve (tube) glows.": 'write {{ term("valve") }}',
    '!!! warnning "x"\n    y': "warnning is not one of",
    "!!! bench\n    no title": "needs a title",
    '{{ figure("home/under_the_local") }': "{{ stands in the finished page",
    "a\n$$\n\nx\n$$": "$$ stands in the finished page",
    'so: !!! caution "x"': "!!! stands in the finished page",
    "## How $x$ grows": "a heading holds a formula",
}


def test_each_fault_in_a_page_is_named_with_its_page(bare):
    page = bare / "course" / "lessons" / "index.md"
    page.write_text("# Home\n\n" + "\n\n".join(CONTENT_FAULTS) + "\n", "utf-8")
    done = build(bare)
    assert done.returncode == 1 and "Traceback" not in done.stdout
    told = [line for line in done.stdout.splitlines() if line.startswith("  index.md")]
    for fault, sentence in CONTENT_FAULTS.items():
        assert any(sentence in line for line in told), f"{fault}: {done.stdout}"
    again = build(bare).stdout.splitlines()
    assert [line for line in again if line.startswith("  index.md")] == told, "a fault is told once only: its page was kept"
    line = next(line for line in told if "nowhere.py" in line)
    number = 1 + page.read_text("utf-8").split('{{ figure("nowhere/')[0].count("\n")
    assert f"index.md, line {number}:" in line


LINK_FAULTS = {
    '<a href="missing.html">x</a>': "missing.html leads nowhere",
    '<a href="glossary.html#no-such-word">x</a>': "there is no such place in glossary.html",
    '<img src="missing.png" alt="x">': "missing.png leads nowhere",
    '<img src="https://elsewhere.example/x.png" alt="x">': "from another site",
    '<a href="/glossary.html">x</a>': "begins at the top of a server",
    '<a href="../../hooks.py">x</a>': "leads nowhere",
    '<p id="twice">x</p><p id="twice">y</p>': "the id twice stands twice",
    "[x](#nowhere-here)": "there is no such place in index.html",
}


def test_each_dead_link_is_named_raw_html_too(bare):
    page = bare / "course" / "lessons" / "index.md"
    page.write_text("# Home\n\n" + "\n\n".join(LINK_FAULTS) + "\n", "utf-8")
    done = build(bare)
    assert done.returncode == 1 and "Traceback" not in done.stdout
    for fault, sentence in LINK_FAULTS.items():
        assert sentence in done.stdout, f"{fault}: {done.stdout}"


@pytest.mark.parametrize("link", ["[x](missing.md)", "[x](/glossary.md)"])
def test_a_dead_markdown_link_fails_the_strict_build(bare, link):
    (bare / "course" / "lessons" / "index.md").write_text(f"# Home\n\n{link}\n", "utf-8")
    assert build(bare).returncode != 0
    assert build(bare).returncode != 0


SOUND = '@sound(caption="x", transcript="{}")\ndef thing():\n    return {}, 8000\n'
FIGURE = '@figure(caption="x", alt="{}")\ndef thing():\n    {}\n'
GARISH = """import matplotlib.pyplot as plt
import course.figures.kit.style
@figure(caption="x", alt="x")
def thing():
    drawing, axes = plt.subplots()
    axes.plot([0, 1], color="#123456")
    return drawing
"""
ROSY = """from course.figures.kit.parts import Line, schematic
@figure(caption="x", alt="x")
def thing():
    with schematic() as d:
        Line().color("pink")
    return d
"""
PLANTED = {
    "unheard": ("sound", SOUND.format(" ", "[0.0, 1.0]"), "transcript"),
    "twofold": ("sound", SOUND.format("x", "[[0.0], [1.0]]"), "one channel"),
    "endless": ("sound", SOUND.format("x", "[0.0, 1e999]"), "finite"),
    "unseen": ("figure", FIGURE.format("", "pass"), "words for someone who cannot see"),
    "broken": ("figure", FIGURE.format("x", "1 / 0"), "division by zero (course/figures/broken.py, line 4)"),
    "plain": ("figure", "def thing():\n    pass\n", "is not marked"),
    "empty": ("figure", FIGURE.format("x", "pass"), "not a matplotlib or schemdraw drawing"),
    "garish": ("figure", GARISH, "colour #123456 is not one of the palette"),
    "rosy": ("figure", ROSY, "colour pink is not one of the palette"),
}


def test_a_figure_or_sound_that_is_not_right_stops_the_build(bare):
    page = "# Home\n"
    for name, (what, code, _) in PLANTED.items():
        (bare / "course" / f"{what}s" / f"{name}.py").write_text(f"from course.{what}s import {what}\n{code}", "utf-8")
        page += f'\n{{{{ {what}("{name}/thing") }}}}\n'
    (bare / "course" / "lessons" / "index.md").write_text(page, "utf-8")
    done = build(bare)
    assert done.returncode == 1 and "Traceback" not in done.stdout
    for number, (name, (what, _, sentence)) in enumerate(PLANTED.items()):
        line = next(line for line in done.stdout.splitlines() if f"line {3 + 2 * number}:" in line)
        assert f"{what} {name}/thing" in line and sentence in line, done.stdout


def test_a_page_that_its_units_order_names_and_that_is_not_there_is_named(bare):
    unit = bare / "course" / "lessons" / "unit04_crystal_set"
    unit.mkdir()
    (unit / "index.md").write_text("---\npages: [ghost.md]\n---\n# Crystal set\n", "utf-8")
    done = build(bare)
    assert done.returncode == 1 and "unit04_crystal_set/index.md: pages:" in done.stdout
    (unit / "index.md").write_text("No title\n", "utf-8")
    done = build(bare)
    assert done.returncode == 1 and "unit04_crystal_set/index.md: begin the page with one # Title" in done.stdout


def test_a_new_unit_appears_in_the_dial_and_in_the_reading_order(bare):
    unit = bare / "course" / "lessons" / "unit04_crystal_set"
    unit.mkdir()
    (unit / "index.md").write_text('---\nquestion: No "power"?\npages: [b.md]\n---\n# Crystal set\n', "utf-8")
    for name in "ab":
        (unit / f"{name}.md").write_text(f"# Page {name}\n", "utf-8")
    (unit / "instructor.md").write_text("# Showing it\n", "utf-8")
    done = build(bare)
    assert done.returncode == 0, done.stdout
    first = (bare / "course" / "site" / "unit04_crystal_set" / "index.html").read_text("utf-8")
    assert re.search(r'aria-current="page"><b>04</b>', first) and "No &#34;power&#34;?" in first
    assert re.search(r'rel="next" href="b.html"', first)


def test_without_node_one_sentence_says_what_to_do(bare, tmp_path):
    done = build(bare, PATH=str(tmp_path))
    assert done.returncode == 1 and "Traceback" not in done.stdout
    assert "Node.js sets the formulas and is not installed: install Node.js 18 or newer" in done.stdout


def test_missing_packages_are_brought_by_npm_ci(bare, tmp_path):
    """A stand-in for npm records what it was asked; the real one needs the network."""
    (bare / "course" / "node_modules").unlink()
    asked = tmp_path / "asked"
    tools = tmp_path / "bin"
    tools.mkdir()
    (tools / "npm").write_text(f'#!/bin/sh\necho "$PWD $*" > {asked}\necho no network >&2\nexit 7\n', "utf-8")
    (tools / "npm").chmod(0o755)
    done = build(bare, PATH=f"{tools}:{os.environ['PATH']}")
    assert asked.read_text().startswith(f"{bare / 'course'} ci")
    assert done.returncode == 1 and "npm ci in" in done.stdout and "no network" in done.stdout
    assert "Traceback" not in done.stdout


def test_a_node_that_dies_is_named(bare, tmp_path):
    (bare / "course" / "lessons" / "index.md").write_text("# Home\n\n$x$\n", "utf-8")
    tools = tmp_path / "bin"
    tools.mkdir()
    (tools / "node").write_text("#!/bin/sh\nexit 3\n", "utf-8")
    (tools / "node").chmod(0o755)
    done = build(bare, PATH=f"{tools}:{os.environ['PATH']}")
    assert done.returncode == 1 and "Traceback" not in done.stdout
    assert "Node.js stopped while setting formulas" in done.stdout


def test_the_checkout_that_is_built_is_the_one_that_is_read(bare):
    """Also where another copy of the packages is installed, and with the bare command, which has no path of its own."""
    physics = bare / "solutions" / "unit03_tuned_circuit" / "resonance.py"
    physics.write_text("def resonant_frequency(inductance, capacitance):\n    return 123.0\n", "utf-8")
    call = '{{ number("unit03_tuned_circuit.resonance:resonant_frequency", 1, 1, unit="Hz") }}'
    (bare / "course" / "lessons" / "index.md").write_text(f"# Home\n\n{call}\n", "utf-8")
    start = "import sys; sys.path.remove(''); from mkdocs.__main__ import cli; cli()"
    command = [sys.executable, "-c", start, "build", "-f", "course/mkdocs.yml", "--strict"]
    done = subprocess.run(command, cwd=bare, capture_output=True, text=True)
    assert done.returncode == 0, done.stderr
    assert "123.0\N{NO-BREAK SPACE}Hz" in (bare / "course" / "site" / "index.html").read_text("utf-8")


def test_no_hint_and_no_slip_of_any_exercise_is_read_in_its_box(course):
    from checker.course import PATHS, load_exercise

    pages = [page.read_text("utf-8") for page in (course / "course" / "site").rglob("*.html")]
    text = " ".join(box for page in pages for box in re.findall(r'<section class="exercise".*?</section>', page, re.S))
    text = re.sub(r'<ul class="typed-slips" hidden>.*?</ul>', "", text, flags=re.S)  # shown to whoever has made that slip
    text = re.sub(r"\s+", " ", html.unescape(re.sub(r"<[^>]+>", "", text)))
    shown, told = 0, []
    for path in PATHS:
        check = course / "solutions" / f"{path}_check.py"
        if not check.is_file():
            continue
        exercise = load_exercise(path)
        secrets = [*exercise.hints, *(slip.says for question in exercise.questions for slip in question.slips)]
        told += [f"{path}: {secret}" for secret in secrets if secret in text]
        shown += exercise.title in text
    assert not told
    assert shown or not list((course / "course" / "lessons").glob("unit*"))


def bare_text(page: str) -> str:
    """What is read in some HTML, with plain spaces."""
    return html.unescape(re.sub(r"<[^>]+>", "", page)).replace("\N{NO-BREAK SPACE}", " ")


def test_the_exercise_box_shows_what_the_check_says(bare):
    from checker.course import load_exercise

    name = "unit03_tuned_circuit/resonance"
    (bare / "course" / "lessons" / "index.md").write_text(f'# Home\n\n{{{{ exercise("{name}") }}}}\n', "utf-8")
    done = build(bare)
    assert done.returncode == 0, done.stdout
    page = (bare / "course" / "site" / "index.html").read_text("utf-8")
    text = bare_text(page)
    exercise = load_exercise(name)
    assert "checker try resonance" in text and f"exercises/{name}.py" in text and f"{exercise.marks} marks" in text
    for question in exercise.questions:
        assert question.name in text and bare_text(printed(question.agrees_within.because)) in text
        for argument, given in question.given.items():
            assert f"{argument}{bare_text(printed(given.text))}" in text.replace("\n", "")
        for value in question.published:
            assert value.source.split(",")[0] in text


def test_properly_cleared_between_builds(bare):
    """What was on a page before does not stay in the site."""
    shutil.rmtree(bare / "course" / "site", ignore_errors=True)
    index = bare / "course" / "lessons" / "index.md"
    index.write_text('# Home\n\n{{ sound("home/slow_carrier") }}\n', "utf-8")
    assert build(bare).returncode == 0
    assert (bare / "course" / "site" / "sounds" / "home" / "slow_carrier.mp3").is_file()
    index.write_text("# Home\n", "utf-8")
    assert build(bare).returncode == 0
    assert not (bare / "course" / "site" / "sounds").exists()
