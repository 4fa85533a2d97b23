"""Tries whether an engine can be solved: its test without a fault, within a budget of the solver's steps."""

from __future__ import annotations

from functools import lru_cache

from trainer.circuit.drive import slots_of
from trainer.circuit.harness import circuit_of
from trainer.circuit.profile import ByContent, Profile
from trainer.circuit.solve import solve_test
from trainer.errors import Said, Sentence, UnsolvableError

MOST_STEPS = 5_000
"""How many steps of 10.4 µs a slot may take on average until its pulses repeat; shipped engines take 1,400.

Solving an engine's thousand faults takes a thousand times as many.
"""

ENGINES_KEPT = 256
"""How many results of trials are cached."""


def try_engine(profile: Profile) -> None:
    """Solve an engine's test once; raises UnsolvableError where that does not end well."""
    wrong = trial_of(ByContent(profile))
    if wrong is not None:
        raise UnsolvableError(wrong.key, **wrong.values)


@lru_cache(maxsize=ENGINES_KEPT)
def trial_of(engine: ByContent) -> UnsolvableError | None:
    """Solve an engine's test; return what is wrong with it, or None."""
    slots = slots_of(engine.profile)
    try:
        solve_test(circuit_of(engine.profile), slots, most_steps=MOST_STEPS * len(slots))
    except UnsolvableError as error:
        return error
    return None


def engine_problem(profile: Profile) -> tuple[Said, Said, Said] | None:
    """Return what was found, what is allowed and the mend for an engine that cannot be solved, None for any other."""
    try:
        try_engine(profile)
    except UnsolvableError as error:
        return Sentence(f"check.{error.key}"), Sentence("check.an_engine_to_solve"), Sentence(f"check.mend.{error.key}")
    return None
