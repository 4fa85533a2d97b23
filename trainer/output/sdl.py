"""Plays through the SDL mixer that comes with pygame-ce, where PortAudio is missing."""

from __future__ import annotations

import os
import time
from typing import TYPE_CHECKING

import numpy as np

from trainer.circuit.solve import SAMPLE_RATE_HZ
from trainer.errors import MissingHereError
from trainer.output.native_libraries import silence_c_stderr
from trainer.output.playback import Playback, Samples
from trainer.output.player import Player

if TYPE_CHECKING:
    from pygame.mixer import Channel

BUFFER_FRAMES = 2048


class SdlPlayer(Player):
    """Plays on the system's default device; SDL reports no position, so the clock gives it."""

    backend = "sdl"

    def __init__(self) -> None:
        """Open the mixer; raises MissingHereError."""
        os.environ.setdefault("PYGAME_HIDE_SUPPORT_PROMPT", "1")
        try:
            import pygame

            silence_c_stderr()
            pygame.mixer.init(SAMPLE_RATE_HZ, -16, 2, BUFFER_FRAMES, allowedchanges=0)
        except Exception as error:  # SDL answers with pygame.error, a broken install with ImportError
            raise MissingHereError("no_sdl_device") from error
        self._pygame = pygame
        self._playing: Playback | None = None

    def start(self, samples: Samples, rate_hz: int, *, from_frame: int = 0, loop: bool = False) -> Playback:
        """Start playing; raises MissingHereError where the device is gone."""
        if self._playing is not None and not self._playing.ended:
            self._playing.stop()
        buffer = np.empty((len(samples) - from_frame, samples.shape[1]), np.float32)
        Playback(samples, self.gain_db, from_frame=from_frame).take(buffer)
        whole = np.ascontiguousarray(np.round(np.clip(buffer, -1.0, 1.0) * 32767.0).astype(np.int16))
        try:
            channel = self._pygame.sndarray.make_sound(whole).play(loops=-1 if loop else 0)
        except self._pygame.error as error:
            raise MissingHereError("device_gone") from error
        if channel is None:
            raise MissingHereError("device_gone")
        self._playing = _ChannelPlayback(samples, channel, rate_hz, from_frame, loop=loop)
        return self._playing

    def update(self, playback: Playback) -> None:
        """Advance the position by the clock."""
        if isinstance(playback, _ChannelPlayback):
            playback.advance()

    def close(self) -> None:
        """Release the device."""
        self._pygame.mixer.quit()


class _ChannelPlayback(Playback):
    def __init__(self, samples: Samples, channel: Channel, rate_hz: int, from_frame: int, *, loop: bool) -> None:
        super().__init__(samples, from_frame=0, loop=loop)
        self.frame = self._from = from_frame
        self.channel, self._rate_hz = channel, rate_hz
        self._started_at = time.monotonic()

    def advance(self) -> None:
        gone = int((time.monotonic() - self._started_at) * self._rate_hz)
        length = len(self._samples) - self._from
        self.frame = self._from + (gone % length if self._loop else min(gone, length))
        self.ended = self.ended or not self.channel.get_busy()

    def stop(self) -> None:
        self.channel.fadeout(20)
        self.ended = True
