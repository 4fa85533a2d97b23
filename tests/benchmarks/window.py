"""Figures of the window: first frame, frames while a test plays, key to first sample, memory after fifty cases.

`python -m tests.benchmarks.window` prints each beside the same work done another way in the same run. It needs no
display; sound goes through PortAudio to a sound server of its own.
"""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
import tempfile
import time
from pathlib import Path

os.environ.setdefault("SDL_VIDEODRIVER", "dummy")
os.environ.setdefault("PYGAME_HIDE_SUPPORT_PROMPT", "1")

import numpy as np
import pygame

from tests.benchmarks.sound_server import sound_server
from trainer.cases.single_case.shipped import case_named, case_names
from trainer.commands.call.call import Call
from trainer.commands.practice_commands.open_window import WindowOptions, services_of
from trainer.desk.settings import Settings
from trainer.errors import MissingHereError
from trainer.output.playback import Playback
from trainer.output.player import Player
from trainer.output.portaudio import PortAudioPlayer
from trainer.output.temporary_sounds import TemporarySounds
from trainer.window.app import App
from trainer.window.bench.bench_screen import BenchScreen
from trainer.window.station.home import WhoScreen

CASE = "faint_hum_on_three"
LONGEST_S = 60.0

COLD = """
import time; started = time.perf_counter()
import sys
from pathlib import Path
from trainer.commands.call.call import Call
from trainer.commands.practice_commands.open_window import WindowOptions
import trainer.commands.practice_commands.open_window as window
import trainer.window.app as app
def run(self):
    self.shell.tick(0.0); self.frame()
    print(time.perf_counter() - started)
app.App.run = run
call = Call(False, Path(sys.argv[1]), None, isolate=lambda: None)
window.open_window(call, lambda shell: None, WindowOptions(to_file=True))
"""


def app_at(size: tuple[int, int], folder: Path, *, to_file: bool = False) -> App:
    """Return a window on a bench, made with everything that the program uses."""
    services = services_of(
        Call(False, folder, None, isolate=lambda: None), WindowOptions(to_file=to_file), TemporarySounds()
    )
    return App(services, Settings(), WhoScreen, size)


def turn(app: App, passed_s: float = 0.005) -> None:
    for event in pygame.event.get():
        app.take(event)
    app.shell.tick(passed_s)
    app.frame()


def key(name: int, written: str = "") -> None:
    pygame.event.post(pygame.event.Event(pygame.KEYDOWN, key=name, mod=0, unicode=written, scancode=0))
    pygame.event.post(pygame.event.Event(pygame.KEYUP, key=name, mod=0))


def until(app: App, done: object) -> None:
    end = time.monotonic() + LONGEST_S
    while not done():  # type: ignore[operator]
        assert time.monotonic() < end
        turn(app)
        time.sleep(0.002)


def seated(app: App, case: str = CASE) -> BenchScreen:
    """Sit down at a case with keys, as a learner does."""
    key(pygame.K_RETURN)
    turn(app)
    app.shell.focus_on("code")
    for letter in case:
        app.shell.input.type(letter)
    key(pygame.K_RETURN)
    turn(app)
    screen = app.shell.screen
    assert isinstance(screen, BenchScreen)
    return screen


def first_frame() -> None:
    times = []
    with tempfile.TemporaryDirectory() as folder:
        for _run in range(5):
            done = subprocess.run([sys.executable, "-c", COLD, folder], capture_output=True, text=True, timeout=60)
            times.append(float(done.stdout.split()[-1]))
    plain = time.perf_counter()
    subprocess.run([sys.executable, "-c", "import numpy, pygame, sqlalchemy, pydantic"], check=True)
    print(
        f"first frame after a cold start: {np.median(times):.2f} s (importing its libraries alone: {time.perf_counter() - plain:.2f} s)"
    )


