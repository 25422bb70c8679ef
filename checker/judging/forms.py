"""The form of an answer, its shape and whether it is complex, told before anything is computed with it.

A law multiplies and subtracts answers. A column where a row was wanted would make a square of the two, and fill the memory.
"""

from collections.abc import Mapping
from typing import Any

import numpy as np

from .plan import Plan
from .protocols import Inputs

Form = Any  # (shape, is complex) of a number or an array; a tuple of forms, in a list; the type of anything else
Forms = Mapping[tuple[str, tuple], set]


def forms_wanted(plan: Plan) -> Forms:
    """The forms that answers have by the reference, for each function and the forms of what it is given."""
    forms: dict[tuple[str, tuple], set] = {}
    for planned in plan.questions:
        for case in (*planned.cases, *planned.stacked, *(case for _, case in planned.published)):
            forms.setdefault(_asked(planned.question.name, case.inputs), set()).add(_form(case.wanted))
    return forms


def in_form(value: Any, function: str, inputs: Inputs, forms: Forms) -> Any:
    """The value, a list as an array where an array is wanted; None if it is not of the form that was wanted."""
    wanted = forms.get(_asked(function, inputs))
    if wanted is None:
        return value if _is_harmless(value, inputs) else None
    for candidate in _readings(value):
        if any(_fits(_form(candidate), one) for one in wanted):
            return candidate
    return None


def may_be_compared(left: Any, right: Any) -> bool:
    """Whether two sides of a law are of one shape, or one of them is repeated along the other and no further."""
    one, other = np.shape(left), np.shape(right)
    try:
        return np.broadcast_shapes(one, other) in (one, other)
    except ValueError:
        return False


def _asked(function: str, inputs: Inputs) -> tuple[str, tuple]:
    return function, tuple(np.shape(one) if isinstance(one, np.ndarray) else type(one).__name__ for one in inputs)


def _form(value: Any) -> Form:
    if isinstance(value, (tuple, list)):
        return tuple(map(_form, value))
    if isinstance(value, (np.ndarray, np.generic, int, float, complex)) and not isinstance(value, (bool, np.bool_)):
        return _Numbers(np.shape(value), np.iscomplexobj(value))
    return bool if isinstance(value, np.bool_) else type(value)


class _Numbers(tuple):
    """(shape, whether complex)."""

    def __new__(cls, shape: tuple, is_complex: bool) -> "_Numbers":
        return super().__new__(cls, (shape, is_complex))


def _fits(got: Form, wanted: Form) -> bool:
    if isinstance(got, _Numbers) or isinstance(wanted, _Numbers):
        both = isinstance(got, _Numbers) and isinstance(wanted, _Numbers)
        return both and got[0] == wanted[0] and (wanted[1] or not got[1])
    if isinstance(got, tuple) and isinstance(wanted, tuple):
        return len(got) == len(wanted) and all(map(_fits, got, wanted))
    return got == wanted


def _readings(value: Any) -> list:
    """What an answer may be taken for: a list of numbers for an array, an array for a list of its parts."""
    if isinstance(value, np.ndarray) and value.ndim:
        return [value, tuple(value)] if len(value) <= 100 else [value]
    if isinstance(value, (list, tuple)):
        try:
            array = np.array(value)
        except ValueError:
            return [value]
        return [value, array] if array.dtype.kind in "bifc" else [value]
    return [value]


def _is_harmless(value: Any, inputs: Inputs) -> bool:
    """Where the reference has not been asked the like: a number, a row, or of the shape of what was given."""
    if isinstance(value, (tuple, list)):
        return all(_is_harmless(item, inputs) for item in value)
    if not isinstance(value, np.ndarray) or value.ndim <= 1:
        return True
    return any(np.shape(one) == value.shape for one in inputs if isinstance(one, np.ndarray))
