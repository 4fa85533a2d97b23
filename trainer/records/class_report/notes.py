"""What an instructor adds to results: what does not count, comments, another right answer, how long to keep them."""

from __future__ import annotations

import uuid
from collections.abc import Iterator
from dataclasses import dataclass

from sqlalchemy import insert, select, update

from trainer.circuit.fault_space import single_faults
from trainer.circuit.faults import Fault
from trainer.circuit.profile import PASSES, Profile
from trainer.errors import WrongCallError
from trainer.records.class_report.results import recount
from trainer.records.store.log_rows import UNFIT
from trainer.records.store.row_types import row_model
from trainer.records.store.store import Store
from trainer.records.store.tables import note_table, set_table
from trainer.sets.case_set import CaseSet, Listed
from trainer.words import text


@dataclass(frozen=True, slots=True)
class Note:
    """One note; `item` 0 is about the whole set, `learner` "" about everybody."""

    at: str
    kind: str
    learner: str
    item: int
    text: str

    @property
    def kind_word(self) -> str:
        """What the note is, in words."""
        return text(f"note.{self.kind}")


KINDS = ("void", "comment", "answer")
_ROW = row_model(note_table)


def add_note(store: Store, set_id: str, note: Note) -> None:
    """Add a note; one that lets a case not count takes effect at once. Raises WrongCallError for an empty text."""
    if not note.text.strip():
        raise WrongCallError("note_needs_text")
    row = {
        "id": str(uuid.uuid4()), "at": note.at, "kind": note.kind, "set_id": set_id, "learner": note.learner,
        "item": note.item, "text": note.text,
    }  # fmt: skip
    with store.writing() as connection:
        connection.execute(insert(note_table), row)
    if note.kind == "void":
        recount(store, set_id)


def notes_of(store: Store, set_id: str) -> list[Note]:
    """Return what instructors noted on a set, the oldest first; damaged notes are left out."""
    wanted = select(note_table).where(note_table.c.set_id == set_id).order_by(note_table.c.at, note_table.c.id)
    found = []
    with store.reading() as connection:
        for row in connection.execute(wanted).mappings():
            try:
                _ROW.model_validate(dict(row))
                found.append(Note(**{name: row[name] for name in Note.__dataclass_fields__}))
            except UNFIT:
                store.left_out.add(f"note {row['id']}")
    return [note for note in found if note.kind in KINDS]


def keep_until(store: Store, set_id: str, day: str) -> None:
    """Say until which day (ISO 8601) the results of a set are kept."""
    with store.writing() as connection:
        connection.execute(update(set_table).where(set_table.c.id == set_id).values(keep_until=day))


def answer_of(case_set: CaseSet, words: str) -> tuple[Fault, ...]:
    """Return the faults that words name as another right answer, like `3 pass_through_connector open`.

    Raises WrongCallError for what no engine of the set can have; `circuit_passes` stands for no fault.
    """
    if words.strip() == PASSES:
        return ()
    parts = words.split()
    for profile in _engines(case_set) if len(parts) in (3, 4) else ():
        for fault in single_faults(profile):
            named = [",".join(map(str, fault.cylinders)), str(fault.location), str(fault.kind), str(fault.side)]
            if parts == named[: len(parts)]:
                return (fault,)
    raise WrongCallError("no_answer", words=words[:60])


def refuse_draws(case_set: CaseSet, item: int) -> None:
    """Raise WrongCallError for a case that was drawn: under its number each learner had another one."""
    before = 0
    for line in case_set.lines:
        before += 1 if isinstance(line, Listed) else line.count
        if item <= before:
            if not isinstance(line, Listed):
                raise WrongCallError("regrade_drawn", item=item)
            return


def _engines(case_set: CaseSet) -> Iterator[Profile]:
    for line in case_set.lines:
        yield from (line.case.profile,) if isinstance(line, Listed) else line.profiles


def other_answers(store: Store, case_set: CaseSet) -> dict[int, tuple[Fault, ...]]:
    """Return, by index, what else was found to be the right answer after the set was worked."""
    return {note.item: answer_of(case_set, note.text) for note in notes_of(store, case_set.id) if note.kind == "answer"}
