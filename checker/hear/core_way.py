"""The core's way to a receiver: what core exercises give in place of further ones, as numbers and moment by moment.

No formula of an exercise is here: what a swing does in one step, and what a detector holds, the member's own functions say.
"""

from collections.abc import Callable, Mapping

import numpy as np

from .chain import Chain
from .listening import RATE

Asked = Callable[..., np.ndarray]  # of an exercise's function: its columns, and what is carried from call to call


def _fields(chain: Chain, core: Mapping[str, list]) -> list:
    """Over real ground: the field over perfect ground, and a recorded factor for each station."""
    return [field * factor for field, factor in zip(core["field"], chain.numbers["ground_factors"], strict=True)]


def _tuned(chain: Chain, core: Mapping[str, list]) -> list:
    """Tuned to just what was wanted, as the dial is lent; past the edge, where there is no band, it grows as it was told to."""
    bands = iter(core["gain_and_bandwidth"])
    return [(frequency, next(bands)[1] if band > 0 else band) for frequency, band in chain.link("knobs").inputs]


def _gains(chain: Chain, core: Mapping[str, list]) -> list:
    """From the isolating valve's volts: what part of them it induces in the coil, which is recorded, times the multiplied Q."""
    induced = chain.numbers["induced"]
    return [part * gain for part, (gain, _) in zip(induced, core["gain_and_bandwidth"][-len(induced) :], strict=True)]


def _anode(chain: Chain, core: Mapping[str, list]) -> list:
    """A straight line: the valve's gain at rest, for each bias."""
    bias = chain.link("operating_point").inputs[0][2]
    return [(-core["gain"][0] * bias, bias)]


# What stands for the answers of a further function; where it is missing, the work is done moment by moment.
VALUES: dict[str, Callable[[Chain, Mapping[str, list]], list]] = {
    "ground_wave_field": _fields,
    "tuned_to": _tuned,
    "gain": _gains,
    "operating_point": _anode,
}


def circuit_voltage(
    asked: Asked,
    emf: np.ndarray,
    rate: float,
    offset: np.ndarray,
    bandwidth: np.ndarray,
    gain_bandwidth: float,
    hardening: float,
    start: complex,
) -> np.ndarray:
    """As `receiver` of unit 09 has it, through the member's own `swing_step`.

    It is asked in a frame that turns with the circuit: there growth is real, and `math.exp` will do. A push that slips against the
    circuit's own turning counts for less over a step, by a factor that a weak swing makes exact.
    """
    growth = -np.pi * np.broadcast_to(bandwidth, emf.shape)
    growth = np.where(growth == 0, 1e-9, growth)  # per second: as good as none
    turning = 2j * np.pi * np.broadcast_to(offset, emf.shape)
    turned = np.exp(np.cumsum(turning) / rate)
    slipping = np.expm1((growth + turning) / rate) / (growth + turning) / (np.expm1(growth / rate) / growth)
    push = np.pi * gain_bandwidth * emf * slipping / turned
    swing = asked("swing_step", complex(start), push, growth, 1 / rate, carry=0, lessen=(2, np.pi * hardening))
    return swing * turned


def held(asked: Asked, swing: np.ndarray, falling: float) -> np.ndarray:
    """What the detector's condenser holds of a swing's crests, volt, by the member's own `detect_step`."""
    return asked("detect_step", float(swing[0]), swing, 1 / RATE, falling, carry=0)
