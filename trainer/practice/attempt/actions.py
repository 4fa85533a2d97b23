"""What a learner can do, computed: each action returns the event's data and what is to be heard or shown.

Access is charged once: what is paid stands in `paid`; plugging everything back takes the access to break points away.
"""

from __future__ import annotations

import hashlib
import json
from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from typing import Any

from trainer.cases.single_case.case import Case
from trainer.circuit.codes import codes_of, stored_code
from trainer.circuit.elements import Location
from trainer.circuit.faults import Fault
from trainer.circuit.profile import Profile
from trainer.circuit.solve import SolvedTest, solve_test
from trainer.errors import WrongCallError
from trainer.instruments.bench import Work, worked_circuit
from trainer.instruments.looking import seen_bridges
from trainer.instruments.measuring import Request, measured, plugged_back
from trainer.instruments.under_load import Trace
from trainer.practice.attempt.attempt import Attempt
from trainer.practice.attempt.events import EventKind
from trainer.practice.attempt.work_data import data_of
from trainer.reasoning.advice.prices import after_plugging_back, minutes_of, unpaid
from trainer.sound.places import places_of
from trainer.sound.render import Sound, render
from trainer.words import numbers, text

Solver = Callable[[Profile, tuple[Fault, ...], Work], SolvedTest]
"""Solves the test of a worked circuit; the desk hands in one that remembers."""


@dataclass(frozen=True, slots=True)
class Done:
    """One action carried out: the event it makes, and what the learner hears or sees."""

    kind: EventKind
    data: dict[str, Any]
    sound: Sound | None = None
    trace: Trace | None = None


def solved_work(profile: Profile, faults: tuple[Fault, ...], work: Work) -> SolvedTest:
    """Solve the whole test of a circuit as the work has left it."""
    return solve_test(worked_circuit(profile, faults, work))


def sound_hash(sound: Sound) -> str:
    """Return a hash of a buffer as 24-bit values, so that two stations can prove they heard the same."""
    return hashlib.sha256((sound.samples * 2**23).round().astype("<i4").tobytes()).hexdigest()[:16]


def hear(attempt: Attempt, slots: Sequence[int] | None, place: str, solver: Solver) -> Done:
    """Run the test, or replay slots of it, from a place; plugs everything back first.

    Raises WrongCallError for a slot or place the engine does not have.
    """
    case = attempt.case
    _allow(case, "actuation_test")
    if place not in places_of(case.profile):
        raise WrongCallError("no_place", place=place, places=", ".join(places_of(case.profile)))
    unknown = [n for n in slots or () if n not in (0, *case.profile.cylinders)]
    if unknown:
        raise WrongCallError("no_slot", slot=unknown[0], cylinders=numbers(case.profile.cylinders))
    work = plugged_back(case.profile, attempt.work)
    solved = solver(case.profile, attempt.faults_left, work)
    sound = render(solved, place, case.bed, attempt.seed, slots)
    data = _charged(attempt, work, (_test_name(work),))
    data |= {"slots": list(slots) if slots else None, "place": place, "sound": sound_hash(sound)}
    return Done(EventKind.HEARD, data, sound=sound)


def heard_again(attempt: Attempt, before: Done) -> Done:
    """Return a hearing whose sound is at hand, charged anew; raises ValueError where the engine has changed since."""
    work = plugged_back(attempt.case.profile, attempt.work)
    if before.data["work"] != data_of(work):
        raise ValueError("the engine is not as it was heard")
    return replace(before, data={**before.data, **_charged(attempt, work, (_test_name(work),))})


def _test_name(work: Work) -> str:
    """Return what the whole test costs under: once for each state of the engine."""
    return f"actuation_test:{hashlib.sha256(json.dumps(data_of(work), sort_keys=True).encode()).hexdigest()[:12]}"


def read_codes(attempt: Attempt, solver: Solver, *, clear: bool) -> Done:
    """Read the codes that are in memory now; clearing takes them away until a test sets them again."""
    _allow(attempt.case, "codes")
    data = _charged(attempt, attempt.work, ("codes",))
    return Done(EventKind.CODES_READ, {**data, "codes": codes_now(attempt, solver), "cleared": clear})


def codes_now(attempt: Attempt, solver: Solver) -> list[str]:
    """Return the codes in memory: stored ones until cleared, then those of the last whole test.

    The last test is solved again: its codes are kept nowhere before they are read.
    """
    last: Sequence[str] = attempt.test_codes or ()
    if attempt.tested is not None:
        last = [code.code for code in codes_of(solver(attempt.case.profile, attempt.faults_left, attempt.tested))]
    stored = [] if attempt.stored_cleared else [
        stored_code(attempt.case.profile, item.cylinder, item.sensed).code for item in attempt.case.stored
    ]  # fmt: skip
    return list(dict.fromkeys([*stored, *last]))


