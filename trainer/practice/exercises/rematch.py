"""A one-minute rematch: four sounds of the two that a learner confuses most, two of each beside one another."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass

from trainer.practice.course.practice_log import Entry
from trainer.practice.exercises.exercise_types import Spec
from trainer.reasoning.universe.hearing import Heard

USUAL = (str(Heard.VERY_FAINT), str(Heard.DULL))
"""What is most often confused where a learner has not shown anything yet: the classic mishearing."""


def top_confusion(entries: Sequence[Entry]) -> tuple[str, str]:
    """Return the two sounds that were most often taken for one another, the latest pair among equals."""
    pairs = [tuple(sorted(entry.confused)) for entry in entries if len(set(entry.confused)) == 2]
    if not pairs:
        return USUAL
    counts = Counter(pairs)
    first, second = max(counts, key=lambda pair: (counts[pair], len(pairs) - pairs[::-1].index(pair)))
    return first, second


ORDERS = ((0, 1, 0, 1), (0, 1, 1, 0), (1, 0, 0, 1), (1, 0, 1, 0))
"""Each sound has the other beside it; which comes when, nobody can tell beforehand."""


REMATCH = "rematch"
"""Why an exercise of a rematch came."""


@dataclass(frozen=True, slots=True)
class Round:
    """One sound of a rematch: its exercise, and what it is about: the two sounds, which of how many."""

    spec: Spec
    about: str


def rematch_of(entries: Sequence[Entry], engine: str, seed: int) -> tuple[Round, ...]:
    """Return four exercises of the ear, two of each sound."""
    pair = top_confusion(entries)
    turns = ORDERS[seed % len(ORDERS)]
    return tuple(
        Round(Spec("ear", engine, pair[turn], 3, (seed + row) % 2**31), f"{pair[0]} {pair[1]} {row + 1} {len(turns)}")
        for row, turn in enumerate(turns)
    )
