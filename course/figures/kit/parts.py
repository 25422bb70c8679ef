"""Circuit symbols of a wireless set, in the manner of IEC 60617, for schemdraw.

Plain parts keep schemdraw's symbols under the course's names; the rest are drawn here. One drawing unit is half an
inch, 48 pixels on a screen at full size; a drawing of up to nine units across is legible on a telephone.
"""

from itertools import pairwise

import schemdraw
from schemdraw.elements import Battery as Battery
from schemdraw.elements import Capacitor as Condenser
from schemdraw.elements import CapacitorVar as VariableCondenser
from schemdraw.elements import Dot as Dot
from schemdraw.elements import Element, Element2Term
from schemdraw.elements import Gap as Gap
from schemdraw.elements import Inductor as Coil
from schemdraw.elements import Line as Line
from schemdraw.elements import ResistorIEC as Resistor
from schemdraw.elements import ResistorVarIEC as VariableResistor
from schemdraw.elements import Speaker as Loudspeaker
from schemdraw.elements import Switch as Switch
from schemdraw.elements.elements import gap as PEN_UP
from schemdraw.segments import Segment, SegmentArc, SegmentCircle, SegmentPoly

from course.figures.kit.style import INK

LABEL = 15.0
LINE_WIDTH = 1.7
TURN = 0.34
HOP = 0.14


def schematic() -> schemdraw.Drawing:
    """An empty circuit diagram of the course's look, for `with schematic() as d:`."""
    drawing = schemdraw.Drawing(canvas="svg", show=False)
    drawing.config(unit=2, fontsize=LABEL, lw=LINE_WIDTH, color=INK, margin=0.15)
    return drawing


class Upright(Element):
    """A symbol that always stands the same way up, and does not move the pen."""

    def __init__(self, **style):
        super().__init__(**style)
        self.elmparams["theta"] = 0
        self.elmparams["drop"] = (0, 0)


class Aerial(Upright):
    """Aerial, from its foot up.

    Anchors: `foot`.
    """

    def __init__(self, **style):
        super().__init__(**style)
        self.segments += [Segment([(0, 0), (0, 1)]), Segment([(-0.4, 1), (0, 0.45), (0.4, 1)])]
        self.anchors["foot"] = (0, 0)


class Earth(Upright):
    """Earth connection, from its top down.

    Anchors: `top`.
    """

    def __init__(self, **style):
        super().__init__(**style)
        self.segments.append(Segment([(0, 0), (0, -0.3)]))
        self.segments += [Segment([(-w, y), (w, y)]) for w, y in ((0.32, -0.3), (0.2, -0.43), (0.08, -0.56))]
        self.anchors["top"] = (0, 0)


class Supply(Upright):
    """Terminal of a supply, with its name; `side` is where it lies from the end of its wire: top, bottom, left, right.

    Anchors: `foot`, the end of the wire.
    """

    def __init__(self, name: str = "HT+", side: str = "top", **style):
        super().__init__(**style)
        x, y = {"top": (0, 1), "bottom": (0, -1), "left": (-1, 0), "right": (1, 0)}[side]
        self.segments.append(SegmentCircle((0.08 * x, 0.08 * y), 0.08))
        self.anchors["foot"] = (0, 0)
        self.label(name, loc=side, ofst=0.08)


class Windings(Upright):
    """Coils side by side that share their magnetism; the first faces the others.

    Parameters
    ----------
    *turns : int
        Half circles of each winding: `Windings(3, 5)` for two, `Windings(3, 5, 2)` for three.
    gap : float
        Between the windings.
    dots : str, optional
        One letter a winding, "t" or "b": the end, top or bottom, where the sense dot stands.
    variable : tuple of int
        Windings, counted from 1, whose coupling to the one before can be changed: an arrow goes across the gap.

    Anchors: `top1`, `bottom1`, `top2`, … The first winding's middle is the origin.
    """

    def __init__(self, *turns: int, gap: float = 0.55, dots: str = "", variable: tuple[int, ...] = (), **style):
        super().__init__(**style)
        for place, count in enumerate(turns):
            x, half, number = place * gap, count * TURN / 2, place + 1
            facing = (-90, 90) if place == 0 else (90, 270)
            self.segments += [
                SegmentArc((x, half - (turn + 0.5) * TURN), TURN, TURN, theta1=facing[0], theta2=facing[1])
                for turn in range(count)
            ]
            self.anchors |= {f"top{number}": (x, half), f"bottom{number}": (x, -half), f"middle{number}": (x, 0)}
            if dots:
                side = -0.16 if place == 0 else 0.16
                height = half - 0.12 if dots[place] == "t" else 0.12 - half
                self.segments.append(SegmentCircle((x + side, height), 0.05, fill=True))
            if number in variable:
                reach = max(turns[place - 1 : place + 1]) * TURN / 2 + 0.1
                middle = x - gap / 2
                self.segments.append(
                    Segment([(middle - 0.5, -reach), (middle + 0.5, reach)], arrow="->", arrowwidth=0.18, arrowlength=0.24)
                )


class Hop(Upright):
    """Half a circle, by which a wire that goes down passes over one that goes across."""

    def __init__(self, **style):
        super().__init__(**style)
        self.segments.append(SegmentArc((0, 0), 2 * HOP, 2 * HOP, theta1=-90, theta2=90))


