"""The roster: which code is whose name, in the instructor's store alone."""

from __future__ import annotations

import csv
import io
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

from sqlalchemy import delete, insert, select

from trainer.cases.files.plain_file import decoded, read_plain
from trainer.errors import Problem, ProblemsFoundError, Said, Sentence
from trainer.records.store.row_types import typed
from trainer.records.store.store import Store
from trainer.records.store.tables import roster_table
from trainer.words.visible import around, escaped, unseen_in

COLUMNS = ("learner", "name", "class")
MOST_BYTES, MOST_CHARACTERS = 2_000_000, 200


@dataclass(frozen=True, slots=True)
class Person:
    """One line of the roster."""

    learner: str
    name: str
    class_name: str


def read_roster(path: Path) -> list[Person]:
    """Read a roster with the columns learner, name, class; raises ProblemsFoundError with every line that is wrong."""
    content = decoded(path, read_plain(path, MOST_BYTES), "utf-8-sig")
    first = content.split("\n", 1)[0]
    reader = csv.reader(io.StringIO(content, newline=""), delimiter=";" if first.count(";") > first.count(",") else ",")
    try:
        read = [(reader.line_num, row) for row in reader]
    except csv.Error as error:
        cells = Sentence("roster.three_cells")
        raise ProblemsFoundError([_problem(path, reader.line_num, str(error), cells)]) from error
    seen = Sentence("file.seen_characters")
    problems = [
        _problem(path, line, Sentence("file.unseen", around=around(cell, at), character=escaped(cell[at])), seen)
        for line, row in read for cell in row if (at := unseen_in(cell, "\r\n\t")) is not None
    ]  # fmt: skip
    if problems:
        raise ProblemsFoundError(problems)
    rows = [(line, [_cell(cell) for cell in row]) for line, row in read if any(map(_cell, row))]
    if not rows or [cell.lower() for cell in rows[0][1]] != list(COLUMNS):
        raise ProblemsFoundError(
            [_problem(path, 1, ",".join(rows[0][1])[:60] if rows else Sentence("file.empty"), ",".join(COLUMNS))]
        )
    people: list[Person] = []
    known: set[str] = set()
    for line, row in rows[1:]:
        if len(row) != len(COLUMNS) or not row[0]:
            problems.append(_problem(path, line, ",".join(row)[:60], Sentence("roster.three_cells")))
        elif any(len(cell) > MOST_CHARACTERS for cell in row):
            problems.append(_problem(path, line, row[0][:60], Sentence("roster.at_most", n=MOST_CHARACTERS)))
        elif row[0] in known:
            twice = Sentence("roster.twice", learner=row[0][:60])
            problems.append(_problem(path, line, twice, Sentence("roster.each_once")))
        else:
            known.add(row[0])
            people.append(Person(*row))
    if problems:
        raise ProblemsFoundError(problems)
    return people


def _cell(cell: str) -> str:
    return " ".join(cell.split())


def _problem(path: Path, line: int, found: Said, allowed: Said) -> Problem:
    return Problem(path.name, line, "the roster", found, allowed, Sentence("roster.mend"))


def keep_roster(store: Store, people: list[Person], *, instead: bool = False) -> None:
    """Add people to the roster, or put them in the place of everybody that was on it."""
    with store.writing() as connection:
        connection.execute(
            delete(roster_table)
            if instead
            else delete(roster_table).where(roster_table.c.learner.in_([one.learner for one in people]))
        )
        if people:
            connection.execute(
                insert(roster_table),
                [{"learner": one.learner, "name": one.name, "class_name": one.class_name} for one in people],
            )


def roster(store: Store) -> Mapping[str, Person]:
    """Return everybody on the roster by their code."""
    with store.reading() as connection:
        rows = connection.execute(select(roster_table).where(typed(roster_table)).order_by(roster_table.c.learner))
        return {row.learner: Person(row.learner, row.name, row.class_name) for row in rows}
