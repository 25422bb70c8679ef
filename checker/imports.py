"""Which modules a piece of Python imports, and those in turn: read from sources, nothing is run."""

import ast
from collections.abc import Collection, Iterable, Iterator
from dataclasses import dataclass
from functools import cache
from hashlib import sha256
from pathlib import Path


@dataclass(frozen=True, eq=False)  # each reads the files for itself: they may have changed since
class Sources:
    """The modules of some packages that lie below one root.

    Parameters
    ----------
    root : Path
        The folder that holds the packages.
    packages : tuple of str
        Their names; a module of any other is nobody's concern here.
    """

    root: Path
    packages: tuple[str, ...]

    def file(self, module: str) -> Path | None:
        """The file of a module of these packages; None for any other name."""
        return _file_of(self, module)

    def imports(self, module: str) -> tuple[str, ...]:
        """Every name that a module imports, in full, each perhaps a module and perhaps something in one."""
        return _imports_of(self, module)

    def closure(self, modules: Iterable[str], without: Collection[str] = ()) -> set[str]:
        """The modules of these packages that some modules import, and those in turn, with themselves and their packages."""
        found: set[str] = set()
        ahead = list(modules)
        while ahead:
            module = ahead.pop()
            if module not in found and module not in without and self.file(module):
                found.add(module)
                ahead += [module.rpartition(".")[0], *self.imports(module)]
        return found

    def hash_of(self, modules: Iterable[str], about: str = "", without: Collection[str] = ()) -> str:
        """Hash of the sources of a closure, and of a text `about` whatever else counts."""
        digest = sha256(about.encode())
        for module in sorted(self.closure(modules, without)):
            file = self.file(module)
            digest.update(f"\0{module}\0".encode() + (file.read_bytes() if file else b""))
        return digest.hexdigest()


@cache
def _file_of(sources: Sources, module: str) -> Path | None:
    if module.partition(".")[0] not in sources.packages:
        return None
    base = sources.root / module.replace(".", "/")
    return next((file for file in (base.with_suffix(".py"), base / "__init__.py") if file.is_file()), None)


@cache
def _imports_of(sources: Sources, module: str) -> tuple[str, ...]:
    file = sources.file(module)
    if file is None:
        return ()
    package = module if file.name == "__init__.py" else module.rpartition(".")[0]
    return tuple(imports_in(ast.parse(file.read_bytes()), package))


def imports_in(node: ast.AST, package: str = "") -> Iterator[str]:
    """Every name that a piece of syntax imports, in full; `package` is the one that its relative imports start from."""
    for inner in ast.walk(node):
        if isinstance(inner, ast.Import):
            yield from (alias.name for alias in inner.names)
        elif isinstance(inner, ast.ImportFrom):
            steps = package.split(".")
            above = steps[: len(steps) - inner.level + 1] if inner.level else []
            module = ".".join([*above, *([inner.module] if inner.module else [])])
            yield module
            yield from (f"{module}.{alias.name}" for alias in inner.names)
