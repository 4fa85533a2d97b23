"""What an instructor does with sets and results, with the rules and lines that the window and the commands share."""

from __future__ import annotations

import os
from collections.abc import Callable, Sequence
from pathlib import Path
from typing import IO

from trainer.cases.files.plain_file import is_there
from trainer.cases.files.whole_file import write_bytes, write_whole
from trainer.cases.solved.universe_cache import Universes
from trainer.errors import Problem, WrongCallError
from trainer.practice.attempt.actions import Solver
from trainer.practice.reports.set_lines import weak_spots
from trainer.records.class_report import exports
from trainer.records.class_report.collect import Collected, collect
from trainer.records.class_report.marking import Marked, mark_set
from trainer.records.class_report.results import StoredSet
from trainer.records.class_report.xapi import default_home
from trainer.records.store.store import Store
from trainer.sets.case_set import CaseSet
from trainer.sets.draft import SetDraft, set_text
from trainer.sets.pack import pack_from
from trainer.sets.sealed import SetKey, seal
from trainer.sets.set_file import set_of
from trainer.words import problem_line, text


def drafted_set(draft: SetDraft, path: Path) -> CaseSet:
    """Return a drafted set as its file will be read; raises ProblemsFoundError for a draft that makes no good file."""
    return set_of(pack_from(set_text(draft), path.name, path.parent), path.name)


def write_set(case_set: CaseSet, path: Path, *, force: bool = False, make_folder: bool = False) -> None:
    """Write a set file; raises WrongCallError for one that is there, unless forced."""
    refuse_existing(path, force=force)
    write_bytes(path, case_set.pack.content.encode("utf-8"), make_folder=make_folder)


def refuse_existing(path: Path, *, force: bool) -> None:
    """Raise WrongCallError for a file that is there, unless forced."""
    if is_there(path) and not force:
        raise WrongCallError("file_exists", path=path)


def proof_lines(case_set: CaseSet, problems: Sequence[Problem], name: Path | str) -> tuple[str, ...]:
    """Return the result of proving a set: its problems, or its weak points where it is good."""
    if problems:
        return tuple(problem_line(one) for one in problems)
    return (text("set.good", path=name, n=case_set.size), *weak_spots(case_set))


def preview_line(files: Sequence[Path], folder: Path) -> str:
    """Return the line that says where a preview was written."""
    return text("set.previewed", n=len(files), folder=folder)


def seal_set(
    case_set: CaseSet, source: Path, output: Path, passphrase: Callable[[], str], *, force: bool
) -> tuple[str, ...]:
    """Write a set sealed and return what to say, each time also what sealing does not stop.

    Raises WrongCallError for an output that is there, unless forced, and for one that is the set's own file; both
    before the passphrase is asked for.
    """
    if os.path.realpath(output) == os.path.realpath(source):
        raise WrongCallError("file_exists", path=output)
    refuse_existing(output, force=force)
    seal(case_set, passphrase(), output)
    return (
        text("set.sealed", path=output, n=case_set.size),
        text("set.sealed_means"),
        *weak_spots(case_set),
    )


def collect_and_mark(
    store: Store,
    folders: Sequence[Path],
    case_set: CaseSet,
    keys: Sequence[SetKey],
    solver: Solver,
    universes: Universes,
    progress: Callable[[int, int], None],
) -> tuple[list[Collected], Marked]:
    """Merge bundles of results into the store, and mark what is new."""
    taken = collect(store, folders, case_set.id, keys)
    return taken, mark_set(store, case_set, keys, solver, universes, progress=progress)


def write_report(
    store: Store, stored: StoredSet, path: Path, now: str, *, make_folder: bool = False
) -> tuple[Path, Path]:
    """Write the class report of a set, and its counts as a table beside it; return both files."""
    from trainer.records.class_report.report import report_html
    from trainer.records.class_report.report_table import report_table

    table = path.with_suffix(".csv")
    page, counts = report_html(store, stored, now).encode("utf-8"), report_table(store, stored)
    write_bytes(path, page, make_folder=make_folder)
    write_bytes(table, counts, make_folder=make_folder)
    return path, table


def write_export(store: Store, stored: StoredSet, kind: str, path: Path, *, bom: bool, home: str | None = None) -> None:
    """Write an export: `gradebook`, `cases`, `events` or `xapi`; `bom` marks a table as UTF-8 for spreadsheets."""
    made = {
        "gradebook": lambda: exports.gradebook(store, stored, bom=bom),
        "cases": lambda: exports.case_rows(store, stored, bom=bom),
        "events": lambda: exports.event_rows(store, stored, bom=bom),
        "xapi": lambda: exports.xapi_lines(store, stored, home or default_home(store.id)),
    }

    def write(part: IO[bytes]) -> None:
        for piece in made[kind]():
            part.write(piece)

    write_whole(path, write, make_folder=True)


def written_lines(files: Sequence[Path]) -> tuple[str, ...]:
    """Return a line for each file that was written."""
    return tuple(text("records.written", path=path) for path in files)
