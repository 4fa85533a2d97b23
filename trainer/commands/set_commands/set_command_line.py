"""The command line of `set`."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Unpack

import click

from trainer.commands.call.call import Call, pass_call, pass_call_to_face
from trainer.commands.call.options import DEVICE, FILE, FOLDER, PASSPHRASE_FILE
from trainer.commands.call.result import Result

if TYPE_CHECKING:
    from trainer.commands.set_commands.set_draft import SetOptions

SET_PATH = click.argument("path", type=FILE)


@click.group("set")
def sets() -> None:
    """Build, check, preview, seal and work sets of cases."""


@sets.command()
@SET_PATH
@click.option("--name", help="Short name: small letters, digits and underscores. Default: the file's name.")
@click.option("--title", help="Title that learners see. Default: the name.")
@click.option(
    "--case", "cases", multiple=True, help="A shipped case, a file beside the set, or a case code. Repeat for more."
)
@click.option("--draw", "drawn", type=click.IntRange(0, 60), default=0, help="How many cases to draw.")
@click.option("--profile", "profiles", multiple=True, help="Engine to draw from. Repeat for more.")
@click.option(
    "--place", "places", multiple=True, help="Place of the faults to draw. Default: every place. Repeat for more."
)
@click.option(
    "--difficulty", multiple=True, type=click.IntRange(1, 3), help="Difficulty of the drawn cases. Default: 1 and 2."
)
@click.option(
    "--exam",
    is_flag=True,
    help="Make it an exam: no hints, no picture of the sound, marked when results are collected.",
)
@click.option("--same-for-all", is_flag=True, help="Everybody gets the same draws.")
@click.option("--opens", type=click.DateTime(["%Y-%m-%dT%H:%M"]), help="Local time at which it opens.")
@click.option("--closes", type=click.DateTime(["%Y-%m-%dT%H:%M"]), help="Local time at which it closes.")
@click.option("--tries", type=click.IntRange(1, 99), help="How many times a learner may do the set.")
@click.option("--plays", type=click.IntRange(1, 999), help="Sounds allowed in each case.")
@click.option("--readings", type=click.IntRange(0, 999), help="Readings allowed in each case.")
@click.option("--clock-minutes", type=click.FloatRange(1, 10_000), help="Real time for the whole set.")
@click.option(
    "--certainty", type=click.FloatRange(0, 0.5), default=0.0, help="Share of the mark that comes from certainty."
)
@click.option("--debrief", type=click.Choice(["after_each", "after_set", "after_closing"]), help="When debriefs open.")
@click.option("--shuffled", is_flag=True, help="Give each learner another order.")
@click.option("--force", is_flag=True, help="Replace the file if it exists.")
@pass_call
def make(_call: Call, /, path: Path, force: bool, **options: Unpack[SetOptions]) -> Result:
    """Write a set file from a few choices. You can edit it with any text editor."""
    from trainer.commands.set_commands.build_set import make_set
    from trainer.commands.set_commands.set_draft import draft_from

    return make_set(draft_from(path, options), path, force=force)


@sets.command()
@SET_PATH
@pass_call
def check(call: Call, path: Path) -> Result:
    """Check a set: can every case be solved and heard?"""
    from trainer.commands.set_commands.build_set import check_set

    return check_set(path, call.universes)


@sets.command()
@SET_PATH
@click.option("-o", "--output", type=FOLDER, required=True, help="Folder for the sounds and the sheet.")
@click.option("--learner", default="preview", show_default=True, help="The learner whose draws to show.")
@PASSPHRASE_FILE
@pass_call
def preview(call: Call, path: Path, output: Path, learner: str, passphrase_file: Path | None) -> Result:
    """Write every sound and a sheet with the answers. No results are touched."""
    from trainer.commands.set_commands.build_set import preview_set

    return preview_set(path, output, learner, passphrase_file, call.universes)


@sets.command()
@SET_PATH
@click.option("-o", "--output", type=FILE, required=True, help="The sealed file to write.")
@click.option("--force", is_flag=True, help="Replace the sealed file if it exists.")
@PASSPHRASE_FILE
@pass_call
def seal(_call: Call, path: Path, output: Path, force: bool, passphrase_file: Path | None) -> Result:
    """Write a set as one file that cannot be read without its passphrase."""
    from trainer.commands.set_commands.build_set import seal_set

    return seal_set(path, output, passphrase_file, force=force)


@sets.command()
@SET_PATH
@pass_call
def show(_call: Call, path: Path) -> Result:
    """Show what anybody may know about a set, sealed or not."""
    from trainer.commands.set_commands.build_set import show_set

    return show_set(path)


@sets.command()
@SET_PATH
@click.option("--learner", required=True, help="Name or code of the learner.")
@click.option("--text", "in_terminal", is_flag=True, help="Stay in the terminal.")
@click.option("--results", type=FOLDER, help="Folder for the results, for example on a USB stick.")
@click.option(
    "--sound",
    type=click.Choice(["device", "file"]),
    default="device",
    help="Play the sounds, or only write them to files.",
)
@DEVICE
@PASSPHRASE_FILE
@pass_call_to_face
def sit(
    call: Call,
    path: Path,
    learner: str,
    in_terminal: bool,
    results: Path | None,
    sound: str,
    device: str | None,
    passphrase_file: Path | None,
) -> Result:
    """Work a set, one case after another."""
    call.isolate()
    from trainer.commands.set_commands.work_set import WorkOptions, work_set

    return work_set(call, WorkOptions(path, learner, in_terminal, results, passphrase_file, sound == "file", device))
