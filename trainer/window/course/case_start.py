"""Sits a learner down at a case on the bench of this window."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import replace

from trainer.cases.solved.universe_cache import Universes
from trainer.desk.attempt_start import start_or_resume
from trainer.desk.case_source import FoundCase
from trainer.desk.desk import Desk
from trainer.practice.attempt.events import Started
from trainer.practice.attempt.fading import trace_strength
from trainer.records.store.log_rows import AttemptRow
from trainer.window.bench.bench_screen import BenchScreen
from trainer.window.shell.screen import Screen
from trainer.window.shell.shell import Shell


def sit(
    shell: Shell,
    found: FoundCase,
    who: str,
    partner: str = "",
    *,
    new: bool = False,
    seed: int | None = None,
    begun: AttemptRow | None = None,
    at: Started | None = None,
    next_task: Callable[[Screen], None] | None = None,
) -> None:
    """Sit down at a case, going on with what was begun: with `begun`, or with the newest one of this case."""
    services = shell.services
    desk = Desk(services.store, shell.listening.player, services.now_utc, Universes(None), hints=services.hints)
    pair = paired(shell, who, partner)
    if begun is not None:
        desk.resume(found.case, begun)
    else:
        started = replace(at or Started(), listening=station_verdict(shell), pair=pair or ())
        start_or_resume(desk, found, who, services.now_utc(), new=new, seed=seed, at=started)
    shell.show(BenchScreen(shell, desk, who, strength(shell, who, shell.settings.trace), pair, next_task=next_task))


def paired(shell: Shell, who: str, partner: str) -> tuple[str, str] | None:
    """Return who hears and who measures; the roles change with every case."""
    if not partner:
        return None
    finished = len(shell.services.store.closings(who))
    return (who, partner) if finished % 2 == 0 else (partner, who)


def strength(shell: Shell, who: str, trace: str) -> float:
    """Return how visible the outline on the strip is for a learner: `fading`, `shown` or `off`."""
    if trace != "fading":
        return 1.0 if trace == "shown" else 0.0
    return trace_strength([one.right for one in shell.services.store.closings(who)])


def station_verdict(shell: Shell) -> Mapping[str, str | float | None] | None:
    """Return the verdict of the station's sound check, None if it has expired."""
    calibration = shell.sound.calibration
    return calibration.verdict if calibration.holds(shell.services.now_utc()) else None
