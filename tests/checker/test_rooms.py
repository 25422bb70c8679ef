"""The rooms of the source: which may import from which, read from the imports themselves."""

import ast
import sys
from collections import defaultdict
from collections.abc import Iterator
from graphlib import TopologicalSorter
from pathlib import Path

import pytest

from checker.course import ROOT
from checker.imports import Sources, imports_in

# A room of checker/, and the rooms and modules beside it that it may import. Lower ones know nothing of those above them.
ARROWS = {
    "worker": "",
    "checks": "",
    "text": "",
    "files": "",
    "budgets": "",
    "faults": "",
    "imports": "",
    "templates": "text",
    "toml_source": "faults",
    "course": "checks faults",
    "submissions": "budgets course faults text",
    "sandbox": "budgets faults text worker",
    "judging": "budgets checks course faults imports text worker",
    "core": "checks course judging",
    "term": "core course submissions text toml_source",
    "marks": "budgets core course faults judging sandbox submissions term text",
    "report": "core course faults files judging marks submissions templates term text",
    "exports": "checks core course faults files judging marks report term",
    "hear": "checks course judging templates worker",
    "see": "checks course judging templates text worker",
    "pack": "checks course faults files hear judging see worker",
    "sheet": "checks files templates text toml_source",
    "cli": "core course exports faults files hear judging marks pack report sandbox see sheet submissions term text",
}

# A top folder, what else of ours it may import, and the libraries of others that it may.
FOLDERS = {
    "exercises": ("", "numpy sympy"),
    "solutions": ("", "numpy sympy numba"),  # numba where it is installed, in one module
    "checker": ("", "numpy sympy mpmath hypothesis rich jinja2 markupsafe distributed"),
    "course": ("solutions checker", None),
}
FURTHER = {
    "checker.worker": ("", "numpy sympy mpmath"),  # submitted code runs beside it: nothing of the judge's is within reach
    "checker.sheet": ("solutions", "numpy jinja2 markupsafe"),
    "solutions.unit07_oscillation.stepping": ("", "numpy numba"),  # a hundred times as fast with it, the same without
}
CHECKS = ("checker checker.checks", "numpy sympy")  # of what tells how an exercise is judged
HELPS_CHECKS = {"solutions.unit06_reaction.given_sets"}

# Imports inside a function, each with its reason; there is a word beside it in the code too.
LATE = {
    ("checker.sandbox.workers", "resource"): "Windows has none",
    ("checker.cli.sheet", "checker.sheet"): "a student pack has no checker/sheet",
    ("checker.marks.cluster", "distributed.Client"): "comes with an extra that few install",
    ("checker.judging.inputs", "hypothesis"): "takes longer than a verdict, and only a search wants it",
    ("checker.judging.inputs", "hypothesis.strategies"): "as above",
    ("checker.judging.answers", "hypothesis"): "as above",
    ("checker.judging.plan", "sympy"): "takes a second, and only a formula wants it",
    (
        "checker.judging.fingerprint",
        "importlib.metadata.version",
    ): "takes a third of numpy's time, and is asked once for an exercise",
    (
        "checker.cli.parser",
        "importlib.metadata.PackageNotFoundError",
    ): "takes a third of numpy's time, and only --version asks it",
    ("checker.cli.parser", "importlib.metadata.version"): "as above",
    ("checker.cli.terminal", "checker.cli.colour"): "rich takes half as long as numpy, and only a terminal wants it",
    ("checker.pack.lessons", "tomllib"): "only somebody without a site at hand needs the address",
    ("checker.worker.student", "sympy"): "takes a second, and only calls with symbols want it",
}
# Imports by a text, where the name is data.
BY_TEXT = {
    "checker.cli.parser": "a command is loaded when it is asked for",
    "checker.course": "exercises are data",
    "checker.worker.fresh": "the judge orders libraries",
    "checker.worker.warm": "the judge orders libraries",
    "checker.worker.student": "the submission's own module",
}

SOURCES = Sources(ROOT, tuple(FOLDERS))
OURS = tuple(FOLDERS)


def modules_of(folder: str) -> list[str]:
    files = (
        file for file in (ROOT / folder).rglob("*.py") if not {"examples", "node_modules", "build", "site"} & set(file.parts)
    )
    return sorted(".".join(file.relative_to(ROOT).with_suffix("").parts).removesuffix(".__init__") for file in files)


def tree_of(module: str) -> ast.Module:
    return ast.parse(SOURCES.file(module).read_bytes())


def package_of(module: str) -> str:
    return module if SOURCES.file(module).name == "__init__.py" else module.rpartition(".")[0]


def imported(node: ast.AST, package: str) -> Iterator[str]:
    """What is imported, each by the name of its module where that is one of ours, in full where it is not."""
    for inner in ast.walk(node):
        if isinstance(inner, ast.Import):
            yield from (alias.name for alias in inner.names)
        elif isinstance(inner, ast.ImportFrom):
            module, *names = imports_in(inner, package)
            for name in names:
                ours = module.partition(".")[0] in OURS
                yield name if not ours or SOURCES.file(name) else module


def imports_of(module: str) -> set[str]:
    return set(imported(tree_of(module), package_of(module)))


def room_of(module: str) -> str:
    return module.split(".")[1] if "." in module else ""


def is_of_the_checks(module: str) -> bool:
    return module.endswith("_check") or module in HELPS_CHECKS


def test_every_room_is_in_the_table():
    rooms = {room_of(module) for module in modules_of("checker")} - {"", "__main__"}
    assert rooms == set(ARROWS)


