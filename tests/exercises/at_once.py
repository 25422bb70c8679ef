"""Which wrong versions give a wrong number where the judge asks for one: they need not be run behind walls to be told."""

import contextlib
import resource
import signal
from itertools import chain, zip_longest
from types import ModuleType

from checker.judging.compare import difference
from checker.judging.plans import plan_for
from tests.exercises.answering import Answering

SECONDS = 1.0  # of one wrong version here; what takes longer is left to a worker, which can be stopped
SPARE = 1 << 30  # bytes


class _Stopped(BaseException):
    """Nothing that a version catches."""


@contextlib.contextmanager
def _bounded():
    """A second of the clock and a gigabyte of memory more than now, for what runs inside."""

    def stop(*_):
        raise _Stopped

    with open("/proc/self/statm", encoding="ascii") as pages:
        size = int(pages.read().split()[0]) * resource.getpagesize()
    limits, before = resource.getrlimit(resource.RLIMIT_AS), signal.signal(signal.SIGALRM, stop)
    resource.setrlimit(resource.RLIMIT_AS, (size + SPARE, limits[1]))
    signal.setitimer(signal.ITIMER_REAL, SECONDS)
    try:
        yield
    finally:
        signal.setitimer(signal.ITIMER_REAL, 0)
        signal.signal(signal.SIGALRM, before)
        resource.setrlimit(resource.RLIMIT_AS, limits)


def is_wrong_at_once(path, source, seed):
    """Whether a version of an exercise fails at one of the numbers, published figures or refusals that the judge asks for.

    By the judge's own plan and its own comparison, in this process. False says nothing: the judge may still find it wrong.
    """
    plan = plan_for(path, seed)
    try:
        with _bounded():
            module = ModuleType("version")
            exec(compile(source.replace("from exercises.", "from solutions."), path, "exec"), module.__dict__)
            answering = Answering({planned.question.name: getattr(module, planned.question.name) for planned in plan.questions})
            asked = [
                _asked(planned) for planned in plan.questions if not (planned.question.symbolic or planned.question.measured)
            ]
            in_turn = chain.from_iterable(zip_longest(*asked))  # of each function one, so that the wrong one comes early
            return any(fails(answering.answer(plan.calls[place])) for place, fails in filter(None, in_turn))
    except (_Stopped, MemoryError):
        return False
    except Exception:
        return False  # it does not load: the judge has a sentence for that


def _asked(planned):
    """(place of the call, whether a reply to it is wrong) for all that is asked of a function but its laws."""
    question = planned.question

    def differs(wanted, tolerance):
        return lambda reply: "value" not in reply or difference(reply["value"], wanted, tolerance, question.gives) is not None

    def lets_in(reply):
        return reply.get("error") != "ValueError"

    return [
        *((case.place, differs(case.wanted, question.agrees_within)) for case in (*planned.cases, *planned.stacked)),
        *((case.place, differs(figure.wanted, figure.within)) for figure, case in planned.published),
        *((case.place, lets_in) for _, case in planned.refusals),
    ]
