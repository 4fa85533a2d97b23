"""What this machine has: sound, display, records, versions, clock, disk; each with its mend."""

from __future__ import annotations

from trainer.window.kit.nodes import Node, column, row, scroll, words
from trainer.window.shell.screen import Screen
from trainer.window.shell.shell import Shell
from trainer.words import text


class DoctorScreen(Screen):
    """The findings of the doctor, those that need a mend first."""

    name = "doctor"
    first = "back"

    def __init__(self, shell: Shell) -> None:
        super().__init__(shell)
        self._checks = sorted(shell.services.checks(shell.listening.player.backend), key=lambda check: check.good)

    def view(self) -> Node:
        """Return every check with what was found."""
        rows = [
            column(
                row(
                    words(
                        text("doctor.good" if check.good else "doctor.bad"),
                        "here" if check.good else "caution",
                        f"check.{check.name}",
                    ),
                    words(f"{check.name}: {check.found}", weight=1.0, least=16.0),
                    gap=0.8,
                ),
                words("→ " + check.mend, "bold") if check.mend else None,
                gap=0.1,
            )
            for check in self._checks
        ]
        return scroll("page", words(text("doctor.title"), "title"), *rows, self.shell.footer(), gap=0.6)
