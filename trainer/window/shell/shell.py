"""The window's state without drawing: a stack of screens, the focus of each, sound, background work, settings."""

from __future__ import annotations

from collections.abc import Callable

from trainer.desk.settings import SCALES, Settings, write_settings
from trainer.desk.worker import Job, Then
from trainer.errors import ProblemsFoundError, UserError
from trainer.sets.set_access import OpenedSet
from trainer.window.kit.focus import scrolled_into_view
from trainer.window.kit.layout import Layout, lay_out
from trainer.window.kit.lines import Measure
from trainer.window.kit.nodes import Node, button, column, flow, words
from trainer.window.shell.input_handler import InputHandler, ScreenProtocol
from trainer.window.shell.listening import Listening
from trainer.window.shell.notices import notices, status
from trainer.window.shell.services import Services
from trainer.window.shell.station_sound import StationSound
from trainer.words import message_of, speak, text

IDLE_S = 180.0
"""In station mode the next learner is asked for after so much quiet."""


class Shell:
    """Holds the screens and decides what every key and click does.

    `opened_sets` are sealed sets by what their file holds: their passphrase is typed once while the program runs.
    """

    def __init__(self, services: Services, settings: Settings, first: Callable[[Shell], ScreenProtocol]) -> None:
        self.services, self.settings = services, settings
        speak(settings.language)
        self.sound = StationSound(self, services.device if services.device is not None else settings.device)
        self.input = InputHandler(self)
        self.notice = ""
        self.now_s, self.active_s = 0.0, 0.0
        self.closing, self.full_screen, self.changed = False, bool(settings.station_pin), True
        self.scrolled: dict[str, float] = {}
        self._homed_s = -1.0
        self._layout: Layout | None = None
        self._before: Layout | None = None
        self._glass: tuple[float, float, Measure] | None = None
        self._moved_by_key = False
        self._focus: dict[int, str] = {}
        self._home = first
        self.opened_sets: dict[str, OpenedSet] = {}
        self.screens: list[ScreenProtocol] = []
        self.show(first(self))

    @property
    def listening(self) -> Listening:
        """What is being played."""
        return self.sound.listening

    # screens

    @property
    def screen(self) -> ScreenProtocol:
        """The screen on top."""
        return self.screens[-1]

    def show(self, screen: ScreenProtocol) -> None:
        """Put a screen on top."""
        self.screens.append(screen)
        self._arrived()

    def close(self) -> None:
        """Leave the screen on top; the last one is left only by ending the program."""
        if len(self.screens) > 1:
            self._drop(self.screens.pop())
            self._arrived()

    def instead(self, gone: ScreenProtocol, screen: ScreenProtocol) -> None:
        """Put a screen in the place of another and of whatever lies on top of that one."""
        while gone in self.screens:
            self._drop(self.screens.pop())
        self.show(screen)

    def _drop(self, gone: ScreenProtocol) -> None:
        self._focus.pop(id(gone), None)
        gone.left()

    def home(self) -> None:
        """Go back to who is working, everything else left."""
        self.end()
        self.sound.next_listener()
        self.show(self._home(self))

    def end(self) -> None:
        """Leave every screen."""
        self.listening.stop()
        self.services.worker.forget()
        while self.screens:
            self._drop(self.screens.pop())

    def _arrived(self) -> None:
        self.notice = ""
        self.scrolled.clear()
        self.input.reset()
        self._moved_by_key = True
        self.screen.opened()
        self.touch()

    def touch(self) -> None:
        """Note that what is shown has changed."""
        self._before = self._layout or self._before
        self.changed, self._layout = True, None

    # what is shown

    def root(self) -> Node:
        """Return everything shown: notices above the screen on top."""
        view, services = self._view(), self.services  # before the notices, which tell what it left out
        above = notices(services.store, self.sound, self.notice)
        return column(above, column(view, weight=1.0), status(services.worker, self.touched), pad=1.0, gap=0.6)

    def _view(self) -> Node:
        """Return the screen on top, or why it cannot be shown: records can turn out damaged at any moment."""
        try:
            return self.screen.view()
        except UserError as error:
            return column(words(message_of(error), "body", "view.failed"), self.footer(), gap=0.8)

    @property
    def touched(self) -> str:
        """What the picture says of the place on it that the keyboard is on, or ""."""
        here = self._before.named(self.focus) if self._before and self.focus else None
        return here.node.text if here and here.node.kind == "spot" else ""

    def measured_by(self, width: float, height: float, measure: Measure) -> None:
        """Set the window's size and how text is measured in it."""
        self._glass = (width, height, measure)
        self.touch()

    def layout(self) -> Layout:
        """Return everything placed; computed once for as long as nothing changes."""
        if self._layout is None:
            if self._glass is None:
                return Layout()
            root = self.root()
            self._layout = lay_out(root, *self._glass, self.scrolled)
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
            self._layout = lay_out(root, *self._glass, self.scrolled)

    @property
    def focus(self) -> str | None:
        """The name of what the keyboard is on."""
        return self._focus.get(id(self.screen))

    def focus_on(self, name: str, *, seen: bool = False) -> None:
        """Move the keyboard to a node; one that is seen already does not move the page."""
        self._focus[id(self.screen)] = name
        self._moved_by_key = not seen
        self.touch()

    def scroll(self, name: str, by: float) -> None:
        """Scroll a part by so many pixels."""
        box, content = self.layout().scrolls[name]
        self.scrolled[name] = min(max(self.scrolled.get(name, 0.0) + by, 0.0), content - box.h)
        self._moved_by_key = False
        self.touch()

    # time, sound, work

    def tick(self, passed_s: float) -> None:
        """Let time pass: deliver finished work, follow the sound, propose a rest, ask for the next learner."""
        self.now_s += passed_s
        delivered, heard = self.services.worker.poll(), self.listening.tick(passed_s)
        if delivered or heard:
            self.touch()
        self.input.tick()
        self.sound.tick()
        quiet = self.now_s - self.active_s > IDLE_S and not self.listening.on
        if self.settings.station_pin and quiet and self.active_s > self._homed_s:
            self.home()
            self._homed_s = self.now_s
        self.screen.tick()

    def say(self, notice: str) -> None:
        """Show a notice until something else is said."""
        self.notice = notice
        self.touch()

    def ask(self, does: str, *arguments: object, then: Then, idle: bool = False) -> None:
        """Have long work done; its value goes to `then`, what is wrong with either to the notices."""
        self.services.worker.ask(
            Job(does, arguments, lambda value: self.input.run(lambda: then(value)), self._failed, idle)
        )
        self.touch()

    def _failed(self, error: UserError | ProblemsFoundError) -> None:
        self.say(message_of(error))

    def keep(self, settings: Settings) -> None:
        """Take new settings over and keep them."""
        if settings.language != self.settings.language:
            speak(settings.language)
        chosen = settings.device != self.settings.device
        self.settings = settings
        if chosen:
            self.sound.use(settings.device)
        if self.services.settings_path is not None:
            try:
                write_settings(settings, self.services.settings_path)
            except UserError as error:
                self.say(message_of(error))
        self.touch()

    def scale_by(self, steps: int) -> None:
        """Make text larger or smaller."""
        place = min(range(len(SCALES)), key=lambda row: abs(SCALES[row] - self.settings.scale)) + steps
        self.keep(self.settings.changed(scale=SCALES[min(max(place, 0), len(SCALES) - 1)]))

    def footer(self, *extra: Node | None) -> Node:
        """Return the line of buttons that every screen ends with."""
        back = button("back", text("ui.back"), self.screen.back, "escape") if len(self.screens) > 1 else None
        return flow(*extra, back, gap=0.6)
