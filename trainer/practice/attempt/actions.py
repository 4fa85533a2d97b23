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
from trainer.circuit.fault import Fault
from trainer.circuit.profile import Profile
from trainer.circuit.solve import SolvedTest, solve_test
from trainer.errors import Sentence, WrongCallError
from trainer.instruments.bench import Work, worked_circuit
from trainer.instruments.bench_tests import Operation, Price, Spot
from trainer.instruments.charges import covers_in, drag_prices, try_prices
from trainer.instruments.looking import damage_felt, damage_seen, seen_bridges
from trainer.instruments.measuring import DEAD, measured, plugged_back, tried
from trainer.instruments.reading import Slip
from trainer.instruments.requests import Request
from trainer.instruments.tries import CAN_BE_TRIED, HEAT, UNDER_COVER, Effort, How, Try, shows_itself
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
    RanWarm,
    Retested,
    Substituted,
    Swapped,
)
from trainer.practice.attempt.field_types import work_json
from trainer.reasoning.advice.prices import after_plugging_back, minutes_of, unpaid
from trainer.sound.places import ON, contact_of, places_of
from trainer.sound.render import Sound, render
from trainer.words import number_list

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
        raise WrongCallError("no_slot", slot=unknown[0], cylinders=number_list(case.profile.cylinders))
    prices = _hearing_prices(case.profile, place)
    work = plugged_back(case.profile, attempt.work)
    work = replace(work, covers_off=work.covers_off | covers_in(prices))
    solved = solver(case.profile, attempt.faults_left, work.physical())
    sound = render(solved, place, case.bed, attempt.seed, slots)
    event = Heard(
        **_allowed(attempt, work, (*prices, _run_price(work))),
        slots=tuple(slots) if slots else None,
        place=place,
        sound=sound_hash(sound),
    )
    return ActionResult(event, sound=sound)


def heard_again(attempt: Attempt, before: ActionResult[Heard]) -> ActionResult[Heard]:
    """Return a hearing whose sound is at hand, charged anew; raises ValueError where the engine has changed since."""
    prices = _hearing_prices(attempt.case.profile, before.event.place)
    work = plugged_back(attempt.case.profile, attempt.work)
    work = replace(work, covers_off=work.covers_off | covers_in(prices))
    if before.event.work != work:
        raise ValueError("the engine is not as it was heard")
    return replace(before, event=replace(before.event, **_allowed(attempt, work, (*prices, _run_price(work)))))


def _hearing_prices(profile: Profile, place: str) -> tuple[Price, ...]:
    """Return what listening from a place costs beside the run: the cover over an injector that is touched."""
    contact = contact_of(place)
    if contact is None or contact[0] != ON:
        return ()
    return (Price(Operation.COVER_OFF, profile.bank_of(contact[1])),)


def _run_price(work: Work) -> Price:
    """Return the price of the whole test, paid once for each state of the engine; a cover that is off is none."""
    state = hashlib.sha256(json.dumps(work_json(work.electrical()), sort_keys=True).encode()).hexdigest()[:12]
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
        last = [
            code.code for code in codes_of(solver(attempt.case.profile, attempt.faults_left, attempt.tested.physical()))
        ]
    stored = [] if attempt.stored_cleared else [
        stored_code(attempt.case.profile, item.cylinder, item.sensed).code for item in attempt.case.stored
    ]  # fmt: skip
    return tuple(dict.fromkeys([*stored, *last]))


def measure(attempt: Attempt, request: Request, predicted: str | None = None) -> ActionResult[Measured]:
    """Take a reading, beside what the learner expected of it if that was said.

    Raises WrongCallError for a reading that the case does not offer or the engine cannot give.
    """
    case = attempt.case
    result = measured(case.profile, attempt.faults_left, attempt.work, request, attempt.seed, case.mechanical)
    charge = _allowed(attempt, result.work, result.prices)
    reading = result.reading
    if request.what in DEAD and not attempt.work.proved_dead:
        reading = replace(reading, slips=(*reading.slips, Slip.NOT_PROVED_DEAD))
    event = Measured(**charge, request=request, predicted=predicted, reading=reading)
    return ActionResult(event, trace=result.trace)


