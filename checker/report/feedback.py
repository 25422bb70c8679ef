"""What goes back to one member: a page that opens by itself, the same as plain text, and a draft of a letter with both."""

import re
from collections.abc import Collection
from dataclasses import dataclass, replace
from datetime import date
from email.message import EmailMessage
from email.policy import SMTP

from ..judging.verdict import NOT_ATTEMPTED, NOT_HANDED_IN, PASSED, RAISED, Finding, Verdict, marks_text
from ..marks.attempts import WorkMarks
from ..marks.marksheet import Mark, MemberMarks, override_sentence, work_override_sentence
from ..text import ended
from .names import report_names
from .pages import member_page, moment
from .text import verdict_lines, wrap

_AS_IT_IS = re.compile(r"[A-Za-z0-9][A-Za-z0-9._-]{0,59}(?<!\.)")
NOTHING_TO_SAY = (PASSED, NOT_ATTEMPTED, NOT_HANDED_IN)
OWN_WORDS = "It stopped with an error, whose own words are left out here."


@dataclass(frozen=True)
class Feedback:
    """What goes back to one member, and the name of its files without an ending: the id on the roster where there is one."""

    file: str
    member: MemberMarks
    page: str
    text: str


def feedback_for(
    members: Collection[MemberMarks], title: str, marked: date, hide_values: bool, paths: Collection[str] | None = None
) -> list[Feedback]:
    """What goes back to each member who handed something in or has a mark set by hand.

    Parameters
    ----------
    members : collection of MemberMarks
    title : str
        Above each.
    marked : date
    hide_values : bool
        Whether the values at which an answer fails are left out, so that nobody can pass them on.
    paths : collection of str, optional
        The exercises that it is about; all if left out.
    """
    about = [_about(member, paths) for member in members]
    told = [member for member in about if any(one.after_late is not None for one in member.works)]
    names = report_names([member.person.id if member.person else member.name for member in told])
    found = []
    for member, name in zip(told, names, strict=True):
        own = member.person.id if member.person else ""
        file = own if own.lower() == name and _AS_IT_IS.fullmatch(own) else name
        shown = replace(member, marks=tuple(map(without_values, member.marks))) if hide_values else member
        found.append(Feedback(file, member, member_page(shown, title, marked), feedback_text(shown, title)))
    return found


def _about(member: MemberMarks, paths: Collection[str] | None) -> MemberMarks:
    if paths is None:
        return member
    works = tuple(one for one in member.works if set(one.work.paths) <= set(paths) and one.work.paths)
    return replace(member, works=works, marks=tuple(mark for mark in member.marks if mark.exercise in paths))


def without_values(mark: Mark) -> Mark:
    """A mark whose verdict says what is wrong in words alone: no value that was given or wanted, nothing that the program printed."""
    verdict: Verdict = mark.verdict
    return replace(mark, verdict=replace(verdict, printed="", findings=tuple(map(_in_words, verdict.findings))))


def _in_words(finding: Finding) -> Finding:
    says = OWN_WORDS if finding.kind == RAISED else finding.says
    remark = finding.remark if finding.got else ""
    return replace(finding, says=says, inputs=(), got="", wanted="", remark=remark)


def feedback_text(member: MemberMarks, title: str) -> str:
    """All of it as plain text, in lines of at most 80 characters."""
    lines = [title, member.name, "", member.why_none or f"{member.text} of {member.of} marks", ""]
    for one in member.works:
        lines += _work_lines(one)
    for mark in member.marks:
        if mark.verdict.kind not in NOTHING_TO_SAY:
            lines += [*(line.text for line in verdict_lines(mark.verdict)), *_by_hand(mark), ""]
    lines += ["All marks"]
    for mark in member.marks:
        amount = marks_text(mark.amount) if mark.is_counted else "–"
        lines.append(f"  {mark.exercise.rpartition('/')[2]:<26}{mark.verdict.kind:<16}{amount} of {mark.of}")
        if mark.verdict.kind in NOTHING_TO_SAY:
            lines += _by_hand(mark)
    return "\n".join(lines) + "\n"


def _by_hand(mark: Mark) -> list[str]:
    return [line.text for line in wrap(override_sentence(mark), 80)] if mark.override else []


def _work_lines(one: WorkMarks) -> list[str]:
    if not one.is_told:
        return []
    lines = [one.work.name + (f", due {moment(one.work.due)}" if one.work.due else "")] if one.work.name else []
    for hand_in in one.handed_in:
        when = moment(hand_in.when) if hand_in.when else "at a time that is not known"
        late = f", {hand_in.lateness.says}" if hand_in.lateness.says else ""
        why = f"; counts: {hand_in.why}" if hand_in.counts else ""
        lines += [line.text for line in wrap(f"{when}{late}: {marks_text(hand_in.earned)} of {one.of}{why}.", 80)]
    if not one.handed_in:
        lines.append("  Nothing was handed in.")
    if one.override:
        lines += [line.text for line in wrap(work_override_sentence(one), 80)]
    elif one.after_late is not None and one.amount is not None and one.after_late != one.amount:
        says = ended(f"{marks_text(one.amount)} of {one.of}, {one.lateness.says}: {marks_text(one.after_late)} count")
        lines += [line.text for line in wrap(says, 80)]
    return [*lines, ""]


def mail_draft(feedback: Feedback, title: str, sender: str) -> bytes:
    """A letter to a member as a file that a mail program opens, not sent: the text, and the page beside it.

    Raises
    ------
    ValueError
        If the address is none that a letter can go to.
    """
    person = feedback.member.person
    if person is None or not person.address:
        raise ValueError("no address")
    letter = EmailMessage(policy=SMTP)
    letter["From"], letter["To"], letter["Subject"] = sender, person.address, " ".join(f"{title}: your marks".split())
    letter.set_content(feedback.text)
    letter.add_attachment(feedback.page.encode(), maintype="text", subtype="html", filename=f"{feedback.file}.html")
    return letter.as_bytes()
