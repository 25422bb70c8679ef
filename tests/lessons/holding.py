"""Whether a formula of a lesson holds: every side of it worked out at three points, with what its letters stand for."""

import inspect
import re
from collections.abc import Callable
from dataclasses import dataclass, field
from functools import cache

import numpy as np
import sympy

from tests.lessons.latex import LETTER, UNITS, Formula, letters_of, parsed, statements

POINTS = range(3)
EXACT = 1e-9
COMMON = {
    "π": np.pi,
    "e": np.e,
    "upright_e": np.e,
    "j": 1j,
    "size": np.abs,
    "mean": np.mean,
    "summed": np.sum,
    "conjugate": np.conj,
    "arsinh": np.arcsinh,
    "artanh": np.arctanh,
    **{f"in_{unit}": size for unit, size in UNITS.items()},
}
CYCLE = np.arange(720) * (2 * np.pi / 720)  # an angle over which a mean is taken
SLOPE = {1: 4 / 5, 2: -1 / 5, 3: 4 / 105, 4: -1 / 280}
BEND = {0: -205 / 72 / 2, 1: 8 / 5, 2: -1 / 5, 3: 8 / 315, 4: -1 / 560}


@dataclass(frozen=True)
class At:
    """What holds for one formula only: letters with another meaning, a looser bound, what an expression gives."""

    find: str
    letters: dict = field(default_factory=dict)
    within: float = EXACT
    because: str = ""
    gives: Callable | None = None
    taken: Callable | None = None
    true: Callable | None = None


@dataclass(frozen=True)
class Words:
    """A formula that states nothing to be worked out, and why."""

    find: str
    because: str


@dataclass(frozen=True)
class Page:
    path: str
    letters: dict
    special: tuple

    def of(self, formula: Formula) -> At | Words:
        return next((one for one in self.special if found(one.find, formula)), At(formula.text))


def page(path: str, letters: dict, *special: At | Words) -> Page:
    """A page's letters: three values, one value, or a function of other letters. `special` treats single formulas."""
    return Page(path, letters, special)


def at(find: str, *, within: float = EXACT, because: str = "", gives=None, taken=None, true=None, **letters) -> At:
    """`gives` is what an expression alone comes to, of which may be `taken` its size; `true` says where a relation, or each
    of several, is true."""
    return At(find, letters, within, because, gives, taken, true)


def words(find: str, because: str) -> Words:
    return Words(find, because)


def found(find: str, formula: Formula) -> bool:
    """Whether a piece of LaTeX stands in a formula; between dollars, whether it is all of it."""
    find, text = "".join(find.split()), "".join(formula.text.split())
    return find.strip("$") == text if find.startswith("$") else find in text


class Meaning:
    """The letters at one point."""

    def __init__(self, letters: dict, point: int):
        self.letters, self.point, self.known = letters, point, {}

    def __getitem__(self, name: str):
        if name not in self.known:
            self.known[name] = self._of(name)
        return self.known[name]

    def _of(self, name):
        if name not in self.letters:
            derivative = re.fullmatch(r"d(2?)(\w+)_d(\w+?)\1", name)
            assert derivative and derivative[2] in self.letters, f"nothing says what {name} stands for"
            return self._derivative(derivative[2], derivative[3], twice=bool(derivative[1]))
        what = self.letters[name]
        if isinstance(what, tuple):
            return what[self.point]
        return self.given(what) if inspect.isfunction(what) else what

    def given(self, what: Callable):
        """A function of letters, called with them."""
        return what(*(self[name] for name in inspect.signature(what).parameters))

    def _derivative(self, of: str, by: str, twice: bool):
        middle = self[by]
        step = 0.01 * (abs(middle) or 1.0)

        def value(shift):
            return Meaning(self.letters | {by: middle + shift * step}, self.point)[of]

        if twice:
            return sum(weight * (value(n) + value(-n)) for n, weight in BEND.items()) / step**2
        return sum(weight * (value(n) - value(-n)) for n, weight in SLOPE.items()) / step


def fault(formula: Formula, of: Page, entry: At | None = None) -> str | None:
    """What is wrong with a formula, in one sentence, or None if it holds; `entry` if it is not found by its text."""
    entry = entry or of.of(formula)
    letters = COMMON | of.letters | entry.letters
    try:
        for point in POINTS:
            _hold(formula, entry, Meaning(letters, point))
    except AssertionError as error:
        return f"{of.path}: {formula.text}: {error}"
    return None


def _hold(formula, entry, meaning):
    alone = 0
    for first, *rest in statements(formula.text):
        signs, others = rest[::2], rest[1::2]
        if signs in ([], [r"\to"]):
            assert entry.gives, "an expression alone: say by gives= what it comes to"
            assert not signs or re.fullmatch(LETTER, first), f"{first} is no letter that could become something else"
            given = meaning.given(entry.gives)
            given, alone = (given[alone], alone + 1) if isinstance(given, tuple) else (given, alone)
            got = (entry.taken or np.asarray)(_worked_out([first, *others][-1], meaning)[0])
            assert _apart(got, given) <= entry.within * _size(given), f"it comes to {_shown(got)}, not to {_shown(given)}"
            continue
        true = meaning.given(entry.true) if entry.true else True
        left, terms = _worked_out(first, meaning)
        for n, (sign, side) in enumerate(zip(signs, others, strict=True)):
            right, more = _worked_out(side, meaning)
            assert sign != r"\approx" or entry.because, "an approximation: say by within= and because= how close"
            scale = terms if side == "0" else max(_size(left), _size(right))
            holds = _related(left, sign, right, entry.within * scale)
            expected = true[n] if isinstance(true, tuple) else true
            assert holds == expected, f"left of {sign} {_shown(left)}, right {_shown(right)}"
            left, terms = right, more


def _related(left, sign, right, within) -> bool:
    if sign in ("=", r"\approx", r"\propto"):
        return _apart(left, right) <= within
    low, high = (left, right) if sign in ("<", r"\le") else (right, left)
    return low < high if sign in "<>" else low <= high


def _apart(left, right):
    return np.max(np.abs(left - right))


def _shown(value):
    return f"{np.ravel(value)[0]:.12g}" + (" …" if np.size(value) > 1 else "")


def _size(value):
    return np.max(np.abs(value))


def _worked_out(side: str, meaning: Meaning):
    """The value of one side, and the size of the largest of its terms."""
    names = letters_of(side)
    values = {name: _number(meaning[name]) for name in names}
    function, symbols = _runs(side, frozenset(name for name in names if callable(values[name])))
    with np.errstate(all="ignore"):
        total, *terms = function(*(values[name] for name in symbols))
    assert np.all(np.isfinite(total)), f"{side} comes to {total}"
    return total, max(map(_size, terms))


def _number(value):
    """As numpy's own kind, which divides by zero without an error."""
    return value if callable(value) else (np.asarray(value) * 1.0)[()]


@cache
def _runs(side: str, functions: frozenset[str]):
    expression, names = parsed(side, functions)
    terms = [expression, *sympy.Add.make_args(expression)]
    log = {"log": lambda number, base=np.e: np.log(number) / np.log(base)}
    return sympy.lambdify([sympy.Symbol(symbol) for symbol in names], terms, [log, "numpy"]), tuple(names.values())
