"""The all-together burst: over every slot at every place, in bay and hall, and what its limiter may take of it."""

from __future__ import annotations

import pytest

from tests.engines import ALL, FIELD, HARBOUR, NORTH, RIDGE, fault_of, solved
from tests.thinned import thinned
from trainer.circuit.drive import Reductions
from trainer.circuit.fault import Conditions, FaultKind
from trainer.circuit.fault_space import single_faults
from trainer.circuit.profile import Profile
from trainer.circuit.solve import SolvedTest
from trainer.circuit.stepping import Row
from trainer.reasoning.universe.slot_traits import traits_of
from trainer.sound.limiter import LEAST_OVER_DB, limiter_gain_db, threshold_dba
from trainer.sound.places import LEAN, ON, THROUGH, contact_of, places_of
from trainer.sound.render import Bed, SlotSound, render
from trainer.sound.room import in_hall
from trainer.sound.traits import CENTROID, LEVEL, ears_of

NO_BED = Bed(level_dba=-60.0)
ENGINES = pytest.mark.parametrize("profile", ALL, ids=lambda profile: profile.name)
ROUNDING_DB = 1e-9


def by_name(value: object) -> str | None:
    return getattr(value, "name", None)


def heard(test: SolvedTest, place: str, only: list[int] | None = None) -> tuple[SlotSound, ...]:
    return render(test, place, NO_BED, 1, only).slots


def loudest_dba(slots: tuple[SlotSound, ...]) -> float:
    return max(slot.level_dba for slot in slots if slot.window.slot.number != 0)


@pytest.mark.parametrize("temperature_c", [20.0, pytest.param(0.0, marks=pytest.mark.long),
                                           pytest.param(95.0, marks=pytest.mark.long)])  # fmt: skip
@ENGINES
def test_the_burst_is_two_to_eight_decibel_over_the_loudest_slot_wherever_one_stands_or_touches_a_cover(
    profile: Profile, temperature_c: float
) -> None:
    for where in (profile, in_hall(profile)):
        test = solved(where, conditions=Conditions(temperature_c))
        for place in places_of(where):
            if contact_of(place) is None or place.startswith(THROUGH):
                slots = heard(test, place)
                assert 2.0 <= slots[0].level_dba - loudest_dba(slots) <= 8.0, (where.room, place)
                # the limiter's threshold itself lies that far over every good slot
                assert threshold_dba(where, place) >= loudest_dba(slots) + 2.0, (where.room, place)
                assert all(slot.limiter_db == 0.0 for slot in slots[1:])


@ENGINES
def test_a_hall_moves_the_threshold_with_the_front_and_leaves_it_where_one_touches(profile: Profile) -> None:
    hall = in_hall(profile)
    assert hall.bay is profile
    assert threshold_dba(profile, "front") == profile.room.limiter_threshold_dba
    at_front = [loudest_dba(heard(solved(where), "front")) for where in (profile, hall)]
    moved = threshold_dba(hall, "front") - threshold_dba(profile, "front")
    assert moved == pytest.approx(at_front[1] - at_front[0], abs=0.5)
    # no room reaches a cover
    assert threshold_dba(hall, f"{THROUGH} 1") == pytest.approx(threshold_dba(profile, f"{THROUGH} 1"), abs=1e-6)


@ENGINES
def test_with_a_rod_on_one_injector_the_burst_is_that_injector_again(profile: Profile) -> None:
    slots = heard(solved(profile), f"{ON} 3")
    assert slots[0].level_dba - loudest_dba(slots) == pytest.approx(0.0, abs=1.0)
    assert slots[0].limiter_db == 0.0


def test_what_the_limiter_takes() -> None:
    assert limiter_gain_db(60.0, 68.0, 66.0) == 0.0
    assert limiter_gain_db(80.0, 68.0, 66.0) == pytest.approx(-8.0)
    # a weaker burst stays weaker
    assert limiter_gain_db(81.0, 68.0, 66.0) + 81.0 > limiter_gain_db(80.0, 68.0, 66.0) + 80.0
    # a slot that a fault made loud: 2 dB over it are left, or the burst as it is
    assert limiter_gain_db(80.0, 68.0, 72.0) == pytest.approx(-6.0)
    assert limiter_gain_db(80.0, 68.0, 79.0) == 0.0


