"""The shop's standard: no part is condemned until a measurement has separated its place from the next likely one.

Electrical observations are ohms, insulation, voltage under load, a current trace, a dummy load, and two returns
exchanged and heard again. What is heard, read as a code or seen is not electrical. Nothing observed on an engine with a
lent injector or module is: fitting a new part is a repair.

The next likely place of a claim is the one that everything but the electrical observations leaves likeliest beside the
named one. The observations separate the two when they are SEPARATED times likelier under the named place than under
that one, each place weighed over its hypotheses as the other evidence left them. A place that all offered measurements
together tell from the named one by less than ALIKE to one is left to the eyes and passed over: metal that bridges two
pins in a connector reads like metal that bridges their wires beside it. "The circuit passes" is measured when
two mates' traces, or their ohms at one break point, are equal.
"""

from __future__ import annotations

from collections.abc import Callable, Collection, Sequence
from dataclasses import dataclass

import numpy as np

from trainer.arrays import Flags, Floats
from trainer.circuit.elements import Side
from trainer.reasoning.universe.finding import Claim
from trainer.reasoning.universe.hypotheses import Hypotheses
from trainer.reasoning.universe.questions import EXPLAINED_WITHIN, Answers, Question

PROVED = 0.95
"""The posterior at which a finding is proved."""

SEPARATED = 10.0
"""How many times likelier electrical observations must be under the named place: common practice asks for a clear
reading, no published source; ten to one is what its authors call strong evidence (Kass and Raftery 1995, from 10)."""

ALIKE = 3.0

ELECTRICAL = frozenset({
    "ohms", "insulation", "volts", "lamp", "crank", "plus_drop", "ground_drop", "drop", "supply", "trace", "clamp",
    "dummy",
})  # fmt: skip

ELSEWHERE = "elsewhere"
"""The place of a hypothesis that leaves the named cylinders alone."""


def is_electrical(question: Question) -> bool:
    """Tell whether an answer to a question is a measurement."""
    if question.work.replaced:
        return False
    return question.kind in ELECTRICAL or (question.kind == "slot" and bool(question.work.swapped))


def is_dead_reading(question: Question) -> bool:
    """Tell whether a question is answered by a meter with the key off."""
    return question.kind in ("ohms", "insulation", "volts", "lamp") and not question.work.replaced


def mates_agree(answers: Answers) -> bool:
    """Tell whether two cylinders were measured alike, pair against pair or trace against trace, and read equal."""
    seen: dict[object, list[Floats]] = {}
    for question, answer in answers.items():
        if not is_electrical(question):
            continue
        if question.kind == "trace":
            seen.setdefault(("trace", question.work), []).append(answer)
        elif question.kind == "ohms" and _is_pair(question):
            first = question.pins[0]
            assert first is not None
            point = first.break_point.partition(".")[0]
            seen.setdefault((point, first.half), []).append(answer)
    return any(
        bool((np.abs(one - other) < EXPLAINED_WITHIN).all())
        for alike in seen.values()
        for place, one in enumerate(alike)
        for other in alike[place + 1 :]
    )


def _is_pair(question: Question) -> bool:
    first, second = question.pins
    return first is not None and second is not None and {first.side, second.side} == set(Side)


@dataclass(frozen=True, slots=True)
class Standing:
    """The standing of the reasoning about a case.

    `sure` is the chance of the best finding, `measured` whether measurements separate its places. `doubt` is what the
    next test should resolve: the belief itself, or, where only the measurement is missing, half the named place and
    half its next likely one. `place` is where it stands about the place alone, where that is sure and not measured and
    something else about the finding is in doubt: what is measured then, once no test tells more about the rest.
    """

    probability: Floats
    sure: float
    measured: bool
    doubt: Floats
    passes: bool = False
    place: Standing | None = None

    def proves(self, least: float) -> bool:
        """Tell whether a finding is proved to the shop's standard."""
        return self.sure >= least and self.measured

    @property
    def in_turn(self) -> tuple[Standing, ...]:
        """What to resolve first, and what to resolve once no test tells more about that."""
        return (self,) if self.place is None else (self, self.place)


