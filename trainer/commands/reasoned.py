"""What a case's evidence proves, for inspect: posterior, best path, bits for one hypothesis."""

from __future__ import annotations

from trainer.circuit.profile import PASSES
from trainer.errors import WrongCallError
from trainer.practice.reports.attempt_lines import test_text
from trainer.practice.reports.reason_lines import bits_lines, finding_text, question_text
from trainer.reasoning.reasoner import Reasoner
from trainer.reasoning.verdict.belief import FindingKey, bits_between
from trainer.terminal.typed import cylinders_of, place_of
from trainer.words import numbers, percent, text

LEAST_TOLD = 1e-6
SHOWN, SHOWN_FROM = 5, 1e-4


def reasoned(reasoner: Reasoner) -> dict[str, object]:
    """Return the posterior with all offered evidence and the best path as a document."""
    belief = reasoner.everything
    findings = belief.findings
    return {
        "posterior": [
            {"hypothesis": name_of_finding(key), "probability": chance}
            for key, chance in findings.items()
            if chance >= LEAST_TOLD
        ],
        "posterior_by": {
            "cylinder": belief.summed(lambda claims: [n for claim in claims for n in sorted(claim.cylinders)]),
            "location": belief.summed(lambda claims: [str(claim.location) for claim in claims] or [PASSES]),
            "kind": belief.summed(lambda claims: [str(claim.kind) for claim in claims] or [PASSES]),
        },
        "best_path": [
            {"test": step.name, "minutes": step.minutes, "bits": round(step.bits, 3), "probability": step.belief}
            for step in reasoner.best_path
        ],
    }


def reasoned_lines(reasoner: Reasoner) -> list[str]:
    """Return the same in words, the likeliest findings only."""
    lines = [text("inspect.posterior")]
    for place, (key, chance) in enumerate(list(reasoner.everything.findings.items())[:SHOWN]):
        if place and chance < SHOWN_FROM:
            break
        lines.append(text("debrief.left_line", percent=percent(chance), finding=finding_text(key)))
    lines.append(text("inspect.path"))
    for step in reasoner.best_path:
        lines.append(
            text(
                "debrief.best_step",
                minutes=step.minutes,
                test=test_text(step.name),
                bits=step.bits,
                percent=percent(step.belief),
            )
        )
    return lines


def name_of_finding(key: FindingKey) -> str:
    """Return a finding as it is typed: cylinders, place and kind of each fault, or "circuit_passes"."""
    return "; ".join(f"{','.join(map(str, cylinders))} {place} {kind}" for cylinders, place, kind in key) or PASSES


def _finding_of(reasoner: Reasoner, asked: str) -> FindingKey:
    """Return the finding that words name: cylinders, place and kind, or circuit_passes; raises WrongCallError."""
    words = asked.lower().split()
    if words == [PASSES]:
        return ()
    if len(words) != 3:
        raise WrongCallError("no_hypothesis", words=asked[:60])
    cylinders, place = cylinders_of(words[0]), place_of(words[1])
    unknown = cylinders - set(reasoner.matter.profile.cylinders)
    if unknown:
        known = numbers(reasoner.matter.profile.cylinders)
        raise WrongCallError("no_cylinder", cylinder=min(unknown), cylinders=known)
    key = ((tuple(sorted(cylinders)), str(place), words[2]),)
    if key not in reasoner.everything.findings:
        raise WrongCallError("no_hypothesis", words=asked[:60])
    return key


def why_document(reasoner: Reasoner, asked: str) -> tuple[list[str], dict[str, object]]:
    """Return why one hypothesis has its probability, by evidence, in bits against its strongest rival.

    Raises WrongCallError for words that are no hypothesis of this engine.
    """
    belief = reasoner.everything
    key = _finding_of(reasoner, asked)
    questions = list(dict.fromkeys(question for test in reasoner.tests for question in test.questions))
    shown = reasoner.truth_answers(questions)
    rival = next(other for other in belief.findings if other != key)
    prior, bits = bits_between(key, rival, reasoner.hypotheses, reasoner.expected(questions), shown)
    document = {
        "hypothesis": name_of_finding(key),
        "probability": belief.findings[key],
        "rival": name_of_finding(rival),
        "prior_bits": prior,
        "evidence": [{"question": question_text(question), "bits": told} for question, told in bits.items()],
    }
    return bits_lines(reasoner, belief, shown, key), document
