"""The sets that lie on this station, and any other by its path."""

from __future__ import annotations

import hashlib
from collections.abc import Callable
from pathlib import Path

from trainer.cases.files.plain_file import Unfit, UnfitFileError, read_plain
from trainer.errors import WrongCallError
from trainer.sets.sealed import MOST_BYTES, is_sealed, read_head
from trainer.sets.set_access import OpenedSet, open_set, refuse_open_exam
from trainer.window.course.set_page import SetScreen
from trainer.window.kit.nodes import Node, button, column, field, row, scroll, words
from trainer.window.shell.passphrase_screen import PassphraseScreen
from trainer.window.shell.screen import Screen
from trainer.window.shell.shell import Shell
from trainer.words import text

SUFFIXES = (".yaml", ".yml", ".sealed")
MOST_SHOWN = 20


def set_files(folder: Path | None) -> list[Path]:
    """Return the set files in a folder, in the order of their names."""
    if folder is None:
        return []
    try:
        return sorted(path for path in folder.iterdir() if path.suffix in SUFFIXES and path.is_file())
    except OSError:  # no such folder, or one that is not to be looked into
        return []


class SetsScreen(Screen):
    """Chooses a set to work."""

    name = "sets"

    def __init__(self, shell: Shell, who: str) -> None:
        super().__init__(shell)
        self.who = who
        self._files = set_files(shell.services.sets)[:MOST_SHOWN]
        self.first = f"set.{self._files[0].name}" if self._files else "path"
        self._path = ""

    def view(self) -> Node:
        """Return the sets in this station's folder, and a field for another."""
        folder = self.shell.services.sets
        files = self._files
        here = text("sets.folder", folder=folder) if folder else text("sets.no_folder")
        return scroll(
            "page",
            words(text("sets.title"), "title", "sets.title"),
            words(here, "muted"),
            column(
                *(button(f"set.{path.name}", path.name, self._opener(path), verbatim=True) for path in files), gap=0.4
            )
            if files
            else words(text("sets.none"), "body", "sets.none"),
            words(text("sets.path"), "bold"),
            row(
                field("path", self._path, self._write, self._by_path),
                button("open", text("sets.open"), self._by_path if self._path else None),
                gap=0.6,
            ),
            self.shell.footer(),
            gap=0.8,
        )

    def _write(self, written: str) -> None:
        self._path = written[:400]

    def _by_path(self) -> None:
        self._opener(Path(self._path.strip()))()

    def _opener(self, path: Path) -> Callable[[], None]:
        def open_it() -> None:
            kept = self.shell.opened_sets.get(_content(path))
            if kept is None:
                open_file(self.shell, path, lambda opened: self._keep(path, opened))
            else:
                self._opened(kept)

        return open_it

    def _keep(self, path: Path, opened: OpenedSet) -> None:
        if opened.sealed:
            self.shell.opened_sets[_content(path)] = opened
        self._opened(opened)

    def _opened(self, opened: OpenedSet) -> None:
        refuse_open_exam(opened, opened.case_set.name)
        results = self.shell.services.results
        self.shell.show(SetScreen(self.shell, opened, self.who, results))


def _content(path: Path) -> str:
    """Return a digest of a file; raises WrongCallError for none, UnfitFileError for one that cannot be read."""
    try:
        return hashlib.sha256(read_plain(path, MOST_BYTES)).hexdigest()
    except UnfitFileError as error:
        if error.why is Unfit.MISSING:
            raise WrongCallError("no_set_file", path=path) from error
        raise


def open_file(shell: Shell, path: Path, then: Callable[[OpenedSet], None]) -> None:
    """Open a set file, asking for its passphrase where it is sealed; what is wrong with it is said."""

    def opened(passphrase: str) -> None:
        then(open_set(path, lambda: passphrase))

    _content(path)
    if is_sealed(path):
        head = read_head(path)
        shell.show(PassphraseScreen(shell, text("sets.sealed", title=head.title), opened))
    else:
        opened("")
