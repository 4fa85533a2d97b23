"""The interface of everything that plays a finished buffer."""

from __future__ import annotations

import time
from abc import ABC, abstractmethod
from pathlib import Path

from trainer.errors import MissingHereError
from trainer.output.playback import Playback, PlaybackResult, Samples


class Player(ABC):
    """Plays one finished buffer at a time: float32, shape (frame, channel), full scale 1.0, never amplified.

    `backend` names the output: `portaudio`, `sdl` or `file`. `gain_db` is the station's level, at most 0. `written` is
    the last file written, None for a player that writes none.
    """

    backend: str
    gain_db: float = 0.0
    written: Path | None = None

    @abstractmethod
    def start(self, samples: Samples, rate_hz: int, *, from_frame: int = 0, loop: bool = False) -> Playback:
        """Start playing; raises MissingHereError where the device is gone."""

    @abstractmethod
    def update(self, playback: Playback) -> None:
        """Refresh the position and the end of a playback; call it regularly while it runs."""

    def prepare(self) -> None:  # noqa: B027  # most players have nothing to prepare
        """Open the device, so that the next start plays without delay."""

    def close(self) -> None:  # noqa: B027  # nor anything to release
        """Release the device."""

    def play(self, samples: Samples, rate_hz: int) -> PlaybackResult:
        """Play to the end; raises MissingHereError where the device goes away."""
        playback = self.start(samples, rate_hz)
        try:
            while not playback.ended:
                time.sleep(0.02)
                self.update(playback)
        except KeyboardInterrupt:
            playback.stop()
            raise
        if playback.lost:
            raise MissingHereError("device_gone")
        time.sleep(TAIL_S)
        return PlaybackResult(self.backend, playback.void)


TAIL_S = 0.1
"""How long to wait for the last block, which holds only the fading bed: no audible sound is cut."""
