"""The five sets of the course as circuit diagrams, each with what is new in it in another colour.

All share one frame: the signal comes in at the left and goes out at the right, the earth line runs along the foot at
height 0, the tuned circuit's live side runs along height 2.6.
"""

import schemdraw

from course.figures import figure
from course.figures.kit.parts import (
    Aerial,
    Coil,
    Condenser,
    CrystalDetector,
    Dot,
    Earth,
    Headphones,
    Oscillator,
    Resistor,
    Supply,
    Triode,
    VariableCondenser,
    Windings,
    ht_feed,
    schematic,
    wire,
    wire_over,
)
from course.figures.kit.style import INK, RUST

TOP, MIDDLE = 2.6, 1.3
COILS, ISOLATED_COILS = 0.9, 4.7  # where the first winding stands: by the aerial, behind the isolating valve


def aerial_at(x: float, foot: tuple[float, float]) -> None:
    Aerial().at((x, TOP + 0.6)).label("aerial", loc="left", ofst=(-0.25, 0.25))
    wire((x, TOP + 0.6), (x, foot[1]), foot)


def earth_line(first: float, last: float) -> None:
    wire((first, 0), (last, 0))


def tuned(coils: Windings, x: float) -> None:
    """The second winding joined to the earth line and the live side, with the tuning condenser across it at x."""
    wire(coils.top2, (coils.top2[0], TOP), (x, TOP))
    wire(coils.bottom2, (coils.bottom2[0], 0))
    Dot().at((coils.bottom2[0], 0))
    VariableCondenser().at((x, TOP)).to((x, 0))
    Dot().at((x, TOP))
    Dot().at((x, 0))


def grid_leak(x: float, end: float) -> None:
    """Grid condenser with the leak across it, in the live side from x to end."""
    Condenser().at((x, TOP)).to((end, TOP))
    wire((x, TOP), (x, TOP + 0.75))
    Resistor().at((x, TOP + 0.75)).to((end, TOP + 0.75))
    wire((end, TOP + 0.75), (end, TOP))
    Dot().at((end, TOP))


def heated(valve: Triode) -> None:
    """One leg of the filament to the earth line, the other to its supply."""
    left, right = valve.filament1, valve.filament2
    wire(left, (left[0], 0))
    Dot().at((left[0], 0))
    wire(right, (right[0], right[1] - 0.25), (right[0] + 0.35, right[1] - 0.25))
    Supply("LT+", side="right").at((right[0] + 0.35, right[1] - 0.25))


def phones_up(x: float, y: float) -> tuple[float, float]:
    """Headphones from (x, y) upwards; the end of their wire."""
    Headphones().at((x, y)).to((x, y + 1.7)).label("phones", loc="bottom", ofst=0.3)
    return x, y + 1.7


@figure(
    caption="**Crystal set.** The wave itself is all the power there is. A coil and a condenser choose the "
    "station; the crystal lets the current through one way, and the headphones follow its strength.",
    alt="Circuit: aerial through a small coil to earth; beside it a larger coil with a variable condenser "
    "across it; from there through a crystal detector to headphones with a small condenser across them.",
)
def crystal_set() -> schemdraw.Drawing:
    with schematic() as d:
        coils = aerial_coupled(Windings(3, 5, variable=(2,)).at((COILS, MIDDLE)))
        tuned(coils, 2.4)
        CrystalDetector().at((2.4, TOP)).to((4.4, TOP)).color(RUST).label("crystal", loc="top", color=RUST)
        Condenser().at((4.4, TOP)).to((4.4, 0))
        Dot().at((4.4, TOP))
        Dot().at((4.4, 0))
        wire((4.4, TOP), (5.7, TOP))
        Headphones().at((5.7, TOP)).to((5.7, 0)).label("phones", loc="bottom", ofst=0.3)
        earth_line(0.1, 5.7)
    return d


@figure(
    caption="**One valve.** A battery now does the work, and the grid controls it. The grid condenser and its "
    "leak let the valve detect as well as amplify. The resistor in the HT lead saves the filament from a slipped wire.",
    alt="Circuit: the same aerial and tuned circuit; then a condenser with a resistor across it to the grid of "
    "a triode, whose anode draws its current through the headphones and a resistor from the HT supply.",
)
def one_valve() -> schemdraw.Drawing:
    with schematic() as d:
        coils = aerial_coupled(Windings(3, 5, variable=(2,)).at((COILS, MIDDLE)))
        tuned(coils, 2.4)
        grid_leak(2.4, 4.2)
        valve = Triode().at((5.2, TOP - 0.1)).color(RUST)
        heated(valve)
        x, y = phones_up(*valve.anode)
        ht_feed((x, y), (x - 1.6, y), RUST)
        earth_line(0.1, valve.filament1[0])
    return d


@figure(
    caption="**Reaction.** A third coil feeds some of the amplified signal back. The circuit loses less, so the "
    "station is louder and its neighbours fainter. The throttle condenser under the coil sets how much. A by-pass leads from the "
    "anode to earth. Dashed: what nobody builds in, the few picofarads between grid and anode.",
    alt="Circuit: the one-valve set with a third coil beside the tuned coil, fed from the anode and returned to "
    "earth through a variable condenser; a choke keeps the signal out of the headphones, and a resistor stands between these and the "
    "HT supply; a condenser joins the anode to earth, and a dashed one joins grid and anode.",
)
def reaction_set() -> schemdraw.Drawing:
    with schematic() as d:
        coils = aerial_coupled(Windings(3, 5, 3, dots="bbt", variable=(2,)).at((COILS, MIDDLE + 0.3)))
        x, y = phones_up(*reaction_stage(coils, RUST))
        ht_feed((x, y), (x - 1.6, y))
    return d


