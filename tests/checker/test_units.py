"""Numbers in words: against the reference of the prefixes exercise, which was written independently of it."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from checker.checks import given as inputs
from checker.checks.units import any_quantity, in_full, in_words, quantity, tidily
from solutions.unit00_bench.prefixes import PLAIN_UNITS, PREFIXED_UNITS, from_engineering, to_engineering


@given(st.floats(1e-12, 9e11), st.sampled_from(["Hz", "F", "H", "Ω", "V"]), st.integers(3, 6))
def test_agrees_with_the_exercise_on_prefixes(value, unit, figures):
    assert in_words(value, unit, figures) == to_engineering(value, unit, figures)
    assert in_words(-value, unit, figures) == to_engineering(-value, unit, figures)


@given(st.floats(1e-12, 9e11), st.sampled_from(["Hz", "F", "H", "Ω", "V", "W", "A", "m"]), st.integers(1, 6))
def test_tidily_is_the_exercise_s_number_without_its_last_zeros(value, unit, figures):
    number, _, symbol = to_engineering(value, unit, figures).partition(" ")
    assert tidily(value, unit, figures) == f"{number.rstrip('0').rstrip('.') if '.' in number else number} {symbol}"


@given(st.floats(1e-20, 9e11), st.sampled_from([*PREFIXED_UNITS, *PLAIN_UNITS, "h", "A/m²"]), st.integers(1, 17))
def test_the_pages_numbers_are_those_of_the_exercise(value, unit, figures):
    for number in (value, -value, 0.0):
        written = to_engineering(number, unit, figures)
        assert in_full(number, unit, figures) == (written.replace(" ", "") if unit == "°" else written)


@given(
    st.from_regex(r"[-+−]?[0-9]{1,4}(\.[0-9]{1,3})?(e-?[0-9])?", fullmatch=True),
    st.sampled_from([" ", ""]),
    st.sampled_from(["p", "u", "µ", "μ", "m", "", "k", "M", "K", "x"]),
    st.sampled_from([*PREFIXED_UNITS, *PLAIN_UNITS, "\N{OHM SIGN}", "furlong"]),
)
def test_a_text_is_read_as_the_exercise_reads_it(number, space, prefix, unit):
    text = f"{number}{space}{prefix}{unit}"
    try:
        wanted = from_engineering(text)
    except ValueError:
        with pytest.raises(ValueError):
            any_quantity(text)
    else:
        assert any_quantity(text)[0] == wanted


@given(st.floats(1e-14, 1e13))
def test_text_reads_back_to_the_figures_printed(value):
    assert quantity(in_words(value, "F", 6), "F") == pytest.approx(value, rel=1e-5)


@pytest.mark.parametrize(
    ("value", "unit", "text"),
    [
        (0, "Hz", "0 Hz"),
        (999.96, "Hz", "1.000 kHz"),
        (1e-18, "F", "1.000e-18 F"),
        (-3.01, "dB", "-3.01 dB"),
        (90.0, "°", "90°"),
        (float("nan"), "V", "nan V"),
        (0.0002, "", "0.0002"),
    ],
)
def test_in_words(value, unit, text):
    assert in_words(value, unit) == text


def test_tidy_inputs_lose_their_zeros():
    assert tidily(100e-12, "F") == "100 pF"
    assert tidily(7.17e-5, "H") == "71.7 µH"
    assert tidily(100, "") == "100"


@pytest.mark.parametrize(
    ("text", "unit", "value"),
    [("100 A/(m² K²)", "A/(m² K²)", 100), ("44 turns", "turns", 44), ("3 μH", "H", 3e-6), ("-20", "", -20), ("5k", "", 5e3)],
)
def test_a_quantity_of_any_unit_that_is_asked_for(text, unit, value):
    assert quantity(text, unit) == value


@pytest.mark.parametrize("text", [". F", "1.2.3 pF", "1e999 F", "365", "365 pH", "pF", "1,5 pF", "365 xF", ""])
def test_bad_quantities_are_refused_in_a_sentence(text):
    with pytest.raises(ValueError, match="is not a quantity in F"):
        quantity(text, "F")


@given(st.sampled_from([(1e-12, 2e-9), (0.0, 1.0), (-20e3, 20e3), (5.0, 30.0), (0.0, 180.0)]))
def test_values_lie_in_their_range_and_hold_its_ends(ends):
    values = inputs.tidy_values(*ends)
    assert min(values) == ends[0] and max(values) == ends[1]
    assert len(set(values)) == len(values) > 100


def test_simplest_value_is_one_a_person_would_choose():
    assert inputs.henries("10 µH", "10 mH").values[0] == 100e-6
    assert inputs.farads("5 pF", "2 nF").values[0] == 100e-12


def test_a_range_that_runs_backwards_is_refused():
    with pytest.raises(ValueError, match="runs upwards"):
        inputs.ohms("10 kΩ", "1 kΩ")
