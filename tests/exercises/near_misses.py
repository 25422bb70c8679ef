"""Answers that are right but at an end of their range: an equality on the other side, a bound a little off, a refusal weakened.

A student's file has no `check_ranges`. So it is taken off all functions but those whose docstring promises a refusal; otherwise it
would hide what the file itself refuses.
"""

import ast
import re
from collections.abc import Iterator
from functools import partial

from solutions.ranges import ends
from tests.exercises.mutants import Mutant, mutants, parsed

LITTLE = 0.03
_OTHER_STRICTNESS = {ast.Lt: ast.LtE, ast.LtE: ast.Lt, ast.Gt: ast.GtE, ast.GtE: ast.Gt}
_TABLE, _LOOSER = re.compile(r"(above )?(.+?) to (below )?(.+)"), ("above ", "below ")


def near_misses(source: str, asked: dict[str, bool], promised: set[str]) -> Iterator[Mutant]:
    """All near misses of a reference; `asked` as in `mutants`, `promised` the functions whose docstring promises a refusal."""
    plain = bare(source, promised)
    yield from mutants(plain, asked, partial(_near, _within_loops(ast.parse(plain))))
    for function in ast.parse(source).body:
        if isinstance(function, ast.FunctionDef):
            yield from mutants(bare(source, promised | {function.name}), asked, _ranges(function.name, promised))


def bare(source: str, promised: set[str]) -> str:
    """The source as a student has it: without `check_ranges` where no refusal is promised."""
    tree = ast.parse(source)
    for top in tree.body:
        if isinstance(top, ast.FunctionDef) and top.name not in promised:
            top.decorator_list = [one for one in top.decorator_list if "check_ranges" not in ast.unparse(one)]
    return ast.unparse(tree)


def _within_loops(tree):
    """The comparisons in loops that narrow something down, as text: these meet their goal only by chance."""
    loops = [loop for loop in ast.walk(tree) if isinstance(loop, ast.While) or any(_brackets(loop))]
    return {ast.unparse(inner) for loop in loops for inner in ast.walk(loop) if isinstance(inner, ast.Compare)}


def _near(by_chance, node, vectorised):
    if isinstance(node, ast.Compare) and ast.unparse(node) in by_chance:
        return
    of_its_type = _BY_TYPE.get(type(node))
    if of_its_type:
        yield from of_its_type(node)


def _moved(part, factor):
    return parsed(f"x * {factor:g}", x=part)


def _has_no_size(part):
    return isinstance(part, ast.Constant) and not part.value or ast.unparse(part).endswith("inf")


def _of_comparison(node):
    for place, sign in enumerate(node.ops):
        if type(sign) in _OTHER_STRICTNESS:
            yield "strictness", lambda twin, at=place: twin.ops.__setitem__(at, _OTHER_STRICTNESS[type(twin.ops[at])]())
    if type(node.ops[0]) not in _OTHER_STRICTNESS:
        return
    if len(node.ops) == 1 and _has_no_size(node.left):
        return
    if len(node.ops) > 1 and not _has_no_size(node.left):
        for moved in _moves(node.left):
            yield "bound", lambda twin, moved=moved: setattr(twin, "left", moved(twin.left))
    if not _has_no_size(node.comparators[-1]):
        for moved in _moves(node.comparators[-1]):
            yield "bound", lambda twin, moved=moved: twin.comparators.__setitem__(-1, moved(twin.comparators[-1]))


def _moves(part):
    """The ways to move a bound by a little: a whole number by 1, any other by a part of itself."""
    if isinstance(part, ast.Constant) and type(part.value) is int:
        return [lambda twin, by=by: ast.Constant(twin.value + by) for by in (-1, 1)]
    return [lambda twin, by=by: _moved(twin, by) for by in (1 - LITTLE, 1 + LITTLE)]


