"""What other outputs and ears leave of a slot: tones at known levels, and slots of the engines."""

from __future__ import annotations

import numpy as np
import pytest

from tests.engines import ALL, NORTH, fault_of, solved
from trainer.arrays import Floats
from trainer.circuit.fault import FaultKind
from trainer.circuit.profile import Profile
from trainer.sound.bed import BedKind, bed_pa
from trainer.sound.levels import FULL_SCALE_PA, REFERENCE_PA, Measures
from trainer.sound.listeners import LISTENERS, Listener, Output, heard_by
from trainer.sound.render import Bed, render

RATE_HZ = 48_000


def tone(hertz: float, level_db: float) -> Floats:
    wave = (
        np.sqrt(2.0)
        * REFERENCE_PA
        * 10.0 ** (level_db / 20.0)
        * np.sin(2 * np.pi * hertz * np.arange(RATE_HZ) / RATE_HZ)
    )
    return np.stack([wave, wave], axis=1)


@pytest.mark.parametrize(("name", "hertz", "lost_db"), [
    ("good_headphones", 1000.0, 0.0), ("laptop", 1000.0, 0.0), ("laptop", 175.0, 18.0), ("phone", 300.0, 18.0),
    ("cheap_headphones", 60.0, 12.0),
])  # fmt: skip
def test_an_output_takes_so_many_decibel_an_octave_off_a_tone_outside_its_band(
    name: str, hertz: float, lost_db: float
) -> None:
    plain = heard_by(Listener(Output(20.0, 0.0, 20_000.0, 0.0)), tone(hertz, 80.0), RATE_HZ)
    through = heard_by(LISTENERS[name], tone(hertz, 80.0), RATE_HZ)
    # the band's gain is that of its middle: up to a sixth of an octave off
    assert plain.level_dba - through.level_dba == pytest.approx(lost_db, abs=3.2)


def test_a_tone_under_the_threshold_of_an_age_is_not_heard() -> None:
    # ISO 389-7 and ISO 7029:2017: 4 kHz at −5.4 dB at 18, at −5.4 + 20.2 dB at 60
    young, old = LISTENERS["good_headphones"], LISTENERS["age_60"]
    assert heard_by(young, tone(4000.0, 10.0), RATE_HZ).level_dba > 8.0
    assert heard_by(old, tone(4000.0, 10.0), RATE_HZ).level_dba < -100.0
    assert heard_by(old, tone(4000.0, 25.0), RATE_HZ).level_dba > 20.0


def parts(profile: Profile, name: str, kind: FaultKind | None, bed_dba: float = 30.0) -> Measures:
    """Return what a listener gets of slot 3 at the front in a quiet bay."""
    faults = () if kind is None else (fault_of(profile, kind, 3),)
    sound = render(solved(profile, *faults), "front", Bed(level_dba=-60.0), 1, [3])
    window = sound.slots[0].window
    slot = sound.samples[round(window.start_s * RATE_HZ) : round(window.end_s * RATE_HZ)].astype(float) * FULL_SCALE_PA
    bed = bed_pa(BedKind.QUIET_BAY, bed_dba, RATE_HZ, RATE_HZ, 1).astype(float)
    return heard_by(LISTENERS[name], slot, RATE_HZ, bed)


@pytest.mark.parametrize("profile", ALL, ids=lambda profile: profile.name)
@pytest.mark.parametrize("name", LISTENERS)
def test_a_hum_a_thud_and_a_click_keep_their_order_for_every_listener(profile: Profile, name: str) -> None:
    click, thud, hum = (parts(profile, name, kind) for kind in (None, FaultKind.STUCK_ARMATURE, FaultKind.OPEN))
    assert click.level_dba - 6.0 > thud.level_dba > hum.level_dba
    assert thud.centroid_hz < 0.6 * click.centroid_hz
    # the hum is left to small loudspeakers too: it keeps enough over 300 Hz
    assert hum.level_dba > 15.0 if "phone" not in name else hum.level_dba > 5.0


def test_the_hum_sinks_in_a_louder_bay() -> None:
    quiet, loud, louder = (
        parts(NORTH, "good_headphones", FaultKind.OPEN, bed_dba).level_dba for bed_dba in (26.0, 40.0, 60.0)
    )
    assert quiet > 25.0
    assert loud < quiet - 3.0
    assert louder < 0.0
