"""Writes 24-bit sound files."""

from __future__ import annotations

import wave
from pathlib import Path
from typing import IO

import numpy as np
from numpy.typing import NDArray

from trainer.cases.whole_file import write_whole
from trainer.errors import MissingHereError


def to_pcm24(samples: NDArray[np.float32]) -> bytes:
    """Return samples of full scale 1.0 as little-endian 24-bit values."""
    whole = np.clip(np.round(samples.astype(np.float64) * 2**23), -(2**23), 2**23 - 1).astype("<i4")
    return whole.reshape(-1).view(np.uint8).reshape(-1, 4)[:, :3].tobytes()


def write_wav(path: Path, samples: NDArray[np.float32], rate_hz: int) -> None:
    """Write a stereo file of shape (frame, channel); raises MissingHereError where it cannot be written."""

    def write(part: IO[bytes]) -> None:
        with wave.open(part, "wb") as file:
            file.setnchannels(samples.shape[1])
            file.setsampwidth(3)
            file.setframerate(rate_hz)
            file.writeframes(to_pcm24(samples))

    try:
        write_whole(path, write)
    except OSError as error:
        raise MissingHereError("file_unwritable", path=path, reason=error.strerror) from error
