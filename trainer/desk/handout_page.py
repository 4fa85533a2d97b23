"""A handout on one case, for a customer or a class: what was heard, where the fault lies, what is next."""

from __future__ import annotations

import base64

from trainer.cases.profiles.profile_title import title_of
from trainer.cases.single_case.case import Case
from trainer.circuit.codes import codes_of
from trainer.circuit.fault import Conditions
from trainer.circuit.fault_space import comes_and_goes
from trainer.circuit.solve import SolvedTest
from trainer.desk.caching_solver import CachingSolver
from trainer.instruments.bench import Work
from trainer.output.wav import wav_bytes
from trainer.practice.reports.attempt_lines import claims_text, code_lines, reason_line
from trainer.reasoning.universe.finding import truth_of
from trainer.reasoning.verdict.explanation import SlotReason, reasons_of
from trainer.records.papers.page import page
from trainer.records.papers.wiring_svg import wiring_svg
from trainer.sound.render import Sound, render
from trainer.words import spoken, text

CAUTIONS = ("caution.real", "caution.drive", "caution.cover", "caution.moving", "caution.sound")


def handout_html(case: Case) -> str:
    """Return the page; it plays and prints without a network."""
    from markupsafe import Markup

    solver = CachingSolver()
    cold = Work(conditions=Conditions(temperature_c=case.temperature_c))
    place = next((f.location for f in case.faults if comes_and_goes(f, case.profile, case.temperature_c)), None)
    work = cold if place is None else Work(conditions=Conditions(case.temperature_c, moved=place, heated=place))
    solved, fine = solver(case.profile, case.faults, work), solver(case.profile, (), cold)
    sound, good = (render(one, "front", case.bed, case.seed) for one in (solved, fine))
    reasons = {reason.slot: reason for reason in reasons_of(solved, sound, good)}
    numbers = sorted({n for fault in case.faults for n in fault.cylinders}) or [case.profile.cylinders[0]]
    return page(
        "handout.html",
        text("handout.title"),
        spoken(),
        engine=title_of(case.profile),
        story=case.in_words.story,
        sounds=_sounds(case, solved, fine, reasons, numbers),
        codes=code_lines(case.profile, [code.code for code in codes_of(solved)]),
        truth=claims_text(truth_of(case.faults)),
        wiring=Markup(wiring_svg(case.profile, case.faults)),
        following=_following(case),
        cautions=[text(key) for key in CAUTIONS],
        words={name: text(f"handout.{name}") for name in ("heard", "where", "wiring", "next", "cautions", "limits")},
    )


def _sounds(
    case: Case, solved: SolvedTest, fine: SolvedTest, reasons: dict[int, SlotReason], numbers: list[int]
) -> list[dict[str, object]]:
    """Return the decisive slot, good and faulty; only one sound where the circuit passes."""
    number = numbers[0]
    slot = text("slot.one", number=number)

    def row(label: str, test: SolvedTest, reason: str) -> dict[str, object]:
        sound = render(test, "front", case.bed, case.seed, [number])
        return {"label": text(label, slot=slot), "source": _source(sound), "reason": reason}

    rows = [row("handout.good", fine, "")]
    if case.faults:
        told = reasons.get(number)
        rows.append(row("handout.faulty", solved, reason_line(told, len(case.profile.cylinders)) if told else ""))
    return rows


def _source(sound: Sound) -> str:
    return "data:audio/wav;base64," + base64.b64encode(wav_bytes(sound.samples, sound.rate_hz)).decode("ascii")


def _following(case: Case) -> list[str]:
    """Return what to check next, by the place of the fault."""
    if not case.faults:
        return [text("handout.next.circuit_passes")]
    places = dict.fromkeys(fault.location for fault in case.faults)
    return [*(text(f"handout.next.{place}") for place in places), text("handout.next.retest")]
