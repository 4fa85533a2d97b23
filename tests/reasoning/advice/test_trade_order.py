"""Best paths follow the trade's order and end with nothing replaced that was not measured."""

from __future__ import annotations

import numpy as np
import pytest

from tests.thinned import thinned
from tests.universes import UNIVERSES, reasoner_of
from trainer.cases.drawing.random_case import draw_case
from trainer.cases.single_case.shipped import case_named, case_names, profile_named
from trainer.circuit.fault import FaultKind
from trainer.instruments.bench_tests import BenchTestKind, Operation, Price
from trainer.practice.reports.path_lines import path_lines
from trainer.reasoning.advice.measured import PROVED
from trainer.reasoning.advice.trade_order import SETTLES_FROM, Stage, is_dead, is_live, stage_of
from trainer.reasoning.reasoner import Reasoner
from trainer.reasoning.universe import questions
from trainer.reasoning.universe.complaint import TIMES_LIKELIER, Complaint, after_complaint
from trainer.reasoning.universe.finding import truth_of
from trainer.reasoning.universe.hypotheses import single_hypotheses
from trainer.reasoning.universe.menu import WHOLE


def follows_the_order(reasoner: Reasoner) -> None:
    """Assert on every step of a path; the belief before each is worked out again from all answers so far."""
    tests = {test.name: test for test in reasoner.tests}
    answers: dict[questions.Question, np.ndarray] = {}
    done: list[questions.Test] = []
    standing = reasoner.standing(reasoner.belief({}))
    for step in reasoner.best_path:
        if str(step.name) in ("complaint", "repair_and_retest"):
            continue
        if step.name not in tests:  # thought of once few hypotheses were left
            tests |= {channel.test.name: channel.test for channel in reasoner.closer(standing.doubt)}
        test = tests[step.name]
        assert stage_of(test) is not Stage.LENT
        if is_live(test):
            settling = [
                one for one in reasoner.tests if is_dead(one) and one not in done and proves(reasoner, answers, one)
            ]
            assert not settling, (step.name, [one.name for one in settling])
        if stage_of(test) is Stage.DROPS:
            assert any(map(is_dead, done)), step.name
        done.append(test)
        if test in reasoner.tests:  # the others are computed for a few hypotheses only
            answers |= reasoner.truth_answers(test.questions)
            standing = reasoner.standing(reasoner.belief(answers))
    names = [str(step.name) for step in reasoner.best_path if str(step.name) != "complaint"]
    assert names[:2] == ["hear", "codes"]


def proves(reasoner: Reasoner, answers: dict[questions.Question, np.ndarray], test: questions.Test) -> bool:
    """Tell whether a test, answered as this engine would, proves a finding that was likely to come of it."""
    before = reasoner.belief(answers)
    after = reasoner.belief({**answers, **reasoner.truth_answers(test.questions)})
    chance = sum(
        weight
        for row, weight in enumerate(before.probability)
        if after.probability[row] > 0.5 * after.probability.max()
    )
    return reasoner.standing(after).proves(PROVED) and chance > 2.0 * SETTLES_FROM


@pytest.fixture(scope="module", params=thinned(case_names(), 8))
def reasoner(request: pytest.FixtureRequest) -> Reasoner:
    """The reasoner of a shipped case: every test of its path is made on it before the next case is taken."""
    return reasoner_of(request.param)


def test_shipped_paths_follow_the_trades_order_and_end_measured(reasoner: Reasoner) -> None:
    assert reasoner.best_way[1].proves(PROVED)
    follows_the_order(reasoner)


def test_the_best_path_of_every_shipped_case_proves_it_and_ends_with_its_repair(reasoner: Reasoner) -> None:
    path = reasoner.best_path
    assert next(str(step.name) for step in path if str(step.name) != "complaint") == "hear"
    assert (str(path[0].name) == "complaint") == (reasoner.facts.complaint is not None)
    assert path[-1].belief >= PROVED
    assert (str(path[-1].name) == "repair_and_retest") == bool(reasoner.facts.truth)
    assert all(step.minutes > 0.0 for step in path if str(step.name) != "complaint")
    assert len({step.name for step in path}) == len(path)


