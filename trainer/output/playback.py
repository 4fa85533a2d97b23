"""The playback of one buffer: the position that a device's callback advances, and how the playback ended."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

import numpy as np

from trainer.arrays import Floats32

Samples = Floats32

FADE_FRAMES = 960
"""Length of the fade at a stop and at a start in the middle: 20 ms at 48 kHz, so that neither clicks."""


@dataclass(frozen=True, slots=True)
class PlaybackResult:
    """How a playback ended: its backend, whether it is void (an underflow tore it), and the file that was written."""

    backend: str
    void: bool = False
    file: Path | None = None


class Playback:
    """Hands a finished buffer, float32 of shape (frame, channel), to a device's thread block by block.

    `void` is set when an underflow tore the sound, `lost` when the device went away before the end; `blocks` counts the
    blocks taken so far.
    """

    def __init__(self, samples: Samples, gain_db: float = 0.0, *, from_frame: int = 0, loop: bool = False) -> None:
        if gain_db > 0.0:
            raise ValueError(f"a buffer is never made louder than it was rendered, found {gain_db:+.1f} dB")
        self._samples = samples if gain_db == 0.0 else samples * np.float32(10.0 ** (gain_db / 20.0))
        self._loop = loop
        self.frame = from_frame
        self.blocks = 0
        self.ended = self.void = self.lost = False
        # a start in the middle fades in; the beginning of a buffer has its own ramp
        self._starting = 0 if from_frame else FADE_FRAMES
        self._stopping: int | None = None

    def take(self, out: Samples) -> None:
        """Fill a device's block with the next frames, and with silence after the end."""
        filled = 0
        while filled < len(out) and not self.ended:
            part = self._samples[self.frame : self.frame + len(out) - filled]
            out[filled : filled + len(part)] = part
            self._fade(out[filled : filled + len(part)])
            filled += len(part)
            self.frame += len(part)
            if self.frame >= len(self._samples):
                self.ended = self.ended or not self._loop
                self.frame = len(self._samples) if self.ended else 0
        out[filled:] = 0.0
        self.blocks += 1

    def _fade(self, part: Samples) -> None:
        steps = np.arange(len(part), dtype=np.float32)[:, None]
        if self._starting < FADE_FRAMES:
            part *= np.clip((self._starting + steps) / FADE_FRAMES, 0.0, 1.0)
            self._starting += len(part)
        if self._stopping is not None:
            part *= np.clip(1.0 - (self._stopping + steps) / FADE_FRAMES, 0.0, 1.0)
            self._stopping += len(part)
            self.ended = self._stopping >= FADE_FRAMES

    def stop(self) -> None:
        """Fade out and end."""
        if self._stopping is None:
            self._stopping = 0

    def end(self) -> None:
        """End at once, without a fade."""
        self.ended = True

    def lose(self) -> None:
        """Mark the playback as lost because the device went away; the rest is not charged."""
        if not self.ended:
            self.lost = self.ended = True