def _of_call(node):
    name = getattr(node.func, "attr", getattr(node.func, "id", ""))
    bounds = {"clip": (1, 2), "minimum": (0, 1), "maximum": (0, 1), "min": (0, 1), "max": (0, 1)}.get(name, ())
    for place in bounds:
        if (
            place < len(node.args)
            and isinstance(node.args[place], (ast.Constant, ast.UnaryOp))
            and not _has_no_size(node.args[place])
        ):
            for factor in (1 - LITTLE, 1 + LITTLE):
                yield "bound", lambda twin, at=place, by=factor: twin.args.__setitem__(at, _moved(twin.args[at], by))
    if name == "range":
        last = min(1, len(node.args) - 1)
        yield "bound", lambda twin: twin.args.__setitem__(last, parsed("n // 2", n=twin.args[last]))
    if name == "interp":
        for part in ("table[1:]", "table[:-1]"):
            yield (
                "bound",
                lambda twin, part=part: twin.args.__setitem__(
                    slice(1, 3), [parsed(part, table=table) for table in twin.args[1:3]]
                ),
            )
    for place, word in enumerate(node.keywords):
        if word.arg == "dtype":
            yield "type", lambda twin, at=place: twin.keywords.pop(at) and None
    if name in ("any", "all") and isinstance(node.func, ast.Attribute):
        yield "refusal", lambda twin: parsed("__import__('numpy').ravel(x)[0]", x=twin.args[0])


def _of_branch(node):
    if isinstance(node.body[0], ast.Raise):
        yield "refusal", lambda twin: setattr(twin, "test", ast.Constant(False))


def _of_either(node):
    if isinstance(node, ast.BoolOp):
        for place in range(len(node.values)):
            yield "refusal", lambda twin, at=place: twin.values.__setitem__(at, ast.Constant(isinstance(twin.op, ast.And)))
    elif isinstance(node.op, ast.BitOr):
        yield "refusal", lambda twin: twin.left
        yield "refusal", lambda twin: twin.right


def _of_function(node):
    for place, statement in enumerate(node.body):
        for low, high in _brackets(statement):
            for line in (
                f"{low}, {high} = {low} + {LITTLE} * ({high} - {low}), {high}",
                f"{low}, {high} = {low}, {high} - {LITTLE} * ({high} - {low})",
            ):
                yield (
                    "bound",
                    lambda twin, at=place, line=line: twin.body.__setitem__(slice(at, at), ast.parse(line).body),
                    f"{line} before the loop of {node.name}",
                )
    if any(isinstance(inner, ast.Raise) for inner in ast.walk(node)):
        looked_up = {
            ast.unparse(inner.left)
            for inner in ast.walk(node)
            if isinstance(inner, ast.Compare) and isinstance(inner.ops[0], ast.NotIn)
        }
        for argument in node.args.args:
            kind = argument.annotation and ast.unparse(argument.annotation)
            if kind == "float" and argument.arg in looked_up:
                kind = "int"
            for weakened in {"int": ("int(x)",), "str": ("x.strip()", "x.lower()", "x.upper()")}.get(kind, ()):
                line = f"{argument.arg} = {weakened.replace('x', argument.arg, 1)}"
                at = 1 if ast.get_docstring(node) else 0
                yield (
                    "refusal",
                    lambda twin, at=at, line=line: twin.body.__setitem__(slice(at, at), ast.parse(line).body),
                    f"{line} first in {node.name}",
                )


def _brackets(statement):
    """The two names that a loop narrows down."""
    if isinstance(statement, (ast.For, ast.While)):
        for inner in statement.body:
            if isinstance(inner, ast.Assign) and isinstance(inner.targets[0], ast.Tuple) and len(inner.targets[0].elts) == 2:
                names = [getattr(one, "id", "") for one in inner.targets[0].elts]
                if all(names) and all(name in ast.unparse(inner.value) for name in names):
                    yield names


