"""The parts of an exercise: its specification, question, choices with their reasons, and what is heard for it."""

from __future__ import annotations

from collections import Counter
from collections.abc import Hashable, Sequence
from dataclasses import dataclass, replace

import numpy as np

from trainer.cases.drawing.practice_case import BEDS_DBA, TEMPERATURE_C
from trainer.cases.drawing.practice_pool import SAME_WITHIN, Pool
from trainer.circuit.chance import Stream
from trainer.circuit.elements import OPEN_OHM
from trainer.circuit.fault import Conditions, Fault
from trainer.circuit.fault_space import comes_and_goes
from trainer.circuit.faults import KINDS
from trainer.circuit.profile import Profile
from trainer.errors import WrongCallError
from trainer.instruments.bench import Work
from trainer.practice.attempt.actions import Solver
from trainer.practice.course.practice_log import Task
from trainer.practice.course.skills import Demand, Skill, demand
from trainer.practice.course.slips import accident_of
from trainer.sound.render import Bed, Sound, render
from trainer.words import cylinders_named, figure, text

LEVELS = 5
"""How many levels a subject's range of difficulty is parted into; the first offers two choices only."""


@dataclass(frozen=True, slots=True)
class Spec:
    """What an exercise is made from: kind, engine, what it is about, level from 1 to LEVELS, seed."""

    kind: str
    profile: str
    subject: str
    level: int
    seed: int

    @property
    def name(self) -> str:
        """The exercise's name, from which it can be made again."""
        return f"{self.kind}.{self.profile}.{self.subject}.{self.level}.{self.seed}"

    @property
    def easiest(self) -> bool:
        """Whether as few choices are offered as can be: two."""
        return self.level == 1

    @property
    def chance(self) -> Stream:
        """The chance that it is made with."""
        return Stream(self.seed, f"exercise {self.kind} {self.profile} {self.subject} {self.level}")


def spec_of(name: str) -> Spec:
    """Parse an exercise's name; raises WrongCallError for any other text."""
    try:
        kind, profile, subject, level, seed = name.split(".")
        found = Spec(kind, profile, subject, int(level), int(seed))
    except ValueError as error:
        raise WrongCallError("no_exercise", name=name) from error
    if not 1 <= found.level <= LEVELS or not 0 <= found.seed < 2**31:
        raise WrongCallError("no_exercise", name=name)
    return found


@dataclass(frozen=True, slots=True)
class Sounding:
    """Something to listen to: an engine with faults at the front, whole or in some slots; `label` says what it is."""

    label: str
    faults: tuple[Fault, ...]
    slots: tuple[int, ...] | None
    bed: Bed
    seed: int


@dataclass(frozen=True, slots=True)
class Choice:
    """One answer to choose, why it is right or wrong, and the misconception that it shows ("" for none).

    `value` tells it from the other answers, whatever the language says it in.
    """

    value: Hashable
    said: str
    why: str
    misconception: str = ""


@dataclass(frozen=True, slots=True)
class Exercise:
    """One question; `right` is the place of the right choice, `about` the misconceptions it gives occasion for."""

    spec: Spec
    profile: Profile
    kind_class: str
    demand: Demand
    asked: str
    choices: tuple[Choice, ...]
    right: int
    rule: str
    shown: tuple[str, ...] = ()
    sounds: tuple[Sounding, ...] = ()
    marked: frozenset[int] = frozenset()
    labels: tuple[str, ...] = ()

    @property
    def task(self) -> Task:
        """The exercise as practice chooses and keeps it."""
        tagged = Counter(choice.misconception for choice in self.choices if choice.misconception)
        return Task(
            kind=self.spec.kind,
            name=self.spec.name,
            topic=topic_of(self.spec),
            kind_class=self.kind_class,
            demands=(self.demand,),
            probes=tuple(tagged),
            accident=accident_of(max(tagged.values(), default=0), len(self.choices) - 1),
        )


def topic_of(spec: Spec) -> str:
    """Return the topic under which a missed exercise is revisited."""
    return f"{spec.kind}:{spec.subject}"


def shuffled_choices(spec: Spec, choices: Sequence[Choice], chance: Stream) -> tuple[tuple[Choice, ...], int]:
    """Return the choices shuffled, and the index of the right one, which comes first in `choices`.

    Choices of equal value are offered once. At the easiest level only one wrong choice is offered, drawn at random.
    """
    first = choices[0]
    wrong = list({choice.value: choice for choice in reversed(choices) if choice.value != first.value}.values())
    if spec.easiest and len(wrong) > 1:
        wrong = [wrong[chance.below(len(wrong))]]
    left = [first, *wrong]
    mixed = []
    while left:
        mixed.append(left.pop(chance.below(len(left))))
    return tuple(mixed), mixed.index(first)


def question_demand(skill: Skill, difficulty: float, choices: Sequence[Choice]) -> Demand:
    """Return the demand of a question, with the chance of guessing it."""
    return demand(skill, difficulty, round(1.0 / len(choices), 2))


def fault_text(fault: Fault) -> str:
    """Return a fault in words, as one of several to choose from: with its ohms where less would be another thing."""
    place = text(f"location.{fault.location}")
    if fault.side is not None:
        place = f"{place}, {text(f'side.{fault.side}')}"
    said = text(
        "exercise.fault", kind=text(f"kind.{fault.kind}"), location=place, cylinders=cylinders_named(fault.cylinders)
    )
    ohms = _ohms_named(fault)
    return said if ohms is None else f"{said} ({figure(ohms, 'g')} Ω)"


def _ohms_named(fault: Fault) -> float | None:
    kind = KINDS[fault.kind]
    several = kind.unit == "ohm" and len(kind.severities) > 1
    return fault.amount() if several and fault.amount() < OPEN_OHM else None


def fault_value(fault: Fault) -> Hashable:
    """Return what `fault_text` tells of a fault, as a value: faults that it names alike are equal."""
    return fault.kind, fault.location, fault.side, frozenset(fault.cylinders), _ohms_named(fault)


def unambiguous_faults(pool: Pool) -> tuple[int, ...]:
    """Return the faults of a pool that are told apart by their names, without names for different codes or sound."""
    by_name: dict[Hashable, list[int]] = {}
    for place in range(len(pool.rows)):
        by_name.setdefault(fault_value(pool.fault(place)), []).append(place)
    margins = pool.table(BEDS_DBA[0]).margins
    return tuple(
        places[0]
        for places in by_name.values()
        if np.ptp(margins[places]) < SAME_WITHIN and (pool.codes[places] == pool.codes[places[0]]).all()
    )


def render_sounding(profile: Profile, what: Sounding, solver: Solver) -> Sound:
    """Render a sounding, with an intermittent fault present."""
    shy = next((one.location for one in what.faults if comes_and_goes(one, profile, TEMPERATURE_C)), None)
    work = Work(conditions=Conditions(TEMPERATURE_C))
    if shy is not None:
        work = replace(work, conditions=replace(work.conditions, moved=shy, heated=shy))
    return render(solver(profile, what.faults, work), "front", what.bed, what.seed, what.slots)
