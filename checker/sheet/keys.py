"""What may stand in a builder's file: one table, in the order of the sheet and of the page for builders.

A quantity is text with its unit. Its range is what the physics covers, or what anybody would wind.
"""

from dataclasses import dataclass

from ..checks.units import any_quantity
from . import physics

SETS = ("crystal set", "one valve", "one valve with reaction", "isolated aerial with reaction", "quenched")
CRYSTAL, VALVE, REACTION, ISOLATED, QUENCHED = SETS

# Siemens per metre, and a pure number: as on the page "Ground" of unit 01, by ITU-R P.368.
GROUNDS = {"sea": (5.0, 70.0), "salt marsh": (0.03, 40.0), "average land": (0.003, 22.0), "dry heath": (0.001, 15.0)}

# Decibel above thermal noise at 1 MHz, and its fall with frequency: Recommendation ITU-R P.372, as in `noise_field`.
SURROUNDINGS = {"city": (76.8, 27.7), "houses": (72.5, 27.7), "country": (67.2, 27.7), "quiet country": (53.6, 28.6)}

# Volt, ampere and what is heated, of the types with a fitted law: RCA Receiving Tube Manual, some found, the rest from memory,
# as tests/published/valve/triodes.csv says of each.
FILAMENTS = {
    "01-A": (5.0, 0.25, "filament"),
    "11 / 12 (WD-11)": (1.1, 0.25, "filament"),
    "12-A (112-A)": (5.0, 0.25, "filament"),
    "30": (2.0, 0.06, "filament"),
    "1H4-G": (2.0, 0.06, "filament"),
    "1LE3": (1.4, 0.05, "filament"),
    "1E4-G": (1.4, 0.05, "filament"),
    "27": (2.5, 1.75, "heater"),
    "37": (6.3, 0.3, "heater"),
    "6J5": (6.3, 0.3, "heater"),
}

MUST = None  # in place of a default: the key has to be there


@dataclass(frozen=True)
class Text:
    """Any text of up to `longest` characters."""

    longest: int = 60

    @property
    def example(self) -> str:
        return "Isla Marrow's set"


@dataclass(frozen=True)
class OneOf:
    """One of a few texts."""

    choices: tuple[str, ...]

    @property
    def example(self) -> str:
        return self.choices[0]


@dataclass(frozen=True)
class Quantity:
    """A number with this unit, from `low` to `high`."""

    unit: str
    low: str
    high: str
    example: str

    @property
    def limits(self) -> tuple[float, ...]:
        return any_quantity(self.low)[0], any_quantity(self.high)[0]


@dataclass(frozen=True)
class Wire:
    """A gauge with its table: "26 SWG" or "24 AWG"."""

    example: str = "26 SWG"


@dataclass(frozen=True)
class Key:
    """One key: what it takes, what it is when it is not given, and what it means."""

    name: str
    takes: Text | OneOf | Quantity | Wire
    default: str | None
    says: str
    optional: bool = False  # may be left out although it has no default


def _spread(name: str, default: str, says: str, unit: str = "%", most: str = "60 %") -> Key:
    return Key(name, Quantity(unit, f"0 {unit}", most, default), default, says)


