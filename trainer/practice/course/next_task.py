"""Choose the next task: a confident mistake, a misconception to refute, a revisit that is due, or what teaches most."""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass

import numpy as np

from trainer.arrays import Floats
from trainer.practice.course.ability import Ability, expected_answers
from trainer.practice.course.demands import FINDING
from trainer.practice.course.practice_log import CASE, Entry, Learner, Task, abilities_on
from trainer.practice.course.skills import Demand, Skill
from trainer.practice.course.slips import FOUND_FROM, SUSPECTED_FROM, misconception_chances
from trainer.practice.course.waiting import due_now

LEAST, MOST = 0.80, 0.90
"""The share of tasks to be got right: a band taken as a rule of thumb from Wilson, Shenhav, Straccia and Cohen 2019."""

GOAL = 1.5
"""The ability that practice leads to; a skill is needed by as much as it is expected to fall short of this."""

FIRST_PROBED = (
    ("hum_for_circuit", 1), ("firing_order", 1), ("hum_for_circuit", 2), ("firing_order", 2), ("counted_burst", 1),
    ("insisted", 1), ("one_for_group", 1), ("code_for_location", 1),
)  # fmt: skip
"""The commonest misconceptions with so many occasions early, in this order: common practice, no published source."""

AIM, INNER = 0.86, 0.03
"""Where within the band a task is looked for first, and how near to it; what is revisited comes out a little lower."""

LATEST, MOST_SHIFT = 50, 0.11
"""Over so many tasks the share got right corrects the aim, by at most so much: no learner is as the model has it."""

TELLING = 0.17
"""An occasion is evidence of a misconception where others show it by accident no more often than this."""

STALE_AFTER = 8.0
"""After so many other tasks a kind is worth as much again as it teaches."""

EXERCISES_BETWEEN = 2
"""After so many exercises in a row a whole case comes, where one suits."""

MOST_IN_A_ROW = 2
"""So many of one class, or of one kind, may follow one another."""


NEGLECTED_AFTER = 60
"""A kind that has not come for so many tasks comes, however hard or easy it is."""

LONG_AGO = 20
"""Further back than this nobody looks to tell how long a kind was not seen."""


@dataclass(frozen=True, slots=True)
class Chosen:
    """The task that comes next, the chance that it is got right, and why it was chosen.

    `why` is one of `sure_wrong`, `refute`, `revisit`, `probe`, `weakest`; `about` the topic, misconception or skill.
    """

    task: Task
    expected: float
    why: str
    about: str

    @property
    def probed(self) -> str:
        """The misconception that the task must give an occasion for, "" for none."""
        return self.about if self.why in ("refute", "probe") else ""


def choose(tasks: Sequence[Task], learner: Learner, day: float) -> Chosen:
    """Return the next task out of those that could come; earlier ones win ties. Raises ValueError for none."""
    if not tasks:
        raise ValueError("there is nothing to choose from")
    mixed = _mixed(tasks, learner.entries)
    abilities = abilities_on(learner, day)
    chances, worth = _weighed(mixed, abilities)
    for why, about, fits in _reasons(learner, day):
        rows = [row for row, task in enumerate(mixed) if fits(task)]
        if why == "probe":
            rows = [row for row in rows if mixed[row].accident <= TELLING] or rows
        if rows:
            best = _best(rows, chances, worth, mixed, learner.entries)
            return Chosen(mixed[best], float(chances[best]), why, about)
    best = _best(list(range(len(mixed))), chances, worth, mixed, learner.entries)
    needed = max(mixed[best].demands, key=lambda one: _need(abilities[one.skill]))
    return Chosen(mixed[best], float(chances[best]), "weakest", needed.skill.value)


def _mixed(tasks: Sequence[Task], entries: Sequence[Entry]) -> list[Task]:
    """Return the tasks that would not be the third of their class in a row, nor too many of one kind."""
    stale_class, stale_kind = stale([one.kind_class for one in entries]), stale([one.kind for one in entries])
    fresh = [task for task in tasks if not stale_class or task.kind_class != stale_class]
    return [task for task in fresh if task.kind != stale_kind] or fresh or list(tasks)


def stale(names: Sequence[str]) -> str:
    """Return what the last tasks all were, so that the next must not be it; "" where they differ or are too few."""
    last = names[-MOST_IN_A_ROW:]
    return last[0] if len(last) == MOST_IN_A_ROW and len(set(last)) == 1 else ""


