"""For which listeners a case is fair: whether what decides it can still be heard through their output and ears.

It is about outputs and the typical ears of an age, and no test of anybody's hearing.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from functools import lru_cache

from trainer.arrays import Floats
from trainer.cases.single_case.audibility import DECISIVE_DB, SILENT_DBA
from trainer.cases.single_case.case import Case
from trainer.cases.solved.case_proofs import decisive_slots, provoked
from trainer.circuit.fault import Fault
from trainer.circuit.profile import ByContent
from trainer.circuit.solve import SolvedTest, solve_test
from trainer.instruments.bench import worked_circuit
from trainer.sound.bed import bed_pa
from trainer.sound.levels import FULL_SCALE_PA
from trainer.sound.listeners import LISTENERS, heard_by
from trainer.sound.render import Bed, render

PLACE = "front"
NO_BED_DBA = -60.0
"""A bed under anything that an ear hears, to render a slot without one."""


class Told(StrEnum):
    """What a listener can do with a decisive slot."""

    APART = "apart"
    """Tell it from a good one; also where it is silent on purpose and the good one is heard."""
    LOST = "lost"
    """Not hear it, although it sounds: it would be taken for silent."""
    ALIKE = "alike"
    """Not tell it from a good one."""


@dataclass(frozen=True, slots=True)
class SlotForListener:
    """What is left of a decisive slot, and of the same slot of the good engine, in dB(A) over bed and threshold."""

    slot: int
    told: Told
    level_dba: float
    good_dba: float


@dataclass(frozen=True, slots=True)
class Fairness:
    """A case for one of the stated listeners; without decisive slots it is fair for everybody."""

    listener: str
    slots: tuple[SlotForListener, ...]

    @property
    def fair(self) -> bool:
        """Whether every decisive slot can be told from a good one."""
        return all(slot.told is Told.APART for slot in self.slots)

    def numbers(self, told: Told) -> tuple[int, ...]:
        """Return the decisive slots with which the listener can do this."""
        return tuple(slot.slot for slot in self.slots if slot.told is told)


def fairness_of(case: Case) -> tuple[Fairness, ...]:
    """Return for each stated listener what can be heard of the decisive slots, replayed one by one at the front.

    The fault is provoked, and the bed is the case's own: what happens in the bay keeps out of a replayed slot.
    """
    by_listener: dict[str, list[SlotForListener]] = {name: [] for name in LISTENERS}
    for slot, level_dba in decisive_slots(case):
        faulty, good = _replayed(case, case.faults, slot), _replayed(case, (), slot)
        for name, listener in LISTENERS.items():
            left, fine = (heard_by(listener, *one).level_dba for one in (faulty, good))
            by_listener[name].append(SlotForListener(slot, told_of(level_dba, left, fine), left, fine))
    return tuple(Fairness(name, tuple(slots)) for name, slots in by_listener.items())


def told_of(level_dba: float, left_dba: float, good_left_dba: float) -> Told:
    """Judge a decisive slot by its own level, and by what a listener gets of it and of the good slot, in dB(A)."""
    if level_dba > SILENT_DBA >= left_dba:
        return Told.LOST
    # what lies under the level of silence is silent, however far it lies under it
    difference_db = abs(max(left_dba, SILENT_DBA) - max(good_left_dba, SILENT_DBA))
    return Told.APART if difference_db > DECISIVE_DB else Told.ALIKE


def _replayed(case: Case, faults: tuple[Fault, ...], slot: int) -> tuple[Floats, int, Floats]:
    """Return a slot without its bed, the rate in hertz, and the bed under it; both in pascal, shape (frame, ear)."""
    solved = _solved(ByContent(case.profile), case.temperature_c, faults)
    sound = render(solved, PLACE, Bed(case.bed.kind, NO_BED_DBA), case.seed, [slot])
    window, rate_hz = sound.slots[0].window, sound.rate_hz
    inside = slice(round(window.start_s * rate_hz), round(window.end_s * rate_hz))
    bed = bed_pa(case.bed.kind, case.bed.level_dba, len(sound.samples), rate_hz, case.seed)
    return sound.samples[inside].astype(float) * FULL_SCALE_PA, rate_hz, bed[inside].astype(float)


@lru_cache(maxsize=4)  # twenty megabytes each; a case and its good engine, which the next case may share
def _solved(engine: ByContent, temperature_c: float, faults: tuple[Fault, ...]) -> SolvedTest:
    work = provoked(engine.profile, temperature_c, faults)
    return solve_test(worked_circuit(engine.profile, faults, work))
