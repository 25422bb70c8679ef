"""A picture of a sound: how loud and how high it is, from moment to moment. `theme/listening.js` moves it while it plays.

Above, the loudness; in the middle, each pitch of each moment, darker the stronger; below, the strongest that each pitch
comes to, over which the script draws the moment that is heard.
"""

import base64
import io
import zlib
from collections.abc import Sequence
from html import escape

import matplotlib.image
import numpy as np

WIDTH, HEIGHT = 331.0, 326.0  # units of the drawing, as `course.figures.kit.animation`
LEFT, RIGHT = 42.0, 325.0
LOUDNESS, PITCHES, SPECTRUM = (30.0, 84.0), (96.0, 196.0), (240.0, 292.0)  # top and foot of each part
TEXT = 12.5
QUIETEST, LOUDEST = -70.0, 0.0  # decibel below full scale, of loudness
FAINTEST, STRONGEST = -85.0, -12.0  # decibel below full scale, of one pitch
COLUMNS, ROWS = 283, 100
TOP = 5000.0  # hertz
WINDOW = 0.032  # second


def picture(samples: np.ndarray, rate: int, moments: Sequence[tuple[float, str]]) -> str:
    """An `<svg>` element that stands over a sound's player; its words are the sound's transcript.

    Parameters
    ----------
    samples : ndarray of shape (n,), between -1 and 1, as played
    rate : int, samples a second
    moments : sequence of (second, short words)
        What happens when; marked over the picture.

    Returns
    -------
    str
    """
    seconds = samples.size / rate
    spectra, loudness = seen(samples, rate)
    across = np.linspace(LEFT, RIGHT, COLUMNS)
    parts = [
        *frame(LOUDNESS, [(level, f"{level:.0f}".replace("-", "−")) for level in (-60, -30, 0)], (QUIETEST, LOUDEST)),
        *frame(PITCHES, [(pitch, f"{pitch / 1e3:g}") for pitch in (0, 2e3, 4e3)], (0, TOP)),
        *frame(SPECTRUM, [(level, f"{level:.0f}".replace("-", "−")) for level in (-80, -20)], (FAINTEST, STRONGEST)),
        *(words(x, 211, f"{t:g}", "middle") for t, x in ticks(seconds)),
        words(RIGHT, 226, "seconds", "end"),
        words(2, 20, "dB"),
        words(2, 104, "kHz"),
        words(2, 236, "dB"),
        *(words(LEFT + (RIGHT - LEFT) * kilo * 1e3 / TOP, 307, f"{kilo}", "middle") for kilo in range(6)),
        words(RIGHT, 322, "pitch, kHz", "end"),
        outline(across, down(loudness, LOUDNESS, QUIETEST, LOUDEST), LOUDNESS[1]),
        shading(spectra),
        line(np.linspace(LEFT, RIGHT, ROWS), down(spectra.max(axis=1), SPECTRUM, FAINTEST, STRONGEST), "soft", "2 2"),
    ]
    for place, (moment, label) in enumerate(moments):
        x = LEFT + (RIGHT - LEFT) * moment / seconds
        y = 12 if place % 2 == 0 else 25
        parts.append(f'<path d="M{x:.1f} {y + 2}V{PITCHES[1]:g}" style="stroke:var(--brass);stroke-dasharray:3 2"/>')
        near_end = x > LEFT + 0.85 * (RIGHT - LEFT)
        parts.append(words(x - 2 if near_end else x + 2, y, label, "end" if near_end else "start", "brass"))
    parts.append(f'<path class="heard-now" hidden d="M0 {LOUDNESS[0]:g}V{PITCHES[1]:g}"/>')
    parts.append('<polyline class="heard-pitches" points=""/>')
    sizes = f'data-seconds="{seconds:.3f}" data-left="{LEFT:g}" data-right="{RIGHT:g}"'
    sizes += f' data-top="{SPECTRUM[0]:g}" data-foot="{SPECTRUM[1]:g}"'
    return f'<svg viewBox="0 0 {WIDTH:g} {HEIGHT:g}" aria-hidden="true" {sizes}>\n' + "\n".join(parts) + "\n</svg>"


