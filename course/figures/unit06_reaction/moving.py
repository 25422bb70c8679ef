"""Reaction, the moving picture: what a blow leaves behind while a part of each loss is paid back."""

from typing import Annotated

import numpy as np

from course.figures.kit.animation import WIDTH, Animation, animation
from course.figures.kit.style import BRASS, FAINT, INK, KELP, RUST, SEA
from course.settings import Between
from solutions.unit03_tuned_circuit.ring_down import ring_amplitude
from solutions.unit06_reaction.q_multiplication import multiplied_q

QUALITY, CYCLES = 12.0, 8
LEFT, ROW, SWING = 66.0, 62.0, 17.0  # units of the drawing


@animation(
    caption="**Paying back.** The same circuit, struck once. By itself it loses a share of its swing each time. Feed half of "
    "that share back, and it rings twice as long; feed nine tenths back, ten times. Feed back more than is lost, and "
    "it swings up all by itself. (Q is 12 here, so that there is something to see.)",
    alt="Four rows, in each a dot that swings along a wavy line from the left. Nothing fed back: the wave has died away "
    "before the right-hand end. One half fed back: an eighth of the height is left there, and more on the way. Nine "
    "tenths: it hardly sinks. Eleven tenths: it grows.",
)
def struck_once(q: Annotated[float, Between("Q of the circuit", 6, 60)] = QUALITY):
    picture = Animation("struck-once", 4 * ROW + 6, 6.0)
    time = np.linspace(0, CYCLES, 12 * CYCLES + 1)
    across = np.linspace(LEFT, WIDTH - 6, time.size)
    beat = np.cos(2 * np.pi * time)
    for row, (feedback, words, colour) in enumerate(
        ((0.0, "nothing", RUST), (0.5, "1/2", BRASS), (0.9, "9/10", SEA), (1.1, "11/10", KELP))
    ):
        y = 32 + row * ROW
        if feedback < 1:
            height = ring_amplitude(time, 1.0, multiplied_q(q, feedback))
        else:
            height = 1 / ring_amplitude(time, 1.0, q / (feedback - 1))
        down = -SWING * height * beat
        picture.line((LEFT, y), (WIDTH - 6, y), colour=FAINT, width=0.8)
        picture.line(*zip(across, y + down, strict=True), colour=colour, width=1.5)
        picture.words(LEFT - 10, y + 5, words, INK, "end")
        way = picture.journey(time * picture.seconds / CYCLES, across - LEFT, down - down[0])
        picture.send(way, f'<circle cx="{LEFT:.1f}" cy="{y + down[0]:.1f}" r="4.5"', 0.0)
    return picture
