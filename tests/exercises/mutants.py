"""Wrong versions of a reference, made by changing one thing at a time in its syntax tree."""
import ast
import copy
from collections.abc import Iterator

_OTHER_OPERATOR = {ast.Add: ast.Sub, ast.Sub: ast.Add, ast.Mult: ast.Div, ast.Div: ast.Mult, ast.Pow: ast.Mult,
                   ast.FloorDiv: ast.Div, ast.Mod: ast.Mult}
_OTHER_COMPARISON = {ast.Lt: ast.GtE, ast.LtE: ast.Gt, ast.Gt: ast.LtE, ast.GtE: ast.Lt, ast.Eq: ast.NotEq, ast.NotEq: ast.Eq}
_OTHER_FUNCTION = {"sqrt": "square", "cos": "sin", "sin": "cos", "exp": "expm1", "log": "log10", "log10": "log",
                   "tanh": "sinh", "ceil": "floor", "floor": "ceil", "arcsinh": "arctan", "tan": "sin"}


def mutants(source: str) -> Iterator[tuple[str, str]]:
    """(what was changed, source) for each change that the asked functions can feel."""
    tree, lines = ast.parse(source), source.split("\n")
    for place, node in enumerate(ast.walk(tree)):
        for what, change in _changes(node):
            changed = copy.deepcopy(tree)
            twin = next(other for at, other in enumerate(ast.walk(changed)) if at == place)
            change(twin)
            yield f"{what} in: {lines[node.lineno - 1].strip()}", ast.unparse(ast.fix_missing_locations(changed))


def _changes(node):
    if isinstance(node, ast.BinOp) and type(node.op) in _OTHER_OPERATOR:
        other = _OTHER_OPERATOR[type(node.op)]
        yield f"{type(node.op).__name__} to {other.__name__}", lambda twin: setattr(twin, "op", other())
    elif isinstance(node, ast.Compare) and type(node.ops[0]) in _OTHER_COMPARISON:
        other = _OTHER_COMPARISON[type(node.ops[0])]
        yield "comparison turned", lambda twin: setattr(twin, "ops", [other()])
    elif isinstance(node, ast.Constant) and type(node.value) in (int, float):
        other = node.value + 1 if abs(node.value) < 100 else node.value * 2
        yield f"{node.value} to {other}", lambda twin: setattr(twin, "value", other)
    elif isinstance(node, ast.Attribute) and node.attr in _OTHER_FUNCTION:
        yield f"{node.attr} to {_OTHER_FUNCTION[node.attr]}", lambda twin: setattr(twin, "attr", _OTHER_FUNCTION[twin.attr])
    elif isinstance(node, ast.Call) and len(node.args) >= 2:
        yield "arguments swapped", lambda twin: twin.args.reverse()
    elif isinstance(node, ast.Return) and node.value is not None:
        yield "half of the result", lambda twin: setattr(
            twin, "value", ast.BinOp(left=twin.value, op=ast.Div(), right=ast.Constant(value=2)))
