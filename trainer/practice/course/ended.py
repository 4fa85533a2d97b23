"""Create the practice log's entry for a finished case from its outcome and its features."""

from __future__ import annotations

from pydantic import JsonValue

from trainer.cases.drawing.features import Features
from trainer.practice.attempt.outcome import Outcome
from trainer.practice.course.demands import answers_of, case_demands, probes_of
from trainer.practice.course.lessons import TO_COMPLETE, WORKED
from trainer.practice.course.practice_log import CASE, Task, entry_json, topic_of_class


def case_entry(outcome: Outcome, found: Features, lesson: int) -> dict[str, JsonValue]:
    """Return a closed case's entry as plain data; a case worked for the learner says nothing about skills."""
    demands = case_demands(found)
    told = [] if lesson in (WORKED, TO_COMPLETE) else answers_of(outcome, demands)
    probes = () if lesson in (WORKED, TO_COMPLETE) else probes_of(found)
    task = Task(CASE, "", topic_of_class(found.kind_class), found.kind_class, demands, probes)
    misconception = "" if outcome.right else outcome.misconception
    return entry_json(
        task, told, right=outcome.right, certainty=outcome.certainty, misconception=misconception, lesson=lesson
    )
