"""The command line of one learner's own record: progress, carrying it away, taking it in; options only."""

from __future__ import annotations

from pathlib import Path

import click

from trainer.commands.entry_records import records
from trainer.commands.globals import AS_JSON, FILE, Globals
from trainer.commands.result import finish

LEARNER = click.option("--learner", help="Whose record this is; me where nobody is named.")


@click.command()
@LEARNER
@AS_JSON
@click.pass_obj
def progress(options: Globals, learner: str | None, as_json: bool) -> None:
    """Show where a learner stands: each skill with its counts, what waits, certainty."""
    from trainer.commands.learner import show_progress

    finish(lambda: show_progress(learner, options.data, options.store), as_json=as_json or options.as_json)


@records.command()
@LEARNER
@click.option("-o", "--output", type=FILE, required=True, help="Record file to write.")
@AS_JSON
@click.pass_obj
def carry(options: Globals, learner: str | None, output: Path, as_json: bool) -> None:
    """Write a learner's own record, to go on with on another machine."""
    from trainer.commands.learner import carry_record

    finish(lambda: carry_record(learner, output, options.data, options.store), as_json=as_json or options.as_json)


@records.command()
@click.argument("path", type=FILE)
@LEARNER
@AS_JSON
@click.pass_obj
def take(options: Globals, path: Path, learner: str | None, as_json: bool) -> None:
    """Take a learner's own record in from another machine; nothing is lost, nothing comes twice."""
    from trainer.commands.learner import take_record

    finish(lambda: take_record(path, learner, options.data, options.store), as_json=as_json or options.as_json)
