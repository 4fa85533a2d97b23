"""Posteriors on the program's own tables against pgmpy (MIT), a general library of Bayesian networks."""

from __future__ import annotations

import warnings
from types import SimpleNamespace
from typing import Any

import numpy as np
import pytest

from tests.universes import reasoner_of
from trainer.reasoning.advice.information import entropy_bits

ASKED = ("hear", "module_pairs", "trace:3")


@pytest.fixture(scope="module")
def networks() -> Any:
    """Import pgmpy: two seconds, for the process that asks it only."""
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        from pgmpy.factors.discrete import TabularCPD
        from pgmpy.inference import VariableElimination
        from pgmpy.models import DiscreteBayesianNetwork
    return SimpleNamespace(
        TabularCPD=TabularCPD, VariableElimination=VariableElimination, DiscreteBayesianNetwork=DiscreteBayesianNetwork
    )


@pytest.mark.filterwarnings("ignore")
@pytest.mark.parametrize("outcome", [0, 1, 5])
def test_the_posterior_after_three_tests_is_pgmpys(networks: Any, outcome: int) -> None:
    reasoner = reasoner_of("faint_hum_on_three")
    channels = [next(c for c in reasoner.channels if str(c.test.name) == name) for name in ASKED]
    rows = np.argsort(-reasoner.hypotheses.prior)[:200]
    prior = reasoner.hypotheses.prior[rows] / reasoner.hypotheses.prior[rows].sum()
    network = networks.DiscreteBayesianNetwork([("fault", name) for name in ASKED])
    network.add_cpds(networks.TabularCPD("fault", len(rows), prior[:, None]))
    evidence, ours = {}, prior.copy()
    for channel in channels:
        table = channel.table[channel.label[rows]]
        name = str(channel.test.name)
        network.add_cpds(
            networks.TabularCPD(name, table.shape[1], table.T, evidence=["fault"], evidence_card=[len(rows)])
        )
        evidence[name] = min(outcome, table.shape[1] - 1)
        ours = ours * table[:, evidence[name]]
    theirs = networks.VariableElimination(network).query(["fault"], evidence=evidence, show_progress=False).values
    assert theirs == pytest.approx(ours / ours.sum(), abs=1e-9)


@pytest.mark.filterwarnings("ignore")
def test_expected_information_is_the_fall_of_entropy_that_pgmpy_finds(networks: Any) -> None:
    reasoner = reasoner_of("faint_hum_on_three")
    channel = next(c for c in reasoner.channels if str(c.test.name) == "trace:3")
    prior, table = reasoner.hypotheses.prior, channel.table[channel.label]
    network = networks.DiscreteBayesianNetwork([("fault", "trace")])
    network.add_cpds(networks.TabularCPD("fault", len(prior), prior[:, None]))
    network.add_cpds(
        networks.TabularCPD("trace", table.shape[1], table.T, evidence=["fault"], evidence_card=[len(prior)])
    )
    infer = networks.VariableElimination(network)
    chances = infer.query(["trace"], show_progress=False).values
    left = sum(
        float(chance) * entropy_bits(infer.query(["fault"], evidence={"trace": place}, show_progress=False).values)
        for place, chance in enumerate(chances)
    )
    assert entropy_bits(prior) - left == pytest.approx(channel.bits(prior), abs=1e-6)
