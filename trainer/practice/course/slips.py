"""Which misconceptions a learner holds, as a chance for each: every occasion to show one tells for or against it.

Bayes' rule with two chances from memory: one who holds it shows it on most occasions, one who does not by accident.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from typing import Protocol

HELD, SHOWN_IF_HELD, SHOWN_IF_NOT = 0.2, 0.75, 0.04
FOUND_FROM = 0.5
"""From this chance on a misconception is called found and its refutation comes next."""

LATEST = 8
"""So many of the latest occasions count: a misconception can be unlearned."""


class Occasions(Protocol):
    """What is asked of an entry: the misconceptions that it could show and the one that it did, "" for none."""

    @property
    def probes(self) -> tuple[str, ...]: ...

    @property
    def misconception(self) -> str: ...


def occasions_of(entries: Sequence[Occasions]) -> dict[str, int]:
    """Return how many occasions there were to show each misconception."""
    return dict(Counter(name for entry in entries for name in entry.probes))


def holding(entries: Sequence[Occasions]) -> dict[str, float]:
    """Return the chance of each misconception that there was an occasion for."""
    occasions: dict[str, list[bool]] = {}
    for entry in entries:
        for name in entry.probes:
            occasions.setdefault(name, []).append(entry.misconception == name)
    return {name: _held(shown[-LATEST:]) for name, shown in occasions.items()}


def _held(shown: Sequence[bool]) -> float:
    chance = HELD
    for one in shown:
        if_held = SHOWN_IF_HELD if one else 1.0 - SHOWN_IF_HELD
        if_not = SHOWN_IF_NOT if one else 1.0 - SHOWN_IF_NOT
        chance = chance * if_held / (chance * if_held + (1.0 - chance) * if_not)
    return chance
