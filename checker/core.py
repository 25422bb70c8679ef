"""The core path: which exercises carry a reader from crystal to reaction, in which order, and what the core asks of each.

An exercise is core if it is named here, and further if not. In a core exercise the core asks for every function but those
that its check calls `further`, and of each for its numbers, its laws and its published figures.
"""

from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction

from .checks.exercise import Exercise
from .course import PATHS, find
from .judging.plans import exercise_at
from .judging.verdict import Verdict, kind_of

CORE_FIRST = ("metres", "tone", "am_waveform")  # the first sound of one's own, and one's own station
_LATER = """
    dropper_resistor
    sideband_power inverse_distance aerial_voltage radiation_resistance
    coil condenser
    resonance tuning quality_factor response_curve ring_down
    detect_step crystal_reach diode_current phone_loudness
    one_valve triode_current stage_gain
    edge q_multiplication treble_loss
    build_up beat_note
    rejection signal_to_noise
    swing_step far_station
"""
CORE = tuple(map(find, (*CORE_FIRST, *_LATER.split())))
FURTHER = tuple(path for path in PATHS if path not in CORE)
IN_ORDER = (*CORE, *FURTHER)

# What an instructor may set; the exercises in the course's order.
SET = {"all": PATHS, "core": tuple(sorted(CORE, key=PATHS.index)), "further": FURTHER}

CORE_PARTS = {"numbers", "laws", "published", "all"}  # "all" is the one part of a file that was not handed in

WHAT_WAS_SET = {
    "core": "Marked by the core: each exercise by the functions, numbers, laws and published figures that the core asks for.",
    "further": "Marked are the further exercises alone, without those of the core.",
}


def path_of(exercise: str) -> str:
    """Which of the two paths an exercise is on: "core" or "further"."""
    return "core" if exercise in CORE else "further"


def core_functions(exercise: Exercise) -> tuple[str, ...]:
    """Names of the functions that the core asks an exercise for; none of a further one."""
    if exercise.path not in CORE:
        return ()
    return tuple(question.name for question in exercise.questions if not question.further)


def for_the_core(verdict: Verdict, asked: Sequence[str] | None = None) -> Verdict:
    """A verdict by what the core asks of its exercise: that shares all the marks.

    `asked` names the functions that the core asks for, where they are known. It stays as it is where there is nothing to share the
    marks: nothing in the exercise is core, or it is not judged.
    """
    if verdict.exercise in FURTHER or not verdict.parts:
        return verdict
    functions = core_functions(exercise_at(verdict.exercise)) if asked is None else asked
    parts = [part for part in verdict.parts if part.function in functions and part.what in CORE_PARTS]
    if not parts:
        return verdict
    scale = verdict.marks / sum((part.worth for part in parts), Fraction(0))
    lacking = {part.function for part in parts if part.earned < part.worth}
    findings = tuple(finding for finding in verdict.findings if finding.function in lacking)
    if lacking and not findings:
        findings = verdict.findings  # said of another function: the file does not load, or its run was ended
    shared = tuple(replace(part, worth=part.worth * scale, earned=part.earned * scale) for part in parts)
    return replace(verdict, kind=kind_of(shared, findings), parts=shared, findings=findings)
