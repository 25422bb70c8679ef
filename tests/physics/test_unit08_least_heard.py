"""The least that can be heard: noise against scipy's constants, P.372's tables, whole meshes, and samples."""

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy import constants
from scipy.integrate import quad

from solutions.unit04_crystal_set.crystal_set import SENSITIVITY
from solutions.unit05_valve.grid_leak import bias_with_carrier
from solutions.unit05_valve.one_valve_set import (
    CONDENSER,
    GRID_SLOPE,
    LEAK,
    LEAK_RETURN,
    TONE_RESISTANCE,
    ZERO_CURRENT,
    detector_gain,
)
from solutions.unit07_oscillation.radiated_field import noise_field
from solutions.unit08_two_stations import club_noise as club
from solutions.unit08_two_stations.least_heard import (
    BOLTZMANN,
    ELECTRON_CHARGE,
    circuit_noise,
    country_noise,
    least_field,
    noise_together,
    set_noise,
    shot_noise,
    thermal_noise,
)

resistances = st.floats(0, 7).map(lambda power: 10**power)
bands = st.floats(100, 20e3)
carriers = st.floats(500e3, 1.6e6)
voltages = st.floats(1e-8, 1e-3)


def test_constants():
    assert constants.k == BOLTZMANN
    assert constants.e == ELECTRON_CHARGE


@given(resistances, st.floats(1e-12, 1e-9), st.floats(77, 3000))
def test_heat_of_a_resistance_fills_a_condenser_with_half_kt(resistance, capacitance, temperature):
    # H. Nyquist, Physical Review 32, 110 (1928), against equipartition: the mean of C V²/2 is kT/2.
    corner = 1 / (2 * math.pi * resistance * capacitance)
    share, _ = quad(lambda x: 1 / (1 + x**2), 0, math.inf)
    squared = thermal_noise(resistance, 1.0, temperature) ** 2 * corner * share
    assert squared == pytest.approx(constants.k * temperature / capacitance, rel=1e-9)


def test_electrons_that_come_when_they_like():
    # Counted electrons: a current averaged over a time t lets through a band of 1/(2t). W. Schottky 1918 (from memory).
    current, while_ = 1e-12, 1e-3
    counts = np.random.default_rng(3).poisson(current * while_ / constants.e, 200_000)
    spread = np.std(counts * constants.e / while_)
    assert spread == pytest.approx(shot_noise(current, 1 / (2 * while_)), rel=0.01)


def test_a_junction_at_rest_is_as_noisy_as_its_slope():
    # Two currents of I each way, slope kT/eI: 2eI + 2eI = 4kT/R, whatever I is.
    slope = constants.k * 290 / constants.e / 1e-6
    assert 2 * shot_noise(1e-6, 1e3) ** 2 == pytest.approx((thermal_noise(slope, 1e3, 290.0) / slope) ** 2, rel=1e-12)


def test_country_as_in_the_table(published):
    # ITU-R P.372, constants found in the Study Group 3 software; fields recomputed, by a constant rounded to 0.1 dB.
    table = published("signal/noise_p372")
    for megahertz, column in ((0.5, "fam_0p5"), (1.0, "fam_1p0"), (1.6, "fam_1p6")):
        field = country_noise(table[column], megahertz * 1e6, 9e3, 1.0)
        wanted = table[column] + 20 * math.log10(megahertz) + 10 * math.log10(9e3) - 95.5
        assert 20 * np.log10(field * 1e6) == pytest.approx(wanted, abs=0.02)
    found = country_noise(table["fam_1p0"], 1e6, 4.5e3, 1.0)
    assert 20 * np.log10(found * 1e6) == pytest.approx(table["en_1mhz_4k5"], abs=0.02)


@given(st.floats(20, 90), carriers, bands, st.floats(0.3, 15))
def test_country_is_the_field_times_the_height(figure, frequency, bandwidth, height):
    field = noise_field(frequency, bandwidth, figure, 0.0)
    assert country_noise(figure, frequency, bandwidth, height) == pytest.approx(field * height, rel=3e-3)
    squared = 640 * math.pi**2 * constants.k * 290 * 10 ** (figure / 10) * bandwidth * (frequency / constants.c) ** 2
    assert country_noise(figure, frequency, bandwidth, height) == pytest.approx(math.sqrt(squared) * height, rel=1e-9)


