"""The filament supply: against IEC 60063, a bench figure, and the balance of power."""

import re
import tomllib
from pathlib import Path

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from solutions.unit00_bench.dropper_resistor import (
    PREFERRED,
    current_through_dropper,
    dropper_dissipation,
    dropper_resistance,
    next_preferred,
)

# IEC 60063:2015, Preferred number series for resistors and capacitors. Found in public listings of the standard.
PUBLISHED = tomllib.loads((Path(__file__).parents[1] / "published/coils/preferred_numbers.toml").read_text("utf-8"))

ohms = st.floats(1e-3, 1e9)
amperes = st.floats(1e-3, 10)
volts = st.floats(0.1, 20)
drops = st.floats(0.01, 200)
series = st.sampled_from(list(PREFERRED))


@pytest.mark.parametrize("name", PUBLISHED)
def test_series_are_those_of_iec_60063(name):
    assert list(PREFERRED[name]) == PUBLISHED[name]["values"]
    assert len(PREFERRED[name]) == int(name[1:])


@pytest.mark.parametrize("name", PUBLISHED)
def test_published_series_is_the_rounded_geometric_one_but_for_eight_values(name):
    """The standard's own history: only these depart from rounding 10 · 10^(i/n) to two figures."""
    exact = 10 * 10 ** (np.arange(int(name[1:])) / int(name[1:]))
    assert np.allclose(PUBLISHED[name]["geometric"], exact, rtol=0, atol=6e-4)
    departs = {value for value, plain in zip(PUBLISHED[name]["values"], np.round(exact), strict=True) if value != plain}
    assert departs == {27, 30, 33, 36, 39, 43, 47, 82} & set(PUBLISHED[name]["values"])


@given(st.sampled_from([(name, step) for name in PUBLISHED for step in PUBLISHED[name]["values"]]), st.integers(-6, 8))
def test_a_preferred_value_is_its_own_next(entry, power):
    name, value = entry
    preferred = float(f"{value}e{power}")
    assert next_preferred(preferred, name) == preferred
    assert next_preferred(preferred * (1 + 1e-12), name) == preferred
    assert next_preferred(preferred * 1.001, name) > preferred
    assert next_preferred(preferred * 0.999, name) == preferred


@given(ohms, series)
def test_next_preferred_is_up_by_less_than_one_step(resistance, name):
    steps = np.array([*PUBLISHED[name]["values"], 100])
    ratio = next_preferred(resistance, name) / resistance
    assert 1 - 1e-9 <= ratio <= np.max(steps[1:] / steps[:-1])


@given(ohms, ohms, series)
def test_next_preferred_keeps_the_order(one, other, name):
    lower, higher = sorted([one, other])
    assert next_preferred(lower, name) <= next_preferred(higher, name)


@given(ohms)
def test_a_finer_series_is_never_further_up(resistance):
    assert next_preferred(resistance, "E24") <= next_preferred(resistance, "E12") <= next_preferred(resistance, "E6")


def test_two_volt_filament_from_3_3_volt_rail():
    """14 ohm passes about 93 mA: common practice, no source."""
    assert dropper_resistance(3.3, 2.0, 93e-3) == pytest.approx(14, rel=5e-3)
    assert current_through_dropper(3.3, 14, 2.0, 93e-3) == pytest.approx(93e-3, abs=0.5e-3)
    assert next_preferred(dropper_resistance(3.3, 2.0, 93e-3)) == 15


def test_that_bench_figure_is_a_check_and_the_circle_has_a_supply_of_its_own():
    """Lessons, figures, example sheets and the demo class: it is named where its source is, on the instructor's page."""
    root = Path(__file__).parents[2]
    folders = (
        "course/lessons",
        "course/figures",
        "course/sounds",
        "checker/examples/sheets",
        "checker/examples/demo_class",
        "exercises",
    )
    pages = [file for folder in folders for file in (root / folder).rglob("*") if file.suffix in (".md", ".py", ".toml")]
    told = {file.relative_to(root).as_posix() for file in pages if re.search(r"\b3\.3 V|\b93 mA", file.read_text("utf-8"))}
    assert len(pages) > 150 and told == {"course/lessons/unit00_bench/instructor.md"}


@given(drops, volts, amperes)
def test_power_from_the_rail_is_that_of_filament_and_dropper(drop, filament_voltage, current):
    rail = filament_voltage + drop
    resistance = dropper_resistance(rail, filament_voltage, current)
    in_dropper = dropper_dissipation(rail, filament_voltage, current)
    assert rail * current == pytest.approx(filament_voltage * current + in_dropper, rel=1e-12)
    assert in_dropper == pytest.approx(current**2 * resistance, rel=1e-12)


@given(drops, volts, amperes)
def test_the_calculated_dropper_passes_the_rated_current(drop, filament_voltage, current):
    rail = filament_voltage + drop
    resistance = dropper_resistance(rail, filament_voltage, current)
    assert current_through_dropper(rail, resistance, filament_voltage, current) == pytest.approx(current, rel=1e-12)
    assert current_through_dropper(rail, next_preferred(resistance), filament_voltage, current) <= current * (1 + 1e-9)


@given(st.floats(0.5, 200), st.floats(0, 1e4), volts, amperes)
def test_voltages_round_the_loop_add_up_to_the_rail(rail, resistance, filament_voltage, rated):
    current = current_through_dropper(rail, resistance, filament_voltage, rated)
    assert current * resistance + current * filament_voltage / rated == pytest.approx(rail, rel=1e-12)


def test_arrays_in_arrays_out():
    rails, currents = np.array([[3.3], [6.0]]), np.array([50e-3, 93e-3, 120e-3])
    assert dropper_resistance(rails, 2.0, currents).shape == (2, 3)
    assert dropper_dissipation(rails, 2.0, currents)[1, 2] == dropper_dissipation(6.0, 2.0, 120e-3)
    assert current_through_dropper(rails, 15.0, 2.0, currents).shape == (2, 3)


@pytest.mark.parametrize(
    "refused",
    [
        lambda: dropper_resistance(1.5, 2.0, 93e-3),
        lambda: dropper_resistance(np.array([3.3, 1.5]), 2.0, 93e-3),
        lambda: next_preferred(0.0),
        lambda: next_preferred(-10.0),
        lambda: next_preferred(np.nan),
        lambda: next_preferred(np.inf),
        lambda: next_preferred(10.0, "E13"),
        lambda: dropper_resistance(3.0, 2.0, 0.0),
        lambda: dropper_dissipation(1.0, 2.0, 60e-3),
        lambda: current_through_dropper(3.0, 15.0, 2.0, 0.0),
    ],
)
def test_what_cannot_be_is_refused_in_a_sentence(refused):
    with pytest.raises(ValueError, match="raise a voltage|above (0|zero)|at least|use one of"):
        refused()
