"""Every check of this machine: sound, display, versions, exams, records, clock and shared store."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import asdict
from pathlib import Path

from trainer import __version__
from trainer.commands.call.call import Call
from trainer.commands.call.isolation import can_isolate
from trainer.commands.call.result import Result
from trainer.commands.call.this_machine import now_utc
from trainer.desk.process_guard import can_guard_memory
from trainer.errors import UserError
from trainer.output.machine_checks import Check, clock_check, machine_checks
from trainer.records.store.delivery import undelivered
from trainer.records.store.store import open_store, open_store_at
from trainer.words import message_parts, text


def examine(call: Call) -> Result:
    """Return every check; the exit code is 0 whatever they find."""
    checks = checks_of(call)
    lines = [f"injector-trainer {__version__}"]
    for check in checks:
        verdict = text("doctor.good" if check.good else "doctor.bad")
        lines.append(f"{verdict:>5}  {check.name}: {check.found}" + (f"  → {check.mend}" if check.mend else ""))
    return Result(tuple(lines), {"version": __version__, "checks": [asdict(check) for check in checks]})


def checks_of(call: Call, output_in_use: str = "") -> tuple[Check, ...]:
    """Return every check of this machine and of the call's records; `output_in_use` as for `machine_checks`."""
    folder = call.data_folder
    return (
        *machine_checks(folder, output_in_use),
        *_exam_checks(),
        *_records_and_clock(folder),
        *_shared_store_checks(folder, call),
    )


def _exam_checks() -> Iterator[Check]:
    """Yield whether an exam's memory and interpreter can be protected here from the user's other programs."""
    for name, good in (("memory", can_guard_memory()), ("start", can_isolate())):
        found, mend = text(f"doctor.exam.{name}_{'good' if good else 'bad'}"), text(f"doctor.exam.{name}_mend")
        yield Check(f"exam {name}", good, found, "" if good else mend)


def _shared_store_checks(folder: Path, call: Call) -> Iterator[Check]:
    """Yield whether the shared store answers, and how many events wait for it; nothing where there is none."""
    shared = call.shared_url
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
    found = text("doctor.shared", place=far.place, n=waiting)
    yield Check("shared store", True, found, "")


def _records_and_clock(folder: Path) -> tuple[Check, ...]:
    try:
        store = open_store(folder)
        count, latest = store.count(), store.latest()
        store.close()
    except UserError as error:
        return Check("records", False, *message_parts(error)), clock_check(now_utc(), None)
    return Check("records", True, text("file.events", n=count), ""), clock_check(now_utc(), latest)
