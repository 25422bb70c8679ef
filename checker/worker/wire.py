"""What may cross between judge and worker: lines of JSON holding numbers, arrays and text, and nothing that runs.

A value is one of
    null, true, false, an integer, a float, a string        as JSON has them (NaN and Infinity as Python writes them)
    {"complex": [re, im]}
    {"array": {"dtype": "f8", "shape": [...], "data": base64}}
    {"sequence": [...]}                                      a list or a tuple
    {"expression": text, "at": [...]}                        a sympy expression, and its value at the points asked for
    {"unusable": name of the type}                           anything else, named
    {"oversize": what it was}                                more than crosses
"""

import base64
import json
import math
import struct
from collections.abc import Callable, Sequence
from typing import Any

import numpy as np

# What the judge tells the warm process over its socket, and the form of the answer: one whole number.
FORK, FORK_WITH_SCRATCH, FORK_COMPILER, REAP, FORGET = b"F", b"S", b"C", b"R", b"L"
ORDER = struct.Struct("<cq")  # the order, and the number of the child that it is about
ANSWER = struct.Struct("<q")
# Among the places of the arguments that a call altered: it altered what it had answered before.
ANSWER_ITSELF = -1

# The environment to start the warm process in. What was once in a process's environment can be read out of its memory.
START_ENVIRONMENT = {"OPENBLAS_NUM_THREADS": "1", "OMP_NUM_THREADS": "1", "MKL_NUM_THREADS": "1"}

MAX_LINE = 8 << 20
MAX_REPLY, MAX_REPLIES = 3 << 20, 8 << 20  # bytes that a child sends for one call, and in all; the judge holds it to that
MAX_CODE = 512 << 10  # bytes of the code of one file; characters of all the sources that are sent together with their code
MAX_ASKING = (
    128 << 10
)  # bytes that a child sends to ask for one value: less than a socket holds, so that neither side waits for the other
MAX_ELEMENTS = 100_000
MAX_TEXT = 10_000
MAX_DEPTH = 6
MAX_AXES = 32
MAX_POINTS = 100
MAX_NAMED = 200  # characters that name what does not cross
DTYPES = {name: np.dtype("<" + name if name[1:] != "1" else name) for name in ("f8", "f4", "i8", "c16", "b1")}
_KINDS = {"b": "b1", "i": "i8", "u": "i8", "c": "c16"}


class Malformed(ValueError):
    """A line that is not a message of this protocol."""


class Expression:
    """The text of a student's formula and its values at the points that the judge chose."""

    def __init__(self, text: str, at: list) -> None:
        self.text, self.at = text, at


class Unusable:
    """Something that came back where a number, an array or text was wanted; `what` names it."""

    def __init__(self, what: str, oversize: bool = False) -> None:
        self.what, self.oversize = what, oversize


def plain_text(thing: object) -> str:
    """`str` of anything, as a str of Python's own: a class of the student's may give one that has a mind of its own."""
    return str.__str__(str(thing))


def name_of(kind: type) -> str:
    """The name of a class as Python knows it, whatever the class says; the beginning of a long one."""
    return plain_text(type.__dict__["__name__"].__get__(kind))[:80]


def to_wire(value: Any, depth: int = 0) -> Any:
    """A plain value as JSON data; what does not fit is named instead of sent.

    Types are compared exactly, so that a subclass with surprising methods is never asked to describe itself.
    """
    kind = type(value)
    if value is None or kind in (bool, float):
        return value
    if kind is int:
        return value if value.bit_length() < 1024 else {"oversize": f"a whole number of {value.bit_length()} bits"}
    if kind is str:
        text = value.encode("utf-8", "replace").decode()
        return text if len(text) <= MAX_TEXT else {"oversize": f"text of {len(text):,} characters"}
    if kind is complex:
        return {"complex": [value.real, value.imag]}
    if kind in (list, tuple, range):
        return _sequence_to_wire(value, depth)
    if kind is np.ndarray:
        return _array_to_wire(value)
    if kind in (np.float16, np.float32):
        return _array_to_wire(np.asarray(value, np.float32))  # so that the judge sees why figures are missing
    if kind in _NUMPYS:
        return to_wire(_plain_number(value), depth) if value.dtype.kind in "biufc" else {"unusable": name_of(kind)}
    if kind is Unusable:
        return {"oversize" if value.oversize else "unusable": value.what}
    if kind is Expression:
        return {"expression": value.text, "at": [to_wire(v, depth + 1) for v in value.at]}
    return {"unusable": name_of(kind)}


# numpy's own numbers, texts and dates; a class made from one of them is the student's.
_NUMPYS = frozenset(np.dtype(code).type for code in np.typecodes["All"])


