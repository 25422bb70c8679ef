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
from collections.abc import Sequence
from typing import Any

import numpy as np

# What the judge tells the warm process over its socket, and the form of the answer: one whole number.
FORK, FORK_WITH_SCRATCH, REAP, FORGET = b"F", b"S", b"R", b"L"
ANSWER = struct.Struct("<q")
# Among the places of the arguments that a call altered: it altered what it had answered before.
ANSWER_ITSELF = -1

MAX_LINE = 8 << 20
MAX_ELEMENTS = 100_000
MAX_TEXT = 10_000
MAX_DEPTH = 6
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


def printable(text: str) -> str:
    """Text fit for a terminal or a page: what they would obey rather than show becomes a question mark; lines stay lines."""
    return "".join(char if char.isprintable() or char == "\n" else "?" for char in text)


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


def from_wire(data: Any, depth: int = 0) -> Any:
    """The value that `to_wire` described; `Malformed` for anything else."""
    if data is None or type(data) in (bool, float, str) or type(data) is int and data.bit_length() < 1024:
        return data
    if type(data) is not dict or depth > MAX_DEPTH + 1:
        raise Malformed("not a value")
    if set(data) == {"expression", "at"}:
        if type(data["expression"]) is not str or type(data["at"]) is not list:
            raise Malformed("not an expression")
        return Expression(printable(data["expression"][:MAX_TEXT]), [from_wire(v, depth + 1) for v in data["at"]])
    if len(data) != 1:
        raise Malformed("not a value")
    [(tag, body)] = data.items()
    if tag == "complex":
        if type(body) is not list or len(body) != 2 or any(type(part) is not float for part in body):
            raise Malformed("not a complex number")
        return complex(*body)
    if tag == "sequence" and type(body) is list:
        return [from_wire(item, depth + 1) for item in body]
    if tag == "array":
        return _array_from_wire(body)
    if tag in ("unusable", "oversize") and type(body) is str:
        return Unusable(printable(body[:200]), oversize=tag == "oversize")
    raise Malformed(f"unknown kind of value {str(tag)[:40]!r}")


def _array_from_wire(body: Any) -> np.ndarray:
    if type(body) is not dict or set(body) != {"dtype", "shape", "data"} or body["dtype"] not in DTYPES:
        raise Malformed("not an array")
    shape, dtype = body["shape"], DTYPES[body["dtype"]]
    if type(shape) is not list or len(shape) > 32 or any(type(n) is not int or n < 0 for n in shape):
        raise Malformed("not a shape")
    try:
        data = base64.b64decode(body["data"], validate=True)
    except (TypeError, ValueError):
        raise Malformed("not base64") from None
    if math.prod(shape) > MAX_ELEMENTS or len(data) != math.prod(shape) * dtype.itemsize:
        raise Malformed("array data and shape differ")
    return np.frombuffer(data, dtype).reshape(shape).copy()


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
