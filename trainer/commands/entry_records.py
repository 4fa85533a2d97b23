"""The command line of `records`: options and arguments only."""

from __future__ import annotations

from pathlib import Path

import click

from trainer.commands.globals import AS_JSON, FILE, FOLDER, PASSPHRASE_FILE, Globals
from trainer.commands.result import finish
from trainer.words.visible import visible

SET_FILE = click.option("--set", "set_path", type=FILE, required=True, help="The set, plain or sealed.")
SET = click.argument("named", metavar="[SET]", required=False)
OUTPUT = click.option("-o", "--output", type=FILE, required=True, help="File to write; a pipe or device is refused.")


@click.group()
def records() -> None:
    """Collect, mark, report, export and keep results."""


@records.command()
@click.argument("folders", nargs=-1, required=True, type=click.Path(path_type=Path))
@SET_FILE
@PASSPHRASE_FILE
@AS_JSON
@click.pass_obj
def collect(
    options: Globals, folders: tuple[Path, ...], set_path: Path, passphrase_file: Path | None, as_json: bool
) -> None:
    """Merge bundles of results from folders or sticks, and mark them."""
    from trainer.commands.records import collect_results

    finish(
        lambda: collect_results(folders, set_path, passphrase_file, options.data, options.store),
        as_json=as_json or options.as_json,
    )


@records.command()
@SET_FILE
@click.option("--again", is_flag=True, help="Mark everything anew.")
@PASSPHRASE_FILE
@AS_JSON
@click.pass_obj
def mark(options: Globals, set_path: Path, again: bool, passphrase_file: Path | None, as_json: bool) -> None:
    """Mark attempts that lie in the records already, as in a shared store."""
    from trainer.commands.records import mark_results

    finish(
        lambda: mark_results(set_path, passphrase_file, options.data, options.store, again=again),
        as_json=as_json or options.as_json,
    )


@records.command("list")
@AS_JSON
@click.pass_obj
def list_(options: Globals, as_json: bool) -> None:
    """List the sets that have results here."""
    from trainer.commands.records import list_results

    finish(lambda: list_results(options.data, options.store), as_json=as_json or options.as_json)


@records.command()
@SET
@OUTPUT
@AS_JSON
@click.pass_obj
def report(options: Globals, named: str | None, output: Path, as_json: bool) -> None:
    """Write the class report, one page for a browser or a printer."""
    from trainer.commands.records import write_report

    finish(lambda: write_report(named, output, options.data, options.store), as_json=as_json or options.as_json)


@records.command()
@click.argument("kind", type=click.Choice(["gradebook", "cases", "events", "xapi"]))
@SET
@OUTPUT
@click.option("--bom", is_flag=True, help="Begin a CSV with the mark that some spreadsheets need for UTF-8.")
@click.option("--home", help="For xapi: the address under which your accounts are known.")
@AS_JSON
@click.pass_obj
def export(
    options: Globals, kind: str, named: str | None, output: Path, bom: bool, home: str | None, as_json: bool
) -> None:
    """Export results: gradebook (a row a learner), cases (a row a case), events, or xAPI statements."""
    from trainer.commands.records import export_results

    finish(
        lambda: export_results(kind, named, output, options.data, options.store, bom=bom, home=home),
        as_json=as_json or options.as_json,
    )


@records.command()
@click.argument("path", type=FILE)
@click.option("--instead", is_flag=True, help="In the place of everybody on the roster so far.")
@AS_JSON
@click.pass_obj
def roster(options: Globals, path: Path, instead: bool, as_json: bool) -> None:
    """Add people to the roster: a CSV with the columns learner, name, class."""
    from trainer.commands.keeping import take_roster

    finish(lambda: take_roster(path, options.data, options.store, instead=instead), as_json=as_json or options.as_json)


@records.command()
@SET
@click.option("--learner", required=True)
@click.option("--case", "item", type=click.IntRange(1), required=True, help="Number of the case in the set.")
@click.option("--reason", required=True)
@AS_JSON
@click.pass_obj
def void(options: Globals, named: str | None, learner: str, item: int, reason: str, as_json: bool) -> None:
    """Let one learner's case not count; what was done is kept."""
    from trainer.commands.keeping import write_note

    finish(
        lambda: write_note("void", named, learner, item, reason, options.data, options.store),
        as_json=as_json or options.as_json,
    )


