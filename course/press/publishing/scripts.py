"""JavaScript modules joined into classic scripts, which a page opened from the disk can load."""

import json
import subprocess
from collections.abc import Mapping
from pathlib import Path
from typing import Any

from course.press.faults import Fault

JOIN = Path(__file__).with_name("join.mjs")
OF_EVERY_PAGE = (
    "course",
    "answers",
    "listening",
    "take",
    "present",
    "search",
)  # entry modules in theme/scripts, and the scripts made of them


def join_modules(
    scripts: Mapping[Path, Path], texts: Mapping[str, Path] | None = None, values: Mapping[str, Any] | None = None
) -> None:
    """Write classic scripts.

    Parameters
    ----------
    scripts : mapping
        Of each file to be written its entry module.
    texts : mapping, optional
        Of a global constant the entry module of a script whose text it is: one that the page hands to another thread.
    values : mapping, optional
        Of a global constant what it is, as JSON has it.

    Raises
    ------
    Fault
        If the modules cannot be joined.
    """
    asked = {
        "scripts": {str(target): str(entry) for target, entry in scripts.items()},
        "texts": {name: str(entry) for name, entry in (texts or {}).items()},
        "values": dict(values or {}),
    }
    done = subprocess.run(["node", str(JOIN)], input=json.dumps(asked), capture_output=True, encoding="utf-8")
    if done.returncode:
        names = ", ".join(entry.name for entry in scripts.values())
        raise Fault(f"the modules of {names} cannot be joined: {done.stderr.strip()}")


def write_page_scripts(theme: Path, site: Path, values: Mapping[str, Any]) -> None:
    """Write the scripts that every page loads.

    Parameters
    ----------
    theme : Path
        Folder of `scripts/`.
    site : Path
        Folder to write to.
    values : mapping
        Global constants of theirs, as `join_modules` takes them.
    """
    join_modules({site / f"{name}.js": theme / "scripts" / f"{name}.js" for name in OF_EVERY_PAGE}, values=values)
