"""The command line of `hear`, `inspect`, `handout`, `check`, `fair`, `profiles`, `cases` and `draw`."""

from __future__ import annotations

from pathlib import Path

import click

from trainer.commands.call.call import Call, pass_call
from trainer.commands.call.options import CASE, FILE, SEED
from trainer.commands.call.result import Result


@click.command()
@CASE
@click.option("-o", "--output", required=True, type=FILE, help="WAV to write.")
@click.option("--slot", help="Only this slot: all, or a cylinder number.")
@click.option("--stand", default="front", show_default=True, help="Listening place.")
@click.option(
    "--listener",
    metavar="NAME",
    help="As another output plays it: good_headphones, cheap_headphones, laptop or phone. Listen on good headphones.",
)
@SEED
@pass_call
def hear(
    _call: Call, case: str, output: Path, slot: str | None, stand: str, listener: str | None, seed: int | None
) -> Result:
    """Save what the learner would hear as a 24-bit WAV file."""
    from trainer.commands.case_commands.write_sound import write_sound

    return write_sound(case, output, slot, stand, seed, listener)


@click.command()
@CASE
@click.option("--netlist", type=FILE, help="Write a slot as a SPICE netlist.")
@click.option("--slot", help="Slot for the netlist: all, or a cylinder number. Default: the faulty one.")
@click.option("--loudness", is_flag=True, help="Add ISO 532-1 loudness (needs the extra 'loudness').")
@click.option("--why", help="Explain one hypothesis in bits, for example: '3 pass_through_connector open'.")
@pass_call
def inspect(call: Call, case: str, netlist: Path | None, slot: str | None, loudness: bool, why: str | None) -> Result:
    """Show an instructor everything about a case, with the answer."""
    from trainer.commands.case_commands.inspect_case import inspect_case

    return inspect_case(case, call.universes, netlist, slot, loudness=loudness, why=why)


@click.command()
@click.argument("paths", nargs=-1, required=True, type=click.Path(path_type=Path))
@pass_call
def check(call: Call, paths: tuple[Path, ...]) -> Result:
    """Check engine profiles, cases and sets, as files or folders."""
    from trainer.commands.case_commands.check_files import check_paths

    return check_paths(paths, call.universes)


@click.command()
@click.argument("paths_or_names", nargs=-1, metavar="[PATH_OR_NAME]...", type=click.Path(path_type=Path))
@pass_call
def fair(_call: Call, paths_or_names: tuple[Path, ...]) -> Result:
    """Show for which outputs and ears cases are fair. Default: all shipped cases.

    Names are those of shipped cases. Files and folders hold cases and sets. This is about outputs and the typical
    ears of an age. It is no test of anybody's hearing.
    """
    from trainer.commands.call.streams import tell
    from trainer.commands.case_commands.show_fairness import show_fairness

    return show_fairness(paths_or_names, tell)


@click.command()
@CASE
@click.option("-o", "--output", type=FILE, required=True, help="The page to write.")
@pass_call
def handout(_call: Call, case: str, output: Path) -> Result:
    """Write one page with sound and pictures to give to a customer or a class."""
    from trainer.commands.case_commands.write_handout import write_handout

    return write_handout(case, output)


@click.command()
@pass_call
def profiles(_call: Call) -> Result:
    """List the shipped engines."""
    from trainer.commands.case_commands.list_shipped import list_profiles

    return list_profiles()


@click.command()
@click.option("--titles", is_flag=True, help="Show names and titles too. They give much of the fault away.")
@pass_call
def cases(_call: Call, titles: bool) -> Result:
    """List the shipped cases by number. The number gives nothing away."""
    from trainer.commands.case_commands.list_shipped import list_cases

    return list_cases(titles=titles)


@click.command()
@click.argument("profile")
@click.option("--difficulty", type=click.IntRange(1, 3), default=2, show_default=True)
@click.option(
    "--seed", type=click.IntRange(0), help="Draw the same case again. Without it, you get another one every time."
)
@pass_call
def draw(_call: Call, profile: str, difficulty: int, seed: int | None) -> Result:
    """Draw a case and print its case code."""
    from trainer.commands.case_commands.list_shipped import draw_code

    return draw_code(profile, difficulty, seed)
