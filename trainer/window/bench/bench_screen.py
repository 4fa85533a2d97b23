"""The bench: hear, read codes, do work on the engine, think; everything else opens from here."""

from __future__ import annotations

from collections.abc import Callable

from trainer.cases.profiles.profile_title import title_of
from trainer.circuit.elements import Location
from trainer.desk.case_actions import Committed
from trainer.desk.case_requests import Retest
from trainer.desk.desk import Desk
from trainer.errors import WrongCallError
from trainer.practice.attempt.actions import ActionResult
from trainer.practice.attempt.debrief import Debrief
from trainer.practice.attempt.events import Away, CodesRead, Retested
from trainer.practice.attempt.hints import Hint
from trainer.practice.reports.attempt_lines import heading, listening_place_text, prompt_state
from trainer.practice.reports.reason_lines import hint_lines
from trainer.window.bench.bench_hearing import BenchHearing
from trainer.window.bench.case_bench import CaseBench
from trainer.window.bench.debrief_screen import DebriefScreen
from trainer.window.bench.engine_work import EngineWork
from trainer.window.bench.finding_screen import FindingScreen
from trainer.window.bench.job_card_view import card_node
from trainer.window.bench.mending import RepairScreen, RetestScreen
from trainer.window.bench.printing import print_sheet
from trainer.window.bench.probing import ProbeScreen
from trainer.window.kit.nodes import Node, button, column, flow, lines, row, scroll, split, words
from trainer.window.pictures.engine_view import engine_node, listening_places, picture_of
from trainer.window.pictures.sound_strip import strip_node, strip_of
from trainer.window.shell.screen import Screen
from trainer.window.shell.shell import Shell
from trainer.words import message_of, text


