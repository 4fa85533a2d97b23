"""A monkey at the window: seeded random keys, typing, clicks, wheel, sizes, looks and mishaps, over all screens.

After every event the window must still hold: nothing was raised, the keyboard is on something that is seen, nothing grows
without end; and again and again Escape must lead home from wherever the monkey got to.

`python -m tests.fuzz.window_monkey EVENTS [SEED]` prints one line of figures; at a failure the seed and the last events,
and it exits with 1.
"""

from __future__ import annotations

import gc
import os
import sys
import tempfile
import time
import traceback
from collections import Counter, deque
from collections.abc import Callable
from dataclasses import dataclass
from itertools import islice
from pathlib import Path

os.environ.setdefault("SDL_VIDEODRIVER", "dummy")
os.environ.setdefault("PYGAME_HIDE_SUPPORT_PROMPT", "1")

import numpy as np
import pygame

from tests.inline_worker import InlineWorker
from tests.players import VanishingPlayer
from tests.universes import UNIVERSES
from tests.window.every_screen import every_screen
from tests.window_hands import Hands, PlainMeasure
from trainer.cases.single_case.shipped import case_names
from trainer.desk.settings import SCALES, hashed_pin, read_settings
from trainer.desk.worker import Job
from trainer.errors import MissingHereError
from trainer.window.drawing.paint import Painter
from trainer.window.drawing.typeface import Typeface
from trainer.window.shell.screen import Screen
from trainer.words import speak

SEED = 20261127
SIZES = ((640, 400), (1024, 600), (1280, 800), (1920, 1080), (3840, 2160))
KEYS = (
    *"abcdefghijklmnopqrstuvwxyz0123456789", "enter", "space", "backspace", "tab", "shift+tab", "up", "down", "left",
    "right", "pageup", "pagedown", "escape", "+", "-", "shift+1", "shift+8", *(f"f{n}" for n in range(1, 13)),
)  # fmt: skip
TYPED = (
    "anna", "ben 2", "1", "3", "8", "12", "0.4", "OL", "no sound", "../x", "", "a" * 200, "ñandú Ω 漢字", "=1+1", "<b>",
    "'; DROP TABLE event; --", "2027-03-01T12:00", "anvil lantern plum", "3BSY-4VMY-C6EW", "{who} %s", "4711",
)  # fmt: skip
STATION_PIN = hashed_pin("4711")

SLOW = ("hint", "debrief", "exercise", "prove_set", "preview_set", "collect")

MOST_NODES, MOST_JOBS, MOST_SCREENS, MOST_ALIVE = 1500, 50, 15, 60
"""Far above what any screen or any way through the window needs: what grows without end comes to them all the same."""

HOME_EVERY, PAINT_EVERY, TOUR_EVERY, LAST = 150, 100, 750, 25


class MonkeyFoundError(AssertionError):
    """Raised where the window does not hold: with what is wrong, the seed and the last events."""


