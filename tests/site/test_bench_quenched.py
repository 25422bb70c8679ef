"""The browser bench's quenched set against `solutions/`: its closed forms, its knobs, and what is heard burst by burst."""

import numpy as np
import pytest

from course.circle import quenched
from course.circle.levels import LOWEST
from course.circle.quenched import CAPACITANCE, FREQUENCY, LIMIT, QUALITY, QUENCH, TEMPERATURE
from solutions.unit03_tuned_circuit.reflected_impedance import reflected_impedance
from solutions.unit04_crystal_set.crystal_set import SENSITIVITY
from solutions.unit07_oscillation.build_up import amplitude, growth_rate, starting_voltage
from solutions.unit07_oscillation.stage import SALTMARSH_STAGE
from solutions.unit09_feedback_receivers import quench

from .bench_asked import asked

EXACT, ENVELOPE = 1e-9, 1e-3
PASCALS = 20e-6 * 10 ** (SENSITIVITY / 20) / np.sqrt(1e-3 * SALTMARSH_STAGE.load_resistance)  # for each volt of tone


def exact(found, wanted):
    assert found == pytest.approx(wanted, rel=EXACT, abs=0)


def drawn(count=60):
    """Growth, decay, frequency, capacitance, start and half of a quench cycle."""
    generator = np.random.default_rng(9)
    ends = (2e5, 3e6), (5e5, 3e6), (20e6, 40e6), (5e-12, 50e-12), (1e-6, 2.9), (5e-6, 30e-6)
    return [[float(np.exp(generator.uniform(*np.log(e)))) for e in ends] for _ in range(count)]


def test_closed_forms(figures):
    cases = drawn()
    asks = []
    for g, d, f, c, v, t in cases:
        asks += [
            ("growthRate", [f, d / 1e4, g / 1e6]),
            ("startingVoltage", [c, 290.0]),
            ("amplitude", [t, v, 3.0, g]),
            ("signalStart", [f, v, g, d]),
            ("relativeResponse", [g / 10, g, d]),
            ("meanSwing", [v, 3.0, g, d, t, 1.3 * t]),
            ("bandwidth", [g, d]),
        ]
    found = iter(asked(figures, [("quenched", {"call": call, "args": args}) for call, args in asks]))
    for g, d, f, c, v, t in cases:
        exact(next(found), growth_rate(f, d / 1e4, g / 1e6))
        exact(next(found), starting_voltage(c, 290.0))
        exact(next(found), amplitude(t, v, 3.0, g))
        exact(next(found), quench.signal_start(f, v, g, d))
        exact(next(found), quench.relative_response(g / 10, g, d))
        exact(next(found), quench.mean_swing(v, 3.0, g, d, t, 1.3 * t))
        exact(quench.relative_response(next(found) / 2, g, d), np.sqrt(0.5))


def state(figures, frequency=FREQUENCY, **knobs):
    (begun,) = asked(figures, [("bench", {"call": "startingState", "args": ["quenched"]})])
    (tuned,) = asked(figures, [("bench", {"call": "tunedTo", "args": [{**begun, **knobs}, frequency]})])
    return tuned


def on_the_bench(figures, call, *args):
    (answer,) = asked(figures, [("bench", {"call": call, "args": list(args)})])
    return answer


KNOBS = [  # frequency, coupling, part of the loss, quench
    (28.3e6, 1e-9, 1.2, 32e3),
    (30e6, 4e-9, 1.6, 32e3),
    (30.912e6, 20e-9, 1.5, 45e3),
    (31.9e6, 12e-9, 2.2, 25e3),
]


@pytest.mark.parametrize(("frequency", "coupling", "part", "quench_frequency"), KNOBS)
def test_what_the_knobs_make_of_it(figures, frequency, coupling, part, quench_frequency):
    """The coil loaded by the loop as unit 3 has it, then grown and died away as unit 9 has it."""
    there = state(figures, frequency, coupling=coupling, throttle=part, quench=quench_frequency)
    bursts = on_the_bench(figures, "quenchedOf", there)
    exact(bursts["frequency"], frequency)
    inductance = 1 / ((2 * np.pi * FREQUENCY) ** 2 * CAPACITANCE)
    dial = 1 / (2 * np.pi * np.sqrt(inductance * there["tuning"]))
    exact(on_the_bench(figures, "dialFrequency", there), dial)
    loop = quenched.LOOP_RESISTANCE + 2j * np.pi * dial * quenched.LOOP_INDUCTANCE
    reflected = reflected_impedance(dial, coupling, loop)
    reactance = 2 * np.pi * dial * inductance
    loss = reactance / QUALITY
    quality = (reactance + reflected.imag) / (loss + reflected.real)
    exact(frequency, dial * np.sqrt(reactance / (reactance + reflected.imag)))
    decay = -growth_rate(frequency, quality, 0.0)
    growth = growth_rate(frequency, quality, part * loss / (loss + reflected.real))
    exact([bursts["decay"], bursts["growth"]], [decay, growth])
    into_coil = 2 * np.pi * dial * coupling / abs(loop)
    exact(bursts["gain"], quench.signal_start(frequency, into_coil, growth, decay))
    exact(bursts["heat"], starting_voltage(there["tuning"], TEMPERATURE) * np.sqrt(1 + decay / growth))
    half, begun = 0.5 / quench_frequency, np.sqrt(2) * bursts["heat"]
    exact(bursts["died"], decay * half)
    exact(bursts["grown"], np.log(amplitude(half, begun, LIMIT, growth) / begun))
    if growth < decay:  # the whole cycle, without the shortcut of a long growth and a long quench
        top = quench.linear_gain(frequency, growth, decay, half, half) * into_coil
        short = np.exp(-growth * half) + np.exp((growth - decay) * half)
        assert bursts["gain"] * np.exp(growth * half) == pytest.approx(top, rel=2 * short, abs=0)


