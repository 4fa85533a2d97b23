"""The result of a closed attempt, as plain values: what results are counted, compared and reported from."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated

from pydantic import AfterValidator, Field

from trainer.cases.drawing.random_case import MOST_OF_A_PAIR
from trainer.circuit.elements import Location
from trainer.circuit.fault import FaultKind
from trainer.circuit.profile import PASSES
from trainer.reasoning.universe.finding import CERTAINTIES
from trainer.reasoning.verdict.misconceptions import MISCONCEPTIONS, UNCLASSIFIED


def _known_misconception(name: str) -> str:
    if name not in ("", UNCLASSIFIED, *MISCONCEPTIONS):
        raise ValueError("a misconception that this version does not know")
    return name


def _known_certainty(certainty: float) -> float:
    if certainty not in CERTAINTIES:
        raise ValueError("no certainty that a finding can have")
    return certainty


Count = Annotated[int, Field(ge=0, lt=2**31)]
Amount = Annotated[float, Field(ge=0.0, le=1e9)]
LocationName = Annotated[str, AfterValidator(lambda name: str(Location(name)))]
KindName = Annotated[str, AfterValidator(lambda name: str(FaultKind(name)))]


@dataclass(frozen=True, slots=True)
class Outcome:
    """The result of one attempt; `shares` are those of cylinders, location, kind, proof and economy, 0 to 1.

    `used_minutes` are labour, `time_s` real seconds where a set records them.

    `places` and `kinds` are those of the truth, empty where the circuit passes; the learner's own are beside them.
    """

    points: Annotated[float, Field(ge=0.0, le=100.0)]
    shares: tuple[float, ...]
    right: bool
    certainty: Annotated[float, AfterValidator(_known_certainty)]
    places: tuple[LocationName, ...]
    said_places: tuple[LocationName, ...]
    cylinders: tuple[int, ...]
    said_cylinders: tuple[int, ...]
    kinds: tuple[KindName, ...]
    said_kinds: tuple[KindName, ...]
    misconception: Annotated[str, AfterValidator(_known_misconception)]
    plays: Count
    readings: Count
    hints: Count
    used_minutes: Amount
    best_minutes: Amount
    time_s: Amount


def class_of(outcome: Outcome) -> str:
    """Return the class that results are pooled by: the place of the fault, a whole group, two faults, or none."""
    if not outcome.places:
        return PASSES
    if len(outcome.places) > 1:
        return "two_faults"
    group = len(outcome.cylinders) > MOST_OF_A_PAIR and outcome.places[0] != Location.MODULE_POWER
    return "group" if group else outcome.places[0]
