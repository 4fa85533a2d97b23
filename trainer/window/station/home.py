"""Who is working, and what is waiting for them."""

from __future__ import annotations

from collections.abc import Callable

from trainer.cases.profiles.profile_title import title_of
from trainer.cases.single_case.shipped import case_named, case_names, profile_named, profile_names
from trainer.circuit.geometry import HEIGHT, WIDTH
from trainer.circuit.profile import Profile
from trainer.desk.attempt_start import DEFAULT_LEARNER
from trainer.desk.case_source import FoundCase, find_case
from trainer.desk.learner_name import learner_name
from trainer.errors import ProblemsFoundError
from trainer.practice.course.lessons import Lesson
from trainer.practice.course.waiting import due_now
from trainer.practice.reports.attempt_lines import heading
from trainer.records.store.log_rows import AttemptRow
from trainer.window.course.case_start import sit
from trainer.window.course.practice_page import PracticePage
from trainer.window.course.practice_routes import ROUTES
from trainer.window.course.practising import Practising
from trainer.window.course.progress_page import ProgressScreen
from trainer.window.course.set_choice import SetsScreen
from trainer.window.kit.nodes import Node, button, column, field, flow, row, scroll, split, words
from trainer.window.pictures.engine_view import picture_of
from trainer.window.shell.choosing import Confirm
from trainer.window.shell.screen import Screen
from trainer.window.shell.shell import Shell
from trainer.window.station.station_pin import ask_to_end
from trainer.words import text

SHOWN_LEARNERS, SHOWN_WAITING = 12, 4
SHOWN_ENGINE = "north_v8"


class WhoScreen(Screen):
    """Asks who is working: a name or code from the list, or a new one; nothing is asked for that is secret."""

    name = "who"
    first = "name"

    def __init__(self, shell: Shell) -> None:
        super().__init__(shell)
        kept = shell.services.learner or shell.settings.last_learner or DEFAULT_LEARNER
        self.written = "" if shell.settings.station_pin else kept
        self.fresh = True
        self.partner = ""
        self.two = False

    def view(self) -> Node:
        """Return the field, the names known here, and what needs nobody's name."""
        known = [] if self.shell.settings.station_pin else list(self.shell.services.store.learners())
        names = [button(f"known.{name}", name, self._as(name), verbatim=True) for name in known[:SHOWN_LEARNERS]]
        second = column(
            words(text("who.second"), "bold"), row(field("partner", self.partner, self._partner, self._go)), gap=0.3
        )
        page = scroll(
            "page",
            words(text("who.title"), "title", "who.title"),
            words(text("who.job"), "body"),
            words(text("who.name"), "bold"),
            row(field("name", self.written, self._write, self._go), gap=0.6),
            flow(*names, gap=0.5) if names else None,
            second if self.two else None,
            flow(
                button("go", text("who.go"), self._go if self.written.strip() else None, chosen=True),
                button("two", text("who.one" if self.two else "who.two"), self._two),
                gap=0.6,
            ),
            flow(*common_buttons(self.shell), gap=0.6),
            words(text("caution.real"), "muted"),
            gap=0.9,
        )
        return beside_engine(page, profile_named(SHOWN_ENGINE))

    def _write(self, written: str) -> None:
        # what stands there from last time makes way for another name
        added = written.removeprefix(self.written) if self.fresh and len(written) > len(self.written) else written
        self.written, self.fresh = added[:40], False

    def _partner(self, written: str) -> None:
        self.partner = written[:40]

    def _two(self) -> None:
        self.two = not self.two

    def _as(self, name: str) -> Callable[[], None]:
        def go() -> None:
            self.written = name
            self._go()

        return go

    def _go(self) -> None:
        if not self.written.strip():
            self.shell.say(text("who.empty"))
            return
        who = learner_name(self.written)
        partner = learner_name(self.partner) if self.two and self.partner.strip() else ""
        if not self.shell.settings.station_pin:
            self.shell.keep(self.shell.settings.changed(last_learner=who))
        self.shell.show(WaitingScreen(self.shell, who, partner))

    def back(self) -> None:
        """Ask whether to end the program."""
        if self.shell.settings.station_pin:
            ask_to_end(self.shell)
        else:
            self.shell.show(Confirm(self.shell, text("who.end"), lambda: ask_to_end(self.shell)))


