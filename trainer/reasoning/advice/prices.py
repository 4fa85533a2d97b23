"""What tests and repairs cost in minutes, given what has been paid for already.

Access is charged once; plugging everything back takes the access to break points away again.
"""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence

from trainer.circuit.elements import Location
from trainer.circuit.faults import Fault
from trainer.circuit.profile import Profile

ACCESS = ("module_ohms", "pass_through_ohms", "injector_ohms", "pin_to_ground", "look")
"""What is paid anew once everything has been plugged back."""

REPAIR_PRICES = {
    Location.DRIVE_MODULE: ("module_substitution",),
    Location.ENGINE_HARNESS: ("repair_wire",),
    Location.PASS_THROUGH: ("repair_connector",),
    Location.UNDER_COVER: ("cover_off", "repair_wire"),
    Location.COIL: ("cover_off", "injector_swap"),
    Location.ARMATURE: ("cover_off", "injector_swap"),
}
"""What each repair is made of; a cover that is off already is not paid again, an injector is paid each."""


def after_plugging_back(paid: Collection[str]) -> frozenset[str]:
    """Return what is still paid once every connector is on again."""
    return frozenset(price for price in paid if price.partition(":")[0] not in ACCESS)


def unpaid(prices: Sequence[str], paid: Collection[str]) -> list[str]:
    """Return which prices must still be paid, each once."""
    return [price for price in dict.fromkeys(prices) if price not in paid]


def minutes_of(prices: Sequence[str], minutes: Mapping[str, float]) -> float:
    """Return what prices cost; a price is named up to its colon, what follows only tells it from others."""
    return float(sum(minutes[price.partition(":")[0]] for price in prices))


def repair_minutes(
    profile: Profile, location: Location, cylinders: Collection[int], covers_off: Collection[str]
) -> float:
    """Return the minutes of a repair at a place for some cylinders."""
    total = 0.0
    for test in REPAIR_PRICES[location]:
        count = 1
        if test == "cover_off":
            count = len({profile.bank_of(number) for number in cylinders} - set(covers_off))
        elif test == "injector_swap":
            count = len(cylinders)
        total += count * profile.minutes[test]
    return total


def mending_minutes(profile: Profile, faults: Sequence[Fault], covers_off: Collection[str]) -> float:
    """Return the minutes of the right repairs and of one retest; nothing where there is nothing to mend."""
    if not faults:
        return 0.0
    total = profile.minutes["actuation_test"]
    opened = set(covers_off)
    for fault in faults:
        total += repair_minutes(profile, fault.location, fault.cylinders, opened)
        if "cover_off" in REPAIR_PRICES[fault.location]:
            opened |= {profile.bank_of(number) for number in fault.cylinders}
    return total
