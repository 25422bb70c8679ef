"""The capstone: the evening's levels against published fields, and receivers, right and wrong, against what is asked."""

import numpy as np
import pytest
from scipy.integrate import solve_ivp

from solutions.unit09_feedback_receivers import receiver_check
from solutions.unit09_feedback_receivers.evening import (
    CRESTS,
    FREQUENCIES,
    NAMES,
    REACH,
    STATIONS,
    evening,
    field,
    frame_of,
    tones,
)
from solutions.unit09_feedback_receivers.receiver import circuit_voltage, first_circuit, receiver
from solutions.unit09_feedback_receivers.receiver_check import EXERCISE, built

MEASURED = EXERCISE.questions[-1].measured


def remembering(function):
    """The function, that works each of its answers out once."""
    known = {}

    def asked(emf, *rest):
        key = emf.tobytes(), rest
        if key not in known:
            known[key] = function(emf, *rest)
        return known[key]

    return asked


def not_met(function, seed):
    """What a receiver does not meet: names of measurements."""
    asked = remembering(function)
    with np.errstate(all="ignore"):
        return {measured.what for measured in MEASURED if not measured.meets(float(measured.of(asked, seed)[0]))}


def test_evening_has_six_stations_and_a_weak_one_beside_a_strong_one():
    assert NAMES == ("Merrow Sound", "Saltmarsh Point", "Gannet Rock", "Curlew Bank", "Skerry Vore", "Holm Light")
    assert FREQUENCIES[2] - FREQUENCIES[1] == 9e3
    assert 20 < 20 * np.log10(CRESTS[1] / CRESTS[2]) < 32


def test_sky_wave_is_that_of_the_published_formula(published):
    # 47 CFR 73.190(b), formula 1, as tabulated in skywave_fcc.csv: found. For 100 mV/m at 1 km; 1 kW makes 300.
    table = published("signal/skywave_fcc")
    station = STATIONS[NAMES.index("Skerry Vore")]
    row = table["phim_deg"] == 50
    wanted = np.interp(station.distance / 1e3, table["d_km"][row], table["fc50_dbuvm"][row])
    wanted += 20 * np.log10(3 * np.sqrt(station.power / 1e3))
    assert 20 * np.log10(field(station) / 1e-6) == pytest.approx(wanted, abs=1.5)


def test_stations_left_out_of_a_frame_would_not_be_heard():
    for place, (frequency, crest) in enumerate(zip(FREQUENCIES, CRESTS, strict=True)):
        width, _ = first_circuit(frequency)
        for other, strength in zip(FREQUENCIES, CRESTS, strict=True):
            if abs(other - frame_of(place)) >= REACH:
                away = 2 * (other - frequency)
                left = strength / np.hypot(1, away / width) / np.hypot(1, away / 700)
                assert left < crest / 100


def test_no_two_stations_share_a_tone_and_a_seed_draws_others():
    first, again, other = tones(1), tones(1), tones(2)
    assert len(np.unique(first)) == first.size
    assert np.array_equal(first, again) and not np.array_equal(first, other)
    assert np.array_equal(evening(1, 2, 24e3, 0.1), evening(1, 2, 24e3, 0.1))


def test_circuit_agrees_with_an_integrator():
    # referee: SciPy's DOP853
    rate, width, gain_bandwidth, hardening = 96e3, -300.0, 20e3, 500.0
    time = np.arange(2400) / rate
    emf = 1e-3 * np.exp(2j * np.pi * 500 * (time + 0.5 / rate))

    def slope(t, v):
        return (2j * np.pi * 200 - np.pi * (width + hardening * abs(v) ** 2)) * v + np.pi * gain_bandwidth * 1e-3 * np.exp(
            2j * np.pi * 500 * t
        )

    wanted = solve_ivp(slope, (0, 2400 / rate), [0.01 + 0j], method="DOP853", rtol=1e-9, atol=1e-12).y[0, -1]
    got = circuit_voltage(emf, rate, 200.0, width, gain_bandwidth, hardening, 0.01)[-1]
    assert got == pytest.approx(wanted, rel=5e-3)


@pytest.mark.parametrize("seed", [1, 4711, 923676, 491783])  # the last two: the faintest and the most troubled of 400 evenings
def test_reference_receiver_meets_every_measurement(seed):
    assert not_met(receiver, seed) == set()


def test_what_is_measured_does_not_hang_on_the_steps(monkeypatch):
    at_48 = receiver_check.powers(receiver, 3, 2)
    monkeypatch.setattr(receiver_check, "RATES", (96e3,) * 6)
    np.testing.assert_allclose(10 * np.log10(at_48[1:3] / receiver_check.powers(receiver, 3, 2)[1:3]), 0, atol=2)


@pytest.mark.parametrize(("wrong", "lost"), [
    (built(shift=1e3), {"tuning error", "width at −40 dB", "distortion"}),
    (built(shift=-9e3), {"tuning error", "width at −3 dB", "width at −40 dB", "level", "wanted to unwanted", "distortion"}),
    (built(bandwidth=450.0), {"width at −3 dB"}),
    (built(bandwidth=1000.0), set()),
    (built(bandwidth=2500.0), {"width at −3 dB", "width at −40 dB", "wanted to unwanted"}),
    (built(bandwidth=-300.0), {"width at −3 dB", "level", "whistle"}),
    (built(swing=3.0), {"distortion"}),
    (built(swing=0.1), {"level", "distortion"}),
    (built(reaction=False), {"width at −3 dB", "width at −40 dB", "wanted to unwanted", "distortion"}),
], ids=["1 kHz off", "9 kHz off", "narrow", "as good", "broad", "oscillating", "overloaded", "faint", "plain"])  # fmt: skip
def test_each_wrong_receiver_loses_what_it_should(wrong, lost):
    assert not_met(wrong, 5) == lost
