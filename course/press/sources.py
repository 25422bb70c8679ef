"""A fingerprint of everything a figure or sound is made from: its own function, what that uses, what it imports.

Code is compared as a syntax tree, so a comment or a blank line changes nothing.
"""

import ast
import hashlib
import sys
from functools import cache
from importlib.metadata import PackageNotFoundError, version
from pathlib import Path

OURS = ("solutions", "course")
DRAWN_WITH = ("numpy", "sympy", "matplotlib", "schemdraw", "soundfile")


class Sources:
    """The Python files under one root, each read at most once.

    Parameters
    ----------
    root : Path
        Folder that holds `solutions/` and `course/`.
    """

    def __init__(self, root: Path):
        self.root = root
        self.tree = cache(self._tree)

    def _tree(self, path: Path) -> ast.Module:
        return ast.parse(path.read_bytes(), str(path))

    def path(self, module: str) -> Path | None:
        """File of a module of ours, or None if it is not ours or not there."""
        if module.split(".")[0] not in OURS:
            return None
        place = self.root.joinpath(*module.split("."))
        for path in (place.with_suffix(".py"), place / "__init__.py"):
            if path.is_file():
                return path
        return None

    def fingerprint(self, module: str, function: str, makers: tuple[str, ...]) -> str:
        """Hash of one function with all it depends on.

        Parameters
        ----------
        module, function : str
            Where the figure or sound is defined.
        makers : tuple of str
            Modules that turn what it returns into a file.

        Returns
        -------
        str
            Hexadecimal; the same on every machine with the same code and the same versions.
        """
        path = self.path(module)
        parts = parts_used(self.tree(path), function)
        imported = [name for part in parts for name in imports_in(part)] + list(makers)
        files = self.closure(imported) - {path}
        digest = hashlib.sha256()
        for line in (
            f"python {sys.version_info.major}.{sys.version_info.minor}",
            *(f"{package} {installed(package)}" for package in DRAWN_WITH),
            *(ast.dump(part) for part in parts),
            *(f"{file.relative_to(self.root).as_posix()} {self.content(file)}" for file in sorted(files)),
        ):
            digest.update(line.encode() + b"\n")
        return digest.hexdigest()

    def content(self, file: Path) -> str:
        content = ast.dump(self.tree(file)).encode() if file.suffix == ".py" else file.read_bytes()
        return hashlib.sha256(content).hexdigest()

    def closure(self, modules: list[str]) -> set[Path]:
        """Files of ours reached from some modules by imports, with the data files that lie beside them."""
        found: set[Path] = set()
        waiting = list(modules)
        while waiting:
            path = self.path(waiting.pop())
            if path is None or path in found:
                continue
            found.add(path)
            waiting += imports_in(self.tree(path))
        folders = {path.parent for path in found} - {self.root / "course"}  # what lies there is the whole site's
        return found | {
            beside for folder in folders for beside in folder.iterdir() if beside.suffix in (".csv", ".toml", ".json")
        }


def parameters(function: ast.FunctionDef) -> list[str]:
    """Names of what a function takes."""
    return [argument.arg for argument in (*function.args.args, *function.args.kwonlyargs)]


def imports_in(node: ast.AST) -> list[str]:
    """Every module a piece of code may import, packages on the way included."""
    names: set[str] = set()
    for inner in ast.walk(node):
        if isinstance(inner, ast.Import):
            names |= {alias.name for alias in inner.names}
        elif isinstance(inner, ast.ImportFrom) and inner.module and not inner.level:
            names |= {inner.module} | {f"{inner.module}.{alias.name}" for alias in inner.names}
    parts = [name.split(".") for name in sorted(names)]
    return list(dict.fromkeys(".".join(part[: n + 1]) for part in parts for n in range(len(part))))


def parts_used(tree: ast.Module, function: str) -> list[ast.stmt]:
    """The top-level statements of a file that one of its functions depends on, in their order."""
    binders: dict[str, list[ast.stmt]] = {}
    always = []
    for statement in tree.body:
        bound = names_bound(statement)
        for name in bound:
            binders.setdefault(name, []).append(statement)
        if not bound and not is_text(statement):
            always.append(statement)
    used: list[ast.stmt] = []
    waiting = [*binders.get(function, []), *binders.get("*", []), *always]
    while waiting:
        statement = waiting.pop()
        if statement in used:
            continue
        used.append(statement)
        mentioned = {node.id for node in ast.walk(statement) if isinstance(node, ast.Name)}
        waiting += [binder for name in sorted(mentioned) for binder in binders.get(name, [])]
    return [statement for statement in tree.body if statement in used]


def names_bound(statement: ast.stmt) -> set[str]:
    """Names that a top-level statement gives a meaning to."""
    if isinstance(statement, ast.FunctionDef | ast.ClassDef):
        return {statement.name}
    if isinstance(statement, ast.Import | ast.ImportFrom):
        return {(alias.asname or alias.name).split(".")[0] for alias in statement.names}
    return {node.id for node in ast.walk(statement) if isinstance(node, ast.Name) and isinstance(node.ctx, ast.Store)}


def is_text(statement: ast.stmt) -> bool:
    return isinstance(statement, ast.Expr) and isinstance(statement.value, ast.Constant)


@cache
def installed(package: str) -> str:
    try:
        return version(package)
    except PackageNotFoundError:
        return "missing"
