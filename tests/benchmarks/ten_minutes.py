"""Ten minutes of play into a clocked sink with every core loaded: not one underflow, not one sample out of place.

`python -m tests.benchmarks.ten_minutes [SECONDS]` starts a sound server of its own with a null sink, plays a looped
test from the real window through PortAudio into it while every core is kept busy, records what the sink was given, and
compares it with the buffer, sample for sample.
"""

from __future__ import annotations

import multiprocessing
import os
import shutil
import subprocess
import sys
import tempfile
import time
from pathlib import Path
from typing import TYPE_CHECKING

import numpy as np

from tests.benchmarks.sound_server import sound_server

if TYPE_CHECKING:
    from trainer.window.app import App


def busy() -> None:
    while True:
        sum(range(10_000))


def main(seconds: float) -> int:
    if shutil.which("pulseaudio") is None:
        print("ten minutes: needs a sound server (Debian: pulseaudio)")
        return 1
    with tempfile.TemporaryDirectory() as name, sound_server(Path(name)):
        from tests.benchmarks.window import app_at, key, seated, turn, until
        from trainer.output.portaudio import PortAudioPlayer

        underflows = [0]

        class Counting(PortAudioPlayer):
            def _fill(self, out: np.ndarray, frames: int, at: object, status: object) -> None:
                underflows[0] += bool(status.output_underflow)  # type: ignore[attr-defined]
                super()._fill(out, frames, at, status)

        import pygame

        captured = Path(name) / "captured.raw"
        recorder = subprocess.Popen(
            [
                "parec",
                "-d",
                "null.monitor",
                "--format=float32le",
                "--rate=48000",
                "--channels=2",
                "--raw",
                str(captured),
            ]
        )
        app = app_at((1280, 800), Path(name) / "data", to_file=True)
        player = Counting()
        app.shell.listening.take(player)
        seated(app)
        key(pygame.K_o, "o")
        turn(app)
        key(pygame.K_t, "t")
        until(app, lambda: app.shell.listening.on)
        playing = app.shell.listening.playing
        assert playing is not None
        loads = [
            multiprocessing.get_context("fork").Process(target=busy, daemon=True)
            for _core in range(os.cpu_count() or 1)
        ]
        for load in loads:
            load.start()
        before, end = time.perf_counter(), time.monotonic() + seconds
        while time.monotonic() < end:
            now = time.perf_counter()
            turn(app, now - before)
            before = now
            time.sleep(1 / 60)
        void, samples = playing.void, playing._samples.copy()
        for load in loads:
            load.kill()  # SDL takes the gentler signal for itself
        frames = np.array(app.playing_s) * 1e3
        recorder.terminate()
        recorder.wait(5)
        noticed_s = pulled(app)
        app.close()
        heard = np.fromfile(captured, dtype="<f4")
        wrong = out_of_place(heard[: len(heard) // 2 * 2].reshape(-1, 2), samples, seconds)
        print(
            f"{seconds / 60:.1f} minutes into a clocked sink, {len(loads)} cores loaded: {underflows[0]} underflows, "
            f"void {void}, {wrong} samples out of place; frames meanwhile p99 {np.percentile(frames, 99):.2f} ms; "
            f"the server ended in mid-play: told after {noticed_s:.2f} s"
        )
        return int(underflows[0] > 0 or void or wrong > 0 or noticed_s > NOTICED_IN_S)


NOTICED_IN_S = 4.0


def pulled(app: App) -> float:
    """End the sound server while the test plays; return after how long the window says so and waits at a slot."""
    from tests.benchmarks.window import turn

    track = app.shell.listening.track
    assert track is not None
    app.shell.listening.play(track)
    turn(app)
    subprocess.run(["pactl", "exit"], check=True)
    began = time.monotonic()
    while app.shell.listening.said != "sound.lost" and time.monotonic() < began + 2 * NOTICED_IN_S:
        turn(app, 0.02)
        time.sleep(0.02)
    assert app.shell.listening.paused
    return time.monotonic() - began


def out_of_place(heard: np.ndarray, samples: np.ndarray, seconds: float) -> int:
    """Return how many recorded samples differ from the buffer played round and round, or were not recorded."""
    mark = slice(48_000, 50_000)
    begin = heard[: len(samples) + 3 * 48_000, 0].astype(float)
    start = int(np.argmax(np.correlate(begin, samples[mark, 0].astype(float), "valid")))
    length = int((seconds - 5.0) * 48_000)
    rounds = np.resize(samples, (mark.start + length, 2))[mark.start :]
    part = heard[start : start + length]
    return int(np.any(part != rounds[: len(part)], axis=1).sum()) + length - len(part)


if __name__ == "__main__":
    sys.exit(main(float(sys.argv[1]) if len(sys.argv) > 1 else 600.0))
