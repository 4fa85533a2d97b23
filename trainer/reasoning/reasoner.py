"""Everything that can be reasoned about one case: its hypotheses, its offered tests, its truth's own answers."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import cached_property

import numpy as np

from trainer.arrays import Floats
from trainer.circuit.elements import Location
from trainer.circuit.faults import KINDS, Fault
from trainer.circuit.profile import Profile
from trainer.instruments.bench_tests import BenchTest, BenchTestKind, Operation, Price
from trainer.instruments.measuring import covers_in
from trainer.reasoning.advice.channels import Channel, channels_of
from trainer.reasoning.advice.measured import Standing, inseparable_places
from trainer.reasoning.advice.planning import PROVED, Choice, Proved, Step, best_finding, path_to
from trainer.reasoning.advice.prices import mending_minutes
from trainer.reasoning.advice.trade_order import in_trade_order, is_dead
from trainer.reasoning.closer import CloserTests
from trainer.reasoning.universe.complaint import Complaint, after_complaint
from trainer.reasoning.universe.expectations import Expectations, code_flags, expectations_of
from trainer.reasoning.universe.finding import Claim, truth_of
from trainer.reasoning.universe.hypotheses import Faults, Hypotheses, single_hypotheses
from trainer.reasoning.universe.menu import menu_of, offered
from trainer.reasoning.universe.pairs import chosen_pairs, with_pairs
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

    `stored` are the codes that something earlier left in memory; `complaint` says when the trouble shows, if anybody
    has said so.
    """

    profile: Profile
    temperature_c: float
    truth: Faults
    evidence: frozenset[Operation]
    bed_dba: float
    priors: Mapping[str, float] | None = None
    stored: frozenset[str] = frozenset()
    complaint: Complaint | None = None


