"""What people do over a station's folder, in this process: every command over records, and the window's first screens."""

from __future__ import annotations

import json
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from dataclasses import dataclass, field
from pathlib import Path

from click.testing import CliRunner

from tests.exam_sets import seated, sitting_of
from tests.fuzz.world import BEGUN_CASE, FINISHED_CASE, LEARNER, World
from tests.universes import UNIVERSES
from tests.window_hands import Hands
from trainer.commands.entry import main
from trainer.desk.caching_solver import CachingSolver
from trainer.desk.settings import read_settings
from trainer.errors import ProblemsFoundError, UserError
from trainer.records.class_report import exports
from trainer.records.class_report.collect import collect
from trainer.records.class_report.marking import mark_set
from trainer.records.class_report.results import stored_sets, with_damaged_results
from trainer.records.store.backup import restore_backup
from trainer.records.store.bundle import BundleError, bundle_bytes, read_bundle
from trainer.records.store.learner_record import import_record
from trainer.records.store.store import Store, open_store
from trainer.sets.set_access import OpenedSet, open_set
from trainer.words import message_of


class RefusedError(Exception):
    """Raised where the records were not opened: it was told, and nothing more can be done."""


@dataclass
class Said:
    """What the program said to a person, and how it ended each time; `carried` attempts, -1 before any were."""

    codes: list[int] = field(default_factory=list)
    output: list[str] = field(default_factory=list)
    carried: int = -1

    @property
    def good(self) -> bool:
        """Whether nothing was refused."""
        return not any(self.codes)

    def refused(self, error: UserError | ProblemsFoundError) -> None:
        """Take down an error as it is told."""
        self.codes.append(error.exit_code)
        self.output.append(message_of(error))


def command(said: Said, data: Path, *words: object, typed: str = "") -> int:
    """Run one command; what it raises but its own errors is raised here."""
    done = CliRunner().invoke(main, ["--data", str(data), *map(str, words)], input=typed)
    if done.exception is not None and not isinstance(done.exception, SystemExit):
        raise done.exception
    assert "Traceback" not in done.output
    said.codes.append(done.exit_code)
    said.output.append(done.output)
    return done.exit_code


def opened_set(world: World) -> OpenedSet:
    """Return the set of a world; read once, since it is the same in every copy."""
    return _set_of(world.set_file.read_bytes(), str(world.set_file))


_SETS: dict[bytes, OpenedSet] = {}


def _set_of(content: bytes, path: str) -> OpenedSet:
    if content not in _SETS:
        _SETS[content] = open_set(Path(path), lambda: "")
    return _SETS[content]


@contextmanager
def records(world: World, said: Said) -> Iterator[Store]:
    """Open a world's records as commands over them do; the program's own errors are told."""
    try:
        store = open_store(world.data)
    except UserError as error:
        said.refused(error)
        raise RefusedError from error
    try:
        yield store
    except (UserError, ProblemsFoundError) as error:
        said.refused(error)
    finally:
        store.close()


def report(world: World, said: Said) -> None:
    """Write the class report."""
    command(said, world.data, "records", "report", "-o", world.out / "report.html")


def export(world: World, said: Said) -> None:
    """Export a set's results in every form."""
    with records(world, said) as store:
        for kept in stored_sets(store):
            whole = with_damaged_results(store, kept)
            for made in (exports.gradebook, exports.case_rows, exports.event_rows):
                said.output += [piece.decode("utf-8") for piece in made(store, whole, bom=False)]
            said.output += [line.decode("utf-8") for line in exports.xapi_lines(store, whole, "https://school.invalid")]


def progress(world: World, said: Said) -> None:
    """Look where a learner stands."""
    command(said, world.data, "--json", "progress", "--learner", LEARNER)
    command(said, world.data, "records", "list")


def carry(world: World, said: Said) -> None:
    """Write a learner's record to a file; what was written can be taken in elsewhere."""
    path = world.out / "carried.record"
    if command(said, world.data, "records", "carry", "--learner", LEARNER, "-o", path) == 0:
        said.carried = int(json.loads(path.read_bytes().split(b"\n", 1)[0])["attempts"])
        import_record(open_store(None), path, LEARNER)


def backup(world: World, said: Said) -> None:
    """Write a backup; what was written can be put back."""
    if command(said, world.data, "records", "backup", world.out / "again.gz") == 0:
        restore_backup(open_store(None), world.out / "again.gz")


def bundle(world: World, said: Said) -> None:
    """Write a learner's results of a set; what was written is taken, or shows that it is not as it was worked."""
    with records(world, said) as store:
        one = opened_set(world)
        made = bundle_bytes(store, one.case_set.id, one.case_set.name, LEARNER, one.key, "2026-12-02T08:00:00+00:00")
        with suppress(BundleError):
            read_bundle(made, one.case_set.id, one.key)


def mark(world: World, said: Said) -> None:
    """Collect another learner's results and mark everything."""
    with records(world, said) as store:
        one = opened_set(world)
        collect(store, [world.stick], one.case_set.id, [one.key])
        mark_set(store, one.case_set, [one.key], CachingSolver(), UNIVERSES, again=True)
        assert any(kept.id == one.case_set.id for kept in stored_sets(store))


def note(world: World, said: Said) -> None:
    """Let a result not count, and say until when results are kept."""
    command(said, world.data, "records", "void", "--learner", LEARNER, "--case", "1", "--reason", "noise")
    command(said, world.data, "records", "keep", "--until", "2099-01-01")


def take(world: World, said: Said) -> None:
    """Take a learner's record in."""
    command(said, world.data, "records", "take", "--learner", LEARNER, world.record)


def practise(world: World, said: Said) -> None:
    """Go on with a case in the terminal, and look at its job card."""
    for case in (BEGUN_CASE, FINISHED_CASE):
        words = ("practice", case, "--text", "--sound", "file", "--learner", LEARNER)
        command(said, world.data, *words, typed="card\nleave\n")


def sit(world: World, said: Said) -> None:
    """Sit down at a set, and write its results."""
    with records(world, said) as store:
        sitting = sitting_of(opened_set(world), store, LEARNER)
        if sitting.next_item is not None:
            seated(sitting)
        sitting.bundle(world.out)


def delete(world: World, said: Said) -> None:
    """Delete a learner, then a set."""
    command(said, world.data, "records", "delete", "--learner", LEARNER, "--yes")
    command(said, world.data, "records", "delete", "--set", "first_week", "--yes")


def window(world: World, said: Said) -> None:
    """Open the window on a folder: who is there, what waits, a case gone on with, progress, the instructor's page."""
    settings, _damaged = read_settings(world.settings)
    with records(world, said) as store:
        hands = Hands(store, settings=settings.changed(station_pin="", last_learner=""), folder=world.data)
        if hands.has("view.failed"):  # told on the screen: the table of attempts is not there
            said.codes.append(1)
            return
        hands.go("name").write(LEARNER).press("enter")
        if hands.has("progress"):
            hands.act("progress").press("escape")
        for begun in _named(hands, "begun.")[:1]:
            hands.act(begun)
            said.output.append(hands.shown)
            hands.press("escape")
        hands.shell.home()
        if hands.has("instructor"):
            hands.act("instructor")
            for name in (*_named(hands, "report."), *_named(hands, "marks.")):
                hands.act(name)
        said.output.append(hands.shown)
        hands.shell.end()


def _named(hands: Hands, begins: str) -> list[str]:
    return [name for name in hands.layout.order if name.startswith(begins)]


READING = (report, export, progress, carry, backup, bundle)
"""What changes nothing in a store."""

WRITING = (mark, note, take, practise, sit, delete, window)
