"""practice: opens a face on a case, with the store and a player."""

from __future__ import annotations

import sys
import uuid
from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path

from trainer import __version__
from trainer.cases.shipped import case_named, case_names
from trainer.cases.universe_cache import Universes
from trainer.commands.result import Result
from trainer.commands.stores import data_folder, universe_folder
from trainer.desk.case_source import FoundCase, find_case
from trainer.desk.desk import Desk
from trainer.errors import MissingHereError
from trainer.output.doctor import pygame_check
from trainer.output.player import FilePlayer, Player, best_player
from trainer.records.store import AttemptRow, Store, opened
from trainer.terminal.session import Session
from trainer.words import text, told


@dataclass(frozen=True, slots=True)
class Wanted:
    """What a person asked practice for."""

    case: str | None
    seed: int | None
    terminal: bool
    learner: str
    new: bool
    to_file: bool
    device: str | None
    hints: bool = True


def now_utc() -> str:
    """Return the time as the records keep it."""
    return datetime.now(UTC).isoformat(timespec="milliseconds")


def tell(line: str) -> None:
    """Say something beside the work, so that standard output stays the work's own."""
    sys.stderr.write(line + "\n")


def practise(wanted: Wanted, data: Path | None) -> Result:
    """Work one case in the terminal."""
    folder = data_folder(data)
    pygame = pygame_check()
    if not pygame.good:
        tell(f"{pygame.name}: {pygame.found} → {pygame.mend}")
    store = _store(folder, insist=data is not None)
    try:
        if not wanted.terminal:
            tell(text("window.absent"))
        found = find_case(wanted.case or _next_name(store, wanted.learner))
        player: Player = (
            FilePlayer() if wanted.to_file else best_player(wanted.device, None, lambda error: tell(told(error)))
        )
        desk = Desk(store, player, now_utc, Universes(universe_folder()), hints=wanted.hints)
        _seat(desk, found, wanted)
        Session(desk, input, lambda line: print(line, flush=True)).run()  # noqa: T201  # the terminal is this face
    finally:
        store.close()
    return Result()


def _store(folder: Path, *, insist: bool) -> Store:
    """Open the records; a home that cannot be written is told, and then nothing is kept."""
    try:
        return opened(folder)
    except MissingHereError as error:
        if insist:
            raise
        tell(text("memory_store", reason=told(error)))
        return opened(None)


def _next_name(store: Store, learner: str) -> str:
    """Return the easiest shipped case that the learner has not finished yet; the first again after all of them."""
    solved = store.solved_names(learner)
    order = sorted(case_names(), key=lambda name: (name in solved, case_named(name).difficulty, name))
    return order[0]


def _seat(desk: Desk, found: FoundCase, wanted: Wanted) -> None:
    waiting = [] if wanted.new else desk.store.open_attempts(wanted.learner, found.name, found.digest)
    if waiting and wanted.seed in (None, waiting[0].seed):
        desk.resume(found.case, waiting[0])
        return
    row = AttemptRow(
        id=str(uuid.uuid4()),
        learner=wanted.learner,
        case_source=found.source,
        case_name=found.name,
        profile_digest=found.case.profile.digest,
        case_digest=found.digest,
        seed=found.case.seed if wanted.seed is None else wanted.seed,
        program_version=__version__,
        started_at=now_utc(),
    )
    desk.start(found.case, row)
