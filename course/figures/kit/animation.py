"""Moving pictures: one SVG whose parts run round and round in time, by CSS alone.

Every part makes its journey once in each loop, from its own moment on. A box in the caption holds the picture still. A
reader who has asked for less motion sees it at rest until the box is ticked, and so does the printed page: it is then
the loop at its first moment.
"""

from collections.abc import Callable, Sequence
from html import escape

import numpy as np
import schemdraw

from course.figures import figure
from course.figures.kit.style import INK, SEA, SMALL_TEXT, TEXT

WIDTH = 331.0  # units of the drawing, as wide as a plot: text of the usual size is legible on a telephone

BOX = (
    '<label class="hold"><input type="checkbox"> <span class="hold-stop">Hold still</span>'
    '<span class="hold-go">Set moving</span></label> '
)
# What holds: {name} is the picture's.
RULES = """\
.{name}>*{{animation:{seconds:g}s linear infinite}}
figure:has(.hold :checked) .{name}>*{{animation-play-state:paused}}
.hold{{display:inline-block;padding:.2em .6em .2em 0;cursor:pointer;font-weight:700}}
.hold input{{width:1.2em;height:1.2em;vertical-align:-.2em}}
.hold-go{{display:none}}
@media (prefers-reduced-motion:reduce){{
.hold-stop{{display:none}}
.hold-go{{display:inline}}
.{name}>*{{animation-play-state:paused}}
figure:has(.hold :checked) .{name}>*{{animation-play-state:running}}
}}
@media print{{
.hold{{display:none}}
.{name}>*{{animation-play-state:paused!important}}
}}
"""


def animation(*, caption: str, alt: str) -> Callable[[Callable], Callable]:
    """Mark a function as one moving picture of the course: a `figure` with a box that holds it still.

    Parameters
    ----------
    caption, alt : str
        As for `figure`; both must serve the picture at rest as well.

    Returns
    -------
    decorator
    """
    return figure(caption=BOX + caption, alt=alt)


class Animation(schemdraw.Drawing):
    """A picture that moves.

    Parameters
    ----------
    name : str
        Of its own among all moving pictures: letters and hyphens.
    height : float, units of the drawing
        The width is `WIDTH`.
    seconds : float
        Length of the loop.
    """

    def __init__(self, name: str, height: float, seconds: float):
        super().__init__(canvas="svg", show=False)
        self.name, self.height, self.seconds = name, height, seconds
        self.journeys: list[str] = []
        self.parts: list[str] = []

    def line(self, *points: tuple[float, float], colour: str = INK, width: float = 1.3) -> None:
        """A line that stays where it is."""
        path = " ".join(f"{x:.1f},{y:.1f}" for x, y in points)
        self.parts.append(f'<polyline points="{path}" style="fill:none;stroke:{colour}" stroke-width="{width}"/>')

    def words(self, x: float, y: float, text: str, colour: str = INK, anchor: str = "start", small: bool = False) -> None:
        """Words that stay where they are; `anchor` is start, middle or end."""
        place = f'x="{x:.1f}" y="{y:.1f}" font-size="{SMALL_TEXT if small else TEXT}px" text-anchor="{anchor}"'
        self.parts.append(f'<text {place} style="fill:{colour}">{escape(text)}</text>')

    def journey(self, times: Sequence[float], across: Sequence[float], down: Sequence[float] | None = None) -> int:
        """A way through the picture. Before and after it, the part that goes it is not seen.

        Parameters
        ----------
        times : sequence of float, second, rising from 0 to at most the loop
        across, down : sequences of float, units of the drawing, from where the part is drawn; `down` may be left out

        Returns
        -------
        int
            Its number, for `send`.
        """
        down = np.zeros(len(across)) if down is None else down
        percent = np.round(100 * np.asarray(times) / self.seconds, 2)
        frames = [
            f"{part:g}%{{transform:translate({x:.4g}px,{y:.3g}px);opacity:1}}"
            for part, x, y in zip(percent, across, down, strict=True)
        ]
        if percent[-1] < 100:
            frames.append(f"{percent[-1] + 0.001:.6g}%,to{{opacity:0}}")
        self.journeys.append("".join(frames))
        return len(self.journeys) - 1

    def send(self, journey: int, element: str, start: float) -> None:
        """Let an element, given as an SVG tag up to its end, go on a journey at a moment of the loop, in seconds."""
        delay = start % self.seconds - self.seconds
        self.parts.append(f'{element} class="{self.name}-{journey}" style="animation-delay:{delay:.3f}s"/>')

    def electrons(self, journey: int, starts: Sequence[float], places: Sequence[tuple[float, float]]) -> None:
        """Dots that go the same way, each from its own moment and place."""
        for start, (x, y) in zip(starts, places, strict=True):
            self.send(journey, f'<circle cx="{x:.1f}" cy="{y:.1f}" r="2.3"', start)

    def get_imagedata(self, fmt: str = "svg") -> bytes:
        """The picture, as the course's figures are asked for it."""
        name = self.name
        ways = "".join(
            f"@keyframes {name}-{n}{{{frames}}}\n.{name}-{n}{{animation-name:{name}-{n}!important}}\n"
            for n, frames in enumerate(self.journeys)
        )
        return (
            f'<svg viewBox="0 0 {WIDTH:g} {self.height:g}">\n<style>\n{RULES.format(name=name, seconds=self.seconds)}{ways}'
            f'</style>\n<g class="{name}" style="fill:{SEA}">\n' + "\n".join(self.parts) + "\n</g></svg>"
        ).encode()


def spread(count: int, low: float, high: float, seed: int) -> np.ndarray:
    """Places between two ends, evenly filled yet without a pattern, the same each time."""
    golden = (np.sqrt(5) - 1) / 2
    return low + (high - low) * ((seed * 0.37 + golden * np.arange(1, count + 1)) % 1)
