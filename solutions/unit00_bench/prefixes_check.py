"""How `prefixes` is judged."""

from dataclasses import replace
from decimal import Decimal

from checker import Exercise, Question, at_most, drawn, exactly, invariant, less, refusal, relative, slip, value
from checker import whole as whole_number

from .prefixes import PREFIXED_UNITS, PREFIXES, from_engineering, split_symbol, to_engineering

BROCHURE = "BIPM, The International System of Units (SI Brochure), 9th edition 2019, Table 7"
A_DEFINITION = relative(1e-12, because="a definition")
THE_TEXT = exactly("a text is the one wanted or it is not")

NUMBERS = ["100", "1", "365", "846", "4.7", "0.5", "1.592", ".5", *(f"{n / 100:g}" for n in range(1, 99999, 1117))]
SIMPLEST_FIRST = ("p", *(prefix for prefix in PREFIXES if prefix != "p"), "u", "\N{GREEK SMALL LETTER MU}")
SYMBOLS = [prefix + unit for prefix in SIMPLEST_FIRST for unit in ("F", "H", "Hz", "V", "A", "Ω", "m", "V/m")]
TEXTS = [f"{sign}{number} {symbol}" for sign in ("", "-") for number in NUMBERS for symbol in SYMBOLS]
# No 5 among the digits: whether a half is rounded up or down is not the question here.
NO_HALVES = [f"{n / 100:g}" for n in (100, 84600, 99996, *range(1, 99999, 373)) if "5" not in str(n)]
SIZES = [float(f"{number}e{power}") for number in NO_HALVES for power in (3, 0, 6, 9, -3, -6, -9, -12)]
VALUES = [*SIZES, *(-size for size in SIZES), 0.0]


def misread(text, factor):
    """The number in a text, by someone with another idea of the prefixes."""
    number, symbol = text.split(" ")
    return float(number) * factor(split_symbol(symbol)[0])


def miswritten(
    value, unit, figures, form="{number} {prefix}{unit}", number="{:.{decimals}f}", prefixes=PREFIXES, rounds_first=True
):
    """The text for a number, by someone with another idea of one of its parts."""
    if value == 0:
        return to_engineering(value, unit)
    rounded = Decimal(f"{value:.{figures - 1}e}")
    decides = rounded if rounds_first else Decimal(value)
    group = decides.adjusted() // 3 * 3 if unit in PREFIXED_UNITS else 0
    scaled = rounded.scaleb(-group)
    digits = number.format(float(scaled), decimals=max(0, figures - 1 - scaled.adjusted()), figures=figures)
    prefix = {exponent: name for name, exponent in prefixes.items()}[group]
    return form.format(number=digits, prefix=prefix, unit=unit).rstrip()


def printed_number(text):
    return float(str(text).split(" ")[0])


def figures_printed(text):
    return sum(map(str.isdigit, str(text).split(" ")[0]))


