"""The free bench: any fault that an engine allows, heard and measured, never scored; for a class on a projector."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import replace

from trainer.cases.profiles.profile_title import title_of
from trainer.cases.single_case.case import Case
from trainer.cases.single_case.shipped import profile_named, profile_names
from trainer.cases.solved.universe_cache import Universes
from trainer.circuit.elements import OPEN_OHM
from trainer.circuit.fault import Fault, FaultKind
from trainer.circuit.fault_space import single_faults
from trainer.circuit.faults import KINDS
from trainer.circuit.profile import Profile
from trainer.desk.attempt_start import start_or_resume
from trainer.desk.case_source import FoundCase
from trainer.desk.desk import Desk
from trainer.instruments.bench_tests import Operation
from trainer.practice.reports.attempt_lines import claims_text
from trainer.reasoning.universe.finding import truth_of
from trainer.records.store.store import open_store
from trainer.sound.render import Bed
from trainer.window.bench.bench_screen import BenchScreen
from trainer.window.bench.job_card_view import card_node
from trainer.window.kit.nodes import Node, button, column, flow, row, scroll, tick, words
from trainer.window.shell.screen import Screen
from trainer.window.shell.shell import Shell
from trainer.words import numbers, text


class FreeChoice(Screen):
    """Chooses an engine and a fault: place, kind, cylinders, side and how much of it."""

    name = "free"
    first = "engine.0"

    def __init__(self, shell: Shell, profile: Profile | None = None, fault: Fault | None = None) -> None:
        super().__init__(shell)
        self.profile = profile or profile_named(profile_names()[0])
        self.fault = fault
        self.severity = 0
        self._faults = single_faults(self.profile)

    @property
    def cylinders(self) -> tuple[int, ...]:
        """Digits name the cylinder that has the fault."""
        return self.profile.cylinders if self.fault else ()

    def view(self) -> Node:
        """Return engines, kinds, and where the chosen kind can be."""
        engines = [
            button(
                f"engine.{place}",
                title_of(profile_named(name)),
                self._engine(name),
                chosen=profile_named(name) == self.profile,
            )
            for place, name in enumerate(profile_names())
        ]
        kinds = dict.fromkeys(fault.kind for fault in self._faults)
        kind_nodes = [tick("kind.none", text("free.none"), self.fault is None, self._kind(None), round=True)]
        kind_nodes += [
            tick(
                f"kind.{k.value}",
                text(f"kind.{k}"),
                self.fault is not None and self.fault.kind is k,
                self._kind(k),
                round=True,
            )
            for k in kinds
        ]
        return scroll(
            "page",
            words(text("free.title"), "title", "free.title"),
            words(text("free.how"), "muted"),
            flow(*engines, gap=0.5),
            row(
                column(words(text("finding.kind"), "bold"), *kind_nodes, gap=0.1, weight=1.0, least=20.0),
                self._where(),
                gap=1.0,
            ),
            flow(button("to_bench", text("free.to_bench"), self._go, "b", chosen=True), gap=0.6),
            self.shell.footer(),
            gap=0.8,
        )

    def _where(self) -> Node:
        if self.fault is None:
            return column(words(text("free.passes"), "muted"), weight=1.0, least=20.0)
        alike = [fault for fault in self._faults if fault.kind is self.fault.kind]
        places = dict.fromkeys((fault.location, fault.side) for fault in alike)
        there = [f for f in alike if (f.location, f.side) == (self.fault.location, self.fault.side)]
        here = list({f.cylinders: f for f in reversed(there)}.values())[::-1]
        amounts = KINDS[self.fault.kind].severities_of(self.fault.cylinders)
        return column(
            words(text("finding.place"), "bold"),
            *(
                tick(
                    f"place.{place.value}.{side.value if side else 'none'}",
                    text(f"location.{place}") + (", " + text(f"side.{side}") if side else ""),
                    (place, side) == (self.fault.location, self.fault.side),
                    self._change(next(f for f in alike if (f.location, f.side) == (place, side))),
                    round=True,
                )
                for place, side in places
            ),
            words(text("finding.cylinders"), "bold"),
            flow(
                *(
                    button(
                        f"cylinders.{'-'.join(map(str, f.cylinders))}",
                        numbers(f.cylinders),
                        self._change(f),
                        chosen=f.cylinders == self.fault.cylinders,
                    )
                    for f in here
                ),
                gap=0.4,
            ),
            words(text("free.amount"), "bold") if len(amounts) > 1 else None,
            flow(
                *(
                    button(
                        f"amount.{n}",
                        amount_text(KINDS[self.fault.kind].unit, amounts[n]),
                        self._amount(n),
                        chosen=n == self.severity,
                    )
                    for n in sorted(range(len(amounts)), key=lambda n: amounts[n])
                ),
                gap=0.4,
            )
            if len(amounts) > 1
            else None,
            gap=0.25,
            weight=1.0,
            least=20.0,
        )

    # hands

    def _engine(self, name: str) -> Callable[[], None]:
        def choose() -> None:
            self.profile = profile_named(name)
            self._faults = single_faults(self.profile)
            self.fault, self.severity = None, 0

        return choose

    def _kind(self, kind: FaultKind | None) -> Callable[[], None]:
        def choose() -> None:
            self.fault = next((fault for fault in self._faults if fault.kind is kind), None)
            self.severity = 0

        return choose

    def _change(self, fault: Fault) -> Callable[[], None]:
        def choose() -> None:
            self.fault = fault

        return choose

    def _amount(self, place: int) -> Callable[[], None]:
        def choose() -> None:
            self.severity = place

        return choose

    def named(self, cylinder: int, *, shift: bool) -> None:
        """Put the fault on a cylinder, where it can be there."""
        assert self.fault is not None
        like = [
            f
            for f in self._faults
            if (f.kind, f.location, f.side) == (self.fault.kind, self.fault.location, self.fault.side)
        ]
        self.fault = next((fault for fault in like if cylinder in fault.cylinders), self.fault)

    def _go(self) -> None:
        faults: tuple[Fault, ...] = ()
        if self.fault is not None:
            amounts = KINDS[self.fault.kind].severities_of(self.fault.cylinders)
            faults = (replace(self.fault, severity=amounts[min(self.severity, len(amounts) - 1)]),)
        self.shell.show(free_bench(self.shell, self.profile, faults))


def amount_text(unit: str, amount: float) -> str:
    """Return how bad a fault is in words, by the unit of its kind."""
    if unit == "ohm" and amount >= OPEN_OHM:
        return text("kind.open")
    name = re.sub("[^a-z0-9]+", "_", unit.lower())
    return text(f"amount.{name}", amount=amount, percent=100.0 * amount)


def free_bench(shell: Shell, profile: Profile, faults: tuple[Fault, ...]) -> BenchScreen:
    """Return a bench whose fault is shown, with records that are thrown away."""
    case = Case(
        name="free_bench",
        title=text("free.bench"),
        story=text("free.story"),
        profile=profile,
        faults=faults,
        temperature_c=20.0,
        bed=Bed(),
        evidence=frozenset(Operation),
        stored=(),
        takeaway="",
        seed=1,
        difficulty=1,
    )
    desk = Desk(open_store(None), shell.listening.player, shell.services.now_utc, Universes(None), hints=False)
    found = FoundCase(case, "free", case.name)
    start_or_resume(desk, found, "free", shell.services.now_utc())
    return FreeBench(shell, desk, text("free.who"), 1.0)


class FreeBench(BenchScreen):
    """A bench whose fault is known: everything can be heard and measured, nothing is asked."""

    @property
    def title(self) -> str:
        """It has nothing to hide."""
        return self.desk.attempt.case.in_words.title

    def card(self) -> Node:
        """Return the card with the truth on it."""
        claims = claims_text(truth_of(self.desk.attempt.case.faults))
        return card_node(
            self.desk.attempt, self.who, None, self.print_button(), truth=text("debrief.truth", claims=claims)
        )

    def prepare(self) -> None:
        """Nothing is reasoned about here."""

    def left(self) -> None:
        """Stop what plays, and throw the records away."""
        super().left()
        self.desk.store.close()

    def _endings(self, found: bool) -> list[Node]:
        return [button("change", text("free.change"), self.back, "f", chosen=True)]
