"""The reaction set with any signal, weak or strong: its envelope.   Lesson: Oscillation.

The carrier is not followed from crest to crest, only its crest and phase: one complex number, the grid's voltage as seen from
a frame that turns at a reference frequency. Beside it stand the grid's bias and the anode's steady voltage. The network comes
in by its slow mode, the valve by its current averaged round a carrier's cycle. Build-up, limit, beat notes, pulling in,
blocking and squegging all come out of these three.

    time = np.arange(19200) / RATE
    heard = follow(carrier(time, 1e3, 1e-3), RATE, 1e6, replace(SALTMARSH_SET, throttle_capacitance=200e-12))
"""

from collections.abc import Callable, Iterator
from typing import NamedTuple

import numpy as np

from solutions.ranges import check_ranges
from solutions.unit06_reaction.network import SALTMARSH_SET, ReactionSet
from solutions.unit07_oscillation.build_up import BOLTZMANN
from solutions.unit07_oscillation.cycle import GRID_LIMIT, OVERTONES, grid_table
from solutions.unit07_oscillation.slow_mode import slow_mode
from solutions.unit07_oscillation.stage import SALTMARSH_STAGE, Stage, at_rest
from solutions.unit07_oscillation.stepping import MOST_GROWTH, MOST_TURN, march

RATE = 96e3  # hertz: steps a second that serve sounds; four times as many for a limit within a tenth of a per cent
MOST_PARTS = 50  # of a step: a set that wants more is none that anybody listens to
BLOCK = 10e-3  # second: how long a knob is taken to stand still while it is turned


class State(NamedTuple):
    """Where a set has got to: what its next block goes on from."""

    mode: complex  # volt: the slow mode's share of the grid's own voltage
    bias: float  # volt: the grid's, averaged round the carrier's cycle
    anode: float  # volt: the anode's, averaged
    turning: float  # radian a second: the envelope's in its frame
    passing: float  # ampere: the grid's mean current
    lasting: tuple[complex, ...]  # the valve's answer, found by going on from the last: see `stepping`


class Heard(NamedTuple):
    """A stretch of time, and the state at its end."""

    grid: np.ndarray  # complex, volt: crest and phase of the carrier on the tuned circuit
    bias: np.ndarray  # volt
    phones: np.ndarray  # ampere: through the telephones
    state: State


def start(stage: Stage = SALTMARSH_STAGE, seed: complex = 0.0) -> State:
    """A set just switched on, warm and at rest but for a small swing.

    Parameters
    ----------
    stage : Stage
    seed : complex, volt, crest of the swing on the grid itself

    Returns
    -------
    State
    """
    bias, anode = at_rest(stage)
    return State(complex(seed), bias, anode, 0.0, (stage.leak_return - bias) / stage.leak_resistance, (0j,) * (3 + OVERTONES))


def carrier(time: np.ndarray, offset: float, crest: float, modulation: np.ndarray = 0.0) -> np.ndarray:
    """A station's e.m.f. in the aerial, as seen from the frame; several stations add up.

    Parameters
    ----------
    time : ndarray, second
    offset : float, hertz, of its carrier from the reference
    crest : float, volt, of the unmodulated carrier
    modulation : float or ndarray, broadcast with `time`, a fraction; beyond −1 the carrier comes back turned round

    Returns
    -------
    ndarray, complex, volt
    """
    return crest * (1 + np.asarray(modulation)) * np.exp(2j * np.pi * offset * np.asarray(time))


@check_ranges
def thermal_noise(
    samples: int, rate: float, resistance: float, generator: np.random.Generator, temperature: float = 290.0
) -> np.ndarray:
    """Noise e.m.f. of a resistance, as seen from the frame.

    Parameters
    ----------
    samples : int, >= 0
    rate : float, hertz, > 0
    resistance : float, ohm, >= 0
    generator : numpy random Generator
    temperature : float, kelvin, >= 0

    Returns
    -------
    ndarray of shape (samples,), complex, volt

    Source
    ------
    H. Nyquist, Physical Review 32, 110, 1928 (from memory): 4kTR for each hertz; the frame shows a band as wide as the rate.
    """
    spread = np.sqrt(4 * BOLTZMANN * temperature * resistance * rate)
    return spread * (generator.standard_normal(samples) + 1j * generator.standard_normal(samples))


