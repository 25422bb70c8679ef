"""HT's fuse and resistor, and the limiter on the headphones: against SciPy's integration of the circuits, and IEC 60127-2."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import solve_ivp
from scipy.optimize import brentq

from solutions.unit00_bench import ht_faults, phone_limiter
from solutions.unit00_bench.dropper_resistor import PREFERRED, dropper_resistance, next_preferred

ohms = st.floats(1, 1e5)
volts = st.floats(1, 200)
FRESH_BATTERY = 96.0  # ten 9 V batteries of alkaline cells of 1.6 V: from memory
REST, PHONES, TONE, ANODE = 2.8e-3, 4e3, 20e3, 10.6e3  # the club's detector: steady current, ohms to it, to 1 kHz, of the valve


# The limiter ---------------------------------------------------------------------------------------------------------


@given(st.floats(1e-9, 0.1), st.floats(10, 1e9))
def test_the_pair_and_the_resistance_beside_it_share_the_current(current, beside):
    def left_over(voltage):
        return 2 * phone_limiter.SATURATION * np.sinh(voltage / phone_limiter.SLOPE) + voltage / beside - current

    voltage = brentq(left_over, 0, 2, xtol=1e-15)
    assert phone_limiter.across_the_pair(current, beside) == pytest.approx(voltage, rel=1e-9)
    nudge = 1e-6 * voltage
    slope = 2 * nudge / (left_over(voltage + nudge) - left_over(voltage - nudge))
    assert 1 / (1 / phone_limiter.pair_resistance(current, beside) + 1 / beside) == pytest.approx(slope, rel=1e-5)


def in_the_circuit(swing, pair=True, condenser=None):
    """Voltage across the headphones at rest, and the amplitude of 1 kHz: a valve, its phones (resistance and inductance), 1 nF
    across them, and the pair straight across or behind a condenser, integrated from rest."""
    still = phone_limiter.across_the_pair(REST, PHONES) if pair and not condenser else REST * PHONES
    turn, inductance = 2e3 * np.pi, np.sqrt(TONE**2 - PHONES**2) / (2e3 * np.pi)

    def change(time, state):
        voltage, coil, charged = state
        valve = REST + swing * np.sin(turn * time) - (voltage - still) / ANODE
        drop = (voltage - charged if condenser else voltage) / phone_limiter.SLOPE
        through = pair * 2 * phone_limiter.SATURATION * np.sinh(np.clip(drop, -20, 20))
        charging = through / condenser if condenser else 0.0
        return [(valve - coil - through) / 1e-9, (voltage - PHONES * coil) / inductance, charging]

    start = [still, still / PHONES, still if condenser else 0.0]
    times = np.linspace(35e-3, 40e-3, 2001)
    found = solve_ivp(change, (0, 40e-3), start, "LSODA", t_eval=times, rtol=1e-8, atol=[1e-9, 1e-12, 1e-9])
    voltage = found.y[0]
    tone = 2 * np.mean(voltage[:-1] * np.exp(-1j * turn * times[:-1]))
    return np.mean(voltage[:-1]), abs(tone), np.ptp(voltage) / 2


def test_straight_across_headphones_that_carry_the_anode_current_the_pair_conducts_for_good_and_the_tone_is_gone():
    mean, tone, _ = in_the_circuit(1e-5)
    _, without, _ = in_the_circuit(1e-5, pair=False)
    assert mean == pytest.approx(phone_limiter.across_the_pair(REST, PHONES), rel=1e-3)
    lost = 20 * np.log10(without / tone)
    assert 50 < lost < 56
    # The function takes the headphones' impedance for a resistance; they are mostly inductance, which parts the two by 2 dB.
    assert phone_limiter.tone_lost(REST, PHONES, TONE, ANODE) == pytest.approx(lost, abs=3)


def test_behind_a_condenser_the_pair_leaves_a_small_tone_and_stops_a_large_one():
    mean, tone, _ = in_the_circuit(1e-5, condenser=1e-6)
    _, without, _ = in_the_circuit(1e-5, pair=False)
    assert mean == pytest.approx(REST * PHONES, rel=0.01) and tone == pytest.approx(without, rel=5e-3)
    assert phone_limiter.tone_lost(0.0, PHONES, TONE, ANODE) < 0.05
    _, _, crest = in_the_circuit(REST, condenser=1e-6)
    _, _, bare = in_the_circuit(REST, pair=False)
    limited = 10 ** ((phone_limiter.loudest(REST, TONE, 110, 1e3, 1e-6) - 110) / 20) * np.sqrt(2 * TONE * 1e-3)
    assert 0.4 * limited < crest <= limited and bare > 10 * crest


def test_in_the_crystal_set_the_pair_is_not_heard():
    """A volt behind the crystal, more than unit 04 finds on its local station, on 20 kilohms of which 4 are the headphones'."""
    assert phone_limiter.tone_lost(1.0 / 20e3, PHONES, TONE, 30e3) < 1


