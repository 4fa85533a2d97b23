"""How much a learner reads at first sight, before all the reasons."""

from __future__ import annotations

MOST_WORDS = 45
"""The most words of a debrief, or of what an answer is told, before the rest of the reasons."""


def word_count(*lines: str) -> int:
    """Return how many words lines have together."""
    return sum(len(line.split()) for line in lines)
