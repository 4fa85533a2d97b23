"""Two renderings of one test after one another where they differ: the same gain, no click."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from trainer.arrays import Floats32
from trainer.sound.render import PRE_ROLL_S, RAMP_S, TAIL_S, Sound

AROUND_S = 0.2
"""Bed that is heard before and after each slot."""

DIFFERS_FROM_DB = 0.8


def differing_slots(first: Sound, second: Sound) -> tuple[int, ...]:
    """Return the numbers of the slots whose levels or colours differ audibly between two whole tests."""
    return tuple(
        a.window.slot.number
        for a, b in zip(first.slots, second.slots, strict=True)
        if abs(a.level_dba - b.level_dba) > DIFFERS_FROM_DB
        or not 0.8 < (a.centroid_hz / max(b.centroid_hz, 1.0)) < 1.25
    )


def one_after_another(first: Sound, second: Sound, slots: Sequence[int]) -> Floats32:
    """Return each slot as in the first sound and then as in the second, float32 of shape (frame, channel)."""
    pieces = [_piece(first, 0.0, PRE_ROLL_S)]
    for number in slots:
        for sound in (first, second):
            window = next(one.window for one in sound.slots if one.window.slot.number == number)
            pieces.append(_piece(sound, window.start_s - AROUND_S, window.end_s + AROUND_S))
    last = len(first.samples) / first.rate_hz
    pieces.append(_piece(first, last - TAIL_S, last))
    return np.concatenate(pieces)


def _piece(sound: Sound, start_s: float, end_s: float) -> Floats32:
    piece = sound.samples[max(round(start_s * sound.rate_hz), 0) : round(end_s * sound.rate_hz)].copy()
    ramp = min(round(RAMP_S * sound.rate_hz), len(piece) // 2)
    fade = np.linspace(0.0, 1.0, ramp, dtype=np.float32)[:, None]
    piece[:ramp] *= fade
    piece[-ramp:] *= fade[::-1]
    return piece
