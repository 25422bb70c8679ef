"""The browser bench's march through time, behind a valve and behind a crystal, against `solutions/` and against SciPy."""

from dataclasses import replace

import numpy as np
import pytest
from scipy.integrate import solve_ivp
from scipy.optimize import brentq
from scipy.special import i0e, i1e

from course.circle.set_in_hand import GENTLE
from course.circle.sets import CRYSTAL_STAGE, CRYSTAL_WINDINGS
from solutions.unit01_signal.aerial_voltage import aerial_emf, effective_height
from solutions.unit04_crystal_set.crystal_set import COIL, HEIGHT, LOAD, SENSITIVITY, TOP
from solutions.unit04_crystal_set.detector_load import detector_powers, working_point
from solutions.unit04_crystal_set.phone_loudness import hearing_threshold, sound_pressure_level
from solutions.unit06_reaction import stability
from solutions.unit06_reaction.network import SALTMARSH_SET, saltmarsh_set
from solutions.unit06_reaction.reaction_controls import CONTROLS, edge
from solutions.unit07_oscillation.envelope import RATE, carrier, follow, start
from solutions.unit07_oscillation.slow_mode import slow_mode
from solutions.unit07_oscillation.stage import SALTMARSH_STAGE, at_rest, small_signal_set
from solutions.unit07_oscillation.station_on import threshold_in_silence, threshold_with_station
from solutions.unit07_oscillation.stepping import MOST_GROWTH

from .bench_asked import asked, only, plain, tuned_state

ENVELOPE = 1e-3
FINE = 1536e3  # steps a second: both marches are then within a thousandth of what shorter steps would give
STAGES = {"gentle": GENTLE, "fierce": SALTMARSH_STAGE}
ENVELOPES = {
    "below the edge": ("gentle", 120e-12, 1e-3, 1000.0, 1e-3),
    "singing, a weak station": ("gentle", 250e-12, 1e-3, 1000.0, 1e-3),
    "held by a strong station": ("gentle", 200e-12, 0.1, 50.0, 0.1),
    "fierce": ("fierce", 300e-12, 1e-3, -2000.0, 0.5),
    "as fierce as can be": ("fierce", 500e-12, 1e-3, 500.0, 1e-3),
    "overloaded": ("fierce", 30e-12, 1.0, 3000.0, 0.0),
}


@pytest.mark.parametrize("case", ENVELOPES)
def test_envelope_step_by_step(figures, case):
    feed, throttle, crest, offset, seed = ENVELOPES[case]
    stage, rate, count = STAGES[feed], FINE, 19_200
    set_ = stability.retuned(replace(small_signal_set(SALTMARSH_SET, stage), throttle_capacitance=throttle), 846e3)
    time = np.arange(count + 1) / rate
    emf = carrier(time, offset, crest, 0.5 * np.cos(2 * np.pi * 400 * time))
    wanted = follow(emf, rate, 846e3, set_, stage, start(stage, seed))
    bias, anode = at_rest(stage)
    parts = max(int(np.ceil(abs(slow_mode(set_, stage, 846e3).rate.real) / (MOST_GROWTH * rate))), 1)
    given = {
        "network": plain(set_),
        "stage": plain(stage),
        "rest": {"bias": bias, "anode": anode},
        "reference": 846e3,
        "rate": rate,
        "parts": parts,
        "emf": np.column_stack([emf.real, emf.imag]).tolist(),
        "seed": seed,
    }
    ours = np.array(asked(figures, [("envelope", given)])[0])
    grid = ours[:, 0] + 1j * ours[:, 1]
    assert np.abs(grid - wanted.grid).max() < ENVELOPE * np.abs(wanted.grid).max()
    assert np.abs(ours[:, 2] - wanted.bias).max() < ENVELOPE * np.abs(wanted.bias).max()
    phones = (stage.supply - ours[:, 3]) / stage.load_resistance
    assert np.abs(phones - wanted.phones).max() < ENVELOPE * np.ptp(wanted.phones) + 1e-9