LIMITED = ((NORTH, FaultKind.SHORT_TO_BATTERY), (HARBOUR, FaultKind.SHORT_TO_GROUND))
"""With these a plain limiter left the burst at most 1.3 dB over the loudest slot."""

KINDS = [(one, kind) for one in ALL for kind in dict.fromkeys(fault.kind for fault in single_faults(one))]


@pytest.mark.parametrize(("profile", "kind"), [*LIMITED, *thinned(KINDS, 16)], ids=by_name)
def test_the_limiter_never_takes_a_burst_under_two_decibel_over_the_loudest_slot(
    profile: Profile, kind: FaultKind
) -> None:
    # at cylinder 3 where it can be: a heater's pin is in one connector of some engines only
    fault = min((one for one in single_faults(profile) if one.kind is kind), key=lambda one: 3 not in one.cylinders)
    test = solved(profile, fault)
    for place in ("front", f"{LEAN} {profile.bank_of(3)}", f"{THROUGH} 3"):
        slots = heard(test, place)
        burst = slots[0]
        unlimited = burst.level_dba - burst.limiter_db
        assert burst.limiter_db <= 0.0
        assert burst.level_dba >= min(unlimited, loudest_dba(slots) + LEAST_OVER_DB) - ROUNDING_DB, place
        # nothing is lifted over what the plain rule would leave without need
        assert burst.limiter_db == pytest.approx(
            limiter_gain_db(unlimited, threshold_dba(profile, place), loudest_dba(slots))
        )


@pytest.mark.parametrize(("profile", "kind"), LIMITED, ids=by_name)
def test_a_burst_played_alone_is_as_loud_as_in_the_whole_test(profile: Profile, kind: FaultKind) -> None:
    test = solved(profile, fault_of(profile, kind, 3))
    whole, alone, with_three = (heard(test, "front", only)[0] for only in (None, [0], [0, 3]))
    assert (alone.level_dba, alone.limiter_db) == (whole.level_dba, whole.limiter_db)
    assert (with_three.level_dba, with_three.limiter_db) == (whole.level_dba, whole.limiter_db)


def test_a_burst_that_a_fault_weakens_stays_weaker_and_is_not_forced() -> None:
    fault = fault_of(NORTH, FaultKind.SLOW_RECHARGE, 1)
    weak, good = (heard(solved(NORTH, *faults), "front") for faults in ((fault,), ()))
    assert weak[0].level_dba < good[0].level_dba - 1.0
    unlimited = weak[0].level_dba - weak[0].limiter_db
    assert weak[0].limiter_db == pytest.approx(
        limiter_gain_db(unlimited, threshold_dba(NORTH, "front"), loudest_dba(weak))
    )


@pytest.mark.parametrize(
    ("profile", "kind"), [*LIMITED, (FIELD, FaultKind.OPEN), (RIDGE, FaultKind.STUCK_ARMATURE)], ids=by_name
)
def test_what_the_reasoning_expects_of_a_burst_goes_through_the_same_limiter(profile: Profile, kind: FaultKind) -> None:
    test = solved(profile, fault_of(profile, kind, 3))
    ears = ears_of(profile, ["front", f"{THROUGH} 3"])
    rows = [Row(test.circuit, slot, Reductions(test.circuit, {})) for slot in test.slots]
    expected = ears.heard([one.sound for one in traits_of(rows, test, ears)])
    for column, place in enumerate(ears.places):
        burst = heard(test, place)[0]
        assert expected[0, column, LEVEL] == pytest.approx(burst.level_dba, abs=0.6), place
        assert expected[0, column, CENTROID] == pytest.approx(burst.centroid_hz, rel=0.05)
