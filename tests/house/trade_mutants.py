"""Break what the trade relies on in named places, and see that a test of each goes red.

`python -m tests.house.trade_mutants [WORD ...]` changes one threshold, price or rule after the other in a copy of the
checkout and runs the test that holds it; words choose the changes whose name holds one of them. It prints a table,
and exits with 1 where a change is not noticed.
"""

from __future__ import annotations

import sys
import tempfile
import time
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

from tests.house.mutants import copied_to, outcome

SOME_TEST_FAILED = 1
"""What pytest exits with: 0 where all pass, 2 or more where nothing was tried."""


@dataclass(frozen=True)
class TradeMutant:
    """A named change of one line in one file, and the test that must notice it."""

    name: str
    path: str
    was: str
    becomes: str
    test: str

    def applied(self, source: str) -> str:
        """Return the changed source; raises ValueError unless the line that is changed is there exactly once."""
        if source.count(self.was) != 1:
            raise ValueError(f"{self.path} has {self.was!r} {source.count(self.was)} times, not once")
        return source.replace(self.was, self.becomes)


PROFILES = "scenarios/profiles"
CODES, TRIES = "trainer/circuit/codes.py", "trainer/instruments/tries.py"
CHARGES, METERS = "trainer/instruments/charges.py", "trainer/instruments/ohmmeter.py"
MEASURED, SCORE = "trainer/reasoning/advice/measured.py", "trainer/reasoning/verdict/score.py"
ANCHORS, TABLE = "tests/circuit/test_code_anchors.py", "tests/outside/test_trade_table.py"
AT_REST, STANDARD = "tests/instruments/test_volts_at_rest.py", "tests/reasoning/verdict/test_shops_standard.py"

TRADE_MUTANTS = (
    TradeMutant("open from twice the current", f"{PROFILES}/north_v8.yaml", "open_below_a: 2.6", "open_below_a: 5.2",
                f"{ANCHORS}::test_an_open_code_begins_between_two_resistances_in_ohm[north_v8]"),
    TradeMutant("open from a quarter of the current", f"{PROFILES}/harbour_v8.yaml", "open_below_a: 2.6",
                "open_below_a: 0.65",
                f"{ANCHORS}::test_a_dead_output_is_open_for_all_its_background_current[harbour_v8]"),
    TradeMutant("short from 15 % more current", f"{PROFILES}/field_six.yaml", "short_above_a: 6.5",
                "short_above_a: 7.475",
                f"{ANCHORS}::test_a_code_for_too_much_current_begins_between_two_shares_of_shorted_turns[field_six]"),
    TradeMutant("uncommanded from twice the current", f"{PROFILES}/ridge_v6.yaml", "uncommanded_above_a: 4.5",
                "uncommanded_above_a: 9.0",
                f"{ANCHORS}::"
                "test_a_current_that_lifts_a_plate_in_anothers_slot_is_coded_and_the_background_is_not[ridge_v6]"),
    TradeMutant("supply low from half of that voltage", f"{PROFILES}/north_v8.yaml", "supply_low_share: 0.6",
                "supply_low_share: 0.3",
                f"{TABLE}::test_a_supply_at_sixty_to_eighty_five_per_cent_is_nearly_even_and_low_where_it_is_measured"),
    TradeMutant("half as much again of background current", f"{PROFILES}/north_v8.yaml", "background_ohm: 56.0",
                "background_ohm: 37.0",
                "tests/house/test_words.py::"
                "test_the_currents_that_the_glossary_names_are_those_of_the_shipped_engines[en]"),
    TradeMutant("the module forgets a trip", CODES, "own[cylinder] = Sensed.TRIPPED", "own[cylinder] = Sensed.OPEN",
                "tests/circuit/test_codes.py::test_a_feed_that_a_trip_has_shut_is_never_called_open[harbour_v8]"),
    TradeMutant("no cover over what is moved under it", CHARGES, "if spot.location in UNDER_COVER else ()",
                "if spot.location is None else ()",
                "tests/instruments/test_tries.py::"
                "test_what_lies_under_a_cover_costs_the_cover_and_hard_work_twice_the_minutes"),
    TradeMutant("live probes without preparation", CHARGES, 'TOUCHED = ("supply", "drop", "dummy")',
                'TOUCHED = ("supply",)',
                "tests/instruments/test_charges.py::"
                "test_live_work_is_prepared_and_a_clamp_or_a_trace_from_outside_is_not"),
    TradeMutant("what is heard proves", MEASURED, 'return question.kind in ELECTRICAL or (question.kind == "slot" and',
                'return question.kind in ELECTRICAL or (question.kind == "slot" or',
                f"{STANDARD}::test_an_electrical_observation_is_one_of_a_meter_or_an_exchange"),
    TradeMutant("a part condemned by ear is right", SCORE, "condemned = bool(finding.claims) and not proof.measured",
                "condemned = False",
                "tests/reasoning/verdict/test_score.py::"
                "test_a_part_condemned_without_a_measurement_earns_half_its_place_and_is_not_right"),
    TradeMutant("a fault may hide for eight tries", TRIES, "MOST_TRIES = 4", "MOST_TRIES = 8",
                "tests/instruments/test_tries.py::"
                "test_every_seed_shows_its_fault_within_four_tries_but_not_always_in_the_first"),
    TradeMutant("a terminal is dead after a tenth of the wait", METERS,
                "AT_ONCE_S if at_once else profile.module.discharge_s",
                "AT_ONCE_S if at_once else 0.1 * profile.module.discharge_s",
                f"{AT_REST}::test_a_terminal_of_the_module_read_at_once_is_still_charged_and_dead_after_the_wait"),
)  # fmt: skip


def noticed(mutant: TradeMutant, tree: Path) -> bool:
    """Tell whether the mutant's test fails with it in a copy of the tree, which is mended afterwards."""
    path = tree / mutant.path
    source = path.read_text("utf-8")
    path.write_text(mutant.applied(source), "utf-8")
    try:
        return outcome(tree, [mutant.test]) == SOME_TEST_FAILED
    finally:
        path.write_text(source, "utf-8")


def main(words: Sequence[str]) -> int:
    """Print each mutant with its fate; return the exit status."""
    asked = [one for one in TRADE_MUTANTS if not words or any(word in one.name for word in words)]
    unnoticed = []
    with tempfile.TemporaryDirectory(prefix="trade-mutants-") as name:
        tree = Path(name) / "checkout"
        copied_to(tree)
        if outcome(tree, [one.test for one in asked]):
            print("one of the tests is red before anything is changed")
            return 1
        for mutant in asked:
            begun = time.monotonic()
            red = noticed(mutant, tree)
            unnoticed += [] if red else [mutant.name]
            where = f"{Path(mutant.path).name} → {Path(mutant.test.partition('::')[0]).name}"
            print(
                f"{'red  ' if red else 'GREEN'} {time.monotonic() - begun:6.1f} s  {mutant.name:44}  {where}",
                flush=True,
            )
    print(f"{len(asked) - len(unnoticed)} of {len(asked)} changes turn a test red")
    return 1 if unnoticed else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
