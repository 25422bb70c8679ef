"""A worker that answers from functions of this process, so that a wrong function need not be written out as a file."""

import contextlib

import numpy as np

from checker.judging.plan import call_key
from checker.worker.student import call_symbolic, unwrap
from checker.worker.wire import from_wire, to_wire

ANSWERED = {}  # by function and call: the right functions are asked the same again beside each wrong one


class Answering:
    """Stands in for `Worker`: `functions` maps the name asked for to a callable."""

    def __init__(self, functions):
        self.functions = functions

    @contextlib.contextmanager
    def session(self, exercise, files, seconds, symbolic=False):
        yield self

    ended = None

    def ask(self, calls):
        return [self._once(call) for call in calls]

    def _once(self, call):
        key = self.functions[call["function"]], call_key(call)
        if key not in ANSWERED:
            ANSWERED[key] = self.answer(call)
        return ANSWERED[key]

    def answer(self, call):
        """The reply to a call, worked out anew."""
        function = self.functions[call["function"]]
        try:
            if "symbols" in call:
                answer = call_symbolic(function, call["symbols"], call["at"])
                return answer | ({"value": from_wire(answer["value"])} if "value" in answer else {})
            with np.errstate(all="ignore"):  # as a worker, which lets no warning of a submission's out
                value = function(*map(from_wire, call["arguments"]))
            return {"value": from_wire(to_wire(unwrap(value))), "altered": []}
        except Exception as error:
            return {"trouble": "raised", "error": type(error).__name__, "text": str(error), "file": None, "line": None}
