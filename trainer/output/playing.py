"""One buffer on its way out: a place in it that a device's callback moves on, and how it ended."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

import numpy as np

from trainer.arrays import Floats32

Samples = Floats32

FADE_FRAMES = 960
"""How long a start in the middle and a stop take to fade: 20 ms at 48 kHz, so that neither clicks."""


@dataclass(frozen=True, slots=True)
class Played:
    """How a playing ended: by which way, whether it is void (an underflow tore it), and the file if there is one."""

    way: str
    void: bool = False
    file: Path | None = None


class Playing:
    """A finished buffer, float32 of shape (frame, channel), being played; a device's thread takes from it.

    `void` says that an underflow tore it, `lost` that its device went away before its end; `blocks` counts what a
    device has taken.
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
        """Fill a device's block with what comes next, and silence after the end."""
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
        """End at once, as a device does that has nothing more to take."""
        self.ended = True

    def lose(self) -> None:
        """Note that the device went away; nothing is charged for what was not heard."""
        if not self.ended:
            self.lost = self.ended = True
