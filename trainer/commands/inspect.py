"""inspect: the instructor's view of a case."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import numpy as np

from trainer.cases.files.whole_file import write_bytes
from trainer.cases.single_case.case import Case
from trainer.circuit.codes import codes_of, stored_code
from trainer.circuit.drive import slots_of
from trainer.circuit.elements import Side
from trainer.circuit.faults import Conditions, Fault
from trainer.circuit.netlist import netlist_of
from trainer.circuit.solve import SolvedTest
from trainer.commands.reasoned import reasoned, reasoned_lines, why_document
from trainer.commands.result import Result
from trainer.commands.slots import slot_number
from trainer.commands.stores import universes
from trainer.desk.case_source import find_case
from trainer.instruments.bench import MODULE_CONNECTOR, Work, worked_circuit
from trainer.instruments.measuring import Request, measured, plug_point, through_point
from trainer.practice.attempt.actions import solved_work
from trainer.sound.levels import FULL_SCALE_PA, sum_db
from trainer.sound.loudness import loudness_sone, phon_of
from trainer.sound.render import Sound, render
from trainer.words import numbers, text

NETLIST_END_S = 0.006


def inspect_case(asked: str, netlist: Path | None, slot: str | None, loudness: bool, why: str | None = None) -> Result:
    """Return truth, schedule, slots, codes and readings of a case as it comes, and what its evidence proves."""
    case = find_case(asked).case
    work = Work(conditions=Conditions(temperature_c=case.temperature_c))
    solved = solved_work(case.profile, case.faults, work)
    sound = render(solved, "front", case.bed, case.seed)
    if netlist is not None:
        _write_netlist(case, work, netlist, slot)
    document = {
        "case": case.name,
        "profile": case.profile.name,
        "seed": case.seed,
        "faults": [_fault(fault) for fault in case.faults],
        "schedule": [
            {"slot": part.window.slot.name, "start_s": part.window.start_s, "end_s": part.window.end_s}
            for part in sound.slots
        ],
        "slots": _slots(solved, sound, loudness),
        "codes": [
            {"cylinder": code.cylinder, "code": code.code, "spn": code.spn, "fmi": code.fmi,
             "meaning": text(f"code.{code.sensed}", cylinder=code.cylinder)}
            for code in codes_of(solved)
        ],
        "stored_codes": [stored_code(case.profile, item.cylinder, item.sensed).code for item in case.stored],
        "readings": _readings(case, work),
    }  # fmt: skip
    reasoner = universes().reasoner(case)
    document |= reasoned(reasoner)
    lines = (*_lines(case, document), *reasoned_lines(reasoner))
    if why is None:
        return Result(lines, document)
    told, rows = why_document(reasoner, why)
    return Result(tuple(told), document | {"why": rows})


def _fault(fault: Fault) -> dict[str, object]:
    return {
        "kind": fault.kind, "location": fault.location, "side": fault.side,
        "cylinders": list(fault.cylinders), "severity": fault.amount(),
    }  # fmt: skip


def _slots(solved: SolvedTest, sound: Sound, loudness: bool) -> list[dict[str, object]]:
    rows = []
    for index, part in enumerate(sound.slots):
        pulse, row = solved.pulses_of(index)[0]
        peaks = abs(pulse.coil_a[:, row]).max(axis=0)
        entry: dict[str, object] = {
            "slot": part.window.slot.name,
            "level_dba": round(part.level_dba, 2),
            "with_bed_dba": round(sum_db(np.array([part.level_dba, sound.bed.level_dba])), 2),
            "centroid_hz": round(part.centroid_hz, 1),
            "peak_current_a": {
                str(number): round(float(peak), 3)
                for number, peak in zip(solved.circuit.profile.cylinders, peaks, strict=True)
            },
        }
        if loudness:
            start, end = (round(t * sound.rate_hz) for t in (part.window.start_s, part.window.end_s))
            pressure = sound.samples[start:end].mean(axis=1) * FULL_SCALE_PA
            sone = loudness_sone(pressure, sound.rate_hz)
            entry |= {"loudness_sone": round(sone, 2), "loudness_phon": round(phon_of(sone), 1)}
        rows.append(entry)
    return rows


def _readings(case: Case, work: Work) -> list[dict[str, object]]:
    rows: list[dict[str, object]] = []
    for number in case.profile.cylinders:
        requests = (
            Request("pair", MODULE_CONNECTOR, "harness", number),
            Request("ground", MODULE_CONNECTOR, "harness", number),
            Request("pair", through_point(case.profile, number), "cover", number),
            Request("pair", plug_point(number), "injector", number),
            Request("trace", cylinder=number),
        )
        for request in requests:
            reading = measured(case.profile, case.faults, work, request, case.seed).reading
            rows.append({
                "instrument": reading.instrument,
                "break_point": None if request.what == "trace" else request.point,
                "side": Side.RETURN if request.what == "ground" else None,
                "cylinder": number,
                "value": reading.value,
                "unit": reading.unit,
                "display": reading.display,
            })  # fmt: skip
    return rows


def _write_netlist(case: Case, work: Work, path: Path, slot: str | None) -> None:
    chosen = case.faults[0].cylinders[0] if case.faults else case.profile.cylinders[0]
    number = chosen if slot is None else slot_number(slot, case.profile)
    circuit = worked_circuit(case.profile, case.faults, work)
    wanted = next(candidate for candidate in slots_of(case.profile) if candidate.number == number)
    title = f"{case.name}, slot {wanted.name}, first pulse"
    write_bytes(path, netlist_of(circuit, wanted, NETLIST_END_S, title).encode("utf-8"))


def _lines(case: Case, document: dict[str, Any]) -> tuple[str, ...]:
    lines = [f"{case.title} ({case.name}), {case.profile.title}", case.story]
    for fault in case.faults:
        side = text(f"side.{fault.side}") + ", " if fault.side else ""
        lines.append(
            text("debrief.claim", kind=text(f"kind.{fault.kind}"), location=text(f"location.{fault.location}"),
                 side=side, cylinders=numbers(fault.cylinders))
        )  # fmt: skip
    if not case.faults:
        lines.append(text("debrief.passes"))
    for slot in document["slots"]:
        peaks = " ".join(f"{amps:.1f}" for amps in slot["peak_current_a"].values())
        sone = f", {slot['loudness_sone']:.1f} sone" if "loudness_sone" in slot else ""
        lines.append(
            f"  slot {slot['slot']!s:>3}: {slot['level_dba']:5.1f} dB(A), {slot['centroid_hz']:5.0f} Hz{sone}; {peaks}"
        )
    lines += [text("codes.line", **{key: code[key] for key in ("code", "meaning")}) for code in document["codes"]] or [
        text("codes.none")
    ]
    if document["stored_codes"]:
        lines.append(text("codes.stored", codes=", ".join(document["stored_codes"])))
    for reading in document["readings"]:
        place = reading["break_point"] or "driven"
        what = "to ground" if reading["side"] else reading["instrument"]
        lines.append(f"  cylinder {reading['cylinder']}, {place}, {what}: {reading['display']}")
    return tuple(lines)
