"""How loud a station is on each of the five sets, and how far each holds another station down.

A set is one function of (sample, station's field and frequency); `FIVE` holds them in the order of the course. In each, the
aerial and the tuned circuit are one source, and what follows loads it: a crystal as in unit 04; a grid as in unit 05, with
reaction as in units 06 and 07 taking some of that load, and of the circuit's own, away again.
"""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

import numpy as np

from . import physics
from .keys import CRYSTAL, ISOLATED, QUENCHED, REACTION, SURROUNDINGS, VALVE
from .sample import Circuit, WoundSample, coupled_circuit, isolated_circuit

DEPTH, TONE = 0.3, 1e3  # of modulation, hertz
BANDWIDTH = 5e3  # hertz: to what width reaction is turned up: speech stays clear
QUENCH, TEMPERATURE = 20e3, 290.0  # hertz, kelvin
SWINGS = np.geomspace(1e-7, 50.0, 260)  # volt, crest, on the grid
ENVELOPE = np.array([1 - DEPTH, 1.0, 1 + DEPTH])


@dataclass(frozen=True)
class Audibility:
    """Decibels above the faintest tone that can be heard; and, in decibels, how far a carrier some hertz off is held down."""

    level: np.ndarray
    holds_down: Callable[[float], Any]


def crystal_set(sample: WoundSample, frequency: float, field: np.ndarray) -> Audibility:
    """A crystal on a tap of the tuned winding."""
    circuit, tap = coupled_circuit(sample, frequency, field), tapping(sample)
    diode = sample.parts["crystal.saturation"] * (1 + sample.off["crystal"]), sample.parts["crystal.slope"]
    load = sample.parts["telephones.impedance"]
    source = tap**2 * circuit.resistance
    (trough, middle, crest), outputs = physics.detector.working_point(
        tap * circuit.voltage * ENVELOPE[:, None], source, load, *diode
    )
    taken = physics.detector.detector_resistance(middle, outputs[1] / load, *diode) / tap**2
    quality = 2 * np.pi * frequency * circuit.capacitance / (1 / circuit.resistance + 1 / taken)
    tone = (outputs[2] - outputs[0]) / 2
    return Audibility(_level(sample, tone**2 / (2 * load)), _by_quality(frequency, quality))


def tapping(sample: WoundSample) -> float:
    """Part of the tuned winding, from its earth end, at which the crystal is matched to it in the middle of the band; 1 for
    its top."""
    middle = np.sqrt(sample.parts["band.lowest"] * sample.parts["band.highest"])
    at_rest = sample.parts["crystal.slope"] / sample.parts["crystal.saturation"]
    return min(1.0, float(np.sqrt(at_rest / coupled_circuit(sample, middle, np.ones_like(sample.former)).resistance[0])))


def one_valve(sample: WoundSample, frequency: float, field: np.ndarray) -> Audibility:
    """A valve with grid condenser and leak."""
    return _on_grid(sample, coupled_circuit(sample, frequency, field), np.inf)


def reaction_set(sample: WoundSample, frequency: float, field: np.ndarray) -> Audibility:
    """The same with reaction, turned up to `BANDWIDTH`."""
    return _on_grid(sample, coupled_circuit(sample, frequency, field), BANDWIDTH)


def isolated_set(sample: WoundSample, frequency: float, field: np.ndarray) -> Audibility:
    """The same behind a valve that isolates the aerial."""
    return _on_grid(sample, isolated_circuit(sample, frequency, field), BANDWIDTH)


def quenched_set(sample: WoundSample, frequency: float, field: np.ndarray) -> Audibility:
    """The same, quenched `QUENCH` times a second, every burst just reaching its limit and dying away as fast as it grew."""
    circuit = isolated_circuit(sample, frequency, field)
    grid = Grid(sample)
    half = 1 / (2 * QUENCH)
    in_coil = circuit.voltage * 2 * np.pi * frequency * _inductance(circuit) / circuit.resistance
    thermal = physics.build_up.starting_voltage(circuit.capacitance, TEMPERATURE)
    surroundings = SURROUNDINGS[sample.parts["aerial.surroundings"]]
    noise = thermal
    limit = np.full_like(noise, 5.0)
    for _ in range(3):  # limit and noise depend on how fast a burst must grow, and that on mark_vocabulary
        growth = np.log(limit / noise) / half
        limit = grid.limit(circuit, 2 * circuit.capacitance * growth)
        outside = physics.radiated.noise_field(frequency, growth / np.pi, *surroundings) / field * np.abs(in_coil)
        noise = np.hypot(thermal, physics.quench.signal_start(frequency, outside, growth, growth))
    signal = physics.quench.signal_start(frequency, in_coil, growth, growth)
    start = np.minimum(np.hypot(signal, noise), limit / 2)
    programme, _ = physics.quench.logarithmic_audio(DEPTH, limit, growth, QUENCH)
    share = signal**2 / (signal**2 + noise**2)  # under the noise a burst no longer starts from the signal
    swing = physics.quench.mean_swing(start, limit, growth, growth, half, half)
    heard = grid.gain(swing) * programme * share

    def holds_down(offset: float) -> np.ndarray:
        return -20 * np.log10(physics.quench.relative_response(offset, growth, growth))

    return Audibility(_level(sample, heard**2 / (2 * grid.load)), holds_down)


