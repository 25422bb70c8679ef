"""Every public function of solutions/ at the ends of the ranges that its docstring states, beside them and beyond them.

At an end, and next to it, a function gives a finite number, an infinity that its docstring speaks of, or a ValueError; beyond
it, and at an end that the range leaves out, a ValueError. Never a warning, another exception, or a number that is none.
"""

import inspect
import math
import pkgutil
import warnings
from dataclasses import astuple, is_dataclass, replace
from functools import cache
from importlib import import_module

import numpy as np
import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

import solutions
from checker.course import PATHS, load_exercise
from checker.judging.inputs import draw
from solutions.ranges import check_ranges, ends, limits
from solutions.unit06_reaction import reaction_controls, signals
from solutions.unit06_reaction.network import SALTMARSH_SET
from solutions.unit07_oscillation import left_out, station_on
from solutions.unit07_oscillation.stage import SALTMARSH_STAGE

SEED = 20
NEAR = 1e-6  # of the way from an end to a usual value

# Inputs in the middle of the ranges, for functions that no exercise asks for.
USUAL = {
    "unit00_bench.ht_faults.fault_current": (90.0, 100.0, 1e3, 0.0),
    "unit00_bench.ht_faults.fuse_time": (0.3, 0.1),
    "unit00_bench.ht_faults.fuse_verdict": (0.3, 0.1),
    "unit00_bench.ht_faults.filament_in_fault": (90.0, 10e3, 2.0, 60e-3, 2.0, 10.0),
    "unit00_bench.ht_faults.discharge_time": (2e-6, 1e6, 90.0, 10.0),
    "unit00_bench.ht_faults.pulse": (2e-6, 1e3, 90.0),
    "unit00_bench.phone_limiter.across_the_pair": (1e-3, 4e3),
    "unit00_bench.phone_limiter.pair_resistance": (1e-3, 4e3),
    "unit00_bench.phone_limiter.tone_lost": (1e-3, 4e3, 20e3, 11e3),
    "unit00_bench.phone_limiter.loudest": (1.0, 20e3, 110.0, 1e3, 1e-6),
    "unit00_bench.phone_limiter.loudest_bare": (1.0, 20e3, 11e3, 110.0),
    "unit02_coil_and_condenser.club_coil.coil_resistance": (1e6,),
    "unit02_coil_and_condenser.club_coil.straight_resistance": (1e6,),
    "unit02_coil_and_condenser.current_crowding.current_density": (0.5, 5.0),
    "unit02_coil_and_condenser.solenoid_inductance.common_mean": (1.0, 0.5),
    "unit02_coil_and_condenser.wire_resistance.copper_resistivity": (300.0,),
    "unit06_reaction.choosing.least_choke": (1e6, 200e-12),
    "unit07_oscillation.hysteresis.least_swing": (20e-6, 2e6, 2.0, 60.0),
    "unit08_two_stations.night_path.days_since_2000": (2026, 6, 21, 12.0),
    "unit08_two_stations.sky_wave.median_night_field": (0.1, 500e3, 50.0),
    "unit08_two_stations.sky_wave.night_field": (1e3, 500e3, 50.0),
    "unit09_feedback_receivers.isolated_set.aerial_impedance": (1e6,),
    "unit06_reaction.network.through_grid_condenser": (100e-12, 6e-12, 3e-12, 700e-6, 13e3, 2e-6),
    "unit09_feedback_receivers.left_out.winding_left_out": (855e3, "type 32"),
}


def nothing_changed(_parts):
    """A change that changes nothing, for functions that size a change."""
    return {}


