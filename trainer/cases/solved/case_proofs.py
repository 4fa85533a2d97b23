"""Proves that a case can be solved with the evidence it offers, and that its decisive slots are audible."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from functools import lru_cache

from trainer.cases.single_case.audibility import AUDIBLE_MARGIN_DB, DECISIVE_DB, SILENT_DBA
from trainer.cases.single_case.case import Case
from trainer.cases.solved.universe_cache import Universes, facts_of
from trainer.circuit.fault import Conditions, Fault
from trainer.circuit.fault_space import comes_and_goes
from trainer.circuit.harness import circuit_of
from trainer.circuit.profile import ByContent, Profile
from trainer.instruments.bench import Work
from trainer.instruments.bench_tests import Operation
from trainer.reasoning.advice.channels import channels_of
from trainer.reasoning.case_facts import Universe
from trainer.reasoning.reasoner import Reasoner
from trainer.reasoning.universe.equivalents import Equivalents
from trainer.reasoning.universe.expectations import Expectations
from trainer.reasoning.universe.finding import truth_of
from trainer.reasoning.verdict.belief import FindingKey, finding_key
from trainer.sound.traits import LEVEL, ears_of

SEPARATES_BITS = 0.1
"""A test with less information about the remaining findings does not separate them."""

LEFT_FROM = 0.02
"""Findings at least this probable are named as those that the evidence cannot separate."""


@dataclass(frozen=True, slots=True)
class Unsolvable:
    """The findings left by all offered evidence, and the names of further evidence that would separate them, if any."""

    left: tuple[tuple[FindingKey, float], ...]
    separated_by: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Inaudible:
    """A decisive slot that is too quiet for its bed."""

    slot: int
    level_dba: float
    bed_dba: float


def unsolvable(case: Case, universes: Universes) -> Unsolvable | None:
    """Return the evidence that a case lacks, or None where its evidence proves its truth by measurement."""
    reasoner = universes.reasoner(case)
    key = finding_key(truth_of(case.faults))
    findings = reasoner.everything.findings
    if reasoner.provable:
        return None
    left = tuple((other, chance) for other, chance in findings.items() if chance >= LEFT_FROM or other == key)
    return Unsolvable(left, _separating(case, reasoner.universe))


def _separating(case: Case, universe: Universe) -> tuple[str, ...]:
    """Return the evidence to add: test by test the most informative one, until the truth is proved."""
    added: tuple[Operation, ...] = ()
    while True:
        allowed = case.evidence | set(added)
        reasoner = Reasoner(replace(facts_of(case), evidence=allowed), universe)
        if reasoner.provable:
            return added
        ranked = []
        doubt = reasoner.standing(reasoner.everything).doubt
        for test in universe.menu:
            missing = test.operations - allowed
            if missing:
                (channel,) = channels_of([test], reasoner.expected(test.questions))
                ranked.append((channel.bits(doubt), sorted(missing)))
        bits, best = max(ranked, key=lambda one: one[0], default=(0.0, []))
        if bits < SEPARATES_BITS:
            return ()
        added = (*added, *best)


def inaudible(case: Case) -> Iterator[Inaudible]:
    """Yield the decisive slots that are too quiet for the bed, heard from the front with the fault provoked."""
    for slot, level_dba in decisive_slots(case):
        if SILENT_DBA < level_dba < case.bed.level_dba + AUDIBLE_MARGIN_DB:
            yield Inaudible(slot, level_dba, case.bed.level_dba)


def decisive_slots(case: Case) -> Iterator[tuple[int, float]]:
    """Yield number and level in dB(A) of the slots that differ from good ones, at the front with the fault provoked."""
    if not case.faults:
        return
    faulty, good = _levels(case.profile, case.temperature_c, case.faults), _levels(case.profile, case.temperature_c, ())
    for (slot, level), (_slot, fine) in zip(faulty, good, strict=True):
        if abs(level - fine) > DECISIVE_DB:
            yield slot, level


def provoked(profile: Profile, temperature_c: float, faults: tuple[Fault, ...]) -> Work:
    """Return the work under which intermittent faults show: the first one's place moved and warm."""
    place = next((fault.location for fault in faults if comes_and_goes(fault, profile, temperature_c)), None)
    return Work(conditions=Conditions(temperature_c, moved=place, heated=place))


MOST_CACHED = 2000
"""How many tests have their levels cached: sets draw the same faults for many learners."""


def _levels(profile: Profile, temperature_c: float, faults: tuple[Fault, ...]) -> tuple[tuple[int, float], ...]:
    """Return number and level of each slot after the burst, with intermittent faults provoked."""
    return _levels_of(ByContent(profile), temperature_c, faults)


@lru_cache(maxsize=MOST_CACHED)
def _levels_of(engine: ByContent, temperature_c: float, faults: tuple[Fault, ...]) -> tuple[tuple[int, float], ...]:
    profile = engine.profile
    work = provoked(profile, temperature_c, faults)
    equivalents = Equivalents(circuit_of(profile, temperature_c), ears_of(profile, ("front",)))
    (slots,) = Expectations(profile, [faults], equivalents).tests(work)
    return tuple((slot.seen.slot.number, float(slot.sound[0, LEVEL])) for slot in slots[1:])
