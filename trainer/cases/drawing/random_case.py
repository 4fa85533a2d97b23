"""Draws a case by profile, difficulty and seed; the same on every computer, since it uses raw random bits only."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from functools import lru_cache

from trainer.cases.single_case.case import Case, StoredCode
from trainer.cases.single_case.case_code import CodeContent, format_code, short_digest
from trainer.circuit.chance import Stream
from trainer.circuit.codes import Sensed
from trainer.circuit.elements import Location, Part
from trainer.circuit.fault import Fault, FaultKind
from trainer.circuit.fault_space import single_faults
from trainer.circuit.profile import ByContent, Profile
from trainer.instruments.bench_tests import Operation
from trainer.sound.bed import BedKind
from trainer.sound.render import Bed

KINDS_BY_DIFFICULTY: tuple[frozenset[FaultKind], ...] = (
    frozenset({FaultKind.OPEN, FaultKind.DEAD_RETURN_DRIVER}),
    frozenset({
        FaultKind.OPEN, FaultKind.DEAD_RETURN_DRIVER, FaultKind.ADDED_RESISTANCE, FaultKind.SHORTED_TURNS,
        FaultKind.STUCK_ARMATURE, FaultKind.SHORT_TO_GROUND, FaultKind.SHORT_ACROSS_PAIR, FaultKind.DEAD_FEED_DRIVER,
    }),
    frozenset(FaultKind),
)  # fmt: skip
BED_DBA = (27.0, 30.0, 33.0)
TEMPERATURES_C = (20.0, 45.0, 70.0)
"""A few engine temperatures, so that drawn cases share what is solved for reasoning."""

AT_EVERY_SEVERITY = frozenset({FaultKind.ADDED_RESISTANCE, FaultKind.BURNT_PIN})
"""Kinds drawn at each of their severities: from a joint that only a voltage drop finds to one that is heard."""

BURNS_AWAY_OHM = (9.0, 25.0)
"""A contact of one injector with a resistance in this range gets over 20 W and soon burns open (docs/model.md, 9)."""

MOST_OF_A_PAIR = 2
"""A fault of more cylinders is a group fault."""

PASSES_SHARE = 0.15
GROUP_SHARE = 0.15
STORED_SHARE = 0.3


def draw_case(profile: Profile, difficulty: int, seed: int) -> Case:
    """Return the drawn case; raises ValueError for a difficulty outside 1 to 3 or a seed out of a code's range."""
    if difficulty not in (1, 2, 3):
        raise ValueError(f"difficulty lies within 1 and 3, found {difficulty}")
    code = format_code(CodeContent(short_digest(profile.digest), difficulty, seed))
    chance = Stream(seed, f"draw {profile.name} {difficulty}")
    fault = None if chance.uniform(1)[0] < PASSES_SHARE else _drawn_fault(profile, difficulty, chance)
    bed = Bed(tuple(BedKind)[chance.below(len(BedKind))], BED_DBA[difficulty - 1] + 2.0 * float(chance.uniform(1)[0]))
    stored: tuple[StoredCode, ...] = ()
    if difficulty == 3 and chance.uniform(1)[0] < STORED_SHARE:
        stored = (StoredCode(profile.cylinders[chance.below(len(profile.cylinders))], Sensed.OPEN),)
    temperatures = temperatures_at(difficulty)
    temperature_c = temperatures[0 if len(temperatures) == 1 else chance.below(len(temperatures))]
    drawn = case_with(profile, code, fault, bed, stored, seed=seed, difficulty=difficulty)
    return replace(drawn, temperature_c=temperature_c)


def temperatures_at(difficulty: int) -> tuple[float, ...]:
    """Return the engine temperatures at which cases of a difficulty are drawn."""
    return TEMPERATURES_C[:1] if difficulty == 1 else TEMPERATURES_C


def case_with(
    profile: Profile,
    code: str,
    fault: Fault | None,
    bed: Bed,
    stored: tuple[StoredCode, ...],
    *,
    seed: int,
    difficulty: int,
) -> Case:
    """Return the case of a code, everything offered and at the first temperature: its name and title reveal nothing."""
    return Case(
        name=f"drawn_{code.lower().replace('-', '_')}",
        title=code,
        story="",
        profile=profile,
        faults=() if fault is None else (fault,),
        temperature_c=TEMPERATURES_C[0],
        bed=bed,
        evidence=frozenset(Operation),
        stored=stored,
        takeaway="",
        seed=seed,
        difficulty=difficulty,
        code=code,
    )


def is_group(fault: Fault) -> bool:
    """Return whether a fault affects more than two cylinders: one of a shared segment, or of the module itself.

    What the module is fed through is a place apart, and no group.
    """
    return len(fault.cylinders) > MOST_OF_A_PAIR and fault.location is not Location.MODULE_POWER


def drawable(profile: Profile, difficulty: int) -> tuple[Fault, ...]:
    """Return every fault that can be drawn on an engine at a difficulty."""
    return _drawable(ByContent(profile), difficulty)


@lru_cache(maxsize=64)
def _drawable(engine: ByContent, difficulty: int) -> tuple[Fault, ...]:
    allowed = KINDS_BY_DIFFICULTY[difficulty - 1]
    usual = [fault for fault in single_faults(engine.profile) if fault.kind not in AT_EVERY_SEVERITY]
    graded = [fault for fault in single_faults(engine.profile, "each") if fault.kind in AT_EVERY_SEVERITY]
    return tuple(fault for fault in (*usual, *graded) if fault.kind in allowed and not _never_met(fault))


def _never_met(fault: Fault) -> bool:
    """Return whether a fault is not drawn: no offered test distinguishes it from another one, or it does not last.

    A contact at the module that fails under load only is in no circuit that an ohmmeter meets: its plug is off then.
    """
    if fault.part is not Part.CONTACT:
        return False
    least, most = BURNS_AWAY_OHM
    if fault.kind in AT_EVERY_SEVERITY and least < fault.amount() < most:
        return True
    return fault.location is Location.ENGINE_HARNESS and fault.kind is FaultKind.FAILS_UNDER_LOAD


def _drawn_fault(profile: Profile, difficulty: int, chance: Stream) -> Fault:
    """Draw a group or a single fault, then the place by the profile's priors, then kind, then one of those left."""
    candidates = drawable(profile, difficulty)
    group = [fault for fault in candidates if is_group(fault)]
    single = [fault for fault in candidates if not is_group(fault)]
    pool = group if group and chance.uniform(1)[0] < GROUP_SHARE else single
    places = sorted({fault.location for fault in pool})
    weights = [profile.priors[place] for place in places]
    place = places[_weighted(weights, chance)]
    kinds = sorted({fault.kind for fault in pool if fault.location is place})
    kind = kinds[chance.below(len(kinds))]
    left = [fault for fault in pool if fault.location is place and fault.kind is kind]
    return left[chance.below(len(left))]


def _weighted(weights: Sequence[float], chance: Stream) -> int:
    mark = float(chance.uniform(1)[0]) * sum(weights)
    for place, weight in enumerate(weights):
        mark -= weight
        if mark < 0.0:
            return place
    return len(weights) - 1
