"""`checker hear` for somebody who has the core alone: a receiver all the same, measured beside the further one."""

import math
from dataclasses import replace

import numpy as np
import pytest

from checker.core import CORE as CORE_PATH
from checker.hear import core_way, receiver
from checker.hear.answers import NO_SOUND, MemberAnswers, ReferenceAnswers
from checker.hear.chain import CORE, LENT, YOURS, Origin, reference_chain
from checker.hear.listening import RATE
from checker.hear.receiver import IN_A_ROW, PEAK, play, set_level
from checker.sandbox.workers import start_worker
from checker.worker.rows import call_rows
from checker.worker.wire import to_wire
from solutions.unit09_feedback_receivers import receiver as club
from solutions.unit09_feedback_receivers.links import FALLING
from tests.exercises.every_mutant import sources

EACH = 0.5  # second on each station
GANNET_ROCK = 2
SWING_STEP, DETECT_STEP = "unit09_feedback_receivers/swing_step.py", "unit04_crystal_set/detect_step.py"
# As a beginner writes them: with `math` and `max`, which take one number.
BY_HAND = {
    SWING_STEP: """from math import exp


def swing_step(swing, push, growth, step):
    return swing * exp(growth * step) + push * (exp(growth * step) - 1) / growth
""",
    DETECT_STEP: """from math import exp


def detect_step(held, wave, step, time_constant):
    return max(wave, held * exp(-step / time_constant))
""",
}


def core_files():
    """A member's files: the core's are right, the further ones are stubs."""
    right = sources("solutions")
    core = {f"{path}.py": right[f"{path}.py"] for path in CORE_PATH}
    return sources("exercises") | core | BY_HAND | {"ranges.py": right["ranges.py"]}


@pytest.fixture(scope="module")
def chain():
    return reference_chain()


@pytest.fixture(scope="module")
def worker():
    with start_worker() as warm:
        yield warm


@pytest.fixture(scope="module")
def short():
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(receiver, "SECONDS", 0.2)
        patch.setattr(receiver, "EACH", EACH)
        yield


@pytest.fixture(scope="module")
def reference(chain, short):
    return play(chain, ReferenceAnswers(chain)).sound


@pytest.fixture(scope="module")
def played(chain, worker, short):
    """In a pack: nothing stands in for what is worked out moment by moment."""
    pack = replace(chain, stages={})
    return play(pack, MemberAnswers(pack, core_files(), worker))


def station(sound, place):
    size = round(EACH * RATE)
    return sound[round(0.2 * RATE) :][place * size : (place + 1) * size]


def power(sound, low, high):
    spectrum = np.abs(np.fft.rfft(sound * np.hanning(sound.size))) ** 2
    pitch = np.fft.rfftfreq(sound.size, 1 / RATE)
    return np.sum(spectrum[(pitch >= low) & (pitch < high)])


def above_the_local(sound):
    """Decibels by which Gannet Rock's high tune stands above the local's low one."""
    return 10 * np.log10(power(sound, 320, 700) / power(sound, 130, 310))


def by_formula(function, *columns, carry, lessen=None):
    """`swing_step` as it is asked in the worker."""
    assert function == "swing_step"

    def swing_step(swing, push, growth, step):
        return swing * math.exp(growth * step) + push * math.expm1(growth * step) / growth

    return call_rows(swing_step, list(map(to_wire, columns)), carry, lessen)


def test_each_link_is_ones_own_or_by_the_cores_way_or_lent(played):
    whose = {function: source.whose for (_, function), source in played.sources.items()}
    assert [function for function, one in whose.items() if one == YOURS] == ["aerial_emf"]
    assert [function for function, one in whose.items() if one == LENT] == [
        "loaded_quality_factor",
        "tuned_voltage",
        "knobs",
        "dial_angle",
    ]
    assert str(played.sources["receiver", "circuit_voltage"]) == "yours, the core's way: swing_step"
    assert played.sources["receiver", "receiver on Gannet Rock"] == Origin(CORE, IN_A_ROW)
    assert played.missing == []


def test_the_far_station_is_as_clear_of_the_local_as_in_the_reference(played, reference):
    core, further = (above_the_local(station(sound, GANNET_ROCK)) for sound in (played.sound, reference))
    assert core > 8
    assert core == pytest.approx(further, abs=2)


