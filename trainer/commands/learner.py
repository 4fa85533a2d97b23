"""progress, records carry, records take: one learner's own record."""

from __future__ import annotations

from dataclasses import asdict
from pathlib import Path

from trainer.commands.records import opened_records
from trainer.commands.result import Result
from trainer.commands.stores import now_utc, store_for
from trainer.desk.learner_name import learner_name
from trainer.desk.seat import DEFAULT_LEARNER
from trainer.errors import WrongCallError
from trainer.practice.course.practice_log import abilities_on, day_of, entries_of, learner_of
from trainer.practice.course.waiting import GAPS_DAYS
from trainer.practice.exercises.course_lines import certainties_of, progress_lines
from trainer.records.store.learner_record import import_lines, import_record, write_record
from trainer.words import text


def show_progress(learner: str | None, data: Path | None, url: str | None) -> Result:
    """Return where a learner stands."""
    who = learner_name(learner or DEFAULT_LEARNER)
    with opened_records(data, url) as store:
        stands = learner_of(list(entries_of((at, kept) for _number, at, kept in store.practised(who))))
    day = day_of(now_utc())
    lines = [text("progress.title", who=who), *progress_lines(stands, day)]
    document = {
        "learner": who,
        "skills": [
            {"skill": skill.value, "right": one.right, "answers": one.answers, "ability": round(one.mean, 3),
             "interval": [round(edge, 3) for edge in one.interval]}
            for skill, one in abilities_on(stands, day).items()
        ],
        "waiting": [
            {"topic": one.topic, "revisits_right": one.stage, "sure": one.sure, "due": one.due(day),
             "due_in_days": round(max(one.day + GAPS_DAYS[one.stage] - day, 0.0), 2)}
            for one in stands.waiting
        ],
        "certainty": [
            {"said": certainty, "count": count, "right": round(share * count)}
            for certainty, (count, share) in certainties_of(stands).items()
        ],
    }  # fmt: skip
    return Result(tuple(lines), document)


def carry_record(learner: str | None, path: Path, data: Path | None, url: str | None) -> Result:
    """Write a learner's record to a file."""
    who = learner_name(learner or DEFAULT_LEARNER)
    with opened_records(data, url) as store:
        if learner and who not in store.learners():  # a mistyped name would look saved
            raise WrongCallError("nothing_to_carry", who=who)
        count = write_record(store, path, who, now_utc())
    return Result((text("practice.carried", path=path, count=count),), {"file": str(path), "attempts": count})


def take_record(path: Path, learner: str | None, data: Path | None, url: str | None) -> Result:
    """Take a learner's record in."""
    who = learner_name(learner or DEFAULT_LEARNER)
    store = store_for(data, url)
    try:
        taken = import_record(store, path, who)
    finally:
        store.close()
    return Result(tuple(import_lines(taken)), asdict(taken))
