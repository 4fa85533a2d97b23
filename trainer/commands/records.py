"""records: collects, marks, reports, exports and keeps results."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager
from dataclasses import asdict
from pathlib import Path
from typing import IO

from trainer.cases.case_set import CaseSet, Mode
from trainer.cases.sealed_set import SetKey, salt_of_set
from trainer.cases.set_source import OpenedSet, keys_of, open_set
from trainer.cases.universe_cache import Universes
from trainer.cases.whole_file import write_bytes, write_whole
from trainer.commands.passphrase import passphrase_from
from trainer.commands.result import Result
from trainer.commands.stores import data_folder, now_utc, records_store, tell, universe_folder
from trainer.desk.solver import RememberingSolver
from trainer.errors import ExitCode, MissingHereError, WrongCallError
from trainer.records import exports
from trainer.records.bundle import Fate
from trainer.records.collect import collect, salts_in
from trainer.records.marking import Marked, Marker, mark_set
from trainer.records.notes import Note, add_note, answer_of, keep_until, other_answers, refuse_draws
from trainer.records.results import KeptSet, kept_sets
from trainer.records.roster import keep_roster, read_roster, roster
from trainer.records.shown_collect import collected_lines, marked_lines
from trainer.records.store import Store
from trainer.records.xapi import default_home
from trainer.words import text

GOOD = (Fate.NEW, Fate.KNOWN)


@contextmanager
def _records(data: Path | None, url: str | None) -> Iterator[Store]:
    store = records_store(data, url)
    try:
        yield store
    finally:
        store.close()


def _asked_once(passphrase_file: Path | None) -> Callable[[], str]:
    """Return what asks for the passphrase at most once in a command."""
    answers: list[str] = []
    ask = passphrase_from(passphrase_file)

    def once() -> str:
        if not answers:
            answers.append(ask())
        return answers[0]

    return once


def collect_results(
    folders: Sequence[Path], set_path: Path, passphrase_file: Path | None, data: Path | None, url: str | None
) -> Result:
    """Merge bundles and mark what is new; the exit code is 1 where a file could not be taken."""
    ask = _asked_once(passphrase_file)
    opened = open_set(set_path, ask)
    keys = keys_of(opened, ask, salts_in(folders))
    with _records(data, url) as store:
        taken = collect(store, folders, opened.case_set.id, keys)
        marked = _mark(store, opened.case_set, keys)
    bad = [one for one in taken if one.fate not in GOOD]
    document = {"files": [asdict(one) for one in taken], "marked": asdict(marked)}
    code = ExitCode.WRONG if bad else ExitCode.DONE
    return Result(tuple(collected_lines(taken, marked)), document, code)


def _mark(store: Store, case_set: CaseSet, keys: Sequence[SetKey], *, again: bool = False) -> Marked:
    answers = other_answers(store, case_set)
    marker = Marker(case_set, keys, RememberingSolver(), Universes(universe_folder()), answers)

    def told(done: int, count: int) -> None:
        if done % 10 == 0 or done == count:
            tell(text("mark.going", done=done, count=count))

    return mark_set(store, marker, again=again, told=told)


def _marking_keys(opened: OpenedSet, ask: Callable[[], str]) -> tuple[SetKey, ...]:
    """Return the keys for attempts in the records: an exam's were signed under the passphrase."""
    exam = opened.case_set.policy.mode is Mode.EXAM
    return keys_of(opened, ask, [salt_of_set(opened.case_set)] if exam else [])


def mark_results(
    set_path: Path, passphrase_file: Path | None, data: Path | None, url: str | None, *, again: bool
) -> Result:
    """Mark a set's attempts that lie in the records already."""
    ask = _asked_once(passphrase_file)
    opened = open_set(set_path, ask)
    with _records(data, url) as store:
        marked = _mark(store, opened.case_set, _marking_keys(opened, ask), again=again)
    code = ExitCode.WRONG if marked.refused else ExitCode.DONE
    return Result(tuple(marked_lines(marked)), asdict(marked), code)