def test_response_band_and_stations(figures):
    there = state(figures, 29.6e6, throttle=1.3)
    bursts = on_the_bench(figures, "quenchedOf", there)
    offsets = np.array([-900e3, -400e3, -50e3, 0.0, 120e3, 700e3])
    curve = on_the_bench(figures, "response", there, (bursts["frequency"] + offsets).tolist())
    curve = [curve[str(n)] for n in range(offsets.size)] if isinstance(curve, dict) else curve
    wanted = bursts["gain"] * quench.relative_response(offsets, bursts["growth"], bursts["decay"])
    assert curve == pytest.approx(wanted, rel=EXACT, abs=0)
    band = on_the_bench(figures, "band", there)
    edges = np.array([band["low"], band["high"]]) - bursts["frequency"]
    assert quench.relative_response(edges, bursts["growth"], bursts["decay"]) == pytest.approx(np.sqrt(0.5), rel=1e-6)
    for found, (name, frequency, emf) in zip(on_the_bench(figures, "stations", there), quenched.TINS, strict=True):
        assert found["name"] == name
        off_tune = quench.relative_response(frequency - bursts["frequency"], bursts["growth"], bursts["decay"])
        exact(found["grid"], np.sqrt(2) * emf * bursts["gain"] * off_tune)
    assert on_the_bench(figures, "tunedStation", there)["name"] == "Oatcake"


def with_only(figures, *tins, **changed):
    """The figures with these test oscillators alone: a name, hertz, volt r.m.s. each."""
    its = figures["sets"]["quenched"]
    stations = [{"name": name, "frequency": frequency, "emf": emf} for name, frequency, emf in tins]
    quenched = {**its, "stations": stations, "quenched": {**its["quenched"], **changed}}
    ear = {**figures["ear"], "loudest": 1e3}  # no soft stop
    return {**figures, "ear": ear, "sets": {**figures["sets"], "quenched": quenched}}


@pytest.mark.parametrize(("part", "emf"), [(1.25, 30e-6), (1.6, 1e-3)], ids=["linear", "logarithmic"])
def test_a_station_is_heard_as_the_mean_swing_goes(figures, part, emf):
    """Without heat, on one carrier: height of the bursts, and the tone against the mean swing of a modulated start."""
    alone = with_only(figures, ("Oatcake", FREQUENCY, emf), temperature=1e-20)
    there = state(alone, throttle=part)
    bursts = on_the_bench(alone, "quenchedOf", there)
    depth, tone = 0.3, 400.0
    heard = on_the_bench(alone, "listen", there, {"tone": tone, "depth": depth})
    begins = np.sqrt(2) * emf * bursts["gain"] * (1 + depth * np.sin(2 * np.pi * np.arange(720) / 720))
    times = LIMIT, bursts["growth"], bursts["decay"], 0.5 / QUENCH, 0.5 / QUENCH
    tops = amplitude(times[3], begins, LIMIT, bursts["growth"])
    assert heard["grid"] == pytest.approx(np.mean(tops), rel=ENVELOPE, abs=0)
    swing = quench.mean_swing(begins, *times)
    crest = abs(np.mean(swing * np.exp(2j * np.pi * np.arange(720) / 720))) * 2
    its = alone["sets"]["quenched"]["quenched"]
    pressure = crest * its["audio_gain"] * PASCALS / np.sqrt(2)
    pressure /= 1 + (LOWEST / tone) ** 2  # twice a first-order high pass
    pressure /= 1 + (2 * np.pi * tone * its["audio_time"]) ** 2  # twice a low pass
    assert heard["level"] == pytest.approx(20 * np.log10(pressure / 20e-6), abs=0.1)
    if part == 1.6:  # the logarithm of 1 + m sin has a first harmonic of 2 (1 − √(1 − m²))/m: Fourier
        assert np.ptp(tops) < 0.01 * LIMIT
        each = LIMIT * QUENCH / bursts["growth"]
        assert crest == pytest.approx(each * 2 * (1 - np.sqrt(1 - depth**2)) / depth, rel=0.01)


