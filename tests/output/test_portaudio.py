"""PortAudio's stream with a library in the test's hands: what a callback does, what a device can do to it."""

from __future__ import annotations

from types import SimpleNamespace

import numpy as np
import pytest

from trainer.errors import MissingHereError
from trainer.output import portaudio
from trainer.output.portaudio import PortAudioPlayer, device_names, rescan_devices


class FakeLibrary:
    """Streams that call back when the test says so."""

    class PortAudioError(Exception):
        pass

    def __init__(self) -> None:
        self.streams: list[FakeStream] = []
        self.refuses = False
        self._initialized = 0

    def check_output_settings(self, **_asked: object) -> None:
        if self.refuses:
            raise ValueError("No output device matching")

    def OutputStream(self, **asked: object) -> FakeStream:  # noqa: N802  # the library's name
        if self.refuses:
            raise self.PortAudioError("gone") if asked["device"] is None else ValueError("No output device matching")
        self.streams.append(FakeStream(asked))
        return self.streams[-1]

    def _initialize(self) -> None:
        self._initialized += 1

    def query_hostapis(self) -> list[dict[str, str]]:
        return [{"name": "one system"}, {"name": "another"}]

    def query_devices(self) -> list[dict[str, object]]:
        return [
            {"name": "headset", "max_output_channels": 2, "hostapi": 0},
            {"name": "headset", "max_output_channels": 2, "hostapi": 1},
            {"name": "speakers", "max_output_channels": 8, "hostapi": 0},
            {"name": "microphone", "max_output_channels": 0, "hostapi": 0},
        ]


class FakeStream:
    def __init__(self, asked: dict[str, object]) -> None:
        self.asked, self.active = asked, False

    def start(self) -> None:
        self.active = True

    def abort(self, ignore_errors: bool = True) -> None:
        self.active = False

    close = abort

    def call(self, frames: int = 512, *, torn: bool = False) -> np.ndarray:
        out = np.full((frames, 2), 9.0, np.float32)
        self.asked["callback"](out, frames, None, SimpleNamespace(output_underflow=torn))  # type: ignore[operator]
        return out

    def vanish(self) -> None:
        self.active = False
        self.asked["finished_callback"]()  # type: ignore[operator]


@pytest.fixture
def library(monkeypatch: pytest.MonkeyPatch) -> FakeLibrary:
    fake = FakeLibrary()
    monkeypatch.setattr(portaudio, "_library", lambda: fake)
    return fake


SOUND = np.random.default_rng(2).normal(0.0, 0.2, size=(4096, 2)).astype(np.float32)


def test_an_idle_stream_is_silence_and_a_started_one_the_buffer(library: FakeLibrary) -> None:
    player = PortAudioPlayer()
    player.prepare()
    (stream,) = library.streams
    assert not stream.call().any()
    playback = player.start(SOUND, 48_000)
    assert np.array_equal(np.concatenate([stream.call() for _block in range(8)]), SOUND)
    assert playback.ended
    assert not playback.void
    assert len(library.streams) == 1  # one stream for all


def test_an_underflow_makes_a_playing_void_but_not_the_next_one(library: FakeLibrary) -> None:
    player = PortAudioPlayer()
    playback = player.start(SOUND, 48_000)
    stream = library.streams[0]
    stream.call(torn=True)  # what came before was late, not this
    assert not playback.void
    stream.call(torn=True)
    assert playback.void
    assert not player.start(SOUND, 48_000, from_frame=1024).void
    stream.call(torn=True)


def test_a_second_start_lets_the_first_fade_out_without_a_click(library: FakeLibrary) -> None:
    player = PortAudioPlayer()
    steady = np.full((48_000, 2), 0.5, np.float32)
    player.start(steady, 48_000)
    stream = library.streams[0]
    heard = [stream.call()]
    player.start(steady, 48_000, from_frame=2000)
    heard += [stream.call() for _block in range(20)]
    assert np.abs(np.diff(np.concatenate(heard)[:, 0])).max() < 0.001


def test_a_device_that_goes_away_is_noticed_and_one_that_comes_back_is_used(library: FakeLibrary) -> None:
    player = PortAudioPlayer()
    playback = player.start(SOUND, 48_000)
    library.streams[0].call()
    library.streams[0].vanish()
    player.update(playback)
    assert playback.lost
    library.refuses = True
    with pytest.raises(MissingHereError) as told:
        player.start(SOUND, 48_000)
    assert told.value.key == "device_gone"
    library.refuses = False
    assert not player.start(SOUND, 48_000).lost
    assert len(library.streams) == 2


def test_a_device_whose_name_is_no_longer_there_is_gone_and_no_fault(library: FakeLibrary) -> None:
    player = PortAudioPlayer("headset")
    library.refuses = True
    with pytest.raises(MissingHereError, match="device_gone"):
        player.start(SOUND, 48_000)


def test_a_library_that_could_not_start_has_no_devices(library: FakeLibrary, monkeypatch: pytest.MonkeyPatch) -> None:
    def fails() -> None:
        raise library.PortAudioError("not initialised")

    monkeypatch.setattr(library, "query_devices", fails)
    with pytest.raises(MissingHereError, match="no_portaudio_device"):
        device_names()
    monkeypatch.setattr(library, "_initialize", fails)
    with pytest.raises(MissingHereError, match="no_portaudio_device"):
        rescan_devices()


def test_a_stream_whose_callback_no_longer_comes_has_lost_its_device(
    library: FakeLibrary, monkeypatch: pytest.MonkeyPatch
) -> None:
    player = PortAudioPlayer()
    playback = player.start(SOUND, 48_000)
    library.streams[0].call()
    player.update(playback)
    assert not playback.lost
    monkeypatch.setattr(portaudio, "SILENT_S", -1.0)
    player.update(playback)
    assert playback.lost


def test_an_unknown_device_is_told_and_names_that_are_there_twice_are_told_apart(library: FakeLibrary) -> None:
    assert device_names() == ("headset, one system", "headset, another", "speakers")
    library.refuses = True
    with pytest.raises(MissingHereError) as told:
        PortAudioPlayer("no such thing")
    assert told.value.key == "no_portaudio_device"
