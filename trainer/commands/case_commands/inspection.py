"""What an instructor sees of a case as it comes: truth, schedule, slots, codes and readings, as a document."""

from __future__ import annotations

from dataclasses import dataclass, field

import numpy as np

from trainer.cases.single_case.case import Case
from trainer.circuit.codes import codes_of, stored_code
from trainer.circuit.elements import Side
from trainer.circuit.faults import Fault
from trainer.circuit.solve import SolvedTest
from trainer.commands.call.json_document import LEFT_OUT_IF_NONE, JsonValue
from trainer.commands.case_commands.schedule import schedule_of
from trainer.instruments.bench import MODULE_CONNECTOR, Work
from trainer.instruments.measuring import Request, measured, plug_point, through_point
from trainer.sound.levels import FULL_SCALE_PA, sum_db
from trainer.sound.loudness import loudness_sone, phon_of
from trainer.sound.render import Sound
from trainer.words import text


@dataclass(frozen=True, slots=True)
class FaultRow:
    """One fault of the truth; the unit of `severity` follows from the kind."""

    kind: str
    location: str
    side: str | None
    cylinders: tuple[int, ...]
    severity: float


@dataclass(frozen=True, slots=True)
class SlotRow:
    """One slot at the front: levels in dB(A) re 20 micropascal, and every injector's peak current by cylinder."""

    slot: str | int
    level_dba: float
    with_bed_dba: float
    centroid_hz: float
    peak_current_a: dict[str, float]
    loudness_sone: float | None = field(default=None, metadata=LEFT_OUT_IF_NONE)
    loudness_phon: float | None = field(default=None, metadata=LEFT_OUT_IF_NONE)


@dataclass(frozen=True, slots=True)
class CodeRow:
    """One code that the module sets in the test; `spn` and `fmi` are None where the profile uses P codes."""

    cylinder: int | None
    code: str
    spn: int | None
    fmi: int | None
    meaning: str


@dataclass(frozen=True, slots=True)
class ReadingRow:
    """One reading; `break_point` is None for a current trace, `side` None where both sides are measured."""

    instrument: str
    break_point: str | None
    side: str | None
    cylinder: int
    value: float | None
    unit: str
    display: str


@dataclass(frozen=True, slots=True)
class Inspection:
    """A case as it comes: its truth, the schedule of its sound, and everything that can be observed of it."""

    case: str
    profile: str
    seed: int
    faults: tuple[FaultRow, ...]
    schedule: list[dict[str, JsonValue]]
    slots: tuple[SlotRow, ...]
    codes: tuple[CodeRow, ...]
    stored_codes: tuple[str, ...]
    readings: tuple[ReadingRow, ...]


def inspection_of(case: Case, work: Work, solved: SolvedTest, sound: Sound, *, loudness: bool) -> Inspection:
    """Return the inspection of a case by its solved and rendered test; `loudness` adds ISO 532-1 loudness."""
    return Inspection(
        case=case.name,
        profile=case.profile.name,
        seed=case.seed,
        faults=tuple(_fault_row(fault) for fault in case.faults),
        schedule=schedule_of(sound),
        slots=tuple(_slot_row(solved, sound, index, loudness=loudness) for index in range(len(sound.slots))),
        codes=tuple(
            CodeRow(code.cylinder, code.code, code.spn, code.fmi, text(f"code.{code.sensed}", cylinder=code.cylinder))
            for code in codes_of(solved)
        ),
        stored_codes=tuple(stored_code(case.profile, item.cylinder, item.sensed).code for item in case.stored),
        readings=tuple(_reading_row(case, work, request) for request in _requests(case)),
    )


def _fault_row(fault: Fault) -> FaultRow:
    return FaultRow(fault.kind, fault.location, fault.side, fault.cylinders, fault.amount())


def _slot_row(solved: SolvedTest, sound: Sound, index: int, *, loudness: bool) -> SlotRow:
    part = sound.slots[index]
    pulse, row = solved.pulses_of(index)[0]
    peaks = abs(pulse.coil_a[:, row]).max(axis=0)
    sone = _loudness_sone(sound, index) if loudness else None
    return SlotRow(
        slot=part.window.slot.name,
        level_dba=round(part.level_dba, 2),
        with_bed_dba=round(sum_db(np.array([part.level_dba, sound.bed.level_dba])), 2),
        centroid_hz=round(part.centroid_hz, 1),
        peak_current_a={
            str(number): round(float(peak), 3)
            for number, peak in zip(solved.circuit.profile.cylinders, peaks, strict=True)
        },
        loudness_sone=None if sone is None else round(sone, 2),
        loudness_phon=None if sone is None else round(phon_of(sone), 1),
    )


def _loudness_sone(sound: Sound, index: int) -> float:
    window = sound.slots[index].window
    start, end = (round(moment_s * sound.rate_hz) for moment_s in (window.start_s, window.end_s))
    return loudness_sone(sound.samples[start:end].mean(axis=1) * FULL_SCALE_PA, sound.rate_hz)


def _requests(case: Case) -> list[Request]:
    """Return the readings of an inspection, cylinder by cylinder, from the module down to the injector."""
    return [
        request
        for number in case.profile.cylinders
        for request in (
            Request("pair", MODULE_CONNECTOR, "harness", number),
            Request("ground", MODULE_CONNECTOR, "harness", number),
            Request("pair", through_point(case.profile, number), "cover", number),
            Request("pair", plug_point(number), "injector", number),
            Request("trace", cylinder=number),
        )
    ]


def _reading_row(case: Case, work: Work, request: Request) -> ReadingRow:
    reading = measured(case.profile, case.faults, work, request, case.seed).reading
    return ReadingRow(
        instrument=reading.instrument,
        break_point=None if request.what == "trace" else request.point,
        side=Side.RETURN if request.what == "ground" else None,
        cylinder=request.cylinder,
        value=reading.value,
        unit=reading.unit,
        display=reading.display,
    )
