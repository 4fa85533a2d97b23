"""Values as lines of text, every sentence from `trainer.words`."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from trainer.cases.profiles.profile_title import title_of
from trainer.cases.single_case.case import Case
from trainer.circuit.codes import Sensed, known_codes
from trainer.circuit.elements import Location
from trainer.circuit.profile import Profile
from trainer.instruments.bench import MODULE_CONNECTOR
from trainer.instruments.bench_tests import BenchTest, Spot
from trainer.instruments.looking import SIGHT
from trainer.instruments.requests import Request
from trainer.practice.attempt.attempt import Attempt
from trainer.practice.attempt.events import (
    CodesRead,
    Event,
    GaveBack,
    Heard,
    Hinted,
    Looked,
    Measured,
    Provoked,
    RanWarm,
    Repaired,
    Retested,
    Substituted,
    Swapped,
    Worked,
)
from trainer.reasoning.universe.finding import Claim
from trainer.reasoning.verdict.explanation import SlotReason
from trainer.sound.places import LEAN, contact_of
from trainer.sound.room import HALL_DECAY_S
from trainer.words import capital, cylinders_named, numbers, text


def engine_lines(profile: Profile) -> list[str]:
    """Return the engine: numbers, firing order, banks, connectors, which feeds are live."""
    order = "-".join(str(number) for number in profile.firing_order)
    lines = [text("engine.head", title=title_of(profile), numbers=numbers(profile.cylinders), firing=order)]
    for bank, row in profile.banks.items():
        lines.append("  " + text("engine.bank", bank=bank, numbers=" ".join(str(number) for number in row)))
    for name, connector in profile.wiring.connectors.items():
        lines.append("  " + text("engine.connector", name=name, cylinders=cylinders_named(connector.injectors),
                                 pins=text(f"engine.pins.{connector.feed_pins}")))  # fmt: skip
    lines.append("  " + text(f"engine.live.{profile.wiring.live}"))
    if profile.room.decay_s >= HALL_DECAY_S:
        lines.append("  " + text("engine.hall"))
    return lines


def heading(case: Case, *, title_shown: bool) -> str:
    """Return a case's heading: its number until the fault may be shown, then its title."""
    if title_shown:
        return case.in_words.title
    if case.code:
        return case.code
    return text("case.heading", number=case.number)


def named(name: str) -> str:
    """Return a bank's, output's or connector's name in words."""
    return " ".join(text(f"name.{part}") if part in NAMED else part for part in name.split("_"))


NAMED = ("right", "left", "front", "rear", "row", "cover")
"""The parts of names that each language has its own word for."""


def prompt(attempt: Attempt) -> str:
    """Return the prompt: minutes so far, and the state of the engine."""
    state = prompt_state(attempt)
    return text("prompt", minutes=attempt.minutes, state=f", {state}" if state else "")


def prompt_state(attempt: Attempt) -> str:
    """Return what is being moved, warmed, swapped or lent now, "" for nothing."""
    work = attempt.work
    state = [
        text(key, place=text(f"location.{place}"))
        for key, place in (("prompt.moving", work.conditions.moved), ("prompt.warm", work.conditions.heated))
        if place is not None
    ]
    state += [text("prompt.ran_warm")] if work.ran_warm else []
    state += [text("prompt.swapped", first=first, second=second) for first, second in work.swapped]
    state += [text("prompt.lent", what=_part(place, number)) for place, number in sorted(work.replaced)]
    return ", ".join(state)


def code_lines(profile: Profile, codes: Iterable[str]) -> list[str]:
    """Return codes of an engine with what they mean, or that there is none."""
    known = known_codes(profile)
    lines = [
        text("codes.line", code=code, meaning=meaning_of(known[code].sensed, known[code].cylinder)) for code in codes
    ]
    return [*lines, text("codes.place")] if lines else [text("codes.none")]


def meaning_of(sensed: Sensed, cylinder: int | None) -> str:
    """Return what a code says."""
    return text(f"code.{sensed}", cylinder=cylinder)


def claim_text(claim: Claim) -> str:
    """Return one claim in words."""
    side = text(f"side.{claim.side}") + ", " if claim.side else ""
    return text(
        "debrief.claim",
        kind=text(f"kind.{claim.kind}"),
        location=text(f"location.{claim.location}"),
        side=side,
        cylinders=cylinders_named(claim.cylinders),
    )