@given(st.floats(1e-4, 1e-2), st.floats(0.5e-6, 5e-6))
def test_a_larger_condenser_limits_lower_and_a_larger_crest_is_louder(crest, capacitance):
    level = phone_limiter.loudest(crest, TONE, 110, 1e3, capacitance)
    assert phone_limiter.loudest(crest, TONE, 110, 1e3, 2 * capacitance) < level
    assert phone_limiter.loudest(2 * crest, TONE, 110, 1e3, capacitance) > level


def test_the_bare_level_is_a_milliwatt_s_where_there_is_one():
    """110 dB from a milliwatt is the headphones' own figure: a crest of 6.3 V on 20 kilohms is 1 mW."""
    assert phone_limiter.loudest_bare(6.324555 / TONE, TONE, 1e12, 110) == pytest.approx(110, abs=1e-3)


# Fuse and resistor ---------------------------------------------------------------------------------------------------


@given(st.floats(1e-4, 10), st.sampled_from([32e-3, 50e-3, 100e-3]))
def test_a_fuse_never_opens_at_its_rating_and_sooner_the_more_it_is_given(current, rating):
    least, most = ht_faults.fuse_time(current, rating)
    assert least <= most
    assert least == np.inf if current <= rating else most <= ht_faults.fuse_time(0.99 * current, rating)[1]


def test_the_fuse_by_the_standard():
    """IEC 60127-2, sheet 2, quick-acting, 32 to 100 mA (from memory): 1.5 times at least 1 h; 2.1 at most 30 min; 2.75 at most
    0.5 s; 4 at most 0.1 s; 10 at most 20 ms."""
    for times, least, most in ((1.5, 3600, np.inf), (2.1, 0, 1800), (2.75, 0.01, 0.5), (4, 3e-3, 0.1), (10, 0, 0.02)):
        found = ht_faults.fuse_time(times * 50e-3, 50e-3)
        assert found[0] >= least and found[1] == most
    assert [ht_faults.fuse_verdict(amperes, 50e-3) for amperes in (0.05, 0.07, 0.12, 0.257, 5.6)] == [
        "stays whole",
        "stays whole for an hour",
        "may take half an hour",
        "opens within 0.1 s",
        "opens within 0.02 s",
    ]
    assert ht_faults.fuse_verdict(0.08, 50e-3) == "may never open"


@given(volts, ohms, ohms, ohms)
def test_the_voltages_round_a_fault_add_up_to_ht(ht, battery, guard, load):
    current = ht_faults.fault_current(ht, battery, guard, load)
    assert sum(current * part for part in (battery, guard, load)) == pytest.approx(ht, rel=1e-12)


@given(volts, ohms, volts, st.floats(0.02, 0.5), volts, ohms)
def test_the_filament_in_a_fault_against_a_nodal_solution(ht, guard, volt, ampere, lt, dropper):
    hot = volt / ampere
    node = np.linalg.solve([[1 / guard + 1 / dropper + 1 / hot]], [ht / guard + lt / dropper])[0]
    assert ht_faults.filament_in_fault(ht, guard, volt, ampere, lt, dropper) == pytest.approx(node / hot, rel=1e-9)
    alone = ht_faults.filament_in_fault(ht, guard, volt, ampere)
    assert alone == pytest.approx(ht / (guard + hot), rel=1e-9) and alone <= ht_faults.fault_current(ht, 0, guard)


