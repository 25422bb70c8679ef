"""Engineering notation, in and out.   Lesson: Bench, sections 2 and 4.

The checker and the site have their own in `checker/checks/units.py`, since a student pack holds no solutions;
`tests/checker/test_units.py` holds the two to each other.
"""

import math
import re
from decimal import Decimal

from solutions.ranges import check_ranges

PREFIXES = {"f": -15, "p": -12, "n": -9, "µ": -6, "m": -3, "": 0, "k": 3, "M": 6, "G": 9}
PREFIXED_UNITS = (
    "A",
    "V",
    "W",
    "Ω",
    "ohm",
    "S",
    "F",
    "H",
    "Hz",
    "s",
    "m",
    "J",
    "C",
    "T",
    "Pa",
    "rad/s",
    "V/m",
    "A/V",
    "S/m",
    "Ω/m",
    "Ω·m",
    "F/m",
    "H/m",
)
PLAIN_UNITS = ("", "dB", "dBm", "K", "°C", "°", "rad", "%", "m²")
# text.translate(LOOK_ALIKES) writes every look-alike in one way.
LOOK_ALIKES = str.maketrans({"u": "µ", "\N{GREEK SMALL LETTER MU}": "µ", "\N{OHM SIGN}": "Ω", "\N{MINUS SIGN}": "-"})

NUMBER_THEN_SYMBOL = re.compile(r"\s*([-+]?(?:[0-9]+\.?[0-9]*|\.[0-9]+)(?:[eE][-+]?[0-9]{1,3})?)\s*(\S*)\s*")


def from_engineering(text: str) -> float:
    """Number in plain SI units that a text such as "365 pF" stands for.

    Parameters
    ----------
    text : str
        A number, a space, a prefix (one of f p n µ m k M G, or none) and a unit. `u` and both micro signs stand for
        micro, both omegas and `ohm` for the ohm, both minus signs for minus. The space may be missing.

    Returns
    -------
    float, in the unit without its prefix: farad for "365 pF"

    Raises
    ------
    ValueError
        If the text is no number with a known unit, or holds a prefix that stands alone ("10 k") or before a unit that
        takes none ("3 kdB").

    Source
    ------
    BIPM, The International System of Units (SI Brochure), 9th edition 2019, section 3, Table 7. From memory.
    """
    match = NUMBER_THEN_SYMBOL.fullmatch(text.translate(LOOK_ALIKES))
    if not match:
        raise ValueError(f"{text!r} is not a quantity: write a number, a space and a unit, such as '365 pF'")
    number, symbol = match.groups()
    exponent, _ = split_symbol(symbol)
    value = float(Decimal(number).scaleb(exponent))
    if math.isinf(value):
        raise ValueError(f"{text!r} is too large to compute with: use fewer digits or a smaller exponent")
    return value


def split_symbol(symbol: str) -> tuple[int, str]:
    """Power of ten and bare unit of a unit symbol: (-12, "F") for "pF".

    Parameters
    ----------
    symbol : str
        Prefix and unit, written without a space.

    Returns
    -------
    (int, str)

    Raises
    ------
    ValueError
        If the unit is not known or the prefix is not one of `PREFIXES`.
    """
    symbol = symbol.translate(LOOK_ALIKES)
    if symbol in PLAIN_UNITS:
        return 0, symbol
    for prefix, exponent in PREFIXES.items():
        if symbol.startswith(prefix) and symbol[len(prefix) :] in PREFIXED_UNITS:
            return exponent, symbol[len(prefix) :]
    raise ValueError(
        f"{symbol!r} is not a prefix and a unit: the prefixes are f p n µ m k M G (kilo is a small k) "
        f"and never stand alone; the units are {' '.join(PREFIXED_UNITS)}"
    )


@check_ranges
def to_engineering(value: float, unit: str, figures: int = 4) -> str:
    """Text for an SI number, with the prefix that leaves 1 to 999 before the decimal point.

    The number is rounded to `figures` significant figures first, so 999.96 Hz becomes "1.000 kHz". Zero is "0 Hz".
    Where the table has no prefix, the power of ten is written instead: "1.000e-18 F". Only a unit in `PREFIXED_UNITS`
    takes a prefix; with any other unit, or none, numbers from 0.001 up to a million are printed in full: "0.01250".

    Parameters
    ----------
    value : float
    unit : str
        SI unit without prefix.
    figures : int, 1 to 17
        Significant figures, trailing zeros included.

    Returns
    -------
    str
        Number, space, prefix and unit; the number alone if `unit` is empty.

    Raises
    ------
    ValueError
        If `value` is not finite, or `figures` is not 1 to 17.

    Source
    ------
    BIPM, The International System of Units (SI Brochure), 9th edition 2019, section 3 and Table 7 (prefixes; a prefix
    never stands alone) and section 5.4.3 (a space between number and unit). From memory.
    """
    if not math.isfinite(value):
        raise ValueError(f"only a finite number can be written with a prefix, not {value}")
    if value == 0:
        return f"0 {unit}".rstrip()
    prefix_of = {exponent: prefix for prefix, exponent in PREFIXES.items()} if unit in PREFIXED_UNITS else {0: ""}
    rounded = Decimal(f"{value:.{figures - 1}e}")
    power = rounded.adjusted() // 3 * 3
    if unit not in PREFIXED_UNITS and power in (-3, 3):
        power = 0
    number = f"{rounded.scaleb(-power):f}"
    if power not in prefix_of:
        return f"{number}e{power} {unit}".rstrip()
    return f"{number} {prefix_of[power]}{unit}".rstrip()
