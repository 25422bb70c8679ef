"""Wrong versions of a reference, made by changing one thing at a time in its syntax tree.

Those that are wrong only at an end of a range are in near_misses.py; answers spoiled as a whole are in rewritten.py.
"""

import ast
import copy
from collections import Counter
from collections.abc import Callable, Iterator
from typing import NamedTuple

_OTHER_OPERATOR = {
    ast.Add: ast.Sub,
    ast.Sub: ast.Add,
    ast.Mult: ast.Div,
    ast.Div: ast.Mult,
    ast.Pow: ast.Mult,
    ast.FloorDiv: ast.Div,
    ast.Mod: ast.Mult,
}
_OTHER_COMPARISON = {
    ast.Lt: ast.GtE,
    ast.LtE: ast.Gt,
    ast.Gt: ast.LtE,
    ast.GtE: ast.Lt,
    ast.Eq: ast.NotEq,
    ast.NotEq: ast.Eq,
    ast.In: ast.NotIn,
    ast.NotIn: ast.In,
    ast.Is: ast.IsNot,
    ast.IsNot: ast.Is,
}
_OTHER_FUNCTION = {
    "sqrt": "square",
    "cos": "sin",
    "sin": "cos",
    "exp": "expm1",
    "expm1": "exp",
    "log": "log10",
    "log10": "log",
    "log1p": "log",
    "tanh": "sinh",
    "ceil": "floor",
    "floor": "ceil",
    "round": "floor",
    "arcsinh": "arctan",
    "tan": "sin",
    "arctan": "tanh",
    "hypot": "add",
    "real": "imag",
    "imag": "real",
    "mean": "sum",
    "abs": "real",
}
_OTHER_CHOICE = {
    "min": "max",
    "max": "min",
    "minimum": "maximum",
    "maximum": "minimum",
    "any": "all",
    "all": "any",
    "argmin": "argmax",
    "argmax": "argmin",
}
_EITHER_WAY = {
    "hypot",
    "minimum",
    "maximum",
    "min",
    "max",
}  # whichever argument comes first; so it is with the first two of clip
_OF_ANGLES = {"cos", "sin", "tan"}
_BETWEEN_ANGLES = {"radians", "degrees", "deg2rad", "rad2deg"}
_MATHS = {"sqrt", "exp", "expm1", "log", "log10", "log1p", "sin", "cos", "tan", "sinh", "cosh", "tanh", "hypot"}


class Mutant(NamedTuple):
    """One change: its kind, what became what and where, and the whole source with it."""

    kind: str
    what: str
    source: str


def mutants(source: str, asked: dict[str, bool], changes: Callable | None = None) -> Iterator[Mutant]:
    """All changes that the functions asked for can feel; `asked` maps their names to whether they take arrays.

    `changes(node, vectorised)` gives the ways to spoil a node: (kind, change), and what it does where that cannot be seen. A
    change alters the twin of the node that it is given, or returns what to put in its place.
    """
    changes = changes or _changes
    tree, seen = ast.parse(source), Counter()
    felt, plain = _felt(tree, asked), [ast.unparse(top) for top in tree.body]
    stands_in = _statements(tree)
    vectorised = {id(node) for top in tree.body if asked.get(getattr(top, "name", "")) for node in ast.walk(top)}
    tops = {id(node): at for at, top in enumerate(tree.body) for node in ast.walk(top)}
    for node in ast.walk(tree):
        if id(node) not in felt:
            continue
        for kind, change, *says in changes(node, id(node) in vectorised):
            twins = {}
            changed = copy.deepcopy(tree.body[tops[id(node)]], twins)
            twin = twins[id(node)]
            before, replaced = _text(twin), change(twin)
            became = says[0] if says else f"{before} to {_text(replaced or twin)}"
            what = f"{kind}: {became} in: {_text(stands_in[id(node)])}"
            if replaced:
                changed = _Replaced(twin, replaced).visit(changed)
            text = ast.unparse(changed)
            seen[what] += 1
            if text != plain[tops[id(node)]]:
                whole = "\n".join([*plain[: tops[id(node)]], text, *plain[tops[id(node)] + 1 :]])
                yield Mutant(kind, what + (f" ({seen[what]})" if seen[what] > 1 else ""), whole)


