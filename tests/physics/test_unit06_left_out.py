"""What unit 6 leaves out: each size once more, from closed forms and with the thing itself in the circuit."""

import csv

import numpy as np
import pytest

from solutions.unit06_reaction.club_set import feedback_on, threshold_throttle
from solutions.unit06_reaction.left_out import (
    COIL_GROWS,
    HAND,
    LEFT_OUT,
    WARMER,
    WORST_RESISTANCE,
    WORST_SLOPE,
    size_of,
    threshold_moved,
    tuning_moved,
    valve_behind,
)
from solutions.unit06_reaction.network import CHOKE, CONDENSER, SALTMARSH_SET, VALVE, saltmarsh_set
from tests.physics.conftest import TABLES

CURLEW_BANK = 1107e3
NAMES = [row.name for row in LEFT_OUT]


@pytest.mark.parametrize("name", NAMES)
def test_each_is_a_finite_size_that_is_not_nothing(name):
    size = size_of(name, CURLEW_BANK)
    assert np.isfinite(size) and size != 0


def test_unchanged_set_moves_nothing_and_valve_is_the_sets_own():
    assert threshold_moved(lambda of: {}, CURLEW_BANK) == 0
    assert tuple(valve_behind(CONDENSER).values()) == pytest.approx(VALVE, rel=1e-9)


def test_choke_is_below_a_part_in_five_hundred_of_the_anodes_capacitance():
    less = 1 / ((2 * np.pi * CURLEW_BANK) ** 2 * CHOKE)
    assert less / SALTMARSH_SET.anode_capacitance == pytest.approx(1e-3, rel=0.05)
    assert 0 < -size_of(NAMES[0], CURLEW_BANK) < 2e-3


def test_tuning_moves_as_thomsons_formula_says():
    """f goes as the root of 1/LC, and so by half of what either grows; the throttle shut, the valve adds some 6 pF to C."""
    grown = tuning_moved(lambda of: {"tuned_inductance": (1 + COIL_GROWS * WARMER) * of.tuned_inductance}, CURLEW_BANK)
    assert grown == pytest.approx(-CURLEW_BANK * COIL_GROWS * WARMER / 2, rel=0.1)
    whole = 1 / ((2 * np.pi * CURLEW_BANK) ** 2 * SALTMARSH_SET.tuned_inductance)
    assert size_of("a hand near the live end", CURLEW_BANK) == pytest.approx(-CURLEW_BANK * HAND / whole / 2, rel=0.1)


def test_coil_costs_what_its_share_of_all_losses_is():
    """A fifth more of 6.3 Ω, against what a per cent of throttle pays: both from the growth rate, not from the threshold."""
    edge = threshold_throttle(CURLEW_BANK)
    slope = (feedback_on(CURLEW_BANK, 1.01 * edge)[0] - feedback_on(CURLEW_BANK, 0.99 * edge)[0]) / 0.02
    more = 0.2 * saltmarsh_set(CURLEW_BANK).tuned_resistance
    assert size_of("a coil of a fifth more resistance", CURLEW_BANK) == pytest.approx(-more / slope, rel=0.1)


def test_worst_valve_is_the_tables():
    lines = (line for line in (TABLES / "valve/triode_spread.csv").open() if not line.startswith("#"))
    rows = {row["specimen"]: row for row in csv.DictReader(lines) if row["type"] == "30"}
    sheet, worst = rows["sheet (RCA)"], min(rows.values(), key=lambda row: float(row["gm_ms"]))
    assert pytest.approx(float(worst["gm_ms"]) / float(sheet["gm_ms"]), rel=1e-3) == WORST_SLOPE
    assert pytest.approx(float(worst["ra_kohm"]) / float(sheet["ra_kohm"]), rel=1e-3) == WORST_RESISTANCE


def test_no_such_row_is_refused():
    with pytest.raises(ValueError, match="nothing called"):
        size_of("the moon", CURLEW_BANK)
