"""The club that publishes the site, as `course/club.toml` describes it: read and checked."""

import difflib
import re
import tomllib
from dataclasses import dataclass
from pathlib import Path
from typing import Any
from urllib.parse import urlsplit

from course.press.faults import Fault

FILE = "club.toml"
RASTERS = (9, 10)
WORDS = ("valve", "tube")

# line: (what it does, an example)
LINES = {
    "name": ("stands under the course’s name at the top and in the footer of every page", '"Saltmarsh Point Wireless Circle"'),
    "contact": ("an e-mail address, a link, or any other words such as a telephone number", '"wren@saltmarsh-point.example"'),
    "meeting_place": ("where and when you meet", '"The hut on Tern Spit, Thursdays at half past seven"'),
    "authority": (
        "address of the office that gives licences where you are; in every footer and on the safety page",
        '"https://licences.example/amateur"',
    ),
    "safety_rules": (
        "your own safety rules: an address, or a Markdown page that you put in course/lessons, which then joins the menu",
        '"club_rules.md"',
    ),
    "address": (
        "where you publish this site; paper has it beside each sound and bench, and student packs that bring no lessons name it",
        '"https://saltmarsh-point.example/course"',
    ),
    "pack": (
        "the student pack to take home, offered on the first page and beside every exercise: its address, or the name of a zip in the "
        "folder course, made by checker pack",
        '"https://saltmarsh-point.example/crystal-to-reaction.zip"',
    ),
    "raster": ("kHz from one channel to the next where you are: 9, or 10 in the Americas", "10"),
    "words": ("which word the pages begin with, valve or tube; a reader can still switch", '"tube"'),
}


@dataclass(frozen=True)
class Club:
    """What the file says; a text is empty where it says nothing."""

    name: str = ""
    contact: str = ""
    meeting_place: str = ""
    authority: str = ""
    safety_rules: str = ""
    address: str = ""
    pack: str = ""
    raster: int = 9
    words: str = "valve"

    @property
    def american(self) -> bool:
        return self.words == "tube"

    @property
    def pack_file(self) -> str:
        """The pack that lies beside the club's file, or nothing."""
        return "" if "://" in self.pack else self.pack

    @property
    def rules_page(self) -> str:
        """The club's own page among the lessons, or nothing."""
        return "" if "://" in self.safety_rules else self.safety_rules


def read_club(file: Path, lessons: Path) -> Club:
    """The club of one file.

    Parameters
    ----------
    file : Path
        TOML; a file that is not there says nothing.
    lessons : Path
        Where a page of the club's own rules would be.

    Returns
    -------
    Club

    Raises
    ------
    Fault
        One sentence that names the file, the line's name, and what to do.
    """
    place = f"course/{file.name}"
    if not file.is_file():
        return Club()
    try:
        said = tomllib.loads(file.read_text("utf-8-sig"))
    except UnicodeDecodeError:
        raise Fault(f"{place} is not in UTF-8: save it again as UTF-8 in your editor") from None
    except tomllib.TOMLDecodeError as error:
        line = re.search(r"at (line \d+)", str(error))
        at = f", {line[1]}" if line else ""
        raise Fault(f'{place}{at}: cannot be read: write each line once, texts in quotes: name = "…"') from None
    for key, value in said.items():
        if wrong := fault_in(key, value, lessons):
            raise Fault(f"{place}, {key}: {wrong}")
    lines: dict[str, Any] = {key: value.strip() if isinstance(value, str) else value for key, value in said.items()}
    return Club(**lines)


def fault_in(key: str, value: object, lessons: Path) -> str:
    """What is wrong with one line and what to do, or nothing."""
    if key not in LINES:
        near = difflib.get_close_matches(key, LINES, n=1)
        meant = f"did you mean {near[0]}?" if near else f"write one of {', '.join(LINES)}"
        return f"there is no line of that name: {meant}"
    if key == "raster":
        return "" if type(value) is int and value in RASTERS else f"write raster = 9 or raster = 10 (kHz), not {value!r}"
    if not isinstance(value, str):
        return f"put the text in quotes: {key} = {LINES[key][1]}"
    value = value.strip()
    if "\n" in value:
        return "write it in one line"
    if not re.search(r"\w", value):
        return f"it says nothing: write {LINES[key][1]}, or leave the line out"
    if key == "words":
        return "" if value in WORDS else f'write words = "valve" or words = "tube", not "{value}"'
    if key == "contact" and "@" in value and "://" not in value and not re.fullmatch(r"[^@\s]+@[^@\s]+\.[^@\s.]+", value):
        return f"{value} is no e-mail address: write {LINES[key][1]}, or words without an @"
    if key == "contact" and "://" in value and not is_address(value):
        return f"{value} is no whole address: write it as your browser shows it, or an e-mail address, or other words"
    if key == "pack" and not is_address(value):
        if not re.fullmatch(r"[\w-]+\.zip", value):
            return f'write an address that begins with https://, or the name of a zip in course: "crystal-to-reaction.zip", not {value}'
        if not (lessons.parent / value).is_file():
            return (
                f"there is no course/{value}: make it, after a first build without this line, with checker pack course/{value}"
            )
    if key in ("authority", "address") and not is_address(value):
        return f"write the whole address, with https:// before it: {LINES[key][1]}, not {value}"
    if key == "safety_rules" and not is_address(value):
        if not re.fullmatch(r"[\w-]+\.md", value):
            wanted = 'an address that begins with https://, or the name of a page in course/lessons: "club_rules.md"'
            return f"write {wanted}, not {value}"
        if not (lessons / value).is_file():
            return f"there is no page course/lessons/{value}: write it, or name the page that you have"
    return ""


def is_address(text: str) -> bool:
    """Whether a text is an address on the web, whole and without spaces."""
    try:
        parts = urlsplit(text)
    except ValueError:
        return False
    return parts.scheme in ("http", "https") and "." in parts.netloc.strip(".") and not re.search(r"\s", text)