class LazyWorker(InlineWorker):
    """Does one job at a time and lets others wait, as a process does; now and then it dies instead.

    It does so many jobs in all, and of those that take seconds a tenth of that; beyond that it dies at each.
    """

    def __init__(self, rng: np.random.Generator, jobs: int) -> None:
        super().__init__(UNIVERSES)
        self._rng, self._allowed = rng, jobs
        self.done: Counter[str] = Counter()

    def poll(self) -> bool:
        """Do one job, let it wait, or fail as a worker that died."""
        if not self._jobs or self._rng.random() < 0.3:
            return False
        job, waiting = self._jobs.popleft(), self._jobs
        if self._rng.random() < 0.03 or self._too_much(job):
            job.failed(MissingHereError("worker_gone"))
            return True
        self._jobs = deque([job])
        super().poll()
        self.done[job.does] += 1
        waiting.extend(self._jobs)  # what the job's own end asked for
        self._jobs = waiting
        return True

    def _too_much(self, job: Job) -> bool:
        slow = sum(self.done[one] for one in SLOW)
        return self.done.total() >= self._allowed or (job.does in SLOW and slow >= self._allowed // 10)

    def forget(self) -> None:
        """Drop every job."""
        self._jobs = deque()

    @property
    def waiting(self) -> int:
        """How many jobs wait."""
        return len(self._jobs)


@dataclass(frozen=True, slots=True)
class Figures:
    """What a run came to."""

    events: int
    screens: tuple[str, ...]
    nodes: int
    alive: int
    jobs: int
    restarts: int
    seconds: float

    @property
    def line(self) -> str:
        """The figures in one line."""
        return (
            f"window monkey: {self.events} events over {len(self.screens)} screens, 0 failures; at most {self.nodes} nodes "
            f"and {self.alive} screens alive, {self.jobs} jobs done, {self.restarts} starts; {self.seconds:.0f} s of CPU"
        )


class Monkey:
    """One run; `jobs` is how often the window's long work is really done.

    With `tours` it is set down again and again somewhere on the way through every screen, with new records: so it also
    comes to where chance alone never leads.
    """

    def __init__(self, seed: int, folder: Path, jobs: int, *, tours: bool) -> None:
        self.rng, self._seed, self._folders, self._tours = np.random.default_rng(seed), seed, folder, tours
        self._last: deque[str] = deque(maxlen=LAST)
        self._size = (1280, 800)
        self._events = self._nodes = self._alive = self._restarts = 0
        self._screens: set[str] = set()
        self._worker = LazyWorker(self.rng, jobs)
        self._words = (*TYPED, *case_names()[:6], str(folder))
        self._acts: tuple[tuple[float, Callable[[], str]], ...] = (
            (0.30, self._press), (0.28, self._go), (0.10, self._click), (0.05, self._click_anywhere), (0.09, self._type),
            (0.05, self._wheel), (0.02, self._resize), (0.02, self._look), (0.06, self._wait), (0.01, self._away),
            (0.02, self._mishap),
        )  # fmt: skip
        pygame.font.init()
        self._letters = Typeface(1.0)
        self._paper = pygame.Surface((1280, 800))
        self._folder = folder / "first"
        self._start()

    def _tour(self) -> str:
        """Open a new window and go with the keyboard to some place on the way through every screen."""
        self.shell.end()
        self.hands.store.close()
        speak("en")
        self._folder = self._folders / f"tour_{self._events}"
        self._size = (1280, 800)
        self._start()
        self.shell.services.worker = InlineWorker(UNIVERSES)
        steps = int(self.rng.integers(5, 75))
        *_before, last = islice(every_screen(self.hands), steps)
        self.shell.services.worker = self._worker
        return f"tour of {steps} screens to {last}"

    def _start(self) -> None:
        """Open the window anew on what is in its folder."""
        self._restarts += 1
        self._folder.mkdir(exist_ok=True)
        settings, _damaged = read_settings(self._folder / "settings.json")
        self.player = VanishingPlayer()
        self.hands = Hands(player=self.player, settings=settings, folder=self._folder)
        self.shell = self.hands.shell
        self._worker.forget()
        self.shell.services.worker = self._worker
        self._append = self.hands.store.append
        self._dress()

    def _dress(self) -> None:
        self._dressed = (self._size, self.shell.settings.scale)
        self.shell.measured_by(*self._size, PlainMeasure(15.0 * self.shell.settings.scale))

    def run(self, events: int) -> Figures:
        """Make so many events; raises MonkeyFoundError at the first that the window does not bear."""
        began_s = time.process_time()
        weights = np.array([weight for weight, _act in self._acts])
        choices = self.rng.choice(len(self._acts), events, p=weights / weights.sum())
        try:
            for choice in choices.tolist():
                self._events += 1
                self._last.append(f"({self.shell.screen.name}) {self._acts[choice][1].__name__}")
                self._last[-1] = f"({self.shell.screen.name}) {self._acts[choice][1]()}"
                self._check()
                if self._events % HOME_EVERY == 0:
                    self._last.append("home")
                    self._home()
                if self._tours and self._events % TOUR_EVERY == 0:
                    self._last.append(self._tour())
            self._home()
        except Exception as error:
            what = str(error) if isinstance(error, AssertionError) else traceback.format_exc()
            raise MonkeyFoundError(
                f"seed {self._seed}, event {self._events}: {what}\nThe last events:\n" + "\n".join(self._last)
            ) from error
        finally:
            self.hands.store.close()
            speak("en")
        return Figures(
            self._events, tuple(sorted(self._screens)), self._nodes, self._alive, self._worker.done.total(),
            self._restarts, time.process_time() - began_s,
        )  # fmt: skip

    def _one_of(self, things: tuple[str, ...]) -> str:
        return things[int(self.rng.integers(len(things)))] if things else ""

    # what a monkey does

    def _press(self) -> str:
        key = self._one_of(KEYS)
        ctrl = self.rng.random() < 0.03
        shift = key.startswith("shift+")
        before = self.shell.screen
        plain = key.removeprefix("shift+")
        self.shell.input.press(plain, shift=shift, ctrl=ctrl)
        if self.shell.screen is before and not ctrl and (len(plain) == 1 or plain == "backspace"):
            self.shell.input.type("\b" if plain == "backspace" else plain)  # as SDL says it: a key, then its text
        self.hands.wait(0.02)
        return f"press {'ctrl+' if ctrl else ''}{key}"

    def _go(self) -> str:
        name = self._one_of(tuple(self.hands.layout.order))
        if name:
            self.shell.focus_on(name)
            self.shell.input.press("enter")
            self.hands.wait(0.02)
        return f"enter on {name}"

    def _click(self) -> str:
        seen = tuple(one.node.name for one in self.hands.layout.placed if one.node.name and one.visible)
        name = self._one_of(seen)
        if name:
            self.hands.click(name)
        return f"click on {name}"

    def _click_anywhere(self) -> str:
        x, y = self.rng.random() * self._size[0], self.rng.random() * self._size[1]
        self.shell.input.click(x, y)
        self.hands.wait(0.02)
        return f"click at {x:.0f}, {y:.0f}"

    def _type(self) -> str:
        fields = tuple(one.node.name for one in self.hands.layout.placed if one.node.edit is not None)
        name, written = self._one_of(fields), self._one_of(self._words)
        if name:
            self.shell.focus_on(name)
        self.shell.input.type(written)
        if self.rng.random() < 0.5:
            self.hands.press("enter")
        return f"type {written[:40]!r} into {name}"

    def _wheel(self) -> str:
        x, y = self.rng.random() * self._size[0], self.rng.random() * self._size[1]
        steps = float(self.rng.normal(0.0, 8.0))
        self.shell.input.wheel(x, y, steps, 15.0)
        return f"wheel {steps:.1f} at {x:.0f}, {y:.0f}"

    def _resize(self) -> str:
        self._size = SIZES[int(self.rng.integers(len(SIZES)))]
        return f"size {self._size}"

    def _look(self) -> str:
        looks = {
            "theme": self._one_of(("dark", "light")), "language": self._one_of(("en", "es")),
            "trace": self._one_of(("fading", "shown", "off")), "scale": SCALES[int(self.rng.integers(len(SCALES)))],
            "station_pin": STATION_PIN if self.rng.random() < 0.1 else "",
        }  # fmt: skip
        self.shell.keep(self.shell.settings.changed(**looks))
        return f"looks {looks}".replace(STATION_PIN, "4711")

    def _wait(self) -> str:
        seconds = float(self.rng.choice([0.1, 1.0, 5.0, 40.0, 200.0], p=[0.4, 0.3, 0.2, 0.07, 0.03]))
        self.hands.wait(seconds, seconds / 5.0)
        return f"wait {seconds} s"

    def _away(self) -> str:
        for screen in self.shell.screens:
            screen.away()
        return "window left"

    def _mishap(self) -> str:
        """Pull the headphones or put them back, or let the disk be full for a while."""
        if self.rng.random() < 0.5:
            if self.player.gone:
                self.player.gone = False
                return "device back"
            self.player.pull()
            self.hands.wait(0.1)
            return "device pulled"
        if self.hands.store.append is not _full:
            self.hands.store.append = _full  # type: ignore[method-assign]
            return "disk full"
        self.hands.store.append = self._append  # type: ignore[method-assign]
        return "disk free"

    # what must hold

    def _check(self) -> None:
        shell = self.shell
        if shell.closing:  # F10 and the like: a person starts it again
            shell.end()
            self.hands.store.close()
            self._start()
            return
        if self._dressed != (self._size, shell.settings.scale):
            self._dress()
        layout = self.hands.layout
        self._screens.add(shell.screen.name)
        nodes = sum(1 for _node in shell.root().walk()) if self._events % 10 == 0 else len(layout.placed)
        self._nodes = max(self._nodes, nodes)
        assert nodes <= MOST_NODES, f"{nodes} nodes"
        assert layout.order, "nothing can be reached by the keyboard"
        assert shell.focus in layout.order, f"the keyboard is on {shell.focus}, which is not there"
        if shell._moved_by_key:
            here = layout.named(shell.focus)
            assert here is not None
            assert here.visible is not None, f"the keyboard is on {shell.focus}, which is not seen"
        assert len(shell.screens) <= MOST_SCREENS, f"{len(shell.screens)} screens on the pile"
        assert self._worker.waiting <= MOST_JOBS, f"{self._worker.waiting} jobs wait"
        assert set(shell._focus) <= {id(screen) for screen in shell.screens}, (
            "the focus of a screen that was left is kept"
        )
        if self._events % PAINT_EVERY == 0:
            Painter(self._letters, shell.settings.theme).paint(self._paper, layout, shell.focus)

    def _home(self) -> None:
        """Go home with Escape, as somebody does who is lost, and look at what is left behind."""
        self.player.gone = False
        self.player.heard.clear()  # the test's own memory of every buffer
        self.hands.store.append = self._append  # type: ignore[method-assign]
        shell = self.shell
        for _step in range(3 * MOST_SCREENS):
            if len(shell.screens) == 1:
                break
            before = (shell.screen, len(shell.screens))
            shell.input.press("escape")
            self.hands.wait(0.1)
            if (shell.screen, len(shell.screens)) == before:  # a screen may first give up what was begun on it
                shell.input.press("escape")
                self.hands.wait(0.1)
                assert (shell.screen, len(shell.screens)) != before, (
                    f"Escape does not leave the screen {shell.screen.name}"
                )
        assert [screen.name for screen in shell.screens] == ["who"], "Escape does not lead home"
        for _turn in range(200):
            if not self._worker.waiting:
                break
            self.hands.wait(0.02)
        assert not self._worker.waiting, "work goes on at home"
        if self._events % (10 * HOME_EVERY) == 0:
            gc.collect()
            alive = sum(isinstance(one, Screen) for one in gc.get_objects())
            self._alive = max(self._alive, alive)
            assert alive <= MOST_ALIVE, f"{alive} screens are alive at home"


def _full(*_event: object) -> None:
    raise MissingHereError("store_full", place="here", reason="disk full")


def main(events: int, seed: int) -> int:
    """Let a monkey at the window; print what it came to, and return the exit code."""
    with tempfile.TemporaryDirectory() as folder:
        try:
            print(Monkey(seed, Path(folder), jobs=events // 40, tours=True).run(events).line)
        except MonkeyFoundError as found:
            print(found)
            return 1
    return 0


if __name__ == "__main__":
    sys.exit(main(int(sys.argv[1]), int(sys.argv[2]) if len(sys.argv) > 2 else SEED))
