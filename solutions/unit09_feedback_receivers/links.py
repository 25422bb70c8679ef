"""The chain that `checker hear` is made of: which function of which exercise gives which numbers. Data, for the checker.

Where a core exercise can do the work of a further one, `core_links` says which.
"""

import numpy as np

from solutions.unit01_signal.aerial_voltage import aerial_emf, effective_height
from solutions.unit01_signal.field_strength import ground_wave_field
from solutions.unit01_signal.inverse_distance import field as flat_field
from solutions.unit03_tuned_circuit.aerial_coupling import loaded_quality_factor, tuned_voltage
from solutions.unit03_tuned_circuit.quality_factor import quality_factor
from solutions.unit03_tuned_circuit.reflected_impedance import series_impedance
from solutions.unit03_tuned_circuit.resonance import resonant_frequency
from solutions.unit03_tuned_circuit.tuning_range import dial_angle
from solutions.unit04_crystal_set.crystal_set import HEIGHT, TOP
from solutions.unit04_crystal_set.detect_step import detect_step
from solutions.unit05_valve.grid_leak import bias_with_carrier
from solutions.unit05_valve.load_line import operating_point
from solutions.unit05_valve.one_valve import gain as valve_gain
from solutions.unit05_valve.triode_current import anode_resistance, mutual_conductance
from solutions.unit06_reaction.oscillation_point import gain
from solutions.unit06_reaction.q_multiplication import gain_and_bandwidth
from solutions.unit06_reaction.three_knobs import tuned_to
from solutions.unit07_oscillation.radiated_field import noise_field

from . import receiver as club
from .evening import COUNTRY, CRESTS, FREQUENCIES, NAMES, STATIONS, crest_of, field
from .far_station import feedback
from .swing_step import swing_step

GROUND = [station for station in STATIONS if station.ground]
SECOND_WIDTH = 700.0  # hertz, of the second circuit on each station, at which its gain is asked for
SWING = 0.4  # volt, crest on the detector's grid, at most, with a station's carrier alone
FALLING = 40e-6  # second: a perfect detector so quick follows a modulation of 70 % up to 4 kHz, where the telephones end
TUNING_CONDENSER = "frequency", 20e-12, 340e-12, 20e-12  # its law; farad: plates out, plates in, strays


def on_stations(settings):
    """How the knobs stand in the demonstration and then on each station: (frequency, bandwidth), hertz."""
    return [*settings, *((frequency, SECOND_WIDTH) for frequency in FREQUENCIES)]


def induced(frequency):
    """What part of the isolating valve's voltage is induced in the second coil: its winding's reactance over its circuit's."""
    resistance, capacitance, inductance = club.ISOLATING
    return 2 * np.pi * frequency * club.COUPLING / abs(series_impedance(frequency, inductance, capacitance, resistance))


def second_resistance(frequency):
    """All loss of the second circuit without reaction, as ohms in series: the coil's, the grid's, and the isolating valve's."""
    resistance, inductance, grid_conductance = club.second_coil(frequency)
    reactance = 2 * np.pi * frequency * inductance
    return resistance + reactance**2 * grid_conductance + induced(frequency) ** 2 * club.ISOLATING[0]


def links(settings, rate):
    """(exercise, function, what it is for, the inputs of each call), in the order of the chain.

    Parameters
    ----------
    settings : list of (frequency, bandwidth), hertz, at the moments at which the condensers are worked out
    rate : float, hertz, samples a second
    """
    resistance, capacitance, inductance = club.AERIAL
    first = [
        (at, club.LOOSELY, series_impedance(at, inductance, capacitance, resistance), club.COIL, club.coil_resistance(at))
        for at in FREQUENCIES
    ]
    knobs = on_stations(settings)
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
        ("aerial_coupling", loaded_quality_factor, "how sharp the first circuit is", first),
        ("aerial_coupling", tuned_voltage, "what the first circuit gains", [(1.0, *one) for one in first]),
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
            [(at, club.COUPLING, *club.knobs(at, SECOND_WIDTH), *parts(at)) for at in FREQUENCIES],
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


def core_links(settings, rate):
    """The core's way round a further function: (exercise, function, the inputs of each call) for all that it takes.

    Parameters
    ----------
    settings, rate
        As in `links`.

    Returns
    -------
    dict of {name of the further function: tuple of (exercise, function, inputs)}
    """
    waiting = [knob for knob in on_stations(settings) if knob[1] > 0]  # past the edge there is no Q to be multiplied
    sharpness = [(club.COIL, second_resistance(at), at) for at, _ in waiting]
    shares = [(at, quality_factor(*one), band) for one, (at, band) in zip(sharpness, waiting, strict=True)]
    reaction = (
        ("quality_factor", quality_factor, sharpness),
        ("far_station", feedback, shares),
        ("q_multiplication", gain_and_bandwidth, [(*one[:2], feedback(*one)) for one in shares]),
    )
    rest = float(bias_with_carrier(0.0, club.LEAK, club.LEAK_RETURN, club.ZERO_CURRENT, club.GRID_SLOPE))
    anode = float(operating_point(club.SUPPLY, club.LOAD, rest, *club.LAW)[0])
    at_rest = float(mutual_conductance(anode, rest, *club.LAW)), float(anode_resistance(anode, rest, *club.LAW))
    falling = 1 / rate, FALLING
    detector = ("detect_step", detect_step, [(0.4, 0.1, *falling), (0.1, 0.4, *falling)])
    valve = ("one_valve", valve_gain, [(*at_rest, club.LOAD)])
    steps = [(0.3 - 0.1j, 400.0 + 200.0j, -2199.0, 1 / rate), (1e-3j, -30.0 + 0j, 785.0, 1 / rate)]
    return {
        "ground_wave_field": (("inverse_distance", flat_field, [(one.power, one.distance) for one in GROUND]),),
        "tuned_to": reaction,
        "gain": reaction,
        "circuit_voltage": (("swing_step", swing_step, steps),),
        "bias_with_carrier": (detector,),
        "operating_point": (valve,),
        "telephones": (detector, valve),
    }


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
        "ground_factors": [
            float(ground_wave_field(one.power, one.distance, one.frequency, *one.ground) / flat_field(one.power, one.distance))
            for one in GROUND
        ],
        "induced": [float(induced(frequency)) for frequency in FREQUENCIES],
        "second_width": SECOND_WIDTH,
        "swing": SWING,
        "falling": FALLING,
        "amplification": club.AMPLIFICATION,
        "hardening": club.HARDENING,
    }
