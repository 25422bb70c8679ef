"""Numbers in the prose are what the physics gives, and a page cannot run anything else."""

import contextlib

import pytest
from hypothesis import given
from hypothesis import strategies as st

from course.press.faults import Fault
from course.press.text.calls import answer, replace_calls
from course.press.text.numbers import MAKERS, number, number_in_formula

RESONANCE = "unit03_tuned_circuit.resonance:resonant_frequency"


def test_a_number_is_computed_rounded_and_given_a_prefix():
    """200 µH and 365 pF: 1/(2π sqrt(7.3e-14 s²)) = 589.06 kHz, by hand."""
    assert number(RESONANCE, "200 µH", "365 pF", unit="Hz") == "589.1\N{NO-BREAK SPACE}kHz"
    assert number(RESONANCE, 200e-6, capacitance=365e-12, unit="Hz", figures=3) == "589\N{NO-BREAK SPACE}kHz"
    assert number_in_formula(RESONANCE, "200 µH", "365 pF", unit="Hz") == r"589.1\,\mathrm{kHz}"


def test_a_call_reads_values_and_other_calls():
    frequency = f'value("{RESONANCE}", "200 µH", "365 pF")'
    bandwidth = f'number("unit03_tuned_circuit.quality_factor:bandwidth", {frequency}, 100, unit="Hz")'
    assert answer(bandwidth, MAKERS) == "5.891\N{NO-BREAK SPACE}kHz"


def test_text_is_handed_on_and_handed_back_as_it_is():
    assert answer('number("unit00_bench.prefixes:from_engineering", text("365 pF"), unit="F", figures=3)', MAKERS) == (
        "365\N{NO-BREAK SPACE}pF"
    )
    assert answer('number("unit00_bench.prefixes:to_engineering", "846 kHz", "Hz")', MAKERS) == "846.0\N{NO-BREAK SPACE}kHz"


def test_calls_are_found_in_a_formula_and_braces_of_latex_are_not():
    assert (
        replace_calls(r"{{a}} = {{ number(1) }} \frac{{1}}{2}", lambda call: f"<{call}>")
        == r"{{a}} = <number(1)> \frac{{1}}{2}"
    )


@pytest.mark.parametrize(
    "text",
    [
        'number("os:getcwd", unit="Hz")',
        'value("../../etc:passwd")',
        '__import__("os").system("true")',
        'number(__import__("os"), unit="")',
        "number((lambda: 1)(), unit='')",
        "value([x for x in (1,)])",
        "number(",
        "number()",
        "value(3)",
        "open('x')",
        "value(*(1, 2))",
        "value(**{'what': 1})",
        "value(\0)",
        "(" * 300 + ")" * 300,
    ],
)
def test_nothing_but_plain_values_is_read(text):
    with pytest.raises(Fault):
        answer(text, MAKERS)


@given(st.text(max_size=40))
def test_any_text_is_refused_with_a_sentence(text):
    with pytest.raises(Fault, match=r"\w"):
        answer(f"{text}(", MAKERS)


@given(st.text(alphabet="()[]{},'\"=+-*/.: \n\\0123456789abjnumber", max_size=30))
def test_whatever_stands_in_the_brackets_is_answered_or_refused(inner):
    with contextlib.suppress(Fault):
        answer(f"value({inner})", MAKERS)


def test_a_result_with_several_parts_needs_one_named():
    with pytest.raises(Fault, match="say which part"):
        number("unit00_bench.prefixes:split_symbol", "pF", unit="")


def test_a_forgotten_unit_is_noticed():
    with pytest.raises(Fault, match="say the unit"):
        number(RESONANCE, "200 µH", "365 pF")


@pytest.mark.filterwarnings("ignore:divide by zero")
def test_not_finite_is_refused():
    with pytest.raises(Fault):
        number(RESONANCE, 0.0, 0.0, unit="Hz")
