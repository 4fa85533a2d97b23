"""Skills, what a task demands of each, and answers to such demands."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum


class Skill(StrEnum):
    """What a learner gets better at, each with an ability of its own."""

    HEARING = "hearing"
    NUMBERING = "numbering"
    CODES = "codes"
    MEASURING = "measuring"
    REASONING = "reasoning"
    LIMITS = "limits"


HARDEST = 3.0
"""Difficulties lie within this many logits around the middle; what is computed beyond is cut there."""


@dataclass(frozen=True, slots=True)
class Demand:
    """What a case or exercise asks of one skill.

    `difficulty` is the ability, in logits, that gets it right halfway between guessing and always; `guess` the chance
    of a right answer without any ability.
    """

    skill: Skill
    difficulty: float
    guess: float = 0.0

    def __post_init__(self) -> None:
        if not -HARDEST <= self.difficulty <= HARDEST or not 0.0 <= self.guess < 1.0:
            raise ValueError(f"a demand of difficulty {self.difficulty} and guess {self.guess} cannot be")


def demand(skill: Skill, difficulty: float, guess: float = 0.0) -> Demand:
    """Return a demand, its difficulty cut to the hardest and the easiest there are, to a hundredth."""
    return Demand(skill, round(min(max(difficulty, -HARDEST), HARDEST), 2), guess)


@dataclass(frozen=True, slots=True)
class Answer:
    """Whether one demand was met, and on which day (days since 1970, UTC)."""

    demand: Demand
    right: bool
    day: float
