"""Each row of unit 6's tables worked out again by the engine, with the signal that the page says it is for.

The pages are read as they stand: every call of a function whose value depends on the signal. Where a row is of a station with
a carrier of its own, network and engine must agree within a tenth, or the row must have both.
"""

import ast
import re
from dataclasses import replace

import numpy as np
import pytest

from course.circle.set_in_hand import aerial_crest
from course.circle.stations import ACROSS_THE_BAY, NEXT_CHANNEL
from solutions.unit00_bench.prefixes import from_engineering
from solutions.unit06_reaction import club_set
from solutions.unit06_reaction.network import THROTTLE_RANGE
from solutions.unit06_reaction.signals import FINE, gain_with, knocked, swing_with, tone_left_with
from solutions.unit06_reaction.stability import ring
from solutions.unit07_oscillation.envelope import follow, start
from tests.lessons.latex import LESSONS

WITHIN = 0.1
WEAK = 1e-5  # volt in the aerial: what the pages call a weak station
OWN = {1107e3: ACROSS_THE_BAY, 855e3: NEXT_CHANNEL}
PAGES = sorted((LESSONS / "unit06_reaction").glob("*.md"))
CALL = re.compile(r'(?:number|value)\("unit06_reaction\.(\w+:\w+)"((?:, (?:"[^"]*"|-?[\d.]+)(?=[,)]))*)((?:, \w+=[^,)]+)*)\)')


def quantity(text):
    try:
        return float(text)
    except ValueError:
        return from_engineering(ast.literal_eval(text))


def calls():
    """(page, line, function, arguments, part) of each call that the pages make of this unit's functions."""
    for page in PAGES:
        for line in page.read_text().splitlines():
            for name, arguments, named in CALL.findall(line):
                values = tuple(quantity(one) for one in re.findall(r'"[^"]*"|-?[\d.]+', arguments))
                part = re.search(r"part=(\d)", named)
                yield page.stem, line, name, values, int(part[1]) if part else None


ROWS = list(calls())


def of(name, part=None):
    return sorted({values for _, _, called, values, which in ROWS if called == name and which == part})


def test_the_pages_have_such_rows():
    assert len(of("club_set:gain_and_bandwidth", 0)) >= 5
    assert len(of("club_set:growth_rate")) >= 4
    assert len(of("club_set:pulled")) >= 4
    assert len(of("club_set:threshold_throttle")) >= 5
    assert len(of("signals:gain_with")) >= 4


@pytest.mark.parametrize("asked", of("club_set:gain_and_bandwidth", 0))
def test_gain_of_a_weak_station(asked):
    assert gain_with(*asked, WEAK) == pytest.approx(club_set.gain_and_bandwidth(*asked)[0], rel=WITHIN)


@pytest.mark.parametrize("asked", of("club_set:formula_gain"))
def test_formula_is_the_engines_gain_or_the_engine_sings(asked):
    formula = club_set.formula_gain(*asked)
    if club_set.growth_rate(*asked) < 0:
        assert gain_with(*asked, WEAK) == pytest.approx(formula, rel=WITHIN)
    else:
        assert swing_with(*asked, WEAK) > 1 > 100 * formula * WEAK


@pytest.mark.parametrize("asked", of("club_set:gain_and_bandwidth", 1))
def test_bandwidth_of_a_weak_station(asked):
    """At half the band a tone is 3 dB down: 0.707 of its depth, within a tenth."""
    width = club_set.gain_and_bandwidth(*asked)[1]
    left = 10 ** (tone_left_with(*asked, WEAK, width / 2) / 20)
    assert left == pytest.approx(np.sqrt(0.5), rel=WITHIN)


@pytest.mark.parametrize("asked", of("club_set:growth_rate"))
def test_growth_with_no_station(asked):
    assert knocked(*asked)[1] == pytest.approx(club_set.growth_rate(*asked), rel=WITHIN)


