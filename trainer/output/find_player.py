"""Find the best output: PortAudio, else the SDL mixer, else files."""

from __future__ import annotations

import contextlib

from trainer.errors import MissingHereError
from trainer.output.file_player import FilePlayer
from trainer.output.heard_files import HeardFiles
from trainer.output.player import Player
from trainer.output.portaudio import PortAudioPlayer, look_again
from trainer.output.sdl import SdlPlayer


def find_player(device: str | None, files: HeardFiles) -> tuple[Player, list[MissingHereError]]:
    """Return the best output available now, and what each better one lacks; no stream may be open."""
    with contextlib.suppress(MissingHereError):
        look_again()  # a device that was plugged in since, or a sound server that is back, is found only so
    missing: list[MissingHereError] = []
    for make in (lambda: PortAudioPlayer(device), SdlPlayer):
        try:
            return make(), missing
        except MissingHereError as error:
            missing.append(error)
    return FilePlayer(files), missing