def claims_text(claims: Sequence[Claim]) -> str:
    """Return all claims in words, or that the circuit passes."""
    return "; ".join(claim_text(claim) for claim in claims) or text("debrief.passes")


def request_text(request: Request) -> str:
    """Return what was measured, for a card."""
    between = request.what == "insulation" and request.other
    sentence = text(
        "request.insulation_between" if between else f"request.{request.what}",
        cylinder=request.cylinder,
        other=request.other,
        point=point_text(request.point, request.half),
        place=text(f"location.{request.location}"),
        side=text(f"side.{request.side}") if request.side else "",
    )
    return capital(" ".join(sentence.split()))


def point_text(point: str, half: str = "") -> str:
    """Return a break point, and which half of it, or a bank whose cover is off, in words."""
    family, dot, name = point.partition(".")
    shown = (
        text(f"point.{family}", name=named(name))
        if dot or family == MODULE_CONNECTOR
        else text("point.cover", name=named(point))
    )
    return f"{shown} ({text(f'half.{half}')})" if half else shown


def sighting_text(sighting: str) -> str:
    """Return what was seen in words: a bridge at a break point or under a cover, or what a terminal looks like."""
    damage, mark, contact = sighting.partition(SIGHT)
    if not mark:
        return text("seen.bridge", where=point_text(sighting))
    location, _contact, side, cylinders = contact.split(".")
    where = text(
        f"seen_at.{location}",
        side=text(f"side.{side}"),
        cylinders=cylinders_named(int(n) for n in cylinders.split("-")),
    )
    return text(f"seen.{damage}", where=where)


def listening_place_text(place: str) -> str:
    """Return a place to listen from in words."""
    contact = contact_of(place)
    if contact is not None:
        return text(f"stand.{contact[0]}", number=contact[1])
    how, _space, bank = place.partition(" ")
    if how == LEAN:
        return text("stand.lean", name=named(bank))
    key = f"stand.{place.replace(' ', '_')}"
    return (
        text(key)
        if key in ("stand.front", "stand.left_side", "stand.right_side")
        else text("stand.bank", name=named(place))
    )


def test_text(test: BenchTest) -> str:
    """Return a test of the menu in words."""
    what: object = test.at
    if isinstance(test.at, Spot):
        what = spot_text(test.at)
    elif isinstance(test.at, str):
        what = named(test.at)
    said = text(f"plan.{test.kind}", what=what)
    return said if test.number == 1 else text("plan.try", test=said, number=test.number)


def spot_text(spot: Spot) -> str:
    """Return a spot that is moved or warmed in words."""
    place = text(f"location.{spot.location}")
    return text("location.under_bank", place=place, bank=named(spot.bank)) if spot.bank else place


def card_line(event: Event) -> str | None:
    """Return one line of the job card with its minutes, or None for an event that is not on it."""
    entry = card_entry(event)
    return None if entry is None else f"{event.labour_minutes:>5.0f} min  {entry}"


def slots_text(slots: Sequence[int] | None) -> str:
    """Return which slots are meant: the whole test, or a list."""
    if slots is None:
        return text("hear.whole")
    return ", ".join(text("slot.short_all") if number == 0 else str(number) for number in slots)


def card_entry(event: Event) -> str | None:
    """Return the entry of an event on the job card, or None for one that has none."""
    match event:
        case Heard():
            return text("card.heard", slots=slots_text(event.slots), place=listening_place_text(event.place))
        case CodesRead():
            return text("card.codes", codes=", ".join(event.codes) or text("card.no_codes"))
        case Measured():
            return _reading_entry(event)
        case Worked():
            return _work_entry(event)
        case Repaired():
            where = text(f"location.{event.location}")
            return text("card.repair", place=where, cylinders=cylinders_named(event.cylinders))
        case Hinted(strength=1):  # the weakest hint has not said which test it means, and the card must not either
            return text("card.hint_first")
        case Hinted():
            test = test_text(event.test) if event.test else text("hint.nothing")
            return text("card.hint", strength=event.strength, test=test)
        case Retested():
            return text("retest.proved" if event.proved else "retest.not_proved")
    return None


