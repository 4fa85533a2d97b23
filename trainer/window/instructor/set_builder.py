"""Builds a set by choosing: the same file as a text editor would write, proved before it counts as good."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import replace
from datetime import datetime
from pathlib import Path
from typing import Any

from trainer.cases.files.plain_file import is_there
from trainer.cases.profiles.profile_title import title_of
from trainer.cases.single_case.shipped import case_named, case_names, profile_named, profile_names
from trainer.desk.instructor_actions import drafted_set, write_set
from trainer.errors import Problem, ProblemsFoundError
from trainer.sets.case_set import CaseSet, DebriefOpens, Mode, Seeds
from trainer.sets.draft import SetDraft, new_draw_key, set_name
from trainer.window.kit.nodes import Node, button, column, field, flow, row, scroll, tick, words
from trainer.window.shell.screen import Screen
from trainer.window.shell.shell import Shell
from trainer.words import problem_line, text

MOST_DRAWN, MOST_LIMIT = 30, 99


class SetBuilder(Screen):
    """Every choice of a set on one page; keeps the draft until it is saved or left."""

    name = "set_builder"
    first = "title"

    def __init__(self, shell: Shell, folder: Path) -> None:
        super().__init__(shell)
        self._folder = folder
        self.draft = SetDraft(
            name="", title="", drawn=6, profiles=profile_names()[:1], draw_key=new_draw_key(), seeds=Seeds.PER_LEARNER
        )
        self._closes = ""
        self._listing = False
        self._lines: tuple[str, ...] = ()

    # what is shown

    def view(self) -> Node:
        """Return the choices one under another."""
        draft = self.draft
        debrief = draft.debrief or self._debriefs()[0]
        return scroll(
            "page",
            words(text("builder.title"), "title", "builder.title"),
            words(text("builder.name"), "bold"),
            row(field("title", draft.title, self._title, None), gap=0.6),
            self._several("mode", Mode, draft.mode, lambda one: text(f"mode.{one}")),
            words(text("builder.drawn"), "bold"),
            self._number("drawn", draft.drawn, 0, MOST_DRAWN),
            flow(*(self._engine(name) for name in profile_names()), gap=1.0),
            flow(*(self._level(level) for level in (1, 2, 3)), gap=1.0),
            self._several(
                "seeds", (Seeds.PER_LEARNER, Seeds.SAME), draft.seeds, lambda one: text(f"builder.seeds.{one}")
            ),
            flow(button("listing", text("builder.listed", n=len(draft.cases)), self._list), gap=0.6),
            self._listed() if self._listing else None,
            words(text("builder.limits"), "bold"),
            self._limit("tries", 1, MOST_LIMIT),
            self._limit("plays", 1, MOST_LIMIT),
            self._limit("readings", 0, MOST_LIMIT),
            self._limit("clock_minutes", 5, 600, step=5),
            self._several(
                "debrief",
                self._debriefs(),
                debrief,
                lambda one: text(f"builder.debrief.{one}"),
            ),
            words(text("builder.closes"), "bold"),
            row(field("closes", self._closes, self._closing, None), gap=0.6),
            flow(
                tick("certainty", text("builder.certainty"), draft.certainty_weight > 0.0, self._certainty),
                tick("shuffled", text("builder.shuffled"), draft.shuffled, self._shuffled),
                gap=1.0,
            ),
            column(*(words(line, "bold", f"told.{place}") for place, line in enumerate(self._lines)), gap=0.2)
            if self._lines
            else None,
            flow(
                button("save", text("builder.save"), self._save if draft.title.strip() else None, "s", chosen=True),
                button("back", text("ui.back"), self.back, "escape"),
                gap=0.6,
            ),
            gap=0.6,
        )

    def _several(self, name: str, values: Iterable[object], now: object, label: Callable[[object], str]) -> Node:
        ticks = [tick(f"{name}.{one}", label(one), one == now, self._setter(name, one), round=True) for one in values]
        return flow(*ticks, gap=1.0)

    def _debriefs(self) -> tuple[DebriefOpens, ...]:
        if self.draft.mode is Mode.EXAM:
            return DebriefOpens.AFTER_SET, DebriefOpens.AFTER_CLOSING
        return DebriefOpens.AFTER_EACH, DebriefOpens.AFTER_SET, DebriefOpens.AFTER_CLOSING

    def _number(self, name: str, now: float | None, least: int, most: int, step: int = 1) -> Node:
        shown = text("builder.no_limit") if now is None else f"{now:.0f}"

        def by(steps: int) -> Callable[[], None]:
            def change() -> None:
                value: float | None = (least if steps > 0 else None) if now is None else now + steps * step
                if value is not None and value < least:
                    value = None if name != "drawn" else least
                self._set(**{name: None if value is None else min(value, most)})

            return change

        return row(
            button(f"{name}.less", "-", by(-1), least=2.0),
            words(shown, "mono", f"{name}.now"),
            button(f"{name}.more", "+", by(1), least=2.0),
            gap=0.6,
        )

    def _limit(self, name: str, least: int, most: int, step: int = 1) -> Node:
        number = self._number(name, getattr(self.draft, name), least, most, step)
        return row(words(text(f"builder.{name}"), "body", least=14.0), number, gap=1.0)

    def _engine(self, name: str) -> Node:
        chosen = name in self.draft.profiles

        def act() -> None:
            kept = tuple(one for one in self.draft.profiles if one != name)
            self._set(profiles=kept if chosen else (*kept, name))

        return tick(f"engine.{name}", title_of(profile_named(name)), chosen, act)

    def _level(self, level: int) -> Node:
        chosen = level in self.draft.difficulty

        def act() -> None:
            kept = tuple(one for one in self.draft.difficulty if one != level)
            self._set(difficulty=kept if chosen else tuple(sorted((*kept, level))))

        return tick(f"level.{level}", text("builder.level", level=level), chosen, act)

    def _listed(self) -> Node:
        def line(name: str) -> Node:
            chosen = name in self.draft.cases

            def act() -> None:
                kept = tuple(one for one in self.draft.cases if one != name)
                self._set(cases=kept if chosen else (*kept, name))

            return tick(f"case.{name}", case_named(name).in_words.title, chosen, act)

        return column(*map(line, case_names()), gap=0.1)

    # hands

    def _set(self, **values: Any) -> None:
        self.draft = replace(self.draft, **values)
        self._lines = ()
        self.shell.touch()

    def _setter(self, name: str, value: object) -> Callable[[], None]:
        def act() -> None:
            self._set(**{name: value})
            if self.draft.debrief not in (None, *self._debriefs()):
                self._set(debrief=None)

        return act

    def _title(self, written: str) -> None:
        self._set(title=written[:80])

    def _closing(self, written: str) -> None:
        self._closes = written[:25]

    def _certainty(self) -> None:
        self._set(certainty_weight=0.0 if self.draft.certainty_weight else 0.2)

    def _shuffled(self) -> None:
        self._set(shuffled=not self.draft.shuffled)

    def _list(self) -> None:
        self._listing = not self._listing

    def _save(self) -> None:
        """Read the set back, have it proved, and only then keep it."""
        title = self.draft.title.strip()
        name = set_name(title)
        try:
            closes = datetime.fromisoformat(self._closes.strip()).astimezone() if self._closes.strip() else None
        except (ValueError, OverflowError, OSError):
            self._lines = (text("builder.closes_wrong"),)
            return
        path = self._folder / f"{name}.yaml"
        debrief = self.draft.debrief or self._debriefs()[0]
        draft = replace(self.draft, name=name, title=title, closes=closes, debrief=debrief)
        try:
            case_set = drafted_set(draft, path)
        except ProblemsFoundError as error:
            self._lines = tuple(problem_line(problem) for problem in error.problems)
            return
        self.shell.ask("prove_set", case_set, path.name, then=lambda problems: self._proved(case_set, path, problems))

    def _proved(self, case_set: CaseSet, path: Path, problems: list[Problem]) -> None:
        if problems:
            self._lines = tuple(problem_line(problem) for problem in problems[:6])
            return
        if is_there(path):
            self._lines = (text("builder.there", path=path),)
            return
        write_set(case_set, path, make_folder=True)
        self._lines = (text("set.good", path=path, n=case_set.size),)
