"""Right answers written in other ways than the reference, made from it: other algebra, other calls, loops, other containers.

And answers spoiled as a whole, where mutants.py spoils one place.
"""

import ast
from collections.abc import Iterator

import numpy as np

from checker.judging.inputs import draw, edge_inputs, is_whole, whole_inputs


def other_ways(source: str, asked: dict[str, set[str]]) -> Iterator[tuple[str, str]]:
    """(what is done differently, source) for each way in which the source can be written differently.

    `asked` maps the names of the functions asked for to a set in which "arrays" says that all they are given may be arrays.
    """
    plain = ast.unparse(ast.parse(source))
    for what, rewrite in _ALGEBRA.items():
        rewritten = ast.unparse(ast.fix_missing_locations(rewrite().visit(ast.parse(source))))
        if rewritten != plain:
            yield what, rewritten
    yield from _wrapped(source, asked, _AROUND)


FLOAT32 = 2e-8  # of a number is lost, or more, as a rule, when it is written at half the length


def spoiled_ways(source: str, asked: dict[str, set[str]]) -> Iterator[tuple[str, str]]:
    """(what is spoiled, source) for each way in which all answers can be spoiled; `asked` as `wanted_of` gives it."""
    yield from _wrapped(source, asked, _SPOILED)


def wanted_of(question) -> set[str]:
    """What a question's function takes and gives, as far as it matters to the ways of spoiling it."""
    drawn = draw(question, 5, seed=1)
    plain = [is_whole(question.asks(*inputs)) for inputs in (*drawn[:3], *edge_inputs(question, drawn))]
    whole = whole_inputs(question, drawn)[:1]
    answers = [part for inputs in drawn for part in _parts(question.asks(*inputs))]
    numbers = [np.asarray(part) for part in answers if np.asarray(part).dtype.kind in "fc"]
    real = [part for part in numbers if not np.iscomplexobj(part)]
    return {
        what
        for what, true in {
            "arrays": question.arrays,
            "arrays of real numbers": question.arrays and real,
            "sequences": question.arrays or any(isinstance(one, (np.ndarray, list, tuple)) for one in drawn[0]),
            "physical": any(isinstance(one, (float, np.ndarray)) for one in drawn[0]),
            "whole answers": question.arrays and any(plain) and not all(plain),
            "whole inputs": whole and real and not is_whole(question.asks(*whole[0])),
            "fractions": any(np.any(part % 1) for part in real),
            "fine numbers": any(np.any(np.float32(part) != part) for part in real)
            and not all(question.agrees_within.allows(part * (1 + FLOAT32), part) for part in numbers),
        }.items()
        if true
    }


def _parts(answer):
    return answer if isinstance(answer, tuple) else (answer,)


def _wrapped(source, asked, wrappers):
    for what, (wrapper, need) in wrappers.items():
        named = [name for name, has in asked.items() if not need or need in has]
        if named:
            yield what, "\n".join([source, "import numpy as np", wrapper, *(f"{name} = around({name})" for name in named)])


class _Turned(ast.NodeTransformer):
    def visit_BinOp(self, node):
        self.generic_visit(node)
        if isinstance(node.op, ast.Mult):
            node.left, node.right = node.right, node.left
        return node


class _Quotients(ast.NodeTransformer):
    def visit_BinOp(self, node):
        self.generic_visit(node)
        if isinstance(node.op, ast.Div):
            return ast.BinOp(node.left, ast.Mult(), ast.BinOp(ast.Constant(1), ast.Div(), node.right))
        return node


class _Differences(ast.NodeTransformer):
    def visit_BinOp(self, node):
        self.generic_visit(node)
        if isinstance(node.op, ast.Sub):
            return ast.BinOp(ast.UnaryOp(ast.USub(), node.right), ast.Add(), node.left)
        return node


class _Squares(ast.NodeTransformer):
    def visit_BinOp(self, node):
        self.generic_visit(node)
        if isinstance(node.op, ast.Pow) and isinstance(node.right, ast.Constant) and node.right.value == 2:
            return ast.BinOp(node.left, ast.Mult(), node.left)
        return node

    def visit_Call(self, node):
        self.generic_visit(node)
        if isinstance(node.func, ast.Attribute) and node.func.attr == "sqrt" and ast.unparse(node.func.value) == "np":
            return ast.Call(ast.Attribute(node.func.value, "power", ast.Load()), [*node.args, ast.Constant(0.5)], [])
        return node


class _Names(ast.NodeTransformer):
    def visit_FunctionDef(self, node):
        made = {inner.id for inner in ast.walk(node) if isinstance(inner, ast.Name) and isinstance(inner.ctx, ast.Store)}
        given = {inner.arg for inner in ast.walk(node) if isinstance(inner, ast.arg)}
        for inner in ast.walk(node):
            if isinstance(inner, ast.Name) and inner.id in made - given:
                inner.id = f"my_{inner.id}"
        return node


_ALGEBRA = {
    "products turned round": _Turned,
    "quotients as products": _Quotients,
    "differences as sums": _Differences,
    "squares as products, roots as powers": _Squares,
    "other names": _Names,
}