@pytest.mark.parametrize("feed", STAGES)
@pytest.mark.parametrize(("frequency", "coupling"), [(693e3, 20e-6), (846e3, 5e-6), (1107e3, 30e-6)])
def test_the_margin_that_a_stations_carrier_uses_up(figures, feed, frequency, coupling):
    state = tuned_state(figures, "reaction", frequency, throttle=80e-12, coupling=coupling, feed=feed)
    found, station = asked(figures, [("margin", {"state": state}), ("bench", {"call": "tunedStation", "args": [state]})])
    silent = threshold_in_silence(frequency, coupling, STAGES[feed])
    wanted = threshold_with_station(frequency, station["emf"], coupling, STAGES[feed])
    assert found["silent"] == pytest.approx(silent, rel=1e-3) and found["threshold"] == pytest.approx(wanted, rel=4e-3)
    assert found["used"] == pytest.approx(1 - wanted / silent, abs=4e-3)
    assert found["left"] == pytest.approx(wanted / 80e-12 - 1, abs=8e-3)
    assert (found["used"] > 0.1) == (feed == "fierce")


def test_a_set_without_a_throttle_has_no_margin(figures):
    states = [tuned_state(figures, set_, 846e3) for set_ in ("crystal", "valve")]
    assert asked(figures, [("margin", {"state": state}) for state in states]) == [None, None]


BARE = replace(CRYSTAL_WINDINGS, grid_conductance=0.0)  # the march has the crystal itself, not its slope at rest


def crystal_given(emf, rate, reference, set_):
    return {
        "network": plain(set_),
        "stage": plain(CRYSTAL_STAGE),
        "rest": {"bias": 0.0, "anode": 0.0},
        "reference": reference,
        "rate": rate,
        "emf": np.column_stack([emf.real, emf.imag]).tolist(),
        "seed": 0.0,
    }


def seen_by_the_crystal(tuning, frequency, set_=BARE):
    """Volts for each volt in the aerial, and the complex resistance that the crystal is joined to."""
    tuned = replace(set_, tuning_capacitance=tuning)
    alone = stability.steady_formula(tuned, frequency)
    loaded = stability.steady_formula(replace(tuned, grid_conductance=1e-5), frequency)
    return abs(alone), (alone / loaded - 1) / 1e-5


def peak_tuning(frequency):
    """Condenser at which the crystal is joined to a pure resistance."""
    near = 1 / ((2 * np.pi * frequency) ** 2 * COIL)
    return brentq(lambda tuning: seen_by_the_crystal(tuning, frequency)[1].imag, 0.8 * near, 1.1 * near, xtol=1e-20)


def test_the_crystal_settles_where_the_exact_law_says(figures):
    frequency, rate = 846e3, 96e3
    tuning = peak_tuning(frequency)
    gain, resistance = seen_by_the_crystal(tuning, frequency)
    crests = (0.01, 0.1, 1.0, 3.0)
    set_ = replace(BARE, tuning_capacitance=tuning)
    runs = asked(figures, [("envelope", crystal_given(np.full(1500, c, complex), rate, frequency, set_)) for c in crests])
    for crest, run in zip(crests, runs, strict=True):
        law = LOAD, CRYSTAL_STAGE.zero_current, CRYSTAL_STAGE.slope_voltage
        carrier_there, output = working_point(gain * crest, resistance.real, *law)
        assert np.hypot(run[-1][0], run[-1][1]) == pytest.approx(carrier_there, rel=ENVELOPE, abs=0)
        assert -run[-1][2] == pytest.approx(output, rel=ENVELOPE, abs=0)


