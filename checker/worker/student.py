"""Loading a student's file and calling its functions, with everything that can go wrong told as data.

Nothing here is a safety measure: the child's containment is. What is here makes the sentence a student reads.
"""

import builtins
import contextlib
import importlib.abc
import importlib.machinery
import inspect
import sys
import types
from collections.abc import Callable, Iterable, Iterator, Mapping
from functools import lru_cache
from types import MappingProxyType, ModuleType, TracebackType
from typing import Any

import numpy as np

from .compiling import code_from, compile_source
from .denials import OWN_FOLDER, NotHere, describe_denial, import_library, not_here
from .rows import call_rows
from .stand_ins import Asking, NotLent, Offers, StandIns
from .undrawn import Undrawn
from .wire import ANSWER_ITSELF, MAX_DEPTH, Expression, Unusable, from_wire, name_of, plain_text, to_wire

LIBRARIES = frozenset({"numpy", "sympy", "mpmath", "exercises", *sys.stdlib_module_names})
DRAWING = frozenset({"matplotlib", "mpl_toolkits", "pylab"})
NOTHING_DRAWN = "(matplotlib is not here while marking: what the file draws when it is loaded was passed over, at no cost.)"
MAX_PRINTED = 64 * 1024
KEPT_PRINTED = 2000
RECURSION = 20  # frames of the student's own in a traceback, from which on it is their function that calls itself


class Stop(BaseException):
    """Ends a call from inside; not an Exception, so that an `except Exception` of the student's lets it through."""

    def __init__(self, kind: str, what: str = "") -> None:
        self.kind, self.what = kind, what


class Printed:
    """Stands in for sys.stdout: counts what is printed and keeps the beginning."""

    def __init__(self) -> None:
        self.count, self.kept = 0, ""

    def write(self, text: object) -> int:
        text = plain_text(text)
        self.count += len(text)
        text = text.replace(OWN_FOLDER, "")
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

    def __init__(self, files: Mapping[str, str], codes: Mapping[str, str], undrawn: bool = False) -> None:
        self.sources = {"exercises." + path.removesuffix(".py").replace("/", "."): path for path in files}
        self.files, self.codes, self.undrawn, self.modules = files, codes, undrawn, {}

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
            self.modules[module.__name__] = module
            try:
                code = code_from(self.codes[path]) if path in self.codes else compile_source(self.files[path], path)
            except (RecursionError, MemoryError):
                raise Stop("too complex") from None
            exec(code, module.__dict__)


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

    def guarded_breakpoint(*arguments: Any, **keywords: Any) -> None:
        raise Stop("breakpoint")

    def guarded_exit(code: Any = None) -> None:
        raise SystemExit(code)

    guarded.update(
        __import__=guarded_import, input=guarded_input, breakpoint=guarded_breakpoint, exit=guarded_exit, quit=guarded_exit
    )
    return guarded


def load(
    exercise: str,
    files: Mapping[str, str],
    codes: Mapping[str, str] = MappingProxyType({}),
    offers: Offers | None = None,
    ask: Asking | None = None,
) -> ModuleType:
    """The module of one exercise, from dicts of path to source text, and to code where it is compiled already.

    It is the one that its source made, whatever that puts in its place. What is offered of earlier exercises stands in for them.
    Drawing packages are not here, and code that is ready for that goes on without them. Code that is not is loaded once more,
    with something in their place that does nothing.
    """
    try:
        return _load(exercise, SubmittedExercises(files, codes), offers, ask)
    except NotHere as error:
        if str(error.name).partition(".")[0] not in DRAWING:
            raise
    if isinstance(sys.stdout, Printed):
        sys.stdout.kept = ""
    module = _load(exercise, SubmittedExercises(files, codes, undrawn=True), offers, ask)
    print(NOTHING_DRAWN)
    return module


def _load(exercise: str, submitted: SubmittedExercises, offers: Offers | None, ask: Asking | None) -> ModuleType:
    for name in [name for name in sys.modules if name.partition(".")[0] == "exercises"]:
        del sys.modules[name]
    ours = [StandIns(offers, ask, submitted.exec_module), submitted] if offers and ask else [submitted]
    sys.meta_path[:] = [*ours, *(finder for finder in sys.meta_path if type(finder) not in (StandIns, SubmittedExercises))]
    name = "exercises." + exercise.replace("/", ".")
    importlib.import_module(name)
    return submitted.modules[name]


