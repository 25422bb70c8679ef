"""The student pack: everything to work the exercises with, and no reference code.

exercises/        the stubs
checker/          the checker
practice/         for each exercise its sealed practice values, its laws and its pictures; the stubs once more; the reference's sound
site/             the lessons, where the site has been built
START.md          how to begin
"""

from collections.abc import Callable
from functools import partial
from importlib import metadata
from pathlib import Path

from ..course import CHECKOUT, PACKAGE, PATHS, ROOT
from ..hear.sealed import PATH as HEAR
from ..hear.sealed import seal_hear
from ..see.sealed import file_of as see_file
from ..see.sealed import seal_views
from .cache import keep, read_kept
from .index import PATH as INDEX
from .index import make_index
from .lessons import ADDRESS_FILE
from .originals import PATH as STUBS
from .originals import zip_of
from .practice import sealed_plan
from .site import lesson_opens, site_files
from .start import start_page
from .stubs import require_stub, stub_files

FOLDER = "crystal-to-reaction"
_LEFT_OUT = {"examples", "__pycache__", "sheet"}  # sheets want the physics
_KINDS = {".py", ".css", ".html"}


def pack_files(site: Path | None = None, address: str = "") -> dict[str, bytes]:
    """Every file of the pack: path in it, to its bytes. Made from the course's own files, the same each time.

    Parameters
    ----------
    site : Path, optional
        The folder of the built site, to go with it.
    address : str
        Where the site is published; what the pack says of the lessons where no site goes with it.
    """
    start = start_page(site is not None, address).encode()
    files = {"START.md": start, "README.md": start}
    for name in ("LICENSE", "pyproject.toml", "constraints.txt"):
        files[name] = course_file(name).read_bytes()
    for file in sorted((ROOT / "checker").rglob("*")):
        relative = file.relative_to(ROOT)
        if file.suffix in _KINDS and not _LEFT_OUT & set(relative.parts):
            files[relative.as_posix()] = file.read_bytes()
    stubs = {name: lesson_opens(data, site is not None, address) for name, data in stub_files().items()}
    for path in PATHS:
        require_stub(path, stubs[f"{path}.py"])
        laws, sealed = sealed_plan(path)
        files[f"practice/{path}.sealed"] = sealed
        files[f"practice/{path}_laws.py"] = laws.encode()
        files[see_file(path)] = kept_or_made(f"{path}.see", partial(seal_views, path))
    files |= {f"exercises/{name}": stub for name, stub in stubs.items()}
    files[STUBS] = zip_of(stubs)
    files[INDEX] = make_index().encode()
    files[HEAR] = kept_or_made("hear.sealed", seal_hear)
    if site:
        files |= {f"site/{name}": data for name, data in site_files(site).items()}
    elif address:
        files[ADDRESS_FILE] = address.encode()
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


def kept_or_made(name: str, make: Callable[[], bytes]) -> bytes:
    """What was kept under a name, or what is made now, and kept for the next time."""
    kept = read_kept(name)
    if kept is None:
        kept = make()
        keep(name, kept)
    return kept


def write_pack(where: Path, site: Path | None = None, address: str = "") -> Path:
    """Write the pack, with what `pack_files` puts in, as a zip if the name ends so and as a folder if not; nothing that exists is written over.

    Raises
    ------
    FileExistsError
        If there is something of that name already.
    NotAStub
        If an exercise is not as it is handed out.
    """
    files = {
        f"{FOLDER}/{name}" if where.suffix == ".zip" else name: data for name, data in sorted(pack_files(site, address).items())
    }
    if where.exists():
        raise FileExistsError(17, "There is something of that name already; choose another", str(where))
    if where.suffix == ".zip":
        where.write_bytes(zip_of(files))
        return where
    for name, data in files.items():
        file = where / name
        file.parent.mkdir(parents=True, exist_ok=True)
        file.write_bytes(data)
    return where
