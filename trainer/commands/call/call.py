"""The context of one call of the program, and the decorators that pass it to a command."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from functools import wraps
from pathlib import Path
from typing import TYPE_CHECKING, Concatenate

import click

from trainer.commands.call.result import Result, finish

if TYPE_CHECKING:
    from trainer.cases.solved.universe_cache import Universes
    from trainer.records.store.store import Store


@dataclass(frozen=True, slots=True)
class Call:
    """The global options of one call, and what a command opens by them; nothing is opened before it is used.

    `isolate` restarts the process without the environment's influence (see `isolation.py`). A command that needs it
    calls it first: everything that was imported before is imported again.
    """

    as_json: bool
    data: Path | None
    store_url: str | None
    isolate: Callable[[], None]

    @property
    def data_folder(self) -> Path:
        """The folder of the records: the one that was named, else the user's own."""
        from trainer.commands.call import this_machine

        return this_machine.data_folder(self.data)

    @property
    def shared_url(self) -> str:
        """The address of the shared store: as given, else as set; "" for none."""
        from trainer.commands.call.stores import shared_url

        return shared_url(self.data_folder, self.store_url)

    @property
    def universes(self) -> Universes:
        """The solved universes of this process."""
        from trainer.commands.call.this_machine import universes

        return universes()

    def open_store(self) -> Store:
        """Open the records to work in them; events are delivered to the shared store where there is one.

        A folder that cannot be written gives a store in memory, unless the folder was named: then MissingHereError.
        """
        from trainer.commands.call.stores import working_store

        return working_store(self.data_folder, self.shared_url, required=self.data is not None)

    def open_records(self) -> Store:
        """Open the records to read or manage them: the shared store itself where there is one."""
        from trainer.commands.call.stores import records_store

        return records_store(self.data_folder, self.shared_url)

    def open_local_records(self) -> Store:
        """Open the records of this machine, whether or not there is a shared store."""
        from trainer.commands.call.stores import records_store

        return records_store(self.data_folder, "")


Work = Callable[Concatenate[Call, ...], Result]
"""A command's function: takes the call and the command's own options, returns the result."""


def pass_call(work: Work) -> Callable[..., None]:
    """Turn a function into a click callback that has `--json`, prints the result and exits with its code."""

    @click.option("--json", "as_json", is_flag=True, help="Print one JSON document to standard output.")
    @click.pass_obj
    @wraps(work)
    def command(call: Call, /, *, as_json: bool, **options: object) -> None:
        given = replace(call, as_json=call.as_json or as_json)
        finish(lambda: work(given, **options), as_json=given.as_json)

    return command


def pass_call_to_face(work: Work) -> Callable[..., None]:
    """Do the same for a command that opens the window or the terminal, which has no `--json` of its own."""

    @click.pass_obj
    @wraps(work)
    def command(call: Call, /, **options: object) -> None:
        finish(lambda: work(call, **options), as_json=call.as_json)

    return command
