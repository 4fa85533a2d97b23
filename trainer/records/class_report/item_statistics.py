"""Reliability and discrimination of cases from sums: the classical formulas, one divisor throughout.

Cronbach's alpha is k/(k − 1) · (1 − Σ variance of a case / variance of the total); with marks of 0 and 1 it is KR-20
(Kuder and Richardson 1937). Discrimination is the correlation of a case's mark with the sum of the learner's other
marks, the corrected point-biserial.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

HIDDEN_UNDER, ROUGH_UNDER = 10, 30
"""Of so many learners an index is not shown, or only called rough: common practice, no published source."""


@dataclass(frozen=True, slots=True)
class ItemSums:
    """Sums over the learners who have every case: of marks, their squares, the totals, and mark times total."""

    item: int
    count: int
    mark: float
    mark_squared: float
    total: float
    total_squared: float
    mark_total: float


def _spread(total: float, squared: float, count: int) -> float:
    """Return a variance with the divisor n, nought where rounding would make it negative."""
    return max(squared / count - (total / count) ** 2, 0.0) if count else 0.0


def alpha(sums: Sequence[ItemSums]) -> float | None:
    """Return Cronbach's alpha, or None where it is not defined: under two cases, or totals that are all the same."""
    if len(sums) < 2 or not sums[0].count:
        return None
    total = _spread(sums[0].total, sums[0].total_squared, sums[0].count)
    if total <= 1e-12:
        return None
    within = sum(_spread(one.mark, one.mark_squared, one.count) for one in sums)
    return len(sums) / (len(sums) - 1) * (1.0 - within / total)


def discrimination(one: ItemSums) -> float | None:
    """Return the correlation of a case's marks with the rest of the total, or None where either never varies."""
    if not one.count:
        return None
    rest = one.total - one.mark
    rest_squared = one.total_squared - 2.0 * one.mark_total + one.mark_squared
    mark_rest = one.mark_total - one.mark_squared
    spread = _spread(one.mark, one.mark_squared, one.count) * _spread(rest, rest_squared, one.count)
    if spread <= 1e-12:
        return None
    together = mark_rest / one.count - one.mark * rest / one.count**2
    return max(min(together / math.sqrt(spread), 1.0), -1.0)


def precision_of(count: int) -> str:
    """Return how to show an index over that many learners: `hidden`, `rough` or `plain`."""
    return "hidden" if count < HIDDEN_UNDER else "rough" if count < ROUGH_UNDER else "plain"
