"""The questions of a finding, asked one after another; every one can be taken back."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from trainer.circuit.elements import Location, Side
from trainer.circuit.fault import FaultKind
from trainer.circuit.profile import Profile
from trainer.errors import WrongCallError
from trainer.practice.reports import attempt_lines as shown
from trainer.reasoning.universe.finding import CERTAINTIES, Claim, Finding
from trainer.terminal import typed
from trainer.words import message_of, number_list, text


class _CancelledError(Exception):
    """The learner takes the question back."""


class Questions:
    """Asks for a finding. `ask` returns a typed line and raises EOFError at the end of input."""

    def __init__(self, ask: Callable[[str], str], say: Callable[[str], None], profile: Profile) -> None:
        self._ask, self._say, self._profile = ask, say, profile

    def finding(self) -> Finding | None:
        """Return the finding, or None where the learner takes it back."""
        try:
            return self._finding()
        except _CancelledError:
            return None

    def _finding(self) -> Finding | None:
        self._say(text("finding.cancel"))
        count = ""
        while count not in ("0", "1", "2"):
            count = self._answer(text("finding.ask_count") + ": ")
            if count not in ("0", "1", "2"):
                self._say(text("finding.count_again"))
        claims = tuple(self._claim(number + 1) for number in range(int(count)))
        sure = self._choice(
            text("finding.ask_certainty"), [(str(value), text(f"certainty.{value}")) for value in CERTAINTIES]
        )
        finding = Finding(claims, float(sure))
        self._say(text("finding.check", claims=shown.claims_text(claims)))
        return finding if typed.is_yes(self._ask(text("finding.sure"))) else None

    def _claim(self, number: int) -> Claim:
        cylinders = self._cylinders(number)
        location = self._choice(
            text("finding.ask_location", number=number), [(place, text(f"location.{place}")) for place in Location]
        )
        kind = self._choice(
            text("finding.ask_kind", number=number), [(kind, text(f"kind.{kind}")) for kind in FaultKind]
        )
        side = self._choice(
            text("finding.ask_side", number=number),
            [*((side, text(f"side.{side}")) for side in Side), ("n", text("side.none"))],
        )
        return Claim(cylinders, Location(location), FaultKind(kind), None if side == "n" else Side(side))

    def _cylinders(self, number: int) -> frozenset[int]:
        known = set(self._profile.cylinders)
        while True:
            try:
                cylinders = typed.cylinders_of(self._answer(text("finding.ask_cylinders", number=number) + ": "))
                if cylinders <= known:
                    return cylinders
                raise WrongCallError("no_cylinder", cylinder=min(cylinders - known), cylinders=number_list(known))
            except WrongCallError as error:
                self._say(message_of(error))

    def _answer(self, question: str) -> str:
        answer = self._ask(question).strip().lower()
        if answer == "cancel":
            raise _CancelledError
        return answer

    def _choice(self, question: str, options: Sequence[tuple[str, str]]) -> str:
        """Ask for one of the options by number or word, again and again."""
        for place, (_value, label) in enumerate(options, start=1):
            self._say(f"  {place} {label}")
        while True:
            answer = self._answer(f"{question}: ")
            answer = typed.PLACES[answer].value if answer in typed.PLACES else answer
            for place, (value, label) in enumerate(options, start=1):
                if answer in (str(place), value.lower(), label.lower()):
                    return value
            self._say(text("choice.again", count=len(options)))
