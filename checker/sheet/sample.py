"""The builder's set drawn many times within its parts' tolerances, and the circuits that the draws make at a frequency."""

from dataclasses import dataclass, fields
from functools import cached_property
from typing import Any

import numpy as np

from . import physics
from .keys import FILAMENTS
from .reading import Parts
from .spread import DRAWS, draw_offsets
from .windings import WIRE_PER_METRE, Windings, aerial_turns, crowding, tuned_needed, wind


@dataclass(frozen=True)
class Sample:
    """Parts in SI units, ndarrays of shape (draws,) unless said otherwise, before a winding is chosen."""

    parts: Parts
    off: dict
    former: np.ndarray
    covered: np.ndarray
    minimum: np.ndarray
    maximum: np.ndarray
    stray: np.ndarray
    earth: np.ndarray
    effective_height: np.ndarray
    aerial_capacitance: np.ndarray
    wire_inductance: float
    coil_loss: np.ndarray
    law: tuple
    ht: np.ndarray
    lt: np.ndarray

    @cached_property
    def tuned_needed(self) -> np.ndarray:
        return tuned_needed(self.parts, self.former, self.covered, self.maximum, self.stray)

    @cached_property
    def aerial_turns(self) -> int:
        return aerial_turns(
            self.parts,
            self.aerial_capacitance[0],
            self.wire_inductance,
            self.parts["former.diameter"],
            self.parts["wire.covered"],
        )

    @property
    def leak_return(self) -> float:
        """Volt: the grid leak goes to the filament's positive end; to the cathode where there is a heater."""
        voltage, _, heated = FILAMENTS[self.parts["valve.type"]]
        return voltage if heated == "filament" else 0.0

    @property
    def steady_load(self) -> float:
        """Ohm that the anode's steady current goes through."""
        return self.parts["telephones.resistance"] + self.parts["supply.anode_resistor"]

    @property
    def grid_law(self) -> tuple:
        """Leak, its return, and the grid's own law, as `rest_bias` takes them."""
        return self.parts["valve.leak"], self.leak_return, physics.one_valve.ZERO_CURRENT, physics.one_valve.GRID_SLOPE

    @cached_property
    def at_rest(self) -> tuple:
        """Grid volts, anode volts and anode current when no carrier comes."""
        bias = physics.grid.rest_bias(*self.grid_law)
        return bias, *physics.load_line.operating_point(self.ht, self.steady_load, bias, *self.law)

    def wire_resistance(self, turns: int, frequency: Any) -> np.ndarray:
        """Ohm, of a winding at a frequency: its straight wire's, times what winding makes of it."""
        length = physics.winding.wire_length(turns, self.former, self.covered)
        straight = physics.wire.alternating_resistance(length, self.copper, frequency)
        return straight * crowding() * self.coil_loss

    @property
    def copper(self) -> float:
        """Metre: diameter of the bare wire."""
        gauge = self.parts["wire.gauge"]
        return self.parts["wire.diameter"] if gauge is None else gauge

    def first_valve(self) -> np.ndarray:
        """Anode resistance of a valve that isolates the aerial: half-way to cut-off, at full HT (common practice)."""
        return physics.triode.anode_resistance(self.ht, -self.ht / (2 * self.law[0]), *self.law)


@dataclass(frozen=True)
class WoundSample(Sample):
    """A sample whose windings are chosen."""

    windings: Windings

    def aerial_impedance(self, frequency: Any) -> np.ndarray:
        """All the way round the aerial, its winding included."""
        resistance = self.earth + physics.radiation.radiation_resistance(self.effective_height, frequency)
        inductance = self.windings.aerial_inductance + self.wire_inductance
        return physics.reflected.series_impedance(frequency, inductance, self.aerial_capacitance, resistance)


