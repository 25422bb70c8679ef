"""A small class with something of everything, marked by the real judge on two exercises."""

import re
from fractions import Fraction

from checker.course import ROOT
from checker.judging.judge import judge
from checker.marks.marksheet import member_marks
from checker.marks.store import Override
from checker.sandbox.workers import start_worker

RESONANCE, SOLENOID = "unit03_tuned_circuit/resonance", "unit02_coil_and_condenser/solenoid_inductance"
PATHS = (SOLENOID, RESONANCE)


def as_handed_in(reference: str) -> str:
    """A reference as a member would write it: what holds it to its ranges stays with the references."""
    return re.sub(r"from solutions\.ranges import check_ranges\n|@check_ranges(\(.*\))?\n", "", reference)


def _file(path, folder="solutions"):
    return (ROOT / folder / f"{path}.py").read_text("utf-8").replace("from solutions.", "from exercises.")


RIGHT = {f"{path}.py": _file(path) for path in PATHS} | {"ranges.py": _file("ranges")}
STUBS = {f"{path}.py": _file(path, "exercises") for path in PATHS}


def _with_resonance(old, new):
    return RIGHT | {f"{RESONANCE}.py": RIGHT[f"{RESONANCE}.py"].replace(old, new)}


FORMULA = "return 1 / (2 * np.pi * np.sqrt(inductance * capacitance))"
CLASS = {
    "Isla Marrow": RIGHT,
    "Tobias Fenn": _with_resonance("1 / (2 * np.pi * np", "1 / (np"),
    "Orla Quill": _with_resonance("1 / (2 * np.pi * np", "1 / (np"),
    "Jasper Thrift": STUBS,
    "Nell Samphire": {},
    "Kit Harrow": _with_resonance(FORMULA, "return 1 / (2 * np.pi * np.sqrt(inductance * capacitanse))"),
    "Mabel Sedge": _with_resonance(FORMULA, "while True:\n        pass"),
    "Rufus <b>Tern</b> & Sons": _with_resonance(
        FORMULA, 'print("<script>alert(1)</script>")\n    return "</pre><script>alert(2)</script>"'
    ),
    '=HYPERLINK("x")': _with_resonance(FORMULA, "open('/etc/hostname')"),
    "Ágnes Ørsted-Þóra": _with_resonance("def resonant_frequency(", "def resonant_frequency(:"),
}
OVERRIDES = {
    ("Tobias Fenn", RESONANCE): Override(
        "Tobias Fenn",
        RESONANCE,
        Fraction(15, 2),
        "Derived it rightly on the blackboard.",
        "Wren Dalby",
        "2031-05-03T18:20:00+00:00",
    )
}


def marked():
    """The class as `MemberMarks`."""
    with start_worker() as worker:
        return [
            member_marks(
                name,
                ["notes.txt could not be read."] if not files else [],
                [judge(path, files, worker, 7) for path in PATHS],
                OVERRIDES,
            )
            for name, files in CLASS.items()
        ]
