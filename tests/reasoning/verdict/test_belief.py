"""What must hold for every belief: order, certainty, expectation, relabelling."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.engines import HARBOUR, NORTH
from tests.thinned import thinned
from tests.universes import UNIVERSES, belief_after, reasoner_of
from trainer.cases.single_case.shipped import case_named, case_names
from trainer.circuit.fault import SIZES
from trainer.circuit.fault_space import single_faults
from trainer.circuit.profile import PASSES
from trainer.reasoning.advice.information import entropy_bits, information_bits, updated
from trainer.reasoning.universe.complaint import Complaint
from trainer.reasoning.universe.finding import Claim, claim_of, truth_of
from trainer.reasoning.universe.hypotheses import same_claims, single_hypotheses
from trainer.reasoning.verdict.belief import believed, bits_between, finding_key

CASES = ("faint_hum_on_three", "stuck_with_varnish", "misfire_without_a_circuit", "bank_feed_on_the_block")
NAMES = ("hear", "codes", "module_pairs", "trace:3", "supply")


def asked_of(name: str) -> list:
    reasoner = reasoner_of(name)
    return [test for test in reasoner.tests if str(test.name) in NAMES]


@pytest.mark.parametrize("name", CASES)
@settings(max_examples=8, deadline=None)
@given(order=st.permutations(range(5)))
def test_the_order_of_evidence_does_not_matter_to_the_last_bit(name: str, order: list[int]) -> None:
    reasoner, tests = reasoner_of(name), asked_of(name)
    questions = [question for place in order for question in tests[place].questions]
    shown = reasoner.truth_answers(questions)
    straight = reasoner.truth_answers([question for test in tests for question in test.questions])
    assert np.array_equal(reasoner.belief(shown).probability, reasoner.belief(straight).probability)


@pytest.mark.parametrize("name", CASES)
def test_nothing_is_ever_certain_and_everything_sums_to_one(name: str) -> None:
    belief = reasoner_of(name).everything
    assert belief.probability.sum() == pytest.approx(1.0)
    assert (belief.log_weight > -np.inf).all()
    assert sum(belief.findings.values()) == pytest.approx(1.0)


@pytest.mark.parametrize("name", CASES)
def test_more_evidence_never_raises_expected_entropy(name: str) -> None:
    """Mutual information is at least nought for every test, before and after another."""
    reasoner = reasoner_of(name)
    prior = reasoner.hypotheses.prior
    after = belief_after(reasoner, "hear").probability
    for belief in (prior, after):
        for channel in reasoner.channels:
            bits = channel.bits(belief)
            assert 0.0 <= bits <= entropy_bits(belief) + 1e-9, channel.test.name


@settings(max_examples=60, deadline=None)
@given(data=st.data())
def test_the_expected_posterior_of_the_truth_rises(data: st.DataObject) -> None:
    """Over outcomes drawn from the truth itself, its posterior is on average at least its prior (any table)."""
    weights = data.draw(st.lists(st.floats(0.01, 1.0), min_size=2, max_size=5))
    prior = np.array(weights) / sum(weights)
    rows = [data.draw(st.lists(st.floats(0.01, 1.0), min_size=3, max_size=3)) for _ in weights]
    table = np.array(rows) / np.array(rows).sum(axis=1)[:, None]
    expected = sum(
        prior[true] * sum(table[true, seen] * updated(prior, table[:, seen])[true] for seen in range(3))
        for true in range(len(prior))
    )
    assert expected >= float((prior**2).sum()) - 1e-9
    assert information_bits(prior, table) >= 0.0


def test_relabelling_cylinders_relabels_the_posterior() -> None:
    """Banks, wiring and prices mirrored: every hypothesis keeps its prior under its new number."""
    swap = {1: 2, 2: 1, 3: 4, 4: 3, 5: 6, 6: 5, 7: 8, 8: 7}
    wiring = NORTH.wiring
    mirrored = replace(
        NORTH,
        banks={name: tuple(swap[n] for n in row) for name, row in NORTH.banks.items()},
        firing_order=tuple(swap[n] for n in NORTH.firing_order),
        wiring=replace(
            wiring,
            outputs={name: tuple(sorted(swap[n] for n in row)) for name, row in wiring.outputs.items()},
            connectors={
                name: replace(c, injectors=tuple(sorted(swap[n] for n in c.injectors)))
                for name, c in wiring.connectors.items()
            },
            under_cover_length_m={swap[n]: length for n, length in wiring.under_cover_length_m.items()},
        ),
    )

    def priors(profile, rename) -> dict:
        hypotheses = single_hypotheses(profile)
        sums: dict = {}
        for claims, chance in zip(hypotheses.claims, hypotheses.prior, strict=True):
            key = tuple((tuple(sorted(rename(n) for n in c.cylinders)), c.location, c.kind, c.side) for c in claims)
            sums[key] = sums.get(key, 0.0) + float(chance)
        return sums

    ours, theirs = priors(NORTH, lambda n: swap[n]), priors(mirrored, lambda n: n)
    assert ours.keys() == theirs.keys()
    assert all(ours[key] == pytest.approx(theirs[key]) for key in ours)


def test_priors_are_the_profiles_shares_by_place() -> None:
    hypotheses = single_hypotheses(HARBOUR)
    sums: dict[str, float] = {}
    for claims, chance in zip(hypotheses.claims, hypotheses.prior, strict=True):
        place = claims[0].location if claims else PASSES
        sums[place] = sums.get(place, 0.0) + float(chance)
    assert sums == {name: pytest.approx(share) for name, share in HARBOUR.priors.items()}


def test_a_case_can_change_the_priors_and_a_wrong_sum_is_refused() -> None:
    shares = dict.fromkeys(NORTH.priors, 0.0) | {"solenoid_coil": 1.0}
    hypotheses = single_hypotheses(NORTH, shares)
    assert all(
        claims[0].location == "solenoid_coil"
        for claims, p in zip(hypotheses.claims, hypotheses.prior, strict=True)
        if p > 0
    )
    with pytest.raises(ValueError, match="priors sum to 1"):
        single_hypotheses(NORTH, shares | {"armature": 0.5})


def test_a_fault_between_two_severities_is_found_as_well_as_one_on_a_node() -> None:
    """21 Ω is nobody's node; the readings say where between its neighbours it lies."""
    case = case_named("green_pin_on_two")
    fault = replace(case.faults[0], severity=21.0)
    assert fault.severity not in SIZES[fault.kind].severities
    between, on_node = (
        UNIVERSES.reasoner(replace(case, faults=(one,))).everything.findings[finding_key(truth_of([one]))]
        for one in (fault, replace(fault, severity=28.0))
    )
    assert between > 0.95
    assert between == pytest.approx(on_node, abs=0.02)


