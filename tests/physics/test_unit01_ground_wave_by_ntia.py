"""The ground wave, against the model that the US National Telecommunications and Information Administration publishes.

Referee: proplib-lfmf, the NTIA's own LF/MF smooth-earth library (NTIA Report 99-368, 1999; title from memory). It follows the
globe's curve and bends the rays by the air; ours is a flat earth, so ours is always the stronger, near by by next to nothing.
"""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from course.circle import stations
from solutions.unit01_signal.field_strength import ground_wave_field
from solutions.unit09_feedback_receivers import evening
from tests.physics.test_unit01_ground_wave import round_globe_loss

ntia = pytest.importorskip("ITS.Propagation.LFMF", reason="the NTIA's library is made for x86-64 alone")

frequencies = st.floats(150e3, 1.7e6)
conductivities = st.floats(1e-3, 5)
permittivities = st.floats(4, 80)


def by_ntia(distance, frequency, conductivity, permittivity, power=1e3):
    """dB over 1 µV/m, aerials on the ground, 315 N-units, upright waves."""
    return ntia.LFMF(0, 0, frequency / 1e6, power, 315, distance / 1e3, permittivity, conductivity, 1).E__dBuVm


def too_strong(distance, *ground, power=1e3):
    return 20 * np.log10(ground_wave_field(power, distance, *ground) / 1e-6) - by_ntia(distance, *ground, power=power)


def test_the_library_gives_its_own_validation_set(published):
    # NTIA/ITS LF/MF smooth-earth validation set, found: so the table and the library are the same model.
    row = published("signal/groundwave_ntia_lfmf")
    given = zip(row["d_km"] * 1e3, row["f_mhz"] * 1e6, row["sigma_s_per_m"], row["eps_r"], strict=True)
    np.testing.assert_allclose([by_ntia(*each) for each in given], row["e_dbuvm"], atol=1e-5)


@given(st.floats(1e3, 20e3), frequencies, conductivities, permittivities, st.floats(1, 1e6))
def test_up_to_20_km_it_agrees_within_a_sixth_of_a_decibel(distance, frequency, conductivity, permittivity, power):
    assert 0 < too_strong(distance, frequency, conductivity, permittivity, power=power) < 0.16


@given(st.floats(0.02, 1), frequencies, conductivities, permittivities)
def test_over_the_fair_range_the_flat_earth_is_at_most_1_4_decibel_too_strong(part, frequency, conductivity, permittivity):
    distance = part * 80e3 / np.cbrt(frequency / 1e6)
    assert 0 < too_strong(distance, frequency, conductivity, permittivity) < 1.4


@pytest.mark.parametrize("distance", [100e3, 200e3, 400e3])
@pytest.mark.parametrize("ground", [(5, 70), (0.03, 40), (0.003, 22)])
@pytest.mark.parametrize("frequency", [200e3, 693e3, 1.5e6])
def test_beyond_it_the_globe_takes_what_it_takes_by_ntia(distance, frequency, ground):
    taken = round_globe_loss(distance, frequency, *ground)
    assert too_strong(distance, frequency, *ground) == pytest.approx(taken, abs=0.008)


@pytest.mark.parametrize("station", stations.STATIONS, ids=lambda station: station.name)
def test_what_flat_earth_costs_the_stations_of_the_lessons(station):
    taken = {"Saltmarsh Point": 0.01, "Curlew Bank": 0.49, "Gannet Rock": 0.75, "Holm Light": 0.37, "Merrow Sound": 3.80}
    given = station.distance, station.frequency, *stations.GROUNDS[station.ground]
    assert too_strong(*given, power=station.power) == pytest.approx(taken[station.name], abs=0.005)


@pytest.mark.parametrize("station", [s for s in evening.STATIONS if s.ground], ids=lambda station: station.name)
def test_the_capstones_evening_has_the_fields_that_the_ntia_gives(station):
    wanted = by_ntia(station.distance, station.frequency, *station.ground, power=station.power)
    assert 20 * np.log10(evening.field(station) / 1e-6) == pytest.approx(wanted, abs=0.5)
