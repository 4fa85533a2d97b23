"""Opening a store: made whole, brought up from an older version, shared by many at once, refused where it is newer."""

from __future__ import annotations

import gc
import sqlite3
import subprocess
import sys
import threading
from pathlib import Path

import pytest
from alembic.autogenerate import compare_metadata
from alembic.migration import MigrationContext
from sqlalchemy import event

from trainer.errors import DamagedError, MissingHereError
from trainer.practice.attempt.event_record import EventKind, EventRecord
from trainer.records.store.log_rows import AttemptRow
from trainer.records.store.store import open_store
from trainer.records.store.tables import SCHEMA_VERSION, metadata
from trainer.words import message_of

# the tables as the first released kind of store had them
FIRST = """
CREATE TABLE schema_version (version INTEGER NOT NULL);
INSERT INTO schema_version VALUES (1);
CREATE TABLE attempt (id VARCHAR(36) NOT NULL, learner VARCHAR(80) NOT NULL, case_source VARCHAR(16) NOT NULL,
  case_name TEXT NOT NULL, profile_digest VARCHAR(64) NOT NULL, case_digest VARCHAR(64) NOT NULL, seed INTEGER NOT NULL,
  program_version VARCHAR(20) NOT NULL, started_at VARCHAR(40) NOT NULL, CONSTRAINT pk_attempt PRIMARY KEY (id));
CREATE TABLE event (id INTEGER NOT NULL, attempt_id VARCHAR(36) NOT NULL, number INTEGER NOT NULL, kind VARCHAR(20) NOT NULL,
  at VARCHAR(40) NOT NULL, data TEXT NOT NULL, CONSTRAINT pk_event PRIMARY KEY (id),
  CONSTRAINT uq_event_attempt_id UNIQUE (attempt_id, number),
  CONSTRAINT fk_event_attempt_id FOREIGN KEY(attempt_id) REFERENCES attempt (id));
INSERT INTO attempt VALUES ('a1', 'ann', 'shipped', 'faint_hum_on_three', 'p', 'c', 7, '0.1.0', '2026-11-01T08:00:00.000+00:00');
INSERT INTO event VALUES (1, 'a1', 1, 'started', '2026-11-01T08:00:00.000+00:00', '{"version": "0.1.0"}');
"""


def row(name: str = "b1") -> AttemptRow:
    return AttemptRow(name, "ben", "shipped", "x", "p", "c", 1, "0", "2026-11-02T08:00:00.000+00:00")


def test_an_older_store_is_brought_up_with_everything_in_it(tmp_path: Path) -> None:
    old = sqlite3.connect(tmp_path / "attempts.sqlite3")
    old.executescript(FIRST)
    old.close()
    store = open_store(tmp_path)
    assert store.events("a1") == [
        EventRecord(1, EventKind.STARTED, "2026-11-01T08:00:00.000+00:00", {"version": "0.1.0"})
    ]
    assert store.links("a1") == [""]
    assert store.unfinished("ann")[0].set_id == ""
    store.begin(row(), EventRecord(1, EventKind.STARTED, "2026-01-01T00:00:00+00:00", {}), "link")
    assert len(store.id) == 36
    store.close()
    again = open_store(tmp_path)
    assert again.count() == 2
    again.close()


@pytest.mark.parametrize("old", [False, True], ids=["new", "older"])
def test_the_steps_lead_to_the_tables_that_the_program_knows(tmp_path: Path, old: bool) -> None:
    if old:
        first = sqlite3.connect(tmp_path / "attempts.sqlite3")
        first.executescript(FIRST)
        first.close()
    store = open_store(tmp_path)
    with store.engine.connect() as connection:
        differing = compare_metadata(MigrationContext.configure(connection), metadata)
    store.close()
    # SQLite holds no text to a length, so the older store's 80 characters for a name stay as they are written
    told = [one for one in differing if "alembic_version" not in str(one) and "VARCHAR(length=80)" not in str(one)]
    assert told == []


def test_a_newer_store_is_left_alone(tmp_path: Path) -> None:
    open_store(tmp_path).close()
    newer = sqlite3.connect(tmp_path / "attempts.sqlite3")
    newer.execute("UPDATE schema_version SET version = ?", (SCHEMA_VERSION + 1,))
    newer.commit()
    newer.close()
    with pytest.raises(MissingHereError, match="store_version"):
        open_store(tmp_path)


