"""The solenoid's equations on a published finite-element example.

Modelica Standard Library (BSD-3-Clause), FluxTubes SolenoidActuator: 12 V, 10 Ω, 957 turns, 26.04 g, gap 5 mm to
0.25 mm. Only the inductance column is fitted; force and pull-in are then predicted. How far off, and why, stands in
docs/model.md: one core saturates as a whole here, while in the example the pole's edge does so first, and a real
stray field changes with the gap.
"""

from __future__ import annotations

from dataclasses import replace
from functools import cache

import numpy as np
import pytest
from scipy.optimize import least_squares

from tests.engines import ONE_SLOT, one_injector, table
from trainer.circuit.harness import circuit_of
from trainer.circuit.profile import Solenoid
from trainer.circuit.solenoid import magnets_of
from trainer.circuit.solve import solve_test

AMPERE, TURNS = 1.2, 957.0
STATIC = table("msl_solenoid_fea_quasistatic.csv")
GAP_M = np.array([float(row["gap_m"]) for row in STATIC])
FORCE_N = -np.array([float(row["force_N"]) for row in STATIC])
INDUCTANCE_H = np.array([float(row["static_inductance_H"]) for row in STATIC])


def solenoid(values: np.ndarray) -> Solenoid:
    area_m2, residual_m, leakage_h, iron_per_h, saturation_t = (float(value) for value in values)
    return Solenoid(
        coil_ohm_20c=10.0, turns=TURNS, pole_area_m2=area_m2, gap_count=1, residual_gap_m=0.25e-3 + residual_m,
        lift_m=4.75e-3, leakage_permeance_h=leakage_h, iron_reluctance_per_h=iron_per_h, saturation_t=saturation_t,
        saturation_power=8, ring_ohm=1e9, mass_kg=0.02604, spring_n_per_m=0.0, preload_n=0.0, viscous_n_s_per_m=1e-3,
        stop_n_per_m=2e6, stop_damping_n_s_per_m=20.0, stop_width_m=1e-7,
    )  # fmt: skip


def magnetised(values: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
    current, _slope, _motion, force = magnets_of([solenoid(values)]).magnetise(INDUCTANCE_H * AMPERE, 5e-3 - GAP_M)
    return current, force


@cache
def fitted() -> tuple[float, ...]:
    start = np.log([1.3e-4, 3e-4, 1e-8, 1e6, 1.2])
    found = least_squares(lambda logs: magnetised(np.exp(logs))[0] / AMPERE - 1.0, start)
    return tuple(np.exp(found.x))


def test_the_inductance_column_is_fitted_within_two_percent() -> None:
    current, _force = magnetised(np.array(fitted()))
    assert np.abs(current / AMPERE - 1.0).max() < 0.02


def test_the_force_is_predicted_where_the_core_is_not_saturated() -> None:
    _current, force = magnetised(np.array(fitted()))
    ratio = force / FORCE_N
    middle = (GAP_M > 1.2e-3) & (GAP_M < 4.1e-3)
    assert np.abs(ratio[middle] - 1.0).max() < 0.06
    assert np.abs(ratio[GAP_M > 0.9e-3] - 1.0).max() < 0.18
    # known and documented: near the stop the example saturates at its edge first, the one core here as a whole
    assert 0.6 < ratio[0] < 1.0


@cache
def pull_in() -> tuple[np.ndarray, np.ndarray, np.ndarray]:
    engine = one_injector()
    module = replace(engine.module, supply_v=12.0)
    schedule = replace(engine.schedule, pulse_s=0.025, pulses_per_s=20.0)
    profile = replace(engine, module=module, schedule=schedule, solenoid=solenoid(np.array(fitted())))
    solved = solve_test(circuit_of(profile), [ONE_SLOT], 1)
    on = slice(0, solved.on_steps)
    pulse = solved.pulses[0]
    time_s = np.arange(solved.on_steps) * solved.step_s
    return time_s, pulse.coil_a[on, 0, 0], 5e-3 - pulse.position_m[on, 0, 0]


def test_the_pull_in_trace_is_predicted() -> None:
    time_s, current_a, gap_m = pull_in()
    landed = int(np.argmax(gap_m < 0.26e-3))
    peak = int(np.argmax(current_a[:landed]))
    assert float(np.interp(1e-3, time_s, current_a)) == pytest.approx(0.268, rel=0.02)  # before anything moves
    assert current_a[peak] == pytest.approx(0.9375, rel=0.05)
    assert time_s[peak] == pytest.approx(7.6e-3, rel=0.12)
    assert time_s[landed] == pytest.approx(12.61e-3, rel=0.06)
    kink = current_a[landed - 5 : landed + 60].min()
    assert kink == pytest.approx(0.351, abs=0.1)
    assert current_a[-1] > kink + 0.3, "the second rise"


def test_a_stuck_plate_has_no_dip() -> None:
    engine = one_injector(viscous_n_s_per_m=1e12)
    solved = solve_test(circuit_of(engine), [ONE_SLOT])
    rise = solved.pulses[0].coil_a[: solved.on_steps, 0, 0]
    assert np.all(np.diff(rise) > -1e-5)  # the reservoir sinks by a hair
