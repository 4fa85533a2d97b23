"""Pulses that differ: each variant is what the whole network would give, and plates near their lift skip."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import replace
from unittest.mock import patch

import numpy as np
import pytest

from tests.engines import ALL, FIELD, HARBOUR, NORTH, RIDGE, fault_of, solved
from trainer.circuit import compiled_step, family
from trainer.circuit.drive import slots_of
from trainer.circuit.elements import Circuit, Location, Side
from trainer.circuit.family import VARIANTS
from trainer.circuit.fault import Conditions, Fault, FaultKind
from trainer.circuit.faults import faulty_circuit
from trainer.circuit.harness import circuit_of
from trainer.circuit.profile import Profile
from trainer.circuit.solve import SolvedTest, solve_test, with_shared_slots

ENGINES = pytest.mark.parametrize("profile", ALL, ids=lambda profile: profile.name)
PARTS = ("RIPPLE", "FRICTION", "DRAG", "BOUNCE")


@contextmanager
def only(part: str = "") -> Iterator[None]:
    """Let one part alone vary, or nothing."""
    kept = {name: 0.0 for name in PARTS if name != part}
    with patch.multiple(family, **kept):
        yield


def resisting(profile: Profile, ohm: float) -> SolvedTest:
    """Return slot 3 alone, with so many ohms in its return."""
    fault = Fault(FaultKind.ADDED_RESISTANCE, Location.PASS_THROUGH, (3,), Side.RETURN, ohm)
    slot = next(slot for slot in slots_of(profile) if slot.number == 3)
    return solve_test(faulty_circuit(profile, [fault], Conditions()), [slot])


def lifted(profile: Profile, ohm: float) -> int:
    """Return how many pulses of the family lift."""
    families = resisting(profile, ohm).families
    return int((families.lift[0] > 0.9).sum()) if len(families.slot) else 0


@ENGINES
def test_with_nothing_changed_it_is_the_solved_pulse(profile: Profile) -> None:
    with only():
        test = solve_test(circuit_of(profile))
    for place, (slot, column) in enumerate(zip(test.families.slot, test.families.column, strict=True)):
        pulse, row = test.pulses_of(int(slot))[-1]
        steps = min(len(pulse.force_n), len(test.families.force_n))
        force, mine = pulse.force_n[:steps, row, column], test.families.force_n[:steps, place, 0]
        assert np.abs(mine - force).max() < 0.005 * force.max()
        # a stop is stiff: a microsecond's difference in landing shows in the acceleration, in nothing else
        blow, own = pulse.acceleration_m_s2[:steps, row, column], test.families.acceleration_m_s2[:steps, place, 0]
        assert np.sqrt(((own - blow) ** 2).sum() / (blow**2).sum()) < 0.1


def changed(circuit: Circuit, number: int, part: str, share: float) -> Circuit:
    """Return the circuit with its supply, or what holds, slows or damps one plate, off by a share."""
    if part == "RIPPLE":
        return replace(circuit, rail=replace(circuit.rail, supply_v=circuit.rail.supply_v * (1.0 + share)))
    name = {"FRICTION": "preload_n", "DRAG": "viscous_n_s_per_m", "BOUNCE": "stop_damping_n_s_per_m"}[part]
    old = circuit.solenoids[number]
    return replace(
        circuit, solenoids={**circuit.solenoids, number: replace(old, **{name: getattr(old, name) * (1.0 + share)})}
    )


@ENGINES
@pytest.mark.parametrize("part", PARTS)
def test_a_variant_is_what_the_whole_network_gives_with_the_same_change(profile: Profile, part: str) -> None:
    number = profile.cylinders[2]
    circuit = circuit_of(profile)
    slot = next(slot for slot in slots_of(profile) if slot.number == number)
    with only(part):
        test = solve_test(circuit, [slot])
        column = profile.cylinders.index(number)
        chances = family._chances(profile.name, number)[PARTS.index(part)]
        variant = int(np.argmax(chances))
        whole = solve_test(changed(circuit, number, part, chances[variant] * getattr(family, part)), [slot])
    steps = min(len(test.pulses[-1].force_n), len(whole.pulses[-1].force_n), len(test.families.force_n))
    for name in ("force_n", "acceleration_m_s2"):
        right, plain = (getattr(one.pulses[-1], name)[:steps, 0, column] for one in (whole, test))
        ours = getattr(test.families, name)[:steps, 0, variant]
        error, change = (float(np.sqrt(((one - right) ** 2).mean())) for one in (ours, plain))
        # a microsecond's difference in landing shows in the acceleration, in nothing else
        floor = 0.002 if name == "force_n" else 0.1
        allowed = 0.3 * change + floor * float(np.sqrt((right**2).mean()))
        assert error < allowed, (name, error, change)


@pytest.mark.parametrize(
    ("profile", "limit_ohm"),
    [(NORTH, 13.5), (HARBOUR, 16.25), (FIELD, 14.5), (RIDGE, 20.25)],
    ids=lambda one: getattr(one, "name", None),
)
def test_a_plate_near_its_lift_skips_within_an_ohm_and_nowhere_else(profile: Profile, limit_ohm: float) -> None:
    assert 0 < lifted(profile, limit_ohm) < VARIANTS
    assert lifted(profile, limit_ohm - 1.0) == VARIANTS
    assert lifted(profile, limit_ohm + 1.0) == 0


@ENGINES
def test_a_plate_lifts_later_and_softer_the_nearer_it_is_to_its_limit(profile: Profile) -> None:
    landings = []
    for ohm in (0.5, 8.0, 12.0):
        families = resisting(profile, ohm).families
        blow = np.abs(families.acceleration_m_s2[:288, 0]).argmax(axis=0)
        landings.append(blow.mean())
    assert landings[0] < landings[1] < landings[2]


@ENGINES
def test_the_hum_has_no_family_and_every_commanded_plate_of_a_sound_engine_has_one(profile: Profile) -> None:
    families = solved(profile).families
    for row, slot in enumerate(solved(profile).slots):
        own = {profile.cylinders[int(families.column[place])] for place in families.of_slot(row)}
        assert own == slot.commanded


@ENGINES
def test_a_family_is_the_same_whatever_is_solved_beside_it(profile: Profile) -> None:
    whole = solved(profile).families
    slot = slots_of(profile)[2]
    alone = solve_test(circuit_of(profile), [slot]).families
    (place,) = whole.of_slot(2)
    steps = min(len(alone.force_n), len(whole.force_n))
    for name in ("force_n", "acceleration_m_s2"):
        mine, there = getattr(alone, name)[:steps, 0], getattr(whole, name)[:steps, place]
        assert np.abs(mine - there).max() <= 1e-6 * np.abs(there).max()


@pytest.mark.needs("a C compiler")
def test_families_are_the_same_by_the_compiled_step_and_by_numpy() -> None:
    ours = solve_test(circuit_of(NORTH)).families
    with patch.object(compiled_step, "available", return_value=False):
        theirs = solve_test(circuit_of(NORTH)).families
    assert np.abs(ours.force_n - theirs.force_n).max() < 1e-6 * np.abs(theirs.force_n).max()


def test_slots_that_two_tests_share_share_their_pulses_too() -> None:
    good = solved(NORTH)
    other = replace(solved(NORTH), families=solved(NORTH).families.of({0}))  # the same pulses, fewer families
    assert with_shared_slots(good, other).families.slot.tolist() == good.families.slot.tolist()
    apart = solved(NORTH, fault_of(NORTH, FaultKind.LOW_SUPPLY, 1))
    mixed = with_shared_slots(good, apart).families
    assert np.array_equal(mixed.force_n, apart.families.force_n)
    joined = good.families.of({1}).joined(apart.families.of({2}))
    assert joined.slot.tolist() == [1, *([2] if 2 in apart.families.slot else [])]
    assert np.array_equal(joined.force_n[: len(good.families.force_n), 0], good.families.of({1}).force_n[:, 0])


def test_a_first_pulse_alone_has_no_family() -> None:
    assert len(solve_test(circuit_of(NORTH), most_pulses=1).families.slot) == 0
