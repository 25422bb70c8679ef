"""A verdict as lines of text for a terminal, each with a style; nothing here prints."""

import textwrap
from dataclasses import dataclass

from ..judging.explanations import lent_sentences
from ..judging.verdict import NOT_ATTEMPTED, NOT_JUDGED, PASSED, UNFINISHED, Finding, Verdict, lost_texts, marks_text
from ..text import display_name, ended, listed

WIDTH = 80
_STYLES = {NOT_JUDGED: "bold yellow", PASSED: "bold green", UNFINISHED: "bold blue", NOT_ATTEMPTED: "bold blue"}
WRONG_STYLE = "bold red"


@dataclass(frozen=True)
class Line:
    text: str
    style: str = ""


def verdict_lines(verdict: Verdict, width: int = WIDTH) -> list[Line]:
    """The whole message about one exercise: heading, findings, what it printed, marks.

    `width` is the terminal's; no line is longer than that, or than 80.
    """
    width = min(width, WIDTH)
    name = verdict.exercise.rpartition("/")[2]
    lines = [Line(f"{name} · {verdict.kind}", _STYLES.get(verdict.kind, WRONG_STYLE))]
    for sentence in lent_sentences(verdict):
        lines += wrap(sentence, width)
    several = len({part.function for part in verdict.parts}) > 1
    stubs = [finding.function for finding in verdict.findings if finding.kind == NOT_ATTEMPTED and several]
    stopped: dict[tuple[str, int, str], list[str]] = {}
    for finding in verdict.findings:
        if finding.line:
            stopped.setdefault(finding.line, []).append(finding.function)
    for finding in verdict.findings:
        first, *others = stopped[finding.line] if finding.line else [finding.function]
        if finding.function == first and first not in stubs:
            lines += _finding_lines(finding, width, heading=several)
            lines += wrap(f"This line stops {listed(others)} too.", width) if others else []
    if stubs:
        lines += wrap(f"Still to be written: {', '.join(stubs)}.", width)
    lines += printed_lines(verdict.printed, width)
    for part in verdict.parts:
        if part.measured and verdict.kind != NOT_ATTEMPTED:
            mark = f"{marks_text(part.earned)} of {marks_text(part.worth)}"
            lines += _hang(f"  {mark:<12}", f"{part.what}: {part.measured}", width)
    if verdict.kind not in (NOT_ATTEMPTED, NOT_JUDGED):
        lines += wrap(f"{marks_text(verdict.earned)} of {verdict.marks} marks" + _marks_by_part(verdict), width, "dim")
    return lines


def _finding_lines(finding: Finding, width: int, heading: bool) -> list[Line]:
    lines = [Line(f"  in {finding.function}", "bold")] if heading and finding.function else []
    if finding.says:
        lines += wrap(finding.says, width)
    values = [*finding.inputs]
    if finding.got:
        values += [("yours", finding.got), ("wanted", finding.wanted)]
    lines += _align(values, finding.remark, width)
    if finding.slip:
        lines += wrap(ended(f"You may have {finding.slip}"), width)
    if finding.line:
        path, number, source = finding.line
        lines += wrap(f"{path}, line {number}", width, "dim")
        if source:
            source = _clean(source)
            lines.append(Line("    " + (source if len(source) <= width - 4 else source[: width - 6] + " …"), "dim"))
    return lines


def _align(values: list[tuple[str, str]], remark: str, width: int) -> list[Line]:
    """Names in one column, values in the next, "yours" and "wanted" with their points one below the other."""
    if not values:
        return wrap(remark, width) if remark else []
    column = max(len(name) for name, _ in values) + 1
    ahead = {name: len(text.split(".")[0].split(" ")[0]) for name, text in values if name in ("yours", "wanted")}
    indent = (
        max(ahead.values(), default=0)
        if all(text[:1].isdigit() or text[:1] == "-" for name, text in values if name in ahead)
        else 0
    )
    lines = []
    for name, text in values:
        pad = " " * (indent - ahead[name]) if indent and name in ahead else ""
        lines += _hang(f"  {name:<{column}}", pad + text, width)
    if remark:
        if len(lines[-1].text) + 6 + len(remark) <= width:
            lines[-1] = Line(f"{lines[-1].text}      {remark}")
        else:
            lines += wrap(remark, width)
    return lines


def _hang(start: str, text: str, width: int) -> list[Line]:
    pieces = textwrap.wrap(text, width - len(start), drop_whitespace=False) or [""]
    return [Line((start if place == 0 else " " * len(start)) + part.rstrip()) for place, part in enumerate(pieces)]


def printed_lines(printed: str, width: int) -> list[Line]:
    """What a student's code printed: its first line, and how many more there are."""
    if not printed:
        return []
    first, *rest = printed.strip().splitlines() or [""]
    more = f"  (and {len(rest)} more {'line' if len(rest) == 1 else 'lines'})" if rest else ""
    return wrap(f"It printed: {_clean(first)}{more}", width, "dim")


def wrap(text: str, width: int, style: str = "") -> list[Line]:
    """A sentence as indented lines no longer than `width`, nor than 80."""
    width = min(width, WIDTH)
    return [Line(line, style) for line in textwrap.wrap(text, width, initial_indent="  ", subsequent_indent="  ")]


def _clean(text: str) -> str:
    return display_name(text) if text else ""


PART_NAMES = {
    "numbers": "numbers",
    "arrays": "arrays",
    "laws": "laws",
    "published": "published figures",
    "refusals": "refusals",
}


def _marks_by_part(verdict: Verdict) -> str:
    """Where marks were lost, in a bracket; nothing if all or none were earned. What was measured has had its line."""
    if not 0 < verdict.earned < verdict.marks:
        return ""
    lost = {}
    for part in verdict.parts:
        if part.earned < part.worth and not part.measured:
            name = PART_NAMES.get(part.what, part.what)
            lost[name] = lost.get(name, 0) + part.worth - part.earned
    texts = lost_texts(verdict.earned, list(lost.values()))
    return " (lost: " + ", ".join(map(" ".join, zip(lost, texts, strict=True))) + ")" if lost else ""
