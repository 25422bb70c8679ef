"""Inductance of the single-layer coil against printed tables, scipy, and the field energy of its own turns."""

import tomllib
from pathlib import Path

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy import integrate, special

from solutions.unit02_coil_and_condenser.solenoid_inductance import (
    MU_0,
    elliptic_integrals,
    nagaoka_coefficient,
    solenoid_inductance,
    wheeler_inductance,
)

COILS = Path(__file__).parents[1] / "published" / "coils"
# T. R. Lyle, Phil. Trans. R. Soc. A 213, 1914, p. 429: found in the test listing of an open numerical library.
LYLE = tomllib.loads((COILS / "nagaoka.toml").read_text())["published_value"]

shapes = st.floats(1e-3, 1e3)
turns = st.floats(1, 500)
sizes = st.floats(1e-3, 1)


@given(st.floats(0, 1 - 1e-9))
def test_elliptic_integrals_against_scipy(parameter):
    first_kind, second_kind = elliptic_integrals(parameter)
    assert first_kind == pytest.approx(special.ellipk(parameter), rel=1e-14)
    assert second_kind == pytest.approx(special.ellipe(parameter), rel=1e-13)


@given(st.floats(0.001, 0.999))
def test_legendre_relation(parameter):
    k, e = elliptic_integrals(parameter)
    k_other, e_other = elliptic_integrals(1 - parameter)
    assert e * k_other + e_other * k - k * k_other == pytest.approx(np.pi / 2, rel=1e-13)


def test_grover_table_36_printed_and_recomputed(published):
    """F. W. Grover, Inductance Calculations, 1946, Table 36, p. 144: found in a keyed copy that cites the page.

    The printed figures differ from the exact ones by up to 1.7e-6.
    """
    table = published("coils/nagaoka_grover_table36")
    some_length = table["length_over_diameter"] > 0
    assert some_length.sum() == 100
    computed = nagaoka_coefficient(1 / table["length_over_diameter"][some_length])
    assert computed == pytest.approx(table["K_published"][some_length], abs=2e-6)
    assert computed == pytest.approx(table["K_recomputed_15d"][some_length], abs=1e-12)


def test_circular_74_table_10_four_figures(published):
    """US National Bureau of Standards, Circular 74, 1924, Table 10: memory; all correct roundings of the exact."""
    table = published("coils/nagaoka_nbs_c74_table10")
    finite = table["diameter_over_length"] > 0
    assert finite.sum() == 49
    computed = nagaoka_coefficient(table["diameter_over_length"][finite])
    assert computed == pytest.approx(table["K_table"][finite], abs=5e-5)


@pytest.mark.parametrize("coil", LYLE, ids=lambda coil: f"length {coil['length_m']} m")
def test_thin_walled_coil_of_one_turn(coil):
    inductance = solenoid_inductance(coil["turns"], 2 * coil["radius_m"], coil["length_m"])
    if "L_H" in coil:
        assert inductance == pytest.approx(coil["L_H"], abs=6e-13)  # half a unit of the last figure, and a little
    else:
        assert inductance / MU_0 == pytest.approx(coil["L_over_mu0_m"], abs=2e-6)


@pytest.mark.parametrize("shape", [0.2, 1.0, 5.0])
def test_nagaoka_is_the_mutual_inductance_of_the_sheet_with_itself(shape):
    """The sheet is filaments side by side: L = 2/l² ∫ (l - z) M(z) dz, with Maxwell's M from scipy."""
    length = 1 / shape

    def filaments(z):
        m = 1 / (1 + z**2)
        return MU_0 / 2 * ((2 - m) * special.ellipkm1(m * z**2) - 2 * special.ellipe(m)) / np.sqrt(m)

    energy, _ = integrate.quad(lambda z: (length - z) * filaments(z), 0, length, epsabs=0, epsrel=1e-11, limit=200)
    assert solenoid_inductance(1, 1.0, length) == pytest.approx(2 * energy / length**2, rel=1e-10)


