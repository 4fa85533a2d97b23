"""The interface of everything that plays a finished buffer."""

from __future__ import annotations

import time
from abc import ABC, abstractmethod
from pathlib import Path

from trainer.errors import MissingHereError
from trainer.output.playing import Played, Playing, Samples


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
