"""The vocabulary switch: what is exchanged, what never is, and that the British text is left as it was written."""

import re
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from course.press.boxes.glossary_box import term_html
from course.press.text.switch import mark_words
from course.press.text.vocabulary import Vocabulary, article_for

from .conftest import ROOT

WORDS = Vocabulary(ROOT / "course" / "glossary.toml")


def british(html: str) -> str:
    """A page as it reads before anything is exchanged."""
    return re.sub(r'<(span|tspan) data-us="[^"]*">(.*?)</\1>', r"\2", html, flags=re.S)


def american(html: str) -> str:
    """A page as the switch leaves it."""
    return re.sub(r'<(span|tspan) data-us="([^"]*)">.*?</\1>', r"\2", html, flags=re.S)


@pytest.mark.parametrize(
    ("written", "reads"),
    [
        ("a valve and an aerial", "a tube and an antenna"),
        ("An anode, an earth, a condenser", "A plate, a ground, a capacitor"),
        ("an HT battery, an HT of 90 V, HT+", "a B battery, a B+ of 90 V, B+"),
        ("an HF choke", "an RF choke"),
        ("Valves; the valve's grid; valve-holder", "Tubes; the tube's grid; tube socket"),
        ("two aerials, both earthed", "two antennas, both grounded"),
        ("EARTH", "GROUND"),
        ("variable condensers", "variable capacitors"),
        ("a throttle\ncondenser", "a throttle capacitor"),
        ("with reaction; a reaction set", "with regeneration; a regenerative set"),
        ("mutual conductance", "transconductance"),
        ("a valve holder", "a tube socket"),
        ("a cat's whisker", "a cat's whisker"),
        # never
        ("Crystal to Reaction", "Crystal to Reaction"),
        ("over a flat earth", "over a flat earth"),
        ("a safety valve", "a safety valve"),
        ("ht, lt", "ht, lt"),
        ("aerial_voltage unearthly unit02_coil_and_condenser", "aerial_voltage unearthly unit02_coil_and_condenser"),
        ("revalve valvey anodes.py", "revalve valvey plates.py"),
        ("5 &lt; 6 &amp; an aerial", "5 &lt; 6 &amp; an antenna"),
    ],
)
def test_words_exchanged(written, reads):
    marked = WORDS.mark(written)
    assert american(marked) == reads
    assert british(marked) == written


@pytest.mark.parametrize(
    "untouched",
    [
        "<code>aerial</code>",
        "<pre>an <b>earth</b></pre>",
        '<a href="aerial.html" title="aerial">x</a>',
        '<h2 id="the-aerial">x</h2>',
        '<span class="katex"><span>valve</span></span>',
        "<span data-keep>earth</span>",
        "<script>var aerial = '<b>valve</b>';</script>",
        "<!-- valve -->",
        "<svg><title>aerial</title></svg>",
    ],
)
def test_code_addresses_formulas_and_kept_words_stay(untouched):
    assert mark_words(f"<body>{untouched}</body>", WORDS) == f"<body>{untouched}</body>"


def test_words_in_an_inline_drawing_are_exchanged_as_svg():
    assert mark_words("<svg><text>aerial</text></svg>", WORDS) == (
        '<svg><text><tspan data-us="antenna">aerial</tspan></text></svg>'
    )


@pytest.mark.parametrize(
    ("written", "reads"),
    [
        ("an <em>earth</em>", "a <em>ground</em>"),
        ("<p>An <strong>anode</strong></p>", "<p>A <strong>plate</strong></p>"),
        ("a <em>valve</em>", "a <em>tube</em>"),
        ("<p>type an</p><p>earth</p>", "<p>type an</p><p>ground</p>"),
        ("an <code>x</code> earth", "an <code>x</code> ground"),
    ],
)
def test_an_article_before_a_tag_fits_the_word_after_it(written, reads):
    assert american(mark_words(written, WORDS)) == reads


TEXTS = st.lists(
    st.sampled_from(
        [
            *WORDS.pairs,
            *WORDS.keep,
            "a",
            "an",
            "An",
            "the",
            "<em>",
            "</em>",
            "<code>",
            "</code>",
            "&amp;",
            ",",
            "é",
            "5",
            "\n",
        ]
    ),
    max_size=20,
).map(" ".join)


@given(TEXTS)
def test_marking_never_changes_what_is_written(text):
    assert british(mark_words(text, WORDS)) == text


@given(TEXTS)
def test_the_american_reading_has_no_british_word_left(text):
    plain = re.sub(r"<code>.*?(</code>|$)", "", text, flags=re.S)
    read = american(WORDS.mark(re.sub(r"<[^>]+>", "", plain)))
    again = [m["term"] for m in WORDS.pattern.finditer(read) if m["term"] and WORDS.american_for(m["term"])]
    allowed = set(" ".join(WORDS.pairs.values()).split())
    assert all(word.lower().split()[0] in {a.lower() for a in allowed} for word in again)


@pytest.mark.parametrize(
    ("word", "article"),
    [
        ("antenna", "an"),
        ("tube", "a"),
        ("RF stage", "an"),
        ("B+", "a"),
        ("A battery", "an"),
        ("LC circuit", "an"),
        ("Plate", "a"),
    ],
)
def test_articles(word, article):
    assert article_for(word, "a") == article
    assert article_for(word, "An") == article.capitalize()


def test_an_american_word_in_brackets_is_noticed():
    assert WORDS.said_twice("the valve (tube) and the aerials (antennas)") == ["valve", "aerials"]
    assert WORDS.said_twice("the valve (a triode)") == []


@pytest.mark.parametrize("text", ["valve", "an anode", "Valves", "HT", "bandwidth"])
def test_first_use_reads_well_both_ways(text):
    html = term_html(WORDS, text, "g.html#x")
    plain_british, plain_american = (re.sub(r"<[^>]+>", "", form(html)) for form in (british, american))
    expected = {
        "valve": ("valve (American: tube)", "tube (British: valve)"),
        "an anode": ("an anode (American: plate)", "a plate (British: anode)"),
        "Valves": ("Valves (American: tubes)", "Tubes (British: valves)"),
        "HT": ("HT (American: B+)", "B+ (British: HT)"),
        "bandwidth": ("bandwidth", "bandwidth"),
    }
    assert (plain_british, plain_american) == expected[text]


def test_the_glossary_is_whole():
    assert len(WORDS.terms) >= 60
    anchors = [term.anchor for term in WORDS.terms]
    assert len(set(anchors)) == len(anchors)
    for term in WORDS.terms:
        assert term.meaning.endswith(".") and 20 < len(term.meaning) < 220, term.british
        assert term.american != term.british
    spelled = {
        "valve": "tube",
        "aerial": "antenna",
        "reaction": "regeneration",
        "earth": "ground",
        "HT": "B+",
        "anode": "plate",
        "condenser": "capacitor",
    }
    assert spelled.items() <= WORDS.pairs.items()


def test_terms_are_british_in_what_the_lessons_write():
    """No lesson writes the American word of a pair whose two words mean nothing else."""
    for page in sorted(Path(ROOT / "course" / "lessons").rglob("*.md")):
        text = re.sub(r"```.*?```|`[^`]*`|\{\{.*?\}\}", "", page.read_text("utf-8"), flags=re.S)
        for word in ("vacuum tube", "antenna", "regenerative", "B\\+", "capacitors"):
            assert not re.search(rf"(?<![\w-]){word}(?!\w)", text), f"{page.name}: {word}"