SET = SALTMARSH_SET
DIAL = np.array([600e3, 900e3, 1500e3])
USUAL |= {
    "unit04_crystal_set.left_out.tone_power": (1107e3, 7.0, 30.0, 1e-6, 20e3, 500e3),
    "unit04_crystal_set.left_out.changed": (1107e3,),
    "unit04_crystal_set.left_out.constant_coil": (1107e3,),
    "unit04_crystal_set.left_out.earth_of": (60.0,),
    "unit04_crystal_set.left_out.crystal_of": (2e-6,),
    "unit04_crystal_set.left_out.telephones_of": (4e3,),
    "unit05_valve.left_out.own_capacitances": (1107e3,),
    "unit05_valve.left_out.gain_of": (-0.67, 1.0, 1.0),
    "unit06_reaction.anode_alone.with_anode": (855e3, 200e-12, 50e-12, 6e-12),
    "unit06_reaction.anode_alone.reaction_off": (855e3, 200e-12, 6e-12),
    "unit06_reaction.anode_alone.anode_loss": (855e3, 200e-12, 50e-12),
    "unit06_reaction.anode_alone.early_threshold": (855e3, 0.0),
    "unit06_reaction.anode_alone.sings_without_coupling": (855e3, 50e-12),
    "unit06_reaction.choosing.edge": (SET, 855e3, 10e-12, 500e-12),
    "unit06_reaction.choosing.threshold_span": (SET, DIAL, 10e-12, 500e-12),
    "unit06_reaction.choosing.with_tickler": (SET, 40e-6, 12e-6),
    "unit06_reaction.choosing.choose_tickler": ([SET], DIAL, 10e-12, 500e-12),
    "unit06_reaction.choosing.tickler_for": (SET, DIAL, 0.14, 10e-12, 500e-12),
    "unit06_reaction.club_set.on_station": (855e3, 50e-12, 20e-6),
    "unit06_reaction.club_set.gain_and_bandwidth": (855e3, 50e-12, 20e-6),
    "unit06_reaction.club_set.one_valve_set": (855e3, 20e-6),
    "unit06_reaction.club_set.without_reaction": (855e3, 20e-6),
    "unit06_reaction.club_set.threshold_throttle": (855e3, 20e-6),
    "unit06_reaction.club_set.threshold_slope": (855e3, 150e-12, 20e-6),
    "unit06_reaction.club_set.losses": (855e3, 20e-6, 50e-12),
    "unit06_reaction.club_set.loop_impedance": (SET, 855e3),
    "unit06_reaction.club_set.feedback_on": (855e3, 50e-12, 1.0),
    "unit06_reaction.club_set.growth_rate": (855e3, 50e-12, 20e-6),
    "unit06_reaction.club_set.formula_gain": (855e3, 50e-12, 20e-6),
    "unit06_reaction.club_set.pulled": (855e3, 50e-12, 20e-6),
    "unit06_reaction.left_out.threshold_moved": (nothing_changed, 855e3),
    "unit06_reaction.left_out.tuning_moved": (nothing_changed, 855e3),
    "unit06_reaction.left_out.valve_behind": (100e-12, 1.0, 1.0, 1.0, 1e-12),
    "unit06_reaction.left_out.size_of": ("a hand near the live end", 855e3),
    "unit06_reaction.network.saltmarsh_set": (855e3,),
    "unit06_reaction.network.inductance_matrix": (SET,),
    "unit06_reaction.network.rates": (SET,),
    "unit06_reaction.network.state_matrix": (SET,),
    "unit06_reaction.network.drive": (SET,),
    "unit06_reaction.reaction_controls.turned": ("throttle", 0.5),
    "unit06_reaction.reaction_controls.edge": ("throttle", 855e3),
    "unit06_reaction.reaction_controls.close_place": ("throttle", 855e3),
    "unit06_reaction.reaction_controls.last_stretch": ("throttle", 855e3),
    "unit06_reaction.reaction_controls.pulls": ("throttle", 855e3),
    "unit06_reaction.reaction_controls.backlash": ("throttle", 855e3),
    "unit06_reaction.reaction_controls.loudness": ("throttle", 855e3),
    "unit06_reaction.signals.swing_with": (855e3, 50e-12, 1e-3),
    "unit06_reaction.signals.gain_with": (855e3, 50e-12, 1e-3),
    "unit06_reaction.signals.tone_left_with": (855e3, 50e-12, 1e-3, 1e3),
    "unit06_reaction.signals.knocked": (855e3, 50e-12, 1e-4),
    "unit06_reaction.stability.poles": (SET,),
    "unit06_reaction.stability.ring": (SET,),
    "unit06_reaction.stability.steady_formula": (SET, 855e3),
    "unit06_reaction.stability.response": (SET, 855e3),
    "unit06_reaction.stability.gain_and_bandwidth": (SET,),
    "unit06_reaction.stability.retuned": (SET, 855e3),
    "unit06_reaction.stability.at_threshold": (SET, 855e3),
    "unit07_oscillation.envelope.carrier": (np.arange(5) / 96e3, 1e3, 1e-3, 0.3),
    "unit07_oscillation.envelope.thermal_noise": (5, 96e3, 30.0, np.random.default_rng(0), 290.0),
    "unit07_oscillation.envelope.follow": (np.full(20, 1e-3), 96e3, 1e6),
    "unit07_oscillation.envelope.render": (0.02, 1e6, lambda times: np.full(np.size(times), 1e-3)),
    "unit07_oscillation.left_out.swing_changed": (855e3,),
    "unit07_oscillation.left_out.backlash_moved": (nothing_changed, 855e3),
    "unit07_oscillation.left_out.crest_current": (855e3,),
    "unit07_oscillation.left_out.size_of": ("what the aerial radiates", 855e3),
    "unit07_oscillation.returned.loss_and_returned": (SET, 855e3),
    "unit07_oscillation.returned.by_throttle": (855e3, 20e-6),
    "unit07_oscillation.slow_mode.slow_mode": (SET, SALTMARSH_STAGE, 1e6),
    "unit07_oscillation.slow_mode.overtone_answers": (SET, 1e6),
    "unit07_oscillation.station_on.on_station": (855e3, 50e-12, 20e-6),
    "unit07_oscillation.station_on.threshold_in_silence": (855e3, 20e-6),
    "unit07_oscillation.station_on.swing_with_station": (855e3, 50e-12, 1e-3, 20e-6),
    "unit07_oscillation.station_on.sings_after": (855e3, 50e-12, 1e-3, 20e-6),
    "unit07_oscillation.station_on.threshold_with_station": (855e3, 1e-3, 20e-6),
    "unit07_oscillation.station_on.margin_used": (855e3, 1e-3, 20e-6),
    "unit07_oscillation.station_on.margin_left": (855e3, 50e-12, 1e-3, 20e-6),
    "unit07_oscillation.ticking.with_leak": (10e6, 1e-9),
    "unit07_oscillation.ticking.played": (10e6, 1e-9, 1e-3),
    "unit07_oscillation.ticking.one_tick": (20e6, 3e-9),
    "unit07_oscillation.ticking.by_formula": (20e6, 3e-9),
    "unit07_oscillation.ticking.leak_limit": (1e-9,),
    "unit08_two_stations.grid_leak_beat.beating_bias": (1e-2, 1e-3, 9e3, 100e-12),
    "unit08_two_stations.grid_leak_beat.left_of_programme": (1e-2, 1e-3, 9e3, 100e-12),
    "unit09_feedback_receivers.class_a.mean_current": (90.0, -15.0, 15.0, 7.2e3, 3.8, 167e-6, 0.203),
    "unit09_feedback_receivers.class_a.meter_rise": (90.0, -15.0, 15.0, 7.2e3, 3.8, 167e-6, 0.203),
    "unit09_feedback_receivers.isolated_set.isolated_set": ("type 32", 855e3),
    "unit09_feedback_receivers.isolated_set.gain_and_bandwidth": (855e3, 50e-12, "type 32"),
    "unit09_feedback_receivers.isolated_set.threshold_throttle": (855e3, "type 32"),
    "unit09_feedback_receivers.isolated_set.kept_back": (855e3, "type 32", 1e-12),
    "unit09_feedback_receivers.isolated_set.swayed": (855e3, 50e-12, 0.05),
    "unit09_feedback_receivers.left_out.sine_against_step": (1e3, 10.0, 20e3),
    "unit09_feedback_receivers.left_out.grid_anode_conductance": (700.0, 1107e3),
    "unit09_feedback_receivers.sine_quench.sine_response": (1e3, 10.0, 20e3),
}


