"""The instructor's view of a case: what can be observed of it, and what its evidence proves."""

from __future__ import annotations

from pathlib import Path

from trainer.cases.files.whole_file import write_bytes
from trainer.cases.profiles.profile_title import title_of
from trainer.cases.single_case.case import Case
from trainer.cases.solved.universe_cache import Universes
from trainer.circuit.drive import slots_of
from trainer.circuit.fault import Conditions
from trainer.circuit.netlist import netlist_of
from trainer.commands.call.json_document import json_object
from trainer.commands.call.result import Result
from trainer.commands.case_commands.inspection import Inspection, ReadingRow, SlotRow, inspection_of
from trainer.commands.case_commands.proof import explained, proof_lines, proof_of
from trainer.commands.case_commands.slot_option import slot_number
from trainer.desk.case_source import find_case
from trainer.instruments.bench import Work, worked_circuit
from trainer.practice.attempt.actions import solved_work
from trainer.practice.reports.attempt_lines import point_text
from trainer.sound.render import render
from trainer.words import cylinders_named, figure, text

NETLIST_END_S = 0.006


def inspect_case(
    named: str, universes: Universes, netlist: Path | None, slot: str | None, *, loudness: bool, why: str | None = None
) -> Result:
    """Return a case's inspection and its proof; with `why`, the lines explain that hypothesis instead.

    `netlist` is a file to write one slot's netlist to. Raises WrongCallError for an unknown slot or hypothesis.
    """
    case = find_case(named).case
    work = Work(conditions=Conditions(temperature_c=case.temperature_c))
    solved = solved_work(case.profile, case.faults, work)
    sound = render(solved, "front", case.bed, case.seed)
    if netlist is not None:
        _write_netlist(case, work, netlist, slot)
    inspection = inspection_of(case, work, solved, sound, loudness=loudness)
    reasoner = universes.reasoner(case)
    document = {**json_object(inspection), **json_object(proof_of(reasoner))}
    if why is None:
        return Result((*_lines(case, inspection), *proof_lines(reasoner)), document)
    lines, explanation = explained(reasoner, why)
    return Result(tuple(lines), {**document, "why": json_object(explanation)})


def _write_netlist(case: Case, work: Work, path: Path, slot: str | None) -> None:
    first = case.faults[0].cylinders[0] if case.faults else case.profile.cylinders[0]
    number = first if slot is None else slot_number(slot, case.profile)
    circuit = worked_circuit(case.profile, case.faults, work)
    chosen = next(candidate for candidate in slots_of(case.profile) if candidate.number == number)
    title = f"{case.name}, slot {chosen.name}, first pulse"
    write_bytes(path, netlist_of(circuit, chosen, NETLIST_END_S, title).encode("utf-8"))


def _lines(case: Case, inspection: Inspection) -> list[str]:
    lines = [
        f"{case.in_words.title} ({case.name}), {title_of(case.profile)}",
        case.in_words.story,
        *_truth_lines(case),
    ]
    lines += [_slot_line(slot) for slot in inspection.slots]
    lines += [text("codes.line", code=code.code, meaning=code.meaning) for code in inspection.codes] or [
        text("codes.none")
    ]
    if inspection.stored_codes:
        lines.append(text("codes.stored", codes=", ".join(inspection.stored_codes)))
    return [*lines, *(_reading_line(reading) for reading in inspection.readings)]


def _truth_lines(case: Case) -> list[str]:
    if not case.faults:
        return [text("debrief.passes")]
    return [
        text(
            "debrief.claim",
            kind=text(f"kind.{fault.kind}"),
            location=text(f"location.{fault.location}"),
            side=text(f"side.{fault.side}") + ", " if fault.side else "",
            cylinders=cylinders_named(fault.cylinders),
        )
        for fault in case.faults
    ]


def _slot_line(slot: SlotRow) -> str:
    peaks = " ".join(figure(amps, ".1f") for amps in slot.peak_current_a.values())
    sone = "" if slot.loudness_sone is None else text("inspect.sone", sone=slot.loudness_sone)
    name = text("slot.short_all") if slot.slot == "all" else slot.slot
    heard = text("inspect.slot", slot=name, level=slot.level_dba, centroid=slot.centroid_hz)
    return f"  {heard}{sone}; {peaks}"


def _reading_line(reading: ReadingRow) -> str:
    cylinder = cylinders_named((reading.cylinder,))
    if reading.break_point is None:
        return "  " + text("inspect.driven", cylinder=cylinder, reading=reading.display)
    place = point_text(reading.break_point)
    if reading.side is None:
        return "  " + text("inspect.pair", cylinder=cylinder, place=place, reading=reading.display)
    side = text(f"side.{reading.side}")
    return "  " + text("inspect.to_ground", cylinder=cylinder, place=place, side=side, reading=reading.display)
