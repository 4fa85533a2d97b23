"""The step of an inductive circuit: closed forms of any textbook, with the armature held and no saturation."""

import math

import numpy as np
import pytest

from tests.engines import ONE_SLOT, one_injector
from trainer.circuit.harness import circuit_of
from trainer.circuit.solenoid import magnets_of
from trainer.circuit.solve import solve_test

HELD = {"viscous_n_s_per_m": 1e12, "saturation_t": 1e6, "ring_ohm": 1e9}


def current(volts: float, ohm: float, henry: float, steps_per_sample: int = 4) -> tuple[np.ndarray, np.ndarray]:
    from dataclasses import replace

    profile = one_injector(coil_ohm_20c=ohm, **HELD)
    per_turn = 1.0 / (1.0 / float(inductance(profile.solenoid)) * profile.solenoid.turns**2)
    turns = math.sqrt(henry / per_turn)
    profile = replace(
        profile, solenoid=replace(profile.solenoid, turns=turns), module=replace(profile.module, supply_v=volts)
    )
    solved = solve_test(circuit_of(profile), [ONE_SLOT], steps_per_sample)
    pulse = solved.pulses[0]
    amps = pulse.coil_a[: solved.on_steps, 0, 0]
    return np.arange(len(amps)) * solved.step_s, amps


def inductance(solenoid: object) -> float:
    magnets = magnets_of([solenoid])
    rest = np.array([-solenoid.preload_n / (solenoid.stop_n_per_m + solenoid.spring_n_per_m)])
    return float(1.0 / magnets.magnetise(np.array([1e-9]), rest)[1][0])


# 110 V, 3.0 Ω, 2 mH and two more circuits: time to current −(L/R)·ln(1 − I·R/V)
@pytest.mark.parametrize(
    ("volts", "ohm", "henry", "amps", "microseconds"),
    [(110.0, 3.0, 2e-3, 7.0, 141.2), (12.0, 0.3, 150e-6, 7.0, 96.2), (50.0, 0.6, 200e-6, 7.0, 29.2)],
)
def test_time_to_seven_ampere(volts: float, ohm: float, henry: float, amps: float, microseconds: float) -> None:
    time_s, rise = current(volts, ohm, henry)
    reached = float(np.interp(amps, rise[: int(np.argmax(rise > amps)) + 1], time_s[: int(np.argmax(rise > amps)) + 1]))
    assert reached * 1e6 == pytest.approx(microseconds, abs=1.5)  # a step is 5.2 µs


@pytest.mark.parametrize(("constants", "share"), [(1, 0.6321), (2, 0.8647), (3, 0.9502), (5, 0.9933)])
def test_share_of_the_final_current_after_whole_time_constants(constants: int, share: float) -> None:
    time_s, rise = current(12.0, 3.0, 2e-3)
    assert float(np.interp(constants * 2e-3 / 3.0, time_s, rise)) / 4.0 == pytest.approx(share, abs=1e-3)


def test_halving_the_step_shrinks_the_error_four_times() -> None:
    errors = []
    for steps in (1, 2):
        time_s, rise = current(110.0, 3.0, 2e-3, steps)
        exact = 110.0 / 3.0 * (1.0 - np.exp(-time_s * 3.0 / 2e-3))
        errors.append(np.abs(rise - exact).max())
    # trapezoidal, second order; the four implicit parts after the switch keep it a little under 4
    assert 2.5 < errors[0] / errors[1] < 4.5
