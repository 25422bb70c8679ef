"""The stub of an exercise as it was handed out, for somebody whose file is gone or spoilt."""

import contextlib
import io
import subprocess
import zipfile
from collections.abc import Iterator, Mapping
from pathlib import Path

from ..course import CHECKOUT, ROOT, SEALED
from .cache import keep, read_kept
from .stubs import is_stub_of, stub_files

PATH = "practice/stubs.zip"
_KEPT = "stubs.zip"
_EARLIEST = (1980, 1, 1, 0, 0, 0)  # that a zip can hold


def original_stub(path: str) -> bytes | None:
    """The stub of the exercise at a path; None if nothing on this computer has it any more.

    In a pack it lies in a zip of its own. A checkout's is the one in exercises/ unless that was worked on: then what was kept at the
    first run, or what git holds.
    """
    return next((stub for stub in _candidates(path) if is_stub_of(path, stub)), None)


def _candidates(path: str) -> Iterator[bytes]:
    if SEALED:
        with contextlib.suppress(OSError):
            yield from _in_zip((ROOT / PATH).read_bytes(), path)
        return
    with contextlib.suppress(OSError):
        yield (ROOT / "exercises" / f"{path}.py").read_bytes()
    yield from _in_zip(read_kept(_KEPT) or b"", path)
    yield from _in_git(path)


def keep_originals(folder: Path) -> None:
    """Keep the stubs of a checkout that somebody works in, unless that was done before."""
    if CHECKOUT and not SEALED and folder.resolve() == ROOT / "exercises" and read_kept(_KEPT) is None:
        keep(_KEPT, zip_of(stub_files(missing_too=True)))


def zip_of(files: Mapping[str, bytes]) -> bytes:
    """Files in a zip: the same files, the same bytes."""
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w") as archive:
        for name, data in files.items():
            entry = zipfile.ZipInfo(name, _EARLIEST)
            entry.compress_type, entry.create_system, entry.external_attr = zipfile.ZIP_DEFLATED, 3, 0o644 << 16
            archive.writestr(entry, data)
    return out.getvalue()


def _in_zip(data: bytes, path: str) -> Iterator[bytes]:
    with contextlib.suppress(zipfile.BadZipFile, KeyError, OSError), zipfile.ZipFile(io.BytesIO(data)) as archive:
        yield archive.read(f"{path}.py")


def _in_git(path: str) -> Iterator[bytes]:
    """Every state of the file that git holds, the newest first."""
    file = f"exercises/{path}.py"
    for commit in (_git("log", "--format=%H", "--", file) or b"").split():
        yield _git("show", f"{commit.decode()}:{file}") or b""


def _git(*arguments: str) -> bytes | None:
    try:
        done = subprocess.run(["git", "-C", str(ROOT), *arguments], capture_output=True, timeout=20)
    except (OSError, subprocess.TimeoutExpired):
        return None
    return done.stdout if done.returncode == 0 else None