@figure(
    caption="**Isolated aerial.** A valve of its own between aerial and detector. It amplifies, and it keeps "
    "the set's own oscillation out of the aerial, where the neighbours would hear it.",
    alt="Circuit: the aerial goes to the grid of a screened-grid valve, with a resistor to earth; its anode "
    "feeds the first coil of the reaction set. Its screen and the coil's other end each have a condenser to earth and a "
    "resistor to the HT supply; the detector's HT has a resistor too.",
)
def isolated_aerial_set() -> schemdraw.Drawing:
    with schematic() as d:
        x, y = phones_up(*reaction_stage(isolated(RUST)))
        ht_feed((x, y), (x - 1.6, y))
    return d


@figure(
    caption="**Quenched.** Reaction past the limit, stopped and started some twenty thousand times a second. "
    "Each time the oscillation grows afresh from the signal: super-regeneration.",
    alt="Circuit: the set with the isolated aerial, and a quench oscillator and a resistor in series with the detector's HT supply.",
)
def quenched_set() -> schemdraw.Drawing:
    with schematic() as d:
        quenched_stage(isolated())
    return d


def aerial_coupled(coils: Windings) -> Windings:
    """The first winding between aerial and earth."""
    aerial_at(0.1, coils.top1)
    wire(coils.bottom1, (0.1, coils.bottom1[1]), (0.1, 0))
    Earth().at((0.1, 0))
    return coils


def isolated(colour: str = INK) -> Windings:
    """Aerial, a valve of its own, and its anode's current through the first of three windings."""
    aerial_at(0.1, (0.1, TOP))
    Resistor().at((0.1, TOP)).to((0.1, 0)).color(colour)
    Earth().at((0.1, 0))
    Dot().at((0.1, TOP))
    valve = Triode(screen=True).at((1.3, TOP - 0.02)).color(colour)
    wire((0.1, TOP), valve.grid, color=colour)
    heated(valve)
    coils = Windings(3, 5, 3, dots="bbt", variable=(2,)).at((ISOLATED_COILS, MIDDLE + 0.3))
    x, y = valve.anode
    wire((x, y), (x, y + 0.25), (coils.top1[0], y + 0.25), coils.top1, color=colour)
    screen_and_anode_feed(valve.screen, coils.bottom1, colour)
    return coils


def screen_and_anode_feed(screen: tuple[float, float], cold_end: tuple[float, float], colour: str) -> None:
    """A condenser to earth at the screen and at the cold end of the anode's winding, and a resistor from each to the HT."""
    (x, y), (winding, foot), feed = screen, cold_end, cold_end[0] - 0.55
    wire(screen, (x + 0.5, y), color=colour)
    Dot().at((x + 0.5, y)).color(colour)
    Condenser().at((x + 0.5, y)).to((x + 0.5, y - 0.75)).color(colour)
    Earth().at((x + 0.5, y - 0.75)).color(colour)
    Resistor().at((x + 0.5, y)).to((feed, y)).color(colour)
    wire(cold_end, (winding, foot - 0.3), (feed, foot - 0.3), color=colour)
    Dot().at((winding, foot - 0.3)).color(colour)
    Condenser().at((winding, foot - 0.3)).to((winding, 0)).color(colour)
    Dot().at((winding, 0))
    ht_feed((feed, foot - 0.3), (feed, y), colour, side="top")


def quenched_stage(coils: Windings) -> tuple[float, float]:
    """Detector with reaction, a quench oscillator in its anode's supply; the foot of that oscillator."""
    x, y = phones_up(*reaction_stage(coils))
    Oscillator().at((x, y)).to((x, y + 1.5)).color(RUST).label("quench", loc="bottom", color=RUST, ofst=0.2)
    ht_feed((x, y + 1.5), (x - 1.6, y + 1.5))
    return x, y


def reaction_stage(coils: Windings, colour: str = INK) -> tuple[float, float]:
    """Detector, with third winding and throttle fed from the anode, and the anode's by-pass; the end of the choke.

    Dashed: the valve's own capacitance from grid to anode.
    """
    live = coils.top2[0] + 1.9
    tuned(coils, live)
    grid_leak(live, live + 1.7)
    valve = Triode().at((live + 2.7, TOP - 0.1))
    heated(valve)
    x, y = valve.anode[0], valve.anode[1] + 0.75
    wire(valve.anode, (x, y))
    Dot().at((x, y))
    tickler = coils.top3[0]
    wire((x, y), (tickler, y), color=colour)
    wire_over((tickler, y), TOP, coils.top3, color=colour)
    VariableCondenser().at(coils.bottom3).to((tickler, 0)).color(colour)
    Dot().at((tickler, 0))
    Condenser().at((live + 1.7, TOP + 0.75)).to((live + 1.7, y)).linestyle("--").color(colour)
    Dot().at((live + 1.7, y)).color(colour)
    wire((x, y), (x + 1.25, y), color=colour)
    Condenser().at((x + 1.25, y)).to((x + 1.25, y - 1.1)).color(colour)
    Earth().at((x + 1.25, y - 1.1)).color(colour)
    Coil().at((x, y)).to((x, y + 1.4)).label("choke", loc="bottom", ofst=0.1)
    earth_line(0.1, valve.filament1[0])
    return x, y + 1.4
