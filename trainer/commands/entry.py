"""The command line: options and arguments; every command's work is in a file of its own, imported when it runs."""

from __future__ import annotations

from pathlib import Path

import click

from trainer import __version__
from trainer.commands.entry_learner import progress
from trainer.commands.entry_records import records
from trainer.commands.entry_sets import handout, sets
from trainer.commands.globals import AS_JSON, Globals
from trainer.commands.program import Program
from trainer.commands.result import finish

CASE = click.argument("case")


@click.group(cls=Program, invoke_without_command=True, context_settings={"help_option_names": ["-h", "--help"]})
@click.version_option(__version__, prog_name="injector-trainer")
@click.option("--json", "as_json", is_flag=True, help="Print one JSON document to standard output.")
@click.option("--data", type=click.Path(path_type=Path), help="Folder for the records.")
@click.option("--store", help="Shared store, like postgresql+psycopg://user@server/database.")
@click.pass_context
def main(context: click.Context, as_json: bool, data: Path | None, store: str | None) -> None:
    """Hear an injector actuation test, gather evidence, name the place of the fault."""
    context.obj = Globals(as_json, data, store, isolate=context.obj or _stay)
    if context.invoked_subcommand is None:
        context.invoke(practice)


@main.command()
@click.argument("case", required=False)
@click.option("--seed", type=click.IntRange(0, 2**31 - 1), help="Seed of the sound's small variations.")
@click.option("--text", is_flag=True, help="Stay in the terminal.")
@click.option("--learner", help="Whose record this is; me where nobody is named.")
@click.option("--new", is_flag=True, help="Begin afresh instead of going on with an attempt that has no end.")
@click.option("--sound", type=click.Choice(["device", "file"]), default="device", show_default=True,
              help="Play, or only write files.")  # fmt: skip
@click.option("--device", help="Output device by name.")
@click.option("--no-hints", is_flag=True, help="Refuse hints in this sitting.")
@click.pass_obj
def practice(
    options: Globals,
    case: str | None = None,
    seed: int | None = None,
    text: bool = False,
    learner: str | None = None,
    new: bool = False,
    sound: str = "device",
    device: str | None = None,
    no_hints: bool = False,
) -> None:
    """Work a case: shipped name, file or case code; without one, the next that suits."""
    if not text:
        options.isolate()  # an exam may be opened in the window
    from trainer.commands.practice import Wanted, practise

    wanted = Wanted(case, seed, text, learner, new, sound == "file", device, not no_hints, options.store)
    finish(lambda: practise(wanted, options.data), as_json=options.as_json)


@main.command()
@click.argument("profile", required=False)
@click.option("--device", help="Output device by name.")
@click.pass_obj
def bench(options: Globals, profile: str | None, device: str | None) -> None:
    """Open the free bench: pick any fault, hear it, measure it; for a class on a projector, not scored."""
    options.isolate()
    from trainer.commands.bench import open_bench

    finish(lambda: open_bench(profile, options.data, device, options.store), as_json=options.as_json)


@main.command()
@CASE
@click.option("-o", "--output", required=True, type=click.Path(dir_okay=False, path_type=Path), help="WAV to write.")
@click.option("--slot", help="Only this slot: all, or a cylinder's number.")
@click.option("--stand", default="front", show_default=True, help="Listening place.")
@click.option("--seed", type=click.IntRange(0, 2**31 - 1), help="Seed of the sound's small variations.")
@AS_JSON
@click.pass_obj
def hear(
    options: Globals, case: str, output: Path, slot: str | None, stand: str, seed: int | None, as_json: bool
) -> None:
    """Render what the learner would hear into a 24-bit WAV."""
    from trainer.commands.hear import hear_to_file

    finish(lambda: hear_to_file(case, output, slot, stand, seed), as_json=as_json or options.as_json)


@main.command()
@CASE
@click.option("--netlist", type=click.Path(dir_okay=False, path_type=Path), help="Write a slot as a SPICE netlist.")
@click.option("--slot", help="The netlist's slot: all, or a cylinder's number; the fault's own without it.")
@click.option("--loudness", is_flag=True, help="Add ISO 532-1 loudness (needs the extra 'loudness').")
@click.option("--why", help="Explain one hypothesis in bits, for example: '3 pass_through_connector open'.")
@AS_JSON
@click.pass_obj
def inspect(
    options: Globals, case: str, netlist: Path | None, slot: str | None, loudness: bool, why: str | None, as_json: bool
) -> None:
    """Show an instructor everything about a case: truth, slots, codes, readings, posterior, best path."""
    from trainer.commands.inspect import inspect_case

    finish(lambda: inspect_case(case, netlist, slot, loudness, why), as_json=as_json or options.as_json)


@main.command()
@click.argument("paths", nargs=-1, required=True, type=click.Path(path_type=Path))
@AS_JSON
@click.pass_obj
def check(options: Globals, paths: tuple[Path, ...], as_json: bool) -> None:
    """Check profiles, cases and sets: files, or folders of them."""
    from trainer.commands.check import check_paths
    from trainer.commands.stores import universes

    finish(lambda: check_paths(paths, universes()), as_json=as_json or options.as_json)


@main.command()
@AS_JSON
@click.pass_obj
def doctor(options: Globals, as_json: bool) -> None:
    """Look at this machine: sound, display, records, versions, each with its mend."""
    from trainer.commands.doctor import examine

    finish(lambda: examine(options.data, options.store), as_json=as_json or options.as_json)


@main.command()
@AS_JSON
@click.pass_obj
def profiles(options: Globals, as_json: bool) -> None:
    """List the shipped engines."""
    from trainer.commands.listing import list_profiles

    finish(list_profiles, as_json=as_json or options.as_json)


@main.command()
@click.option("--titles", is_flag=True, help="With names and titles, which tell much of the fault.")
@AS_JSON
@click.pass_obj
def cases(options: Globals, titles: bool, as_json: bool) -> None:
    """List the shipped cases by number, for `practice`; the number tells nothing of the fault."""
    from trainer.commands.listing import list_cases

    finish(lambda: list_cases(titles=titles), as_json=as_json or options.as_json)


@main.command()
@click.argument("profile")
@click.option("--difficulty", type=click.IntRange(1, 3), default=2, show_default=True)
@click.option("--seed", type=click.IntRange(0), help="Draw this one; without it, another every time.")
@AS_JSON
@click.pass_obj
def draw(options: Globals, profile: str, difficulty: int, seed: int | None, as_json: bool) -> None:
    """Draw a case and print its case code."""
    from trainer.commands.listing import draw_code

    finish(lambda: draw_code(profile, difficulty, seed), as_json=as_json or options.as_json)


main.add_command(sets)
main.add_command(records)
main.add_command(progress)
main.add_command(handout)


def run() -> None:
    """Run the program in a process of its own, which may start itself over."""
    from trainer.commands.isolation import isolate

    main(obj=isolate)


def _stay() -> None:
    """Leave a process alone that only calls the program, as a test does."""
