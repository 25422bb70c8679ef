"""Night paths against an astronomy library, and dial logs against numpy's and scipy's own fits."""

import math
import tomllib

import ephem
import numpy as np
import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from scipy.spatial.transform import Rotation
from scipy.stats import t as student

from solutions.unit08_two_stations.dial_log import (
    SPEED_OF_LIGHT,
    fitted_line,
    frequency_at,
    likely_channels,
    line_at,
    reading_for,
    scatter_about,
)
from solutions.unit08_two_stations.night_path import (
    EARTH_RADIUS,
    dark_elevation,
    days_since_2000,
    hop,
    night_at,
    path_middle,
    path_night,
    sun_elevation,
    unit_arrow,
)
from tests.physics.conftest import TABLES

FACTS = tomllib.loads((TABLES / "signal/skywave_facts.toml").read_text())
EPOCH = ephem.Date("2000/1/1 12:00")

latitudes = st.floats(-89, 89)
longitudes = st.floats(-180, 180)
moments = st.floats(-18000, 18000)


def observer(days, latitude, longitude, horizon=0.0):
    place = ephem.Observer()
    place.lat, place.lon, place.pressure, place.elevation = str(latitude), str(longitude), 0, 0
    place.horizon, place.date = str(horizon), EPOCH + days
    return place


@given(st.dates(), st.floats(0, 24))
@settings(deadline=None)
def test_days_as_the_library_counts_them(date, hour):
    assume(date.year > 1582)
    got = days_since_2000(date.year, date.month, date.day, hour)
    counted = ephem.julian_date(f"{date.year}/{date.month}/{date.day}") - 2451545 + hour / 24
    assert got == pytest.approx(counted, abs=1e-6)


@given(moments, latitudes, longitudes)
@settings(deadline=None)
def test_sun_as_the_library_sees_it(days, latitude, longitude):
    # PyEphem 4.2.1, apparent place, no refraction; the short formulae are good to 0.01°, parallax is 0.0024°.
    seen = math.degrees(ephem.Sun(observer(days, latitude, longitude)).alt)
    assert sun_elevation(days, latitude, longitude) == pytest.approx(seen, abs=0.014)


def test_sun_as_in_the_table(published):
    # astropy 8.0.2 (elev_deg) and the Astronomical Almanac's own short formulae (low_deg): recomputed; invented places.
    rows = published("signal/sun_elevation")
    columns = (rows[name] for name in ("lat_deg", "lon_deg", "utc", "elev_deg", "low_deg"))
    for latitude, longitude, moment, seen, short in zip(*columns, strict=True):
        date, clock = moment.rstrip("Z").split("T")
        hour = sum(float(part) / 60**n for n, part in enumerate(clock.split(":")))
        got = sun_elevation(days_since_2000(*map(int, date.split("-")), hour), latitude, longitude)
        assert got == pytest.approx(seen, abs=0.012)
        assert got == pytest.approx(short, abs=1e-4)


@given(st.integers(-15000, 15000), st.floats(-65, 65), longitudes, st.floats(-11, 0))
@settings(deadline=None)
def test_nightfall_and_daybreak_as_the_library_finds_them(day, latitude, longitude, dark_at):
    noon = day - longitude / 360
    lowest = math.degrees(ephem.Sun(observer(noon + 0.5, latitude, longitude)).alt)
    assume(lowest < dark_at - 1 and sun_elevation(noon, latitude, longitude) > dark_at + 1)
    place = observer(noon, latitude, longitude, dark_at)
    place.date = setting = place.next_setting(ephem.Sun(), use_center=True)
    rising = place.next_rising(ephem.Sun(), use_center=True)
    begins, ends = night_at(day, latitude, longitude, dark_at)
    assert begins == pytest.approx(setting - EPOCH, abs=3e-4)
    assert ends == pytest.approx(rising - EPOCH, abs=3e-4)


def test_nights_that_never_end_or_never_begin():
    midsummer, midwinter = days_since_2000(2024, 6, 20, 12), days_since_2000(2024, 12, 20, 12)
    begins, ends = night_at(midsummer, np.array([75.0, 60.0]), 0.0, -8.0)
    assert ends == pytest.approx(begins, abs=1e-6)
    assert begins == pytest.approx(midsummer + 0.5, abs=0.01)
    begins, ends = night_at(midwinter, 78.0, 0.0, -8.0)
    assert ends - begins == pytest.approx(1, abs=1e-3)


