"""What counts for each member: the marks worked out, except where a person has set one."""

import re
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from ..core import path_of
from ..course import PATHS, find, load_exercise
from ..judging.verdict import NOT_ATTEMPTED, NOT_HANDED_IN, NOT_JUDGED, NOT_READ, WITHOUT_MARK, Verdict, marks_text, to_data
from ..term.term import Person, Work
from ..text import display_text
from .attempts import WorkMarks, key_of_work
from .store import Override, Store

Overrides = Mapping[tuple[str, str], Override]


@dataclass(frozen=True)
class Mark:
    """One member's mark on one exercise."""

    verdict: Verdict
    override: Override | None = None

    @property
    def exercise(self) -> str:
        return self.verdict.exercise

    @property
    def is_judged(self) -> bool:
        """Whether there is a mark: a person's, or a verdict that the checker did not fail to come to."""
        return self.override is not None or self.verdict.kind != NOT_JUDGED

    @property
    def is_counted(self) -> bool:
        """Whether the mark is for an answer, or a person's; a 0 of any other is for none."""
        return self.override is not None or self.verdict.kind not in WITHOUT_MARK

    @property
    def text(self) -> str:
        """The mark for a table: a number where it is for an answer; else in words why there is none."""
        return marks_text(self.amount) if self.is_counted else self.verdict.kind

    @property
    def amount(self) -> Fraction:
        return self.override.mark if self.override else self.verdict.earned

    @property
    def of(self) -> int:
        return self.verdict.marks


@dataclass(frozen=True)
class MemberMarks:
    """A member's marks, in the course's order, and the sentences about the files: `problems`, by which an answer may be missing,
    and `notes`.

    `name` is for people to read; `identity` is who it is. `works` are the pieces of work, each with all that was handed in for it;
    `person` is who it is on the roster.
    """

    name: str
    problems: tuple[str, ...]
    marks: tuple[Mark, ...]
    identity: str
    notes: tuple[str, ...] = ()
    works: tuple[WorkMarks, ...] = ()
    person: Person | None = None

    @property
    def said(self) -> tuple[str, ...]:
        """All that is to be said of the files."""
        return *self.problems, *self.notes

    @property
    def amount(self) -> Fraction:
        return sum((mark.amount for mark in self.marks), Fraction(0))

    @property
    def why_none(self) -> str:
        """Why there are no marks at all, in a verdict's word; "" where there are."""
        return why_no_sum(self.marks)

    @property
    def text(self) -> str:
        """The marks for a table: a number where there was an answer; else in words why there is none."""
        return self.why_none or marks_text(self.amount)

    @property
    def not_judged(self) -> int:
        return sum(not mark.is_judged for mark in self.marks)

    @property
    def without_mark(self) -> dict[str, int]:
        """Why there is no mark on an exercise, and on how many for that reason; the reasons in the order of `WITHOUT_MARK`."""
        kinds = [mark.verdict.kind for mark in self.marks if not mark.is_counted]
        return {kind: kinds.count(kind) for kind in WITHOUT_MARK if kind in kinds}

    @property
    def of(self) -> int:
        return sum(mark.of for mark in self.marks)


def why_no_sum(marks: Sequence[Mark]) -> str:
    """Why some marks have no sum, in a verdict's word, the gravest reason of several; "" where one of them counts or none was set."""
    kinds = {mark.verdict.kind for mark in marks}
    if any(mark.is_counted for mark in marks):
        return ""
    return next((kind for kind in (NOT_JUDGED, NOT_READ, NOT_ATTEMPTED, NOT_HANDED_IN) if kind in kinds), "")


def member_marks(
    name: str,
    problems: Iterable[str],
    verdicts: Sequence[Verdict],
    overrides: Overrides,
    identity: str = "",
    notes: Iterable[str] = (),
) -> MemberMarks:
    """The marks of one member, with the overrides that are theirs; `identity` may be left out where it is the name."""
    identity = identity or name
    marks = (Mark(verdict, overrides.get((identity, verdict.exercise))) for verdict in verdicts)
    return MemberMarks(name, tuple(problems), tuple(marks), identity, tuple(notes))