def test_a_start_that_is_killed_in_the_middle_leaves_a_store_that_opens(tmp_path: Path) -> None:
    """The tables are made in one transaction: none of them or all."""
    program = (
        "import os, sys; from alembic import op; from trainer.records.store import database\n"
        "op.add_column = lambda *a, **k: os.kill(os.getpid(), 9)\n"  # killed in the second step
        "database.upgrade_tables(database.engine_for('sqlite:///' + sys.argv[1]))\n"
    )
    path = tmp_path / "attempts.sqlite3"
    done = subprocess.run([sys.executable, "-c", program, str(path)], capture_output=True, check=False)
    assert done.returncode == -9, done.stderr
    store = open_store(tmp_path)
    assert store.count() == 0
    store.close()


def test_many_that_open_a_new_store_together_make_it_once(tmp_path: Path) -> None:
    failures: list[Exception] = []

    def open_it() -> None:
        try:
            open_store(tmp_path).close()
        except Exception as error:  # told below
            failures.append(error)

    threads = [threading.Thread(target=open_it) for _number in range(6)]
    for one in threads:
        one.start()
    for one in threads:
        one.join()
    assert failures == []


def test_a_file_that_is_no_database_is_told(tmp_path: Path) -> None:
    (tmp_path / "attempts.sqlite3").write_bytes(b"not a database at all" * 100)
    with pytest.raises(DamagedError, match="store_damaged"):
        open_store(tmp_path)


@pytest.mark.parametrize("place", ["a folder", "memory"])
def test_a_store_that_nobody_uses_any_more_lets_go_of_the_database(place: str, tmp_path: Path) -> None:
    store = open_store(tmp_path if place == "a folder" else None)
    closed: list[object] = []
    event.listen(store.engine, "close", lambda connection, record: closed.append(connection))
    assert store.count() == 0
    del store
    gc.collect()
    assert len(closed) == 1


CRASH = """
import os, sys
from pathlib import Path
from trainer.practice.attempt.event_record import EventKind, EventRecord
from trainer.records.store.log_rows import AttemptRow
from trainer.records.store.store import open_store

store = open_store(Path(sys.argv[1]))
at = "2026-11-02T08:00:00.000+00:00"
for number in range(300):
    row = AttemptRow(f"a{number}", "ben", "shipped", "x", "p", "c", 1, "0", at)
    store.begin(row, EventRecord(1, EventKind.STARTED, at, {"why": "x" * 500}))
os._exit(9)
"""


def crashed(folder: Path) -> Path:
    """Fill a store in a program that ends without closing it, and return its file; the write-ahead log stays."""
    ended = subprocess.run([sys.executable, "-c", CRASH, str(folder)], check=False)
    assert ended.returncode == 9
    assert (folder / "attempts.sqlite3-wal").stat().st_size > 0
    return folder / "attempts.sqlite3"


def test_a_store_that_a_crash_left_whole_opens_with_everything_in_it(tmp_path: Path) -> None:
    crashed(tmp_path)
    store = open_store(tmp_path)
    assert store.count() == 300
    store.close()


def test_a_store_that_a_crash_left_in_pieces_is_refused_each_time_and_left_alone(tmp_path: Path) -> None:
    path = crashed(tmp_path)
    log = path.with_name("attempts.sqlite3-wal")
    content = bytearray(path.read_bytes())
    pages = len(content) // 4096
    assert pages > 40
    for page in range(pages - 20, pages):  # where rows are; opening alone would not look at them
        content[page * 4096 : page * 4096 + 64] = b"\xa5" * 64
    path.write_bytes(content)
    # a log of another file's generation: SQLite ignores it, as after a disk that lost the order of its writes
    log.write_bytes(log.read_bytes()[:32])
    for _time in range(2):
        with pytest.raises(DamagedError) as refused:
            open_store(tmp_path)
        assert refused.value.key == "store_damaged"
        assert "not closed properly" in message_of(refused.value)
    assert path.read_bytes() == bytes(content)
