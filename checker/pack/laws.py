"""The laws of a check as a module by themselves, without the reference: what a student pack may hold.

A law is a line of physics about the student's own function; it gives no answer away. Some laws call the reference
while they set themselves up ("a channel is its own nearest" needs a channel). Those calls are made here, when the pack is
made, and their values are written into the module in place of the reference.
"""

import ast
import builtins
import inspect
import json
from collections.abc import Callable, Iterable, Mapping
from pathlib import Path
from types import FunctionType, ModuleType
from typing import Any

from ..checks.exercise import Question, at_most, equal, less
from ..course import SEALED, load_physics
from ..faults import Problem
from ..judging.plan import LawFunction, Plan
from ..worker.wire import from_wire, to_wire

_USUAL = {equal: "equal", at_most: "at_most", less: "less", None: "None"}
_HEAD = '"""Laws that the answers must obey. Made by `checker pack` from the course\'s own check."""\n'


class CannotPack(Problem):
    """A law uses something that cannot be written into a pack; the text names it."""


class Recorded:
    """Stands in for a function of the reference: knows its values for what the laws ask, and nothing else.

    Where the reference is at hand (`module` and `name`), it gives what a wrong answer makes a law ask besides.
    """

    def __init__(self, values: Mapping[str, Any], module: str, name: str) -> None:
        self._values = {key: _to_tuples(from_wire(value)) for key, value in values.items()}
        self._module, self._name = module, name

    def __call__(self, *inputs: Any) -> Any:
        key = _key(inputs)
        if key in self._values or SEALED:
            return self._values[key]
        return getattr(load_physics(self._module), self._name)(*inputs)


class _Recording:
    """A function of the reference that writes down what it is asked."""

    def __init__(self, function: Callable) -> None:
        self.function, self.values = function, {}

    def __call__(self, *inputs: Any) -> Any:
        value = self.function(*inputs)
        self.values[_key(inputs)] = to_wire(value)
        return value


def _to_tuples(value: Any) -> Any:
    return tuple(map(_to_tuples, value)) if isinstance(value, list) else value


def _key(inputs: Iterable) -> str:
    return json.dumps([to_wire(value) for value in inputs], sort_keys=True)


def laws_source(plan: Plan) -> str:
    """Source of a module whose `LAWS` has, for each function asked, its laws and their relations, as pairs, and what measures.

    Raises
    ------
    CannotPack
        If a law uses what is neither plain data, nor a function of the check, nor one of the reference.
    """
    laws = {planned.question.name: _functions_of(planned.question) for planned in plan.questions}
    every = [pair for of_one in laws.values() for pair in of_one]
    if not every:
        return _HEAD + "LAWS = {}\n"
    check = inspect.getmodule(every[0][0])
    if check is None:
        raise CannotPack("A law comes from no module: write it in the exercise's check.")
    module = _Module(check)
    for law, relation in every:
        module.need_names_of(module.node_of(law))
        if relation not in _USUAL:
            module.need_names_of(module.node_of(relation))
    recordings = module.record(plan)
    lines = [_HEAD, *module.statements, ""]
    for name, recording in recordings.items():
        home = recording.function.__module__.removeprefix("solutions.")
        lines.append(f"{name} = Recorded({recording.values!r}, {home!r}, {recording.function.__name__!r})")
    lines.append("LAWS = {")
    for function, of_one in laws.items():
        lines.append(f"    {function!r}: [")
        lines += [f"        ({ast.unparse(module.node_of(law))}, {module.relation(relation)})," for law, relation in of_one]
        lines.append("    ],")
    return "\n".join([*lines, "}", ""])


def _functions_of(question: Question) -> list[tuple[Callable, Callable | None]]:
    """A question's laws with their relations; after them what measures, with none."""
    return [*((law.law, law.relation) for law in question.holds), *((measured.of, None) for measured in question.measured)]


