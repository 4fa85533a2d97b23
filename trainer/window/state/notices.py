"""What stands above every screen: silence, torn or lost sound, what was last said; and the line at its foot."""

from __future__ import annotations

from typing import TYPE_CHECKING

from trainer.window.state.nodes import Node, button, column, row, words
from trainer.words import text

if TYPE_CHECKING:
    from trainer.window.state.shell import Shell


def notices(shell: Shell) -> Node | None:
    """Return what there is to say above a screen, or None."""
    listening = shell.listening
    parts: list[Node] = []
    if not shell.services.store.keeps:
        parts.append(words(text("banner.unkept"), "caution", "banner.unkept"))
    if listening.silent:
        parts.append(words(text("sound.silent"), "caution", "banner.silent"))
    if shell.sound.missing:
        parts.append(words(" ".join(shell.sound.missing), "muted", "banner.missing"))
    if shell.services.store.left_out:
        parts.append(words(shell.services.store.left_out_line, "caution", "banner.damaged"))
    if shell.notice:
        parts.append(words(shell.notice, "bold", "notice"))
    if listening.said:
        parts.append(words(text(listening.said, path=listening.player.written), "caution", "notice.sound"))
        if listening.said == "sound.void":
            parts.append(button("again", text("sound.again"), shell.sound.again))
    if listening.paused and listening.said == "sound.lost":
        parts.append(button("go_on", text("sound.go_on"), shell.sound.reopen))
    return column(*parts, gap=0.3) if parts else None


def status(shell: Shell) -> Node:
    """Return the line at the foot, always there: the work under way, or what the keyboard is on in a picture."""
    worker = shell.services.worker
    if worker.busy:
        stage = text(f"stage.{worker.stage or 'waiting'}", percent=100.0 * worker.share)
        return row(
            words(stage, "touch", "work.stage", weight=1.0, least=16.0),
            Node("bar", "work.share", share=worker.share, least=8.0),
            gap=1.0,
        )
    return words(shell.touched or " ", "touch", "spot.text")