class Headphones(Element2Term):
    """Headphones: two earpieces under a band, between two wires in line."""

    def __init__(self, **style):
        super().__init__(**style)
        self.segments.append(Segment([(0, 0), PEN_UP, (1, 0)]))
        ear, depth = 0.46, 0.2
        for x, inward in ((0, depth), (1, -depth)):
            self.segments.append(
                SegmentPoly([(x, -ear / 2), (x, ear / 2), (x + inward, ear / 2), (x + inward, -ear / 2)], fill="none")
            )
        self.segments.append(SegmentArc((0.5, ear / 2), 0.8, 0.9, theta1=0, theta2=180))


class CrystalDetector(Element2Term):
    """Crystal detector: a point that touches a piece of mineral; current flows easily from point to crystal."""

    def __init__(self, **style):
        super().__init__(**style)
        half, long = 0.24, 0.42
        self.segments += [
            Segment([(0, 0), PEN_UP, (long + 0.16, 0)]),
            SegmentPoly([(0, half), (long, 0), (0, -half)], fill="none"),
            SegmentPoly([(long, half), (long + 0.16, half), (long + 0.16, -half), (long, -half)], fill=True),
        ]


class Triode(Upright):
    """Triode, its grid to the left.

    Parameters
    ----------
    heater : bool
        Whether a heater inside a cathode does the heating; else the filament is its own cathode.
    screen : bool
        Whether a second grid stands between grid and anode: a screened-grid valve.
    envelope : bool
        Whether the bulb is drawn.

    Anchors: `anode`, `grid`, `screen`; `filament1`, `filament2`, or `cathode`, `heater1`, `heater2`. The origin is the
    middle of the bulb.
    """

    def __init__(self, heater: bool = False, screen: bool = False, envelope: bool = True, **style):
        super().__init__(**style)
        radius, wide = 0.78, 0.34
        if envelope:
            self.segments.append(SegmentCircle((0, 0), radius))
        self.segments += [Segment([(-wide, 0.42), (wide, 0.42)]), Segment([(0, 0.42), (0, radius + 0.22)])]
        self.anchors |= {"anode": (0, radius + 0.22), "middle": (0, 0)}
        rows = [("grid", 0.02, -1), ("screen", 0.22, 1)] if screen else [("grid", 0.1, -1)]
        for name, y, side in rows:
            self.segments.append(Segment([(side * (radius + 0.22), y), (side * wide, y)]))
            self.segments += [Segment([(x - 0.07, y), (x + 0.07, y)]) for x in (-0.25, 0, 0.25)]
            self.anchors[name] = (side * (radius + 0.22), y)
        foot = -radius - 0.22
        if heater:
            self.segments += [
                Segment([(-wide, foot), (-wide, -0.2), (wide, -0.2), (wide, -0.28)]),
                Segment([(-0.1, foot), (-0.1, -0.52), (0.04, -0.38), (0.18, -0.52), (0.18, foot)]),
            ]
            self.anchors |= {"cathode": (-wide, foot), "heater1": (-0.1, foot), "heater2": (0.18, foot)}
        else:
            self.segments.append(Segment([(-0.22, foot), (-0.22, -0.46), (0, -0.22), (0.22, -0.46), (0.22, foot)]))
            self.anchors |= {"filament1": (-0.22, foot), "filament2": (0.22, foot)}


class Oscillator(Element2Term):
    """Source of an alternating voltage, between two wires in line."""

    def __init__(self, **style):
        super().__init__(**style)
        self.segments += [
            Segment([(0, 0), PEN_UP, (1, 0)]),
            SegmentCircle((0.5, 0), 0.5),
            SegmentArc((0.36, 0), 0.28, 0.36, theta1=0, theta2=180),
            SegmentArc((0.64, 0), 0.28, 0.36, theta1=180, theta2=360),
        ]


__all__ = [
    "Aerial",
    "Battery",
    "Coil",
    "Condenser",
    "CrystalDetector",
    "Dot",
    "Earth",
    "Gap",
    "Headphones",
    "Hop",
    "Line",
    "Loudspeaker",
    "Oscillator",
    "Resistor",
    "Supply",
    "Switch",
    "Triode",
    "VariableCondenser",
    "VariableResistor",
    "Windings",
    "schematic",
]


def wire(*points: tuple[float, float], color: str = INK) -> None:
    """Straight wires from point to point."""
    for start, end in pairwise(points):
        Line().at(start).to(end).color(color)


def wire_over(start: tuple[float, float], crossed: float, end: tuple[float, float], color: str = INK) -> None:
    """A wire straight down, which hops over another at the height `crossed`: the two do not touch."""
    x = start[0]
    wire(start, (x, crossed + HOP), color=color)
    Hop().at((x, crossed)).color(color)
    wire((x, crossed - HOP), end, color=color)


def ht_feed(
    start: tuple[float, float], end: tuple[float, float], colour: str = INK, name: str = "HT+", side: str = "left"
) -> None:
    """From start to end the resistor that saves the filament, and the HT beyond it."""
    Resistor().at(start).to(end).color(colour)
    Supply(name, side=side).at(end)
