"""Bundles and what becomes of them: each told once, nothing twice, nothing lost."""

from __future__ import annotations

import shutil
from collections import Counter
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
)
from tests.special_files import pipe, without_waiting
from tests.universes import UNIVERSES
from trainer.desk.caching_solver import CachingSolver
from trainer.practice.attempt.event_json import outcome_json
from trainer.practice.attempt.event_record import EventKind, EventRecord
from trainer.practice.attempt.outcome import Outcome
from trainer.reasoning.model_version import MODEL_VERSION
from trainer.records.class_report.collect import collect, salts_in
from trainer.records.class_report.learner_sums import learner_sums
from trainer.records.class_report.marking import Marked, Marker, Refusal, mark_set
from trainer.records.class_report.notes import Note, add_note, answer_of, other_answers
from trainer.records.class_report.report import report_html
from trainer.records.class_report.results import recount, stored_sets
from trainer.records.class_report.sums import class_sums
from trainer.records.store.bundle import BundleError, Fate, read_bundle
from trainer.records.store.chain import next_link
from trainer.records.store.store import Store, open_store
from trainer.sets.sealed import key_of, open_key_of, salt_of_set
from trainer.sets.set_access import OpenedSet, keys_of

SOLVER = CachingSolver()


@pytest.fixture(scope="module")
def stick(tmp_path_factory: pytest.TempPathFactory) -> tuple[OpenedSet, Path]:
    """Three learners have worked a sealed exam at two stations; their bundles lie on a stick."""
    folder = tmp_path_factory.mktemp("stick")
    _path, exam = sealed_set(tmp_path_factory.mktemp("set"))
    for station, learners in enumerate((("ann", "ben"), ("cid",))):
        store = open_store(None)
        for number, learner in enumerate(learners):
            sitting = sitting_of(exam, store, learner)
            work_through(sitting, [True, number == 0, station == 0])
            sitting.bundle(folder)
        store.close()
    return exam, folder


def marker_for(exam: OpenedSet) -> Marker:
    return Marker(exam.case_set, [exam.key], SOLVER, UNIVERSES, {})


def mark(store: Store, exam: OpenedSet, *, again: bool = False) -> Marked:
    return mark_set(store, exam.case_set, [exam.key], SOLVER, UNIVERSES, again=again)


