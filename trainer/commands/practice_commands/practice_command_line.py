"""The command line of `practice`, `bench` and `progress`."""

from __future__ import annotations

import click

from trainer.commands.call.call import Call, pass_call, pass_call_to_face
from trainer.commands.call.options import DEVICE, LEARNER, SEED
from trainer.commands.call.result import Result


@click.command()
@click.argument("case", required=False)
@SEED
@click.option("--text", "in_terminal", is_flag=True, help="Stay in the terminal.")
@LEARNER
@click.option("--new", is_flag=True, help="Begin afresh instead of going on with an attempt that has no end.")
@click.option("--sound", type=click.Choice(["device", "file"]), default="device", show_default=True,
              help="Play, or only write files.")  # fmt: skip
@DEVICE
@click.option("--no-hints", is_flag=True, help="Refuse hints in this sitting.")
@pass_call_to_face
def practice(
    call: Call,
    case: str | None,
    seed: int | None,
    in_terminal: bool,
    learner: str | None,
    new: bool,
    sound: str,
    device: str | None,
    no_hints: bool,
) -> Result:
    """Work a case: shipped name, file or case code; without one, the next that suits."""
    if not in_terminal:
        call.isolate()  # an exam may be opened in the window
    from trainer.commands.practice_commands.work_case import PracticeOptions, practise

    options = PracticeOptions(case, seed, in_terminal, learner, new, sound == "file", device, hints=not no_hints)
    return practise(call, options)


@click.command()
@click.argument("profile", required=False)
@DEVICE
@pass_call_to_face
def bench(call: Call, profile: str | None, device: str | None) -> Result:
    """Open the free bench: pick any fault, hear it, measure it; for a class on a projector, not scored."""
    call.isolate()
    from trainer.commands.practice_commands.open_bench import open_bench

    return open_bench(call, profile, device)


@click.command()
@LEARNER
@pass_call
def progress(call: Call, learner: str | None) -> Result:
    """Show a learner's progress: each skill with its counts, what is due for review, certainty."""
    from trainer.commands.practice_commands.show_progress import show_progress

    return show_progress(call, learner)
