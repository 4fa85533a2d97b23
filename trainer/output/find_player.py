"""Find the best output: PortAudio, else the SDL mixer, else files."""

from __future__ import annotations

import contextlib

from trainer.errors import MissingHereError
from trainer.output.file_player import FilePlayer
from trainer.output.player import Player
from trainer.output.portaudio import PortAudioPlayer, rescan_devices
from trainer.output.sdl import SdlPlayer
from trainer.output.temporary_sounds import TemporarySounds


def find_player(device: str | None, files: TemporarySounds) -> tuple[Player, list[MissingHereError]]:
    """Return the best player available now, and the error of each better one; no stream may be open."""
    with contextlib.suppress(MissingHereError):
        rescan_devices()  # PortAudio sees a newly plugged device or a restarted sound server only after this
    missing: list[MissingHereError] = []
    for make in (lambda: PortAudioPlayer(device), SdlPlayer):
        try:
            return make(), missing
        except MissingHereError as error:
            missing.append(error)
    return FilePlayer(files), missing
