"""Writes 24-bit sound files."""

from __future__ import annotations

import io
import wave
from pathlib import Path

import numpy as np

from trainer.arrays import Floats32
from trainer.cases.files.whole_file import write_bytes


def to_pcm24(samples: Floats32) -> bytes:
    """Return samples of full scale 1.0 as little-endian 24-bit values."""
    whole = np.clip(np.round(samples.astype(np.float64) * 2**23), -(2**23), 2**23 - 1).astype("<i4")
    return whole.reshape(-1).view(np.uint8).reshape(-1, 4)[:, :3].tobytes()


def wav_bytes(samples: Floats32, rate_hz: int) -> bytes:
    """Return a stereo file of samples of shape (frame, channel)."""
    whole = io.BytesIO()
    with wave.open(whole, "wb") as file:
        file.setnchannels(samples.shape[1])
        file.setsampwidth(3)
        file.setframerate(rate_hz)
        file.writeframes(to_pcm24(samples))
    return whole.getvalue()


def write_wav(path: Path, samples: Floats32, rate_hz: int) -> None:
    """Write a stereo file of shape (frame, channel); raises MissingHereError where it cannot be written."""
    write_bytes(path, wav_bytes(samples, rate_hz))
