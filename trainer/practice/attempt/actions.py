"""What a learner can do, computed: each action returns the event's data and what is to be heard or shown.

Access is charged once: what is paid stands in `paid`; plugging everything back takes the access to break points away.
"""

from __future__ import annotations

import hashlib
import json
from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from typing import Generic, TypedDict, TypeVar

from trainer.cases.single_case.case import Case
from trainer.circuit.codes import codes_of, stored_code
from trainer.circuit.elements import Location
from trainer.circuit.faults import Fault
from trainer.circuit.profile import Profile
from trainer.circuit.solve import SolvedTest, solve_test
from trainer.errors import WrongCallError
from trainer.instruments.bench import Work, worked_circuit
from trainer.instruments.bench_tests import Operation, Price
from trainer.instruments.looking import seen_bridges
from trainer.instruments.measuring import Request, measured, plugged_back
from trainer.instruments.under_load import Trace
from trainer.practice.attempt.attempt import Attempt
from trainer.practice.attempt.events import (
    CodesRead,
    EngineEvent,
    Event,
    GaveBack,
    Heard,
    Looked,
    Measured,
    Provoked,
    Retested,
    Substituted,
    Swapped,
)
from trainer.practice.attempt.field_types import work_json
from trainer.reasoning.advice.prices import after_plugging_back, minutes_of, unpaid
from trainer.sound.places import places_of
from trainer.sound.render import Sound, render
from trainer.words import numbers, text

Solver = Callable[[Profile, tuple[Fault, ...], Work], SolvedTest]
"""Solves the test of a worked circuit; the desk hands in one that remembers."""


AnEvent_co = TypeVar("AnEvent_co", bound=Event, covariant=True)


@dataclass(frozen=True, slots=True)
class ActionResult(Generic[AnEvent_co]):
    """One action carried out: the event it makes, and what the learner hears or sees."""

    event: AnEvent_co
    sound: Sound | None = None
    trace: Trace | None = None


AnyResult = ActionResult[EngineEvent | Retested]
"""The result of anything that is done at the engine."""


def solved_work(profile: Profile, faults: tuple[Fault, ...], work: Work) -> SolvedTest:
    """Solve the whole test of a circuit as the work has left it."""
    return solve_test(worked_circuit(profile, faults, work))


def sound_hash(sound: Sound) -> str:
    """Return a hash of a buffer as 24-bit values, so that two stations can prove they heard the same."""
    return hashlib.sha256((sound.samples * 2**23).round().astype("<i4").tobytes()).hexdigest()[:16]


def hear(attempt: Attempt, slots: Sequence[int] | None, place: str, solver: Solver) -> ActionResult[Heard]:
    """Run the test, or replay slots of it, from a place; plugs everything back first.

    Raises WrongCallError for a slot or place the engine does not have.
    """
    case = attempt.case
    _allow(case, Operation.ACTUATION_TEST)
    if place not in places_of(case.profile):
        raise WrongCallError("no_place", place=place, places=", ".join(places_of(case.profile)))
    unknown = [n for n in slots or () if n not in (0, *case.profile.cylinders)]
    if unknown:
        raise WrongCallError("no_slot", slot=unknown[0], cylinders=numbers(case.profile.cylinders))
    work = plugged_back(case.profile, attempt.work)
    solved = solver(case.profile, attempt.faults_left, work)
    sound = render(solved, place, case.bed, attempt.seed, slots)
    event = Heard(
        **_charged(attempt, work, (_run_price(work),)),
        slots=tuple(slots) if slots else None,
        place=place,
        sound=sound_hash(sound),
    )
    return ActionResult(event, sound=sound)


def heard_again(attempt: Attempt, before: ActionResult[Heard]) -> ActionResult[Heard]:
    """Return a hearing whose sound is at hand, charged anew; raises ValueError where the engine has changed since."""
    work = plugged_back(attempt.case.profile, attempt.work)
    if before.event.work != work:
        raise ValueError("the engine is not as it was heard")
    return replace(before, event=replace(before.event, **_charged(attempt, work, (_run_price(work),))))


def _run_price(work: Work) -> Price:
    """Return the price of the whole test, paid once for each state of the engine."""
    state = hashlib.sha256(json.dumps(work_json(work), sort_keys=True).encode()).hexdigest()[:12]
    return Price(Operation.ACTUATION_TEST, state)


def read_codes(attempt: Attempt, solver: Solver, *, clear: bool) -> ActionResult[CodesRead]:
    """Read the codes that are in memory now; clearing takes them away until a test sets them again."""
    _allow(attempt.case, Operation.CODES)
    charged = _charged(attempt, attempt.work, (Price(Operation.CODES),))
    return ActionResult(CodesRead(**charged, codes=codes_now(attempt, solver), cleared=clear))


