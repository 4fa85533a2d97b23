"""Makes, checks, previews, seals and shows sets."""

from __future__ import annotations

import os
from pathlib import Path

from trainer.cases.files.plain_file import is_there
from trainer.cases.files.whole_file import write_bytes
from trainer.cases.solved.universe_cache import Universes
from trainer.commands.call.json_document import JsonValue
from trainer.commands.call.result import Result, problems_result
from trainer.commands.call.set_passphrase import passphrase_from
from trainer.commands.call.streams import tell
from trainer.desk.preview import write_preview
from trainer.errors import WrongCallError
from trainer.practice.reports.set_lines import head_lines, weak_spots
from trainer.sets.case_set import CaseSet
from trainer.sets.opening import open_set
from trainer.sets.pack import pack_from
from trainer.sets.proofs import set_problems
from trainer.sets.sealed import is_sealed, read_head, seal
from trainer.sets.set_file import read_set, set_of
from trainer.sets.text import SetDraft, set_text
from trainer.words import text


def make_set(draft: SetDraft, path: Path, *, force: bool) -> Result:
    """Write a set file that has been read back as good; raises WrongCallError for one that is there already."""
    if is_there(path) and not force:
        raise WrongCallError("file_exists", path=path)
    content = set_text(draft)
    case_set = set_of(pack_from(content, path.name, path.parent), path.name)
    write_bytes(path, content.encode("utf-8"))
    return Result((text("set.made", path=path, size=case_set.size),), _document(case_set, path))


def check_set(path: Path, universes: Universes) -> Result:
    """Read a set and prove each of its cases; draws for each learner are proved for a few learners."""
    case_set = read_set(path)
    problems = set_problems(case_set, path.name, universes, tell)
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
    """Return what anybody may know of a set, sealed or not."""
    if not is_sealed(path):
        case_set = read_set(path)
        return Result((*head_lines(case_set, ""), *weak_spots(case_set)), _document(case_set, path))
    head = read_head(path)
    shown = text("set.head", title=head.title, mode=text(f"mode.{head.mode}"), size=head.size)
    document: dict[str, JsonValue] = {
        "set": head.name,
        "title": head.title,
        "mode": head.mode,
        "size": head.size,
        "sealed": True,
    }
    closes = [text("set.closes", moment=head.closes[:16])] if head.closes else []
    return Result((shown, *closes, text("set.head_unproved")), document)


def _document(case_set: CaseSet, path: Path) -> dict[str, JsonValue]:
    return {
        "file": str(path), "set": case_set.name, "id": case_set.id, "title": case_set.title,
        "mode": str(case_set.policy.mode), "size": case_set.size, "problems": [],
    }  # fmt: skip
