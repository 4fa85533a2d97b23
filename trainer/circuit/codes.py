"""The module's own current test and the generic codes it sets; nothing but solved currents decides.

Codes: SAE J2012 (P0200 series) and SAE J1939 (SPN 651 is the first injector; failure mode identifiers).
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from enum import StrEnum
from functools import cache
from types import MappingProxyType
from typing import Literal

from trainer.arrays import Floats
from trainer.circuit.drive import Slot, shut_by
from trainer.circuit.profile import Profile
from trainer.circuit.solve import Solved, SolvedTest


class Sensed(StrEnum):
    """What the module's current test can say of one output, or of a feed group."""

    OPEN = "open"
    OVER = "over"
    TRIPPED = "tripped"
    UNCOMMANDED = "uncommanded"
    HELD_HIGH = "held_high"
    GROUP_OPEN = "group_open"
    UNNAMED = "unnamed"


FMI = {Sensed.OPEN: 5, Sensed.OVER: 6, Sensed.TRIPPED: 4, Sensed.UNCOMMANDED: 6, Sensed.HELD_HIGH: 3}
"""J1939-73 failure modes: 5 current below normal or open, 6 above normal or grounded, 4 shorted low, 3 shorted high."""


@dataclass(frozen=True, slots=True)
class Code:
    """One code as the module stores it; `cylinder` is None where it names a group or nothing."""

    cylinder: int | None
    code: str
    spn: int | None
    fmi: int | None
    sensed: Sensed


def code_of(system: Literal["p02xx", "spn_fmi"], sensed: Sensed, cylinder: int | None, group: int = 0) -> Code | None:
    """Return the generic code for what was sensed, or None where the system has none for it."""
    if system == "spn_fmi":
        if cylinder is None:
            return None
        spn, fmi = 650 + cylinder, FMI[sensed]
        return Code(cylinder, f"SPN {spn} FMI {fmi}", spn, fmi, sensed)
    if sensed is Sensed.UNNAMED:
        return Code(None, "P0200", None, None, sensed)
    if sensed is Sensed.GROUP_OPEN:
        return Code(None, f"P{2146 + 3 * group}", None, None, sensed) if group < 2 else None
    assert cylinder is not None
    number = {
        Sensed.OPEN: 200 + cylinder,
        Sensed.TRIPPED: 261 + 3 * (cylinder - 1),
        Sensed.OVER: 262 + 3 * (cylinder - 1),
        Sensed.UNCOMMANDED: 262 + 3 * (cylinder - 1),
        Sensed.HELD_HIGH: 262 + 3 * (cylinder - 1),
    }[sensed]
    return Code(cylinder, f"P{number:04d}", None, None, sensed)


@dataclass(frozen=True, slots=True)
class SlotCurrents:
    """What the module's current test sees in one slot of the return outputs' currents, in ampere, shape (cylinder,).

    The most while driven, what flows early in the pulse, and what still flows when the pulse's period ends.
    """

    slot: Slot
    most_a: Floats
    early_a: Floats
    end_a: Floats
    tripped: frozenset[str]


def slot_currents(solved: Solved, row: int, slot: Slot, profile: Profile) -> SlotCurrents:
    """Return what the module sees in one solved slot, by its first pulse."""
    pulse, place = solved.pulses_of(row)[0]
    early = min(round(profile.module.short_sense_s / solved.step_s), solved.on_steps - 1)
    driven = pulse.return_a[: solved.on_steps, place]
    # copies: a view would keep the whole pulse in memory
    end = pulse.return_a[-1, place].copy()
    return SlotCurrents(slot, driven.max(axis=0), driven[early].copy(), end, solved.tripped[row])


def codes_of(solved: SolvedTest) -> tuple[Code, ...]:
    """Return the codes that a test leaves, in numeric order of cylinders, groups after them."""
    profile = solved.circuit.profile
    return codes_from(profile, [slot_currents(solved, row, slot, profile) for row, slot in enumerate(solved.slots)])


def codes_from(profile: Profile, slots: Sequence[SlotCurrents]) -> tuple[Code, ...]:
    """Return the codes that follow from what was seen in every slot of a test."""
    sensed = dict(_sensed(profile, slots))
    codes = [code_of(profile.codes, what, cylinder) for cylinder, what in sorted(sensed.items())]
    for group, numbers in enumerate(profile.wiring.outputs.values()):
        if len(numbers) > 1 and all(sensed.get(number) is Sensed.OPEN for number in numbers):
            codes.append(code_of(profile.codes, Sensed.GROUP_OPEN, None, group))
    if not sensed and any(slot.tripped for slot in slots):
        codes.append(code_of(profile.codes, Sensed.UNNAMED, None))
    return tuple(code for code in codes if code is not None)


def _sensed(profile: Profile, slots: Sequence[SlotCurrents]) -> Iterator[tuple[int, Sensed]]:
    """Yield what is sensed of each cylinder; what another slot shows of it comes first, its own slot overrules."""
    module = profile.module
    own: dict[int, Sensed] = {}
    for seen in slots:
        for column, cylinder in enumerate(profile.cylinders):
            if cylinder not in seen.slot.commanded and seen.most_a[column] > module.uncommanded_above_a:
                yield cylinder, Sensed.UNCOMMANDED
            if abs(seen.end_a[column]) > module.held_above_a:
                own[cylinder] = Sensed.HELD_HIGH
            if seen.slot.number == cylinder and own.get(cylinder) is not Sensed.HELD_HIGH:
                if any(profile.output_of(cylinder) in shut_by(profile, name) for name in seen.tripped):
                    own[cylinder] = Sensed.TRIPPED
                elif seen.early_a[column] > module.short_above_a:
                    own[cylinder] = Sensed.OVER
                elif seen.most_a[column] < module.open_below_a:
                    own[cylinder] = Sensed.OPEN
    yield from own.items()


def stored_code(profile: Profile, cylinder: int, sensed: Sensed) -> Code:
    """Return the code that an earlier fault of a cylinder would have left in this module's memory."""
    code = code_of(profile.codes, sensed, cylinder)
    assert code is not None
    return code


def known_codes(profile: Profile) -> Mapping[str, Code]:
    """Return every code that this engine's module can store, by its text; several senses share one generic code."""
    return _known_codes(profile.codes, profile.cylinders, len(profile.wiring.outputs))


@cache
def _known_codes(system: Literal["p02xx", "spn_fmi"], cylinders: tuple[int, ...], groups: int) -> Mapping[str, Code]:
    single = [code_of(system, what, n) for n in cylinders for what in FMI]
    by_group = [code_of(system, Sensed.GROUP_OPEN, None, row) for row in range(groups)]
    known: dict[str, Code] = {}
    for code in [*single, *by_group, code_of(system, Sensed.UNNAMED, None)]:
        if code is not None:
            known.setdefault(code.code, code)
    return MappingProxyType(known)
