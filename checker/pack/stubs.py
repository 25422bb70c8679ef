"""The exercises as they are handed out: each a stub, to be filled in."""

import ast
from pathlib import Path

from ..course import PATHS, ROOT, UNITS, load_exercise


class NotAStub(Exception):
    """An exercise cannot be handed out because somebody has answered it there; the text says which and what to do."""


def stub_files() -> dict[str, bytes]:
    """Every file of exercises/ as it lies here: path below it, to its bytes."""
    packages = [f"{folder}__init__.py" for folder in ("", *(f"{unit.folder}/" for unit in UNITS))]
    return {name: (ROOT / "exercises" / name).read_bytes() for name in (*packages, *(f"{path}.py" for path in PATHS))}


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
    asked = {question.name for question in load_exercise(path).questions}
    try:
        stubs = {node.name for node in ast.parse(source).body if isinstance(node, ast.FunctionDef) and _is_stub(node)}
    except (SyntaxError, ValueError):
        stubs = set()
    for name in sorted(asked - stubs):
        raise NotAStub(
            f"exercises/{path}.py is no stub any more: {name} has been worked on. Put the stub back, and pack again."
        )


def is_unwritten(source: str) -> bool:
    """Whether nobody has begun on an exercise: every function in its file is a stub, or there is none."""
    try:
        body = ast.parse(source).body
    except (SyntaxError, ValueError):
        return False
    return all(_is_stub(node) for node in body if isinstance(node, ast.FunctionDef))


def _is_stub(function: ast.FunctionDef) -> bool:
    """Whether a function does nothing but raise NotImplementedError."""
    statements = [node for node in function.body if not (isinstance(node, ast.Expr) and isinstance(node.value, ast.Constant))]
    return [ast.unparse(node) for node in statements] in (["raise NotImplementedError"], ["raise NotImplementedError()"])
