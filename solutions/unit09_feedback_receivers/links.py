"""The chain that `checker hear` is made of: which function of which exercise gives which numbers. Data, for the checker."""

import numpy as np

from solutions.unit01_signal.aerial_voltage import aerial_emf, effective_height
from solutions.unit01_signal.field_strength import ground_wave_field
from solutions.unit03_tuned_circuit.aerial_coupling import loaded_quality_factor, tuned_voltage
from solutions.unit03_tuned_circuit.reflected_impedance import series_impedance
from solutions.unit03_tuned_circuit.resonance import resonant_frequency
from solutions.unit03_tuned_circuit.tuning_range import dial_angle
from solutions.unit04_crystal_set.crystal_set import HEIGHT, TOP
from solutions.unit05_valve.grid_leak import bias_with_carrier
from solutions.unit05_valve.load_line import operating_point
from solutions.unit06_reaction.oscillation_point import gain
from solutions.unit06_reaction.three_knobs import tuned_to
from solutions.unit07_oscillation.radiated_field import noise_field

from . import receiver as club
from .evening import COUNTRY, CRESTS, FREQUENCIES, NAMES, STATIONS, crest_of, field

GROUND = [station for station in STATIONS if station.ground]
SECOND_WIDTH = 700.0  # hertz, of the second circuit, at which its gain is asked for
TUNING_CONDENSER = "frequency", 20e-12, 340e-12, 20e-12  # its law; farad: plates out, plates in, strays


def links(knobs, far, rate):
    """(exercise, function, what it is for, the inputs of each call), in the order of the chain.

    Parameters
    ----------
    knobs : list of (frequency, bandwidth), hertz, at the moments at which the condensers are worked out
    far : float, hertz, of the far station
    rate : float, hertz, samples a second
    """
    resistance, capacitance, inductance = club.AERIAL
    first = far, club.LOOSELY, series_impedance(far, inductance, capacitance, resistance), club.COIL, club.coil_resistance(far)
    condensers = [club.knobs(*knob) for knob in knobs]

    def parts(frequency):
        return club.ISOLATING, club.second_coil(frequency), club.TICKLER, club.VALVE

    grid_law = club.LEAK, club.LEAK_RETURN, club.ZERO_CURRENT, club.GRID_SLOPE
    crests, bias = np.linspace(0, 3, 300), np.linspace(-3.5, 0.1, 300)
    swell = 0.3 * (1 + 0.5 * np.sin(2 * np.pi * 400 * np.arange(240) / rate)) * np.exp(1j)
    height = float(effective_height(HEIGHT, TOP))
    return (
        (
            "field_strength",
            ground_wave_field,
            "how strong the stations are",
            [(one.power, one.distance, one.frequency, *one.ground) for one in GROUND],
        ),
        ("aerial_voltage", aerial_emf, "what they bring into the aerial", [(field(one), height) for one in STATIONS]),
        ("aerial_coupling", loaded_quality_factor, "how sharp the first circuit is", [first]),
        ("aerial_coupling", tuned_voltage, "what the first circuit gains", [(1.0, *first)]),
        ("receiver", club.knobs, "where both condensers stand", knobs),
        (
            "tuning_range",
            dial_angle,
            "where the pointer stands",
            [(float(resonant_frequency(club.COIL, tuning)), *TUNING_CONDENSER, club.COIL) for tuning, _ in condensers],
        ),
        (
            "three_knobs",
            tuned_to,
            "where the second circuit is tuned, and how sharply",
            [(club.COUPLING, *both, *parts(knob[0])) for both, knob in zip(condensers, knobs, strict=True)],
        ),
        (
            "oscillation_point",
            gain,
            "what the second circuit gains",
            [(far, club.COUPLING, *club.knobs(far, SECOND_WIDTH), *parts(far))],
        ),
        (
            "receiver",
            club.circuit_voltage,
            "both circuits, moment by moment",
            [(swell, rate, 300.0, 800.0, 5e3, 500.0, 0.1j), (swell, rate, 0.0, -200.0, 5e3, 500.0, 0j)],
        ),
        ("grid_leak", bias_with_carrier, "the detector's grid", [(crests, *grid_law)]),
        ("load_line", operating_point, "the detector's anode", [(club.SUPPLY, club.LOAD, bias, *club.LAW)]),
        ("receiver", club.telephones, "grid and anode together, moment by moment", [(swell, rate)]),
    )


def numbers(frame, rate):
    """All else that the chain needs: plain numbers, and no answer among them; `frame` and `rate` in hertz."""
    places = range(len(STATIONS))
    return {
        "names": list(NAMES),
        "frequencies": list(FREQUENCIES),
        "fading": [station.fading for station in STATIONS],
        "ground": [place for place in places if STATIONS[place].ground],
        "noise": crest_of(float(noise_field(frame, rate, *COUNTRY))),
        "log": list(CRESTS),
        "second_width": SECOND_WIDTH,
        "amplification": club.AMPLIFICATION,
        "hardening": club.HARDENING,
    }
