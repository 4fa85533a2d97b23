"""A battery wired to where none belongs is found by volts at rest: common practice, no published source."""

from __future__ import annotations

from dataclasses import replace

from tests.universes import reasoner_of
from trainer.instruments.bench_tests import Operation
from trainer.reasoning.advice.planning import PROVED
from trainer.reasoning.reasoner import Reasoner
from trainer.reasoning.universe.finding import truth_of
from trainer.reasoning.verdict.belief import finding_key

VOLTS = ("module_volts", "through_volts:right", "plug_volts:right")
OHMS_AND_EARS = frozenset({Operation.ACTUATION_TEST, Operation.CODES, Operation.VOLTS_AT_REST, Operation.COVER_OFF,
                           Operation.MODULE_OHMS, Operation.PASS_THROUGH_OHMS, Operation.INJECTOR_OHMS})  # fmt: skip


def chance_after(*names: str) -> float:
    whole = reasoner_of("second_battery_fitted")
    reasoner = Reasoner(replace(whole.facts, evidence=OHMS_AND_EARS), whole.universe)
    tests = {str(test.name): test for test in reasoner.tests}
    asked = [question for name in names for question in tests[name].questions]
    belief = reasoner.belief(reasoner.truth_answers(asked))
    return belief.findings[finding_key(truth_of(reasoner.facts.truth))]


def test_volts_at_rest_solve_the_second_battery_and_ears_and_codes_do_not() -> None:
    assert chance_after("hear", "codes") < 0.5
    assert chance_after("hear", "codes", *VOLTS) >= PROVED
