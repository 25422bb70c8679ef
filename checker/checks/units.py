"""Numbers as a person reads them: four figures, an engineering prefix, the unit."""

import math
import re
from decimal import Decimal
from typing import Any

PREFIXES = {-15: "f", -12: "p", -9: "n", -6: "µ", -3: "m", 0: "", 3: "k", 6: "M", 9: "G", 12: "T"}
# Units that take no prefix: nobody says a millidecibel or a kilodegree.
BARE = {"", "K", "dB", "°", "°C", "%", "turns", "m²", "days", "h"}
_POWER = {prefix: power for power, prefix in PREFIXES.items()} | {"u": -6, "μ": -6}
_QUANTITY = re.compile(r"\s*([-+]?(?:[0-9]+\.?[0-9]*|\.[0-9]+)(?:[eE][-+]?[0-9]{1,2})?)\s*(.*?)\s*")


def in_words(value: Any, unit: str = "", figures: int = 4) -> str:
    """A number as text: `in_words(1.592e6, "Hz")` is "1.592 MHz"; in ASCII minus, never scientific within the prefixes."""
    if isinstance(value, bool) or not isinstance(value, (int, float)):
        return str(value)
    if not math.isfinite(value):
        return f"{value} {unit}".strip()
    if unit in BARE:
        return f"{value:.{figures}g} {unit}".strip() if unit != "°" else f"{value:.{figures}g}°"
    if value == 0:
        return f"0 {unit}"
    rounded = Decimal(f"{value:.{figures - 1}e}")
    power = 3 * (rounded.adjusted() // 3)
    if power not in PREFIXES:
        return f"{rounded:.{figures - 1}e} {unit}"
    return f"{rounded.scaleb(-power):f} {PREFIXES[power]}{unit}"


def tidily(value: Any, unit: str = "", figures: int = 6) -> str:
    """A number that has few figures, without the zeros that `in_words` ends it with: "100 pF", not "100.0 pF"."""
    number, _, rest = in_words(value, unit, figures).partition(" ")
    if "." in number and "e" not in number:
        number = number.rstrip("0").rstrip(".")
    return f"{number} {rest}".rstrip()


def quantity(text: str, unit: str) -> float:
    """The number in a text such as "365 pF": `quantity("365 pF", "F")` is 365e-12. ValueError names what was wrong."""
    match = _QUANTITY.fullmatch(text)
    prefix = match and match[2].removesuffix(unit)
    if not match or (unit and not match[2].endswith(unit)) or prefix not in _POWER:
        raise ValueError(f"{text!r} is not a quantity in {unit or 'plain numbers'}: write a number, a space and the unit")
    return float(Decimal(match[1]).scaleb(_POWER[prefix]))
