"""Why a wrong finding was wrong: one named misconception for each, or none.

Each has a predicate over the truth, the finding and what was gathered. The order matters: the first that fits is shown.
"""

from __future__ import annotations

from collections.abc import Callable, Collection, Mapping, Sequence
from dataclasses import dataclass

from trainer.circuit.elements import Location
from trainer.circuit.faults import OPENS, SHORTS, UNFED
from trainer.circuit.profile import Profile
from trainer.reasoning.universe.finding import Claim
from trainer.reasoning.universe.hearing import Heard
from trainer.reasoning.universe.hypotheses import same_claims
from trainer.reasoning.verdict.explanation import SlotReason

ALONG = (Location.DRIVE_MODULE, Location.ENGINE_HARNESS, Location.PASS_THROUGH, Location.UNDER_COVER, Location.COIL)
"""The places in the order in which current meets them: neighbours meet at a connector."""

NO_CURRENT_A = 0.5
OPEN_FROM = 0.05
"""From which chance on evidence has left something open."""


@dataclass(frozen=True, slots=True)
class Wrong:
    """A wrong finding with its circumstances: the truth's slots as they sounded, and what the learner did.

    `coded` are the cylinders that the codes read had named, `connected` the displays of readings taken with a plug on
    and not repeated rightly, `passes_left` the chance that the evidence leaves to a circuit that passes.
    """

    profile: Profile
    truth: tuple[Claim, ...]
    said: tuple[Claim, ...]
    slots: Mapping[int, SlotReason]
    coded: frozenset[int] = frozenset()
    measured: bool = False
    connected: tuple[str, ...] = ()
    passes_left: float = 1.0

    def pairs(self) -> list[tuple[Claim, Claim]]:
        """Return every claim beside every true one."""
        return [(said, true) for said in self.said for true in self.truth]

    def same_cylinders(self) -> list[tuple[Claim, Claim]]:
        """Return claims beside true ones that share a cylinder."""
        return [(said, true) for said, true in self.pairs() if said.cylinders & true.cylinders]


Predicate = Callable[[Wrong], bool]


def _insisted(wrong: Wrong) -> bool:
    return not wrong.truth and bool(wrong.said)


def _not_shown(wrong: Wrong) -> bool:
    """Said that the circuit passes where the evidence does leave that: it has not shown the fault, nor its absence."""
    return bool(wrong.truth) and not wrong.said and wrong.passes_left >= OPEN_FROM


def _overlooked(wrong: Wrong) -> bool:
    return bool(wrong.truth) and not wrong.said


def _one_of_two(wrong: Wrong) -> bool:
    return len(wrong.said) == 1 < len(wrong.truth) and any(same_claims(wrong.said, [true]) for true in wrong.truth)


def _even_slot(wrong: Wrong) -> bool:
    """Named cylinders whose own slots are even, and none that is behind the fault."""
    said = [number for claim in wrong.said for number in claim.cylinders]
    return bool(wrong.truth and said) and not wrong.same_cylinders() and all(
        number in wrong.slots and wrong.slots[number].heard is Heard.EVEN for number in said
    )  # fmt: skip


def _silent_loudspeaker(wrong: Wrong) -> bool:
    """Said that nothing sounds anywhere, where slots were even."""
    everyone = frozenset(wrong.profile.cylinders)
    said_silent = any(said.cylinders == everyone and said.kind in UNFED for said in wrong.said)
    return said_silent and any(slot.heard is Heard.EVEN for number, slot in wrong.slots.items() if number)


def _module_for_its_power(wrong: Wrong) -> bool:
    """Blamed the module for the battery or the wiring that it is fed through."""
    fed_badly = any(true.location is Location.MODULE_POWER for true in wrong.truth)
    return fed_badly and any(said.location is Location.DRIVE_MODULE for said in wrong.said)


def _one_for_group(wrong: Wrong) -> bool:
    return any(len(true.cylinders) > 1 and said.cylinders < true.cylinders for said, true in wrong.pairs())


def _single(wrong: Wrong) -> tuple[int, int] | None:
    """Return the cylinder said and the true one, where each is one and they differ."""
    if len(wrong.said) == len(wrong.truth) == 1:
        said, true = wrong.said[0].cylinders, wrong.truth[0].cylinders
        if len(said) == len(true) == 1 and said != true:
            return min(said), min(true)
    return None


