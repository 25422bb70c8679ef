"""What a student pack has of the exercises that one builds on: values of their functions, for what the reference asked of them.

Whoever works out an exercise in the same steps asks for the same. A function that is asked for very many values is left out:
something searches with it, and another search asks elsewhere.
"""

import contextlib
import hashlib
import inspect
import json
from collections.abc import Callable, Mapping, Sequence
from typing import Any

import numpy as np

from ..course import load_physics
from ..worker.stand_ins import NotLent, as_received, sendable
from ..worker.student import turned_round
from ..worker.wire import from_wire
from .plan import LawFunction, Plan
from .stand_ins import Earlier, NotRecorded, references_for, with_numpys

MOST_VALUES, MOST_CHARACTERS = 300, 50_000  # of one function in one exercise
FIGURES = 10  # in which arguments must agree: the last ones hang on the order in which a student multiplies


class KnownValues:
    """Stands in for a function where its values are known, and nowhere else."""

    def __init__(self, arguments: Sequence[str], values: Mapping[str, Any]) -> None:
        self._arguments, self._values = arguments, values

    @property
    def data(self) -> list:
        """What it was made of."""
        return [self._arguments, self._values]

    def __call__(self, *arguments: Any, **named: Any) -> Any:
        given = [*arguments, *(named[name] for name in self._arguments[len(arguments) :] if name in named)]
        known = self._values.get(_key(given), {"unknown": True})
        if type(known) is dict and "unknown" in known:
            raise NotRecorded
        if type(known) is dict and "refuses" in known:
            raise ValueError(known["refuses"])
        return as_received(from_wire(known))


class _NotedFunction:
    """A function that writes down what it is asked and what it says."""

    def __init__(self, function: Callable) -> None:
        self._function, self._signature = function, inspect.signature(function)
        self.arguments, self.values = list(self._signature.parameters), {}

    def __call__(self, *arguments: Any, **named: Any) -> Any:
        key = _key(self._signature.bind(*arguments, **named).args)
        try:
            value = self._function(*arguments, **named)
        except ValueError as error:
            self.values[key] = {"refuses": str(error)}
            raise
        with contextlib.suppress(NotLent):
            self.values[key] = sendable(with_numpys(value), "")
        return value


def record_earlier(plan: Plan) -> list[dict]:
    """What stands in for earlier exercises in a pack, as plain data: recorded while the reference answers all that a plan asks;
    as it was recorded, of a plan out of a pack."""
    if plan.earlier is not None:
        return [
            _to_data(one, {name: known.data for name, known in one.functions.items() if isinstance(known, KnownValues)})
            for one in plan.earlier
        ]
    module = load_physics(plan.exercise.path.replace("/", "."))
    earlier = references_for(plan.exercise.path)
    recordings = {id(function): _NotedFunction(function) for one in earlier for function in one.functions.values()}
    imported = {name: thing for name, thing in vars(module).items() if id(thing) in recordings}
    vars(module).update({name: recordings[id(thing)] for name, thing in imported.items()})
    try:
        _answer_all(plan)
    finally:
        vars(module).update(imported)
    return [
        _to_data(one, {name: _recorded(recordings[id(function)]) for name, function in one.functions.items()})
        for one in earlier
    ]


def _to_data(one: Earlier, functions: Mapping[str, list]) -> dict:
    return {"path": one.path, "functions": functions, "constants": dict(one.constants)}


def earlier_from_data(data: Sequence[Mapping[str, Any]]) -> tuple[Earlier, ...]:
    """What `record_earlier` made plain data of."""
    return tuple(
        Earlier(one["path"], {name: KnownValues(*known) for name, known in one["functions"].items()}, one["constants"])
        for one in data
    )


def _recorded(recording: _NotedFunction) -> list:
    few = len(recording.values) <= MOST_VALUES and len(json.dumps(recording.values)) <= MOST_CHARACTERS
    return [recording.arguments, recording.values if few else {}]


def _answer_all(plan: Plan) -> None:
    """Have the reference answer the batch, and what laws ask beyond it."""
    asked = {planned.question.name: planned.question.asks for planned in plan.questions}
    with np.errstate(all="ignore"):
        for call in plan.calls:
            inputs = list(map(from_wire, call.get("arguments", ())))
            for given in [inputs] * ("arguments" in call) + [turned_round(inputs)] * ("again" in call):
                with contextlib.suppress(ValueError, ArithmeticError, TypeError):
                    asked[call["function"]](*given)
        for planned in plan.questions:
            answered = LawFunction(planned.question.name, lambda name, inputs: asked[name](*inputs))
            for case in planned.laws:
                case.law.law(answered, *case.inputs)


def _key(arguments: Sequence[Any]) -> str:
    """The same for arguments that agree in all figures but the last."""
    return hashlib.sha256(json.dumps([_in_figures(one) for one in arguments]).encode()).hexdigest()[:16]


def _in_figures(value: Any) -> Any:
    if isinstance(value, np.ndarray):
        return [list(value.shape), [_in_figures(item) for item in value.ravel().tolist()]]
    if isinstance(value, (tuple, list)):
        return [_in_figures(item) for item in value]
    if isinstance(value, (complex, np.complexfloating)):
        return [f"{part:.{FIGURES}g}" for part in (value.real, value.imag)]
    return f"{value:.{FIGURES}g}" if isinstance(value, (int, float, np.number)) else str(value)
