"""Station mode: the PIN that leaves it. It keeps a class at its work; it does not lock a machine."""

from __future__ import annotations

from trainer.window.kit.nodes import Node, button, field, flow, scroll, words
from trainer.window.shell.screen import Screen
from trainer.window.shell.shell import Shell
from trainer.window.station.settings_page import SettingsScreen
from trainer.words import text


def ask_to_end(shell: Shell) -> None:
    """End the program, or in station mode ask for the PIN first."""
    if not shell.settings.station_pin:
        shell.closing = True
    elif not isinstance(shell.screen, PinScreen):
        shell.show(PinScreen(shell))


class PinScreen(Screen):
    """Asks for the PIN before the program ends or settings open."""

    name = "pin"
    first = "pin"

    def __init__(self, shell: Shell) -> None:
        super().__init__(shell)
        self._written = ""

    def view(self) -> Node:
        """Return the field, its digits hidden."""
        return scroll(
            "page",
            words(text("station.ask"), "title", "station.ask"),
            words(text("station.limits"), "muted"),
            field("pin", "•" * len(self._written), self._write, self._try),
            flow(
                button("leave", text("station.leave"), self._try),
                button("settings", text("common.settings"), self._settings),
                button("back", text("ui.back"), self.back, "escape"),
                gap=0.6,
            ),
            gap=0.9,
        )

    def _write(self, written: str) -> None:
        hidden = "•" * len(self._written)
        self._written = (
            self._written[:-1] if len(written) < len(hidden) else (self._written + written[len(hidden) :])[:12]
        )

    def _try(self) -> None:
        if self._right():
            self.shell.closing = True

    def _settings(self) -> None:
        if self._right():
            self.shell.instead(self, SettingsScreen(self.shell))

    def _right(self) -> bool:
        right = self.shell.settings.opens(self._written)
        self._written = ""
        if not right:
            self.shell.say(text("station.wrong"))
        return right
