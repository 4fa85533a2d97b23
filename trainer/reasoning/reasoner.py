"""Everything that can be reasoned about one case: its hypotheses, its offered tests, its truth's own answers."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property

import numpy as np

from trainer.arrays import Floats
from trainer.circuit.elements import Location
from trainer.circuit.profile import Profile
from trainer.reasoning.advice.channels import Channel, channels_of
from trainer.reasoning.advice.planning import PROVED, Choice, Step, best_finding, by_information, path_to, ranked
from trainer.reasoning.advice.prices import mending_minutes
from trainer.reasoning.universe.expectations import Expectations, code_flags, expectations_of
from trainer.reasoning.universe.finding import truth_of
from trainer.reasoning.universe.hypotheses import Faults, Hypotheses, single_hypotheses
from trainer.reasoning.universe.menu import closer_tests, menu_of, offered
from trainer.reasoning.universe.pairs import chosen_pairs, composed, with_pairs
from trainer.reasoning.universe.questions import Answers, Expected, Question, Test
from trainer.reasoning.verdict.belief import Belief, believed, finding_key


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
class CaseFacts:
    """What reasoning needs to know of a case: its truth, the evidence it offers, its bed level and its priors.

    `stored` are the codes already in memory before the first test.
    """

    profile: Profile
    temperature_c: float
    truth: Faults
    evidence: frozenset[str]
    bed_dba: float
    priors: Mapping[str, float] | None = None
    stored: frozenset[str] = frozenset()


class Reasoner:
    """Reasons about one case with a universe of its profile and temperature."""

    def __init__(self, facts: CaseFacts, universe: Universe) -> None:
        self.facts, self.universe = facts, universe
        self.tests = offered(universe.menu, facts.evidence)
        self._expected: dict[Question, Expected] = {}
        self._near: dict[Question, Expected] = {}
        self._truth = Expectations(facts.profile, [facts.truth], universe.expectations.equivalents)

    def truth_answers(self, questions: Sequence[Question]) -> dict[Question, Floats]:
        """Return what the case's own engine answers, without chance."""
        answers = {}
        for question, one in self._truth.of(questions, self.facts.bed_dba).items():
            if question.kind == "codes":
                answers[question] = code_flags(self.facts.profile, self._codes(question))
            else:
                answers[question] = (one.values[0] > FLAG_UP).astype(float) if one.flags else one.values[0]
        return answers

    def _codes(self, question: Question) -> frozenset[str]:
        """Return the codes in this engine's memory: old ones until they are cleared, and those of the last test."""
        left = frozenset[str]() if question.cleared else self.facts.stored
        return left | (self._truth.standing(question.work)[0] if question.tested else frozenset())

    @cached_property
    def _singles(self) -> Hypotheses:
        return single_hypotheses(self.facts.profile, self.facts.priors, self.facts.truth)

    @cached_property
    def _pairs(self) -> tuple[tuple[int, int], ...]:
        """The pairs of single faults that are thought of: none unless the truth is one."""
        if len(self.facts.truth) < 2:
            return ()
        questions = [question for test in self.tests for question in test.questions]
        expected = self.universe.expectations.of(questions, self.facts.bed_dba)
        return chosen_pairs(self._singles, expected, self.truth_answers(questions))

    @cached_property
    def hypotheses(self) -> Hypotheses:
        """All hypotheses with their priors; pairs too where the truth is one."""
        return with_pairs(self._singles, self._pairs) if self._pairs else self._singles

    def expected(self, questions: Sequence[Question]) -> dict[Question, Expected]:
        """Return what every hypothesis expects of questions, on the menu or not."""
        missing = [question for question in questions if question not in self._expected]
        sound = self._singles.faults.index(())
        for question, one in self.universe.expectations.of(missing, self.facts.bed_dba).items():
            self._expected[question] = composed(one, self._pairs, sound) if self._pairs else one
        return {question: self._expected[question] for question in questions}

    def belief(self, answers: Answers) -> Belief:
        """Return the belief after answers."""
        return believed(self.hypotheses, self.expected(list(answers)), answers)

    @cached_property
    def channels(self) -> tuple[Channel, ...]:
        """The offered tests as channels."""
        questions = [question for test in self.tests for question in test.questions]
        return channels_of(self.tests, self.expected(questions))

    def next_tests(self, probability: Floats, paid: Collection[str]) -> list[Choice]:
        """Return the offered tests by what they tell per minute, best first."""
        channels = (*self.channels, *self.closer(probability))
        return ranked(channels, probability, frozenset(paid), self.facts.profile.minutes)

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
        tests = offered(closer_tests(self.facts.profile, self.facts.temperature_c, near), self.facts.evidence)
        # good for this belief only: hypotheses without weight are not computed
        self._near = self._expected_of_rows(rows, tests)
        return channels_of(tests, self._near)

    def _expected_of_rows(self, rows: tuple[int, ...], tests: Sequence[Test]) -> dict[Question, Expected]:
        """Return expectations computed for some hypotheses only; the others, without weight, are given the first's."""
        questions = [question for test in tests for question in test.questions]
        chosen = [self.hypotheses.faults[row] for row in rows]
        some = Expectations(self.facts.profile, chosen, self.universe.expectations.equivalents)
        spread = {}
        for question, one in some.of(questions, self.facts.bed_dba).items():
            values = np.broadcast_to(one.values[0], (len(self.hypotheses.faults), one.values.shape[1])).copy()
            values[list(rows)] = one.values
            spread[question] = Expected(values, one.flags)
        return spread

    @cached_property
    def best_path(self) -> tuple[Step, ...]:
        """The best path to this case's truth, ended by its repair and retest."""
        minutes = self.facts.profile.minutes
        proved = best_finding([finding_key(claims) for claims in self.hypotheses.claims])
        paths = [
            path_to(
                lambda belief: (*self.channels, *self.closer(belief)),
                self.hypotheses.prior, minutes, proved, self.answered, by_information(minutes, ahead=ahead),
            )
            for ahead in (True, False)
        ]  # fmt: skip
        # greedy is beaten where access is dear, and now and then it is not
        steps, probability = min(
            paths, key=lambda path: (proved(path[1]) < PROVED, sum(step.minutes for step in path[0]))
        )
        prices = {test.name: (*test.prices, *test.opens) for test in self.tests}
        opened = [price for step in steps for price in prices.get(step.name, ()) if price.startswith("cover_off:")]
        covers = {price.partition(":")[2] for price in opened}
        repair = mending_minutes(self.facts.profile, self.facts.truth, covers)
        if not repair:
            return steps
        return (*steps, Step("repair_and_retest", repair, 0.0, proved(probability)))

    def answered(self, probability: Floats, test: Test) -> Floats:
        """Return the posterior after a test as this case's engine answers it."""
        answers = self.truth_answers(test.questions)
        near = {question: one for question, one in self._near.items() if question in test.questions}
        expected = near or self.expected(test.questions)
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
        if len(self.facts.truth) != 1:
            return frozenset()
        (true,) = truth_of(self.facts.truth)
        logs = self.everything.log_weight - np.log(np.maximum(self.hypotheses.prior, 1e-300))
        best: dict[Location, float] = {}
        for claims, log in zip(self.hypotheses.claims, logs, strict=True):
            if len(claims) == 1 and (claims[0].cylinders, claims[0].kind) == (true.cylinders, true.kind):
                best[claims[0].location] = max(best.get(claims[0].location, -np.inf), float(log))
        level = best.get(true.location, np.inf)
        return frozenset(place for place, log in best.items() if log > level - ALIKE_NATS)


ALIKE_NATS = float(np.log(3.0))
"""Evidence that speaks less than three to one for a place cannot be asked to separate it."""

FLAG_UP = 0.5
"""The chance from which on a flag is up on the case's own engine."""

CLOSER_ROWS, CLOSER_FROM, CLOSER_CYLINDER = 150, 1e-4, 0.1
"""When few enough hypotheses of some weight are left, tests on the cylinders that carry most of it are added."""
