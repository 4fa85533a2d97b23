"""What a case's evidence proves: the posterior, the best path, and the evidence for one hypothesis in bits."""

from __future__ import annotations

from dataclasses import dataclass

from trainer.circuit.profile import PASSES
from trainer.errors import WrongCallError
from trainer.practice.reports.path_lines import path_lines
from trainer.practice.reports.reason_lines import bits_lines, finding_text, question_text
from trainer.reasoning.reasoner import Reasoner
from trainer.reasoning.universe.finding import truth_of
from trainer.reasoning.verdict.belief import FindingKey, bits_between
from trainer.terminal.typed import cylinders_of, place_of
from trainer.words import numbers, percent, text

LEAST_PROBABILITY = 1e-6
"""The document leaves out hypotheses below this probability."""

MOST_LINES, LEAST_SHOWN = 5, 1e-4
"""The most hypotheses in the lines, and the least probability of all but the first."""


@dataclass(frozen=True, slots=True)
class HypothesisRow:
    """One hypothesis of the posterior: a finding as it is typed."""

    hypothesis: str
    probability: float


@dataclass(frozen=True, slots=True)
class Marginals:
    """The posterior summed by one property of the faults at a time, most probable first."""

    cylinder: dict[int, float]
    location: dict[str, float]
    kind: dict[str, float]


@dataclass(frozen=True, slots=True)
class PathStep:
    """One step of the best path; `probability` is that of the true finding after it."""

    test: str
    minutes: float
    bits: float
    probability: float


@dataclass(frozen=True, slots=True)
class Proof:
    """The posterior with all the evidence that a case offers, and the best path to its truth."""

    posterior: tuple[HypothesisRow, ...]
    posterior_by: Marginals
    best_path: tuple[PathStep, ...]


@dataclass(frozen=True, slots=True)
class EvidenceRow:
    """What one observation says for a hypothesis against its rival, in bits."""

    question: str
    bits: float


@dataclass(frozen=True, slots=True)
class Explanation:
    """Why a hypothesis has its probability: prior and evidence in bits against its strongest rival."""

    hypothesis: str
    probability: float
    rival: str
    prior_bits: float
    evidence: tuple[EvidenceRow, ...]


def proof_of(reasoner: Reasoner) -> Proof:
    """Return the posterior with all offered evidence and the best path."""
    belief = reasoner.everything
    return Proof(
        posterior=tuple(
            HypothesisRow(typed_finding(key), chance)
            for key, chance in belief.findings.items()
            if chance >= LEAST_PROBABILITY
        ),
        posterior_by=Marginals(
            cylinder=belief.summed(lambda claims: [n for claim in claims for n in sorted(claim.cylinders)]),
            location=belief.summed(lambda claims: [str(claim.location) for claim in claims] or [PASSES]),
            kind=belief.summed(lambda claims: [str(claim.kind) for claim in claims] or [PASSES]),
        ),
        best_path=tuple(
            PathStep(str(step.name), step.minutes, round(step.bits, 3), step.belief) for step in reasoner.best_path
        ),
    )


def proof_lines(reasoner: Reasoner) -> list[str]:
    """Return the most probable findings and the best path in words."""
    lines = [text("inspect.posterior")]
    for place, (key, chance) in enumerate(list(reasoner.everything.findings.items())[:MOST_LINES]):
        if place and chance < LEAST_SHOWN:
            break
        lines.append(text("debrief.left_line", percent=percent(chance), finding=finding_text(key)))
    lines.append(text("inspect.path"))
    return [*lines, *path_lines(reasoner.best_path, truth_of(reasoner.facts.truth))]


def typed_finding(key: FindingKey) -> str:
    """Return a finding as it is typed: cylinders, place and kind of each fault, or "circuit_passes"."""
    return "; ".join(f"{','.join(map(str, cylinders))} {place} {kind}" for cylinders, place, kind in key) or PASSES


def _parsed_finding(reasoner: Reasoner, typed: str) -> FindingKey:
    """Return the finding that was typed; raises WrongCallError where it is no hypothesis of this engine."""
    words = typed.lower().split()
    if words == [PASSES]:
        return ()
    if len(words) != 3:
        raise WrongCallError("no_hypothesis", words=typed[:60])
    cylinders, place = cylinders_of(words[0]), place_of(words[1])
    unknown = cylinders - set(reasoner.facts.profile.cylinders)
    if unknown:
        known = numbers(reasoner.facts.profile.cylinders)
        raise WrongCallError("no_cylinder", cylinder=min(unknown), cylinders=known)
    key = ((tuple(sorted(cylinders)), str(place), words[2]),)
    if key not in reasoner.everything.findings:
        raise WrongCallError("no_hypothesis", words=typed[:60])
    return key


def explained(reasoner: Reasoner, typed: str) -> tuple[list[str], Explanation]:
    """Return the explanation of a hypothesis, in words and as a value.

    Raises WrongCallError for words that are no hypothesis of this engine.
    """
    belief = reasoner.everything
    key = _parsed_finding(reasoner, typed)
    questions = list(dict.fromkeys(question for test in reasoner.tests for question in test.questions))
    shown = reasoner.truth_answers(questions)
    rival = next(other for other in belief.findings if other != key)
    prior, bits = bits_between(key, rival, reasoner.hypotheses, reasoner.expected(questions), shown)
    explanation = Explanation(
        hypothesis=typed_finding(key),
        probability=belief.findings[key],
        rival=typed_finding(rival),
        prior_bits=prior,
        evidence=tuple(EvidenceRow(question_text(question), gained) for question, gained in bits.items()),
    )
    return bits_lines(reasoner, belief, shown, key), explanation
