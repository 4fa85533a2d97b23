"""The window without its glass: screens on a pile, one focus each, keys, clicks, sound, long work, settings."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from trainer.desk.settings import SCALES, Settings, write_settings
from trainer.desk.worker import Job, Then
from trainer.errors import MissingHereError, ToldError
from trainer.window.state.digits import Digits
from trainer.window.state.focus import after, scrolled_into_view, towards
from trainer.window.state.layout import Layout, Measure, laid_out
from trainer.window.state.listening import Listening
from trainer.window.state.nodes import Node, button, column, flow, words
from trainer.window.state.notices import notices
from trainer.window.state.screen import Screen
from trainer.window.state.services import Services
from trainer.words import speak, text, told

REST_AT_S = (600.0, 1200.0)
"""After so much listening a rest is proposed: ten and twenty minutes."""

IDLE_S = 180.0
"""In station mode the next learner is asked for after so much quiet."""

ARROWS = {"left": (-1, 0), "right": (1, 0), "up": (0, -1), "down": (0, 1)}


class Shell:
    """Holds the screens and decides what every key and click does."""

    def __init__(self, services: Services, settings: Settings, first: Callable[[Shell], Screen]) -> None:
        self.services, self.settings = services, settings
        speak(settings.language)
        player, missing = services.player(settings.device)
        self.listening = Listening(player, settings.here.level_db)
        self.notice = ""
        self.missing = [told(error) for error in missing] if self.listening.silent else []
        self.now_s, self.active_s = 0.0, 0.0
        self.closing, self.full_screen, self.changed = False, bool(settings.station_pin), True
        self.scrolled: dict[str, float] = {}
        self.digits = Digits()
        self._rests = list(REST_AT_S)
        self._layout: Layout | None = None
        self._before: Layout | None = None
        self._glass: tuple[float, float, Measure] | None = None
        self._moved_by_key = False
        self._focus: dict[int, str] = {}
        self._home = first
        self.screens: list[Screen] = []
        self.show(first(self))

    # screens

    @property
    def screen(self) -> Screen:
        """The screen on top."""
        return self.screens[-1]

    def show(self, screen: Screen) -> None:
        """Put a screen on top."""
        self.screens.append(screen)
        self._arrived()

    def close(self) -> None:
        """Leave the screen on top; the last one is left only by ending the program."""
        if len(self.screens) > 1:
            gone = self.screens.pop()
            self._focus.pop(id(gone), None)
            gone.left()
            self._arrived()

    def instead(self, screen: Screen) -> None:
        """Put a screen in the place of the one on top."""
        gone = self.screens.pop()
        self._focus.pop(id(gone), None)
        gone.left()
        self.show(screen)

    def home(self) -> None:
        """Go back to who is working, everything else left."""
        self.listening.stop()
        self.services.worker.forget()
        while self.screens:
            self.screens.pop().left()
        self._focus.clear()
        self.show(self._home(self))

    def _arrived(self) -> None:
        self.notice = ""
        self.scrolled.clear()
        self.digits.typed = ""
        self.screen.opened()
        self.touch()

    def touch(self) -> None:
        """Note that what is shown has changed."""
        self._before = self._layout or self._before
        self.changed, self._layout = True, None

    # what is shown

    def root(self) -> Node:
        """Return everything shown: notices above the screen on top."""
        here = self._before.named(self.focus) if self._before and self.focus else None
        spot = words(here.node.text, "touch", "spot.text") if here and here.node.kind == "spot" else None
        return column(notices(self), column(self.screen.view(), weight=1.0), spot, pad=1.0, gap=0.6)

    def measured_by(self, width: float, height: float, measure: Measure) -> None:
        """Be told the window's size and how text is measured there."""
        self._glass = (width, height, measure)
        self.touch()

    def layout(self) -> Layout:
        """Return everything placed; computed once for as long as nothing changes."""
        if self._layout is None:
            if self._glass is None:
                return Layout()
            root = self.root()
            self._layout = laid_out(root, *self._glass, self.scrolled)
            self._keep_focus()
            self._scroll_to_focus(root)
        return self._layout

    def _keep_focus(self) -> None:
        assert self._layout is not None
        order = self._layout.order
        if self.focus not in order and order:
            first = self.screen.first
            self._focus[id(self.screen)] = first if first in order else order[0]

    def _scroll_to_focus(self, root: Node) -> None:
        """Bring what the keyboard is on into view."""
        if self._layout is None or self._glass is None or not self._moved_by_key or not self.focus:
            return
        found = scrolled_into_view(self._layout, self.focus, self._glass[2].em, self.scrolled)
        if found is not None:
            self.scrolled[found[0]] = found[1]
            self._layout = laid_out(root, *self._glass, self.scrolled)

    @property
    def focus(self) -> str | None:
        """The name of what the keyboard is on."""
        return self._focus.get(id(self.screen))

    def focus_on(self, name: str) -> None:
        """Move the keyboard to a node."""
        self._focus[id(self.screen)] = name
        self._moved_by_key = True
        self.touch()

    # hands

    def press(self, key: str, *, shift: bool = False, ctrl: bool = False) -> None:
        """Take a key: a character, or the name of one (`tab`, `enter`, `space`, `left`, `f1`)."""
        self.active_s = self.now_s
        layout = self.layout()
        here = layout.named(self.focus) if self.focus else None
        self.touch()
        if ctrl and key in ("+", "=", "-"):
            self.scale_by(1 if key != "-" else -1)
        elif key == "tab":
            self._go(after(layout.order, self.focus, -1 if shift else 1))
        elif key in ARROWS:
            self._go(towards(layout, self.focus, *ARROWS[key]))
        elif key in ("pageup", "pagedown"):
            self._page(layout, -1 if key == "pageup" else 1)
        elif key == "escape":
            self.screen.back()
        elif here is not None and here.node.edit is not None and (len(key) == 1 or key in ("space", "backspace")):
            return  # a field takes letters as text, in `type`
        elif key == "backspace" and self.screen.press(key, shift=shift):
            return
        elif key == "enter" and here is not None and here.node.act is not None:
            here.node.act()
        elif not self._key_of_a_node(layout, key) and not self._digit(key, shift=shift):
            self._rest(key, here, shift=shift)

    def _go(self, name: str | None) -> None:
        if name:
            self.focus_on(name)

    def _key_of_a_node(self, layout: Layout, key: str) -> bool:
        for one in layout.placed:
            if one.node.key and one.node.key == key and one.node.enabled and one.node.act is not None:
                one.node.act()
                return True
        return False

    def _digit(self, key: str, *, shift: bool) -> bool:
        if not (len(key) == 1 and key.isdigit() and self.screen.cylinders):
            return False
        number = self.digits.press(key, self.screen.cylinders, self.now_s)
        if number is not None:
            self.screen.named(number, shift=shift)
        return True

    def _rest(self, key: str, here: Any, *, shift: bool) -> None:
        if self.screen.press(key, shift=shift):
            return
        if key == "space" and here is not None and here.node.act is not None:
            here.node.act()
        elif key in ("+", "-"):
            self.louder(1 if key == "+" else -1)

    def type(self, written: str) -> None:
        """Take text that was typed, for the field that the keyboard is on; "\\b" takes a character away."""
        here = self.layout().named(self.focus) if self.focus else None
        if here is None or here.node.edit is None:
            return
        self.active_s = self.now_s
        before = here.node.text
        here.node.edit(before[:-1] if written == "\b" else before + written)
        self.touch()

    def click(self, x: float, y: float) -> None:
        """Take a click or a touch."""
        self.active_s = self.now_s
        one = self.layout().at(x, y)
        if one is None:
            return
        self._focus[id(self.screen)] = one.node.name
        self._moved_by_key = False
        self.touch()
        if one.node.act is not None and one.node.edit is None:
            one.node.act()

    def wheel(self, x: float, y: float, steps: float, em: float) -> None:
        """Scroll what lies at a point."""
        layout = self.layout()
        name = layout.scroll_at(x, y)
        if name is not None:
            self._scroll(layout, name, -3.0 * steps * em)

    def _page(self, layout: Layout, way: int) -> None:
        name = layout.inside.get(self.focus or "", "") or next(iter(layout.scrolls), "")
        if name in layout.scrolls:
            self._scroll(layout, name, 0.8 * way * layout.scrolls[name][0].h)

    def _scroll(self, layout: Layout, name: str, by: float) -> None:
        box, content = layout.scrolls[name]
        self.scrolled[name] = min(max(self.scrolled.get(name, 0.0) + by, 0.0), content - box.h)
        self._moved_by_key = False
        self.touch()

    # time, sound, work

    def tick(self, passed_s: float) -> None:
        """Let time pass: deliver finished work, follow the sound, propose a rest, ask for the next learner."""
        self.now_s += passed_s
        if self.services.worker.poll() or self.listening.tick(passed_s):
            self.touch()
        number = self.digits.waited(self.screen.cylinders, self.now_s)
        if number is not None:
            self.screen.named(number, shift=False)
            self.touch()
        if self._rests and self.listening.heard_s >= self._rests[0]:
            self._rests.pop(0)
            self.say(text("sound.rest", minutes=self.listening.heard_s / 60.0))
        quiet = self.now_s - self.active_s > IDLE_S and not self.listening.on
        if self.settings.station_pin and len(self.screens) > 1 and quiet:
            self.home()
        self.screen.tick()

    def say(self, notice: str) -> None:
        """Show a notice until something else is said."""
        self.notice = notice
        self.touch()

    def ask(self, does: str, *arguments: Any, then: Then, idle: bool = False) -> None:
        """Have long work done; its value goes to `then`, what is wrong with it to the notices."""
        self.services.worker.ask(Job(does, arguments, then, self._failed, idle))
        self.touch()

    def _failed(self, error: ToldError) -> None:
        self.say(told(error))

    def keep(self, settings: Settings) -> None:
        """Take new settings over and keep them."""
        if settings.language != self.settings.language:
            speak(settings.language)
        if settings.device != self.settings.device:
            self._use(settings)
        self.settings = settings
        if self.services.settings_path is not None:
            try:
                write_settings(settings, self.services.settings_path)
            except MissingHereError as error:
                self.say(told(error))
        self.touch()

    def _use(self, settings: Settings) -> None:
        player, missing = self.services.player(settings.device)
        self.listening.use(player)
        self.listening.player.gain_db = settings.here.level_db
        self.missing = [told(error) for error in missing] if self.listening.silent else []

    def device_removed(self) -> None:
        """Be told by the system that an output went away: what plays has lost it."""
        if self.listening.playing is not None:
            self.listening.playing.lose()
        self.touch()

    def reopen(self) -> None:
        """Try the device again, or whatever else there is, and go on where it was."""
        self._use(self.settings)
        self.listening.pause()
        self.touch()

    def again(self) -> None:
        """Play once more what was torn."""
        if self.listening.track is not None:
            self.listening.play(self.listening.track)
        self.touch()

    def louder(self, steps: int) -> None:
        """Change the level; it is kept for this device."""
        level = self.listening.louder(steps)
        self.keep(self.settings.with_ears(level_db=level))
        self.say(text("sound.level", level=level))

    def scale_by(self, steps: int) -> None:
        """Make text larger or smaller."""
        place = min(range(len(SCALES)), key=lambda row: abs(SCALES[row] - self.settings.scale)) + steps
        self.keep(self.settings.changed(scale=SCALES[min(max(place, 0), len(SCALES) - 1)]))

    def ask_to_end(self) -> None:
        """End the program, or in station mode ask for the PIN first."""
        if self.settings.station_pin:
            from trainer.window.state.station import PinScreen

            self.show(PinScreen(self))
        else:
            self.closing = True

    def footer(self, *extra: Node | None) -> Node:
        """Return the line of buttons that every screen ends with."""
        back = button("back", text("ui.back"), self.screen.back, "escape") if len(self.screens) > 1 else None
        return flow(*extra, back, gap=0.6)
