"""What lies beside the truth: faults of its cylinders that come and go, places that no evidence tells from its own."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from trainer.arrays import Floats
from trainer.circuit.elements import Location
from trainer.circuit.fault_space import comes_and_goes
from trainer.reasoning.case_facts import CaseFacts
from trainer.reasoning.universe.finding import Claim
from trainer.reasoning.universe.hypotheses import Faults, Hypotheses

ALIKE_NATS = float(np.log(3.0))
"""Evidence that speaks less than three to one for a place cannot be asked to separate it."""


def fickle_beside(facts: CaseFacts, hypotheses: Sequence[Faults]) -> Floats:
    """Return which hypotheses of the true cylinders come and go, 1 or 0; all 0 where the true faults do not."""

    def fickle(faults: Faults) -> bool:
        return any(comes_and_goes(fault, facts.profile, facts.temperature_c) for fault in faults)

    if not fickle(facts.truth):
        return np.zeros(len(hypotheses))
    true = {number for fault in facts.truth for number in fault.cylinders}
    beside = ({number for fault in faults for number in fault.cylinders} <= true for faults in hypotheses)
    return np.array([float(near and fickle(faults)) for near, faults in zip(beside, hypotheses, strict=True)])


def places_alike(true: Claim, hypotheses: Hypotheses, log_weight: Floats) -> frozenset[Location]:
    """Return the places that a belief's evidence cannot tell from the true one, for the same cylinders and kind.

    `log_weight` has shape (hypothesis,).
    """
    logs = log_weight - np.log(np.maximum(hypotheses.prior, 1e-300))
    best: dict[Location, float] = {}
    for claims, log in zip(hypotheses.claims, logs, strict=True):
        if len(claims) == 1 and (claims[0].cylinders, claims[0].kind) == (true.cylinders, true.kind):
            best[claims[0].location] = max(best.get(claims[0].location, -np.inf), float(log))
    level = best.get(true.location, np.inf)
    return frozenset(place for place, log in best.items() if log > level - ALIKE_NATS)
