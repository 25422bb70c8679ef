"""Fault-finding trees: questions for the meter, one under the other, and where each answer leads."""

from typing import NamedTuple

from matplotlib.figure import Figure

from course.figures.kit.style import INK, plot


class Measure(NamedTuple):
    """A box: what to measure next."""

    words: str
    colour: str


class Found(NamedTuple):
    """A branch: what the meter shows, and the fault that it means."""

    reading: str
    fault: str
    colour: str


class GoOn(NamedTuple):
    """The reading that leads down to the next box."""

    reading: str


ROOM = {(Measure, Found): 1.3, (Found, Found): 1.0, (Found, GoOn): 0.85, (GoOn, Measure): 0.95}


def fault_tree(steps: tuple[Measure | Found | GoOn, ...], height: float) -> Figure:
    """A tree with its trunk at the left, read from the top down.

    Parameters
    ----------
    steps : tuple of Measure, Found and GoOn, a Measure first and a Found last
    height : float, inch
    """
    places = [0.0]
    for above, step in zip(steps, steps[1:], strict=False):
        places.append(places[-1] - ROOM[type(above), type(step)])
    drawing, axes = plot(height=height)
    axes.set(xlim=(0, 10), ylim=(places[-1] - 0.3, 0.8), xticks=[], yticks=[])
    axes.axis("off")
    axes.plot([0.7, 0.7], [0, places[-1]], color=INK, linewidth=1)
    for y, step in zip(places, steps, strict=True):
        if isinstance(step, Measure):
            frame = {"boxstyle": "round,pad=0.35", "facecolor": "none", "edgecolor": step.colour, "linewidth": 1.4}
            axes.plot([0.7, 1.0], [y, y], color=INK, linewidth=1)
            axes.text(1.15, y, step.words, ha="left", va="center", color=INK, bbox=frame)
        elif isinstance(step, Found):
            axes.plot([0.7, 4.6], [y, y], color=INK, linewidth=1)
            axes.text(1.0, y + 0.12, step.reading, ha="left", va="bottom")
            axes.text(4.75, y, step.fault, ha="left", va="center", color=step.colour, weight="bold")
        else:
            axes.text(1.0, y, step.reading, ha="left", va="center")
    return drawing
