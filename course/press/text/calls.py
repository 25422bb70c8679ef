"""The one form in which a page asks for something made by code: `{{ name(values) }}`.

Only plain Python values are read; nothing in a page is run.
"""

import ast
import re
from collections.abc import Callable, Mapping
from typing import Any

from course.press.faults import Fault

Maker = Callable[..., Any]

CALL = r"\{\{\s*(?P<call>[a-z]\w*\([\s\S]*?\))\s*\}\}"


def answer(text: str, makers: Mapping[str, Maker]) -> Any:
    """What a maker gives for one call.

    Parameters
    ----------
    text : str
        Such as `figure("unit01_signal/modulation/wave")`; an argument may itself be a call.
    makers : mapping
        Function by name.

    Returns
    -------
    object
        Whatever the maker returns: HTML, text, a number.

    Raises
    ------
    Fault
        If the text is no such call, no maker has that name, or the maker finds fault with the values.
    """
    try:
        tree = ast.parse(text, mode="eval").body
    except (SyntaxError, ValueError, RecursionError, MemoryError):
        raise Fault("is not of the form {{ name(values) }} with plain Python values") from None
    return evaluate(tree, makers)


def evaluate(node: ast.expr, makers: Mapping[str, Maker]) -> Any:
    """A plain value, or what a maker returns for the values in its brackets."""
    if not isinstance(node, ast.Call):
        try:
            return ast.literal_eval(node)
        except ValueError:
            raise Fault(f"holds {ast.unparse(node)}, which is not a plain number or text in quotes") from None
    name = ast.unparse(node.func)
    if name not in makers:
        raise Fault(f"asks for {name}, which is not one of {', '.join(makers)}")
    positional = [evaluate(inner, makers) for inner in node.args]
    named = {}
    for keyword in node.keywords:
        if keyword.arg is None:
            raise Fault(f"holds **{ast.unparse(keyword.value)}, which is not a plain number or text in quotes")
        named[keyword.arg] = evaluate(keyword.value, makers)
    try:
        return makers[name](*positional, **named)
    except Fault:
        raise
    except TypeError as error:
        raise Fault(f"cannot be called so: {error}") from None


def replace_calls(text: str, replacement: Callable[[str], str]) -> str:
    """The text with each call in it replaced."""
    return re.sub(CALL, lambda match: replacement(match["call"]), text)
