"""Sound leaves through PortAudio, else SDL, else a file; what leaves is what was rendered."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import numpy as np
import pytest

from trainer.errors import MissingHereError
from trainer.output.file_player import FilePlayer
from trainer.output.find_player import find_player
from trainer.output.temporary_sounds import TemporarySounds
from trainer.output.wav import to_pcm24, write_wav

PLAY = """
import sys, numpy as np
from trainer.cases.single_case.shipped import case_named
from trainer.practice.attempt.actions import solved_work
from trainer.instruments.bench import Work
from trainer.sound.render import render
from trainer.output.portaudio import PortAudioPlayer
case = case_named("faint_hum_on_three")
sound = render(solved_work(case.profile, case.faults, Work()), "front", case.bed, 1, [3])
np.save(sys.argv[1], sound.samples)
print(PortAudioPlayer().play(sound.samples, sound.rate_hz))
"""


@pytest.mark.needs("PortAudio")
def test_what_portaudio_plays_is_the_rendered_buffer(tmp_path: Path) -> None:
    """PortAudio over ALSA's file plugin with a null slave: the captured stream is the buffer, sample for sample."""
    captured, kept = tmp_path / "heard.raw", tmp_path / "rendered.npy"
    (tmp_path / "asound.conf").write_text(
        f'pcm.!default {{ type plug slave.pcm "tap" }}\n'
        f'pcm.tap {{ type file slave.pcm {{ type null }} file "{captured}" format "raw" }}\n'
    )
    environment = {**os.environ, "ALSA_CONFIG_PATH": f"/usr/share/alsa/alsa.conf:{tmp_path / 'asound.conf'}"}
    done = subprocess.run(
        [sys.executable, "-c", PLAY, str(kept)], env=environment, capture_output=True, text=True, timeout=120
    )
    assert "backend='portaudio'" in done.stdout, done.stderr
    rendered, heard = np.load(kept), np.fromfile(captured, dtype="<f4").reshape(-1, 2)
    start = int(np.argmax(np.abs(heard).sum(axis=1) > 0))
    first = int(np.argmax(np.abs(rendered).sum(axis=1) > 0))
    length = len(rendered) - first
    assert np.array_equal(heard[start : start + length], rendered[first:])


def test_without_portaudio_sdl_takes_over_and_without_both_a_file(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    class Missing:
        def __init__(self, *_args: object) -> None:
            raise MissingHereError("no_portaudio")

    class Working(FilePlayer):
        backend = "sdl"

        def __init__(self) -> None:
            super().__init__(TemporarySounds(tmp_path))

    monkeypatch.setattr("trainer.output.find_player.PortAudioPlayer", Missing)
    monkeypatch.setattr("trainer.output.find_player.SdlPlayer", Working)
    with TemporarySounds(tmp_path) as files:
        found, missing = find_player(None, files)
        assert (found.backend, len(missing)) == ("sdl", 1)
        monkeypatch.setattr("trainer.output.find_player.SdlPlayer", Missing)
        last, missing = find_player(None, files)
        assert (last.backend, len(missing)) == ("file", 2)
        played = last.play(np.zeros((100, 2), np.float32), 48_000)
        assert played.file is not None
        assert played.file.is_file()


def test_sdl_plays_to_its_end() -> None:
    program = (
        "import numpy as np; from trainer.output.sdl import SdlPlayer; "
        "print(SdlPlayer().play(np.zeros((4800, 2), np.float32), 48000))"
    )
    environment = {**os.environ, "SDL_AUDIODRIVER": "dummy"}
    done = subprocess.run([sys.executable, "-c", program], env=environment, capture_output=True, text=True, timeout=60)
    assert "backend='sdl'" in done.stdout, done.stderr


def test_a_file_is_written_whole_or_not_at_all(tmp_path: Path) -> None:
    with pytest.raises(MissingHereError):
        write_wav(tmp_path / "none" / "a.wav", np.zeros((10, 2), np.float32), 48_000)
    full = Path("/dev/full")
    if full.exists():
        with pytest.raises(MissingHereError):
            write_wav(full / "a.wav", np.zeros((10, 2), np.float32), 48_000)
    assert list(tmp_path.iterdir()) == []


def test_24_bit_values_round_and_do_not_wrap() -> None:
    assert to_pcm24(np.array([[0.0, 1.0], [-1.0, 2.0**-23]], np.float32)) == bytes(
        [0, 0, 0, 0xFF, 0xFF, 0x7F, 0, 0, 0x80, 1, 0, 0]
    )
