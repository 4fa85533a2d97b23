"""The notices above every screen: silence, torn or lost sound, the last message; and the status line below."""

from __future__ import annotations

from trainer.desk.worker import Worker
from trainer.records.store.store import Store
from trainer.window.kit.nodes import Node, button, column, row, words
from trainer.window.shell.station_sound import StationSound
from trainer.words import text


def notices(store: Store, sound: StationSound, notice: str) -> Node | None:
    """Return what there is to say above a screen, or None."""
    listening = sound.listening
    parts: list[Node] = []
    if not store.keeps:
        parts.append(words(text("banner.unkept"), "caution", "banner.unkept"))
    if listening.silent:
        parts.append(words(text("sound.silent"), "caution", "banner.silent"))
    if sound.missing:
        parts.append(words(" ".join(sound.missing), "muted", "banner.missing"))
    if store.left_out:
        parts.append(words(store.left_out_line, "caution", "banner.damaged"))
    if notice:
        parts.append(words(notice, "bold", "notice"))
    if listening.said:
        parts.append(words(text(listening.said, path=listening.player.written), "caution", "notice.sound"))
        if listening.said == "sound.void":
            parts.append(button("again", text("sound.again"), sound.again))
    if listening.paused and listening.said == "sound.lost":
        parts.append(button("go_on", text("sound.go_on"), sound.reopen))
    return column(*parts, gap=0.3) if parts else None


def status(worker: Worker, touched: str) -> Node:
    """Return the line at the foot, always there: the work under way, or what the keyboard is on in a picture."""
    if worker.busy:
        stage = text(f"stage.{worker.stage or 'waiting'}", percent=100.0 * worker.share)
        return row(
            words(stage, "touch", "work.stage", weight=1.0, least=16.0),
            Node("bar", "work.share", share=worker.share, least=8.0),
            gap=1.0,
        )
    return words(touched or " ", "touch", "spot.text")
