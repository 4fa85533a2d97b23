"""Tests of the running or cranking engine: what each cylinder contributes, and its compression beside the others'.

A cylinder contributes where its injector's armature moves and where it is sound. What ails an engine whose circuit
passes is mechanical: one weak cylinder, drawn by the case's seed, by low compression or something else.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from trainer.circuit.chance import Stream
from trainer.circuit.fault import Fault
from trainer.circuit.profile import Profile
from trainer.instruments.bench import Work
from trainer.instruments.reading import Reading
from trainer.instruments.under_load import clean_trace, dip_of, solved_slot

LOW_COMPRESSION_SHARE = 0.5
"""How often a weak cylinder of an engine whose circuit passes has low compression: from memory."""

WEAK_PERCENT, DEAD_PERCENT, LOW_PERCENT = 55, 5, 65
"""Contribution of a mechanically weak cylinder and of one without fuel, and a low compression: from memory."""


@dataclass(frozen=True, slots=True)
class Mechanical:
    """What is wrong with an engine beside its circuit: one weak cylinder, by low compression or not."""

    cylinder: int
    low_compression: bool


def mechanical_of(profile: Profile, seed: int) -> Mechanical:
    """Return what is mechanically wrong with an engine whose circuit passes."""
    chance = Stream(seed, "mechanical")
    return Mechanical(
        profile.cylinders[chance.below(len(profile.cylinders))], bool(chance.uniform(1)[0] < LOW_COMPRESSION_SHARE)
    )


def measure_contribution(
    profile: Profile, faults: Sequence[Fault], work: Work, mechanical: Mechanical | None
) -> Reading:
    """Measure what each cylinder adds to the running engine's speed beside the best one, in percent."""
    shares = {}
    for number in profile.cylinders:
        solved = solved_slot(profile, faults, work, number)
        pulse, row = solved.pulses_of(0)[0]
        current_a = pulse.return_a[:, row, profile.cylinders.index(number)]
        moves = dip_of(clean_trace(profile.meter, current_a, solved.step_s)) is not None
        weak = mechanical is not None and mechanical.cylinder == number
        shares[number] = DEAD_PERCENT if not moves else WEAK_PERCENT if weak else 100
    return _lowest("contribution", shares)


def measure_compression(profile: Profile, mechanical: Mechanical | None) -> Reading:
    """Measure each cylinder's compression beside the best one, in percent, from the starter's current."""
    low = mechanical.cylinder if mechanical is not None and mechanical.low_compression else 0
    return _lowest("compression", {number: LOW_PERCENT if number == low else 100 for number in profile.cylinders})


def _lowest(instrument: str, percent: Mapping[int, int]) -> Reading:
    """Return the lowest cylinder's share; the display names every cylinder that lies under the others."""
    low = {number: share for number, share in percent.items() if share < 100}
    shown = ", ".join(f"{number}: {share} %" for number, share in low.items())
    least = min(percent.values())
    return Reading(instrument, float(least), "percent", shown or "1 = 2 = … = 100 %")
