"""Every number of a caution, and what works it out: the table that `test_unit00_cautions` holds the cautions to.

A phrase is that of the page, word for word ("#" where a number is computed already). `Sum` is given all quantities that stand
in it, in SI units and in reading order, and says whether the sentence is true. `Name` is a value that names a part or a
measurement of the page's own circuit, or that has a source elsewhere; it says which.
"""

from collections.abc import Callable
from functools import cache
from typing import NamedTuple

import numpy as np

from checker.hear.listening import MOMENTS
from course.circle.demonstration import BEGIN, END, demonstration
from course.circle.levels import RATE
from course.circle.stations import LOCAL
from solutions.unit00_bench import ht_faults, phone_limiter
from solutions.unit00_bench.dropper_resistor import (
    current_through_dropper,
    dropper_dissipation,
    dropper_resistance,
    next_preferred,
)
from solutions.unit00_bench.ht_faults import discharge_time, filament_in_fault, fuse_time
from solutions.unit01_signal.aerial_voltage import aerial_capacitance
from solutions.unit02_coil_and_condenser.wire_resistance import direct_resistance
from solutions.unit04_crystal_set.phone_loudness import hearing_threshold
from solutions.unit05_valve.load_line import operating_point
from solutions.unit07_oscillation.build_up import growth_rate
from solutions.unit09_feedback_receivers.two_stage_audio import output_power
from tests.lessons.quantities import SAFETY, SHEET

HT, FRESH = 90.0, 96.0  # volt: ten 9 V batteries, and ten fresh ones of 1.6 V a cell (from memory)
ALKALINE, ZINC = 17.0, 350.0  # ohm, ten 9 V batteries in a row: from memory
FILAMENT = 2.0, 60e-3  # type 30's, the weakest that the club uses
DROPPERS = (3.0, 18.0), (4.5, 47.0), (6.0, 68.0)
HEADPHONES, TONE, ANODE, SENSITIVITY = 4e3, 20e3, 10.6e3, 110.0
OUTPUT = 7.2e3, 3.8, 167e-6, 0.203  # unit 09: load, and the law of a type 31
EVERYWHERE = "every page"
BENCH_04 = "unit04_crystal_set/bench.md"
BENCH_05 = "unit05_valve/bench.md"
BENCH_09 = "unit09_feedback_receivers/bench.md"
INSTRUCTOR_00 = "unit00_bench/instructor.md"
REFLEX = "unit09_feedback_receivers/reflex.md"
SPEAKER = "unit09_feedback_receivers/loudspeaker.md"
SUPPLY = "unit00_bench/supply.md"


class Sum(NamedTuple):
    page: str
    phrase: str
    holds: Callable[..., bool]


class Name(NamedTuple):
    page: str
    phrase: str
    because: str


def near(one, other, part=0.06):
    return bool(abs(one - other) <= part * abs(other))


def saves(ohms, *lt):
    """A filament behind it is left within its rating, or with LT on within a tenth of it."""
    return filament_in_fault(FRESH, ohms, *FILAMENT, *lt) <= FILAMENT[1] * (1.1 if lt else 1)


def rest(ohms):
    """Anode voltage and current of the club's detector with so much in its feed, headphones included."""
    return operating_point(HT, ohms, 0.1, 9.29, 267e-6, -0.67)


def detector_feed(ohms):
    """Saves the filament with LT on too, and leaves the detector well over half of HT."""
    return all(saves(ohms, *lt) for lt in DROPPERS) and rest(ohms + HEADPHONES)[0] > HT / 2


def least_guard(ohms):
    return near(ohms, next_preferred(dropper_resistance(FRESH, *FILAMENT)), 1e-9)


def club_fuse(amperes):
    """Opens at once on weak batteries, and carries all that the largest set of the course draws twice over."""
    output = operating_point(HT, 1.8e3, -15.0, *OUTPUT[1:])[1]
    return fuse_time(HT / ZINC, amperes)[1] < 0.5 and amperes > 2 * (2.8e-3 + 2.2e-3 + output)


