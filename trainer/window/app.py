"""The window itself: SDL's events in, frames out; everything in between is decided in `state`."""

from __future__ import annotations

import os
import time
from collections import deque
from collections.abc import Callable

import pygame

from trainer.desk.settings import Settings
from trainer.window.drawing.paint import Painter
from trainer.window.drawing.typeface import Typeface, grown
from trainer.window.kit.looks import THEMES
from trainer.window.shell.screen import Screen
from trainer.window.shell.services import Services
from trainer.window.shell.shell import Shell
from trainer.window.station.station_pin import ask_to_end
from trainer.words import text

LEAST_SIZE = (640, 400)
FRAMES_PER_S = 60
IDLE_WAIT_MS = 60
"""How long a quiet window sleeps between looks at its worker."""

NAMES = {
    pygame.K_TAB: "tab", pygame.K_RETURN: "enter", pygame.K_KP_ENTER: "enter", pygame.K_ESCAPE: "escape",
    pygame.K_SPACE: "space", pygame.K_BACKSPACE: "backspace", pygame.K_LEFT: "left", pygame.K_RIGHT: "right",
    pygame.K_UP: "up", pygame.K_DOWN: "down", pygame.K_PAGEUP: "pageup", pygame.K_PAGEDOWN: "pagedown",
    pygame.K_KP_PLUS: "+", pygame.K_KP_MINUS: "-",
    **{getattr(pygame, f"K_F{number}"): f"f{number}" for number in range(1, 13)},
    **{getattr(pygame, f"K_{number}"): str(number) for number in range(10)},
    **{getattr(pygame, f"K_KP{number}"): str(number) for number in range(10)},
}  # fmt: skip


REPEATED = {"tab", "left", "right", "up", "down", "pageup", "pagedown", "backspace", "+", "-"}
"""Keys that go on while they are held; any other acts once, so that nothing is done twice by a heavy finger."""


