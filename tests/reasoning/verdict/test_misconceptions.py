"""Each misconception: a finding that it must match, and one near it that it must not."""

from __future__ import annotations

from dataclasses import replace
from functools import cache

import pytest

from tests.engines import NORTH
from tests.universes import POOLS, reasoner_of
from trainer.cases.single_case.shipped import case_named
from trainer.circuit.elements import Location, Side
from trainer.circuit.fault import FaultKind
from trainer.desk.caching_solver import CachingSolver
from trainer.practice.attempt.attempt import Attempt, begun, step
from trainer.practice.attempt.debrief import debrief_of
from trainer.practice.attempt.events import Found
from trainer.practice.attempt.judging import AtWork, at_work_in, wrong_finding
from trainer.practice.attempt.weighing import weighed
from trainer.practice.reports.debrief_lines import refutation_values
from trainer.reasoning.universe.finding import Claim
from trainer.reasoning.verdict.misconceptions import MISCONCEPTIONS, UNCLASSIFIED, Wrong, misconception_of
from trainer.words import text

SOLVER = CachingSolver()
PLACE, KIND = Location, FaultKind


def claim(cylinders: set[int], place: Location, kind: FaultKind, side: Side | None = None) -> Claim:
    return Claim(frozenset(cylinders), place, kind, side)


def answered(name: str, said: tuple[Claim, ...]) -> Attempt:
    """Return a shipped case that was only heard and then answered."""
    case = case_named(name)
    return step(begun(case, case.seed), Found(claims=said, certainty=0.95))


@cache
def heard(name: str) -> AtWork:
    return at_work_in(answered(name, ()), SOLVER)


def wrong_of(name: str, *said: Claim, **circumstances: object) -> Wrong:
    """Return a wrong finding at a shipped case that was only heard, with circumstances changed."""
    attempt = answered(name, said)
    return replace(wrong_finding(attempt, heard(name), weighed(attempt, reasoner_of(name))), **circumstances)


HUM = "faint_hum_on_three"
STUCK_ON_3 = claim({3}, PLACE.ARMATURE, KIND.STUCK_ARMATURE)
TABLE = [
    # name, case, what was said, circumstances; then what lies near and must not match
    ("insisted", "misfire_without_a_circuit", (STUCK_ON_3,), {}, (HUM, (STUCK_ON_3,), {})),
    ("not_shown", "dies_after_lunch", (), {"passes_left": 0.4}, ("dies_after_lunch", (), {"passes_left": 0.001})),
    ("one_of_two", "two_at_once", (claim({6}, PLACE.ARMATURE, KIND.STUCK_ARMATURE),), {},
     ("two_at_once", (claim({6}, PLACE.COIL, KIND.OPEN),), {})),
    ("silent_loudspeaker", HUM, (claim(set(range(1, 9)), PLACE.DRIVE_MODULE, KIND.NO_SUPPLY),), {},
     (HUM, (claim({3}, PLACE.DRIVE_MODULE, KIND.DEAD_RETURN_DRIVER),), {})),
    ("module_for_its_power", "new_module_same_fault", (claim(set(range(1, 9)), PLACE.DRIVE_MODULE, KIND.LOW_SUPPLY),), {},
     ("tired_supply", (claim(set(range(1, 7)), PLACE.MODULE_POWER, KIND.WEAK_BATTERY),), {})),
    ("one_for_group", "two_in_one_plug", (claim({5}, PLACE.PASS_THROUGH, KIND.OPEN),), {},
     ("two_in_one_plug", (claim({5, 7}, PLACE.UNDER_COVER, KIND.OPEN),), {})),
    ("code_of_another", "a_code_for_the_wrong_one", (claim({7}, PLACE.UNDER_COVER, KIND.OPEN),), {"coded": frozenset({7})},
     ("a_code_for_the_wrong_one", (claim({7}, PLACE.UNDER_COVER, KIND.OPEN),), {})),
    ("burst_or_order", HUM, (claim({4}, PLACE.PASS_THROUGH, KIND.OPEN),), {}, (HUM, (claim({5}, PLACE.PASS_THROUGH, KIND.OPEN),), {})),
    ("counted_burst", "green_pin_on_two", (claim({3}, PLACE.PASS_THROUGH, KIND.ADDED_RESISTANCE),), {},
     ("green_pin_on_two", (claim({1}, PLACE.PASS_THROUGH, KIND.ADDED_RESISTANCE),), {})),
    ("firing_order", "green_pin_on_two", None, {}, ("green_pin_on_two", (claim({6}, PLACE.PASS_THROUGH, KIND.OPEN),), {})),
    ("measured_connected", HUM, (claim({3}, PLACE.ENGINE_HARNESS, KIND.SHORT_TO_GROUND),), {"connected": ("149 Ω",)},
     (HUM, (claim({3}, PLACE.ENGINE_HARNESS, KIND.SHORT_TO_GROUND),), {})),
    ("hum_for_circuit", HUM, (STUCK_ON_3,), {}, (HUM, (claim({3}, PLACE.COIL, KIND.OPEN),), {})),
    ("hum_for_circuit", HUM, (), {"passes_left": 0.0}, ("full_current_no_click", (), {"passes_left": 0.0})),
    ("open_for_short", "melted_together", (claim({4}, PLACE.PASS_THROUGH, KIND.OPEN),), {},
     ("melted_together", (claim({4}, PLACE.UNDER_COVER, KIND.SHORT_ACROSS_PAIR),), {})),
    ("code_for_location", HUM, (claim({3}, PLACE.UNDER_COVER, KIND.OPEN),), {"coded": frozenset({3})},
     (HUM, (claim({3}, PLACE.UNDER_COVER, KIND.OPEN),), {"coded": frozenset({3}), "measured": True})),
    ("wrong_side", HUM, (claim({3}, PLACE.UNDER_COVER, KIND.OPEN),), {"measured": True},
     (HUM, (claim({3}, PLACE.DRIVE_MODULE, KIND.DEAD_RETURN_DRIVER),), {"measured": True})),
    ("by_ear_alone", HUM, (claim({3}, PLACE.DRIVE_MODULE, KIND.DEAD_RETURN_DRIVER),), {},
     (HUM, (claim({3}, PLACE.DRIVE_MODULE, KIND.DEAD_RETURN_DRIVER),), {"measured": True})),
    ("even_slot", HUM, (claim({6}, PLACE.PASS_THROUGH, KIND.OPEN),), {}, (HUM, (claim({3}, PLACE.COIL, KIND.OPEN),), {})),
    ("overlooked", "full_current_no_click", (), {"passes_left": 0.0}, ("full_current_no_click", (STUCK_ON_3,), {})),
]  # fmt: skip


