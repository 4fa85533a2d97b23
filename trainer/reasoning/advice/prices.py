"""What tests and repairs cost in minutes, given what has been paid for already.

Access is charged once; plugging everything back takes the access to break points away again.
"""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence

from trainer.circuit.elements import Location
from trainer.circuit.fault import Fault
from trainer.circuit.profile import Profile
from trainer.instruments.bench_tests import Operation, Price

ACCESS = frozenset({
    Operation.MODULE_OHMS, Operation.PASS_THROUGH_OHMS, Operation.INJECTOR_OHMS, Operation.PIN_TO_GROUND,
    Operation.LOOK, Operation.PIN_DRAG, Operation.VOLTS_AT_REST,
})  # fmt: skip
"""What is paid anew once everything has been plugged back."""

REPAIR_PRICES = {
    Location.DRIVE_MODULE: (Operation.MODULE_SUBSTITUTION,),
    Location.ENGINE_HARNESS: (Operation.REPAIR_WIRE,),
    Location.PASS_THROUGH: (Operation.COVER_OFF, Operation.REPAIR_CONNECTOR),
    Location.UNDER_COVER: (Operation.COVER_OFF, Operation.REPAIR_WIRE),
    Location.COIL: (Operation.COVER_OFF, Operation.INJECTOR_SWAP),
    Location.ARMATURE: (Operation.COVER_OFF, Operation.INJECTOR_SWAP),
    Location.MODULE_POWER: (Operation.REPAIR_WIRE,),
}
"""What each repair is made of; a cover that is off already is not paid again, an injector is paid each.

A connector costs the cover where it sits in the cover's gasket.
"""


def after_plugging_back(paid: Collection[Price]) -> frozenset[Price]:
    """Return what is still paid once every connector is on again."""
    return frozenset(price for price in paid if price.operation not in ACCESS)


def unpaid(prices: Sequence[Price], paid: Collection[Price]) -> list[Price]:
    """Return which prices must still be paid, each once."""
    return [price for price in dict.fromkeys(prices) if price not in paid]


def minutes_of(prices: Sequence[Price], minutes: Mapping[str, float]) -> float:
    """Return what prices cost, by the minutes of each operation."""
    return float(sum(minutes[price.operation] * price.times for price in prices))


def covers_for(profile: Profile, location: Location, cylinders: Collection[int]) -> frozenset[str]:
    """Return the banks whose cover comes off for a repair at a place for some cylinders."""
    if Operation.COVER_OFF not in REPAIR_PRICES[location]:
        return frozenset()
    under = [n for n in cylinders if location is not Location.PASS_THROUGH or profile.connector_of(n).in_gasket]
    return frozenset(profile.bank_of(number) for number in under)


def repair_minutes(
    profile: Profile, location: Location, cylinders: Collection[int], covers_off: Collection[str]
) -> float:
    """Return the minutes of a repair at a place for some cylinders."""
    total = 0.0
    for operation in REPAIR_PRICES[location]:
        count = 1
        if operation is Operation.COVER_OFF:
            count = len(covers_for(profile, location, cylinders) - set(covers_off))
        elif operation is Operation.INJECTOR_SWAP:
            count = len(cylinders)
        total += count * profile.minutes[operation]
    return total


def mending_minutes(profile: Profile, faults: Sequence[Fault], covers_off: Collection[str]) -> float:
    """Return the minutes of the right repairs and of one retest; nothing where there is nothing to mend."""
    if not faults:
        return 0.0
    total = profile.minutes[Operation.ACTUATION_TEST]
    opened = set(covers_off)
    for fault in faults:
        total += repair_minutes(profile, fault.location, fault.cylinders, opened)
        opened |= covers_for(profile, fault.location, fault.cylinders)
    return total
