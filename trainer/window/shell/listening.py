"""What is being played: start, pause, loop, what happens when a device goes away or the computer tears a playing."""

from __future__ import annotations

from dataclasses import dataclass

from trainer.circuit.solve import SAMPLE_RATE_HZ
from trainer.errors import MissingHereError
from trainer.output.file_player import FilePlayer
from trainer.output.playback import Playback, Samples
from trainer.output.player import Player
from trainer.output.sound_setup import LEAST_LEVEL_DB, LEVEL_STEP_DB
from trainer.sound.render import PRE_ROLL_S


@dataclass(frozen=True, slots=True)
class Track:
    """A finished buffer with what it is: the starts of its slots by number, in second, for going on after a pause."""

    samples: Samples
    name: str
    starts_s: tuple[tuple[int, float], ...] = ()


class Listening:
    """One track at a time on a player; `said` is the id of what there is to say about it, "" for nothing."""

    def __init__(self, player: Player | None) -> None:
        self._player = player
        self.track: Track | None = None
        self.playing: Playback | None = None
        self.loop = False
        self.said = ""
        self.heard_s = 0.0
        self._paused_at: int | None = None

    @property
    def player(self) -> Player:
        """The way out in use."""
        assert self._player is not None
        return self._player

    @property
    def silent(self) -> bool:
        """Whether nothing can be heard here: sounds go to files."""
        return isinstance(self.player, FilePlayer)

    @property
    def on(self) -> bool:
        """Whether something plays now."""
        return self.playing is not None and not self.playing.ended

    @property
    def paused(self) -> bool:
        """Whether a track waits to go on."""
        return self._paused_at is not None

    @property
    def at_s(self) -> float | None:
        """How far into the track the playing is, or None where nothing plays or waits."""
        if self._paused_at is not None:
            return self._paused_at / SAMPLE_RATE_HZ
        return self.playing.frame / SAMPLE_RATE_HZ if self.playing and self.on else None

    def play(self, track: Track, *, loop: bool = False) -> None:
        """Play a track from its beginning."""
        self.track, self.loop = track, loop
        self._start(0)

    def _start(self, frame: int) -> None:
        assert self.track is not None
        self.said, self._paused_at = "", None
        try:
            self.playing = self.player.start(self.track.samples, SAMPLE_RATE_HZ, from_frame=frame, loop=self.loop)
        except MissingHereError:
            self._lose(frame)
            return
        if self.silent:
            self.said = "sound.to_file"

    def pause(self) -> None:
        """Pause, or go on with what was paused."""
        if self._paused_at is not None:
            self._start(self._paused_at)
        elif self.playing and self.on:
            self._paused_at = self._slot_start(self.playing.frame)
            self.playing.stop()

    def stop(self) -> None:
        """Stop and forget where it was."""
        if self.playing is not None:
            self.playing.stop()
        self.playing, self._paused_at, self.track, self.said = None, None, None, ""

    def tick(self, passed_s: float) -> bool:
        """Bring everything up to date; tell whether something ended or went wrong."""
        if self.playing is None:
            return False
        was_on = not self.playing.ended
        if was_on:
            self.heard_s += passed_s
            self.player.update(self.playing)
        if self.playing.void and self.loop:
            self.playing.stop()
        if not self.playing.ended:
            return False
        if self.playing.lost:
            self._lose(self._slot_start(self.playing.frame))
        elif self.playing.void:
            self.said = "sound.void"
        self.playing = None
        return True

    def _lose(self, frame: int) -> None:
        self.playing, self._paused_at, self.said = None, frame, "sound.lost"

    def _slot_start(self, frame: int) -> int:
        """Return the frame from which a slot that was cut is heard again, with bed before it."""
        starts = (
            [round((start - PRE_ROLL_S) * SAMPLE_RATE_HZ) for _slot, start in self.track.starts_s] if self.track else []
        )
        return max((start for start in starts if start <= frame), default=0)

    def let_go(self) -> None:
        """Give the way out up, so that another one can be had; what plays waits at its slot."""
        if self._player is None:
            return
        if self.on and self.playing:
            self._paused_at = self._slot_start(self.playing.frame)
            self.playing = None
        self._player.close()

    def take(self, player: Player) -> None:
        """Go on with another way out."""
        self._player = player
        if self.said == "sound.to_file":  # of the way out before
            self.said = ""

    def louder(self, steps: int) -> float:
        """Change the level by steps, never above what was rendered; what plays goes on at it. Returns the level."""
        self.player.gain_db = min(max(self.player.gain_db + steps * LEVEL_STEP_DB, LEAST_LEVEL_DB), 0.0)
        if self.playing and self.on:
            torn = self.playing.void
            frame = self.playing.frame
            self.playing.stop()
            self._start(frame)
            if self.playing is not None:
                self.playing.void = torn
        return self.player.gain_db
