"""All figures in one command: JSON lines with value, unit, the same work done another way in this run, and the ratio."""

from __future__ import annotations

import json
import os
import resource
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable
from pathlib import Path
from unittest.mock import patch

import yaml

from tests.benchmarks.strategies import compared
from tests.engines import FIELD, HARBOUR, NORTH, RIDGE
from tests.spice import run_ngspice
from tests.universes import solved_universe
from trainer.cases.profiles.profile_file import profile_from
from trainer.cases.single_case.shipped import SOLVED, scenarios_folder
from trainer.circuit import compiled_step
from trainer.circuit.drive import slots_of
from trainer.circuit.faults import faulty_circuit
from trainer.circuit.harness import circuit_of
from trainer.circuit.netlist import netlist_of
from trainer.circuit.profile import Profile
from trainer.circuit.solve import solve_test
from trainer.reasoning.advice.planning import ranked
from trainer.reasoning.case_facts import CaseFacts
from trainer.reasoning.reasoner import Reasoner
from trainer.sound.render import Bed, render

REPEATS = 5


def best_s(work: Callable[[], object]) -> float:
    """Return the least of several runs, after one to warm up: the others hold the machine's noise."""
    work()
    times = []
    for _ in range(REPEATS):
        start = time.perf_counter()
        work()
        times.append(time.perf_counter() - start)
    return min(times)


def tell(what: str, value: float, unit: str, other: str, other_value: float, ratio: float) -> None:
    """Print one figure."""
    line = {"what": what, "value": round(value, 4), "unit": unit, "other": other, "other_value": round(other_value, 4),
            "ratio": round(ratio, 2)}  # fmt: skip
    print(json.dumps(line), flush=True)


def solve_and_render(profile: Profile) -> float:
    """Tell how fast a whole test is solved and rendered, beside its own length."""
    driven_s = profile.schedule.together_s + len(profile.cylinders) * profile.schedule.slot_s
    seconds = best_s(lambda: render(solve_test(circuit_of(profile)), "front", Bed(), 1))
    tell(
        f"solve and render, {profile.name}",
        seconds,
        "s",
        "the sound's own length of drive",
        driven_s,
        driven_s / seconds,
    )
    return seconds


def twelve() -> Profile:
    """Return the first engine grown to twelve cylinders."""
    plain = yaml.safe_load((scenarios_folder() / "profiles" / "north_v8.yaml").read_text("utf-8"))
    odd, even = [1, 3, 5, 7, 9, 11], [2, 4, 6, 8, 10, 12]
    plain |= {"name": "twelve", "banks": {"right": odd, "left": even}, "firing_order": list(range(1, 13))}
    plain["wiring"]["outputs"] = {"right": list(odd), "left": list(even)}
    plain["wiring"]["connectors"] = {
        f"plug_{n}": {"injectors": [n, n + 2], "feed_pins": "shared", "engine_length_m": 0.9, "heater_pin": False}
        for n in (1, 5, 9, 2, 6, 10)
    }
    plain["wiring"]["under_cover_length_m"] = dict.fromkeys(range(1, 13), 0.3)
    plain["module"]["trip"]["current_a"] = 90.0
    return profile_from(yaml.safe_dump(plain), "twelve")


def rendered_by_numpy() -> None:
    """Tell the first engine's whole test by NumPy alone: with a bed never rendered before, and with one that is kept."""
    driven_s = NORTH.schedule.together_s + len(NORTH.cylinders) * NORTH.schedule.slot_s
    took: dict[str, list[float]] = {"a new bed": [], "a kept bed": []}
    with patch.object(compiled_step, "available", return_value=False):
        render(solve_test(circuit_of(NORTH)), "front", Bed(), 0)
        for seed in range(1, REPEATS + 1):
            # each new seed is a bed not rendered before; its second rendering finds it kept
            for times in took.values():
                start = time.process_time()
                render(solve_test(circuit_of(NORTH)), "front", Bed(), seed)
                times.append(time.process_time() - start)
    for bed, times in took.items():
        tell(f"solve and render by NumPy, {NORTH.name}, {bed}, processor time", min(times), "s",
             "the sound's own length of drive", driven_s, driven_s / min(times))  # fmt: skip


