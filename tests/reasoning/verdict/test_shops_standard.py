"""No part is condemned but no measurement rules out, and what is mended must be mended."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tests.universes import POOLS, reasoner_of
from trainer.cases.single_case.shipped import case_named
from trainer.circuit.elements import Location, Side
from trainer.desk.caching_solver import CachingSolver
from trainer.instruments.bench import Work
from trainer.instruments.requests import Request, through_point
from trainer.practice.attempt import actions, repair
from trainer.practice.attempt.attempt import Attempt, begun, step
from trainer.practice.attempt.debrief import debrief_of
from trainer.practice.attempt.events import Found, Retested
from trainer.practice.attempt.judging import failed_retests, scored
from trainer.practice.reports.debrief_lines import verdict_lines
from trainer.reasoning.advice.measured import is_electrical, mates_agree
from trainer.reasoning.universe.finding import Claim, Finding, truth_of
from trainer.reasoning.universe.questions import Question
from trainer.reasoning.verdict.score import Proof, Score, score_of

SOLVER = CachingSolver()


def proved(attempt: Attempt) -> bool:
    event = attempt.events[-1]
    assert isinstance(event, Retested)
    return event.proved


def heard(name: str) -> Attempt:
    case = case_named(name)
    attempt = begun(case, case.seed)
    done = actions.hear(attempt, None, "front", SOLVER)
    return step(attempt, done.event)


def measured(attempt: Attempt, *requests: Request) -> Attempt:
    for request in requests:
        done = actions.measure(attempt, request)
        attempt = step(attempt, done.event)
    return attempt


def found(attempt: Attempt, *claims: Claim) -> Attempt:
    said = claims or truth_of(attempt.case.to_be_found)
    return step(attempt, Found(claims=said, certainty=0.95))


def score(attempt: Attempt, name: str) -> Score:
    return scored(attempt, reasoner_of(name)).score


def swapped_injector(attempt: Attempt) -> Attempt:
    """Return the attempt after the named injector was replaced and the test run again."""
    (fault,) = attempt.case.faults
    done = repair.repair(attempt, repair.Repair(Location.COIL, frozenset(fault.cylinders)))
    attempt = step(attempt, done.event)
    again = repair.retest(attempt, SOLVER)
    return step(attempt, again.event)


OIL = "thick_oil_on_eight"


def test_an_injector_named_by_ear_alone_and_swapped_stays_under_seventy() -> None:
    """The classic mistake, even where the guess is right and the new injector mends the engine."""
    attempt = swapped_injector(found(heard(OIL)))
    assert proved(attempt)
    result = score(attempt, OIL)
    assert result.points < 70.0
    assert (result.location, result.economy, result.right) == (0.5, 0.0, False)
    assert result.proof <= 0.5


def test_the_best_path_of_that_case_measures_and_is_worth_everything() -> None:
    reasoner = reasoner_of(OIL)
    answers = {
        question: answer
        for test in (*reasoner.tests, *(channel.test for channel in reasoner.closer(reasoner.everything.probability)))
        if test.name in {one.name for one in reasoner.best_path}
        for question, answer in reasoner.truth_answers(test.questions).items()
    }
    assert any(map(is_electrical, answers))
    assert reasoner.best_way[1].proves(0.95)


def test_ohms_that_separate_the_place_make_the_proof_full() -> None:
    begin = heard("faint_hum_on_three")
    through = through_point(begin.case.profile, 3)
    attempt = measured(
        begin,
        *(Request("pair", cylinder=number) for number in (1, 3)),
        *(Request("wire", cylinder=3, side=side, location=Location.ENGINE_HARNESS) for side in Side),
        Request("pair", through, "cover", 3),
    )
    assert not scored(found(begin), reasoner_of("faint_hum_on_three")).proof.measured
    assert scored(found(attempt), reasoner_of("faint_hum_on_three")).proof.measured


def test_a_right_finding_by_ear_is_unproved_and_no_misconception() -> None:
    """Nothing was misheard or misread: the debrief asks for the measurement instead of refuting the finding."""
    attempt = found(heard("faint_hum_on_three"))
    debrief = debrief_of(attempt, SOLVER, reasoner_of("faint_hum_on_three"), POOLS(attempt.case.profile))
    assert not debrief.score.right
    assert (debrief.wrong, debrief.misconception) == (None, None)


def test_a_reading_on_a_mate_alone_separates_nothing() -> None:
    attempt = measured(heard(OIL), Request("pair", cylinder=1), Request("pair", cylinder=3))
    assert not scored(found(attempt), reasoner_of(OIL)).proof.measured


def test_a_new_injector_or_module_is_no_measurement() -> None:
    reasoner = reasoner_of(OIL)
    lent = next(test for test in reasoner.tests if str(test.name) == "lend_injector:8")
    assert not any(map(is_electrical, lent.questions))
    heard_on_it = reasoner.belief(reasoner.truth_answers(lent.questions))
    assert not heard_on_it.measured(truth_of(reasoner.facts.truth), reasoner.inseparable)
    pairs = next(test for test in reasoner.tests if str(test.name) == "module_pairs").questions
    fitted = [replace(q, work=replace(q.work, replaced=frozenset({(Location.COIL, 8)}))) for q in pairs]
    assert not any(map(is_electrical, fitted))


PASSES = "misfire_without_a_circuit"


def test_that_the_circuit_passes_is_proved_by_ohms_equal_to_a_mates() -> None:
    reasoner = reasoner_of(PASSES)
    pairs = reasoner.truth_answers(next(t for t in reasoner.tests if str(t.name) == "module_pairs").questions)
    one = dict(list(pairs.items())[:1])
    assert mates_agree(pairs)
    assert not mates_agree(one)
    off = {question: answer + 8.0 * place for place, (question, answer) in enumerate(pairs.items())}
    assert not mates_agree(off)
    assert score(found(heard(PASSES)), PASSES).proof <= 0.5
    again = measured(heard(PASSES), *(Request("pair", cylinder=number) for number in (1, 3)))
    assert scored(found(again), reasoner).proof.measured


def test_traces_of_two_mates_count_as_well() -> None:
    reasoner = reasoner_of(PASSES)
    traces = [q for t in reasoner.tests if str(t.name) in ("trace:1", "trace:3") for q in t.questions]
    assert mates_agree(reasoner.truth_answers(traces))
    assert not mates_agree(reasoner.truth_answers(traces[:1]))


def claim(side: Side | None) -> Claim:
    (true,) = truth_of(case_named("faint_hum_on_three").faults)
    return replace(true, side=side)


@pytest.mark.parametrize(
    ("said", "location", "right"), [("same", 1.0, True), (None, 1.0 - 1.0 / 6.0, True), ("other", 2.0 / 3.0, False)]
)
def test_the_side_counts_where_offered_evidence_proves_it(said: str | None, location: float, right: bool) -> None:
    true = claim(Side.RETURN)
    side = {"same": Side.RETURN, "other": Side.FEED, None: None}[said]
    proof = Proof(0.95, 1.0, 50.0, 50.0, sided=(true,))
    result = score_of(Finding((claim(side),), 0.95), (true,), proof)
    assert result.location == pytest.approx(location)
    assert result.right is right
    untold = score_of(Finding((claim(side),), 0.95), (true,), replace(proof, sided=()))
    assert (untold.location, untold.right) == (1.0, True)


def test_what_the_learners_own_readings_contradict_is_not_proved() -> None:
    """The engine-harness wires read end to end show the return open: a feed named there has no proof."""
    name = "harness_in_the_bracket"
    (fault,) = case_named(name).faults
    wires = [Request("wire", cylinder=fault.cylinders[0], side=s, location=Location.ENGINE_HARNESS) for s in Side]
    attempt = measured(heard(name), Request("pair", cylinder=fault.cylinders[0]), *wires)
    (true,) = truth_of(case_named(name).faults)
    assert true.side is not None
    (other,) = set(Side) - {true.side}
    rightly, wrongly = (
        scored(found(attempt, replace(true, side=side)), reasoner_of(name)).proof for side in (true.side, other)
    )
    assert rightly.posterior > 0.95
    assert wrongly.posterior < 0.05


def test_a_failed_retest_costs_marks_comes_first_and_keeps_the_case_from_being_right() -> None:
    name = OIL
    attempt = found(measured(heard(name), Request("pair", cylinder=8), Request("trace", cylinder=8)))
    wrong = repair.repair(attempt, repair.Repair(Location.ENGINE_HARNESS, frozenset({8})))
    attempt = step(attempt, wrong.event)
    again = repair.retest(attempt, SOLVER)
    assert not again.event.proved
    failed = step(attempt, again.event)
    before, after = scored(attempt, reasoner_of(name)), scored(failed, reasoner_of(name))
    assert (failed_retests(attempt), failed_retests(failed)) == (0, 1)
    assert after.score.lost == 10.0
    assert not after.score.right
    assert after.score.points < before.score.points
    debrief = debrief_of(failed, SOLVER, reasoner_of(name), POOLS(failed.case.profile))
    assert next(iter(verdict_lines(debrief, failed, {}))).startswith("The retest showed the fault again")


def test_a_retest_between_two_repairs_that_were_both_named_is_not_a_failed_one() -> None:
    case = case_named("two_at_once")
    attempt = found(begun(case, case.seed))
    first = case.faults[0]
    done = repair.repair(attempt, repair.Repair(first.location, frozenset(first.cylinders)))
    attempt = step(attempt, done.event)
    again = repair.retest(attempt, SOLVER)
    assert not again.event.proved
    assert failed_retests(step(attempt, again.event)) == 0


def test_the_debrief_says_what_was_not_measured_what_the_repair_takes_and_who_pays() -> None:
    attempt = found(heard(OIL))
    lines = list(verdict_lines(debrief_of(attempt, SOLVER, reasoner_of(OIL), POOLS(attempt.case.profile)), attempt, {}))
    (line,) = (line for line in lines if "but no measurement rules out" in line)
    assert "armature" in line
    assert "the shop or the customer pays for it" in line
    minutes = attempt.case.profile.minutes
    assert f"{minutes['cover_off'] + minutes['injector_swap']:.0f} min" in line


def test_an_electrical_observation_is_one_of_a_meter_or_an_exchange() -> None:
    work = Work()
    kinds = {kind: is_electrical(Question(kind, work)) for kind in ("slot", "codes", "look", "ohms", "trace", "drop")}
    assert kinds == {"slot": False, "codes": False, "look": False, "ohms": True, "trace": True, "drop": True}
    assert is_electrical(Question("slot", replace(work, swapped=((6, 8),))))
