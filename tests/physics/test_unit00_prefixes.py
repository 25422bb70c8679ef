"""Quantities as text: against the SI's own prefixes, an independent formatter, and the properties of rounding."""

import math
from decimal import Decimal

import pytest
from hypothesis import example, given
from hypothesis import strategies as st
from matplotlib.ticker import EngFormatter

from solutions.unit00_bench.prefixes import PLAIN_UNITS, PREFIXED_UNITS, PREFIXES, from_engineering, to_engineering

# BIPM, The International System of Units (SI Brochure), 9th edition 2019, Table 7. From memory.
SI_BROCHURE_TABLE_7 = {"f": 1e-15, "p": 1e-12, "n": 1e-9, "µ": 1e-6, "m": 1e-3, "k": 1e3, "M": 1e6, "G": 1e9}

in_the_table = st.floats(1e-15, 0.9e12).flatmap(lambda size: st.sampled_from([size, -size]))
any_finite = st.floats(allow_nan=False, allow_infinity=False, min_value=-1e300, max_value=1e300)
prefixed = st.sampled_from(PREFIXED_UNITS)
any_unit = st.sampled_from(PREFIXED_UNITS + PLAIN_UNITS)


def half_a_last_figure(value: float, figures: int) -> Decimal:
    return Decimal(5).scaleb(Decimal(abs(value)).adjusted() - figures)


@pytest.mark.parametrize(("prefix", "factor"), SI_BROCHURE_TABLE_7.items())
def test_prefixes_are_those_of_the_si_brochure(prefix, factor):
    assert from_engineering(f"1 {prefix}V") == factor
    assert to_engineering(factor, "V") == f"1.000 {prefix}V"
    assert set(PREFIXES) == {"", *SI_BROCHURE_TABLE_7}


@pytest.mark.parametrize(
    ("text", "value"),
    [
        ("365 pF", 365e-12),
        ("-1.5 mV", -1.5e-3),
        ("\N{MINUS SIGN}3 dB", -3.0),
        ("+2 V", 2.0),
        ("846 kHz", 846e3),
        ("100 \N{MICRO SIGN}H", 1e-4),
        ("100 \N{GREEK SMALL LETTER MU}H", 1e-4),
        ("100 uH", 1e-4),
        ("4.7 k\N{GREEK CAPITAL LETTER OMEGA}", 4700.0),
        ("4.7 k\N{OHM SIGN}", 4700.0),
        ("14 ohm", 14.0),
        ("365pF", 365e-12),
        (" 5\N{NO-BREAK SPACE}kHz ", 5e3),
        (".5 W", 0.5),
        ("5. W", 5.0),
        ("1e-3 V", 1e-3),
        ("5 m", 5.0),
        ("5 mm", 5e-3),
        ("1.5 MHz", 1.5e6),
        ("1.5 mHz", 1.5e-3),
        ("2 mV/m", 2e-3),
        ("1.2 mA/V", 1.2e-3),
        ("0 V", 0.0),
        ("100", 100.0),
    ],
)
def test_text_in(text, value):
    assert from_engineering(text) == value


@pytest.mark.parametrize(
    ("value", "unit", "figures", "text"),
    [
        (365e-12, "F", 3, "365 pF"),
        (365e-12, "F", 4, "365.0 pF"),
        (366e-12, "F", 2, "370 pF"),
        (999.96, "Hz", 4, "1.000 kHz"),
        (999.94, "Hz", 4, "999.9 Hz"),
        (-999.96, "Hz", 4, "-1.000 kHz"),
        (0.99996e-12, "F", 4, "1.000 pF"),
        (20.7e-15, "W", 3, "20.7 fW"),
        (999.96e9, "Hz", 4, "1.000e12 Hz"),
        (1e-18, "F", 4, "1.000e-18 F"),
        (0, "Hz", 4, "0 Hz"),
        (-0.0, "", 4, "0"),
        (1e-3, "m", 2, "1.0 mm"),
        (1.0, "m", 2, "1.0 m"),
        (0.0125, "", 4, "0.01250"),
        (123.4, "", 4, "123.4"),
        (-6.0206, "dB", 3, "-6.02 dB"),
        (290, "K", 3, "290 K"),
        (2.5e-7, "m²", 2, "250e-9 m²"),
        (999_999.96, "", 4, "1.000e6"),
        (12, "turns", 2, "12 turns"),
        (0.001, "", 1, "0.001"),
        (0.000125, "", 3, "125e-6"),
    ],
)
def test_text_out(value, unit, figures, text):
    assert to_engineering(value, unit, figures) == text


