"""A verdict as whoever is learning reads it: what the core asks first, and what is further said to be so."""

from collections.abc import Mapping
from dataclasses import replace

from ..core import for_the_core
from ..judging.plans import exercise_at
from ..judging.verdict import PASSED, UNANSWERED, Verdict
from .text import WIDTH, Line, verdict_lines, wrap


def learner_lines(verdict: Verdict, width: int = WIDTH, roles: Mapping[str, bool] | None = None) -> list[Line]:
    """As `verdict_lines`; of a core exercise what the core still lacks, and nothing else before that is there.

    `roles` holds each function that the exercise asks for, and whether it is further, where that is known.
    """
    roles = {one.name: one.further for one in exercise_at(verdict.exercise).questions} if roles is None else roles
    core = for_the_core(verdict, [name for name, is_further in roles.items() if not is_further])
    if core is verdict or verdict.kind == PASSED or core.kind in UNANSWERED:
        return verdict_lines(verdict, width)
    if core.kind == PASSED:
        heading, *rest = verdict_lines(replace(verdict, kind=PASSED), width)
        return [heading, *wrap("That is all that the core asks. Further, if you like:", width), *rest]
    lines = verdict_lines(replace(verdict, kind=core.kind, findings=core.findings), width)
    further = [name for name, is_further in roles.items() if is_further]
    return lines + (wrap(f"The core does not ask for {' or '.join(further)}.", width, "dim") if further else [])
