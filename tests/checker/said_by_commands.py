"""Every sentence that the commands say, taken out of their sources: each text with an example in every place that is left open.

A text cannot be missing here, for none is copied. What stands in an open place is in the table below; a test fails for one that is not.
"""

import ast
import itertools
import re
from collections.abc import Iterator
from pathlib import Path

from checker.core import CORE, FURTHER
from checker.course import PATHS, ROOT, UNITS
from checker.hear.pieces import PIECES
from checker.marks.cluster import _OTHER_VERSION, _UNCONTAINED
from checker.marks.store_problem import _SENTENCES, damage_sentence
from checker.submissions.names import PLAIN_FORM

CHECKER = ROOT / "checker"
COMMANDS = CHECKER / "cli"
NOT_SAID = {"encoding.py", "called.py"}  # signs that stand for others; how the program was called
RAISED = {"Problem", "Unheard", "UnreadableValue"}  # and all that are kinds of these
WORDS = re.compile(r"[A-Za-z]{2,}\b.*\s.*\b[A-Za-z]{2,}")  # in what stands written: it is a sentence, or part of one

STORE = Path("marks/marks.sqlite")
FILE = "exercises/unit03_tuned_circuit/resonance.py"
UNIT = UNITS[3]
NO_LANDLOCK = "The kernel has no Landlock."
MACHINE = "tcp://127.0.0.1:40001"
# What may stand in an open place, by how the source has it: one example, or several where number or kind changes the sentence.
EXAMPLES = {
    **dict.fromkeys(("exercise.name", "name", "name_of(path)", "path.rpartition('/')[2]", "near[0]", "far[0]"), "resonance"),
    **dict.fromkeys(("function", "view.function"), "resonant_frequency"),
    **dict.fromkeys(("from_here(file)", "file"), FILE),
    **dict.fromkeys(("shown", "folder", "options.into"), "marks"),
    **dict.fromkeys(("os.path.relpath(page)", "os.path.relpath(options.into / 'index.html')", "page"), "seen/resonance.html"),
    "', '.join(PIECES)": ", ".join(PIECES),
    "', '.join(map(str, inputs))": "0.001, 440.0, 1.0",
    "', '.join(unit.exercises)": ", ".join(UNIT.exercises),
    "' or '.join(names)": "coil.inductance or resonance.inductance",
    "PATH": "practice/index.json",
    "STORE": "marks.sqlite",
    "_OTHER_VERSION.format('a machine that has joined')": _OTHER_VERSION.format("a machine that has joined"),
    "_OTHER_VERSION.format(', '.join(other))": _OTHER_VERSION.format(MACHINE),
    "_UNCONTAINED.format(' '.join(missing_layers))": _UNCONTAINED.format(NO_LANDLOCK),
    "_UNCONTAINED.format(' '.join(sorted(missing_layers)))": _UNCONTAINED.format(NO_LANDLOCK),
    "_name(later[0])": "tone",
    "_names(later)": ("tone", "tone, prefixes"),
    "address": "https://saltmarsh-point.example/course",
    "alike": "2",
    "answer.what": "a generator",
    "argument.name": "inductance",
    "as_typed(argument)": '"200 µH"',
    "at": ("", " --folder mine"),
    "band": "0",
    "beside('mkdocs')": ".venv/bin/mkdocs",
    "beside('pip')": ".venv/bin/pip",
    "by_core": ("1", "2"),
    "called_as()": (".venv/bin/checker", r".venv\Scripts\checker"),
    "core": ("0", "1", "31"),
    "count": ("1 value", "2 values", "5 to 6 values"),
    "error.strerror": "Permission denied",
    "fault": "TypeError in judging/compare.py, line 7",
    "file_of(path)": "practice/unit03_tuned_circuit/resonance.views",
    "from_here(folder / f'{verdict.exercise}.py')": FILE,
    "from_here(old)": f"{FILE}.old",
    "from_here(site)": "course/site",
    "further": ("1", "2"),
    "hint": ("Did you mean resonance?", "checker try --list names them all."),
    "law": "functools.partial(…)",
    "law.__code__.co_firstlineno": "7",
    "len(CORE)": str(len(CORE)),
    "len(FURTHER)": str(len(FURTHER)),
    "len(PATHS)": str(len(PATHS)),
    "len(STEPS)": "3",
    "len(not_judged) - MOST_SAID": ("1", "2"),
    "len(played.sources)": "8",
    "len(texts)": ("1", "2"),
    "max(shares)": "1.2",
    "missing": NO_LANDLOCK,
    "name_of(after)": "tone",
    "new": "exercises",
    "options.member": "Isla Marrow",
    "options.number": "1",
    "options.number + 1": "2",
    "options.site": "course",
    "os.path.relpath(sheet.print_sheet(page, page.with_suffix('.pdf')))": "seen/resonance.pdf",
    "own": ("0", "1", "2"),
    "own.formula": "1/sqrt(inductance*capacitance)",
    "own_ways": "circuit_voltage or swing_step",
    "offered": ("prefixes", "prefixes, field_strength"),
    "part": "the reaction demonstration",
    "path": "unit03_tuned_circuit/resonance",
    "reading(after)": "Bench, section 4 (checker read tone)",
    "seed": "4711",
    "seen.view.none": "A formula has no curve.",
    "self._path": str(STORE),
    "self.module.__name__": "solutions.unit03_tuned_circuit.resonance_check",
    "text": "03",
    "type(problem).__name__": "KilledWorker",
    "unit.number": UNIT.number,
    "unit.title": UNIT.title,
    "version": "4",
    "the_way": ("", ", 1 of them by the core's way"),
    "others": ("them", "the other", "the others"),
    "error": "database disk image is malformed",
    "of_core": ("the whole core of 31 exercises", "1 of the core's 31 exercises"),
    "pairs": ("One pair of submissions is", "2 pairs of submissions are"),
    "wanted": 'inductance, such as "200 µH"',
    "where": "student-pack.zip",
    "' ' * (wrong < alike)": ("", " "),
    "', '.join(unsent)": ("Orla Quill", "Orla Quill, Kit Harrow"),
    "'s' * (len(going) != 1)": "s",
    "BESIDE": "term.toml",
    "LARGEST // 1024": "256",
    "LONGEST": "2000",
    "PLAIN_FORM": PLAIN_FORM,
    "_end(text)": "12",
    "because": "Shown",
    "by": "'Wren Dalby'",
    "change.name": "Tobias Fenn",
    "display_name(name)": "Cristal set",
    "display_name(options.mail)": "wren",
    "display_name(options.work)": "Cristal set",
    "display_name(pattern)": "{nmae}_{number}",
    "ends": ("", "-- "),
    "example": 'title = "Autumn"',
    "found[0].name": "Isla Marrow",
    "heading": "due",
    "how": ("", ", 1 with the same wrong answers", ", with the same wrong answers"),
    "kept": "marks, kept 2026-11-30 18.20",
    "known": ("Signals", "no piece of work"),
    "len(change.exercises) - MOST_NAMED": ("1", "2"),
    "len(found) - MOST_SAID": ("1", "2"),
    "len(going)": "3",
    "len(late) - MOST_SAID": ("1", "2"),
    "len(names) - MOST_SAID": ("1", "2"),
    "len(term.roster)": "3",
    "line": "7",
    "marks_text(change.before)": "0",
    "marks_text(change.now)": "10",
    "more": ("", " and 2 more"),
    "_of(into)": ("", " --into spring"),
    "_of(page.parent)": ("", " --into spring"),
    "no_mark": "'seven' is no mark: write a number such as 7, 7.5 or 15/2.",
    "wrong_in_it": "has no name in it",
    "names": "Signals, Crystal set",
    "on": "metres",
    "one.before": "6",
    "one.mark": "8",
    "one.name": "Tobias Fenn",
    "options.folder": "october",
    "os.path.relpath(written)": "marks/feedback",
    "problem": "wants a number from 0 to 365, without quotes",
    "quoted(member)": "'Isla Marrow'",
    "reason": "Permission denied",
    "row['member']": "Isla Marrow",
    "what[:120]": "Expected '=' after a key",
    "wrong": "1",
}


