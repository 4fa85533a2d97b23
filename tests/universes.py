"""The universes of the shipped engines, solved once for all tests of a run."""

from __future__ import annotations

from trainer.cases.shipped import case_named
from trainer.cases.universe_cache import Universes
from trainer.commands.stores import universe_folder
from trainer.reasoning.reasoner import Reasoner

UNIVERSES = Universes(universe_folder())


def reasoner_of(name: str) -> Reasoner:
    """Return the reasoner of a shipped case."""
    return UNIVERSES.reasoner(case_named(name))
