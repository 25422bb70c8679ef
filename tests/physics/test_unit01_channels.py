"""Channels, wavelengths and images, against the plans' own lists."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from solutions.unit01_signal.channel_plan import carriers, image_reading, nearest_channel, wavelength

spacings = st.sampled_from([9000, 10000])
frequencies = st.floats(300e3, 2e6)
readings = st.floats(150, 600)


@pytest.mark.parametrize(("spacing", "plan"), [(9000, "R1R3"), (10000, "R2")])
def test_carriers_and_wavelengths_are_those_of_the_plan(published, spacing, plan):
    # ITU Final Acts, Geneva 1975: 9 kHz steps and the last carrier found, the first (531 kHz) from memory, the list
    # recomputed. 47 CFR 73.14 (2024 text): found. Wavelengths recomputed, four decimals.
    row = published("signal/mw_channels")
    mine = row["plan"] == plan
    np.testing.assert_array_equal(carriers(spacing), row["f_khz"][mine] * 1e3)
    np.testing.assert_allclose(wavelength(carriers(spacing)), row["lambda_m"][mine], atol=6e-5)


def test_how_many():
    # 120: recomputed from Geneva 1975; 117: found, 47 CFR 73.14.
    assert (len(carriers(9000)), len(carriers(10000))) == (120, 117)


@given(frequencies, spacings)
def test_no_channel_is_nearer(frequency, spacing):
    plan = carriers(spacing)
    nearest = nearest_channel(frequency, spacing)
    assert nearest in plan
    assert abs(nearest - frequency) == pytest.approx(np.abs(plan - frequency).min(), abs=1e-9)
    assert nearest_channel(nearest, spacing) == nearest


@given(spacings, st.floats(0, 1))
def test_inside_the_band_a_channel_is_never_more_than_half_a_step_away(spacing, part):
    plan = carriers(spacing)
    frequency = plan[0] + part * (plan[-1] - plan[0])
    assert abs(nearest_channel(frequency, spacing) - frequency) <= spacing / 2 + 1e-6


@given(frequencies)
def test_wavelength_is_its_own_inverse(frequency):
    assert wavelength(wavelength(frequency)) == pytest.approx(frequency)


@given(readings, readings)
def test_an_image_gives_the_same_note_from_the_other_side(reading, oscillator):
    if reading <= oscillator / 2:
        with pytest.raises(ValueError, match="more than half of oscillator_reading"):
            image_reading(reading, oscillator)
        return
    above = wavelength(reading) - wavelength(oscillator)
    image = image_reading(reading, oscillator)
    assert wavelength(image) - wavelength(oscillator) == pytest.approx(-above, abs=1e-5)


@given(st.floats(250, 600), st.floats(300, 480))
def test_the_image_of_the_image_is_the_station(reading, oscillator):
    image = image_reading(reading, oscillator)
    if image > oscillator / 2:
        assert image_reading(image, oscillator) == pytest.approx(reading)


@pytest.mark.parametrize("ask", [carriers, lambda spacing: nearest_channel(846e3, spacing)])
def test_another_raster_is_refused(ask):
    with pytest.raises(ValueError, match="spacing must be 9000 or 10000 Hz; it is 9"):
        ask(9)
