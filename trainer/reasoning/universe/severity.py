"""The severity of a fault as a distribution: each hypothesis covers the interval to the next worse severity.

The density is even over the logarithm of the amount; for a resistance in series, over that of the amount plus the rest
of its loop. Expectations are solved at the grid points and interpolated linearly between them. The interpolation error,
estimated from second differences, counts as variance. The worst grid point only ends the interval before it.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import cached_property

import numpy as np

from trainer.arrays import Floats, Integers
from trainer.circuit.elements import OPEN_OHM
from trainer.circuit.fault import SIZES, Fault

DEVIATION = 0.4
"""Standard deviation of the normal distribution that approximates a uniform one over an interval of length 1.

A uniform distribution has 0.29. With a little more, neighbouring intervals add up to an even density within a fifth.
"""


@dataclass(frozen=True)
class Severities:
    """Stretches of severity, by the row where each begins; shape (hypothesis,).

    `worse` is the row where it ends: the same row where a hypothesis has one severity. `before` and `after` are the
    next rows outside it, or its own ends. `width` is its length in natural logarithms of the amount: 1 for a single
    severity, and nought for a worst node.
    """

    worse: Integers
    before: Integers
    after: Integers
    width: Floats

    def middle(self, values: Floats) -> Floats:
        """Return expected values (hypothesis, part) in the middle of each stretch, from those at the nodes."""
        return np.asarray(0.5 * (values + values[self.worse]))

    def slope(self, values: Floats) -> Floats:
        """Return what one standard deviation of severity adds to them."""
        return np.asarray(DEVIATION * (values[self.worse] - values))

    def bend(self, values: Floats) -> Floats:
        """Return how far they may leave the straight line, by an eighth of the smaller second difference at its ends.

        That is as far as a parabola does. A step in the stretch itself shows at both ends, one beside it only at one.
        It is never more than a quarter of what the values change by along the stretch.
        """
        rows, length, at_first, at_last = self._shape
        step = values[self.worse] - values
        rate = step / length
        here = rate[rows]
        first = np.where(np.isinf(at_first), np.inf, np.abs(here - rate[self.before[rows]])) * at_first
        last = np.where(np.isinf(at_last), np.inf, np.abs(rate[self.worse[rows]] - here)) * at_last
        found = np.zeros_like(values)
        found[rows] = np.minimum(np.minimum(first, last) / 8.0, np.abs(step[rows]) / 4.0)
        return found

    @cached_property
    def _shape(self) -> tuple[Integers, Floats, Floats, Floats]:
        """The rows that are stretches, all lengths, and for those rows what a change of slope at either end counts.

        It counts infinitely where a stretch has no neighbour at that end.
        """
        rows = np.flatnonzero(self.worse != np.arange(len(self.worse)))
        length = np.where(self.width > 0.0, self.width, 1.0)[:, None]
        here, before, worse = length[rows], length[self.before[rows]], length[self.worse[rows]]
        begins, ends = (self.before[rows] == rows)[:, None], (self.after[rows] == self.worse[rows])[:, None]
        at_first = np.where(begins, np.inf, 2.0 * here**2 / (here + before))
        at_last = np.where(ends, np.inf, 2.0 * here**2 / (here + worse))
        return rows, length, at_first, at_last

    def with_ends(self, rows: Sequence[int]) -> list[int]:
        """Return rows with all that their stretches are computed from, in order."""
        chosen = np.asarray(rows, dtype=int)
        return sorted({*rows, *(int(n) for part in (self.worse, self.before, self.after) for n in part[chosen])})


def severities_of(hypotheses: Sequence[tuple[Fault, ...]]) -> Severities:
    """Return the stretches of hypotheses; those of several faults, or none, have one severity."""
    count = len(hypotheses)
    worse, before, after, width = np.arange(count), np.arange(count), np.arange(count), np.ones(count)
    ranges: dict[Fault, list[tuple[float, int]]] = {}
    for row, faults in enumerate(hypotheses):
        if len(faults) == 1 and 0.0 < faults[0].amount() < OPEN_OHM and not SIZES[faults[0].kind].types:
            ranges.setdefault(replace(faults[0], severity=None), []).append((faults[0].amount(), row))
    for nodes in ranges.values():
        amounts, order = zip(*sorted(nodes), strict=True)
        rows = np.array(order)
        if len(rows) > 1:
            worse[rows[:-1]], before[rows[1:]] = rows[1:], rows[:-1]
            after[rows[:-2]], after[rows[-2]] = rows[2:], rows[-1]
            beside = SIZES[hypotheses[order[0]][0].kind].beside_ohm
            width[rows[:-1]], width[rows[-1]] = np.diff(np.log(np.array(amounts) + beside)), 0.0
    return Severities(worse, before, after, width)


def middles_of(hypotheses: Sequence[tuple[Fault, ...]]) -> list[tuple[Fault, ...]]:
    """Return every hypothesis with its fault at the middle of its stretch."""
    found = severities_of(hypotheses)
    middles = list(hypotheses)
    for row, (begins, worse) in enumerate(zip(hypotheses, found.worse, strict=True)):
        if worse != row:
            fault, beside = begins[0], SIZES[begins[0].kind].beside_ohm
            ends = (fault.amount() + beside) * (hypotheses[worse][0].amount() + beside)
            middles[row] = (replace(fault, severity=float(np.sqrt(ends)) - beside),)
    return middles
