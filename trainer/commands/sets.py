"""set: builds, checks, previews and seals sets, and sits a learner down at one."""

from __future__ import annotations

import os
import time
from collections.abc import Callable
from contextlib import closing
from dataclasses import dataclass, replace
from pathlib import Path
from typing import TYPE_CHECKING

from trainer.cases.files.plain_file import is_there
from trainer.cases.files.whole_file import write_bytes
from trainer.cases.solved.universe_cache import Universes
from trainer.commands.passphrase import passphrase_from
from trainer.commands.result import Result, problems_result
from trainer.commands.stores import data_folder, now_utc, store_for, universes
from trainer.commands.streams import ask, say, tell
from trainer.desk.learner_name import learner_name
from trainer.desk.preview import write_preview
from trainer.desk.process_guard import guards_missing
from trainer.desk.set_sitting import Sitting
from trainer.errors import WrongCallError
from trainer.output.returning_player import terminal_player
from trainer.practice.reports.set_lines import head_lines, weak_spots
from trainer.sets.case_set import CaseSet
from trainer.sets.opening import OpenedSet, open_set, refuse_open_exam
from trainer.sets.pack import pack_from
from trainer.sets.proofs import set_problems
from trainer.sets.sealed import is_sealed, read_head, seal
from trainer.sets.set_file import read_set, set_of
from trainer.sets.text import SetDraft, set_text
from trainer.terminal.set_session import SetSession
from trainer.words import message_of, text

if TYPE_CHECKING:
    from trainer.window.shell.shell import Shell


def make_set(draft: SetDraft, path: Path, *, force: bool) -> Result:
    """Write a set file that has been read back as good; raises WrongCallError for one that is there already."""
    if is_there(path) and not force:
        raise WrongCallError("file_exists", path=path)
    content = set_text(draft)
    case_set = set_of(pack_from(content, path.name, path.parent), path.name)
    write_bytes(path, content.encode("utf-8"))
    return Result((text("set.made", path=path, size=case_set.size),), _document(case_set, path))


def check_set(path: Path, universes: Universes, told_: Callable[[str], None]) -> Result:
    """Read a set and prove each of its cases; draws for each learner are proved for a few learners."""
    case_set = read_set(path)
    problems = set_problems(case_set, path.name, universes, told_)
    if problems:
        return problems_result(problems)
    good = text("set.good", path=path, size=case_set.size)
    return Result((good, *weak_spots(case_set)), _document(case_set, path))


def preview_set(path: Path, folder: Path, learner: str, passphrase_file: Path | None, universes: Universes) -> Result:
    """Write a set's sounds and its reveal sheet; no record is opened, let alone written."""
    opened = open_set(path, passphrase_from(passphrase_file))
    written = write_preview(opened.case_set, learner, folder, universes, tell)
    document = {**_document(opened.case_set, path), "folder": str(folder), "files": [str(one) for one in written]}
    return Result((text("set.previewed", count=len(written), folder=folder),), document)


def seal_set(path: Path, output: Path, passphrase_file: Path | None, *, force: bool) -> Result:
    """Write a set sealed; what sealing does not stop is said each time.

    Raises WrongCallError for a file that is there, and never writes over the set itself.
    """
    case_set = read_set(path)
    if os.path.realpath(output) == os.path.realpath(path) or (is_there(output) and not force):
        raise WrongCallError("file_exists", path=output)
    seal(case_set, passphrase_from(passphrase_file, twice=True)(), output)
    return Result(
        (
            text("set.sealed", path=output, size=case_set.size),
            text("set.sealed_means"),
            *weak_spots(case_set),
        ),
        _document(case_set, output),
    )


def show_set(path: Path) -> Result:
    """Tell what anybody may know of a set."""
    if not is_sealed(path):
        case_set = read_set(path)
        return Result((*head_lines(case_set, ""), *weak_spots(case_set)), _document(case_set, path))
    head = read_head(path)
    shown = text("set.head", title=head.title, mode=text(f"mode.{head.mode}"), size=head.size)
    document = {"set": head.name, "title": head.title, "mode": head.mode, "size": head.size, "sealed": True}
    closes = [text("set.closes", moment=head.closes[:16])] if head.closes else []
    return Result((shown, *closes, text("set.head_unproved")), document)


def _document(case_set: CaseSet, path: Path) -> dict[str, object]:
    return {
        "file": str(path), "set": case_set.name, "id": case_set.id, "title": case_set.title,
        "mode": str(case_set.policy.mode), "size": case_set.size, "problems": [],
    }  # fmt: skip


@dataclass(frozen=True, slots=True)
class Sat:
    """What a person asked `set sit` for."""

    path: Path
    learner: str
    terminal: bool
    results: Path | None
    passphrase_file: Path | None
    to_file: bool
    device: str | None
    store: str | None


def sit_at_set(wanted: Sat, data: Path | None) -> Result:
    """Sit a learner down at a set, in the window or in the terminal."""
    opened = open_set(wanted.path, passphrase_from(wanted.passphrase_file))
    refuse_open_exam(opened, wanted.path.name)
    wanted = replace(wanted, learner=learner_name(wanted.learner))
    if not wanted.terminal and _window_opens(wanted, opened, data):
        return Result()
    return _in_terminal(wanted, opened, data)


def _window_opens(wanted: Sat, opened: OpenedSet, data: Path | None) -> bool:
    from trainer.commands.window import Asked, can_open, open_window
    from trainer.output.doctor import pygame_check

    if not pygame_check().good or not can_open():
        tell(text("window.absent"))
        return False

    def then(shell: Shell) -> None:
        from trainer.window.course.set_page import SetScreen

        shell.show(SetScreen(shell, opened, wanted.learner, results_folder(wanted.results, data)))

    open_window(data, then, Asked(wanted.device, wanted.to_file, wanted.learner, store=wanted.store))
    return True


def results_folder(named: Path | None, data: Path | None) -> Path:
    """Return where bundles of results are written."""
    return named if named is not None else data_folder(data) / "results"


def _in_terminal(wanted: Sat, opened: OpenedSet, data: Path | None) -> Result:
    with (
        closing(store_for(data, wanted.store)) as store,
        terminal_player(wanted.device, tell, to_file=wanted.to_file) as player,
    ):
        lost = store.fetch(wanted.learner)
        if lost is not None:
            tell(text("delivery.not_fetched", reason=message_of(lost)))
        sitting = Sitting(opened, wanted.learner, store, now_utc, time.monotonic, guards_missing())
        session = SetSession(
            sitting,
            player,
            universes(),
            results_folder(wanted.results, data),
            ask,
            say,
            passphrase_from(wanted.passphrase_file),
        )
        session.run()
    return Result()
