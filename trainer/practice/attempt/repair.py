"""Repair and retest: what the learner mends, whether it was the fault, what it costs, and the proof afterwards."""

from __future__ import annotations

from dataclasses import dataclass, replace
from itertools import takewhile

from trainer.cases.single_case.case import Case
from trainer.circuit.codes import codes_of
from trainer.circuit.elements import Location, Side
from trainer.circuit.fault import Conditions, Fault
from trainer.instruments.bench import Work
from trainer.instruments.measuring import plugged_back
from trainer.practice.attempt.actions import ActionResult, Solver, sound_hash
from trainer.practice.attempt.attempt import Attempt
from trainer.practice.attempt.events import Heard, Repaired, Retested
from trainer.reasoning.advice.prices import repair_minutes
from trainer.sound.render import Sound, render


@dataclass(frozen=True, slots=True)
class Repair:
    """What is mended or replaced: a place, the cylinders whose circuit it is, and the side of wiring."""

    location: Location
    cylinders: frozenset[int]
    side: Side | None = None


def mends(repair: Repair, fault: Fault) -> bool:
    """Tell whether a repair takes a fault away: an injector brings coil and armature, a module all its outputs.

    Battery and module power are mended as one circuit: each joint of it is cleaned, the battery charged or replaced.
    """
    injector = {Location.COIL, Location.ARMATURE}
    if repair.location in injector:
        return fault.location in injector and set(fault.cylinders) <= repair.cylinders
    if repair.location is not fault.location:
        return False
    if repair.location in (Location.DRIVE_MODULE, Location.MODULE_POWER):
        return True
    same_side = repair.side is None or fault.side is None or repair.side is fault.side
    return same_side and set(fault.cylinders) <= repair.cylinders


def repair(attempt: Attempt, wanted: Repair) -> ActionResult[Repaired]:
    """Carry out a repair; a wrong one leaves the fault there and still costs its parts and minutes."""
    profile = attempt.case.profile
    mended = [
        row for row, fault in enumerate(attempt.case.faults) if row not in attempt.repaired and mends(wanted, fault)
    ]
    minutes = repair_minutes(profile, wanted.location, wanted.cylinders, attempt.work.covers_off)
    work = _everything_back(attempt, wanted)
    event = Repaired(
        minutes=minutes,
        paid=frozenset(),
        work=work,
        location=wanted.location,
        cylinders=tuple(sorted(wanted.cylinders)),
        side=wanted.side,
        mended=tuple(mended),
    )
    return ActionResult(event)


def _everything_back(attempt: Attempt, wanted: Repair) -> Work:
    """After a repair the engine is as it came, with nothing lent, swapped, moved or unplugged.

    Plugs that were off have been re-seated; a terminal that was spread stays so unless its place was repaired.
    """
    back = plugged_back(attempt.case.profile, attempt.work)
    conditions = replace(back.conditions, moved=None, heated=None)
    spread = frozenset(name for name in back.spread if not name.startswith(wanted.location))
    return Work(conditions=conditions, spread=spread)


def retest(
    attempt: Attempt,
    solver: Solver,
    place: str = "front",
    *,
    moved: Location | None = None,
    heated: Location | None = None,
) -> ActionResult[Retested]:
    """Run the test on the circuit as repaired, if wanted while a place is moved or warm.

    `to_provoke` in its event: the engine is even, but no test before the repair left a code either.
    """
    # what was lent or swapped goes back first: only the repair is tested
    plugged = plugged_back(attempt.case.profile, attempt.work)
    back = Work(conditions=plugged.conditions, spread=plugged.spread, covers_off=plugged.covers_off)
    work = replace(back, conditions=replace(back.conditions, moved=moved, heated=heated))
    solved = solver(attempt.case.profile, attempt.faults_left, work)
    sound = render(solved, place, attempt.case.bed, attempt.seed)
    codes = tuple(code.code for code in codes_of(solved))
    proved = not codes and is_even(attempt.case, sound, solver, attempt.seed)
    event = Retested(
        minutes=attempt.case.profile.minutes["actuation_test"],
        work=back,
        codes=codes,
        place=place,
        sound=sound_hash(sound),
        proved=proved,
        to_provoke=proved and not showed_itself(attempt, solver),
    )
    return ActionResult(event, sound=sound)


def showed_itself(attempt: Attempt, solver: Solver) -> bool:
    """Tell whether a test before the repair left a code: if none did, the fault may be one that comes and goes."""
    before = takewhile(lambda event: not isinstance(event, Repaired), attempt.events)
    states = {event.work: None for event in before if isinstance(event, Heard) and event.slots is None}
    case = attempt.case
    return any(codes_of(solver(case.profile, case.faults, work)) for work in states)


EVEN_WITHIN_DB = 1.5
"""How far from the sound engine's level a slot may lie to be called even after a repair."""


def is_even(case: Case, sound: Sound, solver: Solver, seed: int) -> bool:
    """Return whether every slot of a rendered test is at the good engine's level."""
    sound_engine = Work(conditions=Conditions(temperature_c=case.temperature_c))
    good = render(solver(case.profile, (), sound_engine), sound.place, case.bed, seed)
    pairs = zip(sound.slots, good.slots, strict=True)
    return all(abs(slot.level_dba - fine.level_dba) < EVEN_WITHIN_DB for slot, fine in pairs)
