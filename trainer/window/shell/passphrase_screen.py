"""Asks for a set's passphrase, its letters hidden; it stays in memory, which is guarded first, and nowhere else."""

from __future__ import annotations

from collections.abc import Callable

from trainer.desk.process_guard import guard_memory
from trainer.errors import WrongCallError
from trainer.window.kit.nodes import Node, button, field, flow, scroll, words
from trainer.window.shell.screen import Screen
from trainer.window.shell.shell import Shell
from trainer.words import text

MOST = 200


class PassphraseScreen(Screen):
    """Asks for a passphrase once, or twice where a new one is made."""

    name = "passphrase"
    first = "passphrase"

    def __init__(self, shell: Shell, title: str, then: Callable[[str], None], *, twice: bool = False) -> None:
        super().__init__(shell)
        guard_memory()
        self._title, self._then, self._twice = title, then, twice
        self._written = ["", ""]

    def view(self) -> Node:
        """Return the fields."""
        return scroll(
            "page",
            words(self._title, "title", "passphrase.title"),
            words(text("passphrase.keep"), "muted"),
            words(text("passphrase.ask"), "bold"),
            field("passphrase", "•" * len(self._written[0]), self._writer(0), self._go),
            words(text("passphrase.again"), "bold") if self._twice else None,
            field("again", "•" * len(self._written[1]), self._writer(1), self._go) if self._twice else None,
            flow(
                button("go", text("passphrase.go"), self._go if self._written[0] else None, chosen=True),
                button("back", text("ui.back"), self.back, "escape"),
                gap=0.6,
            ),
            gap=0.8,
        )

    def _writer(self, place: int) -> Callable[[str], None]:
        def write(written: str) -> None:
            before = self._written[place]
            added = written[len(before) :]
            self._written[place] = before[:-1] if len(written) < len(before) else (before + added)[:MOST]

        return write

    def _go(self) -> None:
        first, second = self._written
        self._written = ["", ""]
        if self._twice and first != second:
            self.shell.say(text("passphrase.differ"))
            return
        self.shell.close()
        try:
            self._then(first)
        except WrongCallError:  # asked again here, where its letters stay hidden
            self.shell.show(self)
            raise
