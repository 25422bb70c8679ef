"""Cautions do what they say: each number in one is worked out, and a number that nothing accounts for is found."""

import re
from functools import cache

import pytest

from solutions.unit04_crystal_set.phone_loudness import sound_pressure_level
from tests.lessons.quantities import LESSONS, SHEET, all_blocks, plain, quantities
from tests.physics.cautions import CAUTIONS, EVERYWHERE, Name, Sum

SUMS = [entry for entry in CAUTIONS if isinstance(entry, Sum)]


@cache
def texts(page: str) -> tuple[str, ...]:
    """All cautions of a page, and the page itself."""
    blocks = tuple(block.text for block in all_blocks() if page in (block.page, EVERYWHERE))
    return blocks if page in (SHEET, EVERYWHERE) else (*blocks, plain((LESSONS / page).read_text("utf-8")))


def named(entry) -> str:
    return f"{entry.page}: {entry.phrase[:40]}"


def places(phrase: str, text: str) -> list[tuple[int, int]]:
    whole = rf"(?<![\w.]){re.escape(phrase)}(?!\w)" if phrase[0].isalnum() and phrase[-1].isalnum() else re.escape(phrase)
    return [found.span() for found in re.finditer(whole, text)]


def values(phrase: str) -> list[float]:
    return [value for found in quantities(phrase) for value in found.values]


@pytest.mark.parametrize("entry", CAUTIONS, ids=named)
def test_every_entry_finds_its_sentence(entry):
    assert any(places(entry.phrase, text) for text in texts(entry.page)), f"{entry.page} no longer says: {entry.phrase}"
    assert quantities(entry.phrase), "an entry accounts for a quantity"


@pytest.mark.parametrize("entry", SUMS, ids=named)
def test_the_number_does_what_the_sentence_says(entry):
    assert entry.holds(*values(entry.phrase)), f"{entry.page}: not so: {entry.phrase}"


@pytest.mark.parametrize("entry", SUMS, ids=named)
def test_another_number_does_not(entry):
    """A check that cannot fail is none: some number of the sentence, three times as large or as small, makes it untrue."""
    right = values(entry.phrase)

    def untrue(place, times):
        try:
            return not entry.holds(*right[:place], times * right[place], *right[place + 1 :])
        except ValueError:
            return True

    assert any(untrue(place, times) for place in range(len(right)) for times in (1 / 3, 3)), f"whatever it says: {entry.phrase}"


def test_every_quantity_of_every_caution_is_accounted_for():
    missing = []
    for block in all_blocks():
        entries = [entry for entry in CAUTIONS if entry.page in (block.page, EVERYWHERE)]
        known = [place for entry in entries for place in places(entry.phrase, block.text)]
        missing += [
            f"{block.page}, {block.kind}: …{block.text[max(0, one.start - 40) : one.end + 20]}…"
            for one in quantities(block.text)
            if not any(start <= one.start and one.end <= end for start, end in known)
        ]
    assert not missing, "give each an entry in tests/physics/cautions.py:\n" + "\n".join(missing)


@pytest.mark.parametrize(
    ("text", "wanted"),
    [
        ("a fuse of 100 mA", [0.1]),
        ("0.15 to 0.4 V", [0.15, 0.4]),
        ("½ W", [0.5]),
        ("90 V, 10 kΩ", [90.0, 10e3]),
        ("350 °C", [350.0]),
        ("half a second", [0.5]),
        ("Forty decibels", [40.0]),
        ("twenty minutes", [1200.0]),
        ("a megohm", [1e6]),
        ("10 µF", [10e-6]),
        ("a quarter of a watt", [0.25]),
        ("a second adult", []),
        ("a few a second", []),
        ("1.2 mA/V", []),
        ("10 V/m", []),
        ("unit 5", []),
        ("A second stage", []),
    ],
)
def test_quantities_are_found_in_figures_and_in_words(text, wanted):
    assert values(text) == pytest.approx(wanted)


def test_no_caution_goes_unread():
    """As many blocks as lines that open one, but for the safety page, which is read whole."""
    opened = sum(
        len(re.findall(r"^ *!!! (?:danger|caution|bench|instructor)", page.read_text("utf-8"), re.MULTILINE))
        for page in LESSONS.rglob("*.md")
        if page.name != "safety.md"
    )
    assert opened == sum(block.kind != "section" and block.page != SHEET for block in all_blocks()) > 150
    assert sum(block.page == SHEET for block in all_blocks()) >= 6


def test_names_give_a_reason():
    assert all(entry.because for entry in CAUTIONS if isinstance(entry, Name))


def test_an_evening_s_loudness():
    """Directive 2003/10/EC of the European Parliament and Council, noise at work, article 3: lower exposure action value
    80 dB(A), limit 87 dB(A), over eight hours. From memory. Unit 04 says 80 is safe for an evening, 90 is not day after day."""
    text = plain((LESSONS / "unit04_crystal_set/ear.md").read_text("utf-8"))
    safe, not_safe = map(float, re.search(r"(\d+) dB is safe for an evening; (\d+) is not", text).groups())
    assert safe <= 80 and not_safe > 87
    assert sound_pressure_level(1e-6, 110) == pytest.approx(safe)  # a microwatt in the club's headphones