def grid_voltages(fed_back):
    """Volts on the grid, squared, from each hertz of every source in a set of real parts, and from a volt in the aerial.

    Aerial mesh and tuned mesh with M between, grid conductance across the condenser, and a tickler that puts `fed_back` ohms
    times the condenser's charging current (of all that is on the grid) back in series with the coil.
    """
    angular = 2 * math.pi * 1e6
    earth, coil, leak, current, slope = 30.0, 6.0, 2e6, 1e-6, 0.9e-3
    inductance, mutual, slope_voltage = 200e-6, 20e-6, 0.12
    conductance = 1 / leak + current / slope_voltage
    aerial = earth - 750j

    def solve(capacitance, in_aerial=0.0, in_coil=0.0, across=0.0, at_grid=0.0):
        y = 1j * angular * capacitance
        # unknowns: aerial current, coil current, condenser voltage; the coil's current charges condenser and conductance
        matrix = [
            [aerial, -1j * angular * mutual, 0],
            [-1j * angular * mutual, coil + 1j * angular * inductance, 1 - fed_back * y],
            [0, 1, -(y + conductance)],
        ]
        _, _, voltage = np.linalg.solve(matrix, [in_aerial, in_coil + fed_back * y * at_grid, -across])
        return abs(voltage + at_grid) ** 2

    tuned = max(np.linspace(120e-12, 132e-12, 48001), key=lambda c: solve(c, in_aerial=1.0))
    per_hertz = 4 * constants.k * 290
    made = (
        per_hertz * earth * solve(tuned, in_aerial=1.0)
        + per_hertz * coil * solve(tuned, in_coil=1.0)
        + (per_hertz / leak + 2 * constants.e * current) * solve(tuned, across=1.0)
        + per_hertz * 2.5 / slope * solve(tuned, at_grid=1.0)
    )
    loss = coil + (angular * mutual / abs(aerial)) ** 2 * earth
    reactance = 1 / (angular * tuned)
    quality = reactance / (loss + conductance * reactance**2)
    parts = circuit_noise(coil, reactance, leak, current, 1.0), quality, slope, angular * mutual / abs(aerial), earth, 1.0
    return made, solve(tuned, in_aerial=1.0), parts


@pytest.mark.parametrize("fed_back", [0.0, 10.0, 18.0])
def test_noise_of_a_set_of_real_parts_with_reaction_and_without(fed_back):
    made, of_the_aerial, parts = grid_voltages(fed_back)
    assert set_noise(*parts) == pytest.approx(math.sqrt(made / of_the_aerial), rel=3e-3)


def test_reaction_multiplies_the_station():
    assert grid_voltages(18.0)[1] > 20 * grid_voltages(0.0)[1]


@given(voltages, voltages)
def test_two_noises_of_random_samples_add_by_squares(outside, own):
    first, second = np.random.default_rng(5).standard_normal((2, 4000))
    first, second = first - first.mean(), second - second.mean()
    second = second - first * (first @ second) / (first @ first)
    together = np.std(outside * first / first.std() + own * second / second.std())
    assert noise_together(outside, own)[0] == pytest.approx(together, rel=1e-9)
    assert noise_together(outside, own)[1] == pytest.approx(own**2 / (own**2 + outside**2), rel=1e-9)


@pytest.mark.parametrize(("depth", "ratio"), [(0.3, 6.0), (0.3, 26.0), (0.6, 15.0)])
def test_ratio_of_tone_to_noise_behind_an_envelope_detector(depth, ratio):
    # Crest of carrier, tone and noise, sample by sample. Noise of r.m.s. N is two parts of r.m.s. N, in step and across: a sine
    # and a cosine, each with half of the power of its crest.
    noise, samples = 1.0, 400_000
    carrier = least_field(noise, 1.0, depth, ratio)
    in_step, across = noise * np.random.default_rng(11).standard_normal((2, samples))
    tone = np.sqrt(2) * np.cos(2 * np.pi * np.arange(samples) / 100)
    crest = np.hypot(np.sqrt(2) * carrier * (1 + depth * tone / np.sqrt(2)) + in_step, across)
    heard = np.mean(crest * tone)
    rest = np.std(crest - crest.mean() - heard * tone)
    assert 20 * math.log10(heard / rest) == pytest.approx(ratio, abs=0.15)


def test_least_field_refuses_a_depth_that_is_none():
    for depth in (0.0, -0.3, 1.2, 30.0, [0.3, 0.0]):
        with pytest.raises(ValueError, match="depth must be"):
            least_field(1e-6, 1.0, depth, 6.0)


def test_the_sky_is_as_in_the_table(published):
    # World maps of ITU-R P.372 at 54 N, 2 E, from coefficients found; see the table's own words.
    table = published("signal/atmospheric_noise")
    for when, hours in (("winter day", "12-16"), ("winter night", "20-24"), ("summer day", "12-16"), ("summer night", "20-24")):
        [row] = np.flatnonzero((table["season"] == when.split()[0]) & (table["hours"] == hours))
        assert club.SKY[when] == tuple(table[column][row] for column in ("fam_0p5", "fam_1p0", "fam_1p6"))
        for megahertz, figure in zip(club.SKY_MEGAHERTZ, club.SKY[when], strict=True):
            assert club.sky_figure(megahertz * 1e6, when) == pytest.approx(figure, abs=1e-9)
    [row] = np.flatnonzero((table["season"] == "winter") & (table["hours"] == "20-24"))
    assert club.DECILES["winter night"] == (table["du_db"][row], table["dl_db"][row])