def frames() -> None:
    with tempfile.TemporaryDirectory() as folder:
        app = app_at((1920, 1080), Path(folder))
        seated(app)
        key(pygame.K_t, "t")
        until(app, lambda: app.shell.listening.on)
        app.playing_s.clear()
        end = time.monotonic() + 12.0
        while time.monotonic() < end and app.shell.listening.on:
            turn(app)
            time.sleep(0.004)
        playing = np.array(app.playing_s) * 1e3
        whole = []
        for _redraw in range(30):
            app.shell.touch()
            began = time.perf_counter()
            app.frame()
            whole.append((time.perf_counter() - began) * 1e3)
        print(
            f"frames at 1920x1080 while a test plays ({len(playing)}): median {np.median(playing):.2f} ms, "
            f"p99 {np.percentile(playing, 99):.2f} ms; a full redraw {np.median(whole):.1f} ms, "
            f"p99 {np.percentile(whole, 99):.1f} ms"
        )
        app.close()


class Noting(PortAudioPlayer):
    """Notes when the first block of a new playback leaves."""

    left_at = 0.0

    def start(self, samples: np.ndarray, rate_hz: int, *, from_frame: int = 0, loop: bool = False) -> Playback:
        self.left_at = 0.0
        return super().start(samples, rate_hz, from_frame=from_frame, loop=loop)

    def _fill(self, out: np.ndarray, frames: int, at: object, status: object) -> None:
        super()._fill(out, frames, at, status)
        now = self._playing
        if now is not None and now.blocks == 1 and not self.left_at:
            self.left_at = time.perf_counter()


def key_to_sample() -> None:
    try:
        player: Player = Noting()
    except MissingHereError:
        print("key to first sample: no PortAudio output here")
        return
    with tempfile.TemporaryDirectory() as folder:
        app = app_at((1280, 800), Path(folder), to_file=True)
        app.shell.listening.take(player)
        player.gain_db = -40.0
        seated(app)
        taken = []
        for press in range(40):
            number = 1 + press % 4
            key(getattr(pygame, f"K_{number}"), str(number))
            began = time.perf_counter()
            player.left_at = 0.0  # type: ignore[attr-defined]
            until(app, lambda: player.left_at > 0.0)  # type: ignore[attr-defined]
            if press >= 4:  # the first four are rendered
                taken.append((player.left_at - began) * 1e3)  # type: ignore[attr-defined]
            app.shell.listening.stop()
            for _turn in range(20):
                turn(app)
                time.sleep(0.005)
        asked = player._stream.latency * 1e3  # type: ignore[attr-defined]
        print(
            f"key to first bed sample handed to the device, buffer at hand: median {np.median(taken):.1f} ms, "
            f"worst of {len(taken)} {max(taken):.1f} ms; the device says it adds {asked:.0f} ms"
        )
        app.close()


def resident_mb(process: int | str = "self") -> float:
    for line in Path(f"/proc/{process}/status").read_text().splitlines():
        if line.startswith("VmRSS"):
            return int(line.split()[1]) / 1024.0
    raise AssertionError


def memory() -> None:
    """Work fifty cases to the first replay and look at the window's and its worker's memory."""
    with tempfile.TemporaryDirectory() as folder:
        app = app_at((1280, 800), Path(folder), to_file=True)
        names = [name for name in case_names() if case_named(name).temperature_c == 20.0]
        seen = []
        for number in range(50):
            bench = seated(app, names[number % len(names)])
            key(pygame.K_t, "t")
            until(app, lambda: bench.desk.attempt.events[1:] and not app.shell.services.worker.busy)  # noqa: B023
            key(pygame.K_3, "3")
            until(app, lambda: len(bench.desk.attempt.events) > 2 and not app.shell.services.worker.busy)  # noqa: B023
            for _escape in range(2):
                key(pygame.K_ESCAPE)
                turn(app)
            worker = app.shell.services.worker._process.pid  # type: ignore[attr-defined]
            seen.append((resident_mb(), resident_mb(worker)))
        window, worker = (", ".join(f"{one[part]:.0f}" for one in seen[9::10]) for part in (0, 1))
        print(f"memory after 10, 20, 30, 40, 50 cases: window {window} MB; worker {worker} MB")
        app.close()


def main(chosen: list[str]) -> int:
    """Measure, with a sound server of our own where there is one: a silent machine has nothing to time."""
    if shutil.which("pulseaudio") is None:
        print("the window's figures need a sound server (Debian: pulseaudio, libasound2-plugins)")
        return 1
    with tempfile.TemporaryDirectory() as folder, sound_server(Path(folder)):
        for name in chosen or ["first_frame", "frames", "key_to_sample", "memory"]:
            globals()[name]()
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
