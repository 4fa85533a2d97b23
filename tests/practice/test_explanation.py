"""The explanation of a slot says what the solved currents did."""

from functools import cache

import pytest

from tests.universes import POOLS, reasoner_of
from trainer.cases.shipped import case_named
from trainer.desk.solver import RememberingSolver
from trainer.practice.attempt import begun, finding_data, step
from trainer.practice.debrief import Debrief, debrief_of
from trainer.practice.events import Event, EventKind
from trainer.practice.shown import reason_line
from trainer.reasoning.finding import Finding, truth_of

SOLVER = RememberingSolver()


@cache
def debrief_of_case(name: str) -> Debrief:
    case = case_named(name)
    found = Event(1, EventKind.FOUND, "t", finding_data(Finding(truth_of(case.faults), 0.95)))
    return debrief_of(step(begun(case, case.seed), found), SOLVER, reasoner_of(name), POOLS(case.profile))


def line(name: str, slot: int) -> str:
    reason = next(reason for reason in debrief_of_case(name).reasons if reason.slot == slot)
    return reason_line(reason, len(case_named(name).profile.cylinders))


@pytest.mark.parametrize(
    ("name", "slot", "says"),
    [
        ("faint_hum_on_three", 3, "very faint: no current of its own (0.0 A); 2.4 A through each of 7 others"),
        ("one_side_asleep", 2, "nothing: no current of its own, and none through the others: nothing hums"),
        ("clicks_in_every_slot", 1, "louder: 8.2 A of its own; the plate moves"),
        ("clicks_in_every_slot", 1, "Also moving without being called: 3."),
        ("clicks_in_every_slot", 3, "the current takes another way"),
        ("bank_feed_on_the_block", 1, "The feed's over-current trip shut it."),
        ("neighbours_in_the_plug", 1, "as much through 3, on one allowance: no plate lifts"),
        ("right_sound_wrong_place", 3, "What moves is 7: the sound comes from another place."),
        ("full_current_no_click", 2, "dull: 8.5 A of its own and no movement"),
        ("green_pin_on_two", 2, "dull: only 4.9 A of its own: the plate does not lift"),
        ("melted_together", 4, "Its output carries"),
        ("faint_hum_on_three", 0, "7 of 8 plates move"),
    ],
)
def test_a_slot_is_explained(name: str, slot: int, says: str) -> None:
    assert says in line(name, slot)
