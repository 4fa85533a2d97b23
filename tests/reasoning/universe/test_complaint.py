"""What a complaint makes likelier: common practice, no published source."""

from __future__ import annotations

import pytest

from tests.engines import NORTH
from trainer.circuit.fault import FaultKind
from trainer.circuit.faults import KINDS
from trainer.reasoning.universe.complaint import TIMES_LIKELIER, Complaint, after_complaint
from trainer.reasoning.universe.hypotheses import single_hypotheses


@pytest.mark.parametrize("kind", [kind for kind in FaultKind if KINDS[kind].heeds_conditions], ids=str)
def test_what_shows_only_sometimes_is_likelier_when_the_customer_says_when(kind: FaultKind) -> None:
    if kind is FaultKind.CURED_BY_RESEATING:  # it shows whenever nobody has just worked at it
        return
    whens = [when for when, times in TIMES_LIKELIER.items() if times.get(kind, 1.0) > 1.0]
    assert whens, "say when it shows in TIMES_LIKELIER"
    assert Complaint.ALWAYS not in whens


@pytest.mark.parametrize("complaint", [complaint for complaint in Complaint if complaint is not Complaint.CODE_ONLY])
def test_a_complaint_leaves_a_circuit_that_passes_its_share(complaint: Complaint) -> None:
    usual = single_hypotheses(NORTH)
    after = after_complaint(usual, complaint)
    row = usual.faults.index(())
    assert after.prior.sum() == pytest.approx(1.0)
    assert after.prior[row] == pytest.approx(usual.prior[row])


def test_where_only_a_code_brought_it_in_a_circuit_that_passes_is_likelier() -> None:
    usual = single_hypotheses(NORTH)
    row = usual.faults.index(())
    after = after_complaint(usual, Complaint.CODE_ONLY).prior
    assert after.sum() == pytest.approx(1.0)
    assert 2.0 * usual.prior[row] < after[row] < 0.5
