"""Bays in which one listener loses what another still hears, found by turning up the fan."""

from __future__ import annotations

from dataclasses import replace

from trainer.cases.single_case.case import Case
from trainer.cases.solved.fairness import Fairness, fairness_of
from trainer.sound.bed import BedKind
from trainer.sound.render import Bed


def by_listener(case: Case) -> dict[str, Fairness]:
    return {one.listener: one for one in fairness_of(case)}


def with_fan(case: Case, level_dba: float) -> Case:
    return replace(case, bed=Bed(BedKind.VENTILATION, level_dba))


def bed_that_hides_it_from(case: Case, listener: str) -> float:
    """Return the level in dB(A) of the quietest fan, in steps of 2 dB, with which a case is not fair for a listener."""
    levels = (float(level) for level in range(40, 61, 2))
    return next(level for level in levels if not by_listener(with_fan(case, level))[listener].fair)
