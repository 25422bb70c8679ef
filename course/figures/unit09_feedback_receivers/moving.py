"""Super-regeneration, the moving picture: the swing that builds up and dies within each quench cycle."""

import numpy as np

from course.figures.kit.animation import WIDTH, Animation, animation
from course.figures.kit.style import FAINT, INK, KELP, RUST, SEA, SOFT
from solutions.unit07_oscillation.build_up import amplitude

CYCLES, GROWTH, DECAY = 3, 13.0, 26.0  # quench cycles in a loop; neper a cycle while growing, while dying
WAVES = 12  # of the carrier, in a quench cycle: thousands in truth
LEFT, ROW, SWING = 66.0, 74.0, 27.0  # units of the drawing
SHARE = 0.6  # of a cycle, in which it may grow


@animation(
    caption="**Grow, die, grow again.** While the bar below is dark the set may oscillate; then it is quenched. With a weak "
    "signal the burst takes its time; with a strong one it is at the limit sooner, so there is *more of it*. That is all the "
    "ear is given. (Twelve waves a cycle here, so that there is something to see.)",
    alt="Two rows, in each a dot that swings along a line from the left. Three times the swing grows from nothing to the same "
    "full height and dies away. In the upper row, weak signal, it is full height for a short while; in the lower, "
    "strong signal, for about twice as long. Dark bars under both mark the times of growth.",
)
def grow_and_die():
    picture = Animation("grow-and-die", 2 * ROW + 34, 9.0)
    time = np.linspace(0, CYCLES, 8 * WAVES * CYCLES + 1)
    across = np.linspace(LEFT, WIDTH - 6, time.size)
    place = time % 1
    for row, (start, words, colour) in enumerate(((2e-3, "weak", RUST), (4e-2, "strong", SEA))):
        y = 36 + row * ROW
        growing = amplitude(np.minimum(place, SHARE), start, 1.0, GROWTH)
        height = growing * np.exp(-DECAY * np.maximum(place - SHARE, 0))
        down = -SWING * height * np.cos(2 * np.pi * WAVES * time)
        picture.line((LEFT, y), (WIDTH - 6, y), colour=FAINT, width=0.8)
        picture.line(*zip(across, y + down, strict=True), colour=colour, width=1.2)
        picture.words(LEFT - 10, y + 5, words, INK, "end")
        way = picture.journey(time * picture.seconds / CYCLES, across - LEFT, down - down[0])
        picture.send(way, f'<circle cx="{LEFT:.1f}" cy="{y + down[0]:.1f}" r="4.5"', 0.0)
    foot, cycle = 2 * ROW + 12, (WIDTH - 6 - LEFT) / CYCLES
    for n in range(CYCLES):
        begin = LEFT + n * cycle
        picture.line((begin, foot), (begin + SHARE * cycle, foot), colour=KELP, width=6)
        picture.line((begin + SHARE * cycle, foot), (begin + cycle, foot), colour=SOFT, width=1)
    picture.words(LEFT - 10, foot + 5, "grows", INK, "end")
    return picture
