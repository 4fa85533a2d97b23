"""Plays a finished buffer: PortAudio, else the SDL mixer, else a file whose path is told."""

from __future__ import annotations

import os
import tempfile
import threading
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path
from typing import Any, Protocol

import numpy as np
from numpy.typing import NDArray

from trainer.errors import MissingHereError
from trainer.output.wav import write_wav

Samples = NDArray[np.float32]


@contextmanager
def _quiet_stderr() -> Iterator[None]:
    """Keep the sound libraries' own chatter off the terminal while a device is tried; our words say what is wrong."""
    try:
        kept = os.dup(2)
    except OSError:
        yield
        return
    try:
        with Path(os.devnull).open("wb") as nowhere:
            os.dup2(nowhere.fileno(), 2)
        yield
    finally:
        os.dup2(kept, 2)
        os.close(kept)


@dataclass(frozen=True, slots=True)
class Played:
    """How a playing ended: by which way, whether it is void (an underflow tore it), and the file if there is one."""

    way: str
    void: bool = False
    file: Path | None = None


class Player(Protocol):
    """Plays one finished buffer: float32, shape (frame, channel), full scale 1.0; returns when it has ended."""

    way: str

    def play(self, samples: Samples, rate_hz: int) -> Played:
        """Play to the end; raises MissingHereError where the device is gone."""
        ...


class PortAudioPlayer:
    """Plays through PortAudio; the callback only copies."""

    way = "portaudio"

    def __init__(self, device: str | None = None) -> None:
        """Check that the library and an output are there; raises MissingHereError."""
        try:
            with _quiet_stderr():
                import sounddevice
        except (ImportError, OSError) as error:
            raise MissingHereError("no_portaudio") from error
        self._sounddevice, self._device = sounddevice, device
        try:
            with _quiet_stderr():
                sounddevice.check_output_settings(device=device, channels=2, samplerate=48_000, dtype="float32")
        except Exception as error:  # the library raises its own errors and ValueError for an unknown device
            raise MissingHereError("no_portaudio_device") from error

    def play(self, samples: Samples, rate_hz: int) -> Played:
        """Play to the end; an underflow makes the playing void."""
        done, torn, place = threading.Event(), [False], [0]

        def callback(out: Samples, frames: int, _time: object, status: Any) -> None:
            torn[0] = torn[0] or bool(status.output_underflow)
            part = samples[place[0] : place[0] + frames]
            out[: len(part)] = part
            out[len(part) :] = 0.0
            place[0] += len(part)
            if len(part) < frames:
                raise self._sounddevice.CallbackStop

        try:
            stream = self._sounddevice.OutputStream(
                samplerate=rate_hz, channels=2, dtype="float32", device=self._device,
                latency="high", callback=callback, finished_callback=done.set,
            )  # fmt: skip
            with stream:
                while not done.wait(0.1):
                    pass
        except self._sounddevice.PortAudioError as error:
            raise MissingHereError("device_gone") from error
        return Played(self.way, torn[0])


class SdlPlayer:
    """Plays through the SDL mixer that comes with pygame-ce."""

    way = "sdl"

    def __init__(self) -> None:
        """Open the mixer; raises MissingHereError."""
        os.environ.setdefault("PYGAME_HIDE_SUPPORT_PROMPT", "1")
        try:
            import pygame

            with _quiet_stderr():
                pygame.mixer.init(48_000, -16, 2, 2048, allowedchanges=0)
        except Exception as error:  # SDL answers with pygame.error, a broken install with ImportError
            raise MissingHereError("no_sdl_device") from error
        self._pygame = pygame

    def play(self, samples: Samples, rate_hz: int) -> Played:
        """Play to the end."""
        whole = np.ascontiguousarray(np.round(np.clip(samples, -1.0, 1.0) * 32767.0).astype(np.int16))
        channel = self._pygame.sndarray.make_sound(whole).play()
        try:
            while channel is not None and channel.get_busy():
                self._pygame.time.wait(20)
        finally:
            self._pygame.mixer.stop()
        return Played(self.way)


class FilePlayer:
    """Writes what would be heard; for machines without sound."""

    way = "file"

    def __init__(self, folder: Path | None = None) -> None:
        self._folder = folder
        self._count = 0

    def play(self, samples: Samples, rate_hz: int) -> Played:
        """Write the buffer to the next file in the folder (a temporary one if none was given)."""
        if self._folder is None:
            self._folder = Path(tempfile.mkdtemp(prefix="injector-trainer-"))
        self._count += 1
        path = self._folder / f"heard_{self._count:03d}.wav"
        write_wav(path, samples, rate_hz)
        return Played(self.way, file=path)


def best_player(device: str | None, folder: Path | None, told: Callable[[MissingHereError], None]) -> Player:
    """Return the first way that works; tells each one that does not, with its mend."""
    for make in (lambda: PortAudioPlayer(device), SdlPlayer):
        try:
            return make()
        except MissingHereError as error:
            told(error)
    return FilePlayer(folder)
