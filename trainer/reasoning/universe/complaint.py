"""What a customer's complaint tells before any test: when the trouble shows makes some kinds of fault likelier."""

from __future__ import annotations

from collections.abc import Mapping
from enum import StrEnum

import numpy as np

from trainer.reasoning.universe.hypotheses import Hypotheses


class Complaint(StrEnum):
    """When the trouble shows, in the customer's words; `code_only`: it runs well, and only a code brought it in."""

    HOT = "hot"
    COLD = "cold"
    MOVING = "moving"
    UNDER_LOAD = "under_load"
    ALWAYS = "always"
    CODE_ONLY = "code_only"


TIMES_LIKELIER: Mapping[Complaint, Mapping[str, float]] = {
    Complaint.HOT: {"open_when_hot": 8.0, "output_fails_hot": 8.0, "shorted_turns": 2.0},
    Complaint.COLD: {
        "sluggish_armature": 6.0, "stuck_armature": 3.0, "return_to_heater": 4.0,
        "low_supply": 2.0, "sticks_when_cold": 8.0, "weak_battery": 4.0,
    },
    Complaint.MOVING: {
        "open_when_moved": 8.0, "short_when_moved": 8.0, "spread_terminal": 8.0, "fails_under_load": 1.5,
    },
    Complaint.UNDER_LOAD: {
        "fails_under_load": 5.0, "added_resistance": 2.0, "low_supply": 2.0,
        "slow_recharge": 4.0, "poor_module_feed": 4.0, "poor_module_ground": 4.0,
    },
    Complaint.ALWAYS: {
        "open_when_hot": 0.2, "output_fails_hot": 0.2, "open_when_moved": 0.2, "short_when_moved": 0.2,
        "spread_terminal": 0.2, "sticks_when_cold": 0.2, "cured_by_reseating": 0.7,
    },
    Complaint.CODE_ONLY: {},
}  # fmt: skip
"""How many times likelier a kind is after a complaint: common practice, no published source.

People describe badly, so no kind is ruled out; "the circuit passes" keeps its share beside all faults together, and has
more where nobody complains.
"""


UNNOTICED = 0.3
"""How often a fault of the circuit is there and nobody notices how the engine runs: from memory."""


def after_complaint(hypotheses: Hypotheses, complaint: Complaint | None) -> Hypotheses:
    """Return hypotheses with the priors that a complaint leaves."""
    if complaint is None:
        return hypotheses
    times = TIMES_LIKELIER[complaint]
    factor = np.array([np.prod([times.get(fault.kind, 1.0) for fault in faults]) for faults in hypotheses.faults])
    faulty = np.array([bool(faults) for faults in hypotheses.faults])
    weight = hypotheses.prior * factor
    noticed = UNNOTICED if complaint is Complaint.CODE_ONLY else 1.0
    weight[faulty] *= noticed * hypotheses.prior[faulty].sum() / weight[faulty].sum()
    return Hypotheses(hypotheses.faults, weight / weight.sum())
