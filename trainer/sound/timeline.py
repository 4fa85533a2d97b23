"""When each slot sounds in a rendered file."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from trainer.circuit.drive import Slot
from trainer.circuit.profile import Schedule

PRE_ROLL_S = 0.6
"""Bed before the first slot: sleeping outputs swallow the first sound, which would sound like an open circuit."""

TAIL_S = 0.5
RAMP_S = 0.02


@dataclass(frozen=True, slots=True)
class Window:
    """One slot in the file's time: from its first pulse until its last has ended."""

    slot: Slot
    start_s: float
    end_s: float


def timeline_of(schedule: Schedule, slots: Sequence[Slot]) -> tuple[tuple[Window, ...], float]:
    """Return the windows of slots played one after another, and the whole length in seconds."""
    windows = []
    now_s = PRE_ROLL_S
    for slot in slots:
        length_s = schedule.together_s if slot.number == 0 else schedule.slot_s
        windows.append(Window(slot, now_s, now_s + length_s))
        now_s += length_s + schedule.pause_s
    return tuple(windows), windows[-1].end_s + TAIL_S