def test_the_crystal_follows_a_programme(figures):
    """Against the equations of its mode and its condenser, integrated by SciPy."""
    frequency, rate, count = 846e3, 96e3, 240
    set_ = stability.retuned(BARE, frequency)
    time = np.arange(count + 1) / rate

    def emf(t):
        return 0.3 * (1 + 0.7 * np.sin(2 * np.pi * 2000 * t)) * np.exp(2j * np.pi * 1500 * t)

    given = {"network": plain(set_), "stage": plain(CRYSTAL_STAGE), "reference": frequency}
    net = asked(figures, [("slowMode", given)])[0]
    rate_, by_emf, by_grid, at_once = (complex(net[k]["re"], net[k]["im"]) for k in ("rate", "byEmf", "byGrid", "gridAtOnce"))

    def slopes(t, state):
        mode, bias = state[0] + 1j * state[1], state[2]
        grid = mode + at_once * emf(t)
        x = abs(grid) / CRYSTAL_STAGE.slope_voltage
        mean = CRYSTAL_STAGE.zero_current * np.exp(min(bias / CRYSTAL_STAGE.slope_voltage + x, 60.0)) * i0e(x)
        change = rate_ * mode + by_emf * emf(t) + by_grid * 2 * mean * i1e(x) / i0e(x) * grid / abs(grid)
        return [change.real, change.imag, ((CRYSTAL_STAGE.leak_return - bias) / LOAD - mean) / CRYSTAL_STAGE.grid_capacitance]

    # the charge of a step is that which the current at its end would bring: all comes half a step early
    at = time[1:] + 0.5 / rate
    done = solve_ivp(slopes, (0, at[-1]), [0.0, 0.0, 0.0], "LSODA", t_eval=at, rtol=1e-7, atol=1e-9)
    assert done.success
    ours = np.array(asked(figures, [("envelope", crystal_given(emf(time), rate, frequency, set_))])[0])
    late = slice(count // 4, None)
    swing = np.ptp(done.y[2][late])
    assert np.sqrt(np.mean((ours[late, 2] - done.y[2][late]) ** 2)) < 0.008 * swing


def test_level_in_the_ear_of_the_crystal_set(figures):
    station = next(s for s in figures["stations"] if s["name"] == "Curlew Bank")
    alone = {**figures, **only(figures, "Curlew Bank")}
    frequency = station["frequency"]
    state = {**tuned_state(figures, "crystal", frequency), "tuning": peak_tuning(frequency)}
    (heard,) = asked(alone, [("bench", {"call": "listen", "args": [state, {"tone": 400, "depth": 0.3}]})])
    gain, resistance = seen_by_the_crystal(state["tuning"], frequency)
    crest = np.sqrt(2) * aerial_emf(station["field"], effective_height(HEIGHT, TOP))
    *_, tone = detector_powers(
        gain * crest, resistance.real, 0.3, LOAD, CRYSTAL_STAGE.zero_current, CRYSTAL_STAGE.slope_voltage
    )
    assert heard["level"] == pytest.approx(sound_pressure_level(tone, SENSITIVITY), abs=0.3)
    assert heard["above"] == pytest.approx(heard["level"] - hearing_threshold(400.0), abs=1e-9)
    assert heard["station"] == "Curlew Bank" and not heard["oscillates"] and heard["neighbour"] is None


@pytest.mark.parametrize(("by", "control"), [("swinging", "swinging tickler"), ("shunt", "resistor across the tickler")])
def test_the_margin_by_another_control_is_where_its_set_begins_to_sing_on(figures, by, control):
    """Kept on the station, the carrier on and then gone: by Python's engine it dies a little below, and stays a little above."""
    frequency, (begun,) = 1107e3, asked(figures, [("bench", {"call": "startingState", "args": ["reaction"]})])
    state = {**begun, "by": by, "feed": "fierce", by: float(CONTROLS[control].value(0.2))}
    (there,) = asked(figures, [("bench", {"call": "tunedTo", "args": [state, frequency]})])
    found, station = asked(figures, [("margin", {"state": there}), ("bench", {"call": "tunedStation", "args": [there]})])
    assert found["silent"] == pytest.approx(CONTROLS[control].value(edge(control, frequency)), rel=1e-3)
    assert found["used"] > 0.1 and found["left"] == pytest.approx(found["threshold"] / state[by] - 1)

    def left_after(value):
        windings = CONTROLS[control].windings(saltmarsh_set(frequency), value)
        there = stability.retuned(small_signal_set(windings, SALTMARSH_STAGE), frequency)
        on = follow(np.full(int(12e-3 * RATE), station["emf"]), RATE, frequency, there, SALTMARSH_STAGE).state
        return np.abs(follow(np.zeros(int(10e-3 * RATE)), RATE, frequency, there, SALTMARSH_STAGE, on).grid[-1])

    assert left_after(0.97 * found["threshold"]) < 0.01 < left_after(1.03 * found["threshold"])
