"""The times of the slots in a rendered sound."""

from __future__ import annotations

from trainer.commands.call.json_document import JsonValue
from trainer.sound.render import Sound


def schedule_of(sound: Sound) -> list[dict[str, JsonValue]]:
    """Return each slot's name, and its start and end in seconds from the beginning of the file."""
    return [
        {"slot": part.window.slot.name, "start_s": part.window.start_s, "end_s": part.window.end_s}
        for part in sound.slots
    ]