def test_forty_bundles_of_every_sort_are_each_told_once_and_again_change_nothing(stick, tmp_path: Path) -> None:
    exam, folder = stick
    good = sorted(folder.glob("*.results"))
    assert len(good) == 3
    other_set, other_key = tmp_path / "other_set", tmp_path / "other_key"
    store = open_store(None)
    elsewhere = small_set(SMALL.replace("First week", "Second week"))
    sitting = sitting_of(elsewhere, store)
    work_through(sitting, [True])
    other_set_file = sitting.bundle(other_set)
    _path, guessed = sealed_set(tmp_path, passphrase="another passphrase altogether")
    sitting = sitting_of(guessed, store, "dot")
    work_through(sitting, [True])
    other_key_file = sitting.bundle(other_key)
    store.close()
    media = tmp_path / "media"
    media.mkdir()
    expected: Counter[Fate] = Counter()

    def put(content: bytes, fate: Fate) -> None:
        (media / f"{sum(expected.values()):02}.results").write_bytes(content)
        expected[fate] += 1

    for path in good:
        put(path.read_bytes(), Fate.NEW)
    for number in range(12):
        put(good[number % 3].read_bytes(), Fate.KNOWN)
    whole = good[0].read_bytes()
    for number in range(8):
        put(whole[: len(whole) * (number + 1) // 9], Fate.CUT_SHORT)
    for number in range(8):
        place = len(whole) * (number + 1) // 9
        put(whole[:place] + bytes([whole[place] ^ 1]) + whole[place + 1 :], Fate.ALTERED)
    put(b"", Fate.CUT_SHORT)
    put(b"not a bundle at all\n", Fate.UNREADABLE)
    for _number in range(3):
        put(other_set_file.read_bytes(), Fate.OTHER_SET)
        put(other_key_file.read_bytes(), Fate.WRONG_KEY)
    put(good[1].read_bytes(), Fate.KNOWN)
    assert sum(expected.values()) == 40
    before = {path: path.read_bytes() for path in media.iterdir()}
    for path in media.iterdir():
        path.chmod(0o444)
    media.chmod(0o555)  # a stick that may only be read

    there = open_store(None)
    first = collect(there, [media], exam.case_set.id, [exam.key])
    assert Counter(one.fate for one in first) == expected
    assert [one.file for one in first] == sorted(str(path) for path in before)
    count = there.count()
    again = collect(there, [media], exam.case_set.id, [exam.key])
    assert Counter(one.fate for one in again) == expected + Counter({Fate.KNOWN: 3}) - Counter({Fate.NEW: 3})
    assert there.count() == count
    media.chmod(0o755)
    assert {path: path.read_bytes() for path in media.iterdir()} == before
    marked = mark(there, exam)
    assert (marked.marked, marked.unfinished, marked.refused) == (9, 0, {})
    there.close()


def test_every_flipped_byte_of_a_bundle_is_seen(stick) -> None:
    exam, folder = stick
    whole = next(folder.glob("*.results")).read_bytes()
    read_bundle(whole, exam.case_set.id, exam.key)
    for place in range(0, len(whole), 7):
        for bit in (0, 5):
            changed = whole[:place] + bytes([whole[place] ^ (1 << bit)]) + whole[place + 1 :]
            with pytest.raises(BundleError):
                read_bundle(changed, exam.case_set.id, exam.key)


def test_marks_are_those_that_the_desk_would_have_given(stick) -> None:
    exam, folder = stick
    store = open_store(None)
    collect(store, [folder], exam.case_set.id, [exam.key])
    mark(store, exam)
    (kept,) = stored_sets(store)
    marks = {row.learner: (row.right, row.cases) for row in learner_sums(store, kept)}
    assert marks == {"ann": (3, 3), "ben": (2, 3), "cid": (2, 3)}
    sums = class_sums(store, kept)
    assert sums.detected == {
        (0, 0): 2,
        (0, 1): 1,
        (1, 0): 1,
        (1, 1): 5,
    }  # ben wrong where it passes, cid misses the bank
    assert sums.certainty == {0.95: (9, 7)}
    assert sums.results == 9
    assert sum(sums.places.values()) == 9
    store.close()


def test_a_plain_copy_of_the_set_collects_with_the_passphrase(stick) -> None:
    exam, folder = stick
    plain = OpenedSet(exam.case_set, open_key_of(exam.case_set.pack), sealed=False)
    keys = keys_of(plain, lambda: PASSPHRASE, salts_in([folder]))
    assert keys == (exam.key,)  # an exam is marked under its passphrase alone
    practice = small_set(SMALL.replace("mode: exam", "mode: practice"))
    assert keys_of(practice, lambda: pytest.fail("asked without need"), []) == (practice.key,)
    assert key_of(PASSPHRASE, salt_of_set(exam.case_set)) == exam.key
    store = open_store(None)
    assert {one.fate for one in collect(store, [folder], exam.case_set.id, keys)} == {Fate.NEW}
    store.close()


def test_a_later_bundle_of_the_same_learner_adds_only_what_is_new(stick, tmp_path: Path) -> None:
    exam, _folder = stick
    station, school = open_store(None), open_store(None)
    sitting = sitting_of(exam, station, "eve")
    work_through(sitting, [True])
    sitting.bundle(tmp_path)
    collect(school, [tmp_path], exam.case_set.id, [exam.key])
    assert mark(school, exam).marked == 1
    work_through(sitting, [True, False])
    sitting.bundle(tmp_path)
    (one,) = collect(school, [tmp_path], exam.case_set.id, [exam.key])
    assert one.fate is Fate.NEW
    assert mark(school, exam).marked == 2
    assert school.count() == station.count()
    station.close(), school.close()


def test_a_void_leaves_the_mark_of_the_rest_and_a_regrade_changes_everybodys(stick) -> None:
    exam, folder = stick
    store = open_store(None)
    collect(store, [folder], exam.case_set.id, [exam.key])
    mark(store, exam)
    (kept,) = stored_sets(store)
    before = {row.learner: row.mark for row in learner_sums(store, kept)}
    add_note(store, kept.id, Note("2026-12-02", "void", "ben", 2, "the loudspeaker had come loose"))
    after = {row.learner: row for row in learner_sums(store, kept)}
    assert after["ben"].cases == 2
    assert after["ben"].mark > before["ben"]  # the wrong one is left out, not counted as nought
    assert after["ann"].mark == before["ann"]
    assert class_sums(store, kept).voided == 1
    # the key of case 3 was wrong: nothing was to be found there
    add_note(store, kept.id, Note("2026-12-03", "answer", "", 3, "circuit_passes"))
    answers = other_answers(store, exam.case_set)
    assert answers == {3: ()}
    mark(store, exam, again=True)
    regraded = {row.learner: row.right for row in learner_sums(store, kept)}
    assert regraded == {"ann": 2, "ben": 1, "cid": 3}
    assert answer_of(exam.case_set, "3 pass_through_connector open return")[0].cylinders == (3,)
    store.close()


def test_attempts_of_another_program_or_another_case_are_refused_with_the_reason(
    stick, monkeypatch: pytest.MonkeyPatch
) -> None:
    exam, folder = stick
    store = open_store(None)
    collect(store, [folder], exam.case_set.id, [exam.key])
    rows = store.all_in_set(exam.case_set.id)
    marker = marker_for(exam)
    events = store.events(rows[0].id)
    older = type(rows[0])(**{**{n: getattr(rows[0], n) for n in rows[0].__dataclass_fields__}, "model": "older"})
    links = store.links(rows[0].id)
    assert isinstance(marker.outcome(rows[0], events, links), Outcome)
    monkeypatch.setattr("trainer.records.class_report.marking.MODEL_VERSION", "another")
    assert marker.outcome(rows[0], events, links) == Refusal("other_model", MODEL_VERSION)
    assert marker.outcome(older, events, links) == Refusal("altered")
    stranger = type(rows[0])(**{**{n: getattr(rows[0], n) for n in rows[0].__dataclass_fields__}, "item": 2})
    assert marker.outcome(stranger, events, links) == Refusal("other_case")
    store.close()


@pytest.mark.parametrize(("counts", "right"), [("first", 0), ("last", 1), ("best", 3)])
def test_the_try_that_the_set_names_counts(counts: str, right: int) -> None:
    text = SMALL.replace("mode: exam", f"mode: exam\n  tries: 3\n  counts: {counts}")
    exam = small_set(text)
    store = open_store(None)
    sitting = sitting_of(exam, store)
    for place, good in enumerate(([False] * 3, [True] * 3, [True, False, False])):
        if place:
            sitting.another_try()
        work_through(sitting, good)
    mark(store, exam)
    (kept,) = stored_sets(store)
    (row,) = learner_sums(store, kept)
    assert (row.cases, row.right) == (3, right)
    recount(store, kept.id)
    assert learner_sums(store, kept) == [row]
    store.close()


def test_a_bundle_is_there_whole_or_not_at_all(stick, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    exam, folder = stick
    shutil.copytree(folder, tmp_path / "stick")
    (path, *_rest) = sorted((tmp_path / "stick").glob("*.results"))
    before = path.read_bytes()
    store = open_store(None)
    sitting = sitting_of(exam, store, "ann")
    work_through(sitting, [True])

    def pulled(_descriptor: int) -> None:
        raise OSError("the stick is gone")

    monkeypatch.setattr("os.fsync", pulled)
    with pytest.raises(Exception, match="file_unwritable"):
        sitting.bundle(tmp_path / "stick")
    assert path.read_bytes() == before
    assert sorted(p.name for p in (tmp_path / "stick").iterdir()) == sorted(p.name for p in folder.iterdir())
    store.close()


def test_the_same_exam_worked_at_two_stations_counts_once_and_is_told(tmp_path: Path) -> None:
    _path, exam = sealed_set(tmp_path)
    school = open_store(None)
    for place, right in (("first", [True, False, False]), ("second", [True, True, True])):
        station = open_store(None)
        clocks = Clocks(f"2026-12-0{1 if place == 'first' else 2}T08:00:00.000+00:00")
        sitting = sitting_of(exam, station, "ann", clocks)
        work_through(sitting, right)
        sitting.bundle(tmp_path / place)
        station.close()
    collect(school, [tmp_path / "second", tmp_path / "first"], exam.case_set.id, [exam.key])
    mark(school, exam)
    (kept,) = stored_sets(school)
    (row,) = learner_sums(school, kept)
    assert (row.cases, row.right) == (3, 1)  # as it was handed in first
    assert class_sums(school, kept).repeated == 3
    assert "3 results do not count, because the learner had already handed in the same case " in report_html(
        school, kept, "2026-12-03T00:00"
    )
    school.close()


def test_events_changed_in_a_stations_database_are_not_marked(tmp_path: Path) -> None:
    """What marks a shared store trusts no row: the chain is looked at, and an exam's own points are never taken."""
    exam = small_set()
    store = open_store(None)
    sitting = sitting_of(exam, store)
    work_through(sitting, [False, False])
    first = store.in_set(exam.case_set.id, "ann")[0]
    with store.writing() as connection:
        connection.exec_driver_sql(
            "UPDATE event SET data = ? WHERE attempt_id = ? AND kind = 'closed'", ('{"points": 100.0}', first.id)
        )
    marked = mark(store, exam)
    assert (marked.marked, dict(marked.refused)) == (1, {Refusal("altered"): 1})
    store.close()


def test_an_attempt_that_was_taken_away_leaves_a_gap(tmp_path: Path) -> None:
    exam = small_set()
    store = open_store(None)
    sitting = sitting_of(exam, store)
    work_through(sitting, [True, False, True])
    second = store.in_set(exam.case_set.id, "ann")[1]
    with store.writing() as connection:
        connection.exec_driver_sql("DELETE FROM event WHERE attempt_id = ?", (second.id,))
        connection.exec_driver_sql("DELETE FROM attempt WHERE id = ?", (second.id,))
    content = sitting.bundle(tmp_path).read_bytes()
    with pytest.raises(BundleError, match="altered"):
        read_bundle(content, exam.case_set.id, exam.key)
    store.close()


FORGED = [
    {"points": "x"}, {"points": 900.0}, {"certainty": 0.6}, {"places": ["moon"]}, {"misconception": "nope"},
    {"cylinders": ["3"]}, {"plays": 1.5}, {"said_kinds": ["magic"]}, {"best_minutes": float("nan")},
]  # fmt: skip


@pytest.fixture(scope="module")
def practised_well() -> dict:
    """What closes the first case of practice when it was answered rightly."""
    sitting = sitting_of(small_set(SMALL.replace("mode: exam", "mode: practice")), open_store(None))
    desk, item = seated(sitting)
    desk.commit(right_finding(item))
    return outcome_json(desk.debrief().outcome)


@pytest.mark.parametrize("change", FORGED, ids=str)
def test_practice_whose_own_result_makes_no_sense_is_damaged_and_stops_nothing(
    practised_well: dict, change: dict
) -> None:
    """Without a passphrase anybody can sign: what is taken over is looked at first."""
    practice = small_set(SMALL.replace("mode: exam", "mode: practice"))
    store = open_store(None)
    sitting = sitting_of(practice, store)
    desk = sitting.desk(RecordingPlayer(), UNIVERSES)
    desk.commit(right_finding(sitting.start_case(desk)))
    events, links = store.logged(desk.attempt_id)
    end = EventRecord(len(events) + 1, EventKind.CLOSED, events[-1].at, {**practised_well, **change})
    store.append(desk.attempt_id, end, next_link(practice.key.derived("chain"), links[-1], end))
    marked = mark(store, practice)
    assert (marked.marked, dict(marked.refused)) == (0, {Refusal("damaged"): 1})
    store.close()


def test_a_heavy_case_decides_which_try_is_best() -> None:
    text = SMALL.replace("mode: exam", "mode: exam\n  tries: 2").replace(
        "case: faint_hum_on_three", "case: faint_hum_on_three\n    weight: 10"
    )
    exam = small_set(text)
    store = open_store(None)
    sitting = sitting_of(exam, store)
    work_through(sitting, [True, False, False])
    sitting.another_try()
    work_through(sitting, [False, True, True])
    mark(store, exam)
    (kept,) = stored_sets(store)
    (row,) = learner_sums(store, kept)
    assert row.right == 1
    assert row.mark > 50.0
    store.close()


@without_waiting
def test_pipes_and_devices_on_a_stick_are_told_in_a_line_each_and_the_rest_goes_on(stick, tmp_path: Path) -> None:
    exam, folder = stick
    good = next(folder.iterdir())
    shutil.copy(good, tmp_path / "b.results")
    pipe(tmp_path / "a.results")
    (tmp_path / "c.results").symlink_to("/dev/null")
    assert salts_in([tmp_path]) == {exam.key.salt}
    taken = collect(open_store(None), [tmp_path, tmp_path / "none"], exam.case_set.id, [exam.key])
    assert [one.fate for one in taken] == [Fate.SPECIAL, Fate.NEW, Fate.SPECIAL, Fate.MISSING]
