"""Loading a student's file and calling its functions, with everything that can go wrong told as data.

Nothing here is a safety measure: the child's containment is. What is here makes the sentence a student reads.
"""

import builtins
import importlib.abc
import importlib.machinery
import inspect
import sys
import types
from collections.abc import Callable, Iterator, Mapping
from functools import lru_cache
from types import ModuleType, TracebackType
from typing import Any

import numpy as np

from .denials import NotHere, describe_denial, import_library, not_here
from .wire import ANSWER_ITSELF, Expression, Unusable, from_wire, to_wire

LIBRARIES = frozenset({"numpy", "sympy", "mpmath", "exercises", *sys.stdlib_module_names})
DRAWING = frozenset({"matplotlib", "mpl_toolkits", "pylab"})
NOTHING_DRAWN = "(matplotlib is not here while marking: what the file draws when it is loaded was passed over, at no cost.)"
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


class Undrawn(types.ModuleType):
    """Stands in for a drawing package and all that is in it: whatever is asked of it, it does nothing and gives itself."""

    def __getattr__(self, name: str) -> "Undrawn":
        if name.startswith("__"):
            raise AttributeError(name)
        return self

    def __call__(self, *inputs: Any, **options: Any) -> "Undrawn":
        return self

    def __getitem__(self, key: object) -> "Undrawn":
        return self

    def __setitem__(self, key: object, value: object) -> None:
        pass

    def __enter__(self) -> "Undrawn":
        return self

    def __exit__(self, *exception: object) -> None:
        pass

    def __iter__(self) -> Iterator:
        raise not_here("matplotlib")


class SubmittedExercises(importlib.abc.MetaPathFinder, importlib.abc.Loader):
    """Imports `exercises.unit…` from the submitted sources, so that an exercise may use the student's earlier ones."""

    def __init__(self, files: Mapping[str, str], undrawn: bool = False) -> None:
        self.sources = {"exercises." + path.removesuffix(".py").replace("/", "."): path for path in files}
        self.files, self.undrawn = files, undrawn

    def find_spec(self, name: str, path: Any = None, target: Any = None) -> importlib.machinery.ModuleSpec | None:
        if self.path_of(name):
            return importlib.machinery.ModuleSpec(name, self)
        if name == "exercises" or any(module.startswith(name + ".") for module in self.sources):
            return importlib.machinery.ModuleSpec(name, self, is_package=True)
        if name.split(".")[0] == "exercises":
            raise ModuleNotFoundError(f"{name} is not among the files handed in", name=name)
        return None

    def path_of(self, name: str) -> str | None:
        """The file of a module: its own, or for a helper one of that name at the top of what was handed in."""
        return self.sources.get(name) or self.sources.get(f"exercises.{name.rpartition('.')[2]}")

    def beside(self, package: str, name: str) -> str | None:
        """The full name of a module that was handed in beside the one that imports it, or at the top; None if there is none."""
        return next((full for full in (f"{package}.{name}", f"exercises.{name}") if full in self.sources), None)

    def exec_module(self, module: ModuleType) -> None:
        path = self.path_of(module.__name__)
        if path is not None:
            module.__file__ = path
            module.__dict__["__builtins__"] = guarded_builtins(self)
            exec(compile(self.files[path], path, "exec", dont_inherit=True), module.__dict__)


def guarded_builtins(submitted: SubmittedExercises) -> dict[str, Any]:
    """Python's builtins, with the few that cannot work here replaced by ones that say so."""
    guarded = dict(vars(builtins))

    def guarded_import(name: str, globals: Any = None, locals: Any = None, fromlist: Any = (), level: int = 0) -> Any:
        package = name.split(".")[0]
        if level == 0 and (full := submitted.beside((globals or {}).get("__package__", ""), name)):
            return importlib.import_module(full)
        if level or package == "exercises":
            return builtins.__import__(name, globals, locals, fromlist, level)
        if package in LIBRARIES:
            return import_library(name, lambda: builtins.__import__(name, globals, locals, fromlist, level))
        if package in DRAWING and submitted.undrawn:
            return Undrawn(name)
        raise not_here(name)

    def guarded_input(prompt: object = "") -> None:
        raise Stop("input", "input()")

    def guarded_exit(code: Any = None) -> None:
        raise SystemExit(code)

    guarded.update(__import__=guarded_import, input=guarded_input, exit=guarded_exit, quit=guarded_exit)
    return guarded


def load(exercise: str, files: Mapping[str, str]) -> ModuleType:
    """The module of one exercise, from a dict of path to source text.

    Drawing packages are not here, and code that is ready for that goes on without them. Code that is not is loaded once more,
    with something in their place that does nothing.
    """
    try:
        return _load(exercise, SubmittedExercises(files))
    except NotHere as error:
        if str(error.name).partition(".")[0] not in DRAWING:
            raise
    if isinstance(sys.stdout, Printed):
        sys.stdout.kept = ""
    module = _load(exercise, SubmittedExercises(files, undrawn=True))
    print(NOTHING_DRAWN)
    return module


def _load(exercise: str, submitted: SubmittedExercises) -> ModuleType:
    for name in [name for name in sys.modules if name.partition(".")[0] == "exercises"]:
        del sys.modules[name]
    sys.meta_path[:] = [submitted, *(finder for finder in sys.meta_path if type(finder) is not SubmittedExercises)]
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
    elif isinstance(error, NotHere):
        kind, what = "import", str(error.name)
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
