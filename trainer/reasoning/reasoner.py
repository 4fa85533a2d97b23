"""Everything that can be reasoned about one case: its hypotheses, its offered tests, its truth's own answers."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import Any

import numpy as np
from numpy.typing import NDArray

from trainer.circuit.elements import Location
from trainer.circuit.profile import Profile
from trainer.reasoning.belief import Belief, believed, finding_key
from trainer.reasoning.channels import Channel, channels_of
from trainer.reasoning.expectations import Expectations, expectations_of
from trainer.reasoning.finding import truth_of
from trainer.reasoning.hypotheses import Faults, Hypotheses, single_hypotheses
from trainer.reasoning.menu import closer_tests, menu_of, offered
from trainer.reasoning.pairs import with_pairs
from trainer.reasoning.planning import Choice, Step, best_finding, by_information, path_to, ranked
from trainer.reasoning.prices import mending_minutes
from trainer.reasoning.questions import Answers, Expected, Question, Test

Floats = NDArray[np.floating[Any]]


@dataclass(frozen=True)
class Universe:
    """All single faults of a profile at one temperature, with what they expect; shared by its cases."""

    profile: Profile
    temperature_c: float
    faults: tuple[Faults, ...]
    expectations: Expectations
    menu: tuple[Test, ...]


def universe_of(profile: Profile, temperature_c: float, seen: Faults = ()) -> Universe:
    """Return the universe of a profile; nothing in it is solved before it is asked for."""
    faults = single_hypotheses(profile, seen=seen).faults
    return Universe(
        profile, temperature_c, faults, expectations_of(profile, temperature_c, faults), menu_of(profile, temperature_c)
    )


@dataclass(frozen=True)
class Matter:
    """What a case is about, as far as reasoning goes: its truth, what it offers, the bed, the priors in force."""

    profile: Profile
    temperature_c: float
    truth: Faults
    evidence: frozenset[str]
    bed_dba: float
    priors: Mapping[str, float] | None = None


class Reasoner:
    """Reasons about one case with a universe of its profile and temperature."""

    def __init__(self, matter: Matter, universe: Universe) -> None:
        self.matter, self.universe = matter, universe
        self.tests = offered(universe.menu, matter.evidence)
        self._truth = Expectations(matter.profile, [matter.truth], universe.expectations.equivalents)

    def truth_answers(self, questions: Sequence[Question]) -> dict[Question, Floats]:
        """Return what the case's own engine answers, without chance."""
        expected = self._truth.of(questions, self.matter.bed_dba)
        return {
            question: (one.values[0] > FLAG_UP).astype(float) if one.flags else one.values[0]
            for question, one in expected.items()
        }

    @cached_property
    def _pool(self) -> tuple[Hypotheses, dict[Question, Expected]]:
        matter = self.matter
        singles = single_hypotheses(matter.profile, matter.priors, matter.truth)
        questions = [question for test in self.tests for question in test.questions]
        expected = self.universe.expectations.of(questions, matter.bed_dba)
        if len(matter.truth) < 2:
            return singles, expected
        return with_pairs(singles, expected, self.truth_answers(questions))

    @property
    def hypotheses(self) -> Hypotheses:
        """All hypotheses with their priors; pairs too where the truth is one."""
        return self._pool[0]

    def expected(self, questions: Sequence[Question]) -> dict[Question, Expected]:
        """Return what every hypothesis expects of questions, on the menu or not."""
        known = self._pool[1]
        missing = [question for question in questions if question not in known]
        if missing:
            more = self.universe.expectations.of(missing, self.matter.bed_dba)
            if len(self.matter.truth) > 1:
                singles = single_hypotheses(self.matter.profile, self.matter.priors, self.matter.truth)
                everything = {**self.universe.expectations.of(known, self.matter.bed_dba), **more}
                more = with_pairs(singles, everything, self.truth_answers(list(known)))[1]
            known.update({question: more[question] for question in missing})
        return {question: known[question] for question in questions}

    def belief(self, answers: Answers) -> Belief:
        """Return the belief after answers."""
        return believed(self.hypotheses, self.expected(list(answers)), answers)

    @cached_property
    def channels(self) -> tuple[Channel, ...]:
        """The offered tests as channels."""
        return channels_of(self.tests, self._pool[1])

    def next_tests(self, probability: Floats, paid: Collection[str]) -> list[Choice]:
        """Return the offered tests by what they tell per minute, best first."""
        channels = (*self.channels, *self.closer(probability))
        return ranked(channels, probability, frozenset(paid), self.matter.profile.minutes)

    def closer(self, probability: Floats) -> tuple[Channel, ...]:
        """Return swaps and dummy loads on the cylinders that are left, once few hypotheses are."""
        rows = tuple(int(row) for row in np.flatnonzero(probability > CLOSER_FROM))
        if len(rows) > CLOSER_ROWS:
            return ()
        weight: dict[int, float] = {}
        for row in rows:
            for number in {n for fault in self.hypotheses.faults[row] for n in fault.cylinders}:
                weight[number] = weight.get(number, 0.0) + float(probability[row])
        near = tuple(sorted(number for number, share in weight.items() if share > CLOSER_CYLINDER))
        if not near or len(near) > 2:
            return ()
        tests = offered(closer_tests(self.matter.profile, self.matter.temperature_c, near), self.matter.evidence)
        return channels_of(tests, self._expected_of_rows(rows, tests))

    def _expected_of_rows(self, rows: tuple[int, ...], tests: Sequence[Test]) -> dict[Question, Expected]:
        """Return expectations computed for some hypotheses only; the others, without weight, are given the first's."""
        questions = [question for test in tests for question in test.questions]
        chosen = [self.hypotheses.faults[row] for row in rows]
        some = Expectations(self.matter.profile, chosen, self.universe.expectations.equivalents)
        spread = {}
        for question, one in some.of(questions, self.matter.bed_dba).items():
            values = np.broadcast_to(one.values[0], (len(self.hypotheses.faults), one.values.shape[1])).copy()
            values[list(rows)] = one.values
            spread[question] = Expected(values, one.flags)
        self._pool[1].update(spread)
        return spread

    @cached_property
    def best_path(self) -> tuple[Step, ...]:
        """The best path to this case's truth, ended by its repair and retest."""
        minutes = self.matter.profile.minutes
        proved = best_finding([finding_key(claims) for claims in self.hypotheses.claims])
        steps, probability = path_to(
            lambda belief: (*self.channels, *self.closer(belief)),
            self.hypotheses.prior, minutes, proved, self.answered, by_information(minutes),
        )  # fmt: skip
        prices = {test.name: (*test.prices, *test.opens) for test in self.tests}
        opened = [price for step in steps for price in prices.get(step.name, ()) if price.startswith("cover_off:")]
        covers = {price.partition(":")[2] for price in opened}
        repair = mending_minutes(self.matter.profile, self.matter.truth, covers)
        if not repair:
            return steps
        return (*steps, Step("repair_and_retest", repair, 0.0, proved(probability)))

    def answered(self, probability: Floats, test: Test) -> Floats:
        """Return the posterior after a test as this case's engine answers it."""
        answers = self.truth_answers(test.questions)
        expected = self.expected(test.questions)
        logs = np.log(np.maximum(probability, 1e-300))
        for question in test.questions:
            logs = logs + expected[question].log_likelihood(answers[question])
        weight = np.exp(logs - logs.max())
        return np.asarray(weight / weight.sum())

    @cached_property
    def everything(self) -> Belief:
        """The belief after every offered test."""
        questions = dict.fromkeys(question for test in self.tests for question in test.questions)
        return self.belief(self.truth_answers(list(questions)))

    @cached_property
    def alike_places(self) -> frozenset[Location]:
        """The places that all offered evidence cannot tell from the true one, for the same cylinders and kind."""
        if len(self.matter.truth) != 1:
            return frozenset()
        (true,) = truth_of(self.matter.truth)
        logs = self.everything.log_weight - np.log(np.maximum(self.hypotheses.prior, 1e-300))
        best: dict[Location, float] = {}
        for claims, log in zip(self.hypotheses.claims, logs, strict=True):
            if len(claims) == 1 and (claims[0].cylinders, claims[0].kind) == (true.cylinders, true.kind):
                best[claims[0].location] = max(best.get(claims[0].location, -np.inf), float(log))
        level = best.get(true.location, np.inf)
        return frozenset(place for place, log in best.items() if log > level - ALIKE_NATS)


ALIKE_NATS = float(np.log(3.0))
"""Evidence that speaks less than three to one for a place cannot be asked to separate it."""

FLAG_UP = 0.3
"""The chance from which on a flag is up on the case's own engine: under it lie old and stray codes."""

CLOSER_ROWS, CLOSER_FROM, CLOSER_CYLINDER = 150, 1e-4, 0.1
"""When few enough hypotheses of some weight are left, tests on the cylinders that carry most of it are added."""
