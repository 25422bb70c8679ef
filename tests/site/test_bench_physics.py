"""The browser bench's physics against `solutions/`: the same questions to both, the numbers drawn anew from the latter."""

import itertools
import subprocess
from dataclasses import replace

import numpy as np
import pytest

from course.circle.oscillating import STRAY
from course.circle.set_in_hand import COUNTRY, GENTLE, SetInHand
from course.circle.sets import CRYSTAL_WINDINGS, VALVE_WINDINGS
from solutions.unit01_signal.aerial_voltage import aerial_emf, effective_height
from solutions.unit02_coil_and_condenser.club_coil import coil_resistance
from solutions.unit03_tuned_circuit.reflected_impedance import series_impedance
from solutions.unit04_crystal_set.crystal_set import HEIGHT, SENSITIVITY, TOP
from solutions.unit04_crystal_set.phone_loudness import hearing_threshold
from solutions.unit04_crystal_set.rectified_voltage import i1_over_i0, log_i0
from solutions.unit06_reaction import stability
from solutions.unit06_reaction.network import DIAL, SALTMARSH_SET, THROTTLE_RANGE
from solutions.unit06_reaction.reaction_controls import CONTROLS, edge, turned
from solutions.unit07_oscillation import radiated_field
from solutions.unit07_oscillation.cycle import anode_cycle, grid_table
from solutions.unit07_oscillation.envelope import carrier, follow, start
from solutions.unit07_oscillation.slow_mode import slow_mode
from solutions.unit07_oscillation.stage import SALTMARSH_STAGE, small_signal_set
from solutions.unit08_two_stations.club_evening import skerry_vore_by_night
from solutions.unit09_feedback_receivers import isolated_set
from solutions.unit09_feedback_receivers.isolating_stage import isolation

from .bench_asked import asked, only, plain, tuned_state
from .conftest import ROOT

EXACT, PLAYED = 1e-9, 5e-3  # the second in the steps that sound is played in
STAGES = {"gentle": GENTLE, "fierce": SALTMARSH_STAGE}
CONTROLLED = {"throttle": "throttle", "swinging": "swinging tickler", "shunt": "resistor across the tickler"}  # in CONTROLS


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
        turned = replace(turned, tuned_tickler=-turned.tuned_tickler) if n % 5 == 0 else turned
        yield replace(turned, tickler_conductance=1 / generator.uniform(100, 2000)) if n % 3 == 0 else turned
    yield CRYSTAL_WINDINGS
    yield small_signal_set(VALVE_WINDINGS, SALTMARSH_STAGE)


def with_its_coil(figures, set_):
    """The set with what its coil loses where the bench's dial stands."""
    place = 1 / (2 * np.pi * np.sqrt(set_.tuned_inductance * (set_.tuning_capacitance + set_.grid_anode_capacitance)))
    powers = (place / 1e6) ** ((1 - np.arange(len(figures["coil"]))) / 2)
    return replace(set_, tuned_resistance=float(figures["coil"] @ powers))


def by_turning(poles):
    return sorted(poles, key=lambda pole: (round(pole.imag), pole.real))


def test_the_types_hold():
    done = subprocess.run(["npx", "--no-install", "tsc"], cwd=ROOT / "course", capture_output=True, text=True)
    assert done.returncode == 0, done.stdout + done.stderr


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
        assert ours == pytest.approx(abs(wanted), rel=EXACT, abs=0)


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
        assert curve == pytest.approx(np.abs(stability.response(set_, frequencies)), rel=EXACT, abs=0)
        gain, width = stability.gain_and_bandwidth(set_)
        assert band["gain"] == pytest.approx(gain, rel=EXACT, abs=0)
        assert band["width"] == pytest.approx(width, rel=EXACT, abs=0)
        assert band["high"] - band["low"] == pytest.approx(width, rel=1e-8, abs=0)
        assert (band["high"] + band["low"]) / 2 == pytest.approx(stability.ring(set_)[0], rel=EXACT, abs=0)
    assert 5 < singing < len(sets) - 5


