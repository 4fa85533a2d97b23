"""What a set allows in one attempt, beside what the case offers."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime

from trainer.errors import WrongCallError
from trainer.practice.attempt.attempt import Attempt
from trainer.practice.attempt.events import CodesRead, Event, Heard, Hinted, Measured, Repaired, Retested, Worked


@dataclass(frozen=True, slots=True)
class Limits:
    """Plays, readings and minutes of labour allowed, None for no limit; `feedback` False ends a case at its finding.

    From `closes` on nothing more is taken: others may see the debriefs then.
    """

    plays: int | None = None
    readings: int | None = None
    bench_minutes: float | None = None
    feedback: bool = True
    closes: datetime | None = None


NO_LIMITS = Limits()


def refuse_beyond(attempt: Attempt, limits: Limits, event: Event) -> None:
    """Raise WrongCallError for an action that a set does not allow any more, or not at all."""
    if isinstance(event, Repaired | Retested | Hinted) and not limits.feedback:
        raise WrongCallError("not_in_exam")
    if isinstance(event, Heard) and limits.plays is not None and attempt.count(Heard) >= limits.plays:
        raise WrongCallError("plays_used", allowed=limits.plays)
    if isinstance(event, Measured) and limits.readings is not None and attempt.count(Measured) >= limits.readings:
        raise WrongCallError("readings_used", allowed=limits.readings)
    minutes = event.labour_minutes
    beyond = limits.bench_minutes is not None and attempt.minutes + minutes > limits.bench_minutes
    if isinstance(event, Heard | CodesRead | Measured | Worked) and minutes > 0.0 and beyond:
        raise WrongCallError("bench_minutes_used", allowed=limits.bench_minutes, n=round(minutes))


def refuse_late(limits: Limits, now: str) -> None:
    """Raise WrongCallError for what comes (UTC, ISO 8601) after a set has closed."""
    if limits.closes is not None and datetime.fromisoformat(now) >= limits.closes:
        raise WrongCallError("set_closed", closes=limits.closes.isoformat(timespec="minutes"))


def refuse_feedback(limits: Limits) -> None:
    """Raise WrongCallError while the outcome of the finding is still hidden."""
    if not limits.feedback:
        raise WrongCallError("not_in_exam")