def _ranges(name, promised):
    """Changes of the ranges that docstrings state and `check_ranges` keeps: ends taken away or moved in, and let out where promised."""

    def of_function(node, vectorised):
        text = isinstance(node, ast.FunctionDef) and node.name == name and ast.get_docstring(node, clean=False)
        if not text or not any("check_ranges" in ast.unparse(one) for one in node.decorator_list):
            return
        head, _, rest = text.partition("Parameters\n    ----------\n")
        raises = re.split(r"\n\n    \w+\n    -", text.partition("Raises\n    ------\n")[2])[0]
        for found in re.finditer(r"[^,;:\n]+", re.split(r"\n\n    \w+\n    --", rest)[0]):
            entry = re.split(r"\n(?=    \S)", rest[: found.start()])[-1]
            names, _, words = (piece.strip() for piece in entry.partition(" : "))
            if words.startswith("tuple"):
                continue  # `check_ranges` holds no member of a tuple: the change would be one of words
            promises = node.name in promised and any(_is_told(one, raises, node) for one in names.split(", "))
            range_ = found[0].strip()
            for changed in _other_ranges(range_, promises) if ends(range_) else ():
                if words.startswith("int") and re.search(r"\d\.\d", changed):
                    continue  # no whole number lies between
                place = len(text) - len(rest) + found.start()
                new = text[:place] + found[0].replace(range_, changed) + text[place + len(found[0]) :]
                yield (
                    "range",
                    lambda twin, new=new: setattr(twin.body[0].value, "value", new),
                    f"{names}: {range_} to {changed} of {node.name}",
                )

    return of_function


def _is_told(name, raises, node):
    decorators = " ".join(map(ast.unparse, node.decorator_list))
    return name in decorators or name in raises or name.rpartition("_")[2] in re.findall(r"\w+", raises.lower())


def _other_ranges(range_, promises):
    """The same range in other words: an end that belongs to it left out, and moved inwards; let in, and moved outwards, if promised."""
    if two := _TABLE.fullmatch(range_.removeprefix("from ")):
        above, low, below, high = two.groups()
        for is_low, (open_, end) in enumerate(((below, high), (above, low))):
            word = "above " if is_low else "below "
            put = (lambda text: f"{text} to {below or ''}{high}") if is_low else (lambda text: f"{above or ''}{low} to {text}")
            if not open_:
                yield put(word + end)
            elif promises:
                yield put(end)
            inwards, outwards = (1, -1) if is_low else (-1, 1)
            for way in (inwards, outwards)[: 1 + promises]:
                if moved := _shifted(end, way):
                    yield put((open_ or "") + moved)
        return
    one = re.fullmatch(r"(real part )?(>=|>|<=|<|at least|at most|above|below|not) (.+)", range_)
    part, sign, end = one.groups()
    if sign == "not":
        return
    is_open = sign in (">", "<", "above", "below")
    word = {
        ">=": ">",
        "at least": "above",
        "<=": "<",
        "at most": "below",
        ">": ">=",
        "above": "at least",
        "<": "<=",
        "below": "at most",
    }
    if not is_open or promises:
        yield f"{part or ''}{word[sign]} {end}"
    inwards = 1 if sign in (">", ">=", "at least", "above") else -1
    for way in (inwards, -inwards)[: 1 + promises]:
        if moved := _shifted(end, way):
            yield f"{part or ''}{sign} {moved}"


def _shifted(end, way):
    """A bound moved by a little, up or down: its number, or what another parameter is multiplied by."""
    if number := re.match(r"[−-]?[\d.]+", end):
        value = float(number[0].replace("−", "-"))
        return f"{value + way * LITTLE * abs(value):g}".replace("-", "−") + end[number.end() :] if value else ""
    if end.startswith("π"):
        return f"{3.14159265 * (1 + way * LITTLE):.8g}{end[1:]}"
    if end.startswith(("`", "−`")):
        sign = end.startswith("−")
        return f"{'−' * sign}{1 + (-way if sign else way) * LITTLE:g} {end.lstrip('−')}"
    return ""


_BY_TYPE = {
    ast.Compare: _of_comparison,
    ast.Call: _of_call,
    ast.If: _of_branch,
    ast.BoolOp: _of_either,
    ast.BinOp: _of_either,
    ast.FunctionDef: _of_function,
}