@pytest.mark.parametrize("asked", [one for one in of("club_set:threshold_throttle") if len(one) == 1])
def test_threshold_with_no_station(asked):
    edge = club_set.threshold_throttle(*asked)
    assert knocked(*asked, 0.98 * edge)[1] < 0 < knocked(*asked, 1.02 * edge)[1]


@pytest.mark.parametrize("asked", of("club_set:pulled"))
def test_pulled_as_far_by_the_engine(asked):
    """A knock rings where the knobs have drawn the set, its tuning condenser left where it was with the throttle shut."""
    frequency, throttle, *coupling = asked
    there = club_set.on_station(frequency, THROTTLE_RANGE[0])
    there = replace(there, throttle_capacitance=throttle, aerial_tuned=(coupling or [there.aerial_tuned])[0])
    heard = follow(np.zeros(40), FINE, frequency, there, state=start(seed=1e-4))
    turned = np.polyfit(np.arange(40 - 1) / FINE, np.unwrap(np.angle(heard.grid)), 1)[0] / (2 * np.pi)
    band = abs(ring(there)[1]) / np.pi
    assert turned == pytest.approx(club_set.pulled(*asked), rel=WITHIN, abs=0.02 * band)


def test_ohms_add_up_to_the_engines_growth():
    """All that the ohms of the tables leave is what a ring dies by: twice the inductance times its decay."""
    for throttle in (50e-12, 80e-12, 110e-12, 150e-12):
        left = sum(club_set.losses(1107e3)[:3]) + club_set.feedback_on(1107e3, throttle)[0]
        decay = -knocked(1107e3, throttle)[1] * 2 * 200e-6
        assert decay == pytest.approx(left, abs=WITHIN * sum(club_set.losses(1107e3)))


def test_carriers_of_the_pages_are_the_stations_own():
    for asked in of("signals:gain_with") + of("signals:swing_with") + of("signals:tone_left_with"):
        assert asked[2] == pytest.approx(aerial_crest(OWN[asked[0]].field), rel=0.01)


TABLE_ROWS = [
    (line, values)
    for _, line, name, values, _ in ROWS
    if line.startswith("|") and name == "club_set:gain_and_bandwidth" and len(values) == 2 and values[0] in OWN
]


@pytest.mark.parametrize(("line", "asked"), TABLE_ROWS)
def test_where_a_stations_own_carrier_changes_the_row_the_row_says_so(line, asked):
    """Of a table that is of a weak station alone, the heading or the page must say so: edge.md's and anode.md's do."""
    own = gain_with(*asked, aerial_crest(OWN[asked[0]].field))
    if own == pytest.approx(club_set.gain_and_bandwidth(*asked)[0], rel=WITHIN):
        return
    page = next(page.read_text() for page in PAGES if line in page.read_text())
    assert "signals:" in line or re.search(r"for\W+weak signals|weak station", page)


def test_strong_and_weak_part_as_the_lesson_says():
    own = aerial_crest(ACROSS_THE_BAY.field)
    for throttle in (10e-12, 50e-12, 80e-12):
        assert gain_with(1107e3, throttle, own) > (1 + WITHIN) * club_set.gain_and_bandwidth(1107e3, throttle)[0]
    assert gain_with(1107e3, 110e-12, own) < 0.5 * club_set.gain_and_bandwidth(1107e3, 110e-12)[0]
    assert aerial_crest(NEXT_CHANNEL.field) == pytest.approx(2e-3, rel=0.02)
    for throttle, parts in ((100e-12, False), (120e-12, True)):
        weak, strong = (tone_left_with(855e3, throttle, emf, 3e3) for emf in (WEAK, aerial_crest(NEXT_CHANNEL.field)))
        assert (abs(weak - strong) > 6) == parts
    # "A few picofarads on, this set breaks into song with the station on, long before its own threshold".
    short, on = (swing_with(855e3, throttle, aerial_crest(NEXT_CHANNEL.field)) for throttle in (120e-12, 125e-12))
    assert short < 0.2 < 3 < on
    assert club_set.threshold_throttle(855e3) > 132e-12
