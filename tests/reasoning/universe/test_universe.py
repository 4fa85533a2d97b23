"""What hypotheses expect is what their circuits do, solved alone."""

from __future__ import annotations

import numpy as np
import pytest

from tests.engines import ALL, NORTH, solved, worst
from tests.thinned import thinned
from tests.universes import reasoner_of
from trainer.circuit.codes import codes_from, codes_of
from trainer.circuit.drive import Reductions
from trainer.circuit.elements import Location
from trainer.circuit.fault import Conditions, Fault
from trainer.circuit.fault_space import single_faults
from trainer.circuit.faults import with_faults
from trainer.circuit.harness import circuit_of
from trainer.circuit.profile import Profile
from trainer.circuit.stepping import Row
from trainer.instruments.bench import Work
from trainer.instruments.measuring import measured, unplugged
from trainer.instruments.requests import Request, drop_pins_of, pins_of
from trainer.reasoning.universe.equivalents import Equivalents
from trainer.reasoning.universe.expectations import DROP_LEAST_V, Expectations
from trainer.reasoning.universe.questions import Question
from trainer.reasoning.universe.scales import accuracy_scale, ohm_scale
from trainer.reasoning.universe.slot_traits import traits_of
from trainer.sound.render import Bed, render
from trainer.sound.traits import BALANCE, CENTROID, LEVEL, ears_of

HEARD_FROM_DBA = 15.0
"""Below this a difference of levels says nothing."""

HUM_DBA = 45.0
"""What is fainter is a hum, or a thud as faint."""


def one_of_each(profile: Profile) -> list[Fault]:
    kinds: dict[object, Fault] = {}
    for fault in single_faults(profile):
        kinds.setdefault((fault.kind, fault.location), fault)
    return list(kinds.values())


@pytest.mark.parametrize("profile", thinned(ALL, 4), ids=lambda profile: profile.name)
def test_sharing_solved_slots_changes_neither_levels_nor_codes(profile: Profile) -> None:
    """Rounded ports, one pulse and averaged paths against the whole test solved and rendered alone.

    Within 1.5 dB, and a hum, in which the paths of several injectors meet at one ear, within 2 dB.
    """
    base = circuit_of(profile)
    equivalents = Equivalents(base, ears_of(profile, ("front",)))
    # reasoning/universe/every_hypothesis_alone.py has all faults
    faults = one_of_each(profile)[::4]
    circuits = [with_faults(base, [fault], worst(fault)) for fault in faults]
    shared = equivalents.tests_of(base, circuits)
    for fault, test in list(zip(faults, shared, strict=True))[::2]:
        alone = solved(profile, fault)
        sound = render(alone, "front", Bed(), 5)
        expected_dba = equivalents.ears.heard([traits.sound for traits in test])[:, 0, LEVEL]
        for level_dba, slot in zip(expected_dba, sound.slots, strict=True):
            if slot.level_dba > HEARD_FROM_DBA:
                assert level_dba == pytest.approx(slot.level_dba, abs=2.0 if slot.level_dba < HUM_DBA else 1.5), (
                    fault,
                    slot.window.slot,
                )
        assert codes_from(profile, [traits.seen for traits in test]) == codes_of(alone), fault


def test_a_universe_solves_far_fewer_slots_than_it_has() -> None:
    reasoner = reasoner_of("faint_hum_on_three")
    slots = len(reasoner.universe.faults) * (len(NORTH.cylinders) + 1)
    tests = reasoner.universe.expectations.tests(Work())
    assert len({id(slot) for test in tests for slot in test}) < slots / 6


def test_traits_without_rendering_are_those_of_the_rendered_file() -> None:
    ears = ears_of(NORTH, ("front", "probe 3"))
    test = solved(NORTH)
    rows = [Row(test.circuit, slot, Reductions(test.circuit, {})) for slot in test.slots]
    traits = traits_of(rows, test, ears)
    for column, place in enumerate(ears.places):
        sound = render(test, place, Bed(), 3)
        for one, slot in zip(ears.heard([each.sound for each in traits]), sound.slots, strict=True):
            assert one[column, LEVEL] == pytest.approx(slot.level_dba, abs=0.6)
            assert one[column, CENTROID] == pytest.approx(slot.centroid_hz, rel=0.05)
    right, left = traits[1].sound[0, BALANCE], traits[2].sound[0, BALANCE]
    assert right > left + 1.0  # facing the engine from its front, its right bank is on the listener's left


def test_expected_ohms_are_what_the_meter_shows_to_within_its_own_limits() -> None:
    faults = one_of_each(NORTH)
    equivalents = Equivalents(circuit_of(NORTH), ears_of(NORTH, ("front",)))
    expectations = Expectations(NORTH, [(fault,) for fault in faults], equivalents)
    for request in (
        Request("pair", cylinder=1),
        Request("ground", cylinder=1),
        Request("returns", cylinder=1, other=3),
    ):
        work = unplugged(NORTH, Work(), [request.point])
        question = Question("ohms", work, pins=pins_of(NORTH, request))
        values = expectations.of([question], 30.0)[question].values[:, 0]
        for fault, value in zip(faults, values, strict=True):
            reading = measured(NORTH, [fault], Work(), request, 11).reading
            seen = ohm_scale(np.array([1e9 if reading.value is None else reading.value]), NORTH.meter)[0]
            assert abs(seen - value) < 2.0, (fault, request.what, reading.display)


def test_expected_drops_are_what_the_voltmeter_shows() -> None:
    chosen = [f for f in one_of_each(NORTH) if f.location in (Location.PASS_THROUGH, Location.UNDER_COVER)]
    equivalents = Equivalents(circuit_of(NORTH), ears_of(NORTH, ("front",)))
    expectations = Expectations(NORTH, [(fault,) for fault in chosen], equivalents)
    request = Request("drop", cylinder=1, location=Location.PASS_THROUGH)
    question = Question("drop", Work(), slot=1, pins=drop_pins_of(NORTH, request))
    values = expectations.of([question], 30.0)[question].values[:, 0]
    for one, value in zip(chosen, values, strict=True):
        reading = measured(NORTH, [one], Work(), request, 11).reading
        assert reading.value is not None
        assert value == pytest.approx(accuracy_scale(np.array([reading.value]), 1.0, DROP_LEAST_V)[0], abs=2.0), one


def test_a_fault_that_comes_and_goes_is_expected_only_where_it_is_provoked() -> None:
    fault = next(f for f in single_faults(NORTH) if f.kind == "open_when_moved" and f.cylinders == (3,))
    equivalents = Equivalents(circuit_of(NORTH), ears_of(NORTH, ("front",)))
    expectations = Expectations(NORTH, [(fault,), ()], equivalents)
    resting = expectations.tests(Work())
    moved = expectations.tests(Work(conditions=Conditions(moved=fault.location)))
    assert resting[0][3].sound[0, LEVEL] == resting[1][3].sound[0, LEVEL]
    assert moved[0][3].sound[0, LEVEL] < moved[1][3].sound[0, LEVEL] - 20.0
