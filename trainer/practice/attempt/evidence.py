"""What a learner's own steps have shown: the job card as questions and answers."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from typing import Literal

import numpy as np

from trainer.arrays import Floats
from trainer.circuit.drive import slots_of
from trainer.circuit.profile import Profile
from trainer.instruments.bench import Work
from trainer.instruments.bench_tests import Price
from trainer.instruments.charges import LIVE
from trainer.instruments.reading import Slip
from trainer.instruments.requests import Request, drop_pins_of, pins_of
from trainer.practice.attempt.attempt import Attempt, begun
from trainer.practice.attempt.events import CodesRead, EngineEvent, Event, Found, Heard, Looked, Measured
from trainer.reasoning.reasoner import Reasoner
from trainer.reasoning.universe.expectations import code_flags, look_flags
from trainer.reasoning.universe.menu import WHOLE, clamp_question
from trainer.reasoning.universe.questions import Question
from trainer.reasoning.universe.scales import OPEN_READS_OHM, insulation_scale, ohm_scale, volts_scale

Answers = dict[Question, Floats]


@dataclass(frozen=True, slots=True)
class Evidence:
    """An event and the answers it gave; an event that shows nothing has none."""

    event: Event
    answers: Answers


def evidence_of(attempt: Attempt, reasoner: Reasoner) -> tuple[Evidence, ...]:
    """Return every event before the finding with its answers.

    What is heard or traced is the engine's own answer without chance; ohms are as they were displayed.
    """
    return tuple(_evidence(attempt, reasoner))


def all_answers(evidence: tuple[Evidence, ...]) -> Answers:
    """Return all answers together; the same question is one answer."""
    return {question: answer for one in evidence for question, answer in one.answers.items()}


def paid_for(attempt: Attempt) -> frozenset[Price]:
    """Return the paid prices, with the first whole test as the menu prices it."""
    whole = any(isinstance(event, Heard) and event.slots is None for event in attempt.events)
    return attempt.paid | ({WHOLE} if whole else set())


def _evidence(attempt: Attempt, reasoner: Reasoner) -> Iterator[Evidence]:
    profile = attempt.case.profile
    before = begun(attempt.case, attempt.seed).work
    tested: Work | None = None
    cleared = False
    known: frozenset[str] = frozenset()
    for event in attempt.events:
        answers: Answers = {}
        match event:
            case Found():
                return
            case Heard():
                answers = _answered(reasoner, _slots_heard(profile, event))
                tested = event.work if event.slots is None else tested
            case CodesRead():
                work = (tested or before).as_tried()
                question = Question("codes", work, cleared=cleared, tested=tested is not None, known=known)
                answers = {question: code_flags(profile, event.codes)}
                known |= frozenset(event.codes)
                if event.cleared:
                    tested, cleared, known = None, True, frozenset()
            case Measured():
                answers = _read(profile, event, before, reasoner)
            case Looked():
                answers = {Question("drag" if event.drag else "look", event.work): look_flags(profile, event.what)}
        yield Evidence(event, answers)
        before = event.work if isinstance(event, EngineEvent) else before


def _slots_heard(profile: Profile, event: Heard) -> list[Question]:
    numbers = event.slots or [slot.number for slot in slots_of(profile)]
    work = event.work.electrical()
    return [Question("slot", work, slot=number, place=event.place) for number in dict.fromkeys(numbers)]


def _answered(reasoner: Reasoner, questions: Sequence[Question]) -> Answers:
    """Return the engine's own answers as its tries left it; the questions do not know how they came out."""
    answers = reasoner.truth_answers([replace(question, work=question.work.physical()) for question in questions])
    return {
        replace(question, work=question.work.as_tried()): answer
        for question, answer in zip(questions, answers.values(), strict=True)
    }


def _read(profile: Profile, event: Measured, before: Work, reasoner: Reasoner) -> Answers:
    request, reading, after = event.request, event.reading, event.work.electrical()
    if {Slip.LIVE, Slip.NOT_WAITED} & set(reading.slips):
        return {}
    if request.what in LIVE:
        return _answered(reasoner, [_driven(profile, request, after)])
    # a probe that was pushed in spreads the terminal after the reading
    work = replace(after, spread=before.spread)
    if request.what == "volts":
        question = Question("volts", work.as_tried(), pins=pins_of(profile, request))
        return {} if request.at_once else {question: volts_scale(np.array([reading.value]))}
    if request.what == "lamp":
        # its current is read from the engine's own answer, as whatever is driven
        return _answered(reasoner, [Question("lamp", work, pins=pins_of(profile, request))])
    kind: Literal["insulation", "ohms"] = "insulation" if request.what == "insulation" else "ohms"
    question = Question(kind, work.as_tried(), pins=pins_of(profile, request), captured=request.captured)
    ohm = OPEN_READS_OHM if reading.value is None else reading.value
    if Slip.NOT_NULLED in reading.slips and reading.value is not None:
        ohm = max(ohm - profile.meter.lead_ohm, 0.0)
    scale = insulation_scale if request.what == "insulation" else ohm_scale
    return {question: scale(np.array([ohm]), profile.meter)}


def _driven(profile: Profile, request: Request, work: Work) -> Question:
    number = request.cylinder
    if request.what == "supply":
        return Question("supply", work)
    if request.what == "trace":
        return Question("trace", work, slot=number)
    if request.what in ("crank", "plus_drop", "ground_drop", "contribution", "compression"):
        return Question(request.what, work)
    if request.what == "clamp":
        return clamp_question(work, number, request.other)
    if request.what == "dummy":
        return Question("dummy", replace(work, dummy_loads=work.dummy_loads | {number}), slot=number)
    return Question("drop", replace(work, swapped=()), slot=number, pins=drop_pins_of(profile, request))