class WaitingScreen(Screen):
    """What is waiting for a learner: what was begun, the next case, any other."""

    name = "waiting"
    first = "next"

    def __init__(self, shell: Shell, who: str, partner: str = "") -> None:
        super().__init__(shell)
        self.who, self.partner = who, partner
        self.practising = Practising(shell, who, partner, ROUTES)
        self.first = "lesson" if self.practising.lesson else "next"
        self.written = ""
        self.all_shown = False

    def view(self) -> Node:
        """Return what can be begun or gone on with."""
        begun = self._begun()
        lesson = self.practising.lesson
        due = due_now(self.practising.course.state.waiting, self.practising.course.day)
        page = scroll(
            "page",
            words(text("waiting.title", who=self.who), "title", "waiting.title"),
            flow(
                self._lesson_button(lesson) if lesson else None,
                button("next", text("waiting.practise"), self.practising.go_on, "n", chosen=lesson is None),
                button("practice", text("waiting.choose"), self._practice, "k"),
                gap=0.6,
            ),
            words(text("waiting.due", count=len(due)), "muted", "waiting.due") if due else None,
            column(
                words(text("waiting.begun"), "bold"),
                *(button(f"begun.{row.id}", title, self._go_on(found, row)) for found, row, title in begun),
                gap=0.4,
            )
            if begun
            else None,
            words(text("waiting.code"), "bold"),
            row(
                field("code", self.written, self._write, self._by_name),
                button("by_name", text("waiting.begin"), self._by_name if self.written else None),
                gap=0.6,
            ),
            flow(button("all", text("waiting.hide" if self.all_shown else "waiting.all"), self._all, "a")),
            self._cases() if self.all_shown else None,
            flow(
                button("sets", text("waiting.sets"), self._sets, "s"),
                button("progress", text("waiting.progress"), self._progress, "p"),
                *common_buttons(self.shell),
                button("back", text("waiting.someone_else"), self.back, "escape"),
                gap=0.6,
            ),
            gap=0.8,
        )
        return beside_engine(page, profile_named(SHOWN_ENGINE))

    def _begun(self) -> list[tuple[FoundCase, AttemptRow, str]]:
        store = self.shell.services.store
        rows: list[tuple[FoundCase, AttemptRow, str]] = []
        for row_ in store.unfinished(self.who):
            if len(rows) == SHOWN_WAITING:
                break
            try:
                found = find_case(row_.case_name)
            except ProblemsFoundError:
                continue
            first = store.started(row_)
            # lessons are gone on with where they are listed
            if first is not None and found.digest == row_.case_digest and not first.lesson:
                rows.append(
                    (
                        found,
                        row_,
                        f"{heading(found.case, title_shown=False)} · {row_.started_at[:16].replace('T', ' ')}",
                    )
                )
        return rows

    def _lesson_button(self, lesson: Lesson) -> Node:
        told = text("waiting.lesson", number=lesson.number, what=text(f"course.lesson.{lesson.number}"))
        return button("lesson", told, lambda: self.practising.open_lesson(lesson), "g", chosen=True)

    def _cases(self) -> Node:
        done = self.shell.services.store.solved_names(self.who)
        rows = sorted((case_named(name).difficulty, name) for name in case_names())
        return column(
            *(
                button(f"case.{name}", self._line(name, difficulty, name in done), self._beginner(name))
                for difficulty, name in rows
            ),
            gap=0.3,
        )

    def _line(self, name: str, difficulty: int, done: bool) -> str:
        case = case_named(name)
        seen = text("waiting.done_before") if done else ""
        return (
            text(
                "waiting.case",
                title=heading(case, title_shown=done),
                engine=title_of(case.profile),
                difficulty=difficulty,
            )
            + seen
        )

    # hands

    def _write(self, written: str) -> None:
        self.written = written[:200]

    def _all(self) -> None:
        self.all_shown = not self.all_shown

    def _by_name(self) -> None:
        self._begin(self.written.strip())

    def _beginner(self, name: str) -> Callable[[], None]:
        return lambda: self._begin(name)

    def _begin(self, name: str) -> None:
        sit(self.shell, find_case(name), self.who, self.partner)

    def _go_on(self, found: FoundCase, row_: AttemptRow) -> Callable[[], None]:
        return lambda: sit(self.shell, found, self.who, self.partner, begun=row_)

    def _practice(self) -> None:
        self.shell.show(PracticePage(self.shell, self.practising))

    def opened(self) -> None:
        """Have what practice draws from solved while nothing else is wanted."""
        pools = self.shell.services.pools
        if not all(pools.is_loaded(profile_named(name)) for name in profile_names()):
            self.shell.ask("prepare_practice", then=lambda _nothing: None, idle=True)

    def _sets(self) -> None:
        self.shell.show(SetsScreen(self.shell, self.who))

    def _progress(self) -> None:
        self.shell.show(ProgressScreen(self.shell, self.practising.course))


def beside_engine(page: Node, profile: Profile) -> Node:
    """Return a page with an engine drawn beside it, where there is room."""
    picture = Node("picture", "engine", picture=picture_of(profile), size=(WIDTH, HEIGHT), weight=1.0, least=16.0)
    return split(page, column(picture, words(title_of(profile), "muted"), least=30.0), least=72.0)


def common_buttons(shell: Shell) -> list[Node]:
    """Return the buttons that lead to what everybody may use."""
    from trainer.window.bench.free_bench import FreeChoice
    from trainer.window.course.glossary import GlossaryScreen
    from trainer.window.instructor.instructor_page import InstructorScreen
    from trainer.window.station.doctor_page import DoctorScreen
    from trainer.window.station.settings_page import SettingsScreen
    from trainer.window.station.setup import SetupScreen

    def opens(screen: Callable[[Shell], Screen]) -> Callable[[], None]:
        return lambda: shell.show(screen(shell))

    kept = bool(shell.settings.station_pin)
    return [
        button("free", text("common.free"), opens(FreeChoice), "f2"),
        button("setup", text("common.setup"), opens(SetupScreen), "f3"),
        button("glossary", text("common.glossary"), opens(GlossaryScreen), "f4"),
        button("settings", text("common.settings"), None if kept else opens(SettingsScreen), "f5"),
        button("instructor", text("common.instructor"), None if kept else opens(InstructorScreen), "f7"),
        button("doctor", text("common.doctor"), opens(DoctorScreen), "f6"),
        button("end", text("common.end"), lambda: ask_to_end(shell), "f10"),
    ]
