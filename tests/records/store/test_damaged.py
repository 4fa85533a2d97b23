"""Damaged records: told as damaged, left as they are, and everything beside them is still read."""

from __future__ import annotations

import json
import sqlite3
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from tests.exam_sets import Clocks, sitting_of, small_set, work_through
from tests.results import keep, put, result
from trainer.commands.entry import main
from trainer.errors import DamagedError
from trainer.practice.attempt.event_record import EventKind, EventRecord
from trainer.practice.attempt.events import Started
from trainer.records.class_report.report import report_html
from trainer.records.class_report.results import marked_ids, store_set, stored_sets, with_damaged_results
from trainer.records.class_report.sums import class_sums
from trainer.records.store.bundle import bundle_bytes
from trainer.records.store.learner_record import write_record
from trainer.records.store.log_rows import AttemptRow
from trainer.records.store.store import Store, open_store

AT = "2026-11-02T08:00:00.000+00:00"


def row(name: str) -> AttemptRow:
    return AttemptRow(name, "ann", "exercise", "numbering.north_v8.order.1.0", "p", "c", 1, "0", AT)


def entry(*, right: bool) -> dict[str, object]:
    return {
        "practice": {
            "kind": "numbering", "topic": "numbering:order", "class": "numbers", "right": right, "certainty": 0.75,
            "misconception": "", "probes": [], "answers": [["numbering", -1.3, 0.5, right]],
        }
    }  # fmt: skip


def filled(folder: Path | None = None) -> Store:
    """Return a store with three exercises that were answered."""
    store = open_store(folder)
    for name in ("one", "two", "three"):
        store.begin(row(name), EventRecord(1, EventKind.STARTED, AT, {"why": ""}))
        store.append(name, EventRecord(2, EventKind.CLOSED, AT, entry(right=True)))
    return store


def change(folder: Path, *statements: str) -> None:
    """Change the file of a store from outside, whatever its columns allow."""
    raw = sqlite3.connect(folder / "attempts.sqlite3", isolation_level=None)
    raw.execute("PRAGMA writable_schema=ON")
    raw.execute("UPDATE sqlite_master SET sql = replace(sql, 'NOT NULL', '') WHERE name <> 'sqlite_sequence'")
    raw.execute("PRAGMA writable_schema=RESET")
    for statement in statements:
        raw.execute(statement)
    raw.close()


def run(folder: Path, *words: object) -> Result:
    return CliRunner().invoke(main, ["--data", str(folder), *map(str, words)], catch_exceptions=False)


# the version of the tables

VERSIONS = ["NULL", "'two'", "''", "x'32'", "-1", "0", "1.5"]


@pytest.mark.parametrize("version", VERSIONS)
def test_a_store_that_does_not_say_its_version_is_told_and_left_alone(tmp_path: Path, version: str) -> None:
    filled(tmp_path).close()
    change(tmp_path, f"UPDATE schema_version SET version = {version}")
    before = (tmp_path / "attempts.sqlite3").read_bytes()
    with pytest.raises(DamagedError, match="store_damaged"):
        open_store(tmp_path)
    assert (tmp_path / "attempts.sqlite3").read_bytes() == before


SCHEMAS = [
    "DELETE FROM schema_version", "INSERT INTO schema_version VALUES (2)", "DROP TABLE schema_version",
    "UPDATE schema_version SET version = 1",
]  # fmt: skip


@pytest.mark.parametrize("statement", SCHEMAS)
def test_a_store_whose_version_fits_no_tables_is_told_and_left_alone(tmp_path: Path, statement: str) -> None:
    filled(tmp_path).close()
    change(tmp_path, statement)
    before = (tmp_path / "attempts.sqlite3").read_bytes()
    with pytest.raises(DamagedError, match="store_damaged"):
        open_store(tmp_path)
    assert (tmp_path / "attempts.sqlite3").read_bytes() == before


@pytest.mark.parametrize("statement", ["DROP TABLE event", "ALTER TABLE event RENAME COLUMN data TO date"])
def test_a_table_or_column_that_is_missing_is_told_with_the_place_of_the_store(tmp_path: Path, statement: str) -> None:
    filled(tmp_path).close()
    change(tmp_path, statement)
    done = run(tmp_path, "progress", "--learner", "ann")
    assert done.exit_code == 1
    assert f"The records in {tmp_path / 'attempts.sqlite3'} are damaged" in done.stderr


# events

EVENTS = {
    "bad JSON": "data = '{\"practice\": '",
    "no object": "data = '[\"practice\": 1]'",
    "too deep": f"data = '{{\"practice\": {'[' * 3000}'",
    "no number": "data = '{\"practice\": NaN}'",
    "no text": "data = x'7b7d'",
    "nothing": "data = NULL",
    "an unknown kind": "kind = 'baked'",
    "no time": "at = 'yesterday'",
    "no UTF-8": "kind = CAST(x'63ff' AS TEXT)",
    "another number": "number = 7",
    "half a letter": 'data = \'{"practice": "\\ud800"}\'',
    "seconds in words": 'data = \'{"practice": {}, "spent_s": "long"}\'',
}


