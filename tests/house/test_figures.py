"""The page of figures says what a whole run of the long proofs printed, and nothing of a run that was cut."""

from __future__ import annotations

import pytest

from tests.benchmarks.figures import page_of

LOG = """== pytest -v -m long
tests/sound/test_ears.py::test_one
[gw0] [ 50%] PASSED tests/sound/test_ears.py::test_one
================= 2 passed in 3.00s =================
== tests.benchmarks
{"what": "solve a V8 test", "value": 0.1, "unit": "s", "other": "NumPy", "other_value": 0.5, "ratio": 5.0}
12 bytes seen
     3 s  pytest -v -m long
    70 s  tests.benchmarks
   120 s  in all
"""


def test_each_part_stands_with_its_time_its_figures_and_what_else_it_said() -> None:
    page = page_of(LOG)
    assert "The whole run took 2 minutes." in page
    assert "## `tests.benchmarks`\n\n70 s" in page
    assert "| solve a V8 test | 0.1 s | NumPy | 0.5 s | 5.0 |" in page
    assert "12 bytes seen" in page
    assert "2 passed" in page
    assert "test_one" not in page


def test_a_run_that_was_cut_gives_no_page() -> None:
    with pytest.raises(ValueError, match="come to its end"):
        page_of(LOG.replace("   120 s  in all\n", ""))
