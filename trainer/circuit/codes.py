"""The module's own current test and the generic codes it sets; nothing but solved currents decides.

Codes: SAE J2012 (P0200 series) and SAE J1939 (SPN 651 is the first injector; failure mode identifiers).
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from enum import StrEnum
from typing import Literal

from trainer.circuit.drive import shut_by
from trainer.circuit.profile import Profile
from trainer.circuit.solve import SolvedTest


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


def codes_of(solved: SolvedTest) -> tuple[Code, ...]:
    """Return the codes that a test leaves, in numeric order of cylinders, groups after them."""
    profile = solved.circuit.profile
    sensed = dict(_sensed(solved))
    codes = [code_of(profile.codes, what, cylinder) for cylinder, what in sorted(sensed.items())]
    for group, numbers in enumerate(profile.wiring.outputs.values()):
        if len(numbers) > 1 and all(sensed.get(number) is Sensed.OPEN for number in numbers):
            codes.append(code_of(profile.codes, Sensed.GROUP_OPEN, None, group))
    if not sensed and any(solved.tripped):
        codes.append(code_of(profile.codes, Sensed.UNNAMED, None))
    return tuple(code for code in codes if code is not None)


def _sensed(solved: SolvedTest) -> Iterator[tuple[int, Sensed]]:
    """Yield what is sensed of each cylinder; what another slot shows of it comes first, its own slot overrules."""
    profile, module = solved.circuit.profile, solved.circuit.profile.module
    early = min(round(module.short_sense_s / solved.step_s), solved.on_steps - 1)
    own: dict[int, Sensed] = {}
    for index, slot in enumerate(solved.slots):
        pulse, row = solved.pulses_of(index)[0]
        driven = pulse.return_a[: solved.on_steps, row]
        for column, cylinder in enumerate(profile.cylinders):
            if cylinder not in slot.commanded and driven[:, column].max() > module.uncommanded_above_a:
                yield cylinder, Sensed.UNCOMMANDED
            if abs(pulse.return_a[-1, row, column]) > module.held_above_a:
                own[cylinder] = Sensed.HELD_HIGH
            if slot.number == cylinder and own.get(cylinder) is not Sensed.HELD_HIGH:
                if any(profile.output_of(cylinder) in shut_by(profile, name) for name in solved.tripped[index]):
                    own[cylinder] = Sensed.TRIPPED
                elif driven[early, column] > module.short_above_a:
                    own[cylinder] = Sensed.OVER
                elif driven[:, column].max() < module.open_below_a:
                    own[cylinder] = Sensed.OPEN
    yield from own.items()


def stored_code(profile: Profile, cylinder: int, sensed: Sensed) -> Code:
    """Return the code that an earlier fault of a cylinder would have left in this module's memory."""
    code = code_of(profile.codes, sensed, cylinder)
    assert code is not None
    return code


def known_codes(profile: Profile) -> dict[str, Code]:
    """Return every code that this engine's module can store, by its text; several senses share one generic code."""
    single = [code_of(profile.codes, what, n) for n in profile.cylinders for what in FMI]
    groups = [code_of(profile.codes, Sensed.GROUP_OPEN, None, row) for row in range(len(profile.wiring.outputs))]
    known: dict[str, Code] = {}
    for code in [*single, *groups, code_of(profile.codes, Sensed.UNNAMED, None)]:
        if code is not None:
            known.setdefault(code.code, code)
    return known
