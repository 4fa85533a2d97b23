"""The program `injector-trainer`: its global options and all its commands.

Each command's options are declared in the `*_command_line.py` of its folder. Its work is in other files, which are
imported when it runs, so that `--help` is quick.
"""

from __future__ import annotations

from pathlib import Path

import click

from trainer import __version__
from trainer.commands.call.call import Call
from trainer.commands.call.program import Program
from trainer.commands.case_commands.case_command_line import cases, check, draw, fair, handout, hear, inspect, profiles
from trainer.commands.machine_commands.machine_command_line import doctor
from trainer.commands.practice_commands.practice_command_line import bench, practice, progress
from trainer.commands.records_commands.records_command_line import records
from trainer.commands.set_commands.set_command_line import sets


@click.group(cls=Program, invoke_without_command=True, context_settings={"help_option_names": ["-h", "--help"]})
@click.version_option(__version__, prog_name="injector-trainer")
@click.option("--json", "as_json", is_flag=True, help="Print one JSON document to standard output.")
@click.option("--data", type=click.Path(path_type=Path), help="Folder for the records.")
@click.option("--store", help="Shared store, for example postgresql+psycopg://user@server/database.")
@click.pass_context
def main(context: click.Context, as_json: bool, data: Path | None, store: str | None) -> None:
    """Hear an injector actuation test, gather evidence and find the fault."""
    context.obj = Call(as_json, data, store, isolate=context.obj or _stay)
    if context.invoked_subcommand is None:
        context.invoke(practice)


for command in (
    practice, bench, progress, hear, inspect, handout, check, fair, profiles, cases, draw, doctor, sets, records,
):  # fmt: skip
    main.add_command(command)


def run() -> None:
    """Run the program in a process of its own, which may restart itself isolated."""
    from trainer.commands.call.isolation import isolate

    main(obj=isolate)


def _stay() -> None:
    """Do not restart: the process only calls the program, as a test does."""