def separating_factor(
    hypotheses: Hypotheses, quiet: Floats, electrical: Floats, claim: Claim, inseparable: Collection[str] = ()
) -> tuple[float, Flags, Flags]:
    """Return how many times likelier measurements are under the named place than under the next likely one.

    `quiet` are log weights by everything else, `electrical` the log likelihoods of the measurements given that. The
    rows of both places come with the factor. Places in `inseparable` are passed over.
    """
    own, rivals = _places(hypotheses, claim)
    seen = [rows for place, rows in rivals.items() if place not in inseparable]
    if not own.any() or not seen:
        return 0.0, own, ~own
    rival = max(seen, key=lambda rows: _log_sum(quiet[rows]))
    return float(np.exp(min(_told(quiet, electrical, own) - _told(quiet, electrical, rival), 700.0))), own, rival


def inseparable_places(hypotheses: Hypotheses, quiet: Floats, electrical: Floats, claim: Claim) -> frozenset[str]:
    """Return the places that measurements, all that are offered, do not tell from a claimed one."""
    own, rivals = _places(hypotheses, claim)
    if not own.any():
        return frozenset()
    level = _told(quiet, electrical, own)
    near = np.log(ALIKE)
    return frozenset(p for p, rows in rivals.items() if abs(level - _told(quiet, electrical, rows)) < near)


def _places(hypotheses: Hypotheses, claim: Claim) -> tuple[Flags, dict[str, Flags]]:
    """Return the rows at the claimed place, and those at every other place by its name."""
    places = np.array([_place_beside(claims, claim) for claims in hypotheses.claims])
    rivals = {place: places == place for place in sorted(set(places.tolist()) - {str(claim.location)})}
    return places == str(claim.location), rivals


def _place_beside(claims: Sequence[Claim], named: Claim) -> str:
    """Return where a hypothesis has the fault of the named cylinders."""
    places = [claim.location for claim in claims if claim.cylinders & named.cylinders]
    if named.location in places:
        return str(named.location)
    return str(places[0]) if places else ELSEWHERE


def _told(quiet: Floats, electrical: Floats, rows: Flags) -> float:
    return _log_sum((quiet + electrical)[rows]) - _log_sum(quiet[rows])


def _log_sum(logs: Floats) -> float:
    top = float(logs.max())
    return top + float(np.log(np.exp(logs - top).sum()))


FAR_LESS = 0.1


def half_and_half(one: Floats, other: Floats) -> Floats:
    """Return two parts of a belief, given as log weights with -inf outside, as if each were as likely as the other.

    Of each part only what is not far less likely than its likeliest is kept.
    """
    weights = [np.exp(logs - logs.max()) for logs in (one, other)]
    parts = [np.where(weight >= FAR_LESS, weight, 0.0) for weight in weights]
    return np.asarray(0.5 * parts[0] / parts[0].sum() + 0.5 * parts[1] / parts[1].sum())


def standing_of(
    hypotheses: Hypotheses, quiet: Floats, electrical: Floats, best: Sequence[Claim], sure: float, *, mates: bool,
    inseparable: Callable[[Claim], Collection[str]],
) -> Standing:  # fmt: skip
    """Return the standing of a belief whose likeliest finding is `best`; `mates` says whether two mates read equal."""
    logs = quiet + electrical
    weight = np.exp(logs - logs.max())
    probability = np.asarray(weight / weight.sum())
    if not best:
        rows = np.array([not claims for claims in hypotheses.claims])
        prior = np.log(np.maximum(hypotheses.prior, 1e-300))
        settled = mates or sure < PROVED
        doubt = probability if settled else half_and_half(np.where(rows, 0.0, -np.inf), np.where(rows, -np.inf, prior))
        return Standing(probability, sure, mates, doubt, passes=True)
    for claim in best:
        factor, own, rival = separating_factor(hypotheses, quiet, electrical, claim, inseparable(claim))
        if factor < SEPARATED:
            at_place = float(probability[own].sum())
            if max(sure, at_place) < PROVED:
                return Standing(probability, sure, False, probability)
            doubt = half_and_half(np.where(own, logs, -np.inf), np.where(rival, logs, -np.inf))
            if sure >= PROVED:
                return Standing(probability, sure, False, doubt)
            place = Standing(probability, at_place, False, doubt)
            return Standing(probability, sure, False, probability, place=place)
    return Standing(probability, sure, True, probability)
