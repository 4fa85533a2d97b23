"""Makes, checks, previews, seals and shows sets."""

from __future__ import annotations

from pathlib import Path

from trainer.cases.solved.universe_cache import Universes
from trainer.commands.call.json_document import JsonValue
from trainer.commands.call.result import Result, problems_result
from trainer.commands.call.set_passphrase import passphrase_from
from trainer.commands.call.streams import tell
from trainer.desk import instructor_actions
from trainer.desk.instructor_actions import drafted_set, preview_line, proof_lines, refuse_existing, write_set
from trainer.desk.preview import write_preview
from trainer.practice.reports.set_lines import head_lines, weak_spots
from trainer.sets.case_set import CaseSet
from trainer.sets.draft import SetDraft
from trainer.sets.proofs import set_problems
from trainer.sets.sealed import is_sealed, read_head
from trainer.sets.set_access import open_set
from trainer.sets.set_file import read_set
from trainer.words import text


def make_set(draft: SetDraft, path: Path, *, force: bool) -> Result:
    """Write a set file that has been read back as good; raises WrongCallError for one that is there already."""
    refuse_existing(path, force=force)
    case_set = drafted_set(draft, path)
    write_set(case_set, path, force=force)
    return Result((text("set.made", path=path, n=case_set.size),), _document(case_set, path))


def check_set(path: Path, universes: Universes) -> Result:
    """Read a set and prove each of its cases; draws for each learner are proved for a few learners."""
    case_set = read_set(path)
    problems = set_problems(case_set, path.name, universes, tell)
    if problems:
        return problems_result(problems)
    return Result(proof_lines(case_set, (), path), _document(case_set, path))


def preview_set(path: Path, folder: Path, learner: str, passphrase_file: Path | None, universes: Universes) -> Result:
    """Write a set's sounds and its reveal sheet; no record is opened, let alone written."""
    opened = open_set(path, passphrase_from(passphrase_file))
    written = write_preview(opened.case_set, learner, folder, universes, tell)
    document = {**_document(opened.case_set, path), "folder": str(folder), "files": [str(one) for one in written]}
    return Result((preview_line(written, folder),), document)


def seal_set(path: Path, output: Path, passphrase_file: Path | None, *, force: bool) -> Result:
    """Write a sealed set; print each time what sealing does not prevent.

    Raises WrongCallError for a file that is there, and never writes over the set itself.
    """
    case_set = read_set(path)
    lines = instructor_actions.seal_set(
        case_set, path, output, passphrase_from(passphrase_file, twice=True), force=force
    )
    return Result(lines, _document(case_set, output))


def show_set(path: Path) -> Result:
    """Return what anybody may know of a set, sealed or not."""
    if not is_sealed(path):
        case_set = read_set(path)
        return Result((*head_lines(case_set, ""), *weak_spots(case_set)), _document(case_set, path))
    head = read_head(path)
    shown = text("set.head", title=head.title, mode=text(f"mode.{head.mode}"), n=head.size)
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
