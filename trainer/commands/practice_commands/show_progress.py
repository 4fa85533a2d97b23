"""A learner's progress: skills, what is due for review, and certainty."""

from __future__ import annotations

from contextlib import closing

from trainer.commands.call.call import Call
from trainer.commands.call.json_document import JsonValue
from trainer.commands.call.result import Result
from trainer.commands.call.this_machine import now_utc
from trainer.desk.attempt_start import DEFAULT_LEARNER
from trainer.desk.learner_name import learner_name
from trainer.practice.course.practice_log import abilities_on, day_of, entries_of, learner_of
from trainer.practice.course.waiting import GAPS_DAYS
from trainer.practice.exercises.course_lines import certainties_of, progress_lines
from trainer.words import text


def show_progress(call: Call, named: str | None) -> Result:
    """Return the progress of a learner, the default one where none is named."""
    who = learner_name(named or DEFAULT_LEARNER)
    with closing(call.open_records()) as store:
        learner = learner_of(list(entries_of((at, kept) for _number, at, kept in store.practised(who))))
    day = day_of(now_utc())
    lines = [text("progress.title", who=who), *progress_lines(learner, day)]
    document: dict[str, JsonValue] = {
        "learner": who,
        "skills": [
            {"skill": skill.value, "right": one.right, "answers": one.answers, "ability": round(one.mean, 3),
             "interval": [round(edge, 3) for edge in one.interval]}
            for skill, one in abilities_on(learner, day).items()
        ],
        "waiting": [
            {"topic": one.topic, "revisits_right": one.stage, "sure": one.sure, "due": one.due(day),
             "due_in_days": round(max(one.day + GAPS_DAYS[one.stage] - day, 0.0), 2)}
            for one in learner.waiting
        ],
        "certainty": [
            {"said": certainty, "count": count, "right": round(share * count)}
            for certainty, (count, share) in certainties_of(learner).items()
        ],
    }  # fmt: skip
    return Result(tuple(lines), document)
