"""What late costs. Times are those of the instructor's own clock."""

from dataclasses import dataclass
from datetime import datetime, timedelta
from fractions import Fraction
from math import ceil

from .term import Work

_DAY = timedelta(days=1)


@dataclass(frozen=True)
class Lateness:
    """How late a hand-in is: `days` begun since the end of the grace, the share of its marks that it keeps, and a sentence."""

    days: int = 0
    keeps: Fraction = Fraction(1)
    says: str = ""

    @property
    def is_late(self) -> bool:
        return self.days > 0


def lateness_of(work: Work, received: datetime | None) -> Lateness:
    """How late a hand-in is, and what that costs.

    Parameters
    ----------
    work : Work
    received : datetime or None
        When it came, by the clock that the work's own times are told by. Where that is not known nothing is late.
    """
    if received is None:
        return Lateness(says="when it came is not known" if work.due else "")
    if work.opens and received < work.opens:
        return Lateness(says="before it was set")
    if work.due is None:
        return Lateness()
    if received <= work.due:
        return Lateness(says="in time")
    grace = timedelta(seconds=float(work.grace * 86400))
    if received <= work.due + grace:
        return Lateness(says="within the grace")
    days = ceil((received - work.due - grace) / _DAY)
    said = f"{days} day{'s' * (days != 1)} late"
    if work.late is None:
        return Lateness(days, Fraction(0), f"{said}, not accepted")
    keeps = max(Fraction(0), 1 - work.late * days)
    cost = f"−{percent(1 - keeps)}" if keeps < 1 else "no cost"
    return Lateness(days, keeps, f"{said}, {cost}")


def percent(share: Fraction) -> str:
    """A share of one as per cent with at most one decimal."""
    return f"{float(round(share * 100, 1)):g} %"
