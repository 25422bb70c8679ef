"""What unit 09's pages and sounds stand on beside the exercises: the set behind its valve, the noise bursts start from."""

from dataclasses import replace

import numpy as np
import pytest
from scipy.integrate import solve_ivp

from course.circle import quenched
from solutions.unit06_reaction import club_set, stability
from solutions.unit06_reaction.network import SALTMARSH_SET, saltmarsh_set
from solutions.unit07_oscillation.build_up import BOLTZMANN
from solutions.unit09_feedback_receivers import isolated_set

STATION = 855e3


def equations(of, s, aerial_resistance, aerial_inductance, aerial_capacitance):
    """Aerial (or anode), tuned and tickler current, grid and anode voltage, in one matrix: Kirchhoff, written out."""
    fed, between = s * of.anode_capacitance, s * of.grid_anode_capacitance
    m12, m13, m23 = s * of.aerial_tuned, s * of.aerial_tickler, s * of.tuned_tickler
    return np.array(
        [
            [aerial_resistance + s * aerial_inductance + 1 / (s * aerial_capacitance), m12, m13, 0, 0],
            [m12, of.tuned_resistance + s * of.tuned_inductance, m23, 1, 0],
            [m13, m23, of.tickler_resistance + s * of.tickler_inductance + 1 / (s * of.throttle_capacitance), 0, -1],
            [0, -1, 0, s * of.tuning_capacitance + of.grid_conductance + between, -between],
            [0, 0, 1, of.transconductance - between, 1 / of.anode_resistance + fed + between],
        ]
    )


@pytest.mark.parametrize("kind", isolated_set.VALVES)
def test_gain_behind_the_valve_by_all_meshes_at_once(kind):
    """The isolating valve's anode current, tuned and tickler current, grid and anode of the detector, in one solve."""
    valve = isolated_set.VALVES[kind]
    throttle = 0.9 * isolated_set.threshold_throttle(STATION, kind)
    there = stability.retuned(replace(isolated_set.isolated_set(kind, STATION), throttle_capacitance=throttle), STATION)
    of = equations(there, 2j * np.pi * STATION, valve.anode_resistance, 60e-6, 0.1e-6)
    leak = isolated_set.GRID_RESISTANCE
    on_grid = leak / (leak + isolated_set.aerial_impedance(STATION))
    tuned = np.linalg.solve(of, [valve.amplification_factor * on_grid, 0, 0, 0, 0])[3]
    gain, _ = isolated_set.gain_and_bandwidth(STATION, throttle, kind)
    assert gain == pytest.approx(abs(tuned), rel=1e-6)


def test_an_aerial_that_sways_moves_the_set_as_its_pole_moves():
    """By the determinant of the set's equations, solved for its root by Newton's method."""
    throttle = 0.97 * club_set.threshold_throttle(STATION)
    of = stability.retuned(replace(saltmarsh_set(STATION), throttle_capacitance=throttle), STATION)

    def pole(aerial):
        def determinant(s):
            return np.linalg.det(equations(of, s, of.aerial_resistance, of.aerial_inductance, aerial))

        s = 2j * np.pi * STATION
        for _ in range(20):
            slope = (determinant(s * (1 + 1e-6)) - determinant(s * (1 - 1e-6))) / (2e-6 * s)
            s = s - determinant(s) / slope
        return s

    moved = pole(1.05 * of.aerial_capacitance) - pole(of.aerial_capacitance)
    shift, growth = isolated_set.swayed(STATION, throttle, 0.05)
    assert shift == pytest.approx(moved.imag / (2 * np.pi), abs=1.0)
    assert growth == pytest.approx(moved.real, abs=1.0)


@pytest.mark.parametrize("stray", [0.1e-12, 0.3e-12])
def test_with_a_screened_grid_only_the_strays_get_out(stray):
    """ω M times the tuned coil's current, against what a small capacitance from its top brings to the aerial's lead."""
    w = 2 * np.pi * STATION
    lead = 1 / (1 / isolated_set.aerial_impedance(STATION) + 1 / isolated_set.GRID_RESISTANCE)
    aerial = isolated_set.aerial_impedance(STATION)
    winding = SALTMARSH_SET.aerial_inductance - 15e-6  # in the aerial only where there is no stage
    direct = SALTMARSH_SET.aerial_tuned / SALTMARSH_SET.tuned_inductance / abs(aerial + 1j * w * winding)
    wanted = 20 * np.log10(direct / abs(w * stray * lead / aerial))
    assert isolated_set.kept_back(STATION, "type 32", stray) == pytest.approx(wanted, abs=0.4)


@pytest.mark.parametrize("feedback", [quenched.LINEAR, quenched.LOGARITHMIC])
def test_the_noise_that_a_burst_starts_from_by_its_variance(feedback):
    """d(variance)/dt = 2 × rate × variance + what the loss puts in, which at rest keeps kT/C; integrated by scipy."""
    heat = BOLTZMANN * quenched.TEMPERATURE / quenched.CAPACITANCE
    fed = 2 * quenched.DECAY * heat
    growth = quenched.growth(feedback)
    tight = {"rtol": 1e-9, "atol": 1e-6 * heat}
    quiet = solve_ivp(lambda t, p: -2 * quenched.DECAY * p + fed, (0, quenched.HALF), [0.0], **tight).y[0, -1]
    loud = solve_ivp(lambda t, p: 2 * growth * p + fed, (0, quenched.HALF), [quiet], **tight).y[0, -1]
    wanted = np.sqrt((loud + fed / (2 * growth)) * np.exp(-2 * growth * quenched.HALF))
    assert quenched.noise_start(feedback) == pytest.approx(wanted, rel=1e-4)


def test_the_two_modes_of_the_sounds_are_what_they_are_called():
    station = np.full(400, 30e-6)
    heard = {mode: quenched.heard(quenched.starts(station, mode), mode) for mode in (quenched.LINEAR, quenched.LOGARITHMIC)}
    assert np.max(heard[quenched.LINEAR]) < 0.1 * quenched.LIMIT
    nothing = quenched.starts(np.zeros(4000), quenched.LOGARITHMIC)
    tops = nothing * np.exp(quenched.growth(quenched.LOGARITHMIC) * quenched.HALF)
    assert np.quantile(tops, 0.02) > quenched.LIMIT / 2  # even noise alone brings nearly every burst to the limit
    assert np.std(heard[quenched.LOGARITHMIC]) < 0.1 * np.std(quenched.heard(nothing, quenched.LOGARITHMIC))