def _statements(tree):
    """For each node the statement that it stands in; which line that is on depends on nothing but the formatter."""
    found = {}
    for statement in ast.walk(tree):  # outer ones first
        if isinstance(statement, ast.stmt):
            found.update((id(node), statement) for node in ast.walk(statement))
    return found


def _text(node):
    """What a person would point at: of a block, its first line."""
    return ast.unparse(node).strip().split("\n")[0]


def _felt(tree, asked):
    """The nodes that an answer can depend on: not documentation, not annotations, not the words of a refusal."""
    definitions = {name: top for top in tree.body for name in _defined(top)}
    wanted, reached = list(asked), set()
    while wanted:
        name = wanted.pop()
        if name in definitions and name not in reached:
            reached.add(name)
            wanted += [inner.id for inner in ast.walk(definitions[name]) if isinstance(inner, ast.Name)]
    felt = {id(node) for name in reached for node in ast.walk(definitions[name])}
    for node in ast.walk(tree):
        silent = [node.exc] if isinstance(node, ast.Raise) else []
        silent += [getattr(node, "annotation", None), getattr(node, "returns", None)]
        felt -= {id(inner) for part in silent if part for inner in ast.walk(part)}
    return felt


def _defined(top):
    if isinstance(top, (ast.FunctionDef, ast.ClassDef)):
        return [top.name]
    return [inner.id for inner in ast.walk(top) if isinstance(inner, ast.Name) and isinstance(inner.ctx, ast.Store)]


class _Replaced(ast.NodeTransformer):
    def __init__(self, old, new):
        self._old, self._new = old, new

    def visit(self, node):
        return self._new if node is self._old else super().generic_visit(node)


def parsed(text, **parts):
    """An expression, with nodes for the names in it."""

    class Filled(ast.NodeTransformer):
        def visit_Name(self, node):
            return parts.get(node.id, node)

    return Filled().visit(ast.parse(text, mode="eval").body)


def _set(field, value):
    return lambda twin: setattr(twin, field, value)


def _changes(node, vectorised):
    of_its_type = _BY_TYPE.get(type(node))
    if of_its_type:
        yield from of_its_type(node, vectorised)


def _of_operation(node, vectorised):
    if type(node.op) in _OTHER_OPERATOR:
        yield "operator", _set("op", _OTHER_OPERATOR[type(node.op)]())
    if isinstance(node.op, ast.Div):
        yield "integer division", _set("op", ast.FloorDiv())
    if isinstance(node, ast.BinOp) and isinstance(node.op, (ast.Sub, ast.Div, ast.Pow)):
        yield "swapped", lambda twin: ast.BinOp(twin.right, twin.op, twin.left)


def _of_sign(node, vectorised):
    yield "operator", lambda twin: twin.operand


def _of_and_or(node, vectorised):
    yield "wrong branch", _set("op", ast.Or() if isinstance(node.op, ast.And) else ast.And())


def _of_comparison(node, vectorised):
    if type(node.ops[0]) in _OTHER_COMPARISON:
        yield "comparison", lambda twin: twin.ops.__setitem__(0, _OTHER_COMPARISON[type(twin.ops[0])]())


def _of_constant(node, vectorised):
    if type(node.value) in (int, float):
        yield "constant", _set("value", node.value + 1 if abs(node.value) < 100 else node.value * 2)
    if type(node.value) is bool:
        yield "constant", _set("value", not node.value)


def _of_attribute(node, vectorised):
    for kind, others in (("function", _OTHER_FUNCTION), ("wrong branch", _OTHER_CHOICE)):
        if node.attr in others:
            yield kind, _set("attr", others[node.attr])
    if node.attr == "pi":
        yield "unit", lambda twin: ast.Constant(0.5)  # 2π left out
    if vectorised and node.attr in _MATHS:
        yield "not vectorised", lambda twin: parsed(f"__import__('math').{twin.attr}")