def test_equal_cylinders_speak_against_a_circuit_that_passes_only_where_somebody_complains() -> None:
    case = case_named("old_code_in_memory")

    def times_likelier(complaint: Complaint | None) -> float:
        reasoner = UNIVERSES.reasoner(replace(case, complaint=complaint, stored=()))
        question = next(q for test in reasoner.tests if str(test.name) == "contribution" for q in test.questions)
        equal = {question: np.zeros(len(case.profile.cylinders))}
        before, after = (reasoner.belief(answers).findings[()] for answers in ({}, equal))
        return after / (1.0 - after) / (before / (1.0 - before))

    assert times_likelier(Complaint.CODE_ONLY) > 3.0 * times_likelier(None)


@pytest.mark.parametrize("name", CASES)
def test_bits_for_and_against_add_up_to_the_posterior_odds(name: str) -> None:
    reasoner = reasoner_of(name)
    questions = [question for test in asked_of(name) for question in test.questions]
    shown = reasoner.truth_answers(questions)
    belief = reasoner.belief(shown)
    one, other = list(belief.findings)[:2]
    prior, bits = bits_between(one, other, reasoner.hypotheses, reasoner.expected(questions), shown)
    odds = np.log2(belief.findings[one] / belief.findings[other])
    assert prior + sum(bits.values()) == pytest.approx(odds, abs=1e-6)


def test_evidence_that_no_hypothesis_explains_is_reported_and_nothing_is_lost() -> None:
    reasoner = reasoner_of("faint_hum_on_three")
    question = next(q for test in reasoner.tests if str(test.name) == "module_pairs" for q in test.questions)
    impossible = {question: np.array([-500.0])}
    belief = believed(reasoner.hypotheses, reasoner.expected([question]), impossible)
    assert belief.unexplained == (question,)
    assert belief.probability.sum() == pytest.approx(1.0)
    assert belief.probability == pytest.approx(reasoner.hypotheses.prior)


@pytest.mark.parametrize(
    "name", thinned(case_names(), 8)
)  # all of them: `check` in tests/cases/single_case/test_shipped.py
def test_each_shipped_case_is_singled_out_by_what_it_offers(name: str) -> None:
    reasoner = reasoner_of(name)
    assert reasoner.everything.findings[finding_key(truth_of(reasoner.facts.truth))] >= 0.95


def test_claims_agree_in_any_order_and_a_side_left_out_fits_both() -> None:
    fault = next(f for f in single_faults(NORTH) if f.kind == "open" and f.side is not None)
    claim = claim_of(fault)
    open_side = Claim(claim.cylinders, claim.location, claim.kind, None)
    other = Claim(frozenset({8}), claim.location, claim.kind, None)
    assert same_claims([open_side], [claim])
    assert same_claims([other, open_side], [claim, other])
    assert not same_claims([open_side], [claim, other])


@pytest.mark.long
def test_what_was_only_computed_for_one_belief_is_not_taken_for_another() -> None:
    """Swaps are computed for the few hypotheses that are left; asking for them changes no later belief."""
    reasoner = reasoner_of("green_pin_on_two")
    (question, *_) = next(test for test in reasoner.tests if str(test.name) == "hear").questions
    before = reasoner.belief(reasoner.truth_answers([question])).probability
    assert reasoner.best_path
    assert np.array_equal(reasoner.belief(reasoner.truth_answers([question])).probability, before)
    assert reasoner.channels
    closer = reasoner.closer(reasoner.everything.probability)
    for channel in closer[:1]:  # computed for every hypothesis now, which takes seconds each
        fresh = reasoner.expected(list(channel.test.questions))
        assert all(len(one.values) == len(reasoner.hypotheses.faults) for one in fresh.values())


def test_a_coil_with_half_its_turns_shorted_is_likelier_than_any_short_once_it_is_heard_and_its_codes_are_read() -> (
    None
):
    """It lies just beyond where its plate no longer lifts, where the level falls by ten decibels within a hundredth."""
    findings = belief_after(reasoner_of("half_a_coil"), "hear", "codes").findings
    assert max(findings, key=lambda key: findings[key]) == finding_key(truth_of(case_named("half_a_coil").faults))
