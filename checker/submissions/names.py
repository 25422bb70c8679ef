"""Members' names out of the names that learning platforms give to folders and files, by a pattern that is given and never by a guess."""

import re
from functools import cache

from ..faults import Problem
from ..text import display_name

_FIELD = re.compile(r"\{([^{}]*)\}")
_STANDS_FOR = {
    "name": r"(?P<name>.+?)",
    "given": r"(?P<given>.+?)",
    "family": r"(?P<family>.+?)",
    "number": r"\d+",
    "any": r".*?",
}
_OFTEN = {"number"}
LONGEST = 200  # characters of a pattern
PLAIN_FORM = "such as {name}_{number}_submission or {family}, {given} {any}"


class WrongPattern(Problem):
    """A pattern for names that cannot be used; the text says why and what to write."""


def member_name(raw: str, pattern: str) -> str | None:
    """The member's name within the name of a folder or file, by a pattern.

    Parameters
    ----------
    raw : str
        The name as it stands on the disk, without the ending of an archive: "samphire nell_40172_submission".
    pattern : str
        What such names look like. In braces stand ``{name}``, or ``{given}`` and ``{family}``, once each; ``{number}``, some
        digits, as often as need be; ``{any}``, anything or nothing, at most once. All else stands for itself; capitals do not matter.

    Returns
    -------
    str or None
        The name, with spaces for underscores: "samphire nell" by ``{name}_{number}_submission``, given name before family name
        where they are told apart. None where the raw name does not fit.

    Raises
    ------
    WrongPattern
        In one sentence, if the pattern can fit nothing, or not in one way alone.
    """
    match = _compiled(pattern).fullmatch(raw)
    if match is None:
        return None
    words = " ".join(match[field] for field in ("given", "family", "name") if field in match.re.groupindex)
    return " ".join(words.replace("_", " ").split()) or None


@cache
def _compiled(pattern: str) -> re.Pattern[str]:
    wrong_in_it = _fault_of(pattern)
    if wrong_in_it:
        raise WrongPattern(f"The pattern for names, {display_name(pattern)!r}, {wrong_in_it}: write one {PLAIN_FORM}.")
    pieces = _FIELD.split(pattern)  # text, field, text, field, … text
    made = [_STANDS_FOR[piece] if place % 2 else re.escape(piece) for place, piece in enumerate(pieces)]
    return re.compile("".join(made), re.IGNORECASE | re.DOTALL)


def _fault_of(pattern: str) -> str:
    """What is wrong with a pattern, as a sentence's end; nothing if it is right."""
    texts, fields = _FIELD.split(pattern)[::2], _FIELD.findall(pattern)
    unknown = next((field for field in fields if field not in _STANDS_FOR), None)
    twice = next((field for field in fields if fields.count(field) > 1 and field not in _OFTEN), None)
    if len(pattern) > LONGEST:
        return f"is longer than {LONGEST} characters"
    if any(brace in text for text in texts for brace in "{}"):
        return "has a brace without its other half"
    if unknown is not None:
        return f"has {{{display_name(unknown)}}}, which stands for nothing"
    if twice:
        return f"has {{{twice}}} more than once"
    if set(fields) & {"name", "given", "family"} not in ({"name"}, {"given", "family"}):
        return "must have {name}, or {given} and {family}"
    if not all(texts[1:-1]):
        return "has two fields with nothing between them, so that nobody can tell where the one ends"
    return ""