def _counted_burst(wrong: Wrong) -> bool:
    one = _single(wrong)
    return one is not None and one[0] == one[1] + 1


def _firing_order(wrong: Wrong) -> bool:
    one = _single(wrong)
    return one is not None and wrong.profile.firing_order[one[1] - 1] == one[0]


def _burst_or_order(wrong: Wrong) -> bool:
    return _counted_burst(wrong) and _firing_order(wrong)


def _code_of_another(wrong: Wrong) -> bool:
    """Named a cylinder because a code did, though nothing is wrong there."""
    true = {number for claim in wrong.truth for number in claim.cylinders}
    said = {number for claim in wrong.said for number in claim.cylinders}
    return bool(said & wrong.coded - true)


def _code_for_location(wrong: Wrong) -> bool:
    coded = any(said.cylinders & wrong.coded and said.location is not true.location
                for said, true in wrong.same_cylinders())  # fmt: skip
    return coded and not wrong.measured


def _hum_for_circuit(wrong: Wrong) -> bool:
    """Heard the others' hum in a slot without current of its own, and took the circuit for whole."""
    injector = {Location.COIL, Location.ARMATURE}
    silent = [number for claim in wrong.truth for number in claim.cylinders if _hums(wrong, number)]
    if not wrong.said:
        return bool(silent)
    for said, true in wrong.same_cylinders():
        hums = bool(said.cylinders & true.cylinders & set(silent))
        if hums and said.location in injector and said.kind not in OPENS and true.location not in injector:
            return True
    return False


def _hums(wrong: Wrong, number: int) -> bool:
    return number in wrong.slots and wrong.slots[number].own_a < NO_CURRENT_A and bool(wrong.slots[number].others)


def _connected(wrong: Wrong) -> bool:
    misplaced = any(said.location is not true.location for said, true in wrong.same_cylinders())
    return bool(wrong.connected) and misplaced


def _open_for_short(wrong: Wrong) -> bool:
    return any(
        (said.kind in OPENS and true.kind in SHORTS) or (said.kind in SHORTS and true.kind in OPENS)
        for said, true in wrong.same_cylinders()
    )


def _wrong_side(wrong: Wrong) -> bool:
    """The right cylinder, and a place that meets the true one at a connector."""
    return any(
        said.location in ALONG
        and true.location in ALONG
        and abs(ALONG.index(said.location) - ALONG.index(true.location)) == 1
        for said, true in wrong.same_cylinders()
    )


def _by_ear_alone(wrong: Wrong) -> bool:
    misplaced = any(said.location is not true.location for said, true in wrong.same_cylinders())
    return misplaced and not wrong.measured and not wrong.coded


MISCONCEPTIONS: Mapping[str, Predicate] = {
    "insisted": _insisted,
    "not_shown": _not_shown,
    "one_of_two": _one_of_two,
    "silent_loudspeaker": _silent_loudspeaker,
    "module_for_its_power": _module_for_its_power,
    "one_for_group": _one_for_group,
    "code_of_another": _code_of_another,
    "burst_or_order": _burst_or_order,
    "counted_burst": _counted_burst,
    "firing_order": _firing_order,
    "measured_connected": _connected,
    "hum_for_circuit": _hum_for_circuit,
    "open_for_short": _open_for_short,
    "code_for_location": _code_for_location,
    "wrong_side": _wrong_side,
    "by_ear_alone": _by_ear_alone,
    "even_slot": _even_slot,
    "overlooked": _overlooked,
}

UNCLASSIFIED = "unclassified"


def misconception_of(wrong: Wrong) -> str:
    """Return the name of the misconception behind a wrong finding, or "unclassified"."""
    return next((name for name, fits in MISCONCEPTIONS.items() if fits(wrong)), UNCLASSIFIED)


def coded_cylinders(codes: Sequence[int | None]) -> frozenset[int]:
    """Return the cylinders that codes name."""
    return frozenset(number for number in codes if number is not None)


def slots_by_number(reasons: Collection[SlotReason]) -> dict[int, SlotReason]:
    """Return the reasons by their slot."""
    return {reason.slot: reason for reason in reasons}