@pytest.mark.parametrize("place", range(6))
def test_each_station_sounds_as_in_the_reference_and_somewhat_louder(place, played, reference):
    """A perfect detector holds all of a crest of 0.3 to 0.4 V; the grid's curve holds two thirds to four fifths of it."""
    core, further = station(played.sound, place), station(reference, place)
    assert np.corrcoef(core, further)[0, 1] > 0.98
    assert 1 < 20 * np.log10(np.std(core) / np.std(further)) < 4


def test_it_does_not_clip(played, reference):
    heard, _ = set_level(played.sound, reference)
    assert np.max(np.abs(heard)) <= PEAK
    assert -20 < 20 * np.log10(np.std(heard)) < -14


@pytest.mark.parametrize(("hardening", "within"), [(0.0, 1e-10), (500.0, 1e-3)])
def test_steps_in_the_circuits_own_frame_are_the_circuit(hardening, within):
    """With its knobs turned, past the edge and back, a neighbour 9 kHz off, and a start that is not nothing."""
    time = np.arange(2400) / RATE
    emf = 1e-3 * (1 + np.exp(-2j * np.pi * 9e3 * time))
    offset, band = np.interp(time, (0, 0.1), (-4500, 4500)), np.interp(time, (0, 0.05, 0.1), (700, -300, 6000))
    knobs = emf, float(RATE), offset, band, 80e3, hardening, 0.05 - 0.02j
    stepped, wanted = core_way.circuit_voltage(by_formula, *knobs), club.circuit_voltage(*knobs)
    assert np.max(np.abs(stepped - wanted)) < within * np.max(np.abs(wanted))


def test_past_the_edge_it_grows_to_its_limit():
    """The lesson's: at B = −250 Hz and h = 500 Hz/V², √(250/500) V. Where the band is just nothing, it stays finite."""
    nothing = np.zeros(4800, complex)
    swing = core_way.circuit_voltage(by_formula, nothing, float(RATE), 300.0, -250.0, 80e3, 500.0, 1e-3)
    assert abs(swing[-1]) == pytest.approx(math.sqrt(0.5), rel=1e-3)
    still = core_way.circuit_voltage(by_formula, nothing, float(RATE), 0.0, 0.0, 80e3, 0.0, 1e-3)
    assert abs(still[-1]) == pytest.approx(1e-3)


def test_reaction_by_the_cores_way_is_that_of_the_network(chain):
    core = {one.function: one.wanted for one in chain.link("gain").core}
    further = np.array(chain.link("gain").wanted)
    np.testing.assert_allclose(core_way.VALUES["gain"](chain, core), further, rtol=0.02)
    tuned = np.array(core_way.VALUES["tuned_to"](chain, core))
    np.testing.assert_allclose(tuned, np.array(chain.link("tuned_to").wanted, dtype=float), rtol=1e-4)


def test_the_detector_follows_the_tunes_and_no_more():
    """Terman, Radio Engineers' Handbook, 1943, section 7 (from memory): √(1 − m²)/(2πFm), for 70 % at 4 kHz."""
    assert pytest.approx(math.sqrt(1 - 0.7**2) / (2 * np.pi * 4e3 * 0.7), rel=0.02) == FALLING


def test_a_wrong_core_function_is_named_and_lent(chain, worker):
    files = core_files() | {SWING_STEP: BY_HAND[SWING_STEP].replace(" - 1)", ")")}
    values, source = MemberAnswers(chain, files, worker).link(chain.link("circuit_voltage"))
    assert source == Origin(LENT, "not written yet; the core's way waits for swing_step (it does not give the right values)")
    assert values is chain.link("circuit_voltage").wanted


def test_what_is_right_when_judged_and_then_gives_no_sound_is_lent_and_says_so(chain, worker):
    """In its place stands the reference; in a pack nothing does."""
    asked = BY_HAND[SWING_STEP].replace("    return", "    if swing == 0.125:\n        return float('nan')\n    return")
    who = MemberAnswers(chain, core_files() | {SWING_STEP: asked}, worker)
    who.link(chain.link("circuit_voltage"))
    knobs = np.full(10, 1e-3 + 0j), float(RATE), 0.0, 700.0, 80e3, 0.0, 0.125
    assert np.array_equal(who.stage("circuit_voltage")(*knobs), club.circuit_voltage(*knobs))
    assert who.gave_out == {"circuit_voltage": f"swing_step: {NO_SOUND}"}
