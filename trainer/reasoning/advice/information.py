"""Entropy, information and value of tests on discrete tables; repair order.

A table has shape (hypothesis, outcome): the chance of each outcome under each hypothesis. One-step choice of a probe by
expected entropy: de Kleer and Williams 1987; value of information: Howard 1966; repair order by chance over cost:
Heckerman, Breese and Rommelse 1995.
"""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from trainer.arrays import Floats


def entropy_bits(probability: Floats) -> float:
    """Return the entropy of a distribution in bits; a chance of nought adds nothing."""
    chosen = np.asarray(probability)[np.asarray(probability) > 0.0]
    return float(-(chosen * np.log2(chosen)).sum())


def updated(prior: Floats, chance: Floats) -> Floats:
    """Return the posterior after an outcome whose chance under each hypothesis is given.

    Raises ValueError for an outcome that no hypothesis allows.
    """
    joint = np.asarray(prior) * chance
    total = joint.sum()
    if total <= 0.0:
        raise ValueError("no hypothesis allows this outcome")
    return np.asarray(joint / total)


def information_bits(prior: Floats, table: Floats) -> float:
    """Return how many bits a test is expected to tell: mutual information of hypothesis and outcome."""
    outcome = prior @ table
    logs = np.log2(table, out=np.zeros_like(table), where=table > 0.0)
    return max(entropy_bits(outcome) + float(prior @ (table * logs).sum(axis=1)), 0.0)


def best_value(prior: Floats, utility: Floats) -> float:
    """Return the expected utility of the best action; utility has shape (action, hypothesis)."""
    return float((utility @ prior).max())


def value_with(prior: Floats, table: Floats, utility: Floats) -> float:
    """Return the expected utility of acting best after each outcome of a test, its own cost apart."""
    return float((utility @ (prior[:, None] * table)).max(axis=0).sum())


def repair_order(chance: Sequence[float], cost: Sequence[float]) -> list[int]:
    """Return in which order to repair when each repair is followed by a check: by chance over cost, best first."""
    return sorted(range(len(chance)), key=lambda place: (-chance[place] / cost[place], place))


def expected_cost(order: Sequence[int], chance: Sequence[float], cost: Sequence[float]) -> float:
    """Return the expected cost of repairs in an order, each made only if those before it did not mend the fault."""
    total, left = 0.0, float(sum(chance))
    for place in order:
        total += left * cost[place]
        left -= chance[place]
    return total
