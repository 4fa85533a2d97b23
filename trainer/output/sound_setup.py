"""The sound set-up as a pure course of questions: what is played, what was answered, what follows from it.

It proves that the hum exists on this station before anything is judged by it. It informs and never bars anybody.
"""

from __future__ import annotations

from dataclasses import asdict, dataclass, replace
from typing import Literal

from trainer.circuit.chance import Stream
from trainer.output.setup_sounds import MOST_HUMS, SetupSound

SIDES = ("left", "right", "both")
HUM_LEVELS_DB = (0.0, -6.0, -12.0)
PHASE_TRIALS, PHASE_RIGHT = 6, 5
START_LEVEL_DB, LEVEL_STEP_DB, LEAST_LEVEL_DB = -20.0, 2.0, -40.0

Hum = Literal["ready", "usable", "not_heard", "guessed"]


@dataclass(frozen=True, slots=True)
class Trial:
    """One question: the sound, the answers that may be given, and the one that is right ("" where none is)."""

    sound: SetupSound
    answers: tuple[str, ...]
    right: str = ""


@dataclass(frozen=True, slots=True)
class Verdict:
    """What a set-up has shown of a station.

    `hum`: `ready` (heard 6 dB under its level), `usable` (at its level), `not_heard`, or `guessed` (hums were counted
    where there was none). `margin_db` is how far under its level it was still counted rightly, None where nowhere.
    `sides`: `stereo`, `swapped`, `mono` or `unsure`. `lows`: `all`, `no_lows` or `unsure`. `headphones`: `likely`,
    `unlikely`, or "" where that was not asked.
    """

    hum: Hum
    margin_db: float | None
    sides: str
    bed: str
    lows: str
    headphones: str = ""

    @property
    def plain(self) -> dict[str, str | float | None]:
        """The verdict as plain data."""
        return asdict(self)


@dataclass(frozen=True, slots=True)
class Course:
    """A set-up under way: its trials in order and the answers so far."""

    trials: tuple[Trial, ...]
    given: tuple[str, ...] = ()

    @property
    def now(self) -> Trial | None:
        """The trial that waits for an answer, or None at the end."""
        return self.trials[len(self.given)] if len(self.given) < len(self.trials) else None


def course(seed: int, *, headphones: bool) -> Course:
    """Return a course in an order of its own: sides, comfort, bed, hums, low end, if wanted headphones."""
    chance = Stream(seed, "sound set-up")
    trials = [Trial(SetupSound("side", side), (*SIDES, "none"), side) for side in _mixed(chance, SIDES)]
    trials += [Trial(SetupSound("comfort"), ("comfortable",)), Trial(SetupSound("bed"), ("yes", "barely", "no"))]
    counts = tuple(str(number) for number in range(MOST_HUMS + 1))
    wanted = [(level, 1 + int(chance.uniform(1)[0] * MOST_HUMS)) for level in HUM_LEVELS_DB for _twice in range(2)]
    wanted.insert(1 + int(chance.uniform(1)[0] * (len(wanted) - 1)), (0.0, 0))
    trials += [Trial(SetupSound("hum", count=count, level_db=level), counts, str(count)) for level, count in wanted]
    first = _mixed(chance, ("low", "high"))[0]
    trials.append(Trial(SetupSound("low", first), ("both", "first", "second", "none"), "both"))
    if headphones:
        for _trial in range(PHASE_TRIALS):
            order = _mixed(chance, ("same", "quiet", "opposed"))
            right = str(order.index("quiet") + 1)
            trials.append(Trial(SetupSound("phase", order=order), ("1", "2", "3"), right))
    # each sound varies in its own way, and never the same in the next set-up
    return Course(tuple(replace(t, sound=replace(t.sound, seed=seed + n)) for n, t in enumerate(trials)))


def _mixed(chance: Stream, names: tuple[str, ...]) -> tuple[str, ...]:
    keys = chance.uniform(len(names))
    return tuple(name for _key, name in sorted(zip(keys.tolist(), names, strict=True)))


def answered(now: Course, answer: str) -> Course:
    """Return the course after an answer; raises ValueError for one that the trial does not have."""
    trial = now.now
    if trial is None or answer not in trial.answers:
        raise ValueError(f"the trial does not have the answer {answer!r}")
    return replace(now, given=(*now.given, answer))


def taken_back(now: Course) -> Course:
    """Return the course without its last answer."""
    return replace(now, given=now.given[:-1])


def verdict_of(done: Course) -> Verdict:
    """Return what a finished course shows; raises ValueError for one that is not finished."""
    if done.now is not None:
        raise ValueError("the set-up has questions left")
    pairs = list(zip(done.trials, done.given, strict=True))

    def of(part: str) -> list[tuple[Trial, str]]:
        return [(trial, given) for trial, given in pairs if trial.sound.part == part]

    hum, margin = _hum([(trial, given) for trial, given in of("hum")])
    phase = of("phase")
    right = sum(given == trial.right for trial, given in phase)
    headphones = "" if not phase else "likely" if right >= PHASE_RIGHT else "unlikely"
    return Verdict(hum, margin, _sides(of("side")), of("bed")[0][1], _lows(*of("low")[0]), headphones)


def _hum(pairs: list[tuple[Trial, str]]) -> tuple[Hum, float | None]:
    margin: float | None = None
    for level in HUM_LEVELS_DB:
        here = [(trial, given) for trial, given in pairs if trial.sound.count and trial.sound.level_db == level]
        if any(given != trial.right for trial, given in here):
            break
        margin = -level
    if any(not trial.sound.count and given != trial.right for trial, given in pairs):
        return "guessed", margin
    if margin is None:
        return "not_heard", None
    return ("ready" if margin >= -HUM_LEVELS_DB[1] else "usable"), margin


def _sides(pairs: list[tuple[Trial, str]]) -> str:
    said = {trial.right: given for trial, given in pairs}
    if all(right == given for right, given in said.items()):
        return "stereo"
    if said == {"left": "right", "right": "left", "both": "both"}:
        return "swapped"
    return "mono" if set(said.values()) == {"both"} else "unsure"


def _lows(trial: Trial, given: str) -> str:
    if given == "both":
        return "all"
    high = "second" if trial.sound.what == "low" else "first"
    return "no_lows" if given == high else "unsure"
