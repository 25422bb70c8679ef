"""Answers right but for one slip, of the shapes that a check lets through most easily: none of them earns full marks.

The shapes: numbers cut short by the type of an array; an equality on the wrong side; more let in than the docstring says; a range
that ends early. They were written from stubs and references alone, by someone who had not yet read how the exercises are judged.
"""

from typing import NamedTuple

import pytest

from checker.course import find, load_exercise
from checker.judging.judge import judge
from tests.exercises.every_mutant import SEED, sources
from tests.exercises.near_misses import bare


class Slip(NamedTuple):
    """What stands in the reference of an exercise, and what this member has written instead."""

    exercise: str
    says: str
    right: str
    wrong: str


SLIPS = [
    Slip(
        "prefixes",
        "a prefix on a unit that takes none",
        "in PREFIXED_UNITS:\n            return exponent",
        "in PREFIXED_UNITS + PLAIN_UNITS[1:]:\n            return exponent",
    ),
    Slip("dropper_resistor", "a rail of just the filament's voltage refused", "drop < 0", "drop <= 0"),
    Slip(
        "sideband_power",
        "an integer 0 first",
        "return depth**2 / (2 + depth**2)",
        "return np.vectorize(lambda m: 0 if m == 0 else m**2 / (2 + m**2))(depth)[()]",
    ),
    Slip(
        "channel_plan",
        "half the oscillator's reading let in",
        "np.less_equal(reading, np.divide(oscillator_reading, 2))",
        "np.less(reading, np.divide(oscillator_reading, 2))",
    ),
    Slip(
        "channel_plan",
        "any spacing between the two",
        "if spacing not in FIRST_AND_LAST:",
        "spacing = min(FIRST_AND_LAST, key=lambda one: abs(one - spacing))\n    if not 8000 < spacing < 11000:",
    ),
    Slip("field_strength", "fifty terms of a hundred", "range(1, 201, 2)", "range(1, 101, 2)"),
    Slip(
        "wire_resistance",
        "an integer 1 first",
        "return (1 - w / 2 / level).real",
        "return np.vectorize(lambda x, r: 1 if x == 0 else r)(radius_over_skin_depth, (1 - w / 2 / level).real)[()]",
    ),
    Slip(
        "wire_resistance",
        "half a gauge read as a whole one",
        "if gauge not in SWG_DIAMETER_INCHES:",
        "gauge = int(gauge)\n    if gauge not in SWG_DIAMETER_INCHES:",
    ),
    Slip(
        "wire_resistance",
        "half as long numbers inside",
        "92 ** ((36 - gauge) / 39)",
        "(92 ** ((36 - np.asarray(gauge, np.float32)) / 39))[()]",
    ),
    Slip(
        "self_capacitance",
        "the longest coil of the table refused",
        "shape > LENGTH_OVER_DIAMETER[-1]",
        "shape >= LENGTH_OVER_DIAMETER[-1]",
    ),
    Slip(
        "winding_sheet",
        "looks up to three hundred diameters",
        "    if inductance > greatest:",
        "    if inductance > 0.3 * greatest:",
    ),
    Slip("aerial_coupling", "coils of coupling 1 refused", "if np.any(product < 1):", "if np.any(product <= 1):"),
    Slip("ring_down", "a fraction of 1 refused", "np.asarray(fraction) > 1)", "np.asarray(fraction) >= 1)"),
    Slip("rectified_voltage", "strong carriers all alike", "weak = np.log1p", "x = np.minimum(x, 700)\n    weak = np.log1p"),
    Slip(
        "triode_current",
        "an integer 0 first",
        "return np.maximum(grid_voltage + anode_voltage / amplification_factor + offset, 0.0)",
        "pull = grid_voltage + anode_voltage / amplification_factor + offset\n    return np.vectorize(lambda x: x if x > 0 else 0)(pull)[()]",
    ),
    Slip("load_line", "an anode at just 0 V refused", "* load > supply):", "* load >= supply):"),
    Slip(
        "load_line",
        "whole volts make whole amperes",
        "return (supply - anode_voltage) / load",
        "drop = np.asarray(supply - anode_voltage)\n    current = np.empty_like(drop)\n    current[...] = drop / load\n    return current[()]",
    ),
    Slip("emission", "looks from 400 K to 3800 K", "colder, hotter = COLDEST, HOTTEST", "colder, hotter = 400.0, 3800.0"),
    Slip("cheap_measurements", "one stop is enough", "min(len(starts), len(stops)) < 2", "len(starts) < 2"),
    Slip("oscillation_point", "looks from a fiftieth on", "low, high = 0.0, 1.0", "low, high = 0.02, 0.98"),
    Slip(
        "pull_in",
        "an integer 0 first",
        "return np.sqrt(np.clip(offset**2 - hold**2, 0, None))",
        "return np.vectorize(lambda d, h: 0 if abs(d) <= h else np.sqrt(d**2 - h**2))(offset, hold)[()]",
    ),
    Slip(
        "hysteresis",
        "just at the start it does not start",
        "if returned < needed[rising if oscillating else 0]:",
        "if returned <= needed[rising if oscillating else 0]:",
    ),
    Slip("limit_amplitude", "looks up to 190 V", "low, high = 1e-6, WIDEST", "low, high = 1e-6, 0.95 * WIDEST"),
    Slip(
        "rejection",
        "an integer 0 first",
        "return np.sqrt(10 ** (np.maximum(lacking, 0.0) / 10) - 1) / np.abs(away - 1 / away)",
        "return np.vectorize(lambda more, x: 0 if more <= 0 else np.sqrt(10 ** (more / 10) - 1) / abs(x - 1 / x))(lacking, away)[()]",
    ),
    Slip(
        "night_path",
        "any month has 31 days",
        'f"{year:04.0f}-{month:02.0f}-{day:02.0f}")',
        'f"{year:04.0f}-{month:02.0f}-01") + (int(day) - 1)',
    ),
    Slip("two_stage_audio", "a swing of just the bias refused", "if np.any(swing > -bias):", "if np.any(swing >= -bias):"),
]


@pytest.mark.parametrize("slip", SLIPS, ids=lambda slip: f"{slip.exercise}: {slip.says}")
def test_an_answer_with_one_slip_does_not_earn_full_marks(slip, worker):
    path, files = find(slip.exercise), sources("solutions")
    source = files[f"{path}.py"]
    assert source.count(slip.right) == 1
    promised = {question.name for question in load_exercise(path).questions if question.refuses}
    handed_in = bare(source.replace(slip.right, slip.wrong), promised)
    verdict = judge(path, files | {f"{path}.py": handed_in}, worker, SEED)
    assert verdict.earned < verdict.marks
