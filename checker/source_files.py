"""Our own modules as files, and what each imports, from the sources: nothing is run.

The marks' store and the site's store of pictures both ask by this whether something that they keep is still good.
"""

import ast
from collections.abc import Collection, Iterable, Iterator
from functools import cache
from pathlib import Path


class SourceFiles:
    """The Python files of some packages under one root, each read at most once.

    Parameters
    ----------
    root : Path
        Folder that holds the packages.
    packages : collection of str
        Their names; all other modules are somebody else's.
    """

    def __init__(self, root: Path, packages: Collection[str]) -> None:
        self.root, self.packages = root, packages
        self.path = cache(self._path)
        self.imports = cache(self._imports)

    def _path(self, module: str) -> Path | None:
        """File of a module; None if it is not ours or not there."""
        if module.partition(".")[0] not in self.packages:
            return None
        base = self.root.joinpath(*module.split("."))
        return next((file for file in (base.with_suffix(".py"), base / "__init__.py") if file.is_file()), None)

    def _imports(self, module: str) -> tuple[str, ...]:
        """What a module of ours may import, as `imports_in` tells it."""
        path = self.path(module)
        if path is None:
            return ()
        package = module if path.name == "__init__.py" else module.rpartition(".")[0]
        return tuple(imports_in(ast.parse(path.read_bytes(), str(path)), package))

    def reached(self, modules: Iterable[str], leave_out: Collection[str] = ()) -> dict[str, Path]:
        """Modules of ours that some modules reach by imports, themselves and all packages on the way included, with their files.

        Parameters
        ----------
        modules : iterable of str
        leave_out : collection of str
            Modules that are not followed.

        Returns
        -------
        dict of str to Path
        """
        found: dict[str, Path] = {}
        ahead = list(modules)
        while ahead:
            module = ahead.pop()
            path = None if module in found or module in leave_out else self.path(module)
            if path is None:
                continue
            found[module] = path
            ahead += [module.rpartition(".")[0], *self.imports(module)]
        return found


def imports_in(code: ast.AST, package: str = "") -> Iterator[str]:
    """Every module that a piece of code may import; of `from a import b` both `a` and `a.b`.

    Parameters
    ----------
    code : ast.AST
    package : str
        Package of the module that the code stands in, for its relative imports.
    """
    for node in ast.walk(code):
        if isinstance(node, ast.Import):
            yield from (alias.name for alias in node.names)
        elif isinstance(node, ast.ImportFrom):
            above = package.split(".")[: len(package.split(".")) - node.level + 1] if node.level else []
            module = ".".join([*above, *([node.module] if node.module else [])])
            yield module
            yield from (f"{module}.{alias.name}" for alias in node.names)
