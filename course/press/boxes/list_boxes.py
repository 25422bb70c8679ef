"""Lists of what there is: the units, the booklets to print, the instructor's pages."""

from collections.abc import Callable

from course.press.pages import BOOKLETS, UnitPages
from course.press.templates import render


def units_html(units: list[UnitPages], relative: Callable[[str], str]) -> str:
    """The units in order, each with its question."""
    return render("units.html", units=[(relative(f"{unit.folder}/index.html"), unit) for unit in units])


def booklets_html(units: list[UnitPages], relative: Callable[[str], str]) -> str:
    """The booklets to print: one of each unit, one of the whole course."""
    links = [(relative(f"{BOOKLETS}/{unit.folder}.html"), f"{unit.number} {unit.title}") for unit in units]
    links += [(relative(f"{BOOKLETS}/course.html"), "The whole course")] if units else []
    return render("link_list.html", links=links)


def instructor_pages_html(units: list[UnitPages], relative: Callable[[str], str]) -> str:
    """The instructor's pages that there are."""
    links = [(relative(f"{unit.folder}/instructor.html"), f"{unit.number} {unit.title}") for unit in units if unit.instructor]
    return render("link_list.html", links=links)
