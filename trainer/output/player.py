"""Plays a finished buffer: PortAudio, else the SDL mixer, else a file whose path is told."""

from __future__ import annotations

import os
import tempfile
import time
from abc import ABC, abstractmethod
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path

from trainer.errors import MissingHereError
from trainer.output.playing import Played, Playing, Samples
from trainer.output.wav import write_wav


@contextmanager
def quiet_stderr() -> Iterator[None]:
    """Keep the sound libraries' own chatter off the terminal while a device is tried; our words say what is wrong."""
    try:
        kept = os.dup(2)
    except OSError:
        yield
        return
    try:
        with Path(os.devnull).open("wb") as nowhere:
            os.dup2(nowhere.fileno(), 2)
        yield
    finally:
        os.dup2(kept, 2)
        os.close(kept)


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

    def __init__(self, folder: Path | None = None) -> None:
        self._folder = folder
        self._count = 0

    def start(self, samples: Samples, rate_hz: int, *, from_frame: int = 0, loop: bool = False) -> Playing:
        """Write the buffer to the next file in the folder (a temporary one if none was given)."""
        if self._folder is None:
            self._folder = Path(tempfile.mkdtemp(prefix="injector-trainer-"))
        self._count += 1
        self.written = self._folder / f"heard_{self._count:03d}.wav"
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


def best_player(device: str | None, folder: Path | None, told: Callable[[MissingHereError], None]) -> Player:
    """Return the first way that works; tells each one that does not, with its mend."""
    from trainer.output.portaudio import PortAudioPlayer
    from trainer.output.sdl import SdlPlayer

    for make in (lambda: PortAudioPlayer(device), SdlPlayer):
        try:
            return make()
        except MissingHereError as error:
            told(error)
    return FilePlayer(folder)
