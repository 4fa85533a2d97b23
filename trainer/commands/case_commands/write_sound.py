"""Writes what the learner would hear to a sound file."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import numpy as np

from trainer.circuit.fault import Conditions
from trainer.commands.call.json_document import JsonValue
from trainer.commands.call.result import Result
from trainer.commands.case_commands.schedule import schedule_of
from trainer.commands.case_commands.slot_option import slot_number
from trainer.desk.case_source import find_case
from trainer.errors import WrongCallError
from trainer.instruments.bench import Work
from trainer.output.wav import write_wav
from trainer.practice.attempt.actions import solved_work, sound_hash
from trainer.sound.listeners import LISTENERS, OUTPUTS, played_by
from trainer.sound.places import places_of
from trainer.sound.render import PEAK_CEILING, render
from trainer.words import text


def write_sound(
    named: str, output: Path, slot: str | None, place: str, seed: int | None, listener: str | None = None
) -> Result:
    """Render a case as it comes into the bay; the result has the file's schedule and a hash of its samples.

    A listener of `OUTPUTS` makes it what that loudspeaker or those headphones play: for good ones to listen with.
    Raises WrongCallError for a slot or a place that the engine does not have, and for a listener outside `OUTPUTS`.
    """
    case = find_case(named).case
    if place not in places_of(case.profile):
        raise WrongCallError("no_place", place=place, places=", ".join(places_of(case.profile)))
    if listener is not None and listener not in OUTPUTS:
        raise WrongCallError("no_output", listener=listener, outputs=", ".join(OUTPUTS))
    only = None if slot is None else [slot_number(slot, case.profile)]
    solved = solved_work(case.profile, case.faults, Work(conditions=Conditions(temperature_c=case.temperature_c)))
    sound = render(solved, place, case.bed, case.seed if seed is None else seed, only)
    if listener is not None:
        played = played_by(LISTENERS[listener].output, sound.samples, sound.rate_hz)
        sound = replace(sound, samples=np.clip(played, -PEAK_CEILING, PEAK_CEILING))
    write_wav(output, sound.samples, sound.rate_hz)
    length_s = len(sound.samples) / sound.rate_hz
    line = text("hear.written", file=output, seconds=length_s, n=len(sound.slots), place=place)
    if listener is not None:
        line += f", {text('hear.as_played', listener=text(f'fair.listener.{listener}'))}"
    document: dict[str, JsonValue] = {
        "file": str(output),
        "seconds": length_s,
        "listener": listener,
        "schedule": schedule_of(sound),
        "sound": sound_hash(sound),
    }
    return Result((line,), document)