@pytest.mark.parametrize("damage", EVENTS.values(), ids=EVENTS)
def test_one_damaged_event_hides_no_other_attempt_and_is_named(tmp_path: Path, damage: str) -> None:
    filled(tmp_path).close()
    change(tmp_path, f"UPDATE event SET {damage} WHERE attempt_id = 'two' AND number = 2")
    store = open_store(tmp_path)
    with pytest.raises(DamagedError, match="attempt_damaged"):
        store.events("two")
    assert [len(store.events(name)) for name in ("one", "three")] == [2, 2]
    assert len(store.practised("ann")) >= 2
    assert store.closings("ann") == []
    store.close()
    carried = run(tmp_path, "records", "carry", "--learner", "ann", "-o", tmp_path / "ann.record")
    assert "(2 attempts)" in carried.stdout
    assert "attempt two" in carried.stderr
    assert run(tmp_path, "progress", "--learner", "ann").exit_code == 0


def test_an_attempt_without_events_and_one_of_the_wrong_type_are_left_out(tmp_path: Path) -> None:
    filled(tmp_path).close()
    change(tmp_path, "DELETE FROM event WHERE number = 2", "UPDATE attempt SET seed = 'none' WHERE id = 'one'",
           "DELETE FROM event WHERE attempt_id = 'two'")  # fmt: skip
    store = open_store(tmp_path)
    waiting = store.unfinished("ann", exercises=True)
    assert {one.id for one in waiting} == {"two", "three"}
    assert {one.id: store.started(one) for one in waiting} == {"two": None, "three": Started(why="")}
    assert store.left_out == {"attempt one", "attempt two"}
    assert "2 damaged records were left out (attempt one, attempt two)" in store.left_out_line
    store.close()


def test_a_name_that_is_no_text_does_not_hide_the_others(tmp_path: Path) -> None:
    filled(tmp_path).close()
    change(tmp_path, "UPDATE attempt SET learner = x'00ff' WHERE id = 'one'",
           "UPDATE attempt SET learner = CAST(x'62ff' AS TEXT) WHERE id = 'two'")  # fmt: skip
    store = open_store(tmp_path)
    assert set(store.learners()) == {"ann", "b\ufffd"}
    store.close()


# sets


def worked(folder: Path) -> None:
    store = open_store(folder)
    work_through(sitting_of(small_set(), store, "ann", Clocks()), [True, True])
    store.close()


def test_a_set_with_a_damaged_attempt_is_not_worked_or_bundled_past_it(tmp_path: Path) -> None:
    """Left out, the same case could be worked once more, and the gap would look like forgery."""
    worked(tmp_path)
    change(tmp_path, """UPDATE event SET data = '{"spent_s": "long"}' WHERE id = 2""")
    store, one = open_store(tmp_path), small_set()
    with pytest.raises(DamagedError, match="attempt_damaged"):
        sitting_of(one, store, "ann")
    with pytest.raises(DamagedError, match="attempt_damaged"):
        bundle_bytes(store, one.case_set.id, one.case_set.name, "ann", one.key, AT)
    store.close()


def test_a_damaged_result_does_not_count_and_is_made_again(tmp_path: Path) -> None:
    store = open_store(tmp_path)
    kept = keep(store, 2)
    put(store, [result(learner, item, 90.0) for learner in ("ann", "ben") for item in (1, 2)])
    store.close()
    change(tmp_path, "UPDATE result SET place = 'the moon' WHERE learner = 'ann' AND item = 1",
           "UPDATE result SET mark = 'good' WHERE learner = 'ben' AND item = 2")  # fmt: skip
    store = open_store(tmp_path)
    whole = with_damaged_results(store, stored_sets(store)[0])
    assert class_sums(store, whole).results == 2
    assert "the moon" not in report_html(store, whole, AT)
    assert len(store.left_out) == 2
    assert len(marked_ids(store, kept.id)) == 2  # the other two are marked again
    store.close()
    done = run(tmp_path, "records", "report", "-o", tmp_path / "report.html")
    assert done.exit_code == 0
    assert "2 damaged records were left out" in done.stderr


def test_what_is_kept_of_a_set_is_taken_from_its_file_again_where_it_is_damaged(tmp_path: Path) -> None:
    worked(tmp_path)
    store, case_set = open_store(tmp_path), small_set().case_set
    store_set(store, case_set)
    kept = stored_sets(store)
    store.close()
    change(tmp_path, "UPDATE class_set SET weights = '[1.0, \"x\"]', keep_until = '2099-01-01'")
    store = open_store(tmp_path)
    assert stored_sets(store) == ()
    assert store.left_out == {f"set {case_set.id}"}
    store_set(store, case_set)
    assert [(one.weights, one.keep_until) for one in stored_sets(store)] == [(kept[0].weights, "2099-01-01")]
    store.close()


def test_what_is_written_of_damaged_records_can_be_read(tmp_path: Path) -> None:
    filled(tmp_path).close()
    change(tmp_path, """UPDATE event SET data = '{"why": 1e999}' WHERE attempt_id = 'two' AND number = 2""")
    store = open_store(tmp_path)
    assert write_record(store, tmp_path / "ann.record", "ann", AT) == 2
    store.close()
    assert "Infinity" not in (tmp_path / "ann.record").read_text("ascii")
    done = run(tmp_path / "elsewhere", "--json", "records", "take", "--learner", "ann", tmp_path / "ann.record")
    assert json.loads(done.stdout)["new"] == 2