def trouble(error: BaseException, files: Mapping[str, str]) -> dict[str, Any]:
    """What went wrong in a student's code, as data: the kind, the error's name and text, the student's own line.

    An error may be of a class of the student's, and each of its attributes anything: where it cannot be described, that is said.
    """
    try:
        kind, what = _kind_of_trouble(error, files)
        path, number = _place_of_trouble(error, files)
        return {
            "trouble": kind,
            "what": what,
            "error": name_of(type(error)),
            "text": safe_text(error),
            "file": path,
            "line": number,
        }
    except BaseException as second:
        kind = "time" if type(second) is Stop else "undescribed"
        return {"trouble": kind, "what": "", "error": "", "text": "", "file": None, "line": None}


def _kind_of_trouble(error: Any, files: Mapping[str, str]) -> tuple[str, str]:
    kind = type(error)
    if issubclass(kind, Stop):
        return _said(error.kind)[:40], _said(error.what)[:200]
    if issubclass(kind, NotLent):
        return "not lent", safe_text(error)
    if issubclass(kind, SystemExit):
        return "exit", ""
    if issubclass(kind, SyntaxError) and type(error.filename) is str and error.filename in files:
        return "syntax", ""
    if issubclass(kind, NotImplementedError):
        return "not written", _last_function(error.__traceback__, files)
    if issubclass(kind, (RecursionError, MemoryError)) and _COMPILERS.intersection(safe_text(error).split()):
        return "too complex", ""
    if issubclass(kind, RecursionError):
        return ("recursion" if len(list(_own(error.__traceback__, files))) >= RECURSION else "too deep"), ""
    if issubclass(kind, MemoryError):
        return "memory", ""
    if issubclass(kind, NotHere):
        return "import", plain_text(error.name)[:200]
    if issubclass(kind, ModuleNotFoundError) and type(error.name) is str:
        return "missing module", error.name[:200]
    denied = describe_denial(error, files)
    return ("refused", denied.kind) if denied else ("raised", "")


# "maximum recursion depth exceeded during compilation", "Parser stack overflowed - Python source too complex to parse".
_COMPILERS = frozenset(("compilation", "parse"))


def _place_of_trouble(error: Any, files: Mapping[str, str]) -> tuple[str | None, int | None]:
    """Path and number of the line to show; a number only if the file has such a line."""
    path, number = student_line(error.__traceback__, files)
    if issubclass(type(error), SyntaxError) and type(error.filename) is str and error.filename in files:
        path, number = error.filename, error.lineno
    if path is None or type(number) is not int or not 0 < number <= files[path].count("\n") + 1:
        return path, None
    return path, number


def _own(traceback: TracebackType | None, files: Mapping[str, str]) -> Iterator[TracebackType]:
    """What of a traceback lies in the student's files, the innermost last."""
    while traceback is not None:
        if traceback.tb_frame.f_code.co_filename in files:
            yield traceback
        traceback = traceback.tb_next


def _last_function(traceback: TracebackType | None, files: Mapping[str, str]) -> str:
    """Name of the innermost function of the student's in a traceback; "" if it was in none."""
    names = [part.tb_frame.f_code.co_name for part in _own(traceback, files)]
    return next((name for name in reversed(names) if not name.startswith("<")), "")[:80]


def student_line(traceback: TracebackType | None, files: Mapping[str, str]) -> tuple[str | None, int | None]:
    """Path and number of the last line of the student's own that a traceback passes through."""
    found: tuple[str | None, int | None] = None, None
    for part in _own(traceback, files):
        found = part.tb_frame.f_code.co_filename, part.tb_lineno
    return found


def safe_text(error: Any) -> str:
    """What an error says of itself."""
    text = _said(error.msg if issubclass(type(error), SyntaxError) else error)[:500].replace(OWN_FOLDER, "")
    return text.encode("utf-8", "replace").decode()


def _said(thing: object) -> str:
    """The text of anything; "" where it cannot be said."""
    try:
        return plain_text(thing)
    except Stop:
        raise
    except BaseException:
        return ""


