"""The program in a real window: a virtual display, keys from outside, pixels looked at, a kill in mid-case."""

from __future__ import annotations

import os
import signal
import subprocess
import sys
import time
from collections.abc import Callable, Iterator
from pathlib import Path

import numpy as np
import pytest

from tests.universes import UNIVERSES
from trainer.cases.single_case.shipped import case_named
from trainer.practice.attempt.event_json import closed_from
from trainer.practice.attempt.event_record import EventKind
from trainer.records.store.store import Store, open_store

LONGEST_S = 60.0


class RealWindow:
    """The program under Xvfb, driven by xdotool; what it stores is read from its own records."""

    def __init__(self, display: str, folder: Path, screen: Path) -> None:
        self.display, self.folder, self._screen = display, folder, screen
        self.process = self.start()

    def start(self) -> subprocess.Popen[bytes]:
        environment = {
            **os.environ, "DISPLAY": self.display, "SDL_VIDEODRIVER": "x11", "SDL_AUDIODRIVER": "dummy",
        }  # fmt: skip
        with (self.folder.parent / "stderr.txt").open("ab") as told:
            process = subprocess.Popen(
                [sys.executable, "-m", "trainer", "--data", str(self.folder)], env=environment, stderr=told
            )
        try:
            until(lambda: self.there() and self.colours() > 20)
        except AssertionError:
            process.kill()
            process.wait(10)
            said = (self.folder.parent / "stderr.txt").read_text("utf-8")
            pytest.fail(f"no window within {LONGEST_S:.0f} s, {self.colours()} colours on its display; it said: {said}")
        time.sleep(0.3)
        return process

    def there(self) -> bool:
        """Tell whether a window is there: the picture alone may be a dead one's."""
        return bool(self._call("search", "--onlyvisible", "--class", ".", check=False).strip())

    def colours(self) -> int:
        """Return how many colours the display shows: one where no window is."""
        return len(np.unique(self.pixels().reshape(-1, 3), axis=0))

    def _call(self, *arguments: str, check: bool = True) -> bytes:
        environment = {**os.environ, "DISPLAY": self.display}
        return subprocess.run(["xdotool", *arguments], env=environment, check=check, capture_output=True).stdout

    def keys(self, *names: str) -> None:
        for name in names:
            self._call("key", name)
            time.sleep(0.15)

    def tab(self, times: int) -> None:
        self._call("key", "--delay", "30", *["Tab"] * times)
        time.sleep(0.15)

    def write(self, text: str) -> None:
        self._call("type", "--delay", "20", text)
        time.sleep(0.15)

    def pixels(self) -> np.ndarray:
        """Return what the display shows, shape (row, column, channel), from its frame buffer file."""
        raw = self._screen.read_bytes()
        head = np.frombuffer(raw[:100], ">u4")
        header, width, height, stride, colours = int(head[0]), int(head[4]), int(head[5]), int(head[12]), int(head[19])
        start = header + 12 * colours
        rows = np.frombuffer(raw[start : start + stride * height], np.uint8).reshape(height, stride)
        return rows[:, : width * 4].reshape(height, width, 4)[:, :, 2::-1]

    def store(self) -> Store:
        return open_store(self.folder)

    def kinds(self) -> list[EventKind]:
        store = self.store()
        try:
            rows = store.unfinished("me")
            return [event.kind for event in store.events(rows[0].id)] if rows else []
        finally:
            store.close()


def until(done: Callable[[], bool]) -> None:
    end = time.monotonic() + LONGEST_S
    while not done():
        assert time.monotonic() < end, "it never came"
        time.sleep(0.1)


