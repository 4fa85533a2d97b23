"""Damages the file of a store, and does with it what people do: `python -m tests.fuzz.store_mutants COUNT [SEED]`."""

from __future__ import annotations

import sqlite3
from collections.abc import Callable, Iterator
from contextlib import suppress
from dataclasses import dataclass
from functools import partial
from pathlib import Path

import numpy as np

from tests.fuzz import uses
from tests.fuzz.figures import Figures, Mutant, counted, main
from tests.fuzz.values import HOSTILE, damaged_json, picked
from tests.fuzz.world import World, copied

TABLES = ("attempt", "event", "event", "event", "class_set", "result", "result", "note", "roster", "store_identity")
JSON_COLUMNS = {("event", "data"), ("class_set", "weights")}
VERSIONS = (None, "two", "", "1", "2", b"2", -1, 0, 1, 1.5, 2.5, 3, 99, 2**40, 2**63 - 1, "2026", 1e300)

Damage = Callable[[np.random.Generator, sqlite3.Connection], str]


def _without_constraints(raw: sqlite3.Connection, *, types_too: bool) -> None:
    """Let every column hold anything, as a file can that was changed from outside."""
    raw.execute("PRAGMA writable_schema=ON")
    for old, new in [
        ("NOT NULL", ""),
        *([("VARCHAR", "BLOB"), ("TEXT", "BLOB"), ("INTEGER", "BLOB"), ("FLOAT", "BLOB")] if types_too else []),
    ]:
        raw.execute(
            "UPDATE sqlite_master SET sql = replace(sql, ?, ?) WHERE type = 'table' AND name <> 'event'", (old, new)
        )
        if old == "NOT NULL" or old in ("VARCHAR", "TEXT"):
            raw.execute(
                "UPDATE sqlite_master SET sql = replace(sql, ?, ?) WHERE type = 'table' AND name = 'event'", (old, new)
            )
    raw.execute("PRAGMA writable_schema=RESET")


def _row(rng: np.random.Generator, raw: sqlite3.Connection, table: str) -> int:
    rows = [rowid for (rowid,) in raw.execute(f"SELECT rowid FROM {table}")]
    return int(picked(rng, rows))


def _columns(raw: sqlite3.Connection, table: str) -> list[str]:
    """Return a table's columns, the one that is the row's number in the file left out: that takes nothing but a number."""
    return [row[1] for row in raw.execute(f"PRAGMA table_info({table})") if (table, row[1]) != ("event", "id")]


def a_value(rng: np.random.Generator, raw: sqlite3.Connection) -> str:
    """Change the value of one column of one row."""
    table = picked(rng, TABLES)
    _without_constraints(raw, types_too=bool(rng.integers(2)))
    column, row = picked(rng, _columns(raw, table)), _row(rng, raw, table)
    scalars = [
        one for one in HOSTILE if not isinstance(one, list | dict) and not (isinstance(one, int) and abs(one) >= 2**63)
    ]
    value = picked(rng, [*scalars, b"", b"\xff\xfe\x00", b"\x80text", b"2"])
    raw.execute(f"UPDATE OR IGNORE {table} SET {column} = ? WHERE rowid = ?", (value, row))
    return f"{table}.{column} of row {row} is {value!r:.60}"


def a_text_of_no_letters(rng: np.random.Generator, raw: sqlite3.Connection) -> str:
    """Put bytes that are no UTF-8 into a text."""
    table = picked(rng, TABLES)
    column, row = picked(rng, _columns(raw, table)), _row(rng, raw, table)
    raw.execute(f"UPDATE OR IGNORE {table} SET {column} = CAST(x'61ff62' AS TEXT) WHERE rowid = ?", (row,))
    return f"{table}.{column} of row {row} is no UTF-8"


def some_json(rng: np.random.Generator, raw: sqlite3.Connection) -> str:
    """Damage the JSON of an event, seldom of a set."""
    table, column = ("class_set", "weights") if rng.integers(12) == 0 else ("event", "data")
    row = _row(rng, raw, table)
    ((written,),) = raw.execute(f"SELECT {column} FROM {table} WHERE rowid = ?", (row,))
    new, did = damaged_json(rng, written)
    raw.execute(f"UPDATE {table} SET {column} = ? WHERE rowid = ?", (new, row))
    return f"{table}.{column} of row {row}: {did}"


def the_version(rng: np.random.Generator, raw: sqlite3.Connection) -> str:
    """Change, double or take away what says which version the tables are of."""
    _without_constraints(raw, types_too=bool(rng.integers(2)))
    kind = int(rng.integers(5))
    if kind == 0:
        raw.execute("DELETE FROM schema_version")
        return "no row in schema_version"
    value = picked(rng, VERSIONS)
    if kind == 1:
        raw.execute("INSERT INTO schema_version VALUES (?)", (value,))
        return f"a second version {value!r}"
    raw.execute("UPDATE schema_version SET version = ?", (value,))
    return f"version {value!r}"