def call(module: ModuleType, request: dict) -> dict[str, Any]:
    """Answer one call of the judge's: {"value": …} and the places of the arguments that the function altered.

    A request with "again" is worked out once more with its arrays turned round; if that alters the first answer,
    `ANSWER_ITSELF` is among the places.
    """
    function = getattr(module, request["function"], None)
    if not callable(function):
        names = [name for name, thing in vars(module).items() if type(name) is str and type(thing) is types.FunctionType]
        return {"trouble": "no function", "what": request["function"], "names": names[:20]}
    if "symbols" in request:
        return call_symbolic(function, request["symbols"], request["at"])
    if "rows" in request:
        answers = _mismatch(function, len(request["rows"]))
        asked = request["rows"], request["carry"], request.get("lessen")
        return answers or {"value": to_wire(call_rows(function, *asked)), "altered": []}
    arguments = [from_wire(argument) for argument in request["arguments"]]
    mismatch = _mismatch(function, len(arguments))
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
        function(*turned_round(map(from_wire, request["arguments"])))
        altered += [ANSWER_ITSELF] * (to_wire(value) != answer)
    return {"value": answer, "altered": altered}


def turned_round(arguments: Iterable) -> list:
    """Arguments with the arrays among them from back to front."""
    return [one[::-1] if isinstance(one, np.ndarray) and one.ndim else one for one in arguments]


def _signature_mismatch(function: Callable, count: int) -> dict[str, Any] | None:
    """What to say if a function cannot be called with so many arguments; None if it can, or if only the call itself will tell."""
    with contextlib.suppress(Exception):  # what tells its arguments may be a thing of the student's own
        signature = inspect.signature(function)
        try:
            signature.bind(*range(count))
        except TypeError:
            return {"trouble": "signature", "what": plain_text(", ".join(signature.parameters))[:200]}
    return None


_known_mismatch = lru_cache(_signature_mismatch)


def _mismatch(function: Callable, count: int) -> dict[str, Any] | None:
    """As `_signature_mismatch`, worked out once for a function of Python's own kind: others may change, or have no hash."""
    return (_known_mismatch if type(function) is types.FunctionType else _signature_mismatch)(function, count)


def unwrap(value: Any, depth: int = 0) -> Any:
    """Numbers of sympy's as Python's, in lists too; a lazy iterator is named, not run.

    By what it is, not by what it says it is: `isinstance` would ask the student's object.
    """
    if (items := _items(value, 1000)) is not None and depth < MAX_DEPTH:
        return [unwrap(item, depth + 1) for item in items]
    sympy = sys.modules.get("sympy")  # without it, there is nothing of it to be met
    if sympy and issubclass(type(value), sympy.Basic):
        number = _complex(value) if issubclass(type(value), sympy.Expr) and value.is_number else None
        if number is None:
            return Unusable("a sympy expression")
        return number.real if number.imag == 0 or number.imag != number.imag else number
    return value


def _items(value: Any, most: int) -> Any:
    """The items of a list or a tuple, not too long, of a class of the student's too; None of anything else."""
    for kind in (list, tuple):
        if issubclass(type(value), kind):
            return kind.__iter__(value) if kind.__len__(value) <= most else None
    return None


def _complex(number: Any) -> complex | None:
    """The value of a number of sympy's; None if it has none (complex infinity, an interval)."""
    try:
        return complex(number)
    except (TypeError, ValueError, OverflowError):
        return None


def call_symbolic(function: Callable, names: list[str], points: Any) -> dict[str, Any]:
    import sympy  # there already, in a process that is asked with symbols

    symbols = [sympy.Symbol(name, positive=True) for name in names]
    mismatch = _mismatch(function, len(symbols))
    return mismatch or {"value": to_wire(_evaluate(function(*symbols), symbols, points)), "altered": []}


def _evaluate(result: Any, symbols: Any, points: Any, depth: int = 0) -> Any:
    import sympy  # there already, as above

    items = result.args if type(result) is sympy.Tuple else _items(result, 100)
    if items is not None and depth < MAX_DEPTH:
        return [_evaluate(item, symbols, points, depth + 1) for item in items]
    if type(result) in (int, float):
        result = sympy.sympify(result)
    if not issubclass(type(result), sympy.Expr):
        return result if result is None else Unusable(name_of(type(result)))
    # Symbols match by name: a student who makes symbols of their own means the ones they were given.
    by_name = {symbol.name: symbol for symbol in symbols}
    own = {free: by_name.get(getattr(free, "name", None)) for free in result.free_symbols}
    result = result.subs({free: symbol for free, symbol in own.items() if symbol is not None})
    at = []
    for point in points:
        number = result.evalf(20, subs=dict(zip(symbols, point, strict=True)))
        at.append(_complex(number) if number.is_number else None)
    return Expression(plain_text(result)[:500], at)
