"""A one-minute rematch: four sounds of the two that a learner confuses most, two of each, one after the other."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence

from trainer.practice.course.log import Entry
from trainer.practice.exercises.exercise import Spec
from trainer.reasoning.hearing import Heard

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


def rematch_specs(entries: Sequence[Entry], engine: str, seed: int) -> tuple[Spec, ...]:
    """Return four exercises of the ear, in contrast order."""
    pair = [one if one != Heard.EVEN else "what" for one in top_confusion(entries)]
    return tuple(Spec("ear", engine, pair[turn % 2], 3, (seed + turn) % 2**31) for turn in range(4))