class Reasoner:
    """Reasons about one case with a universe of its profile and temperature."""

    def __init__(self, facts: CaseFacts, universe: Universe) -> None:
        self.facts, self.universe = facts, universe
        self.tests = offered(universe.menu, facts.evidence)
        self._expected: dict[Question, Expected] = {}
        self._inseparable: dict[Claim, frozenset[str]] = {}
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
        facts = self.facts
        return after_complaint(single_hypotheses(facts.profile, facts.priors, facts.truth), facts.complaint)

    @cached_property
    def _pairs(self) -> tuple[tuple[int, int], ...]:
        """The pairs of single faults that are thought of: none unless the truth is one."""
        if len(self.facts.truth) < 2:
            return ()
        questions = [question for test in self.tests for question in test.questions]
        expected = self.universe.expectations.of(questions, self.facts.bed_dba)
        found = chosen_pairs(self._singles, expected, self.truth_answers(questions))
        # a fault that another hides leaves no trace to find it by, and naming it must not be beyond thought
        first, second = sorted(self._row_of(fault) for fault in self.facts.truth)
        return found if (first, second) in found else (*found, (first, second))

    def _row_of(self, fault: Fault) -> int:
        """Return the row of a single fault, with the severity and part that are usual where none is given."""
        full = (fault.amount(), fault.part or KINDS[fault.kind].places[fault.location][0])
        return next(
            row
            for row, one in enumerate(self._singles.faults)
            if one
            and replace(one[0], severity=None, part=None) == replace(fault, severity=None, part=None)
            and (one[0].amount(), one[0].part) == full
        )

    @cached_property
    def _together(self) -> Expectations:
        """What the chosen pairs are expected to show, each solved with both of its faults."""
        single = self._singles.faults
        faults = [single[one] + single[other] for one, other in self._pairs]
        return Expectations(self.facts.profile, faults, self.universe.expectations.equivalents)

    @cached_property
    def hypotheses(self) -> Hypotheses:
        """All hypotheses with their priors; pairs too where the truth is one."""
        return with_pairs(self._singles, self._pairs) if self._pairs else self._singles

    def expected(self, questions: Sequence[Question]) -> dict[Question, Expected]:
        """Return what every hypothesis expects of questions, on the menu or not."""
        missing = [question for question in questions if question not in self._expected]
        found = self.universe.expectations.of(missing, self.facts.bed_dba)
        if self._pairs:
            together = self._together.of(missing, self.facts.bed_dba)
            found = {
                question: Expected(np.concatenate([one.values, together[question].values]), one.flags)
                for question, one in found.items()
            }
        self._expected |= found
        return {question: self._expected[question] for question in questions}

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
        standing = self.standing(belief)
        channels = (*self.channels, *(self.closer(standing.doubt) if closer else ()))
        left = [channel for channel in channels if channel.test.name not in done]
        dead = any(is_dead(channel.test) for channel in channels if channel.test.name in done)
        return in_trade_order(left, standing, paid, self.facts.profile.minutes, self.sure, dead_done=dead)

    @cached_property
    def sure(self) -> Proved:
        """Returns the chance of a belief's best finding."""
        return best_finding([finding_key(claims) for claims in self.hypotheses.claims])

    @cached_property
    def _closer(self) -> CloserTests:
        facts = self.facts
        return CloserTests(facts.profile, facts.temperature_c, self.hypotheses, self.universe.expectations.equivalents)

    def closer(self, probability: Floats) -> tuple[Channel, ...]:
        """Return tests on the cylinders that are left, once few hypotheses are: good for this belief only."""
        return self._closer.channels(probability, self.facts.evidence, self.facts.bed_dba)

    @cached_property
    def best_path(self) -> tuple[Step, ...]:
        """The best path to this case's truth, begun with the complaint and ended by its repair and retest."""
        # greedy is beaten where access is dear, and now and then it is not
        paths = [self.path(ahead=ahead) for ahead in (True, False)]
        steps, standing = min(
            paths, key=lambda path: (not path[1].proves(PROVED), sum(step.minutes for step in path[0]))
        )
        prices = {test.name: (*test.prices, *test.opens) for test in self.tests}
        covers = covers_in(price for step in steps for price in prices.get(step.name, ()))
        repair = mending_minutes(self.facts.profile, self.facts.truth, covers)
        begun = self._complaint
        if not repair:
            return (*begun, *steps)
        return (*begun, *steps, Step(BenchTest(BenchTestKind.REPAIR_AND_RETEST), repair, 0.0, standing.sure))

    @property
    def _complaint(self) -> tuple[Step, ...]:
        """The complaint as the first step, where a case has one; its information is in the prior already."""
        if self.facts.complaint is None:
            return ()
        usual = single_hypotheses(self.facts.profile, self.facts.priors, self.facts.truth).prior
        told = self._singles.prior
        bits = float((told * np.log2(np.maximum(told, 1e-300) / np.maximum(usual, 1e-300))).sum())
        return (Step(BenchTest(BenchTestKind.COMPLAINT), 0.0, bits, self.sure(self.hypotheses.prior)),)

    def path(self, *, ahead: bool, closer: bool = True) -> tuple[tuple[Step, ...], Standing]:
        """Return the steps of the trade's order on this case's engine, and the final standing.

        Tests that are computed for a few hypotheses only are left out without `closer`.
        """
        minutes = self.facts.profile.minutes
        answers: dict[Question, Floats] = {}

        def choose(
            left: Sequence[Channel], standing: Standing, paid: frozenset[Price], done: Sequence[Test]
        ) -> Channel | None:
            dead = any(map(is_dead, done))
            order = in_trade_order(left, standing, paid, minutes, self.sure, ahead=ahead, dead_done=dead)
            return order[0].channel if order else None

        def answered(_standing: Standing, test: Test) -> Standing:
            answers.update(self.truth_answers(test.questions))
            return believed(self.hypotheses, self._expected_here(list(answers)), answers).standing(self.inseparable)

        return path_to(
            lambda standing: (*self.channels, *(self.closer(standing.doubt) if closer else ())),
            self.standing(self.belief({})), minutes, answered, choose,
        )  # fmt: skip

    def _expected_here(self, questions: Sequence[Question]) -> dict[Question, Expected]:
        near = {
            question: self._closer.expected[question] for question in questions if question in self._closer.expected
        }
        return {**self.expected([question for question in questions if question not in near]), **near}

    def answered(self, probability: Floats, test: Test) -> Floats:
        """Return the posterior after a test as this case's engine answers it."""
        answers = self.truth_answers(test.questions)
        logs = np.log(np.maximum(probability, 1e-300))
        for question, one in self._expected_here(test.questions).items():
            logs = logs + one.log_likelihood(answers[question])
        weight = np.exp(logs - logs.max())
        return np.asarray(weight / weight.sum())

    @cached_property
    def everything(self) -> Belief:
        """The belief after every offered test."""
        questions = dict.fromkeys(question for test in self.tests for question in test.questions)
        return self.belief(self.truth_answers(list(questions)))

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
        logs = self.everything.log_weight - np.log(np.maximum(self.hypotheses.prior, 1e-300))
        best: dict[Location, float] = {}
        for claims, log in zip(self.hypotheses.claims, logs, strict=True):
            if len(claims) == 1 and (claims[0].cylinders, claims[0].kind) == (true.cylinders, true.kind):
                best[claims[0].location] = max(best.get(claims[0].location, -np.inf), float(log))
        level = best.get(true.location, np.inf)
        return frozenset(place for place, log in best.items() if log > level - ALIKE_NATS)


ALIKE_NATS = float(np.log(3.0))
"""Evidence that speaks less than three to one for a place cannot be asked to separate it."""

HIDES_FROM = 0.05
"""The chance that one of two true faults alone must keep, after all that is offered, to be what hides the other."""

FLAG_UP = 0.5
"""The chance from which on a flag is up on the case's own engine."""