def test_sheet_against_its_own_round_turns():
    """The club's coil, turn by turn: each a ring of round wire, every pair by Maxwell's M; 0.8 % below the sheet.

    A ring's own inductance, μ₀ r (ln(8 r / a) - 7/4) with a the wire's radius, is from memory of Grover 1946.
    """
    turns, radius, pitch, wire_radius = 44, 0.03775, 0.5e-3, 0.2286e-3
    apart = np.arange(1, turns) * pitch
    m = 1 / (1 + (apart / (2 * radius)) ** 2)
    pairs = MU_0 * radius * ((2 - m) * special.ellipk(m) - 2 * special.ellipe(m)) / np.sqrt(m)
    ring = MU_0 * radius * (np.log(8 * radius / wire_radius) - 1.75)
    wound = turns * ring + 2 * np.sum((turns - np.arange(1, turns)) * pairs)
    sheet = solenoid_inductance(turns, 2 * radius, turns * pitch)
    assert 0.990 < wound / sheet < 0.993


@given(shapes)
def test_nagaoka_lies_between_nothing_and_one_and_falls(shape):
    assert 0 < nagaoka_coefficient(1.01 * shape) < nagaoka_coefficient(shape) < 1


@given(st.floats(1e-3, 0.02))
def test_long_coil_limit(shape):
    series = 1 - 4 * shape / (3 * np.pi) + shape**2 / 8 - shape**4 / 64
    assert nagaoka_coefficient(shape) == pytest.approx(series, rel=2e-10)


@given(st.floats(100, 1e3))
def test_short_coil_limit(shape):
    ring = 2 / (np.pi * shape) * (np.log(4 * shape) - 0.5)
    assert nagaoka_coefficient(shape) == pytest.approx(ring, rel=1 / shape**2)


@given(turns, sizes, shapes, st.floats(0.1, 10))
def test_inductance_goes_with_turns_squared_and_with_size(count, diameter, shape, factor):
    length = diameter / shape
    once = solenoid_inductance(count, diameter, length)
    assert solenoid_inductance(factor * count, diameter, length) == pytest.approx(factor**2 * once, rel=1e-12)
    assert solenoid_inductance(count, factor * diameter, factor * length) == pytest.approx(factor * once, rel=1e-8)


@given(turns, sizes, st.floats(0.01, 100))
def test_stretching_a_coil_lowers_its_inductance(count, diameter, shape):
    assert solenoid_inductance(count, diameter, 1.01 * diameter / shape) < solenoid_inductance(
        count, diameter, diameter / shape
    )


@pytest.fixture
def wheeler_1928(published):
    """H. A. Wheeler, Proc. IRE 16, October 1928: formula found; the columns recomputed with mpmath."""
    return published("coils/wheeler_1928")


def test_wheeler_against_the_tabulated_formula(wheeler_1928):
    microhenries = 1e6 * wheeler_inductance(1, 2 * 0.0254, wheeler_1928["b_over_a"] * 0.0254)
    assert microhenries == pytest.approx(wheeler_1928["L_wheeler_uH"], rel=1e-11)


def test_wheeler_keeps_its_promise_and_no_more(wheeler_1928):
    """Within one per cent where length is over 0.4 diameter (range found, "one per cent" from memory)."""
    exact = 1e6 * solenoid_inductance(1, 2 * 0.0254, wheeler_1928["b_over_a"] * 0.0254)
    assert exact == pytest.approx(wheeler_1928["L_exact_uH"], rel=1e-11)
    error = 100 * (wheeler_1928["L_wheeler_uH"] / exact - 1)
    assert error == pytest.approx(wheeler_1928["error_percent"], abs=1e-4)
    promised = wheeler_1928["length_over_diameter"] >= 0.4
    assert np.all(np.abs(error[promised]) < 1)
    assert np.all(np.abs(error[~promised]) > 1)
