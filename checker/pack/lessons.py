"""Where an exercise is taught, and how its page is opened from here: in a checkout, in a student pack, or on the club's site."""

import re
from dataclasses import dataclass
from pathlib import Path

from ..course import CHECKOUT, ROOT, SEALED, unit_of

_LESSONS = ROOT / "course" / "lessons"
_SITES = (ROOT / "site", ROOT / "course" / "site")  # a pack's, and one that was built here
ADDRESS_FILE = "practice/address.txt"  # of a pack that brings no site


@dataclass(frozen=True)
class Lesson:
    """A section of a page: the page below the site's top, without its suffix, and the section's heading."""

    page: str
    heading: str

    @property
    def anchor(self) -> str:
        """The section's name within the page, as the site's builder makes it of the heading."""
        return re.sub(r"[-\s]+", "-", re.sub(r"[^\w\s-]", "", self.heading).strip().lower())


@dataclass(frozen=True)
class Place:
    """Where a page is: how a person reads it, how a browser opens it."""

    shown: str
    address: str


def lesson_in_sources(path: str) -> Lesson:
    """The section of a lesson that an exercise stands in, read from the lessons themselves; its unit's page if none holds it."""
    folder = _LESSONS / unit_of(path).folder
    for file in sorted(folder.glob("*.md")):
        before, found, _ = file.read_text("utf-8").partition(f'{{{{ exercise("{path}") }}}}')
        if found:
            headings = re.findall(r"^## +(.+?)\s*$", before, re.M)
            return Lesson(f"{folder.name}/{file.stem}", headings[-1] if headings else "")
    return Lesson(f"{folder.name}/index", "")


def place_of(lesson: Lesson) -> Place | None:
    """Where the page of a lesson can be opened; None if there is neither a site nor an address of one."""
    if site := site_folder():
        file = site / f"{lesson.page}.html"
        if file.is_file():
            return Place(str(file), file.as_uri() + _fragment(lesson))
    if address := site_address():
        page = f"{address.rstrip('/')}/{lesson.page}.html"
        return Place(page, page + _fragment(lesson))
    return None


def source_of(lesson: Lesson) -> Path | None:
    """The lesson as it was written, in a checkout."""
    file = _LESSONS / f"{lesson.page}.md"
    return file if CHECKOUT and file.is_file() else None


def site_folder() -> Path | None:
    """The site that is on this computer, if it is."""
    return next((site for site in _SITES if (site / "index.html").is_file()), None)


def site_address() -> str:
    """Where the club publishes the site, as its club.toml or, in a pack, the pack says; "" if nowhere."""
    try:
        if SEALED:
            return (ROOT / ADDRESS_FILE).read_text("utf-8").strip()
        import tomllib  # late: only somebody without a site at hand needs the address

        said = tomllib.loads((ROOT / "course" / "club.toml").read_text("utf-8-sig")).get("address", "")
    except (OSError, ValueError):
        return ""
    return said.strip() if isinstance(said, str) else ""


def _fragment(lesson: Lesson) -> str:
    return f"#{lesson.anchor}" if lesson.heading else ""
