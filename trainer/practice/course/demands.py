"""Compute what a case demands of each skill, and which skills its outcome counts as right.

A finding is right where every skill that it needs was: the chances multiply. The weights are from memory, in logits;
what is proved of them is the order in which simulated listeners find cases hard (tests/practice/course/).
"""

from __future__ import annotations

import math
from collections.abc import Sequence

from trainer.cases.drawing.features import Features
from trainer.circuit.profile import PASSES
from trainer.practice.attempt.outcome import Outcome
from trainer.practice.course.skills import Demand, Skill, demand

FINDING = (Skill.HEARING, Skill.NUMBERING, Skill.CODES, Skill.MEASURING, Skill.LIMITS)
"""The skills that a right finding needs; reasoning shows in its proof."""

NUMBERED_WRONG = frozenset({"burst_or_order", "counted_burst", "firing_order"})
MISREAD_CODES = frozenset({"code_of_another", "code_for_location"})


def case_demands(found: Features) -> tuple[Demand, ...]:
    """Return what a case asks of each skill."""
    demands = [demand(Skill.HEARING, hearing_difficulty(found))]
    passes = found.kind_class == PASSES
    choices = math.log2(max(found.alike, 1))
    if found.single:
        demands.append(demand(Skill.NUMBERING, -3.0 + 0.8 * found.crossed + 0.5 * (found.slots > 6)))
    if found.coded or found.misled:
        demands.append(demand(Skill.CODES, -2.9 + 2.2 * found.misled))
    if passes:
        demands.append(demand(Skill.LIMITS, -2.4 + 1.2 * found.misled + 0.6 * (not found.lending)))
    else:
        places = -2.8 + 0.45 * choices + 1.0 * found.provoked + 0.6 * (not found.lending)
        demands.append(demand(Skill.MEASURING, places))
    demands.append(demand(Skill.REASONING, -2.2 + 0.4 * choices + 1.2 * found.provoked + 0.6 * found.misled))
    return tuple(demands)


def hearing_difficulty(found: Features) -> float:
    """Return how hard a case's sound is: near to good, hum down at the bed, many slots to follow."""
    if found.kind_class == PASSES:
        return -2.2 + 0.08 * (found.bed_dba - 28.0)
    # under what an ear can just tell, nearer is not harder
    closeness = 0.6 - 1.05 * math.log2(1.0 + max(found.margin, 1.0)) + 0.16 * found.shortfall_db
    return closeness + 0.9 * math.log2(found.slots / 6.0) + 0.9 * found.provoked


def probes_of(found: Features) -> tuple[str, ...]:
    """Return the misconceptions that a case gives an occasion to show."""
    occasions = {
        "hum_for_circuit": found.hums,
        "firing_order": found.crossed,
        "counted_burst": found.single,
        "one_for_group": found.kind_class == "group",
        "code_for_location": found.coded and found.kind_class != PASSES,
        "code_of_another": found.misled,
        "insisted": found.kind_class == PASSES,
    }
    return tuple(name for name, fits in occasions.items() if fits)


def answers_of(outcome: Outcome, demands: Sequence[Demand]) -> list[tuple[Demand, bool]]:
    """Return what an outcome says about each skill; skills that it says nothing about are left out.

    Cylinders numbered wrongly were heard rightly; a code that was misread tells of codes only, a fault named where the
    circuit passes of limits only; what comes after a wrong cylinder was never tried; what was done with a hint tells
    nothing of measuring and reasoning.
    """
    shown_right = {}
    slots, place, _kind, proof, _economy = outcome.shares
    misnumbered = outcome.misconception in NUMBERED_WRONG
    whole = slots == 1.0
    misread = outcome.misconception in MISREAD_CODES
    insisted = not outcome.places and not outcome.right
    if not misread and not insisted:
        shown_right[Skill.HEARING] = whole or misnumbered
    if whole or misnumbered:
        shown_right[Skill.NUMBERING] = whole
    if whole or misread:
        shown_right[Skill.CODES] = not misread
    if not misread:
        shown_right[Skill.LIMITS] = outcome.right
    if whole and not outcome.hints:
        shown_right[Skill.MEASURING] = place == 1.0
        shown_right[Skill.REASONING] = proof >= 1.0
    return [(one, shown_right[one.skill]) for one in demands if one.skill in shown_right]
