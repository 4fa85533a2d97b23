"""A backup: what is written can be put back, what was edited is refused whole, and reading it is bounded."""

from __future__ import annotations

import gzip
import hashlib
import json
import tracemalloc
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from tests.records.store.test_damaged import change, filled
from trainer.errors import WrongCallError
from trainer.records.class_report.roster import Person, keep_roster, roster
from trainer.records.store.backup import MOST_LINE, MOST_TIGHT, Rows, restore_backup, write_backup
from trainer.records.store.store import open_store

Lines = list[bytes]


def backed_up(folder: Path) -> Path:
    store = filled()
    assert write_backup(store, folder / "all.gz") == Rows(9, 0)
    store.close()
    return folder / "all.gz"


def edited(path: Path, edit: Callable[[Lines], Lines]) -> None:
    """Edit the lines of a backup and make its sum fit again."""
    *lines, _sum = gzip.decompress(path.read_bytes()).splitlines(keepends=True)
    body = b"".join(edit(lines))
    last = json.dumps({"sha256": hashlib.sha256(body).hexdigest()}).encode() + b"\n"
    path.write_bytes(gzip.compress(body + last))


def put_in(name: str, value: Any, table: str = "event") -> Callable[[Lines], Lines]:
    """Return an edit that puts a value into a column of the last row of a table."""

    def edit(lines: Lines) -> Lines:
        place = max(at for at, line in enumerate(lines) if line.startswith(f'{{"{table}"'.encode()))
        told = json.loads(lines[place])
        told[table][name] = value
        return [*lines[:place], json.dumps(told).encode() + b"\n", *lines[place + 1 :]]

    return edit


EDITS: dict[str, Callable[[Lines], Lines]] = {
    "text for a number": put_in("number", "two"),
    "a number for text": put_in("kind", 7),
    "nothing": put_in("at", None),
    "a list": put_in("data", [["deep"]]),
    "beyond a column": put_in("kind", "x" * 21),
    "beyond all numbers": put_in("number", 2**63),
    "true for a number": put_in("seed", True, "attempt"),
    "one column more": put_in("colour", "red"),
    "an unknown table": lambda lines: [*lines, b'{"users": {"name": "x"}}\n'],
    "two tables": lambda lines: [*lines, b'{"roster": null, "note": null, "x": 1}\n'],
    "a list for a row": lambda lines: [*lines, b'{"event": []}\n'],
    "no JSON": lambda lines: [*lines, b"{\n"],
    "brackets": lambda lines: [*lines, b"[" * 100_000 + b"\n"],
    "not even text": lambda lines: [*lines, b"\xff\xfe\n"],
    "another form": lambda lines: [lines[0].replace(b"backup/1", b"backup/9"), *lines[1:]],
    "no head": lambda lines: lines[1:],
    "half of a letter": put_in("case_name", "\ud800", "attempt"),
}


@pytest.mark.parametrize("edit", EDITS.values(), ids=EDITS)
def test_an_edited_backup_is_refused_and_nothing_of_it_is_put_in(
    tmp_path: Path, edit: Callable[[Lines], Lines]
) -> None:
    path = backed_up(tmp_path)
    edited(path, edit)
    store = open_store(None)
    with pytest.raises(WrongCallError, match="backup_damaged"):
        restore_backup(store, path)
    assert store.count() == 0
    assert store.learners() == ()
    store.close()


def test_a_line_without_an_end_is_not_read_into_memory(tmp_path: Path) -> None:
    path = tmp_path / "all.gz"
    with gzip.open(path, "wb", compresslevel=1) as packed:
        packed.write(b'{"form": "records backup/1", "schema": 2}\n{"event": "')
        for _piece in range(60):
            packed.write(bytes(1_000_000))
    store = open_store(None)
    tracemalloc.start()
    with pytest.raises(WrongCallError, match="backup_damaged"):
        restore_backup(store, path)
    _now, peak = tracemalloc.get_traced_memory()
    tracemalloc.stop()
    assert peak < 8 * MOST_LINE
    store.close()


def test_a_backup_that_unpacks_without_an_end_is_refused(tmp_path: Path) -> None:
    """Every line is a good row, and one after another would fill the disk."""
    path = tmp_path / "all.gz"
    rows = [{"roster": {"learner": str(number), "name": "", "class_name": "y" * 200_000}} for number in range(60)]
    body = b'{"form": "records backup/1", "schema": 2}\n' + b"".join(json.dumps(row).encode() + b"\n" for row in rows)
    last = json.dumps({"sha256": hashlib.sha256(body).hexdigest()}).encode() + b"\n"
    path.write_bytes(gzip.compress(body + last))
    assert len(body) > MOST_TIGHT * path.stat().st_size
    store = open_store(None)
    with pytest.raises(WrongCallError, match="backup_damaged"):
        restore_backup(store, path)
    assert not roster(store)
    store.close()


def test_rows_that_fit_to_no_attempt_or_come_twice_are_left_out_and_counted(tmp_path: Path) -> None:
    """A file that is damaged a little can hold such rows, and a backup of it must still come back."""
    path = backed_up(tmp_path)
    edited(path, lambda lines: [line for line in lines if b'"id": "two"' not in line] + lines[-1:])
    store = open_store(None)
    assert restore_backup(store, path) == Rows(6, 3)
    assert [len(store.events(name)) for name in ("one", "three")] == [2, 2]
    store.close()


def test_damaged_rows_are_left_out_of_a_backup_and_the_rest_comes_back(tmp_path: Path) -> None:
    filled(tmp_path).close()
    change(tmp_path, "UPDATE event SET data = NULL WHERE attempt_id = 'two' AND number = 2",
           "UPDATE attempt SET seed = 'none' WHERE id = 'three'")  # fmt: skip
    store = open_store(tmp_path)
    assert write_backup(store, tmp_path / "all.gz") == Rows(7, 2)
    store.close()
    other = open_store(None)
    assert restore_backup(other, tmp_path / "all.gz") == Rows(5, 2)
    assert len(other.events("one")) == 2
    other.close()


def test_a_store_with_only_a_roster_is_not_restored_over(tmp_path: Path) -> None:
    path, store = backed_up(tmp_path), open_store(None)
    keep_roster(store, [Person("ann", "Ann", "day")])
    with pytest.raises(WrongCallError, match="store_not_empty"):
        restore_backup(store, path)
    assert list(roster(store)) == ["ann"]
    store.close()