@records.command()
@SET
@click.option("--learner", default="", help="About one learner.")
@click.option("--case", "item", type=click.IntRange(1), default=None, help="About one case.")
@click.option("--text", "words", required=True)
@AS_JSON
@click.pass_obj
def comment(options: Globals, named: str | None, learner: str, item: int | None, words: str, as_json: bool) -> None:
    """Add a comment that stands in the report."""
    from trainer.commands.keeping import write_note

    finish(
        lambda: write_note("comment", named, learner, item or 0, words, options.data, options.store),
        as_json=as_json or options.as_json,
    )


@records.command()
@SET_FILE
@click.option("--case", "item", type=click.IntRange(1), required=True, help="Number of the case in the set.")
@click.option("--answer", required=True, help="For example: '3 pass_through_connector open', or circuit_passes.")
@click.option("--reason", required=True)
@PASSPHRASE_FILE
@AS_JSON
@click.pass_obj
def regrade(
    options: Globals, set_path: Path, item: int, answer: str, reason: str, passphrase_file: Path | None, as_json: bool
) -> None:
    """Mark one case anew for everybody, by another right answer."""
    from trainer.commands.records import regrade as regraded

    finish(
        lambda: regraded(set_path, item, answer, reason, passphrase_file, options.data, options.store),
        as_json=as_json or options.as_json,
    )


@records.command()
@SET
@click.option("--until", type=click.DateTime(["%Y-%m-%d"]), required=True, help="The last day.")
@AS_JSON
@click.pass_obj
def keep(options: Globals, named: str | None, until: object, as_json: bool) -> None:
    """Say until which day the results of a set are kept."""
    from trainer.commands.keeping import keep_results

    finish(
        lambda: keep_results(named, str(until)[:10], options.data, options.store), as_json=as_json or options.as_json
    )


@records.command()
@click.option("--learner", help="Delete everything of one learner.")
@click.option("--set", "named", help="Delete the results of one set, by name or id.")
@click.option("--overdue", is_flag=True, help="Delete every set that is past its last day.")
@click.option("--yes", is_flag=True, help="Do not ask.")
@AS_JSON
@click.pass_obj
def delete(options: Globals, learner: str | None, named: str | None, overdue: bool, yes: bool, as_json: bool) -> None:
    """Delete a learner or a set for good."""
    from trainer.commands.keeping import delete_results

    def sure(question: str) -> bool:
        return yes or click.confirm(visible(question), err=True)

    finish(
        lambda: delete_results(learner, named, overdue=overdue, data=options.data, url=options.store, sure=sure),
        as_json=as_json or options.as_json,
    )


@records.command()
@click.argument("path", type=FILE)
@AS_JSON
@click.pass_obj
def backup(options: Globals, path: Path, as_json: bool) -> None:
    """Write all records into one packed file."""
    from trainer.commands.keeping import back_up

    finish(lambda: back_up(path, options.data, options.store), as_json=as_json or options.as_json)


@records.command()
@click.argument("path", type=FILE)
@AS_JSON
@click.pass_obj
def restore(options: Globals, path: Path, as_json: bool) -> None:
    """Put a backup into records that are empty."""
    from trainer.commands.keeping import restore as restored

    finish(lambda: restored(path, options.data, options.store), as_json=as_json or options.as_json)


@records.command()
@AS_JSON
@click.pass_obj
def deliver(options: Globals, as_json: bool) -> None:
    """Carry what waits on this machine to the shared store."""
    from trainer.commands.keeping import deliver as delivered

    finish(lambda: delivered(options.data, options.store), as_json=as_json or options.as_json)


@records.command()
@SET_FILE
@click.option("--learner", required=True)
@click.option("-o", "--output", type=FOLDER, required=True, help="Folder for the bundle.")
@PASSPHRASE_FILE
@AS_JSON
@click.pass_obj
def bundle(
    options: Globals, set_path: Path, learner: str, output: Path, passphrase_file: Path | None, as_json: bool
) -> None:
    """Write a learner's bundle of results once more."""
    from trainer.commands.records import bundle_results

    finish(
        lambda: bundle_results(set_path, learner, output, passphrase_file, options.data),
        as_json=as_json or options.as_json,
    )
