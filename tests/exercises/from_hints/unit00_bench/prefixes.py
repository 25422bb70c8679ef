r"""In: match = re.fullmatch(r'([-+.0-9eE]*[0-9.])\s*(\S*)', text.strip().translate(LOOK_ALIKES)); no match is a
ValueError; number, symbol = match.groups(); the value is float(number) * 10.0**exponent. Out, for a value that is
finite and not zero: digits, power = f'{value:.{figures - 1}e}'.split('e'); power = int(power); group = power // 3 * 3,
but 0 for a unit that takes no prefix if -3 <= power < 6. The number is f'{float(digits) * 10.0**(power -
group):.{max(0, figures - 1 - (power - group))}f}'. If the group has no prefix, or the unit takes none, print
f'e{group}' right after the number instead, unless the group is 0.
"""

import math
import re

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


def from_engineering(text: str) -> float:
    match = re.fullmatch(r"([-+.0-9eE]*[0-9.])\s*(\S*)", text.strip().translate(LOOK_ALIKES))
    if match is None:
        raise ValueError(f"{text!r} is not a number with a unit")
    number, symbol = match.groups()
    if symbol in PLAIN_UNITS:
        return float(number)
    for prefix, exponent in PREFIXES.items():
        if symbol.startswith(prefix) and symbol[len(prefix) :] in PREFIXED_UNITS:
            return float(number) * 10.0**exponent
    raise ValueError(f"there is no unit {symbol!r}")


def to_engineering(value: float, unit: str, figures: int = 4) -> str:
    if not math.isfinite(value):
        raise ValueError("the value must be finite")
    if not 1 <= figures <= 17:
        raise ValueError("figures must be 1 to 17")
    if value == 0:
        return f"0 {unit}".strip()
    takes_prefix = unit in PREFIXED_UNITS
    digits, power = f"{value:.{figures - 1}e}".split("e")
    power = int(power)
    group = power // 3 * 3
    if not takes_prefix and -3 <= power < 6:
        group = 0
    number = f"{float(digits) * 10.0 ** (power - group):.{max(0, figures - 1 - (power - group))}f}"
    prefix = ""
    if group != 0:
        if takes_prefix and group in PREFIXES.values():
            prefix = next(p for p in PREFIXES if PREFIXES[p] == group)
        else:
            number += f"e{group}"
    return f"{number} {prefix}{unit}".strip()
