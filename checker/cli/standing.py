"""Where a student stands: what is passed, wherever it lies in the list; what was set aside; what comes next."""

from collections.abc import Collection, Iterator, Mapping
from dataclasses import dataclass

from ..core import CORE, FURTHER, IN_ORDER, for_the_core, path_of
from ..course import PATHS, UNITS, unit_of
from ..judging.verdict import PASSED, Verdict, marks_text
from ..pack.index import index
from ..report.text import Line, wrap
from .called import called_as


def is_passed(verdict: Verdict) -> bool:
    """Whether an exercise is passed: a core one by what the core asks of it, a further one as a whole."""
    return for_the_core(verdict, asked_by_the_core(verdict.exercise)).kind == PASSED


def roles_of(path: str) -> dict[str, bool]:
    """The functions that an exercise asks for, and whether each is further."""
    return {name: further for name, _, further in index()[path].functions}


def asked_by_the_core(path: str) -> list[str]:
    """The functions that the core asks an exercise for."""
    return [name for name, further in roles_of(path).items() if not further]


@dataclass(frozen=True)
class Standing:
    """Paths of exercises: those passed, and those set aside for later."""

    passed: Collection[str]
    later: Collection[str] = ()

    @property
    def next(self) -> str | None:
        """The next exercise: along the core first; None if all that is left is set aside."""
        return next((path for path in self.left if path not in self.later), None)

    @property
    def left(self) -> tuple[str, ...]:
        """All that is not passed, the core first."""
        return tuple(path for path in IN_ORDER if path not in self.passed)

    def lines(self, width: int) -> Iterator[Line]:
        """What is passed, what is set aside, and which unit the next exercise is in."""
        core, further = (sum(path in self.passed for path in paths) for paths in (CORE, FURTHER))
        if not self.left:
            yield Line(f"You have passed all {len(PATHS)} exercises.", "bold")
            return
        of_core = (
            f"the whole core of {len(CORE)} exercises" if core == len(CORE) else f"{core} of the core's {len(CORE)} exercises"
        )
        yield Line(
            f"You have passed {of_core}{f' and {further} of the {len(FURTHER)} further ones' if further else ''}.", "bold"
        )
        later = [path for path in self.left if path in self.later]
        if later:
            yield from wrap(f"Set aside for later: {_names(later)}.", width)
        if self.next:
            unit = unit_of(self.next)
            yield Line(f"Next{'' if self.next in CORE else ', further'}, in unit {unit.number}, {unit.title}:", "bold")
        else:
            yield from wrap(f"Nothing else is left. To take one up: {called_as()} try --now {_name(later[0])}", width)

    def offered(self, path: str) -> str:
        """Names of the further exercises beside a core one that may be taken up instead."""
        return _names([one for one in self.left if one in FURTHER and unit_of(one) == unit_of(path)]) if path in CORE else ""


def list_of(verdicts: Mapping[str, Verdict], later: Collection[str]) -> Iterator[Line]:
    """Every exercise, unit by unit: core or further, how it stands, its marks."""
    width = max(len(path.rpartition("/")[2]) for path in PATHS) + 2
    for unit in UNITS:
        here = [path for name in unit.exercises if (path := f"{unit.folder}/{name}") in verdicts]
        if here:
            yield Line(f"{unit.number}  {unit.title}", "bold")
        for path in here:
            verdict = verdicts[path]
            kind = PASSED if is_passed(verdict) else "set aside" if path in later else verdict.kind
            of = f"{marks_text(verdict.earned):>5} of {verdict.marks}"
            yield Line(f"  {_name(path):<{width}}{path_of(path):<9}{kind:<15}{of}")


def _name(path: str) -> str:
    return path.rpartition("/")[2]


def _names(paths: Collection[str]) -> str:
    return ", ".join(map(_name, paths))