FIVE = {CRYSTAL: crystal_set, VALVE: one_valve, REACTION: reaction_set, ISOLATED: isolated_set, QUENCHED: quenched_set}


def _inductance(circuit: Circuit) -> np.ndarray:
    return 1 / ((2 * np.pi * circuit.frequency) ** 2 * circuit.capacitance)


def _level(sample: WoundSample, power: np.ndarray) -> np.ndarray:
    sensitivity = sample.parts["telephones.sensitivity"] + sample.off["telephones"]
    level = physics.phones.sound_pressure_level(np.maximum(power, 1e-30), sensitivity)
    return level - physics.phones.hearing_threshold(TONE)


def _by_quality(frequency: Any, quality: np.ndarray) -> Callable[[float], np.ndarray]:
    return lambda offset: physics.rejection.circuit_rejection(frequency, offset, quality)


class Grid:
    """The detecting valve on a tuned circuit: how it loads it, what reaction gives back, and what is heard of a swing."""

    def __init__(self, sample: WoundSample) -> None:
        self.sample, self.load = sample, sample.parts["telephones.impedance"]
        leak, back, *_ = sample.grid_law
        self.taken = physics.hysteresis.grid_load(SWINGS, leak, back)
        bias = physics.grid.bias_with_carrier(SWINGS, *sample.grid_law)
        factor, perveance, offset = sample.law
        nominal = (sample.at_rest[1][0], factor, perveance[0], offset)
        given = physics.limit.effective_transconductance(SWINGS, bias, *nominal)
        self.given = given * (perveance / perveance[0])[:, None]  # the law is a straight line in the perveance

    def loss(self, circuit: Circuit) -> np.ndarray:
        """Siemens that circuit and grid lose at each of `SWINGS`, without reaction; of shape (draws, swings)."""
        return 1 / circuit.resistance[:, None] + self.taken

    def swings(self, circuit: Circuit, kept: np.ndarray) -> np.ndarray:
        """Crest on the grid at trough, middle and crest of the modulation, of shape (3, draws).

        Reaction is turned up as far as leaves at least `kept` siemens of the loss at every swing up to the crest; not at all
        where the loss is less than that anyhow.
        """
        loss = self.loss(circuit)
        driven = circuit.voltage / circuit.resistance * ENVELOPE[:, None]
        most = np.maximum(np.minimum.accumulate((loss - kept[:, None]) / self.given, axis=1), 0)  # if the crest lies there
        at_crest = np.maximum.accumulate(SWINGS * (loss - most * self.given), axis=1) >= driven[2][:, None]
        turned = np.take_along_axis(most, np.argmax(at_crest, axis=1)[:, None], axis=1)
        needed = np.maximum.accumulate(SWINGS * (loss - turned * self.given), axis=1)
        return np.array(
            [
                [np.exp(np.interp(np.log(one), np.log(row), np.log(SWINGS))) for one, row in zip(currents, needed, strict=True)]
                for currents in driven
            ]
        )

    def limit(self, circuit: Circuit, beyond: np.ndarray) -> np.ndarray:
        """Crest at which an oscillation settles, when a small swing is fed so many siemens more than it loses."""
        loss = self.loss(circuit)
        turned = (loss[:, 0] + beyond) / self.given[:, 0]
        fed = loss < turned[:, None] * self.given
        return SWINGS[len(SWINGS) - 1 - np.argmax(fed[:, ::-1], axis=1)]

    def gain(self, carrier: np.ndarray) -> np.ndarray:
        """Volts of tone at the telephones for each volt by which it swings the carrier's crest: unit 05's `detector_gain`."""
        grid = physics.grid.bias_with_carrier(carrier, *self.sample.grid_law)
        leak, back, _, slope = self.sample.grid_law
        parts = self.sample.parts["valve.grid_condenser"], leak, (back - grid) / leak, slope
        lag = np.arctan(TONE / physics.grid.audio_cutoff(*parts))
        on_grid = physics.grid.grid_gain(carrier, TONE, *parts) * np.exp(-1j * lag)
        anode, _ = physics.load_line.operating_point(self.sample.ht, self.sample.steady_load, grid, *self.sample.law)
        factor, perveance, offset = self.sample.law
        round_cycle = grid[:, None] + carrier[:, None] * physics.one_valve.CARRIER
        slopes = physics.triode.mutual_conductance(anode[:, None], round_cycle, factor, perveance[:, None], offset)
        by_bias, by_carrier = slopes.mean(axis=1), (slopes * physics.one_valve.CARRIER).mean(axis=1)
        return np.abs(on_grid * by_bias - by_carrier) / (1 / self.load + by_bias / factor)


def _on_grid(sample: WoundSample, circuit: Circuit, bandwidth: float) -> Audibility:
    """A station on a detecting valve, reaction turned up until the band is so narrow; not at all for an endless one."""
    grid = Grid(sample)
    kept = np.minimum(2 * np.pi * bandwidth * circuit.capacitance, 1.0)
    trough, middle, crest = grid.swings(circuit, kept)
    left = circuit.voltage / circuit.resistance / middle  # siemens
    width = left / (2 * np.pi * circuit.capacitance)
    heard = grid.gain(middle) * (crest - trough) / 2
    if np.isfinite(bandwidth):
        heard = heard * physics.treble.tone_response(TONE, width, 0.0)
    return Audibility(_level(sample, heard**2 / (2 * grid.load)), _by_quality(circuit.frequency, circuit.frequency / width))