class _Module:
    """A check module taken apart: which of its statements, and which functions of the reference, the laws need."""

    def __init__(self, module: ModuleType) -> None:
        self.module = module
        self.tree = ast.parse(Path(str(module.__file__)).read_text("utf-8"))
        self.statements = [
            "from math import inf, nan",
            "from checker.checks.exercise import at_most, equal, less",
            "from checker.pack.laws import Recorded",
        ]
        self.references = {}
        self._seen = set()
        self._lambdas = {_span(node.body): node for node in ast.walk(self.tree) if isinstance(node, ast.Lambda)}
        self._made = {name: node for node in self.tree.body for name in _names_bound(node)}

    def node_of(self, law: Callable | None) -> ast.expr:
        """The syntax of a law: its lambda, found by where its value stands, or the name of a function."""
        if not isinstance(law, FunctionType) or law.__closure__:
            raise CannotPack(f"A law is not a plain function of {self.module.__name__}: {law!r}.")
        if law.__name__ != "<lambda>":
            return ast.Name(law.__name__)
        found = [self._lambdas[span] for span in law.__code__.co_positions() if span in self._lambdas]
        if not found:
            raise CannotPack(
                f"The law in line {law.__code__.co_firstlineno} of {self.module.__name__} cannot be found in its file."
            )
        return found[-1]

    def relation(self, relation: Callable | None) -> str:
        return _USUAL.get(relation) or ast.unparse(self.node_of(relation))

    def need_names_of(self, node: ast.AST) -> None:
        own = {
            argument.arg
            for part in ast.walk(node)
            if isinstance(part, ast.arguments)
            for argument in (*part.args, *([part.vararg] if part.vararg else []))
        }
        for part in ast.walk(node):
            if isinstance(part, ast.Name) and part.id not in own and not hasattr(builtins, part.id):
                self._need(part.id)

    def _need(self, name: str) -> None:
        if name in self._seen:
            return
        self._seen.add(name)
        node = self._made.get(name)
        if node is None:
            return  # bound inside a comprehension or a function
        if isinstance(node, ast.ImportFrom) and (node.level or (node.module or "").startswith("solutions")):
            self._need_reference(name)
            return
        if not isinstance(node, (ast.Import, ast.ImportFrom)):
            self.need_names_of(node)
        text = ast.unparse(node)
        if text not in self.statements:
            self.statements.append(text)

    def _need_reference(self, name: str) -> None:
        thing = getattr(self.module, name)
        if callable(thing):
            self.references[name] = thing
        elif isinstance(thing, (int, float, str, tuple, list, dict)):
            self.statements.append(f"{name} = {thing!r}")
        else:
            raise CannotPack(f"{name} in {self.module.__name__} is neither a function nor plain data.")

    def record(self, plan: Plan) -> dict[str, _Recording]:
        """Run every law with the reference in the student's place, writing down what the laws themselves ask of it."""
        recordings = {name: _Recording(function) for name, function in self.references.items()}
        asked = {planned.question.name: planned.question.asks for planned in plan.questions}
        vars(self.module).update(recordings)
        try:
            for planned in plan.questions:
                answered = LawFunction(planned.question.name, lambda name, inputs: asked[name](*inputs))
                for case in planned.laws:
                    case.law.law(answered, *case.inputs)
                for measured in planned.question.measured:
                    measured.of(answered, plan.seed)
        finally:
            vars(self.module).update(self.references)
        return recordings


def _span(node: ast.expr) -> tuple:
    return node.lineno, node.end_lineno, node.col_offset, node.end_col_offset


def _names_bound(node: ast.stmt) -> list[str]:
    if isinstance(node, (ast.Import, ast.ImportFrom)):
        return [alias.asname or alias.name for alias in node.names]
    if isinstance(node, (ast.FunctionDef, ast.ClassDef)):
        return [node.name]
    if isinstance(node, ast.Assign):
        return [part.id for target in node.targets for part in ast.walk(target) if isinstance(part, ast.Name)]
    return []
