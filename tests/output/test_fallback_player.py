"""The terminal's sound: a file while there is no device, and the device again as soon as it is back."""

from __future__ import annotations

from pathlib import Path

import numpy as np
import pytest

from trainer.errors import MissingHereError
from trainer.output.fallback_player import FallbackPlayer, terminal_player
from trainer.output.file_player import FilePlayer
from trainer.output.playback import Playback, PlaybackResult
from trainer.output.player import Player
from trainer.output.temporary_sounds import TemporarySounds

SOUND = np.zeros((100, 2), np.float32)


class Machine:
    """A machine whose sound server a test ends and starts; `opened` counts how often a device was had."""

    def __init__(self, files: TemporarySounds) -> None:
        self.files, self.there, self.opened, self.closed = files, True, 0, 0
        self.told: list[str] = []
        self.promises_only = False

    def find(self) -> tuple[Player, list[MissingHereError]]:
        if not self.there:
            return FilePlayer(self.files), [MissingHereError("no_portaudio_device"), MissingHereError("no_sdl_device")]
        self.opened += 1
        return Device(self), []

    def player(self) -> FallbackPlayer:
        return FallbackPlayer(self.find, self.files, self.told.append)


class Device(Player):
    backend = "device"

    def __init__(self, machine: Machine) -> None:
        self._machine = machine

    def start(self, samples: np.ndarray, rate_hz: int, *, from_frame: int = 0, loop: bool = False) -> Playback:
        raise AssertionError("the terminal plays to the end")

    def update(self, playback: Playback) -> None:
        """Nothing moves on by itself."""

    def play(self, samples: np.ndarray, rate_hz: int) -> PlaybackResult:
        if not self._machine.there or self._machine.promises_only:
            raise MissingHereError("device_gone")
        return PlaybackResult(self.backend)

    def close(self) -> None:
        self._machine.closed += 1


@pytest.fixture
def machine(tmp_path: Path) -> Machine:
    return Machine(TemporarySounds(tmp_path))


def test_a_server_that_ends_leaves_a_file_and_one_that_is_back_is_used_again(machine: Machine) -> None:
    player = machine.player()
    assert player.play(SOUND, 48_000).backend == "device"
    assert machine.told == []
    machine.there = False
    written = player.play(SOUND, 48_000)
    assert written.file is not None
    assert written.file.is_file()
    assert "The sound output has been unplugged or switched off." in machine.told[0]
    assert "deleted when the program ends" in machine.told[1]
    assert player.play(SOUND, 48_000).backend == "file"
    assert len(machine.told) == 2  # said once
    machine.there = True
    assert player.play(SOUND, 48_000).backend == "device"
    assert machine.told[2:] == ["The sound output is back."]
    assert machine.closed == 1


def test_a_server_that_was_only_begun_again_plays_the_sound_at_once(machine: Machine) -> None:
    player = machine.player()
    device = player._player
    assert isinstance(device, Device)
    device._machine = Machine(machine.files)  # the one that it was opened on is gone
    device._machine.there = False
    assert player.play(SOUND, 48_000).backend == "device"
    assert machine.opened == 2


def test_a_device_that_promises_and_fails_is_not_tried_for_ever(machine: Machine) -> None:
    player = machine.player()
    machine.promises_only = True
    assert player.play(SOUND, 48_000).backend == "file"
    assert machine.opened == 2


def test_a_machine_without_sound_says_what_is_missing_and_where_sounds_go(machine: Machine) -> None:
    machine.there = False
    machine.player()
    assert ["PortAudio finds no sound output" in machine.told[0], "SDL finds" in machine.told[1]] == [True, True]
    assert "deleted when the program ends" in machine.told[2]


def test_files_that_were_asked_for_are_deleted_too_and_that_is_said(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("tempfile.tempdir", str(tmp_path))
    told: list[str] = []
    with terminal_player(None, told.append, to_file=True) as player:
        written = player.play(SOUND, 48_000).file
        assert written is not None
        assert written.is_file()
    assert not written.exists()
    assert "injector-trainer hear CASE -o FILE.wav" in told[0]
