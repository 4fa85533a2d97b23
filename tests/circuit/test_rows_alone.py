"""A slot is the same whatever is solved beside it."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
import pytest

from tests.engines import ALL, FIELD, HARBOUR, NORTH, fault_of, worst
from trainer.circuit.drive import Reductions, slots_of
from trainer.circuit.elements import Location, Side
from trainer.circuit.fault import Fault, FaultKind
from trainer.circuit.fault_space import single_faults
from trainer.circuit.faults import faulty_circuit, with_faults
from trainer.circuit.harness import circuit_of
from trainer.circuit.profile import Profile
from trainer.circuit.solenoid import magnets_of
from trainer.circuit.solve import Solved, solve_rows, solve_test
from trainer.circuit.stepping import Row
from trainer.reasoning.universe import equivalents
from trainer.reasoning.universe.slot_traits import SlotTraits, traits_of
from trainer.sound.places import places_of
from trainer.sound.render import force_of
from trainer.sound.traits import LEVEL, Ears, ears_of

ARRAYS = ("coil_a", "return_a", "linkage_wb", "position_m", "acceleration_m_s2", "force_n", "feed_a", "rail_v")
WITHIN_DB = 0.01


def mixed_rows(profile: Profile) -> list[Row]:
    """Return slots that trip, that need many pulses, that carry current between pulses and that are sound."""
    feed = profile.wiring.outputs[profile.output_of(1)]
    faults = [
        Fault(FaultKind.SHORT_TO_GROUND, Location.ENGINE_HARNESS, feed, Side.FEED, 0.2),
        *(fault_of(profile, kind, 1) for kind in (
            FaultKind.SHORT_TO_BATTERY, FaultKind.SLOW_RECHARGE, FaultKind.OPEN, FaultKind.STUCK_RETURN_DRIVER)),
    ]  # fmt: skip
    rows = []
    for fault in faults:
        circuit = faulty_circuit(profile, [fault], worst(fault))
        reductions = Reductions(circuit, {})
        rows += [Row(circuit, slot, reductions) for slot in slots_of(profile)[:3]]
    return rows


@pytest.mark.parametrize("profile", [NORTH, FIELD], ids=lambda profile: profile.name)
def test_each_row_is_solved_as_if_it_were_alone(profile: Profile) -> None:
    rows = mixed_rows(profile)
    stack = solve_rows(rows)
    assert any(stack.tripped)
    for place, row in enumerate(rows):
        alone = solve_rows([row])
        assert alone.tripped[0] == stack.tripped[place]
        assert alone.residual[0] == stack.residual[place]
        pulses, stacked = alone.pulses_of(0), stack.pulses_of(place)
        assert len(pulses) == len(stacked)
        for (one, _row), (many, there) in zip(pulses, stacked, strict=True):
            for name in ARRAYS:
                mine, theirs = getattr(one, name)[:, 0], getattr(many, name)[:, there]
                assert np.allclose(mine, theirs[: len(mine)], rtol=1e-9, atol=1e-12), name


def test_a_magnetic_force_that_stays_on_between_pulses_makes_no_edge() -> None:
    """Current that a battery drives through a coil without end shakes nothing, however long a pulse is followed."""
    fault = fault_of(NORTH, FaultKind.SHORT_TO_BATTERY, 3)
    slot = slots_of(NORTH)[1]
    solved = solve_test(faulty_circuit(NORTH, [fault]), [slot])
    pulse, row = solved.pulses_of(0)[-1]
    held_n = float(pulse.force_n[-1, row, 2])
    assert held_n > 1.0
    magnets = magnets_of([NORTH.solenoid] * len(NORTH.cylinders))
    force = force_of(pulse, row, magnets, NORTH, solved.step_s)[2]
    assert abs(force[-1]) < 0.01 * held_n
    assert abs(np.diff(force[-200:])).max() < 0.01 * held_n


class Recorded:
    """Solves rows and keeps each with the traits that its stack gave it."""

    def __init__(self) -> None:
        self.rows: list[tuple[Row, SlotTraits]] = []

    def traits(self, rows: Sequence[Row], solved: Solved, ears: Ears) -> list[SlotTraits]:
        found = traits_of(rows, solved, ears)
        self.rows += zip(rows, found, strict=True)
        return found


@pytest.mark.long
@pytest.mark.parametrize("profile", ALL, ids=lambda profile: profile.name)
def test_every_slot_of_a_universe_is_as_loud_alone_as_in_its_batch(
    profile: Profile, monkeypatch: pytest.MonkeyPatch
) -> None:
    recorded = Recorded()
    monkeypatch.setattr(equivalents, "traits_of", recorded.traits)
    base = circuit_of(profile)
    ears = ears_of(profile, tuple(places_of(profile))[:2])
    circuits = [with_faults(base, [fault], worst(fault)) for fault in single_faults(profile, "grid")]
    equivalents.Equivalents(base, ears).tests_of(base, circuits)
    assert len(recorded.rows) > 500
    apart = [
        np.abs(traits_of([row], solve_rows([row]), ears)[0].sound[:, LEVEL] - stacked.sound[:, LEVEL]).max()
        for row, stacked in recorded.rows
    ]
    assert max(apart) < WITHIN_DB


def test_a_family_that_rests_stays_as_it_is_whatever_is_stepped_beside_it() -> None:
    """Shorted turns that hardly lift a plate rest long before a slot that clicks does."""
    shorted = faulty_circuit(HARBOUR, [Fault(FaultKind.SHORTED_TURNS, Location.COIL, (4,), None, 0.5)])
    rows = [Row(circuit, slots_of(HARBOUR)[4], Reductions(circuit, {})) for circuit in (shorted, circuit_of(HARBOUR))]
    ears = ears_of(HARBOUR, ("front",))
    alone, beside = (traits_of(some, solve_rows(some), ears)[0].sound for some in (rows[:1], rows))
    assert np.allclose(alone, beside, rtol=1e-6, atol=0.0)
