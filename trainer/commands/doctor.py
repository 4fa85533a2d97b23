"""doctor: what this machine has."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import asdict
from pathlib import Path

from trainer import __version__
from trainer.commands.isolation import can_isolate
from trainer.commands.result import Result
from trainer.commands.stores import data_folder, now_utc, shared_url
from trainer.desk.process_guard import can_guard_memory
from trainer.errors import UserError
from trainer.output.doctor import Check, clock_check, machine_checks
from trainer.records.store.delivery import undelivered
from trainer.records.store.store import open_store, open_store_at
from trainer.words import message_parts, text


def examine(data: Path | None, store_url: str | None = None) -> Result:
    """Return every check; the exit code stays 0, since looking has worked."""
    checks = checks_in(data_folder(data), store_url=store_url)
    lines = [f"injector-trainer {__version__}"]
    for check in checks:
        verdict = text("doctor.good" if check.good else "doctor.bad")
        lines.append(f"{verdict:>5}  {check.name}: {check.found}" + (f"  → {check.mend}" if check.mend else ""))
    return Result(tuple(lines), {"version": __version__, "checks": [asdict(check) for check in checks]})


def checks_in(folder: Path, in_use: str = "", store_url: str | None = None) -> tuple[Check, ...]:
    """Return every check of this machine and of the records in a folder."""
    return (*machine_checks(folder, in_use), *_exams(), *_records_and_clock(folder), *_shared(folder, store_url))


def _exams() -> Iterator[Check]:
    """Yield whether an exam can be kept apart here from other programs and from Python's settings of the same user."""
    for name, good in (("memory", can_guard_memory()), ("start", can_isolate())):
        found, mend = text(f"doctor.exam.{name}_{'good' if good else 'bad'}"), text(f"doctor.exam.{name}_mend")
        yield Check(f"exam {name}", good, found, "" if good else mend)


def _shared(folder: Path, url: str | None) -> Iterator[Check]:
    """Yield whether the store that stations share answers, and how much waits for it; nothing where none is named."""
    shared = shared_url(folder, url)
    if not shared:
        return
    try:
        local, far = open_store(folder), open_store_at(shared)
        waiting = sum(count for _row, count in undelivered(local))
        local.close()
        far.close()
    except UserError as error:
        yield Check("shared store", False, *message_parts(error))
        return
    found = text("doctor.shared", place=far.place, waiting=waiting)
    yield Check("shared store", True, found, "")


def _records_and_clock(folder: Path) -> tuple[Check, ...]:
    try:
        store = open_store(folder)
        count, latest = store.count(), store.latest()
        store.close()
    except UserError as error:
        return Check("records", False, *message_parts(error)), clock_check(now_utc(), None)
    return Check("records", True, text("file.events", count=count), ""), clock_check(now_utc(), latest)