class App:
    """One window on one shell; `playing_s` is how long each frame took, in second, while something played."""

    def __init__(
        self,
        services: Services,
        settings: Settings,
        first: Callable[[Shell], Screen],
        size: tuple[int, int] | None = None,
    ) -> None:
        os.environ.setdefault("SDL_VIDEO_CENTERED", "1")
        # frames are drawn by the processor: a driver for 3D would only take a hundred megabytes
        os.environ.setdefault("SDL_FRAMEBUFFER_ACCELERATION", "0")
        pygame.display.init()
        pygame.font.init()
        self.shell = Shell(services, settings, first)
        self._size = size or _first_size()
        self._full = False
        self.playing_s: deque[float] = deque(maxlen=40_000)
        self._set_mode()
        pygame.display.set_caption(text("window.title"))
        pygame.display.set_icon(_icon())
        pygame.key.set_repeat(400, 40)
        self._dress()
        self._clock = pygame.time.Clock()
        self._down: set[int] = set()
        self._pressed_on = self.shell.screen
        self._drawn = pygame.Surface((1, 1))
        self._over: list[pygame.Rect] = []

    def _set_mode(self) -> None:
        self._full = self.shell.full_screen
        if self._full:
            self.screen = pygame.display.set_mode((0, 0), pygame.FULLSCREEN)
        else:
            self.screen = pygame.display.set_mode(self._size, pygame.RESIZABLE)

    def _dress(self) -> None:
        """Take the size, the scale and the theme that hold now."""
        settings = self.shell.settings
        self._dressed = (settings.scale, settings.theme, self.screen.get_size())
        self.letters = Typeface(settings.scale * grown(*self.screen.get_size()))
        self.painter = Painter(self.letters, settings.theme)
        self.shell.measured_by(*self.screen.get_size(), self.letters)

    def run(self) -> None:
        """Show the window until it is closed."""
        before_s = time.perf_counter()
        while not self.shell.closing:
            quiet = not (self.shell.listening.on or self.shell.changed or self.shell.services.worker.busy)
            events = [pygame.event.wait(IDLE_WAIT_MS)] if quiet else []
            for event in [*events, *pygame.event.get()]:
                self.take(event)
            now_s = time.perf_counter()
            self.shell.tick(now_s - before_s)
            before_s = now_s
            self.frame()
            if not quiet:
                self._clock.tick(FRAMES_PER_S)

    def close(self) -> None:
        """Let everything go."""
        self.shell.end()
        self.shell.listening.player.close()
        self.shell.services.worker.close()
        pygame.display.quit()

    # events

    def take(self, event: pygame.Event) -> None:
        """Hand one of SDL's events to the shell."""
        shell = self.shell
        if event.type == pygame.QUIT:
            ask_to_end(shell)
        elif event.type == pygame.KEYDOWN:
            self._pressed_on = shell.screen
            self._key(event)
        elif event.type == pygame.KEYUP:
            self._down.discard(event.key)
        elif event.type == pygame.WINDOWFOCUSLOST:
            self._down.clear()
            for screen in shell.screens:
                screen.away()
        elif event.type == pygame.TEXTINPUT:
            if shell.screen is self._pressed_on:  # the letter of a key that opened a screen is not meant for it
                shell.input.type(event.text)
        elif event.type == pygame.MOUSEBUTTONDOWN and event.button == 1:
            shell.input.click(*event.pos)
        elif event.type == pygame.MOUSEWHEEL:
            shell.input.wheel(*pygame.mouse.get_pos(), event.precise_y, self.letters.em)
        else:
            self._changed_around(event)

    def _changed_around(self, event: pygame.Event) -> None:
        """Take what the system says of the window and of sound."""
        shell = self.shell
        if event.type == pygame.VIDEORESIZE and not self._full:
            self._size = (max(event.w, LEAST_SIZE[0]), max(event.h, LEAST_SIZE[1]))
            shell.touch()
        elif event.type in (pygame.WINDOWSIZECHANGED, pygame.WINDOWEXPOSED):
            shell.touch()
        elif (
            event.type == pygame.AUDIODEVICEREMOVED and not event.iscapture and shell.listening.player.backend == "sdl"
        ):
            shell.sound.removed()

    def _key(self, event: pygame.Event) -> None:
        ctrl = bool(event.mod & (pygame.KMOD_CTRL | pygame.KMOD_LALT | pygame.KMOD_META))
        # where digits are typed with Shift, Shift says nothing
        shift = bool(event.mod & pygame.KMOD_SHIFT) and not event.unicode.isdigit()
        if event.key == pygame.K_F11:
            self.shell.full_screen = not self.shell.full_screen or bool(self.shell.settings.station_pin)
            return
        key = NAMES.get(event.key) or (event.unicode.lower() if event.unicode.isprintable() else "")
        key = event.unicode if event.unicode.isdigit() else key
        if ctrl and event.key in (pygame.K_EQUALS, pygame.K_PLUS, pygame.K_MINUS):
            key = "-" if event.key == pygame.K_MINUS else "+"
        held = event.key in self._down
        self._down.add(event.key)
        if key and (key in REPEATED or not held):
            self.shell.input.press(key, shift=shift, ctrl=ctrl)
        if key == "backspace":
            self.shell.input.type("\b")

    # frames

    def frame(self) -> None:
        """Bring the picture up to date: whole if something changed, else only the playhead."""
        began_s = time.perf_counter()
        settings = self.shell.settings
        if self.shell.full_screen != self._full:
            self._set_mode()
            self._dress()
        if (settings.scale, settings.theme, self.screen.get_size()) != self._dressed:
            self._dress()
        whole = self.shell.changed
        if whole:
            self._whole()
        moved = self._playhead()
        if whole:
            pygame.display.flip()
        elif moved:
            pygame.display.update(moved)
        if self.shell.listening.on and not whole:
            self.playing_s.append(time.perf_counter() - began_s)

    def _whole(self) -> None:
        layout = self.shell.layout()
        self.shell.changed = False
        self.painter.paint(self.screen, layout, self.shell.focus)
        self._drawn = self.screen.copy()
        self._over = []

    def _playhead(self) -> list[pygame.Rect]:
        listening = self.shell.listening
        restored = self._over
        for rect in restored:
            self.screen.blit(self._drawn, rect, rect)
        at_s = listening.at_s
        self._over = []
        if at_s is not None and listening.track is not None:
            self._over = self.painter.playheads(self.screen, self.shell.layout(), listening.track.name, at_s)
        return [*restored, *self._over]


def _icon() -> pygame.Surface:
    """Return the program's own sign: an injector from above, as the bench draws it."""
    side = 64
    icon = pygame.Surface((side, side), pygame.SRCALPHA)
    for radius, role in ((30, "fill"), (27, "marked"), (22, "fill"), (10, "marked")):
        pygame.draw.aacircle(icon, THEMES["dark"]["bench"][role], (side / 2, side / 2), radius)
    return icon


def _first_size() -> tuple[int, int]:
    """Return a size that suits the desktop: 1280 by 800, or what there is."""
    sizes = pygame.display.get_desktop_sizes()
    width, height = sizes[0] if sizes else (1280, 800)
    return min(1280, width), min(800, height)
