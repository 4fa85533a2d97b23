"""Handles keys, clicks, touches and typed text; queues one input while background work runs."""

from __future__ import annotations

from collections.abc import Callable
from typing import Protocol

from trainer.errors import ProblemsFoundError, UserError
from trainer.records.store.database import user_error
from trainer.window.kit.digits import Digits
from trainer.window.kit.focus import after, towards
from trainer.window.kit.layout import Layout, PlacedNode
from trainer.window.kit.nodes import Node
from trainer.window.shell.services import Services
from trainer.window.shell.station_sound import StationSound
from trainer.words import message_of

ARROWS = {"left": (-1, 0), "right": (1, 0), "up": (0, -1), "down": (0, 1)}


class ScreenProtocol(Protocol):
    """What the input handler and the shell call on a screen."""

    first: str

    @property
    def cylinders(self) -> tuple[int, ...]:
        """The cylinders that digits can name here."""

    def view(self) -> Node:
        """Return what is shown now."""

    def press(self, key: str, *, shift: bool) -> bool:
        """Take a key that no node has; tell whether it meant something here."""

    def named(self, cylinder: int, *, shift: bool) -> None:
        """Take a cylinder that was named by its digits."""

    def opened(self) -> None:
        """React to coming to the top, for the first time or again."""

    def away(self) -> None:
        """React to the window losing the keyboard to another program."""

    def left(self) -> None:
        """Release the screen's resources on closing."""

    def back(self) -> None:
        """Do what Escape does."""

    def tick(self) -> None:
        """Update what follows time; called at every tick."""


class InputTarget(Protocol):
    """What the input handler calls on its window."""

    services: Services
    sound: StationSound
    now_s: float
    active_s: float

    @property
    def screen(self) -> ScreenProtocol:
        """The screen on top."""

    @property
    def focus(self) -> str | None:
        """The name of what the keyboard is on."""

    def layout(self) -> Layout:
        """Return everything placed."""

    def touch(self) -> None:
        """Note that what is shown has changed."""

    def focus_on(self, name: str, *, seen: bool = False) -> None:
        """Move the keyboard to a node."""

    def scroll(self, name: str, by: float) -> None:
        """Scroll a part by so many pixels."""

    def scale_by(self, steps: int) -> None:
        """Make text larger or smaller."""

    def say(self, notice: str) -> None:
        """Show a notice."""


class InputHandler:
    """Handles the input of one window.

    While long work is under way nothing is done to an attempt, so that what comes of the work fits it; the last thing
    asked for waits until then. Moving about, scrolling and leaving are always free.
    """

    def __init__(self, shell: InputTarget) -> None:
        self._shell = shell
        self.digits = Digits()
        self._later: tuple[ScreenProtocol, Callable[[], None]] | None = None

    def press(self, key: str, *, shift: bool = False, ctrl: bool = False) -> None:
        """Take a key: a character, or the name of one (`tab`, `enter`, `space`, `left`, `f1`)."""
        shell = self._shell
        shell.active_s = shell.now_s
        layout = shell.layout()
        here = layout.named(shell.focus) if shell.focus else None
        shell.touch()
        if ctrl:
            if key in ("+", "=", "-"):
                shell.scale_by(1 if key != "-" else -1)
        elif key == "tab":
            self._go(after(layout.order, shell.focus, -1 if shift else 1))
        elif key in ARROWS:
            self._go(towards(layout, shell.focus, *ARROWS[key]))
        elif key in ("pageup", "pagedown"):
            self._page(layout, -1 if key == "pageup" else 1)
        elif key == "escape":
            self.run(shell.screen.back)
        elif key in ("+", "-") and not _writes(here):
            self.run(lambda: shell.sound.louder(1 if key == "+" else -1))
        elif shell.services.worker.busy:
            self._later = shell.screen, lambda: self.press(key, shift=shift)
        elif not (_writes(here) and (len(key) == 1 or key in ("space", "backspace"))):
            self.run(lambda: self._act(layout, here, key, shift=shift))

    def _act(self, layout: Layout, here: PlacedNode | None, key: str, *, shift: bool) -> None:
        act = here.node.act if here is not None else None
        screen = self._shell.screen
        if act is not None and (key == "enter" or (key == "space" and here and here.node.kind == "tick")):
            act()
        elif self._key_of_a_node(layout, key) or self._digit(key, shift=shift) or screen.press(key, shift=shift):
            return
        elif key == "space" and act is not None:
            act()

    def run(self, act: Callable[[], None]) -> None:
        """Call an action; show the message of an error it raises."""
        try:
            act()
        except (UserError, ProblemsFoundError) as error:
            self._shell.say(message_of(error))
        except Exception as error:
            lost = user_error(error)
            if lost is None:
                raise
            self._shell.say(message_of(lost))

    def _go(self, name: str | None) -> None:
        if name:
            self._shell.focus_on(name)

    @staticmethod
    def _key_of_a_node(layout: Layout, key: str) -> bool:
        for one in layout.placed:
            if one.node.key and one.node.key == key and one.node.enabled and one.node.act is not None:
                one.node.act()
                return True
        return False

    def _digit(self, key: str, *, shift: bool) -> bool:
        screen = self._shell.screen
        if not (len(key) == 1 and key.isdigit() and screen.cylinders):
            return False
        number = self.digits.press(key, screen.cylinders, self._shell.now_s)
        if number is not None:
            screen.named(number, shift=shift)
        return True

    def type(self, written: str) -> None:
        """Take text that was typed, for the field that the keyboard is on; "\\b" takes a character away."""
        shell = self._shell
        layout = shell.layout()
        here = layout.named(shell.focus) if shell.focus else None
        if here is None or here.node.edit is None:
            return
        shell.active_s = shell.now_s
        before = here.node.text
        here.node.edit(before[:-1] if written == "\b" else before + written)
        shell.touch()

    def click(self, x: float, y: float) -> None:
        """Take a click or a touch."""
        shell = self._shell
        shell.active_s = shell.now_s
        one = shell.layout().at(x, y)
        if one is None:
            return
        shell.focus_on(one.node.name, seen=True)
        act = one.node.act
        if act is None or one.node.edit is not None:
            return
        if shell.services.worker.busy and one.node.name not in ("menu", "back"):
            self._later = shell.screen, act
        else:
            self.run(act)

    def wheel(self, x: float, y: float, steps: float, em: float) -> None:
        """Scroll what lies at a point."""
        layout = self._shell.layout()
        name = layout.scroll_at(x, y)
        if name is not None:
            self._shell.scroll(name, -3.0 * steps * em)

    def _page(self, layout: Layout, way: int) -> None:
        name = layout.inside.get(self._shell.focus or "", "") or next(iter(layout.scrolls), "")
        if name in layout.scrolls:
            self._shell.scroll(name, 0.8 * way * layout.scrolls[name][0].h)

    def tick(self) -> None:
        """Do what has waited for work to end, and let a lone digit name its cylinder."""
        shell = self._shell
        if shell.services.worker.busy:
            return
        if self._later is not None:
            (screen, act), self._later = self._later, None
            if screen is shell.screen:
                self.run(act)
        number = self.digits.waited(shell.screen.cylinders, shell.now_s)
        if number is not None:
            self.run(lambda: shell.screen.named(number, shift=False))
            shell.touch()

    def reset(self) -> None:
        """Drop half-typed digits and queued input; another screen is on top."""
        self.digits.typed, self._later = "", None


def _writes(here: PlacedNode | None) -> bool:
    return here is not None and here.node.edit is not None
