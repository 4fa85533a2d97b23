"""Arguments and options that several commands have."""

from __future__ import annotations

from pathlib import Path

import click

FILE = click.Path(dir_okay=False, path_type=Path)
FOLDER = click.Path(file_okay=False, path_type=Path)

CASE = click.argument("case")
LEARNER = click.option("--learner", help="Name or code of the learner. Default: me.")
DEVICE = click.option("--device", help="Name of the sound output.")
SEED = click.option("--seed", type=click.IntRange(0, 2**31 - 1), help="Seed of the sound's small variations.")
PASSPHRASE_FILE = click.option(
    "--passphrase-file",
    type=FILE,
    help="Read the passphrase from a file instead of asking. Keep that file off the stations.",
)
