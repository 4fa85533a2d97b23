"""Cylinder contribution and relative compression: common practice, no published source; the figures are from memory."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

import numpy as np
import pytest

from tests.engines import NORTH, fault_of
from trainer.arrays import Floats
from trainer.cases.single_case.shipped import case_named
from trainer.circuit.fault import FaultKind
from trainer.instruments.bench import Work
from trainer.instruments.measuring import measured
from trainer.instruments.reading import Reading
from trainer.instruments.requests import Request
from trainer.instruments.running import Mechanical, mechanical_of
from trainer.reasoning.universe.questions import Expected, Question
from trainer.reasoning.universe.running import running_expected, with_mechanical
from trainer.reasoning.verdict.joint import after_block, nothing_followed

WEAK = Mechanical(5, low_compression=True)


def read(what, *faults, mechanical=None) -> Reading:
    return measured(NORTH, faults, Work(), Request(what), 1, mechanical).reading


def test_an_injector_without_current_contributes_nothing_and_keeps_its_compression() -> None:
    open_3 = fault_of(NORTH, FaultKind.OPEN, 3)
    assert read("contribution", open_3).display == "3: 5 %"
    assert read("compression", open_3).value == 100.0
    assert read("contribution").value == 100.0


def test_a_mechanically_weak_cylinder_shows_in_contribution_and_by_its_cause_in_compression() -> None:
    assert read("contribution", mechanical=WEAK).display.startswith("5: ")
    assert read("compression", mechanical=WEAK).display.startswith("5: ")
    assert read("compression", mechanical=replace(WEAK, low_compression=False)).value == 100.0


def test_an_engine_has_something_mechanical_where_its_circuit_passes_and_only_there() -> None:
    passes = case_named("misfire_without_a_circuit")
    assert passes.mechanical == mechanical_of(passes.profile, passes.seed)
    assert case_named("faint_hum_on_three").mechanical is None
    assert case_named("old_code_in_memory").mechanical is None  # an old code alone brought it in
    drawn = [mechanical_of(NORTH, seed) for seed in range(400)]
    assert {one.cylinder for one in drawn} == set(NORTH.cylinders)
    assert 0.4 < np.mean([one.low_compression for one in drawn]) < 0.6


def odds(question: Question, expected: Mapping[Question, Expected], seen: Floats) -> float:
    """Return what an answer says for the first hypothesis against the second."""
    logs, _followed = after_block((question,), expected, {question: seen}, nothing_followed(3))
    return float(np.exp(logs[0] - logs[1]))


def test_a_weak_cylinder_that_no_circuit_explains_speaks_for_a_circuit_that_passes() -> None:
    """Bayes' rule over three hypotheses: it passes, an intermittent at rest, an open at cylinder 3."""
    passes = np.array([True, False, False])
    starved = np.zeros((3, 8), dtype=bool)
    starved[2, NORTH.cylinders.index(3)] = True
    for kind, least in (("contribution", 5.0), ("compression", 3.0)):
        question = Question(kind, Work())
        expected = {question: running_expected(NORTH, passes, starved, kind, rough=True)}
        seen = with_mechanical(NORTH, np.zeros(8), WEAK, kind)
        assert odds(question, expected, seen) > least
    question = Question("contribution", Work())
    expected = {question: running_expected(NORTH, passes, starved, "contribution", rough=True)}
    # an intermittent at rest takes nothing away
    assert odds(question, expected, np.zeros(8)) == pytest.approx(0.2, abs=0.02)
