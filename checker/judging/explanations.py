"""Every sentence about code that gave no answer, in one place. What, where, and what to do; no scolding."""

import signal
from collections.abc import Collection, Sequence
from difflib import get_close_matches

from ..checks.exercise import Exercise, Invariant, Question, Refusal
from ..checks.given import shown
from ..text import display_name, ended, listed
from ..worker.denials import WORDS
from ..worker.wire import ANSWER_ITSELF
from .plan import Case, LawCase, shown_inputs
from .protocols import Inputs, Reply, SessionLike
from .verdict import (
    ENDED_EARLY,
    MISSING,
    NOT_ATTEMPTED,
    NOT_LOADING,
    PASSED,
    RAISED,
    REFUSED,
    SILENT,
    STUB,
    TOO_BIG,
    TOO_SLOW,
    UNFINISHED,
    WRONG,
    WRONG_VALUES,
    Finding,
    Verdict,
)

NOT_HANDED_IN = "The file was not handed in."
FORGED = "The program sent something that is not an answer. Return the value from the function; nothing else is read."
ONLY_ARRAYS = "right for single numbers, not yet for arrays of them"

# trouble → (kind, sentence). {f} is the function, {what}, {error} and {text} come from the student's run.
_TROUBLES = {
    "raised": (RAISED, "{f} stopped with {error}: {text}"),
    "not loaded": (RAISED, "The file stopped, before any function of it was called, with {error}: {text}"),
    "syntax": (RAISED, "The file does not read as Python: {text}"),
    "too complex": (
        TOO_BIG,
        "The file is nested too deeply, or too large, for Python to read: brackets in brackets, sign before sign, or `elif` after "
        "`elif` without end. Write it in shorter pieces.",
    ),
    "recursion": (RAISED, "A function calls itself without end: the innermost call must return by itself."),
    "too deep": (
        RAISED,
        "{f} had Python's functions call one another too deeply: something is nested too deeply, or holds itself.",
    ),
    "undescribed": (RAISED, "{f} stopped with an error, or gave an answer, that cannot be described. Use Python's own kinds."),
    "breakpoint": (REFUSED, "The file stops at breakpoint(), and waits for somebody to type. Take it out."),
    "exit": (ENDED_EARLY, "The file ends Python (sys.exit, exit or quit). Return a value instead."),
    "input": (REFUSED, "The file asks the keyboard with input(). Everything the function needs is in its arguments."),
    "import": (REFUSED, "The file imports {what}, which cannot be had here. {text}"),
    "missing module": (RAISED, "The file imports {what}, which cannot be found."),
    "refused": (REFUSED, "The file tried to {what}. That is not allowed here."),
    "time": (TOO_SLOW, "Still running after {seconds:g} s. Look for a loop that never ends, or for work done over and over."),
    "printed": (TOO_BIG, "The file prints {what}. Take the print out of the loop."),
    "memory": (
        TOO_BIG,
        "The file asks for more memory than there is for it (512 MB). How large an array, list or text was meant?",
    ),
    "unanswered": (ENDED_EARLY, "The run ended before this was answered."),
}

LONGEST = 500  # characters of any text that a child sends; what it sends may be forged
_WITH_A_PATH = {"read", "list", "write", "change"}

# How the member's own function stands where the course's stood in; after "in place of yours, ".
_OWN = {
    MISSING: "which {was} not handed in",
    NOT_LOADING: "which {does} not load",
    STUB: "which {is} still to be written",
    SILENT: "which {does} not give an answer yet",
    WRONG_VALUES: "which {does} not give the right values yet",
    "": "",
}
_SINGULAR = {"was": "was", "is": "is", "does": "does"}
_PLURAL = {"was": "were", "is": "are", "does": "do"}

_POWER = "A power is written ** in Python: x**2, not x^2."
_FORMULA = "The functions of numpy and `math` take numbers; a formula wants sympy's (sympy.sqrt, sympy.cos …)."

# What a text in an error of Python's or numpy's usually comes from.
_ADVICE = {
    "operand type(s) for ^": _POWER,
    "ufunc 'bitwise_xor' not supported": _POWER,
    **{f"of type {kind} which has no callable": _FORMULA for kind in ("Symbol", "Add", "Mul", "Pow")},
    "Cannot convert expression to float": _FORMULA,
    "only 0-dimensional arrays": "The functions of `math` take one number; numpy's (np.sqrt, np.log …) take arrays too.",
    "only length-1 arrays": "The functions of `math` take one number; numpy's (np.sqrt, np.log …) take arrays too.",
    "truth value of an array": "An `if` cannot decide for a whole array; np.where or np.any can.",
    "truth value of Relational": "An `if` cannot decide on a symbol whose value is not known.",
    "be broadcast": "Arrays of different lengths met. To average over moments give each input a last axis for them, "
    "np.asarray(x)[..., None], and take the mean over axis=-1.",
    "object is not callable": "Brackets behind a value call it like a function: is an operator such as * missing before them, or has "
    "an argument the name of the function that is meant?",
    "is not defined": "Is the name spelt as above, and imported?",
}


