"""Values as lines of text, every sentence from `trainer.words`."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import Any

from trainer.cases.single_case.case import Case
from trainer.circuit.codes import Sensed, known_codes
from trainer.circuit.elements import Location, Side
from trainer.circuit.profile import Profile
from trainer.instruments.bench import MODULE_CONNECTOR
from trainer.practice.attempt.attempt import Attempt, CardLine
from trainer.practice.attempt.events import EventKind
from trainer.reasoning.universe.finding import Claim
from trainer.reasoning.verdict.explanation import SlotReason
from trainer.words import numbers, text


def engine_lines(profile: Profile) -> list[str]:
    """Return the engine: numbers, firing order, banks, connectors, which feeds are live."""
    order = "-".join(str(number) for number in profile.firing_order)
    lines = [text("engine.head", title=profile.title, numbers=numbers(profile.cylinders), firing=order)]
    for bank, row in profile.banks.items():
        lines.append("  " + text("engine.bank", bank=bank, numbers=" ".join(str(number) for number in row)))
    for connector in profile.wiring.connectors:
        lines.append("  " + text("engine.connector", name=connector.name, cylinders=numbers(connector.injectors),
                                 pins=text(f"engine.pins.{connector.feed_pins}")))  # fmt: skip
    lines.append("  " + text(f"engine.live.{profile.wiring.live}"))
    return lines


def heading(case: Case, *, told: bool) -> str:
    """Return what a case is called: a number until its fault may be told, its title then."""
    if told:
        return case.title
    if case.code:
        return case.code
    return text("case.heading", number=case.number)


def named(name: str) -> str:
    """Return a bank's, output's or connector's name in words."""
    return " ".join(text(f"name.{part}") if part in NAMED else part for part in name.split("_"))


NAMED = ("right", "left", "front", "rear", "row", "cover")
"""The parts of names that each language has its own word for."""


def prompt(attempt: Attempt) -> str:
    """Return the prompt: minutes so far, and how the engine stands."""
    state = prompt_state(attempt)
    return text("prompt", minutes=attempt.minutes, state=f", {state}" if state else "")


def prompt_state(attempt: Attempt) -> str:
    """Return what is moving, warm, swapped or lent as the engine stands, "" for nothing."""
    work = attempt.work
    state = [
        text(key, place=text(f"location.{place}"))
        for key, place in (("prompt.moving", work.conditions.moved), ("prompt.warm", work.conditions.heated))
        if place is not None
    ]
    state += [text("prompt.swapped", first=first, second=second) for first, second in work.swapped]
    state += [text("prompt.lent", what=_what([place, number])) for place, number in sorted(work.replaced)]
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
        cylinders=numbers(claim.cylinders),
    )


def claims_text(claims: Sequence[Claim]) -> str:
    """Return all claims in words, or that the circuit passes."""
    return "; ".join(claim_text(claim) for claim in claims) or text("debrief.passes")


def request_text(request: dict[str, Any]) -> str:
    """Return what was measured, for a card."""
    what, cylinder = request["what"], request["cylinder"]
    side = text(f"side.{request['side']}") if request["side"] is Side.FEED or request["side"] == "feed" else ""
    place = text(f"location.{request['location']}")
    point = point_text(request["point"], request["half"])
    key = f"request.{what}"
    return " ".join(text(key, cylinder=cylinder, other=request["other"], point=point, place=place, side=side).split())


def point_text(point: str, half: str = "") -> str:
    """Return a break point, and which half of it, or a bank whose cover is off, in words."""
    family, dot, name = point.partition(".")
    shown = (
        text(f"point.{family}", name=named(name))
        if dot or family == MODULE_CONNECTOR
        else text("point.cover", name=named(point))
    )
    return f"{shown} ({text(f'half.{half}')})" if half else shown


def listening_place_text(place: str) -> str:
    """Return a place to listen from in words."""
    if place.startswith("probe "):
        return text("stand.probe", number=place.removeprefix("probe "))
    key = f"stand.{place.replace(' ', '_')}"
    return (
        text(key)
        if key in ("stand.front", "stand.left_side", "stand.right_side")
        else text("stand.bank", name=named(place))
    )


AT_A_PLACE = ("move", "heat", "pairs_moved", "pairs_warm", "trace_moved", "trace_warm")
"""Tests that are named with a place."""


