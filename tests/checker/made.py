"""Verdicts and names made up at random, as odd as they may come."""

from datetime import date, datetime
from fractions import Fraction

from hypothesis import strategies as st

from checker.course import PATHS
from checker.judging.fingerprint import VerdictKey
from checker.judging.verdict import KINDS, Finding, Part, Verdict
from checker.marks.details import RunDetails
from checker.term.term import Person, Term, Work

any_text = st.text(max_size=60) | st.sampled_from(
    ["", "=1+1", "<script>alert(1)</script>", "\x1b[31m", "a\x00b", "\ud800", "‮gnp", "]]>"]
)
parts = st.builds(
    Part,
    any_text,
    st.sampled_from(["numbers", "arrays", "laws", "published", "refusals"]),
    st.fractions(0, 10),
    st.fractions(0, 10),
)
lines = st.tuples(any_text, st.integers(0, 10_000), any_text)
findings = st.builds(
    Finding,
    st.sampled_from(KINDS),
    any_text,
    any_text,
    st.lists(st.tuples(any_text, any_text), max_size=3).map(tuple),
    any_text,
    any_text,
    any_text,
    any_text,
    st.none() | lines,
)
verdicts = st.builds(
    Verdict,
    st.sampled_from(PATHS),
    st.sampled_from(KINDS),
    st.integers(1, 20),
    st.lists(parts, max_size=4).map(tuple),
    st.lists(findings, max_size=2).map(tuple),
    any_text,
)
names = st.text(st.characters(exclude_categories=["C"]), min_size=1, max_size=40)


def key(number):
    return VerdictKey(f"{number:064x}", "b" * 64, "1")


def details(seed):
    return RunDetails(seed, (date(2026, 9, 1), date(2027, 7, 31)), "Form 4", "Quay School")


WHEN = "2026-10-05T18:30:00+00:00"


def content(number):
    """The hash of somebody's answers."""
    return f"{number:024x}"


def term(number):
    """A term that no other number gives."""
    work = Work(
        f"Work {number}", PATHS[:2], "core", Fraction(number, 7), due=datetime(2026, 10, 5, 18, 30), late=Fraction(1, 10)
    )
    return Term("Form 4", "Quay School", (work,), (Person(f"spwc-{number}", "Isla Marrow", "isla@saltmarsh.example"),))


def verdict(number=0, exercise=PATHS[0]):
    """A verdict that no other number gives."""
    finding = Finding("wrong", "resonant_frequency", f"number {number}")
    return Verdict(
        exercise,
        "wrong",
        10,
        (Part("resonant_frequency", "numbers", Fraction(10), Fraction(number, number + 1)),),
        (finding,),
    )
