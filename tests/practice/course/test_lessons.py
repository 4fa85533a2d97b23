"""The lessons: what is worked in them is real work, in the trade's order."""

from __future__ import annotations

import pytest

from trainer.cases.single_case.shipped import case_named
from trainer.practice.attempt.actions import solved_work
from trainer.practice.attempt.attempt import begun, step
from trainer.practice.attempt.events import CodesRead, Heard
from trainer.practice.course.lessons import LESSONS, Lesson

WORKED = [lesson for lesson in LESSONS if lesson.steps]


@pytest.mark.parametrize("lesson", WORKED, ids=lambda lesson: f"lesson_{lesson.number}")
def test_a_lesson_reads_the_codes_clears_them_tests_and_reads_again(lesson: Lesson) -> None:
    case = case_named(lesson.case)
    attempt = begun(case, case.seed)
    for one in lesson.steps:
        if one.request is None and not one.looks:
            attempt = step(attempt, one.do(attempt, solved_work).event)
    done = [event for event in attempt.events if not (isinstance(event, Heard) and event.slots)]
    tested, first, again, second = done[:4]
    assert isinstance(tested, Heard)
    assert isinstance(first, CodesRead)
    assert first.cleared
    assert isinstance(again, Heard)
    assert isinstance(second, CodesRead)
    assert not second.cleared
    assert second.codes == first.codes  # no old code in these cases: each comes back
    assert second.codes