@pytest.fixture
def window(tmp_path: Path) -> Iterator[RealWindow]:
    UNIVERSES.reasoner(case_named("faint_hum_on_three"))  # so that the debrief need not be waited for
    read, write = os.pipe()
    buffer = tmp_path / "buffer"
    buffer.mkdir()
    server = subprocess.Popen(
        ["Xvfb", "-displayfd", str(write), "-screen", "0", "1280x800x24", "-fbdir", str(buffer)],
        pass_fds=[write], stderr=subprocess.DEVNULL,
    )  # fmt: skip
    number = os.read(read, 16).decode().strip()
    data = tmp_path / "data"
    data.mkdir()
    try:
        one = RealWindow(f":{number}", data, buffer / "Xvfb_screen0")
        yield one
        one.process.kill()
        one.process.wait(10)
    finally:
        server.terminate()
        server.wait(10)
        os.close(read)
        os.close(write)


@pytest.mark.needs("Xvfb", "xdotool")
def test_a_case_in_a_real_window_by_keyboard_survives_a_kill_and_ends_with_a_score(window: RealWindow) -> None:
    blank = window.pixels().copy()
    window.keys("Return", "g", "q", "t")
    until(lambda: EventKind.HEARD in window.kinds())
    shown = window.pixels()
    assert not np.array_equal(blank, shown)
    paper = (np.abs(shown.astype(int) - (0xF3, 0xEE, 0xDF)) < 4).all(axis=2)
    assert paper.mean() > 0.15  # the job card lies there
    window.keys("space", "c")
    until(lambda: EventKind.CODES_READ in window.kinds())

    window.process.send_signal(signal.SIGKILL)
    window.process.wait(10)
    before = window.kinds()
    window.process = window.start()
    window.keys("Return", "g", "q")
    time.sleep(1.0)
    assert window.kinds() == before  # it goes on where it was

    window.keys("f", "3")
    _name_pass_through_open(window)
    until(lambda: EventKind.FOUND in window.kinds())
    store = window.store()
    (attempt,) = store.unfinished("me")
    window.keys("d")
    until(lambda: store.events(attempt.id)[-1].kind is EventKind.CLOSED)
    came_to = closed_from(store.events(attempt.id)[-1].data).outcome
    assert came_to is not None
    assert not came_to.right  # named rightly, but by ear alone
    assert 50 < came_to.points < 70
    assert store.closings("me") == []  # a lesson that is worked is nobody's case
    store.close()
    window.keys("Escape", "F10")
    until(lambda: window.process.poll() is not None)
    assert window.process.returncode == 0
    assert "Traceback" not in (window.folder.parent / "stderr.txt").read_text()


def _name_pass_through_open(window: RealWindow) -> None:
    """On the finding with cylinder 3 named: to the place, the kind and the side with Tab, then certainty and commit."""
    for tabs in (
        3 + 8 - 1 + 2,  # past the counts and cylinders to the third place
        5,  # past the other places to the first kind: open
        16,  # past the other kinds to the first side: return
    ):
        window.tab(tabs)
        window.keys("Return")
    window.keys("b", "m", "y")


def test_without_a_screen_the_trainer_stays_in_the_terminal(tmp_path: Path) -> None:
    environment = {name: value for name, value in os.environ.items() if name not in ("DISPLAY", "SDL_VIDEODRIVER")}
    done = subprocess.run(
        [sys.executable, "-m", "trainer", "--data", str(tmp_path), "practice", "--sound", "file"],
        env=environment, input="leave\n", capture_output=True, text=True, timeout=60,
    )  # fmt: skip
    assert done.returncode == 0
    assert "needs a screen" in done.stderr
    assert "Lesson 1" in done.stdout


def test_the_free_bench_says_what_it_lacks_without_a_screen(tmp_path: Path) -> None:
    environment = {name: value for name, value in os.environ.items() if name not in ("DISPLAY", "SDL_VIDEODRIVER")}
    done = subprocess.run(
        [sys.executable, "-m", "trainer", "--data", str(tmp_path), "bench"],
        env=environment, capture_output=True, text=True, timeout=60,
    )  # fmt: skip
    assert done.returncode == 3
    assert "injector-trainer practice --text" in done.stderr
