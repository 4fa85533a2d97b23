"""The universes of the shipped engines, solved once for all tests of a run."""

from __future__ import annotations

from pathlib import Path

from trainer.cases.single_case.shipped import case_named
from trainer.cases.solved.universe_cache import solve_universe
from trainer.circuit.profile import Profile
from trainer.commands.call.this_machine import universes
from trainer.reasoning.reasoner import Reasoner, Universe, universe_of

UNIVERSES = universes()
POOLS = UNIVERSES.pools


def reasoner_of(name: str) -> Reasoner:
    """Return the reasoner of a shipped case."""
    return UNIVERSES.reasoner(case_named(name))


def solved_universe(profile: Profile, temperature_c: float, folder: Path | None) -> Universe:
    """Return a profile's universe solved, from a folder's file where there is one."""
    universe = universe_of(profile, temperature_c)
    solve_universe(universe, folder)
    return universe
