"""Writes what the learner would hear to a sound file."""

from __future__ import annotations

from pathlib import Path

from trainer.circuit.faults import Conditions
from trainer.commands.call.json_document import JsonValue
from trainer.commands.call.result import Result
from trainer.commands.case_commands.schedule import schedule_of
from trainer.commands.case_commands.slot_option import slot_number
from trainer.desk.case_source import find_case
from trainer.errors import WrongCallError
from trainer.instruments.bench import Work
from trainer.output.wav import write_wav
from trainer.practice.attempt.actions import solved_work, sound_hash
from trainer.sound.places import places_of
from trainer.sound.render import render


def write_sound(named: str, output: Path, slot: str | None, place: str, seed: int | None) -> Result:
    """Render a case as it comes into the bay; the result has the file's schedule and a hash of its samples.

    Raises WrongCallError for a slot or a place that the engine does not have.
    """
    case = find_case(named).case
    if place not in places_of(case.profile):
        raise WrongCallError("no_place", place=place, places=", ".join(places_of(case.profile)))
    only = None if slot is None else [slot_number(slot, case.profile)]
    solved = solved_work(case.profile, case.faults, Work(conditions=Conditions(temperature_c=case.temperature_c)))
    sound = render(solved, place, case.bed, case.seed if seed is None else seed, only)
    write_wav(output, sound.samples, sound.rate_hz)
    length_s = len(sound.samples) / sound.rate_hz
    line = f"{output}: {length_s:.1f} s, {len(sound.slots)} slots, heard from the place {place}"
    document: dict[str, JsonValue] = {
        "file": str(output),
        "seconds": length_s,
        "schedule": schedule_of(sound),
        "sound": sound_hash(sound),
    }
    return Result((line,), document)
