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
@click.option("--new", is_flag=True, help="Start again instead of going on with an unfinished attempt.")
@click.option("--sound", type=click.Choice(["device", "file"]), default="device", show_default=True,
              help="Play the sounds, or only write them to files.")  # fmt: skip
@DEVICE
@click.option("--no-hints", is_flag=True, help="Give no hints.")
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
    """Work a case: a name, a number, a file or a case code. Without one, practice chooses for you."""
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
    """Open the free bench: pick any fault, hear it and measure it. Good for a projector."""
    call.isolate()
    from trainer.commands.practice_commands.open_bench import open_bench

    return open_bench(call, profile, device)


@click.command()
@LEARNER
@pass_call
def progress(call: Call, learner: str | None) -> Result:
    """Show a learner's progress: skills, what to revisit, and how sure they were."""
    from trainer.commands.practice_commands.show_progress import show_progress

    return show_progress(call, learner)
