"""The real event loop under SDL's dummy driver: its events in, frames out."""

from __future__ import annotations

import os
from collections.abc import Iterator
from pathlib import Path

import pytest

os.environ.setdefault("SDL_VIDEODRIVER", "dummy")
os.environ.setdefault("SDL_AUDIODRIVER", "dummy")
os.environ.setdefault("PYGAME_HIDE_SUPPORT_PROMPT", "1")

import numpy as np
import pygame

from tests.desk_hands import clock
from tests.inline_worker import InlineWorker
from tests.players import ClockedPlayer, VanishingPlayer
from tests.universes import POOLS, UNIVERSES
from trainer.desk.settings import Settings
from trainer.records.store.store import open_store
from trainer.window.app import App
from trainer.window.bench.bench_screen import BenchScreen
from trainer.window.shell.services import Services
from trainer.window.station.home import WhoScreen


class Sitting:
    """An app with a person's events."""

    def __init__(self, folder: Path, player: ClockedPlayer | None = None) -> None:
        self.player = player or ClockedPlayer()
        services = Services(
            store=open_store(None), worker=InlineWorker(UNIVERSES), player=lambda _device: (self.player, []),
            devices=lambda: (), checks=lambda _in_use: (), now_utc=clock(),
            settings_path=folder / "settings.json", sheets=folder,
            clock=lambda: 0.0, sets=folder / "sets", results=folder / "results", records=lambda: open_store(None),
            carried=folder / "records", pools=POOLS, chance=np.random.default_rng(6),
        )  # fmt: skip
        self.app = App(services, Settings(), WhoScreen, (1280, 800))

    def turn(self, times: int = 3) -> None:
        for _turn in range(times):
            for event in pygame.event.get():
                self.app.take(event)
            self.player.pass_time(0.02)
            self.app.shell.tick(0.02)
            self.app.frame()

    def key(self, key: int, written: str = "", mod: int = 0) -> None:
        pygame.event.post(pygame.event.Event(pygame.KEYDOWN, key=key, mod=mod, unicode=written, scancode=0))
        if written and not mod & pygame.KMOD_CTRL:
            pygame.event.post(pygame.event.Event(pygame.TEXTINPUT, text=written))
        self.turn()
        pygame.event.post(pygame.event.Event(pygame.KEYUP, key=key, mod=mod))
        self.turn()

    def write(self, text: str) -> None:
        for letter in text:
            self.key(pygame.key.key_code(letter) if letter.isalnum() else pygame.K_MINUS, letter)

    def click(self, name: str) -> None:
        one = self.app.shell.layout().named(name)
        assert one is not None
        at = (round(one.box.x + one.box.w / 2), round(one.box.y + one.box.h / 2))
        pygame.event.post(pygame.event.Event(pygame.MOUSEBUTTONDOWN, button=1, pos=at))
        self.turn()

    def shown(self, name: str) -> str:
        nodes = [node for node in self.app.shell.root().walk() if node.name == name]
        return "\n".join(part.text for node in nodes for part in node.walk() if part.text)


@pytest.fixture
def sitting(tmp_path: Path) -> Iterator[Sitting]:
    one = Sitting(tmp_path)
    one.turn()
    yield one
    one.app.close()


def test_typed_letters_go_into_a_field_and_are_no_commands(sitting: Sitting) -> None:
    sitting.write("tcpf")
    assert sitting.shown("name") == "tcpf"
    sitting.key(pygame.K_BACKSPACE)
    assert sitting.shown("name") == "tcp"
    sitting.key(pygame.K_RETURN)
    assert sitting.app.shell.screen.name == "waiting"


def test_the_letter_of_a_key_that_opens_a_screen_is_not_written_there(sitting: Sitting) -> None:
    sitting.key(pygame.K_RETURN)
    sitting.key(pygame.K_s, "s")
    assert sitting.app.shell.screen.name == "sets"
    assert sitting.shown("path") == ""
    sitting.write("ab")
    assert sitting.shown("path") == "ab"


def test_a_bench_is_reached_heard_and_drawn_with_events_alone(sitting: Sitting) -> None:
    sitting.key(pygame.K_RETURN)
    sitting.key(pygame.K_g, "g")
    sitting.key(pygame.K_q, "q")
    before = pygame.image.tobytes(sitting.app.screen, "RGB")
    sitting.key(pygame.K_t, "t")
    sitting.turn(10)
    assert sitting.app.shell.listening.on
    first = pygame.image.tobytes(sitting.app.screen, "RGB")
    assert first != before
    sitting.turn(40)
    assert pygame.image.tobytes(sitting.app.screen, "RGB") != first  # the playhead has moved
    assert len(sitting.app.playing_s) > 20