def seen(samples: np.ndarray, rate: int) -> tuple[np.ndarray, np.ndarray]:
    """Strength of each pitch at each moment, of shape (ROWS, COLUMNS), and loudness of each moment; decibel."""
    length = round(WINDOW * rate)
    padded = np.pad(samples, length)
    starts = np.round(np.linspace(0, samples.size - 1, COLUMNS)).astype(int) + length // 2
    pieces = padded[starts[:, None] + np.arange(length)]
    window = np.hanning(length)
    spectra = np.abs(np.fft.rfft(pieces * window, axis=1)) * 2 / window.sum()
    bins = np.fft.rfftfreq(length, 1 / rate)
    edges = np.linspace(0, TOP, ROWS + 1)
    rows = [
        np.max(spectra[:, (bins >= low - bins[1] / 2) & (bins < high + bins[1] / 2)], axis=1)
        for low, high in zip(edges[:-1], edges[1:], strict=True)
    ]
    return decibels(np.array(rows)), decibels(np.sqrt(np.mean(pieces**2, axis=1)))


def decibels(amplitude: np.ndarray) -> np.ndarray:
    return 20 * np.log10(np.maximum(amplitude, 1e-6))


def down(levels: np.ndarray, part: tuple[float, float], low: float, high: float) -> np.ndarray:
    """Places on the page of levels, in a part of the picture that spans `low` to `high`."""
    top, foot = part
    return foot - (foot - top) * np.clip((levels - low) / (high - low), 0, 1)


def frame(part: tuple[float, float], marks: list[tuple[float, str]], span: tuple[float, float]) -> list[str]:
    """The axes of a part, with some of its values."""
    top, foot = part
    heights = down(np.array([value for value, _ in marks]), part, *span)
    grid = "".join(f"M{LEFT:g} {y:.1f}H{RIGHT:g}" for y in heights)
    return [
        f'<path d="{grid}" style="stroke:var(--faint)"/>',
        f'<path d="M{LEFT:g} {top:g}V{foot:g}H{RIGHT:g}" style="fill:none;stroke:currentColor"/>',
        *(words(LEFT - 4, y + 4, text, "end") for y, (_, text) in zip(heights, marks, strict=True)),
    ]


def ticks(seconds: float) -> list[tuple[float, float]]:
    """Some round times and where they stand."""
    step = next(step for step in (0.5, 1, 2, 5) if seconds / step <= 8)
    times = np.arange(0, seconds + 0.01, step)
    return [(time, LEFT + (RIGHT - LEFT) * time / seconds) for time in times]


def words(x: float, y: float, text: str, anchor: str = "start", colour: str = "ink") -> str:
    place = f'x="{x:.1f}" y="{y:.1f}" font-size="{TEXT}px" text-anchor="{anchor}"'
    return f'<text {place} style="fill:var(--{colour})">{escape(text)}</text>'


def outline(across: np.ndarray, heights: np.ndarray, foot: float) -> str:
    points = " ".join(f"{x:.0f},{y:.1f}" for x, y in zip(across, heights, strict=True))
    return f'<polygon points="{LEFT:g},{foot:g} {points} {RIGHT:g},{foot:g}" style="fill:var(--sea);opacity:.75"/>'


def line(across: np.ndarray, heights: np.ndarray, colour: str, dash: str) -> str:
    points = " ".join(f"{x:.1f},{y:.1f}" for x, y in zip(across, heights, strict=True))
    return f'<polyline points="{points}" style="fill:none;stroke:var(--{colour});stroke-dasharray:{dash}"/>'


def shading(spectra: np.ndarray) -> str:
    """Pitch against time, as a mask over a plain colour, so that it has a light and a dark form; it holds all spectra."""
    grey = np.clip((spectra - FAINTEST) / (STRONGEST - FAINTEST), 0, 1)
    shades = np.round(255 * grey[::-1]).astype(np.uint8)
    image = io.BytesIO()
    matplotlib.image.imsave(image, np.stack([shades] * 3, axis=-1), format="png", metadata={"Software": None})
    address = "data:image/png;base64," + base64.b64encode(image.getvalue()).decode()
    name = f"shades-{zlib.crc32(shades.tobytes()):x}"
    top, foot = PITCHES
    place = f'x="{LEFT:g}" y="{top:g}" width="{RIGHT - LEFT:g}" height="{foot - top:g}"'
    return (
        f'<mask id="{name}"><image {place} preserveAspectRatio="none" href="{address}"/></mask>'
        f'<rect {place} style="fill:var(--sea)" mask="url(#{name})"/>'
    )