def _work_entry(event: Worked) -> str:
    match event:
        case Provoked(what=None):
            return text(f"card.{event.did}", what=text("card.stopped"))
        case GaveBack():
            return text("card.give_back", what=text("card.taken_out"))
        case Provoked():
            return text(f"card.{event.did}", what=_tried_text(event))
        case RanWarm():
            return text("card.warm_run")
        case Swapped():
            return text("card.swap", what=" ".join(str(number) for number in event.what))
        case Substituted():
            return text("card.substitute", what=_part(*event.what))
        case Looked():
            nothing = text("drag.nothing" if event.drag else "look.nothing")
            found = " ".join(map(sighting_text, event.what)) or nothing
            return text("card.drag" if event.drag else "card.look", what=found)
    raise AssertionError(f"work without a line on the card: {event.kind}")


def _tried_text(event: Provoked) -> str:
    assert event.what is not None
    place = spot_text(Spot(event.what, event.bank))
    one = event.work.moving if event.did == "move" else event.work.warming
    if one is None:  # of an early version
        return place
    return text("work.try", what=place, number=one.number, effort=text(f"effort.{one.effort}"))


def _reading_entry(event: Measured) -> str:
    entry = text("reading", what=request_text(event.request), display=event.reading.display)
    if event.predicted:
        entry += " " + text("card.predicted", predicted=event.predicted)
    return entry + "".join(f" [{text(f'slip_name.{slip}')}]" for slip in event.reading.slips)


def _part(place: Location, cylinder: int) -> str:
    return text("spot.injector", number=cylinder) if cylinder else text(f"location.{place}")


def card_lines(attempt: Attempt) -> list[str]:
    """Return the whole job card."""
    lines = [text("card.head"), *(line for line in map(card_line, attempt.events) if line)]
    out = ", ".join(text(f"location.{place}") for place in sorted(attempt.ruled_out)) or text("suspects.none")
    return [*lines, text("suspects.head", places=out), text("card.total", minutes=attempt.minutes)]


NO_CURRENT_A, ANOTHER_WAY_A = 0.5, 3.0
"""Below this a coil has no current of its own; from this difference on, current takes a way past coil or output."""


def _level_text(reason: SlotReason) -> str:
    """Return how loud a slot is beside the same slot on a good engine."""
    good = text("level.good_slot" if reason.slot else "level.good_engine")
    decibel = round(reason.level_dba - reason.good_dba)
    key = "level.louder" if decibel > 0 else "level.quieter" if decibel < 0 else "level.same"
    return text(key, decibel=abs(decibel), good=good)


def reason_line(reason: SlotReason, cylinders: int) -> str:
    """Return why one slot sounded as it did."""
    under = _level_text(reason)
    if reason.slot == 0:
        line = text("reason.burst", n=len(reason.moved), count=cylinders, under=under)
        return line + (" " + text("reason.tripped") if reason.tripped else "")
    slot = capital(text("slot.one", number=reason.slot))
    heard = text(f"heard.{reason.heard}")
    values: dict[str, str | float] = {"slot": slot, "own": reason.own_a, "under": under, "heard": heard}
    if reason.slot in reason.moved:
        line = text("reason.even", **values)
    elif reason.own_a < NO_CURRENT_A:
        count = len(reason.others)
        line = text("reason.hum" if count else "reason.silent", others=reason.others_a, n=count, **values)
    elif reason.loaded:
        line = text("reason.shared", cylinders=cylinders_named(reason.loaded), **values)
    else:
        line = text("reason.stuck" if reason.held_back else "reason.short_of_lift", **values)
    guests = [number for number in reason.moved if number != reason.slot]
    if (
        abs(reason.output_a - reason.own_a) > ANOTHER_WAY_A
        and not reason.loaded
        and not (guests and reason.output_a > reason.own_a)
    ):
        line += " " + text("reason.another_way", output=reason.output_a)
    if guests:
        key = "reason.also" if reason.slot in reason.moved else "reason.elsewhere"
        line += " " + text(key, cylinders=cylinders_named(guests))
    return line + (" " + text("reason.tripped") if reason.tripped else "")
