"""A member's own functions asked for a sound: many moments at once, in the worker."""

from collections.abc import Mapping
from dataclasses import replace
from typing import Any

import numpy as np

from ..course import PRACTICE_SEED, SEALED, find, load_exercise
from ..judging.explanations import end_finding, trouble_finding
from ..judging.fingerprint import files_used
from ..judging.plan import numeric_call
from ..judging.plans import plan_for
from ..judging.protocols import Call, WorkerLike
from ..worker.wire import Unusable, to_wire
from .answers import PIECE

PATIENCE = 20.0  # seconds for one function's answers to all the moments of a sound


class Unheard(Exception):
    """A function gives no sound; the text says why, and `line` (file, number) where."""

    def __init__(self, says: str, line: tuple[str, int] | None = None) -> None:
        super().__init__(says)
        self.line = line


class OwnFunctions:
    """The functions of a member's exercises, as they stand, right or wrong."""

    def __init__(self, files: Mapping[str, str], worker: WorkerLike) -> None:
        self._files, self._worker = files, worker

    def value(self, exercise: str, function: str, *inputs: Any) -> Any:
        """One answer: a number, or a list of numbers where the function gives several."""
        [answer] = self._ask(exercise, function, [numeric_call(function, inputs)])
        parts = answer if isinstance(answer, list) else [answer]
        if not all(isinstance(part, (int, float, complex)) and np.isfinite(part) for part in parts):
            raise Unheard(f"{function} gives no finite number at {', '.join(map(str, inputs))}.")
        return answer

    def at_each(self, exercise: str, function: str, *columns: Any, carry: int | None = None) -> np.ndarray:
        """An answer for each place of some arrays, asked one by one.

        Parameters
        ----------
        exercise, function : str
        *columns : ndarray of shape (n,), or float
            What the function is given each time, in the order of its arguments.
        carry : int, optional
            Which of them is, from the second time on, the answer before.

        Returns
        -------
        ndarray of shape (n,)

        Raises
        ------
        Unheard
            If an answer is missing, or is no finite number.
        """
        rows = np.array(np.broadcast_arrays(*columns), dtype=float)
        done = []
        for start in range(0, rows.shape[1], PIECE):
            piece = rows[:, start : start + PIECE]
            if carry is not None and done:
                piece[carry, 0] = done[-1][-1]
            call = {"function": function, "rows": [to_wire(column) for column in piece], "carry": carry}
            [answer] = self._ask(exercise, function, [call])
            if isinstance(answer, Unusable):
                raise Unheard(f"{function} returned {answer.what} where a number was wanted.")
            if not np.all(np.isfinite(answer)):
                raise Unheard(f"{function} gives numbers that are not finite, and they make no sound.")
            done.append(answer)
        return np.concatenate(done)

    def _ask(self, exercise: str, function: str, calls: list[Call]) -> list:
        path = find(exercise)
        if f"{path}.py" not in self._files:
            raise Unheard(f"{path}.py is not among your files.")
        files = {name: self._files[name] for name in files_used(f"{path}.py", self._files)}
        with self._worker.session(path, files, PATIENCE) as session:
            replies = session.ask(calls)
        whole = plan_for(path, PRACTICE_SEED).exercise if SEALED else load_exercise(path)
        question = next(question for question in whole.questions if question.name == function)
        for reply in replies:
            if "trouble" in reply:
                finding = trouble_finding(question, None, reply, replace(whole, seconds=PATIENCE))
                raise Unheard(finding.says, finding.line[:2] if finding.line else None)
        if session.ended:
            raise Unheard(end_finding(whole, session).says)
        return [reply["value"] for reply in replies]
