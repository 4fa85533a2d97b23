"""Writes sounds to files on a machine without a sound device."""

from __future__ import annotations

from trainer.output.playback import Playback, PlaybackResult, Samples
from trainer.output.player import Player
from trainer.output.temporary_sounds import TemporarySounds
from trainer.output.wav import write_wav


class FilePlayer(Player):
    """Writes each sound to its own temporary file."""

    backend = "file"

    def __init__(self, files: TemporarySounds) -> None:
        self._files = files

    def start(self, samples: Samples, rate_hz: int, *, from_frame: int = 0, loop: bool = False) -> Playback:
        """Write the buffer to the run's next file; raises MissingHereError where it cannot be written."""
        self.written = self._files.next_path()
        write_wav(self.written, samples, rate_hz)
        playback = Playback(samples, from_frame=from_frame, loop=loop)
        playback.end()
        return playback

    def update(self, playback: Playback) -> None:
        """Do nothing: a file playback ends when it starts."""

    def play(self, samples: Samples, rate_hz: int) -> PlaybackResult:
        """Write the buffer and return its file."""
        self.start(samples, rate_hz)
        return PlaybackResult(self.backend, file=self.written)
