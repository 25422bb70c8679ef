"""What a run's marks are published under: the class, the club, the school year; and the pairs to be looked at."""

from dataclasses import dataclass, replace
from datetime import date

from ..submissions.likeness import Alike, alike_from_data, alike_to_data

CLASS, CLUB = "Crystal to Reaction", "Saltmarsh Point Wireless Circle"


@dataclass(frozen=True)
class RunDetails:
    """All that the pages and tables of a run say beside the marks; kept with the run, so that a later amendment says the same.

    `school_year` is its first and its last day. `not_compared` are exercises on which the checker failed to look for likeness,
    and why. `path` is what was set, a key of `core.SET`; the core's exercises are then marked by what the core asks of them.
    `names` is the pattern by which members' names were taken out of those of their folders, if there was one.
    """

    seed: int
    school_year: tuple[date, date]
    title: str = CLASS
    club: str = CLUB
    alike: tuple[Alike, ...] = ()
    not_compared: tuple[tuple[str, str], ...] = ()
    path: str = "all"
    names: str = ""

    def with_changes(
        self,
        title: str | None,
        club: str | None,
        school_year: tuple[date, date] | None,
        path: str = "all",
        names: str | None = None,
    ) -> "RunDetails":
        """The details of a further run, for which some of these were given anew."""
        return replace(
            self,
            title=title or self.title,
            club=club or self.club,
            school_year=school_year or self.school_year,
            alike=(),
            not_compared=(),
            path=path,
            names=self.names if names is None else names,
        )


def calendar_year(day: date) -> tuple[date, date]:
    """First and last day of the year of a day: the school year of whoever names none."""
    return date(day.year, 1, 1), date(day.year, 12, 31)


def details_to_data(details: RunDetails) -> dict:
    """Details as plain data for JSON, the seed aside."""
    return {
        "class": details.title,
        "club": details.club,
        "school year": [day.isoformat() for day in details.school_year],
        "alike": [alike_to_data(pair) for pair in details.alike],
        "not compared": dict(details.not_compared),
        "path": details.path,
        "names": details.names,
    }


def details_from_data(data: dict, seed: int) -> RunDetails:
    """The details that `details_to_data` described; KeyError, TypeError or ValueError for anything else."""
    first, last = map(date.fromisoformat, data["school year"])
    alike, not_compared = tuple(map(alike_from_data, data["alike"])), tuple(data.get("not compared", {}).items())
    later = data.get("path", "all"), data.get("names", "")
    return RunDetails(seed, (first, last), data["class"], data["club"], alike, not_compared, *later)
