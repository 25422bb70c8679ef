"""Loading a student's file and calling its functions, with everything that can go wrong told as data.

Nothing here is a safety measure: the child's containment is. What is here makes the sentence a student reads.
"""

import builtins
import importlib.abc
import importlib.machinery
import inspect
import sys
import types
from collections.abc import Callable, Mapping
from functools import lru_cache
from types import ModuleType, TracebackType
from typing import Any

import numpy as np

from .denials import describe_denial
from .wire import ANSWER_ITSELF, Expression, Unusable, from_wire, to_wire

ALLOWED = frozenset(
    "numpy sympy mpmath math cmath fractions decimal statistics numbers random operator itertools functools "
    "collections dataclasses typing enum copy string re textwrap warnings time exercises __future__".split()
)
MAX_PRINTED = 64 * 1024
KEPT_PRINTED = 2000


class Stop(BaseException):
    """Ends a call from inside; not an Exception, so that an `except Exception` of the student's lets it through."""

    def __init__(self, kind: str, what: str = "") -> None:
        self.kind, self.what = kind, what


class Printed:
    """Stands in for sys.stdout: counts what is printed and keeps the beginning."""

    def __init__(self) -> None:
        self.count, self.kept = 0, ""

    def write(self, text: object) -> int:
        text = str(text)
        self.count += len(text)
        self.kept += text[: max(0, KEPT_PRINTED - len(self.kept))]
        if self.count > MAX_PRINTED:
            raise Stop("printed", "more than 64 kB")
        return len(text)

    def flush(self) -> None:
        pass

    def isatty(self) -> bool:
        return False


class SubmittedExercises(importlib.abc.MetaPathFinder, importlib.abc.Loader):
    """Imports `exercises.unit…` from the submitted sources, so that an exercise may use the student's earlier ones."""

    def __init__(self, files: Mapping[str, str]) -> None:
        self.sources = {"exercises." + path.removesuffix(".py").replace("/", "."): path for path in files}
        self.files = files

    def find_spec(self, name: str, path: Any = None, target: Any = None) -> importlib.machinery.ModuleSpec | None:
        if name in self.sources:
            return importlib.machinery.ModuleSpec(name, self)
        if name == "exercises" or any(module.startswith(name + ".") for module in self.sources):
            return importlib.machinery.ModuleSpec(name, self, is_package=True)
        if name.split(".")[0] == "exercises":
            raise ModuleNotFoundError(f"{name} is not among the files handed in", name=name)
        return None

    def exec_module(self, module: ModuleType) -> None:
        path = self.sources.get(module.__name__)
        if path is not None:
            module.__file__ = path
            module.__dict__["__builtins__"] = guarded_builtins()
            exec(compile(self.files[path], path, "exec", dont_inherit=True), module.__dict__)


def guarded_builtins() -> dict[str, Any]:
    """Python's builtins, with the few that cannot work here replaced by ones that say so."""
    guarded = dict(vars(builtins))

    def guarded_import(name: str, globals: Any = None, locals: Any = None, fromlist: Any = (), level: int = 0) -> Any:
        if level == 0 and name.split(".")[0] not in ALLOWED:
            raise Stop("import", name)
        return builtins.__import__(name, globals, locals, fromlist, level)

    def guarded_input(prompt: object = "") -> None:
        raise Stop("input", "input()")

    def guarded_exit(code: Any = None) -> None:
        raise SystemExit(code)

    guarded.update(__import__=guarded_import, input=guarded_input, exit=guarded_exit, quit=guarded_exit)
    return guarded


def load(exercise: str, files: Mapping[str, str]) -> ModuleType:
    """The module of one exercise, from a dict of path to source text."""
    sys.meta_path.insert(0, SubmittedExercises(files))
    return importlib.import_module("exercises." + exercise.replace("/", "."))


def trouble(error: BaseException, files: Mapping[str, str]) -> dict[str, Any]:
    """What went wrong in a student's code, as data: the kind, the error's name and text, the student's own line."""
    kind, what = "raised", ""
    if isinstance(error, Stop):
        kind, what = error.kind, error.what
    elif isinstance(error, SystemExit):
        kind = "exit"
    elif isinstance(error, SyntaxError) and error.filename in files:
        kind = "syntax"
    elif isinstance(error, NotImplementedError):
        kind = "not written"
    elif isinstance(error, RecursionError):
        kind = "recursion"
    elif isinstance(error, MemoryError):
        kind = "memory"
    elif isinstance(error, ModuleNotFoundError):
        kind, what = "missing module", str(error.name)
    elif (denied := describe_denial(error, files)) is not None:
        kind, what = "refused", denied.kind
    path, number = student_line(error.__traceback__, files)
    if kind == "syntax" and isinstance(error, SyntaxError):
        path, number = error.filename, error.lineno
    return {
        "trouble": kind,
        "what": what,
        "error": type(error).__name__[:80],
        "text": safe_text(error),
        "file": path,
        "line": number,
    }


