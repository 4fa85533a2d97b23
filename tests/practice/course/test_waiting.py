"""What was missed comes back, whatever the clock does; never more of it than anybody can face."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from trainer.practice.course.practice_log import Entry, learner_of
from trainer.practice.course.skills import Answer, Demand, Skill
from trainer.practice.course.waiting import GAPS_DAYS, MOST_WAITING, Waiting, due_now, waiting_after

Told = tuple[str, bool, float, float]


def after(told: Sequence[Told]) -> tuple[Waiting, ...]:
    waiting: tuple[Waiting, ...] = ()
    for topic, right, certainty, day in told:
        waiting = waiting_after(waiting, topic, right, certainty, day)
    return waiting


def test_a_miss_comes_back_after_one_three_seven_and_twenty_one_days_and_then_is_done_with() -> None:
    day, waiting = 100.0, after([("case:group", False, 0.75, 100.0)])
    for gap in GAPS_DAYS:
        assert not due_now(waiting, day + gap - 0.5)
        assert [one.topic for one in due_now(waiting, day + gap)] == ["case:group"]
        day += gap
        waiting = waiting_after(waiting, "case:group", True, 0.75, day)
    assert waiting == ()
    assert GAPS_DAYS == (1.0, 3.0, 7.0, 21.0)


def test_another_miss_begins_anew_and_a_right_answer_before_its_time_proves_nothing() -> None:
    waiting = after([("ear:hum", False, 0.5, 10.0), ("ear:hum", True, 0.5, 11.0)])
    assert waiting[0].stage == 1
    assert after([("ear:hum", False, 0.5, 10.0), ("ear:hum", True, 0.5, 10.1)])[0].stage == 0
    assert waiting_after(waiting, "ear:hum", False, 0.5, 12.0)[0].stage == 0


def test_sure_and_wrong_comes_first() -> None:
    waiting = after([("a", False, 0.5, 1.0), ("b", False, 0.95, 2.0), ("c", False, 0.75, 0.5)])
    assert [one.topic for one in due_now(waiting, 9.0)] == ["b", "c", "a"]


def test_a_month_away_leaves_no_more_than_twelve() -> None:
    waiting = after([(f"topic {number}", False, 0.75, 1.0 + number / 100) for number in range(40)])
    assert len(due_now(waiting, 32.0)) == MOST_WAITING == 12


@pytest.mark.parametrize("clock", [-400.0, -1.0, 0.0, 0.3, 400.0])
def test_a_clock_set_back_or_forward_loses_nothing_and_doubles_nothing(clock: float) -> None:
    """The second miss happens while the clock stands wrong; then it is right again."""
    waiting = after([("a", False, 0.75, 1000.0), ("b", False, 0.75, 1000.0 + clock)])
    assert sorted(one.topic for one in waiting) == ["a", "b"]
    assert sorted(one.topic for one in due_now(waiting, 1002.0)) == ["a", "b"]
    waiting = waiting_after(waiting, "b", True, 0.75, 1002.0)
    # against the clock a right answer proves no gap: it counts from there
    assert [(one.day, one.stage) for one in waiting if one.topic == "b"] == [(1002.0, 0 if clock > 10.0 else 1)]
    assert [one.topic for one in due_now(waiting, 1006.0)] == ["a", "b"]


def test_a_clock_that_jumps_to_and_fro_finishes_nothing_early() -> None:
    told = [("a", False, 0.75, 100.0)] + [("a", True, 0.75, day) for day in (130.0, 101.0, 131.0, 102.0)]
    (waits,) = after(told)
    assert waits.stage <= 2
    assert waits.due(102.0 + GAPS_DAYS[waits.stage])


answers = st.lists(
    st.tuples(st.sampled_from([f"t{n}" for n in range(20)]), st.booleans(), st.sampled_from([0.5, 0.75, 0.95]),
              st.floats(-1e5, 1e5)), max_size=80,
)  # fmt: skip


@given(answers)
def test_whatever_is_answered_each_topic_waits_once_and_what_waits_was_missed_and_not_yet_made_up(
    told: list[Told],
) -> None:
    waiting = after(told)
    topics = [one.topic for one in waiting]
    assert len(topics) == len(set(topics)) <= MOST_WAITING
    assert set(topics) <= {topic for topic, right, _sure, _day in told if not right}
    last = {topic: right for topic, right, _sure, _day in told}
    just_missed = [topic for topic, right in last.items() if not right]
    if len({topic for topic, right, _s, _d in told if not right}) <= MOST_WAITING:
        assert set(just_missed) <= set(topics)


def test_what_was_worked_for_the_learner_is_neither_missed_nor_made_up_for() -> None:
    told = Answer(Demand(Skill.HEARING, 0.0), False, 100.0)
    missed = Entry("case", "case:group", "group", False, 0.95, "", (), (told,), 100.0)
    worked = replace(missed, right=True, answers=(), day=102.0, lesson=1)
    begun = replace(missed, answers=(), lesson=2)
    assert learner_of([missed, worked]).waiting == learner_of([missed]).waiting != ()
    assert learner_of([begun]).waiting == ()
