"""The questions of the sound set-up, as pure state: what is played, what was answered, and the verdict.

It shows whether the hum can be heard on this station before anybody is judged by it. It never locks anybody out.
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
    """One question: its sound, the allowed answers, and the right one ("" where no answer is wrong)."""

    sound: SetupSound
    answers: tuple[str, ...]
    right: str = ""


@dataclass(frozen=True, slots=True)
class Verdict:
    """The result of a set-up on one station.

    `hum`: `ready` (heard 6 dB under its level), `usable` (at its level), `not_heard`, or `guessed` (hums were counted
    where there was none). `margin_db` is the largest drop in level at which all hums were counted rightly, or None.
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
class SetupState:
    """The state of a set-up: its trials in order and the answers so far."""

    trials: tuple[Trial, ...]
    answers: tuple[str, ...] = ()

    @property
    def current_trial(self) -> Trial | None:
        """The first trial without an answer, or None at the end."""
        return self.trials[len(self.answers)] if len(self.answers) < len(self.trials) else None


def new_setup(seed: int, *, headphones: bool) -> SetupState:
    """Return a set-up before its first answer; the seed orders its trials, and `headphones` adds those for headphones.

    The parts are always sides, comfort, bed, hums, low end, headphones.
    """
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
    # every sound gets another seed, so that none repeats, not even in the next set-up
    return SetupState(tuple(replace(t, sound=replace(t.sound, seed=seed + n)) for n, t in enumerate(trials)))


def _mixed(chance: Stream, names: tuple[str, ...]) -> tuple[str, ...]:
    keys = chance.uniform(len(names))
    return tuple(name for _key, name in sorted(zip(keys.tolist(), names, strict=True)))


def with_answer(state: SetupState, answer: str) -> SetupState:
    """Return the state after an answer; raises ValueError for one that the trial does not allow."""
    trial = state.current_trial
    if trial is None or answer not in trial.answers:
        raise ValueError(f"the trial does not have the answer {answer!r}")
    return replace(state, answers=(*state.answers, answer))


def without_last_answer(state: SetupState) -> SetupState:
    """Return the state without its last answer."""
    return replace(state, answers=state.answers[:-1])


def verdict_of(finished: SetupState) -> Verdict:
    """Return the verdict of a finished set-up; raises ValueError while questions are left."""
    if finished.current_trial is not None:
        raise ValueError("the set-up has questions left")
    pairs = list(zip(finished.trials, finished.answers, strict=True))

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
