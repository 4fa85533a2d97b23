"""What a case's outcome tells of each skill, and what it says nothing of."""

from __future__ import annotations

from dataclasses import replace

import pytest

from trainer.practice.attempt.outcome import Outcome
from trainer.practice.course.demands import answers_of
from trainer.practice.course.skills import Skill, demand

EVERY = [demand(skill, 0.0) for skill in Skill]

RIGHT = Outcome(
    points=100.0, shares=(1.0, 1.0, 1.0, 1.0, 1.0), right=True, certainty=0.95, places=("coil",), said_places=("coil",),
    cylinders=(3,), said_cylinders=(3,), kinds=("open",), said_kinds=("open",), misconception="", plays=2, readings=2,
    hints=0, used_minutes=12.0, best_minutes=12.0, time_s=0.0,
)  # fmt: skip
WRONG_SLOT = replace(RIGHT, right=False, shares=(0.0, 0.0, 0.0, 0.0, 1.0), said_cylinders=(4,))


def told(outcome: Outcome) -> dict[Skill, bool]:
    return {one.skill: right for one, right in answers_of(outcome, EVERY)}


def test_a_proved_right_finding_tells_well_of_every_skill() -> None:
    assert told(RIGHT) == dict.fromkeys(Skill, True)


@pytest.mark.parametrize("idea", ["firing_order", "counted_burst"])
def test_a_slot_numbered_wrongly_was_heard_rightly_and_what_came_after_was_not_tried(idea: str) -> None:
    assert told(replace(WRONG_SLOT, misconception=idea)) == {
        Skill.HEARING: True, Skill.NUMBERING: False, Skill.LIMITS: False,
    }  # fmt: skip


def test_a_slot_heard_wrongly_tells_nothing_of_numbering_codes_measuring_and_reasoning() -> None:
    assert told(WRONG_SLOT) == {Skill.HEARING: False, Skill.LIMITS: False}


def test_a_fault_insisted_on_where_the_circuit_passes_tells_of_limits_only() -> None:
    assert told(replace(WRONG_SLOT, places=(), cylinders=(), kinds=(), misconception="insisted")) == {
        Skill.LIMITS: False,
    }  # fmt: skip


def test_what_was_done_with_a_hint_tells_nothing_of_measuring_and_reasoning_either_way() -> None:
    missed = replace(RIGHT, right=False, shares=(1.0, 0.0, 0.0, 0.0, 1.0))
    for outcome in (RIGHT, missed):
        assert not {Skill.MEASURING, Skill.REASONING} & told(replace(outcome, hints=1)).keys()
    assert told(missed)[Skill.MEASURING] is False
