"""The student pack: everything to work the exercises with, and no reference code.

exercises/        the stubs
checker/          the checker
practice/         for each exercise its sealed practice values, its laws and its pictures; the reference's sound
START.md          how to begin
"""

import io
import zipfile
from collections.abc import Mapping
from importlib import metadata
from pathlib import Path

from ..course import CHECKOUT, PACKAGE, PATHS, PRACTICE_SEED, ROOT
from ..hear.sealed import PATH as HEAR
from ..hear.sealed import seal_hear
from ..judging.plans import plan_for
from ..judging.sealed import seal_plan
from ..see.sealed import file_of as see_file
from ..see.sealed import seal_views
from .laws import laws_source
from .stubs import require_stub, stub_files

FOLDER = "crystal-to-reaction"
_WHEN = (1980, 1, 1, 0, 0, 0)  # the earliest date that a zip can hold: the same pack has the same bytes on any day
_LEFT_OUT = {"examples", "__pycache__", "sheet"}  # sheets want the physics
_KINDS = {".py", ".css", ".html"}
_START = """# Crystal to Reaction: the exercises

You need Python 3.11 or newer. In this folder, once:

    python3 -m venv .venv
    .venv/bin/pip install -c constraints.txt -e .

Then, as often as you like:

    .venv/bin/checker try              the next exercise, and where you stand
    .venv/bin/checker try resonance    one exercise
    .venv/bin/checker hint resonance   a hint; then 2 and 3 for more
    .venv/bin/checker hear             your own receiver, as far as it has come

Edit the files in exercises/, nothing else. When you are done, hand in that folder, or a zip of it.

The figures you are checked against here are for practice. Your instructor marks with others.
"""


def pack_files() -> dict[str, bytes]:
    """Every file of the pack: path in it, to its bytes. Made from the course's own files, the same each time."""
    files = {"START.md": _START.encode(), "README.md": _START.encode()}
    for name in ("LICENSE", "pyproject.toml", "constraints.txt"):
        files[name] = course_file(name).read_bytes()
    for file in sorted((ROOT / "checker").rglob("*")):
        relative = file.relative_to(ROOT)
        if file.suffix in _KINDS and not _LEFT_OUT & set(relative.parts):
            files[relative.as_posix()] = file.read_bytes()
    for name, stub in stub_files().items():
        files[f"exercises/{name}"] = stub
    for path in PATHS:
        require_stub(path, files[f"exercises/{path}.py"])
        plan = plan_for(path, PRACTICE_SEED)
        files[f"practice/{path}.sealed"] = seal_plan(plan).encode()
        files[f"practice/{path}_laws.py"] = laws_source(plan).encode()
        files[see_file(path)] = seal_views(path).encode()
    files[HEAR] = seal_hear().encode()
    return files


def course_file(name: str) -> Path:
    """A file of the course's top folder: in a checkout it lies there, and in an installed package where it was put.

    Raises
    ------
    FileNotFoundError
        If it is in neither place.
    """
    if CHECKOUT:
        return ROOT / name
    installed = (
        Path(str(file.locate())) for file in metadata.files(PACKAGE) or () if file.name == name and "share" in file.parts
    )
    return next((file for file in installed if file.is_file()), ROOT / name)


def write_pack(where: Path) -> Path:
    """Write the pack, as a zip if the name ends so and as a folder if not; nothing that exists is written over.

    Raises
    ------
    FileExistsError
        If there is something of that name already.
    NotAStub
        If an exercise is not as it is handed out.
    """
    files = {f"{FOLDER}/{name}" if where.suffix == ".zip" else name: data for name, data in sorted(pack_files().items())}
    if where.exists():
        raise FileExistsError(17, "There is something of that name already; choose another", str(where))
    if where.suffix == ".zip":
        where.write_bytes(_zipped(files))
        return where
    for name, data in files.items():
        file = where / name
        file.parent.mkdir(parents=True, exist_ok=True)
        file.write_bytes(data)
    return where


def _zipped(files: Mapping[str, bytes]) -> bytes:
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w", zipfile.ZIP_STORED) as archive:
        for name, data in files.items():
            entry = zipfile.ZipInfo(name, _WHEN)
            entry.create_system, entry.external_attr = 3, 0o644 << 16
            archive.writestr(entry, data)
    return out.getvalue()
