"""My progress: cases solved by kind of fault, with counts; how often each certainty was right; nothing to lose."""

from __future__ import annotations

from trainer.reasoning.score import calibration
from trainer.window.state.nodes import Node, column, row, rule, scroll, words
from trainer.window.state.screen import Screen
from trainer.window.state.shell import Shell
from trainer.words import text


class ProgressScreen(Screen):
    """What one learner has done so far."""

    name = "progress"
    first = "back"

    def __init__(self, shell: Shell, who: str) -> None:
        super().__init__(shell)
        self.who = who

    def view(self) -> Node:
        """Return counts, never a share without its count."""
        closed = self.shell.services.store.closings(self.who, except_for="")
        kinds: dict[str, list[bool]] = {}
        for one in closed:
            for kind in one.get("kinds") or ["passes"]:
                kinds.setdefault(kind, []).append(bool(one.get("right")))
        said = [(float(one["certainty"]), bool(one["right"])) for one in closed if "certainty" in one]
        return scroll(
            "page",
            words(text("progress.title", who=self.who), "title", "progress.title"),
            words(
                text("progress.count", count=len(closed), right=sum(bool(one.get("right")) for one in closed)),
                "body",
                "progress.count",
            ),
            rule(),
            words(text("progress.kinds"), "bold") if kinds else words(text("progress.nothing"), "muted"),
            column(*(self._kind(kind, right) for kind, right in sorted(kinds.items())), gap=0.2) if kinds else None,
            words(text("progress.certainty"), "bold") if said else None,
            column(
                *(
                    words(text("progress.said", said=certainty, count=count, right=round(share * count)))
                    for certainty, (count, share) in calibration(said).items()
                ),
                gap=0.2,
            )
            if said
            else None,
            self.shell.footer(),
            gap=0.7,
        )

    @staticmethod
    def _kind(kind: str, right: list[bool]) -> Node:
        name = text("debrief.passes") if kind == "passes" else text(f"kind.{kind}")
        counts = text("progress.of", right=sum(right), count=len(right))
        return row(words(name, weight=1.0, least=14.0), words(counts, "mono"), gap=1.0)
