"""A learner at a set: what the policy allows, what an exam keeps back, and what is taken down."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.desk_hands import RecordingPlayer
from tests.exam_sets import (
    PASSPHRASE,
    SMALL,
    Clocks,
    right_finding,
    sealed_set,
    seated,
    sitting_of,
    small_set,
    work_through,
)  # fmt: skip
from tests.universes import UNIVERSES
from trainer.circuit.elements import Side
from trainer.desk.desk import Desk
from trainer.desk.set_sitting import Sitting
from trainer.errors import WrongCallError
from trainer.instruments.measuring import Request
from trainer.practice.attempt import actions, repair
from trainer.practice.attempt.event_record import EventKind
from trainer.practice.attempt.events import Away
from trainer.reasoning.universe.finding import Finding
from trainer.records.store.chain import broken_at
from trainer.records.store.store import Store, open_store


@pytest.fixture
def store() -> Store:
    return open_store(None)


def practice(*lines: str) -> str:
    return SMALL.replace("mode: exam", "\n  ".join(("mode: practice", *lines)))


POLICIES = [
    # (lines of the policy, what is done again and again, how often it goes well, what refuses it)
    (("plays: 2",), "hear", 2, "plays_used"),
    (("readings: 1",), "measure", 1, "readings_used"),
    (("readings: 0",), "measure", 0, "readings_used"),
    (("bench_minutes: 19",), "measure", 0, "bench_minutes_used"),
]


@pytest.mark.parametrize(("lines", "what", "allowed", "refusal"), POLICIES)
def test_what_a_policy_allows_is_given_and_no_more(store: Store, lines, what: str, allowed: int, refusal: str) -> None:
    sitting = sitting_of(small_set(practice(*lines)), store)
    desk = sitting.desk(RecordingPlayer(), UNIVERSES)
    sitting.start_case(desk)

    def act() -> None:
        if what == "hear":
            desk.do(actions.hear(desk.attempt, [3], "front", desk.solver))
        else:
            desk.do(actions.measure(desk.attempt, Request("pair", "module_connector", "harness", 3)))

    for _time in range(allowed):
        act()
    before = desk.attempt.events
    with pytest.raises(WrongCallError, match=refusal):
        act()
    assert desk.attempt.events == before  # what is refused is neither charged nor stored


def test_support_gives_more_and_is_told_in_the_record(store: Store) -> None:
    text = (
        practice("plays: 1", "clock_minutes: 10")
        + "support:\n  - learner: ann\n    extra_plays: 1\n    extra_time: 1.5\n    trace: true\n"
    )
    ann, ben = (sitting_of(small_set(text), store, name) for name in ("ann", "ben"))
    assert (ann.limits.plays, ben.limits.plays) == (2, 1)
    assert (ann.clock_left_s, ben.clock_left_s) == (900.0, 600.0)
    assert (ann.trace, ben.trace) == ("shown", "fading")
    seated(ann), seated(ben)
    assert store.events(store.in_set(ann.opened.case_set.id, "ann")[0].id)[0].data["supported"] is True
    assert "supported" not in store.events(store.in_set(ben.opened.case_set.id, "ben")[0].id)[0].data


def test_an_exam_gives_no_hint_repair_retest_or_debrief(store: Store) -> None:
    sitting = sitting_of(small_set(), store)
    desk, item = seated(sitting)
    with pytest.raises(WrongCallError, match="no_hints"):
        desk.hint()
    desk.commit(right_finding(item))
    for act in (
        desk.debrief,
        lambda: desk.do(repair.retest(desk.attempt, desk.solver, "front", moved=None, heated=None)),
    ):
        with pytest.raises(WrongCallError, match="not_in_exam"):
            act()
    desk.hand_in()
    events = store.events(desk.attempt_id)
    assert [event.kind for event in events] == [EventKind.STARTED, EventKind.HEARD, EventKind.FOUND, EventKind.CLOSED]
    assert set(events[-1].data) == {"spent_s"}  # nothing of whether it was right


def test_what_a_sealed_exam_leaves_at_the_station_tells_no_truth(tmp_path: Path, store: Store) -> None:
    """No case code, seed or truth can be had before the debrief opens: neither in the rows nor in the events."""
    _path, exam = sealed_set(tmp_path)
    sitting = sitting_of(exam, store)
    _desk, item = seated(sitting)
    row = store.in_set(exam.case_set.id, "ann")[0]
    assert (row.seed, row.profile_digest, row.case_name) == (0, "", "first_week_1")
    assert row.case_digest not in (item.case.digest, "")
    written = repr(row) + repr(store.events(row.id))
    for secret in (str(item.seed), item.case.digest, "faint_hum", str(item.case.faults[0].location)):
        assert secret not in written


def test_the_codes_of_a_test_are_stored_when_they_are_read_and_not_before(tmp_path: Path, store: Store) -> None:
    """Else whoever opens the database at the station sees them without having asked the module."""
    _path, exam = sealed_set(tmp_path)
    desk, _item = seated(sitting_of(exam, store))
    heard = store.events(desk.attempt_id)[-1]
    assert heard.kind is EventKind.HEARD
    assert "P0203" not in repr(heard)
    assert "P0203" not in repr(desk.attempt)
    desk.do(actions.read_codes(desk.attempt, desk.solver, clear=False))
    assert store.events(desk.attempt_id)[-1].data["codes"] == ["P0203"]


def test_debriefs_open_when_the_set_says_so(store: Store) -> None:
    clocks = Clocks()
    after = SMALL.replace("mode: exam", "mode: exam\n  debrief: after_closing\n  closes: 2026-12-01T10:00:00Z")
    sitting = sitting_of(small_set(after), store, "ann", clocks)
    work_through(sitting, [True, True, True])
    desk = sitting.desk(RecordingPlayer(), UNIVERSES)
    with pytest.raises(WrongCallError, match="debrief_not_open"):
        sitting.look_back(desk, sitting.items[0])
    clocks.now = "2026-12-01T10:00:00.000+00:00"
    sitting.look_back(desk, sitting.items[0])
    assert desk.debrief().score.right
    desk.close(desk.debrief().outcome)
    assert not any(
        "points" in event.data for event in store.events(desk.attempt_id)
    )  # the exam's record stays as it was


def test_dates_and_the_clock_end_a_set_and_a_case_begun_may_be_ended(store: Store) -> None:
    clocks = Clocks()
    dated = practice("opens: 2026-12-01T09:00:00Z", "closes: 2026-12-01T10:00:00Z", "clock_minutes: 5")
    sitting = sitting_of(small_set(dated), store, "ann", clocks)
    with pytest.raises(WrongCallError, match="set_not_open"):
        seated(sitting)
    clocks.now = "2026-12-01T09:30:00.000+00:00"
    desk, item = seated(sitting)
    clocks.seconds += 400.0
    clocks.now = "2026-12-01T08:00:00.000+00:00"  # somebody sets the date back: seconds go on all the same
    desk.commit(right_finding(item))
    desk.close(desk.debrief().outcome)
    sitting.refresh()
    assert sitting.clock_left_s is not None
    assert sitting.clock_left_s < 0.0
    clocks.now = "2026-12-01T09:31:00.000+00:00"
    with pytest.raises(WrongCallError, match="clock_used"):
        seated(sitting)
    clocks.now = "2026-12-01T10:00:00.000+00:00"
    with pytest.raises(WrongCallError, match="set_closed"):
        seated(sitting)


def test_after_closing_nothing_more_is_taken_where_debriefs_open_then(store: Store) -> None:
    """Others may see the debriefs of the same cases from that moment on."""
    clocks = Clocks()
    after = SMALL.replace("mode: exam", "mode: exam\n  closes: 2026-12-01T10:00:00Z")
    sitting = sitting_of(small_set(after), store, "ann", clocks)
    desk, item = seated(sitting)
    clocks.now = "2026-12-01T10:00:00.000+00:00"
    with pytest.raises(WrongCallError, match="set_closed"):
        desk.commit(right_finding(item))
    with pytest.raises(WrongCallError, match="set_closed"):
        desk.do(actions.hear(desk.attempt, [3], "front", desk.solver))
    with pytest.raises(WrongCallError, match="set_closed"):
        sitting_of(small_set(after), store, "ann", clocks).start_case(sitting.desk(RecordingPlayer(), UNIVERSES))


def test_tries_are_counted_by_whole_sets(store: Store) -> None:
    sitting = sitting_of(small_set(SMALL.replace("mode: exam", "mode: exam\n  tries: 2")), store)
    with pytest.raises(WrongCallError, match="try_not_finished"):
        sitting.another_try()
    work_through(sitting, [True, True, True])
    with pytest.raises(WrongCallError, match="set_finished"):
        seated(sitting)
    sitting.another_try()
    work_through(sitting, [False, True, True])
    assert {row.try_number for row in store.in_set(sitting.opened.case_set.id, "ann")} == {1, 2}
    with pytest.raises(WrongCallError, match="tries_used"):
        sitting.another_try()


def test_a_case_goes_on_where_it_was_left_and_says_so(store: Store) -> None:
    exam = small_set()
    desk, item = seated(sitting_of(exam, store))
    again = sitting_of(exam, store)
    assert again.next_item is not None
    assert again.next_item.index == item.index
    later = again.desk(RecordingPlayer(), UNIVERSES)
    again.start_case(later)
    assert len(later.attempt.events) == len(desk.attempt.events) + 1
    assert store.events(later.attempt_id)[-1].kind is EventKind.RESUMED


def test_a_voided_case_is_kept_does_not_count_and_is_drawn_anew(tmp_path: Path, store: Store) -> None:
    _path, exam = sealed_set(tmp_path)
    sitting = sitting_of(exam, store)
    desk, item = seated(sitting)
    with pytest.raises(WrongCallError, match="not_the_passphrase"):
        sitting.void(desk, "headphones failed", lambda: "a guess of a learner")
    sitting.void(desk, "headphones failed", lambda: PASSPHRASE)
    assert store.events(desk.attempt_id)[-1].data["reason"] == "headphones failed"
    other, again = seated(sitting)
    assert again.index == item.index
    assert again.seed != item.seed
    assert other.attempt_id != desk.attempt_id
    assert [row.redraw for row in store.in_set(exam.case_set.id, "ann")] == [0, 1]


def test_every_event_is_chained_and_any_change_breaks_the_chain(store: Store) -> None:
    exam = small_set()
    desk, item = seated(sitting_of(exam, store))
    desk.commit(right_finding(item))
    desk.hand_in()
    row = store.in_set(exam.case_set.id, "ann")[0]
    events, links = store.logged(row.id)
    key = exam.key.derived("chain")
    assert broken_at(key, row, events, links) is None
    assert broken_at(key, row, events[:2] + events[3:], links[:2] + links[3:]) == 4
    changed = [*events]
    changed[2] = type(events[2])(3, events[2].kind, events[2].at, {**events[2].data, "certainty": 0.5})
    assert broken_at(key, row, changed, links) == 3
    assert broken_at(b"another key", row, events, links) == 1


def test_an_exams_case_that_was_committed_but_not_handed_in_is_handed_in(store: Store) -> None:
    """Whether the program was killed between the two, or the end was taken out of the database to see the debrief."""
    exam = small_set()
    desk, item = seated(sitting_of(exam, store))
    desk.commit(right_finding(item))
    again = sitting_of(exam, store)
    later = again.desk(RecordingPlayer(), UNIVERSES)
    assert again.start_case(later).index == item.index + 1
    assert store.events(desk.attempt_id)[-1].kind is EventKind.CLOSED
    with pytest.raises(WrongCallError, match="not_in_exam"):
        desk.close(Desk.debrief(desk).outcome)


def test_a_try_begun_anew_is_remembered_and_voided_time_is_given_back(store: Store) -> None:
    clocks = Clocks()
    sitting = sitting_of(
        small_set(SMALL.replace("mode: exam", "mode: exam\n  tries: 2\n  clock_minutes: 60")), store, "ann", clocks
    )
    work_through(sitting, [True, True, True])
    sitting.another_try()
    sitting.refresh()
    assert sitting.try_number == 2
    desk, _item = seated(sitting)
    clocks.seconds += 3000.0
    sitting.void(desk, "headphones failed", lambda: "")
    assert sitting.clock_left_s == 3600.0


def kinds(store: Store, desk: Desk) -> list[EventKind]:
    return [event.kind for event in store.events(desk.attempt_id)]


def test_a_clock_that_goes_back_in_a_case_is_an_event_of_its_own(store: Store) -> None:
    clocks = Clocks("2026-12-01T09:30:00.000+00:00")
    sitting = sitting_of(small_set(), store, "ann", clocks)
    desk, item = seated(sitting)
    clocks.now = "2026-12-01T09:29:30.000+00:00"  # a time server puts the clock right: nobody is asked about that
    desk.note(Away())
    clocks.now = "2026-12-01T08:00:00.000+00:00"
    desk.commit(right_finding(item))
    desk.hand_in()
    assert kinds(store, desk)[2:] == [EventKind.AWAY, EventKind.CLOCK_BACK, EventKind.FOUND, EventKind.CLOSED]
    assert store.events(desk.attempt_id)[3].data["from"] == "2026-12-01T09:29:30.000+00:00"
    (row,) = store.in_set(sitting.opened.case_set.id, "ann")
    assert broken_at(sitting.opened.key.derived("chain"), row, *store.logged(row.id)) is None


def test_a_clock_that_went_back_between_two_cases_or_while_the_program_was_shut_is_one_too(store: Store) -> None:
    clocks = Clocks("2026-12-01T09:30:00.000+00:00")
    sitting = sitting_of(small_set(), store, "ann", clocks)
    work_through(sitting, [True])
    clocks.now = "2026-12-01T09:00:00.000+00:00"
    desk, _item = seated(sitting)
    assert kinds(store, desk) == [EventKind.STARTED, EventKind.CLOCK_BACK, EventKind.HEARD]
    clocks.now = "2026-12-01T08:00:00.000+00:00"
    sitting_of(small_set(), store, "ann", clocks).start_case(sitting.desk(RecordingPlayer(), UNIVERSES))
    assert kinds(store, desk)[3:] == [EventKind.CLOCK_BACK, EventKind.RESUMED]


def test_looking_back_at_a_debrief_is_chained_to_what_was_done_last(store: Store) -> None:
    sitting = sitting_of(small_set(), store)
    work_through(sitting, [True, True, True])
    desk = sitting.desk(RecordingPlayer(), UNIVERSES)
    sitting.look_back(desk, sitting.items[0])
    sitting.look_back(desk, sitting.items[2])
    row = store.in_set(sitting.opened.case_set.id, "ann")[-1]
    events, links = store.logged(row.id)
    assert [(event.kind, event.data) for event in events[-2:]] == [
        (EventKind.LOOKED_BACK, {"item": 1, "left": 0}),
        (EventKind.LOOKED_BACK, {"item": 3, "left": 0}),
    ]
    assert broken_at(sitting.opened.key.derived("chain"), row, events, links) is None
    assert sitting_of(small_set(), store).next_item is None
    with pytest.raises(ValueError, match="nothing follows"):
        desk.suspect(frozenset())


def test_what_a_process_lacks_to_keep_an_exam_apart_is_taken_down(store: Store) -> None:
    clocks = Clocks()
    for learner, text, noted in (("ann", SMALL, True), ("ben", practice(), False)):
        sitting = Sitting(small_set(text), learner, store, clocks.wall, clocks.steady, ("isolated",))
        desk, _item = seated(sitting)
        told = [event.data["lacks"] for event in store.events(desk.attempt_id) if event.kind is EventKind.UNGUARDED]
        assert told == ([["isolated"]] if noted else [])


def test_leaving_the_window_is_taken_down(store: Store) -> None:
    desk, item = seated(sitting_of(small_set(), store))
    desk.note(Away())
    desk.commit(Finding((), 0.5))
    desk.hand_in()
    assert EventKind.AWAY in [event.kind for event in store.events(desk.attempt_id)]
    assert item.case.faults
    assert Side.RETURN is item.case.faults[0].side
