"""`hear` saves a case as another loudspeaker plays it, so that an instructor hears what a learner gets."""

from __future__ import annotations

import json
import wave
from pathlib import Path

import numpy as np
import pytest
from click.testing import CliRunner

from trainer.arrays import Floats
from trainer.commands.entry import main
from trainer.sound.listeners import GOOD, LISTENERS, OUTPUTS
from trainer.sound.render import PEAK_CEILING

RATE_HZ = 48_000
CASE = "faint_hum_on_three"


def heard(path: Path, *words: str) -> tuple[dict[str, object], Floats]:
    """Return what the command prints, and the file's samples, shape (frame, channel)."""
    result = CliRunner().invoke(main, ["hear", CASE, "-o", str(path), "--slot", "3", *words, "--json"])
    assert result.exit_code == 0, result.output
    with wave.open(str(path)) as file:
        assert (file.getframerate(), file.getsampwidth()) == (RATE_HZ, 3)
        raw = np.frombuffer(file.readframes(file.getnframes()), dtype=np.uint8).reshape(-1, 3)
    whole = np.zeros((len(raw), 4), dtype=np.uint8)
    whole[:, 1:] = raw
    return json.loads(result.stdout), whole.view("<i4").reshape(-1, 2) / 2**31


def band_db(samples: Floats, low_hz: float, high_hz: float) -> float:
    power = (np.abs(np.fft.rfft(samples, axis=0)) ** 2).sum(axis=1)
    frequency = np.fft.rfftfreq(len(samples), 1.0 / RATE_HZ)
    return float(10.0 * np.log10(power[(frequency >= low_hz) & (frequency < high_hz)].sum()))


@pytest.mark.parametrize("name", ["laptop", "phone", "cheap_headphones"])
def test_a_small_loudspeaker_takes_the_lows_and_leaves_the_middle(tmp_path: Path, name: str) -> None:
    plain, as_made = heard(tmp_path / "plain.wav")
    played, through = heard(tmp_path / "played.wav", "--listener", name)
    assert as_made.shape == through.shape
    assert plain["schedule"] == played["schedule"]  # no later and no longer
    assert (plain["listener"], played["listener"]) == (None, name)
    assert plain["sound"] != played["sound"]
    assert 0.0 < np.abs(through).max() < PEAK_CEILING
    # narrow bands, so that the gain of their middle is that of the band
    for hertz in (100.0, 200.0, 400.0, 1000.0, 4000.0):
        low_hz, high_hz = hertz * 0.99, hertz * 1.01
        lost_db = band_db(as_made, low_hz, high_hz) - band_db(through, low_hz, high_hz)
        stated_db = -float(LISTENERS[name].output.gain_db(np.array([hertz]))[0])
        # the file has 24 bits: under -140 dB there is nothing left to compare
        assert lost_db == pytest.approx(stated_db, abs=0.5)


def test_the_line_names_the_loudspeaker(tmp_path: Path) -> None:
    words = ["hear", CASE, "-o", str(tmp_path / "a.wav"), "--slot", "3", "--listener", "phone"]
    printed = CliRunner().invoke(main, words).output
    assert printed.endswith("heard from the place front, as heard through: phone speaker\n")


def test_ears_are_no_output_and_an_unknown_one_is_named_with_those_there_are(tmp_path: Path) -> None:
    assert OUTPUTS == ("good_headphones", "cheap_headphones", "laptop", "phone")
    assert LISTENERS["age_60"].output is GOOD
    for name in ("age_60", "radio"):
        path = tmp_path / "no.wav"
        result = CliRunner().invoke(main, ["hear", CASE, "-o", str(path), "--listener", name])
        assert result.exit_code == 2
        assert f"There is no output '{name}'." in result.stderr
        assert "Outputs: good_headphones, cheap_headphones, laptop, phone." in result.stderr
        assert not path.exists()
