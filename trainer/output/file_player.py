"""Writes what would be heard into files, where a machine has no sound."""

from __future__ import annotations

from trainer.output.heard_files import HeardFiles
from trainer.output.player import Player
from trainer.output.playing import Played, Playing, Samples
from trainer.output.wav import write_wav


class FilePlayer(Player):
    """Writes each sound into a file, on machines without a sound device."""

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
        """Do nothing: a file is written at once."""

    def play(self, samples: Samples, rate_hz: int) -> Played:
        """Write the buffer and tell where."""
        self.start(samples, rate_hz)
        return Played(self.way, file=self.written)
