"""Curves as SVG, drawn line by line: axes with their units, lines told apart by their dashes, and words for who does not see them."""

import math
from collections.abc import Iterator
from dataclasses import dataclass
from html import escape

import numpy as np

from ..checks.units import tidily

WIDE, HIGH = 360, 220
RIGHT, TOP, FOOT = 348, 26, 178
LETTER = 6.2  # width of one, about
TICKS = 4
STEEP = 100.0  # a greatest value so many times the least one wants a scale of decades


@dataclass(frozen=True)
class Trace:
    """A line: its name in the legend, its class in the style sheet, its heights (NaN where there is none)."""

    name: str
    style: str
    heights: np.ndarray


@dataclass(frozen=True)
class Panel:
    """One picture: what stands along and up, the lines, the circles on them, and ticks at the foot for what lies elsewhere."""

    title: str
    along: str
    along_unit: str
    unit: str
    places: np.ndarray
    by_decades: bool
    traces: tuple[Trace, ...]
    circles: tuple[tuple[float, float], ...] = ()
    feet: tuple[float, ...] = ()


@dataclass(frozen=True)
class Scale:
    """From values to places on the paper, evenly or by decades."""

    low: float
    high: float
    decades: bool
    start: float
    end: float

    def at(self, value: float) -> float:
        low, high, here = (
            (math.log10(v) for v in (self.low, self.high, value)) if self.decades else (self.low, self.high, value)
        )
        return self.start + (self.end - self.start) * (here - low) / (high - low)

    def ticks(self) -> list[float]:
        return _ticks_of_decades(self.low, self.high) if self.decades else _even_ticks(self.low, self.high)


def draw_panel(panel: Panel, name: str) -> str:
    """The picture as SVG; `name` is unlike that of any other on its page."""
    heights = np.concatenate([trace.heights for trace in panel.traces])
    up = _scale(heights, _is_steep(heights), FOOT, TOP)
    left = 12 + LETTER * max((len(_word(tick, panel.unit)) for tick in up.ticks()), default=0)
    across = _scale(panel.places, panel.by_decades, left, RIGHT)
    parts = [
        *_axes(across, up, panel),
        *(_line(trace, panel.places, across, up) for trace in panel.traces),
        *(f'<path d="M{across.at(x):.1f} {FOOT}v-7" class="judged"/>' for x in panel.feet if _inside(across, x)),
        *(
            f'<circle cx="{across.at(x):.1f}" cy="{up.at(y):.1f}" r="3.2" class="judged"/>'
            for x, y in panel.circles
            if _inside(across, x) and _inside(up, y)
        ),
    ]
    return (
        f'<svg viewBox="0 0 {WIDE} {HIGH}" role="img" aria-labelledby="{name}-title {name}-desc">'
        f'<title id="{name}-title">{escape(panel.title)}, along {escape(panel.along)}</title>'
        f'<desc id="{name}-desc">{escape(" ".join(description(panel)))}</desc>{"".join(parts)}</svg>'
    )


def description(panel: Panel) -> Iterator[str]:
    """What the picture shows, in sentences."""
    yield f"{_word(panel.places[0], panel.along_unit)} to {_word(panel.places[-1], panel.along_unit)} from left to right."
    for trace in panel.traces:
        there = np.isfinite(trace.heights)
        if not there.any():
            yield f"{trace.name}: nothing to draw."
            continue
        known = trace.heights[there]
        left, right, least, most = (
            tidily(float(one), panel.unit, 4) for one in (known[0], known[-1], known.min(), known.max())
        )
        yield f"{trace.name}: {left} at the left, {right} at the right, between {least} and {most}."


def _is_steep(heights: np.ndarray) -> bool:
    known = heights[np.isfinite(heights)]
    return bool(known.size and np.min(known) > 0 and np.max(known) > STEEP * np.min(known))


def _scale(values: np.ndarray, decades: bool, start: float, end: float) -> Scale:
    known = values[np.isfinite(values)]
    low, high = (float(np.min(known)), float(np.max(known))) if known.size else (0.0, 1.0)
    if decades:
        return Scale(low, high, True, start, end)
    if start > end:  # heights get some air above and below
        spare = 0.06 * (high - low) if high - low > 1e-9 * abs(high) else 0.1 * abs(high) or 1.0
        low, high = low - spare, high + spare
    return Scale(low, high if high > low else low + 1.0, False, start, end)


def _even_ticks(low: float, high: float) -> list[float]:
    rough = (high - low) / TICKS
    power = 10.0 ** math.floor(math.log10(rough))
    step = next(one * power for one in (1, 2, 2.5, 5, 10) if one * power >= rough * 0.999)
    first, last = math.ceil(low / step - 1e-9), math.floor(high / step + 1e-9)
    return [round(n * step, 12 - math.floor(math.log10(step))) for n in range(first, last + 1)]


def _ticks_of_decades(low: float, high: float) -> list[float]:
    first, last = math.floor(math.log10(low)), math.ceil(math.log10(high))
    every = max(1, math.ceil((last - first) / (TICKS + 1)))
    for figures in ((1,), (1, 3), (1, 2, 5)):
        ticks = [n * 10.0**power for power in range(first, last + 1, every) for n in figures]
        ticks = [tick for tick in ticks if low * 0.999 <= tick <= high * 1.001]
        if len(ticks) > 2 or every > 1:
            break
    return ticks


def _axes(across: Scale, up: Scale, panel: Panel) -> Iterator[str]:
    left = across.start
    for tick in up.ticks():
        y = up.at(tick)
        yield f'<path d="M{left:.1f} {y:.1f}H{RIGHT}" class="grid"/>'
        yield f'<text x="{left - 5:.1f}" y="{y + 4:.1f}" text-anchor="end">{escape(_word(tick, panel.unit))}</text>'
    taken = 0.0
    for tick in across.ticks():
        x, word = across.at(tick), _word(tick, panel.along_unit)
        yield f'<path d="M{x:.1f} {TOP}V{FOOT}" class="grid"/>'
        start = min(x - LETTER * len(word) / 2, WIDE - 3 - LETTER * len(word))
        if start > taken:
            taken = start + LETTER * (len(word) + 1)
            yield f'<text x="{start:.1f}" y="{FOOT + 17}">{escape(word)}</text>'
    yield f'<path d="M{left:.1f} {TOP}V{FOOT}H{RIGHT}" class="axis"/>'
    yield f'<text x="{left:.1f}" y="{TOP - 10}" class="what">{escape(panel.title)}</text>'
    yield f'<text x="{RIGHT}" y="{HIGH - 7}" text-anchor="end" class="what">{escape(panel.along)} →</text>'


def _line(trace: Trace, places: np.ndarray, across: Scale, up: Scale) -> str:
    """A path, broken where there is no height; a height by itself is a dot."""
    path, drawing = [], False
    for x, y in zip(places, trace.heights, strict=True):
        if math.isfinite(y):
            path.append(f"{'L' if drawing else 'M'}{across.at(float(x)):.1f} {up.at(float(y)):.1f}{'' if drawing else 'h0'}")
        drawing = math.isfinite(y)
    return f'<path d="{"".join(path)}" class="{trace.style}"/>' if path else ""


def _inside(scale: Scale, value: float) -> bool:
    spare = 1e-9 * (abs(scale.low) + abs(scale.high))
    return scale.low - spare <= value <= scale.high + spare


def _word(value: float, unit: str) -> str:
    return tidily(float(value), unit)