def public_functions():
    """Full names, short of `solutions.`, and functions."""
    for module in pkgutil.walk_packages(solutions.__path__, "solutions."):
        if module.ispkg or module.name.endswith(("_check", "given_sets", "solutions.ranges")):
            continue
        for name, thing in vars(import_module(module.name)).items():
            own = callable(thing) and inspect.isfunction(inspect.unwrap(thing)) and thing.__module__ == module.name
            if own and not name.startswith("_"):
                yield f"{module.name.removeprefix('solutions.')}.{name}", thing


FUNCTIONS = dict(public_functions())


QUESTIONS = {
    f"{path.replace('/', '.')}.{question.name}": question
    for path in PATHS
    for question in load_exercise(path).questions
    if not question.symbolic
}


@cache
def usual_inputs(name):
    return USUAL[name] if name in USUAL else draw(QUESTIONS[name], 2, SEED)[0]


def inside(name):
    """(usual inputs, limits by the place of their argument) of a function; the factor of each limit worked out."""
    inputs = usual_inputs(name)
    names = list(inspect.signature(FUNCTIONS[name]).parameters)
    return inputs, [
        (names.index(limit.name), limit, limit.factor * (inputs[names.index(limit.other)] if limit.other else 1))
        for limit in FUNCTIONS[name].limits
        if names.index(limit.name) < len(inputs)
    ]


