"""The command line of `doctor`."""

from __future__ import annotations

import click

from trainer.commands.call.call import Call, pass_call
from trainer.commands.call.result import Result


@click.command()
@pass_call
def doctor(call: Call) -> Result:
    """Check this machine: sound, display, records and versions, and how to fix them."""
    from trainer.commands.machine_commands.examine_machine import examine

    return examine(call)
