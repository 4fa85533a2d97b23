"""A learner's own record, carried from one machine to another."""

from __future__ import annotations

from contextlib import closing
from dataclasses import asdict
from pathlib import Path

from trainer.commands.call.call import Call
from trainer.commands.call.result import Result
from trainer.commands.call.this_machine import now_utc
from trainer.desk.attempt_start import DEFAULT_LEARNER
from trainer.desk.learner_name import learner_name
from trainer.errors import WrongCallError
from trainer.records.store.learner_record import import_lines, import_record, write_record
from trainer.words import text


def carry_record(call: Call, learner: str | None, path: Path) -> Result:
    """Write a learner's record to a file; raises WrongCallError for a named learner without one."""
    who = learner_name(learner or DEFAULT_LEARNER)
    with closing(call.open_records()) as store:
        if learner and who not in store.learners():  # a mistyped name would look saved
            raise WrongCallError("nothing_to_carry", who=who)
        count = write_record(store, path, who, now_utc())
    return Result((text("practice.carried", path=path, n=count),), {"file": str(path), "attempts": count})


def take_record(call: Call, path: Path, learner: str | None) -> Result:
    """Read a learner's record from a file into the records."""
    who = learner_name(learner or DEFAULT_LEARNER)
    with closing(call.open_store()) as store:
        taken = import_record(store, path, who)
    return Result(tuple(import_lines(taken)), asdict(taken))
