"""The command line of `records`."""

from __future__ import annotations

from pathlib import Path

import click

from trainer.commands.call.call import Call, pass_call
from trainer.commands.call.options import FILE, FOLDER, LEARNER, PASSPHRASE_FILE
from trainer.commands.call.result import Result
from trainer.words.visible import visible

SET_FILE = click.option("--set", "set_path", type=FILE, required=True, help="The set, plain or sealed.")
SET = click.argument("named", metavar="[SET]", required=False)
OUTPUT = click.option("-o", "--output", type=FILE, required=True, help="File to write. Pipes and devices are refused.")


@click.group()
def records() -> None:
    """Collect, mark, report, export and keep results."""


@records.command()
@click.argument("folders", nargs=-1, required=True, type=click.Path(path_type=Path))
@SET_FILE
@PASSPHRASE_FILE
@pass_call
def collect(call: Call, folders: tuple[Path, ...], set_path: Path, passphrase_file: Path | None) -> Result:
    """Collect results from folders or USB sticks, and mark them."""
    from trainer.commands.records_commands.mark_results import collect_results

    return collect_results(call, folders, set_path, passphrase_file)


@records.command()
@SET_FILE
@click.option("--again", is_flag=True, help="Mark everything again.")
@PASSPHRASE_FILE
@pass_call
def mark(call: Call, set_path: Path, again: bool, passphrase_file: Path | None) -> Result:
    """Mark attempts that are already in the records, for example in a shared store."""
    from trainer.commands.records_commands.mark_results import mark_results

    return mark_results(call, set_path, passphrase_file, again=again)


@records.command("list")
@pass_call
def list_(call: Call) -> Result:
    """List the sets that have results here."""
    from trainer.commands.records_commands.mark_results import list_results

    return list_results(call)


@records.command()
@SET
@OUTPUT
@pass_call
def report(call: Call, named: str | None, output: Path) -> Result:
    """Write the class report, one page for a browser or a printer."""
    from trainer.commands.records_commands.mark_results import write_report

    return write_report(call, named, output)


@records.command()
@click.argument("kind", type=click.Choice(["gradebook", "cases", "events", "xapi"]))
@SET
@OUTPUT
@click.option("--bom", is_flag=True, help="Start a CSV with the mark that some spreadsheets need for UTF-8.")
@click.option("--home", help="For xapi: the web address that your accounts belong to.")
@pass_call
def export(call: Call, kind: str, named: str | None, output: Path, bom: bool, home: str | None) -> Result:
    """Export results: gradebook (one row a learner), cases (one row a case), events or xAPI statements."""
    from trainer.commands.records_commands.mark_results import export_results

    return export_results(call, kind, named, output, bom=bom, home=home)


@records.command()
@click.argument("path", type=FILE)
@click.option("--instead", is_flag=True, help="Replace everybody on the roster.")
@pass_call
def roster(call: Call, path: Path, instead: bool) -> Result:
    """Add people to the roster: a CSV with the columns learner, name, class."""
    from trainer.commands.records_commands.keep_results import take_roster

    return take_roster(call, path, instead=instead)


@records.command()
@SET
@click.option("--learner", required=True)
@click.option("--case", "item", type=click.IntRange(1), required=True, help="Number of the case in the set.")
@click.option("--reason", required=True)
@pass_call
def void(call: Call, named: str | None, learner: str, item: int, reason: str) -> Result:
    """Leave one learner's case out of the marks. Its record stays."""
    from trainer.commands.records_commands.keep_results import write_note

    return write_note(call, "void", named, learner, item, reason)


@records.command()
@SET
@click.option("--learner", default="", help="About one learner.")
@click.option("--case", "item", type=click.IntRange(1), default=None, help="About one case.")
@click.option("--text", "words", required=True)
@pass_call
def comment(call: Call, named: str | None, learner: str, item: int | None, words: str) -> Result:
    """Add a comment to the report."""
    from trainer.commands.records_commands.keep_results import write_note

    return write_note(call, "comment", named, learner, item or 0, words)


@records.command()
@SET_FILE
@click.option("--case", "item", type=click.IntRange(1), required=True, help="Number of the case in the set.")
@click.option("--answer", required=True, help="For example: '3 pass_through_connector open', or circuit_passes.")
@click.option("--reason", required=True)
@PASSPHRASE_FILE
@pass_call
def regrade(call: Call, set_path: Path, item: int, answer: str, reason: str, passphrase_file: Path | None) -> Result:
    """Mark one case again for everybody, with one more right answer."""
    from trainer.commands.records_commands.mark_results import regrade as regraded

    return regraded(call, set_path, item, answer, reason, passphrase_file)


@records.command()
@SET
@click.option("--until", type=click.DateTime(["%Y-%m-%d"]), required=True, help="The last day.")
@pass_call
def keep(call: Call, named: str | None, until: object) -> Result:
    """Set the last day on which the results of a set are kept."""
    from trainer.commands.records_commands.keep_results import keep_results

    return keep_results(call, named, str(until)[:10])


@records.command()
@click.option("--learner", help="Delete everything of one learner.")
@click.option("--set", "named", help="Delete the results of one set, by name or id.")
@click.option("--overdue", is_flag=True, help="Delete every set that is past its last day.")
@click.option("--yes", is_flag=True, help="Do not ask.")
@pass_call
def delete(call: Call, learner: str | None, named: str | None, overdue: bool, yes: bool) -> Result:
    """Delete a learner or a set for good."""
    from trainer.commands.records_commands.keep_results import delete_results

    def confirm(question: str) -> bool:
        return yes or click.confirm(visible(question), err=True)

    return delete_results(call, learner, named, overdue=overdue, confirm=confirm)


@records.command()
@click.argument("path", type=FILE)
@pass_call
def backup(call: Call, path: Path) -> Result:
    """Save all records in one compressed file."""
    from trainer.commands.records_commands.keep_results import back_up

    return back_up(call, path)


@records.command()
@click.argument("path", type=FILE)
@pass_call
def restore(call: Call, path: Path) -> Result:
    """Restore a backup into empty records."""
    from trainer.commands.records_commands.keep_results import restore as restored

    return restored(call, path)


@records.command()
@pass_call
def deliver(call: Call) -> Result:
    """Send what is waiting on this machine to the shared store."""
    from trainer.commands.records_commands.keep_results import deliver as delivered

    return delivered(call)


@records.command()
@SET_FILE
@click.option("--learner", required=True)
@click.option("-o", "--output", type=FOLDER, required=True, help="Folder for the results file.")
@PASSPHRASE_FILE
@pass_call
def bundle(call: Call, set_path: Path, learner: str, output: Path, passphrase_file: Path | None) -> Result:
    """Write a learner's results file once more."""
    from trainer.commands.records_commands.mark_results import bundle_results

    return bundle_results(call, set_path, learner, output, passphrase_file)


@records.command()
@LEARNER
@click.option("-o", "--output", type=FILE, required=True, help="Record file to write.")
@pass_call
def carry(call: Call, learner: str | None, output: Path) -> Result:
    """Save a learner's record, to take it to another machine."""
    from trainer.commands.records_commands.own_record import carry_record

    return carry_record(call, learner, output)


@records.command()
@click.argument("path", type=FILE)
@LEARNER
@pass_call
def take(call: Call, path: Path, learner: str | None) -> Result:
    """Import a learner's record from another machine. Nothing is lost, and nothing is imported twice."""
    from trainer.commands.records_commands.own_record import take_record

    return take_record(call, path, learner)