def _reasons(learner: Learner, day: float) -> list[tuple[str, str, Callable[[Task], bool]]]:
    """Return what presses, most pressing first, each with the tasks that answer it."""
    due = due_now(learner.waiting, day)
    reasons: list[tuple[str, str, Callable[[Task], bool]]] = []
    reasons += [("sure_wrong", one.topic, _of_topic(one.topic)) for one in due if one.sure]
    held = sorted(
        (name for name, chance in learner.slips.items() if chance >= FOUND_FROM), key=lambda name: -learner.slips[name]
    )
    suspected = [name for name, chance in learner.slips.items() if SUSPECTED_FROM <= chance < FOUND_FROM]
    reasons += [("refute", name, _probing(name)) for name in held if not _just_refuted(name, learner.entries)]
    reasons += [("probe", name, _probing(name)) for name in suspected]
    reasons += [("revisit", one.topic, _of_topic(one.topic)) for one in due if not one.sure]
    reasons += [
        ("probe", name, _probing(name)) for name, count in FIRST_PROBED if learner.occasions.get(name, 0) < count
    ]
    return reasons


def _just_refuted(name: str, entries: Sequence[Entry]) -> bool:
    """Tell whether the last two tasks met a misconception that was found before them: a lecture on one idea tires."""
    met = len(entries) >= 2 and all(name in entry.probes for entry in entries[-2:])
    return met and misconception_chances(entries[:-2]).get(name, 0.0) >= FOUND_FROM


def _of_topic(topic: str) -> Callable[[Task], bool]:
    return lambda task: task.topic == topic


def _probing(name: str) -> Callable[[Task], bool]:
    return lambda task: name in task.probes


def _best(rows: Sequence[int], chances: Floats, worth: Floats, tasks: Sequence[Task], entries: Sequence[Entry]) -> int:
    """Return the row that teaches most of those within the band; without one, the nearest to it."""
    rows = _neglected(rows, tasks, entries) or rows
    aim = _aim(entries)
    within = [row for row in rows if abs(chances[row] - aim) <= INNER]
    within = within or [row for row in rows if LEAST <= chances[row] <= MOST]
    if not within:
        return min(rows, key=lambda row: abs(chances[row] - aim))
    last = [entry.kind for entry in entries[-EXERCISES_BETWEEN:]]
    if len(last) == EXERCISES_BETWEEN and CASE not in last:
        within = [row for row in within if tasks[row].kind == CASE] or within
    since = _since(entries)
    return max(within, key=lambda row: worth[row] * (1.0 + since.get(tasks[row].kind, LONG_AGO) / STALE_AFTER))


def _aim(entries: Sequence[Entry]) -> float:
    """Return the chance of success to look for, higher where fewer were right of late than there should be."""
    latest = [entry for entry in entries[-LATEST:] if entry.answers]
    if len(latest) < LATEST // 2:
        return AIM
    missing = (LEAST + MOST) / 2.0 - sum(entry.right for entry in latest) / len(latest)
    return AIM + min(max(missing, -MOST_SHIFT), MOST_SHIFT)


def _neglected(rows: Sequence[int], tasks: Sequence[Task], entries: Sequence[Entry]) -> list[int]:
    """Return the rows of kinds that have not come for long: nothing is left out for being too hard or too easy."""
    if len(entries) < NEGLECTED_AFTER:
        return []
    seen = {entry.kind for entry in entries[-NEGLECTED_AFTER:]}
    return [row for row in rows if tasks[row].kind not in seen]


def _since(entries: Sequence[Entry]) -> dict[str, int]:
    """Return how many tasks ago each kind last came, for those of the latest."""
    return {entry.kind: ago for ago, entry in reversed(list(enumerate(reversed(entries[-LONG_AGO:]))))}


def _weighed(tasks: Sequence[Task], abilities: Mapping[Skill, Ability]) -> tuple[Floats, Floats]:
    """Return for each task the chance of getting it right, and how much it teaches where that is needed.

    Teaching is taken as what an answer tells of a skill, in bits, times what the skill is expected to lack of its goal.
    """
    asked = list(dict.fromkeys(demand for task in tasks for demand in task.demands))
    mean, bits = expected_answers(np.array([abilities[one.skill].chance for one in asked]), asked)
    needs = {skill: _need(ability) for skill, ability in abilities.items()}
    right = {one: float(chance) for one, chance in zip(asked, mean, strict=True)}
    teaches = {one: float(told) * needs[one.skill] for one, told in zip(asked, bits, strict=True)}
    chances = [math.prod(right[one] for one in task.demands if counted(one, task)) for task in tasks]
    worth = [sum(teaches[one] for one in task.demands) for task in tasks]
    return np.array(chances), np.array(worth)


def counted(one: Demand, task: Task) -> bool:
    """Tell whether a task is right only where this demand is met."""
    return task.kind != CASE or one.skill in FINDING


def _need(ability: Ability) -> float:
    return 0.05 + ability.short_of(GOAL)