@given(st.floats(10, 200), st.floats(1, 6.3), st.floats(0.02, 0.5), st.sampled_from(list(PREFERRED)))
def test_the_dropper_s_own_sum_gives_the_resistor_that_saves_a_filament(ht, volt, ampere, series):
    guard = next_preferred(dropper_resistance(ht, volt, ampere), series)
    assert ht_faults.filament_in_fault(ht, guard, volt, ampere) <= ampere * (1 + 1e-9)
    assert ht_faults.filament_in_fault(ht, 0.9 * dropper_resistance(ht, volt, ampere), volt, ampere) > ampere


def test_a_fuse_of_100_mA_and_1_kilohm_save_nothing():
    """What these pages once said. 96 V on 1 kilohm and a 60 mA filament: half as much again, and the fuse holds."""
    current = ht_faults.filament_in_fault(FRESH_BATTERY, 1e3, 2.0, 60e-3)
    assert current > 1.5 * 60e-3 and ht_faults.fuse_verdict(current, 0.1) == "stays whole"
    assert ht_faults.filament_in_fault(FRESH_BATTERY, 1.8e3, 2.0, 60e-3) < 60e-3
    assert ht_faults.filament_in_fault(FRESH_BATTERY, 1.8e3, 2.0, 60e-3, 4.5, 47.0) > 1.1 * 60e-3
    for lt, dropper in ((3.0, 18.0), (4.5, 47.0), (6.0, 68.0)):
        assert ht_faults.filament_in_fault(FRESH_BATTERY, 1e4, 2.0, 60e-3, lt, dropper) < 1.1 * 60e-3


@given(st.floats(1e-8, 1e-4), st.floats(1e3, 1e6), st.floats(2, 200))
def test_discharge_against_integration(capacitance, resistance, full):
    time = ht_faults.discharge_time(capacitance, resistance, full, 1.0)
    scale = resistance * capacitance
    left = solve_ivp(lambda _, voltage: -voltage, (0, time / scale), [full], rtol=1e-9, atol=1e-9).y[0, -1]
    assert left == pytest.approx(1.0, rel=1e-6)


@given(st.floats(1e-7, 1e-4), st.floats(1, 1e4), volts)
def test_the_pulse_is_the_integral_of_the_current_s_square(capacitance, resistance, voltage):
    time = np.linspace(0, 30, 30001)
    squared = (voltage / resistance * np.exp(-time)) ** 2
    assert ht_faults.pulse(capacitance, resistance, voltage) == pytest.approx(
        np.trapezoid(squared, time) * resistance * capacitance, rel=1e-5
    )


@pytest.mark.parametrize(
    "refused",
    [
        lambda: ht_faults.fault_current(90, 0, 0, 0),
        lambda: ht_faults.fault_current(90, -1),
        lambda: ht_faults.fuse_time(0.1, 0),
        lambda: ht_faults.filament_in_fault(90, 0, 2, 0.06),
        lambda: ht_faults.filament_in_fault(90, 1e3, 2, 0.06, 4.5, 0),
        lambda: ht_faults.discharge_time(1e-6, 1e5, 90, 0),
        lambda: ht_faults.discharge_time(1e-6, 1e5, 90, 91),
        lambda: ht_faults.pulse(1e-6, 0, 90),
        lambda: phone_limiter.across_the_pair(-1e-3, 4e3),
        lambda: phone_limiter.tone_lost(1e-3, 4e3, 0, 1e4),
        lambda: phone_limiter.loudest(1e-3, 2e4, 110, 1e3, 0),
        lambda: phone_limiter.loudest_bare(0, 2e4, 1e4, 110),
    ],
)
def test_what_cannot_be_is_refused_in_a_sentence(refused):
    with pytest.raises(ValueError, match="must be|no bound"):
        refused()
