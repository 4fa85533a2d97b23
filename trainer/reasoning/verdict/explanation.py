"""Why a test sounded as it did: each slot's solved currents and motion beside the good engine's, as numbers."""

from __future__ import annotations

from dataclasses import dataclass

from trainer.circuit.solve import SolvedTest
from trainer.reasoning.universe.hearing import Heard, heard_as
from trainer.sound.render import Sound

MOVED_SHARE = 0.5
"""An armature that passes this share of its lift has moved."""


@dataclass(frozen=True, slots=True)
class SlotReason:
    """One slot explained; currents in ampere, levels in dB(A) at the listener without the bed.

    `own_a` flows in the commanded coils, `output_a` in their outputs (means of the peaks). `held_back` says that a coil
    has about its limit and does not move. `loaded` are others with far more than background that do not move.
    """

    slot: int
    heard: Heard
    level_dba: float
    good_dba: float
    own_a: float
    output_a: float
    held_back: bool
    others: tuple[int, ...]
    others_a: float
    loaded: tuple[int, ...]
    moved: tuple[int, ...]
    tripped: bool
    coil_peaks_a: tuple[float, ...]


OTHERS_FROM_A, LOADED_FROM_A = 0.05, 4.0
HELD_SHARE = 0.85


def reasons_of(solved: SolvedTest, sound: Sound, good: Sound) -> tuple[SlotReason, ...]:
    """Return the reason for every slot of a test rendered whole, beside the good engine at the same place."""
    profile = solved.circuit.profile
    reasons = []
    for index, slot in enumerate(solved.slots):
        pulse, row = solved.pulses_of(index)[0]
        peak = abs(pulse.coil_a[:, row]).max(axis=0)
        travel = pulse.position_m[:, row].max(axis=0)
        moved = tuple(
            number
            for number, way, lift in zip(
                profile.cylinders, travel, (solved.circuit.solenoids[n].lift_m for n in profile.cylinders), strict=True
            )
            if way > MOVED_SHARE * lift
        )
        own = [peak[profile.cylinders.index(number)] for number in slot.commanded]
        outputs = abs(pulse.return_a[: solved.on_steps, row]).max(axis=0)
        mean_own = float(sum(own) / len(own))
        others = [
            (number, peak[column])
            for column, number in enumerate(profile.cylinders)
            if number not in slot.commanded and peak[column] > OTHERS_FROM_A
        ]
        level, fine = sound.slots[index].level_dba, good.slots[index].level_dba
        brightness = sound.slots[index].centroid_hz / max(good.slots[index].centroid_hz, 1.0)
        reasons.append(
            SlotReason(
                slot=slot.number,
                heard=heard_as(level, fine, sound.bed.level_dba, brightness),
                level_dba=level,
                good_dba=fine,
                own_a=mean_own,
                output_a=float(sum(outputs[profile.cylinders.index(n)] for n in slot.commanded) / len(own)),
                held_back=mean_own > HELD_SHARE * profile.module.limit_a and not set(slot.commanded) & set(moved),
                others=tuple(number for number, _amps in others),
                others_a=float(sum(amps for _n, amps in others) / len(others)) if others else 0.0,
                loaded=tuple(n for n, amps in others if amps > LOADED_FROM_A and n not in moved),
                moved=moved,
                tripped=bool(solved.tripped[index]),
                coil_peaks_a=tuple(float(one) for one in peak),
            )
        )
    return tuple(reasons)
