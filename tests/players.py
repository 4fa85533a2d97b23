"""Players for the window's tests: one that a test's clock drives, one that tears, one whose device goes away."""

from __future__ import annotations

import numpy as np

from trainer.errors import MissingHereError
from trainer.output.playback import Playback
from trainer.output.player import Player


class ClockedPlayer(Player):
    """Advances when a test calls `pass_time`; records every buffer with its first frame."""

    backend = "clocked"

    def __init__(self) -> None:
        self.heard: list[tuple[np.ndarray, int]] = []
        self.now: Playback | None = None

    def start(self, samples: np.ndarray, rate_hz: int, *, from_frame: int = 0, loop: bool = False) -> Playback:
        self.heard.append((samples, from_frame))
        self.now = Playback(samples, self.gain_db, from_frame=from_frame, loop=loop)
        return self.now

    def update(self, playback: Playback) -> None:
        """Do nothing: only `pass_time` moves a playback on."""

    def pass_time(self, seconds: float) -> None:
        if self.now is not None and not self.now.ended:
            self.now.take(np.empty((round(seconds * 48_000), 2), np.float32))


class TearingPlayer(ClockedPlayer):
    """Marks every playback as torn by an underflow."""

    def start(self, samples: np.ndarray, rate_hz: int, *, from_frame: int = 0, loop: bool = False) -> Playback:
        playback = super().start(samples, rate_hz, from_frame=from_frame, loop=loop)
        playback.void = True
        return playback


class VanishingPlayer(ClockedPlayer):
    """Its device can be pulled and put back."""

    gone = False

    def start(self, samples: np.ndarray, rate_hz: int, *, from_frame: int = 0, loop: bool = False) -> Playback:
        if self.gone:
            raise MissingHereError("device_gone")
        return super().start(samples, rate_hz, from_frame=from_frame, loop=loop)

    def pull(self) -> None:
        self.gone = True
        if self.now is not None:
            self.now.lose()
