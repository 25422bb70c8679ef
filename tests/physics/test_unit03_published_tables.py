"""The tables that this unit is tested against, worked again with mpmath before they are trusted."""

import tomllib
from pathlib import Path

import mpmath
import numpy as np
import pytest
from mpmath import mp, mpf

COILS = Path(__file__).parents[1] / "published" / "coils"
LIGHT = 299792458  # metre per second, exact (SI Brochure, 9th edition, 2019)
ROUNDED_LIGHT = 300000000  # metre per second, as the table of wavelengths was made (from memory)


@pytest.fixture(autouse=True)
def forty_digits():
    with mp.workdps(40):
        yield


@pytest.fixture
def rows(published):
    def rows_of(name):
        columns = published(f"coils/{name}")
        return [dict(zip(columns, row, strict=True)) for row in zip(*columns.values(), strict=True)]

    return rows_of


def entries(name, kind):
    return tomllib.loads((COILS / f"{name}.toml").read_text())[kind]


def resonance(inductance, capacitance):
    return 1 / (2 * mp.pi * mp.sqrt(mpf(inductance) * mpf(capacitance)))


def test_resonance_lc(rows):
    for row in rows("resonance_lc"):
        inductance, capacitance = mpf(float(row["L_uH"])) / 10**6, mpf(float(row["C_pF"])) / 10**12
        frequency = resonance(inductance, capacitance)
        assert row["f_kHz"] == pytest.approx(float(frequency / 1000), rel=1e-11)
        assert row["wavelength_m"] == pytest.approx(float(LIGHT / frequency), rel=1e-11)
        assert row["reactance_ohm"] == pytest.approx(float(mp.sqrt(inductance / capacitance)), rel=1e-11)


def test_lc_product_wavelength(rows):
    for row in rows("lc_product_wavelength"):
        wavelength = mpf(int(row["wavelength_m"]))
        exact, rounded = ((wavelength / (2 * mp.pi * speed)) ** 2 * 10**12 for speed in (LIGHT, ROUNDED_LIGHT))
        assert row["LC_recomputed_c_exact"] == pytest.approx(float(exact), rel=1e-9)
        assert row["LC_recomputed_c3e8"] == pytest.approx(float(rounded), rel=1e-9)
        assert row["LC_uH_uF_table"] == pytest.approx(float(rounded), rel=5e-4)  # printed to four figures


def test_universal_resonance_curve(rows):
    for row in rows("universal_resonance_curve"):
        a = mpf(str(row["a"]))
        response = 1 / mpmath.mpc(1, 2 * a)
        assert row["response_ratio"] == pytest.approx(float(abs(response)), rel=1e-10)
        assert row["phase_deg"] == pytest.approx(float(-mp.degrees(mp.arg(response))), abs=1e-9)
        assert row["response_dB"] == pytest.approx(float(20 * mp.log10(abs(response))), abs=1e-8)
        for side, column in ((1, "exact_Q100_above"), (-1, "exact_Q100_below")):
            ratio = 1 + side * a / 100
            exact = abs(1 / mpmath.mpc(1, 100 * (ratio - 1 / ratio)))
            assert row[column] == pytest.approx(float(exact), rel=1e-9)


def test_single_tuned_circuits():
    for row in entries("tuned_circuits", "single_tuned"):
        inductance, q, frequency = mpf(row["L_uH"]) / 10**6, mpf(row["Q"]), mpf(row["f0_kHz"]) * 1000
        reactance = 2 * mp.pi * frequency * inductance
        half = 1 / (2 * q)
        ratio = mpf(1009) / 1000
        assert row["series_R_ohm"] == pytest.approx(float(reactance / q), rel=1e-11)
        assert row["dynamic_resistance_ohm"] == pytest.approx(float(reactance * q), rel=1e-11)
        assert row["f_upper_Hz"] == pytest.approx(float(frequency * (mp.sqrt(1 + half**2) + half)), rel=1e-11)
        assert row["f_lower_Hz"] == pytest.approx(float(frequency * (mp.sqrt(1 + half**2) - half)), rel=1e-11)
        assert row["response_at_9kHz_off"] == pytest.approx(float(abs(1 / mpmath.mpc(1, q * (ratio - 1 / ratio)))), rel=1e-11)


