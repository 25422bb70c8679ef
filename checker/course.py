"""The course as data: its units, its exercises in order, and the one loader of references and checks."""

import importlib
from dataclasses import dataclass, replace
from difflib import get_close_matches
from functools import cache
from pathlib import Path
from types import ModuleType

from .checks.exercise import Exercise
from .faults import Problem

PACKAGE = "crystal-to-reaction"
PRACTICE_SEED = 1
ROOT = Path(__file__).resolve().parent.parent

# In a student pack there is no solutions/; practice/ holds sealed plans in its place.
SEALED = not (ROOT / "solutions").is_dir()

# Whether this is a folder that people work in, a checkout or a student pack, and not a place for installed packages.
CHECKOUT = (ROOT / "pyproject.toml").is_file()


@dataclass(frozen=True)
class Unit:
    folder: str
    title: str
    exercises: tuple[str, ...]

    @property
    def number(self) -> str:
        return self.folder[4:6]


UNITS = (
    Unit("unit00_bench", "Bench", ("metres", "tone", "prefixes", "dropper_resistor")),
    Unit(
        "unit01_signal",
        "Signal",
        (
            "am_waveform",
            "sideband_power",
            "inverse_distance",
            "field_strength",
            "aerial_voltage",
            "radiation_resistance",
            "channel_plan",
        ),
    ),
    Unit(
        "unit02_coil_and_condenser",
        "Coil and condenser",
        (
            "coil",
            "solenoid_inductance",
            "mutual_inductance",
            "wire_resistance",
            "self_capacitance",
            "condenser",
            "vane_capacitance",
            "winding_sheet",
        ),
    ),
    Unit(
        "unit03_tuned_circuit",
        "Tuned circuit",
        (
            "resonance",
            "tuning",
            "quality_factor",
            "response_curve",
            "ring_down",
            "reflected_impedance",
            "aerial_coupling",
            "tuning_range",
        ),
    ),
    Unit(
        "unit04_crystal_set",
        "Crystal set",
        (
            "detect_step",
            "crystal_reach",
            "diode_current",
            "rectified_voltage",
            "detector_load",
            "phone_loudness",
            "crystal_set",
        ),
    ),
    Unit(
        "unit05_valve",
        "Valve",
        ("one_valve", "emission", "space_charge", "triode_current", "load_line", "stage_gain", "grid_leak", "one_valve_set"),
    ),
    Unit(
        "unit06_reaction",
        "Reaction",
        (
            "edge",
            "feedback_resistance",
            "q_multiplication",
            "grid_anode_admittance",
            "characteristic_polynomial",
            "oscillation_point",
            "three_knobs",
            "treble_loss",
            "cheap_measurements",
        ),
    ),
    Unit(
        "unit07_oscillation",
        "Oscillation",
        ("build_up", "limit_amplitude", "hysteresis", "beat_note", "pull_in", "squegging", "radiated_field"),
    ),
    Unit(
        "unit08_two_stations",
        "Two stations",
        ("rejection", "weak_signal_suppression", "wave_trap", "night_path", "dial_log", "signal_to_noise", "least_heard"),
    ),
    Unit(
        "unit09_feedback_receivers",
        "Feedback receivers",
        ("swing_step", "far_station", "isolating_stage", "reflex", "two_stage_audio", "quench", "receiver"),
    ),
)
PATHS = tuple(f"{unit.folder}/{name}" for unit in UNITS for name in unit.exercises)


class UnknownExercise(Problem, ValueError):
    """A name that is no exercise's."""


def find(name: str) -> str:
    """The path of an exercise from what a person typed: its name, its path, or its file's path."""
    if name in PATHS:
        return name
    wanted = name.strip().replace("\\", "/").removesuffix(".py").removeprefix("./").removeprefix("exercises/")
    for path in PATHS:
        if wanted in (path, path.rpartition("/")[2]):
            return path
    names = [path.rpartition("/")[2] for path in PATHS]
    near = get_close_matches(wanted.rpartition("/")[2], names, n=1)
    hint = f"Did you mean {near[0]}?" if near else "checker try --list names them all."
    raise UnknownExercise(f"There is no exercise called {name!r}. {hint}")


@cache
def load_exercise(name: str) -> Exercise:
    """The `Exercise` called `name`, with its reference functions, from solutions/."""
    path = find(name)
    module = importlib.import_module(f"solutions.{path.replace('/', '.')}_check")
    return replace(module.EXERCISE, path=path)


def load_physics(module: str) -> ModuleType:
    """A module of the reference physics by its name below solutions/, such as "unit03_tuned_circuit.resonance"."""
    return importlib.import_module(f"solutions.{module}")


def unit_of(path: str) -> Unit:
    """The unit that an exercise's path belongs to."""
    return next(unit for unit in UNITS if unit.folder == path.partition("/")[0])


__all__ = ["PATHS", "ROOT", "UNITS", "Exercise", "Unit", "UnknownExercise", "find", "load_exercise", "load_physics", "unit_of"]
