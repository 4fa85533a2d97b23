"""Export and import a learner's own record, to continue on another machine: everything practised outside sets.

Lines of JSON: a head, each attempt followed by its events, and a last line with the SHA-256 of every byte before it.
That shows damage, not forgery: nothing in it counts for anybody else's marks.
"""

from __future__ import annotations

import contextlib
import hashlib
import json
import unicodedata
from dataclasses import dataclass
from pathlib import Path

from sqlalchemy import func, select

from trainer.cases.files.plain_file import read_plain
from trainer.cases.files.whole_file import write_bytes
from trainer.errors import DamagedError, Problem, ProblemsFoundError, Sentence
from trainer.records.store.chain import canonical
from trainer.records.store.json_lines import attempt_lines, attempts_in
from trainer.records.store.log_rows import UNFIT, AttemptRow
from trainer.records.store.merging import ForkedError, WholeAttempt, merge_attempt
from trainer.records.store.store import Store
from trainer.records.store.tables import attempt_table, event_table
from trainer.words import text

FORM = "learner_record/1"
SUFFIX = ".record"
MOST_BYTES = 64_000_000


@dataclass(frozen=True, slots=True)
class ImportResult:
    """How many attempts of a record were new, known, continued elsewhere (`longer`) or in both places (`apart`).

    Of an attempt that was continued in both places, the version in this store stays.
    """

    new: int
    known: int
    longer: int
    apart: int = 0


def import_lines(taken: ImportResult) -> list[str]:
    """Return the result of an import in words."""
    lines = [text("practice.taken", new=taken.new, known=taken.known, longer=taken.longer)]
    return [*lines, text("practice.apart", n=taken.apart)] if taken.apart else lines


def record_name(learner: str) -> str:
    """Return the file name of a learner's record: the ASCII letters of the name and a hash of it."""
    plain = unicodedata.normalize("NFKD", learner).encode("ascii", "ignore").decode("ascii")
    kept = "".join(one if one.isalnum() else "_" for one in plain.lower())[:40].strip("_")
    return f"{kept or 'learner'}_{hashlib.sha256(learner.encode('utf-8')).hexdigest()[:6]}{SUFFIX}"


def write_record(store: Store, path: Path, learner: str, made_at: str) -> int:
    """Write a learner's record whole; return how many attempts it holds: those that are damaged are left out.

    Raises MissingHereError if it cannot be written.
    """
    attempts = _attempts_of(store, learner)
    lines: list[bytes] = []
    count = 0
    for row in attempts:
        with contextlib.suppress(DamagedError):
            lines += attempt_lines(row, *store.logged(row.id))
            count += 1
    lines.insert(0, canonical({"form": FORM, "learner": learner, "made_at": made_at, "attempts": count}))
    body = b"\n".join(lines) + b"\n"
    write_bytes(path, body + canonical({"sha256": hashlib.sha256(body).hexdigest()}) + b"\n", make_folder=True)
    return count


def _attempts_of(store: Store, learner: str) -> list[AttemptRow]:
    """Return a learner's attempts outside sets in the order in which they were last worked at."""
    last = select(event_table.c.attempt_id, func.max(event_table.c.id).label("last")).group_by(event_table.c.attempt_id)
    ended = last.subquery()
    wanted = (
        select(attempt_table)
        .join(ended, ended.c.attempt_id == attempt_table.c.id)
        .where(attempt_table.c.learner == learner, attempt_table.c.set_id == "")
        .order_by(ended.c.last)
    )
    with store.reading() as connection:
        return store.attempts(connection.execute(wanted).mappings())


def import_record(store: Store, path: Path, learner: str) -> ImportResult:
    """Add the attempts and events of a record that the store lacks, in one transaction.

    Raises ProblemsFoundError for a file that is damaged, no record, or somebody else's; the store is then untouched.
    """
    attempts = _read(path, learner)
    counts = {"new": 0, "known": 0, "longer": 0, "apart": 0}
    with store.reading() as connection:
        mine = select(attempt_table.c.id).where(attempt_table.c.learner == learner)
        known = set(connection.execute(mine).scalars())
    with store.writing() as connection:
        for attempt in attempts:
            try:
                added = merge_attempt(connection, attempt)
            except ForkedError:
                counts["apart"] += 1
                continue
            counts["known" if not added else "longer" if attempt.row.id in known else "new"] += 1
    store.written()
    return ImportResult(**counts)


def _read(path: Path, learner: str) -> list[WholeAttempt]:
    content = read_plain(path, MOST_BYTES)
    before = content.rfind(b"\n", 0, max(len(content) - 1, 0))
    body, last = content[: before + 1], content[before + 1 :]
    head = _line(body.split(b"\n", 1)[0])
    if head is None or head.get("form") != FORM:
        raise _refused(path, "no_record", "a_record_of")
    if last != canonical({"sha256": hashlib.sha256(body).hexdigest()}) + b"\n":
        raise _refused(path, "damaged", "copy_again")
    owner = "".join(one for one in str(head.get("learner")) if one.isprintable())[:60]
    if head.get("learner") != learner:
        raise _refused(path, "of_another", "be_that_learner", of=owner)
    try:
        attempts = _attempts(body)
    except UNFIT as error:
        raise _refused(path, "unknown", "a_record_of") from error
    if any(one.row.learner != learner or one.row.set_id for one in attempts):
        raise _refused(path, "of_another", "be_that_learner", of=owner)
    return attempts


def _attempts(body: bytes) -> list[WholeAttempt]:
    """Return the attempts of a record's body; raises one of UNFIT for what this program would not have written.

    What practice keeps of a task goes through unread: whoever reads it leaves out what another version wrote.
    """
    attempts = attempts_in(body.split(b"\n")[1:-1])
    for one in attempts:
        if not one.events or [event.number for event in one.events] != list(range(1, len(one.events) + 1)):
            raise ValueError("events out of order")
    return attempts


def _line(line: bytes) -> dict[str, object] | None:
    try:
        value = json.loads(line)
    except (ValueError, RecursionError):
        return None
    return value if isinstance(value, dict) else None


def _refused(path: Path, found: str, mend: str, **values: object) -> ProblemsFoundError:
    told, how = Sentence(f"record.found.{found}", **values), Sentence(f"record.mend.{mend}", **values)
    return ProblemsFoundError([Problem(str(path), None, "the record", told, Sentence("record.a_record"), how)])