def test_a_playhead_leaves_nothing_behind(sitting: Sitting) -> None:
    sitting.key(pygame.K_RETURN)
    sitting.key(pygame.K_g, "g")
    sitting.key(pygame.K_q, "q")
    sitting.key(pygame.K_t, "t")
    sitting.turn(100)
    playing = sitting.app.shell.listening.playing
    assert playing is not None
    sitting.app.shell.touch()
    sitting.app.frame()
    here = pygame.image.tobytes(sitting.app.screen, "RGB")
    for step in (48_000, 3_000, -51_000):  # to and fro, and back to where it was
        playing.frame += step
        sitting.app.frame()
        assert (pygame.image.tobytes(sitting.app.screen, "RGB") == here) == (step < 0)


def test_mouse_wheel_and_resize(sitting: Sitting) -> None:
    sitting.key(pygame.K_RETURN)
    sitting.click("all")
    pygame.mouse.set_pos((300, 600))
    sitting.turn()
    page = sitting.app.shell.layout().scrolls["page"]
    assert page[1] > page[0].h
    sitting.app.shell.input.wheel(300, 600, -2.0, sitting.app.letters.em)
    assert sitting.app.shell.scrolled["page"] > 0
    em = sitting.app.letters.em
    sitting.app.screen = pygame.display.set_mode((2560, 1600), pygame.RESIZABLE)
    sitting.turn()
    assert sitting.app.letters.em == 2 * em  # everything grows with the window


def test_control_and_plus_make_text_larger_and_a_letter_with_control_does_nothing(sitting: Sitting) -> None:
    sitting.key(pygame.K_RETURN)
    sitting.key(pygame.K_g, "g")
    sitting.key(pygame.K_q, "q")
    sitting.key(pygame.K_EQUALS, "", pygame.KMOD_CTRL)
    assert sitting.app.shell.settings.scale == 1.25
    assert sitting.app.letters.em == 19
    sitting.key(pygame.K_c, "\x03", pygame.KMOD_CTRL)
    screen = sitting.app.shell.screen
    assert isinstance(screen, BenchScreen)
    assert len(screen.desk.attempt.events) == 1


def test_digits_that_a_keyboard_gives_with_shift_are_plain_digits(sitting: Sitting) -> None:
    sitting.key(pygame.K_RETURN)
    sitting.key(pygame.K_g, "g")
    sitting.key(pygame.K_q, "q")
    sitting.key(pygame.K_QUOTE, "3", pygame.KMOD_SHIFT)
    screen = sitting.app.shell.screen
    assert isinstance(screen, BenchScreen)
    assert screen.marked == 3
    sitting.key(pygame.K_5, "%", pygame.KMOD_SHIFT)
    assert screen.desk.attempt.events[-1].slots == (3, 5)


def test_an_output_that_sdl_says_is_gone_pauses_and_a_microphone_does_not(tmp_path: Path) -> None:
    player = VanishingPlayer()
    player.backend = "sdl"
    sitting = Sitting(tmp_path, player)
    sitting.turn()
    sitting.key(pygame.K_RETURN)
    sitting.key(pygame.K_g, "g")
    sitting.key(pygame.K_q, "q")
    sitting.key(pygame.K_t, "t")
    pygame.event.post(pygame.event.Event(pygame.AUDIODEVICEREMOVED, iscapture=1, which=1))
    sitting.turn()
    assert sitting.app.shell.listening.on
    pygame.event.post(pygame.event.Event(pygame.AUDIODEVICEREMOVED, iscapture=0, which=1))
    sitting.turn()
    assert "output is gone" in sitting.shown("notice.sound")
    sitting.app.close()


def test_a_key_that_is_held_acts_once_and_tab_goes_on(sitting: Sitting) -> None:
    sitting.key(pygame.K_RETURN)
    sitting.key(pygame.K_g, "g")
    sitting.key(pygame.K_q, "q")
    for _repeat in range(20):
        pygame.event.post(pygame.event.Event(pygame.KEYDOWN, key=pygame.K_t, mod=0, unicode="t", scancode=0))
        sitting.turn()
    screen = sitting.app.shell.screen
    assert isinstance(screen, BenchScreen)
    assert len(screen.desk.attempt.events) == 2  # begun, and heard once
    pygame.event.post(pygame.event.Event(pygame.KEYUP, key=pygame.K_t, mod=0))
    before = sitting.app.shell.focus
    for _repeat in range(3):
        pygame.event.post(pygame.event.Event(pygame.KEYDOWN, key=pygame.K_TAB, mod=0, unicode="", scancode=0))
    sitting.turn()
    order = sitting.app.shell.layout().order
    assert order.index(str(sitting.app.shell.focus)) == (order.index(str(before)) + 3) % len(order)


def test_closing_the_window_ends_it(sitting: Sitting) -> None:
    pygame.event.post(pygame.event.Event(pygame.QUIT))
    sitting.turn()
    assert sitting.app.shell.closing
