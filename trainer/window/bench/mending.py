"""After the finding: what is mended, and the retest that proves it."""

from __future__ import annotations

from collections.abc import Callable

from trainer.circuit.elements import Location, Side
from trainer.desk.case_requests import Mend, Retest
from trainer.instruments.tries import CAN_BE_TRIED
from trainer.practice.attempt.actions import ActionResult
from trainer.practice.attempt.events import Repaired, Retested
from trainer.practice.attempt.repair import Repair
from trainer.window.bench.case_bench import CaseBench
from trainer.window.bench.engine_work import EngineWork
from trainer.window.kit.nodes import Node, button, column, flow, row, scroll, tick, words
from trainer.window.shell.screen import Screen
from trainer.window.shell.shell import Shell
from trainer.words import text


class RepairScreen(Screen):
    """Asks for a place, cylinders and a side, and has them mended."""

    name = "repair"
    first = "place.drive_module"

    def __init__(self, shell: Shell, bench: CaseBench, work: EngineWork) -> None:
        super().__init__(shell)
        self._bench, self._work = bench, work
        finding = bench.desk.attempt.finding
        made = bench.desk.attempt.count(Repaired)
        claim = finding.claims[min(made, len(finding.claims) - 1)] if finding and finding.claims else None
        self.place: Location | None = claim.location if claim else None
        self.named_cylinders: frozenset[int] = claim.cylinders if claim else frozenset()
        self.side: Side | None = claim.side if claim else None

    @property
    def cylinders(self) -> tuple[int, ...]:
        """Digits name the cylinders whose circuit is mended."""
        return self._bench.cylinders

    def view(self) -> Node:
        """Return the choices; they start from the finding."""
        places = [
            tick(f"place.{p.value}", text(f"location.{p}"), p is self.place, self._place(p), round=True)
            for p in Location
        ]
        numbers = [
            button(f"cylinder.{n}", str(n), self._cylinder(n), chosen=n in self.named_cylinders, least=2.5)
            for n in self.cylinders
        ]
        sides = [
            tick(
                f"side.{s.value if s else 'none'}",
                text(f"side.{s}" if s else "side.none"),
                s is self.side,
                self._side(s),
                round=True,
            )
            for s in (*Side, None)
        ]
        ready = self.place is not None and bool(self.named_cylinders)
        return scroll(
            "page",
            words(text("repair.title"), "title"),
            words(text("repair.how"), "muted"),
            flow(*numbers, gap=0.4),
            row(
                column(*places, gap=0.1, weight=1.0, least=15.0),
                column(*sides, gap=0.1, weight=1.0, least=12.0),
                gap=1.0,
            ),
            flow(
                button("mend", text("repair.mend"), self._mend if ready else None, "m", chosen=ready),
                button("back", text("ui.back"), self.back, "escape"),
                gap=0.6,
            ),
            gap=0.8,
        )

    def _place(self, place: Location) -> Callable[[], None]:
        def choose() -> None:
            self.place = place

        return choose

    def named(self, cylinder: int, *, shift: bool) -> None:
        """Name a cylinder, or take it back."""
        self.named_cylinders = self.named_cylinders ^ {cylinder}
        self.shell.touch()

    def _cylinder(self, number: int) -> Callable[[], None]:
        return lambda: self.named(number, shift=False)

    def _side(self, side: Side | None) -> Callable[[], None]:
        def choose() -> None:
            self.side = side

        return choose

    def _mend(self) -> None:
        assert self.place is not None
        self.shell.close()
        self._work.act(Mend(Repair(self.place, self.named_cylinders, self.side)))


class RetestScreen(Screen):
    """Asks how the engine is tested again: as it stands, while a place is moved, or with a place warm."""

    name = "retest"
    first = "as_it_stands"

    def __init__(
        self, shell: Shell, bench: CaseBench, retested: Callable[[Retest, ActionResult[Retested]], None]
    ) -> None:
        super().__init__(shell)
        self._bench, self._retested = bench, retested

    def view(self) -> Node:
        """Return the ways to test."""

        def ways(how: str) -> list[Node]:
            return [button(f"{how}.{p.value}", text(f"location.{p}"), self._test(how, p)) for p in CAN_BE_TRIED]

        return scroll(
            "page",
            words(text("retest.title"), "title"),
            button("as_it_stands", text("retest.as_it_stands"), self._test("", None), chosen=True),
            row(
                column(words(text("retest.moving"), "bold"), *ways("moving"), gap=0.3, weight=1.0, least=14.0),
                column(words(text("retest.warm"), "bold"), *ways("warm"), gap=0.3, weight=1.0, least=14.0),
                gap=1.0,
            ),
            self.shell.footer(),
            gap=0.8,
        )

    def _test(self, how: str, place: Location | None) -> Callable[[], None]:
        def test() -> None:
            bench = self._bench
            moved, heated = (place if how == "moving" else None), (place if how == "warm" else None)
            action = Retest(bench.place, moved, heated)
            self.shell.close()
            bench.ask(
                "retest", bench.desk.attempt, bench.place, moved, heated,
                then=lambda done: self._retested(action, done),
            )  # fmt: skip

        return test
