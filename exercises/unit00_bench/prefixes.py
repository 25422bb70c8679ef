"""Engineering notation, in and out.   Lesson: Bench, sections 2 and 4 (course/lessons/unit00_bench/tools.md)."""

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
    raise NotImplementedError


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
    raise NotImplementedError
