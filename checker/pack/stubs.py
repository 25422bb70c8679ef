"""The exercises as they are handed out: each a stub, to be filled in."""

import ast
from pathlib import Path

from ..course import PATHS, ROOT, UNITS
from ..faults import Problem
from .index import index


class NotAStub(Problem):
    """An exercise cannot be handed out because somebody has answered it there; the text says which and what to do."""


def stub_files(missing_too: bool = False) -> dict[str, bytes]:
    """Every file of exercises/ as it lies here: path below it, to its bytes. With `missing_too`, those that are there."""
    packages = [f"{folder}__init__.py" for folder in ("", *(f"{unit.folder}/" for unit in UNITS))]
    names = [*packages, *(f"{path}.py" for path in PATHS)]
    folder = ROOT / "exercises"
    return {name: (folder / name).read_bytes() for name in names if not missing_too or (folder / name).is_file()}


def write_stubs(folder: Path) -> None:
    """Make a folder of exercises, every one to be filled in.

    Raises
    ------
    OSError
        If there is something of that name already, or it cannot be written.
    """
    folder.mkdir(parents=True)
    for name, data in stub_files().items():
        file = folder / name
        file.parent.mkdir(exist_ok=True)
        file.write_bytes(data)


def require_stub(path: str, source: bytes) -> None:
    """Make sure that nobody has worked an exercise.

    Raises
    ------
    NotAStub
        If anything that it asks for does more than raise NotImplementedError.
    """
    asked = {name for name, *_ in index()[path].functions}
    for name in sorted(asked - stub_functions(source)):
        raise NotAStub(
            f"exercises/{path}.py is no stub any more: {name} has been worked on. Put the stub back, and pack again."
        )


def is_stub_of(path: str, source: bytes) -> bool:
    """Whether a source has a stub for every function that an exercise asks for."""
    stubs = stub_functions(source)
    return all(name in stubs for name, *_ in index()[path].functions)


def stub_functions(source: str | bytes) -> set[str]:
    """The functions of a source that do nothing yet but raise NotImplementedError; none if it does not read as Python."""
    try:
        return {node.name for node in ast.parse(source).body if isinstance(node, ast.FunctionDef) and _is_stub(node)}
    except (SyntaxError, ValueError, RecursionError, MemoryError):
        return set()


def _is_stub(function: ast.FunctionDef) -> bool:
    """Whether a function does nothing but raise NotImplementedError."""
    statements = [node for node in function.body if not (isinstance(node, ast.Expr) and isinstance(node.value, ast.Constant))]
    return [ast.unparse(node) for node in statements] in (["raise NotImplementedError"], ["raise NotImplementedError()"])
