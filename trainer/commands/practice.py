"""practice: opens a face on a case, with the store and a player."""

from __future__ import annotations

import sys
from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path
from typing import TYPE_CHECKING

from trainer.cases.shipped import case_named, case_names
from trainer.cases.universe_cache import Universes
from trainer.commands.result import Result
from trainer.commands.stores import data_folder, universe_folder
from trainer.commands.window import can_open, open_window
from trainer.desk.case_source import find_case
from trainer.desk.desk import Desk
from trainer.desk.seat import seat
from trainer.errors import MissingHereError
from trainer.output.doctor import pygame_check
from trainer.output.player import FilePlayer, Player, best_player
from trainer.records.store import Store, opened
from trainer.terminal.session import Session
from trainer.words import text, told

if TYPE_CHECKING:
    from trainer.window.state.shell import Shell


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
    """Work one case in the window, or in the terminal where that is asked for or there is no screen."""
    pygame = pygame_check()
    if not pygame.good:
        tell(f"{pygame.name}: {pygame.found} → {pygame.mend}")
    if not wanted.terminal and pygame.good:
        if can_open():
            try:
                return _in_window(wanted, data)
            except MissingHereError as error:
                tell(told(error))
        tell(text("window.absent"))
    return _in_terminal(wanted, data)


def _in_window(wanted: Wanted, data: Path | None) -> Result:
    """Open the window: on a case where one is named, else on who is working."""
    found = find_case(wanted.case) if wanted.case else None

    def then(shell: Shell) -> None:
        from trainer.window.state.home import sit

        if found is not None:
            sit(shell, found, wanted.learner, new=wanted.new, seed=wanted.seed, hints=wanted.hints)

    open_window(data, then, device=wanted.device, to_file=wanted.to_file)
    return Result()


def _in_terminal(wanted: Wanted, data: Path | None) -> Result:
    """Work one case in the terminal."""
    folder = data_folder(data)
    store = store_in(folder, insist=data is not None)
    try:
        found = find_case(wanted.case or _next_name(store, wanted.learner))
        player: Player = (
            FilePlayer() if wanted.to_file else best_player(wanted.device, None, lambda error: tell(told(error)))
        )
        desk = Desk(store, player, now_utc, Universes(universe_folder()), hints=wanted.hints)
        seat(desk, found, wanted.learner, now_utc(), new=wanted.new, seed=wanted.seed)
        Session(desk, input, lambda line: print(line, flush=True)).run()  # noqa: T201  # the terminal is this face
    finally:
        store.close()
    return Result()


def store_in(folder: Path, *, insist: bool) -> Store:
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
