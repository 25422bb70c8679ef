"""The quenched set of the browser bench as plain numbers, with a dial and stations of its own."""

import numpy as np

from course.circle.quenched import (
    BYPASS,
    CAPACITANCE,
    COUPLINGS,
    DIAL,
    FEEDBACKS,
    FREQUENCY,
    LIMIT,
    LOOP_INDUCTANCE,
    LOOP_RESISTANCE,
    QUALITY,
    QUENCHES,
    TEMPERATURE,
    TINS,
)
from solutions.unit07_oscillation.stage import SALTMARSH_STAGE, slopes_at_rest


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
            "coupling": knob("nH", *COUPLINGS),
            "tuning": {"low": 0.999 * least, "high": 1.001 * most, "start": start},
            "throttle": knob("", *FEEDBACKS),
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
