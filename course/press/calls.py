"""The one form in which a page asks for something made by code: `{{ name(values) }}`.

Only plain Python values are read; nothing in a page is run.
"""

import ast
import re
from collections.abc import Callable

from course.press.faults import Fault

CALL = r"\{\{\s*(?P<call>[a-z]\w*\([\s\S]*?\))\s*\}\}"


def answer(text: str, makers: dict[str, Callable]) -> str:
    """What a maker gives for one call.

    Parameters
    ----------
    text : str
        Such as `figure("unit01_signal/wave")`; an argument may itself be a call.
    makers : dict
        Function by name.

    Returns
    -------
    str, or whatever the maker returns

    Raises
    ------
    Fault
        If the text is no such call, no maker has that name, or the maker finds fault with the values.
    """
    try:
        tree = ast.parse(text, mode="eval").body
    except (SyntaxError, ValueError, RecursionError, MemoryError):
        raise Fault("is not of the form {{ name(values) }} with plain Python values") from None
    return value_of(tree, makers)


def value_of(node: ast.expr, makers: dict[str, Callable]):
    if not isinstance(node, ast.Call):
        try:
            return ast.literal_eval(node)
        except ValueError:
            raise Fault(f"holds {ast.unparse(node)}, which is not a plain number or text in quotes") from None
    name = ast.unparse(node.func)
    if name not in makers:
        raise Fault(f"asks for {name}, which is not one of {', '.join(makers)}")
    positional = [value_of(inner, makers) for inner in node.args]
    named = {keyword.arg: value_of(keyword.value, makers) for keyword in node.keywords}
    try:
        return makers[name](*positional, **named)
    except Fault:
        raise
    except TypeError as error:
        raise Fault(f"cannot be called so: {error}") from None


def replace_calls(text: str, replacement: Callable[[str], str]) -> str:
    """The text with each call in it replaced."""
    return re.sub(CALL, lambda match: replacement(match["call"]), text)
