"""JUnit XML, the form in which build servers read test results: a suite for each member, a case for each exercise."""

import re
import xml.etree.ElementTree as ET
from collections import Counter
from collections.abc import Iterable
from typing import IO

from ..judging.explanations import lent_sentences
from ..judging.verdict import NOT_ATTEMPTED, NOT_HANDED_IN, PASSED, UNFINISHED, WRONG
from ..marks.marksheet import Mark, MemberMarks, override_sentence
from ..report.text import verdict_lines

# How a verdict counts there: an answer that is wrong fails; code that gave no answer is an error.
_OUTCOMES = {PASSED: None, NOT_ATTEMPTED: "skipped", NOT_HANDED_IN: "skipped", WRONG: "failure", UNFINISHED: "failure"}
_NOT_XML = re.compile("[^\t\n\r\u0020-\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]")


def write_junit(members: Iterable[MemberMarks], file: IO[str]) -> None:
    """Write one `testsuites` element with all members, member by member."""
    file.write('<?xml version="1.0" encoding="UTF-8"?>\n<testsuites name="Crystal to Reaction">\n')
    for member in members:
        file.write(ET.tostring(_suite(member), encoding="unicode") + "\n")
    file.write("</testsuites>\n")


def _suite(member: MemberMarks) -> ET.Element:
    outcomes = Counter(_outcome(mark) for mark in member.marks)
    suite = _element(
        "testsuite",
        name=member.name,
        tests=str(len(member.marks)),
        failures=str(outcomes["failure"]),
        errors=str(outcomes["error"]),
        skipped=str(outcomes["skipped"]),
    )
    properties = ET.SubElement(suite, "properties")
    properties.append(_element("property", name="marks", value=member.why_none or f"{member.text} of {member.of}"))
    suite.extend([_case(mark) for mark in member.marks])
    if member.said:
        suite.append(_element("system-err", "\n".join(member.said)))
    return suite


def _case(mark: Mark) -> ET.Element:
    unit, _, name = mark.exercise.partition("/")
    case = _element("testcase", name=name, classname=unit)
    text = "\n".join(line.text for line in verdict_lines(mark.verdict))
    outcome = _outcome(mark)
    if outcome:
        first = mark.verdict.findings[0].says if mark.verdict.findings else ""
        case.append(_element(outcome, text, type=mark.verdict.kind, message=first or mark.verdict.kind))
    remarks = [*([override_sentence(mark)] if mark.override else []), *lent_sentences(mark.verdict, "the member's")]
    if remarks:
        case.append(_element("system-out", "\n".join(remarks)))
    return case


def _outcome(mark: Mark) -> str | None:
    return _OUTCOMES.get(mark.verdict.kind, "error")


def _element(tag: str, text: str | None = None, **attributes: str) -> ET.Element:
    """An element whose texts hold only characters that XML can hold."""
    made = ET.Element(tag, {name: _NOT_XML.sub("\ufffd", value) for name, value in attributes.items()})
    made.text = text and _NOT_XML.sub("\ufffd", text)
    return made
