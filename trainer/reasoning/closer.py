"""Tests computed for the few hypotheses that are left: swaps, dummy loads, readings while a place is provoked."""

from __future__ import annotations

from collections.abc import Callable, Collection, Sequence

import numpy as np

from trainer.arrays import Floats
from trainer.circuit.profile import Profile
from trainer.instruments.bench_tests import Operation
from trainer.reasoning.advice.channels import Channel, channels_of
from trainer.reasoning.universe.equivalents import Equivalents
from trainer.reasoning.universe.expectations import Expectations
from trainer.reasoning.universe.hypotheses import Hypotheses
from trainer.reasoning.universe.menu import closer_tests, offered
from trainer.reasoning.universe.questions import Expected, Question
from trainer.reasoning.universe.severity import severities_of

CLOSER_ROWS, CLOSER_FROM = 150, 1e-4
"""When few enough hypotheses of some weight are left, tests on the cylinders that carry most of it are added."""

AS_GOOD_AS = 0.25
"""Which share of the weightiest cylinder's weight another needs to be tested too."""


class CloserTests:
    """What closer tests show, for the hypotheses left by one belief after another on the same case.

    `expected` holds what the hypotheses left expect; the others, without weight, are given a good engine's answer.
    """

    def __init__(
        self, profile: Profile, temperature_c: float, hypotheses: Hypotheses, equivalents: Equivalents
    ) -> None:
        self._profile, self._temperature_c = profile, temperature_c
        self._hypotheses, self._equivalents = hypotheses, equivalents
        self.expected: dict[Question, Expected] = {}
        self._severities = severities_of(hypotheses.faults)
        self._rows: frozenset[int] = frozenset()
        self._channels: dict[tuple[int, ...], tuple[Channel, ...]] = {}
        self._good = hypotheses.faults.index(())

    def channels(
        self, doubt: Floats, alive: Floats, evidence: Collection[Operation], bed_dba: float
    ) -> tuple[Channel, ...]:
        """Return the tests on the one or two cylinders that are in doubt, none while many hypotheses are alive."""
        rows = tuple(int(row) for row in np.flatnonzero(alive > CLOSER_FROM))
        near = self._cylinders(rows, doubt)
        if len(rows) > CLOSER_ROWS or not near or len(near) > 2:
            return ()
        if not set(rows) <= self._rows:
            self.expected, self._channels, self._rows = {}, {}, frozenset((*rows, self._good))
        if near not in self._channels:
            tests = offered(closer_tests(self._profile, self._temperature_c, near), evidence)
            missing = [question for test in tests for question in test.questions if question not in self.expected]
            self.expected |= self._of_rows(self._severities.with_ends(sorted(self._rows)), missing, bed_dba)
            self._channels[near] = channels_of(tests, self.expected)
        return self._channels[near]

    def _cylinders(self, rows: Sequence[int], probability: Floats) -> tuple[int, ...]:
        weight: dict[int, float] = {}
        for row in rows:
            for number in {n for fault in self._hypotheses.faults[row] for n in fault.cylinders}:
                weight[number] = weight.get(number, 0.0) + float(probability[row])
        most = max(weight.values(), default=0.0)
        return tuple(sorted(number for number, share in weight.items() if share > AS_GOOD_AS * most))

    def _of_rows(self, rows: Sequence[int], questions: Sequence[Question], bed_dba: float) -> dict[Question, Expected]:
        chosen = [self._hypotheses.faults[row] for row in rows]
        spread = {}
        for question, one in Expectations(self._profile, chosen, self._equivalents).of(questions, bed_dba).items():
            spread[question] = one.each(self._over_all(rows))
        return spread

    def _over_all(self, rows: Sequence[int]) -> Callable[[Floats], Floats]:
        """Return a function that gives values of some hypotheses to those, and a good engine's to all others."""
        good = rows.index(self._good)

        def over_all(values: Floats) -> Floats:
            spread = np.broadcast_to(values[good], (len(self._hypotheses.faults), values.shape[1])).copy()
            spread[list(rows)] = values
            return spread

        return over_all
