"""The sets as the bench shows them: as in `sets`, with a light behind each part that a knob turns.

The quenched set alone differs: a turn of wire from the test oscillators stands where an aerial would.

A light is drawn in a colour that nothing else in these drawings has. The bench's style sheet keeps those colours dark
and turns on the one whose knob was touched last.
"""

from collections.abc import Callable

from schemdraw import Drawing
from schemdraw.segments import SegmentCircle

from course.figures import figure, sets
from course.figures.kit.parts import (
    Condenser,
    Dot,
    Earth,
    Oscillator,
    Upright,
    VariableResistor,
    Windings,
    schematic,
    wire,
)
from course.figures.kit.style import BRASS, KELP, PLUM, RUST, SEA

COUPLING, TUNING, REACTION, QUENCH = SEA, KELP, PLUM, BRASS  # the colours that stand for the lights


class Light(Upright):
    """A round patch behind a part."""

    def __init__(self, colour: str, **style):
        super().__init__(**style)
        self.segments.append(SegmentCircle((0, 0), 0.68, color=colour, fill=colour, lw=0, zorder=-1))


def as_in(drawn: Callable) -> Callable:
    """Mark a function as the bench's picture of a set, in the same words."""
    return figure(**drawn.about)


def lit(drawing: Drawing, *lights: tuple[str, tuple[float, float]]) -> Drawing:
    """The drawing with its lights, each a colour and a place."""
    for colour, place in lights:
        drawing.add(Light(colour).at(place))
    return drawing


def knobs(first_winding: float, windings: int = 3) -> list[tuple[str, tuple[float, float]]]:
    """Lights behind coupling, tuning and, with a third winding, reaction of a set whose first winding stands there."""
    middle = sets.MIDDLE + 0.3 if windings == 3 else sets.MIDDLE
    tuning = first_winding + (2.45 if windings == 3 else 1.5)
    lights = [(COUPLING, (first_winding + 0.28, middle)), (TUNING, (tuning, sets.MIDDLE))]
    return [*lights, (REACTION, (first_winding + 1.1, 0.54))] if windings == 3 else lights


@as_in(sets.crystal_set)
def crystal() -> Drawing:
    return lit(sets.crystal_set(), *knobs(sets.COILS, windings=2))


@as_in(sets.one_valve)
def valve() -> Drawing:
    return lit(sets.one_valve(), *knobs(sets.COILS, windings=2))


@as_in(sets.reaction_set)
def reaction() -> Drawing:
    return lit(sets.reaction_set(), *knobs(sets.COILS))


@figure(
    caption="**Reaction by a swinging tickler.** The third coil turns on a spindle and shares more or less with the tuned one. "
    "The condenser under it is fixed.",
    alt="Circuit: the reaction set, with an arrow across tuned coil and third coil, and a fixed condenser between the third coil "
    "and earth.",
)
def reaction_swinging() -> Drawing:
    with schematic() as d:
        coils = sets.aerial_coupled(Windings(3, 5, 3, variable=(3,)).at((sets.COILS, sets.MIDDLE + 0.3)))
        sets.fed_reaction(coils, Condenser)
    return lit(d, *knobs(sets.COILS)[:2], (REACTION, (sets.COILS + 0.9, sets.MIDDLE + 0.3)))


@figure(
    caption="**Reaction by a resistor.** It lies across the third coil and takes more or less of its current. The condenser under "
    "the coil is fixed.",
    alt="Circuit: the reaction set, with a variable resistor across the third coil, and a fixed condenser between that and earth.",
)
def reaction_shunt() -> Drawing:
    with schematic() as d:
        coils = sets.aerial_coupled(Windings(3, 5, 3).at((sets.COILS, sets.MIDDLE + 0.3)))
        x = coils.top3[0] + 0.7
        for end in (coils.top3, coils.bottom3):
            wire(end, (x, end[1]), color=RUST)
            Dot().at(end).color(RUST)
        VariableResistor().at((x, coils.top3[1])).to((x, coils.bottom3[1])).color(RUST)
        sets.fed_reaction(coils, Condenser)
    return lit(d, *knobs(sets.COILS)[:2], (REACTION, (x, sets.MIDDLE + 0.3)))


@as_in(sets.isolated_aerial_set)
def isolated() -> Drawing:
    return lit(sets.isolated_aerial_set(), *knobs(sets.ISOLATED_COILS))


@figure(
    caption="**Quenched, on the screened bench.** In place of an aerial, one turn of wire from the test oscillators.",
    alt="Circuit: a test oscillator feeds one turn of wire beside the tuned coil; then the reaction set's detector, with its "
    "third coil and variable condenser, and a quench oscillator and a resistor in series with its HT supply.",
)
def quenched() -> Drawing:
    with schematic() as d:
        coils = Windings(1, 5, 3).at((sets.COILS, sets.MIDDLE + 0.3))
        Oscillator().at((0.1, 0)).to((0.1, 1.5)).color(RUST).label("tins", loc="top", color=RUST, ofst=0.2)
        wire((0.1, 1.5), (0.1, coils.top1[1]), coils.top1, color=RUST)
        wire(coils.bottom1, (coils.bottom1[0], 0), color=RUST)
        Dot().at((coils.bottom1[0], 0)).color(RUST)
        Earth().at((0.1, 0))
        x, y = sets.quenched_stage(coils)
    return lit(d, *knobs(sets.COILS), (QUENCH, (x, y + 0.75)))
