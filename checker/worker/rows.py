"""One function called for each place of some arrays, or step after step: what a sound asks, without a message for every moment."""

from collections.abc import Callable, Sequence
from typing import Any

import numpy as np

from .wire import Unusable, from_wire, name_of

_NUMPYS = {float: np.floating, complex: np.complexfloating}


def call_rows(function: Callable, columns: Sequence, carry: int | None, lessen: Sequence | None = None) -> Any:
    """The function's answers as an array of numbers, complex if an argument is; what the first answer is that is no number.

    Parameters
    ----------
    function : callable
        The student's.
    columns : sequence
        An argument each, as it crosses: an array with a value for each call, or one value for all.
    carry : int or None
        The place of an argument that is, from the second call on, the answer before.
    lessen : (int, float) or None
        The place of an argument that is less each time by so much for each squared unit of the carried one.
    """
    values = [from_wire(column) for column in columns]
    count = max((value.size for value in values if isinstance(value, np.ndarray)), default=1)
    rows = zip(*(value.tolist() if isinstance(value, np.ndarray) else [value] * count for value in values), strict=True)
    number: type = complex if any(np.iscomplexobj(value) for value in values) else float
    answers = np.empty(count, number)
    answer: Any = None
    for place, row in enumerate(rows):
        arguments = list(row)
        if carry is not None:
            if place:
                arguments[carry] = answer
            if lessen:
                arguments[lessen[0]] -= lessen[1] * abs(arguments[carry]) ** 2
        answer = function(*arguments)
        if type(answer) not in (int, float, number) and not isinstance(answer, (np.floating, np.integer, _NUMPYS[number])):
            return Unusable("nothing (None)" if answer is None else name_of(type(answer)))
        answers[place] = answer = number(answer)
    return answers