def frequency_offset(grid: np.ndarray, rate: float) -> np.ndarray:
    """Instantaneous frequency of an envelope, from that of its frame.

    Parameters
    ----------
    grid : ndarray of shape (n,), complex, n >= 2
    rate : float, hertz, samples of it a second

    Returns
    -------
    ndarray of shape (n − 1,), hertz, from −rate/2 to rate/2
    """
    return np.angle(grid[1:] * np.conj(grid[:-1])) * rate / (2 * np.pi)


@check_ranges
def follow(
    emf: np.ndarray,
    rate: float,
    reference: float,
    windings: ReactionSet = SALTMARSH_SET,
    stage: Stage = SALTMARSH_STAGE,
    state: State | None = None,
) -> Heard:
    """What a set does with a signal, its knobs standing still.

    Parameters
    ----------
    emf : ndarray of shape (n + 1,), complex, volt, in the aerial, seen from the frame; n >= 1
    rate : float, hertz, > 0, samples of it a second
    reference : float, hertz, > 0, the frame's; within some 10 kHz of all that matters
    windings : ReactionSet
        Its transconductance, anode resistance and grid conductance are not used: the stage gives them.
    stage : Stage
    state : State, at the first sample; None for a set at rest

    Returns
    -------
    Heard, arrays of shape (n,): from the second sample to the last
        To go on, give its state and an `emf` that begins with the sample this one ended with.

    Raises
    ------
    ValueError
        If `emf` has fewer than two samples or one that is not finite; if the set is tuned so far from the reference that the
        steps are too long; if the swing passes all that the tables hold; or as `slow_mode`.
    """
    emf = np.asarray(emf, complex)
    if emf.ndim != 1 or len(emf) < 2 or not np.all(np.isfinite(emf)):
        raise ValueError("emf must be a row of two or more finite numbers, one a step")
    net = slow_mode(windings, stage, reference)
    if np.abs(net.rate.imag) > MOST_TURN * rate:
        raise ValueError(
            f"{rate:.3g} steps a second are too few for a set tuned {net.rate.imag / (2 * np.pi):+.3g} Hz from the reference: "
            "move the reference or take more steps"
        )
    parts = np.ceil(np.abs(net.rate.real) / (MOST_GROWTH * rate))
    if not parts <= MOST_PARTS:
        raise ValueError(
            f"{rate:.3g} steps a second are too few for a set whose swing changes {np.abs(net.rate.real):.3g} times over in a "
            "second: take more steps"
        )
    stage = Stage(*map(float, stage))
    grid, bias, anode, *after = march(
        emf, 1 / rate, max(int(parts), 1), 2 * np.pi * reference, *(state or start(stage)), net, stage, grid_table()
    )
    if not np.max(np.abs(grid)) < GRID_LIMIT * stage.slope_voltage:
        raise ValueError("the grid swings further than any valve would stand: take less e.m.f. or less reaction")
    return Heard(net.tuned * grid, bias, (stage.supply - anode) / stage.load_resistance, State(*after))


@check_ranges
def render(
    duration: float,
    reference: float,
    emf: Callable[[np.ndarray], np.ndarray],
    windings: Callable[[float], ReactionSet] | ReactionSet = SALTMARSH_SET,
    stage: Stage = SALTMARSH_STAGE,
    state: State | None = None,
    rate: float = RATE,
    every: int = 1,
) -> Iterator[Heard]:
    """What a set does while its knobs are turned, block by block, so that memory does not grow with the duration.

    Parameters
    ----------
    duration : float, second, > 0
    reference : float, hertz, > 0
    emf : function of an ndarray of times, second, that returns the e.m.f. in the aerial as `carrier` does
    windings : ReactionSet, or a function of the time at a block's middle that returns one
    stage : Stage
    state : State, at time 0; None for a set at rest
    rate : float, hertz, > 0, steps a second
    every : int, > 0: this many steps are averaged into one value

    Yields
    ------
    Heard, for every 10 ms; together `duration` × `rate` / `every` values, rounded down

    Raises
    ------
    ValueError
        As `follow`.
    """
    left = int(duration * rate / every)
    at_a_time = max(int(BLOCK * rate / every), 1)
    done = 0
    first = None
    while done < left:
        steps = min(at_a_time, left - done) * every
        time = (done * every + np.arange(steps + 1)) / rate
        signal = np.broadcast_to(emf(time), time.shape).astype(complex)
        signal[0] = signal[0] if first is None else first  # noise must be the same at a joint
        here = windings(np.mean(time)) if callable(windings) else windings
        grid, bias, phones, state = follow(signal, rate, reference, here, stage, state)
        first = signal[-1]
        done += steps // every
        yield Heard(*(np.mean(part.reshape(-1, every), axis=1) for part in (grid, bias, phones)), state)
