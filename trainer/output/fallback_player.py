"""The terminal's player: a sound device, files while there is none, and the device again once it is back."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from contextlib import closing, contextmanager

from trainer.errors import MissingHereError
from trainer.output.file_player import FilePlayer
from trainer.output.find_player import find_player
from trainer.output.playback import Playback, PlaybackResult, Samples
from trainer.output.player import Player
from trainer.output.temporary_sounds import TemporarySounds
from trainer.words import message_of, text

Find = Callable[[], tuple[Player, list[MissingHereError]]]


class FallbackPlayer(Player):
    """Plays on the player that `find` returns, and falls back to files; looks for a device again before each sound.

    Calls `tell` with a sentence when a device is missing, goes away or is back.
    """

    backend = "fallback"

    def __init__(self, find: Find, files: TemporarySounds, tell: Callable[[str], None]) -> None:
        self._find, self._file_player, self._tell = find, FilePlayer(files), tell
        self._player, missing = find()
        for error in missing:
            tell(message_of(error))
        if self._is_silent:
            tell(text("hear.files"))

    def play(self, samples: Samples, rate_hz: int) -> PlaybackResult:
        """Play to the end, or write a file where no device plays; raises MissingHereError where that fails too."""
        if self._is_silent and self._find_device():
            self._tell(text("hear.back"))
        try:
            return self._player.play(samples, rate_hz)
        except MissingHereError as error:
            if self._is_silent:
                raise
            self._tell(message_of(error))
        self.close()
        # a restarted sound server has a device at once; try a found device only once, it may fail again
        if self._find_device():
            try:
                return self._player.play(samples, rate_hz)
            except MissingHereError:
                self.close()
        self._player = self._file_player
        self._tell(text("hear.files"))
        return self._player.play(samples, rate_hz)

    @property
    def _is_silent(self) -> bool:
        return isinstance(self._player, FilePlayer)

    def _find_device(self) -> bool:
        """Look for a player again; return whether it is audible."""
        self._player, _missing = self._find()
        return not self._is_silent

    def start(self, samples: Samples, rate_hz: int, *, from_frame: int = 0, loop: bool = False) -> Playback:
        """Start on the player in use."""
        return self._player.start(samples, rate_hz, from_frame=from_frame, loop=loop)

    def update(self, playback: Playback) -> None:
        """Refresh a playback on the player in use."""
        self._player.update(playback)

    def close(self) -> None:
        """Release the device."""
        self._player.close()


@contextmanager
def terminal_player(device: str | None, tell: Callable[[str], None], *, to_file: bool) -> Iterator[Player]:
    """Yield the terminal's player, one that only writes files for `to_file`; close it at the end."""
    with TemporarySounds() as files:
        if to_file:
            tell(text("hear.files"))
            yield FilePlayer(files)
            return
        with closing(FallbackPlayer(lambda: find_player(device, files), files, tell)) as player:
            yield player