def sample_of(parts: Parts, draws: int = DRAWS) -> Sample:
    """The sample for a file, windings not yet chosen.

    Raises
    ------
    SheetFault
        If the parts cannot make a set.
    """
    off = draw_offsets(parts, draws)
    factor, centre, _ = physics.triodes.fitted_law(parts["valve.type"])
    top, height = parts["aerial.top"], parts["aerial.height"]
    capacitance = physics.aerial.aerial_capacitance(height, top, parts["aerial.wire"] / 2)
    return Sample(
        parts,
        off,
        former=parts["former.diameter"] * (1 + off["former"]),
        covered=parts["wire.covered"] * (1 + off["covered"]),
        minimum=parts["condenser.minimum"] * (1 + off["condenser"]),
        maximum=parts["condenser.maximum"] * (1 + off["condenser"]),
        stray=parts["condenser.stray"] * (1 + off["stray"]),
        earth=parts["aerial.earth"] * (1 + off["earth"]),
        effective_height=physics.aerial.effective_height(height, top) * (1 + off["aerial"]),
        aerial_capacitance=capacitance * (1 + off["aerial"]),
        wire_inductance=WIRE_PER_METRE * (height + top),
        coil_loss=1 + off["coil_loss"],
        law=(factor, centre * (1 + off["valve"]), physics.triodes.fitted_law(parts["valve.type"]).offset),
        ht=parts["supply.ht"] * (1 + off["supply"]),
        lt=parts["supply.lt"] * (1 + off["supply"]),
    )


def with_windings(sample: Sample, tickler: int) -> WoundSample:
    """The sample with its windings, a number of turns on the tickler."""
    parts = {field.name: getattr(sample, field.name) for field in fields(Sample)}
    return WoundSample(**parts, windings=wind(sample, tickler))


@dataclass(frozen=True)
class Circuit:
    """The tuned circuit on a station, as one source: crest volts behind ohms; and the farads that tune it."""

    frequency: float
    voltage: np.ndarray
    resistance: np.ndarray
    capacitance: np.ndarray


def coupled_circuit(sample: WoundSample, frequency: float, field: np.ndarray) -> Circuit:
    """Aerial winding and tuned circuit, for a field in volts a metre r.m.s.

    Raises
    ------
    ValueError
        If the aerial takes away all of the coil's reactance.
    """
    of, impedance = sample.windings, sample.aerial_impedance(frequency)
    emf = physics.aerial.aerial_emf(field, sample.effective_height)
    own = sample.wire_resistance(of.tuned, frequency)
    voltage, resistance = physics.crystal.tuned_source(emf, frequency, of.aerial_tuned, impedance, of.tuned_inductance, own)
    return Circuit(frequency, voltage, resistance, capacitance_for(sample, frequency, True))


def isolated_circuit(sample: WoundSample, frequency: float, field: np.ndarray) -> Circuit:
    """The aerial on a valve of its own, whose anode feeds the winding that is otherwise the aerial's."""
    of, anode = sample.windings, sample.first_valve()
    emf = physics.aerial.aerial_emf(field, sample.effective_height)
    own = sample.wire_resistance(of.tuned, frequency)
    capacitance = capacitance_for(sample, frequency, False)
    gain = physics.isolating.carried_gain(
        frequency, sample.law[0], anode, of.aerial_inductance, of.aerial_tuned, own, capacitance
    )
    taken = physics.reflected.reflected_impedance(
        frequency, of.aerial_tuned, anode + 2j * np.pi * frequency * of.aerial_inductance
    )
    reactance = 2 * np.pi * frequency * of.tuned_inductance
    return Circuit(frequency, np.sqrt(2) * emf * gain, reactance**2 / (own + taken.real), capacitance)


def capacitance_for(sample: WoundSample, frequency: Any, with_aerial: bool) -> np.ndarray:
    """Farads, all message, that tune the coil, and what the aerial does to it, to a frequency; nan where none do."""
    angular = 2 * np.pi * frequency
    reactance = angular * effective_inductance(sample, frequency, with_aerial)
    with np.errstate(divide="ignore"):
        return np.where(reactance > 0, 1 / (angular * reactance), np.nan)


def effective_inductance(sample: WoundSample, frequency: Any, with_aerial: bool) -> np.ndarray:
    """Henries that the condenser finds: the coil's, and what the aerial reflects into it."""
    of = sample.windings
    if not with_aerial:
        return of.tuned_inductance
    reflected = physics.reflected.reflected_impedance(frequency, of.aerial_tuned, sample.aerial_impedance(frequency))
    return of.tuned_inductance + reflected.imag / (2 * np.pi * frequency)
