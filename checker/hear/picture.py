"""What was heard as a picture: the dial from above, the knobs over time, and the sound. One SVG that needs nothing else."""

import base64
import struct
import zlib
from collections.abc import Iterator, Sequence
from html import escape

import numpy as np

from .listening import FRAME, MOMENTS, RATE, SECONDS, moves, setting_times

WIDTH, HEIGHT, LEFT, RIGHT = 440, 742, 44, 428
INK, FAINT, SEA, RUST, BRASS, PAPER = "#20303c", "#c9d3d8", "#1f6f8b", "#b4472e", "#9a6b12", "#fbfaf6"
COLUMNS, ROWS = 480, 120
DIAL = 12e3  # hertz to either side of the frame
SOUND_TOP = 3e3  # hertz
OWN_TOP = 10e3  # hertz


def dial_picture(emf: np.ndarray, settings: np.ndarray, yours: np.ndarray, reference: np.ndarray) -> str:
    """The demonstration as an SVG.

    Parameters
    ----------
    emf : ndarray of shape (n,), complex, what the aerial brought
    settings : ndarray of shape (3, m), at `setting_times`: the pointer's angle in radians, the throttle in farads, and the
        frequency that the set is tuned to
    yours, reference : ndarray of shape (n,) or longer, real, the sounds

    Returns
    -------
    str
    """
    times = setting_times()
    parts = [f'<rect width="{WIDTH}" height="{HEIGHT}" fill="{PAPER}"/>']
    for place, (moment, says) in enumerate(MOMENTS):
        x = _across(moment)
        parts.append(f'<path d="M{x:.1f} {18 + 14 * (place % 3)}V700" stroke="{BRASS}" stroke-dasharray="3 3" fill="none"/>')
        parts.append(_words(x + 3, 16 + 14 * (place % 3), says, BRASS))
    low, high = (FRAME - DIAL) / 1e3, (FRAME + DIAL) / 1e3
    parts += _panel(68, 162, "the dial, kHz: on the air; in red the set", (low, high), (840, 846, 850, 855, 860))
    parts.append(_image(waterfall(emf, -DIAL, DIAL), 68, 162))
    parts.append(_line(times, settings[2] / 1e3, 68, 162, (low, high), RUST))
    for top, values, title in (
        (268, np.degrees(settings[0]), "pointer of the tuning dial, degrees"),
        (376, settings[1] * 1e12, "throttle condenser (reaction), pF"),
    ):
        parts += _panel(top, 70, title, *_range(values))
        parts.append(_line(times, values, top, 70, _range(values)[0], SEA))
    parts += _panel(484, 50, "volume", (0, 0.6), (0, 0.6))
    parts.append(_line(times, moves(times)[2], 484, 50, (0, 0.6), SEA))
    for top, sound, whose in ((572, yours, "your receiver"), (652, reference, "the reference")):
        parts += _panel(top, 48, f"the sound of {whose}, pitch in kHz", (0, SOUND_TOP / 1e3), (0, 1, 2, 3))
        if sound.size >= round(SECONDS * RATE):
            parts.append(_image(waterfall(sound[: round(SECONDS * RATE)], 0, SOUND_TOP), top, 48))
        else:
            parts.append(_words(LEFT + 8, top + 28, "could not be played", RUST))
    for second in range(0, round(SECONDS) + 1, 2):
        parts.append(_words(_across(second), 716, f"{second}", INK, "middle"))
    parts.append(_words(RIGHT, 734, "seconds", INK, "end"))
    label = "Six panels over 16 seconds: the dial with the set's tuning, both condensers, the volume, and both sounds"
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {WIDTH} {HEIGHT}" role="img" aria-label="{label}" '
        f'font-family="sans-serif" font-size="12">\n' + "\n".join(parts) + "\n</svg>\n"
    )


def sound_picture(sound: np.ndarray, title: str) -> str:
    """One sound as an SVG: which pitches it holds at each moment.

    Parameters
    ----------
    sound : ndarray of shape (n,), longer than nothing
    title : str
    """
    seconds = sound.size / RATE
    parts = [
        f'<rect width="{WIDTH}" height="232" fill="{PAPER}"/>',
        *_panel(24, 160, "pitch, kHz", (0, OWN_TOP / 1e3), range(0, 11, 2)),
        _image(waterfall(sound, 0, OWN_TOP), 24, 160),
    ]
    for second in range(round(seconds) + 1):
        parts.append(_words(LEFT + (RIGHT - LEFT) * second / seconds, 202, f"{second}", INK, "middle"))
    parts.append(_words(RIGHT, 222, "seconds", INK, "end"))
    return (
        f'<svg viewBox="0 0 {WIDTH} 232" role="img" aria-labelledby="own-title own-desc" font-family="sans-serif" font-size="12">'
        f'<title id="own-title">{escape(title)}</title><desc id="own-desc">Pitches from nothing to 10 kHz over '
        f"{seconds:.0f} seconds: the darker, the louder.</desc>{''.join(parts)}</svg>"
    )


