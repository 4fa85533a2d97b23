"""The log of a learner's practice: one entry for each finished task, and the learner's state computed from them."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import UTC, datetime
from typing import Any

from trainer.practice.course.ability import Ability, ability_after, ability_of
from trainer.practice.course.skills import Answer, Demand, Skill
from trainer.practice.course.slips import LEAST_ACCIDENT, misconception_chances, occasions_of
from trainer.practice.course.topics import review_topic
from trainer.practice.course.waiting import Waiting, waiting_after
from trainer.words import TEXTS

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


@dataclass(frozen=True, slots=True)
class Entry:
    """One task ended: right or wrong, how sure, the misconception shown ("" for none), and what it told of skills.

    `lesson` is which lesson it was, 0 for none. `confused` are the sound that it was and the one that it was taken for,
    where one was asked for.
    """

    kind: str
    topic: str
    kind_class: str
    right: bool
    certainty: float
    misconception: str
    probes: tuple[str, ...]
    answers: tuple[Answer, ...]
    day: float
    confused: tuple[str, ...] = ()
    accident: float = LEAST_ACCIDENT
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


def entries_of(kept: Iterable[tuple[str, Mapping[str, Any]]]) -> Iterator[Entry]:
    """Yield the entries of what was kept (time, data), leaving out what another version of the program wrote."""
    for at, data in kept:
        try:
            yield entry_from(data, at)
        except (KeyError, TypeError, ValueError, OverflowError):
            continue


def abilities_on(learner: Learner, day: float) -> dict[Skill, Ability]:
    """Return abilities as estimated on a day."""
    return {skill: ability_after(ability, day) for skill, ability in learner.abilities.items()}


def day_of(at: str) -> float:
    """Return a time (UTC, ISO 8601) as days since 1970; raises ValueError for a text that is none."""
    told = datetime.fromisoformat(at)
    return (told if told.tzinfo else told.replace(tzinfo=UTC)).timestamp() / DAY_S


def entry_data(
    task: Task, told: Iterable[tuple[Demand, bool]], *, right: bool, certainty: float, misconception: str
) -> dict[str, Any]:
    """Return an entry as the event that ends a task keeps it."""
    return {
        "kind": task.kind,
        "topic": task.topic,
        "class": task.kind_class,
        "right": right,
        "certainty": certainty,
        "misconception": misconception,
        "probes": list(task.probes),
        "accident": task.accident,
        "answers": [[one.skill.value, one.difficulty, one.guess, was_right] for one, was_right in told],
    }


def entry_from(data: Mapping[str, Any], at: str) -> Entry:
    """Return the entry that plain data describe; raises KeyError and its like for data that are none."""
    day = day_of(at)
    answers = tuple(
        Answer(Demand(Skill(skill), float(difficulty), float(guess)), bool(right), day)
        for skill, difficulty, guess, right in data["answers"]
    )
    certainty, misconception = float(data["certainty"]), str(data["misconception"])
    accident, confused = (
        float(data.get("accident", LEAST_ACCIDENT)),
        tuple(str(one) for one in data.get("confused", ())),
    )
    if not 0.0 < certainty < 1.0 or not 0.0 < accident < 1.0:
        raise ValueError("a chance out of range")
    named = [f"misconception.{name}" for name in data["probes"]] + [f"heard.{one}" for one in confused]
    named += [f"task.{data['kind']}"] + ([f"misconception.{misconception}"] if misconception else [])
    if any(key not in TEXTS for key in named):
        raise ValueError("something that this version does not know")
    return Entry(
        kind=str(data["kind"]),
        topic=str(data["topic"]),
        kind_class=str(data["class"]),
        right=bool(data["right"]),
        certainty=certainty,
        misconception=misconception,
        probes=tuple(str(name) for name in data["probes"]),
        answers=answers,
        day=day,
        confused=confused,
        accident=accident,
        lesson=int(data.get("lesson", 0)),
    )
