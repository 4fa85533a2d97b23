"""A case worked in the terminal, from the complaint to the debrief."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from trainer.circuit.elements import Location
from trainer.desk.case_actions import CaseActions, Reply, Wording
from trainer.desk.case_requests import (
    Action,
    GiveBack,
    Hear,
    Heat,
    Lend,
    Look,
    Measure,
    Mend,
    Move,
    ReadCodes,
    Retest,
    Swap,
    WarmRun,
)
from trainer.desk.desk import Desk
from trainer.errors import MissingHereError, UserError, WrongCallError
from trainer.practice.attempt.actions import AnyResult
from trainer.practice.attempt.events import Heard
from trainer.practice.reports import attempt_lines as shown
from trainer.practice.reports import debrief_lines as shown_debrief
from trainer.practice.reports import reason_lines as shown_reasons
from trainer.sound.render import Sound
from trainer.terminal import typed
from trainer.terminal.finding_questions import Questions
from trainer.words import message_of, text

Ask = Callable[[str], str]
Say = Callable[[str], None]

WORDLESS = {
    "codes",
    "clear",
    "look",
    "drag",
    "card",
    "engine",
    "help",
    "finding",
    "debrief",
    "leave",
    "hint",
    "supply",
    "crank",
    "plusdrop",
    "grounddrop",
    "warmrun",
    "contribution",
    "compression",
}
"""Commands that stand alone."""

WORDING = Wording(
    moving="work.move",
    warm="work.heat",
    still_unplugged="reading.elsewhere",
    to_repair="repair.ask",
    nothing_to_repair="finding.passes_next",
)
"""Sentences that say what to type next."""


class Session:
    """One sitting at one case. `ask` returns a typed line and raises EOFError at the end of input.

    In a set `title` is which case this is, and `void` ends it as one that does not count.
    """

    def __init__(
        self, desk: Desk, ask: Ask, say: Say, *, title: str = "", void: Callable[[str], None] | None = None
    ) -> None:
        self.desk, self._ask, self._say = desk, ask, say
        self._title, self._voided = title, void
        self.place = "front"
        self._actions = CaseActions(desk, WORDING)
        self._over = False
        self._predicted: str | None = None
        self._commands: dict[str, Callable[[Sequence[str]], None]] = {
            "hear": self._hear, "compare": self._compare, "stand": self._stand,
            "codes": lambda words: self._codes(clear=False), "clear": lambda words: self._codes(clear=True),
            "move": self._move, "heat": self._heat, "warmrun": lambda words: self._run_warm(),
            "swap": self._swap, "lend": self._lend, "look": self._look, "drag": self._drag,
            "out": lambda words: self._suspect(words, add=True), "back": lambda words: self._suspect(words, add=False),
            "card": lambda words: self._lines(shown.card_lines(self.desk.attempt)),
            "engine": lambda words: self._lines(shown.engine_lines(self.desk.attempt.case.profile)),
            "help": lambda words: self._say(text("help")),
            "expect": self._expect, "hint": self._hint, "why": self._why,
            "finding": self._finding, "repair": self._repair, "retest": self._retest, "debrief": self._debrief,
            "leave": self._leave, "void": self._void,
            **dict.fromkeys(typed.READINGS, self._measure),
        }  # fmt: skip

    def run(self) -> None:
        """Work the case until it is closed, left, or the input ends."""
        self._welcome()
        while not self._over:
            try:
                self._obey(self._ask(shown.prompt(self.desk.attempt)).split())
            except EOFError:
                self._leave([])
                return

    def _obey(self, words: list[str]) -> None:
        if not words:
            return
        word = words[0].lower()
        command = self._commands.get(word)
        if command is None:
            self._say(text("unknown_command", word=words[0][:40]))
            return
        try:
            if word in WORDLESS:
                typed.refuse_extra(word, words[1:])
            command([word, *words[1:]] if word in typed.READINGS else words[1:])
        except UserError as error:
            self._say(message_of(error))

    def _lines(self, lines: Sequence[str]) -> None:
        for line in lines:
            self._say(line)

    def _welcome(self) -> None:
        attempt = self.desk.attempt
        case = attempt.case
        heading = self._title or shown.heading(case, title_shown=attempt.title_shown)
        self._say(text("case.head", heading=heading))
        if case.code:
            self._say(text("case.code", code=case.code))
        self._say(case.in_words.story or text("case.drawn_story"))
        self._lines(shown.engine_lines(case.profile))
        self._lines(self._actions.opening_cautions())
        if len(attempt.events) > 1:
            self._say(text("set.resumed" if self._title else "resumed", n=len(attempt.events)))
            self._lines(shown.card_lines(attempt))
        self._say(text("welcome.start"))

    def _act(self, action: Action) -> Reply | None:
        """Carry out an action after confirmation if it takes long; return None if the learner declines."""
        reply = self._actions.act(action)
        self._lines(reply.cautions)
        if reply.ask_first is not None:
            question = text("live.ask" if reply.live else "price.ask", minutes=reply.ask_first)
            if not typed.is_yes(self._ask(question)):
                self._say(text("price.left"))
                return None
            reply = self._actions.carry_out(action, reply.done, agreed=True)
            self._lines(reply.cautions)
        if reply.measured:
            self._say(text("reading", what=reply.measured, display=reply.display))
        if reply.done.sound is not None:
            slots = action.slots if isinstance(action, Hear) else None
            self._play(reply.done.sound, shown.slots_text(slots), self.place)
        self._lines(reply.message)
        return reply

    # listening

    def _play(self, sound: Sound, what: str, place: str) -> None:
        self._say(text("hear.playing", what=what, place=place, seconds=len(sound.samples) / sound.rate_hz))
        try:
            played = self.desk.play(sound)
        except MissingHereError as error:
            self._say(message_of(error))
            return
        except KeyboardInterrupt:
            self._say(text("hear.stopped"))
            return
        if played.void:
            self._say(text("hear.void"))
        if played.file is not None:
            self._say(text("hear.file", path=played.file))

    def _hear(self, words: Sequence[str]) -> None:
        slots = typed.slots_of(words)
        self._act(Hear(None if slots is None else tuple(slots), self.place))
        self._say(text("hear.codes_later") if slots is None else text("silent_ask"))

    def _compare(self, words: Sequence[str]) -> None:
        if len(words) != 2:
            raise WrongCallError("needs_two", word="compare")
        self._hear(words)

    def _stand(self, words: Sequence[str]) -> None:
        self.place = typed.listening_place(self.desk.attempt.case.profile, words)
        self._say(text("stand.now", place=self.place))

    # evidence

    def _codes(self, *, clear: bool) -> None:
        self._act(ReadCodes(clear))

    def _measure(self, words: Sequence[str]) -> None:
        request = typed.request_of(self.desk.attempt.case.profile, [word.lower() for word in words])
        if self._act(Measure(request, self._predicted)) is not None:
            self._predicted = None

    def _move(self, words: Sequence[str]) -> None:
        self._act(Move(*typed.try_of(self.desk.attempt.case.profile, words)))

    def _heat(self, words: Sequence[str]) -> None:
        self._act(Heat(*typed.try_of(self.desk.attempt.case.profile, words)))

    def _run_warm(self) -> None:
        self._act(WarmRun())

    def _swap(self, words: Sequence[str]) -> None:
        if len(words) != 2:
            raise WrongCallError("needs_two", word="swap")
        self._act(Swap(*(typed.number_of(word) for word in words)))

    def _lend(self, words: Sequence[str]) -> None:
        if list(words) == ["none"]:
            self._act(GiveBack())
        elif list(words) == ["module"]:
            self._act(Lend(Location.DRIVE_MODULE, 0))
        elif len(words) == 2 and words[0] == "injector":
            self._act(Lend(Location.COIL, typed.number_of(words[1])))
        else:
            raise WrongCallError("needs_part")

    def _look(self, _words: Sequence[str]) -> None:
        self._act(Look())

    def _drag(self, _words: Sequence[str]) -> None:
        self._act(Look(drag=True))

    def _suspect(self, words: Sequence[str], *, add: bool) -> None:
        places = frozenset(typed.place_of(word) for word in words)
        out = self.desk.attempt.ruled_out
        self.desk.suspect(out | places if add else out - places)
        named = ", ".join(text(f"location.{place}") for place in sorted(self.desk.attempt.ruled_out))
        self._say(text("suspects.head", places=named or text("suspects.none")))

    # thinking

    def _reason(self) -> None:
        if not self.desk.ready_to_reason:
            self._say(text("reasoning.wait"))

    def _expect(self, words: Sequence[str]) -> None:
        if not words or words[0].lower() in typed.READINGS:
            raise WrongCallError("no_expectation")
        self._predicted = " ".join(words)[:40]
        self._say(text("expect.noted"))

    def _hint(self, _words: Sequence[str]) -> None:
        if self.desk.hints:
            self._reason()
        self._lines(shown_reasons.hint_lines(self.desk.hint()))

    def _why(self, words: Sequence[str]) -> None:
        self._actions.require_feedback()
        typed.refuse_extra("why", words[1:])
        self._reason()
        number = typed.number_of(words[0]) if words else None
        self._lines(shown_reasons.why_lines(self.desk.attempt, self.desk.reasoner, number))

    # the answer

    def _finding(self, _words: Sequence[str]) -> None:
        if self.desk.attempt.finding is not None:
            raise WrongCallError("committed_already")
        finding = Questions(self._ask, self._say, self.desk.attempt.case.profile).finding()
        if finding is None:
            self._say(text("finding.dropped"))
            return
        committed = self._actions.commit(finding)
        certainty = text(f"certainty.{finding.certainty}")
        self._say(text("finding.committed", claims=shown.claims_text(finding.claims), certainty=certainty))
        self._say(committed.message)
        self._over = committed.handed_in

    def _repair(self, words: Sequence[str]) -> None:
        self._actions.require_feedback()
        self._act(Mend(typed.repair_of([word.lower() for word in words])))

    def _retest(self, words: Sequence[str]) -> None:
        self._actions.require_feedback()
        moved, heated = typed.retest_of([word.lower() for word in words])
        self._act(Retest(self.place, moved, heated))

    def worked(self, done: AnyResult) -> None:
        """Carry out a step that a lesson works for the learner, and show what it gave."""
        self.desk.do(done)
        if done.sound is not None and isinstance(done.event, Heard):
            self._play(done.sound, shown.slots_text(done.event.slots), self.place)
        else:
            self._say(shown.card_entry(self.desk.attempt.events[-1]) or "")

    def debrief(self) -> None:
        """Debrief a case that was worked before."""
        self._debrief([])

    def _void(self, words: Sequence[str]) -> None:
        if self._voided is None:
            raise WrongCallError("not_in_set")
        if not words:
            raise WrongCallError("void_needs_reason")
        self._voided(" ".join(words)[:200])
        self._say(text("set.voided"))
        self._over = True

    def _debrief(self, _words: Sequence[str]) -> None:
        self._actions.require_feedback()
        self._reason()
        debrief = self.desk.debrief()
        told = self.desk.calibration_with(debrief.score)
        self._lines(shown_debrief.debrief_lines(debrief, self.desk.attempt, told))
        self._say(text("debrief.again"))
        self._play(debrief.truth_sound, text("hear.whole"), "front")
        if debrief.answer_sound is not None and debrief.claims != debrief.truth:
            self._say(text("debrief.yours"))
            self._play(debrief.answer_sound, text("hear.whole"), "front")
        self.desk.close(debrief.outcome, debrief.features)
        self._say(text("closed"))
        self._over = True

    def _leave(self, _words: Sequence[str]) -> None:
        self._say(text("left" if self.desk.store.keeps else "left_unkept"))
        self._over = True
