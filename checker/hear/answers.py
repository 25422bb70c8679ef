"""Who answers for each link of the chain: the reference, or a member where what they wrote is right."""

from collections.abc import Callable, Mapping
from functools import partial
from typing import Any

import numpy as np

from ..checks.exercise import relative
from ..course import find
from ..judging.compare import difference
from ..judging.fingerprint import files_used
from ..judging.plan import numeric_call
from ..judging.protocols import Call, WorkerLike
from ..worker.wire import to_wire
from . import core_way
from .chain import CORE, LENT, YOURS, Chain, Link, Origin

PIECE = 48_000  # values that go to the worker at a time
PATIENCE = 10.0  # seconds for one call
ALIKE = relative(1e-4, because="a difference too small to hear", floor=1e-15)


NO_SOUND = "it does not give a finite number for each moment"


class StageMissing(Exception):
    """A part cannot be played; the text says what is missing."""


class Silent(Exception):
    """A function that was right gives no sound; the text says why."""


class ReferenceAnswers:
    """Answers as the reference does.

    `own` and `by_core` name the functions that a member has, in either way; `gave_out` those that were right and then gave no sound.
    """

    def __init__(self, chain: Chain) -> None:
        self.chain = chain
        self.own: set[str] = set()
        self.by_core: set[str] = set()
        self.gave_out: dict[str, str] = {}

    def link(self, link: Link) -> tuple[list, Origin]:
        return link.wanted, Origin(LENT)

    def stage(self, name: str) -> Callable:
        if name not in self.chain.stages:
            raise StageMissing(name)
        return self.chain.stages[name]

    def receiver(self, *inputs: Any) -> tuple[np.ndarray | None, str]:
        """The member's own receiver on one station; None, and why there is none."""
        return None, ""

    def held(self, swing: np.ndarray) -> np.ndarray | None:
        """What the detector holds of a swing, moment by moment; None where its tables are to be used."""
        return None


class MemberAnswers(ReferenceAnswers):
    """Answers with a member's functions where they are right, in the worker; then the core's way; otherwise as the reference."""

    def __init__(self, chain: Chain, files: Mapping[str, str], worker: WorkerLike) -> None:
        super().__init__(chain)
        self.files, self.worker = files, worker
        self._known: dict[tuple[str, str], tuple[list, str]] = {}

    def link(self, link: Link) -> tuple[list, Origin]:
        values, trouble = self._judged(link)
        if not trouble:
            self.own.add(link.function)
            return values, Origin(YOURS)
        if not link.core:
            return link.wanted, Origin(LENT, trouble)
        answers = {one.function: self._judged(one) for one in link.core}
        why = {one.exercise: answers[one.function][1] for one in link.core}
        lacking = [name if said == trouble else f"{name} ({said})" for name, said in why.items() if said]
        if lacking:
            return link.wanted, Origin(LENT, f"{trouble}; the core's way waits for {', '.join(lacking)}")
        self.by_core.add(link.function)
        value = core_way.VALUES.get(link.function, lambda *_: link.wanted)
        core = {function: right for function, (right, _) in answers.items()}
        return value(self.chain, core), Origin(CORE, ", ".join(why))

    def stage(self, name: str) -> Callable:
        if name in self.own:
            return partial(self._stage, name)
        if name == "circuit_voltage" and name in self.by_core:
            return self._circuit_by_steps
        return super().stage(name)

    def receiver(self, *inputs: Any) -> tuple[np.ndarray | None, str]:
        [value], trouble = self._ask("receiver", [numeric_call("receiver", inputs)])
        if trouble or (_plain(value, len(inputs[0])) and np.isrealobj(value)):
            return value, trouble
        return None, NO_SOUND

    def held(self, swing: np.ndarray) -> np.ndarray | None:
        if "bias_with_carrier" not in self.by_core:
            return None
        try:
            return core_way.held(self._at_each, swing, self.chain.numbers["falling"])
        except Silent as why:
            self.gave_out["bias_with_carrier"] = str(why)
            return None

    def _stage(self, name: str, *inputs: Any) -> Any:
        [value], trouble = self._ask("receiver", [numeric_call(name, inputs)])
        if not trouble and _plain(value, len(inputs[0])):
            return value
        self.gave_out[name] = trouble or NO_SOUND
        return super().stage(name)(*inputs)

    def _circuit_by_steps(self, *inputs: Any) -> np.ndarray:
        try:
            return core_way.circuit_voltage(self._at_each, *inputs)
        except Silent as why:
            self.gave_out["circuit_voltage"] = str(why)
            return super().stage("circuit_voltage")(*inputs)

    def _judged(self, link: Link) -> tuple[list, str]:
        """(the member's values, "") or (those or Nones, why they will not do)."""
        key = link.exercise, link.function
        if key not in self._known:
            values, trouble = self._ask(link.exercise, [numeric_call(link.function, one) for one in link.inputs])
            if not trouble and any(difference(*pair, ALIKE) for pair in zip(values, link.wanted, strict=True)):
                trouble = "it does not give the right values"
            self._known[key] = values, trouble
        return self._known[key]

    def _at_each(
        self, function: str, first: complex, column: np.ndarray, *others: Any, carry: int, lessen: Any = None
    ) -> np.ndarray:
        """Answers of a core function that was right, step after step, piece by piece; `first` is what is carried into the first."""
        done: list[np.ndarray] = []
        for start in range(0, column.size, PIECE):
            here = slice(start, start + PIECE)
            pieces = [one[here] if isinstance(one, np.ndarray) else one for one in (column, *others)]
            carried = done[-1][-1].item() if done else first
            rows = [to_wire(one) for one in (carried, *pieces)]
            [value], trouble = self._ask(function, [{"function": function, "rows": rows, "carry": carry, "lessen": lessen}])
            if trouble or not _plain(value, pieces[0].size):
                raise Silent(f"{function}: {trouble or NO_SOUND}")
            done.append(value)
        return np.concatenate(done)

    def _ask(self, exercise: str, calls: list[Call]) -> tuple[list, str]:
        """(a value for each of the calls, "") or (Nones, why there are none)."""
        path, nothing = find(exercise), [None] * len(calls)
        if f"{path}.py" not in self.files:
            return nothing, "its file is not there"
        files = {name: self.files[name] for name in files_used(f"{path}.py", self.files)}
        with self.worker.session(path, files, PATIENCE) as session:
            replies = session.ask(calls)
        try:
            return [reply["value"] for reply in (*replies, *[{}] * (len(calls) - len(replies)))], ""
        except KeyError:
            return nothing, _why(next((reply for reply in replies if "trouble" in reply), {}), path)


def _plain(value: Any, length: int) -> bool:
    return isinstance(value, np.ndarray) and value.shape == (length,) and bool(np.all(np.isfinite(value)))


def _why(reply: dict, path: str) -> str:
    kind, file = reply.get("trouble"), reply.get("file")
    if kind == "not written":
        other = "" if file in (None, f"{path}.py") else f"{file.rpartition('/')[2].removesuffix('.py')}, which it uses, is "
        return f"{other}not written yet"
    if kind == "missing module":
        return f"{str(reply.get('what')).rpartition('.')[2]}, which it uses, is not there"
    if kind == "no function":
        return "its file has no such function"
    stopped = f"it stopped with {reply.get('error', 'an error')}"
    return {"time": "it takes too long", None: "it ended without an answer"}.get(kind, stopped)
