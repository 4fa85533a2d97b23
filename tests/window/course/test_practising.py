"""Practice in the window, driven by keys: what comes next, what is kept, what a departure leaves, what time says."""

from __future__ import annotations

from pathlib import Path

import numpy as np
import pytest

from tests.desk_hands import clock
from tests.window_hands import Hands
from trainer.desk.learner_course import Course
from trainer.records.store.store import open_store
from trainer.window.course.exercise_screen import ExerciseScreen
from trainer.words import speak

WHO = "anna"


@pytest.fixture
def hands(tmp_path: Path) -> Hands:
    """A learner on the practice page."""
    there = Hands(folder=tmp_path, store=open_store(tmp_path))
    return there.go("name").write(WHO).press("enter").act("practice")


def course_of(hands: Hands) -> Course:
    return Course(hands.store, WHO, clock(), np.random.default_rng(1))


def question(hands: Hands) -> ExerciseScreen:
    screen = hands.shell.screen
    assert isinstance(screen, ExerciseScreen)
    return screen


def right_key(hands: Hands) -> str:
    return "abcde"[question(hands).exercise.right]


def test_an_answer_is_kept_once_and_what_was_right_is_said_with_its_reason(hands: Hands) -> None:
    hands.act("drill.codes").wait(0.1)
    exercise = question(hands).exercise
    wrong = next(row for row in range(len(exercise.choices)) if row != exercise.right)
    hands.press("abcde"[wrong])
    assert course_of(hands).state.entries == ()  # nothing is kept before it is said how sure it is
    hands.press("l", "l", "a", "j")
    (entry,) = course_of(hands).state.entries
    assert (entry.right, entry.certainty) == (False, 0.95)
    assert exercise.choices[exercise.right].said in hands.shown
    assert exercise.choices[exercise.right].why in hands.shown
    assert exercise.choices[wrong].why in hands.shown
    assert exercise.rule in hands.shown


def test_a_question_that_was_left_open_comes_first_again_and_in_the_language_chosen_meanwhile(hands: Hands) -> None:
    hands.act("drill.limits").wait(0.1)
    left = question(hands).exercise
    hands.press("escape", "escape", "f5").act("language.es")
    hands.press("escape").act("practice").press("n").wait(0.1)
    try:
        again = question(hands).exercise
        assert again.spec == left.spec
        assert again.asked != left.asked
        assert "¿" in again.asked
        assert again.asked in hands.shown
        assert left.asked not in hands.shown
    finally:
        speak("en")


def test_what_comes_next_follows_the_answers_and_says_why(hands: Hands) -> None:
    hands.press("n").wait(0.1)
    answered = []
    for _task in range(6):
        screen = hands.shell.screen
        if not isinstance(screen, ExerciseScreen):
            break  # a whole case: it is worked at the bench
        assert hands.text_of("exercise.why").strip()
        answered.append(screen.exercise)
        hands.press(right_key(hands), "k")
        assert hands.shell.focus == "next"
        hands.press("n").wait(0.1)
    assert answered
    entries = course_of(hands).state.entries
    assert [entry.kind for entry in entries] == [one.spec.kind for one in answered]
    assert all(entry.right and entry.certainty == 0.75 for entry in entries)


def test_a_rematch_is_four_sounds_of_two_kinds_and_then_ends(hands: Hands) -> None:
    hands.press("r").wait(0.1)
    labels = []
    for _sound in range(4):
        exercise = question(hands).exercise
        assert exercise.spec.kind == "ear"
        assert len(exercise.sounds) == 2
        labels.append(exercise.labels[exercise.right])
        hands.press("t").wait(3.0, 0.1)
        hands.press(right_key(hands), "k", "n").wait(0.1)
    assert sorted(labels) == ["dull", "dull", "very_faint", "very_faint"]
    assert len(course_of(hands).state.entries) == 4
    screen = hands.shell.screen
    assert not isinstance(screen, ExerciseScreen) or screen.exercise.spec.name not in labels


def test_after_ten_minutes_a_place_to_stop_is_named_and_after_twenty_a_rest_and_nothing_is_taken_away(
    hands: Hands,
) -> None:
    hands.act("drill.numbering").wait(0.1)
    assert not hands.has("exercise.time")
    hands.wait(600.0, 30.0)
    assert "10 minutes" in hands.text_of("exercise.time")
    hands.wait(600.0, 30.0)
    assert "20 minutes" in hands.text_of("exercise.time")
    hands.press(right_key(hands), "k", "n").wait(0.1)
    assert len(course_of(hands).state.entries) == 1


def test_a_record_is_written_here_and_taken_in_on_another_machine_once(hands: Hands, tmp_path: Path) -> None:
    hands.act("drill.codes").wait(0.1).press("a", "k", "escape")
    hands.act("carry")
    (written,) = (tmp_path / "records").iterdir()
    other = Hands(folder=tmp_path / "other", store=open_store(tmp_path / "other"))
    other.go("name").write(WHO).press("enter").act("practice")
    for _time in range(2):
        other.go("record").write(str(written)).press("enter").wait(0.1)
        assert len(course_of(other).state.entries) == 1
    damaged = tmp_path / "damaged.record"
    damaged.write_bytes(written.read_bytes()[:-30])
    other.go("record").write(str(damaged)).press("enter").wait(0.1)
    assert "damaged.record" in other.shown
    assert len(course_of(other).state.entries) == 1


def test_what_was_asked_for_and_left_before_it_came_opens_over_nothing_and_begins_nothing(hands: Hands) -> None:
    hands.shell.input.press("n", shift=False)
    hands.shell.input.press("escape", shift=False)
    hands.wait(0.1)
    assert not isinstance(hands.shell.screen, ExerciseScreen)
    assert course_of(hands).unfinished() is None


def test_time_counts_from_the_first_task_not_from_the_name(hands: Hands) -> None:
    hands.wait(1500.0, 30.0)
    hands.act("drill.numbering").wait(0.1)
    assert not hands.has("exercise.time")
    assert "0 min" in hands.press("escape").text_of("practice.minutes")
