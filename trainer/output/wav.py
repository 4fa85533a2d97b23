"""Writes 24-bit files whole: to a temporary name, synchronised, then renamed."""

from __future__ import annotations

import os
import tempfile
import wave
from pathlib import Path

import numpy as np
from numpy.typing import NDArray

from trainer.errors import MissingHereError


def to_pcm24(samples: NDArray[np.float32]) -> bytes:
    """Return samples of full scale 1.0 as little-endian 24-bit values."""
    whole = np.clip(np.round(samples.astype(np.float64) * 2**23), -(2**23), 2**23 - 1).astype("<i4")
    return whole.reshape(-1).view(np.uint8).reshape(-1, 4)[:, :3].tobytes()


def write_wav(path: Path, samples: NDArray[np.float32], rate_hz: int) -> None:
    """Write a stereo file of shape (frame, channel); raises MissingHereError where it cannot be written."""
    try:
        with tempfile.NamedTemporaryFile(dir=path.parent, suffix=".part", delete=False) as part:
            try:
                with wave.open(part, "wb") as file:
                    file.setnchannels(samples.shape[1])
                    file.setsampwidth(3)
                    file.setframerate(rate_hz)
                    file.writeframes(to_pcm24(samples))
                part.flush()
                os.fsync(part.fileno())
                Path(part.name).replace(path)
            except BaseException:
                Path(part.name).unlink(missing_ok=True)
                raise
    except OSError as error:
        raise MissingHereError("file_unwritable", path=path, reason=error.strerror) from error
