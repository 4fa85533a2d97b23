"""The store: append-only, durable, resumable after a kill at any point."""

from __future__ import annotations

import os
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest

from tests.desk_hands import RIGHT_ANSWER, new_desk, resumed_desk, type_in
from trainer.errors import DamagedError, MissingHereError
from trainer.practice.attempt.event_record import EventKind, EventRecord
from trainer.records.store.store import open_store

NAME = "faint_hum_on_three"
LINES = ("hear", "codes", "pair module 3", *RIGHT_ANSWER, "repair connector 3 return", "yes", "retest")


def test_an_attempt_stopped_after_any_line_goes_on_where_it_was(tmp_path: Path) -> None:
    for stop in (1, 2, 3, 11, 12):
        store = open_store(tmp_path / str(stop))
        desk = new_desk(NAME, store)
        type_in(desk, *LINES[:stop])
        store.close()
        again = resumed_desk(NAME, open_store(tmp_path / str(stop)))
        assert again.attempt == desk.attempt
        assert "You worked on this case before" in type_in(again, "card")


def test_an_event_is_never_stored_twice(tmp_path: Path) -> None:
    store = open_store(tmp_path)
    new_desk(NAME, store)
    with pytest.raises(ValueError, match="stored already"):
        store.append("a1", EventRecord(1, EventKind.WORKED, "2026-01-01T00:00:00+00:00", {}))
    assert [event.number for event in store.events("a1")] == [1]


def test_a_closed_attempt_is_not_resumed(tmp_path: Path) -> None:
    store = open_store(tmp_path)
    desk = new_desk(NAME, store)
    type_in(desk, "hear", *RIGHT_ANSWER, "debrief")
    assert not store.open_attempts("me", NAME, "any")
    assert store.solved_names("me") == {NAME}


WRITER = """
import sys
from pathlib import Path
from trainer.practice.attempt.event_record import EventKind, EventRecord
from trainer.records.store.log_rows import AttemptRow
from trainer.records.store.store import open_store
store = open_store(Path(sys.argv[1]))
at = "2026-01-01T00:00:00+00:00"
store.begin(AttemptRow("k", "me", "shipped", "x", "d", "d", 1, "0", at), EventRecord(1, EventKind.STARTED, at, {}))
number = 1
while True:
    number += 1
    store.append("k", EventRecord(number, EventKind.WORKED, at, {"n": number}))
    print(number, flush=True)
"""


@pytest.mark.parametrize("moment_s", [0.05, 0.2, 0.4])
def test_killed_while_writing_nothing_committed_is_lost(tmp_path: Path, moment_s: float) -> None:
    writer = subprocess.Popen(
        [sys.executable, "-c", WRITER, str(tmp_path)], stdout=subprocess.PIPE, text=True, cwd=os.getcwd()
    )
    assert writer.stdout is not None
    first = writer.stdout.readline()
    time.sleep(moment_s)
    writer.send_signal(signal.SIGKILL)
    told = [int(line) for line in (first + writer.stdout.read()).split()]
    writer.wait()
    writer.stdout.close()
    stored = [event.number for event in open_store(tmp_path).events("k")]
    assert stored == list(range(1, len(stored) + 1))
    assert len(stored) >= max(told)


def test_a_folder_that_is_a_file_and_a_foreign_file_are_told(tmp_path: Path) -> None:
    file = tmp_path / "file"
    file.write_text("x")
    with pytest.raises(MissingHereError):
        open_store(file)
    (tmp_path / "attempts.sqlite3").write_bytes(b"not a database at all" * 100)
    with pytest.raises(DamagedError) as caught:
        open_store(tmp_path)
    assert caught.value.key == "store_damaged"


def test_a_store_of_a_later_version_is_refused(tmp_path: Path) -> None:
    import sqlite3

    open_store(tmp_path).close()
    with sqlite3.connect(tmp_path / "attempts.sqlite3") as raw:
        raw.execute("update schema_version set version = 99")
    raw.close()
    with pytest.raises(MissingHereError) as caught:
        open_store(tmp_path)
    assert caught.value.key == "store_version"
