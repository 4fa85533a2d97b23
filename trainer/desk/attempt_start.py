"""Starts an attempt at a case, or resumes one that was begun."""

from __future__ import annotations

import contextlib
import uuid

from trainer import __version__
from trainer.desk.case_source import FoundCase
from trainer.desk.desk import Desk
from trainer.errors import DamagedError
from trainer.practice.attempt.events import Started
from trainer.records.store.log_rows import AttemptRow

DEFAULT_LEARNER = "me"
"""Whose record it is where nobody is named."""


def start_or_resume(
    desk: Desk,
    found: FoundCase,
    learner: str,
    now: str,
    *,
    new: bool = False,
    seed: int | None = None,
    at: Started | None = None,
) -> None:
    """Resume the attempt that is not closed, unless a new one or another seed is asked for; otherwise start one.

    One whose events are damaged is left as it is.
    """
    waiting = [] if new else desk.store.open_attempts(learner, found.name, found.digest)
    if waiting and seed in (None, waiting[0].seed):
        for row in waiting:
            with contextlib.suppress(DamagedError):
                desk.resume(found.case, row)
                return
    desk.start(found.case, row_for(found, learner, now, seed), at)


def row_for(found: FoundCase, learner: str, now: str, seed: int | None = None) -> AttemptRow:
    """Return the row that an attempt begins with; its seed is the case's own where none is given."""
    return AttemptRow(
        id=str(uuid.uuid4()),
        learner=learner,
        case_source=found.source,
        case_name=found.name,
        profile_digest=found.case.profile.digest,
        case_digest=found.digest,
        seed=found.case.seed if seed is None else seed,
        program_version=__version__,
        started_at=now,
    )