def with_input(inputs, place, value):
    """The same inputs but for one; of an array, its first member."""
    if isinstance(inputs[place], np.ndarray) and inputs[place].ndim:
        changed = inputs[place].copy()
        changed[0] = value
        value = changed
    elif isinstance(inputs[place], complex):
        value = complex(value, inputs[place].imag)
    elif isinstance(inputs[place], int):
        value = round(value)
    return (*inputs[:place], value, *inputs[place + 1 :])


def nearly(end, inputs, place):
    """A value next to an end, on the side of the usual one; of whole numbers, the next."""
    usual = float(np.real(np.ravel(inputs[place])[0]))
    if isinstance(inputs[place], (int, np.integer)) and float(end).is_integer():
        return end + np.sign(usual - end)
    return end + NEAR * (usual - end) if usual != end else end


def beyond(end, relation):
    step = abs(end) or 1.0
    return {">": end - step, ">=": end - step, "<": end + step, "<=": end + step, "not": end}[relation]


def parts(result):
    """The numbers of a result, out of tuples, sets and dictionaries."""
    if is_dataclass(result):
        result = astuple(result)
    if isinstance(result, dict):
        result = tuple(result.values())
    return [one for part in result for one in parts(part)] if isinstance(result, (tuple, list)) else [result]


def ask(name, inputs):
    """What a function gives, with every warning an error; None for a ValueError of one sentence."""
    with warnings.catch_warnings():
        warnings.simplefilter("error")
        try:
            result = FUNCTIONS[name](*inputs)
            result = list(result) if inspect.isgenerator(result) else result
        except ValueError as error:
            assert 10 < len(str(error)) < 250 and "\n" not in str(error) and "array(" not in str(error), error
            return None
    words = FUNCTIONS[name].__doc__ or ""
    stated, gaps = (
        "infinit" in words.lower(),
        "nan for both" in words or "both nan" in words,
    )  # of a map: nan where there is none
    for part in parts(result):
        if not isinstance(part, (str, type(None))):
            assert (gaps or not np.any(np.isnan(part))) and (stated or not np.any(np.isinf(part))), (name, inputs, result)
    return result


ENGINE = (  # played by the engine, or sought by it, for a second or more: not asked at several ends at once
    "unit06_reaction.anode_alone.early_threshold",
    "unit06_reaction.club_set.threshold_throttle",
    "unit06_reaction.left_out.threshold_moved",
    "unit06_reaction.reaction_controls.",
    "unit06_reaction.signals.",
    "unit07_oscillation.left_out.",
    "unit07_oscillation.returned.by_throttle",
    "unit07_oscillation.station_on.",
    "unit07_oscillation.ticking.",
    "unit09_feedback_receivers.isolated_set.threshold_throttle",
)
BRIEF = {  # how long the engine follows a set, second: here for much less than an answer needs, as only the ends are asked for
    reaction_controls: {"SETTLED": 2e-3},
    signals: {"FINE": 96e3, "KEPT_UP": 3e-3},
    station_on: {"SETTLE": 1e-3, "GROWS": 1e-3, "SPAN": 2e-3},
    left_out: {"SECONDS": 1e-3},
}


@pytest.fixture
def brief(monkeypatch):
    for module, times in BRIEF.items():
        for name, seconds in times.items():
            monkeypatch.setattr(module, name, seconds)
    forget()
    yield
    forget()


def forget():
    """Empty every cache, so that no answer of a brief engine is left for another test, nor the other way round."""
    for function in [*FUNCTIONS.values(), signals._heard]:
        getattr(function, "cache_clear", lambda: None)()


ASKED = [name for name, function in FUNCTIONS.items() if getattr(function, "limits", ()) and name in {**QUESTIONS, **USUAL}]


@pytest.mark.parametrize("name", ASKED)
def test_ends_of_the_range(name, brief):
    inputs, ended = inside(name)
    assert ask(name, inputs) is not None, "the usual inputs are refused"
    for place, limit, end in ended:
        ask(name, with_input(inputs, place, nearly(end, inputs, place)))
        if "=" in limit.relation:
            ask(name, with_input(inputs, place, end))
        else:
            assert ask(name, with_input(inputs, place, end)) is None, f"{limit.name} = {end} is left out, and not refused"
        outside = with_input(inputs, place, beyond(end, limit.relation))
        assert ask(name, outside) is None, f"{limit.name} = {beyond(end, limit.relation)} is outside, and not refused"


