"""The module's own current test and the generic codes it sets; nothing but solved currents decides.

Codes: SAE J2012 (P0200 series, P0611, group supplies from P2146) and SAE J1939 (SPN 651 is the first injector; failure
mode identifiers of J1939-73). From memory: the supplies of groups 3 and 4 in J2012, and in J1939 those of the groups
and the module.
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
    GROUP_LOW = "group_low"
    SUPPLY_LOW = "supply_low"
    UNNAMED = "unnamed"


FMI = {Sensed.OPEN: 5, Sensed.OVER: 6, Sensed.TRIPPED: 4, Sensed.UNCOMMANDED: 6, Sensed.HELD_HIGH: 3}
"""J1939-73 failure modes: 5 current below normal or open, 6 above normal or grounded, 4 shorted low, 3 shorted high."""

GROUP_FMI = {Sensed.GROUP_OPEN: 5, Sensed.GROUP_LOW: 4, Sensed.UNNAMED: 6}
GROUP_SPN = (2797, 2798, 4257)
"""Injector group 1 to 3: from memory. No number for a fourth group is known to us."""

SUPPLY_SPN, SUPPLY_FMI = 627, 4
"""Power supply, voltage below normal: from memory."""

MOST_GROUPS = {"p02xx": 4, "spn_fmi": len(GROUP_SPN)}
"""How many groups of injectors a system has codes for: J2012 calls them A to D."""


@dataclass(frozen=True, slots=True)
class Code:
    """One code as the module stores it; `cylinder` is None where it names a group or nothing."""

    cylinder: int | None
    code: str
    spn: int | None
    fmi: int | None
    sensed: Sensed


def code_of(system: Literal["p02xx", "spn_fmi"], sensed: Sensed, cylinder: int | None, group: int = 0) -> Code | None:
    """Return the generic code for what was sensed, or None where the system has none for it; groups count from 0."""
    if sensed in GROUP_FMI and group >= MOST_GROUPS[system] and (sensed is not Sensed.UNNAMED or system == "spn_fmi"):
        return None
    if system == "spn_fmi":
        if sensed is Sensed.SUPPLY_LOW:
            spn, fmi = SUPPLY_SPN, SUPPLY_FMI
        elif sensed in GROUP_FMI:
            # no number means an injector without naming it: the group's does, with the current's failure mode
            spn, fmi = GROUP_SPN[group], GROUP_FMI[sensed]
        else:
            assert cylinder is not None
            spn, fmi = 650 + cylinder, FMI[sensed]
        return Code(cylinder, f"SPN {spn} FMI {fmi}", spn, fmi, sensed)
    unnamed = {
        Sensed.UNNAMED: 200,
        Sensed.SUPPLY_LOW: 611,
        Sensed.GROUP_OPEN: 2146 + 3 * group,
        Sensed.GROUP_LOW: 2147 + 3 * group,
    }
    if sensed in unnamed:
        return Code(None, f"P{unnamed[sensed]:04d}", None, None, sensed)
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

    The most while driven, what flows early in the pulse, and what still flows when the pulse's period ends; beside them
    the lowest drive supply in volt, and the feed outputs that tripped.
    """

    slot: Slot
    most_a: Floats
    early_a: Floats
    end_a: Floats
    tripped: frozenset[str]
    rail_low_v: float


def slot_currents(solved: Solved, row: int, slot: Slot, profile: Profile) -> SlotCurrents:
    """Return what the module sees in one solved slot, by its first pulse."""
    pulse, place = solved.pulses_of(row)[0]
    early = min(round(profile.module.short_sense_s / solved.step_s), solved.on_steps - 1)
    driven = pulse.return_a[: solved.on_steps, place]
    # copies: a view would keep the whole pulse in memory
    end = pulse.return_a[-1, place].copy()
    low_v = min(float(one.rail_v[:, there].min()) for one, there in solved.pulses_of(row))
    return SlotCurrents(slot, driven.max(axis=0), driven[early].copy(), end, solved.tripped[row], low_v)


def codes_of(solved: SolvedTest) -> tuple[Code, ...]:
    """Return the codes that a test leaves, in numeric order of cylinders, groups after them."""
    profile = solved.circuit.profile
    return codes_from(profile, [slot_currents(solved, row, slot, profile) for row, slot in enumerate(solved.slots)])


def codes_from(profile: Profile, slots: Sequence[SlotCurrents]) -> tuple[Code, ...]:
    """Return the codes that follow from what was seen in every slot of a test."""
    sensed = dict(_sensed(profile, slots))
    codes = [code_of(profile.codes, what, cylinder) for cylinder, what in sorted(sensed.items())]
    tripped = frozenset[str]().union(*(slot.tripped for slot in slots))
    for group, (output, numbers) in enumerate(profile.wiring.outputs.items()):
        live = [slot for slot in slots if output in slot.slot.live]
        if len(numbers) > 1 and live and all(output in slot.tripped for slot in live):
            codes.append(code_of(profile.codes, Sensed.GROUP_LOW, None, group))
        elif len(numbers) > 1 and all(sensed.get(number) is Sensed.OPEN for number in numbers):
            codes.append(code_of(profile.codes, Sensed.GROUP_OPEN, None, group))
        elif not sensed and output == min(tripped, default=None):
            codes.append(code_of(profile.codes, Sensed.UNNAMED, None, group))
    if any(_starved(profile, slot) for slot in slots):
        codes.append(code_of(profile.codes, Sensed.SUPPLY_LOW, None))
    return tuple(code for code in codes if code is not None)


def _starved(profile: Profile, seen: SlotCurrents) -> bool:
    """Tell whether the drive supply fell so low that the module says so, and takes no missing current for an open."""
    return seen.rail_low_v < profile.module.supply_low_share * profile.module.supply_v


def _sensed(profile: Profile, slots: Sequence[SlotCurrents]) -> Iterator[tuple[int, Sensed]]:
    """Yield what is sensed of each cylinder; what another slot shows of it comes first, its own slot overrules.

    A feed that is shut after an over-current trip is remembered: what lies behind it is not tested, so never open.
    """
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
                elif (
                    seen.most_a[column] < module.open_below_a
                    and profile.output_of(cylinder) in seen.slot.live
                    and not _starved(profile, seen)
                ):
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
    by_group = [code_of(system, what, None, row) for row in range(groups) for what in GROUP_FMI]
    known: dict[str, Code] = {}
    for code in [*single, *by_group, code_of(system, Sensed.SUPPLY_LOW, None)]:
        if code is not None:
            known.setdefault(code.code, code)
    return MappingProxyType(known)