@given(in_the_table, prefixed, st.integers(3, 8))
@example(999.96, "Hz", 4)
def test_agrees_with_an_independent_formatter(value, unit, figures):
    """Matplotlib's axis formatter, told how many decimals to print, must come to the same number and prefix."""
    decimals = figures - 1 - math.floor(math.log10(abs(value))) % 3
    referee = EngFormatter(unit, places=decimals)(value)
    number, symbol = referee.replace("\N{MINUS SIGN}", "-").replace("\N{GREEK SMALL LETTER MU}", "µ").split(" ")
    text = to_engineering(value, unit, figures).split(" ")
    assert (float(text[0]), text[1]) == (float(number), symbol)


@given(any_finite, any_unit, st.integers(1, 17))
@example(5e-324, "F", 17)
def test_there_and_back_within_the_figures_printed(value, unit, figures):
    text = to_engineering(value, unit, figures)
    back = from_engineering(text)
    assert abs(Decimal(back) - Decimal(value)) <= half_a_last_figure(value, figures) + Decimal(math.ulp(value))
    assert to_engineering(back, unit, figures) == text


@given(in_the_table, prefixed, st.integers(1, 17))
def test_one_to_999_before_the_point_and_the_figures_asked_for(value, unit, figures):
    number, symbol = to_engineering(value, unit, figures).split(" ")
    assert 1 <= abs(float(number)) < 1000
    shown = number.lstrip("-").replace(".", "")
    assert len(shown) == max(figures, len(str(int(abs(float(number))))))
    assert symbol.endswith(unit)


@given(any_finite.filter(bool), any_unit)
def test_a_minus_sign_changes_nothing_else(value, unit):
    assert to_engineering(-value, unit).lstrip("-") == to_engineering(value, unit).lstrip("-")
    assert to_engineering(value, unit).startswith("-") == (value < 0)


@given(st.integers(1000, 9999), st.sampled_from(["f", "p", "n", "µ", "m", "", "k", "M"]), prefixed)
def test_a_thousand_times_more_moves_the_prefix_one_step(digits, prefix, unit):
    larger = list(PREFIXES)[list(PREFIXES).index(prefix) + 1]
    number = f"{digits / 100:.2f}"
    text = to_engineering(1000 * from_engineering(f"{number} {prefix}{unit}"), unit)
    assert text == f"{number} {larger}{unit}"


@pytest.mark.parametrize(
    "text",
    [
        "",
        " ",
        "pF",
        "10 k",
        "5 M",
        "5 KHz",
        "5 kkHz",
        "5 µµF",
        "nan F",
        "inf V",
        "1,5 V",
        "1_000 V",
        "3 4 V",
        "3 V V",
        "\N{ARABIC-INDIC DIGIT THREE} V",
        "1e999 V",
        "--3 V",
        "3 kdB",
        "3 mm²",
        "3 furlongs",
        "3 V\N{NULL}",
    ],
)
def test_bad_text_is_refused_in_a_sentence(text):
    with pytest.raises(ValueError, match="write a number|never stand alone|too large"):
        from_engineering(text)


@given(st.text() | st.text(alphabet="0123456789.+-eE fpnµumkMGFHzVAΩ/²"))
def test_any_text_gives_a_finite_number_or_a_sentence(text):
    try:
        assert math.isfinite(from_engineering(text))
    except ValueError as refusal:
        assert repr(text) in str(refusal) or "never stand alone" in str(refusal)


@pytest.mark.parametrize(("value", "figures"), [(math.nan, 4), (math.inf, 4), (-math.inf, 4), (1.0, 0), (1.0, 18)])
def test_what_cannot_be_written_is_refused(value, figures):
    with pytest.raises(ValueError, match="finite|figures"):
        to_engineering(value, "V", figures)