def waterfall(signal: np.ndarray, low: float, high: float) -> np.ndarray:
    """Decibels of each frequency at each moment, 0 the strongest: an array of shape (ROWS, COLUMNS), high at the top."""
    length = 2048
    padded = np.pad(signal, length // 2)
    starts = np.linspace(0, signal.size - 1, COLUMNS).astype(int)
    pieces = padded[starts[:, None] + np.arange(length)] * np.hanning(length)
    spectra, tones = np.abs(np.fft.fft(pieces, axis=1)), np.fft.fftfreq(length, 1 / RATE)
    edges = np.linspace(low, high, ROWS + 1)
    rows = [
        np.max(spectra[:, (tones >= bottom) & (tones < top)], axis=1) for bottom, top in zip(edges[:-1], edges[1:], strict=True)
    ]
    image = 20 * np.log10(np.maximum(np.array(rows)[::-1], 1e-12))
    return image - np.max(image)


def _image(decibels: np.ndarray, top: float, height: float, faintest: float = -72.0) -> str:
    shade = np.clip(1 - decibels / faintest, 0, 1)[..., None]
    paper, sea = np.array([251, 250, 246]), np.array([14, 66, 92])
    address = base64.b64encode(_png((paper + (sea - paper) * shade).astype(np.uint8))).decode()
    return (
        f'<image x="{LEFT}" y="{top}" width="{RIGHT - LEFT}" height="{height}" preserveAspectRatio="none" '
        f'href="data:image/png;base64,{address}"/>'
    )


def _png(pixels: np.ndarray) -> bytes:
    """A PNG file of an array of shape (rows, columns, 3)."""

    def chunk(kind: bytes, data: bytes) -> bytes:
        return struct.pack(">I", len(data)) + kind + data + struct.pack(">I", zlib.crc32(kind + data))

    rows, columns, _ = pixels.shape
    lines = b"".join(b"\0" + row.tobytes() for row in pixels)
    head = struct.pack(">IIBBBBB", columns, rows, 8, 2, 0, 0, 0)
    return b"\x89PNG\r\n\x1a\n" + chunk(b"IHDR", head) + chunk(b"IDAT", zlib.compress(lines, 9)) + chunk(b"IEND", b"")


def _across(second: float) -> float:
    return LEFT + (RIGHT - LEFT) * second / SECONDS


def _range(values: np.ndarray) -> tuple[tuple[float, float], tuple[float, float]]:
    """The ends of an axis with room to spare, and the values to print at it."""
    low, high = float(np.min(values)), float(np.max(values))
    spare = 0.1 * (high - low) or 1.0
    return (low - spare, high + spare), (round(low, 1), round(high, 1))


def _panel(top: float, height: float, title: str, span: tuple[float, float], marks: Sequence[float]) -> Iterator[str]:
    low, high = span
    yield f'<path d="M{LEFT} {top}V{top + height}H{RIGHT}" fill="none" stroke="{INK}"/>'
    yield _words(RIGHT, top - 4, title, INK, "end")
    for mark in marks:
        y = top + height * (high - mark) / (high - low)
        yield f'<path d="M{LEFT - 4} {y:.1f}H{LEFT}" stroke="{INK}"/>' + _words(LEFT - 7, y + 4, f"{mark:g}", INK, "end")


def _line(times: np.ndarray, values: np.ndarray, top: float, height: float, span: tuple[float, float], colour: str) -> str:
    low, high = span
    points = " ".join(
        f"{_across(time):.1f},{top + height * (high - value) / (high - low):.1f}"
        for time, value in zip(times, values, strict=True)
    )
    return f'<polyline points="{points}" fill="none" stroke="{colour}" stroke-width="1.8"/>'


def _words(x: float, y: float, text: str, colour: str, anchor: str = "start") -> str:
    return f'<text x="{x:.1f}" y="{y:.1f}" fill="{colour}" text-anchor="{anchor}">{escape(text)}</text>'