def test_textbook_circuits():
    by_bandwidth, *by_parts, coils = entries("textbook_examples_tuned", "example")
    for row in by_parts:
        inductance, capacitance = mpf(row["L_uH"]) / 10**6, mpf(row["C_pF"]) / 10**12
        frequency = resonance(inductance, capacitance)
        assert row["f0_Hz"] == pytest.approx(float(frequency), rel=1e-11)
        assert row["Q"] == pytest.approx(float(2 * mp.pi * frequency * inductance / row["R_ohm"]), rel=1e-11)
    q = mpf(by_bandwidth["f0_kHz"]) * 1000 / by_bandwidth["bandwidth_Hz"]
    reactance = 1 / (2 * mp.pi * by_bandwidth["f0_kHz"] * 1000 * mpf("10.61e-9"))
    assert by_bandwidth["Q"] == pytest.approx(float(q))
    assert by_bandwidth["dynamic_resistance_ohm"] == pytest.approx(float(q * reactance), rel=1e-11)
    # Aiding, 240 V = (La + Lb + 2M) 15 A/s + 15 ohm × 8 A.
    total = (mpf(240) - coils["R_total_ohm"] * coils["current_A"]) / coils["di_dt_A_per_s"]
    mutual = (total - coils["La_H"] - coils["Lb_H"]) / 2
    assert coils["k"] == pytest.approx(float(mutual / mp.sqrt(coils["La_H"] * coils["Lb_H"])), rel=1e-9)


def coupled_current(frequency, coupling):
    """Current in the second of two circuits, 200 µH, 1 MHz, Q 100, per volt in the first: mesh equations solved."""
    inductance, angular = mpf(200) / 10**6, 2 * mp.pi * frequency
    resistance = 2 * mp.pi * 10**6 * inductance / 100
    elastance = (2 * mp.pi * 10**6) ** 2 * inductance
    alone = mpmath.mpc(resistance, angular * inductance - elastance / angular)
    crossed = mpmath.mpc(0, angular * coupling * inductance)
    return mp.lu_solve(mp.matrix([[alone, crossed], [crossed, alone]]), mp.matrix([1, 0]))[1], resistance


def test_coupled_two_circuit_response(rows):
    for row in rows("coupled_two_circuit_response"):
        critical = mpf(str(row["kQ"]))
        current, resistance = coupled_current(mpf(10**6) + 1000 * int(row["offset_kHz"]), critical / 100)
        assert row["I2_mA_per_V"] == pytest.approx(float(1000 * abs(current)), rel=1e-10)
        assert row["normalised_exact"] == pytest.approx(float(2 * resistance * abs(current)), rel=1e-10)
        off = 2 * 100 * mpf(int(row["offset_kHz"])) / 1000
        narrow = 2 * critical / mp.sqrt((1 + critical**2 - off**2) ** 2 + 4 * off**2)
        assert row["normalised_narrowband"] == pytest.approx(float(narrow), rel=1e-10)


def test_coupled_examples():
    for row in entries("tuned_circuits", "coupled_example"):
        current, _ = coupled_current(mpf(10**6), mpf(str(row["k"])))
        assert row["I2_at_f0_mA_per_V"] == pytest.approx(float(1000 * abs(current)), rel=1e-10)
        for frequency in row.get("peak_frequencies_Hz", []):
            around = [abs(coupled_current(mpf(frequency) + step, mpf(str(row["k"])))[0]) for step in (-5, 0, 5)]
            assert max(around) == around[1]


def test_variable_capacitor_laws(rows):
    lowest, highest = mpf(50), mpf(500)
    for row in rows("variable_capacitor_laws"):
        turn = mpf(int(row["angle_deg"])) / 180
        laws = {
            "slc": lowest + (highest - lowest) * turn,
            "slw": (mp.sqrt(lowest) + (mp.sqrt(highest) - mp.sqrt(lowest)) * turn) ** 2,
            "slf": 1 / (1 / mp.sqrt(lowest) - (1 / mp.sqrt(lowest) - 1 / mp.sqrt(highest)) * turn) ** 2,
            "log": lowest * (highest / lowest) ** turn,
        }
        for law, capacitance in laws.items():
            frequency = resonance(mpf(200) / 10**6, capacitance / 10**12) / 1000
            assert row[f"C_{law}_pF"] == pytest.approx(float(capacitance), rel=1e-8)
            assert row[f"f_{law}_kHz"] == pytest.approx(float(frequency), rel=1e-9)


def test_every_row_says_how_it_is_known(published):
    names = "resonance_lc", "universal_resonance_curve", "coupled_two_circuit_response", "variable_capacitor_laws"
    for name in names:
        assert np.all(published(f"coils/{name}")["how"] == "recomputed")
    assert np.all(published("coils/lc_product_wavelength")["how"] == "memory")