def _plain_number(scalar: np.generic) -> Any:
    return {"b": bool, "f": float, "c": complex}.get(scalar.dtype.kind, int)(scalar)


def _sequence_to_wire(value: Sequence, depth: int) -> dict:
    if len(value) > MAX_ELEMENTS:
        return {"oversize": f"a {type(value).__name__} of {len(value):,} items"}
    if depth >= MAX_DEPTH:
        return {"unusable": "list nested too deep"}
    return {"sequence": [to_wire(item, depth + 1) for item in value]}


def _array_to_wire(value: np.ndarray) -> dict:
    if value.size > MAX_ELEMENTS:
        return {"oversize": f"an array of {value.size:,} numbers, shape {value.shape}"}
    if value.dtype.kind not in "biufc":
        return {"unusable": "array of Python objects" if value.dtype.kind == "O" else f"array of {value.dtype}"}
    name = "f4" if value.dtype == np.float32 else _KINDS.get(value.dtype.kind, "f8")
    data = np.ascontiguousarray(value, DTYPES[name]).tobytes()
    return {"array": {"dtype": name, "shape": list(value.shape), "data": base64.b64encode(data).decode()}}


def from_wire(data: Any, text: Callable[[str], str] = str, depth: int = 0) -> Any:
    """The value that `to_wire` described; `Malformed` for anything else. Every text in it goes through `text`."""
    kind = type(data)
    if data is None or kind in (bool, float) or kind is int and data.bit_length() < 1024:
        return data
    if kind is str and len(data) <= MAX_TEXT:
        return text(data)
    if kind is dict and depth <= MAX_DEPTH + 1:
        for tag, (fields, make) in _FORMS.items():
            if tag in data and data.keys() == fields.keys() and all(type(data[name]) is fields[name] for name in fields):
                return make(data, text, depth + 1)
    raise Malformed("not a value")


def _complex(data: dict, text: Callable, depth: int) -> complex:
    if [type(part) for part in data["complex"]] != [float, float]:
        raise Malformed("not a complex number")
    return complex(*data["complex"])


def _sequence(data: dict, text: Callable, depth: int) -> list:
    if len(data["sequence"]) > MAX_ELEMENTS:
        raise Malformed("a sequence too long")
    return [from_wire(item, text, depth) for item in data["sequence"]]


def _expression(data: dict, text: Callable, depth: int) -> Expression:
    if len(data["expression"]) > MAX_TEXT or len(data["at"]) > MAX_POINTS:
        raise Malformed("an expression too long")
    return Expression(text(data["expression"]), [from_wire(value, text, depth) for value in data["at"]])


def _array(data: dict, text: Callable, depth: int) -> np.ndarray:
    body = data["array"]
    if {name: type(value) for name, value in body.items()} != {"dtype": str, "shape": list, "data": str}:
        raise Malformed("not an array")
    shape, dtype = body["shape"], DTYPES.get(body["dtype"])
    if dtype is None or len(shape) > MAX_AXES or any(type(n) is not int or not 0 <= n <= MAX_ELEMENTS for n in shape):
        raise Malformed("not an array's dtype and shape")
    try:
        held = base64.b64decode(body["data"], validate=True)
    except ValueError:
        raise Malformed("not base64") from None
    size = math.prod(shape)
    if size > MAX_ELEMENTS or len(held) != size * dtype.itemsize:
        raise Malformed("array data and shape differ")
    if body["dtype"] == "b1" and held.strip(b"\0\1"):
        raise Malformed("neither true nor false")
    return np.frombuffer(held, dtype).reshape(shape).copy()


def _unusable(tag: str) -> Callable:
    return lambda data, text, depth: Unusable(text(data[tag][:MAX_NAMED]), oversize=tag == "oversize")


# Tag → (the fields that there must be and their types, what makes the value of them).
_FORMS: dict[str, tuple[dict[str, type], Callable]] = {
    "complex": ({"complex": list}, _complex),
    "sequence": ({"sequence": list}, _sequence),
    "array": ({"array": dict}, _array),
    "expression": ({"expression": str, "at": list}, _expression),
    "unusable": ({"unusable": str}, _unusable("unusable")),
    "oversize": ({"oversize": str}, _unusable("oversize")),
}


def line(message: dict) -> bytes:
    """One message as a line of bytes."""
    return _encoded(message).encode() + b"\n"


_encoded = json.JSONEncoder(separators=(",", ":")).encode


def parse_line(raw: bytes) -> dict:
    """The message in a line of bytes; `Malformed` if it is none or too long."""
    if len(raw) > MAX_LINE:
        raise Malformed("message too long")
    try:
        message = json.loads(raw)
    except (ValueError, RecursionError):
        raise Malformed("not JSON") from None
    if type(message) is not dict:
        raise Malformed("not a message")
    return message
