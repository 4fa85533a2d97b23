"""Draws a learner's cases of a set, from the set's key and the learner's name alone: the same every time."""

from __future__ import annotations

import hashlib
import hmac
from collections.abc import Iterator, Mapping, Sequence, Set
from dataclasses import dataclass, replace
from types import MappingProxyType
from typing import TypeVar

from trainer.cases.drawing.random_case import draw_case, drawable, is_group
from trainer.cases.single_case.case import Case
from trainer.cases.single_case.case_code import SEED_LIMIT
from trainer.cases.solved.case_proofs import inaudible
from trainer.circuit.chance import Stream
from trainer.circuit.fault import Fault
from trainer.circuit.profile import PASSES
from trainer.errors import WrongCallError
from trainer.sets.case_set import CaseSet, Draw, Listed, Mode, Order, Seeds
from trainer.sets.sealed import SetKey
from trainer.sets.shares import drawn_shares

Shuffled = TypeVar("Shuffled")

LEAST_BED_DBA = 20.0
GROUP = "group"

MOST_DRAWS, MOST_DRAWS_IN_SET = 4_000, 40_000
"""How many random draws are made for one case, and for a whole set, before the pool counts as too narrow."""

MOST_UNHEARD = 150
"""How many inaudible cases a set may draw before it gives up: each has to be solved."""


@dataclass(frozen=True, slots=True)
class SetItem:
    """One case of a set for one learner.

    `index` counts through the set as it is written, from 1, and names the case in records; `number` is its place in the
    learner's own order.
    """

    index: int
    number: int
    line: int
    case: Case
    seed: int


def case_mark(key: SetKey, item: SetItem) -> str:
    """Return a code that authenticates a case and its seed under the set's key without revealing either."""
    content = f"{item.case.digest} {item.seed}".encode("ascii")
    return hmac.digest(key.derived("case"), content, "sha256").hex()


def version_of(case_set: CaseSet, learner: str) -> str:
    """Return the text that decides a learner's draws together with the set's key."""
    if case_set.seeds is Seeds.PER_LEARNER:
        return f"learner {learner}"
    if case_set.seeds is Seeds.VERSIONS:
        chosen = int.from_bytes(_digest(case_set.draw_key, "version", learner)[:8], "big") % len(case_set.versions)
        return f"version {case_set.versions[chosen]}"
    return "same"


def items_of(
    case_set: CaseSet, learner: str, try_number: int = 1, redrawn: Mapping[int, int] = MappingProxyType({})
) -> tuple[SetItem, ...]:
    """Return a learner's cases in their order.

    `redrawn` says how often the case of an index was voided: it is drawn again, or, where it is listed by name, gets
    another seed; no other case changes with it. Raises WrongCallError for a pool that gives no further case.
    """
    version = version_of(case_set, learner)
    shares = drawn_shares(case_set)
    wanted: list[tuple[int, str]] = []
    for row, line in enumerate(case_set.lines):
        if isinstance(line, Draw):
            chance = _stream(case_set, version, try_number, row)
            wanted += [(row, one) for one in _classes(line, shares[row], chance)]
        else:
            wanted.append((row, ""))
    draws = _Draws()
    cases: list[Case] = []
    seeds: list[int] = []
    for index, (row, kind) in enumerate(wanted, start=1):
        case, seed = _one(case_set, row, kind, cases, _stream(case_set, version, try_number, "case", index, 0), draws)
        cases.append(case)
        seeds.append(seed)
    first = tuple(cases)
    for index, times in redrawn.items():
        row, kind = wanted[index - 1]
        before: list[Case] = [*first]
        for again in range(1, times + 1):
            chance = _stream(case_set, version, try_number, "case", index, again)
            cases[index - 1], seeds[index - 1] = _one(case_set, row, kind, before, chance, _Draws())
            before.append(cases[index - 1])
    order = list(range(len(cases)))
    if case_set.policy.order is Order.SHUFFLED:
        _shuffle(order, _stream(case_set, f"order {learner}", try_number))
    return tuple(
        SetItem(
            index=place + 1,
            number=number,
            line=wanted[place][0],
            case=_as_set_case(case_set, learner, place + 1, wanted[place][0], replace(cases[place], seed=seeds[place])),
            seed=seeds[place],
        )
        for number, place in enumerate(order, start=1)
    )


def _one(
    case_set: CaseSet, row: int, wanted: str, taken: Sequence[Case], chance: Stream, draws: _Draws
) -> tuple[Case, int]:
    line = case_set.lines[row]
    case = _drawn(line, wanted, taken, chance, draws) if isinstance(line, Draw) else line.case
    return case, chance.below(2**31)