def trouble_finding(question: Question, case: Case | None, reply: Reply, exercise: Exercise) -> Finding:
    """The finding for a call that gave no value, from the worker's description of why."""
    reply = {field: text[:LONGEST] if isinstance(text, str) else text for field, text in reply.items()}
    what = reply["trouble"]
    place = (reply["file"], reply["line"], "") if reply.get("file") and reply.get("line") else None
    if what == "not written" and is_unwritten(question, reply, exercise):
        return Finding(NOT_ATTEMPTED, question.name, still_a_stub(question.name))
    if what in ("not written", "not lent"):
        return Finding(UNFINISHED, question.name, waits_sentence(question, _waited_for(reply, exercise)))
    if what == "no function":
        return Finding(WRONG, question.name, _no_function(question.name, reply.get("names", [])))
    if what == "signature":
        wanted = ", ".join(question.given)
        return Finding(
            WRONG, question.name, f"{question.name} takes ({reply.get('what', '')}); it will be called with ({wanted})."
        )
    if what == "refused":
        reply = reply | {"what": _attempt(reply)}
    kind, sentence = _TROUBLES.get(what, _TROUBLES["raised"])
    text = str(reply.get("text", "")).splitlines()[:1]
    says = sentence.format(
        f=question.name,
        what=reply.get("what") or "something",
        error=reply.get("error", "an error"),
        text=text[0] if text else "",
        seconds=exercise.seconds,
    )
    quoted = text[0] if text and "{text}" in sentence else ""
    says = " ".join([ended(says), *(advice for fragment, advice in _ADVICE.items() if fragment in quoted)])
    about_inputs = kind == RAISED and what == "raised" and not question.symbolic
    return Finding(kind, question.name, says, case.shown if about_inputs and case else (), line=place)


def still_a_stub(function: str) -> str:
    return f"{function} is still the stub: it raises NotImplementedError."


def is_unwritten(question: Question, reply: Reply, exercise: Exercise) -> bool:
    """Whether it is the function asked for that is still the stub, and not one that it calls."""
    here = reply.get("file") in (None, f"{exercise.path}.py")
    return here and reply.get("what") in (None, "", question.name)


def _waited_for(reply: Reply, exercise: Exercise) -> str:
    """The function that is waited for, and of which exercise unless it is one of the same."""
    path, _, function = str(reply.get("what", "")).rpartition(".")
    path = path or str(reply.get("file") or "").removesuffix(".py")
    return name_of_earlier(path if path != exercise.path else "", function)


def name_of_earlier(path: str, function: str) -> str:
    """A function of an earlier exercise in words: "drive of triode_current", or one name where both are the same."""
    exercise = path.rpartition("/")[2]
    return (
        f"{function} of {exercise}"
        if function and exercise and function != exercise
        else function or exercise or "what it uses"
    )


def lent_sentences(verdict: Verdict, whose: str = "yours") -> list[str]:
    """What the verdict owes to the course's own functions: sentences, none if it owes nothing. `whose` they stand in for."""
    begun = "Right, with" if verdict.kind == PASSED else "Judged with"
    alike: dict[tuple[str, str], list[str]] = {}
    for one in verdict.lent:
        alike.setdefault((one.exercise, one.own), []).append(one.function)
    return [
        f"{begun} the course's own {_lent_of(path, names)} in place of {whose}{_standing(own, len(names) + (names == ['']))}."
        for (path, own), names in alike.items()
    ]


def _lent_of(path: str, names: Sequence[str]) -> str:
    exercise = path.rpartition("/")[2]
    if names == [""]:
        return f"constants of {exercise}"
    if len(names) == 1:
        return name_of_earlier(path, names[0])
    return f"{listed(names)} of {exercise}"


def _standing(own: str, count: int) -> str:
    return ", " + _OWN[own].format(**(_PLURAL if count > 1 else _SINGULAR)) if _OWN.get(own) else ""


def waits_sentence(question: Question, other: str) -> str:
    return f"{question.name} cannot be judged until {other} is right."


