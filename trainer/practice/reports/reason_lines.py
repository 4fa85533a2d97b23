"""Reasoning as lines of text: tests, hints, findings with their chances, bits for and against."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping

from trainer.circuit.elements import Location
from trainer.errors import WrongCallError
from trainer.instruments.bench import Work
from trainer.practice.attempt.attempt import Attempt
from trainer.practice.attempt.evidence import Answers, all_answers, evidence_of
from trainer.practice.attempt.hints import Hint
from trainer.practice.reports.attempt_lines import listening_place_text, point_text, test_text
from trainer.reasoning.advice.repairs import Repairs
from trainer.reasoning.reasoner import Reasoner
from trainer.reasoning.universe.questions import Question
from trainer.reasoning.verdict.belief import Belief, FindingKey, bits_between
from trainer.words import cylinders_named, numbers, percent, text

SHOWN_FINDINGS, SHOWN_REPAIRS = 5, 3
SHOWN_BITS = 0.05
SHOWN_LINES = 12
TOLD_SAVED_MINUTES = 1.0
"""How many findings, which bits and how many lines a view shows; the rest is summed."""

STEP_KINDS: Mapping[str, str] = {
    "hear": "begin", "through_cover": "listen", "probe": "inside", "codes": "memory",
    "lamp_engine": "outside", "lamp_cover": "inside", "engine_insulation": "outside", "cover_insulation": "inside",
    "contribution": "running", "compression": "running", "crank": "driven", "power_drops": "driven", "clamp": "driven",
    "module_volts": "outside", "through_volts": "outside", "plug_volts": "inside",
    "module_pairs": "outside", "module_returns": "outside", "module_grounds": "outside", "through_pairs": "outside",
    "through_grounds": "outside", "wires_engine": "outside", "engine_alone": "outside",
    "plug_pairs": "inside", "plug_grounds": "inside", "wires_cover": "inside", "cover_alone": "inside",
    "look_module": "eyes", "look_through": "eyes", "look_cover": "eyes",
    "drag_module": "feel", "drag_through": "feel", "drag_cover": "feel",
    "supply": "driven", "trace": "driven", "drops": "driven", "drops_cover": "driven", "dummy": "driven",
    "move": "provoke", "heat": "provoke", "warm_run": "provoke",
    "reseat": "provoke", "reseat_module": "provoke", "reseat_plugs": "provoke",
    "pairs_moved": "outside", "grounds_moved": "outside", "pairs_warm": "outside", "pairs_reseated": "outside",
    "pairs_reseated_plugs": "inside",
    "trace_moved": "driven", "trace_warm": "driven",
    "lend_module": "exchange", "lend_injector": "exchange", "swap": "exchange",
}  # fmt: skip
"""What kind of step each test is, for the weakest hint."""


def finding_text(key: FindingKey) -> str:
    """Return a finding in words."""
    if not key:
        return text("debrief.passes")
    return "; ".join(
        text(
            "debrief.claim",
            kind=text(f"kind.{kind}"),
            location=text(f"location.{location}"),
            side="",
            cylinders=cylinders_named(cylinders),
        )
        for cylinders, location, kind in key
    )


def hint_lines(hint: Hint) -> list[str]:
    """Return a hint in words."""
    if hint.test is None:
        return [text("hint.proved")] if hint.proved else [text("hint.nothing"), *_repair_lines(hint.repairs)]
    if hint.strength == 1:
        kind = STEP_KINDS[hint.test.kind]
        return [text("hint.first", step=text(f"kind_of_step.{kind}"))]
    test = test_text(hint.test)
    if not hint.findings:
        line = text("hint.second", test=test, minutes=hint.minutes, bits=hint.bits)
        return [line, text("hint.saves", saved=hint.saved)] if hint.saved >= TOLD_SAVED_MINUTES else [line]
    letters = {lead: chr(ord("A") + place) for place, lead in enumerate(dict.fromkeys(hint.leads))}
    lines = [text("hint.third", test=test)]
    lines += [
        text("hint.finding", percent=percent(chance), finding=finding_text(key), lead=letters[lead])
        for (key, chance), lead in zip(hint.findings, hint.leads, strict=True)
    ]
    return [*lines, text("hint.same")]


def _repair_lines(repairs: Repairs | None) -> Iterator[str]:
    """Yield the first repairs to make where no test is left, in their order."""
    if repairs is None:
        return
    yield text("hint.repairs", minutes=repairs.expected_minutes)
    rows = zip(repairs.mends, repairs.chance, repairs.minutes, strict=True)
    for (place, cylinders), chance, minutes in list(rows)[:SHOWN_REPAIRS]:
        what = text(f"location.{place}") + (" " + numbers(cylinders) if cylinders else "")
        yield text("hint.repair", what=what, percent=percent(chance), minutes=minutes)


def why_lines(attempt: Attempt, reasoner: Reasoner, number: int | None) -> list[str]:
    """Return what the evidence leaves, or why one finding of that list has its chance.

    Raises WrongCallError for a number that is not in the list.
    """
    shown = all_answers(evidence_of(attempt, reasoner))
    belief = reasoner.belief(shown)
    findings = list(belief.findings)[:SHOWN_FINDINGS]
    if number is None:
        lines = [text("debrief.left")]
        return lines + [
            f"{place:>3}" + text("debrief.left_line", percent=percent(belief.findings[key]), finding=finding_text(key))
            for place, key in enumerate(findings, start=1)
        ]
    if not 1 <= number <= len(findings):
        raise WrongCallError("no_rival", number=number, count=len(findings))
    return bits_lines(reasoner, belief, shown, findings[number - 1])


def bits_lines(reasoner: Reasoner, belief: Belief, shown: Answers, key: FindingKey) -> list[str]:
    """Return, in bits, what speaks for a finding against its strongest rival, strongest first."""
    rival = next(other for other in belief.findings if other != key)
    prior, bits = bits_between(key, rival, reasoner.hypotheses, reasoner.expected(list(shown)), shown)
    order = sorted((question for question in bits if abs(bits[question]) >= SHOWN_BITS), key=lambda q: -abs(bits[q]))
    told = order[:SHOWN_LINES]
    lines = [
        text(
            "why.head",
            finding=finding_text(key),
            percent=percent(belief.findings[key]),
            rival=finding_text(rival),
            other=percent(belief.findings[rival]),
        ),
        text("why.prior", bits=prior),
        *(text("why.line", bits=bits[question], question=question_text(question)) for question in told),
    ]
    rest = sum(bits.values()) - sum(bits[question] for question in told)
    if abs(rest) >= SHOWN_BITS:
        lines.append(text("why.rest", bits=rest))
    return [*lines, text("why.total", bits=prior + sum(bits.values()))]


def question_text(question: Question) -> str:
    """Return a question in words."""
    pins = " – ".join(
        text("question.ground")
        if pin is None
        else text(
            "question.pin",
            side=text(f"side.{pin.side}"),
            name=pin.name,
            point=point_text(pin.break_point),
            half=text(f"half.{pin.half}"),
        )
        for pin in question.pins
    )
    slot = text("slot.all") if question.slot == 0 else text("slot.one", number=question.slot)
    return text(
        f"question.{question.kind}",
        slot=slot,
        place=listening_place_text(question.place) if question.place else "",
        pins=pins,
        work="".join(_work(question.work)),
    )


def _work(work: Work) -> Iterable[str]:
    for key, place in (("question.moved", work.conditions.moved), ("question.warm", work.conditions.heated)):
        if place is not None:
            yield text(key, place=text(f"location.{Location(place)}"))
    if work.ran_warm:
        yield text("question.ran_warm")
    changed = [f"{first}↔{second}" for first, second in work.swapped]
    changed += [f"{text(f'location.{place}')} {number or ''}".strip() for place, number in sorted(work.replaced)]
    if changed:
        yield text("question.changed", what=", ".join(changed))