def test_ohms_in_a_try_in_which_nothing_was_heard_are_not_advised_and_another_try_is() -> None:
    reasoner = reasoner_of("dies_after_lunch")
    by_name = {str(test.name): test for test in reasoner.tests}
    done = [by_name[name] for name in ("hear", "codes", "warm_run", "heat:pass_through_connector")]
    answers = reasoner.truth_answers([question for test in done for question in test.questions])
    paid = [price for test in done for price in test.prices]
    advised = {
        str(choice.test.name)
        for choice in reasoner.next_tests(reasoner.belief(answers), paid, [test.name for test in done])
    }
    assert "pairs_warm:pass_through_connector" not in advised
    assert "heat:pass_through_connector#2" in advised


@pytest.mark.long
@pytest.mark.parametrize("seeds", [range(first, first + 50) for first in range(0, 500, 50)], ids=str)
def test_five_hundred_drawn_paths_follow_it_too(seeds: range) -> None:
    for seed in seeds:
        profile = profile_named(("north_v8", "harbour_v8", "field_six", "ridge_v6")[seed % 4])
        reasoner = UNIVERSES.reasoner(draw_case(profile, 1 + seed % 3, seed))
        follows_the_order(reasoner)
        assert ends_measured_and_repairs_only_what_it_proves(reasoner), seed


def ends_measured_and_repairs_only_what_it_proves(reasoner: Reasoner) -> bool:
    """Tell whether the path that is shown ends so; one that proves nothing has no repair."""
    standing = reasoner.best_way[1]
    repaired = reasoner.best_path[-1].name.kind is BenchTestKind.REPAIR_AND_RETEST
    return standing.measured and repaired == (bool(reasoner.facts.truth) and standing.proves(PROVED))


def test_a_place_is_measured_though_its_kind_stays_open_and_then_nothing_is_repaired() -> None:
    """A pin dragged once leaves a spread terminal under the cover at 92 %: wires and contacts open there likewise."""
    reasoner = UNIVERSES.reasoner(draw_case(profile_named("field_six"), 3, 26))
    names = [str(step.name) for step in reasoner.best_path]
    assert names[-2:] == ["drag_cover:row", "pairs_moved:under_cover_harness/row"]
    assert not reasoner.provable
    assert 0.9 < reasoner.best_way[1].sure < PROVED
    assert ends_measured_and_repairs_only_what_it_proves(reasoner)
    assert reasoner.best_minutes > sum(step.minutes for step in reasoner.best_path)
    lines = list(path_lines(reasoner.best_path, truth_of(reasoner.facts.truth)))
    assert lines[-1] == "This path does not prove the fault, so it ends without a repair."


def test_a_path_is_the_same_whether_another_one_has_shared_its_beliefs() -> None:
    reasoner = reasoner_of("loose_grip_on_seven")
    alone = reasoner.path(ahead=False)[0]
    assert [(step.name, step.belief) for step in reasoner.paths[1][0]] == [(step.name, step.belief) for step in alone]


def test_a_complaint_makes_kinds_likelier_and_rules_none_out() -> None:
    case = case_named("dies_after_lunch")
    usual = single_hypotheses(case.profile)
    hot = after_complaint(usual, Complaint.HOT)
    kinds = np.array([str(faults[0].kind) if faults else "" for faults in usual.faults])
    share = {kind: (usual.prior[kinds == kind].sum(), hot.prior[kinds == kind].sum()) for kind in set(kinds)}
    assert hot.prior.sum() == pytest.approx(1.0)
    assert share[FaultKind.OPEN_WHEN_HOT][1] > 4.0 * share[FaultKind.OPEN_WHEN_HOT][0]
    assert share[""][0] == pytest.approx(share[""][1])
    assert all(after > 0.0 for _before, after in share.values())
    assert set(TIMES_LIKELIER) == set(Complaint)


def test_a_path_shows_the_complaint_first_where_a_case_has_one() -> None:
    first = reasoner_of("dies_after_lunch").best_path[0]
    assert (str(first.name), first.minutes) == ("complaint", 0.0)
    assert first.bits > 0.0
    assert str(reasoner_of("faint_hum_on_three").best_path[0].name) == "hear"


def test_the_first_measurement_after_ear_and_codes_is_a_dead_one() -> None:
    reasoner = reasoner_of("faint_hum_on_three")
    begun = [test for test in reasoner.tests if str(test.name) in ("hear", "codes")]
    belief = reasoner.belief(reasoner.truth_answers([q for test in begun for q in test.questions]))
    order = reasoner.next_tests(belief, {WHOLE, Price(Operation.CODES)}, [test.name for test in begun])
    assert not is_live(order[0].test)
    assert stage_of(order[0].test) is Stage.OUTSIDE
    assert is_dead(order[0].test)