@given(latitudes, longitudes, latitudes, longitudes)
@settings(deadline=None)
def test_middle_and_length_by_turning_one_place_into_the_other(latitude, longitude, other_latitude, other_longitude):
    first, second = unit_arrow(latitude, longitude), unit_arrow(other_latitude, other_longitude)
    apart = float(
        ephem.separation(
            *[tuple(map(math.radians, place)) for place in ((longitude, latitude), (other_longitude, other_latitude))]
        )
    )
    assume(1e-3 < apart < 3.1)
    middle_latitude, middle_longitude, distance = path_middle(latitude, longitude, other_latitude, other_longitude)
    assert distance == pytest.approx(EARTH_RADIUS * apart, rel=1e-6)
    axis = np.cross(first, second) / np.linalg.norm(np.cross(first, second))
    half_way = Rotation.from_rotvec(axis * apart / 2).apply(first)
    assert unit_arrow(middle_latitude, middle_longitude) == pytest.approx(half_way, abs=1e-7)


def test_hops_as_in_the_table(published):
    # One mirror hop over a sphere of 6371 km, plane trigonometry by another route (law of cosines): recomputed.
    rows = published("signal/skywave_geometry")
    elevation, slant = hop(rows["d_km"] * 1e3, rows["h_km"] * 1e3)
    assert elevation == pytest.approx(rows["elev_deg"], abs=6e-4)
    assert slant == pytest.approx(rows["slant_km"] * 1e3, abs=0.6)


def test_hop_of_the_regulation_and_its_limit():
    # 47 CFR 73.190, eq. 2 (found): slant sqrt(d² + 200²) km, flat earth and a mirror at 100 km; good where the earth is flat.
    assert hop(100e3, 100e3)[1] == pytest.approx(1e3 * math.hypot(100, 200), rel=2e-3)
    limits = FACTS["one_hop_limit"]
    heights, farthest = np.array(limits["h_km"]) * 1e3, np.array(limits["d_max_km"]) * 1e3
    assert hop(farthest, heights)[0] == pytest.approx(np.zeros(len(heights)), abs=1e-3)


def test_dark_on_high_as_in_the_table():
    facts = FACTS["sunset_at_height"]
    assert dark_elevation(np.array(facts["h_km"]) * 1e3) == pytest.approx(np.array(facts["sun_elevation_deg"]), abs=6e-4)


@given(st.integers(2000, 2040), st.integers(1, 12), st.integers(1, 28), st.floats(40, 58), st.floats(-20, 20))
@settings(deadline=None, max_examples=30)
def test_night_of_a_path_by_counting_minutes(year, month, day, latitude, longitude):
    """The library asked every two minutes, from noon to noon, whether the middle of the path is dark."""
    ends = (latitude, longitude, latitude + 5, longitude + 8)
    opens, closes = path_night(year, month, day, *ends, 80e3)
    middle_latitude, middle_longitude, _ = path_middle(*ends)
    noon = days_since_2000(year, month, day, 12) - middle_longitude / 360
    place, sun = observer(noon, middle_latitude, middle_longitude), ephem.Sun()
    level, dark = math.radians(dark_elevation(80e3)), 0
    for minute in range(0, 1440, 2):
        place.date = EPOCH + noon + minute / 1440
        sun.compute(place)
        dark += sun.alt < level
    assert closes - opens == pytest.approx(dark / 30, abs=0.1 if dark > 90 else 0.6)


def test_there_is_no_thirtieth_of_february():
    with pytest.raises(ValueError):
        path_night(2024, 2, 30, 50.0, 0.0, 55.0, 5.0, 80e3)


readings = st.lists(st.floats(0, 180), min_size=4, max_size=12, unique=True).filter(lambda r: np.std(r) > 5).map(np.array)


@given(readings, st.integers(0, 2**32 - 1), st.floats(-50, 230))
@settings(deadline=None)
def test_line_as_numpy_fits_it(x, seed, place):
    y = 4e4 + 1500 * x + np.random.default_rng(seed).normal(0, 3000, x.size)
    (slope, intercept), covariance = np.polyfit(x, y, 1, cov=True)
    assert fitted_line(x, y) == pytest.approx((intercept, slope), rel=1e-6, abs=1e-6)
    row = np.array([place, 1.0])
    height, uncertainty = line_at(place, x, y)
    assert height == pytest.approx(row @ [slope, intercept], rel=1e-7, abs=1e-4)
    assert uncertainty == pytest.approx(math.sqrt(row @ covariance @ row), rel=1e-6)


