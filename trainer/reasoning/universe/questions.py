"""What can be asked of an engine as it stands, and what each hypothesis would answer."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cache
from typing import Literal

import numpy as np

from trainer.arrays import Floats
from trainer.instruments.bench import Pin, Work
from trainer.instruments.bench_tests import BenchTest, Operation, Price

SPREAD = 1e-3
"""Share of answers that are anything: a slip of ear, hand or pen."""

SPAN = 100.0
"""Over how many units such an answer may lie."""

PLAIN = 1.0 / np.sqrt(2.0 * np.pi)


@dataclass(frozen=True, slots=True)
class Question:
    """One thing to look at, with the engine as it then stands.

    `slot` is heard from `place`; a resistance lies between two pins, or a pin and ground; a code is read in a memory
    that has been cleared or not, after a whole test (`tested`) or before any; `known` codes had been read in it before.
    """

    kind: Literal["slot", "codes", "ohms", "insulation", "drop", "supply", "trace", "dummy", "look"]
    work: Work
    slot: int = 0
    place: str = "front"
    pins: tuple[Pin | None, ...] = ()
    cleared: bool = False
    tested: bool = True
    known: frozenset[str] = frozenset()


@dataclass(frozen=True, slots=True)
class Expected:
    """What every hypothesis expects: values on a scale of standard deviations, or chances of flags.

    Shape (hypothesis, part); the parts of one answer are independent.
    """

    values: Floats
    flags: bool = False

    def log_likelihood(self, answer: Floats) -> Floats:
        """Return the natural logarithm of each hypothesis's chance of an answer, shape (hypothesis,)."""
        return np.asarray(self.parts(answer).sum(axis=1))

    def parts(self, answer: Floats) -> Floats:
        """Return the same for each part of the answer apart."""
        if self.flags:
            chance = np.where(answer > 0.5, self.values, 1.0 - self.values)
            return np.asarray(np.log(np.clip(chance, 1e-12, 1.0)))
        near = PLAIN * np.exp(-0.5 * np.minimum((self.values - answer) ** 2, 1400.0))
        return np.asarray(np.log((1.0 - SPREAD) * near + SPREAD / SPAN))

    def explains(self, answer: Floats) -> bool:
        """Tell whether any hypothesis expects every part of an answer within four standard deviations."""
        if self.flags:
            return True
        return bool((np.abs(self.values - answer).max(axis=1) < EXPLAINED_WITHIN).any())


EXPLAINED_WITHIN = 4.0

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


@cache
def name_of(question: Question) -> str:
    """Return a name that is the same in every run; two questions are the same when their names are."""
    work, conditions = question.work, question.work.conditions
    pins = ["-" if pin is None else f"{pin.break_point}/{pin.half}/{pin.side}/{pin.name}" for pin in question.pins]
    parts: list[object] = [
        question.kind, question.slot, question.place, *pins, question.cleared, question.tested, sorted(question.known),
        conditions.temperature_c, conditions.moved, conditions.heated, sorted(conditions.reseated),
        sorted(work.unplugged), sorted(work.covers_off), work.swapped, sorted(work.replaced),
        sorted(work.dummy_loads), sorted(work.spread),
    ]  # fmt: skip
    return " ".join(str(part) for part in parts)


def in_order(answers: Answers) -> Sequence[Question]:
    """Return the questions in an order that does not depend on when they were asked, so that sums are the same."""
    return sorted(answers, key=name_of)