def kept_named(store: Store, named: str | None) -> KeptSet:
    """Return the set of a name or id, the only one where none is named; raises WrongCallError for another."""
    sets = kept_sets(store)
    if not sets:
        raise WrongCallError("no_results_yet")
    found = [one for one in sets if named is None or named in (one.name, one.id)]
    if len(found) != 1:
        raise WrongCallError("which_set", named=named or "", sets=", ".join(f"{one.name} ({one.id})" for one in sets))
    return found[0]


def list_results(data: Path | None, url: str | None) -> Result:
    """List the sets that have results here."""
    with _records(data, url) as store:
        sets = kept_sets(store)
    lines = [text("records.set", name=one.name, title=one.title, size=one.size, id=one.id) for one in sets]
    return Result(tuple(lines or [text("records.no_sets")]), {"sets": [asdict(one) for one in sets]})


def write_report(named: str | None, output: Path, data: Path | None, url: str | None) -> Result:
    """Write the class report of a set, and its counts as a table beside it."""
    from trainer.records.report import report_html
    from trainer.records.report_table import report_table

    table = output.with_suffix(".csv")
    with _records(data, url) as store:
        kept = kept_named(store, named)
        content = report_html(store, kept, now_utc()).encode("utf-8")
        write_bytes(table, report_table(store, kept))
    write_bytes(output, content)
    lines = tuple(text("records.written", path=path) for path in (output, table))
    return Result(lines, {"file": str(output), "table": str(table), "bytes": len(content)})


def export_results(
    kind: str, named: str | None, output: Path, data: Path | None, url: str | None, *, bom: bool, home: str | None
) -> Result:
    """Write one export of a set."""
    with _records(data, url) as store:
        kept = kept_named(store, named)
        made = {
            "gradebook": lambda: exports.gradebook(store, kept, bom=bom),
            "cases": lambda: exports.case_rows(store, kept, bom=bom),
            "events": lambda: exports.event_rows(store, kept, bom=bom),
            "xapi": lambda: exports.xapi_lines(store, kept, home or default_home(store.id)),
        }

        def write(part: IO[bytes]) -> None:
            for piece in made[kind]():
                part.write(piece)

        try:
            output.parent.mkdir(parents=True, exist_ok=True)
            write_whole(output, write)
        except OSError as error:
            raise MissingHereError("file_unwritable", path=output, reason=error.strerror) from error
    return Result((text("records.written", path=output),), {"file": str(output), "kind": kind})


def take_roster(path: Path, data: Path | None, url: str | None, *, instead: bool) -> Result:
    """Add a roster's people, or put them in the place of all before."""
    people = read_roster(path)
    with _records(data, url) as store:
        keep_roster(store, people, instead=instead)
        count = len(roster(store))
    return Result((text("roster.taken", count=count),), {"people": count})


def write_note(
    kind: str, named: str | None, learner: str, item: int, words: str, data: Path | None, url: str | None
) -> Result:
    """Add a comment, or let a learner's case not count."""
    with _records(data, url) as store:
        kept = kept_named(store, named)
        if item > kept.size:
            raise WrongCallError("no_such_case", word=item, size=kept.size)
        if learner and learner not in (*store.learners(), *roster(store)):
            raise WrongCallError("no_learner", learner=learner)
        add_note(store, kept.id, Note(now_utc(), kind, learner, item, words))
    return Result((text("note.taken"),), {"kind": kind, "learner": learner, "item": item})


def regrade(
    set_path: Path, item: int, answer: str, reason: str, passphrase_file: Path | None, data: Path | None,
    url: str | None,
) -> Result:  # fmt: skip
    """Mark a case anew by another right answer, for everybody."""
    ask = _asked_once(passphrase_file)
    opened = open_set(set_path, ask)
    _check_item(opened.case_set, item)
    refuse_draws(opened.case_set, item)
    answer_of(opened.case_set, answer)
    with _records(data, url) as store:
        add_note(store, opened.case_set.id, Note(now_utc(), "comment", "", item, reason))
        add_note(store, opened.case_set.id, Note(now_utc(), "answer", "", item, answer))
        marked = _mark(store, opened.case_set, _marking_keys(opened, ask), again=True)
    return Result(tuple(marked_lines(marked)), asdict(marked))


