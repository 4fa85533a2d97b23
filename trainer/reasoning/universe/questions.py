"""What can be asked of an engine as it stands, and what each hypothesis would answer."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, fields, replace
from functools import cache, lru_cache
from typing import Literal

import numpy as np

from trainer.arrays import Floats
from trainer.circuit.fault import Conditions
from trainer.instruments.bench import Pin, Work
from trainer.instruments.bench_tests import BenchTest, Operation, Price
from trainer.instruments.tries import CHANCE, GLANCE, Try

SPREAD = 1e-3
"""Share of answers that are anything: a slip of ear, hand or pen."""

SPAN = 100.0
"""Over how many units such an answer may lie."""


FLAG_UP = 0.5
"""The chance from which on a flag is up."""

EXAMINED = frozenset({"look", "drag"})
"""Questions to eyes and to a matching pin, at what is open."""

RUNNING = frozenset({"contribution", "compression"})
"""Questions to the running or cranking engine: which cylinders are weak."""


@dataclass(frozen=True, slots=True)
class Question:
    """One thing to look at, with the engine as it then stands.

    `slot` is heard from `place`; a resistance lies between two pins, or a pin and ground; a code is read in a memory
    that has been cleared or not, after a whole test (`tested`) or before any; `known` codes had been read in it before.
    Ohms in which the meter kept the least and the most are `captured`.
    """

    kind: Literal[
        "slot",
        "codes",
        "ohms",
        "insulation",
        "volts",
        "lamp",
        "crank",
        "plus_drop",
        "ground_drop",
        "drop",
        "supply",
        "trace",
        "clamp",
        "dummy",
        "contribution",
        "compression",
        "look",
        "drag",
    ]
    work: Work
    slot: int = 0
    place: str = "front"
    pins: tuple[Pin | None, ...] = ()
    cleared: bool = False
    tested: bool = True
    known: frozenset[str] = frozenset()
    captured: bool = False

    def states(self) -> States:
        """Return the states that the engine can be in, each with its chance where a fault heeds what is tried.

        In a try a fault shows itself or does not; where nothing is tried there is one state.
        """
        return _states_of(self)

    @property
    def seen(self) -> float:
        """The chance that a contact which opens for a moment is seen by what is asked: an ohmmeter may miss it."""
        return GLANCE if self.kind == "ohms" and not self.captured else 1.0

    def before_work(self) -> Question:
        """Return the slot as it is heard before anything is done to the engine; any other question as it is."""
        if self.kind != "slot":
            return self
        plain = Conditions(temperature_c=self.work.conditions.temperature_c)
        return replace(self, work=Work(conditions=plain))

    def first_try(self) -> Question:
        """Return the same question in the first try: every try is expected to show the same."""
        moving, warming = (
            one and replace(one, number=min(one.number, 1)) for one in (self.work.moving, self.work.warming)
        )
        return replace(self, work=replace(self.work, moving=moving, warming=warming))


States = tuple[tuple[float, Question], ...]


@lru_cache(5000)
def _states_of(question: Question) -> States:
    work = question.work
    if question.kind in EXAMINED:
        return ((1.0, question),)
    if question.kind in RUNNING:
        return ((1.0, replace(question, work=work.physical())),)
    moving, warming = _ways(work.moving, question.seen), _ways(work.warming, 1.0)
    return tuple(
        (
            first * second,
            replace(question, work=replace(work, moving=moved, warming=warmed).physical(), captured=False),
        )
        for first, moved in moving
        for second, warmed in warming
    )


def _ways(one: Try | None, seen: float) -> list[tuple[float, Try | None]]:
    if one is None or one.settled:
        return [(1.0, one)]
    chance = CHANCE[one.effort] * seen
    return [(chance, replace(one, shows=True)), (1.0 - chance, replace(one, shows=False))]


@dataclass(frozen=True, slots=True)
class Prediction:
    """What every hypothesis predicts of an answer: values on a scale of standard deviations, or chances of flags.

    All have shape (hypothesis, part). `slope` is what one standard deviation of severity adds, `variance` what is
    uncertain beside the scale's own unit, `common` one standard deviation of what moves all slots of a test together.
    """

    values: Floats
    slope: Floats | None = None
    variance: Floats | None = None
    common: Floats | None = None

    def each(self, change: Callable[[Floats], Floats]) -> Prediction:
        """Return the same with every array changed."""
        arrays = (getattr(self, field.name) for field in fields(self))
        return Prediction(*(None if one is None else change(one) for one in arrays))  # type: ignore[arg-type]

    def allows(self, answer: Floats) -> bool:
        """Tell whether any hypothesis predicts every part of an answer within four standard deviations."""
        spread = np.ones_like(self.values)
        spread += 0.0 if self.variance is None else self.variance
        for one in (self.slope, self.common):
            spread += 0.0 if one is None else one**2
        return bool(((self.values - answer) ** 2 / spread).max(axis=1).min() < EXPLAINED_WITHIN**2)


@dataclass(frozen=True, slots=True)
class Expected:
    """What every hypothesis expects of a question, in each state that the engine can be in.

    In a try, a fault shows itself in the first state and does not in the others; `weights` are the states' chances.
    """

    states: tuple[Prediction, ...]
    flags: bool = False
    weights: tuple[float, ...] = (1.0,)

    @property
    def values(self) -> Floats:
        """The values where a fault shows itself."""
        return self.states[0].values

    def each(self, change: Callable[[Floats], Floats]) -> Expected:
        """Return the same with every array changed."""
        return replace(self, states=tuple(state.each(change) for state in self.states))

    def explains(self, answer: Floats) -> bool:
        """Tell whether any hypothesis expects every part of an answer within four standard deviations."""
        return self.flags or any(state.allows(answer) for state in self.states)


EXPLAINED_WITHIN = 4.0


class OnDemand(Mapping[Question, Expected]):
    """What is expected of some questions, worked out as each is looked up: kept for all, it would fill the memory."""

    def __init__(self, questions: Iterable[Question], work_out: Callable[[Question], Expected]) -> None:
        self._questions, self._work_out = dict.fromkeys(questions), work_out

    def __getitem__(self, question: Question) -> Expected:
        if question not in self._questions:
            raise KeyError(question)
        return self._work_out(question)

    def __iter__(self) -> Iterator[Question]:
        return iter(self._questions)

    def __len__(self) -> int:
        return len(self._questions)


Answers = Mapping[Question, Floats]
"""Evidence: what was seen, as values on the same scale or as flags."""


@dataclass(frozen=True, slots=True)
class Test:
    """Something to do next: its name, what it costs, whether everything is plugged back for it, what it answers.

    `needs` are prices that must have been paid before: codes are read, and injectors probed, after a whole test.
    `opens` is what must be open before everything is plugged back.
    """

    name: BenchTest
    prices: tuple[Price, ...]
    plugged: bool
    questions: tuple[Question, ...]
    needs: tuple[Price, ...] = ()
    opens: tuple[Price, ...] = ()

    @property
    def operations(self) -> frozenset[Operation]:
        """Every operation that it takes."""
        return frozenset(price.operation for price in (*self.prices, *self.needs, *self.opens))


def _try_name(one: Try | None) -> str:
    return "-" if one is None else f"{one.bank}/{one.number}/{one.effort}/{one.shows}"


def states_in(tests: Iterable[Test]) -> list[Question]:
    """Return the questions of tests in every state that the engine can be in, each once: what is kept of a universe."""
    return list(dict.fromkeys(state for test in tests for one in test.questions for _chance, state in one.states()))


@cache
def name_of(question: Question) -> str:
    """Return a name that is the same in every run; two questions are the same when their names are."""
    work, conditions = question.work, question.work.conditions
    pins = ["-" if pin is None else f"{pin.break_point}/{pin.half}/{pin.side}/{pin.name}" for pin in question.pins]
    parts: list[object] = [
        question.kind, question.slot, question.place, *pins, question.cleared, question.tested, sorted(question.known),
        conditions.temperature_c, conditions.moved, conditions.heated, sorted(conditions.reseated),
        sorted(work.unplugged), sorted(work.covers_off), work.swapped, sorted(work.replaced),
        sorted(work.dummy_loads), sorted(work.spread), question.captured, *map(_try_name, (work.moving, work.warming)),
        work.ran_warm,
    ]  # fmt: skip
    return " ".join(str(part) for part in parts)


def in_order(answers: Answers) -> Sequence[Question]:
    """Return the questions in an order that does not depend on when they were asked, so that sums are the same."""
    return sorted(answers, key=name_of)
