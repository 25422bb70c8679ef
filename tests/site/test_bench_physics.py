"""The browser bench's physics against `solutions/`: the same questions to both, the numbers drawn anew from the latter."""

from dataclasses import replace

import numpy as np
import pytest

from course.bench.sets import CRYSTAL_WINDINGS, VALVE_WINDINGS, bench_figures
from course.sounds.reaction import GENTLE
from solutions.unit04_crystal_set.rectified_voltage import i1_over_i0, log_i0
from solutions.unit06_reaction import stability
from solutions.unit06_reaction.network import SALTMARSH_SET, THROTTLE_RANGE
from solutions.unit07_oscillation.cycle import anode_table, grid_table
from solutions.unit07_oscillation.envelope import carrier, follow, start
from solutions.unit07_oscillation.slow_mode import slow_mode
from solutions.unit07_oscillation.stage import SALTMARSH_STAGE, at_rest, small_signal_set

from .bench_asked import asked, plain

EXACT, ENVELOPE = 1e-9, 1e-3
STAGES = {"gentle": GENTLE, "fierce": SALTMARSH_STAGE}


@pytest.fixture(scope="module")
def figures():
    return bench_figures()


def drawn_sets(count=40):
    """Sets with all three knobs anywhere between their stops, and with the tickler either way round."""
    generator = np.random.default_rng(6)
    for n in range(count):
        coupling, tuning, throttle = (
            np.exp(generator.uniform(np.log(low), np.log(high)))
            for low, high in ((2e-6, 40e-6), (47e-12, 450e-12), THROTTLE_RANGE)
        )
        small = small_signal_set(SALTMARSH_SET, GENTLE if n % 2 else SALTMARSH_STAGE)
        turned = replace(small, aerial_tuned=coupling, tuning_capacitance=tuning, throttle_capacitance=throttle)
        yield replace(turned, tuned_tickler=-turned.tuned_tickler) if n % 5 == 0 else turned
    yield CRYSTAL_WINDINGS
    yield small_signal_set(VALVE_WINDINGS, SALTMARSH_STAGE)


def by_turning(poles):
    return sorted(poles, key=lambda pole: (round(pole.imag), pole.real))


def test_poles_and_steady_formula(figures):
    sets = list(drawn_sets())
    found = asked(figures, [("poles", {"network": plain(s)}) for s in sets])
    for ours, set_ in zip(found, sets, strict=True):
        ours, wanted = by_turning([complex(*pole) for pole in ours]), by_turning(stability.poles(set_))
        for one, other in zip(ours, wanted, strict=True):
            assert abs(one - other) < EXACT * abs(other)
    asks = [(s, f) for s in sets for f in (531e3, 846e3, 1.6e6)]
    found = asked(figures, [("formula", {"network": plain(s), "frequency": f}) for s, f in asks])
    for ours, (set_, frequency) in zip(found, asks, strict=True):
        wanted = stability.steady_formula(set_, frequency)
        assert ours == pytest.approx(abs(wanted), rel=EXACT)


def test_response_and_band_or_none_beyond_the_threshold(figures):
    sets = list(drawn_sets())
    frequencies = np.linspace(600e3, 1500e3, 7)
    curves = asked(figures, [("response", {"network": plain(s), "frequencies": frequencies.tolist()}) for s in sets])
    bands = asked(figures, [("band", {"network": plain(s)}) for s in sets])
    singing = 0
    for curve, band, set_ in zip(curves, bands, sets, strict=True):
        if stability.poles(set_)[0].real >= 0:
            assert curve is None and band is None
            singing += 1
            continue
        assert curve == pytest.approx(np.abs(stability.response(set_, frequencies)), rel=EXACT)
        gain, width = stability.gain_and_bandwidth(set_)
        assert band["gain"] == pytest.approx(gain, rel=EXACT)
        assert band["width"] == pytest.approx(width, rel=EXACT)
        assert band["high"] - band["low"] == pytest.approx(width, rel=1e-8)
        assert (band["high"] + band["low"]) / 2 == pytest.approx(stability.ring(set_)[0], rel=EXACT)
    assert 5 < singing < len(sets) - 5