def limiter(farads, volts):
    return phone_limiter.loudest(2.8e-3, TONE, SENSITIVITY, 1e3, farads) < 97 and volts > 2 * FRESH


def empties(ohms, farads, full, left, larger, wait):
    """Both figures that the page computes are those of its own values, and the wait is enough for the larger."""
    times = [discharge_time(one, ohms, full, left) for one in (farads, larger)]
    return near(times[0], 0.45) and times[1] < wait < 15


def battery_condenser(least, most, leak, *_):
    """Behind 1.8 kilohms the rush leaves the fuse whole, straight behind it it may not; the leak empties it in ten seconds."""
    times, seconds, _ = ht_faults.QUICK_FUSE[3]  # four times its rating, which it may bear for 3 ms and no longer
    may_blow = seconds * (times * 50e-3) ** 2
    rush = [ht_faults.pulse(most, ALKALINE + guard, FRESH) for guard in (1.8e3, 0.0)]
    return rush[0] < may_blow < rush[1] and least <= most and discharge_time(most, leak, HT, 1.0) < 10


def power(volts, bias=15.0):
    """Watts of tone from unit 09's output stage."""
    return output_power(volts, -bias, bias, *OUTPUT)[0]


def output_guard(ohms, decibels):
    left = operating_point(HT, ohms, -15.0, *OUTPUT[1:])[0]
    return near(10 * np.log10(power(HT) / power(left)), decibels, 0.2) and saves(ohms)


def more_ht(low, high, decibels):
    return low == HT and near(10 * np.log10(power(high, 15 * high / HT) / power(low)), decibels, 0.15)


@cache
def demonstrated():
    return demonstration()[0]


def grown(decibels, seconds):
    pressure = demonstrated()
    rate, begin, end = RATE, BEGIN, END
    first, last = (np.mean(pressure[int(a * rate) : int(b * rate)] ** 2) for a, b in ((0, begin), (end - 1, end + 1)))
    return near(10 * np.log10(last / first), decibels, 0.1) and seconds == end - begin


def drains(least, most):
    """Beside the aerial's own reactance the least takes no tenth of a decibel; on the most 1 µA of charge makes a volt."""
    reactance = 1 / (2 * np.pi * LOCAL.frequency * aerial_capacitance(8.0, 20.0, 1e-3))
    lost = 20 * np.log10(abs(1 + (30 - 1j * reactance) / least))
    return lost < 0.1 and 1e-6 * most <= 1.0


def amplifier(ohms, watts):
    """With it the coil, 10.4 m of 0.457 mm wire, is a load for an amplifier made for 8 ohms, and bears a tenth of an ampere."""
    coil = float(direct_resistance(10.4, 0.457e-3))
    return coil < 4 and ohms + coil > 8 and 2 * 0.1**2 * ohms <= watts < 1 and ohms < 25


def fourth_from_six(rail, ohms, watts):
    heat = current_through_dropper(rail, ohms, *FILAMENT) ** 2 * ohms
    return ohms == next_preferred(dropper_resistance(rail, *FILAMENT)) and near(heat, watts)


def too_little_and_enough(little, enough):
    heat = dropper_dissipation(4.5, *FILAMENT)
    return little < 2 * heat <= enough < 4 * heat


def weak_cells(anything, ohms, least):
    """The resistor asked for stays below this reading even with fresh cells, and a tenth of it goes far beyond."""
    reading = [current_through_dropper(4.8, part, *FILAMENT) * 33.3 for part in (ohms, least)]
    return reading[0] < anything < reading[1]


def loudspeaker(quiet, more, loud):
    """88 dB from a watt at a metre (unit 09) against 110 dB from a milliwatt, at the power of the output stage."""
    per_watt = SENSITIVITY + 30
    at_a_metre = 90 + 10 * np.log10(power(HT))
    return quiet <= at_a_metre < 85 and near(per_watt - 90, more) and per_watt - 90 + at_a_metre > loud > 115


