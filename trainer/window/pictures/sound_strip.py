"""The strip of slots along time as a node."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from functools import partial

from trainer.circuit.drive import slots_of
from trainer.circuit.profile import Profile
from trainer.sound.render import Sound, timeline_of
from trainer.window.kit.nodes import Box, Node, spot
from trainer.window.pictures.pictures import StripPicture
from trainer.words import text

STRIP_SIZE = (100.0, 13.0)
BLOCK_TOP, BLOCK_BOTTOM = 0.8, 10.2


def strip_of(profile: Profile, **shown: object) -> StripPicture:
    """Return the strip of a whole test, from the schedule alone."""
    windows, length_s = timeline_of(profile.schedule, slots_of(profile))
    slots = tuple((window.slot.number, window.start_s, window.end_s) for window in windows)
    return StripPicture(slots, length_s, **shown)  # type: ignore[arg-type]


def strip_of_sound(sound: Sound, **shown: object) -> StripPicture:
    """Return the strip of a rendered sound."""
    slots = tuple((one.window.slot.number, one.window.start_s, one.window.end_s) for one in sound.slots)
    return StripPicture(slots, len(sound.samples) / sound.rate_hz, **shown)  # type: ignore[arg-type]


def starts_of(sound: Sound) -> tuple[tuple[int, float], ...]:
    """Return where a sound's slots start, by number, in second."""
    return tuple((one.window.slot.number, one.window.start_s) for one in sound.slots)


def strip_node(picture: StripPicture, name: str, hear: Callable[[int], None] | None, least: float = 6.5) -> Node:
    """Return a strip; each block can be acted on where `hear` is given."""
    spots: Sequence[Node] = ()
    if hear is not None:
        spots = [
            spot(
                f"{name}.{number}",
                text("spot.slot_all") if number == 0 else text("spot.slot", number=number),
                block_of(picture, start, end),
                partial(hear, number),
                chosen=number in picture.marked,
            )
            for number, start, end in picture.slots
        ]
    return Node("picture", name, children=tuple(spots), picture=picture, size=STRIP_SIZE, least=least)


def block_of(picture: StripPicture, start_s: float, end_s: float) -> Box:
    """Return where a stretch of time lies on the strip."""
    scale = STRIP_SIZE[0] / picture.length_s
    return Box(start_s * scale, BLOCK_TOP, (end_s - start_s) * scale, BLOCK_BOTTOM - BLOCK_TOP)
