"""`check` counts the tries in which a case's seed shows an intermittent fault."""

from __future__ import annotations

from trainer.cases.single_case.shipped import case_named, case_names
from trainer.commands.case_commands.check_files import tries_lines
from trainer.instruments.tries import MOST_TRIES, Effort, provoked_by, tries_needed


def test_every_shipped_intermittent_shows_itself_within_four_gentle_tries_and_check_says_in_which() -> None:
    counted = 0
    for name in case_names():
        case = case_named(name)
        lines = list(tries_lines(case, name))
        needed = [
            tries_needed(case.seed, how, fault.location, Effort.GENTLE)
            for fault in case.faults
            for how in provoked_by(fault, case.profile, case.temperature_c)
        ]
        assert all(count <= MOST_TRIES for count in needed), name
        assert len(lines) == len(needed)
        assert all(line.endswith(f"on try {count}.") for line, count in zip(lines, needed, strict=True))
        counted += len(needed)
    assert counted >= 4