def test_text(name: str) -> str:
    """Return a test of the menu in words."""
    family, _colon, what = name.partition(":")
    if family in AT_A_PLACE:
        what = text(f"location.{what}")
    return text(f"plan.{family}", what=what)


def card_line(line: CardLine) -> str | None:
    """Return one line of the job card with its minutes, or None for what does not stand on it."""
    shown = card_entry(line)
    return None if shown is None else f"{line.minutes:>5.0f} min  {shown}"


def slots_text(slots: Sequence[int] | None) -> str:
    """Return which slots are meant: the whole test, or a list."""
    if slots is None:
        return text("hear.whole")
    return ", ".join(text("slot.short_all") if number == 0 else str(number) for number in slots)


def card_entry(line: CardLine) -> str | None:
    """Return what one line of the job card says, or None for what does not stand on it."""
    data = line.data
    if line.kind is EventKind.HEARD:
        slots = slots_text(data["slots"])
        shown = text("card.heard", slots=slots, place=listening_place_text(data["place"]))
    elif line.kind is EventKind.CODES_READ:
        shown = text("card.codes", codes=", ".join(data["codes"]) or text("card.no_codes"))
    elif line.kind is EventKind.MEASURED:
        shown = text("reading", what=request_text(data["request"]), display=data["reading"]["display"])
        if data.get("predicted"):
            shown += " " + text("card.predicted", predicted=data["predicted"])
        shown += "".join(f" [{text(f'slip_name.{slip}')}]" for slip in data["reading"]["slips"])
    elif line.kind is EventKind.WORKED:
        what = text("look.nothing") if data["did"] == "look" and not data["what"] else _what(data["what"])
        shown = text(f"card.{data['did']}", what=what)
    elif line.kind is EventKind.REPAIRED:
        shown = text("card.repair", place=text(f"location.{data['location']}"), cylinders=numbers(data["cylinders"]))
    elif line.kind is EventKind.HINTED:
        test = test_text(data["test"]) if data["test"] else text("hint.nothing")
        shown = text("card.hint", strength=data["strength"], test=test)
        # the weakest hint has not said which test it means, and the card must not either
        shown = text("card.hint_first") if data["strength"] == 1 else shown
    elif line.kind is EventKind.RETESTED:
        shown = text("retest.proved" if data["proved"] else "retest.not_proved")
    else:
        return None
    return shown


def _what(what: object) -> str:
    if what is None:
        return text("suspects.none")
    if isinstance(what, list):
        places = set(Location)
        return " ".join(text(f"location.{item}") if item in places else str(item) for item in what if item)
    return text(f"location.{what}")


def card_lines(attempt: Attempt) -> list[str]:
    """Return the whole job card."""
    lines = [text("card.head"), *(line for line in map(card_line, attempt.card) if line)]
    out = ", ".join(text(f"location.{place}") for place in sorted(attempt.ruled_out)) or text("suspects.none")
    return [*lines, text("suspects.head", places=out), text("card.total", minutes=attempt.minutes)]


NO_CURRENT_A, ANOTHER_WAY_A = 0.5, 3.0
"""Below this a coil has no current of its own; from this difference on, current takes a way past coil or output."""


def reason_line(reason: SlotReason, cylinders: int) -> str:
    """Return why one slot sounded as it did."""
    under = round(reason.level_dba - reason.good_dba, 1) + 0.0  # no minus before a nought
    if reason.slot == 0:
        line = text("reason.burst", moved=len(reason.moved), count=cylinders, under=under)
        return line + (" " + text("reason.tripped") if reason.tripped else "")
    slot = text("slot.one", number=reason.slot)
    values: dict[str, object] = {
        "slot": slot,
        "own": reason.own_a,
        "under": under,
        "heard": text(f"heard.{reason.heard}"),
    }
    if reason.slot in reason.moved:
        line = text("reason.even", **values)
    elif reason.own_a < NO_CURRENT_A:
        count = len(reason.others)
        line = text("reason.hum" if count else "reason.silent", others=reason.others_a, count=count, **values)
    elif reason.loaded:
        line = text("reason.shared", cylinders=numbers(reason.loaded), **values)
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
        line += " " + text(key, cylinders=numbers(guests))
    return line + (" " + text("reason.tripped") if reason.tripped else "")
