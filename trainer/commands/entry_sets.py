"""The command line of `set` and `handout`: options and arguments only."""

from __future__ import annotations

from pathlib import Path

import click

from trainer.commands.globals import AS_JSON, FILE, FOLDER, PASSPHRASE_FILE, Globals
from trainer.commands.result import finish


@click.group("set")
def sets() -> None:
    """Build, check, preview, seal and work sets of cases."""


@sets.command()
@click.argument("path", type=FILE)
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
@AS_JSON
@click.pass_obj
def make(options: Globals, /, path: Path, as_json: bool, force: bool, **chosen: object) -> None:
    """Write a set file from a few choices; edit it further with any text editor."""
    from trainer.commands.set_draft import draft_from
    from trainer.commands.sets import make_set

    finish(lambda: make_set(draft_from(path, chosen), path, force=force), as_json=as_json or options.as_json)


@sets.command("check")
@click.argument("path", type=FILE)
@AS_JSON
@click.pass_obj
def check_(options: Globals, path: Path, as_json: bool) -> None:
    """Read a set and prove that each of its cases can be solved and heard."""
    from trainer.commands.sets import check_set
    from trainer.commands.stores import universes
    from trainer.commands.streams import tell

    finish(lambda: check_set(path, universes(), tell), as_json=as_json or options.as_json)


@sets.command()
@click.argument("path", type=FILE)
@click.option("-o", "--output", type=FOLDER, required=True, help="Folder for the sounds and the sheet.")
@click.option("--learner", default="preview", show_default=True, help="Whose draws to show.")
@PASSPHRASE_FILE
@AS_JSON
@click.pass_obj
def preview(
    options: Globals, path: Path, output: Path, learner: str, passphrase_file: Path | None, as_json: bool
) -> None:
    """Write every sound and a reveal sheet; never touches results."""
    from trainer.commands.sets import preview_set
    from trainer.commands.stores import universes

    finish(lambda: preview_set(path, output, learner, passphrase_file, universes()), as_json=as_json or options.as_json)


@sets.command("seal")
@click.argument("path", type=FILE)
@click.option("-o", "--output", type=FILE, required=True, help="The sealed file to write.")
@click.option("--force", is_flag=True, help="Write over a sealed file that is there.")
@PASSPHRASE_FILE
@AS_JSON
@click.pass_obj
def seal_(options: Globals, path: Path, output: Path, force: bool, passphrase_file: Path | None, as_json: bool) -> None:
    """Write a set as one file that cannot be read without its passphrase."""
    from trainer.commands.sets import seal_set

    finish(lambda: seal_set(path, output, passphrase_file, force=force), as_json=as_json or options.as_json)


@sets.command()
@click.argument("path", type=FILE)
@AS_JSON
@click.pass_obj
def show(options: Globals, path: Path, as_json: bool) -> None:
    """Tell what anybody may know of a set, sealed or not."""
    from trainer.commands.sets import show_set

    finish(lambda: show_set(path), as_json=as_json or options.as_json)


@sets.command()
@click.argument("path", type=FILE)
@click.option("--learner", required=True, help="Name or code of who works it.")
@click.option("--text", "terminal", is_flag=True, help="Stay in the terminal.")
@click.option("--results", type=FOLDER, help="Folder for the bundle of results, for example a memory stick.")
@click.option("--sound", type=click.Choice(["device", "file"]), default="device", help="Play, or only write files.")
@click.option("--device", help="Output device by name.")
@PASSPHRASE_FILE
@click.pass_obj
def sit(
    options: Globals,
    path: Path,
    learner: str,
    terminal: bool,
    results: Path | None,
    sound: str,
    device: str | None,
    passphrase_file: Path | None,
) -> None:
    """Work a set, case after case."""
    options.isolate()
    from trainer.commands.sets import Sat, sit_at_set

    wanted = Sat(path, learner, terminal, results, passphrase_file, sound == "file", device, options.store)
    finish(lambda: sit_at_set(wanted, options.data), as_json=options.as_json)


@click.command()
@click.argument("case")
@click.option("-o", "--output", type=FILE, required=True, help="The page to write.")
@AS_JSON
@click.pass_obj
def handout(options: Globals, case: str, output: Path, as_json: bool) -> None:
    """Write one page with sound and pictures to give to a customer or a class."""
    from trainer.commands.handout import write_handout

    finish(lambda: write_handout(case, output), as_json=as_json or options.as_json)