def compiled_and_numpy() -> None:
    """Tell the test of the first engine, and its whole universe, by the compiled step and by NumPy."""
    with patch.object(compiled_step, "available", return_value=False):
        plain = best_s(lambda: solve_test(circuit_of(NORTH)))
        start = time.process_time()
        solved_universe(NORTH, 20.0, None)
        plain_universe = time.process_time() - start
    quick = best_s(lambda: solve_test(circuit_of(NORTH)))
    start = time.process_time()
    solved_universe(NORTH, 20.0, None)
    universe = time.process_time() - start
    tell("solve a V8 test, compiled", quick, "s", "NumPy", plain, plain / quick)
    tell("cold universe, compiled, processor time", universe, "s", "NumPy", plain_universe, plain_universe / universe)


def against_ngspice() -> None:
    """Tell the same pulses in ngspice: at the loosest tolerance within 1 % (measured: 0.6 %), and at our own error."""
    circuit, slots = circuit_of(NORTH), slots_of(NORTH)
    ours = best_s(lambda: solve_test(circuit))
    pulses = len(solve_test(circuit).pulses)
    for name, tolerance, step in (("loosest within 1 %", "1e-2", "5e-5"), ("as near as ours", "3e-3", "1e-5")):
        with tempfile.TemporaryDirectory() as folder:
            start = time.perf_counter()
            for slot in slots:
                netlist = netlist_of(circuit, slot, 0.006, "bench").replace("reltol=2e-4", f"reltol={tolerance}")
                run_ngspice(netlist.replace(".tran 2e-6 0.006 0 2e-6", f".tran {step} 0.006 0 {step}"), Path(folder))
            theirs = (time.perf_counter() - start) * pulses
        tell("solve a V8 test", ours, "s", f"ngspice, {name}, {pulses} pulses of 9 slots", theirs, theirs / ours)


def process_figures() -> None:
    """Tell start-up time and peak memory of whole processes, beside a bare interpreter."""
    environment = {**os.environ}
    bare = best_s(lambda: subprocess.run([sys.executable, "-c", "pass"], check=True))
    call = [sys.executable, "-m", "trainer"]
    helped = best_s(lambda: subprocess.run([*call, "--help"], check=True, capture_output=True))
    tell("--help from a cold start", helped, "s", "a bare interpreter", bare, helped / bare)
    with tempfile.TemporaryDirectory() as folder:
        hear = [*call, "hear", "faint_hum_on_three", "-o", str(Path(folder) / "a.wav")]
        heard = best_s(lambda: subprocess.run(hear, check=True, capture_output=True, env=environment))
        tell("hear of a shipped case from a cold start", heard, "s", "--help", helped, heard / helped)
        slow = [*call, "hear", "fades_in_the_burst", "-o", str(Path(folder) / "a.wav")]
        faded = best_s(lambda: subprocess.run(slow, check=True, capture_output=True, env=environment))
        tell("hear of the case with most pulses", faded, "s", "hear of a common case", heard, faded / heard)
    peak_mb = resource.getrusage(resource.RUSAGE_CHILDREN).ru_maxrss / 1024.0
    tell("peak memory of these processes", peak_mb, "MB", "what is allowed", 300.0, peak_mb / 300.0)


