"""Crystal set, sections 7 to 9: how near the coils must be, and which way to look when it is silent."""

import numpy as np

from course.circle.components import CRYSTAL_AERIAL_TURNS, mutual
from course.circle.crystal_set import CRYSTAL, MUTUAL, source
from course.circle.stations import LOCAL
from course.figures import figure
from course.figures.kit.fault_tree import Found, GoOn, Measure, fault_tree
from course.figures.kit.style import BRASS, INK, KELP, PLUM, RUST, SEA, engineering_axis, plot
from solutions.unit04_crystal_set.crystal_set import LOAD
from solutions.unit04_crystal_set.detector_load import working_point


@figure(
    caption="The two coils of the parts list, and how far apart they are. The dot is the lesson's setting.",
    alt="Mutual inductance against the gap between the windings, 2 to 60 millimetres. It falls from 41 microhenries at 2 "
    "millimetres through 20 at 17 millimetres to 4.6 at 60.",
)
def gap_between():
    drawing, axes = plot(height=2.7)
    gap = np.linspace(2e-3, 60e-3, 59)
    coupled = np.array([mutual(CRYSTAL_AERIAL_TURNS, space) for space in gap])
    axes.plot(gap, coupled, color=SEA)
    axes.plot(np.interp(-MUTUAL, -coupled, gap), MUTUAL, "o", color=INK)
    axes.set(xlim=(0, 60e-3), ylim=(0, 45e-6))
    engineering_axis(axes.xaxis, "gap between the windings", "m")
    engineering_axis(axes.yaxis, "mutual inductance", "H", ticks=4)
    return drawing


@figure(
    caption="Steady voltage on the 1 nF for Saltmarsh Point, with the coil slid in. The meter is a tuning indicator that does "
    "not tire.",
    alt="Voltage against the gap between the windings: 1.4 volts at 2 millimetres, 0.7 at 17, 0.15 at 60.",
)
def reading_against_gap():
    drawing, axes = plot(height=2.6)
    gap = np.linspace(2e-3, 60e-3, 30)
    volts = [working_point(*source(LOCAL, mutual(CRYSTAL_AERIAL_TURNS, space)), LOAD, *CRYSTAL)[1] for space in gap]
    axes.plot(gap, volts, color=RUST)
    axes.set(xlim=(0, 60e-3), ylim=(0, 1.5))
    engineering_axis(axes.xaxis, "gap between the windings", "m")
    engineering_axis(axes.yaxis, "steady voltage", "V", ticks=4)
    return drawing


@figure(
    caption="Silent? Tune to the place of the local station, meter on the 1 nF, and go down. Each letter has its note below.",
    alt="A tree of steps. Voltage near 0.7: A, the headphones or their cord. Several volts: B, the load is open. A tenth of "
    "a volt or two: C, too little. Nothing: measure the crystal, out of the set. Bad: D, the crystal. Good: measure ohms "
    "from the top of the coil to earth. About 1 ohm: E, aerial side or tuning. 0: F, a short. No reading: G, a broken coil.",
)
def tree():
    return fault_tree(
        (
            Measure("volts on the 1 nF", SEA),
            Found("about 0.7 V", "A  phones", RUST),
            Found("several volts", "B  load open", RUST),
            Found("0.1 to 0.3 V", "C  too little", RUST),
            GoOn("nothing"),
            Measure("crystal out: diode test", PLUM),
            Found("bad", "D  crystal", RUST),
            GoOn("good"),
            Measure("ohms, coil to earth", BRASS),
            Found("about 1 Ω", "E  aerial", KELP),
            Found("0 Ω", "F  short", RUST),
            Found("no reading", "G  coil broken", RUST),
        ),
        height=5.6,
    )
