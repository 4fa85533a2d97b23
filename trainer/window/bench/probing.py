"""The probes: one cylinder's circuit from module to coil, two probes on its pins, and what the meter shows."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import replace
from typing import Literal

from trainer.circuit.elements import Side
from trainer.desk.case_actions import Reply, cautions_of
from trainer.desk.case_requests import Measure
from trainer.errors import WrongCallError
from trainer.instruments.bench import MODULE_CONNECTOR, Pin
from trainer.instruments.charges import TOUCHED
from trainer.instruments.probes import Meter, pins_of_cylinder, request_between
from trainer.instruments.requests import OF_THE_WHOLE, Request, What, next_driven, plug_point, through_point
from trainer.instruments.under_load import Trace
from trainer.practice.reports.attempt_lines import point_text
from trainer.window.bench.case_bench import CaseBench
from trainer.window.bench.engine_work import EngineWork
from trainer.window.kit.nodes import (
    Box,
    Node,
    button,
    column,
    field,
    flow,
    lines,
    row,
    scroll,
    split,
    spot,
    tick,
    words,
)
from trainer.window.pictures.pictures import (
    COLUMNS_X,
    FEED_Y,
    LADDER_SIZE,
    PIN_RADIUS,
    RETURN_Y,
    LadderPicture,
    PlotPicture,
)
from trainer.window.shell.screen import Screen
from trainer.window.shell.shell import Shell
from trainer.words import message_of, text

Instrument = Literal[
    "volts", "ohms", "insulation", "lamp", "drop", "trace", "clamp", "supply", "crank", "plus_drop", "ground_drop",
    "dummy", "contribution", "compression",
]  # fmt: skip
INSTRUMENTS: tuple[tuple[Instrument, str], ...] = (
    ("volts", "v"), ("ohms", "o"), ("insulation", "i"), ("lamp", "w"), ("drop", "d"), ("trace", "t"),
    ("clamp", "a"), ("supply", "s"), ("crank", "b"), ("plus_drop", "p"),
    ("ground_drop", "n"), ("dummy", "l"),
    ("contribution", "u"), ("compression", "m"),
)  # fmt: skip
BETWEEN_PINS: Mapping[str, Meter] = {
    "volts": "volts", "ohms": "ohms", "insulation": "insulation", "lamp": "lamp",
    "drop": "drop",
}  # fmt: skip
DRIVEN: Mapping[str, What] = {
    "trace": "trace",
    "clamp": "clamp",
    "supply": "supply",
    "crank": "crank",
    "plus_drop": "plus_drop",
    "ground_drop": "ground_drop",
    "dummy": "dummy",
    "contribution": "contribution",
    "compression": "compression",
}
SLIPS = ("connected", "firm", "key_on", "leads", "at_once")
CAPTURE = "captured"
"""The meter keeps the least and the most: no slip, but ticked beside them."""


class ProbeScreen(Screen):
    """Measuring; everything it does is done on the bench that it was opened from."""

    name = "probe"
    first = "pin.0"

    def __init__(
        self, shell: Shell, bench: CaseBench, work: EngineWork, card: Callable[[], Node], point: str = ""
    ) -> None:
        super().__init__(shell)
        self._bench, self._work, self._card = bench, work, card
        numbers = bench.cylinders
        self.cylinder = bench.marked or numbers[0]
        if point.startswith("pass_through."):
            served = bench.profile.connector_name_of(self.cylinder)
            if f"pass_through.{served}" != point:
                self.cylinder = next(n for n in numbers if through_point(bench.profile, n) == point)
        self.instrument: Instrument = "ohms"
        self.red: Pin | None = None
        self.black: Pin | None = None
        self.grounded = False
        self.slips: frozenset[str] = frozenset()
        self.expected = ""
        self.shown: tuple[str, ...] = ()
        self.display = ""
        self.trace: Trace | None = None

    @property
    def cylinders(self) -> tuple[int, ...]:
        """Digits name the cylinder whose circuit is shown."""
        return self._bench.cylinders

    def named(self, cylinder: int, *, shift: bool) -> None:
        """Show another cylinder's circuit; the probes stay where they are."""
        self.cylinder = cylinder
        self._bench.marked = cylinder
        self.shell.touch()

    # what is shown

    def view(self) -> Node:
        """Return the circuit, the instruments and the reading beside the card."""
        numbers = [
            button(f"cylinder.{n}", str(n), self._name(n), chosen=n == self.cylinder, least=2.5) for n in self.cylinders
        ]
        instruments = [
            button(
                f"instrument.{name}", text(f"instrument.{name}"), self._take(name), key, chosen=name == self.instrument
            )
            for name, key in INSTRUMENTS
        ]
        cautions = cautions_of(Measure, self._bench.desk.attempt.work, live=self.instrument in TOUCHED)
        main = scroll(
            "main",
            words(text("probe.title", number=self.cylinder), "title", "probe.title"),
            *(words(text(key), "caution", key) for key in cautions),
            flow(*numbers, gap=0.4),
            self._ladder(),
            flow(*instruments, gap=0.5),
            self._ways(),
            self._reading(),
            gap=0.7,
        )
        return split(main, column(self._card(), least=20.0), least=58.0)

    def _ladder(self) -> Node:
        profile = self._bench.profile
        pins = pins_of_cylinder(profile, self.cylinder)
        spots, placed = [], []
        for place, pin in enumerate(pins):
            x, y = COLUMNS_X[place // 2], FEED_Y if pin.side is Side.FEED else RETURN_Y
            placed.append((pin, (x, y)))
            label = text("spot.pin", side=text(f"side.{pin.side}"), point=point_text(pin.break_point, pin.half))
            box = Box(x - PIN_RADIUS, y - PIN_RADIUS, 2 * PIN_RADIUS, 2 * PIN_RADIUS)
            spots.append(spot(f"pin.{place}", label, box, self._touch(pin), chosen=pin in (self.red, self.black)))
        points = (MODULE_CONNECTOR, through_point(profile, self.cylinder), plug_point(self.cylinder))
        labels = [
            (text(f"ladder.{point.partition('.')[0]}"), (COLUMNS_X[2 * n] + 3.5, 3.5)) for n, point in enumerate(points)
        ]
        picture = LadderPicture(
            self.cylinder,
            tuple(placed),
            self.red,
            self.black,
            self.grounded,
            self._bench.desk.attempt.work.unplugged,
            (*labels, (text("probe.coil", number=self.cylinder), (92.0, 3.5))),
        )
        ground = spot("ground", text("spot.ground"), Box(8.0, 26.0, 10.0, 3.4), self._ground, chosen=self.grounded)
        return Node("picture", "ladder", children=(*spots, ground), picture=picture, size=LADDER_SIZE, least=13.0)

    def _ways(self) -> Node:
        return column(
            flow(
                button("lift", text("probe.lift"), self._lift, "backspace"),
                button("read", text("probe.read"), self.read, "r", framed=True),
                tick(CAPTURE, text("probe.captured"), CAPTURE in self.slips, self._slip(CAPTURE)),
                gap=0.6,
            ),
            row(words(text("probe.expect"), "muted"), field("expect", self.expected, self._expect, self.read), gap=0.6),
            flow(
                words(text("probe.badly"), "muted"),
                *(
                    tick(f"slip.{slip}", text(f"slip_way.{slip}"), slip in self.slips, self._slip(slip))
                    for slip in SLIPS
                ),
                gap=0.8,
            ),
            gap=0.5,
        )

    def _reading(self) -> Node:
        plot = None
        if self.trace is not None:
            picture = PlotPicture(self.trace.time_s * 1e3, self.trace.current_a, "ms", "A")
            plot = Node("picture", "trace", picture=picture, size=(100.0, 40.0), least=12.0)
        return column(
            words(self.display, "reading", "display") if self.display else None,
            lines(self.shown, "body", "said") if self.shown else None,
            plot,
            flow(button("back", text("probe.done"), self.back, "escape")),
            gap=0.4,
            surface="panel",
            pad=0.8,
            framed=True,
        )

    # hands

    def _name(self, number: int) -> Callable[[], None]:
        return lambda: self.named(number, shift=False)

    def _take(self, instrument: Instrument) -> Callable[[], None]:
        def take() -> None:
            self.instrument = instrument
            self.display, self.trace, self.shown = "", None, ()
            if instrument not in BETWEEN_PINS:
                self._lift()

        return take

    def _touch(self, pin: Pin) -> Callable[[], None]:
        def touch() -> None:
            if pin == self.red:
                self.red = None
            elif pin == self.black:
                self.black = None
            elif self.red is None:
                self.red = pin
            elif self.black is None and not self.grounded:
                self.black = pin
            else:
                self.red, self.black, self.grounded = pin, None, False

        return touch

    def _ground(self) -> None:
        self.grounded, self.black = not self.grounded, None

    def _lift(self) -> None:
        self.red, self.black, self.grounded = None, None, False

    def _expect(self, written: str) -> None:
        self.expected = written[:40]

    def _slip(self, slip: str) -> Callable[[], None]:
        def change() -> None:
            self.slips = self.slips ^ {slip}

        return change

    def press(self, key: str, *, shift: bool) -> bool:
        """Take `g`, which puts the black probe on engine ground."""
        if key == "g":
            self._ground()
        return key == "g"

    def read(self) -> None:
        """Take the reading that the probes and the instrument are set up for."""
        try:
            request = self._request()
        except WrongCallError as error:
            self.shown = (message_of(error),)
            return
        action = Measure(request, self.expected or None)
        self._bench.ask(
            "measure", self._bench.desk.attempt, action.request, action.predicted,
            then=lambda done: self._work.carry_out(action, done, self._show),
        )  # fmt: skip

    def _request(self) -> Request:
        if self.instrument in BETWEEN_PINS:
            if self.red is None or (self.black is None and not self.grounded):
                raise WrongCallError("two_probes")
            asked = request_between(self._bench.profile, BETWEEN_PINS[self.instrument], self.red, self.black)
        else:
            whole = self.instrument in OF_THE_WHOLE
            other = next_driven(self._bench.profile, self.cylinder) if self.instrument == "clamp" else 0
            asked = Request(DRIVEN[self.instrument], cylinder=0 if whole else self.cylinder, other=other)
        return replace(
            asked,
            connected="connected" in self.slips,
            firm="firm" in self.slips,
            key_on="key_on" in self.slips,
            nulled="leads" not in self.slips,
            captured=CAPTURE in self.slips,
            at_once="at_once" in self.slips,
        )

    def _show(self, reply: Reply) -> None:
        self.display, self.trace = reply.display, reply.done.trace
        self.shown, self.expected = (reply.measured, *reply.message), ""
        self.shell.touch()

    def back(self) -> None:
        """Go back to the bench; a reading that has not come yet is not taken."""
        self.shell.services.worker.forget()
        self.shell.close()