def _as_set_case(case_set: CaseSet, learner: str, index: int, row: int, case: Case) -> Case:
    """Return a case as it is worked in a set: under a name that reveals nothing, and with the learner's support."""
    support = case_set.support_of(learner)
    bed = replace(case.bed, level_dba=max(case.bed.level_dba - support.quieter_bed_db, LEAST_BED_DBA))
    line = case_set.lines[row]
    # in an exam the story would identify a shipped case, the code a drawn one
    hidden = case_set.policy.mode is Mode.EXAM and not (isinstance(line, Listed) and line.own)
    story, translations = ("", ()) if hidden else (case.story, case.translations)
    named = f"{case_set.name}_{index}"
    return replace(case, name=named, bed=bed, code=None, story=story, translations=translations)


def _digest(*parts: object) -> bytes:
    return hashlib.sha256("\x1f".join(str(part) for part in parts).encode("utf-8")).digest()


def _stream(case_set: CaseSet, *parts: object) -> Stream:
    digest = _digest(case_set.draw_key or case_set.name, *parts)
    return Stream(int.from_bytes(digest[:8], "big"), "set")


def _shuffle(values: list[Shuffled], chance: Stream) -> None:
    for last in range(len(values) - 1, 0, -1):
        other = chance.below(last + 1)
        values[last], values[other] = values[other], values[last]


def _classes(draw: Draw, share: tuple[int, int], chance: Stream) -> tuple[str, ...]:
    """Return the class of each case of a draw: the required circuit-passes and groups, and balanced places."""
    passes, groups = share
    places = list(draw.places)
    if not places:
        passes, groups = draw.count, 0
    _shuffle(places, chance)
    single = [places[number % len(places)] for number in range(draw.count - passes - groups)]
    classes = [*[PASSES] * passes, *[GROUP] * groups, *map(str, single)]
    _shuffle(classes, chance)
    return tuple(classes)


def _fits(case: Case, draw: Draw, wanted: str) -> bool:
    return _fault_fits(case.faults[0], draw, wanted) if case.faults else wanted == PASSES


def _fault_fits(fault: Fault, draw: Draw, wanted: str) -> bool:
    if draw.kinds and fault.kind not in draw.kinds:
        return False
    if wanted == GROUP:
        return is_group(fault) and fault.location in draw.places
    return not is_group(fault) and fault.location == wanted


class _Draws:
    """Counts the draws that a set has left, and the inaudible cases it may still draw."""

    def __init__(self) -> None:
        self.left, self.unheard_left = MOST_DRAWS_IN_SET, MOST_UNHEARD

    def of_one_case(self) -> Iterator[None]:
        """Yield once for each draw that one case may take."""
        for _draw in range(min(MOST_DRAWS, self.left)):
            self.left -= 1
            yield


def _drawn(draw: Draw, wanted: str, taken: Sequence[Case], chance: Stream, draws: _Draws) -> Case:
    """Return an audible case of a class that is not in the set yet; raises WrongCallError where there is none."""
    known = {(case.profile.name, case.faults) for case in taken if case.faults}
    if draw.shipped is not None:
        names = {case.name for case in taken}
        fresh = [case for case in draw.shipped if case.name not in names]
        # an exhausted pool repeats a case with another seed
        fitting = [case for case in draw.shipped if _fits(case, draw, wanted)]
        pools = ([case for case in fitting if case.name not in names], fresh, fitting)
        pool = next((one for one in pools if one), draw.shipped)
        if not pool:
            raise WrongCallError("pool_empty", place=wanted)
        return pool[chance.below(len(pool))]
    for _draw in draws.of_one_case() if _is_left(draw, wanted, known) else ():
        profile = draw.profiles[chance.below(len(draw.profiles))]
        difficulty = draw.difficulties[chance.below(len(draw.difficulties))]
        case = draw_case(profile, difficulty, chance.below(SEED_LIMIT))
        if not _fits(case, draw, wanted) or (case.faults and (case.profile.name, case.faults) in known):
            continue
        if not any(inaudible(case)):
            return case
        draws.unheard_left -= 1
        if draws.unheard_left <= 0:
            break
    raise WrongCallError("pool_empty", place=wanted)


def _is_left(draw: Draw, wanted: str, known: Set[tuple[str, tuple[Fault, ...]]]) -> bool:
    """Return whether a pool holds a case of a class that is not in the set yet."""
    return wanted == PASSES or any(
        _fault_fits(fault, draw, wanted) and (profile.name, (fault,)) not in known
        for profile in draw.profiles
        for level in draw.difficulties
        for fault in drawable(profile, level)
    )
