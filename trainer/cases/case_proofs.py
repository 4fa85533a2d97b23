"""Whether a case can be solved with what it offers, and whether what must be heard in it can be heard."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from trainer.cases.case import Case
from trainer.cases.universe_cache import Universes, matter_of
from trainer.circuit.fault_space import comes_and_goes
from trainer.circuit.faults import Conditions
from trainer.circuit.harness import circuit_of
from trainer.instruments.bench import Work
from trainer.reasoning.belief import FindingKey, finding_key
from trainer.reasoning.channels import channels_of
from trainer.reasoning.equivalents import Equivalents
from trainer.reasoning.expectations import Expectations
from trainer.reasoning.finding import truth_of
from trainer.reasoning.planning import PROVED
from trainer.reasoning.reasoner import Reasoner, Universe
from trainer.sound.traits import LEVEL, ears_of

AUDIBLE_MARGIN_DB = 2.0
"""How far over the bed a decisive sound must stand in its level: common practice, no published source."""

DECISIVE_DB = 3.0
"""A slot that lies this far from its good level carries the case."""

SEPARATES_BITS = 0.1
"""A test that tells less about what is left does not separate it."""

LEFT_FROM = 0.02
"""From which probability on a finding is named as one that cannot be told apart."""


@dataclass(frozen=True, slots=True)
class Unsolvable:
    """The findings that all offered evidence leaves, and the words of evidence that would separate them, if any do."""

    left: tuple[tuple[FindingKey, float], ...]
    separated_by: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Inaudible:
    """A slot that matters and does not stand out of the bed."""

    slot: int
    level_dba: float
    bed_dba: float


def unsolvable(case: Case, universes: Universes) -> Unsolvable | None:
    """Return what keeps a case from being solved, or None where its evidence singles out its truth."""
    reasoner = universes.reasoner(case)
    key = finding_key(truth_of(case.faults))
    findings = reasoner.everything.findings
    if findings.get(key, 0.0) >= PROVED:
        return None
    left = tuple((other, chance) for other, chance in findings.items() if chance >= LEFT_FROM or other == key)
    return Unsolvable(left, _separating(case, reasoner.universe))


def _separating(case: Case, universe: Universe) -> tuple[str, ...]:
    """Return what to offer as well: test by test the one that tells most of what is left, until the truth is single."""
    key = finding_key(truth_of(case.faults))
    added: tuple[str, ...] = ()
    while True:
        allowed = case.evidence | set(added)
        reasoner = Reasoner(replace(matter_of(case), evidence=allowed), universe)
        if reasoner.everything.findings.get(key, 0.0) >= PROVED:
            return added
        told = []
        for test in universe.menu:
            words = {price.partition(":")[0] for price in (*test.prices, *test.needs, *test.opens)} - allowed
            if words:
                (channel,) = channels_of([test], reasoner.expected(test.questions))
                told.append((channel.bits(reasoner.everything.probability), sorted(words)))
        bits, words_of_best = max(told, key=lambda one: one[0], default=(0.0, []))
        if bits < SEPARATES_BITS:
            return ()
        added = (*added, *words_of_best)


def inaudible(case: Case) -> Iterator[Inaudible]:
    """Yield the slots whose sound decides the case and lies too low, heard from the front with the fault at work."""
    conditions = Conditions(temperature_c=case.temperature_c)
    place = next((f.location for f in case.faults if comes_and_goes(f, case.profile, case.temperature_c)), None)
    work = Work(conditions=Conditions(case.temperature_c, moved=place, heated=place))
    sound = circuit_of(case.profile, case.temperature_c)
    equivalents = Equivalents(sound, ears_of(case.profile, ("front",)))
    (faulty,) = Expectations(case.profile, [case.faults], equivalents).tests(work)
    (good,) = Expectations(case.profile, [()], equivalents).tests(Work(conditions=conditions))
    for is_slot, should in zip(faulty[1:], good[1:], strict=True):
        level, fine = float(is_slot.sound[0, LEVEL]), float(should.sound[0, LEVEL])
        if abs(level - fine) > DECISIVE_DB and SILENT_DBA < level < case.bed.level_dba + AUDIBLE_MARGIN_DB:
            yield Inaudible(is_slot.seen.slot.number, level, case.bed.level_dba)


SILENT_DBA = 10.0
"""Below this there is nothing to hear in any bed, and nothing is what must be heard."""
