"""am_envelope is amplitude * (1 + depth * np.cos(2 * np.pi * tone_frequency * time)); am_waveform is that times
np.cos(2 * np.pi * carrier_frequency * time). Since cos a cos b = cos(a - b)/2 + cos(a + b)/2, am_spectrum returns three
expressions: amplitude for the carrier in the middle, and half of depth * amplitude on each side.
"""

import numpy as np
import sympy


def am_envelope(time: float, tone_frequency: float, depth: float, amplitude: float) -> float:
    return amplitude * (1 + depth * np.cos(2 * np.pi * tone_frequency * time))


def am_waveform(time: float, carrier_frequency: float, tone_frequency: float, depth: float, amplitude: float) -> float:
    return am_envelope(time, tone_frequency, depth, amplitude) * np.cos(2 * np.pi * carrier_frequency * time)


def am_spectrum(depth: sympy.Expr, amplitude: sympy.Expr) -> tuple[sympy.Expr, sympy.Expr, sympy.Expr]:
    side = depth * amplitude / 2
    return side, amplitude, side
