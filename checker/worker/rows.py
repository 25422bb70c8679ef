"""One function called for each place of some arrays, or step after step: what a sound asks, without a message for every moment."""

from collections.abc import Callable, Sequence
from typing import Any

import numpy as np

from .wire import Unusable, from_wire, name_of


def call_rows(function: Callable, columns: Sequence, carry: int | None) -> Any:
    """The function's answers as an array of numbers; what the first answer is that is no number.

    Parameters
    ----------
    function : callable
        The student's.
    columns : sequence
        An argument each, as it crosses: an array with a value for each call, or one value for all.
    carry : int or None
        The place of an argument that is, from the second call on, the answer before.
    """
    values = [from_wire(column) for column in columns]
    count = max((value.size for value in values if isinstance(value, np.ndarray)), default=1)
    rows = zip(*(value.tolist() if isinstance(value, np.ndarray) else [value] * count for value in values), strict=True)
    answers = np.empty(count)
    answer: Any = None
    for place, row in enumerate(rows):
        if carry is not None and place:
            row = (*row[:carry], answer, *row[carry + 1 :])
        answer = function(*row)
        if type(answer) not in (int, float) and not isinstance(answer, (np.floating, np.integer)):
            return Unusable("nothing (None)" if answer is None else name_of(type(answer)))
        answers[place] = answer = float(answer)
    return answers
