"""How well simulated listeners name slots of all engines and kinds: by level, by timbre, by both, by each output and age.

Run: python -m tests.benchmarks.ears [FAULTS A KIND]
"""

from __future__ import annotations

import sys

from tests.engines import ALL
from tests.simulated_ears import Heard, Plate, answers, at_the_limit, chosen_faults, heard_slots, rare_slots
from trainer.sound.listeners import LISTENERS


def main() -> None:
    """Print the matrices."""
    a_kind = int(sys.argv[1]) if len(sys.argv) > 1 else 3
    slots: list[Heard] = []
    for profile in ALL:
        slots += heard_slots(profile, [*chosen_faults(profile, a_kind), *at_the_limit(profile)], LISTENERS)
        slots += rare_slots(profile, LISTENERS)
        print(profile.name, len(slots), flush=True)
    print({plate.value: sum(one.plate is plate for one in slots) for plate in Plate})
    for name, senses in (("level and timbre", (0, 1)), ("level alone", (0,)), ("timbre alone", (1,))):
        tries = [answers(slots, "as rendered", senses, seed) for seed in range(5)]
        matrix, right = sum(one for one, _ in tries) / 5, sum(one for _, one in tries) / 5
        print(f"{name}: {100 * right:.0f} % right, the five as often")
        for plate, row in zip(Plate, matrix, strict=True):
            print(f"  {plate.value:12s}" + "".join(f"{100 * share:6.0f}" for share in row))
    for listener in LISTENERS:
        both, level = (answers(slots, listener, senses, 1)[1] for senses in ((0, 1), (0,)))
        print(f"{listener:18s} level and timbre {100 * both:.0f} %, level alone {100 * level:.0f} %")


if __name__ == "__main__":
    main()
