"""The sets as the bench shows them: as in `sets`, with a light behind each part that a knob turns.

The quenched set alone differs: a turn of wire from the test oscillators stands where an aerial would.

A light is drawn in a colour that nothing else in these drawings has. The bench's style sheet keeps those colours dark
and turns on the one whose knob was touched last.
"""

from collections.abc import Callable

from schemdraw import Drawing
from schemdraw.segments import SegmentCircle

from course.figures import figure, sets
from course.figures.kit.parts import Dot, Earth, Oscillator, Upright, VariableResistor, Windings, schematic, wire
from course.figures.kit.style import BRASS, FAINT, KELP, PLUM, RUST, SEA, SOFT

# The colours that stand for the lights.
COUPLING, TUNING, REACTION, QUENCH, TICKLER, ACROSS_IT = SEA, KELP, PLUM, BRASS, FAINT, SOFT
RESISTOR = BRASS  # stands for a part that is there only while it is chosen


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
    drawing = sets.reaction_set()
    tickler, resistor, top, bottom = sets.COILS + 1.1, sets.COILS + 1.6, sets.MIDDLE + 0.81, sets.MIDDLE - 0.21
    with drawing:
        for height in (top, bottom):
            wire((tickler, height), (resistor, height), color=RESISTOR)
        VariableResistor().at((resistor, top)).to((resistor, bottom)).color(RESISTOR)
    lights = (TICKLER, (tickler, sets.MIDDLE + 0.3)), (ACROSS_IT, (resistor, sets.MIDDLE + 0.3))
    return lit(drawing, *knobs(sets.COILS), *lights)


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
