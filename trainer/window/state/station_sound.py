"""The sound of a station: which device, at what level, what is missing for a better one, when a rest is due."""

from __future__ import annotations

from typing import TYPE_CHECKING

from trainer.desk.settings import Ears
from trainer.window.state.listening import Listening
from trainer.words import text, told

if TYPE_CHECKING:
    from trainer.window.state.shell import Shell

REST_AT_S = (600.0, 1200.0)
"""After so much listening a rest is proposed: ten and twenty minutes."""


class StationSound:
    """The way out for sound that is in use."""

    def __init__(self, shell: Shell, wanted: str) -> None:
        self._shell = shell
        self._rests = list(REST_AT_S)
        self.wanted, self.device, self.missing = wanted, wanted, list[str]()
        self.listening = Listening(None)
        self.use(wanted)

    def use(self, wanted: str) -> None:
        """Take a device by name, or what there is in its place; what plays waits and keeps its slot."""
        self.wanted = wanted
        self.listening.let_go()
        player, missing = self._shell.services.player(wanted)
        # another device than the one asked for has another level, and nothing is known of how it sounds
        self.device = wanted if player.way == "portaudio" else ""
        player.gain_db = self.ears.level_db
        self.listening.take(player)
        amiss = self.listening.silent or self.device != wanted
        self.missing = [told(error) for error in missing] if amiss else []

    @property
    def ears(self) -> Ears:
        """What is known of the device in use."""
        return self._shell.settings.ears_at(self.device)

    def reopen(self) -> None:
        """Try the device again, or whatever else there is, and go on where it was."""
        self.use(self.wanted)
        self.listening.pause()
        self._shell.touch()

    def removed(self) -> None:
        """Be told by the system that an output went away: what plays has lost it."""
        if self.listening.playing is not None:
            self.listening.playing.lose()
        self._shell.touch()

    def again(self) -> None:
        """Play once more what was torn."""
        if self.listening.track is not None:
            self.listening.play(self.listening.track)
        self._shell.touch()

    def louder(self, steps: int) -> None:
        """Change the level; it is kept for this device."""
        level = self.listening.louder(steps)
        shell = self._shell
        shell.keep(shell.settings.with_ears(self.device, level_db=level))
        shell.say(text("sound.level", level=level))

    def tick(self) -> None:
        """Propose a rest when it is due."""
        heard_s = self.listening.heard_s
        if self._rests and heard_s >= self._rests[0]:
            self._rests.pop(0)
            self._shell.say(text("sound.rest", minutes=heard_s / 60.0))

    def next_listener(self) -> None:
        """Begin to count anew."""
        self._rests, self.listening.heard_s = list(REST_AT_S), 0.0
