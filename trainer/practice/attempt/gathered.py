"""What a learner's own steps have shown: the job card as questions and answers."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import Any

import numpy as np

from trainer.arrays import Floats
from trainer.circuit.drive import slots_of
from trainer.circuit.elements import Location, Side
from trainer.instruments.bench import Work
from trainer.instruments.measuring import LIVE_TESTS, Request, drop_pins_of, pins_of
from trainer.instruments.reading import Slip
from trainer.practice.attempt.attempt import Attempt, CardLine, begun
from trainer.practice.attempt.events import EventKind
from trainer.practice.attempt.work_data import work_of
from trainer.reasoning.reasoner import Reasoner
from trainer.reasoning.universe.expectations import code_flags, look_flags
from trainer.reasoning.universe.menu import WHOLE
from trainer.reasoning.universe.questions import Question
from trainer.reasoning.universe.scales import OPEN_READS_OHM, insulation_scale, ohm_scale

Shown = dict[Question, Floats]


@dataclass(frozen=True, slots=True)
class Gathered:
    """One line of the job card with what it showed; a line that shows nothing has no answers."""

    line: CardLine
    shown: Shown


def gathered(attempt: Attempt, reasoner: Reasoner) -> tuple[Gathered, ...]:
    """Return every line before the finding with what it showed.

    What is heard or traced is the engine's own answer without chance; ohms are as they were displayed.
    """
    return tuple(_lines(attempt, reasoner))


def everything_shown(lines: tuple[Gathered, ...]) -> Shown:
    """Return all answers together; the same question is one answer."""
    return {question: answer for line in lines for question, answer in line.shown.items()}


def paid_for(attempt: Attempt) -> frozenset[str]:
    """Return what is paid, with the whole test on the engine as it came under the name that the menu gives it."""
    whole = any(line.kind is EventKind.HEARD and line.data["slots"] is None for line in attempt.card)
    return attempt.paid | ({WHOLE} if whole else set())


def _lines(attempt: Attempt, reasoner: Reasoner) -> Iterator[Gathered]:
    before = begun(attempt.case, attempt.seed).work
    tested: Work | None = None
    cleared = False
    known: frozenset[str] = frozenset()
    for line in attempt.card:
        if line.kind is EventKind.FOUND:
            return
        after = work_of(line.data["work"]) if "work" in line.data else before
        shown: Shown = {}
        if line.kind is EventKind.HEARD:
            shown = reasoner.truth_answers(_heard(attempt, line.data, after))
            tested = after if line.data["slots"] is None else tested
        elif line.kind is EventKind.CODES_READ:
            work = (tested or before).electrical()
            question = Question("codes", work, cleared=cleared, tested=tested is not None, known=known)
            shown = {question: code_flags(attempt.case.profile, line.data["codes"])}
            known |= frozenset(line.data["codes"])
            if line.data["cleared"]:
                tested, cleared, known = None, True, frozenset()
        elif line.kind is EventKind.MEASURED:
            shown = _measured(attempt, line.data, before, after, reasoner)
        elif line.kind is EventKind.WORKED and line.data["did"] == "look":
            shown = {Question("look", after): look_flags(attempt.case.profile, line.data["what"] or ())}
        yield Gathered(line, shown)
        before = after


def _heard(attempt: Attempt, data: dict[str, Any], work: Work) -> list[Question]:
    numbers = data["slots"] or [slot.number for slot in slots_of(attempt.case.profile)]
    return [Question("slot", work.electrical(), slot=number, place=data["place"]) for number in dict.fromkeys(numbers)]


def request_of_data(data: dict[str, Any]) -> Request:
    """Return the measurement that plain data describe."""
    return Request(**{**data, "side": Side(data["side"]), "location": Location(data["location"])})


def _measured(attempt: Attempt, data: dict[str, Any], before: Work, after: Work, reasoner: Reasoner) -> Shown:
    request = request_of_data(data["request"])
    profile = attempt.case.profile
    if Slip.LIVE in data["reading"]["slips"]:
        return {}
    if request.what in LIVE_TESTS:
        return reasoner.truth_answers([_driven(attempt, request, after.electrical())])
    # a probe that was pushed in spreads the terminal after the reading
    work = replace(after.electrical(), spread=before.spread)
    question = Question("insulation" if request.what == "insulation" else "ohms", work, pins=pins_of(profile, request))
    value = data["reading"]["value"]
    ohm = OPEN_READS_OHM if value is None else value
    if Slip.NOT_NULLED in data["reading"]["slips"] and value is not None:
        ohm = max(ohm - profile.meter.lead_ohm, 0.0)
    scale = insulation_scale if request.what == "insulation" else ohm_scale
    return {question: scale(np.array([ohm]), profile.meter)}


def _driven(attempt: Attempt, request: Request, work: Work) -> Question:
    profile, number = attempt.case.profile, request.cylinder
    if request.what == "supply":
        return Question("supply", work)
    if request.what == "trace":
        return Question("trace", work, slot=number)
    if request.what == "dummy":
        return Question("dummy", replace(work, dummy_loads=work.dummy_loads | {number}), slot=number)
    return Question("drop", replace(work, swapped=()), slot=number, pins=drop_pins_of(profile, request))
