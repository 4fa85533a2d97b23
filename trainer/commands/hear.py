"""hear: what the learner would hear, as a file."""

from __future__ import annotations

from pathlib import Path

from trainer.circuit.faults import Conditions
from trainer.commands.result import Result
from trainer.commands.slots import slot_number
from trainer.desk.case_source import find_case
from trainer.errors import WrongCallError
from trainer.instruments.bench import Work
from trainer.output.wav import write_wav
from trainer.practice.attempt.actions import solved_work, sound_hash
from trainer.sound.places import places_of
from trainer.sound.render import render


def hear_to_file(asked: str, output: Path, slot: str | None, stand: str, seed: int | None) -> Result:
    """Render a case as it comes into the bay; returns the schedule of the file and a hash of its samples."""
    case = find_case(asked).case
    if stand not in places_of(case.profile):
        raise WrongCallError("no_place", place=stand, places=", ".join(places_of(case.profile)))
    only = None if slot is None else [slot_number(slot, case.profile)]
    solved = solved_work(case.profile, case.faults, Work(conditions=Conditions(temperature_c=case.temperature_c)))
    sound = render(solved, stand, case.bed, case.seed if seed is None else seed, only)
    write_wav(output, sound.samples, sound.rate_hz)
    schedule = [
        {"slot": part.window.slot.name, "start_s": part.window.start_s, "end_s": part.window.end_s}
        for part in sound.slots
    ]
    length_s = len(sound.samples) / sound.rate_hz
    line = f"{output}: {length_s:.1f} s, {len(schedule)} slots, heard from the place {stand}"
    document = {"file": str(output), "seconds": length_s, "schedule": schedule, "sound": sound_hash(sound)}
    return Result((line,), document)
