"""What a student has set aside for later: names in a text file beside the exercises, one a line."""

from pathlib import Path

from ..course import PATHS, UnknownExercise, find

FILE = "later.txt"


def set_aside(folder: Path) -> tuple[str, ...]:
    """Paths of the exercises set aside in a folder of exercises, in the course's order; a line that names none is passed over."""
    try:
        lines = (folder / FILE).read_text("utf-8", "replace").splitlines()
    except FileNotFoundError:
        return ()
    return tuple(sorted({path for line in lines if (path := _path(line))}, key=PATHS.index))


def put_aside(folder: Path, path: str) -> tuple[str, ...]:
    """Set one more aside; all that are."""
    return _write(folder, {*set_aside(folder), path})


def take_back(folder: Path, path: str) -> tuple[str, ...]:
    """Set one aside no longer; those that still are."""
    return _write(folder, {*set_aside(folder)} - {path})


def _path(line: str) -> str | None:
    try:
        return find(line) if line.strip() else None
    except UnknownExercise:
        return None


def _write(folder: Path, paths: set[str]) -> tuple[str, ...]:
    ordered = tuple(sorted(paths, key=PATHS.index))
    (folder / FILE).write_text("".join(f"{path.rpartition('/')[2]}\n" for path in ordered), "utf-8")
    return ordered
