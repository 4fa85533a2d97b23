"""The terminal's way out for sound: a device, files while there is none, and the device again when it is back."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from contextlib import closing, contextmanager

from trainer.errors import MissingHereError
from trainer.output.file_player import FilePlayer
from trainer.output.find_player import find_player
from trainer.output.heard_files import HeardFiles
from trainer.output.player import Player
from trainer.output.playing import Played, Playing, Samples
from trainer.words import message_of, text

Find = Callable[[], tuple[Player, list[MissingHereError]]]


class ReturningPlayer(Player):
    """Plays by whatever `find` gives, and asks for it again before each sound while only files can be written.

    `tell` says what is missing, what went away, and that sound is back.
    """

    way = "returning"

    def __init__(self, find: Find, files: HeardFiles, tell: Callable[[str], None]) -> None:
        self._find, self._silent, self._tell = find, FilePlayer(files), tell
        self._now, missing = find()
        for error in missing:
            tell(message_of(error))
        if self._is_silent:
            tell(text("hear.files"))

    def play(self, samples: Samples, rate_hz: int) -> Played:
        """Play to the end, into a file where nothing else is left; raises MissingHereError where even that fails."""
        if self._is_silent and self._found():
            self._tell(text("hear.back"))
        try:
            return self._now.play(samples, rate_hz)
        except MissingHereError as error:
            if self._is_silent:
                raise
            self._tell(message_of(error))
        self.close()
        # a sound server that began again has a device at once; one that promises and fails is not tried for ever
        if self._found():
            try:
                return self._now.play(samples, rate_hz)
            except MissingHereError:
                self.close()
        self._now = self._silent
        self._tell(text("hear.files"))
        return self._now.play(samples, rate_hz)

    @property
    def _is_silent(self) -> bool:
        return isinstance(self._now, FilePlayer)

    def _found(self) -> bool:
        """Look for a way out anew; tell whether there is one that can be heard."""
        self._now, _missing = self._find()
        return not self._is_silent

    def start(self, samples: Samples, rate_hz: int, *, from_frame: int = 0, loop: bool = False) -> Playing:
        """Begin to play by the way out in use."""
        return self._now.start(samples, rate_hz, from_frame=from_frame, loop=loop)

    def check(self, playing: Playing) -> None:
        """Bring a playing up to date."""
        self._now.check(playing)

    def close(self) -> None:
        """Let the device go."""
        self._now.close()


@contextmanager
def terminal_player(device: str | None, tell: Callable[[str], None], *, to_file: bool) -> Iterator[Player]:
    """Give what the terminal plays through, files only where that was asked for, and let go of it at the end."""
    with HeardFiles() as files:
        if to_file:
            tell(text("hear.files"))
            yield FilePlayer(files)
            return
        with closing(ReturningPlayer(lambda: find_player(device, files), files, tell)) as player:
            yield player