def test_no_arrow_between_rooms_but_those_in_the_table():
    arrows = defaultdict(set)
    for module in modules_of("checker"):
        room = room_of(module)
        for other in imports_of(module):
            if room in ARROWS and other.startswith("checker.") and room_of(other) != room:
                arrows[room].add(room_of(other))
    assert {room: " ".join(sorted(arrows[room])) for room in ARROWS} == ARROWS


def test_the_table_of_rooms_has_no_circle():
    list(TopologicalSorter({room: others.split() for room, others in ARROWS.items()}).static_order())


def within(module: str, prefixes: str) -> bool:
    return any(module == prefix or module.startswith(prefix + ".") for prefix in prefixes.split())


@pytest.mark.parametrize("folder", FOLDERS)
def test_no_folder_imports_more_than_it_may(folder):
    for module in modules_of(folder):
        ours, others = FOLDERS[folder]
        for prefix, more in FURTHER.items():
            ours, others = more if within(module, prefix) else (ours, others)
        if folder == "solutions" and is_of_the_checks(module):
            ours, others = CHECKS
        for name in imports_of(module):
            top = name.partition(".")[0]
            if top in OURS and top != folder:
                allowed = name in ours.split() if is_of_the_checks(module) else within(name, ours)
                allowed = allowed or (is_of_the_checks(module) and within(name, "checker.checks"))
                assert allowed, f"{module} imports {name}"
            elif top not in OURS and top not in sys.stdlib_module_names and top != "__future__":
                assert others is None or top in others.split(), f"{module} imports {name}"


def test_the_physics_leaves_the_checks_alone():
    for module in modules_of("solutions"):
        if not is_of_the_checks(module):
            assert not any(is_of_the_checks(name) for name in imports_of(module)), module


@pytest.mark.parametrize("folder", ["checker", "exercises", "solutions"])
def test_no_two_modules_import_each_other_not_even_by_way_of_others(folder):
    modules = modules_of(folder)
    graph = {module: {name for name in imports_of(module) if name in modules and name != module} for module in modules}
    list(TopologicalSorter(graph).static_order())  # CycleError shows the circle


def late_imports(module: str) -> Iterator[tuple[str, ast.stmt]]:
    """Imports inside functions: (what, the statement)."""
    for function in ast.walk(tree_of(module)):
        if isinstance(function, ast.FunctionDef | ast.AsyncFunctionDef | ast.Lambda):
            for node in ast.walk(function):
                if isinstance(node, ast.Import | ast.ImportFrom):
                    yield from ((name, node) for name in imported(node, package_of(module)))


@pytest.mark.parametrize("folder", ["checker", "exercises", "solutions"])
def test_an_import_inside_a_function_has_its_reason(folder):
    for module in modules_of(folder):
        lines = SOURCES.file(module).read_text("utf-8").split("\n")
        for name, node in late_imports(module):
            assert (module, name) in LATE, f"{module} imports {name} inside a function"
            assert "#" in lines[node.lineno - 1], f"{module}, line {node.lineno}: say why beside it"


def test_no_import_by_a_text_where_a_plain_one_will_do():
    found = set()
    for module in modules_of("checker"):
        for node in ast.walk(tree_of(module)):
            if isinstance(node, ast.Attribute) and node.attr == "import_module":
                found.add(module)
            assert not (isinstance(node, ast.Name) and node.id == "import_module"), module
    assert found == set(BY_TEXT)


def test_no_two_classes_of_the_engine_have_one_name():
    found = defaultdict(list)
    for module in modules_of("checker"):
        for node in tree_of(module).body:
            if isinstance(node, ast.ClassDef):
                found[node.name].append(module)
    assert {name: modules for name, modules in found.items() if len(modules) > 1} == {}


def test_no_module_reaches_into_the_private_names_of_another():
    for module in modules_of("checker"):
        for node in ast.walk(tree_of(module)):
            if isinstance(node, ast.ImportFrom):
                private = [alias.name for alias in node.names if alias.name.startswith("_")]
                assert not private, f"{module} imports {private}"


def test_no_file_of_the_engine_is_longer_than_400_lines():
    long = {module for module in modules_of("checker") if len(SOURCES.file(module).read_text("utf-8").splitlines()) > 400}
    assert long == set()


def test_a_forbidden_arrow_a_circle_and_a_late_import_are_found(tmp_path, monkeypatch):
    """The tests above on a small course of their own in which each of these is wrong."""
    wrong = {
        "checker/__init__.py": "",
        "checker/checks/__init__.py": "",
        "checker/marks/__init__.py": "",
        "checker/checks/one.py": "from ..marks import two\n",
        "checker/marks/two.py": "def f():\n    from checker.checks.one import x\n",
    }
    for name, text in wrong.items():
        Path(tmp_path, name).parent.mkdir(parents=True, exist_ok=True)
        Path(tmp_path, name).write_text(text)
    here = sys.modules[__name__]
    monkeypatch.setattr(here, "ROOT", tmp_path)
    monkeypatch.setattr(here, "SOURCES", Sources(tmp_path, OURS))
    with pytest.raises(AssertionError):
        test_no_arrow_between_rooms_but_those_in_the_table()
    with pytest.raises(ValueError, match="cycle"):
        test_no_two_modules_import_each_other_not_even_by_way_of_others("checker")
    with pytest.raises(AssertionError, match="inside a function"):
        test_an_import_inside_a_function_has_its_reason("checker")
