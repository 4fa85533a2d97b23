"""Settings: looks, size of text, language, sound device, the strip's outline, station mode."""

from __future__ import annotations

from collections.abc import Callable

from trainer.desk.settings import SCALES, hashed_pin
from trainer.window.kit.nodes import Node, button, column, field, flow, row, scroll, tick, words
from trainer.window.shell.screen import Screen
from trainer.window.shell.shell import Shell
from trainer.words import text
from trainer.words.languages import LANGUAGES

LEAST_PIN = 4


class SettingsScreen(Screen):
    """Everything that is kept for this station; each change holds at once."""

    name = "settings"
    first = "theme.dark"

    def __init__(self, shell: Shell) -> None:
        super().__init__(shell)
        self._pin = ""
        self._devices = shell.services.devices()

    def view(self) -> Node:
        """Return every setting as a group of choices."""
        now = self.shell.settings
        return scroll(
            "page",
            words(text("settings.title"), "title", "settings.title"),
            self._group("theme", ("dark", "light"), now.theme),
            self._group("language", tuple(LANGUAGES), now.language),
            self._group("trace", ("fading", "shown", "off"), now.trace),
            column(
                words(text("settings.scale"), "bold"),
                flow(*(self._scale(scale) for scale in SCALES), gap=0.4),
                gap=0.3,
            ),
            column(
                words(text("settings.device"), "bold"),
                *(self._device(name) for name in ("", *self._devices)),
                words(text("settings.level", level=self.shell.sound.calibration.level_db), "muted", "settings.level"),
                gap=0.2,
            ),
            column(
                words(text("settings.station"), "bold"),
                words(text("station.limits"), "muted"),
                row(
                    field("pin", self._pin, self._write, self._station),
                    button(
                        "station", text("settings.station_on"), self._station if len(self._pin) >= LEAST_PIN else None
                    ),
                    button("station_off", text("settings.station_off"), self._station_off if now.station_pin else None),
                    gap=0.6,
                ),
                gap=0.3,
            ),
            self.shell.footer(),
            gap=0.9,
        )

    def _group(self, name: str, values: tuple[str, ...], now: str) -> Node:
        ticks = [
            tick(
                f"{name}.{value}",
                LANGUAGES[value].name if name == "language" else text(f"settings.{name}.{value}"),
                value == now,
                self._chooser(name, value),
                round=True,
                verbatim=name == "language",
            )
            for value in values
        ]
        return column(words(text(f"settings.{name}"), "bold"), flow(*ticks, gap=1.0), gap=0.2)

    def _scale(self, scale: float) -> Node:
        chosen = scale == self.shell.settings.scale
        return button(f"scale.{scale}", f"{scale:.0%}", self._chooser("scale", scale), chosen=chosen)

    def _device(self, name: str) -> Node:
        chosen = name == self.shell.settings.device
        label = name or text("settings.device_default")
        choose = self._chooser("device", name)
        return tick(f"device.{name}", label, chosen, choose, round=True, verbatim=bool(name))

    def _chooser(self, name: str, value: object) -> Callable[[], None]:
        return lambda: self._set(**{name: value})

    def _set(self, **values: object) -> None:
        self.shell.keep(self.shell.settings.changed(**values))

    def _write(self, written: str) -> None:
        self._pin = "".join(letter for letter in written if letter.isdigit())[:12]

    def _station(self) -> None:
        if len(self._pin) < LEAST_PIN:
            self.shell.say(text("settings.pin_short", n=LEAST_PIN))
            return
        self._set(station_pin=hashed_pin(self._pin))
        self._pin = ""
        self.shell.full_screen = True
        self.shell.home()

    def _station_off(self) -> None:
        self._set(station_pin="")
        self.shell.full_screen = False
