"""The third hint speaks of the stub's arguments by their names: a letter that it uses otherwise, it has first said what it is."""

import ast
import inspect
import re
from functools import cache

import pytest

from checker.course import PATHS, ROOT, load_exercise

LETTER = re.compile(r"(?<![\w.'’])(?:[A-Za-zΑ-Ωα-ω][\d₀-₉]*|[A-Z][a-z]\d?|gm|ra|rp)(?![\w'’])")
SET = re.compile(r"(?<![\w.])((?:\w+, )*\w+) (?:[+−-]?=|in) |lambda (\w+):|for (\w+) in")
WORDS = {"a", "A", "I", *"As At By If In It No Of On Or So To".split()}
CONSTANTS = {"π", "j", "e", "AWG", "SWG", "Q", "V", "Hz"}  # Q is a word of the lessons'
PRODUCT = re.compile(r"(?<![\w.])\d*π(?=[A-Za-z])|(?<![\w.])\d+(?!e[-−\d]|j|π|\d|\.)(?=[A-Za-zΑ-Ω])")


@cache
def given_in_the_stub(path):
    """Arguments, functions and constants: all the names that somebody who has the stub before them knows."""
    tree = ast.parse((ROOT / f"exercises/{path}.py").read_text("utf-8"))
    return {
        name
        for node in ast.walk(tree)
        for name in (
            getattr(node, "arg", None),
            getattr(node, "name", None),
            getattr(node, "asname", None),
            node.id if isinstance(node, ast.Name) else None,
        )
        if isinstance(name, str)
    }


def unexplained(hint, known):
    """Letters in a hint that it does not explain, and products written without a sign between."""
    text = re.sub(r"(?<!\w)[rf]?'[^']*'|r\.m\.s\.", " ", hint)
    defined = {name for found in SET.finditer(text) for group in found.groups() if group for name in group.split(", ")}
    letters = {found.group() for found in LETTER.finditer(text)}
    return sorted(letters - defined - known - WORDS - CONSTANTS) + sorted(found.group() for found in PRODUCT.finditer(text))


@pytest.mark.parametrize("path", PATHS)
def test_the_third_hint_uses_the_names_of_the_stub(path):
    exercise = load_exercise(path)
    arguments = {name for question in exercise.questions for name in inspect.signature(question.asks).parameters}
    hint = exercise.hints[2]
    assert unexplained(hint, given_in_the_stub(path)) == []
    assert arguments & set(re.findall(r"\w+", hint)), "it names none of the arguments"


def test_a_letter_that_is_not_explained_is_found():
    assert unexplained("f = 1 / (2π sqrt(L C)); 2πr", {"inductance"}) == ["C", "L", "2π"]
    assert unexplained("With L = inductance: 1 / (2 * np.pi * np.sqrt(L * capacitance)), for n in range(3)", set()) == []
