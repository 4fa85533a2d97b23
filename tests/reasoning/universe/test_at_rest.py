"""What reasoning expects of a measurement at rest is what the bench shows: one model behind both."""

from __future__ import annotations

import numpy as np
import pytest

from tests.engines import NORTH, fault_of
from trainer.circuit.elements import Location, Part, Side
from trainer.circuit.fault import Fault, FaultKind
from trainer.instruments.bench import MODULE_CONNECTOR, Work
from trainer.instruments.measuring import measured, unplugged
from trainer.instruments.requests import Request, next_driven, pins_of
from trainer.reasoning.universe.at_rest import LAMP_LEAST_A
from trainer.reasoning.universe.expectations import CLAMP_LEAST_A, CLAMP_PERCENT, Expectations, expectations_of
from trainer.reasoning.universe.menu import clamp_question
from trainer.reasoning.universe.questions import Question
from trainer.reasoning.universe.scales import accuracy_scale, insulation_scale, volts_scale

FAULTS = (
    (),
    (fault_of(NORTH, FaultKind.SHORT_TO_BATTERY, 5, Location.ENGINE_HARNESS),),
    (Fault(FaultKind.FAILS_UNDER_LOAD, Location.ENGINE_HARNESS, (3,), Side.RETURN, None, Part.WIRE),),
    (Fault(FaultKind.RETURN_TO_RETURN, Location.ENGINE_HARNESS, (1, 3)),),
    (fault_of(NORTH, FaultKind.OPEN, 3),),
    (fault_of(NORTH, FaultKind.DEAD_RETURN_DRIVER, 3),),
)


@pytest.fixture(scope="module")
def expectations() -> Expectations:
    return expectations_of(NORTH, 20.0, FAULTS)


def shown(request: Request) -> np.ndarray:
    values = [measured(NORTH, faults, Work(), request, 1).reading.value for faults in FAULTS]
    return np.array([1e9 if value is None else value for value in values])


def at(request: Request) -> Work:
    points = [pin.break_point for pin in pins_of(NORTH, request) if pin is not None]
    return unplugged(NORTH, Work(), points).electrical()


def test_volts_at_rest(expectations: Expectations) -> None:
    for number in (1, 5):
        asked = Request("volts", MODULE_CONNECTOR, "harness", number)
        question = Question("volts", Work(), pins=pins_of(NORTH, asked))
        expected = expectations.of([question], 30.0)[question].values[:, 0]
        assert expected == pytest.approx(volts_scale(shown(asked)), abs=0.5)
        assert expected[1] > expected[0] + 10.0


def test_a_lamp_on_a_wire(expectations: Expectations) -> None:
    asked = Request("lamp", cylinder=3, location=Location.ENGINE_HARNESS)
    question = Question("lamp", at(asked), pins=pins_of(NORTH, asked))
    expected = expectations.of([question], 30.0)[question].values[:, 0]
    assert expected == pytest.approx(accuracy_scale(shown(asked), 1.0, LAMP_LEAST_A), abs=1.0)
    assert abs(expected[2] - expected[0]) > 4.0


def test_insulation_between_returns(expectations: Expectations) -> None:
    asked = Request("insulation", MODULE_CONNECTOR, "harness", 1, 3)
    work = unplugged(NORTH, Work(), [MODULE_CONNECTOR, "pass_through.right_front"]).electrical()
    question = Question("insulation", work, pins=pins_of(NORTH, asked))
    expected = expectations.of([question], 30.0)[question].values[:, 0]
    assert expected[0] == insulation_scale(np.array([1e9]), NORTH.meter)[0]
    assert expected[3] < expected[0] - 10.0


def test_the_battery_under_crank_is_the_same_whatever_the_wiring(expectations: Expectations) -> None:
    question = Question("crank", Work())
    expected = expectations.of([question], 30.0)[question].values[:, 0]
    assert expected == pytest.approx(volts_scale(shown(Request("crank"))), abs=0.5)


def test_battery_and_module_power_are_expected_as_they_are_measured() -> None:
    kinds = (FaultKind.WEAK_BATTERY, FaultKind.POOR_MODULE_FEED, FaultKind.POOR_MODULE_GROUND)
    faults = [(), *((Fault(kind, Location.MODULE_POWER, NORTH.cylinders),) for kind in kinds)]
    expectations = expectations_of(NORTH, 20.0, faults)
    questions = [Question(what, Work()) for what in ("crank", "plus_drop", "ground_drop")]
    for question, expected in expectations.of(questions, 30.0).items():
        scale = volts_scale if question.kind == "crank" else lambda volts: accuracy_scale(volts, 1.0, 0.1)
        for row, one in enumerate(faults):
            reading = measured(NORTH, one, Work(), Request(question.kind), 1).reading.value
            assert expected.values[row, 0] == pytest.approx(scale(np.array([reading]))[0], abs=0.3), (
                question.kind,
                one,
            )


def test_a_clamp_tells_an_open_wire_from_a_dead_driver(expectations: Expectations) -> None:
    question = clamp_question(Work(), 3, next_driven(NORTH, 3))
    expected = expectations.of([question], 30.0)[question].values[:, 0]
    assert abs(expected[5] - expected[0]) < 3.0
    assert expected[4] < expected[0] - 5.0


def test_what_a_clamp_is_expected_to_read_is_what_it_reads(expectations: Expectations) -> None:
    asked = Request("clamp", cylinder=3, other=next_driven(NORTH, 3))
    question = clamp_question(Work(), 3, asked.other)
    expected = expectations.of([question], 30.0)[question].values[:, 0]
    assert expected == pytest.approx(accuracy_scale(shown(asked), CLAMP_PERCENT, CLAMP_LEAST_A), abs=1.5)
