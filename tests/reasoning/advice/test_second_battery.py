"""A battery wired to where none belongs is found by volts at rest: common practice, no published source."""

from __future__ import annotations

from dataclasses import replace

from tests.universes import reasoner_of
from trainer.circuit.elements import Location
from trainer.instruments.bench_tests import Operation
from trainer.reasoning.advice.measured import PROVED
from trainer.reasoning.reasoner import Reasoner
from trainer.reasoning.universe.finding import truth_of
from trainer.reasoning.verdict.belief import Belief, finding_key

VOLTS = ("module_volts", "through_volts:right", "plug_volts:right")
OHMS_AND_EARS = frozenset({Operation.ACTUATION_TEST, Operation.CODES, Operation.VOLTS_AT_REST, Operation.COVER_OFF,
                           Operation.MODULE_OHMS, Operation.PASS_THROUGH_OHMS, Operation.INJECTOR_OHMS, Operation.LOOK})  # fmt: skip


LOOKS = ("look_through:right", "look_cover:right")


def belief_after(*names: str) -> Belief:
    whole = reasoner_of("second_battery_fitted")
    reasoner = Reasoner(replace(whole.facts, evidence=OHMS_AND_EARS), whole.universe)
    tests = {str(test.name): test for test in reasoner.tests}
    asked = [question for name in names for question in tests[name].questions]
    return reasoner.belief(reasoner.truth_answers(asked))


def test_volts_at_rest_and_a_look_solve_the_second_battery_and_ears_and_codes_do_not() -> None:
    truth = truth_of(reasoner_of("second_battery_fitted").facts.truth)
    heard, measured = belief_after("hear", "codes"), belief_after("hear", "codes", *VOLTS, *LOOKS)
    assert heard.findings[finding_key(truth)] < 0.5
    assert measured.findings[finding_key(truth)] >= PROVED
    assert measured.measured(truth, lambda _claim: frozenset())


def test_volts_on_both_halves_of_an_open_connector_say_on_which_side_of_it_the_battery_is() -> None:
    places = belief_after("hear", "codes", *VOLTS).summed(lambda claims: [claim.location for claim in claims])
    assert places[Location.ENGINE_HARNESS] < 1e-6
    assert places[Location.PASS_THROUGH] + places[Location.UNDER_COVER] > PROVED
