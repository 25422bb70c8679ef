"""A fingerprint of everything a figure or sound is made from: its own function, what that uses, what it imports.

Code is compared as a syntax tree, so a comment or a blank line changes nothing.
"""

import ast
import hashlib
import sys
from functools import cache
from importlib.metadata import PackageNotFoundError, version
from pathlib import Path

from checker.imports import Sources, imports_in

OURS = ("solutions", "course")
DRAWN_WITH = ("numpy", "sympy", "matplotlib", "schemdraw", "soundfile")


class MediaSources:
    """What stands in the Python files under one root, as it is when it is first asked for.

    Parameters
    ----------
    root : Path
        Folder that holds `solutions/` and `course/`.
    """

    def __init__(self, root: Path) -> None:
        self.root = root
        self.modules = Sources(root, OURS)
        self.path = self.modules.file
        self.tree = cache(self._tree)
        self.content_hash = cache(self._content_hash)
        self.reached = cache(self._reached)
        self.beside = cache(self._beside)

    def _tree(self, path: Path) -> ast.Module:
        return ast.parse(path.read_bytes(), str(path))

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

        Raises
        ------
        ValueError
            If there is no such module.
        """
        path = self.path(module)
        if path is None:
            raise ValueError(f"there is no module {module} below {self.root}")
        parts = statements_used(self.tree(path), function)
        package = module.rpartition(".")[0]
        imported = [name for part in parts for name in imports_in(part, package)]
        files = self.files_reached([*imported, *makers]) - {path}
        digest = hashlib.sha256()
        for line in (
            f"python {sys.version_info.major}.{sys.version_info.minor}",
            *(f"{library} {installed_version(library)}" for library in DRAWN_WITH),
            *(ast.dump(part) for part in parts),
            *(f"{file.relative_to(self.root).as_posix()} {self.content_hash(file)}" for file in sorted(files)),
        ):
            digest.update(line.encode() + b"\n")
        return digest.hexdigest()

    def _content_hash(self, file: Path) -> str:
        """Hash of a file, of a Python file as a syntax tree."""
        content = ast.dump(self.tree(file)).encode() if file.suffix == ".py" else file.read_bytes()
        return hashlib.sha256(content).hexdigest()

    def files_reached(self, modules: list[str]) -> set[Path]:
        """Files of ours reached from some modules by imports, with the data files that lie beside them."""
        found = {file for module in modules for file in self.reached(module)}
        folders = {path.parent for path in found} - {self.root / "course"}  # what lies there is the whole site's
        return found.union(*(self.beside(folder) for folder in folders))

    def _reached(self, module: str) -> frozenset[Path]:
        return frozenset(path for name in self.modules.closure([module]) if (path := self.path(name)))

    def _beside(self, folder: Path) -> frozenset[Path]:
        return frozenset(file for file in folder.iterdir() if file.suffix in (".csv", ".toml", ".json"))


def parameters_of(statement: ast.stmt) -> list[str]:
    """Names of what a function takes; none of what is no function."""
    if not isinstance(statement, ast.FunctionDef):
        return []
    return [argument.arg for argument in (*statement.args.args, *statement.args.kwonlyargs)]


def statements_used(tree: ast.Module, function: str) -> list[ast.stmt]:
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
    """Whether a statement is a text by itself, such as a docstring."""
    return isinstance(statement, ast.Expr) and isinstance(statement.value, ast.Constant)


@cache
def installed_version(package: str) -> str:
    """Version of a library, or "missing"."""
    try:
        return version(package)
    except PackageNotFoundError:
        return "missing"
