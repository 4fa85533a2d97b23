"""Tests computed for the few hypotheses that are left: swaps, dummy loads, readings while a place is provoked."""

from __future__ import annotations

from collections.abc import Collection, Sequence

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

CLOSER_ROWS, CLOSER_FROM, CLOSER_CYLINDER = 150, 1e-4, 0.1
"""When few enough hypotheses of some weight are left, tests on the cylinders that carry most of it are added."""


class CloserTests:
    """What closer tests show, for the hypotheses left by one belief after another on the same case.

    `expected` holds what the hypotheses left expect; the others, without weight, are given the first one's answer.
    """

    def __init__(
        self, profile: Profile, temperature_c: float, hypotheses: Hypotheses, equivalents: Equivalents
    ) -> None:
        self._profile, self._temperature_c = profile, temperature_c
        self._hypotheses, self._equivalents = hypotheses, equivalents
        self.expected: dict[Question, Expected] = {}
        self._rows: frozenset[int] = frozenset()

    def channels(self, probability: Floats, evidence: Collection[Operation], bed_dba: float) -> tuple[Channel, ...]:
        """Return the tests on the one or two cylinders that are left, none while many hypotheses are."""
        rows = tuple(int(row) for row in np.flatnonzero(probability > CLOSER_FROM))
        near = self._cylinders(rows, probability)
        if len(rows) > CLOSER_ROWS or not near or len(near) > 2:
            return ()
        tests = offered(closer_tests(self._profile, self._temperature_c, near), evidence)
        if not set(rows) <= self._rows:
            self.expected, self._rows = {}, frozenset(rows)
        missing = [question for test in tests for question in test.questions if question not in self.expected]
        if missing:
            self.expected |= self._of_rows(sorted(self._rows), missing, bed_dba)
        return channels_of(tests, self.expected)

    def _cylinders(self, rows: Sequence[int], probability: Floats) -> tuple[int, ...]:
        weight: dict[int, float] = {}
        for row in rows:
            for number in {n for fault in self._hypotheses.faults[row] for n in fault.cylinders}:
                weight[number] = weight.get(number, 0.0) + float(probability[row])
        return tuple(sorted(number for number, share in weight.items() if share > CLOSER_CYLINDER))

    def _of_rows(self, rows: Sequence[int], questions: Sequence[Question], bed_dba: float) -> dict[Question, Expected]:
        chosen = [self._hypotheses.faults[row] for row in rows]
        spread = {}
        for question, one in Expectations(self._profile, chosen, self._equivalents).of(questions, bed_dba).items():
            values = np.broadcast_to(one.values[0], (len(self._hypotheses.faults), one.values.shape[1])).copy()
            values[list(rows)] = one.values
            spread[question] = Expected(values, one.flags)
        return spread
