"""Right answers written in other ways than the reference, made from it: other algebra, other calls, loops, other containers.

And answers spoiled as a whole, where mutants.py spoils one place.
"""
import ast
from collections.abc import Iterator


def other_ways(source: str, asked: dict[str, bool]) -> Iterator[tuple[str, str]]:
    """(what is done differently, source) for each way in which the source can be written differently.

    `asked` maps the names of the functions asked for to whether they take arrays.
    """
    plain = ast.unparse(ast.parse(source))
    for what, rewrite in _ALGEBRA.items():
        rewritten = ast.unparse(ast.fix_missing_locations(rewrite().visit(ast.parse(source))))
        if rewritten != plain:
            yield what, rewritten
    yield from _wrapped(source, asked, _AROUND)


FLOAT32 = 1e-7  # what a number of half the length is good for


def spoiled_ways(source: str, asked: dict[str, bool], finest: float) -> Iterator[tuple[str, str]]:
    """(what is spoiled, source) for each way in which all answers can be spoiled; `finest` is the tightest relative tolerance."""
    for what, spoiled in _wrapped(source, asked, _SPOILED):
        if what != "half as long numbers" or finest < FLOAT32:
            yield what, spoiled


def _wrapped(source, asked, wrappers):
    for what, (wrapper, arrays_alone) in wrappers.items():
        named = [name for name, takes_arrays in asked.items() if takes_arrays or not arrays_alone]
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


_ALGEBRA = {"products turned round": _Turned, "quotients as products": _Quotients, "differences as sums": _Differences,
            "squares as products, roots as powers": _Squares, "other names": _Names}

_AROUND = {
    "one number after another, in a loop": ("""
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
""", True),
    "another container": ("""
def around(function):
    def contained(*given):
        answer = function(*given)
        return list(answer) if isinstance(answer, tuple) else np.asarray(answer) if isinstance(answer, (int, float, complex)) else answer
    return contained
""", False),
    "numpy's numbers for Python's": ("""
def around(function):
    def widened(*given):
        return function(*(np.float64(one) if isinstance(one, float) else one for one in given))
    return widened
""", False),
    "through a function that does the work": ("""
def around(function):
    def worked_out(given):
        answer = function(*given)
        if not isinstance(answer, (tuple, list)):
            return answer
        return (*answer,)
    return lambda *given: worked_out([*given])
""", False),
}

_EACH = """
def each(change, answer):
    if isinstance(answer, (tuple, list)):
        return tuple(each(change, part) for part in answer)
    return change(answer) if np.asarray(answer).dtype.kind in "fc" else answer
"""
_SPOILED = {
    "half as long numbers": (_EACH + "around = lambda function: lambda *given: each(lambda x: np.asarray(x).astype('c8')[()] if np.iscomplexobj(x) else np.float32(x), "
                             "function(*given))", False),
    "whole numbers": (_EACH + "around = lambda function: lambda *given: each(lambda x: x if np.iscomplexobj(x) else x // 1, function(*given))", False),
    "a unit a thousand times too small": ("""
def around(function):
    return lambda *given: function(*(one * 1e3 if isinstance(one, (float, np.ndarray)) else one for one in given))
""", False),
    "single numbers only": ("""
def around(function):
    def single(*given):
        return function(*(float(one) if isinstance(one, np.ndarray) else one for one in given))
    return single
""", True),
    "what was given is written over": ("""
def around(function):
    def writing(*given):
        answer = function(*given)
        for one in given:
            if isinstance(one, np.ndarray) and one.dtype == float:
                one[...] = 0
        return answer
    return writing
""", True),
}