def in_firing_order(name: str) -> Claim:
    """Return the true claim of a case with its cylinder taken by firing order."""
    case = case_named(name)
    (fault,) = case.faults
    return claim({case.profile.firing_order[fault.cylinders[0] - 1]}, fault.location, fault.kind)


@pytest.mark.parametrize("row", TABLE, ids=lambda row: f"{row[0]} {row[1]}")
def test_a_misconception_is_told_where_it_is_one_and_not_beside_it(row: tuple) -> None:
    name, case, said, circumstances, (near_case, near_said, near_circumstances) = row
    said = (in_firing_order(case),) if said is None else said
    assert misconception_of(wrong_of(case, *said, **circumstances)) == name
    near = wrong_of(near_case, *near_said, **near_circumstances)
    assert not MISCONCEPTIONS[name](near)


def test_every_misconception_has_a_case_and_words() -> None:
    assert {row[0] for row in TABLE} == set(MISCONCEPTIONS)
    for name in [*MISCONCEPTIONS, UNCLASSIFIED]:
        assert text(f"misconception.{name}")


@pytest.mark.parametrize("row", [row if row[1] == HUM else pytest.param(row, marks=pytest.mark.long) for row in TABLE])
def test_a_refutation_quotes_the_cases_own_numbers_in_three_lines_at_most(row: tuple) -> None:
    name, case, said, circumstances, _near = row
    attempt = answered(case, (in_firing_order(case),) if said is None else said)
    debrief = debrief_of(attempt, SOLVER, reasoner_of(case), POOLS(attempt.case.profile))
    assert debrief.wrong is not None
    debrief = replace(debrief, wrong=replace(debrief.wrong, **circumstances))
    told = text(f"refute.{name}", **refutation_values(debrief, attempt))
    assert len(told) < 3 * 120
    assert any(character.isdigit() for character in told)


def test_what_fits_none_is_called_unclassified() -> None:
    (fault,) = case_named("stuck_with_varnish").faults
    odd = wrong_of("stuck_with_varnish", claim(set(fault.cylinders), PLACE.ARMATURE, KIND.WORN_ARMATURE))
    assert misconception_of(odd) == UNCLASSIFIED
    assert NORTH.firing_order[2] == 4  # after 3 comes 4 in both orders, which is why burst and order share a name there
