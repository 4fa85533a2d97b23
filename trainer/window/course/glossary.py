"""The words that the trainer uses, explained."""

from __future__ import annotations

from trainer.window.kit.nodes import Node, column, scroll, words
from trainer.window.shell.screen import Screen
from trainer.words import capital, text

TERMS = (
    "actuation_test", "slot", "burst", "background", "hum", "bed", "even", "weak", "dull", "module", "feed", "return",
    "break_point", "pass_through", "open", "load", "insulation", "mate", "zeroed", "finding", "passes", "certainty",
    "proof", "numeric",
)  # fmt: skip


class GlossaryScreen(Screen):
    """Every word of the trade that is used here, in one or two sentences."""

    name = "glossary"
    first = "back"

    def view(self) -> Node:
        """Return all words with what they mean."""
        entries = [
            column(words(capital(text(f"term.{term}")), "bold"), words(text(f"meaning.{term}"), "body"), gap=0.1)
            for term in TERMS
        ]
        title = words(text("glossary.title"), "title", "glossary.title")
        return scroll("page", title, self.shell.footer(), *entries, gap=0.7)