def half_as_much_again(ohms, fuse):
    current = filament_in_fault(FRESH, ohms, *FILAMENT)
    return near(current, 1.5 * FILAMENT[1]) and fuse_time(current, fuse)[0] == np.inf


def lt_on(volts, ohms, ten):
    fitting = next_preferred(dropper_resistance(volts, *FILAMENT))
    return saves(ten, volts, ohms) and not saves(1.8e3, volts, ohms) and ohms == fitting


def ratings(small, ten, large, least):
    return small >= FRESH**2 / ten > 0.5 * small and large >= FRESH**2 / least > 0.5 * large


CAUTIONS = [
    # High tension.
    Sum(EVERYWHERE, "90 V", lambda volts: volts == HT),
    Sum(EVERYWHERE, "90 volts", lambda volts: volts == HT),
    Name(EVERYWHERE, "0 V", "the earth line's name, and what it reads"),
    Sum(SAFETY, "ten 9 V batteries in a row", lambda each: each * 10 == HT),
    Sum(
        SAFETY, "resistor of 100 kΩ across each. It brings 1 µF from 90 V to 1 V in # and 10 µF in #. Wait ten seconds", empties
    ),
    Sum(SAFETY, "A quick 50 mA fuse", club_fuse),
    Sum(SAFETY, "10 kΩ in a detector's feed", detector_feed),
    Sum(SAFETY, "Ten fresh 9 V batteries give 96 V", lambda each, fresh: near(fresh, 10 * each * 9.6 / 9, 1e-9)),
    Sum(
        SAFETY,
        "the 2 V, 60 mA filament of a type 30, the resistor may let no more than 60 mA through: 94 V over 60 mA",
        lambda volts, *amperes: volts == FILAMENT[0] and amperes == (60e-3, 60e-3, FRESH - volts, 60e-3),
    ),
    Name(SAFETY, "one of 1.4 V, 50 mA wants #", "1G4-GT and 1E4-G by the manuals of unit 05; the answer is computed"),
    Sum(SAFETY, "With 1 kΩ, # would flow, half as much again as it can bear, and a 100 mA fuse", half_as_much_again),
    Sum(SAFETY, "only 10 kΩ keeps within a tenth", detector_feed),
    Name(SAFETY, "a quick 50 mA fuse | 1.8 kΩ | 10 kΩ |", "the head of the table, worked out row by row"),
    Name(SAFETY, "anode or condenser to 0 V | #; # behind 10 kΩ", "computed in the row"),
    Sum(
        SAFETY,
        "HT on a 60 mA filament behind the resistor, LT out | #; # behind 10 kΩ | no | saves it | saves it",
        lambda amperes, ten: saves(1.8e3) and saves(ten) and amperes == FILAMENT[1],
    ),
    Sum(SAFETY, "the same, LT on: 4.5 V and 47 Ω | #; # behind 10 kΩ | no | no | saves it", lt_on),
    Name(SAFETY, "a hand from HT to 0 V before the resistor | # at 1 kΩ of hand and arm", "from memory, as the page says"),
    Name(SAFETY, "a hand behind it | #; # behind 10 kΩ", "computed in the row"),
    Sum(SAFETY, "1 W for 10 kΩ and 10 W for 1.8 kΩ", ratings),
    Sum(
        SAFETY,
        "A fuse of 100 mA would sit out the short on zinc-carbon batteries for up to half an hour",
        lambda fuse, most: fuse_time(HT / ZINC, fuse)[1] == most,
    ),
    Sum(
        SAFETY,
        "at half as much again as its rating an hour at least, at 2.75 times half a second at most",
        lambda least, most: fuse_time(75e-3, 50e-3)[0] == least and fuse_time(2.75 * 50e-3, 50e-3)[1] == most,
    ),
    Sum(
        SAFETY,
        "A 9 V battery's own resistance, 1.7 Ω alkaline and 35 Ω zinc-carbon",
        lambda volts, alkaline, zinc: volts * 10 == HT and (10 * alkaline, 10 * zinc) == (ALKALINE, ZINC),
    ),
    Name(SAFETY, "1 kΩ for a body", "from memory, as the page says"),
    Sum(
        BENCH_05,
        "Ten 9 V batteries in a row are 90 V (96 V fresh)",
        lambda each, all_, fresh: 10 * each == all_ and fresh == FRESH,
    ),
    Sum(
        BENCH_05,
        "100 kΩ resistor from F to 0 V, on the set's side of the plug, empties the 1 µF condenser in half a second",
        lambda ohms, line, farads, seconds: near(discharge_time(farads, ohms + 10e3, HT, 1.0), seconds),
    ),
    Sum(BENCH_05, "A quick 50 mA fuse", club_fuse),
    Sum(BENCH_05, "the 10 kΩ straight after it", detector_feed),
    Sum(BENCH_05, "10 kΩ saves the filament", detector_feed),
    Sum(BENCH_05, "90 V that is 70 V under load is empty", lambda full, empty: near(empty, full / 1.5 * 1.17)),
    Sum("unit05_valve/instructor.md", "a quick 50 mA fuse", club_fuse),
    Sum("unit05_valve/instructor.md", "and 10 kΩ in each set", detector_feed),
    Sum(
        "unit05_valve/instructor.md",
        "on 27 V or less, with nothing that can hurt",
        lambda volts: volts == 3 * 9 and volts < 60 / 2,
    ),
    Sum("unit00_bench/index.md", "Nothing in this unit is above 12 V", lambda volts: volts == 2 * 6),
    Sum("unit06_reaction/bench.md", "Without the 1 nF of the circuit below", lambda farads: near(farads, 1e-9)),
    Sum("unit06_reaction/bench.md", "Use one for 250 V or more", lambda volts: 2 * FRESH < volts < 500),
    Name("unit06_reaction/index.md", "the 1 nF condenser", "the part in the figure of unit 06's bench page"),
    Name("unit06_reaction/instructor.md", "1 nF between anode and tickler", "the part in the figure of unit 06's bench page"),
    Sum(BENCH_09, "the detector's 10 kΩ", detector_feed),
    Sum(BENCH_09, "at least 1.8 kΩ for any other stage", least_guard),
    Name(BENCH_09, "its 100 nF", "the part of step 4"),
    Name(BENCH_09, "with 4.5 V of bias 1.8 kΩ takes #", "computed in the sentence"),
    Sum(
        BENCH_09,
        "its 1.8 kΩ too, by-passed by the condenser across the HT. It takes #, and # of tone become #: 1 dB",
        output_guard,
    ),
    Sum(BENCH_09, "More than 90 V is not better in a class: 135 V gives 4 dB", more_ht),
    Sum(SPEAKER, "On 135 V the set is 4 dB louder", lambda high, decibels: more_ht(HT, high, decibels)),
    Sum(
        BENCH_09,
        "2 to 10 µF across the HT behind the fuse and its resistor (straight behind the fuse, the rush at "
        "switching on may blow it), with its 100 kΩ to empty it",
        battery_condenser,
    ),
    Sum(SPEAKER, "4 to 10 µF across the HT behind the fuse and its resistor, with its 100 kΩ to empty it", battery_condenser),
    # Headphones and ears.
    Sum(
        SAFETY,
        "pass nothing much below half a volt",
        lambda volts: phone_limiter.across_the_pair(1e-5, np.inf) < volts < phone_limiter.across_the_pair(1e-3, np.inf),
    ),
    Sum(
        SAFETY,
        "A valve's 2.8 mA makes 11 V across 4 kΩ",
        lambda amperes, volts, ohms: near(amperes * ohms, volts) and near(amperes, rest(10e3 + ohms)[1]),
    ),
    Sum(
        SAFETY,
        "1 µF or more, not polarised, rated well above the HT (250 V for 90 V)",
        lambda farads, volts, ht: limiter(farads, volts) and ht == HT,
    ),
    Sum(SAFETY, "all of its 2.8 mA swinging", lambda amperes: near(amperes, rest(14e3)[1])),
    Sum("unit06_reaction/bench.md", "behind a condenser of 1 µF for 250 V", limiter),
    Sum("unit06_reaction/instructor.md", "behind 1 µF for 250 V", limiter),
    Sum("unit07_oscillation/bench.md", "behind 1 µF for 250 V", limiter),
    Sum(
        "unit04_crystal_set/ear.md", "80 dB is safe for an evening", lambda decibels: decibels == 80
    ),  # 2003/10/EC: lower action value
    Sum(
        "unit04_crystal_set/ear.md",
        "at 100 Hz it wants 24 dB more",
        lambda decibels: near(hearing_threshold(100.0) - hearing_threshold(1e3), decibels),
    ),
    Sum(
        "unit05_valve/detector.md",
        "Thirty decibels more is thirty times the pressure",
        lambda decibels: near(10 ** (decibels / 20), 30),
    ),
    Sum("unit06_reaction/treble.md", "some fifty decibels in twelve seconds", grown),
    Sum(
        "unit07_oscillation/index.md",
        "in less than a hundredth of a second",
        lambda seconds: seconds > np.log(1e3) / growth_rate(846e3, 100.0, 1.1) > seconds / 5,
    ),
    Sum(BENCH_09, "Reflex sets can give 10 V of tone", lambda volts: near(volts, 2.25 * 6.1, 0.3)),
    Sum(
        SPEAKER,
        "hurt by 70 dB at a metre. But whoever unplugs the loudspeaker and plugs headphones into the last stage gets "
        "50 dB more for the same power: well over 120 dB",
        loudspeaker,
    ),
    Sum(
        "unit09_feedback_receivers/receiver.md",
        "oscillates after 12 seconds",
        lambda seconds: any(abs(seconds - begin) < 0.75 for begin, _ in MOMENTS),
    ),
    # Filaments and droppers.
    Sum(INSTRUCTOR_00, "On 6 V one of 68 Ω takes a quarter of a watt", fourth_from_six),
    Sum(SUPPLY, "a quarter of a watt is too little, half a watt is comfortable", too_little_and_enough),
    Sum(SUPPLY, "All of 4.5 V there", lambda volts: volts == 3 * 1.5),
    Sum(SUPPLY, "It reads 4.5 V", lambda volts: volts == 3 * 1.5),
    Sum(SUPPLY, "It reads about 2 V", lambda volts: near(current_through_dropper(4.5, 47.0, *FILAMENT) * 33.3, volts, 0.1)),
    Sum(
        SUPPLY,
        "It reads 2.3 V or more. The resistor is not what you think. Read its rings again in daylight; yellow, violet, "
        "black is 47 Ω and yellow, violet, gold is 4.7 Ω",
        weak_cells,
    ),
    Sum(
        SUPPLY,
        "My sum gives 0.042 Ω, or 42 kΩ",
        lambda small, large: near(small, 2.5 / 60, 0.01) and near(large, dropper_resistance(4.5, *FILAMENT) * 1000, 0.01),
    ),
    # Aerials, coils, crystals.
    Sum("unit01_signal/aerial.md", "A resistor of 100 kΩ to 1 MΩ from aerial to earth", drains),
    Sum("unit02_coil_and_condenser/index.md", "10 Ω, ½ W in line with the coil", amplifier),
    Name("unit02_coil_and_condenser/dial_and_sheet.md", "an hour at no more than 80 °C", "common practice, as the page says"),
    Name("unit03_tuned_circuit/index.md", "add 10 to 50 pF", "common practice; unit 03 counts strays of 20 pF"),
    Name(BENCH_04, "0 instead of 4 kΩ", "the headphones of the set"),
    Name(BENCH_04, "it finds 16 kΩ instead of 20", "20 kΩ less the headphones' 4"),
    Name(BENCH_04, "charges the 1 nF to nearly all", "the set's own condenser"),
    Name(BENCH_04, "through the meter's 10 MΩ", "the usual digital meter; the reading is computed"),
    Name(BENCH_04, "gets past through the 0.1 µF", "the set's own condenser"),
    Name(BENCH_04, "0.5 Ω through the aerial coil", "unit 04's table of readings computes it"),
    Name("unit04_crystal_set/index.md", "about a milliampere", "meters' diode range; common practice, as the page says"),
    Name(
        "unit04_crystal_set/index.md",
        "Germanium shows 0.15 to 0.4 V, Schottky 0.2 to 0.35 V, silicon 0.55 to 0.75 V",
        "common practice, as the page says",
    ),
    Name("unit04_crystal_set/index.md", "a condenser of 0.1 µF where 1 nF belongs", "the set's own condensers, mistaken"),
    Name("unit04_crystal_set/instructor.md", "through 1 kΩ and a few picofarads", "a generator's feed; no claim"),
    Name("unit04_crystal_set/load.md", "4 kΩ instead of 20, or modern headphones of 32 Ω", "the loads that the page compares"),
    Name("unit04_crystal_set/load.md", "on the 1 nF", "the set's own condenser"),
    # Valves.
    Name(BENCH_05, "4 kΩ for a high-resistance pair", "the headphones of the set"),
    Name("unit05_valve/detector.md", "a megohm or two", "grid leaks; the club's has 2 MΩ"),
    Name("unit05_valve/detector.md", "a resistance of a megohm", "grid leaks; the club's has 2 MΩ"),
    Name("unit05_valve/stage.md", "the last column over 20 kΩ", "the load of the page's table"),
    Name("unit05_valve/stage.md", "At a fraction of a milliampere", "where the law's one µ no longer holds; no claim"),
    Name("unit05_valve/stage.md", "gain with 100 kΩ comes out up to 24 % high. With 20 kΩ", "loads of a published chart"),
    Name(SPEAKER, "With 7.6 V on this grid", "the swing for which the sentence computes the rise"),
    Name(SPEAKER, "at full swing, 15 V, by", "the bias; the sentence computes the rise"),
    Sum("unit05_valve/stage.md", "A meter of 10 MΩ changes nothing here", lambda ohms: 20e3 / ohms < 3e-3),
    Name(
        "unit07_oscillation/bench.md",
        "A resistor of 100 kΩ across the transformer's secondary",
        "common practice, as the page says",
    ),
    Name(BENCH_09, "30 Ω and 160 pF in a tin", "the club's aerial, as unit 01 has it"),
    Name(BENCH_09, "a condenser of 100 nF from HT+", "decoupling; common practice"),
    Name(BENCH_09, "100 kΩ across the secondary", "common practice, worked out in unit 09's section 5"),
    Name(BENCH_09, "10 kΩ across the coil", "one more resistor to try; common practice"),
    Name(REFLEX, "100 kΩ across the secondary", "common practice, as the page says"),
    Name(REFLEX, "the 300 pF at the coil's foot", "the part in the page's circuit"),
    Name(REFLEX, "through 10 MΩ", "the usual digital meter"),
    Name(REFLEX, "a flat 3 V battery", "the bias battery of the page's circuit"),
    # Heat, time, first aid.
    Name(SAFETY, "within a minute", "common practice"),
    Name(SAFETY, "350 °C", "an iron for leaded solder; common practice"),
    Name(SAFETY, "for twenty minutes", "first aid for burns as taught; from memory"),
    Name(SHEET, "The iron is at 350 °C", "an iron for leaded solder; common practice"),
    Name(SHEET, "With 1 V on the tuned circuit", "the swing that the sheet computes the radiated power for"),
    Name("instructors.md", "one hour to prepare", "a title"),
]
