"""What is read is print, not program text; no number leaves its unit; what stands in for a typeface is as wide and high."""

import html
import re

import pytest
from fontTools.ttLib import TTFont

from course.press.text.markup import pieces
from course.press.text.printed import printed
from course.press.text.unbroken import UNIT, keep_units

from .conftest import ROOT

NOT_READ = {"code", "pre", "kbd", "script", "style", "svg", "math", "textarea", "output"}
GAP = "\N{NO-BREAK SPACE}"
PROGRAM_TEXT = {
    "a backtick": r"`",
    "a number with an e": r"\b\d+(?:\.\d+)?e[-+]?\d+\b",
    "a j behind its number": r"\d ?[-+] ?[\d.]+j\b",
    "quotes round a quantity": r"'[-−]?\d[\d.]* ?[a-zA-ZµΩ]*'",
    "a caret": r"[\w)]\^[-\d(]",
    "a hyphen for minus": r"(?<![\w.)\]–-])-\d",
    "a space before degrees": r"\d[ \xa0]°(?![CF])",
    "a list of a program": r"\[[-−\d.]+(?:, [-−\d.]+)+\]",
}


def read_in(page: str) -> str:
    """What is read in a page, without code, formulas and pictures; tags have become a bar."""
    said, inside = [], []
    for piece in pieces(page[page.find("<body") :]):
        if piece.kind == "text":
            said.append("" if inside else html.unescape(piece.source))
            continue
        said.append("|")
        formula = (piece.attributes.get("class") or "").startswith("katex")
        if piece.kind == "start" and (inside or formula or piece.name in NOT_READ):
            inside.append(piece.name)
        elif piece.kind == "end" and inside:
            while inside.pop() != piece.name:
                pass
    return re.sub(r"\|+", "|", "".join(said))


@pytest.fixture(scope="module")
def texts(course) -> dict[str, str]:
    """Of each page what is read in it."""
    site = course / "course" / "site"
    found = [page for page in site.rglob("*.html") if page.parent.name != "print"]
    return {page.relative_to(site).as_posix(): read_in(page.read_text("utf-8")) for page in found}


@pytest.mark.parametrize("what", PROGRAM_TEXT)
def test_no_program_text_is_read_on_a_page(texts, what):
    hits = [(name, text, hit) for name, text in texts.items() for hit in re.finditer(PROGRAM_TEXT[what], text)]
    found = [f"{name}: {text[max(hit.start() - 30, 0) : hit.end() + 20]}" for name, text, hit in hits]
    assert not found, found[:5]


def test_no_number_leaves_its_unit_on_a_page(texts):
    apart = re.compile(rf"\d\|* {UNIT}")
    found = [f"{name}: {hit[0]}" for name, text in texts.items() for hit in apart.finditer(text)]
    assert not found, found[:5]
    assert sum(len(re.findall(rf"\d\|*{GAP}{UNIT}", text)) for text in texts.values()) > 598


@pytest.mark.parametrize(
    ("said", "read"),
    [
        ("(0 + 6.283e+06j) rad/s", "j6.283\u00a0×\u00a010<sup>6</sup> rad/s"),
        ("(1.5e+05 + 0j) Ω", "1.5\u00a0×\u00a010<sup>5</sup> Ω"),
        ("(-9 - 0.1647j) Ω", "(−9 − j0.1647) Ω"),
        ("'1.000 pF'", "1.000 pF"),
        ("50 µA/V^1.5", "50 µA/V<sup>1.5</sup>"),
        ("-20 V to -1.5 V", "−20 V to −1.5 V"),
        ("HSMS-285x, 1941-43, the club's", "HSMS-285x, 1941-43, the club&#x27;s"),
        ("held in `a_b`, a<b", "held in <code>a_<wbr>b</code>, a&lt;b"),
        ("[0.1, -2]", "0.1, −2"),
    ],
)
def test_what_the_checker_says_is_printed(said, read):
    assert printed(said) == read


@pytest.mark.parametrize(
    ("written", "kept"),
    [
        ("<p>9 kHz, 20 km, 3 volts", "<p>9~kHz, 20~km, 3~volts"),
        ("<b>9</b> kHz, 10<sup>−6</sup> m", "<b>9</b>~kHz, 10<sup>−6</sup>~m"),
        ("<td>9</td><td> m</td>", "<td>9</td><td> m</td>"),
        ("<code>9 V</code><svg><text>9 V</text></svg>", "<code>9 V</code><svg><text>9 V</text></svg>"),
        ("2 maps, 7 stations, 3 Meters", "2 maps, 7 stations, 3 Meters"),
        ("4 × 10<sup>6</sup> Hz", "4~×~10<sup>6</sup>~Hz"),
    ],
)
def test_a_unit_stays_with_its_number(written, kept):
    assert keep_units(written) == kept.replace("~", GAP)


STAND_INS = (
    ("alegreya-sans", "400-normal"),
    ("alegreya-sans", "400-italic"),
    ("alegreya-sans", "700-normal"),
    ("alegreya", "700-normal"),
)


def test_what_stands_in_for_a_typeface_is_as_high_as_it():
    """Heights are held to the font files; the widths come from the lessons' letters set in each and in Liberation."""
    sheet = (ROOT / "course" / "theme" / "course.css").read_text("utf-8")
    rules = re.findall(r'"Stand-in .*?size-adjust: ([\d.]+)%; ascent-override: ([\d.]+)%; descent-override: ([\d.]+)%', sheet)
    assert len(rules) == len(STAND_INS)
    for (family, cut), rule in zip(STAND_INS, rules, strict=True):
        font = TTFont(ROOT / "course" / "node_modules" / "@fontsource" / family / "files" / f"{family}-latin-{cut}.woff")
        width, ascent, descent = (float(number) / 100 for number in rule)
        em = font["head"].unitsPerEm
        assert ascent * width == pytest.approx(font["hhea"].ascent / em, rel=0.002)
        assert descent * width == pytest.approx(-font["hhea"].descent / em, rel=0.004)
