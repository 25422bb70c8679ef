"""Engineering notation. Isla Marrow, done on two evenings."""
import math
import re

PREFIXES = {"f": -15, "p": -12, "n": -9, "µ": -6, "m": -3, "": 0, "k": 3, "M": 6, "G": 9}
PREFIXED_UNITS = ("A", "V", "W", "Ω", "ohm", "S", "F", "H", "Hz", "s", "m", "J", "C", "T", "Pa",
                  "rad/s", "V/m", "A/V", "S/m", "Ω/m", "Ω·m", "F/m", "H/m")
PLAIN_UNITS = ("", "dB", "dBm", "K", "°C", "°", "rad", "%", "m²")
LOOK_ALIKES = str.maketrans({"u": "µ", "\N{GREEK SMALL LETTER MU}": "µ", "\N{OHM SIGN}": "Ω", "\N{MINUS SIGN}": "-"})


def from_engineering(text):
    found = re.fullmatch(r"\s*([-+]?[0-9]*\.?[0-9]+(?:[eE][-+]?[0-9]+)?)\s*(\S*)\s*", text.translate(LOOK_ALIKES))
    if found is None:
        raise ValueError(f"I cannot read {text!r} as a number with a unit")
    number, symbol = float(found[1]), found[2]
    if symbol in PLAIN_UNITS:
        return number
    # the empty prefix is tried as well, so "m" is the metre and "mm" is not
    for prefix, power in PREFIXES.items():
        rest = symbol[len(prefix):]
        if symbol.startswith(prefix) and rest in PREFIXED_UNITS:
            return number * 10.0**power
    raise ValueError(f"{symbol!r} is not a prefix and a unit")


def to_engineering(value, unit, figures=4):
    if not math.isfinite(value):
        raise ValueError("not a finite number")
    if not 1 <= figures <= 17:
        raise ValueError("between 1 and 17 figures, please")
    if value == 0:
        return ("0 " + unit).strip()
    # Python rounds and carries for me, and says the power of ten of what is left
    digits, power = f"{value:.{figures - 1}e}".split("e")
    power = int(power)
    group = 3 * (power // 3)
    if unit not in PREFIXED_UNITS and -3 <= power <= 5:
        group = 0
    decimals = max(0, figures - 1 - (power - group))
    number = f"{float(digits) * 10.0**(power - group):.{decimals}f}"
    if unit in PREFIXED_UNITS:
        for prefix, exponent in PREFIXES.items():
            if exponent == group:
                return f"{number} {prefix}{unit}"
    elif group == 0:
        return f"{number} {unit}".strip()
    return f"{number}e{group} {unit}".strip()
