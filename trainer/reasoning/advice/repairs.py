"""Which repair to make first, and whether one more test is worth its minutes before it.

Repairs go by chance over minutes (Heckerman, Breese and Rommelse 1995); a test is worth what it saves of the expected
minutes of the best first repair (value of information, Howard 1966).
"""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import dataclass

import numpy as np

from trainer.arrays import Floats
from trainer.circuit.elements import Location
from trainer.circuit.profile import Profile
from trainer.instruments.bench_tests import Operation
from trainer.reasoning.advice.channels import Channel
from trainer.reasoning.advice.information import best_value, expected_cost, repair_order, value_with
from trainer.reasoning.advice.prices import repair_minutes
from trainer.reasoning.universe.hypotheses import Faults

Mend = tuple[Location, tuple[int, ...]]
"""A place and the cylinders whose circuit is mended there; a module and an injector are replaced whole."""

CONSIDERED = 24
"""How many repairs, the likeliest, are weighed against each other."""


@dataclass(frozen=True, slots=True)
class Repairs:
    """Repairs in the order to make them, each with the chance that it is the right one and its minutes.

    `expected_minutes` is what making them one after another until the fault is gone costs on average.
    """

    mends: tuple[Mend, ...]
    chance: tuple[float, ...]
    minutes: tuple[float, ...]
    expected_minutes: float


def mend_of(faults: Faults) -> Mend | None:
    """Return the repair that takes a single fault away; None where the circuit passes or two are needed."""
    if len(faults) != 1:
        return None
    (fault,) = faults
    if fault.location in (Location.DRIVE_MODULE, Location.MODULE_POWER):
        return fault.location, ()
    place = Location.COIL if fault.location is Location.ARMATURE else fault.location
    return place, fault.cylinders


def repairs_in_order(
    profile: Profile, hypotheses: Collection[Faults], probability: Floats, covers_off: Collection[str]
) -> Repairs:
    """Return the likeliest repairs in the order that costs the fewest expected minutes."""
    sums: dict[Mend, float] = {}
    for faults, chance in zip(hypotheses, probability, strict=True):
        mend = mend_of(faults)
        if mend is not None:
            sums[mend] = sums.get(mend, 0.0) + float(chance)
    likely = sorted(sums, key=lambda mend: -sums[mend])[:CONSIDERED]
    minutes = [_minutes(profile, mend, covers_off) for mend in likely]
    chance = [sums[mend] for mend in likely]
    order = repair_order(chance, minutes)
    return Repairs(
        tuple(likely[place] for place in order),
        tuple(chance[place] for place in order),
        tuple(minutes[place] for place in order),
        expected_cost(order, chance, minutes),
    )


def _minutes(profile: Profile, mend: Mend, covers_off: Collection[str]) -> float:
    place, cylinders = mend
    return repair_minutes(profile, place, cylinders, covers_off) + profile.minutes[Operation.ACTUATION_TEST]


def minutes_saved(
    profile: Profile, hypotheses: Collection[Faults], probability: Floats, channel: Channel, covers_off: Collection[str]
) -> float:
    """Return how many minutes of repair a test saves on average, its own minutes not counted.

    A first repair that is not the right one is followed by the right one; leaving a sound engine alone costs nothing.
    """
    repairs = repairs_in_order(profile, hypotheses, probability, covers_off)
    right = np.array([0.0 if (mend := mend_of(faults)) is None else _minutes(profile, mend, covers_off)
                      for faults in hypotheses])  # fmt: skip
    mended = np.array([[mend_of(faults) == mend for faults in hypotheses] for mend in repairs.mends])
    first = -(np.array(repairs.minutes)[:, None] + np.where(mended, 0.0, right[None, :]))
    leave = -np.where(right > 0.0, right + profile.minutes[Operation.ACTUATION_TEST], 0.0)
    utility = np.vstack([first, leave])
    table = channel.table[channel.label]
    return value_with(probability, table, utility) - best_value(probability, utility)