def codes_now(attempt: Attempt, solver: Solver) -> tuple[str, ...]:
    """Return the codes in memory: stored ones until cleared, then those of the last whole test.

    The last test is solved again: its codes are kept nowhere before they are read.
    """
    last: Sequence[str] = attempt.test_codes or ()
    if attempt.tested is not None:
        last = [code.code for code in codes_of(solver(attempt.case.profile, attempt.faults_left, attempt.tested))]
    stored = [] if attempt.stored_cleared else [
        stored_code(attempt.case.profile, item.cylinder, item.sensed).code for item in attempt.case.stored
    ]  # fmt: skip
    return tuple(dict.fromkeys([*stored, *last]))


def measure(attempt: Attempt, request: Request, predicted: str | None = None) -> ActionResult[Measured]:
    """Take a reading, beside what the learner expected of it if that was said.

    Raises WrongCallError for a reading that the case does not offer or the engine cannot give.
    """
    result = measured(attempt.case.profile, attempt.faults_left, attempt.work, request, attempt.seed)
    charge = _allowed(attempt, result.work, result.prices)
    event = Measured(**charge, request=request, predicted=predicted, reading=result.reading)
    return ActionResult(event, trace=result.trace)


def move(attempt: Attempt, location: Location | None) -> ActionResult[Provoked]:
    """Start moving the harness at a place during what follows, or let go (None)."""
    prices = () if location is None else (Price(Operation.MOVE_HARNESS, location),)
    conditions = replace(attempt.work.conditions, moved=location)
    work = replace(attempt.work, conditions=conditions)
    return ActionResult(Provoked(**_allowed(attempt, work, prices), did="move", what=location))


def heat(attempt: Attempt, location: Location | None) -> ActionResult[Provoked]:
    """Warm a place, or let it cool (None)."""
    prices = () if location is None else (Price(Operation.HEAT, location),)
    conditions = replace(attempt.work.conditions, heated=location)
    work = replace(attempt.work, conditions=conditions)
    return ActionResult(Provoked(**_allowed(attempt, work, prices), did="heat", what=location))


def swap(attempt: Attempt, first: int, second: int) -> ActionResult[Swapped]:
    """Swap two returns at the module connector, or swap them back."""
    for number in (first, second):
        if number not in attempt.case.profile.cylinders or first == second:
            raise WrongCallError("no_swap", first=first, second=second)
    pair = (min(first, second), max(first, second))
    swapped = attempt.work.swapped
    # one exchange after another: only the last of them is undone by doing it again
    work = replace(attempt.work, swapped=swapped[:-1] if swapped[-1:] == (pair,) else (*swapped, pair))
    return ActionResult(Swapped(**_allowed(attempt, work, (Price(Operation.SWAP_RETURNS, pair),)), what=pair))


def substitute(attempt: Attempt, location: Location, cylinder: int) -> ActionResult[Substituted]:
    """Put a known-good injector or drive module in, to hear the test with it."""
    if location is Location.DRIVE_MODULE:
        cylinder, price = 0, Price(Operation.MODULE_SUBSTITUTION)
    elif location in (Location.COIL, Location.ARMATURE) and cylinder in attempt.case.profile.cylinders:
        location, price = Location.COIL, Price(Operation.INJECTOR_SWAP, cylinder)
    else:
        raise WrongCallError("needs_part")
    work = replace(attempt.work, replaced=attempt.work.replaced | {(location, cylinder)})
    return ActionResult(Substituted(**_allowed(attempt, work, (price,)), what=(location, cylinder)))


def give_back(attempt: Attempt) -> ActionResult[GaveBack]:
    """Take lent parts out again and put the engine's own back in."""
    return ActionResult(GaveBack(**_charged(attempt, replace(attempt.work, replaced=frozenset()), ())))


def look(attempt: Attempt) -> ActionResult[Looked]:
    """Look at what is open: connectors that are off, wiring under covers that are off; a bridge there is seen."""
    seen = seen_bridges(worked_circuit(attempt.case.profile, attempt.faults_left, attempt.work), attempt.work)
    return ActionResult(Looked(**_allowed(attempt, attempt.work, (Price(Operation.LOOK),)), what=tuple(sorted(seen))))


class _Charge(TypedDict):
    """What every action costs and leaves."""

    minutes: float
    paid: frozenset[Price]
    work: Work


def _allowed(attempt: Attempt, work: Work, prices: Sequence[Price]) -> _Charge:
    """Charge operations that the case must offer."""
    for price in prices:
        _allow(attempt.case, price.operation)
    return _charged(attempt, work, prices)


def _allow(case: Case, operation: Operation) -> None:
    if operation not in case.evidence:
        raise WrongCallError(
            "not_offered",
            test=text(f"test.{operation}"),
            offered=", ".join(text(f"test.{name}") for name in sorted(case.evidence)),
        )


def _charged(attempt: Attempt, work: Work, prices: Sequence[Price]) -> _Charge:
    """Return an action's minutes, what is now paid, the state it leaves."""
    paid = attempt.paid
    if attempt.work.unplugged and not work.unplugged:
        paid = after_plugging_back(paid)
    new = unpaid(prices, paid)
    return {"minutes": minutes_of(new, attempt.case.profile.minutes), "paid": paid | set(new), "work": work}
