"""Valve, section 11: which way to look when the one-valve set is silent."""

from course.figures import figure
from course.figures.kit.fault_tree import Found, GoOn, Measure, fault_tree
from course.figures.kit.style import BRASS, KELP, PLUM, RUST, SEA


@figure(
    caption="Silent? Black lead on 0 V, and go down from the top. Each number has its note below; the letters are the "
    "places in the drawing of section 10.",
    alt="A tree of steps. Volts at A, the filament. 0 volts: 1, the low tension or the pins. The whole supply: 2, a broken "
    "filament. 2 volts: measure across the 10 kilohms. About 28 volts: 3, the signal's way. Less: 4, the grid is too "
    "negative. More: 5, the grid is high or there is a short. 0 volts: measure F, E and D. F at 0: 6, the fuse. F at "
    "minus 90: 7, the high tension is backwards. E at 0: 8, the 10 kilohms. D at 0: 9, the headphones. All at 90: 10, "
    "the valve does not pass.",
)
def tree():
    return fault_tree(
        (
            Measure("volts at A", SEA),
            Found("0 V", "1  LT, fuse, pins", RUST),
            Found("all the supply", "2  filament broken", RUST),
            GoOn("2 V"),
            Measure("volts across the 10 kΩ", PLUM),
            Found("about 28 V", "3  signal's way", KELP),
            Found("less", "4  grid too negative", RUST),
            Found("more", "5  grid high, a short", RUST),
            GoOn("0 V"),
            Measure("volts at F, then E, then D", BRASS),
            Found("F: 0 V", "6  HT fuse", RUST),
            Found("F: −90 V", "7  HT backwards", RUST),
            Found("E: 0 V", "8  10 kΩ open", RUST),
            Found("D: 0 V", "9  phones, cord", RUST),
            Found("all 90 V", "10  valve passes none", RUST),
        ),
        height=6.6,
    )
