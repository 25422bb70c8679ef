"""What may be imported: all of Python's own library, helpers of one's own; what may not is missing there, with a reason."""

import json
import os
import subprocess
import sys
import zipfile

import pytest

from checker.course import ROOT
from checker.judging.fingerprint import submission_hash
from checker.judging.judge import judge
from checker.report.text import verdict_lines
from checker.sandbox.workers import start_worker
from checker.submissions.members import read_folder

PATH = "unit03_tuned_circuit/resonance.py"
RIGHT = """import numpy as np
import sympy


def resonant_frequency(inductance, capacitance):
    return 1 / (2 * np.pi * np.sqrt(inductance * capacitance))


def resonance_condition(inductance, capacitance):
    return 1 / sympy.sqrt(inductance * capacitance)
"""
NEVER = {"antigravity"}  # as soon as it is imported it starts a browser, where there is one
# Imports every module in a child of its own, and then tries the walls there.
EVERY_MODULE = """
import json, sys
from tests.checker.containment.conftest import NOBODY, become
from checker.sandbox.workers import start_worker
SOURCE = '''
try:
    import {name} as imported
    answer = "works"
except ImportError as error:
    answer = str(error)

def resonant_frequency():
    return answer

def resonance_condition():
    return open("/etc/passwd").read()
'''
if sys.argv[1:] == ["user"]:
    become(NOBODY)
told = {}
with start_worker() as worker:
    for name in sorted(sys.stdlib_module_names):
        files = {"unit03_tuned_circuit/resonance.py": SOURCE.format(name=name)}
        with worker.session("unit03_tuned_circuit/resonance", files, 20.0) as session:
            told[name] = session.ask([{"function": f"resonan{end}", "arguments": []} for end in ("t_frequency", "ce_condition")])
print(json.dumps(told))
"""


@pytest.fixture(scope="module")
def worker():
    with start_worker() as warm:
        yield warm


@pytest.fixture(scope="module", params=["as we are", pytest.param("user", marks=pytest.mark.slow)])
def every_module(request):
    told = subprocess.run(
        [sys.executable, "-c", EVERY_MODULE, request.param],
        cwd=ROOT,
        env=os.environ | {"PYTHONPATH": str(ROOT)},
        capture_output=True,
        text=True,
    )
    assert told.returncode == 0, told.stderr
    return json.loads(told.stdout.splitlines()[-1])


@pytest.mark.skipif(not hasattr(os, "fork"), reason="there are no walls here")
def test_every_module_of_pythons_own_is_there_or_says_why_not(every_module):
    assert len(every_module) > 250
    silent = [name for name, replies in every_module.items() if "value" not in replies[0]]
    assert not silent, "each is imported, or is an ImportError there"
    refused = {name: replies[0]["value"] for name, replies in every_module.items() if replies[0]["value"] != "works"}
    not_built = {name for name, why in refused.items() if why.startswith("No module named")}
    assert set(refused) - not_built <= NEVER, refused
    assert all(why.endswith("which nothing here may") for name, why in refused.items() if name not in not_built), refused
    for name in ("bisect", "os", "logging", "threading", "subprocess", "socket", "multiprocessing", "pathlib", "sys"):
        assert name not in refused


@pytest.mark.skipif(not hasattr(os, "fork"), reason="there are no walls here")
def test_no_import_opens_a_wall(every_module):
    told = {(reply.get("trouble"), reply.get("what")) for _, reply in every_module.values()}
    assert told == {("refused", "read")}


def verdict_on(worker, source, **others):
    files = {PATH: source} | {f"{name.replace('__', '/')}.py": text for name, text in others.items()}
    verdict = judge("resonance", files, worker, 1)
    return verdict, " ".join(" ".join(line.text for line in verdict_lines(verdict)).split())