def texts() -> Iterator[tuple[str, ast.expr]]:
    """(file, text) for each text that a command may say: all of theirs, and what other modules raise to be read by a person."""
    trees = {file: ast.parse(file.read_text("utf-8")) for file in sorted(CHECKER.rglob("*.py")) if "examples" not in file.parts}
    raised = kinds_of(RAISED, trees.values())
    for file, tree in trees.items():
        name = file.relative_to(CHECKER).as_posix()
        if file.parent == COMMANDS:
            if file.name not in NOT_SAID:
                yield from ((name, text) for text in all_texts(tree) if WORDS.search(written(text)))
        else:
            for node in ast.walk(tree):
                if isinstance(node, ast.Raise) and isinstance(node.exc, ast.Call) and called(node.exc) in raised:
                    said = node.exc.args[0]
                    if not isinstance(said, ast.Attribute):  # else it is another's sentence
                        yield name, said


def kinds_of(names, trees):
    """The names of exceptions, with those of all that derive from them."""
    found, bases = set(names), {}
    for tree in trees:
        for node in ast.walk(tree):
            if isinstance(node, ast.ClassDef):
                bases[node.name] = {ast.unparse(base).rpartition(".")[2] for base in node.bases}
    while more := {name for name, above in bases.items() if above & found} - found:
        found |= more
    return found


