"""Writes docs/figures.md from what a whole run of `.ci/long` printed: `python -m tests.benchmarks.figures LOG`."""

from __future__ import annotations

import json
import re
import sys
from collections.abc import Iterable, Sequence
from pathlib import Path

PAGE = Path(__file__).parents[2] / "docs" / "figures.md"
HEAD = """# Figures of the last whole run

You want to know how fast or how exact the trainer is now, or whether a figure still holds. Here is what each part of
`.ci/long` printed when it last ran as a whole. The reasons are in [decisions.md](decisions.md).

To renew this page: `.ci/long | tee LOG`, then `python -m tests.benchmarks.figures LOG`. Single times are noisy on a
shared machine; a ratio compares two ways in one run.
"""
PROGRESS = re.compile(r"::|^\[gw|^bringing up|^platform |^rootdir|^plugins|^cachedir|^=+ test session|workers? \[")
"""Lines in which pytest tells one test after another."""


def parts_of(log: str) -> dict[str, list[str]]:
    """Return what each part of a run printed, by the part's command."""
    parts: dict[str, list[str]] = {}
    for line in log.splitlines():
        if line.startswith("== "):
            parts[line.removeprefix("== ")] = []
        elif parts and line.strip() and not PROGRESS.search(line):
            next(reversed(parts.values())).append(line.rstrip())
    return parts


def times_of(log: str) -> dict[str, int]:
    """Return the seconds that each part took, by its command; the whole run is "in all"."""
    return {command: int(seconds) for seconds, command in re.findall(r"^ *(\d+) s  (.+)$", log, re.MULTILINE)}


def page_of(log: str) -> str:
    """Return the page for one whole run. Raises ValueError for a run that did not come to its end."""
    times = times_of(log)
    if "in all" not in times:
        raise ValueError("the run did not come to its end: it does not tell its time in all")
    *finished, _ = times
    lines = [HEAD, f"The whole run took {times['in all'] / 60:.0f} minutes.", ""]
    printed = parts_of(log)
    for command in finished:
        lines += [f"## `{command}`", "", f"{times[command]} s", "", *_told(printed.get(command, []))]
    return "\n".join(lines).rstrip() + "\n"


def _told(lines: Sequence[str]) -> Iterable[str]:
    """Yield figures as a table, and everything else as it was printed."""
    figures = [json.loads(line) for line in lines if line.startswith('{"what"')]
    plain = [line for line in lines if not line.startswith('{"what"') and not re.match(r" *\d+ s  ", line)]
    if figures:
        yield from ("| what | figure | beside | figure | ratio |", "| --- | --- | --- | --- | --- |")
        for one in figures:
            unit = one.get("unit", "")
            beside = (one.get("other", ""), f"{one['other_value']} {unit}" if "other_value" in one else "")
            cells = (one["what"], f"{one['value']} {unit}", *beside, one.get("ratio", ""))
            yield "| " + " | ".join(str(cell).strip().replace("|", "/") for cell in cells) + " |"
        yield ""
    if plain:
        yield from ("```text", *plain, "```", "")


if __name__ == "__main__":
    PAGE.write_text(page_of(Path(sys.argv[1]).read_text("utf-8")), "utf-8")
