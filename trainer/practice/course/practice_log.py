"""The log of a learner's practice: one entry for each finished task, and the learner's state computed from them."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import UTC, datetime
from typing import Annotated

from pydantic import AfterValidator, Field, JsonValue, TypeAdapter

from trainer.practice.course.ability import Ability, ability_after, ability_of
from trainer.practice.course.skills import Answer, Demand, Skill
from trainer.practice.course.slips import LEAST_ACCIDENT, misconception_chances, occasions_of
from trainer.practice.course.topics import review_topic
from trainer.practice.course.waiting import Waiting, waiting_after
from trainer.words import has

CASE = "case"
"""The kind of a whole case; every other kind is an exercise's."""

DAY_S = 86_400.0


def topic_of_class(kind_class: str) -> str:
    """Return the topic under which a missed case is revisited."""
    return f"{CASE}:{kind_class}"


@dataclass(frozen=True, slots=True)
class Task:
    """What a learner can be given: a case or an exercise by its name, and what practice mixes and revisits it by.

    `topic` is what a miss is revisited under, `probes` the misconceptions that it gives an occasion to show, and
    `accident` the chance that one of them is shown by somebody who does not hold it.
    """

    kind: str
    name: str
    topic: str
    kind_class: str
    demands: tuple[Demand, ...]
    probes: tuple[str, ...] = ()
    accident: float = LEAST_ACCIDENT


def _known(prefix: str) -> AfterValidator:
    def check(name: str) -> str:
        if name and not has(f"{prefix}.{name}"):
            raise ValueError("something that this version does not know")
        return name

    return AfterValidator(check)


Chance = Annotated[float, Field(gt=0.0, lt=1.0)]
Misconception = Annotated[str, _known("misconception")]


@dataclass(frozen=True, slots=True)
class Entry:
    """A finished task: right or wrong, how sure, the misconception shown ("" for none), its answers by skill.

    `lesson` is its number, 0 for none. `confused` are the true sound and the one that was named, where a sound was
    asked for.
    """

    kind: Annotated[str, Field(min_length=1), _known("task")]
    topic: str
    kind_class: str
    right: bool
    certainty: Chance
    misconception: Misconception
    probes: tuple[Misconception, ...]
    answers: tuple[Answer, ...]
    day: float
    confused: tuple[Annotated[str, _known("heard")], ...] = ()
    accident: Chance = LEAST_ACCIDENT
    lesson: int = 0


@dataclass(frozen=True)
class Learner:
    """A learner's state: all entries, abilities, and topics that wait for a revisit.

    `slips` is the chance that each misconception is held, `occasions` how often there was one to show it.
    """

    entries: tuple[Entry, ...]
    abilities: Mapping[Skill, Ability]
    waiting: tuple[Waiting, ...]
    slips: Mapping[str, float]
    occasions: Mapping[str, int]


def learner_of(entries: Sequence[Entry]) -> Learner:
    """Return a learner's state after entries, in the order in which they were written."""
    answers: dict[Skill, list[Answer]] = {skill: [] for skill in Skill}
    for entry in entries:
        for answer in entry.answers:
            answers[answer.demand.skill].append(answer)
    waiting: tuple[Waiting, ...] = ()
    for entry in entries:
        topic = review_topic(entry.topic)
        if topic and entry.answers:  # what was worked for the learner is neither missed nor made up for
            waiting = waiting_after(waiting, topic, entry.right, entry.certainty, entry.day)
    abilities = {skill: ability_of(told) for skill, told in answers.items()}
    return Learner(tuple(entries), abilities, waiting, misconception_chances(entries), occasions_of(entries))


def entries_of(kept: Iterable[tuple[str, Mapping[str, JsonValue]]]) -> Iterator[Entry]:
    """Yield the entries of stored records (time, JSON), leaving out what another version of the program wrote."""
    for at, data in kept:
        try:
            yield entry_from(data, at)
        except (ValueError, OverflowError):
            continue


def abilities_on(learner: Learner, day: float) -> dict[Skill, Ability]:
    """Return abilities as estimated on a day."""
    return {skill: ability_after(ability, day) for skill, ability in learner.abilities.items()}


def day_of(at: str) -> float:
    """Return a time (UTC, ISO 8601) as days since 1970; raises ValueError for any other text."""
    told = datetime.fromisoformat(at)
    return (told if told.tzinfo else told.replace(tzinfo=UTC)).timestamp() / DAY_S


def entry_json(
    task: Task,
    answers: Iterable[tuple[Demand, bool]],
    *,
    right: bool,
    certainty: float,
    misconception: str,
    confused: tuple[str, str] | None = None,
    lesson: int = 0,
) -> dict[str, JsonValue]:
    """Return an entry as JSON for the event that ends a task; sounds confused and lesson only where there are any."""
    data: dict[str, JsonValue] = {
        "kind": task.kind,
        "topic": task.topic,
        "class": task.kind_class,
        "right": right,
        "certainty": certainty,
        "misconception": misconception,
        "probes": list(task.probes),
        "accident": task.accident,
        "answers": [[one.skill.value, one.difficulty, one.guess, was_right] for one, was_right in answers],
    }
    return data | ({"confused": list(confused)} if confused else {}) | ({"lesson": lesson} if lesson else {})


def entry_from(data: Mapping[str, JsonValue], at: str) -> Entry:
    """Return the entry that JSON describes; raises ValueError for one that this version cannot read."""
    day = day_of(at)
    rows = _ANSWERS.validate_python(data.get("answers"))
    answers = tuple(Answer(Demand(skill, difficulty, guess), right, day) for skill, difficulty, guess, right in rows)
    return _ENTRY.validate_python({**data, "kind_class": data.get("class"), "day": day, "answers": answers})


_ENTRY = TypeAdapter(Entry)
_ANSWERS = TypeAdapter(list[tuple[Skill, float, float, bool]])
"""Answers as they are stored: skill, difficulty, the chance of guessing right, and whether it was right."""
