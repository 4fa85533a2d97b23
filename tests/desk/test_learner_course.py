"""Practice at a desk: what is kept, what comes next, what a kill leaves, what a case tells."""

from __future__ import annotations

import numpy as np
import pytest

from tests.desk_hands import clock
from tests.exam_sets import measure_well
from tests.players import ClockedPlayer
from tests.universes import POOLS, UNIVERSES
from trainer.cases.single_case.shipped import profile_named, profile_names
from trainer.desk.attempt_start import start_or_resume
from trainer.desk.case_source import find_case
from trainer.desk.desk import Desk
from trainer.desk.exercise_maker import Exercises
from trainer.desk.learner_course import Course
from trainer.errors import WrongCallError
from trainer.practice.attempt.events import Started
from trainer.practice.course.lessons import LESSONS, worked_finding
from trainer.practice.course.next_task import choose
from trainer.practice.course.practice_log import CASE
from trainer.practice.course.skills import Skill
from trainer.practice.exercises.candidate_tasks import tasks_for
from trainer.practice.exercises.exercise_types import Spec
from trainer.reasoning.universe.finding import Finding, truth_of
from trainer.records.store.store import Store, open_store

EXERCISES = Exercises(UNIVERSES)


def course_in(store: Store, seed: int = 1) -> Course:
    return Course(store, "anna", clock(), np.random.default_rng(seed))


def pools() -> list[object]:
    return [POOLS(profile_named(name)) for name in profile_names()]


def test_an_exercise_that_was_begun_is_there_again_after_a_kill() -> None:
    store = open_store(None)
    course = course_in(store)
    exercise = EXERCISES.make(Spec("codes", "north_v8", "old", 2, 77))
    begun = course.begin(exercise, "weakest", "codes")
    again = course_in(store).unfinished()
    assert again == begun
    assert EXERCISES.make(again.spec) == exercise
    course.answer(begun, exercise, exercise.right, 0.75)
    assert course_in(store).unfinished() is None
    with pytest.raises(WrongCallError, match="worked_elsewhere"):
        course.answer(begun, exercise, exercise.right, 0.75)


def test_answers_are_read_once_and_stand_as_if_read_anew() -> None:
    store = open_store(None)
    course = course_in(store)
    for seed in range(6):
        exercise = EXERCISES.make(Spec("limits", "ridge_v6", "after", 1, seed))
        course.answer(course.begin(exercise), exercise, seed % len(exercise.choices), 0.95)
        _ = course.state
    assert course.state.entries == course_in(store).state.entries
    assert len(course.state.entries) == 6
    assert course.state.abilities[Skill.LIMITS].answers == 6


def test_the_next_task_is_never_the_third_of_its_class_in_a_row() -> None:
    store = open_store(None)
    course = course_in(store, 5)
    classes = []
    for _task in range(25):
        chosen = course.next(pools())  # type: ignore[arg-type]
        if chosen.task.kind == CASE:
            classes.append(chosen.task.kind_class)
            exercise = EXERCISES.make(Spec("numbering", "north_v8", "place", 1, 3))
            begun = course.begin(exercise)
            course.answer(begun, exercise, exercise.right, 0.5)
            classes[-1] = exercise.kind_class
            continue
        exercise = EXERCISES.made(chosen.task.name, course.stale_class(), chosen.probed)
        course.answer(course.begin(exercise, chosen.why, chosen.about), exercise, exercise.right, 0.75)
        classes.append(exercise.kind_class)
        if exercise.spec.kind != "numbering":
            assert len(set(classes[-3:])) != 1 or len(classes) < 3


def test_the_worked_lesson_is_proved_by_the_model_and_tells_nothing_of_skills() -> None:
    store = open_store(None)
    desk = Desk(store, ClockedPlayer(), clock(), UNIVERSES)
    lesson = LESSONS[0]
    start_or_resume(desk, find_case(lesson.case), "anna", clock()(), at=Started(lesson=lesson.number))
    assert course_in(store).lesson is lesson
    for step in lesson.steps:
        desk.do(step.do(desk.attempt, desk.solver))
    desk.commit(worked_finding(desk.attempt))
    debrief = desk.debrief()
    assert debrief.score.right
    assert debrief.proof.share == 1.0
    desk.close(debrief.outcome, debrief.features)
    course = course_in(store)
    assert course.lesson is LESSONS[1]
    assert all(ability.answers == 0 for ability in course.state.abilities.values())


def test_a_case_tells_of_every_skill_that_it_asked_for() -> None:
    store = open_store(None)
    desk = Desk(store, ClockedPlayer(), clock(), UNIVERSES)
    start_or_resume(desk, find_case("faint_hum_on_three"), "anna", clock()())
    measure_well(desk)
    desk.commit(worked_finding(desk.attempt))
    debrief = desk.debrief()
    desk.close(debrief.outcome, debrief.features)
    told = {answer.demand.skill: answer.right for answer in course_in(store).state.entries[0].answers}
    assert told == {
        Skill.HEARING: True,
        Skill.NUMBERING: True,
        Skill.CODES: True,
        Skill.MEASURING: True,
        Skill.REASONING: False,
    }


def test_a_case_left_alone_waits_under_its_class_and_comes_back_sure_and_wrong_first() -> None:
    store = open_store(None)
    desk = Desk(store, ClockedPlayer(), clock(), UNIVERSES)
    start_or_resume(desk, find_case("misfire_without_a_circuit"), "anna", clock()())
    other = truth_of(find_case("faint_hum_on_three").case.faults)
    desk.commit(Finding(other, 0.95))
    debrief = desk.debrief()
    desk.close(debrief.outcome, debrief.features)
    course = course_in(store)
    (waits,) = course.state.waiting
    assert waits.topic == "case:circuit_passes"
    assert waits.sure
    chosen = choose(tasks_for(pools(), np.random.default_rng(2)), course.state, course.day + 1.5)  # type: ignore[arg-type]
    assert (chosen.why, chosen.about) == ("sure_wrong", "case:circuit_passes")
    assert chosen.task.topic == "case:circuit_passes"


def test_a_rematch_is_four_sounds_two_of_each() -> None:
    specs = [one.spec for one in course_in(open_store(None)).rematch(pools())]  # type: ignore[arg-type]
    assert sorted(spec.subject for spec in specs) == ["dull", "dull", "very_faint", "very_faint"]
    heard = [EXERCISES.make(spec) for spec in specs]
    assert [one.labels[one.right] for one in heard] == [spec.subject for spec in specs]
