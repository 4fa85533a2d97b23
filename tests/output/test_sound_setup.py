"""The sound set-up: simulated listeners get the verdict that is meant for them, and its sounds are what they say."""

from __future__ import annotations

from collections.abc import Callable

import numpy as np
import pytest

from trainer.output.setup_sounds import HIGH_HZ, LOW_HZ, MOST_HUMS, SetupSound, setup_sound
from trainer.output.sound_setup import (
    SetupState,
    Trial,
    Verdict,
    new_setup,
    verdict_of,
    with_answer,
    without_last_answer,
)
from trainer.sound.levels import a_weighted_level_db
from trainer.sound.render import PRE_ROLL_S, TAIL_S

RUNS = 500
Listener = Callable[[Trial, np.random.Generator], str]

MISSES = 0.005
"""How often even a good listener answers wrongly by chance: from memory, a slip of the hand."""


def heard(level_db: float, threshold_db: float, chance: np.random.Generator) -> bool:
    """A detector with a threshold and a spread of 1 dB."""
    return level_db + chance.normal(0.0, 1.0) > threshold_db


def listener(
    threshold_db: float, *, mono: bool = False, lows: bool = True, swapped: bool = False, guesses: bool = False
) -> Listener:
    """Return somebody who hears hums down to so far under their level, on an output of some kind."""

    def answer(trial: Trial, chance: np.random.Generator) -> str:
        sound = trial.sound
        if guesses or chance.uniform() < MISSES:
            return str(chance.choice(trial.answers))
        if sound.part == "side":
            turned = {"left": "right", "right": "left", "both": "both"}
            return "both" if mono else turned[sound.what] if swapped else sound.what
        if sound.part == "hum":
            return str(sum(heard(sound.level_db, threshold_db, chance) for _hum in range(sound.count)))
        if sound.part == "low":
            return "both" if lows else ("second" if sound.what == "low" else "first")
        if sound.part == "phase":
            # on loudspeakers or in mono the opposed tone cancels and is taken for the quiet one
            return str(sound.order.index("opposed" if mono else "quiet") + 1)
        return trial.answers[0]

    return answer


def verdict(seed: int, answers: Listener) -> Verdict:
    chance = np.random.default_rng([seed, 7])
    state: SetupState = new_setup(seed, headphones=True)
    while state.current_trial is not None:
        state = with_answer(state, answers(state.current_trial, chance))
    return verdict_of(state)


@pytest.mark.parametrize(
    ("who", "answers", "meant"),
    [
        ("perfect", listener(-30.0), lambda v: v.hum == "ready" and v.sides == "stereo" and v.lows == "all" and v.headphones == "likely"),
        ("guessing", listener(0.0, guesses=True), lambda v: v.hum in ("guessed", "not_heard")),
        ("mono", listener(-30.0, mono=True), lambda v: v.sides == "mono" and v.hum == "ready" and v.headphones == "unlikely"),
        ("a loudspeaker without lows", listener(-30.0, lows=False), lambda v: v.lows == "no_lows" and v.hum == "ready"),
        ("cannot hear the hum", listener(8.0), lambda v: v.hum == "not_heard" and v.margin_db is None),
        ("hears it at its level only", listener(-3.0), lambda v: v.hum == "usable"),
        ("sides swapped", listener(-30.0, swapped=True), lambda v: v.sides == "swapped"),
    ],
)  # fmt: skip
def test_a_simulated_listener_gets_the_verdict_that_is_meant(
    who: str, answers: Listener, meant: Callable[[Verdict], bool]
) -> None:
    right = sum(meant(verdict(seed, answers)) for seed in range(RUNS))
    assert right >= 0.95 * RUNS, f"{who}: {right} of {RUNS}"


def test_answers_can_be_taken_back_and_unknown_ones_are_refused() -> None:
    first = new_setup(1, headphones=False)
    after = with_answer(first, "left")
    assert without_last_answer(after) == first
    with pytest.raises(ValueError, match="does not have"):
        with_answer(first, "above")
    with pytest.raises(ValueError, match="questions left"):
        verdict_of(after)


def test_the_number_of_hums_cannot_be_told_from_the_length() -> None:
    lengths = {len(setup_sound(SetupSound("hum", count=count, seed=5))) for count in range(MOST_HUMS + 1)}
    assert len(lengths) == 1


def test_every_sound_of_the_set_up_has_bed_before_and_after_and_never_peaks() -> None:
    for trial in new_setup(3, headphones=True).trials:
        samples = setup_sound(trial.sound)
        assert np.abs(samples).max() <= 10 ** (-3.0 / 20.0)
        lead, tail = samples[960 : round(PRE_ROLL_S * 48_000)], samples[-round(TAIL_S * 48_000) : -960]
        assert lead.any(axis=0).any()
        assert tail.any(axis=0).any()


def test_hums_stand_where_they_are_counted_and_fall_by_what_is_said() -> None:
    bed = setup_sound(SetupSound("hum", count=0, seed=5))
    two = setup_sound(SetupSound("hum", count=2, seed=5)) - bed
    loud = np.abs(two).max(axis=1) > 0.0
    starts = np.flatnonzero(np.diff(np.concatenate([[0], loud.astype(int)])) == 1)
    far_apart = np.sum(np.diff(starts) > 12_000) + 1
    assert far_apart == 2
    quieter = setup_sound(SetupSound("hum", count=2, level_db=-6.0, seed=5)) - bed
    part = slice(starts[0], starts[0] + 30_000)
    fall = a_weighted_level_db(two[part], 48_000) - a_weighted_level_db(quieter[part], 48_000)
    assert fall == pytest.approx(6.0, abs=0.1)


def test_sides_and_bands_are_where_they_are_said_to_be() -> None:
    left = setup_sound(SetupSound("side", "left"))
    assert left[:, 0].any()
    assert not left[:, 1].any()
    bands = setup_sound(SetupSound("low", "low", seed=2))
    bands -= setup_sound(SetupSound("hum", count=0, seed=2))[: len(bands)]  # the bed alone
    lead = round(PRE_ROLL_S * 48_000)
    for place, (low, high) in enumerate((LOW_HZ, HIGH_HZ)):
        start = lead + place * round(1.15 * 48_000)
        spectrum = np.abs(np.fft.rfft(bands[start : start + 33_000, 0])) ** 2
        frequency = np.fft.rfftfreq(33_000, 1 / 48_000)
        inside = spectrum[(frequency >= low) & (frequency <= high)].sum()
        beside = spectrum[(frequency > high * 1.3) | ((frequency < low * 0.7) & (frequency > 60.0))].sum()
        assert inside > 10 * beside, (low, high)


def test_the_opposed_tone_is_gone_in_mono() -> None:
    """Woods et al. 2017: over loudspeakers the tone whose sides are opposed cancels."""
    sound = setup_sound(SetupSound("phase", order=("same", "opposed", "quiet")))
    lead, step = round(PRE_ROLL_S * 48_000), round(1.15 * 48_000)
    mono = sound.mean(axis=1)
    levels = [float(np.std(mono[lead + n * step : lead + n * step + 30_000])) for n in range(3)]
    assert levels[1] < 0.1 * levels[2] < levels[0]
