"""What every screen is: a view as nodes, and what its keys do; what it may use lies in the shell."""

from __future__ import annotations

from abc import ABC, abstractmethod

from trainer.window.kit.nodes import Node
from trainer.window.shell.shell import Shell


class Screen(ABC):
    """One screen of the window; `first` is what the keyboard is on when it opens."""

    name: str
    first: str = ""

    def __init__(self, shell: Shell) -> None:
        self.shell = shell

    @abstractmethod
    def view(self) -> Node:
        """Return what is shown now."""

    def press(self, key: str, *, shift: bool) -> bool:
        """Take a key that no node has; tell whether it meant something here."""
        return False

    def named(self, cylinder: int, *, shift: bool) -> None:  # noqa: B027  # most screens have nothing to do here
        """Take a cylinder that was named by its digits."""

    @property
    def cylinders(self) -> tuple[int, ...]:
        """The cylinders that digits can name here; none where digits mean nothing."""
        return ()

    def opened(self) -> None:  # noqa: B027  # most screens have nothing to do here
        """React to coming to the top, for the first time or again."""

    def away(self) -> None:  # noqa: B027  # most screens have nothing to do here
        """React to the window losing the keyboard to another program."""

    def left(self) -> None:  # noqa: B027  # most screens have nothing to do here
        """Release the screen's resources on closing."""

    def back(self) -> None:
        """Do what Escape does."""
        self.shell.close()

    def tick(self) -> None:  # noqa: B027  # most screens have nothing to do here
        """Update what follows time; called at every tick."""
