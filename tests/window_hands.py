"""A learner's hands and eyes on the window: keys, typing, clicks, and what is shown, without a display."""

from __future__ import annotations

from pathlib import Path

import numpy as np

from tests.desk_hands import clock
from tests.inline_worker import InlineWorker
from tests.players import ClockedPlayer
from tests.universes import POOLS, UNIVERSES
from trainer.desk.settings import Settings
from trainer.errors import MissingHereError
from trainer.output.player import Player
from trainer.records.store.store import Store, open_store
from trainer.window.kit.layout import Layout
from trainer.window.shell.services import Services
from trainer.window.shell.shell import Shell
from trainer.window.station.home import WhoScreen


class PlainMeasure:
    """Text of fixed width: a layout can be tested without fonts."""

    def __init__(self, em: float = 15.0) -> None:
        self.em = em

    def width(self, text: str, look: str) -> float:
        return 0.58 * self.em * len(text)

    def line(self, look: str) -> float:
        return 1.3 * self.em


class Hands:
    """One window driven as a person drives it; time passes only when told."""

    def __init__(
        self,
        store: Store | None = None,
        player: Player | None = None,
        settings: Settings | None = None,
        missing: list[MissingHereError] | None = None,
        folder: Path | None = None,
        size: tuple[int, int] = (1280, 800),
        measure: object | None = None,
    ) -> None:
        self.player = player or ClockedPlayer()
        self.store = store or open_store(folder)
        services = Services(
            store=self.store,
            worker=InlineWorker(UNIVERSES),
            player=lambda _device: (self.player, missing or []),
            devices=lambda: ("one", "another"),
            checks=lambda _in_use: (),
            now_utc=clock(),
            clock=lambda: self.shell.now_s,
            settings_path=folder / "settings.json" if folder else None,
            sheets=folder / "sheets" if folder else None,
            sets=folder / "sets" if folder else None,
            results=folder / "results" if folder else None,
            carried=folder / "records" if folder else None,
            pools=POOLS,
            chance=np.random.default_rng(6),
            records=lambda: open_store(folder) if folder else self.store,
        )
        self.shell = Shell(services, settings or Settings(), WhoScreen)
        self.shell.measured_by(*size, measure or PlainMeasure())

    @property
    def layout(self) -> Layout:
        return self.shell.layout()

    def press(self, *keys: str) -> Hands:
        """Press keys one after another; `shift+3` holds Shift."""
        for key in keys:
            shift = key.startswith("shift+")
            self.shell.input.press(key.removeprefix("shift+"), shift=shift)
            self.wait(0.02)
        return self

    def write(self, text: str) -> Hands:
        """Type text into the field that the keyboard is on."""
        self.shell.input.type(text)
        return self

    def wait(self, seconds: float, step: float = 0.02) -> Hands:
        """Let time pass."""
        for _tick in range(max(round(seconds / step), 1)):
            if isinstance(self.player, ClockedPlayer):
                self.player.pass_time(step)
            self.shell.tick(step)
        return self

    def go(self, name: str) -> Hands:
        """Go to a node with Tab, as many times as that takes."""
        order = self.layout.order
        assert name in order, f"{name} is not among {order}"
        while self.shell.focus != name:
            self.shell.input.press("tab")
        return self

    def act(self, name: str) -> Hands:
        """Go to a node with Tab and press Enter."""
        return self.go(name).press("enter")

    def click(self, name: str) -> Hands:
        """Click in the middle of a node."""
        one = self.layout.named(name)
        assert one is not None
        assert one.visible is not None, f"{name} is scrolled away"
        box = one.visible
        self.shell.input.click(box.x + box.w / 2, box.y + box.h / 2)
        return self.wait(0.02)

    @property
    def shown(self) -> str:
        """Everything in words on the screen."""
        return "\n".join(node.text for node in self.shell.root().walk() if node.text)

    def text_of(self, name: str) -> str:
        """Return what a node says, with everything in it."""
        node = next(node for node in self.shell.root().walk() if node.name == name)
        return "\n".join(part.text for part in node.walk() if part.text)

    def has(self, name: str) -> bool:
        """Tell whether a node is on the screen."""
        return any(node.name == name for node in self.shell.root().walk())

    def sit_down(self, case: str, who: str = "anna") -> Hands:
        """Come to the bench of a case with the keyboard alone."""
        self.go("name").write(who).press("enter")
        return self.go("code").write(case).press("enter")
