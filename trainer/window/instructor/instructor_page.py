"""The instructor's page: sets to build, prove, preview and seal; results to collect and report."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path

from trainer.cases.files.plain_file import is_there
from trainer.desk.instructor_actions import (
    preview_line,
    proof_lines,
    seal_set,
    write_export,
    write_report,
    written_lines,
)
from trainer.errors import MissingHereError, Problem, Sentence, WrongCallError
from trainer.records.class_report.collect import Collected, salts_in
from trainer.records.class_report.collect_lines import collected_lines
from trainer.records.class_report.marking import Marked
from trainer.records.class_report.results import StoredSet, stored_sets, with_damaged_results
from trainer.records.store.store import Store
from trainer.sets.set_access import OpenedSet, keys_of, needs_passphrase
from trainer.window.course.set_choice import open_file, set_files
from trainer.window.instructor.set_builder import SetBuilder
from trainer.window.kit.nodes import Node, button, column, field, flow, row, scroll, words
from trainer.window.shell.choosing import Confirm
from trainer.window.shell.passphrase_screen import PassphraseScreen
from trainer.window.shell.screen import Screen
from trainer.window.shell.shell import Shell
from trainer.words import text

SHOWN_FILES, SHOWN_LINES = 12, 12


class InstructorScreen(Screen):
    """What an instructor does on this machine."""

    name = "instructor"
    first = "build"

    def __init__(self, shell: Shell) -> None:
        super().__init__(shell)
        self._chosen: Path | None = None
        self._folder = ""
        self._lines: tuple[str, ...] = ()
        self._files: list[Path] = []
        self._kept: tuple[StoredSet, ...] = ()

    # what is shown

    def view(self) -> Node:
        """Return sets and results one under another."""
        files = self._files[:SHOWN_FILES]
        return scroll(
            "page",
            words(text("instructor.title"), "title", "instructor.title"),
            words(text("instructor.keep"), "muted"),
            flow(button("build", text("instructor.build"), self._build, "b", chosen=not files)),
            words(text("instructor.sets"), "bold"),
            words(text("sets.folder", folder=self.shell.services.sets or ""), "muted"),
            flow(
                *(
                    button(
                        f"file.{path.name}",
                        path.name,
                        self._chooser(path),
                        chosen=path == self._chosen,
                        verbatim=True,
                    )
                    for path in files
                ),
                gap=0.4,
            )
            if files
            else words(text("sets.none"), "muted"),
            self._on_chosen() if self._chosen else None,
            words(text("instructor.results"), "bold"),
            self._results(),
            column(*(words(line, "body", f"told.{place}") for place, line in enumerate(self._lines)), gap=0.2)
            if self._lines
            else None,
            self.shell.footer(),
            gap=0.8,
        )

    def _on_chosen(self) -> Node:
        assert self._chosen is not None
        plain = self._chosen.suffix != ".sealed"
        return column(
            flow(
                button("prove", text("instructor.prove"), self._with_set(self._prove)),
                button("preview", text("instructor.preview"), self._with_set(self._preview)),
                button("seal", text("instructor.seal"), self._with_set(self._seal) if plain else None),
                gap=0.6,
            ),
            words(text("instructor.collect_how"), "muted"),
            row(
                field("folder", self._folder, self._write, self._with_set(self._collect)),
                button("collect", text("instructor.collect"), self._with_set(self._collect) if self._folder else None),
                gap=0.6,
            ),
            gap=0.5,
        )

    def _results(self) -> Node:
        if not self._kept:
            return words(text("records.no_sets"), "muted")
        return column(*(self._result(one) for one in self._kept[:SHOWN_FILES]), gap=0.3)

    def _result(self, kept: StoredSet) -> Node:
        title = text("records.set", name=kept.name, title=kept.title, n=kept.size, id=kept.id[:8])
        return row(
            words(title, "body", weight=1.0, least=20.0),
            button(f"report.{kept.id}", text("instructor.report"), lambda: self._report(kept)),
            button(f"marks.{kept.id}", text("instructor.marks"), lambda: self._marks(kept)),
            gap=0.6,
        )

    # hands

    def _write(self, written: str) -> None:
        self._folder = written[:400]

    def _chooser(self, path: Path) -> Callable[[], None]:
        def choose() -> None:
            self._chosen, self._lines = path, ()

        return choose

    def _build(self) -> None:
        if self.shell.services.sets is None:
            raise WrongCallError("nothing_kept_here")
        self.shell.show(SetBuilder(self.shell, self.shell.services.sets))

    def _with_set(self, then: Callable[[OpenedSet], None]) -> Callable[[], None]:
        def act() -> None:
            if self._chosen is not None:
                open_file(self.shell, self._chosen, then)

        return act

    def _say(self, *lines: str) -> None:
        self._lines = lines[:SHOWN_LINES]
        self.shell.touch()

    def _prove(self, opened: OpenedSet) -> None:
        name = opened.case_set.name

        def proved(problems: list[Problem]) -> None:
            self._say(*proof_lines(opened.case_set, problems, name))

        self.shell.ask("prove_set", opened.case_set, name, then=proved)

    def _preview(self, opened: OpenedSet) -> None:
        folder = self._sheets() / f"preview_{opened.case_set.name}"

        def previewed(files: list[Path]) -> None:
            self._say(preview_line(files, folder))
            self.shell.services.show_file(files[-1])

        self.shell.ask("preview_set", opened.case_set, "preview", folder, then=previewed)

    def _seal(self, opened: OpenedSet) -> None:
        assert self._chosen is not None
        source, output = self._chosen, self._chosen.with_suffix(".sealed")

        def sealed(passphrase: str) -> None:
            self._say(*seal_set(opened.case_set, source, output, lambda: passphrase, force=True))
            self._look()

        def ask() -> None:
            self.shell.show(PassphraseScreen(self.shell, text("instructor.seal"), sealed, twice=True))

        if is_there(output):
            self.shell.show(Confirm(self.shell, text("instructor.seal_again", path=output), ask))
        else:
            ask()

    def _collect(self, opened: OpenedSet) -> None:
        folder = Path(self._folder.strip())
        if not is_there(folder):
            raise MissingHereError("file_unreadable", path=folder, reason=Sentence("records.not_there"))
        salts = salts_in([folder])

        def go(passphrase: str) -> None:
            keys = keys_of(opened, lambda: passphrase, salts)
            with self._records() as store:
                url = store.engine.url.render_as_string(hide_password=False)
            self.shell.ask("collect", url, [folder], opened.case_set, keys, then=self._collected)

        if not needs_passphrase(opened, salts):
            go("")
        else:
            title = text("instructor.collect")
            self.shell.show(PassphraseScreen(self.shell, title, go))

    def _collected(self, done: tuple[list[Collected], Marked]) -> None:
        self._say(*collected_lines(*done))
        self._look()

    def _report(self, kept: StoredSet) -> None:
        path = self._sheets() / f"report_{kept.name}.html"
        with self._records() as store:
            stored = with_damaged_results(store, kept)
            files = write_report(store, stored, path, self.shell.services.now_utc(), make_folder=True)
        self._say(*written_lines(files))
        self.shell.services.show_file(path)

    def _marks(self, kept: StoredSet) -> None:
        path = self._sheets() / f"gradebook_{kept.name}.csv"
        with self._records() as store:
            write_export(store, with_damaged_results(store, kept), "gradebook", path, bom=True)
        self._say(*written_lines([path]))

    @contextmanager
    def _records(self) -> Iterator[Store]:
        if self.shell.services.sheets is None:
            raise WrongCallError("nothing_kept_here")
        store = self.shell.services.records()
        try:
            yield store
        finally:
            self.shell.services.store.left_out |= store.left_out
            store.close()

    def _look(self) -> None:
        """Read which sets lie here and which have results; a page is drawn more often than that changes."""
        self._files = set_files(self.shell.services.sets)
        if self.shell.services.sheets is not None:
            with self._records() as store:
                self._kept = stored_sets(store)
        self.shell.touch()

    def opened(self) -> None:
        """Look what is there."""
        self.shell.input.run(self._look)

    def _sheets(self) -> Path:
        if self.shell.services.sheets is None:
            raise WrongCallError("nothing_kept_here")
        return self.shell.services.sheets
