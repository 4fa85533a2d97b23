"""Learners that answer by chance and an ability of their own: what practice knows of them is only right or wrong."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, field

import numpy as np

from tests.universes import POOLS
from trainer.cases.drawing.practice_pool import Pool
from trainer.cases.single_case.shipped import profile_named, profile_names
from trainer.circuit.elements import Location
from trainer.practice.course.demands import FINDING
from trainer.practice.course.next_task import Chosen, choose
from trainer.practice.course.practice_log import CASE, Entry, Learner, Task, learner_of
from trainer.practice.course.skills import Answer, Demand, Skill
from trainer.practice.course.slips import WRONG_SHARE
from trainer.practice.exercises.candidate_tasks import tasks_for

TASKS_A_DAY = 20
CLASSES = tuple(place.value for place in Location)
FRESH_EVERY = 8
"""After so many tasks there is something else to choose from: drawing costs most of a simulation."""

RECENT = 700
"""What practice still thinks of; older entries change nothing that a test could see."""

Chance = np.random.Generator


def shipped_pools() -> list[Pool]:
    """Return the pools of the shipped engines."""
    return [POOLS(profile_named(name)) for name in profile_names()]


@dataclass
class Simulated:
    """A learner with one true ability a skill; `slope` is how sharply ability tells; `holds` a misconception, or ""."""

    abilities: dict[Skill, float]
    slope: float = 1.0
    lapse: float = 0.0
    holds: str = ""
    entries: list[Entry] = field(default_factory=list)

    def knows(self, demand: Demand, chance: Chance) -> bool:
        """Tell whether a demand is met this time."""
        likely = 1.0 / (1.0 + np.exp(-self.slope * (self.abilities[demand.skill] - demand.difficulty)))
        likely = demand.guess + (1.0 - demand.guess) * likely
        return bool(chance.random() < (1.0 - self.lapse) * likely + self.lapse * demand.guess)

    def takes(self, task: Task, day: float, chance: Chance) -> Entry:
        """Answer a task; one who holds a misconception shows it on most occasions."""
        shown = bool(self.holds) and self.holds in task.probes and chance.random() < 0.9
        told: list[tuple[Demand, bool]] = []
        right = not shown
        for demand in task.demands:
            met = self.knows(demand, chance) and not (shown and not told)
            told.append((demand, met))
            if not met and (task.kind != CASE or demand.skill in FINDING):
                right = False
                if task.kind == CASE and demand.skill in (Skill.HEARING, Skill.NUMBERING):
                    break
        if not shown and not right and task.probes and chance.random() < task.accident / WRONG_SHARE:
            showing = str(chance.choice(task.probes))  # a slip that looks like an idea
        else:
            showing = self.holds if shown else ""
        entry = Entry(
            kind=task.kind, topic=task.topic, kind_class=task.kind_class or self._fresh_class(chance), right=right,
            certainty=0.95 if chance.random() < 0.4 else 0.75, misconception=showing,
            probes=task.probes, answers=tuple(Answer(one, met, day) for one, met in told), day=day,
            accident=task.accident,
        )  # fmt: skip
        self.entries.append(entry)
        return entry

    def _fresh_class(self, chance: Chance) -> str:
        """Return what an exercise turned out to be about, as a desk makes it: never the third of a class in a row."""
        last = {entry.kind_class for entry in self.entries[-2:]}
        stale = last if len(last) == 1 and len(self.entries) > 1 else set()
        return str(chance.choice([name for name in CLASSES if name not in stale]))


Pick = Callable[[Sequence[Task], Learner, float], Chosen]


def practise(
    learner: Simulated, count: int, chance: Chance, pick: Pick = choose, after: Callable[[Entry], None] = lambda _: None
) -> list[Chosen]:
    """Let a learner practise so many tasks, some a day; return what was chosen."""
    pools, chosen = shipped_pools(), []
    tasks: list[Task] = []
    for number in range(count):
        if number % FRESH_EVERY == 0:
            tasks = tasks_for(pools, chance)
        day = number / TASKS_A_DAY
        one = pick(tasks, learner_of(learner.entries[-RECENT:]), day)
        after(learner.takes(one.task, day, chance))
        chosen.append(one)
    return chosen


def alike(level: float) -> dict[Skill, float]:
    """Return the same ability in every skill."""
    return dict.fromkeys(Skill, level)
