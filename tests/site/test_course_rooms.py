"""Which room of course/ may import which, and that a number of the Circle's stands in one place: read from the sources."""

import ast
import re
from collections.abc import Iterator
from pathlib import Path

import pytest

from checker.imports import imports_in
from course.circle.stations import BY_FREQUENCY

from .conftest import ROOT

# A room of course/, and the rooms beside it that it may import; all may import `solutions` and `checker`.
ARROWS = {
    "described": "",
    "settings": "",
    "answers": "",
    "circle": "",
    "bench": "circle",
    "figures": "circle described settings",
    "sounds": "circle described settings",
    "press": "bench circle described settings sounds",
    "make": "described press settings",
    "budget": "circle figures",
    "hooks": "press",
}
# Within `figures` and `sounds`: a unit has its own folder and these; a page of no unit has these.
WITHIN = {
    ("figures", "kit"): "",
    ("sounds", "kit"): "",
    ("figures", "home"): "kit",
    ("figures", "sets"): "kit",
    ("figures", "bench"): "kit sets",
    ("sounds", "home"): "",
}
OF_A_UNIT = "kit"

# Where a number of the Circle's is said: there, and nowhere else in course/ or, a station's, in solutions/.
SAID_IN = ("course/circle/", "solutions/unit01_signal/club_stations.py")
FIELDS = "ground_wave_field", "unattenuated_field"


def sources(root: Path, *folders: str) -> list[Path]:
    left_out = {"node_modules", "build", "site", "lessons"}
    files = [file for folder in folders for file in (root / folder).rglob("*.py")]
    return sorted(file for file in files if not left_out & set(file.relative_to(root).parts))


def rooms_of(module: str) -> tuple[str, str]:
    """Room and room within it, of a module such as "course.figures.unit03_tuned_circuit.dial"."""
    _, room, *more = module.split(".")
    return room, more[0] if more and room in ("figures", "sounds") else ""


def names(root: Path) -> set[str]:
    """Every module of the course, and every package."""
    modules = {".".join(file.relative_to(root).with_suffix("").parts) for file in sources(root, "course")}
    return {module.removesuffix(".__init__") for module in modules}


def arrows(root: Path) -> Iterator[tuple[str, str]]:
    """Module of the course, and module of the course that it imports; a package's own decorator is no arrow within it."""
    known = names(root) - {"course"}
    for file in sources(root, "course"):
        module = ".".join(file.relative_to(root).with_suffix("").parts).removesuffix(".__init__")
        package = module if file.name == "__init__.py" else module.rpartition(".")[0]
        for name in imports_in(ast.parse(file.read_text("utf-8")), package):
            own_package = name in ("course.figures", "course.sounds") and module.startswith(name)
            if name in known and not own_package:
                yield module, name


def forbidden(root: Path) -> list[str]:
    """The arrows that no table allows."""
    found = []
    for module, other in arrows(root):
        (room, inner), (its_room, its_inner) = rooms_of(module), rooms_of(other)
        if room != its_room:
            allowed = its_room in ARROWS[room].split()
        else:
            beside = OF_A_UNIT if re.match(r"unit\d\d_", inner) else WITHIN.get((room, inner), "")
            allowed = inner == its_inner or its_inner in beside.split()
        if not allowed:
            found.append(f"{module} imports {other}")
    return found


def test_no_arrow_but_those_in_the_tables():
    assert forbidden(ROOT) == []


def test_the_tables_know_every_room_and_allow_nothing_that_is_not_used():
    rooms = {rooms_of(name) for name in names(ROOT) if "." in name}
    assert {room for room, _ in rooms} == set(ARROWS)
    inner = {(room, within) for room, within in rooms if within and not re.match(r"unit\d\d_", within)}
    assert inner == set(WITHIN)
    used = {(rooms_of(module), rooms_of(other)) for module, other in arrows(ROOT)}
    assert {(room, other) for room, others in ARROWS.items() for other in others.split()} <= {(a[0], b[0]) for a, b in used}
    wanted = {((room, within), (room, other)) for (room, within), others in WITHIN.items() for other in others.split()}
    assert wanted <= used


BAD = {
    "course/bench/sets.py": "from course.sounds.unit09_feedback_receivers.isolating import STRAY",
    "course/bench/panel.py": "from course import figures",
    "course/circle/stations.py": "import course.bench.sets",
    "course/figures/unit06_reaction/treble.py": "from course.sounds.unit06_reaction.reaction import demonstration",
    "course/figures/unit04_crystal_set/load.py": "from ..unit03_tuned_circuit.curves import COIL_Q",
    "course/figures/kit/parts.py": "from course.figures.sets import wire",
    "course/sounds/unit05_valve/valve.py": "from course.sounds.unit04_crystal_set import crystal",
    "course/sounds/kit/level.py": "from course.sounds.home import slow_carrier",
}


@pytest.mark.parametrize("file", BAD)
def test_a_bad_arrow_is_found(tmp_path, file):
    others = ("bench/sets", "figures/__init__", "figures/sets", "figures/unit03_tuned_circuit/curves", "sounds/home")
    others += ("sounds/unit04_crystal_set/crystal", "sounds/unit06_reaction/reaction")
    others += ("sounds/unit09_feedback_receivers/isolating",)
    for name in (*(f"course/{other}.py" for other in others), file):
        (tmp_path / name).parent.mkdir(parents=True, exist_ok=True)
        (tmp_path / name).write_text("")
    assert forbidden(tmp_path) == []
    (tmp_path / file).write_text(f"def late():\n    {BAD[file]}\n")
    [sentence] = forbidden(tmp_path)
    assert sentence.startswith(file.removesuffix(".py").replace("/", "."))