def called(call):
    return ast.unparse(call.func).rpartition(".")[2]


def all_texts(tree):
    """The texts in a module that are whole ones: no docstring, no part of another."""
    documented = (ast.Module, ast.ClassDef, ast.FunctionDef)
    docstrings = {id(node.body[0]) for node in ast.walk(tree) if isinstance(node, documented) and ast.get_docstring(node)}

    def within(node):
        if isinstance(node, ast.JoinedStr) or isinstance(node, ast.Constant) and isinstance(node.value, str):
            yield node
        elif id(node) not in docstrings:
            for child in ast.iter_child_nodes(node):
                yield from within(child)

    return within(tree)


def written(text: ast.AST) -> str:
    """What of a text stands written in the source, with a sign for each open place."""
    if isinstance(text, ast.Constant):
        return str(text.value)
    return (
        " ".join(map(written, ast.iter_child_nodes(text)))
        if not isinstance(text, (ast.Name, ast.Attribute, ast.Subscript))
        else "…"
    )


def filled(text: ast.expr) -> list[str]:
    """What a text may say, with each example in its open places. KeyError names a place for which there is none."""
    places = sorted({ast.unparse(place) for place in open_places(text)})
    return [
        sentence
        for chosen in itertools.product(*(several(EXAMPLES[place]) for place in places))
        for sentence in rendered(text, dict(zip(places, chosen, strict=True)))
    ]


def several(examples: str | tuple[str, ...]) -> tuple[str, ...]:
    return (examples,) if isinstance(examples, str) else examples


def open_places(text: ast.expr) -> Iterator[ast.expr]:
    match text:
        case ast.Constant() | ast.Call(ast.Attribute(ast.Name("sentence"), "format")):
            return
        case ast.JoinedStr(parts) | ast.BoolOp(ast.Or(), parts):
            inner = parts
        case ast.IfExp(_, one, other):
            inner = [one, other]
        case ast.FormattedValue(part):
            inner = [part]
        case ast.Call(ast.Name("damage_sentence"), [_, what]):
            inner = [what]
        case _:
            yield text
            return
    for part in inner:
        yield from open_places(part)


def rendered(text: ast.expr, chosen: dict[str, str]) -> list[str]:
    """A text with what was chosen for its open places; several where it may go more than one way."""
    match text:
        case ast.Constant(value):
            return [str(value)]
        case ast.IfExp(test, one, other):
            numbers = {place: int(example) for place, example in chosen.items() if example.isdigit()}
            try:
                ways = [one if eval(ast.unparse(test), {"CORE": CORE}, numbers) else other]  # noqa: S307
            except NameError:
                ways = [one, other]
            return [sentence for way in ways for sentence in rendered(way, chosen)]
        case ast.BoolOp(ast.Or(), ways):
            return [sentence for way in ways for sentence in rendered(way, chosen)]
        case ast.JoinedStr(parts):
            return ["".join(pieces) for pieces in itertools.product(*(rendered(part, chosen) for part in parts))]
        case ast.FormattedValue(part, conversion):
            return [repr(said) if conversion == ord("r") else said for said in rendered(part, chosen)]
        case ast.Call(ast.Name("damage_sentence"), [_, what]):
            return [damage_sentence(STORE, said) for said in rendered(what, chosen)]
        case ast.Call(ast.Attribute(ast.Name("sentence"), "format")):
            return [one.format(path=STORE, text="disk I/O error") for one in dict.fromkeys(_SENTENCES.values())]
    return [chosen[ast.unparse(text)]]


def said() -> dict[str, str]:
    """Every sentence once, with the file that says it first."""
    found: dict[str, str] = {}
    for file, text in texts():
        for sentence in filled(text):
            found.setdefault(sentence, file)
    return found


if __name__ == "__main__":
    for sentence, file in said().items():
        print(f"{file:<22}{sentence}")
