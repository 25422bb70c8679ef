"""The quenched set of the browser bench as plain numbers, with a dial and stations of its own: 30 MHz, screened, no aerial.

Kit Harrow's test oscillators stand in biscuit tins. A cable takes all of them to one turn of wire beside the set's coil.
"""

import numpy as np

from course.circle.quenched import CAPACITANCE, FREQUENCY, LIMIT, QUALITY, QUENCH, TEMPERATURE
from solutions.unit07_oscillation.stage import SALTMARSH_STAGE, slopes_at_rest

DIAL = 28e6, 32e6  # hertz
COUPLING = 1e-9, 20e-9, 4e-9  # henry between loop and coil: least, most, at first
REACTION = 1.2, 2.4, 1.6  # part of the coil's loss that is made good while a burst grows
QUENCHES = 20e3, 80e3, QUENCH  # hertz
LOOP_INDUCTANCE, LOOP_RESISTANCE = 0.1e-6, 75.0  # of the one turn; of the cable that feeds it, matched
BYPASS = 4e-9  # farad across the telephones, and again behind a filter: they keep the quench out
# Two at once beat, and the bursts look at the beat only now and then. Quenched as at first, all they see is 16 kHz, or nothing.
TINS = (  # name, hertz, volt r.m.s. in series with the loop
    ("Shortbread", 29.20e6, 400e-6),
    ("Oatcake", 29.60e6, 100e-6),
    ("Gingernut", 30.912e6, 40e-6),
)


def quenched_set() -> dict:
    """The set with its knobs, its dial and its stations.

    Returns
    -------
    dict, ready for JSON; SI units throughout
    """
    inductance = 1 / ((2 * np.pi * FREQUENCY) ** 2 * CAPACITANCE)
    least, start, most = (1 / ((2 * np.pi * place) ** 2 * inductance) for place in (DIAL[1], FREQUENCY, DIAL[0]))
    return {
        "title": "Quenched set",
        "knobs": {
            "coupling": knob("nH", *COUPLING),
            "tuning": {"low": 0.999 * least, "high": 1.001 * most, "start": start},
            "throttle": knob("", *REACTION),
            "quench": knob("kHz", *QUENCHES),
        },
        "feeds": ["quenched"],
        "stages": {},
        "dial": {
            "low": DIAL[0],
            "high": DIAL[1],
            "step": 10e3,
            "fine": 60e3,
            "least": 1e3,
            "tick": 50e3,
            "span": 960e3,
            "weakest": -110.0,
            "gain": -60.0,
        },
        "stations": [{"name": name, "frequency": frequency, "emf": emf} for name, frequency, emf in TINS],
        "quenched": {
            "inductance": inductance,
            "quality": QUALITY,
            "temperature": TEMPERATURE,
            "limit": LIMIT,
            "loop_inductance": LOOP_INDUCTANCE,
            "loop_resistance": LOOP_RESISTANCE,
            **behind_the_grid(),
        },
    }


def knob(unit: str, low: float, high: float, start: float) -> dict:
    """A knob, and the unit in which a setting writes it."""
    return {"low": low, "high": high, "start": start, "unit": unit}


def behind_the_grid() -> dict:
    """From the mean swing on the grid to the telephones: by how much it is amplified, into what load, and how soon.

    Returns
    -------
    dict

    Source
    ------
    The grid's bias goes down as the mean swing goes up, volt for volt: a grid leak's detector for large swings. What the valve
    makes of it is its slope times its own resistance and the telephones' side by side, across which lies the bypass condenser.
    A filter of the same time constant follows: without one the quench gets into all that comes after (common practice, no
    source).
    """
    slope, resistance, _ = slopes_at_rest(SALTMARSH_STAGE)
    load = SALTMARSH_STAGE.load_resistance
    beside = resistance * load / (resistance + load)
    return {
        "audio_gain": slope * beside,
        "audio_time": BYPASS * beside,
        "load_resistance": load,
    }
