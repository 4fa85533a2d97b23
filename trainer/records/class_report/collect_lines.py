"""Write the outcome of collecting and marking in words."""

from __future__ import annotations

from collections.abc import Sequence

from trainer.reasoning.model_version import MODEL_VERSION
from trainer.records.class_report.collect import Collected
from trainer.records.class_report.marking import Marked, Refusal
from trainer.words import text


def collected_lines(taken: Sequence[Collected], marked: Marked) -> list[str]:
    """Return what became of each file, and what was marked."""
    if not taken:
        return [text("collect.nothing")]
    lines = [_line(one) for one in taken]
    return [*lines, *marked_lines(marked)]


def _line(one: Collected) -> str:
    fate = text(f"fate.{one.fate}")
    if one.attempts or not one.learner:
        return text("collect.line", file=one.file, fate=fate, n=one.attempts)
    return text("collect.claims", file=one.file, fate=fate, learner=one.learner)


def marked_lines(marked: Marked) -> list[str]:
    """Return how many attempts were marked, and why others were not."""
    lines = [text("mark.done", marked=marked.marked, unfinished=marked.unfinished, voided=marked.voided)]
    lines += [text("mark.refused", n=count, why=_why(refusal)) for refusal, count in marked.refused.items()]
    return [*lines, text("mark.to_settle", n=marked.to_settle)] if marked.to_settle else lines


def _why(refusal: Refusal) -> str:
    if refusal.why == "other_model" and not refusal.version:
        return text("mark.unnumbered_model")
    return text(f"mark.{refusal.why}", version=refusal.version, now=MODEL_VERSION)
