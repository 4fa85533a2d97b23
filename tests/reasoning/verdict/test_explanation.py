"""The explanation of a slot says what the solved currents did."""

from pathlib import Path

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
            "is very faint. Its own coil gets 0.0 A. What you hear is 1.9 A of background current through each of 7 others",
        ),
        ("one_side_asleep", 2, "nothing. No current flows through its own coil or through the others, so nothing hums"),
        ("clicks_in_every_slot", 1, "louder. Its coil gets 8.4 A and its armature moves: 4 dB louder than a good slot"),
        ("clicks_in_every_slot", 1, "Moving out of turn: cylinder 3."),
        ("clicks_in_every_slot", 3, "the current takes another path"),
        ("bank_feed_on_the_block", 1, "The current was too high, and the module shut off the feed."),
        (
            "neighbours_in_the_plug",
            1,
            "shares one current limit with cylinder 3. Each gets 5.2 A, so no armature lifts",
        ),
        ("right_sound_wrong_place", 3, "What moves belongs to cylinder 7, so the sound comes from another place."),
        ("full_current_no_click", 2, "dull. Its coil gets 8.5 A, but its armature does not move"),
        ("green_pin_on_two", 2, "dull. Its coil gets only 3.7 A, too little to lift the armature"),
        ("melted_together", 4, "output carries"),
        ("faint_hum_on_three", 0, "7 of 8 armatures move"),
    ],
)
def test_a_slot_is_explained(name: str, slot: int, says: str) -> None:
    assert says in line(name, slot)


def test_the_readme_shows_what_the_program_says() -> None:
    page = (Path(__file__).parents[3] / "README.md").read_text("utf-8")
    assert line("faint_hum_on_three", 3) in page.replace("\n", " ")
