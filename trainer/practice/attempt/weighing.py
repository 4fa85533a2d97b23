"""The learner's path step by step: information gained, findings ruled out, posterior after it."""

from __future__ import annotations

from collections.abc import Hashable, Mapping
from dataclasses import dataclass
from typing import TypeVar

import numpy as np

from trainer.circuit.elements import Location
from trainer.practice.attempt.attempt import Attempt
from trainer.practice.attempt.events import Event
from trainer.practice.attempt.evidence import Answers, evidence_of
from trainer.reasoning.reasoner import Reasoner
from trainer.reasoning.verdict.belief import Belief

Name = TypeVar("Name", bound=Hashable)

OUT_BELOW = 0.01
"""A place or cylinder whose probability falls below this has been ruled out by a step."""


@dataclass(frozen=True, slots=True)
class Weighed:
    """The information in one event: bits, places and cylinders that it ruled out, the best finding's probability.

    `unexplained` says that no hypothesis expects what was shown.
    """

    event: Event
    bits: float
    places_out: tuple[Location, ...]
    cylinders_out: tuple[int, ...]
    sure: float
    unexplained: bool


@dataclass(frozen=True)
class Weighing:
    """All lines weighed, and the belief that they lead to."""

    lines: tuple[Weighed, ...]
    belief: Belief


def weighed(attempt: Attempt, reasoner: Reasoner) -> Weighing:
    """Weigh an attempt's evidence, line by line, up to its finding."""
    shown: Answers = {}
    belief = reasoner.belief(shown)
    lines = []
    for step in evidence_of(attempt, reasoner):
        new = any(
            question not in shown or (shown[question] != answer).any() for question, answer in step.answers.items()
        )
        shown = {**shown, **step.answers}
        after = reasoner.belief(shown) if step.answers else belief
        lines.append(
            Weighed(
                event=step.event,
                bits=told_bits(belief, after) if new else 0.0,
                places_out=tuple(_fell(_places(belief), _places(after))),
                cylinders_out=tuple(_fell(_cylinders(belief), _cylinders(after))),
                sure=max(after.findings.values()),
                unexplained=len(after.unexplained) > len(belief.unexplained),
            )
        )
        belief = after
    return Weighing(tuple(lines), belief)


def told_bits(before: Belief, after: Belief) -> float:
    """Return how many bits lead from one belief to another (Kullback and Leibler): nought where nothing changed."""
    new, old = after.probability, np.maximum(before.probability, 1e-300)
    alive = new > 0.0
    return max(float((new[alive] * np.log2(new[alive] / old[alive])).sum()), 0.0)


def _places(belief: Belief) -> dict[Location, float]:
    return belief.summed(lambda claims: [claim.location for claim in claims])


def _cylinders(belief: Belief) -> dict[int, float]:
    return belief.summed(lambda claims: [number for claim in claims for number in sorted(claim.cylinders)])


def _fell(before: Mapping[Name, float], after: Mapping[Name, float]) -> list[Name]:
    """Return what was possible before and is ruled out now."""
    return [name for name, chance in before.items() if chance >= OUT_BELOW > after.get(name, 0.0)]
