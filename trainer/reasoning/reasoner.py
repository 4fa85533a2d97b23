"""Everything that can be reasoned about one case: its hypotheses, its offered tests, its truth's own answers."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from dataclasses import replace
from functools import cached_property, lru_cache

import numpy as np

from trainer.arrays import Floats
from trainer.circuit.elements import Location
from trainer.circuit.fault import Fault
from trainer.circuit.faults import KINDS
from trainer.instruments.bench_tests import BenchTest, BenchTestKind, Price
from trainer.instruments.charges import covers_in
from trainer.reasoning.advice.channels import Channel, channels_of
from trainer.reasoning.advice.measured import PROVED, Standing, inseparable_places
from trainer.reasoning.advice.planning import Choice, Proved, Step, best_finding, path_to
from trainer.reasoning.advice.prices import mending_minutes
from trainer.reasoning.advice.trade_order import in_trade_order, is_dead
from trainer.reasoning.beside_the_truth import fickle_beside, places_alike
from trainer.reasoning.case_facts import CaseFacts, Universe
from trainer.reasoning.closer import CloserTests
from trainer.reasoning.own_engine import OwnEngine
from trainer.reasoning.universe.complaint import after_complaint
from trainer.reasoning.universe.expectations import Expectations
from trainer.reasoning.universe.finding import Claim, truth_of
from trainer.reasoning.universe.hypotheses import Hypotheses, single_hypotheses
from trainer.reasoning.universe.menu import offered
from trainer.reasoning.universe.pairs import chosen_pairs, expected_with_pairs, with_pairs
from trainer.reasoning.universe.questions import Answers, Expected, OnDemand, Question, Test
from trainer.reasoning.universe.severity import middles_of
from trainer.reasoning.verdict.belief import Belief, believed, finding_key
from trainer.reasoning.verdict.joint import try_of

Path = tuple[tuple[Step, ...], Standing]
"""Steps, and the standing that they end with."""

BeliefAfter = dict[frozenset[BenchTest], tuple[Belief, Standing]]
"""The belief after tests, in whatever order they were done."""


class Reasoner:
    """Reasons about one case with a universe of its profile and temperature."""

    def __init__(self, facts: CaseFacts, universe: Universe) -> None:
        self.facts, self.universe = facts, universe
        self.tests = offered(universe.menu, facts.evidence)
        self._expected = lru_cache(LATEST_EXPECTED)(self._expected_of)
        self._inseparable: dict[Claim, frozenset[str]] = {}
        self._own_engine = OwnEngine(facts, universe.expectations.equivalents)

    def truth_answers(self, questions: Sequence[Question]) -> dict[Question, Floats]:
        """Return what the case's own engine answers, without chance; its seed decides about tries."""
        return self._own_engine.answers(questions)

    @cached_property
    def _singles(self) -> Hypotheses:
        facts = self.facts
        return after_complaint(single_hypotheses(facts.profile, facts.priors), facts.complaint)

    @cached_property
    def _pairs(self) -> tuple[tuple[int, int], ...]:
        """The pairs of single faults that are thought of: none unless the truth is one, and that one among them."""
        if len(self.facts.truth) < 2:
            return ()
        # a fault that another hides leaves no trace to find it by, and naming it must not be beyond thought
        first, second = sorted(self._row_of(fault) for fault in self.facts.truth)
        return self.found_pairs if (first, second) in self.found_pairs else (*self.found_pairs, (first, second))

    @cached_property
    def found_pairs(self) -> tuple[tuple[int, int], ...]:
        """The pairs that the answers to all offered tests lead to, whether the true one is among them or not."""
        asked = [question for test in self.tests for question in test.questions]
        # what two faults show together is compared where a try has shown them
        questions = [question.states()[0][1] for question in asked if question == question.first_try()]
        expected = self._of(self.universe.expectations, questions)
        return chosen_pairs(self._singles, expected, self.truth_answers(questions))

    def _row_of(self, fault: Fault) -> int:
        """Return the row of a single fault: the usual part where it names none, the stretch that holds its severity."""
        part = fault.part or KINDS[fault.kind].places[fault.location][0]
        alike = {
            row: one[0]
            for row, one in enumerate(self._singles.faults)
            if one and replace(one[0], severity=None) == replace(fault, severity=None, part=part)
        }
        # the stretch that it lies in begins at the worst severity that is no worse
        lighter = [row for row in alike if alike[row].amount() <= fault.amount() and self._singles.prior[row] > 0.0]
        if lighter:
            return max(lighter, key=lambda row: alike[row].amount())
        return min(alike, key=lambda row: alike[row].amount())

    @cached_property
    def _together(self) -> Expectations:
        """What the chosen pairs are expected to show, each solved with both of its faults."""
        middles = middles_of(self._singles.faults)
        faults = [middles[one] + middles[other] for one, other in self._pairs]
        return Expectations(self.facts.profile, faults, self.universe.expectations.equivalents)

    @cached_property
    def hypotheses(self) -> Hypotheses:
        """All hypotheses with their priors; pairs too where the truth is one."""
        return with_pairs(self._singles, self._pairs) if self._pairs else self._singles

    def expected(self, questions: Sequence[Question]) -> Mapping[Question, Expected]:
        """Return what every hypothesis expects of questions, on the menu or not: worked out as each is looked up."""
        self.universe.expectations.prepare(questions)
        if self._pairs:
            self._together.prepare(questions)
        return OnDemand(questions, self._expected)

    def _of(self, expectations: Expectations, questions: Sequence[Question]) -> dict[Question, Expected]:
        return expectations.of(questions, self.facts.bed_dba, rough=self.facts.rough)

    def _expected_of(self, question: Question) -> Expected:
        one = self._of(self.universe.expectations, [question])[question]
        if not self._pairs:
            return one
        together = self._of(self._together, [question])[question]
        return expected_with_pairs(one, together, self._pairs, self._singles.faults.index(()))

    def belief(self, answers: Answers) -> Belief:
        """Return the belief after answers."""
        return believed(self.hypotheses, self.expected(list(answers)), answers)

    def standing(self, belief: Belief) -> Standing:
        """Return how sure a belief's likeliest finding is, and whether it is measured."""
        return belief.standing(self.inseparable)

    def inseparable(self, claim: Claim) -> frozenset[str]:
        """Return the places that all offered measurements together do not tell from a claimed one."""
        if claim not in self._inseparable:
            everything = self.everything
            self._inseparable[claim] = inseparable_places(
                self.hypotheses, everything.quiet, everything.electrical, claim
            )
        return self._inseparable[claim]

    @cached_property
    def channels(self) -> tuple[Channel, ...]:
        """The offered tests as channels."""
        questions = [question for test in self.tests for question in test.questions]
        return channels_of(self.tests, self.expected(questions))

    def next_tests(
        self, belief: Belief, paid: Collection[Price], done: Collection[BenchTest], *, closer: bool = True
    ) -> list[Choice]:
        """Return the offered tests not done yet that tell something, in the trade's order."""
        for standing in self.standing(belief).in_turn:
            channels = self._channels_after(belief, standing, closer=closer)
            left = [channel for channel in channels if channel.test.name not in done]
            dead = any(is_dead(channel.test) for channel in channels if channel.test.name in done)
            order = in_trade_order(left, standing, paid, self.facts.profile.minutes, self.sure, dead_done=dead)
            if order:
                return order
        return []

    def _channels_after(self, belief: Belief, standing: Standing, *, closer: bool) -> tuple[Channel, ...]:
        """Return the offered tests as channels; what a try has shown already counts in every other test of that try."""
        near = self.closer(standing.doubt, standing.probability) if closer else ()

        def as_it_is(channel: Channel) -> Channel:
            first = channel.test.questions[0] if channel.test.questions else None
            if first is None or (first.work.moving is None and first.work.warming is None):
                return channel
            state = belief.tries.get(try_of(first, tuple(chance for chance, _state in first.states())))
            return channel if state is None else channel.in_same_try(state, standing.doubt)

        return tuple(map(as_it_is, (*self.channels, *near)))

    @cached_property
    def sure(self) -> Proved:
        """Returns the chance of a belief's best finding."""
        return best_finding([finding_key(claims) for claims in self.hypotheses.claims])

    @cached_property
    def _closer(self) -> CloserTests:
        facts = self.facts
        return CloserTests(facts.profile, facts.temperature_c, self.hypotheses, self.universe.expectations.equivalents)

    def closer(self, doubt: Floats, probability: Floats | None = None) -> tuple[Channel, ...]:
        """Return tests on the cylinders in doubt, once few hypotheses are left: good for this belief only."""
        alive = doubt if probability is None else np.maximum(doubt, probability)
        return self._closer.channels(doubt, alive, self.facts.evidence, self.facts.bed_dba)

    @cached_property
    def best_path(self) -> tuple[Step, ...]:
        """The best path to this case's truth, begun with the complaint and ended by its repair and retest.

        Nothing is repaired that the path does not prove, unless one true fault hides the other.
        """
        steps, standing = self.best_way
        begun = self._complaint
        if not self._repair or not (standing.proves(PROVED) or self.hidden is not None):
            return (*begun, *steps)
        return (*begun, *steps, Step(BenchTest(BenchTestKind.REPAIR_AND_RETEST), self._repair, 0.0, standing.sure))

    @cached_property
    def best_way(self) -> Path:
        """The steps of the best path without complaint and repair, and the standing that they end with."""
        return min(self.paths, key=lambda path: (not path[1].proves(PROVED), sum(step.minutes for step in path[0])))

    @property
    def best_minutes(self) -> float:
        """The minutes of the best path; the right repair and its retest count where the path leaves them open, too."""
        return sum(step.minutes for step in self.best_way[0]) + self._repair

    @cached_property
    def _repair(self) -> float:
        """The minutes of the right repair and its retest after the best path's steps, 0 where the circuit passes."""
        prices = {test.name: (*test.prices, *test.opens) for test in self.tests}
        covers = covers_in(price for step in self.best_way[0] for price in prices.get(step.name, ()))
        return mending_minutes(self.facts.profile, self.facts.truth, covers)

    @property
    def _complaint(self) -> tuple[Step, ...]:
        """The complaint as the first step, where a case has one; its information is in the prior already."""
        if self.facts.complaint is None:
            return ()
        usual = single_hypotheses(self.facts.profile, self.facts.priors).prior
        complained = self._singles.prior
        bits = float((complained * np.log2(np.maximum(complained, 1e-300) / np.maximum(usual, 1e-300))).sum())
        return (Step(BenchTest(BenchTestKind.COMPLAINT), 0.0, bits, self.sure(self.hypotheses.prior)),)

    @cached_property
    def paths(self) -> tuple[Path, ...]:
        """The path that looks ahead and the one that does not; either may be the shorter where access is dear."""
        after: BeliefAfter = {}
        return tuple(self.path(ahead=ahead, after=after) for ahead in (True, False))

    def path(self, *, ahead: bool, closer: bool = True, after: BeliefAfter | None = None) -> Path:
        """Return the steps of the trade's order on this case's engine, and the final standing.

        Tests that are computed for a few hypotheses only are left out without `closer`. `after` keeps beliefs for
        another path: where that one begins with the same tests, they are not worked out again.
        """
        minutes = self.facts.profile.minutes
        answers: dict[Question, Floats] = {}
        beliefs = [self.belief({})]
        names = frozenset[BenchTest]()
        kept: BeliefAfter = {} if after is None else after
        expected: dict[Question, Expected] = {}

        def choose(
            left: Sequence[Channel], standing: Standing, paid: frozenset[Price], done: Sequence[Test]
        ) -> Channel | None:
            dead = any(map(is_dead, done))
            order = in_trade_order(left, standing, paid, minutes, self.sure, ahead=ahead, dead_done=dead)
            return order[0].channel if order else None

        def answered(_standing: Standing, test: Test) -> Standing:
            nonlocal names
            names |= {test.name}
            answers.update(self.truth_answers(test.questions))
            belief, standing = kept.get(names, (None, None))
            if belief is None or standing is None:
                # what closer tests expect holds for the hypotheses that are left now, and is looked up each time
                close = set(answers) & self._closer.expected.keys()
                far = [question for question in answers if question not in expected and question not in close]
                expected.update(self.expected(far))
                here = {**expected, **{question: self._closer.expected[question] for question in close}}
                belief = believed(self.hypotheses, here, answers)
                standing = self.standing(belief)
                kept[names] = belief, standing
            beliefs.append(belief)
            return standing

        return path_to(
            lambda standing: self._channels_after(beliefs[-1], standing, closer=closer),
            self.standing(beliefs[-1]), minutes, answered, choose,
        )  # fmt: skip

    def _expected_here(self, questions: Sequence[Question]) -> Mapping[Question, Expected]:
        near = {
            question: self._closer.expected[question] for question in questions if question in self._closer.expected
        }
        rest = self.expected([question for question in questions if question not in near])
        return OnDemand(questions, lambda question: near[question] if question in near else rest[question])

    @cached_property
    def everything(self) -> Belief:
        """The belief after every offered test; what comes and goes is measured while it shows, too.

        A fault that is there all the time shows no more in a second try than in the first.
        """
        fickle = self._fickle_beside_the_truth
        again = fickle.any() or not self.facts.truth
        asked = dict.fromkeys(question for test in self.tests for question in test.questions)
        answers = self.truth_answers([question for question in asked if again or question == question.first_try()])
        if fickle.any():
            for channel in self.closer(fickle / fickle.sum()):
                answers.update(self.truth_answers(channel.test.questions))
        return believed(self.hypotheses, self._expected_here(list(answers)), answers)

    @cached_property
    def _fickle_beside_the_truth(self) -> Floats:
        """Which faults of the true cylinders come and go, as weights; none where the true faults do not."""
        return fickle_beside(self.facts, self.hypotheses.faults)

    @property
    def provable(self) -> bool:
        """Whether everything that is offered proves the truth to the shop's standard."""
        truth = truth_of(self.facts.truth)
        sure = self.everything.findings.get(finding_key(truth), 0.0) >= PROVED
        return sure and self.everything.measured(truth, self.inseparable)

    @cached_property
    def hidden(self) -> tuple[Claim, Claim] | None:
        """The true fault that hides the other, and the one that it hides, where the evidence offered leaves it so."""
        truth = truth_of(self.facts.truth)
        findings = self.everything.findings
        if len(truth) != 2 or findings.get(finding_key(truth), 0.0) >= PROVED:
            return None
        alone = {claim: findings.get(finding_key([claim]), 0.0) for claim in truth}
        hider = max(truth, key=lambda claim: alone[claim])
        (other,) = (claim for claim in truth if claim != hider)
        return (hider, other) if alone[hider] >= HIDES_FROM else None

    def side_counts(self, claim: Claim) -> bool:
        """Tell whether all offered evidence proves the side of a true claim."""
        if claim.side is None or len(self.facts.truth) != 1:
            return False
        return self.everything.of_claims([claim]) >= PROVED

    @cached_property
    def alike_places(self) -> frozenset[Location]:
        """The places that all offered evidence cannot tell from the true one, for the same cylinders and kind."""
        if len(self.facts.truth) != 1:
            return frozenset()
        (true,) = truth_of(self.facts.truth)
        return places_alike(true, self.hypotheses, self.everything.log_weight)


HIDES_FROM = 0.05
"""The chance that one of two true faults alone must keep, after all that is offered, to be what hides the other."""


LATEST_EXPECTED = 64
"""How many questions' expectations a reasoner keeps: each is a few large arrays, quick to compute again."""