def test_the_places_are_as_in_the_table(published):
    table = published("signal/noise_p372")
    for name, row in (("houses", "residential"), ("country", "rural"), ("quiet country", "quiet_rural")):
        [at] = np.flatnonzero(table["environment"] == row)
        assert club.MAN_MADE[name] == (table["c_db"][at], table["d_db"][at])
        assert club.man_made_figure(0.5e6, name) == pytest.approx(table["fam_0p5"][at], abs=2e-3)
    [at] = np.flatnonzero(table["environment"] == "rural")
    assert club.DECILES["country"] == (table["du_db"][at], table["dl_db"][at])


def test_median_of_place_and_sky_by_lot():
    generator = np.random.default_rng(8)
    powers = 0.0
    for name, figure in (("country", 67.2), ("winter night", 68.0)):
        lot = generator.standard_normal(1_000_000) / 1.281552
        powers = powers + 10 ** ((figure + lot * np.where(lot > 0, *club.DECILES[name])) / 10)
    wanted = 10 * math.log10(np.median(powers)) - 10 * math.log10(10**6.72 + 10**6.80)
    assert club.median_of_both() == pytest.approx(wanted, abs=0.05)


@given(carriers)
def test_the_sets_parts_make_the_whole(frequency):
    assert club.own_noise(frequency) ** 2 == pytest.approx(sum(part**2 for part in club.own_parts(frequency)), rel=1e-9)


def test_hiss_by_an_integral_and_the_stages_gain_by_differences():
    per_hertz = 2 * constants.e * club.GRID_CURRENT + 4 * constants.k * 290 / LEAK
    valve = 4 * constants.k * 290 * 2.5 / club.SLOPE

    def squared(tone):
        impedance = 1 / (club.GRID_CONDUCTANCE + 2j * math.pi * tone * CONDENSER)
        return per_hertz * abs(impedance) ** 2 + valve

    on_grid, _ = quad(squared, 0, club.BAND / 2)
    assert club.hiss() == pytest.approx(math.sqrt(on_grid) * club.stage_gain(), rel=1e-9)
    # A small carrier of crest A moves the grid by A²/(4n) times the leak's share; that slope in A is what unit 05 multiplies.
    small = 2e-3
    moved = [bias_with_carrier(small + d, LEAK, LEAK_RETURN, ZERO_CURRENT, GRID_SLOPE) for d in (-1e-4, 1e-4)]
    assert detector_gain(small, 1.0) == pytest.approx((moved[0] - moved[1]) / 2e-4 * club.stage_gain(), rel=0.05)


def test_the_ear_and_the_hiss_fall_as_the_gain_rises():
    assert club.least_by_ear(100.0) == pytest.approx(club.least_by_ear(10.0) / 10, rel=1e-9)
    tone = club.heard_level(20.0)
    level = 10 * math.log10(tone**2 / TONE_RESISTANCE / 1e-3) + SENSITIVITY
    assert level == pytest.approx(2.4 + 20, abs=1e-6)  # ISO 226's threshold at 1 kHz, and 20 dB
    carrier = club.carrier_for(tone)
    assert detector_gain(carrier, 1e3) * 0.3 * carrier / math.sqrt(2) == pytest.approx(tone, rel=1e-6)


def test_what_the_lesson_says():
    # The set's own part is small wherever there are people or night; by day in quiet country at the low end it is most.
    assert all(club.own_share(1e6, when) < 4e-4 for when in club.SKY)
    assert max(
        club.own_share(f, when, where) for f in (600e3, 1e6, 1.5e6) for when in club.SKY for where in club.MAN_MADE
    ) == club.own_share(600e3, "winter day", "quiet country")
    # By night the sky evens out: country and quiet country are 2 to 3 dB apart, by day 13 and more.
    night, day = (
        club.outside_figure(1e6, when) - club.outside_figure(1e6, when, "quiet country")
        for when in ("winter night", "winter day")
    )
    assert 2 < night < 3 and day > 13
    assert 3 < club.outside_figure(1e6, "winter night") - club.outside_figure(1e6, "winter day") < 4
    # In the set the grid's current makes most of the noise, over the whole dial.
    assert all(max(club.own_parts(f)) == club.own_parts(f).grid for f in np.linspace(530e3, 1.6e6, 30))
    # With no reaction it is the ear that decides at 1 MHz, with it the noise of the place.
    assert club.least_by_ear(club.plain_gain(1e6)) > club.least_through_noise(1e6, "winter day")
    assert 1 < club.reaction_wanted(1e6, "winter day") < 5
    # The tone's carrier stands 10 dB and more above the noise wherever the ratio is 6 dB or more and the depth 0.3 or less.
    assert 6 - 20 * math.log10(0.3) > 10
