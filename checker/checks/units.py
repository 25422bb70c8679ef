"""Numbers with an engineering prefix and a unit, written and read: the one place for the checker and the site.

`solutions/unit00_bench/prefixes.py` does the same as the reference of an exercise, and nothing else leans on it.
"""

import math
import re
from collections.abc import Collection
from decimal import Decimal
from typing import Any

PREFIXES = {-15: "f", -12: "p", -9: "n", -6: "µ", -3: "m", 0: "", 3: "k", 6: "M", 9: "G", 12: "T"}
# Units that take no prefix: nobody says a millidecibel or a kilodegree.
BARE = {"", "K", "dB", "°", "°C", "%", "turns", "m²", "days", "h"}
# Units that a text may have, with a prefix and without.
PREFIXED = frozenset("A V W Ω ohm S F H Hz s m J C T Pa rad/s V/m A/V S/m Ω/m Ω·m F/m H/m".split())
PLAIN = frozenset(("", "dB", "dBm", "K", "°C", "°", "rad", "%", "m²"))
# text.translate(LOOK_ALIKES) writes every look-alike in one way.
LOOK_ALIKES = str.maketrans({"u": "µ", "\N{GREEK SMALL LETTER MU}": "µ", "\N{OHM SIGN}": "Ω", "\N{MINUS SIGN}": "-"})
_QUANTITY = re.compile(r"\s*([-+]?(?:[0-9]+\.?[0-9]*|\.[0-9]+)(?:[eE][-+]?[0-9]{1,3})?)\s*(.*?)\s*")


def in_words(value: Any, unit: str = "", figures: int = 4) -> str:
    """A number as text: `in_words(1.592e6, "Hz")` is "1.592 MHz"; in ASCII minus, never scientific within the prefixes."""
    if isinstance(value, bool) or not isinstance(value, (int, float)):
        return str(value)
    if not math.isfinite(value):
        return f"{value} {unit}".strip()
    if unit in BARE:
        return _joined(f"{value:.{figures}g}", unit)
    return _with_prefix(value, unit, figures, PREFIXES)


def in_full(value: float, unit: str = "", figures: int = 4) -> str:
    """A number as the pages print it, all its figures and their zeros: `in_full(0.0125)` is "0.01250".

    Only a unit in `PREFIXED` takes a prefix; with any other, or none, numbers from 0.001 up to a million are printed in full.

    Raises
    ------
    ValueError
        If `value` is not finite, or `figures` is not 1 to 17.
    """
    if not math.isfinite(value):
        raise ValueError(f"only a finite number can be written with a prefix, not {value}")
    if not 1 <= figures <= 17:
        raise ValueError(f"figures must be 1 to 17, not {figures}")
    return _with_prefix(value, unit, figures, PREFIXES if unit in PREFIXED else {-3: "", 0: "", 3: ""})


def _with_prefix(value: float, unit: str, figures: int, prefixes: dict[int, str]) -> str:
    """The number is rounded first, so that 999.96 Hz becomes 1.000 kHz; where there is no prefix, the power of ten is written."""
    if value == 0:
        return _joined("0", unit)
    rounded = Decimal(f"{value:.{figures - 1}e}")
    power = 3 * (rounded.adjusted() // 3)
    if power not in prefixes:
        return _joined(f"{rounded.scaleb(-power):f}e{power}", unit)
    shift = power if prefixes[power] else 0
    return _joined(f"{rounded.scaleb(-shift):f}", prefixes[power] + unit)


def _joined(number: str, unit: str) -> str:
    """A number with its unit: a space between them, but before the sign for degrees of an angle (BIPM, SI Brochure, 9th edition, 2019,
    5.4.3, from memory)."""
    return f"{number}{'' if unit == '°' else ' '}{unit}".rstrip()


def tidily(value: Any, unit: str = "", figures: int = 6) -> str:
    """A number that has few figures, without the zeros that `in_words` ends it with: "100 pF", not "100.0 pF"."""
    number, _, rest = in_words(value, unit, figures).partition(" ")
    if "." in number and "e" not in number:
        number = number.rstrip("0").rstrip(".")
    return f"{number} {rest}".rstrip()


def quantity(text: str, unit: str) -> float:
    """The number in a text such as "365 pF": `quantity("365 pF", "F")` is 365e-12. ValueError names what was wrong."""
    try:
        return _read(text, {unit.translate(LOOK_ALIKES)}, ())[0]
    except ValueError:
        wanted = unit or "plain numbers"
        raise ValueError(f"{text!r} is not a quantity in {wanted}: write a number, a space and the unit") from None


def any_quantity(text: str) -> tuple[float, str]:
    """The number in a text such as "365 pF", and its unit without the prefix: 365e-12 and "F". ValueError if it has none."""
    return _read(text, PREFIXED, PLAIN)


def _read(text: str, prefixed: Collection[str], plain: Collection[str]) -> tuple[float, str]:
    match = _QUANTITY.fullmatch(text.translate(LOOK_ALIKES))
    if not match:
        raise ValueError(f"{text!r} is not a quantity: write a number, a space and a unit, such as '365 pF'")
    power, unit = _split_symbol(match[2], prefixed, plain)
    value = float(Decimal(match[1]).scaleb(power))
    if math.isinf(value):
        raise ValueError(f"{text!r} is too large to compute with: use fewer digits or a smaller exponent")
    return value, unit


def _split_symbol(symbol: str, prefixed: Collection[str], plain: Collection[str]) -> tuple[int, str]:
    """Power of ten and bare unit of a unit symbol: (-12, "F") for "pF"."""
    if symbol in plain:
        return 0, symbol
    for power, prefix in PREFIXES.items():
        if symbol.startswith(prefix) and symbol.removeprefix(prefix) in prefixed:
            return power, symbol.removeprefix(prefix)
    raise ValueError(f"{symbol!r} is not a prefix and a unit: a prefix never stands alone, and kilo is a small k")
