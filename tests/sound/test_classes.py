"""Click, thud and hum differ by ear: brightness, and chatter at the test's beat."""

from __future__ import annotations

import numpy as np
import pytest

from tests.engines import ALL, FIELD, HARBOUR, NORTH, RIDGE, fault_of, solved
from tests.slot_measures import SlotFigures, figures_of
from trainer.arrays import Floats
from trainer.circuit.drive import Reductions, slots_of
from trainer.circuit.elements import Location, Side
from trainer.circuit.fault import Conditions, Fault, FaultKind
from trainer.circuit.faults import faulty_circuit
from trainer.circuit.profile import Profile
from trainer.circuit.solve import solve_rows
from trainer.circuit.stepping import Row
from trainer.reasoning.universe.hearing import Heard, heard_as
from trainer.reasoning.universe.slot_traits import traits_of
from trainer.sound.body import body_response
from trainer.sound.levels import sum_db
from trainer.sound.places import LEAN
from trainer.sound.render import PEAK_CEILING, Bed, SlotSound, render
from trainer.sound.room import in_hall
from trainer.sound.traits import CENTROID, LEVEL, ears_of

NO_BED = Bed(level_dba=-60.0)


def by_name(value: object) -> str | None:
    return getattr(value, "name", None)


ENGINES = pytest.mark.parametrize("profile", ALL, ids=lambda profile: profile.name)

DULL_SHARE = 0.4
"""Of a good slot's mean frequency: what a dull one may keep at most."""


def one_slot(profile: Profile, number: int, *faults: Fault, place: str = "front") -> SlotSound:
    return render(solved(profile, *faults), place, NO_BED, 1, [number]).slots[0]


def figures(profile: Profile, place: str) -> list[SlotFigures]:
    """Return the figures of every single slot of a sound engine."""
    sound = render(solved(profile), place, NO_BED, 1)
    return [figures_of(sound, slot, profile.schedule.pulses_per_s) for slot in sound.slots[1:]]


@ENGINES
def test_a_plate_that_does_not_move_is_dull_and_called_so(profile: Profile) -> None:
    for number in profile.cylinders:
        good, stuck = (
            one_slot(profile, number),
            one_slot(profile, number, fault_of(profile, FaultKind.STUCK_ARMATURE, number)),
        )
        share = stuck.centroid_hz / good.centroid_hz
        assert share <= DULL_SHARE, number
        assert heard_as(stuck.level_dba, good.level_dba, 34.0, share) is Heard.DULL, number


@ENGINES
def test_a_current_that_falls_short_of_lifting_is_dull(profile: Profile) -> None:
    fault = Fault(FaultKind.ADDED_RESISTANCE, Location.PASS_THROUGH, (3,), Side.RETURN, 25.0)
    good, short = one_slot(profile, 3), one_slot(profile, 3, fault)
    column = profile.cylinders.index(3)
    assert solved(profile, fault).pulses[0].position_m[:, 3, column].max() < 0.1 * profile.solenoid.lift_m
    assert short.centroid_hz <= DULL_SHARE * good.centroid_hz


def octaves_of_hums() -> Floats:
    """Return how much brighter a hum is than a stuck plate, and than a current short of lifting: (injector, 2), octaves."""
    found = []
    for profile in ALL:
        for number in profile.cylinders:
            short = Fault(FaultKind.ADDED_RESISTANCE, Location.PASS_THROUGH, (number,), Side.RETURN, 25.0)
            stuck, hum = (fault_of(profile, kind, number) for kind in (FaultKind.STUCK_ARMATURE, FaultKind.OPEN))
            bright = [one_slot(profile, number, fault).centroid_hz for fault in (hum, stuck, short)]
            found.append([np.log2(bright[0] / thud) for thud in bright[1:]])
    return np.array(found)


