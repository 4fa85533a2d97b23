"""Plays a finished buffer: PortAudio, else the SDL mixer, else a file whose path is told."""

from __future__ import annotations

import contextlib
import time
from abc import ABC, abstractmethod
from pathlib import Path

from trainer.errors import MissingHereError
from trainer.output.heard_files import HeardFiles
from trainer.output.playing import Played, Playing, Samples
from trainer.output.wav import write_wav


class Player(ABC):
    """Plays one finished buffer at a time: float32, shape (frame, channel), full scale 1.0, never above its own level.

    `gain_db` is the station's level, at most 0; `written` the file that was last written, where that is the way out.
    """

    way: str
    gain_db: float = 0.0
    written: Path | None = None

    @abstractmethod
    def start(self, samples: Samples, rate_hz: int, *, from_frame: int = 0, loop: bool = False) -> Playing:
        """Begin to play; raises MissingHereError where the device is gone."""

    @abstractmethod
    def check(self, playing: Playing) -> None:
        """Bring a playing up to date; a face asks for it now and then."""

    def ready(self) -> None:  # noqa: B027  # most ways out have nothing to prepare
        """Prepare the device, so that the next start has nothing to wait for."""

    def close(self) -> None:  # noqa: B027  # nor anything to let go
        """Let the device go."""

    def play(self, samples: Samples, rate_hz: int) -> Played:
        """Play to the end; raises MissingHereError where the device goes away."""
        playing = self.start(samples, rate_hz)
        try:
            while not playing.ended:
                time.sleep(0.02)
                self.check(playing)
        except KeyboardInterrupt:
            playing.stop()
            raise
        if playing.lost:
            raise MissingHereError("device_gone")
        time.sleep(TAIL_S)
        return Played(self.way, playing.void)


TAIL_S = 0.1
"""What a device may still have to play of the last block: bed that fades, so that nothing heard is cut."""


class FilePlayer(Player):
    """Writes what would be heard; for machines without sound."""

    way = "file"

    def __init__(self, files: HeardFiles) -> None:
        self._files = files

    def start(self, samples: Samples, rate_hz: int, *, from_frame: int = 0, loop: bool = False) -> Playing:
        """Write the buffer to the run's next file; raises MissingHereError where it cannot be written."""
        self.written = self._files.next_path()
        write_wav(self.written, samples, rate_hz)
        playing = Playing(samples, from_frame=from_frame, loop=loop)
        playing.end()
        return playing

    def check(self, playing: Playing) -> None:
        """Nothing moves on: a file is written at once."""

    def play(self, samples: Samples, rate_hz: int) -> Played:
        """Write the buffer and tell where."""
        self.start(samples, rate_hz)
        return Played(self.way, file=self.written)


def find_player(device: str | None, files: HeardFiles) -> tuple[Player, list[MissingHereError]]:
    """Return the best way out there is now, and what is missing for each better one; no stream may be open."""
    from trainer.output.portaudio import PortAudioPlayer, look_again
    from trainer.output.sdl import SdlPlayer

    with contextlib.suppress(MissingHereError):
        look_again()  # a device that was plugged in since, or a sound server that is back, is found only so
    missing: list[MissingHereError] = []
    for make in (lambda: PortAudioPlayer(device), SdlPlayer):
        try:
            return make(), missing
        except MissingHereError as error:
            missing.append(error)
    return FilePlayer(files), missing