def ends_the_batch(reply: Reply) -> bool:
    """Whether it tells why other answers may be missing: time was up, or memory, too much was printed, an earlier function is not there."""
    return (
        reply.get("trouble") == "not lent"
        or "trouble" in reply
        and _TROUBLES.get(reply["trouble"], _TROUBLES["raised"])[0] in (TOO_SLOW, TOO_BIG)
    )


def _attempt(reply: Reply) -> str:
    kind, path = reply.get("what"), display_name(str(reply.get("text", "")))
    words = WORDS.get(str(kind), WORDS["other"])
    return f"{words} ({path})" if kind in _WITH_A_PATH and reply.get("text") and len(path) < 60 else words


def _no_function(wanted: str, names: list) -> str:
    near = get_close_matches(wanted, [name[:LONGEST] for name in names if isinstance(name, str)], n=1, cutoff=0.5)
    if near:
        return f"The file has no function {wanted}. It has {near[0]}: is that the one, under another name?"
    return f"The file has no function {wanted}. Keep the name that the stub gives it."


def altered_sentence(question: Question, places: Collection[int]) -> str:
    if ANSWER_ITSELF in places:
        return (
            f"{question.name} hands back one and the same array each time: a second call writes over the first answer. "
            "Make a new one."
        )
    changed = [name for place, name in enumerate(question.given) if place in places] or ["or list"]
    if len(changed) > 1:
        return f"{question.name} changes the arrays {listed(changed)} that it was given. Work on copies: the caller still needs them."
    return f"{question.name} changes the array {changed[0]} that it was given. Work on a copy: the caller still needs it."


def not_refused_sentence(question: Question, refusal: Refusal, reply: Reply) -> str:
    instead = "it gives no answer" if "trouble" in reply else "it returns a value"
    if reply.get("trouble") == "raised" and reply.get("error"):
        instead = f"it raises {reply['error']}"
    return f"{question.name} should raise ValueError for {refusal.what}; {instead}."


def measured_sentence(failed: Sequence[str]) -> str:
    return f"What was measured is not all as it should be: {', '.join(failed)}."


def not_judged_sentence(fault: str) -> str:
    return (
        f"Not judged: a fault of the checker's ({fault}), not of this file. It costs nothing: the next run judges it again. "
        "Tell whoever looks after the checker."
    )


def law_broken_sentence(law: Invariant) -> str:
    return ended(f"This should hold, and does not: {law.says}")


def inputs_of_law(question: Question, law_case: LawCase, asked: Sequence[Inputs]) -> tuple[tuple[str, str], ...]:
    """The inputs for which a law does not hold, as (name, text) pairs: those it was tried with, or the one set it asked instead.

    Some laws ask what is not drawn, at a step of a series say. Of several such, none is known to be the one at fault.
    """
    different = {repr(inputs): inputs for inputs in asked}
    if repr(law_case.inputs) in different or not different:
        return law_case.shown
    if len(different) > 1:
        return ()
    [inputs] = different.values()
    return tuple(zip(question.given, map(shown, inputs), strict=False)) if question.sealed else shown_inputs(question, inputs)


def law_not_tried_sentence(law: Invariant, other: str) -> str:
    return ended(f"This cannot be judged until {other} is right: {law.says}")


def _signals(*names: str) -> set[int]:
    """The signals of these names that this system has; Windows has few."""
    return {getattr(signal, name) for name in names if hasattr(signal, name)}


_OUT_OF_TIME = _signals("SIGXCPU")
_PAST_PYTHON = _signals("SIGSEGV", "SIGBUS", "SIGABRT", "SIGSYS", "SIGILL")


def end_finding(exercise: Exercise, session: SessionLike) -> Finding:
    """The finding for a child that went away, or had to be ended, in the middle of a batch."""
    function, why = exercise.questions[0].name, session.ended.why if session.ended else ""
    if why == "slow":
        return Finding(
            TOO_SLOW,
            function,
            f"Still running after {exercise.seconds:g} s, and would not stop. Look for a loop that never ends.",
        )
    if why == "malformed":
        return Finding(REFUSED, function, FORGED)
    if session.signal in _OUT_OF_TIME:
        return Finding(
            TOO_SLOW, function, "It used up all the processor time there is for it. Look for a loop that never ends."
        )
    if session.signal in _PAST_PYTHON:
        return Finding(
            REFUSED,
            function,
            f"Python itself broke off ({signal.Signals(session.signal).name}): the file goes past it to the machine.",
        )
    return Finding(
        ENDED_EARLY, function, "Python ended before the function had answered. Return a value; do not end the program."
    )