def rush_of(figures, there, rate=int(QUENCH)):
    """R.m.s. of the mean swing in volts when no station sends, a value for each burst."""
    silent = with_only(figures, audio_time=1e-9)
    change = {"sets": silent["sets"], "ear": silent["ear"]}
    (played,) = asked(figures, [("played", {"change": change, "state": there, "seconds": 0.5, "sampleRate": rate})])
    return np.std(played["last"]) / (PASCALS * figures["sets"]["quenched"]["quenched"]["audio_gain"]), played


def test_the_rush_is_as_loud_as_a_lottery_of_logarithms(figures):
    there = state(figures, throttle=1.9)
    bursts = on_the_bench(figures, "quenchedOf", there)
    _, wanted = quench.logarithmic_audio(0.0, LIMIT, bursts["growth"], QUENCH)
    found, played = rush_of(figures, there)
    assert found == pytest.approx(wanted, rel=0.08, abs=0)
    assert not played["oscillates"]


def test_bursts_that_do_not_die_away_begin_from_one_another(figures):
    """Quenched too often there is no lottery left: no rush, and no response."""
    there = state(figures, throttle=2.3, quench=80e3)
    bursts = on_the_bench(figures, "quenchedOf", there)
    assert bursts["grown"] > bursts["died"]
    assert on_the_bench(figures, "response", there, [30e6]) is None and on_the_bench(figures, "band", there) is None
    assert on_the_bench(figures, "edge", there)["share"] > 1
    found, played = rush_of(figures, there, rate=80_000)
    assert played["oscillates"]
    _, lottery = quench.logarithmic_audio(0.0, LIMIT, bursts["growth"], 80e3)
    assert found < 0.3 * lottery
    slower = on_the_bench(figures, "quenchedOf", {**there, "quench": 32e3})
    assert slower["grown"] < slower["died"]
    growths = [on_the_bench(figures, "ring", {**there, "quench": q})["growth"] for q in (80e3, 32e3)]
    exact(growths, [(b["grown"] - b["died"]) * q for b, q in ((bursts, 80e3), (slower, 32e3))])


def test_a_carrier_takes_the_rush_away(figures):
    alone = with_only(figures, ("Gingernut", 30.912e6, 40e-6))
    near, far = (state(alone, 30.912e6, coupling=c) for c in (20e-9, 1e-9))
    heard = [on_the_bench(alone, "listen", there, {"tone": 1000, "depth": 0.0}) for there in (near, far)]
    assert heard[0]["quieting"] > 15 > 3 > heard[1]["quieting"]


def test_two_carriers_beat_as_bursts_see_them(figures):
    """Bursts look 32 thousand times a second: of a beat of 322 kHz they see 2 kHz."""
    pair = with_only(figures, ("Oatcake", 30e6, 400e-6), ("Gingernut", 30.322e6, 400e-6))
    there = state(pair, 30.1e6, throttle=1.6)
    change = {"sets": pair["sets"], "ear": pair["ear"]}
    (played,) = asked(pair, [("played", {"change": change, "state": there, "seconds": 0.3, "sampleRate": 48_000})])
    last = np.array(played["last"])
    spectrum = np.abs(np.fft.rfft(last * np.hanning(last.size)))
    assert np.fft.rfftfreq(last.size, 1 / 48_000)[spectrum.argmax()] == pytest.approx(322e3 - 10 * QUENCH, abs=20)


def test_a_knob_glides_and_a_change_of_set_goes_on_from_the_last_sound(figures):
    there = state(figures)
    to = {**there, "coupling": 2 * there["coupling"], "quench": 40e3}
    (half_way,) = asked(figures, [("nearer", {"from": there, "to": to})])
    assert half_way["coupling"] == pytest.approx(there["coupling"] * 2**0.6) and half_way["tuning"] == there["tuning"]
    assert half_way["quench"] == pytest.approx(QUENCH * (40e3 / QUENCH) ** 0.6)
    (crystal,) = asked(figures, [("bench", {"call": "startingState", "args": ["crystal"]})])
    given = {"states": [there, crystal, there], "seconds": 0.05, "sampleRate": 48_000}
    rush, quiet, again = asked(figures, [("switched", given)])[0]
    assert abs(rush[-1]) > 1e-3 and quiet[0] == pytest.approx(rush[-1], rel=0.02)
    assert abs(quiet[2000]) < 0.02 * np.std(again[1000:])


def test_knobs_beyond_their_stops_are_refused_in_words(figures):
    there = state(figures)
    wrong = [{**there, "quench": 5e3}, {**there, "throttle": 0.5}, {**there, "coupling": 4e-6}]
    for answer in asked(figures, [("bench", {"call": "ring", "args": [w]}) for w in wrong]):
        assert "beyond its stops" in answer["refused"]
