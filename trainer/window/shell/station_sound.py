"""The sound of a station: which device, at what level, what is missing for a better one, when a rest is due."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Protocol

from trainer.desk.settings import DeviceCalibration, Settings
from trainer.errors import UserError
from trainer.window.shell.listening import Listening
from trainer.window.shell.services import Services
from trainer.words import message_of, text

REST_AT_S = (600.0, 1200.0)
"""After so much listening a rest is proposed: ten and twenty minutes."""


class Station(Protocol):
    """What a station's sound needs of its window."""

    services: Services
    settings: Settings

    def touch(self) -> None:
        """Note that what is shown has changed."""

    def keep(self, settings: Settings) -> None:
        """Take new settings over and keep them."""

    def say(self, notice: str) -> None:
        """Show a notice."""


class StationSound:
    """The output device in use."""

    def __init__(self, station: Station, wanted: str) -> None:
        self._station = station
        self._rests = list(REST_AT_S)
        self.wanted, self.device = wanted, wanted
        self._missing: Sequence[UserError] = ()
        self.listening = Listening(None)
        self.use(wanted)

    def use(self, wanted: str) -> None:
        """Take a device by name, or what there is in its place; what plays waits and keeps its slot."""
        self.wanted = wanted
        self.listening.let_go()
        player, missing = self._station.services.player(wanted)
        # another device than the one asked for has another level, and nothing is known of how it sounds
        self.device = wanted if player.backend == "portaudio" else ""
        player.gain_db = self.calibration.level_db
        self.listening.take(player)
        amiss = self.listening.silent or self.device != wanted
        self._missing = tuple(missing) if amiss else ()

    @property
    def missing(self) -> list[str]:
        """What this machine lacks for the device that is wanted."""
        return [message_of(error) for error in self._missing]

    @property
    def calibration(self) -> DeviceCalibration:
        """What is known of the device in use."""
        return self._station.settings.calibration_of(self.device)

    def reopen(self) -> None:
        """Try the device again, or whatever else there is, and go on where it was."""
        self.use(self.wanted)
        self.listening.pause()
        self._station.touch()

    def removed(self) -> None:
        """Handle the removal of an output device: mark what plays as interrupted."""
        if self.listening.playing is not None:
            self.listening.playing.lose()
        self._station.touch()

    def again(self) -> None:
        """Play the interrupted track again."""
        if self.listening.track is not None:
            self.listening.play(self.listening.track)
        self._station.touch()

    def louder(self, steps: int) -> None:
        """Change the level; it is kept for this device."""
        level = self.listening.louder(steps)
        station = self._station
        station.keep(station.settings.with_calibration(self.device, level_db=level))
        station.say(text("sound.level", level=level))

    def tick(self) -> None:
        """Propose a rest when it is due."""
        heard_s = self.listening.heard_s
        if self._rests and heard_s >= self._rests[0]:
            self._rests.pop(0)
            self._station.say(text("sound.rest", n=round(heard_s / 60.0)))

    def next_listener(self) -> None:
        """Reset the listening time for the next learner."""
        self._rests, self.listening.heard_s = list(REST_AT_S), 0.0
