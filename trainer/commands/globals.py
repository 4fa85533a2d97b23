"""The options that many commands share."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

import click


@dataclass(frozen=True, slots=True)
class Globals:
    """The options that every command has; `isolate` starts a process of the program's own over, isolated.

    Call it first, before anything heavy is imported: all of that is imported again.
    """

    as_json: bool
    data: Path | None
    store: str | None
    isolate: Callable[[], None]


AS_JSON = click.option("--json", "as_json", is_flag=True, help="Print one JSON document to standard output.")
FILE = click.Path(dir_okay=False, path_type=Path)
FOLDER = click.Path(file_okay=False, path_type=Path)
PASSPHRASE_FILE = click.option(
    "--passphrase-file",
    type=FILE,
    help="Take the passphrase from a file instead of asking; keep that file off the stations.",
)