def test_tuning_and_threshold(figures):
    places = [(f, m) for f in (560e3, 846e3, 1107e3, 1449e3) for m in (5e-6, 20e-6, 35e-6)]
    sets = [replace(small_signal_set(SALTMARSH_SET, GENTLE), aerial_tuned=m, throttle_capacitance=5e-12) for _, m in places]
    found = asked(figures, [("retuned", {"network": plain(s), "frequency": f}) for s, (f, _) in zip(sets, places, strict=True)])
    tuned = [stability.retuned(s, f) for s, (f, _) in zip(sets, places, strict=True)]
    assert found == pytest.approx([t.tuning_capacitance for t in tuned], rel=EXACT)
    edges = asked(figures, [("threshold", {"network": plain(t)}) for t in tuned])
    wanted = [stability.threshold(t, "throttle_capacitance", 1e-13, 500e-12) for t in tuned]
    assert edges == pytest.approx(wanted, rel=EXACT)


def test_slow_mode(figures):
    asks = [
        (name, replace(small_signal_set(SALTMARSH_SET, stage), throttle_capacitance=throttle, tuning_capacitance=tuning))
        for name, stage in STAGES.items()
        for throttle, tuning in ((8e-12, 177e-12), (20e-12, 126e-12), (70e-12, 350e-12), (12e-12, 60e-12))
    ]
    given = [(s, STAGES[name], float(stability.ring(s)[0]) + 700) for name, s in asks]
    found = asked(figures, [("slowMode", {"network": plain(s), "stage": plain(g), "reference": f}) for s, g, f in given])
    for ours, (set_, stage, reference) in zip(found, given, strict=True):
        wanted = slow_mode(set_, stage, reference)
        numbers = [complex(v["re"], v["im"]) if isinstance(v, dict) else v for v in ours.values()]
        carrier_rate = 2 * np.pi * reference
        assert abs(numbers[0] - wanted.rate) < EXACT * carrier_rate
        for one, other in zip(numbers[1:], wanted[1:], strict=True):
            assert abs(one - other) < EXACT * abs(other)


def test_tables(figures):
    crests = np.geomspace(1e-6, 1000, 60)
    found = asked(figures, [("bessel", {"x": x}) for x in crests] + [("anodeTable", {"coil": 0.03}), ("gridTable", {})])
    *averages, anode, grid = found
    assert [a["ratio"] for a in averages] == pytest.approx(i1_over_i0(crests), rel=EXACT)
    assert [a["logarithm"] + x for a, x in zip(averages, crests, strict=True)] == pytest.approx(log_i0(crests), rel=1e-7)
    wanted = anode_table(0.03)
    assert np.abs(np.array(anode) - wanted.ravel()).max() < 1e-6 * np.abs(wanted).max()
    assert np.array(grid).reshape(-1, 2) == pytest.approx(grid_table(), rel=1e-6, abs=1e-12)


ENVELOPES = {
    "below the edge": ("gentle", 12e-12, 1e-3, 1000.0, 1e-3),
    "singing, a weak station": ("gentle", 20e-12, 1e-3, 1000.0, 1e-3),
    "held by a strong station": ("gentle", 14e-12, 0.1, 50.0, 0.1),
    "fierce": ("fierce", 30e-12, 1e-3, -2000.0, 0.5),
    "overloaded": ("fierce", 5e-12, 1.0, 3000.0, 0.0),
}


@pytest.mark.parametrize("case", ENVELOPES)
def test_envelope_step_by_step(figures, case):
    feed, throttle, crest, offset, seed = ENVELOPES[case]
    stage, rate, count = STAGES[feed], 96e3, 4800
    set_ = stability.retuned(replace(small_signal_set(SALTMARSH_SET, stage), throttle_capacitance=throttle), 846e3)
    time = np.arange(count + 1) / rate
    emf = carrier(time, offset, crest, 0.5 * np.cos(2 * np.pi * 400 * time))
    wanted = follow(emf, rate, 846e3, set_, stage, start(stage, seed))
    bias, anode = at_rest(stage)
    given = {
        "network": plain(set_), "stage": plain(stage), "rest": {"bias": bias, "anode": anode}, "reference": 846e3,
        "rate": rate, "emf": np.column_stack([emf.real, emf.imag]).tolist(), "seed": seed,
    }  # fmt: skip
    ours = np.array(asked(figures, [("envelope", given)])[0])
    grid = ours[:, 0] + 1j * ours[:, 1]
    assert np.abs(grid - wanted.grid).max() < ENVELOPE * np.abs(wanted.grid).max()
    assert np.abs(ours[:, 2] - wanted.bias).max() < ENVELOPE * np.abs(wanted.bias).max()
    phones = (stage.supply - ours[:, 3]) / stage.load_resistance
    assert np.abs(phones - wanted.phones).max() < ENVELOPE * np.ptp(wanted.phones) + 1e-9
