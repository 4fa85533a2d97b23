"""Computes what makes a case hard: the distance of its sound from a good slot, its hum, the number of alternatives."""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np

from trainer.cases.drawing.practice_case import BEDS_DBA, LENDING, Axes
from trainer.cases.drawing.practice_pool import Pool, class_of_fault, solved_traits
from trainer.cases.single_case.case import Case
from trainer.circuit.codes import known_codes
from trainer.circuit.profile import PASSES
from trainer.reasoning.universe.hypotheses import Faults

TWO_FAULTS = "two_faults"


@dataclass(frozen=True, slots=True)
class Features:
    """The features of a case that decide its difficulty.

    `kind_class` is what practice mixes by. `margin` is how far the plainest slot lies from its good sound, in units of
    d′; `shortfall_db` by how much the faintest one falls short of a clear hum; `alike` how many faults sound and code
    alike. `crossed` says that the firing order puts another number where this cylinder's is, `hums` that a
    slot is only the others' hum, `coded` that the test leaves a code, `misled` that a code names a cylinder
    without a fault.
    """

    kind_class: str
    slots: int
    bed_dba: float
    margin: float = 0.0
    shortfall_db: float = 0.0
    alike: int = 1
    single: bool = False
    crossed: bool = False
    hums: bool = False
    coded: bool = False
    misled: bool = False
    provoked: bool = False
    lending: bool = True


def pool_features(pool: Pool, place: int | None, axes: Axes) -> Features:
    """Return the features of a practice case; `place` is its fault's in the pool, None where the circuit passes."""
    bed_dba = BEDS_DBA[axes.bed]
    if place is None:
        passing = Features(PASSES, len(pool.profile.cylinders), bed_dba)
        return replace(passing, misled=axes.old_code, lending=axes.lending)
    found = features_at(pool, place, bed_dba)
    others = len(pool.fault(place).cylinders) < len(pool.profile.cylinders)
    return replace(found, misled=found.misled or (axes.old_code and others), lending=axes.lending)


def features_at(pool: Pool, place: int, bed_dba: float) -> Features:
    """Return the features of one fault of a pool in a bed, everything offered and no old code left."""
    return _features(pool, place, bed_dba, (pool.fault(place),))


def features_of(case: Case, pool: Pool) -> Features:
    """Return the features of any case beside its engine's pool; its faults are solved for it."""
    lending = bool(LENDING & case.evidence)
    faulty = {number for fault in case.faults for number in fault.cylinders}
    misled = any(item.cylinder not in faulty for item in case.stored)
    if not case.faults:
        return Features(PASSES, len(case.profile.cylinders), case.bed.level_dba, misled=misled, lending=lending)
    own = solved_traits(case.profile, [case.faults], case.temperature_c)
    # a fault is no rival of itself
    others = [place for place in range(len(pool.rows)) if (pool.fault(place),) != case.faults]
    wider = Pool(
        pool.profile,
        np.append(pool.rows[others], 0),
        np.concatenate([pool.heard[others], own.heard]),
        pool.good,
        np.concatenate([pool.codes[others], own.codes]),
        np.concatenate([pool.provoked[others], own.provoked]),
        np.concatenate([pool.own_a[others], own.own_a]),
    )
    found = _features(wider, len(others), case.bed.level_dba, case.faults)
    return replace(found, misled=found.misled or misled, lending=lending)


def _features(pool: Pool, place: int, bed_dba: float, faults: Faults) -> Features:
    profile, table = pool.profile, pool.table(bed_dba)
    numbers = [number for fault in faults for number in fault.cylinders]
    single = len(numbers) == 1
    coded = {code.cylinder for code, up in zip(known_codes(profile).values(), pool.codes[place], strict=True) if up}
    return Features(
        kind_class=class_of_fault(faults[0]) if len(faults) == 1 else TWO_FAULTS,
        slots=len(profile.cylinders),
        bed_dba=bed_dba,
        margin=float(table.margins[place]),
        shortfall_db=float(table.shortfalls[place]),
        alike=int(table.alike[place]),
        single=single,
        crossed=single and profile.firing_order[numbers[0] - 1] != numbers[0],
        hums=bool(pool.hums[place].any()),
        coded=bool(coded),
        misled=bool(coded - {None, *numbers}),
        provoked=bool(pool.provoked[place]),
    )
