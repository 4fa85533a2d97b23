"""Collects, marks, reports and exports results."""

from __future__ import annotations

from collections.abc import Sequence
from contextlib import closing
from dataclasses import asdict
from functools import cache
from pathlib import Path

from trainer.commands.call.call import Call
from trainer.commands.call.json_document import JsonValue
from trainer.commands.call.result import Result
from trainer.commands.call.set_passphrase import passphrase_from
from trainer.commands.call.streams import tell
from trainer.commands.call.this_machine import now_utc
from trainer.desk import instructor_actions
from trainer.desk.caching_solver import CachingSolver
from trainer.desk.instructor_actions import collect_and_mark, write_export, written_lines
from trainer.errors import ExitCode, WrongCallError
from trainer.records.class_report.collect import salts_in
from trainer.records.class_report.collect_lines import collected_lines, marked_lines
from trainer.records.class_report.marking import Marked, mark_set
from trainer.records.class_report.notes import Note, add_note, answer_of, refuse_draws
from trainer.records.class_report.results import StoredSet, stored_sets, with_damaged_results
from trainer.records.store.bundle import Fate
from trainer.records.store.store import Store
from trainer.sets.case_set import CaseSet
from trainer.sets.sealed import SetKey
from trainer.sets.set_access import keys_of, open_set
from trainer.words import text

ACCEPTED = (Fate.NEW, Fate.KNOWN)


def collect_results(call: Call, folders: Sequence[Path], set_path: Path, passphrase_file: Path | None) -> Result:
    """Merge bundles and mark what is new; the exit code is 1 where a file could not be taken."""
    ask = cache(passphrase_from(passphrase_file))  # asked once for all that needs it
    opened = open_set(set_path, ask)
    keys = keys_of(opened, ask, salts_in(folders))
    with closing(call.open_records()) as store:
        taken, marked = collect_and_mark(
            store, folders, opened.case_set, keys, CachingSolver(), call.universes, _say_progress
        )
    bad = [one for one in taken if one.fate not in ACCEPTED]
    document: dict[str, JsonValue] = {"files": [asdict(one) for one in taken], "marked": asdict(marked)}
    code = ExitCode.WRONG if bad else ExitCode.DONE
    return Result(tuple(collected_lines(taken, marked)), document, code)


def _say_progress(done: int, count: int) -> None:
    if done % 10 == 0 or done == count:
        tell(text("mark.going", done=done, count=count))


def _mark(call: Call, store: Store, case_set: CaseSet, keys: Sequence[SetKey], *, again: bool = False) -> Marked:
    return mark_set(store, case_set, keys, CachingSolver(), call.universes, again=again, progress=_say_progress)


def mark_results(call: Call, set_path: Path, passphrase_file: Path | None, *, again: bool) -> Result:
    """Mark a set's attempts that lie in the records already."""
    ask = cache(passphrase_from(passphrase_file))  # asked once for all that needs it
    opened = open_set(set_path, ask)
    with closing(call.open_records()) as store:
        marked = _mark(call, store, opened.case_set, keys_of(opened, ask, ()), again=again)
    code = ExitCode.WRONG if marked.refused else ExitCode.DONE
    return Result(tuple(marked_lines(marked)), asdict(marked), code)


def stored_set_named(store: Store, named: str | None) -> StoredSet:
    """Return the set with a name or id, the only set where none is named; raises WrongCallError where none fits."""
    sets = stored_sets(store)
    if not sets:
        raise WrongCallError("no_results_yet")
    found = [one for one in sets if named is None or named in (one.name, one.id)]
    if len(found) != 1:
        raise WrongCallError("which_set", named=named or "", sets=", ".join(f"{one.name} ({one.id})" for one in sets))
    return with_damaged_results(store, found[0])


def list_results(call: Call) -> Result:
    """List the sets that have results here."""
    with closing(call.open_records()) as store:
        sets = stored_sets(store)
    lines = [text("records.set", name=one.name, title=one.title, n=one.size, id=one.id) for one in sets]
    return Result(tuple(lines or [text("records.no_sets")]), {"sets": [asdict(one) for one in sets]})


def write_report(call: Call, named: str | None, output: Path) -> Result:
    """Write the class report of a set, and its counts as a table beside it."""
    with closing(call.open_records()) as store:
        files = instructor_actions.write_report(store, stored_set_named(store, named), output, now_utc())
    page, table = files
    return Result(written_lines(files), {"file": str(page), "table": str(table), "bytes": page.stat().st_size})


def export_results(call: Call, kind: str, named: str | None, output: Path, *, bom: bool, home: str | None) -> Result:
    """Write one export of a set."""
    with closing(call.open_records()) as store:
        write_export(store, stored_set_named(store, named), kind, output, bom=bom, home=home)
    return Result(written_lines([output]), {"file": str(output), "kind": kind})


def regrade(call: Call, set_path: Path, item: int, answer: str, reason: str, passphrase_file: Path | None) -> Result:
    """Mark a case again for everybody, with another right answer."""
    ask = cache(passphrase_from(passphrase_file))  # asked once for all that needs it
    opened = open_set(set_path, ask)
    _check_item(opened.case_set, item)
    refuse_draws(opened.case_set, item)
    answer_of(opened.case_set, answer)
    with closing(call.open_records()) as store:
        add_note(store, opened.case_set.id, Note(now_utc(), "comment", "", item, reason))
        add_note(store, opened.case_set.id, Note(now_utc(), "answer", "", item, answer))
        marked = _mark(call, store, opened.case_set, keys_of(opened, ask, ()), again=True)
    return Result(tuple(marked_lines(marked)), asdict(marked))


def _check_item(case_set: CaseSet, item: int) -> None:
    if not 1 <= item <= case_set.size:
        raise WrongCallError("no_such_case", word=item, size=case_set.size)


def bundle_results(call: Call, set_path: Path, learner: str, folder: Path, passphrase_file: Path | None) -> Result:
    """Write a learner's bundle once more, for example after a stick was lost."""
    from trainer.records.store.bundle import write_bundle

    opened_set = open_set(set_path, passphrase_from(passphrase_file))
    store = call.open_local_records()
    try:
        case_set = opened_set.case_set
        if not store.in_set(case_set.id, learner):
            raise WrongCallError("nothing_to_bundle", learner=learner)
        path = write_bundle(store, folder, case_set.id, case_set.name, learner, opened_set.key, now_utc())
    finally:
        store.close()
    return Result((text("set.bundled", path=path),), {"file": str(path)})