def set_mark(store: Store, member: str, exercise: str, mark: str, reason: str, who: str) -> Override:
    """Set a mark by hand, from what a person typed; `member` is the identity of whose mark it is.

    Raises
    ------
    ValueError
        In one sentence: no such exercise, no mark, more than there is to be had, no reason or no name.
    """
    path = find(exercise)
    return _set(store, member, path, mark_from(mark, load_exercise(path).marks), reason, who)


def set_work_mark(store: Store, member: str, work: Work, mark: str, reason: str, who: str) -> Override:
    """Set a mark on a whole piece of work by hand: it counts as it stands, late or not; else as `set_mark`."""
    most = sum(load_exercise(path).marks for path in work.paths)
    return _set(store, member, key_of_work(work.name), mark_from(mark, most, "piece of work"), reason, who)


def _set(store: Store, member: str, key: str, amount: Fraction, reason: str, who: str) -> Override:
    reason, who = display_text(reason), display_text(who)
    if not reason:
        raise ValueError("A mark set by hand needs a reason: it is shown to the member beside the mark.")
    if not who:
        raise ValueError("A mark set by hand needs the name of the person who sets it.")
    return store.override(member, key, amount, reason, who)


def mark_from(text: str, most: int, what: str = "exercise") -> Fraction:
    """A mark from "7", "7.5" or "15/2"; ValueError says in a sentence what is wrong with it."""
    number = text.strip()
    if not re.fullmatch(r"\d{1,6}(\.\d{1,6}|/[1-9]\d{0,5})?", number, re.ASCII):
        raise ValueError(f"{display_text(text)!r} is no mark: write a number such as 7, 7.5 or 15/2.")
    if Fraction(number) > most:
        raise ValueError(f"{number} is more than this {what} has: {most} marks.")
    return Fraction(number)


def override_sentence(mark: Mark) -> str:
    """What is said beside a mark that a person has set: both marks, why, who, when."""
    override = mark.override
    if override is None:
        return ""
    return (
        f"Set by hand: {marks_text(override.mark)} of {mark.of} (worked out: {marks_text(mark.verdict.earned)}). "
        f"{override.reason.rstrip('.')}. {override.who}, {override.when[:10]}."
    )


def work_override_sentence(one: WorkMarks) -> str:
    """What is said beside a mark that a person has set on a whole piece of work."""
    if not (override := one.override):
        return ""
    return f"Set by hand: {marks_text(override.mark)} of {one.of}. {override.reason.rstrip('.')}. {override.who}, {override.when[:10]}."


def marks_to_data(member: MemberMarks) -> dict:
    """A member's marks as plain data for JSON; amounts are exact fractions."""
    return {
        "member": member.name,
        "earned": None if member.why_none else str(member.amount),
        "marks": member.of,
        "problems": list(member.problems),
        "notes": list(member.notes),
        "without a mark": member.without_mark | {"not set": len(PATHS) - len(member.marks)},
        "works": [_work_to_data(one) for one in member.works if one.work.name],
        "exercises": [
            {
                "exercise": mark.exercise,
                "path": path_of(mark.exercise),
                "earned": str(mark.amount) if mark.is_counted else None,
                "marks": mark.of,
                "set_by_hand": mark.override
                and {"because": mark.override.reason, "by": mark.override.who, "when": mark.override.when},
                "verdict": to_data(mark.verdict),
            }
            for mark in member.marks
        ],
    }


def _work_to_data(one: WorkMarks) -> dict:
    def exact(amount: Fraction | None) -> str | None:
        return None if amount is None else str(amount)

    return {
        "work": one.work.name,
        "earned": exact(one.amount),
        "counted": exact(one.after_late),
        "marks": one.of,
        "set_by_hand": one.override and {"because": one.override.reason, "by": one.override.who, "when": one.override.when},
        "handed_in": [
            {
                "when": hand_in.when and hand_in.when.isoformat(),
                "told": hand_in.is_told,
                "earned": str(hand_in.earned),
                "days_late": hand_in.lateness.days,
                "counts": hand_in.counts,
                "why": hand_in.why,
            }
            for hand_in in one.handed_in
        ],
    }
