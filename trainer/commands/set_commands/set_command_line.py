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
@click.option("--name", help="Short name: small letters, digits, underscores; the file's own without it.")
@click.option("--title", help="What learners read; the name without it.")
@click.option(
    "--case", "cases", multiple=True, help="A shipped case, a file beside the set, or a case code; repeatable."
)
@click.option("--draw", "drawn", type=click.IntRange(0, 60), default=0, help="So many cases are drawn.")
@click.option("--profile", "profiles", multiple=True, help="Engine to draw from; repeatable.")
@click.option("--place", "places", multiple=True, help="Place of faults to draw; every place without it; repeatable.")
@click.option("--difficulty", multiple=True, type=click.IntRange(1, 3), help="Of drawn cases; 1 and 2 without it.")
@click.option("--exam", is_flag=True, help="An exam: no hints, no trace, scored when results are collected.")
@click.option("--same-for-all", is_flag=True, help="Everybody gets the same draws.")
@click.option("--opens", type=click.DateTime(["%Y-%m-%dT%H:%M"]), help="Local time from which it can be worked.")
@click.option("--closes", type=click.DateTime(["%Y-%m-%dT%H:%M"]), help="Local time at which it closes.")
@click.option("--tries", type=click.IntRange(1, 99), help="How often the set may be worked.")
@click.option("--plays", type=click.IntRange(1, 999), help="Sounds allowed in each case.")
@click.option("--readings", type=click.IntRange(0, 999), help="Readings allowed in each case.")
@click.option("--clock-minutes", type=click.FloatRange(1, 10_000), help="Real time for the whole set.")
@click.option("--certainty", type=click.FloatRange(0, 0.5), default=0.0, help="Share of the mark given by certainty.")
@click.option("--debrief", type=click.Choice(["after_each", "after_set", "after_closing"]), help="When debriefs open.")
@click.option("--shuffled", is_flag=True, help="Each learner gets another order.")
@click.option("--force", is_flag=True, help="Write over a file that is there.")
@pass_call
def make(_call: Call, /, path: Path, force: bool, **options: Unpack[SetOptions]) -> Result:
    """Write a set file from a few choices; edit it further with any text editor."""
    from trainer.commands.set_commands.build_set import make_set
    from trainer.commands.set_commands.set_draft import draft_from

    return make_set(draft_from(path, options), path, force=force)


@sets.command()
@SET_PATH
@pass_call
def check(call: Call, path: Path) -> Result:
    """Read a set and prove that each of its cases can be solved and heard."""
    from trainer.commands.set_commands.build_set import check_set

    return check_set(path, call.universes)


@sets.command()
@SET_PATH
@click.option("-o", "--output", type=FOLDER, required=True, help="Folder for the sounds and the sheet.")
@click.option("--learner", default="preview", show_default=True, help="Whose draws to show.")
@PASSPHRASE_FILE
@pass_call
def preview(call: Call, path: Path, output: Path, learner: str, passphrase_file: Path | None) -> Result:
    """Write every sound and a reveal sheet; never touches results."""
    from trainer.commands.set_commands.build_set import preview_set

    return preview_set(path, output, learner, passphrase_file, call.universes)


@sets.command()
@SET_PATH
@click.option("-o", "--output", type=FILE, required=True, help="The sealed file to write.")
@click.option("--force", is_flag=True, help="Write over a sealed file that is there.")
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
    """Tell what anybody may know of a set, sealed or not."""
    from trainer.commands.set_commands.build_set import show_set

    return show_set(path)


@sets.command()
@SET_PATH
@click.option("--learner", required=True, help="Name or code of who works it.")
@click.option("--text", "in_terminal", is_flag=True, help="Stay in the terminal.")
@click.option("--results", type=FOLDER, help="Folder for the bundle of results, for example a memory stick.")
@click.option("--sound", type=click.Choice(["device", "file"]), default="device", help="Play, or only write files.")
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
    """Work a set, case after case."""
    call.isolate()
    from trainer.commands.set_commands.work_set import WorkOptions, work_set

    return work_set(call, WorkOptions(path, learner, in_terminal, results, passphrase_file, sound == "file", device))