@pytest.mark.parametrize(
    "lines",
    [
        "import bisect",
        "import os, logging\nlog = logging.getLogger(__name__)\nlog.warning('started')",
        "try:\n    import matplotlib.pyplot as plt\nexcept ImportError:\n    plt = None",
        "try:\n    import matplotlib\nexcept ModuleNotFoundError:\n    matplotlib = None",
        "try:\n    from scipy import integrate\nexcept ImportError:\n    pass",
        "try:\n    from numba import njit\nexcept Exception:\n    njit = lambda f: f",
        "try:\n    import ctypes\nexcept ImportError:\n    pass",
        "try:\n    import no_such_thing.at_all\nexcept ImportError:\n    pass",
        "from pathlib import Path\nfrom concurrent.futures import ThreadPoolExecutor\nimport argparse, json, csv",
        "import numpy.ma, numpy.polynomial.chebyshev as chebyshev, mpmath",
    ],
)
def test_an_import_that_does_no_harm_costs_nothing(lines, worker):
    verdict, text = verdict_on(worker, f"{lines}\n{RIGHT}")
    assert (verdict.kind, verdict.earned) == ("passed", 10), text
    assert "drawn" not in text and "draws" not in text


@pytest.mark.parametrize(
    "lines",
    [
        "import matplotlib.pyplot as plt",
        "import matplotlib\nmatplotlib.use('Agg')\nfrom matplotlib import pyplot as plt\nplt.rcParams['font.size'] = 9",
        "from matplotlib.pyplot import *\nfrom matplotlib.pyplot import figure, show\nfigure(figsize=(3, 2)).suptitle('f')",
        "from matplotlib.backends.backend_agg import FigureCanvasAgg\nfrom mpl_toolkits.mplot3d import Axes3D",
    ],
)
def test_drawing_at_the_top_costs_nothing_and_is_said(lines, worker):
    verdict, text = verdict_on(worker, f"print('hello')\n{lines}\n{RIGHT}")
    assert (verdict.kind, verdict.earned) == ("passed", 10), text
    assert "matplotlib is not here while marking" in verdict.printed and verdict.printed.count("hello") == 1


def test_drawing_is_done_without_in_a_helper_too(worker):
    verdict, text = verdict_on(
        worker, "import plots\n" + RIGHT, unit03_tuned_circuit__plots="import matplotlib.pyplot as plt\n"
    )
    assert (verdict.kind, verdict.earned) == ("passed", 10), text


BROWSER = "import webbrowser\nwebbrowser.register('b', None, webbrowser.GenericBrowser('b'), preferred=True)\n"


@pytest.mark.parametrize(
    ("lines", "says"),
    [
        ("import scipy.integrate", ["imports scipy", "It does the work that the exercises ask for", "numpy, sympy"]),
        ("from numba import njit", ["imports numba", "It makes machine code"]),
        ("import pandas as pd", ["imports pandas", "This course uses numpy, sympy, mpmath and Python's own library"]),
        (BROWSER + "import antigravity", ["imports antigravity", "It would open a network connection, which nothing here may"]),
        ("import matplotlib.pyplot as plt\nfigure, axes = plt.subplots()", ["imports matplotlib", "Nothing is drawn"]),
    ],
)
def test_what_cannot_be_had_is_said_with_its_reason(lines, says, worker):
    verdict, text = verdict_on(worker, f"{lines}\n{RIGHT}")
    assert (verdict.kind, verdict.earned) == ("refused", 0)
    assert [one for one in says if one not in text] == [], text


def test_what_a_library_would_do_while_it_is_imported_is_no_attempt_of_the_students(worker):
    lines = f"{BROWSER}try:\n    import antigravity\nexcept ImportError as error:\n    print(error)\n"
    verdict, text = verdict_on(worker, lines + RIGHT)
    assert (verdict.kind, verdict.earned) == ("passed", 10), text
    assert "It would open a network connection" in verdict.printed


