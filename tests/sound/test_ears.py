"""The five classes can be told by simulated listeners, and timbre adds to level; what is no slot tells nothing."""

from __future__ import annotations

import numpy as np
import pytest

from tests.engines import ALL, NORTH
from tests.simulated_ears import Heard, Plate, answers, at_the_limit, chosen_faults, heard_slots
from trainer.circuit.profile import Profile
from trainer.sound.listeners import LISTENERS


def slots_of_engines(profiles: tuple[Profile, ...], a_kind: int, listeners: tuple[str, ...] = ()) -> list[Heard]:
    return [
        slot
        for profile in profiles
        for slot in heard_slots(profile, [*chosen_faults(profile, a_kind), *at_the_limit(profile)], listeners)
    ]


def right(slots: list[Heard], senses: tuple[int, ...], listener: str = "as rendered") -> float:
    """Return the mean share of right answers over several listeners."""
    return float(np.mean([answers(slots, listener, senses, seed)[1] for seed in range(5)]))


def test_on_one_engine_timbre_adds_to_level() -> None:
    slots = slots_of_engines((NORTH,), 3)
    assert {slot.plate for slot in slots} == set(Plate)
    assert right(slots, (0, 1)) > right(slots, (0,)) + 0.03
    assert right(slots, (0, 1)) > 0.7


@pytest.mark.long
def test_two_thousand_slots_of_all_engines_are_told_by_level_and_timbre_through_every_output_and_at_every_age() -> None:
    slots = slots_of_engines(ALL, 2, tuple(LISTENERS))
    assert len(slots) >= 2000
    assert right(slots, (0, 1)) >= 0.85
    assert right(slots, (1,)) > 0.6
    assert right(slots, (0, 1)) > right(slots, (0,)) + 0.05
    for listener in LISTENERS:
        assert right(slots, (0, 1), listener) > 0.8, listener
