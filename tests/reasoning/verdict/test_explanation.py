"""The explanation of a slot says what the solved currents did."""

import pytest

from trainer.cases.single_case.shipped import case_named
from trainer.desk.caching_solver import CachingSolver
from trainer.instruments.bench import Work
from trainer.practice.reports.attempt_lines import reason_line
from trainer.reasoning.verdict.explanation import reasons_of
from trainer.sound.render import render

SOLVER = CachingSolver()


def line(name: str, slot: int) -> str:
    case = case_named(name)
    solved, good = (SOLVER(case.profile, faults, Work()) for faults in (case.faults, ()))
    sounds = (render(test, "front", case.bed, case.seed) for test in (solved, good))
    reason = next(reason for reason in reasons_of(solved, *sounds) if reason.slot == slot)
    return reason_line(reason, len(case.profile.cylinders))


@pytest.mark.parametrize(
    ("name", "slot", "says"),
    [
        (
            "faint_hum_on_three",
            3,
            "very faint: almost no current through its own coil (0.0 A); a background current of 1.9 A through each of 7 others",
        ),
        ("one_side_asleep", 2, "nothing: no current through its own coil and none through the others, so nothing hums"),
        ("clicks_in_every_slot", 1, "louder: 8.4 A of its own; the plate moves"),
        ("clicks_in_every_slot", 1, "Also moving without being called: 3."),
        ("clicks_in_every_slot", 3, "the current takes another way"),
        ("bank_feed_on_the_block", 1, "The feed's over-current trip shut it."),
        ("neighbours_in_the_plug", 1, "as much through 3: they share one current limit, and no plate lifts"),
        ("right_sound_wrong_place", 3, "What moves is 7: the sound comes from another place."),
        ("full_current_no_click", 2, "dull: 8.5 A of its own and no movement"),
        ("green_pin_on_two", 2, "dull: only 3.7 A of its own: the plate does not lift"),
        ("melted_together", 4, "Its output carries"),
        ("faint_hum_on_three", 0, "7 of 8 plates move"),
    ],
)
def test_a_slot_is_explained(name: str, slot: int, says: str) -> None:
    assert says in line(name, slot)