def test_the_guides_thermometer():
    # JCGM 100:2008 (the GUM), annex H.3, Table H.6 and its results: from memory; every printed figure comes out of the data.
    above_20 = np.array([1.521, 2.012, 2.512, 3.003, 3.507, 3.999, 4.513, 5.002, 5.503, 6.010, 6.511])
    correction = np.array([-171, -169, -166, -159, -164, -165, -156, -157, -159, -161, -160]) / 1000
    assert fitted_line(above_20, correction) == pytest.approx((-0.1712, 0.00218), abs=5e-5)
    assert scatter_about(above_20, correction) == pytest.approx(0.0035, abs=5e-5)
    assert line_at(0.0, above_20, correction)[1] == pytest.approx(0.0029, abs=5e-5)
    assert line_at(10.0, above_20, correction) == pytest.approx((-0.1494, 0.0041), abs=5e-5)


STATIONS = np.array([693, 846, 855, 1107, 1206, 1449]) * 1e3


def test_uncertainty_covers_as_often_as_students_t_says():
    """Four thousand logs of one dial, read to about half a degree: how often is the station within the uncertainty given?"""
    chance = np.random.default_rng(8)
    squares = (SPEED_OF_LIGHT / STATIONS) ** 2
    true_readings = (squares - 3e4) / 1100
    sought = 990e3
    at = ((SPEED_OF_LIGHT / sought) ** 2 - 3e4) / 1100
    within = []
    for _ in range(4000):
        log = true_readings + chance.normal(0, 0.5, STATIONS.size)
        frequency, uncertainty = frequency_at(at + chance.normal(0, 0.5), log, STATIONS)
        reading, its_uncertainty = reading_for(sought, log, STATIONS)
        within.append((abs(frequency - sought) < uncertainty, abs(reading - at - chance.normal(0, 0.5)) < its_uncertainty))
    expected = 1 - 2 * student.sf(1, STATIONS.size - 2)
    assert np.mean(within, axis=0) == pytest.approx([expected, expected], abs=0.025)


@given(st.floats(10, 170), st.sampled_from([9000.0, 10000.0]), st.integers(0, 2**32 - 1))
@settings(deadline=None)
def test_likely_channels_are_all_within_and_no_others(reading, spacing, seed):
    log = ((SPEED_OF_LIGHT / STATIONS) ** 2 - 3e4) / 1100 + np.random.default_rng(seed).normal(0, 0.5, STATIONS.size)
    frequency, uncertainty = frequency_at(reading, log, STATIONS)
    every = spacing * np.arange(1, 1000)
    within = every[np.abs(every - frequency) <= 2 * uncertainty]
    assert likely_channels(reading, spacing, log, STATIONS) == pytest.approx(within)


@given(st.floats(600e3, 1.6e6), st.integers(0, 2**32 - 1))
@settings(deadline=None)
def test_there_and_back_on_the_dial(frequency, seed):
    log = ((SPEED_OF_LIGHT / STATIONS) ** 2 - 3e4) / 1100 + np.random.default_rng(seed).normal(0, 0.5, STATIONS.size)
    reading, in_degrees = reading_for(frequency, log, STATIONS)
    back, in_hertz = frequency_at(reading, log, STATIONS)
    assert back == pytest.approx(frequency, rel=1e-9)
    step = 1e-3
    slope = (frequency_at(reading + step, log, STATIONS)[0] - frequency_at(reading - step, log, STATIONS)[0]) / (2 * step)
    assert in_hertz == pytest.approx(abs(slope) * in_degrees, rel=1e-5)


@pytest.mark.parametrize(("call", "word"), [
    (lambda: fitted_line(np.array([5.0, 5.0]), np.array([1.0, 2.0])), "all readings are equal"),
    (lambda: scatter_about(np.array([5.0, 6.0]), np.array([1.0, 2.0])), "three or more"),
    (lambda: frequency_at(-300.0, np.array([10.0, 90.0, 150.0]), np.array([1449e3, 846e3, 693e3])), "too far outside"),
])  # fmt: skip
def test_logs_that_give_no_line_are_refused_in_words(call, word):
    with pytest.raises(ValueError, match=word):
        call()
