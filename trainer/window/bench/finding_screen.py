"""The finding: cylinders, place, kind, side and certainty; everything can be taken back until it is committed."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace

from trainer.circuit.elements import Location, Side
from trainer.circuit.fault_space import sides_at
from trainer.circuit.faults import KINDS, FaultKind
from trainer.desk.case_actions import Committed
from trainer.errors import WrongCallError
from trainer.practice.reports.attempt_lines import claims_text
from trainer.reasoning.universe.finding import CERTAINTIES, Claim, Finding
from trainer.window.bench.case_bench import CaseBench
from trainer.window.kit.nodes import Node, button, column, flow, row, scroll, tick, words
from trainer.window.shell.choosing import Confirm
from trainer.window.shell.screen import Screen
from trainer.window.shell.shell import Shell
from trainer.words import message_of, text


@dataclass(frozen=True)
class Draft:
    """One fault as far as it has been named."""

    cylinders: frozenset[int] = frozenset()
    location: Location | None = None
    kind: FaultKind | None = None
    side: Side | None = None
    asked_side: bool = False

    @property
    def missing(self) -> tuple[str, ...]:
        """What is still to be named: `cylinders`, `place`, `kind`, `side`."""
        named = {
            "cylinders": bool(self.cylinders), "place": self.location is not None, "kind": self.kind is not None,
            "side": self.asked_side or not any(self.sides),
        }  # fmt: skip
        return tuple(name for name, done in named.items() if not done)

    @property
    def sides(self) -> tuple[Side | None, ...]:
        """The sides that the kind can have at the place."""
        return sides_at(self.kind, self.location) if self.kind and self.location else (None,)

    @property
    def claim(self) -> Claim | None:
        """The claim, once everything that it needs is named."""
        if self.missing or self.location is None or self.kind is None:
            return None
        return Claim(self.cylinders, self.location, self.kind, self.side)

    def with_place(self, place: Location) -> Draft:
        """Return the draft at a place; what cannot be there is forgotten."""
        kind = self.kind if self.kind and place in KINDS[self.kind].places else None
        return replace(self, location=place, kind=kind, side=None, asked_side=False)


class FindingScreen(Screen):
    """Asks for a finding; the draft is kept on the bench while the learner goes back to look again."""

    name = "finding"
    first = "count.1"

    def __init__(self, shell: Shell, bench: CaseBench, committed: Callable[[Committed], None]) -> None:
        super().__init__(shell)
        self._bench, self._committed = bench, committed
        self._drafts = [Draft(), Draft()]
        self.count = 1
        self.certainty: float | None = None
        self.at = 0

    @property
    def drafts(self) -> list[Draft]:
        """The faults that are being described; one that is put aside is kept."""
        return self._drafts[: self.count]

    @property
    def cylinders(self) -> tuple[int, ...]:
        """Digits name the cylinders of the fault that is being described."""
        return self._bench.cylinders if self.drafts else ()

    def view(self) -> Node:
        """Return the questions, and below them what would be committed."""
        counts = [
            button(f"count.{n}", text(f"finding.count.{n}"), self._count(n), chosen=self.count == n) for n in (0, 1, 2)
        ]
        which = [
            button(f"fault.{n}", text("finding.fault", number=n + 1), self._go(n), chosen=self.at == n)
            for n in range(len(self.drafts))
        ]
        sure = [
            tick(
                f"certainty.{value}",
                text(f"certainty.{value}"),
                value == self.certainty,
                self._sure(value),
                key,
                round=True,
            )
            for value, key in zip(CERTAINTIES, ("a", "b", "c"), strict=True)
        ]
        claims = [claim for draft in self.drafts if (claim := draft.claim)]
        missing = [name for draft in self.drafts for name in draft.missing]
        missing += ["certainty"] if self.certainty is None else []
        twice = len(claims) == 2 and claims[0] == claims[1]
        ready = not missing and not twice
        if missing:
            names = ", ".join(text(f"finding.missing.{name}") for name in dict.fromkeys(missing))
            shown = text("finding.unfinished", what=names)
        else:
            shown = text("finding.twice") if twice else claims_text(claims)
        return scroll(
            "page",
            words(text("finding.title"), "title", "finding.title"),
            words(text("finding.how"), "muted"),
            flow(*counts, gap=0.5),
            flow(*which, gap=0.5) if len(which) > 1 else None,
            self._fault() if self.drafts else None,
            words(text("finding.sure_how"), "bold"),
            flow(*sure, gap=1.0),
            words(shown, "bold", "finding.shown"),
            flow(
                button("commit", text("finding.commit"), self._ask if ready else None, "m", chosen=ready),
                button("undo", text("finding.clear"), self._clear, "backspace"),
                button("back", text("finding.back"), self.back, "escape"),
                gap=0.6,
            ),
            gap=0.8,
        )

    def _fault(self) -> Node:
        draft = self.drafts[self.at]
        numbers = [
            button(f"cylinder.{n}", str(n), self._cylinder(n), chosen=n in draft.cylinders, least=2.5)
            for n in self._bench.cylinders
        ]
        places = [
            tick(f"place.{p.value}", text(f"location.{p}"), p is draft.location, self._place(p), round=True)
            for p in Location
        ]
        kinds = [kind for kind in FaultKind if draft.location and draft.location in KINDS[kind].places]
        kind_nodes = [
            tick(f"kind.{k.value}", text(f"kind.{k}"), k is draft.kind, self._kind(k), round=True) for k in kinds
        ]
        sides = [side for side in draft.sides if side is not None]
        side_nodes = [
            tick(
                f"side.{s.value if s else 'none'}",
                text(f"side.{s}" if s else "finding.no_side"),
                draft.asked_side and s is draft.side,
                self._side(s),
                round=True,
            )
            for s in ((*sides, None) if sides else ())
        ]
        return column(
            words(text("finding.cylinders"), "bold"),
            flow(*numbers, gap=0.4),
            row(
                column(words(text("finding.place"), "bold"), *places, gap=0.1, weight=1.0, least=15.0),
                column(
                    words(text("finding.kind"), "bold"),
                    *(kind_nodes or [words(text("finding.place_first"), "muted")]),
                    gap=0.1,
                    weight=1.0,
                    least=19.0,
                ),
                column(words(text("finding.side"), "bold"), *side_nodes, gap=0.1, weight=1.0, least=12.0),
                gap=1.0,
            ),
            surface="panel",
            pad=0.8,
            gap=0.6,
            framed=True,
        )

    # hands

    def _change(self, draft: Draft) -> None:
        self._drafts[self.at] = draft
        self.shell.touch()

    def _count(self, count: int) -> Callable[[], None]:
        def choose() -> None:
            self.count, self.at = count, 0

        return choose

    def _go(self, number: int) -> Callable[[], None]:
        def go() -> None:
            self.at = number

        return go

    def named(self, cylinder: int, *, shift: bool) -> None:
        """Name a cylinder, or take it back."""
        draft = self.drafts[self.at]
        self._change(replace(draft, cylinders=draft.cylinders ^ {cylinder}))

    def _cylinder(self, number: int) -> Callable[[], None]:
        return lambda: self.named(number, shift=False)

    def _place(self, place: Location) -> Callable[[], None]:
        return lambda: self._change(self.drafts[self.at].with_place(place))

    def _kind(self, kind: FaultKind) -> Callable[[], None]:
        return lambda: self._change(replace(self.drafts[self.at], kind=kind, side=None, asked_side=False))

    def _side(self, side: Side | None) -> Callable[[], None]:
        return lambda: self._change(replace(self.drafts[self.at], side=side, asked_side=True))

    def _sure(self, certainty: float) -> Callable[[], None]:
        def choose() -> None:
            self.certainty = certainty

        return choose

    def _clear(self) -> None:
        self._drafts, self.count, self.certainty, self.at = [Draft(), Draft()], 1, None, 0

    def press(self, key: str, *, shift: bool) -> bool:
        """Take Backspace, which starts the finding afresh."""
        if key == "backspace":
            self._clear()
        return key == "backspace"

    def _ask(self) -> None:
        claims = [draft.claim for draft in self.drafts]
        shown = claims_text([claim for claim in claims if claim])
        self.shell.show(
            Confirm(
                self.shell,
                text("finding.really", claims=shown, certainty=text(f"certainty.{self.certainty}")),
                self._commit,
            )
        )

    def _commit(self) -> None:
        claims = tuple(claim for draft in self.drafts if (claim := draft.claim))
        assert self.certainty is not None
        try:
            committed = self._bench.actions.commit(Finding(claims, self.certainty))
        except WrongCallError as error:
            self.shell.say(message_of(error))
            return
        self.shell.close()
        self._committed(committed)