EXERCISE = Exercise(
    title="A number and its unit",
    questions=[
        Question(
            asks=from_engineering,
            given={"text": drawn(TEXTS, "such as '365 pF', '-4.7 kΩ' or '.5 V/m'", show=repr)},
            agrees_within=relative(1e-12, because="a number times a power of ten, in double precision"),
            arrays=False,
            holds=[
                invariant(
                    "a minus sign turns the sign round and nothing else",
                    lambda f, text: (f("-" + text.lstrip("-")), -f(text.lstrip("-"))),
                ),
                invariant(
                    "'3 uV', with a u, is '3 µV', and so it is with the other micro sign, the Greek letter",
                    lambda f, text: ([f("3 uV"), f("3 \N{GREEK SMALL LETTER MU}V")], f("3 µV")),
                ),
                invariant(
                    "'3 Ω' may be written with either omega, and as '3 ohm'",
                    lambda f, text: ([f("3 \N{OHM SIGN}"), f("3 ohm")], f("3 Ω")),
                ),
                invariant("'−3 V' may be written with either minus sign", lambda f, text: (f("\N{MINUS SIGN}3 V"), f("-3 V"))),
                invariant(
                    "M is mega and m is milli: a thousand million times apart", lambda f, text: (f("3 MHz"), 1e9 * f("3 mHz"))
                ),
                invariant("m alone is the metre: 5 m is 5000 mm", lambda f, text: (f("5 m"), f("5000 mm"))),
                invariant("'-6 dB' is -6: a decibel takes no prefix", lambda f, text: (f("-6 dB"), -6)),
                invariant("'100', with no unit at all, is 100", lambda f, text: (f("100"), 100)),
                invariant("the space may be missing", lambda f, text: (f(text.replace(" ", "")), f(text))),
            ],
            published=[
                value("femto", given=("1 fF",), wanted=1e-15, within=A_DEFINITION, source=BROCHURE, known="memory"),
                value("pico", given=("1 pF",), wanted=1e-12, within=A_DEFINITION, source=BROCHURE, known="memory"),
                value("micro", given=("1 µF",), wanted=1e-6, within=A_DEFINITION, source=BROCHURE, known="memory"),
                value("giga", given=("1 GHz",), wanted=1e9, within=A_DEFINITION, source=BROCHURE, known="memory"),
            ],
            refuses=[
                refusal("'10 k', a prefix that stands alone", ("10 k",)),
                refusal("'5 KHz': kilo is a small k", ("5 KHz",)),
                refusal(
                    "'pF', a unit without a number that can be read", ("pF",), ("",), ("1,000 Hz",), ("nan V",), ("1.2.3 V",)
                ),
                refusal(
                    "'3 furlongs', a unit that is not in the list, and whatever is no unit: two prefixes, two units",
                    ("3 furlongs",),
                    ("3 mkHz",),
                    ("3 V V",),
                    ("3 hz",),
                ),
                refusal("a prefix before a unit that takes none, as in '3 kdB'", ("3 kdB",), ("3 mK",), ("3 k%",), ("3 µrad",)),
            ],
            slips=[
                slip(
                    "taken m for mega and M for milli",
                    lambda text: misread(text, lambda power: 10.0 ** {-3: 6, 6: -3}.get(power, power)),
                ),
                slip("left the prefix out of account", lambda text: misread(text, lambda power: 1.0)),
                slip("divided by the prefix instead of multiplying", lambda text: misread(text, lambda power: 10.0**-power)),
                slip(
                    "counted in steps of 1024, as for computer memory; here kilo is 1000",
                    lambda text: misread(text, lambda power: 1024.0 ** (power // 3)),
                ),
                slip("lost the minus sign", lambda text: abs(from_engineering(text))),
            ],
        ),
        Question(
            asks=to_engineering,
            given={
                # The ends are called whatever the seed: 999.96 Hz to three figures, which carries, and zero.
                "value": replace(
                    drawn(VALUES, "zero, or 10 femto to 900 giga of either sign, up to five figures", show=repr),
                    ends=(999.96, 0.0),
                ),
                "unit": drawn(["Hz", "F", "Ω", "V/m", "dB", ""], "'Hz', 'F', 'Ω', 'V/m', 'dB', or '' for none", show=repr),
                "figures": whole_number(3, 5),
            },
            edges=[
                lambda value, unit, figures: (1.0, unit, 17),
                lambda value, unit, figures: (2.0, unit, 1),
                lambda value, unit, figures: (0.001, unit, figures),
                lambda value, unit, figures: (-0.0, "V", figures),
            ],
            where=lambda value, unit, figures: (
                abs(value) < (900e9 if unit in PREFIXED_UNITS else 900e3)
                and (unit in PREFIXED_UNITS or not 0 < abs(value) < 0.002)
            ),
            agrees_within=THE_TEXT,
            arrays=False,
            holds=[
                invariant(
                    "a minus sign turns the sign round and nothing else",
                    lambda f, v, unit, n: (printed_number(f(-8e-12, "F", n)), -printed_number(f(8e-12, "F", n))),
                ),
                invariant(
                    "the number printed is below 1000, after rounding too",
                    lambda f, v, unit, n: (printed_number(f(999.99996, "Hz", n)), 1000),
                    less,
                ),
                invariant(
                    "as many figures are printed as were asked for, and four if none were",
                    lambda f, v, unit, n: ((figures_printed(f(84e-12, "F", n)), figures_printed(f(84e-12, "F"))), (n, 4)),
                ),
                invariant(
                    "zeros fill up to the point: 366 pF to one figure is 400 pF",
                    lambda f, v, unit, n: (printed_number(f(366e-12, "F", 1)), 400),
                ),
                invariant(
                    "where the table has no prefix, the power of ten is printed: '1.00e-18 F'",
                    lambda f, v, unit, n: (printed_number(f(1e-18, "F", n)), 1e-18),
                ),
                invariant(
                    "a unit without prefix is printed in full from 0.001 up to a million, and no further",
                    lambda f, v, unit, n: ([str(f(size, "m²", 6)).count("e") for size in (0.001, 999999.0, 1e6)], [0, 0, 1]),
                ),
                invariant(
                    "your from_engineering reads back what is printed, to half of its last figure",
                    lambda f, v, unit, n: (abs(f.from_engineering(f(v, unit, n)) - v), abs(v) * 5.001 * 0.1**n),
                    at_most,
                ),
            ],
            published=[
                value("femto", given=(1e-15, "F", 4), wanted="1.000 fF", within=THE_TEXT, source=BROCHURE, known="memory"),
                value("pico", given=(1e-12, "F", 4), wanted="1.000 pF", within=THE_TEXT, source=BROCHURE, known="memory"),
                value("giga", given=(1e9, "Hz", 4), wanted="1.000 GHz", within=THE_TEXT, source=BROCHURE, known="memory"),
            ],
            refuses=[
                refusal("nan, which is no number to print", (float("nan"), "V", 4)),
                refusal("infinity", (float("inf"), "V", 4)),
                refusal("0 figures", (1.0, "V", 0), (0.0, "V", 0)),
                refusal("18 figures, more than a float holds", (1.0, "V", 18)),
            ],
            slips=[
                slip(
                    "chosen the prefix before rounding: 999.96 Hz came out as 1000 Hz",
                    lambda v, unit, n: miswritten(v, unit, n, rounds_first=False),
                ),
                slip(
                    "printed that many decimals; figures count from the first digit that is not zero",
                    lambda v, unit, n: miswritten(v, unit, n, number="{:.{figures}f}"),
                ),
                slip(
                    "dropped the zeros at the end: they say how well the number is known",
                    lambda v, unit, n: miswritten(v, unit, n, number="{:.{figures}g}"),
                ),
                slip(
                    "left out the space between number and unit",
                    lambda v, unit, n: miswritten(v, unit, n, form="{number}{prefix}{unit}"),
                ),
                slip(
                    "put a space between prefix and unit: they are one symbol",
                    lambda v, unit, n: miswritten(v, unit, n, form="{number} {prefix} {unit}"),
                ),
                slip(
                    "taken m for mega and M for milli",
                    lambda v, unit, n: miswritten(v, unit, n, prefixes=PREFIXES | {"m": 6, "M": -3}),
                ),
            ],
        ),
    ],
    hints=[
        "In: part the text into a number and a symbol, then the symbol into a prefix and a unit. Out: round first, "
        "then choose the prefix, then print. The tables at the top of the file hold all prefixes and units.",
        "In: try each prefix in turn, the empty one too; it is the right one if what follows it is in "
        "PREFIXED_UNITS. Then 'm' is the metre and 'mm' a thousandth of it, with no special case. Out: "
        "format(value, '.3e') rounds to four figures and gives the power of ten as well, after any carry: 999.96 "
        "gives '1.000e+03'. From that power go down to a multiple of three.",
        "In: match = re.fullmatch(r'([-+.0-9eE]*[0-9.])\\s*(\\S*)', text.strip().translate(LOOK_ALIKES)); no match is"
        " a ValueError; number, symbol = match.groups(); the value is float(number) * 10.0**exponent. Out, for a "
        "value that is finite and not zero: digits, power = f'{value:.{figures - 1}e}'.split('e'); power = "
        "int(power); group = power // 3 * 3, but 0 for a unit that takes no prefix if -3 <= power < 6. The number "
        "is f'{float(digits) * 10.0**(power - group):.{max(0, figures - 1 - (power - group))}f}'. If the group has "
        "no prefix, or the unit takes none, print f'e{group}' right after the number instead, unless the group is "
        "0.",
    ],
)