OF_A_SET = [
    *(f"unit06_reaction.network.{name}" for name in ("inductance_matrix", "rates", "state_matrix", "drive")),
    *(f"unit06_reaction.stability.{name}" for name in ("poles", "ring", "steady_formula", "response", "gain_and_bandwidth")),
]
LIMITS_OF_A_SET = list(limits(type(SET), {}))


@pytest.mark.parametrize("name", OF_A_SET)
def test_a_set_at_the_ends_of_its_parts_ranges(name):
    """Beyond them, only where the function needs the whole set: a matrix of inductances asks for no condenser."""
    assert len(LIMITS_OF_A_SET) == len(astuple(SET)) - 3  # all but the three mutual inductances
    for limit in LIMITS_OF_A_SET:
        usual = getattr(SET, limit.name)
        for value in (limit.factor, limit.factor + NEAR * (usual or 1.0), limit.factor - 1.0):
            result = ask(name, (replace(SET, **{limit.name: value}), *USUAL[name][1:]))
            outside = value < limit.factor or (value == limit.factor and limit.relation == ">")
            if outside and not name.endswith(("inductance_matrix", "drive")):
                assert result is None, f"{limit.name} = {value} is outside, and not refused"


@pytest.mark.parametrize("name", [name for name in ASKED if not name.startswith(ENGINE)])
def test_several_ends_at_once(name):
    inputs, ended = inside(name)

    @given(st.data())
    @settings(max_examples=12, deadline=None, derandomize=True, suppress_health_check=list(HealthCheck))
    def asked(data):
        there = inputs
        for place, limit, end in ended:
            at = data.draw(st.sampled_from(["usual", "near", "at"]), label=f"{limit.name} {limit.relation} {end}")
            if at != "usual":
                there = with_input(there, place, end if at == "at" and limit.relation != "not" else nearly(end, inputs, place))
        ask(name, there)

    asked()


def test_every_function_that_states_a_range_is_held_to_it_and_asked():
    stating = [
        name
        for name, function in FUNCTIONS.items()
        if list(limits(inspect.unwrap(function), {})) and "sympy symbols" not in function.__doc__
    ]
    assert [name for name in stating if not hasattr(FUNCTIONS[name], "limits")] == [], "give these `check_ranges`"
    assert [name for name in stating if name not in ASKED] == [], "give these usual inputs in USUAL"
    assert len(ASKED) > 280
    assert set(USUAL) <= set(FUNCTIONS)


@pytest.mark.parametrize(("written", "wanted"), [
    ("> 0", [(">", 0, None)]),
    (">= 0", [(">=", 0, None)]),
    ("at least `height`", [(">=", 1, "height")]),
    ("> 4 `low`", [(">", 4, "low")]),
    ("above −`frequency`", [(">", -1, "frequency")]),
    ("−89 to 89", [(">=", -89, None), ("<=", 89, None)]),
    ("above 0 to 1", [(">", 0, None), ("<=", 1, None)]),
    ("0 to below 1", [(">=", 0, None), ("<", 1, None)]),
    ("0 (plates out) to π (plates in)", [(">=", 0, None), ("<=", math.pi, None)]),
    ("0.5 to 2 times `length`", [(">=", 0.5, "length"), ("<=", 2, "length")]),
    ("not zero", [("not", 0, None)]),
    ("real part > 0", [(">", 0, None)]),
    ("1 for a perfect junction", []),
    ("far below `height`", []),
    ("volt", []),
])  # fmt: skip
def test_a_range_is_read_as_it_is_written(written, wanted):
    assert [tuple(end[1:]) for end in ends(written)] == wanted


@check_ranges(share="no more is there")
def left(whole, share):
    """What is left.

    Parameters
    ----------
    whole : float or ndarray, ohm, > 0
    share : float or ndarray, a fraction, 0 to 1
    """
    return whole * (1 - share)


def test_what_is_outside_is_refused_in_one_sentence_alone_among_others_and_by_name():
    assert left(4.0, 0.25) == 3.0 and left(whole=4.0, share=1) == 0.0
    with pytest.raises(ValueError, match="^left: whole must be above 0, not 0$"):
        left(0.0, 0.5)
    with pytest.raises(ValueError, match="^left: share must be at most 1, not 1.5: no more is there$"):
        left(4.0, share=np.array([0.5, 1.5, 2.0]))
    with pytest.raises(ValueError, match="^left: share must be at least 0, not -1: no more is there$"):
        left(np.array([1.0, 2.0]), np.array([[-1], [0]]))
