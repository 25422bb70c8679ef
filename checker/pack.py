"""The student pack: everything to work the exercises with, and no reference code.

    exercises/        the stubs
    checker/          the checker
    practice/         for each exercise its sealed practice values and its laws; the reference's sound
    START.md          how to begin
"""
import ast
import io
import zipfile
from pathlib import Path

from .course import PATHS, PRACTICE_SEED, ROOT, UNITS, load_exercise
from .laws import laws_source
from .plan import plan_for
from .sealed import sealed
from .sealed_hear import PATH as HEAR
from .sealed_hear import sealed_hear

FOLDER = "crystal-to-reaction"
_WHEN = (1980, 1, 1, 0, 0, 0)  # the earliest date that a zip can hold: the same pack has the same bytes on any day
_LEFT_OUT = {"demo_class", "__pycache__", "sheet"}  # sheets want the physics
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


class Worked(Exception):
    """An exercise cannot be handed out because somebody has answered it there; the text says which and what to do."""


def pack_files() -> dict[str, bytes]:
    """Every file of the pack: path in it, to its bytes. Made from the course's own files, the same each time."""
    files = {"START.md": _START.encode()}
    for name in ("LICENSE", "pyproject.toml", "constraints.txt"):
        files[name] = (ROOT / name).read_bytes()
    files["README.md"] = files["START.md"]
    for file in sorted((ROOT / "checker").rglob("*")):
        relative = file.relative_to(ROOT)
        if file.suffix in _KINDS and not _LEFT_OUT & set(relative.parts):
            files[relative.as_posix()] = file.read_bytes()
    for package in ("exercises", *(f"exercises/{unit.folder}" for unit in UNITS)):
        files[f"{package}/__init__.py"] = (ROOT / package / "__init__.py").read_bytes()
    for path in PATHS:
        files[f"exercises/{path}.py"] = _stub(path)
        plan = plan_for(path, PRACTICE_SEED)
        files[f"practice/{path}.sealed"] = sealed(plan).encode()
        files[f"practice/{path}_laws.py"] = laws_source(plan).encode()
    files[HEAR] = sealed_hear().encode()
    return files


def _stub(path):
    """The bytes of an exercise as it is handed out, once it is sure that nobody has worked it."""
    source = (ROOT / "exercises" / f"{path}.py").read_bytes()
    asked = {question.name for question in load_exercise(path).questions}
    try:
        stubs = {node.name for node in ast.parse(source).body if isinstance(node, ast.FunctionDef) and _is_stub(node)}
    except (SyntaxError, ValueError):
        stubs = set()
    for name in sorted(asked - stubs):
        raise Worked(f"exercises/{path}.py is no stub any more: {name} has been worked on. Put the stub back, and pack again.")
    return source


def _is_stub(function):
    """Whether a function does nothing but raise NotImplementedError."""
    statements = [node for node in function.body if not (isinstance(node, ast.Expr) and isinstance(node.value, ast.Constant))]
    return [ast.unparse(node) for node in statements] in (["raise NotImplementedError"], ["raise NotImplementedError()"])


def write_pack(where: Path) -> Path:
    """Write the pack, as a zip if the name ends so and as a folder if not; nothing that exists is written over.

    Raises
    ------
    FileExistsError
        If there is something of that name already.
    Worked
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


def _zipped(files):
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w", zipfile.ZIP_STORED) as archive:
        for name, data in files.items():
            entry = zipfile.ZipInfo(name, _WHEN)
            entry.create_system, entry.external_attr = 3, 0o644 << 16
            archive.writestr(entry, data)
    return out.getvalue()

