"""What a child sends, as replies: the one way in for anything that submitted code may have made.

Whatever the bytes are, they are a reply whose every field is what `FIELDS` says, its texts clean and its value decoded, or they
are `Malformed`.
"""

import re
from collections.abc import Callable, Mapping
from functools import partial
from typing import Any

from ..text import clean
from ..worker.wire import ANSWER_ITSELF, MAX_TEXT, Malformed, from_wire, parse_line

Reader = Callable[[Any], Any]
MOST_LINES = 10_000_000  # no source that is read has so many
MOST_ARGUMENTS = 50


def read_reply(raw: bytes) -> dict[str, Any]:
    """The reply in a line of bytes: a value or a trouble, or what is asked of an earlier function.

    Parameters
    ----------
    raw : bytes
        No longer than the budget for one: see `Session`.

    Raises
    ------
    Malformed
        If they are anything else.
    """
    try:
        message = parse_line(raw)
        if sum(kind in message for kind in ("value", "trouble", "asks")) != 1:
            raise Malformed("neither an answer nor a reason, nor a question")
        if "asks" in message and message.keys() != _QUESTION:
            raise Malformed("not a question")
        return {field: FIELDS[field](value) for field, value in message.items()}
    except Malformed:
        raise
    except Exception as error:  # an unknown field, and whatever a reader below stumbles over
        raise Malformed(type(error).__name__) from None


def read_code(raw: bytes) -> str | None:
    """The compiled code in a line of bytes, as the text of it that goes back behind the walls; None if the child had none to give.

    Raises
    ------
    Malformed
        If they are anything else.
    """
    message = parse_line(raw)
    code = message.get("code")
    if message.keys() != {"code"} or not (code is None or type(code) is str and _BASE64.fullmatch(code)):
        raise Malformed("not code")
    return code


_BASE64 = re.compile("[A-Za-z0-9+/]*=?=?")


def _text(longest: int, lines: bool = False) -> Reader:
    return lambda data: clean(_of(str, data), longest, lines)


def _of(kind: type, data: Any) -> Any:
    if type(data) is not kind:
        raise Malformed("a field of the wrong type")
    return data


def _value(data: Any) -> Any:
    return from_wire(data, text=partial(clean, longest=MAX_TEXT, lines=True))


def _by_name(data: Any) -> dict[str, Any]:
    if len(_of(dict, data)) > MOST_ARGUMENTS:
        raise Malformed("too many arguments")
    return {clean(name, 80): _value(value) for name, value in data.items()}


def _or_none(read: Reader) -> Reader:
    return lambda data: None if data is None else read(data)


def _list(read: Reader, most: int) -> Reader:
    def read_list(data: Any) -> list:
        if len(_of(list, data)) > most:
            raise Malformed("a list too long")
        return [read(item) for item in data]

    return read_list


def _whole(least: int, most: int) -> Reader:
    def read_whole(data: Any) -> int:
        if not least <= _of(int, data) <= most:
            raise Malformed("a number out of its range")
        return data

    return read_whole


FIELDS: Mapping[str, Reader] = {
    "value": _value,
    "altered": _list(_whole(ANSWER_ITSELF, MOST_ARGUMENTS), MOST_ARGUMENTS),
    "trouble": _text(40),
    "what": _text(200),
    "error": _text(80),
    "text": _text(500, lines=True),
    "file": _or_none(_text(200)),
    "line": _or_none(_whole(0, MOST_LINES)),
    "names": _list(_text(100), 20),
    "printed": _text(2000, lines=True),
    "asks": _text(200),
    "arguments": _list(_value, MOST_ARGUMENTS),
    "named": _by_name,
}
_QUESTION = {"asks", "arguments", "named"}