def test_a_hum_is_half_an_octave_over_a_stuck_plate_and_as_bright_as_a_current_short_of_lifting() -> None:
    """An octave was aimed at and is not reached: both are pulls through the same mounting, and only their edges differ."""
    over_stuck, over_short = octaves_of_hums().T
    assert np.all(over_stuck > 0.0)  # measured: 0.05 to 1.05, median 0.49
    assert 0.4 < np.median(over_stuck) < 0.6
    assert -0.45 < over_short.min() < 0.0 < over_short.max() < 0.75  # measured: -0.35 to 0.67, median 0.05
    assert np.median(over_short) == pytest.approx(0.05, abs=0.08)


@ENGINES
def test_the_pull_falls_over_the_modes_as_one_critically_damped_mount_lets_it_through(profile: Profile) -> None:
    """Textbook: a mass on a spring at critical damping passes 1/(1 + (f/f0)²) of the force on it."""
    mount_hz = 750.0 if profile.name == "harbour_v8" else 900.0
    passed = np.array([mode.elastic * (1.0 + (mode.frequency_hz / mount_hz) ** 2) for mode in profile.body.modes])  # type: ignore[operator]
    assert passed == pytest.approx(passed.mean(), rel=0.01)  # the files have three digits


@ENGINES
def test_a_blow_drives_high_modes_as_well_as_low_ones_and_the_pull_only_low_ones(profile: Profile) -> None:
    low, high = np.arange(300.0, 1000.0, 5.0), np.arange(3000.0, 6000.0, 5.0)
    kept = []  # the mean gain of high ones over that of low ones, in dB
    for part in (slice(len(profile.cylinders)), slice(len(profile.cylinders), None)):
        below, above = (10.0 * np.log10((np.abs(body_response(profile, one)[part]) ** 2).mean()) for one in (low, high))
        kept.append(above - below)
    assert kept[0] > 2.0
    assert kept[1] < -8.0


@ENGINES
def test_the_chatter_of_a_good_slot_is_heard_as_single_pulses_at_the_front(profile: Profile) -> None:
    depths = [one.depth for one in figures(profile, "front")]
    assert min(depths) >= 0.5


@ENGINES
def test_in_a_big_empty_hall_pulses_run_together_and_leaning_in_brings_them_apart(profile: Profile) -> None:
    """A condition of a case; that late sound fills the gaps between pulses is textbook room acoustics."""
    hall = in_hall(profile)
    dry, far = (np.median([one.depth for one in figures(where, "front")]) for where in (profile, hall))
    assert far < dry - 0.15
    near = figures(hall, f"{LEAN} {next(iter(hall.banks))}")[
        profile.cylinders.index(next(iter(hall.banks.values()))[0])
    ]
    assert near.depth > far + 0.15


@ENGINES
def test_leaning_over_a_bank_brings_its_own_pulses_out_of_the_bay(profile: Profile) -> None:
    for name, numbers in profile.banks.items():
        near = [figures(profile, f"{LEAN} {name}")[profile.cylinders.index(n)] for n in numbers]
        assert min(one.depth for one in near) > 0.7
        sound = render(solved(profile), f"{LEAN} {name}", NO_BED, 1)
        level = {slot.window.slot.number: slot.level_dba for slot in sound.slots}
        others = set(profile.cylinders) - set(numbers)
        assert min(level[n] for n in numbers) > max((level[n] for n in others), default=0.0) + 1.5


@ENGINES
def test_over_a_bank_the_loudest_blows_stay_under_the_ceiling_of_a_file(profile: Profile) -> None:
    """A clipped click would sound like another one: what is loudest at an ear so near is a worn plate in the burst."""
    solved_test = solved(profile, fault_of(profile, FaultKind.WORN_ARMATURE, 1))
    for name in profile.banks:
        sound = render(solved_test, f"{LEAN} {name}", NO_BED, 1)
        assert np.abs(sound.samples).max() < PEAK_CEILING


@pytest.mark.parametrize(
    ("under_db", "brightness", "heard"),
    [
        (5.0, 0.3, Heard.WEAK), (7.0, 0.3, Heard.DULL), (7.0, 0.6, Heard.WEAK), (13.0, 0.9, Heard.WEAK), (21.0, 0.9, Heard.DULL),
        (25.0, 0.3, Heard.VERY_FAINT), (0.0, 0.3, Heard.EVEN),
    ],
)  # fmt: skip
def test_a_thud_is_dull_and_a_soft_click_is_weak(under_db: float, brightness: float, heard: Heard) -> None:
    assert heard_as(66.0 - under_db, 66.0, 34.0, brightness) is heard


