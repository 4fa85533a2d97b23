"""Estimate which misconceptions a learner holds: each occasion to show one is evidence for or against it.

Bayes' rule: one who holds it shows it on most occasions (from memory), one who does not by an accident whose chance
each task states: how often it is got wrong, times the share of its wrong answers that would look so.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from typing import Protocol

HELD, SHOWN_IF_HELD = 0.2, 0.75
SUSPECTED_FROM, FOUND_FROM = 0.22, 0.75
"""From these chances on a misconception is looked at once more, and called found: its refutation comes next.

One slip alone never makes one found: everybody slips.
"""

WRONG_SHARE = 0.25
"""How often a task is taken to be got wrong by one who holds nothing wrong."""

LEAST_ACCIDENT = 0.08
"""A whole case, or a question with many ways to be wrong, shows one by accident no more rarely than this."""

LATEST = 8
"""So many of the latest occasions count: a misconception can be unlearned."""


class Occasions(Protocol):
    """An entry's misconceptions: those it could show, the chance to show one by accident, and the one it did, or ""."""

    @property
    def probes(self) -> tuple[str, ...]: ...

    @property
    def accident(self) -> float: ...

    @property
    def misconception(self) -> str: ...


def occasions_of(entries: Sequence[Occasions]) -> dict[str, int]:
    """Return how many occasions there were to show each misconception."""
    return dict(Counter(name for entry in entries for name in entry.probes))


def misconception_chances(entries: Sequence[Occasions]) -> dict[str, float]:
    """Return the chance of each misconception that there was an occasion for."""
    occasions: dict[str, list[tuple[bool, float]]] = {}
    for entry in entries:
        for name in entry.probes:
            occasions.setdefault(name, []).append((entry.misconception == name, entry.accident))
    return {name: _held(shown[-LATEST:]) for name, shown in occasions.items()}


def _held(shown: Sequence[tuple[bool, float]]) -> float:
    chance = HELD
    for one, accident in shown:
        if_held = SHOWN_IF_HELD if one else 1.0 - SHOWN_IF_HELD
        if_not = accident if one else 1.0 - accident
        chance = chance * if_held / (chance * if_held + (1.0 - chance) * if_not)
    return chance


def accident_of(tagged: int, wrong: int) -> float:
    """Return the chance that one who holds nothing wrong shows a misconception: by so many of the wrong answers."""
    return round(max(WRONG_SHARE * tagged / max(wrong, 1), LEAST_ACCIDENT), 3)
