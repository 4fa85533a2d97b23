"""The universes of the shipped engines, solved once for all tests of a run."""

from __future__ import annotations

from pathlib import Path

import numpy as np

from trainer.cases.single_case.shipped import case_named
from trainer.cases.solved.universe_cache import solve_universe
from trainer.circuit.profile import Profile
from trainer.commands.call.this_machine import universes
from trainer.reasoning.case_facts import Universe, universe_of
from trainer.reasoning.reasoner import Reasoner
from trainer.reasoning.verdict.belief import Belief

UNIVERSES = universes()
POOLS = UNIVERSES.pools


def reasoner_of(name: str) -> Reasoner:
    """Return the reasoner of a shipped case."""
    return UNIVERSES.reasoner(case_named(name))


def belief_after(reasoner: Reasoner, *names: str) -> Belief:
    """Return what is believed once tests have shown what they show on the case's own engine."""
    tests = [next(test for test in reasoner.tests if str(test.name) == name) for name in names]
    return reasoner.belief(reasoner.truth_answers([question for test in tests for question in test.questions]))


def assert_alike(universe: Universe, other: Universe) -> None:
    """Ask for the same answers to every question of a universe, which another one has too.

    One may have been solved on another processor: see WITHIN.
    """
    for question, values in universe.expectations.kept.items():
        assert np.allclose(other.expectations.kept[question], values, rtol=WITHIN, atol=WITHIN), question


WITHIN = 3e-4
"""Four times what rounding moved from one process to another (7e-5, in ohms: an open of 1 GΩ lies in one network with
contacts of milliohms), far below what a reading, an ear or a mark tells apart; rounding to 32 bits moves 6e-8."""


def solved_universe(profile: Profile, temperature_c: float, folder: Path | None) -> Universe:
    """Return a profile's universe solved, from a folder's file where there is one."""
    universe = universe_of(profile, temperature_c)
    solve_universe(universe, folder)
    return universe
