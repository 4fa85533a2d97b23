"""Energy: what the supply gives is what is lost and stored, within 1 %."""

from __future__ import annotations

import numpy as np
import pytest

from tests.engines import NORTH, fault_of
from trainer.circuit.drive import pulse_law, slots_of
from trainer.circuit.faults import Conditions, FaultKind, faulty_circuit
from trainer.circuit.solenoid import MU_0
from trainer.circuit.solve import SolvedTest, solve_test
from trainer.instruments.under_load import node_voltages

STRIDE = 8


def given_and_lost_w(test: SolvedTest, step: int) -> tuple[float, float]:
    """Return what the rail gives at a step of the first pulse, and what wiring, copper, rings and outputs take."""
    circuit, volts = node_voltages(test, step, 0)
    volts = {**volts, "ground": 0.0}
    pulse, row = test.pulses_of(0)[0]
    rail_v = float(pulse.rail_v[step, row])
    lost = sum(
        (volts[e.a] - volts[e.b]) ** 2 / e.at(loaded=True)
        for e in circuit.elements.values()
        if e.a in volts and e.b in volts
    )
    lost += sum((rail_v - volts[f"module.feed.{name}"]) ** 2 / feed.on_ohm for name, feed in circuit.feeds.items())
    drop, _slope = pulse_law([(circuit, slot) for slot in test.slots]).drop(pulse.return_a[step])
    return rail_v * float(pulse.feed_a[step, row].sum()), float(lost + (drop * pulse.return_a[step]).sum())


def field_energy_j(test: SolvedTest, step: int) -> float:
    """Return the energy in all magnets: ½ψ²(ℛ + 1/P) and the saturating part ℛ·ψ^(p+2)/(ψs^p·(p + 2))."""
    pulse, row = test.pulses_of(0)[0]
    total = 0.0
    for column, number in enumerate(test.circuit.profile.cylinders):
        s = test.circuit.solenoids[number]
        psi = float(pulse.linkage_wb[step, row, column]) / s.turns
        gap_m = s.residual_gap_m + s.lift_m - float(pulse.position_m[step, row, column])
        permeance = MU_0 * s.pole_area_m2 / s.gap_count / gap_m + s.leakage_permeance_h
        ratio = psi / (s.saturation_t * s.pole_area_m2)
        total += 0.5 * psi**2 * (s.iron_reluctance_per_h + 1.0 / permeance)
        total += s.iron_reluctance_per_h * psi**2 * ratio**s.saturation_power / (s.saturation_power + 2)
    return total


@pytest.mark.parametrize(
    "kind",
    [None, FaultKind.SHORT_TO_GROUND, FaultKind.SHORTED_TURNS, FaultKind.SLUGGISH_ARMATURE, FaultKind.RETURN_TO_RETURN],
)
def test_supplied_is_copper_wiring_background_limiter_motion_and_stored(kind: FaultKind | None) -> None:
    faults = [fault_of(NORTH, kind, 3)] if kind else []
    circuit = faulty_circuit(NORTH, faults, Conditions())
    test = solve_test(circuit, [slots_of(NORTH)[3]], 8)
    pulse, row = test.pulses_of(0)[0]
    end = (test.on_steps - 1) // STRIDE * STRIDE
    watts = np.array([given_and_lost_w(test, step) for step in range(0, end + 1, STRIDE)])
    supplied_j, lost_j = np.trapezoid(watts, dx=test.step_s * STRIDE, axis=0)
    moved_m = np.diff(pulse.position_m[: end + 1, row], axis=0)
    force_n = 0.5 * (pulse.force_n[:end, row] + pulse.force_n[1 : end + 1, row])
    work_j = float((force_n * moved_m).sum())  # what spring, mass, viscous and contact loss get
    choke_j = 0.5 * NORTH.module.return_choke_h * float((pulse.return_a[end, row] ** 2).sum())
    balance = lost_j + field_energy_j(test, end) + work_j + choke_j
    assert balance == pytest.approx(supplied_j, rel=0.01)


def test_spring_mass_and_losses_take_up_the_magnets_work() -> None:
    test = solve_test(faulty_circuit(NORTH, [], Conditions()), [slots_of(NORTH)[3]], 8)
    pulse, row = test.pulses_of(0)[0]
    s, column = NORTH.solenoid, NORTH.cylinders.index(3)
    end = int(0.4e-3 / test.step_s)  # in flight: no stop touched yet, only mass, spring and a little viscous loss
    way, force = pulse.position_m[: end + 1, row, column], pulse.force_n[: end + 1, row, column]
    start = int(np.argmax(way > 5e-6))
    work_j = float(np.trapezoid(force[start:], way[start:]))
    speed = np.gradient(way, test.step_s)
    kinetic_j = 0.5 * s.mass_kg * (speed[end] ** 2 - speed[start] ** 2)
    spring_j = s.preload_n * (way[end] - way[start]) + 0.5 * s.spring_n_per_m * (way[end] ** 2 - way[start] ** 2)
    viscous_j = s.viscous_n_s_per_m * float(np.trapezoid(speed[start:], way[start:]))
    assert kinetic_j + spring_j + viscous_j == pytest.approx(work_j, rel=0.02)
