"""A slot of each class in all engines: level, brightness, chatter, how pulses differ, and the burst; as a table.

Run: python -m tests.benchmarks.sound_classes [PLACE]
"""

from __future__ import annotations

import sys
from collections.abc import Iterator

from tests.engines import ALL, fault_of, worst
from tests.slot_measures import SlotFigures, figures_of
from trainer.circuit.elements import Location, Side
from trainer.circuit.fault import Conditions, Fault, FaultKind
from trainer.circuit.faults import faulty_circuit
from trainer.circuit.profile import Profile
from trainer.circuit.solve import solve_test
from trainer.sound.places import places_of
from trainer.sound.render import Bed, Sound, render

CYLINDER = 3
NO_BED = Bed(level_dba=-60.0)


def resisting(ohm: float) -> Fault:
    """Return so many ohms in the return at the pass-through."""
    return Fault(FaultKind.ADDED_RESISTANCE, Location.PASS_THROUGH, (CYLINDER,), Side.RETURN, ohm)


def classes(profile: Profile) -> Iterator[tuple[str, tuple[Fault, ...]]]:
    """Yield what a slot can be, with a fault that makes it so."""
    yield "good", ()
    yield "louder: worn", (fault_of(profile, FaultKind.WORN_ARMATURE, CYLINDER),)
    yield "weak: sluggish", (fault_of(profile, FaultKind.SLUGGISH_ARMATURE, CYLINDER),)
    for ohm in (10.0, 11.0, 12.0, 13.0, 14.0, 15.0, 16.0, 20.0):
        yield f"{ohm:.0f} ohm", (resisting(ohm),)
    yield "dull: stuck", (fault_of(profile, FaultKind.STUCK_ARMATURE, CYLINDER),)
    yield "very faint: open", (fault_of(profile, FaultKind.OPEN, CYLINDER),)
    yield "nothing: no supply", (fault_of(profile, FaultKind.NO_SUPPLY, 1),)


def heard(profile: Profile, faults: tuple[Fault, ...], place: str, only: list[int] | None) -> Sound:
    """Render slots without a bed."""
    conditions = worst(faults[0]) if faults else Conditions()
    return render(solve_test(faulty_circuit(profile, faults, conditions)), place, NO_BED, 1, only)


def line_of(name: str, good: SlotFigures, slot: SlotFigures) -> str:
    """Return one row of the table."""
    return (
        f"  {name:20s} {slot.level_dba - good.level_dba:7.1f} {slot.centroid_hz:7.0f} "
        f"{slot.centroid_hz / good.centroid_hz:6.2f} {slot.depth:6.2f} {slot.alike:7.3f} {slot.spread_db:6.2f} "
        f"{slot.over_300_hz_db:7.1f}"
    )


def tell(profile: Profile, place: str) -> None:
    """Print one engine's table."""
    whole = heard(profile, (), place, None)
    levels = [slot.level_dba for slot in whole.slots]
    print(f"{profile.name} at {place}: burst {levels[0] - max(levels[1:]):.1f} dB over the loudest slot "
          f"(limiter {whole.slots[0].limiter_db:.1f}), good slots {min(levels[1:]):.1f} to {max(levels[1:]):.1f} dB(A)")  # fmt: skip
    print("  slot                      dBA  centre  share  depth   alike spread >300 Hz")
    beat_hz = profile.schedule.pulses_per_s
    good = figures_of(whole, whole.slots[CYLINDER], beat_hz)
    for name, faults in classes(profile):
        sound = heard(profile, faults, place, [CYLINDER])
        print(line_of(name, good, figures_of(sound, sound.slots[0], beat_hz)), flush=True)


def main() -> None:
    """Print the tables of all engines at one place, the front unless it is named."""
    for profile in ALL:
        place = sys.argv[1] if len(sys.argv) > 1 else "front"
        tell(profile, place if place in places_of(profile) else "front")


if __name__ == "__main__":
    main()
