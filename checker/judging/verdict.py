"""What the judge says, as values: nothing here decides anything or prints."""

from collections.abc import Iterable, Sequence
from dataclasses import asdict, dataclass
from fractions import Fraction

PASSED, WRONG, RAISED = "passed", "wrong", "raised"
TOO_SLOW, TOO_BIG, REFUSED = "too slow", "too big", "refused"
ENDED_EARLY, UNFINISHED = "ended early", "unfinished"
# No answer was judged, and for three reasons: the stub is as it was, there is no file, what was handed in could not be read.
NOT_ATTEMPTED, NOT_HANDED_IN, NOT_READ = "not attempted", "not handed in", "not read"
NOT_JUDGED = "not judged"  # a fault of the checker's: no verdict, to be tried again
UNANSWERED = (NOT_ATTEMPTED, NOT_HANDED_IN, NOT_READ)
WITHOUT_MARK = (*UNANSWERED, NOT_JUDGED)  # the 0 is nobody's wrong answer
OF_ONE_RUN = (NOT_READ, NOT_JUDGED)  # hang on more than the files that are judged, so they are kept for no other run
KINDS = (PASSED, WRONG, RAISED, TOO_SLOW, TOO_BIG, REFUSED, ENDED_EARLY, UNFINISHED, *WITHOUT_MARK)


@dataclass(frozen=True)
class Finding:
    """One thing that is not right, with all that helps to see why.

    `says` is the sentence; `inputs` are (name, text) pairs; `got` and `wanted` are texts, `remark` compares them;
    `slip` finishes "You may have …"; `line` is (file, number, source text) of the student's own code.
    """

    kind: str
    function: str
    says: str = ""
    inputs: tuple[tuple[str, str], ...] = ()
    got: str = ""
    wanted: str = ""
    remark: str = ""
    slip: str = ""
    line: tuple[str, int, str] | None = None


@dataclass(frozen=True)
class Part:
    """One part of the marks: what for, what it is worth, what was earned (exact); `measured` says what was measured."""

    function: str
    what: str
    worth: Fraction
    earned: Fraction
    measured: str = ""


# How a member's own function stands, in place of which the course's stood in.
MISSING, NOT_LOADING, STUB, SILENT, WRONG_VALUES = "missing", "not loading", "stub", "silent", "wrong values"


@dataclass(frozen=True)
class Lent:
    """The course's own function of an earlier exercise, which stood in for the member's; `own` is how that one stands, if it is known.

    Without a function it is the constants alone.
    """

    exercise: str
    function: str = ""
    own: str = ""


@dataclass(frozen=True)
class Verdict:
    """The judgement of one exercise of one member, and what stood in for earlier exercises while it was judged."""

    exercise: str
    kind: str
    marks: int
    parts: tuple[Part, ...] = ()
    findings: tuple[Finding, ...] = ()
    printed: str = ""
    lent: tuple[Lent, ...] = ()

    @property
    def earned(self) -> Fraction:
        return sum((part.earned for part in self.parts), Fraction(0))


def kind_of(parts: Iterable[Part], findings: Sequence[Finding]) -> str:
    """The kind of a verdict with these parts and findings: the first that is about code, if there is any."""
    about_code = next((finding.kind for finding in findings if finding.kind != NOT_ATTEMPTED), None)
    if about_code or not findings:
        return about_code or PASSED
    return UNFINISHED if any(part.earned for part in parts) else NOT_ATTEMPTED


def marks_text(amount: Fraction) -> str:
    """Exact marks as text with at most one decimal, halves rounded up: 15/2 is "7.5", 20/3 is "6.7", 10 is "10"."""
    return _in_tenths(_tenths(amount))


def lost_texts(earned: Fraction, lost: list[Fraction]) -> list[str]:
    """Each of some exact losses as text, so that they and the marks earned add up as printed: where all cannot be nearest, the
    largest remainders are rounded up.
    """
    down = [int(amount * 10) for amount in lost]
    short = _tenths(earned + sum(lost)) - _tenths(earned) - sum(down)
    by_remainder = sorted(range(len(lost)), key=lambda at: down[at] - lost[at] * 10)
    return [_in_tenths(tenths + (at in by_remainder[:short])) for at, tenths in enumerate(down)]


def _tenths(amount: Fraction) -> int:
    return int((amount * 20 + 1) // 2)


def _in_tenths(tenths: int) -> str:
    whole, tenth = divmod(tenths, 10)
    return f"{whole}.{tenth}" if tenth else str(whole)


def to_data(verdict: Verdict) -> dict:
    """A verdict as plain data for JSON; fractions as "n/d" text, so that nothing is rounded."""
    data = asdict(verdict)
    for part in data["parts"]:
        part.update(worth=str(part["worth"]), earned=str(part["earned"]))
    return data | {"earned": str(verdict.earned)}


def from_data(data: dict) -> Verdict:
    """The verdict that `to_data` described; KeyError, TypeError or ValueError for anything else."""
    parts = tuple(
        Part(part["function"], part["what"], Fraction(part["worth"]), Fraction(part["earned"]), part.get("measured", ""))
        for part in data["parts"]
    )
    findings = tuple(
        Finding(
            **finding | {"inputs": tuple(map(tuple, finding["inputs"])), "line": finding["line"] and tuple(finding["line"])}
        )
        for finding in data["findings"]
    )
    lent = tuple(Lent(**one) for one in data.get("lent", ()))
    return Verdict(data["exercise"], data["kind"], data["marks"], parts, findings, data["printed"], lent)
