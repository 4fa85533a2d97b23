"""What the window works with: everything that touches a machine is handed in."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

import numpy as np

from trainer.cases.drawing.practice_pool import Pools
from trainer.desk.worker import Worker
from trainer.errors import MissingHereError
from trainer.output.machine_checks import Check
from trainer.output.player import Player
from trainer.records.store.store import Store


@dataclass
class Services:
    """The records, the worker, the sound output, and the facts about this machine.

    `player` returns the best way out by a device's name, and what is missing for a better one. `checks` is told which
    way out is open. `clock` counts seconds that no change of the date moves. The folders are None where nothing can be
    kept: for settings, printed sheets, sets, bundles of results, and learners' records to carry away. `records` opens
    what an instructor looks into: the shared store where there is one. `pools` are what practice draws from, `chance`
    draws. `device`, `learner` and `hints` are what was asked for on the command line, for this sitting only.
    """

    store: Store
    worker: Worker
    player: Callable[[str], tuple[Player, list[MissingHereError]]]
    devices: Callable[[], tuple[str, ...]]
    checks: Callable[[str], tuple[Check, ...]]
    now_utc: Callable[[], str]
    clock: Callable[[], float]
    settings_path: Path | None
    sheets: Path | None
    sets: Path | None
    results: Path | None
    carried: Path | None
    records: Callable[[], Store]
    pools: Pools
    chance: np.random.Generator
    show_file: Callable[[Path], None] = lambda path: None
    device: str | None = None
    learner: str | None = None
    hints: bool = True