def test_tuning_and_threshold(figures):
    places = [(f, m) for f in (560e3, 846e3, 1107e3, 1449e3) for m in (5e-6, 20e-6, 35e-6)]
    sets = [replace(small_signal_set(SALTMARSH_SET, GENTLE), aerial_tuned=m, throttle_capacitance=20e-12) for _, m in places]
    sets[::3] = [replace(s, tickler_conductance=1 / 2000) for s in sets[::3]]
    found = asked(figures, [("retuned", {"network": plain(s), "frequency": f}) for s, (f, _) in zip(sets, places, strict=True)])
    tuned = [stability.retuned(s, f) for s, (f, _) in zip(sets, places, strict=True)]
    assert found == pytest.approx([t.tuning_capacitance for t in tuned], rel=EXACT, abs=0)
    edges = asked(figures, [("threshold", {"network": plain(t), "control": "throttle"}) for t in tuned])
    wanted = [stability.threshold(t, "throttle_capacitance", *THROTTLE_RANGE) for t in tuned]
    assert edges == pytest.approx(wanted, rel=EXACT, abs=0)


def test_slow_mode(figures):
    asks = [
        (name, replace(small_signal_set(SALTMARSH_SET, stage), throttle_capacitance=throttle, tuning_capacitance=tuning))
        for name, stage in STAGES.items()
        for throttle, tuning in ((40e-12, 177e-12), (150e-12, 126e-12), (400e-12, 350e-12), (90e-12, 60e-12))
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


def test_currents_round_a_cycle(figures):
    generator = np.random.default_rng(3)
    drives = [(steady, crest, *generator.uniform(-0.3, 0.3, 6)) for steady in (-2.0, 0.5, 6.0) for crest in (1e-9, 0.7, 12.0)]
    found = asked(figures, [("anodeCycle", {"drive": drive, "perveance": 267e-6}) for drive in drives])
    for ours, (steady, crest, *overtones) in zip(found, drives, strict=True):
        harmonics = np.array(overtones[::2]) + 1j * np.array(overtones[1::2])
        mean, *currents, slope = anode_cycle(steady, crest, *harmonics, 267e-6)
        wanted = [mean, *(part for current in currents for part in (current.real, current.imag)), slope]
        assert ours == pytest.approx(wanted, rel=EXACT, abs=1e-15)


def test_the_grids_law(figures):
    crests = np.geomspace(1e-6, 1000, 60)
    *averages, grid = asked(figures, [("bessel", {"x": x}) for x in crests] + [("gridTable", {})])
    assert [a["ratio"] for a in averages] == pytest.approx(i1_over_i0(crests), rel=EXACT, abs=0)
    assert [a["logarithm"] + x for a, x in zip(averages, crests, strict=True)] == pytest.approx(log_i0(crests), rel=1e-7)
    assert np.array(grid).reshape(-1, 2) == pytest.approx(grid_table(), rel=1e-6, abs=1e-12)


def test_what_the_coil_loses(figures):
    dial = np.linspace(*DIAL, 40)
    found = asked(figures, [("coil", {"frequency": frequency}) for frequency in dial])
    assert found == pytest.approx(coil_resistance(dial), rel=3e-4, abs=0)


@pytest.mark.parametrize("set_", ["crystal", "valve", "reaction", "isolated"])
def test_a_station_far_off_is_as_strong_on_the_grid_as_the_network_says(figures, set_):
    change = {**only(figures, "Saltmarsh Point", weaker=2000.0), "noise": {"level_at_1_mhz": -200.0, "fall": 0.0}}
    state = tuned_state(figures, set_, 1107e3)
    (played,) = asked(figures, [("played", {"change": change, "state": state, "seconds": 0.05, "sampleRate": 48000})])
    (there,) = asked({**figures, **change}, [("bench", {"call": "stations", "args": [state]})])
    assert played["grid"] == pytest.approx(there[0]["grid"], rel=0.02, abs=0)


def test_whistle_and_neighbour_of_an_oscillating_set(figures):
    """The whistle against the envelope in Python; what the neighbour has against unit 7's functions."""
    frequency = 1107e3
    in_hand = SetInHand(frequency, GENTLE)
    throttle = 1.1 * in_hand.edge
    windings = in_hand.at(throttle)
    fine = 1536e3  # steps a second, as it takes for a thousandth
    state = {**tuned_state(figures, "reaction", frequency), "throttle": throttle}
    state["tuning"] = windings.tuning_capacitance * (1 - 2 * 1800 / frequency)
    windings = with_its_coil(figures, replace(windings, tuning_capacitance=state["tuning"]))
    change = only(figures, "Curlew Bank", weaker=3000.0)
    (heard,) = asked({**figures, **change}, [("bench", {"call": "listen", "args": [state]})])
    crest = np.sqrt(2) * aerial_emf(change["stations"][0]["field"], effective_height(HEIGHT, TOP))
    time = np.arange(int(0.07 * fine) + 1) / fine
    run = follow(carrier(time, 0.0, crest), fine, frequency, windings, GENTLE, start(GENTLE, 0.3))
    late = run.grid[-int(0.04 * fine) :]
    turns = np.unwrap(np.angle(late))
    assert heard["whistle"] == pytest.approx((turns[-1] - turns[0]) / (2 * np.pi) / (late.size / fine), abs=3.0)
    assert 500 < heard["whistle"] < 2500
    assert heard["grid"] == pytest.approx(np.mean(np.abs(late)), rel=PLAYED, abs=0)
    near = heard["neighbour"]
    ringing, _ = stability.ring(small_signal_set(windings, GENTLE))
    parts = SALTMARSH_SET
    aerial = series_impedance(ringing, parts.aerial_inductance, parts.aerial_capacitance, parts.aerial_resistance)
    current = radiated_field.aerial_current(heard["grid"], ringing, state["tuning"], parts.aerial_tuned, aerial)
    power = radiated_field.radiated_power(current, effective_height(HEIGHT, TOP), ringing)
    assert near["current"] == pytest.approx(current, rel=EXACT, abs=0)
    assert near["power"] == pytest.approx(power, rel=EXACT, abs=0)
    assert near["field"] == pytest.approx(radiated_field.nearby_field(power, 30.0, ringing), rel=EXACT, abs=0)
    assert near["noise"] == pytest.approx(radiated_field.noise_field(ringing, 9e3, *COUNTRY), rel=EXACT, abs=0)
    spoiled = radiated_field.spoiled_distance(power, near["wanted"], 40.0, ringing)
    assert near["spoiled"] == pytest.approx(spoiled, rel=EXACT, abs=0)


def test_the_isolated_aerial(figures):
    """Gain, band and threshold against unit 9's set, and how much less of a swing its aerial carries."""
    kind, frequency, throttle = "type 32", 693e3, 100e-12
    state = tuned_state(figures, "isolated", frequency, feed="fierce", throttle=throttle)
    (band,) = asked(figures, [("bench", {"call": "band", "args": [state]})])
    turned = replace(isolated_set.isolated_set(kind), throttle_capacitance=throttle, tuning_capacitance=state["tuning"])
    there = with_its_coil(figures, small_signal_set(turned, SALTMARSH_STAGE))
    gain, width = stability.gain_and_bandwidth(there)
    wire = isolated_set.aerial_impedance(stability.ring(there)[0])
    ahead = isolated_set.VALVES[kind].amplification_factor / abs(1 + wire / isolated_set.GRID_RESISTANCE)
    assert band["gain"] == pytest.approx(ahead * gain, rel=EXACT, abs=0)
    assert band["width"] == pytest.approx(width, rel=EXACT, abs=0)
    (found,) = asked(figures, [("bench", {"call": "edge", "args": [state]})])
    edge = stability.threshold(there, "throttle_capacitance", *THROTTLE_RANGE)
    assert found["at"] == pytest.approx(edge, rel=1e-7) and found["share"] == pytest.approx(throttle / edge, rel=1e-7)
    direct = {**state, "set": "reaction", "coupling": SALTMARSH_SET.aerial_tuned}
    direct, isolated = (
        asked(figures, [("bench", {"call": "neighbour", "args": [s, 1.0]}), ("bench", {"call": "ring", "args": [s]})])
        for s in (direct, state)
    )
    at = isolated[1]["frequency"]
    wire = isolated_set.aerial_impedance(at)
    valve = isolated_set.VALVES[kind]
    windings = isolated_set.WINDING, isolated_set.MUTUAL
    within = valve.anode_resistance, valve.anode_grid
    leak = isolated_set.GRID_RESISTANCE
    coil = SALTMARSH_SET.aerial_inductance - isolated_set.WIRE_INDUCTANCE
    kept = isolation(at, state["tuning"], (coil, SALTMARSH_SET.aerial_tuned), wire, leak, windings, within, STRAY)
    joined = wire + 2j * np.pi * at * coil
    current = radiated_field.aerial_current(1.0, at, state["tuning"], SALTMARSH_SET.aerial_tuned, joined)
    assert isolated[0]["current"] == pytest.approx(current * 10 ** (-kept / 20), rel=EXACT, abs=0)
    assert kept == pytest.approx(isolated_set.kept_back(at, kind, STRAY), abs=0.3)
    assert direct[0]["field"] > 100 * isolated[0]["field"]


@pytest.fixture(scope="module")
def stations(figures):
    """The reaction set, tuned to places over the dial."""
    return {f: tuned_state(figures, "reaction", f, throttle=80e-12) for f in (560e3, 846e3, 1107e3, 1449e3)}


@pytest.mark.parametrize("feed", STAGES)
@pytest.mark.parametrize("by", CONTROLLED)
def test_each_way_to_turn_reaction_up_is_that_of_unit_6(figures, stations, by, feed):
    """The whole network over dial and knob against `turned`, and its edge with the tuning left alone against halving."""
    control = CONTROLLED[by]

    def wound(tuning, place):
        windings, _ = turned(control, place, SALTMARSH_SET, STAGES[feed])
        return with_its_coil(figures, replace(windings, tuning_capacitance=tuning))

    def growth(tuning, place):
        return stability.ring(wound(tuning, place))[1]

    def edge_place(tuning):
        low, high = 0.0, 1.0
        for _ in range(60):
            middle = (low + high) / 2
            low, high = (low, middle) if growth(tuning, middle) > 0 else (middle, high)
        return high

    places = 0.0, 0.25, 0.6, 1.0
    value = CONTROLS[control].value
    for there in stations.values():
        states = [{**there, "by": by, by: float(value(place)), "feed": feed} for place in places]
        calls = [("bench", {"call": call, "args": [s]}) for s in states for call in ("networkOf", "ring", "edge")]
        found = iter(asked(figures, calls))
        assert growth(there["tuning"], 0.0) < 0 < growth(there["tuning"], 1.0)
        last = float(value(edge_place(there["tuning"])))
        for state, place, network, ring, found_edge in zip(states, places, found, found, found, strict=True):
            assert network["network"] == pytest.approx(plain(wound(state["tuning"], place)), rel=EXACT, abs=0)
            frequency, growing = map(float, stability.ring(wound(state["tuning"], place)))
            assert ring["frequency"] == pytest.approx(frequency, rel=EXACT, abs=0)
            assert ring["growth"] == pytest.approx(growing, rel=EXACT, abs=EXACT * frequency)
            assert found_edge["at"] == pytest.approx(last, rel=EXACT, abs=0)
            assert found_edge["share"] == pytest.approx(state[by] / last, rel=EXACT, abs=1e-12)
            assert (found_edge["share"] > 1) == (growing > 0)


@pytest.mark.parametrize("feed", STAGES)
@pytest.mark.parametrize("by", CONTROLLED)
def test_a_set_kept_on_a_station_begins_to_sing_where_unit_6_says(figures, by, feed):
    control = CONTROLLED[by]
    set_ = figures["sets"]["reaction"]
    wound = {**set_["stages"][feed]["network"], **set_["controls"][by]}
    dial = (531e3, 846e3, 1107e3, 1449e3)
    asks = [
        (
            "settled",
            {"network": {**wound, "tuned_resistance": float(coil_resistance(f))}, "control": by, "knob": set_["knobs"][by]},
        )
        for f in dial
    ]
    found = asked(figures, [(ask, {**given, "frequency": f, "growth": 0}) for (ask, given), f in zip(asks, dial, strict=True)])
    wanted = [CONTROLS[control].value(edge(control, f, STAGES[feed])) for f in dial]
    assert [there["value"] for there in found] == pytest.approx(wanted, rel=1e-7, abs=0)


@pytest.mark.parametrize("by", ["swinging", "shunt"])
def test_another_control_takes_over_where_the_set_stood_or_with_least_reaction(figures, stations, by):
    (begun,) = asked(figures, [("bench", {"call": "band", "args": [stations[846e3]]})])
    (there,) = asked(figures, [("bench", {"call": "exchanged", "args": [stations[846e3], by]})])
    back, band = asked(
        figures,
        [
            ("bench", {"call": "exchanged", "args": [there["state"], "throttle"]}),
            ("bench", {"call": "band", "args": [there["state"]]}),
        ],
    )
    assert there["same"] and there["state"]["by"] == by
    assert [band["frequency"], band["width"]] == pytest.approx([begun["frequency"], begun["width"]], rel=1e-6)
    assert back["same"] and back["state"]["throttle"] == pytest.approx(80e-12, rel=1e-6)
    far = {**stations[1449e3], "throttle": 10e-12}
    (least,) = asked(figures, [("bench", {"call": "exchanged", "args": [far, by]})])
    assert not least["same"] and least["state"][by] == figures["sets"]["reaction"]["knobs"][by]["low"]
    rung = asked(figures, [("bench", {"call": "ring", "args": [state]}) for state in (far, least["state"])])
    assert rung[0]["frequency"] == pytest.approx(rung[1]["frequency"], rel=1e-5)


def test_only_the_reaction_set_has_the_choice(figures):
    assert [name for name, its in figures["sets"].items() if "controls" in its] == ["reaction"]
    isolated = {**tuned_state(figures, "isolated", 846e3), "by": "swinging"}
    (answer,) = asked(figures, [("bench", {"call": "ring", "args": [isolated]})])
    assert 'no "swinging"' in answer["refused"]


def test_knobs_glide_from_nothing_and_to_nothing_and_jump_when_exchanged(figures, stations):
    begun = {**stations[846e3], "by": "swinging", "swinging": 0.0}
    ends = [(begun, {**begun, "swinging": 9e-6}), ({**begun, "swinging": 9e-6}, begun), (begun, {**begun, "by": "throttle"})]
    steps = []
    for now, to in ends:
        steps.append(0)
        while now != to and steps[-1] < 40:
            (now,) = asked(figures, [("nearer", {"from": now, "to": to})])
            assert 0 <= now["swinging"] <= 9e-6
            steps[-1] += 1
    assert 3 < steps[0] < 30 and 3 < steps[1] < 30 and steps[2] == 1


def test_hearing_and_telephones(figures):
    tones = [20.0, 63.0, 437.0, 1000.0, 3000.0, 12500.0]
    found = asked(figures, [("threshold_of_hearing", {"frequency": tone}) for tone in tones])
    assert found == pytest.approx([float(hearing_threshold(tone)) for tone in tones], abs=1e-9)
    rate, in_hand = 48_000, SetInHand(846e3, GENTLE)
    time = np.arange(rate // 2) / rate
    volts = 40.0 + 0.02 * np.sin(2 * np.pi * 300 * time) + 0.01 * np.sin(2 * np.pi * 1700 * time)
    pascals = np.sqrt(1e-3 * GENTLE.load_resistance)
    given = {"volts": volts.tolist(), "pascals": float(20e-6 * 10 ** (SENSITIVITY / 20) / pascals), "sampleRate": rate}
    ours = np.array(asked(figures, [("telephones", given)])[0])[rate // 4 :]
    wanted = in_hand.in_the_ear((volts / GENTLE.load_resistance)[:: rate // 16_000])

    def level(sound, rate, tone):
        place = np.arange(sound.size) / rate
        return abs(np.mean(sound * np.exp(-2j * np.pi * tone * place)))

    for tone in (300, 1700):
        assert level(ours, rate, tone) == pytest.approx(level(wanted[4000:], 16_000, tone), rel=0.01)


def test_skerry_vore_is_on_the_air_by_night(figures):
    state = tuned_state(figures, "reaction", 1206e3, throttle=92e-12)
    asks = [("bench", {"call": call, "args": [{**state, "night": n}]}) for call in ("stations", "tunedStation") for n in (0, 1)]
    by_day, by_night, tuned_by_day, tuned_by_night = asked(figures, asks)
    assert {s["name"] for s in by_night} - {s["name"] for s in by_day} == {"Skerry Vore"}
    assert tuned_by_night["name"] == "Skerry Vore" != tuned_by_day["name"]
    crest = np.sqrt(2) * aerial_emf(skerry_vore_by_night(), effective_height(HEIGHT, TOP))
    assert tuned_by_night["emf"] == pytest.approx(crest, rel=EXACT, abs=0)


def test_knobs_beyond_their_stops_are_refused_in_words(figures):
    state = tuned_state(figures, "reaction", 846e3)
    wrong = [{**state, "throttle": 1e-9}, {**state, "coupling": -1e-6}, {**state, "tuning": None}, {**state, "set": "cat"}]
    for answer in asked(figures, [("bench", {"call": "ring", "args": [w]}) for w in wrong]):
        assert "beyond its stops" in answer["refused"] or "no set" in answer["refused"]


def test_every_corner_of_the_knobs_is_a_set_that_can_be_played(figures):
    asks = []
    for name, set_ in figures["sets"].items():
        for by in set_.get("controls", ["throttle"]):
            idle = {*CONTROLLED} - {by}
            knobs = [(k, v) for k, v in set_["knobs"].items() if k not in idle]
            for corner, feed in itertools.product(np.ndindex(*(3,) * len(knobs)), set_["feeds"]):
                place = {
                    k: (v["low"], (v["low"] * v["high"]) ** 0.5, v["high"])[c] for c, (k, v) in zip(corner, knobs, strict=True)
                }
                state = {
                    "throttle": 1e-12,
                    **place,
                    "set": name,
                    "by": by,
                    "feed": feed,
                    "night": True,
                    "magnify": 1,
                    "volume": 0,
                }
                asks.append(("played", {"change": {}, "state": state, "seconds": 0.01, "sampleRate": 48000}))
    for played in asked(figures, asks):
        assert played["fault"] == "" or "further than any valve" in played["fault"]
        assert np.isfinite(played["last"]).all() and 0 <= played["grid"] < 140


def test_the_limiter_lets_nothing_past_one_and_cuts_nothing(figures):
    rate, generator = 48_000, np.random.default_rng(8)
    time = np.arange(rate // 4) / rate
    bursts = np.where((time * 20).astype(int) % 2, 30.0, 0.5) * np.sin(2 * np.pi * 777 * time)
    click = np.zeros(time.size)
    click[[3000, 3001, 7000]] = 1e3, -1e3, -4.0
    noise = generator.standard_normal(time.size) * 10 ** (2 * np.sin(9 * time))
    loud, soft = 5 * np.sin(2 * np.pi * 1000 * time), 0.99 * np.sin(2 * np.pi * 1000 * time)
    sounds = (bursts, click, noise, loud, soft)
    found = asked(figures, [("limited", {"samples": s.tolist(), "sampleRate": rate}) for s in sounds])
    for sound, limited in zip(sounds, found, strict=True):
        out, delay = np.array(limited["out"]), limited["delay"]
        came = np.concatenate([np.zeros(delay), sound[: sound.size - delay]])
        assert np.abs(out).max() <= 1
        gain = out[np.abs(came) > 1e-3] / came[np.abs(came) > 1e-3]
        assert gain.min() > 0 and gain.max() <= 1 + 1e-12
        # a gain that glides is a smooth factor; a sample that was cut would make it jump
        assert sound is click or np.abs(np.diff(gain)).max() < 0.05
    settled = np.array(found[3]["out"])[-4800:]
    spectrum = np.abs(np.fft.rfft(settled))
    assert spectrum[200] < 0.002 * spectrum[100] and spectrum[300] < 0.002 * spectrum[100]
    assert np.abs(np.array(found[4]["out"])[found[4]["delay"] :] - soft[: -found[4]["delay"]]).max() < 1e-12
