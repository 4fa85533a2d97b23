"""A buffer on its way out: what leaves is what was rendered, and nothing clicks, whatever is pressed."""

from __future__ import annotations

import numpy as np
import pytest

from trainer.output.playback import FADE_FRAMES, Playback

STEADY = np.full((48_000, 2), 0.5, np.float32)
SMALLEST_STEP = 0.5 / FADE_FRAMES
"""What a linear fade of this buffer changes from frame to frame; an edge without one changes by 0.5."""


def taken(playback: Playback, frames: int, block: int = 512) -> np.ndarray:
    out = [np.empty((block, 2), np.float32) for _block in range(frames // block)]
    for one in out:
        playback.take(one)
    return np.concatenate(out)


def steepest(heard: np.ndarray) -> float:
    return float(np.abs(np.diff(heard[:, 0])).max())


@pytest.mark.parametrize("block", [64, 512, 4096])
def test_what_leaves_is_the_buffer_to_the_last_sample_and_then_silence(block: int) -> None:
    samples = np.random.default_rng(1).normal(size=(10_000, 2)).astype(np.float32)
    playback = Playback(samples)
    heard = taken(playback, 16_384, block)
    assert np.array_equal(heard[:10_000], samples)
    assert not heard[10_000:].any()
    assert playback.ended


def test_a_level_is_a_gain_of_at_most_one_and_the_same_throughout() -> None:
    quiet = taken(Playback(STEADY, -20.0), 4096)
    assert quiet == pytest.approx(0.05)
    with pytest.raises(ValueError, match="never made louder"):
        Playback(STEADY, 0.1)


def test_a_start_in_the_middle_a_stop_and_a_loop_do_not_click() -> None:
    middle = Playback(STEADY, from_frame=1000)
    heard = taken(middle, 8192)
    assert heard[0, 0] == 0.0
    assert steepest(heard) <= SMALLEST_STEP * 1.01
    middle.stop()
    end = taken(middle, 4096)
    assert steepest(np.concatenate([heard[-1:], end])) <= SMALLEST_STEP * 1.01
    assert middle.ended
    assert not end[FADE_FRAMES + 512 :].any()
    looped = Playback(STEADY, from_frame=40_000, loop=True)
    assert steepest(taken(looped, 102_400)[FADE_FRAMES:]) == 0.0  # the fade belongs to the first pass alone
    assert not looped.ended


def test_an_end_that_is_lost_is_not_an_end() -> None:
    playback = Playback(STEADY)
    taken(playback, 512)
    playback.lose()
    assert playback.lost
    assert playback.ended
    done = Playback(STEADY[:512])
    taken(done, 1024)
    done.lose()
    assert not done.lost
