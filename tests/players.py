"""Players for the window's tests: one that a test's clock drives, one that tears, one whose device goes away."""

from __future__ import annotations

import numpy as np

from trainer.errors import MissingHereError
from trainer.output.player import Player
from trainer.output.playing import Playing


class ClockedPlayer(Player):
    """Moves on as a test says; keeps every buffer that it was given, with where it began."""

    way = "clocked"

    def __init__(self) -> None:
        self.heard: list[tuple[np.ndarray, int]] = []
        self.now: Playing | None = None

    def start(self, samples: np.ndarray, rate_hz: int, *, from_frame: int = 0, loop: bool = False) -> Playing:
        self.heard.append((samples, from_frame))
        self.now = Playing(samples, self.gain_db, from_frame=from_frame, loop=loop)
        return self.now

    def check(self, playing: Playing) -> None:
        """Nothing moves on by itself."""

    def pass_time(self, seconds: float) -> None:
        if self.now is not None and not self.now.ended:
            self.now.take(np.empty((round(seconds * 48_000), 2), np.float32))


class TearingPlayer(ClockedPlayer):
    """Every playing is torn."""

    def start(self, samples: np.ndarray, rate_hz: int, *, from_frame: int = 0, loop: bool = False) -> Playing:
        playing = super().start(samples, rate_hz, from_frame=from_frame, loop=loop)
        playing.void = True
        return playing


class VanishingPlayer(ClockedPlayer):
    """Its device can be pulled and put back."""

    gone = False

    def start(self, samples: np.ndarray, rate_hz: int, *, from_frame: int = 0, loop: bool = False) -> Playing:
        if self.gone:
            raise MissingHereError("device_gone")
        return super().start(samples, rate_hz, from_frame=from_frame, loop=loop)

    def pull(self) -> None:
        self.gone = True
        if self.now is not None:
            self.now.lose()
