"""What a student may do runs inside as it does outside: the parts of Python, numpy and sympy that come in only when used."""
import os
import sys
import sysconfig
from pathlib import Path

import pytest

from checker.worker import trees

ROOT = Path(__file__).resolve().parents[3]

COMPUTATIONS = {
    "linear algebra": """
import numpy as np, numpy.linalg as la
a = np.arange(9.0).reshape(3, 3) + np.eye(3) * 10
answer = [la.det(a), la.inv(a).tolist(), sorted(la.eigvals(a).real.tolist()), la.solve(a, [1, 2, 3]).tolist(), la.svd(a)[1].tolist()]""",
    "large product": """
import numpy as np
a = np.ones((500, 500))
answer = float((a @ a).sum())""",
    "Fourier": """
import numpy as np
answer = [np.abs(np.fft.rfft(np.sin(np.arange(64)))).tolist(), np.fft.fftfreq(8).tolist()]""",
    "random": """
import numpy as np
from numpy import random
answer = [random.default_rng(7).normal(size=3).tolist(), random.RandomState(7).rand(2).tolist()]""",
    "polynomial": """
from numpy.polynomial import Polynomial, chebyshev, legendre
answer = [Polynomial([1, -3, 2]).roots().tolist(), chebyshev.chebval(0.3, [1, 2, 3]), legendre.legval(0.3, [1, 2])]""",
    "numpy at large": """
import numpy as np, io
out = io.StringIO(); np.savetxt(out, np.arange(3.0)); np.save("kept.npy", np.arange(4))
answer = [out.getvalue(), np.load("kept.npy").tolist(), np.interp(1.5, [1, 2], [3, 4]), str(np.datetime64("1924-05-01") + 1),
          np.array2string(np.pi * np.ones(2)), np.ma.array([1, 2], mask=[0, 1]).sum().item(), np.char.upper("am").item()]""",
    "numpy testing": """
import numpy.testing as npt, numpy as np
npt.assert_allclose([1.0], [1.0])
answer = 1""",
    "sympy": """
import sympy as sp
w, L, C = sp.symbols("w L C", positive=True)
x = sp.Symbol("x")
answer = [str(sp.solve(sp.Eq(w * L, 1 / (w * C)), w)), str(sp.integrate(sp.exp(-x**2), (x, -sp.oo, sp.oo))), str(sp.simplify(sp.sin(x)**2 + sp.cos(x)**2)),
          str(sp.diff(sp.besselj(0, x), x)), str(sp.series(sp.cos(x), x, 0, 5)), str(sp.Matrix([[1, 2], [3, 4]]).inv()), str(sp.limit(sp.sin(x) / x, x, 0)),
          str(sp.factor(x**4 - 1)), str(sp.dsolve(sp.Function("f")(x).diff(x) - sp.Function("f")(x))), sp.latex(sp.sqrt(x)), sp.pretty(x / 2), str(sp.nsolve(sp.cos(x) - x, 1)),
          str(sp.apart(1 / (x**2 - 1))), str(sp.laplace_transform(sp.exp(-x), x, w)[0]), str(sp.sympify("2*x + 1")), sp.srepr(x), sp.pycode(x**2)]""",
    "lambdify": """
import sympy as sp, numpy as np
x = sp.Symbol("x")
answer = [sp.lambdify(x, sp.sin(x) / x)(np.array([1.0, 2.0])).tolist(), sp.lambdify(x, x**2, "math")(3), float(sp.lambdify(x, sp.besselj(0, x), "mpmath")(1)),
          sp.lambdify(x, sp.Matrix([x, x**2]))(2.0).tolist()]""",
    "mpmath": """
import mpmath
mpmath.mp.dps = 30
answer = [str(mpmath.besselj(0, 2.4)), str(mpmath.quad(mpmath.sin, [0, mpmath.pi])), str(mpmath.ellipk(0.5)), str(mpmath.findroot(mpmath.cos, 1.5))]""",
    "standard library": """
import fractions, statistics, decimal, itertools, dataclasses, typing, functools, collections, enum, cmath, bisect, heapq, operator, string, textwrap
import re, json, csv, io, copy, datetime, calendar, random, hashlib, struct, zlib, base64, contextlib, abc, warnings, pprint, time, secrets, uuid, difflib
import xml.etree.ElementTree as tree, unicodedata, locale, inspect, types, weakref, array, numbers, ast, tokenize, traceback, pathlib, tempfile, logging, argparse, graphlib
@dataclasses.dataclass
class Station:
    name: str
    kilohertz: typing.Optional[int] = None
answer = [str(fractions.Fraction(1, 3) + 1), statistics.stdev([1, 2, 4]), statistics.NormalDist(0, 1).cdf(1), str(decimal.Decimal(2).sqrt()),
          list(itertools.accumulate([1, 2, 3])), repr(Station("Holm Light", 1449)), hashlib.sha256(b"x").hexdigest(), random.Random(3).random(), str(cmath.exp(1j)),
          datetime.date(1924, 5, 1).strftime("%A"), calendar.monthrange(1924, 2)[1], struct.unpack("f", struct.pack("f", 1.5)), zlib.crc32(b"AM"),
          [e.tag for e in tree.fromstring("<a><b/></a>")], unicodedata.name("µ"), re.sub(r"kHz", "", "846 kHz"), json.loads("[1]"), str(uuid.UUID(int=1))]""",
    "files of its own": """
import tempfile, pathlib, shutil, gzip, sqlite3
with tempfile.NamedTemporaryFile("w+") as file:
    file.write("1449"); file.seek(0); text = file.read()
with tempfile.TemporaryDirectory() as folder:
    pathlib.Path(folder, "a").write_bytes(b"1" * 5000); shutil.copyfile(folder + "/a", folder + "/b"); size = pathlib.Path(folder, "b").stat().st_size
    with gzip.open(folder + "/c", "wt") as file: file.write("x")
    rows = sqlite3.connect(folder + "/d").execute("select 1 + 1").fetchall()
answer = [text, size, rows]""",
    "errors and warnings": """
import warnings, traceback, numpy as np
with warnings.catch_warnings(record=True) as caught:
    warnings.simplefilter("always"); warnings.warn("loose coupling"); np.float64(1) / np.float64(0)
try: 1 / 0
except ZeroDivisionError: text = traceback.format_exc()
answer = [len(caught), text.splitlines()[-1]]""",
    "waiting": """
import time, signal
before = time.monotonic(); time.sleep(0.01); answer = [time.monotonic() - before >= 0.01, time.strftime("%Y", time.gmtime(0))]
signal.signal(signal.SIGALRM, lambda *about: None); signal.setitimer(signal.ITIMER_REAL, 0.01); signal.setitimer(signal.ITIMER_REAL, 0)""",
}


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
    private = [str(Path.home()), str(ROOT), *(str(ROOT / part) for part in ("checker", "solutions", "exercises", "tests")), "/etc", "/proc", "/dev",
               "/tmp", sysconfig.get_path("purelib"), str(Path(pytest.__file__).parent), str(Path(sysconfig.get_path("stdlib"), "site-packages")), "/usr/lib/python3"]
    for tree in trees.python_trees():
        assert os.path.isabs(tree) and os.path.realpath(tree) == tree
        for path in private:
            real = os.path.realpath(path)
            assert real != tree and not real.startswith(tree + os.sep), f"{tree} would open {path}"


def test_trees_name_packages_not_their_shelf():
    named = {Path(tree).name for tree in trees.python_trees()}
    assert {"numpy", "sympy", "mpmath"} <= named
    assert not named & {"pytest", "hypothesis", "scipy", "site-packages", "dist-packages"}


def test_a_package_of_a_single_file_and_one_not_there(tmp_path, monkeypatch):
    (tmp_path / "lone_module.py").touch()
    (tmp_path / "folder_only").mkdir()
    monkeypatch.syspath_prepend(tmp_path)
    found = trees.python_trees(["lone_module", "folder_only", "no_such_thing_at_all"])
    assert str(tmp_path / "lone_module.py") in found
    assert not any("folder_only" in tree for tree in found)
