"""Which files and folders Python itself needs to read: the standard library, a few named packages, shared libraries.

Landlock grants whole trees and cannot take a part back. So a folder that also holds other people's packages is never
named; what is needed of it is named one by one.
"""

import glob
import importlib.util
import os
import sys
import sysconfig
from collections.abc import Iterable, Iterator

PACKAGES = ("numpy", "sympy", "mpmath", "gmpy2", "flint")

# Where packages of all kinds are installed, wherever it lies; and the standard library in one file, where it is so.
_SHELVES = {"site-packages", "dist-packages"}
_ZIPPED = f"python{sys.version_info.major}{sys.version_info.minor}.zip"


def python_trees(packages: Iterable[str] = PACKAGES) -> list[str]:
    """Files and folders that a child needs to read so that Python and `packages` work in it.

    Parameters
    ----------
    packages : iterable of str
        Top-level names; those not installed are passed over. They are looked for, not imported.

    Returns
    -------
    list of str
        Absolute paths without symbolic links, sorted, each once. None holds a folder of installed packages, this
        package, or a home.
    """
    found = {*_standard_library(), *_shared_libraries()}
    for name in packages:
        found.update(_package(name))
    return sorted({os.path.realpath(path) for path in found if os.path.exists(path)})


def import_path() -> list[str]:
    """The entries of `sys.path` that hold the standard library.

    With this for a path, a package that may not be read is one that is not there: ModuleNotFoundError, which libraries
    expect, and not PermissionError, which they do not. Packages imported before still find their own submodules.
    """
    folders = {os.path.realpath(sysconfig.get_path(name)) for name in ("stdlib", "platstdlib")}
    modules = {os.path.join(folder, "lib-dynload") for folder in folders}
    standard = [
        entry for entry in sys.path if os.path.realpath(entry) in folders | modules or os.path.basename(entry) == _ZIPPED
    ]
    return [entry for entry in standard if os.path.exists(entry)]


def _standard_library() -> Iterator[str]:
    for name in ("stdlib", "platstdlib"):
        folder = sysconfig.get_path(name)
        held = set(os.listdir(folder))
        if held & _SHELVES:
            yield from (os.path.join(folder, entry) for entry in held - _SHELVES)
        else:
            yield folder
    yield from (entry for entry in sys.path if os.path.basename(entry) == _ZIPPED)


def _package(name: str) -> Iterator[str]:
    """The folder or the single file of a package, and the folder of libraries that some wheels put beside it."""
    spec = importlib.util.find_spec(name)
    if spec is None or spec.origin is None:
        return
    if spec.submodule_search_locations is None:
        yield spec.origin
        return
    for folder in spec.submodule_search_locations:
        yield folder
        yield f"{folder}.libs"


def _shared_libraries() -> Iterator[str]:
    """The loader's cache and folders: whole where a folder is only for libraries, else the library files in it."""
    yield "/etc/ld.so.cache"
    triplet = sysconfig.get_config_var("MULTIARCH")
    if triplet:
        yield from (f"/lib/{triplet}", f"/usr/lib/{triplet}")
    for folder in ("/lib", "/lib64", "/usr/lib", "/usr/lib64", "/usr/local/lib", os.path.join(sys.base_prefix, "lib")):
        yield from glob.glob(os.path.join(glob.escape(folder), "*.so*"))
