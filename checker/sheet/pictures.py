"""The two pictures of a sheet, as SVG drawn line by line: the windings on their tube, and a dial to cut out."""

import math
from html import escape
from typing import Any

from .keys import SETS
from .working import Sheet

WIDE = 640
DIAL, RADIUS = 720, 170
LEADS = {"aerial": ("aerial", "earth"), "tuned": ("detector", "earth"), "tickler": ("throttle", "anode")}
ISOLATED_LEADS = LEADS | {"aerial": ("HT+", "first anode")}
CLOSE = 5.0  # degrees between the labels of a dial
STEP = 18  # between the ends of leads, one below the other


def windings(sheet: Sheet) -> str:
    """The tube from the side, lying, with its windings to scale along it."""
    parts = sheet.parts
    scale = (WIDE - 60) / parts["former.length"]
    top, foot = 60, 60 + min(120, parts["former.diameter"] * scale)
    left = 30 + (parts["former.length"] - sheet.tube) / 2 * scale
    gaps = iter((parts["former.aerial_gap"], parts["former.tickler_gap"]))
    leads = ISOLATED_LEADS if parts["set"] in SETS[3:] else LEADS
    lines = [f'<rect x="30" y="{top}" width="{WIDE - 60}" height="{foot - top:.1f}" class="tube"/>']
    message = []
    deep = 2 * len(sheet.windings) * STEP  # the leftmost lead is the longest: no name is written across another lead
    for one in sheet.windings:
        step = one.length * scale / one.turns
        lines += [
            f'<path d="M{left + turn * step:.1f} {top - 3}l{step:.1f} {foot - top + 6:.1f}" class="turn"/>'
            for turn in range(one.turns)
        ]
        right = left + one.length * scale
        middle = (left + right) / 2
        lines.append(f'<text x="{middle:.1f}" y="{top - 34}" text-anchor="middle" class="big">{one.name}</text>')
        lines.append(f'<text x="{middle:.1f}" y="{top - 16}" text-anchor="middle">{one.turns} turns</text>')
        for at, name in zip((left, right), leads[one.name], strict=True):
            lines.append(f'<path d="M{at:.1f} {foot + 3:.1f}v{deep}" class="lead"/>')
            lines.append(f'<text x="{at + 4:.1f}" y="{foot + deep:.1f}">{escape(name)}</text>')
            deep -= STEP
        message.append(f"{one.name}, {one.turns} turns, ends to {' and '.join(leads[one.name])}")
        left = right + next(gaps, 0) * scale
    height = foot + (2 * len(sheet.windings) + 1) * STEP
    return _svg("windings", WIDE, height, "The windings on the tube", "From left to right: " + "; ".join(message) + ".", lines)


def dial(sheet: Sheet) -> str:
    """Half a circle, 0 degrees at the right with the plates out, and on it where each frequency and each station is."""
    middle, foot = DIAL / 2, RADIUS + 190
    marks = sorted((mark for mark in sheet.marks if math.isfinite(mark.angle.nominal)), key=lambda mark: mark.angle.nominal)
    lines = [
        f'<path d="M{middle - RADIUS} {foot}a{RADIUS} {RADIUS} 0 0 1 {2 * RADIUS} 0" class="arc"/>',
        f'<path d="M{middle - 8} {foot}h16M{middle} {foot - 8}v8" class="arc"/>',
    ]
    for degrees in range(0, 181, 10):
        lines.append(_ray(middle, foot, degrees, RADIUS - (12 if degrees % 30 == 0 else 6), degrees, RADIUS, "fine"))
    for degrees in range(0, 181, 30):
        lines.append(_words(middle, foot, degrees, RADIUS - 18, f"{degrees}°", True, "small"))
    for mark, beside in zip(marks, _spread_out([mark.angle.nominal for mark in marks]), strict=True):
        here, name = mark.angle.nominal, f"{mark.station.name[:18]} " if mark.station else ""
        lines.append(_ray(middle, foot, here, RADIUS - 5, here, RADIUS, "mark"))
        lines.append(_ray(middle, foot, here, RADIUS, beside, RADIUS + 18, "mark"))
        lines.append(_words(middle, foot, beside, RADIUS + 22, f"{name}{mark.frequency / 1e3:g}", False, "big" if name else ""))
    message = "; ".join(
        f"{m.frequency / 1e3:g} kHz{' ' + m.station.name if m.station else ''} at {m.angle.nominal:.0f} degrees" for m in marks
    )
    return _svg("dial", DIAL, foot + 14, "A dial to cut out", message + ".", lines)


def _spread_out(angles: list[float]) -> list[float]:
    """Places for labels near rising angles, none nearer to the next than `CLOSE`, none beyond half a circle if that can be."""
    places = []
    for angle in angles:
        places.append(max(angle, places[-1] + CLOSE) if places else angle)
    for place in range(len(places) - 1, -1, -1):
        highest = 180.0 if place == len(places) - 1 else places[place + 1] - CLOSE
        places[place] = min(places[place], highest)
    return places


def _svg(name: str, width: float, height: float, title: str, message: str, lines: Any) -> str:
    return (
        f'<svg viewBox="0 0 {width} {height:.0f}" role="img" aria-labelledby="{name}-title {name}-desc" class="{name}">'
        f'<title id="{name}-title">{title}</title><desc id="{name}-desc">{escape(message)}</desc>{"".join(lines)}</svg>'
    )


def _place(middle: float, foot: float, degrees: float, radius: float) -> tuple[float, float]:
    angle = math.radians(degrees)
    return middle + radius * math.cos(angle), foot - radius * math.sin(angle)


def _ray(middle: float, foot: float, from_degrees: float, inner: float, to_degrees: float, outer: float, style: str) -> str:
    (x1, y1), (x2, y2) = _place(middle, foot, from_degrees, inner), _place(middle, foot, to_degrees, outer)
    return f'<path d="M{x1:.1f} {y1:.1f}L{x2:.1f} {y2:.1f}" class="{style}"/>'


def _words(middle: float, foot: float, degrees: float, radius: float, text: str, inward: bool, style: str) -> str:
    """Text along a ray, the right way up on either side."""
    x, y = _place(middle, foot, degrees, radius)
    leftward = degrees > 90
    anchor = "end" if leftward != inward else "start"
    turn = 180 - degrees if leftward else -degrees
    where = f'transform="translate({x:.1f} {y:.1f}) rotate({turn:.1f})" dy=".35em" text-anchor="{anchor}"'
    return f'<text {where} class="{style}">{escape(text)}</text>'
