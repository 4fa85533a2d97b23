"""Keeps results: roster, notes, retention, deletion, backup and delivery to the shared store."""

from __future__ import annotations

from collections.abc import Callable
from contextlib import closing
from pathlib import Path

from trainer.commands.call.call import Call
from trainer.commands.call.json_document import JsonValue
from trainer.commands.call.result import Result
from trainer.commands.call.this_machine import now_utc
from trainer.commands.records_commands.mark_results import stored_set_named
from trainer.errors import ExitCode, WrongCallError
from trainer.records.class_report.notes import Note, add_note, keep_until
from trainer.records.class_report.results import stored_sets
from trainer.records.class_report.roster import keep_roster, read_roster, roster
from trainer.records.store.store import Store
from trainer.words import message_of, text


def take_roster(call: Call, path: Path, *, instead: bool) -> Result:
    """Add a roster's people, or put them in the place of all before."""
    people = read_roster(path)
    with closing(call.open_records()) as store:
        keep_roster(store, people, instead=instead)
        count = len(roster(store))
    return Result((text("roster.taken", n=count),), {"people": count})


def _refuse_unknown(store: Store, learner: str) -> None:
    if learner not in (*store.learners(), *roster(store)):
        raise WrongCallError("no_learner", learner=learner)


def write_note(call: Call, kind: str, named: str | None, learner: str, item: int, words: str) -> Result:
    """Add a comment, or let a learner's case not count."""
    with closing(call.open_records()) as store:
        kept = stored_set_named(store, named)
        if item > kept.size:
            raise WrongCallError("no_such_case", word=item, size=kept.size)
        if learner:
            _refuse_unknown(store, learner)
        add_note(store, kept.id, Note(now_utc(), kind, learner, item, words))
    return Result((text("note.taken"),), {"kind": kind, "learner": learner, "item": item})


def keep_results(call: Call, named: str | None, day: str) -> Result:
    """Say until when a set's results are kept; raises WrongCallError for a day that is over."""
    if day < now_utc()[:10]:
        raise WrongCallError("day_is_over", day=day)
    with closing(call.open_records()) as store:
        kept = stored_set_named(store, named)
        keep_until(store, kept.id, day)
    return Result((text("keep.taken", title=kept.title, day=day),), {"set": kept.id, "keep_until": day})


def delete_results(
    call: Call, learner: str | None, named: str | None, *, overdue: bool, confirm: Callable[[str], bool]
) -> Result:
    """Delete a learner, a set, or every set whose time is over, after it was said what that is and agreed to."""
    from trainer.records.store.deletion import delete_learner, delete_set, expired

    if sum((learner is not None, named is not None, overdue)) != 1:
        raise WrongCallError("delete_what")
    with closing(call.open_records()) as store:
        if learner is not None:
            _refuse_unknown(store, learner)
            agreed = confirm(text("delete.ask_learner", learner=learner))
            count = delete_learner(store, learner) if agreed else 0
        else:
            over = expired(store, now_utc()[:10])
            gone = (
                [one for one in stored_sets(store) if one.id in over] if overdue else [stored_set_named(store, named)]
            )
            titles = ", ".join(one.title for one in gone)
            agreed = bool(gone) and confirm(text("delete.ask_sets", n=len(gone), titles=titles))
            count = sum(delete_set(store, one.id) for one in gone) if agreed else 0
    return Result((text("delete.done", n=count),), {"attempts": count})


def back_up(call: Call, path: Path) -> Result:
    """Write all records into one file."""
    from trainer.records.store.backup import write_backup

    with closing(call.open_records()) as store:
        written = write_backup(store, path)
    lines = [text("backup.done", n=written.done, path=path)]
    lines += [text("backup.left_out", n=written.left_out)] if written.left_out else []
    return Result(tuple(lines), {"file": str(path), "rows": written.done, "left_out": written.left_out})


def restore(call: Call, path: Path) -> Result:
    """Put a backup into an empty store."""
    from trainer.records.store.backup import restore_backup

    with closing(call.open_records()) as store:
        put_back = restore_backup(store, path)
    lines = [text("restore.done", n=put_back.done)]
    lines += [text("restore.left_out", n=put_back.left_out)] if put_back.left_out else []
    return Result(tuple(lines), {"rows": put_back.done, "left_out": put_back.left_out})


def deliver(call: Call) -> Result:
    """Carry everything that waits on this machine to the shared store."""
    from trainer.records.store.delivery import Delivery
    from trainer.records.store.store import open_store

    shared = call.shared_url
    if not shared:
        raise WrongCallError("no_store_url")
    with closing(open_store(call.data_folder)) as local:
        done = Delivery(local, shared).stop()
    document: dict[str, JsonValue] = {
        "delivered": done.events,
        "waiting": done.waiting,
        "forked": list(done.forked),
        "refused": list(done.refused),
    }
    lines = [text("delivery.done", n=done.events, waiting=done.waiting)]
    lines += [text("delivery.forked", attempt=one) for one in done.forked]
    lines += [text("delivery.refused", attempt=one) for one in done.refused]
    if done.error is not None:
        document |= {"error": done.error.key, "message": message_of(done.error)}
        return Result((message_of(done.error), *lines), document, done.error.exit_code)
    code = ExitCode.WRONG if done.forked or done.refused else ExitCode.DONE
    return Result(tuple(lines), document, code)