def student_line(traceback: TracebackType | None, files: Mapping[str, str]) -> tuple[str | None, int | None]:
    """Path and number of the last line of the student's own that a traceback passes through."""
    found: tuple[str | None, int | None] = None, None
    while traceback is not None:
        filename = traceback.tb_frame.f_code.co_filename
        if filename in files:
            found = filename, traceback.tb_lineno
        traceback = traceback.tb_next
    return found


def safe_text(error: BaseException) -> str:
    try:
        text = error.msg if isinstance(error, SyntaxError) else str(error)
        return str(text)[:500].encode("utf-8", "replace").decode()
    except BaseException:
        return ""


def call(module: ModuleType, request: dict) -> dict[str, Any]:
    """Answer one call of the judge's: {"value": …} and the places of the arguments that the function altered.

    A request with "again" is worked out once more with its arrays turned round; if that alters the first answer,
    `ANSWER_ITSELF` is among the places.
    """
    function = getattr(module, request["function"], None)
    if not callable(function):
        names = [name for name, thing in vars(module).items() if isinstance(thing, types.FunctionType)]
        return {"trouble": "no function", "what": request["function"], "names": names[:20]}
    if "symbols" in request:
        return call_symbolic(function, request["symbols"], request["at"])
    arguments = [from_wire(argument) for argument in request["arguments"]]
    mismatch = _signature_mismatch(function, len(arguments))
    if mismatch:
        return mismatch
    value = unwrap(function(*arguments))
    answer = to_wire(value)
    altered = [
        place
        for place, (argument, given) in enumerate(zip(arguments, request["arguments"], strict=True))
        if isinstance(argument, (np.ndarray, list)) and to_wire(argument) != given
    ]
    if request.get("again"):
        function(
            *(
                turned[::-1] if isinstance(turned, np.ndarray) and turned.ndim else turned
                for turned in map(from_wire, request["arguments"])
            )
        )
        altered += [ANSWER_ITSELF] * (to_wire(value) != answer)
    return {"value": answer, "altered": altered}


@lru_cache
def _signature_mismatch(function: Callable, count: int) -> dict[str, Any] | None:
    """What to say if a function cannot be called with so many arguments; None if it can."""
    try:
        parameters = inspect.signature(function).parameters
        inspect.signature(function).bind(*range(count))
    except TypeError:
        return {"trouble": "signature", "what": ", ".join(parameters)[:200]}
    except ValueError:
        pass
    return None


def unwrap(value: Any) -> Any:
    """Numbers of sympy's as Python's, in lists too; a lazy iterator is named, not run."""
    if isinstance(value, (list, tuple)) and len(value) <= 1000:
        return [unwrap(item) for item in value]
    sympy = sys.modules.get("sympy")  # without it, there is nothing of it to be met
    if sympy and isinstance(value, sympy.Basic):
        if not (isinstance(value, sympy.Expr) and value.is_number):
            return Unusable("a sympy expression")
        number = complex(value)
        return number if number.imag else number.real
    return value


def call_symbolic(function: Callable, names: list[str], points: Any) -> dict[str, Any]:
    import sympy  # there already, in a process that is asked with symbols

    symbols = [sympy.Symbol(name, positive=True) for name in names]
    mismatch = _signature_mismatch(function, len(symbols))
    return mismatch or {"value": to_wire(_evaluate(function(*symbols), symbols, points)), "altered": []}


def _evaluate(result: Any, symbols: Any, points: Any) -> Any:
    import sympy  # there already, as above

    if isinstance(result, (list, tuple, sympy.Tuple)) and len(result) <= 100:
        return [_evaluate(item, symbols, points) for item in result]
    if isinstance(result, (int, float)) and not isinstance(result, bool):
        result = sympy.sympify(result)
    if not isinstance(result, sympy.Expr):
        return result if result is None else Unusable(type(result).__name__)
    # Symbols match by name: a student who makes symbols of their own means the ones they were given.
    by_name = {symbol.name: symbol for symbol in symbols}
    result = result.subs({free: by_name[free.name] for free in result.free_symbols if free.name in by_name})
    at = []
    for point in points:
        number = result.evalf(20, subs=dict(zip(symbols, point, strict=True)))
        at.append(complex(number) if number.is_number else None)
    return Expression(str(result)[:500], at)
