"""What hypotheses expect of cylinder contribution and relative compression.

An electrical fault that is at work takes its cylinders' contribution; one at rest takes none, and none lowers a
compression. Where the circuit passes and somebody complains, one cylinder is weak that no circuit explains: nobody
knows beforehand which, so each is a state with its chance.
"""

from __future__ import annotations

import numpy as np

from trainer.arrays import Flags, Floats
from trainer.circuit.profile import Profile
from trainer.instruments.running import LOW_COMPRESSION_SHARE, Mechanical
from trainer.reasoning.universe.questions import Expected, Prediction

WEAK_SHARE = 0.8
"""How often an engine that is complained of, and whose circuit passes, shows a weak cylinder: from memory."""

UNNOTICED_SHARE = 0.05
"""The same where nobody complains: from memory."""

SEEN, FANCIED = 0.98, 0.01
"""Chances that a weak cylinder shows, and that a sound one seems weak: from memory."""


def running_expected(profile: Profile, passes: Flags, starved: Flags, kind: str, *, rough: bool) -> Expected:
    """Return what is expected; `passes` is per hypothesis, `starved` says which of its cylinders get no fuel.

    `rough` says whether anybody complains of how the engine runs.
    """
    count = len(profile.cylinders)
    base = np.where(starved, SEEN, FANCIED) if kind == "contribution" else np.full(starved.shape, FANCIED)
    share = WEAK_SHARE if rough else UNNOTICED_SHARE
    if kind == "compression":
        share *= LOW_COMPRESSION_SHARE
    states = [base]
    for column in range(count):
        weak = base.copy()
        weak[passes, column] = SEEN
        states.append(weak)
    weights = (1.0 - share, *([share / count] * count))
    return Expected(tuple(map(Prediction, states)), flags=True, weights=weights)


def with_mechanical(profile: Profile, flags: Floats, mechanical: Mechanical | None, kind: str) -> Floats:
    """Return which cylinders are weak by their circuit, as flags, with the one that is weak by something mechanical."""
    if mechanical is None or (kind == "compression" and not mechanical.low_compression):
        return flags
    weak = np.array([float(number == mechanical.cylinder) for number in profile.cylinders])
    return np.asarray(np.maximum(flags, weak))