TOP = ""  # the section of the keys that stand above all sections
SECTIONS = {
    TOP: (
        Key("name", Text(), MUST, "what the sheet is called"),
        Key("set", OneOf(SETS), MUST, "which of the five sets you are building"),
        Key("builder", Text(), "", "who builds it"),
    ),
    "former": (
        Key("diameter", Quantity("m", "10 mm", "300 mm", "75 mm"), MUST, "outside of the tube"),
        Key("length", Quantity("m", "10 mm", "1 m", "110 mm"), MUST, "of the tube, as far as wire may go on it"),
        Key(
            "aerial_gap",
            Quantity("m", "0.5 mm", "100 mm", "8 mm"),
            "8.4 mm",
            "from the tuned winding to the aerial winding, nearest turns",
        ),
        Key(
            "tickler_gap",
            Quantity("m", "0.5 mm", "100 mm", "28 mm"),
            "28 mm",
            "from the tuned winding to the tickler, nearest turns",
        ),
    ),
    "wire": (
        Key("gauge", Wire(), MUST, "number and table, `26 SWG` or `24 AWG`; or give `diameter`", optional=True),
        Key(
            "diameter",
            Quantity("m", "0.05 mm", "3 mm", "0.457 mm"),
            MUST,
            "of the bare copper, if you give no gauge",
            optional=True,
        ),
        Key(
            "covered",
            Quantity("m", "0.05 mm", "5 mm", "0.5 mm"),
            MUST,
            "over the covering: wind twenty turns on a pencil and measure",
        ),
    ),
    "condenser": (
        Key("minimum", Quantity("F", "2 pF", "100 pF", "15 pF"), MUST, "plates out, of the condenser alone"),
        Key("maximum", Quantity("F", "20 pF", "2 nF", "500 pF"), MUST, "plates in"),
        Key("law", OneOf(tuple(physics.vanes.LAWS)), "capacitance", "what the scale is even in"),
        Key(
            "stray",
            Quantity("F", "1 pF", "100 pF", "20 pF"),
            "20 pF",
            "everything else across the coil but the coil's own capacitance, which the sheet adds",
        ),
    ),
    "aerial": (
        Key("height", Quantity("m", "1 m", "30 m", "8 m"), MUST, "of the upright part"),
        Key("top", Quantity("m", "1 m", "60 m", "20 m"), MUST, "length of the level part, at least the height"),
        Key("wire", Quantity("m", "0.2 mm", "10 mm", "2 mm"), "2 mm", "diameter of its wire"),
        Key("earth", Quantity("ohm", "1 Ω", "1 kΩ", "30 Ω"), "30 Ω", "resistance of earth and wire"),
        Key("surroundings", OneOf(tuple(SURROUNDINGS)), "country", "how noisy the place is"),
    ),
    "valve": (
        Key("type", OneOf(tuple(FILAMENTS)), "30", "as the manuals number it"),
        Key("leak", Quantity("ohm", "100 kΩ", "10 MΩ", "2 MΩ"), "2 MΩ", "the grid leak"),
        Key("grid_condenser", Quantity("F", "20 pF", "1 nF", "100 pF"), "100 pF", "across or before the leak"),
        Key("throttle_minimum", Quantity("F", "1 pF", "50 pF", "10 pF"), "10 pF", "of the throttle condenser, plates out"),
        Key("throttle_maximum", Quantity("F", "50 pF", "1 nF", "500 pF"), "500 pF", "plates in"),
        Key(
            "by_pass",
            Quantity("F", "1 pF", "2 nF", "200 pF"),
            "200 pF",
            "from the anode to earth, besides what valve, wiring and choke bring",
        ),
        Key("choke", Quantity("H", "1 mH", "1 H", "100 mH"), "100 mH", "from the anode to the telephones"),
    ),
    "supply": (
        Key("ht", Quantity("V", "20 V", "200 V", "90 V"), "90 V", "of the HT battery"),
        Key("lt", Quantity("V", "1 V", "24 V", "3 V"), "3 V", "from which the filament is fed"),
        Key(
            "anode_resistor",
            Quantity("ohm", "100 Ω", "100 kΩ", "10 kΩ"),
            "10 kΩ",
            "between HT and the telephones, with a condenser behind it to 0 V",
        ),
    ),
    "telephones": (
        Key("resistance", Quantity("ohm", "10 Ω", "20 kΩ", "4 kΩ"), "4 kΩ", "of the pair, on an ohmmeter"),
        Key("impedance", Quantity("ohm", "50 Ω", "100 kΩ", "20 kΩ"), "20 kΩ", "of the pair, to a tone of 1 kHz"),
        Key("sensitivity", Quantity("dB", "80 dB", "130 dB", "110 dB"), "110 dB", "sound pressure level from 1 mW"),
    ),
    "crystal": (
        Key("saturation", Quantity("A", "1 nA", "100 µA", "1 µA"), "1 µA", "saturation current"),
        Key("slope", Quantity("V", "20 mV", "100 mV", "30 mV"), "30 mV", "slope voltage"),
    ),
    "band": (
        Key("lowest", Quantity("Hz", "100 kHz", "4 MHz", "530 kHz"), MUST, "lowest frequency wanted"),
        Key("highest", Quantity("Hz", "100 kHz", "4 MHz", "1600 kHz"), MUST, "highest frequency wanted"),
    ),
    "spread": (
        _spread("former", "1 %", "the tube's diameter"),
        _spread("covered", "3 %", "the wire over its covering"),
        _spread("condenser", "5 %", "the tuning condenser, both ends"),
        _spread("stray", "30 %", "the strays"),
        _spread("gaps", "1 mm", "the gaps between windings", "m", "10 mm"),
        _spread("coil_loss", "30 %", "what winding and tube add to the wire's resistance"),
        _spread("aerial", "15 %", "the aerial's capacitance and effective height"),
        _spread("earth", "40 %", "the earth's resistance"),
        _spread("valve", "15 %", "the valve's perveance, from specimen to specimen"),
        _spread("crystal", "50 %", "the crystal's saturation current"),
        _spread("telephones", "5 dB", "the telephones' sensitivity", "dB", "20 dB"),
        _spread("field", "3 dB", "the stations' fields", "dB", "20 dB"),
        _spread("supply", "5 %", "HT and LT"),
        _spread("resistors", "5 %", "resistors"),
    ),
}

STATION = (
    Key("name", Text(40), MUST, "of the station"),
    Key("frequency", Quantity("Hz", "100 kHz", "4 MHz", "846 kHz"), MUST, "of its carrier"),
    Key("power", Quantity("W", "1 mW", "5 MW", "1 kW"), MUST, "radiated; with `distance` and `ground`", optional=True),
    Key("distance", Quantity("m", "100 m", "5000 km", "4 km"), MUST, "from your aerial", optional=True),
    Key("ground", OneOf(tuple(GROUNDS)), "average land", "that the wave crosses"),
    Key(
        "field",
        Quantity("V/m", "0.1 µV/m", "10 V/m", "0.5 mV/m"),
        MUST,
        "field at your aerial, r.m.s., instead of power and distance: for a sky wave, or where you have measured it",
        optional=True,
    ),
)
ROLES = {"local": "a strong station to be kept out", "wanted": "a station that you want to hear"}
NEEDED_BY = {"valve": ("type",), "supply": ("ht", "lt")}  # must be given where a set with a valve is built
