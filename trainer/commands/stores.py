"""Where records are kept on this machine, and what time it is there."""

from __future__ import annotations

from datetime import UTC, datetime
from functools import cache
from pathlib import Path
from typing import TYPE_CHECKING

import platformdirs

from trainer.commands.streams import tell
from trainer.errors import MissingHereError
from trainer.records.store.store import Store, open_store, open_store_at
from trainer.words import message_of, text

if TYPE_CHECKING:
    from trainer.cases.solved.universe_cache import Universes


def data_folder(named: Path | None) -> Path:
    """Return the folder that was named, or the user's own for this program."""
    return named if named is not None else Path(platformdirs.user_data_dir("injector-ear-trainer", appauthor=False))


def universe_folder() -> Path:
    """Return where solved universes are kept: they can be thrown away at any time."""
    return Path(platformdirs.user_cache_dir("injector-ear-trainer", appauthor=False)) / "universes"


@cache
def universes() -> Universes:
    """Return the solved universes of this process, kept in that folder: one for everything a command does."""
    from trainer.cases.solved.universe_cache import Universes

    return Universes(universe_folder())


def now_utc() -> str:
    """Return the time as the records keep it."""
    return datetime.now(UTC).isoformat(timespec="milliseconds")


def shared_url(folder: Path, url: str | None) -> str:
    """Return the address of the store that stations share: as it was given, or as it is set; "" for none."""
    from trainer.desk.settings import damage_line, read_settings

    if url:
        return url
    path = folder / "settings.json"
    settings, damaged = read_settings(path)
    if damaged:
        tell(damage_line(path, damaged))
    return settings.store_url


def store_for(data: Path | None, url: str | None) -> Store:
    """Open the records of this machine, with delivery to a shared store where a URL is given or set."""
    folder = data_folder(data)
    shared = shared_url(folder, url)
    if not shared:
        return store_in(folder, insist=data is not None)
    from trainer.records.store.delivery import Delivery

    local = telling(open_store(folder))
    delivery = Delivery(local, shared)

    def stop() -> None:
        last = delivery.stop()
        if last.error is not None:
            tell(message_of(last.error))
        if last.waiting:
            tell(text("delivery.waiting", count=last.waiting))

    local.fetch, local.stop = delivery.fetch, stop
    delivery.start()
    return local


def records_store(data: Path | None, url: str | None) -> Store:
    """Open the records to look into them: the shared store itself where a URL is given or set."""
    folder = data_folder(data)
    shared = shared_url(folder, url)
    return telling(open_store_at(shared) if shared else open_store(folder))


def telling(store: Store) -> Store:
    """Have a store say at its end what was left out of the work because it is damaged."""
    store.tell = tell
    return store


def store_in(folder: Path, *, insist: bool) -> Store:
    """Open the records; a home that cannot be written is told, and then nothing is kept."""
    try:
        return telling(open_store(folder))
    except MissingHereError as error:
        if insist:
            raise
        tell(text("memory_store", reason=message_of(error)))
        return open_store(None)
