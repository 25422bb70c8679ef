import re

PREFIXES = {"f": -15, "p": -12, "n": -9, "µ": -6, "m": -3, "": 0, "k": 3, "M": 6, "G": 9}
PREFIXED_UNITS = ("A", "V", "W", "Ω", "ohm", "S", "F", "H", "Hz", "s", "m", "J", "C", "T", "Pa",
                  "rad/s", "V/m", "A/V", "S/m", "Ω/m", "Ω·m", "F/m", "H/m")
PLAIN_UNITS = ("", "dB", "dBm", "K", "°C", "°", "rad", "%", "m²")
LOOK_ALIKES = str.maketrans({"u": "µ", "\N{GREEK SMALL LETTER MU}": "µ", "\N{OHM SIGN}": "Ω", "\N{MINUS SIGN}": "-"})


def from_engineering(text):
    # every symbol there is, once and for all
    symbols = {unit: 0 for unit in PLAIN_UNITS}
    for prefix, power in PREFIXES.items():
        for unit in PREFIXED_UNITS:
            symbols.setdefault(prefix + unit, power)
    symbols["m"] = 0
    match = re.fullmatch(r"([-+.0-9eE]*[0-9.])\s*(\S*)", text.strip().translate(LOOK_ALIKES))
    if match is None or match.group(2) not in symbols:
        raise ValueError("cannot read " + text)
    return float(match.group(1)) * 10.0 ** symbols[match.group(2)]


def to_engineering(value, unit, figures=4):
    # write it out in full: never lose a digit
    return f"{value:.20000f} {unit}"
