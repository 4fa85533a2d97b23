"""Opens the records of this machine and the store that stations share."""

from __future__ import annotations

from pathlib import Path

from trainer.commands.call.streams import tell
from trainer.desk.settings import damage_line, read_settings
from trainer.errors import MissingHereError
from trainer.records.store.store import Store, open_store, open_store_at
from trainer.words import message_of, text


def shared_url(folder: Path, url: str | None) -> str:
    """Return the address of the shared store: as given, else as set in the folder's settings; "" for none."""
    if url:
        return url
    path = folder / "settings.json"
    settings, damaged = read_settings(path)
    if damaged:
        tell(damage_line(path, damaged))
    return settings.store_url


def working_store(folder: Path, shared: str, *, required: bool) -> Store:
    """Open a folder's records, with delivery to the shared store where its address is not empty.

    Raises MissingHereError where the folder cannot be written and is required or there is a shared store; else it
    says so, and the store is in memory.
    """
    if not shared:
        return _folder_or_memory(folder, required=required)
    from trainer.records.store.delivery import Delivery

    local = _reporting(open_store(folder))
    delivery = Delivery(local, shared)

    def stop() -> None:
        last = delivery.stop()
        if last.error is not None:
            tell(message_of(last.error))
        if last.waiting:
            tell(text("delivery.waiting", n=last.waiting))

    local.fetch, local.stop = delivery.fetch, stop
    delivery.start()
    return local


def records_store(folder: Path, shared: str) -> Store:
    """Open the shared store where its address is not empty, else the folder's records."""
    return _reporting(open_store_at(shared) if shared else open_store(folder))


def _reporting(store: Store) -> Store:
    """Make a store print, when it is closed, what was left out because it is damaged."""
    store.tell = tell
    return store


def _folder_or_memory(folder: Path, *, required: bool) -> Store:
    try:
        return _reporting(open_store(folder))
    except MissingHereError as error:
        if required:
            raise
        tell(text("memory_store", reason=message_of(error)))
        return open_store(None)
