"""Draws a practice case from its axes: the fault, the bed's level, an old code or none, parts to lend or none.

All axes are bounded and are encoded in the case code with a seed for the rest, so that a code gives the same case on
any computer; they depend on no solved result.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from trainer.cases.drawing.random_case import TEMPERATURES_C, case_with, drawable
from trainer.cases.single_case.case import Case, StoredCode
from trainer.cases.single_case.case_code import SEED_LIMIT, CodeContent, CodeError, format_code, short_digest
from trainer.circuit.chance import Stream
from trainer.circuit.codes import Sensed
from trainer.circuit.profile import Profile
from trainer.instruments.bench_tests import Operation
from trainer.sound.bed import BedKind
from trainer.sound.render import Bed

OPTIONS = 4
"""Takes the place of the difficulty in the code of a practice case."""

HARDEST = 3
"""Practice draws from every kind of fault."""

BEDS_DBA = (26.0, 28.0, 30.0, 32.0, 34.0, 36.0)
LENDING = frozenset({Operation.MODULE_SUBSTITUTION, Operation.INJECTOR_SWAP})
"""The tests that need a known-good part to lend."""

FAULTS = 3000
VARIATIONS = 12_000
"""Bounds of what a code holds: rows that can be drawn on an engine of sixteen cylinders, and seeds of the rest."""
TEMPERATURE_C = TEMPERATURES_C[0]
"""Practice uses one temperature, so that each engine is solved only once."""

MULTIPLIER, OFFSET = 387_420_489, 104_729
"""Spread the axes over the code's letters, so that a code does not show them; 31 divides neither."""


@dataclass(frozen=True, slots=True)
class Axes:
    """What makes one practice case harder than another.

    `fault` is a row of what can be drawn, from 1; 0 where the circuit passes. `bed` is a row of BEDS_DBA; `old_code`
    leaves a code of another cylinder in memory; `lending` offers known-good parts; `variation` is the seed of the rest.
    """

    fault: int
    bed: int
    old_code: bool
    lending: bool
    variation: int

    def __post_init__(self) -> None:
        within = 0 <= self.fault < FAULTS and 0 <= self.bed < len(BEDS_DBA) and 0 <= self.variation < VARIATIONS
        if not within:
            raise ValueError(f"axes out of their bounds: {self}")


def practice_code(profile: Profile, axes: Axes) -> str:
    """Return the code of the case that axes describe."""
    return format_code(CodeContent(short_digest(profile.digest), OPTIONS, _packed(axes)))


def practice_case(profile: Profile, axes: Axes) -> Case:
    """Return the case that axes describe; raises ValueError for a fault that this engine has no row for."""
    faults = drawable(profile, HARDEST)
    if axes.fault > len(faults):
        raise ValueError(f"this engine has {len(faults)} faults to draw, asked for {axes.fault}")
    chance = Stream(axes.variation, f"practice {profile.name} {axes.fault}")
    kind = tuple(BedKind)[chance.below(len(BedKind))]
    fault = faults[axes.fault - 1] if axes.fault else None
    others = [number for number in profile.cylinders if fault is None or number not in fault.cylinders]
    stored: tuple[StoredCode, ...] = ()
    if axes.old_code and others:
        stored = (StoredCode(others[chance.below(len(others))], Sensed.OPEN),)
    bed = Bed(kind, BEDS_DBA[axes.bed])
    code = practice_code(profile, axes)
    drawn = case_with(profile, code, fault, bed, stored, seed=axes.variation, difficulty=HARDEST)
    return drawn if axes.lending else replace(drawn, evidence=drawn.evidence - LENDING)


def axes_of(seed: int) -> Axes:
    """Return the axes that a practice case's code holds; raises CodeError for a number that none has."""
    number = (seed - OFFSET) * pow(MULTIPLIER, -1, SEED_LIMIT) % SEED_LIMIT
    number, variation = divmod(number, VARIATIONS)
    number, lending = divmod(number, 2)
    number, old_code = divmod(number, 2)
    fault, bed = divmod(number, len(BEDS_DBA))
    if fault >= FAULTS:
        raise CodeError("version")
    return Axes(fault, bed, bool(old_code), bool(lending), variation)


def _packed(axes: Axes) -> int:
    number = axes.fault * len(BEDS_DBA) + axes.bed
    number = (number * 2 + axes.old_code) * 2 + axes.lending
    return ((number * VARIATIONS + axes.variation) * MULTIPLIER + OFFSET) % SEED_LIMIT
