"""A learner's hands on a terminal, and players that remember."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field
from datetime import UTC, datetime, timedelta
from itertools import count
from pathlib import Path

import numpy as np

from tests.universes import UNIVERSES
from trainer import __version__
from trainer.desk.case_source import find_case
from trainer.desk.desk import Desk
from trainer.errors import MissingHereError
from trainer.output.playback import PlaybackResult
from trainer.records.store.log_rows import AttemptRow
from trainer.records.store.store import Store, open_store
from trainer.terminal.session import Session


@dataclass
class RecordingPlayer:
    """Keeps every buffer that it was asked to play."""

    backend: str = "recording"
    heard: list[np.ndarray] = field(default_factory=list)

    def play(self, samples: np.ndarray, rate_hz: int) -> PlaybackResult:
        self.heard.append(samples)
        return PlaybackResult(self.backend)


class TornPlayer(RecordingPlayer):
    """Every playing is torn."""

    def play(self, samples: np.ndarray, rate_hz: int) -> PlaybackResult:
        return PlaybackResult(self.backend, void=True)


class StoppedPlayer(RecordingPlayer):
    """The learner presses Ctrl-C while it plays."""

    def play(self, samples: np.ndarray, rate_hz: int) -> PlaybackResult:
        raise KeyboardInterrupt


class GonePlayer(RecordingPlayer):
    """The device has been pulled."""

    def play(self, samples: np.ndarray, rate_hz: int) -> PlaybackResult:
        raise MissingHereError("device_gone")


BEGUN = datetime(2026, 1, 1, tzinfo=UTC)


def clock() -> Callable[[], str]:
    """Return a clock that ticks a second each time it is read."""
    ticks = count()
    return lambda: (BEGUN + timedelta(seconds=next(ticks))).isoformat(timespec="milliseconds")


def new_desk(name: str, store: Store | None = None, player: object | None = None, attempt_id: str = "a1") -> Desk:
    found = find_case(name)
    desk = Desk(store or open_store(None), player or RecordingPlayer(), clock(), UNIVERSES)
    row = AttemptRow(
        attempt_id,
        "me",
        found.source,
        found.name,
        found.case.profile.digest,
        found.digest,
        found.case.seed,
        __version__,
        "2026-01-01T00:00:00.000+00:00",
    )
    desk.start(found.case, row)
    return desk


def resumed_desk(name: str, store: Store, attempt_id: str = "a1") -> Desk:
    found = find_case(name)
    desk = Desk(store, RecordingPlayer(), clock(), UNIVERSES)
    row = next(row for row in store.open_attempts("me", found.name, found.digest) if row.id == attempt_id)
    desk.resume(found.case, row)
    return desk


def type_in(desk: Desk, *lines: str) -> str:
    """Type lines into a session and return everything that was shown."""
    typed, said = iter(lines), []

    def ask(prompt: str) -> str:
        said.append(prompt)
        try:
            return next(typed)
        except StopIteration:
            raise EOFError from None

    Session(desk, ask, said.append).run()
    return "\n".join(said)


RIGHT_ANSWER = ("finding", "1", "3", "3", "1", "2", "2", "yes")
"""Open, pass-through connector, return side, cylinder 3, leaning."""

SCENARIOS = Path(__file__).parent.parent / "scenarios"
