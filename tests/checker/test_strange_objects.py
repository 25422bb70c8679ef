"""Whatever a submission's objects say of themselves, what is said of them is true, and the child lives to say it.

Each is put where the worker touches it: as an answer, an error, a function, a name beside the function, something printed.
"""

import re

import pytest

from checker.judging.judge import judge
from checker.report.text import verdict_lines
from checker.sandbox.workers import start_worker

PATH = "unit03_tuned_circuit/resonance.py"
FALSE = "before any function|UnboundLocalError|student.py|checker/|to be called with|Python ended before|not an answer|without end|cannot access"

# Classes whose every answer about themselves is a lie, an error of any kind, or of a class that has a mind of its own.
OBJECTS = """
import numpy as np
import sympy


class Text(str):
    def _no(self, *anything):
        raise KeyboardInterrupt

    __str__ = __repr__ = __len__ = __getitem__ = __hash__ = __eq__ = __format__ = __add__ = __radd__ = encode = _no


class Kind(type):
    __name__ = __module__ = property(lambda cls: RAISES())

    def __instancecheck__(cls, thing):
        raise SystemExit


def RAISES():
    raise GeneratorExit


class Object(metaclass=Kind):
    __class__ = __dict__ = __signature__ = __wrapped__ = property(lambda self: RAISES())

    def __call__(self, *arguments):
        return 42.0

    __eq__ = __bool__ = __len__ = __iter__ = __float__ = __str__ = __repr__ = lambda self, *anything: RAISES()
    __hash__ = None


class Error(SyntaxError, metaclass=Kind):
    msg = filename = lineno = name = __traceback__ = __class__ = property(lambda self: RAISES())
    __str__ = __repr__ = __hash__ = __eq__ = lambda self, *anything: RAISES()


class Missing(ModuleNotFoundError):
    name = __traceback__ = Text("x")


class Listed(list):
    __class__ = property(lambda self: RAISES())
    __len__ = __iter__ = __getitem__ = lambda self, *anything: RAISES()


class Number(np.float64):
    dtype = shape = property(lambda self: RAISES())


class Formula(sympy.Symbol):
    is_number = free_symbols = property(lambda self: 1 / 0)

    def __str__(self):
        return Text("x")


def resonance_condition(inductance, capacitance):
    return 42


"""
FUNCTION = "def resonant_frequency(inductance, capacitance):\n    "
TOUCHED = {
    "an object for an answer": FUNCTION + "return Object()",
    "an object in a list for an answer": FUNCTION + "return [Object(), (Object(),)]",
    "a class for an answer": FUNCTION + "return Object",
    "a text for an answer": FUNCTION + "return Text('x')",
    "a list for an answer": FUNCTION + "return Listed([1.0])",
    "a list in itself for an answer": FUNCTION + "x = []\n    x.append(x)\n    return x",
    "a deep list for an answer": FUNCTION + "x = 1.0\n    for _ in range(5000): x = [x]\n    return x",
    "a number for an answer": FUNCTION + "return Number(1.0)",
    "infinity of sympy's for an answer": FUNCTION + "return sympy.zoo",
    "a formula for an answer": FUNCTION + "return Formula('x')",
    "an error": FUNCTION + "raise Error",
    "an error of a module": FUNCTION + "raise Missing",
    "an error with a text": FUNCTION + "raise ValueError(Text('x'))",
    "an error of a line": FUNCTION + "raise SyntaxError('x', (__file__, Text('x'), Text('x'), Text('x')))",
    "an error of a file": FUNCTION + "raise PermissionError(1, 'x', Text('x'))",
    "an error of arguments": FUNCTION + "raise ModuleNotFoundError('x', name=Object())",
    "an object for a function": "resonant_frequency = Object()",
    "a class for a function": "resonant_frequency = Object",
    "a signature that is none": FUNCTION + "return 42.0\nresonant_frequency.__signature__ = 42",
    "a signature that is an object": FUNCTION + "return 42.0\nresonant_frequency.__signature__ = Object()",
    "a wrapper of an object": FUNCTION + "return 42.0\nresonant_frequency.__wrapped__ = Object()",
    "names that are none": "globals()[42] = globals()[(1,)] = globals()[b'x'] = RAISES",
    "something printed": FUNCTION + "print(Text('x'))",
    "something written": FUNCTION + "import warnings\n    warnings.sys.stdout.write(Text('x'))",
}


@pytest.fixture(scope="module")
def worker():
    with start_worker() as warm:
        yield warm


@pytest.mark.parametrize("name", TOUCHED)
def test_what_is_said_of_a_strange_object_is_true(name, worker):
    verdict = judge("resonance", {PATH: OBJECTS + TOUCHED[name] + "\n"}, worker, 1)
    text = " ".join(line.text for line in verdict_lines(verdict))
    assert verdict.kind in ("wrong", "raised", "refused", "ended early"), text
    assert not re.search(FALSE, text), text
    assert verdict.earned == 0, text
    for finding in verdict.findings:
        assert finding.line is None or finding.line[1] <= OBJECTS.count("\n") + 10


@pytest.mark.parametrize(
    "formula", ["sympy.zoo", "sympy.nan", "sympy.AccumBounds(0, 1)", "sympy.MatrixSymbol('x', 2, 2)", "Formula('x')"]
)
def test_a_formula_without_a_value_is_no_fault_of_the_workers(formula, worker):
    source = OBJECTS.replace("return 42\n", f"return {formula}\n") + FUNCTION + "return 42.0\n"
    finding = judge("resonance", {PATH: source}, worker, 1).findings[-1]
    assert finding.function == "resonance_condition" and re.search("value|ZeroDivisionError", finding.says + finding.got), (
        finding
    )


RIGHT = (
    FUNCTION.replace("def", "import sympy, time, warnings\ndef")
    + "{}\n    return (inductance * capacitance) ** -0.5 / (2 * 3.141592653589793)\n"
)
RIGHT += "def resonance_condition(inductance, capacitance):\n    return 1 / sympy.sqrt(inductance * capacitance)\n"


@pytest.mark.parametrize(
    "line",
    [
        "warnings.simplefilter('always'); warnings.warn('look', stacklevel=2)",
        "warnings.simplefilter('always'); warnings.warn('look', stacklevel=4)",
        "warnings.sys.modules['linecache'].getlines(warnings.sys.modules['worker.student'].__file__)",
        "warnings.sys.modules['traceback'].print_stack()",
        "time.strptime('12', '%H')",
    ],
)
def test_python_looking_for_lines_or_for_its_own_modules_is_no_attempt(line, worker):
    verdict = judge("resonance", {PATH: RIGHT.format(line)}, worker, 1)
    assert verdict.kind == "passed", verdict.findings
    assert "checker" not in verdict.printed and "import " not in verdict.printed.replace("<frozen importlib", ""), (
        verdict.printed
    )


def test_to_ask_for_the_checkers_own_files_is_an_attempt_all_the_same(worker):
    source = RIGHT.format("open(warnings.sys.modules['worker.student'].__file__)")
    assert judge("resonance", {PATH: source}, worker, 1).kind == "refused"