def numbers_in(node: ast.AST) -> Iterator[tuple[float, int]]:
    """Numbers in a piece of syntax, with their lines."""
    for inner in ast.walk(node):
        if isinstance(inner, ast.Constant) and type(inner.value) in (int, float):
            yield float(inner.value), inner.lineno


def is_distinct(number: float) -> bool:
    """Whether a number has three figures or more, and is no size in a drawing: nobody writes it twice by chance."""
    figures = f"{number:.12g}".partition("e")[0].replace(".", "").strip("0")
    return len(figures) >= 3 and not 1e-2 < number < 1e4


def of_the_circle(root: Path) -> dict[float, str]:
    """Distinct numbers in the files of the circle, `programme` with its vowels and notes left aside, and where they stand."""
    files = [file for file in sources(root, "course/circle") if file.stem != "programme"]
    return {
        number: f"{file.relative_to(root).as_posix()}, line {line}"
        for file in (*files, root / SAID_IN[1])
        for number, line in numbers_in(ast.parse(file.read_text("utf-8")))
        if is_distinct(number)
    }


def written_outside(root: Path) -> list[str]:
    """Numbers of the circle that stand in another file of course/; of its stations, in one of solutions/ too."""
    said, stations = of_the_circle(root), {station.frequency for station in BY_FREQUENCY}
    pairs = [{station.power, station.distance} for station in BY_FREQUENCY]
    found = []
    for file in sources(root, "course", "solutions"):
        name = file.relative_to(root).as_posix()
        if name.startswith(SAID_IN) or name.endswith("_check.py"):
            continue
        tree = ast.parse(file.read_text("utf-8"))
        for number, line in numbers_in(tree):
            if number in stations or (number in said and name.startswith("course/")):
                found.append(f"{name}, line {line}: {number:g} is said in {said[number]}")
        for call in (node for node in ast.walk(tree) if isinstance(node, ast.Call) and ast.unparse(node.func).endswith(FIELDS)):
            given = {number for part in call.args for number, _ in numbers_in(part)}
            found += [f"{name}, line {call.lineno}: a station's power and distance" for pair in pairs if pair <= given]
    return found


def written_in_scripts(root: Path) -> list[str]:
    """Frequencies of the stations in the bench's scripts and settings, outside their words and remarks."""
    found = []
    for file in sorted((root / "course" / "bench").rglob("*.js*")):
        text = re.sub(r"/\*.*?\*/|//[^\n]*|\"[^\"\n]*\"|'[^'\n]*'|`[^`]*`", "", file.read_text("utf-8"), flags=re.DOTALL)
        for station in BY_FREQUENCY:
            kilohertz = f"{station.frequency / 1e3:g}"
            if re.search(rf"\b{kilohertz}(?:\.0*)?(?:e3|_?000)?\b", text):
                found.append(f"{file.relative_to(root).as_posix()}: {station.name}'s {kilohertz} kHz")
    return found


def test_no_number_of_the_circle_stands_outside_it():
    assert written_outside(ROOT) == [] and written_in_scripts(ROOT) == []
    assert {station.frequency for station in BY_FREQUENCY} <= set(of_the_circle(ROOT))


STRAYED = [
    *(("course/figures/unit03_tuned_circuit/curves.py", f"LOCAL = {station.frequency!r}") for station in BY_FREQUENCY),
    ("course/bench/sets.py", "START = 846_000"),
    ("course/sounds/home.py", "def f(carrier=855e3): ..."),
    ("course/budget.py", "SPEAKER = 3.8, 167e-6"),
    ("course/bench/quenched_set.py", "TIN = 30.912e6"),
    ("solutions/unit08_two_stations/club_evening.py", "LOGGED = [693e3]"),
    ("solutions/unit04_crystal_set/left_out.py", "FIELD = ground_wave_field(5e3, 60e3, FREQUENCY, 5.0, 70.0)"),
]


@pytest.mark.parametrize(("file", "line"), STRAYED)
def test_a_number_that_strayed_is_found(tmp_path, file, line):
    for said in (*sources(ROOT, SAID_IN[0]), ROOT / SAID_IN[1]):
        copy = tmp_path / said.relative_to(ROOT)
        copy.parent.mkdir(parents=True, exist_ok=True)
        copy.write_bytes(said.read_bytes())
    assert written_outside(tmp_path) == []
    (tmp_path / file).parent.mkdir(parents=True, exist_ok=True)
    (tmp_path / file).write_text(line + "\n")
    [sentence] = written_outside(tmp_path)
    assert sentence.startswith(f"{file}, line 1")


def test_a_number_that_strayed_into_a_script_is_found(tmp_path):
    place = tmp_path / "course" / "bench" / "panel"
    place.mkdir(parents=True)
    (place / "dial.js").write_text('/** "855.0 kHz" */ // 855e3\nconst words = "1107 kHz";\n')
    assert written_in_scripts(tmp_path) == []
    (place / "dial.js").write_text("const START = 846e3;\n")
    assert written_in_scripts(tmp_path) == ["course/bench/panel/dial.js: Saltmarsh Point's 846 kHz"]
