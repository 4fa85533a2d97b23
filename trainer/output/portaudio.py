"""Plays through PortAudio: one stream stays open, so that a sound starts at once; its callback only copies."""

from __future__ import annotations

import time
from types import ModuleType
from typing import Protocol

from trainer.circuit.solve import SAMPLE_RATE_HZ
from trainer.errors import MissingHereError
from trainer.output.native_libraries import alsa_is_broken, silence_c_stderr
from trainer.output.playback import Playback, Samples
from trainer.output.player import Player

LATENCY_S = 0.045
"""Latency requested from the device; docs/decisions.md has the measurements behind it."""

SILENT_S = 3.0
"""A stream without a callback for so long has lost its device; a sound server may take a second to wake."""


class _CallbackFlags(Protocol):
    """The library's flags for one callback, as far as they are used; it has no type stubs."""

    output_underflow: bool


class _Stream(Protocol):
    """The library's output stream, as far as it is used; it has no type stubs."""

    active: bool

    def start(self) -> None: ...

    def abort(self, ignore_errors: bool = True) -> None: ...

    def close(self, ignore_errors: bool = True) -> None: ...


class PortAudioPlayer(Player):
    """Plays on a device by its name, or on the system's default."""

    backend = "portaudio"

    def __init__(self, device: str | None = None) -> None:
        """Check that the library and an output are there; raises MissingHereError."""
        self._sounddevice, self._device = _library(), device
        try:
            self._sounddevice.check_output_settings(
                device=device, channels=2, samplerate=SAMPLE_RATE_HZ, dtype="float32"
            )
        except Exception as error:  # the library raises its own errors and ValueError for an unknown device
            raise MissingHereError("no_portaudio_device") from error
        self._stream: _Stream | None = None
        self._playing: Playback | None = None
        self._fading: Playback | None = None
        self._called_at = 0.0

    def prepare(self) -> None:
        """Open the stream, so that the next start plays without delay; raises MissingHereError."""
        if self._stream is not None and self._stream.active:
            return
        self.close()
        try:
            self._stream = self._sounddevice.OutputStream(
                samplerate=SAMPLE_RATE_HZ, channels=2, dtype="float32", device=self._device,
                latency=LATENCY_S, callback=self._fill, finished_callback=self._finished,
            )  # fmt: skip
            self._stream.start()
        except (self._sounddevice.PortAudioError, ValueError) as error:  # ValueError: no device of this name any more
            self._stream = None
            raise MissingHereError("device_gone") from error
        self._called_at = time.monotonic()

    def start(self, samples: Samples, rate_hz: int, *, from_frame: int = 0, loop: bool = False) -> Playback:
        """Start playing; raises MissingHereError where the device is gone."""
        if rate_hz != SAMPLE_RATE_HZ:
            raise ValueError(f"sounds are rendered at {SAMPLE_RATE_HZ} Hz, found {rate_hz}")
        self.prepare()
        playback = Playback(samples, self.gain_db, from_frame=from_frame, loop=loop)
        # what still plays fades out before the new one comes in
        before = self._playing
        self._fading = before if before is not None and not before.ended else None
        if self._fading is not None:
            self._fading.stop()
        self._playing, self._called_at = playback, time.monotonic()
        return playback

    def update(self, playback: Playback) -> None:
        """Mark the playback as lost if the stream has stopped calling back."""
        stream = self._stream
        if stream is None or not stream.active or time.monotonic() - self._called_at > SILENT_S:
            playback.lose()

    def close(self) -> None:
        """Release the device."""
        if self._stream is not None:
            self._stream.abort(ignore_errors=True)
            self._stream.close(ignore_errors=True)
        self._stream = None

    def _fill(self, out: Samples, _frames: int, _time: object, status: _CallbackFlags) -> None:
        self._called_at = time.monotonic()
        fading, playback = self._fading, self._playing
        if fading is not None and not fading.ended:
            fading.take(out)
            return
        if playback is None:
            out[:] = 0.0
            return
        # the first block of a playback may be late for what came before it
        if status.output_underflow and not playback.ended and playback.blocks:
            playback.void = True
        playback.take(out)

    def _finished(self) -> None:
        if self._playing is not None:
            self._playing.lose()


def _library() -> ModuleType:
    silence_c_stderr()
    if alsa_is_broken():
        raise MissingHereError("alsa_broken")
    try:
        import sounddevice
    except (ImportError, OSError) as error:
        raise MissingHereError("no_portaudio") from error
    except Exception as error:  # the library starts when it is imported, and raises its own error where it cannot
        raise MissingHereError("no_portaudio_device") from error
    library: ModuleType = sounddevice
    return library


def device_names() -> tuple[str, ...]:
    """Return the output devices by name, with their sound system where a name is there twice.

    Raises MissingHereError without the library, or where it could not start.
    """
    library = _library()
    try:
        systems = [one["name"] for one in library.query_hostapis()]
        found = [one for one in library.query_devices() if one["max_output_channels"] >= 2]
    except library.PortAudioError as error:
        raise MissingHereError("no_portaudio_device") from error
    names = [one["name"] for one in found]
    shown = (
        one["name"] if names.count(one["name"]) == 1 else f"{one['name']}, {systems[one['hostapi']]}" for one in found
    )
    return tuple(dict.fromkeys(shown))


def rescan_devices() -> None:
    """Restart the library, which looks for devices only when it starts; no stream may be open.

    Raises MissingHereError where it cannot start.
    """
    library = _library()
    try:
        if library._initialized:
            library._terminate()
        library._initialize()
    except library.PortAudioError as error:
        raise MissingHereError("no_portaudio_device") from error
