"""What a student may do runs inside as outside, with the parts of Python, numpy and sympy that load only when used."""

import os
import sys
import sysconfig
from pathlib import Path

import numpy
import pytest

from checker.worker import trees

ROOT = Path(__file__).resolve().parents[3]

COMPUTATIONS = {path.stem: path.read_text("utf-8") for path in sorted((Path(__file__).parent / "honest").glob("*.py"))}


def run(source):
    names = {"__name__": "submission"}
    exec(compile(source, "submission.py", "exec"), names)
    return names["answer"]


def run_as_a_child_does(source):
    sys.path[:] = trees.import_path()
    return run(source)


@pytest.mark.parametrize("subject", COMPUTATIONS)
def test_honest_work_goes_unhindered(attack, subject):
    source = COMPUTATIONS[subject]
    outside = attack(lambda: os.chdir(attack.home) or run(source), without=["contain"])
    inside = attack(lambda: run_as_a_child_does(source))
    assert not inside.error, inside
    assert inside.value == outside.value


def test_a_package_that_may_not_be_read_is_not_there(attack):
    """lambdify asks for SciPy first; a refusal in place of ModuleNotFoundError would stop it."""
    pytest.importorskip("scipy")

    def ask():
        for name in [name for name in sys.modules if name.partition(".")[0] == "scipy"]:
            del sys.modules[name]
        return run_as_a_child_does("import scipy")

    assert attack(ask).error == "ModuleNotFoundError"


def test_python_inside_keeps_its_helpers_off():
    """Nothing private lies under a tree that may be read."""
    private = [
        str(Path.home()),
        str(ROOT),
        *(str(ROOT / part) for part in ("checker", "solutions", "exercises", "tests")),
        "/etc",
        "/proc",
        "/dev",
        "/tmp",
        sysconfig.get_path("purelib"),
        str(Path(pytest.__file__).parent),
        str(Path(sysconfig.get_path("stdlib"), "site-packages")),
        "/usr/lib/python3",
    ]
    for tree in trees.python_trees():
        assert os.path.isabs(tree) and os.path.realpath(tree) == tree
        for path in private:
            real = os.path.realpath(path)
            assert real != tree and not real.startswith(tree + os.sep), f"{tree} would open {path}"


def test_trees_name_packages_not_their_shelf():
    named = {Path(tree).name for tree in trees.python_trees()}
    assert {"numpy", "sympy", "mpmath"} <= named
    assert Path(numpy.__file__).parents[1].joinpath("numpy.libs").is_dir() == ("numpy.libs" in named)
    assert not named & {"pytest", "hypothesis", "scipy", "site-packages", "dist-packages"}


def test_a_package_of_a_single_file_and_one_not_there(tmp_path, monkeypatch):
    (tmp_path / "lone_module.py").touch()
    (tmp_path / "folder_only").mkdir()
    monkeypatch.syspath_prepend(tmp_path)
    found = trees.python_trees(["lone_module", "folder_only", "no_such_thing_at_all"])
    assert str(tmp_path / "lone_module.py") in found
    assert not any("folder_only" in tree for tree in found)
