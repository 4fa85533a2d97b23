"""What is to be settled with learners: contradictory dates, a look back in the middle, an exam that others could reach."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.desk_hands import RecordingPlayer
from tests.exam_sets import SMALL, Clocks, right_finding, sitting_of, small_set, work_through
from tests.universes import UNIVERSES
from trainer.desk.caching_solver import CachingSolver
from trainer.desk.set_sitting import Sitting
from trainer.practice.attempt.event_record import EventKind, EventRecord
from trainer.records.class_report.collect import collect
from trainer.records.class_report.irregularities import irregularity_lines
from trainer.records.class_report.marking import Marked, mark_set
from trainer.records.class_report.notes import notes_of
from trainer.records.class_report.report import report_html
from trainer.records.class_report.results import stored_sets
from trainer.records.store.bundle import BundleError, Fate, read_bundle
from trainer.records.store.chain import next_link
from trainer.records.store.store import Store, open_store
from trainer.sets.set_access import OpenedSet

SOLVER = CachingSolver()


def mark(store: Store, exam: OpenedSet) -> Marked:
    return mark_set(store, exam.case_set, [exam.key], SOLVER, UNIVERSES)


DATED = SMALL.replace(
    "mode: exam", "mode: exam\n  debrief: after_closing\n  opens: 2026-12-01T08:00:00Z\n  closes: 2026-12-01T10:00:00Z"
)


def unsettled(store: Store) -> list[str]:
    (kept,) = stored_sets(store)
    return irregularity_lines(store, kept, "2026-12-02T00:00:00.000+00:00")


def test_a_bundle_of_a_station_whose_clock_was_put_back_is_taken_and_told(tmp_path: Path) -> None:
    """The order of attempts is told by their chain, not by their dates."""
    exam, station, school = small_set(), open_store(None), open_store(None)
    clocks = Clocks("2026-12-01T09:30:00.000+00:00")
    sitting = sitting_of(exam, station, "ann", clocks)
    work_through(sitting, [True])
    clocks.now = "2026-12-01T08:30:00.000+00:00"
    work_through(sitting, [True])
    sitting.bundle(tmp_path)
    (taken,) = collect(school, [tmp_path], exam.case_set.id, [exam.key])
    assert (taken.fate, taken.attempts) == (Fate.NEW, 2)
    assert mark(school, exam).to_settle == 1
    assert unsettled(school) == [
        "ann, case 2: the station's clock jumped back from 2026-12-01 09:30 to 2026-12-01 08:30."
    ]
    station.close(), school.close()


def test_a_look_at_a_debrief_in_the_middle_of_an_exam_is_told_even_where_it_was_collected_before(
    tmp_path: Path,
) -> None:
    """The clock is put past closing, a debrief is read, the clock is put back, and the rest is worked."""
    exam, station, school = small_set(DATED), open_store(None), open_store(None)
    clocks = Clocks("2026-12-01T08:30:00.000+00:00")
    sitting = sitting_of(exam, station, "ann", clocks)
    work_through(sitting, [True])
    sitting.bundle(tmp_path)
    collect(school, [tmp_path], exam.case_set.id, [exam.key])
    assert mark(school, exam).to_settle == 0
    clocks.now = "2026-12-01T10:00:00.000+00:00"
    sitting.look_back(sitting.desk(RecordingPlayer(), UNIVERSES), sitting.items[0])
    sitting.bundle(tmp_path)
    (taken,) = collect(school, [tmp_path], exam.case_set.id, [exam.key])
    assert taken.fate is Fate.NEW
    assert mark(school, exam).to_settle == 0  # time was up: nothing to ask about
    clocks.now = "2026-12-01T08:40:00.000+00:00"
    work_through(sitting, [True])
    sitting.bundle(tmp_path)
    collect(school, [tmp_path], exam.case_set.id, [exam.key])
    marked = mark(school, exam)
    assert (marked.marked, marked.to_settle) == (1, 2)
    assert mark(school, exam).to_settle == 2  # each is noted once
    assert unsettled(school) == [
        "ann, case 2: the station's clock jumped back from 2026-12-01 10:00 to 2026-12-01 08:40.",
        "ann opened a debrief on 2026-12-01 10:00 and went on working after that.",
    ]
    (kept,) = stored_sets(school)
    assert "went on working after that" in report_html(school, kept, "2026-12-02T00:00")
    assert notes_of(school, kept.id) == []
    station.close(), school.close()


def test_looking_at_debriefs_when_all_is_done_is_nothing_to_settle(tmp_path: Path) -> None:
    exam, store = small_set(SMALL.replace("mode: exam", "mode: exam\n  tries: 2")), open_store(None)
    sitting = sitting_of(exam, store)
    work_through(sitting, [False, False, False])
    sitting.look_back(sitting.desk(RecordingPlayer(), UNIVERSES), sitting.items[0])
    sitting.another_try()
    work_through(sitting, [True, True, True])
    read_bundle(sitting.bundle(tmp_path).read_bytes(), exam.case_set.id, exam.key)
    marked = mark(store, exam)
    assert (marked.marked, marked.refused, marked.to_settle) == (6, {}, 0)
    store.close()


def test_a_look_back_that_was_cut_out_leaves_a_gap(tmp_path: Path) -> None:
    exam, store = small_set(SMALL.replace("mode: exam", "mode: exam\n  tries: 2")), open_store(None)
    sitting = sitting_of(exam, store)
    work_through(sitting, [True, True, True])
    sitting.look_back(sitting.desk(RecordingPlayer(), UNIVERSES), sitting.items[0])
    sitting.another_try()
    work_through(sitting, [True])
    with store.writing() as connection:
        connection.exec_driver_sql("DELETE FROM event WHERE kind = 'looked_back'")
    with pytest.raises(BundleError, match="altered"):
        read_bundle(sitting.bundle(tmp_path).read_bytes(), exam.case_set.id, exam.key)
    store.close()


def test_a_look_back_from_a_station_that_was_left_takes_nothing_away(tmp_path: Path) -> None:
    """It comes after the next attempt was begun elsewhere, from the end that the attempt had without it."""
    exam, store = small_set(SMALL.replace("mode: exam", "mode: exam\n  tries: 2")), open_store(None)
    sitting = sitting_of(exam, store)
    work_through(sitting, [True, True, True])
    third = store.in_set(exam.case_set.id, "ann")[-1]
    sitting.another_try()
    work_through(sitting, [True])
    events, links = store.logged(third.id)
    look = EventRecord(len(events) + 1, EventKind.LOOKED_BACK, events[-1].at, {"item": 1, "left": 0})
    store.append(third.id, look, next_link(exam.key.derived("chain"), links[-1], look))
    read_bundle(sitting.bundle(tmp_path).read_bytes(), exam.case_set.id, exam.key)
    store.close()


def test_dates_before_the_opening_and_dates_to_come_and_open_exams_are_told() -> None:
    exam, store = small_set(DATED), open_store(None)
    clocks = Clocks("2026-12-01T08:30:00.000+00:00")
    sitting = Sitting(exam, "ann", store, clocks.wall, clocks.steady, ("memory", "isolated"))
    desk = sitting.desk(RecordingPlayer(), UNIVERSES)
    item = sitting.start_case(desk)
    clocks.now = "2026-12-01T07:59:30.000+00:00"
    desk.commit(right_finding(item))
    clocks.now = "2026-12-01T09:00:00.000+00:00"
    desk.hand_in()
    sitting.refresh()
    work_through(sitting, [True])
    assert mark(store, exam).to_settle == 3
    (kept,) = stored_sets(store)
    assert irregularity_lines(store, kept, "2026-12-01T08:49:00.000+00:00") == [
        "ann, case 1: dated 2026-12-01 07:59, before the set opened.",
        "ann, case 1: the station's clock jumped back from 2026-12-01 08:30 to 2026-12-01 07:59.",
        "ann, case 1: handed in on 2026-12-01 09:00, which is in the future by this computer's clock.",
        "ann, case 2: handed in on 2026-12-01 09:00, which is in the future by this computer's clock.",
        "Other programs could read the exam where this learner worked: ann.",
    ]
    assert len(unsettled(store)) == 3
    store.close()