def resisting(ohm: float) -> Fault:
    return Fault(FaultKind.ADDED_RESISTANCE, Location.PASS_THROUGH, (3,), Side.RETURN, ohm)


@pytest.mark.parametrize(
    ("profile", "ohm"), [(NORTH, 13.5), (HARBOUR, 16.25), (FIELD, 14.5), (RIDGE, 20.25)], ids=by_name
)
def test_between_even_and_dull_lies_a_weak_slot_that_skips(profile: Profile, ohm: float) -> None:
    good = one_slot(profile, 3)
    sound = render(solved(profile, resisting(ohm)), f"{LEAN} {profile.bank_of(3)}", NO_BED, 1, [3])
    weak = one_slot(profile, 3, resisting(ohm))
    share = weak.centroid_hz / good.centroid_hz
    assert heard_as(weak.level_dba, good.level_dba, 34.0, share) is Heard.WEAK
    assert share > 0.6  # each pulse that lifts still clicks
    assert figures_of(sound, sound.slots[0], profile.schedule.pulses_per_s).spread_db > 3.0


@ENGINES
def test_the_pulses_of_a_good_slot_are_alike_and_not_the_same(profile: Profile) -> None:
    near = [
        figures(profile, f"{LEAN} {name}")[profile.cylinders.index(n)]
        for name, numbers in profile.banks.items()
        for n in numbers
    ]
    # measured over all four engines: 0.89 to 0.95 and 0.47 to 0.77 dB, each engine's median over 0.9 and 0.5 dB
    assert all(0.88 < one.alike < 0.96 for one in near)
    assert np.median([one.alike for one in near]) >= 0.9
    assert np.median([one.spread_db for one in near]) >= 0.5
    assert all(0.44 < one.spread_db < 0.85 for one in near)
    # farther off, the bay's echo of other pulses lies over each: 0.70 to 0.90
    assert all(0.68 < one.alike < 0.92 for one in figures(profile, "front"))


@pytest.mark.parametrize("ohm", [0.5, 12.0, 13.25, 13.5, 13.75, 20.0])
def test_what_the_reasoning_expects_of_a_slot_is_what_is_rendered_on_average(ohm: float) -> None:
    fault = resisting(ohm)
    row = Row(circuit := faulty_circuit(NORTH, [fault], Conditions()), slots_of(NORTH)[3], Reductions(circuit, {}))
    (traits,) = traits_of([row], solve_rows([row]), ears_of(NORTH, ["front"]))
    rendered = [render(solved(NORTH, fault), "front", NO_BED, seed, [3]).slots[0] for seed in range(6)]
    level = sum_db(np.array([slot.level_dba for slot in rendered])) - 10.0 * np.log10(6)
    # 128 pulses, of which some lift: 0.4 dB of chance in the mean of six
    assert traits.sound[0, LEVEL] == pytest.approx(level, abs=0.5)
    assert traits.sound[0, CENTROID] == pytest.approx(np.mean([slot.centroid_hz for slot in rendered]), rel=0.04)


@ENGINES
def test_what_the_reasoning_expects_of_thuds_and_hums_is_what_is_rendered(profile: Profile) -> None:
    for fault in (fault_of(profile, FaultKind.STUCK_ARMATURE, 3), fault_of(profile, FaultKind.OPEN, 3)):
        circuit = faulty_circuit(profile, [fault], Conditions())
        row = Row(circuit, slots_of(profile)[3], Reductions(circuit, {}))
        (traits,) = traits_of([row], solve_rows([row]), ears_of(profile, ["front"]))
        rendered = one_slot(profile, 3, fault)
        assert traits.sound[0, LEVEL] == pytest.approx(rendered.level_dba, abs=0.5)
        assert traits.sound[0, CENTROID] == pytest.approx(rendered.centroid_hz, rel=0.05)