def _of_call(node, vectorised):
    name = getattr(node.func, "attr", getattr(node.func, "id", ""))
    for at in range(1 if name == "clip" else 0, 0 if name in _EITHER_WAY else len(node.args) - 1):
        yield "swapped", lambda twin, at=at: twin.args.__setitem__(slice(at, at + 2), twin.args[at : at + 2][::-1])
    if name in _OTHER_CHOICE and isinstance(node.func, ast.Name):
        yield "wrong branch", lambda twin: setattr(twin.func, "id", _OTHER_CHOICE[twin.func.id])
    if name in _OF_ANGLES:
        yield "unit", lambda twin: twin.args.__setitem__(0, parsed("x * 57.29577951308232", x=twin.args[0]))
    if name in _BETWEEN_ANGLES:
        yield "unit", lambda twin: twin.args[0]
    if name == "where" and len(node.args) == 3:
        yield "wrong branch", lambda twin: twin.args[1]
        yield "wrong branch", lambda twin: twin.args[2]
        if vectorised:
            yield "not vectorised", lambda twin: ast.IfExp(*twin.args)
    if name == "select":
        yield "wrong branch", lambda twin: setattr(twin.args[1], "elts", twin.args[1].elts[::-1])
        yield "wrong branch", lambda twin: setattr(twin.args[0], "elts", twin.args[0].elts[::-1])
    if name == "clip":
        yield "wrong branch", lambda twin: twin.args[0]
    if name == "range":
        last = min(1, len(node.args) - 1)
        for other in ("n + 1", "n - 1"):
            yield "off by one", lambda twin, other=other: twin.args.__setitem__(last, parsed(other, n=twin.args[last]))


def _of_subscript(node, vectorised):
    if isinstance(node.slice, ast.Slice):
        yield "off by one", lambda twin: setattr(twin.slice, "lower", parsed("n + 1", n=twin.slice.lower or ast.Constant(0)))
        yield "off by one", lambda twin: setattr(twin.slice, "upper", parsed("n - 1", n=twin.slice.upper or ast.Constant(0)))
    elif not isinstance(node.slice, (ast.Constant, ast.Tuple)):  # a constant is changed by itself
        yield "off by one", lambda twin: setattr(twin, "slice", parsed("n - 1", n=twin.slice))


def _of_return(node, vectorised):
    if node.value is not None:
        for kind, spoiled in (("operator", "x / 2"), ("unit", "x * 1000.0")):
            for at in range(len(node.value.elts) if isinstance(node.value, ast.Tuple) else 1):
                yield kind, lambda twin, at=at, spoiled=spoiled: _spoil_part(twin, at, spoiled)
    if isinstance(node.value, ast.Tuple):
        yield "swapped", lambda twin: twin.value.elts.reverse()


def _spoil_part(returned, at, spoiled):
    if isinstance(returned.value, ast.Tuple):
        returned.value.elts[at] = parsed(spoiled, x=returned.value.elts[at])
    else:
        returned.value = parsed(spoiled, x=returned.value)


def _of_function(node, vectorised):
    for argument in node.args.args:
        for factor in ("1000.0", "6.283185307179586"):
            line = f"{argument.arg} = {argument.arg} * {factor}"
            yield "unit", lambda twin, line=line: twin.body.__setitem__(slice(0, 0), ast.parse(line).body), line


def _of_branches(node, vectorised):
    for forced in (True, False):
        yield "wrong branch", _set("test", ast.Constant(forced))
    if node.orelse:
        yield "wrong branch", lambda twin: twin.__dict__.update(body=twin.orelse, orelse=twin.body)


def _of_loop(node, vectorised):
    yield "wrong branch", _set("test", ast.Constant(False))


_BY_TYPE = {
    ast.BinOp: _of_operation,
    ast.AugAssign: _of_operation,
    ast.UnaryOp: _of_sign,
    ast.BoolOp: _of_and_or,
    ast.Compare: _of_comparison,
    ast.Constant: _of_constant,
    ast.Attribute: _of_attribute,
    ast.Call: _of_call,
    ast.Subscript: _of_subscript,
    ast.Return: _of_return,
    ast.FunctionDef: _of_function,
    ast.If: _of_branches,
    ast.IfExp: _of_branches,
    ast.While: _of_loop,
}