def reasoning_figures() -> None:
    """Tell what the universe of all single faults costs, beside each hypothesis solved alone, and what it then gives."""
    start = time.perf_counter()
    universe = solved_universe(NORTH, 20.0, None)
    cold = time.perf_counter() - start
    faults = universe.faults[:: len(universe.faults) // 20]
    start = time.perf_counter()
    for one in faults:
        solve_test(faulty_circuit(NORTH, one))
    alone = (time.perf_counter() - start) / len(faults) * len(universe.faults)
    tell(f"universe of {len(universe.faults)} hypotheses of a V8, everything on the menu, cold", cold, "s",
         "only the test of each hypothesis solved alone (20 of them, scaled)", alone, alone / cold)  # fmt: skip
    solved = len(universe.expectations.equivalents.solved)
    slots = len(universe.faults) * (len(NORTH.cylinders) + 1)
    tell("slots solved", solved, "slots", "slots of all hypotheses' tests as they come", slots, slots / solved)
    with tempfile.TemporaryDirectory() as folder:
        solved_universe(NORTH, 20.0, Path(folder))
        warm = best_s(lambda: solved_universe(NORTH, 20.0, Path(folder)))
    tell("the same from disk", warm, "s", "cold", cold, cold / warm)
    grown, small = twelve(), solved_universe(RIDGE, 20.0, None)
    times = {}
    for profile in (RIDGE, grown):
        start = time.perf_counter()
        solved_universe(profile, 20.0, None)
        times[profile.name] = time.perf_counter() - start
    tell("universe growth from 6 to 12 cylinders", times["twelve"], "s", f"6 cylinders, {len(small.faults)} hypotheses",
         times[RIDGE.name], times["twelve"] / times[RIDGE.name])  # fmt: skip
    reasoner = Reasoner(CaseFacts(NORTH, 20.0, (), frozenset(NORTH.minutes), 32.0), universe)
    hear = next(test for test in reasoner.tests if str(test.name) == "hear")
    shown = reasoner.truth_answers(hear.questions)
    reasoner.belief(shown)
    update = best_s(lambda: reasoner.belief(shown).probability)
    tell("posterior after a whole test heard", update, "s", "what is allowed", 0.005, 0.005 / update)
    prior = reasoner.hypotheses.prior
    greedy = best_s(lambda: ranked(reasoner.channels, prior, frozenset(), NORTH.minutes, ahead=False))
    ranking = best_s(lambda: reasoner.next_tests(reasoner.belief({}), frozenset(), ()))
    tell(
        f"ranking of all {len(reasoner.tests)} tests, one step ahead",
        ranking,
        "s",
        "without looking ahead",
        greedy,
        ranking / greedy,
    )


def strategy_figures(drawn: int) -> None:
    """Tell minutes to a proved finding over drawn faults: by information, by the textbook, at random, by codes alone."""
    for profile in (NORTH, HARBOUR, FIELD, RIDGE):
        universe = solved_universe(profile, 20.0, None)
        reasoner = Reasoner(CaseFacts(profile, 20.0, (), frozenset(profile.minutes), 32.0), universe)
        outcomes = compared(profile, reasoner.hypotheses, reasoner.channels, drawn, 7)
        best = outcomes["best path"]
        for name, one in outcomes.items():
            tell(
                f"{profile.name}, {name}: mean of {drawn}; median {one.median_minutes:.0f} min, proved {one.proved:.2f}, "
                f"wrong {one.wrong:.2f}",
                one.mean_minutes, "min", "best path", best.mean_minutes, one.mean_minutes / best.mean_minutes,
            )  # fmt: skip


def main() -> None:
    """Print every figure; what is shipped solved is solved here."""
    os.environ[SOLVED] = "none"
    if "--strategies" in sys.argv:
        strategy_figures(200)
        return
    # first of all: a child begins with its parent's memory, and reasoning grows that
    process_figures()
    reasoning_figures()
    six = solve_and_render(RIDGE)
    eight = solve_and_render(NORTH)
    solve_and_render(HARBOUR)
    grown = solve_and_render(twelve())
    tell("growth from 6 to 8 cylinders", eight, "s", "6 cylinders", six, eight / six)
    tell("growth from 6 to 12 cylinders", grown, "s", "6 cylinders", six, grown / six)
    circuit = circuit_of(NORTH)
    coarse, fine = (best_s(lambda n=n: solve_test(circuit, steps_per_sample=n)) for n in (2, 4))
    tell("solve at 192 kHz", fine, "s", "at 96 kHz", coarse, fine / coarse)
    single = best_s(lambda: [solve_test(circuit, [slot]) for slot in slots_of(NORTH)])
    tell("all slots as one array", coarse, "s", "slot after slot", single, single / coarse)
    rendered_by_numpy()
    compiled_and_numpy()
    against_ngspice()


if __name__ == "__main__":
    main()