class BenchScreen(CaseBench):
    """One attempt at one case; `trace` is how visible the outline on the strip is, 0 to 1.

    In a set `place_in_set` says which case this is; `next_task` opens the next task of practice in place of a
    screen.
    """

    name = "bench"
    first = "run_test"

    def __init__(
        self,
        shell: Shell,
        desk: Desk,
        who: str,
        trace: float = 0.0,
        pair: tuple[str, str] | None = None,
        place_in_set: str = "",
        next_task: Callable[[Screen], None] | None = None,
    ) -> None:
        super().__init__(shell, desk, who)
        self.pair, self._place_in_set = pair, place_in_set
        self._next_task = next_task
        self.hearing = BenchHearing(self, trace)
        self.work = EngineWork(self, self.hearing)
        self._drafted: Screen | None = None
        shell.listening.stop()

    @property
    def title(self) -> str:
        """The case's heading: its place in a set, or its number until the title may be shown."""
        return self._place_in_set or heading(self.desk.attempt.case, title_shown=self.desk.attempt.title_shown)

    # what is shown

    def view(self) -> Node:
        """Return the bench beside the job card."""
        shown = (self.above(), self._head(), self._engine(), self._strip(), self._said(), self._tools())
        return split(scroll("main", *shown, gap=0.6), column(self.card(), least=20.0), least=58.0)

    def above(self) -> Node | None:
        """Return what is shown above the bench, here nothing; a lesson overrides it."""
        return None

    def _head(self) -> Node:
        attempt = self.desk.attempt
        case = attempt.case
        firing = "-".join(str(number) for number in case.profile.firing_order)
        engine = text("bench.engine", title=title_of(case.profile), firing=firing)
        level = self.shell.listening.player.gain_db
        minutes = text("bench.minutes", hours=int(attempt.minutes // 60), minutes=attempt.minutes % 60)
        state = prompt_state(attempt)
        pair = text("bench.pair", hears=self.pair[0], measures=self.pair[1]) if self.pair else ""
        return column(
            row(
                words(self.title, "title", "bench.title", weight=1.0, least=12.0),
                flow(
                    button("softer", "-", lambda: self.shell.sound.louder(-1)),
                    words(text("bench.level", level=level), "mono_muted", "bench.level"),
                    button("louder", "+", lambda: self.shell.sound.louder(1)),
                    words(minutes, "mono", "bench.minutes"),
                ),
                gap=1.0,
            ),
            words(" · ".join(part for part in (engine, pair) if part), "muted", "bench.engine"),
            words(state, "touch", "bench.state") if state else None,
            gap=0.2,
        )

    def _engine(self) -> Node:
        work = self.desk.attempt.work
        picture = picture_of(
            self.profile,
            marked=frozenset({self.marked} if self.marked else ()),
            places=listening_places(self.profile),
            here=self.place,
            unplugged=work.unplugged,
        )
        return engine_node(picture, injector=self.hear_one, point=self.probe_at, stand=self.listen_from)

    def _strip(self) -> Node:
        marked = frozenset({self.marked} if self.marked else ())
        picture = strip_of(
            self.profile,
            outline=self.hearing.outline,
            strength=self.hearing.trace,
            marked=marked,
            follows="whole",
            heard_s=self.hearing.heard_s,
        )
        return strip_node(picture, "strip", self._hear_slot)

    def _said(self) -> Node:
        return lines(self.message or [text("bench.keys")], "body", "said")

    def _tools(self) -> Node:
        listening = self.shell.listening
        pause = text("tool.go_on" if listening.paused else "tool.pause")
        found = self.desk.attempt.finding is not None
        read = self.desk.attempt.count(CodesRead) > 0
        return flow(
            button("run_test", text("tool.test"), self.run_test, "t"),
            button("pause", pause, listening.pause if listening.on or listening.paused else None, "space"),
            button("loop", text("tool.loop"), self.hearing.loop, "o", chosen=listening.loop),
            button("compare", text("tool.compare"), self.hearing.compare, "m"),
            button("codes", text("tool.codes"), self.work.codes, "c"),
            button("clear", text("tool.clear"), lambda: self.work.codes(clear=True), "k") if read else None,
            button("probe", text("tool.probe"), self.probe, "p"),
            button("wiggle", text("tool.move"), self.work.move, "w"),
            button("warm", text("tool.heat"), self.work.heat, "h"),
            button("swap", text("tool.swap"), self.work.swap, "x"),
            button("lend", text("tool.lend"), self.work.lend, "l"),
            button("look", text("tool.look"), self.work.look, "v"),
            button("drag", text("tool.drag"), self.work.drag, "n"),
            button("hint", text("tool.hint"), self._hint, "i") if self.desk.hints and not found else None,
            *self._endings(found),
            button("menu", text("tool.leave"), self.back, "escape"),
            gap=0.6,
        )

    def _endings(self, found: bool) -> list[Node]:
        """Return the buttons that lead on: the finding first, after it repair, retest and debrief."""
        if not found:
            return [button("finding", text("tool.finding"), self._finding, "f", chosen=True)]
        claims = self.desk.attempt.finding and self.desk.attempt.finding.claims
        return [
            *([button("repair", text("tool.repair"), self._repair, "r")] if claims else []),
            button("retest", text("tool.retest"), self._retest, "e"),
            button("debrief", text("tool.debrief"), self.debrief_now, "d", chosen=True),
        ]

    def card(self) -> Node:
        """Return the job card."""
        return card_node(self.desk.attempt, self.who, self._suspect, self.print_button())

    def print_button(self) -> Node:
        """Return the button that prints the card."""
        return flow(button("sheet", text("tool.sheet"), self._sheet, "j"))

    # listening

    def run_test(self) -> None:
        """Run the whole test."""
        self.hearing.hear(None)

    def hear_one(self, number: int) -> None:
        """Mark a cylinder and hear its slot."""
        self.marked = number
        self.hearing.hear((number,))

    def _hear_slot(self, number: int) -> None:
        self.marked = number or self.marked
        self.hearing.hear((number,))

    def named(self, cylinder: int, *, shift: bool) -> None:
        """Hear the slot of a cylinder; with Shift, after the marked one's, at the same gain."""
        if shift and self.marked and self.marked != cylinder:
            self.hearing.hear((self.marked, cylinder))
        else:
            self.hear_one(cylinder)

    def listen_from(self, place: str) -> None:
        """Listen from another place; the sound changes with it."""
        self.place = place
        self.say(text("stand.now", place=listening_place_text(place)))

    def press(self, key: str, *, shift: bool) -> bool:
        """Take Space before anything was heard, and the key that puts the stethoscope on the cover, then under it."""
        if key == "space":
            self.run_test()
            return True
        if key == "b" and self.marked:
            above, on = f"cover {self.marked}", f"probe {self.marked}"
            self.listen_from({above: on, on: "front"}.get(self.place, above))
            return True
        return False

    # evidence

    def probe(self) -> None:
        """Go to the probes."""
        self.probe_at("")

    def probe_at(self, point: str) -> None:
        """Go to the probes at a break point."""
        self.shell.show(ProbeScreen(self.shell, self, self.work, self.card, point))

    # thinking

    def _suspect(self, place: Location) -> None:
        out = self.desk.attempt.ruled_out
        self.desk.suspect(out - {place} if place in out else out | {place})

    def _hint(self) -> None:
        try:
            self.desk.may_hint()
        except WrongCallError as error:
            self.say(message_of(error))
            return
        self.ask("hint", self.desk.attempt, then=self._hinted)

    def _hinted(self, hint: Hint) -> None:
        self.say(*hint_lines(self.desk.take_hint(hint)))

    def _sheet(self) -> None:
        print_sheet(self.shell, "card", self.desk, (), self.who)

    # leading on

    def _finding(self) -> None:
        self._drafted = self._drafted or FindingScreen(self.shell, self, self.committed)
        self.shell.show(self._drafted)

    def _repair(self) -> None:
        self.actions.require_feedback()
        self.shell.show(RepairScreen(self.shell, self, self.work))

    def _retest(self) -> None:
        self.actions.require_feedback()
        self.shell.show(RetestScreen(self.shell, self, self.retested))

    def debrief_now(self) -> None:
        """Open the debrief."""
        self.actions.require_feedback()
        self.ask("debrief", self.desk.attempt, then=self._debriefed)

    def _debriefed(self, debrief: Debrief) -> None:
        self.shell.instead(self, DebriefScreen(self.shell, self.desk, debrief, self.who, self._next_task))

    def retested(self, action: Retest, done: ActionResult[Retested]) -> None:
        """Store a retest, play it and show its result."""
        reply = self.actions.carry_out(action, done)
        assert reply.done.sound is not None
        self.hearing.play_whole(reply.done.sound)
        self.say(*reply.message)

    def opened(self) -> None:
        """Show the opening cautions the first time."""
        self.shell.input.run(self.shell.listening.player.prepare)
        self.message = self.message or self.actions.opening_cautions()

    def tick(self) -> None:
        """Follow what is heard."""
        self.hearing.tick()

    def committed(self, committed: Committed) -> None:
        """Go on after the finding: to repair and debrief, or in an exam out of the case."""
        if committed.handed_in:
            self.back()
        else:
            self.say(committed.message)

    def away(self) -> None:
        """Take down that the window was left, where that matters."""
        if self._place_in_set:
            self.shell.input.run(lambda: self.desk.note(Away()))

    def back(self) -> None:
        """Leave; nothing is lost."""
        self.away()
        self.shell.services.worker.forget()
        self.shell.close()

    def left(self) -> None:
        """Stop what plays, and give up the sounds that were kept."""
        self.hearing.left()
