"""The order of the pages, from the folders and front matter: a new unit appears by itself."""

import re
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from mkdocs.utils.meta import get_data

from course.press.faults import Fault

BOOKLETS = "print"  # their folder in the site
AROUND = ("bench.md", "glossary.md", "outside.md", "builders.md", "instructors.md", "clubs.md", "changes.md", "left_out.md")


@dataclass(frozen=True)
class UnitPages:
    """One unit: its folder, its number, the title and question of its first page, and its pages in order."""

    folder: str
    number: str
    title: str
    question: str
    pages: tuple[str, ...]
    instructor: str | None


def units_in(lessons: Path) -> list[UnitPages]:
    """The units that have an `index.md`, in order.

    Raises
    ------
    Fault
        If a page has no title, or `index.md` names a page that is not there.
    """
    return [read_unit(index.parent) for index in sorted(lessons.glob("unit[0-9][0-9]_*/index.md"))]


def read_unit(folder: Path) -> UnitPages:
    """The unit in one folder, from the head of its first page."""
    title, about = read_head(folder / "index.md")
    named = about.get("pages", [])
    present = sorted(path.name for path in folder.glob("*.md") if path.name not in ("index.md", "instructor.md"))
    if not isinstance(named, list) or not set(named) <= set(present):
        raise Fault(
            f"{folder.name}/index.md: pages: in the front matter is a list of the folder's further pages in reading "
            f"order; there are {', '.join(present) or 'none'}"
        )
    further = [*named, *(name for name in present if name not in named)]
    pages = tuple(f"{folder.name}/{name}" for name in ("index.md", *further))
    instructor = f"{folder.name}/instructor.md" if (folder / "instructor.md").is_file() else None
    return UnitPages(folder.name, folder.name[4:6], title, about.get("question", ""), pages, instructor)


def read_head(page: Path) -> tuple[str, dict[str, Any]]:
    """Title and front matter of a page."""
    text, about = get_data(page.read_text("utf-8-sig"))
    title = re.search(r"^# +(.+?) *#*$", text, re.M)
    if not title:
        raise Fault(f"{page.parent.name}/{page.name}: begin the page with one # Title")
    return re.sub(r"[*_`]", "", title[1]), about


def reading_order(lessons: Path, rules_page: str = "") -> list[str | dict[str, list[str]]]:
    """The `nav` of MkDocs: home, safety and a club's rules, the units' pages, the pages around them, the instructor's pages."""
    found = units_in(lessons)
    return [
        "index.md",
        *existing(lessons, "safety.md", rules_page),
        *({f"{unit.number} {unit.title}": list(unit.pages)} for unit in found),
        *existing(lessons, *AROUND),
        *(unit.instructor for unit in found if unit.instructor),
    ]


def existing(lessons: Path, *names: str) -> list[str]:
    """Those of some pages that are there."""
    return [name for name in names if (lessons / name).is_file()]