_AROUND = {
    "one number after another, in a loop": (
        """
def around(function):
    def looped(*given):
        if not any(isinstance(one, np.ndarray) and one.ndim for one in given):
            return function(*given)
        answers = [function(*each) for each in zip(*(one.ravel() for one in np.broadcast_arrays(*given)))]
        shape = np.broadcast(*given).shape
        if isinstance(answers[0], tuple):
            return tuple(np.array(column).reshape(shape) for column in zip(*answers))
        return np.array(answers).reshape(shape)
    return looped
""",
        "arrays",
    ),
    "another container": (
        """
def around(function):
    def contained(*given):
        answer = function(*given)
        return list(answer) if isinstance(answer, tuple) else np.asarray(answer) if isinstance(answer, (int, float, complex)) else answer
    return contained
""",
        None,
    ),
    "numpy's numbers for Python's": (
        """
def around(function):
    def widened(*given):
        return function(*(np.float64(one) if isinstance(one, float) else one for one in given))
    return widened
""",
        None,
    ),
    "through a function that does the work": (
        """
def around(function):
    def worked_out(given):
        answer = function(*given)
        if not isinstance(answer, (tuple, list)):
            return answer
        return (*answer,)
    return lambda *given: worked_out([*given])
""",
        None,
    ),
}

_EACH = """
def each(change, answer):
    if isinstance(answer, (tuple, list)):
        return tuple(each(change, part) for part in answer)
    return change(answer) if np.asarray(answer).dtype.kind in "fc" else answer
"""
_SPOILED = {
    "half as long numbers": (
        _EACH
        + "around = lambda function: lambda *given: each(lambda x: np.asarray(x).astype('c8')[()] if np.iscomplexobj(x) else np.float32(x), "
        "function(*given))",
        "fine numbers",
    ),
    "whole numbers": (
        _EACH
        + "around = lambda function: lambda *given: each(lambda x: x if np.iscomplexobj(x) else x // 1, function(*given))",
        "fractions",
    ),
    "a unit a thousand times too small": (
        """
def around(function):
    return lambda *given: function(*(one * 1e3 if isinstance(one, (float, np.ndarray)) else one for one in given))
""",
        "physical",
    ),
    "single numbers only": (
        """
def around(function):
    def single(*given):
        return function(*(float(one) if isinstance(one, np.ndarray) else one for one in given))
    return single
""",
        "arrays",
    ),
    "what was given is written over": (
        """
def around(function):
    def writing(*given):
        answer = function(*given)
        for one in given:
            if isinstance(one, np.ndarray) and one.dtype.kind in 'fc':
                one[...] = 0
            elif isinstance(one, list):
                one.reverse()
        return answer
    return writing
""",
        "sequences",
    ),
    "the answer stands where the input stood": (
        """
def around(function):
    def fits(part, one):
        return isinstance(one, np.ndarray) and one.shape == np.shape(part) and np.can_cast(np.asarray(part).dtype, one.dtype)

    def in_place(*given):
        answer = function(*given)
        parts = list(answer) if isinstance(answer, tuple) else [answer]
        for place, part in enumerate(parts):
            for one in given:
                if fits(part, one):
                    one[...] = part
                    parts[place] = one
        return tuple(parts) if isinstance(answer, tuple) else parts[0]
    return in_place
""",
        "arrays of real numbers",
    ),
    "the first answer says what type all have": (
        """
def around(function):
    def whole(answer):
        if isinstance(answer, tuple):
            return tuple(map(whole, answer))
        return int(answer) if not isinstance(answer, complex) and np.isfinite(answer) and answer == int(answer) else answer

    def vectorised(*given):
        if not any(isinstance(one, np.ndarray) and one.ndim for one in given):
            return function(*given)
        alone = {place for place, one in enumerate(given) if not isinstance(one, np.ndarray)}
        return np.vectorize(lambda *each: whole(function(*each)), excluded=alone)(*given)
    return vectorised
""",
        "whole answers",
    ),
    "the inputs say what type the answers have": (
        _EACH
        + """
def around(function):
    def kept(*given):
        answer = function(*given)
        if not any(isinstance(one, (int, np.ndarray)) and np.asarray(one).dtype.kind == "i" for one in given):
            return answer
        return each(lambda x: x if np.iscomplexobj(x) else np.asarray(x).astype(int)[()], answer)
    return kept
""",
        "whole inputs",
    ),
    "one array for all answers": (
        """
KEPT = {}
def around(function):
    def kept(answer, place=0):
        if isinstance(answer, tuple):
            return tuple(kept(part, at) for at, part in enumerate(answer))
        if not isinstance(answer, np.ndarray):
            return answer
        array = KEPT.setdefault((answer.shape, answer.dtype, place), np.empty_like(answer))
        array[...] = answer
        return array
    return lambda *given: kept(function(*given))
""",
        "arrays",
    ),
}

# What is spoiled for each function by itself, with its kind.
KINDS = {
    "half as long numbers": "float32",
    "whole numbers": "integer division",
    "single numbers only": "not vectorised",
    "what was given is written over": "mutated inputs",
    "the answer stands where the input stood": "mutated inputs",
    "one array for all answers": "aliasing",
    "the first answer says what type all have": "type",
    "the inputs say what type the answers have": "type",
}
