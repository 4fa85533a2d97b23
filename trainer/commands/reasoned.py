"""What a case's evidence proves, for inspect: posterior, best path, bits for one hypothesis."""

from __future__ import annotations

from typing import Any

from trainer.circuit.profile import PASSES
from trainer.errors import WrongCallError
from trainer.reasoning.belief import FindingKey, bits_between
from trainer.reasoning.reasoner import Reasoner
from trainer.terminal.reasons import bits_lines, finding_text, likeliest, question_text
from trainer.terminal.shown import test_text
from trainer.words import percent, text

LEAST_TOLD = 1e-6
SHOWN = 5


def reasoned(reasoner: Reasoner) -> dict[str, Any]:
    """Return the posterior with all offered evidence and the best path as a document."""
    findings = reasoner.everything.findings
    return {
        "posterior": [
            {"hypothesis": name_of_finding(key), "probability": chance}
            for key, chance in findings.items()
            if chance >= LEAST_TOLD
        ],
        "best_path": [
            {"test": step.name, "minutes": step.minutes, "bits": round(step.bits, 3), "probability": step.belief}
            for step in reasoner.best_path
        ],
    }


def reasoned_lines(reasoner: Reasoner) -> list[str]:
    """Return the same in words, the likeliest findings only."""
    lines = [text("inspect.posterior")]
    for key, chance in list(reasoner.everything.findings.items())[:SHOWN]:
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


def why_document(reasoner: Reasoner, asked: str) -> tuple[list[str], dict[str, Any]]:
    """Return why one hypothesis has its probability, by evidence, in bits against its strongest rival.

    Raises WrongCallError for words that are no hypothesis of this engine.
    """
    belief = reasoner.everything
    wanted = " ".join(asked.lower().split())
    key = next((key for key in belief.findings if name_of_finding(key) == wanted), None)
    if key is None:
        raise WrongCallError("no_hypothesis", words=asked[:60])
    questions = list(dict.fromkeys(question for test in reasoner.tests for question in test.questions))
    shown = reasoner.truth_answers(questions)
    rival = next(other for other in belief.findings if other != key)
    prior, bits = bits_between(
        likeliest(belief, key), likeliest(belief, rival), reasoner.hypotheses, reasoner.expected(questions), shown
    )
    document = {
        "hypothesis": name_of_finding(key),
        "probability": belief.findings[key],
        "rival": name_of_finding(rival),
        "prior_bits": prior,
        "evidence": [{"question": question_text(question), "bits": told} for question, told in bits.items()],
    }
    return bits_lines(reasoner, belief, shown, key), document