def test_what_a_library_is_made_to_do_while_it_is_imported_is_an_attempt(worker):
    lines = "import webbrowser\nwebbrowser.open = lambda *x, **y: open('/etc/passwd')\n"
    verdict, text = verdict_on(worker, f"{lines}try:\n    import antigravity\nexcept ImportError:\n    pass\n{RIGHT}")
    assert (verdict.kind, verdict.earned) == ("refused", 0) and "/etc/passwd" in text


HELPED = """from {helper} import root_of
import sympy


def resonant_frequency(inductance, capacitance):
    return 1 / (2 * 3.141592653589793 * root_of(inductance * capacitance))


def resonance_condition(inductance, capacitance):
    return 1 / sympy.sqrt(inductance * capacitance)
"""
ROOT_OF = "import numpy as np\nroot_of = np.sqrt\n"
WAYS = {
    "beside": ("my_maths", "unit03_tuned_circuit/my_maths.py"),
    "relative": (".my_maths", "unit03_tuned_circuit/my_maths.py"),
    "in full": ("exercises.unit03_tuned_circuit.my_maths", "unit03_tuned_circuit/my_maths.py"),
    "above": ("exercises.my_maths", "my_maths.py"),
    "above, by itself": ("my_maths", "my_maths.py"),
    "of a name that Python has too": ("statistics", "unit03_tuned_circuit/statistics.py"),
}


@pytest.mark.parametrize("way", WAYS)
@pytest.mark.parametrize("wrapped", ["", "exercises/", "week 3/exercises/"])
@pytest.mark.parametrize("zipped", [False, True])
def test_a_helper_handed_in_is_found(way, wrapped, zipped, tmp_path, worker):
    helper, file = WAYS[way]
    files = {wrapped + PATH: HELPED.format(helper=helper), wrapped + file: ROOT_OF}
    if zipped:
        with zipfile.ZipFile(tmp_path / "Rufus Tern.zip", "w") as archive:
            for name, text in files.items():
                archive.writestr(name, text)
    else:
        for name, text in files.items():
            (tmp_path / "Rufus Tern" / name).parent.mkdir(parents=True, exist_ok=True)
            (tmp_path / "Rufus Tern" / name).write_text(text)
    [member] = read_folder(tmp_path)
    assert member.problems == ()
    verdict = judge("resonance", member.files, worker, 1)
    assert (verdict.kind, verdict.earned) == ("passed", 10), verdict.findings
    changed = {**member.files, file: ROOT_OF + "# other\n"}
    assert submission_hash(PATH, changed) != submission_hash(PATH, member.files), "a helper that changed is judged again"


def test_files_laid_flat_find_their_helper(tmp_path, worker):
    for name, text in {"resonance.py": HELPED.format(helper="my_maths"), "my_maths.py": ROOT_OF}.items():
        (tmp_path / "Rufus Tern").mkdir(exist_ok=True)
        (tmp_path / "Rufus Tern" / name).write_text(text)
    [member] = read_folder(tmp_path)
    assert judge("resonance", member.files, worker, 1).earned == 10


def test_a_fault_in_a_helper_is_shown_there(worker):
    verdict, text = verdict_on(
        worker, HELPED.format(helper="my_maths"), unit03_tuned_circuit__my_maths="def root_of(x):\n    return x / 0\n"
    )
    assert verdict.kind == "raised" and "my_maths.py, line 2" in text and "return x / 0" in text


def test_a_whole_pack_handed_in_brings_no_helpers_but_ones_own(tmp_path):
    for name in (
        f"exercises/{PATH}",
        "exercises/unit03_tuned_circuit/mine.py",
        "checker/course.py",
        "setup.py",
        "tests/test_x.py",
    ):
        (tmp_path / "Rufus Tern" / name).parent.mkdir(parents=True, exist_ok=True)
        (tmp_path / "Rufus Tern" / name).write_text("x = 1\n")
    [member] = read_folder(tmp_path)
    assert set(member.files) == {PATH, "unit03_tuned_circuit/mine.py"}
