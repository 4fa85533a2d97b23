"""The job card as nodes: it fills by itself, in the learner's own order."""

from __future__ import annotations

from collections.abc import Callable

from trainer.circuit.elements import Location
from trainer.practice.attempt.attempt import Attempt
from trainer.practice.reports.attempt_lines import card_entry, claims_text
from trainer.window.kit.nodes import Node, column, row, rule, scroll, tick, words
from trainer.words import capital, text


def card_node(
    attempt: Attempt, who: str, suspect: Callable[[Location], None] | None, *extra: Node | None, truth: str = ""
) -> Node:
    """Return the card: complaint, what was done and shown, the places still possible, the finding.

    `suspect` is called with a place that is ruled out or taken back; without it the places are not asked for.
    """
    case = attempt.case
    entries = [_entry(*one) for one in folded(attempt)]
    return scroll(
        "card",
        row(words(text("card.head"), "title", "card.title", weight=1.0), words(who, "muted"), gap=0.5),
        rule(),
        words(text("card.complaint"), "bold"),
        words(case.in_words.story or text("case.drawn_story"), "body", "card.story"),
        words(truth, "bold", "card.truth") if truth else None,
        column(*entries, name="card.entries", gap=0.35) if entries else None,
        rule(),
        _suspects(attempt, suspect) if suspect else None,
        _finding(attempt),
        *extra,
        surface="card",
        pad=1.3,
        gap=0.55,
        framed=True,
    )


def folded(attempt: Attempt) -> list[tuple[str, float, int]]:
    """Return the card's entries with their minutes, the same one several times in a row as one with its count."""
    entries: list[tuple[str, float, int]] = []
    for event in attempt.events:
        entry = card_entry(event)
        if entry is None:
            continue
        if entries and entries[-1][0] == entry:
            before = entries.pop()
            entries.append((entry, before[1] + event.labour_minutes, before[2] + 1))
        else:
            entries.append((entry, event.labour_minutes, 1))
    return entries


def _entry(entry: str, minutes: float, count: int) -> Node:
    head, _colon, rest = entry.partition(": ")
    rest = capital(rest)
    if count > 1:
        rest, head = (f"{rest} ×{count}", head) if rest else ("", f"{head} ×{count}")
    told = words(f"{minutes:.0f} min", "mono_muted") if minutes else None
    return column(
        rule(),
        row(words(head, "bold" if rest else "body", weight=1.0, least=8.0), told, gap=0.5),
        words(rest, "body") if rest else None,
        gap=0.1,
    )


def _suspects(attempt: Attempt, suspect: Callable[[Location], None]) -> Node:
    def line(place: Location) -> Node:
        possible = place not in attempt.ruled_out
        return tick(
            f"suspect.{place.value}",
            text(f"location.{place}"),
            possible,
            lambda: suspect(place),
            look="body" if possible else "struck",
        )

    return column(words(text("card.possible"), "bold"), *map(line, Location), gap=0.1)


def _finding(attempt: Attempt) -> Node | None:
    if attempt.finding is None:
        return None
    return column(
        rule(),
        words(text("card.finding"), "bold"),
        words(claims_text(attempt.finding.claims), "body", "card.finding"),
        words(text(f"certainty.{attempt.finding.certainty}"), "muted"),
        gap=0.2,
    )