def a_table(rng: np.random.Generator, raw: sqlite3.Connection) -> str:
    """Take a table or a column away, or give it another name."""
    table = picked(rng, (*TABLES, "schema_version", "delivery", "alembic_version"))
    raw.execute("PRAGMA foreign_keys=OFF")
    raw.execute("PRAGMA legacy_alter_table=ON")
    kind = int(rng.integers(3))
    if kind == 0:
        raw.execute(f"DROP TABLE {table}")
        return f"no table {table}"
    if kind == 1:
        raw.execute(f"ALTER TABLE {table} RENAME TO {table}_old")
        return f"{table} has another name"
    column = picked(rng, _columns(raw, table))
    raw.execute(f"ALTER TABLE {table} RENAME COLUMN {column} TO {column}_old")
    return f"{table}.{column} has another name"


def some_rows(rng: np.random.Generator, raw: sqlite3.Connection) -> str:
    """Take rows away, or swap the values of a column between two of them."""
    table = picked(rng, TABLES)
    if rng.integers(2):
        row = _row(rng, raw, table)
        raw.execute(f"DELETE FROM {table} WHERE rowid = ?", (row,))
        return f"{table} without row {row}"
    column, one, other = picked(rng, _columns(raw, table)), _row(rng, raw, table), _row(rng, raw, table)
    ((first,),) = raw.execute(f"SELECT {column} FROM {table} WHERE rowid = ?", (one,))
    raw.execute(f"UPDATE OR IGNORE {table} SET {column} = ? WHERE rowid = ?", (first, other))
    return f"{table}.{column} of row {one} copied to row {other}"


def the_order(rng: np.random.Generator, raw: sqlite3.Connection) -> str:
    """Give events other numbers or kinds."""
    row = _row(rng, raw, "event")
    if rng.integers(2):
        raw.execute("UPDATE event SET number = number + 100 WHERE rowid = ?", (row,))
        return f"event {row} numbered far away"
    kinds = [
        "started",
        "heard",
        "codes_read",
        "measured",
        "worked",
        "suspected",
        "hinted",
        "found",
        "repaired",
        "retested",
        "closed",
        "resumed",
        "away",
        "voided",
    ]
    kind = picked(rng, kinds)
    raw.execute("UPDATE event SET kind = ? WHERE rowid = ?", (kind, row))
    return f"event {row} is {kind}"


IN_ROWS = (a_value, some_json, the_order, a_text_of_no_letters)
LEAST_CARRIED = 4
"""Of a learner's five attempts one may be lost by one row."""

IN_TABLES: tuple[Damage, ...] = (
    a_value, a_value, a_value, some_json, some_json, some_json, the_version, a_table, some_rows, the_order, a_text_of_no_letters,
)  # fmt: skip


def in_bytes(rng: np.random.Generator, path: Path) -> str:
    """Damage the file itself: bytes flipped, pages emptied or exchanged, the end cut off or something added."""
    content = bytearray(path.read_bytes())
    kind, page = int(rng.integers(6)), 4096
    pages = len(content) // page
    if kind == 0:
        size = int(rng.integers(len(content)))
        del content[size:]
        did = f"cut at {size}"
    elif kind == 1:
        one, other = (int(rng.integers(pages)) * page for _page in range(2))
        content[one : one + page], content[other : other + page] = (
            content[other : other + page],
            content[one : one + page],
        )
        did = f"pages {one} and {other} exchanged"
    elif kind == 2:
        one = int(rng.integers(pages)) * page
        content[one : one + page] = bytes(page)
        did = f"page {one} empty"
    elif kind == 3:
        content[:100] = rng.bytes(100)
        did = "another head"
    else:
        used = [place for place, byte in enumerate(content) if byte]
        places = [int(picked(rng, used)) for _place in range(int(rng.integers(1, 9)))]
        for place in places:
            content[place] ^= 1 << int(rng.integers(8))
        did = f"bits flipped at {places}"
    path.write_bytes(bytes(content))
    return did


@dataclass(frozen=True, slots=True)
class Damaged:
    """What was done to a store; `one_row` where no more than a row, or two, can be affected."""

    described: str
    one_row: bool


def damage(rng: np.random.Generator, path: Path) -> Damaged:
    """Damage a store's file in one way; return what was done."""
    if rng.integers(5) == 0:
        return Damaged(in_bytes(rng, path), one_row=False)
    raw = sqlite3.connect(path, isolation_level=None)
    try:
        deed = picked(rng, IN_TABLES)
        return Damaged(deed(rng, raw), one_row=deed in IN_ROWS)
    finally:
        raw.close()


def used(rng: np.random.Generator, world: World, done: Damaged) -> bool:
    """Do some of what people do with a damaged store; tell whether nothing of it was refused."""
    said = uses.Said()
    before = world.database.read_bytes()
    wanted = [uses.carry, *(picked(rng, uses.READING) for _use in range(2))]
    with suppress(uses.RefusedError):
        for use in wanted:
            use(world, said)
        assert world.database.read_bytes() == before, "reading changed the store"
        assert not done.one_row or said.carried >= LEAST_CARRIED, f"only {said.carried} attempts were read"
        picked(rng, uses.WRITING)(world, said)
    return said.good


def run(seed: int, count: int, world: World, folder: Path) -> Figures:
    """Damage so many copies of a store and use them."""

    def mutants() -> Iterator[Mutant]:
        for number in range(count):
            rng = np.random.default_rng([seed, number])
            with copied(world, folder / "mutant") as copy:
                done = damage(rng, copy.database)
                yield done.described, partial(used, rng, copy, done)

    return counted("store", seed, mutants())


if __name__ == "__main__":
    main(run)
