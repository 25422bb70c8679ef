"""The sets as the bench shows them: as in `sets`, with a light behind each part that a knob turns.

The quenched set alone differs: a turn of wire from the test oscillators stands where an aerial would.

A light is drawn in a colour that nothing else in these drawings has. The bench's style sheet keeps those colours dark
and turns on the one whose knob was touched last.
"""

from collections.abc import Callable

from schemdraw import Drawing
from schemdraw.segments import SegmentCircle

from course.figures import figure, sets
from course.figures.parts import Dot, Earth, Line, Oscillator, Upright, VariableResistor, Windings, schematic
from course.figures.style import BRASS, FAINT, KELP, PLUM, RUST, SEA, SOFT

COUPLING, TUNING, REACTION, QUENCH, TICKLER, ACROSS_IT = (
    SEA,
    KELP,
    PLUM,
    BRASS,
    FAINT,
    SOFT,
)  # the colours that stand for the lights
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


@as_in(sets.crystal_set)
def crystal() -> Drawing:
    return lit(sets.crystal_set(), (COUPLING, (1.18, 1.3)), (TUNING, (2.4, 1.3)))


@as_in(sets.one_valve)
def valve() -> Drawing:
    return lit(sets.one_valve(), (COUPLING, (1.18, 1.3)), (TUNING, (2.4, 1.3)))


@as_in(sets.reaction_set)
def reaction() -> Drawing:
    drawing = sets.reaction_set()
    tickler, resistor, top, bottom = 2.0, 2.5, 2.11, 1.09
    for height in (top, bottom):
        drawing.add(Line().at((tickler, height)).to((resistor, height)).color(RESISTOR))
    drawing.add(VariableResistor().at((resistor, top)).to((resistor, bottom)).color(RESISTOR))
    places = (COUPLING, (1.18, 1.6)), (TUNING, (3.35, 1.3)), (REACTION, (tickler, 0.54))
    return lit(drawing, *places, (TICKLER, (tickler, 1.6)), (ACROSS_IT, (resistor, 1.6)))


@as_in(sets.isolated_aerial_set)
def isolated() -> Drawing:
    return lit(sets.isolated_aerial_set(), (COUPLING, (3.78, 1.6)), (TUNING, (5.95, 1.3)), (REACTION, (4.6, 0.54)))


@figure(
    caption="**Quenched, on the screened bench.** In place of an aerial, one turn of wire from the test oscillators.",
    alt="Circuit: a test oscillator feeds one turn of wire beside the tuned coil; then the reaction set's detector, with its "
    "third coil and variable condenser, and a quench oscillator in series with its HT supply.",
)
def quenched() -> Drawing:
    with schematic() as d:
        coils = Windings(1, 5, 3).at((0.9, sets.MIDDLE + 0.3))
        Oscillator().at((0.1, 0)).to((0.1, 1.5)).color(RUST).label("tins", loc="top", color=RUST, ofst=0.2)
        sets.wire((0.1, 1.5), (0.1, coils.top1[1]), coils.top1, color=RUST)
        sets.wire(coils.bottom1, (coils.bottom1[0], 0), color=RUST)
        Dot().at((coils.bottom1[0], 0)).color(RUST)
        Earth().at((0.1, 0))
        x, y = sets.quenched_stage(coils)
    places = (COUPLING, (1.18, 1.6)), (TUNING, (3.35, 1.3)), (REACTION, (2.0, 0.54)), (QUENCH, (x, y + 0.75))
    return lit(d, *places)