def provoke(attempt: Attempt, how: How, spot: Spot | None, effort: Effort = Effort.THOROUGH) -> ActionResult[Provoked]:
    """Move the harness at a place during what follows, or warm a place; let go, or let it cool (None).

    Each time is another try. Raises WrongCallError for a place under a cover where the bank is not named.
    """
    if spot is None:
        work = tried(attempt.work, how, None, None)
        work = replace(work, ran_warm=False) if how == HEAT else work
        return ActionResult(Provoked(**_allowed(attempt, work, ()), did=how, what=None))
    spot = _under_one_cover(attempt.case.profile, spot)
    before = [
        event for event in attempt.events
        if isinstance(event, Provoked) and (event.did, event.what, event.bank) == (how, spot.location, spot.bank)
    ]  # fmt: skip
    if spot.location not in CAN_BE_TRIED:
        raise WrongCallError("not_tried", place=Sentence(f"location.{spot.location}"))
    number = len(before) + 1
    one = Try(spot.bank, number, effort, shows_itself(attempt.seed, how, spot.location, number, effort))
    prices = try_prices(how, spot, one)
    work = replace(attempt.work, covers_off=attempt.work.covers_off | covers_in(prices))
    work = tried(work, how, spot.location, one)
    return ActionResult(Provoked(**_allowed(attempt, work, prices), did=how, what=spot.location, bank=spot.bank))


def run_warm(attempt: Attempt) -> ActionResult[RanWarm]:
    """Run the engine until it is warm everywhere; everything is plugged back for it, and covers are on."""
    back = plugged_back(attempt.case.profile, attempt.work)
    work = replace(back, covers_off=frozenset(), ran_warm=True)
    prices = (Price(Operation.WARM_RUN),)
    return ActionResult(RanWarm(**_allowed(attempt, work, prices)))


def _under_one_cover(profile: Profile, spot: Spot) -> Spot:
    """Return a spot with the bank whose cover comes off, none outside; raises WrongCallError where it is not said."""
    if spot.location not in UNDER_COVER:
        return Spot(spot.location)
    bank = spot.bank or (next(iter(profile.banks)) if len(profile.banks) == 1 else "")
    if bank not in profile.banks:
        raise WrongCallError("needs_bank", place=Sentence(f"location.{spot.location}"), banks=", ".join(profile.banks))
    return Spot(spot.location, bank)


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


def look(attempt: Attempt, *, drag: bool = False) -> ActionResult[Looked]:
    """Look at what is open, or draw a matching pin through its terminals.

    Open are connectors that are off and wiring under covers that are off. Eyes see bridges and damage, a pin feels a
    terminal that does not grip. Raises WrongCallError for a pin drag while every plug is on.
    """
    work, profile = attempt.work, attempt.case.profile
    if drag and not work.unplugged:
        raise WrongCallError("nothing_unplugged")
    circuit = worked_circuit(profile, attempt.faults_left, work)
    if drag:
        found = damage_felt(profile, circuit.damaged, work)
    else:
        found = seen_bridges(circuit, work) | damage_seen(profile, circuit.damaged, work)
    charge = _allowed(attempt, work, drag_prices(work.unplugged) if drag else (Price(Operation.LOOK),))
    return ActionResult(Looked(**charge, what=tuple(sorted(found)), drag=drag))


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
            test=Sentence(f"test.{operation}"),
            offered=tuple(Sentence(f"test.{name}") for name in sorted(case.evidence)),
        )


def _charged(attempt: Attempt, work: Work, prices: Sequence[Price]) -> _Charge:
    """Return an action's minutes, what is now paid, the state it leaves."""
    paid = attempt.paid
    driven = attempt.work.proved_dead and not work.proved_dead
    if driven or (attempt.work.unplugged and not work.unplugged):
        paid = after_plugging_back(paid)
    new = unpaid(prices, paid)
    return {"minutes": minutes_of(new, attempt.case.profile.minutes), "paid": paid | set(new), "work": work}