def measure(attempt: Attempt, request: Request, predicted: str | None = None) -> Done:
    """Take a reading, beside what the learner expected of it if that was said.

    Raises WrongCallError for a reading that the case does not offer or the engine cannot give.
    """
    result = measured(attempt.case.profile, attempt.faults_left, attempt.work, request, attempt.seed)
    for test in result.tests:
        _allow(attempt.case, test.partition(":")[0])
    reading = result.reading
    data = _charged(attempt, result.work, result.tests)
    data |= {
        "request": _plain(request),
        "predicted": predicted,
        "reading": {
            "instrument": reading.instrument, "value": reading.value, "unit": reading.unit,
            "display": reading.display, "slips": [str(slip) for slip in reading.slips],
        },
    }  # fmt: skip
    return Done(EventKind.MEASURED, data, trace=result.trace)


def move(attempt: Attempt, location: Location | None) -> Done:
    """Start moving the harness at a place during what follows, or let go (None)."""
    test = () if location is None else (f"move_harness:{location}",)
    conditions = replace(attempt.work.conditions, moved=location)
    return _worked(attempt, replace(attempt.work, conditions=conditions), test, {"did": "move", "what": location})


def heat(attempt: Attempt, location: Location | None) -> Done:
    """Warm a place, or let it cool (None)."""
    test = () if location is None else (f"heat:{location}",)
    conditions = replace(attempt.work.conditions, heated=location)
    return _worked(attempt, replace(attempt.work, conditions=conditions), test, {"did": "heat", "what": location})


def swap(attempt: Attempt, first: int, second: int) -> Done:
    """Swap two returns at the module connector, or swap them back."""
    for number in (first, second):
        if number not in attempt.case.profile.cylinders or first == second:
            raise WrongCallError("no_swap", first=first, second=second)
    pair = (min(first, second), max(first, second))
    swapped = attempt.work.swapped
    # one exchange after another: only the last of them is undone by doing it again
    work = replace(attempt.work, swapped=swapped[:-1] if swapped[-1:] == (pair,) else (*swapped, pair))
    return _worked(attempt, work, (f"swap_returns:{pair}",), {"did": "swap", "what": list(pair)})


def substitute(attempt: Attempt, location: Location, cylinder: int) -> Done:
    """Put a known-good injector or drive module in, to hear the test with it."""
    if location is Location.DRIVE_MODULE:
        cylinder, test = 0, "module_substitution"
    elif location in (Location.COIL, Location.ARMATURE) and cylinder in attempt.case.profile.cylinders:
        location, test = Location.COIL, f"injector_swap:{cylinder}"
    else:
        raise WrongCallError("needs_part")
    work = replace(attempt.work, replaced=attempt.work.replaced | {(location, cylinder)})
    return _worked(attempt, work, (test,), {"did": "substitute", "what": [location, cylinder]})


def give_back(attempt: Attempt) -> Done:
    """Take lent parts out again and put the engine's own back in."""
    return _worked(attempt, replace(attempt.work, replaced=frozenset()), (), {"did": "give_back", "what": None})


def look(attempt: Attempt) -> Done:
    """Look at what is open: connectors that are off, wiring under covers that are off; a bridge there is seen."""
    seen = seen_bridges(worked_circuit(attempt.case.profile, attempt.faults_left, attempt.work), attempt.work)
    return _worked(attempt, attempt.work, ("look",), {"did": "look", "what": sorted(seen)})


def _worked(attempt: Attempt, work: Work, tests: tuple[str, ...], did: dict[str, Any]) -> Done:
    for test in tests:
        _allow(attempt.case, test.partition(":")[0])
    return Done(EventKind.WORKED, {**_charged(attempt, work, tests), **did})


def _allow(case: Case, test: str) -> None:
    if test not in case.evidence:
        raise WrongCallError(
            "not_offered",
            test=text(f"test.{test}"),
            offered=", ".join(text(f"test.{name}") for name in sorted(case.evidence)),
        )


def _charged(attempt: Attempt, work: Work, tests: Sequence[str]) -> dict[str, Any]:
    """Return the event data that an action always has: its minutes, what is now paid, the state it leaves."""
    paid = attempt.paid
    if attempt.work.unplugged and not work.unplugged:
        paid = after_plugging_back(paid)
    new = unpaid(tests, paid)
    minutes = minutes_of(new, attempt.case.profile.minutes)
    return {"minutes": minutes, "paid": sorted(paid | set(new)), "work": data_of(work)}


def _plain(request: Request) -> dict[str, Any]:
    return {name: getattr(request, name) for name in request.__dataclass_fields__}