def _check_item(case_set: CaseSet, item: int) -> None:
    if not 1 <= item <= case_set.size:
        raise WrongCallError("no_such_case", word=item, size=case_set.size)


def keep_results(named: str | None, day: str, data: Path | None, url: str | None) -> Result:
    """Say until when a set's results are kept; raises WrongCallError for a day that is over."""
    if day < now_utc()[:10]:
        raise WrongCallError("day_is_over", day=day)
    with _records(data, url) as store:
        kept = kept_named(store, named)
        keep_until(store, kept.id, day)
    return Result((text("keep.taken", title=kept.title, day=day),), {"set": kept.id, "keep_until": day})


def delete_results(
    learner: str | None,
    named: str | None,
    *,
    overdue: bool,
    data: Path | None,
    url: str | None,
    sure: Callable[[str], bool],
) -> Result:
    """Delete a learner, a set, or every set whose time is over, after it was said what that is and agreed to."""
    from trainer.records.upkeep import delete_learner, delete_set, expired

    if sum((learner is not None, named is not None, overdue)) != 1:
        raise WrongCallError("delete_what")
    with _records(data, url) as store:
        if learner is not None:
            if learner not in (*store.learners(), *roster(store)):
                raise WrongCallError("no_learner", learner=learner)
            agreed = sure(text("delete.ask_learner", learner=learner))
            count = delete_learner(store, learner) if agreed else 0
        else:
            over = expired(store, now_utc()[:10])
            gone = [one for one in kept_sets(store) if one.id in over] if overdue else [kept_named(store, named)]
            titles = ", ".join(one.title for one in gone)
            agreed = bool(gone) and sure(text("delete.ask_sets", count=len(gone), titles=titles))
            count = sum(delete_set(store, one.id) for one in gone) if agreed else 0
    return Result((text("delete.done", count=count),), {"attempts": count})


def back_up(path: Path, data: Path | None, url: str | None) -> Result:
    """Write all records into one file."""
    from trainer.records.upkeep import write_backup

    with _records(data, url) as store:
        count = write_backup(store, path)
    return Result((text("backup.done", count=count, path=path),), {"file": str(path), "rows": count})


def restore(path: Path, data: Path | None, url: str | None) -> Result:
    """Put a backup into an empty store."""
    from trainer.records.upkeep import restore_backup

    with _records(data, url) as store:
        count = restore_backup(store, path)
    return Result((text("restore.done", count=count),), {"rows": count})


def deliver(data: Path | None, url: str | None) -> Result:
    """Carry everything that waits on this machine to the shared store."""
    from trainer.desk.settings import read_settings
    from trainer.records.delivery import Delivery
    from trainer.records.store import opened

    folder = data_folder(data)
    shared = url or read_settings(folder / "settings.json")[0].store_url
    if not shared:
        raise WrongCallError("no_store_url")
    local = opened(folder)
    try:
        done = Delivery(local, shared).stop()
    finally:
        local.close()
    if done.error is not None:
        raise done.error
    document = {
        "delivered": done.events,
        "waiting": done.waiting,
        "forked": list(done.forked),
        "refused": list(done.refused),
    }
    lines = [text("delivery.done", count=done.events, waiting=done.waiting)]
    lines += [text("delivery.forked", attempt=one) for one in done.forked]
    lines += [text("delivery.refused", attempt=one) for one in done.refused]
    code = ExitCode.WRONG if done.forked or done.refused else ExitCode.DONE
    return Result(tuple(lines), document, code)


def bundle_results(
    set_path: Path, learner: str, folder: Path, passphrase_file: Path | None, data: Path | None
) -> Result:
    """Write a learner's bundle once more, for example after a stick was lost."""
    from trainer.records.bundle import write_bundle
    from trainer.records.store import opened

    opened_set = open_set(set_path, passphrase_from(passphrase_file))
    store = opened(data_folder(data))
    try:
        case_set = opened_set.case_set
        if not store.in_set(case_set.id, learner):
            raise WrongCallError("nothing_to_bundle", learner=learner)
        path = write_bundle(store, folder, case_set.id, case_set.name, learner, opened_set.key, now_utc())
    finally:
        store.close()
    return Result((text("set.bundled", path=path),), {"file": str(path)})
