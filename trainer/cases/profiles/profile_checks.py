"""Checks between the fields of a profile: numbering, wiring, physics, prices."""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Mapping

from trainer.cases.profiles.profile_schema import ProfileFile
from trainer.circuit.codes import MOST_GROUPS
from trainer.circuit.elements import Location
from trainer.circuit.fault import FaultKind
from trainer.circuit.faults import LATER_WEIGHTS
from trainer.circuit.profile import PASSES
from trainer.circuit.solve import SAMPLE_RATE_HZ, STEPS_PER_SAMPLE
from trainer.errors import Said, Sentence
from trainer.instruments.bench_tests import USUAL_MINUTES, Operation
from trainer.words.languages import LANGUAGES

MOST_P02XX = 12
"""SAE J2012 names twelve cylinders in its P0200 series."""

WORDS_OF_POINTS = {
    "module", "plug", "engine", "cover", "harness", "injector",
    "connected", "firm", "live", "leads", "feed", "return",
}  # fmt: skip
"""Words with which the faces name a place to measure; no connector may have such a name."""

MOST_SWING = 0.7
"""How far a plate on its stop may swing in one step, in radian; from 2 on, the step would run away."""

PRIOR_NAMES = {PASSES, *(location.value for location in Location)}
"""The names in `priors`: every place, and a circuit that passes."""

LATER_SHARES = {Location.MODULE_POWER.value: 0.03}
"""The share of a place where a file was written before it was known; the other shares give way."""


def with_later_places(priors: Mapping[str, float]) -> dict[str, float]:
    """Return priors with the places that a file does not name yet."""
    later = {place: share for place, share in LATER_SHARES.items() if place not in priors}
    left = 1.0 - sum(later.values())
    return {**({name: left * share for name, share in priors.items()} if later else priors), **later}


Contradiction = tuple[list[str], Said, Said, Said]
"""Path of the field, what was found, what is allowed, the mend."""


def contradictions(profile: ProfileFile) -> Iterator[Contradiction]:
    """Yield every contradiction in a profile."""
    yield from _numbering(profile)
    yield from _wiring(profile)
    yield from _physics(profile)
    yield from _prices(profile)
    yield from unknown_languages(profile.translations or ())


def unknown_languages(translations: Iterable[str]) -> Iterator[Contradiction]:
    """Yield a problem for each language that the trainer does not speak."""
    for language in translations:
        if language not in LANGUAGES:
            mend = Sentence("file.take_the_field_out")
            yield ["translations", language], Sentence("file.an_unknown_field"), ", ".join(LANGUAGES), mend


def _numbers(profile: ProfileFile) -> list[int]:
    return [n for bank in profile.banks.values() for n in bank]


def _numbering(profile: ProfileFile) -> Iterator[Contradiction]:
    numbers = _numbers(profile)
    if sorted(numbers) != list(range(1, len(numbers) + 1)):
        yield (
            ["banks"],
            str(sorted(numbers)),
            Sentence("file.every_number_from_1_once"),
            Sentence("file.number_the_cylinders_without_gap_or_double"),
        )
    if sorted(profile.firing_order) != sorted(numbers):
        yield (
            ["firing_order"],
            str(list(profile.firing_order)),
            Sentence("file.every_cylinder_once"),
            Sentence("file.list_each_number_of_the_banks_once"),
        )
    if profile.codes == "p02xx" and len(numbers) > MOST_P02XX:
        allowed = Sentence("file.one_to", last=MOST_P02XX)
        yield ["codes"], profile.codes, allowed, Sentence("file.take_spn_fmi")
    # an output of its own for each injector needs no group in J2012; J1939 has no other number for its trip
    outputs, most = profile.wiring.outputs.values(), MOST_GROUPS[profile.codes]
    groups = [row for row, fed in enumerate(outputs, 1) if len(fed) > 1 or profile.codes == "spn_fmi"]
    if max(groups, default=0) > most:
        allowed = Sentence("file.at_most", count=most)
        yield ["wiring", "outputs"], str(max(groups)), allowed, Sentence("file.fewer_feed_groups")


def _wiring(profile: ProfileFile) -> Iterator[Contradiction]:
    numbers = _numbers(profile)
    served = [n for connector in profile.wiring.connectors.values() for n in connector.injectors]
    fed = [n for output in profile.wiring.outputs.values() for n in output]
    for field, listed in (("connectors", served), ("outputs", fed)):
        if sorted(listed) != sorted(numbers):
            yield (
                ["wiring", field],
                str(sorted(listed)),
                Sentence("file.every_cylinder_once"),
                Sentence("file.give_each_injector_exactly_one"),
            )
    for name, connector in profile.wiring.connectors.items():
        behind = [output for output, feeds in profile.wiring.outputs.items() if set(connector.injectors) & set(feeds)]
        if len(behind) > 1:
            yield (
                ["wiring", "connectors", name, "injectors"], Sentence("file.fed_by", outputs=", ".join(behind)),
                Sentence("file.injectors_of_one_feed_output"), Sentence("file.split_the_connector_or_the_outputs"),
            )  # fmt: skip
    if set(profile.wiring.under_cover_length_m) != set(numbers):
        found = str(sorted(profile.wiring.under_cover_length_m))
        yield (
            ["wiring", "under_cover_length_m"],
            found,
            Sentence("file.a_length_for_every_cylinder"),
            Sentence("file.list_each_number_once"),
        )
    for kind, names, taken in (
        ("banks", profile.banks, {"front"}),
        ("connectors", profile.wiring.connectors, WORDS_OF_POINTS),
    ):
        for name in taken & set(names):
            path = ["banks", name] if kind == "banks" else ["wiring", kind, name]
            yield path, name, Sentence("file.another_name"), Sentence("file.choose_another_name")


def _physics(profile: ProfileFile) -> Iterator[Contradiction]:
    stiffness = profile.solenoid.stop_n_per_m + profile.solenoid.spring_n_per_m
    swing = math.sqrt(stiffness / profile.solenoid.mass_kg) / (SAMPLE_RATE_HZ * STEPS_PER_SAMPLE)
    if swing > MOST_SWING:
        found, allowed = Sentence("file.swing", swing=swing), Sentence("file.at_most", count=MOST_SWING)
        yield ["solenoid", "stop_n_per_m"], found, allowed, Sentence("file.softer_stop")
    if profile.module.short_sense_s >= profile.test.pulse_s:
        yield (
            ["module", "short_sense_s"],
            str(profile.module.short_sense_s),
            Sentence("file.within_pulse"),
            Sentence("file.lower_it"),
        )
    if profile.test.pulse_s * profile.test.pulses_per_s > 0.8:
        share = Sentence("file.share_on", share=profile.test.pulse_s * profile.test.pulses_per_s)
        yield ["test", "pulse_s"], share, Sentence("file.at_most_0_8"), Sentence("file.shorten_the_pulse_or_send_fewer")
    if profile.module.open_below_a >= profile.module.limit_a:
        yield (
            ["module", "open_below_a"],
            str(profile.module.open_below_a),
            Sentence("file.below_limit_a"),
            Sentence("file.lower_it"),
        )


def _prices(profile: ProfileFile) -> Iterator[Contradiction]:
    for field, given, wanted in (
        ("minutes", set(profile.minutes) | set(USUAL_MINUTES), set(Operation)),
        ("priors", set(with_later_places(profile.priors)), PRIOR_NAMES),
        ("kinds", {*LATER_WEIGHTS, *profile.kinds}, {kind.value for kind in FaultKind}),
    ):
        if given != wanted:
            odd = sorted(given ^ wanted)
            yield (
                [field],
                Sentence("file.odd", names=", ".join(odd)),
                ", ".join(sorted(wanted)),
                Sentence("file.price_each_once"),
            )
    yield from prior_sum_problems(profile.priors)


def prior_sum_problems(priors: Mapping[str, float]) -> Iterator[Contradiction]:
    """Yield a problem for shares that do not sum to 1."""
    if priors and abs(sum(priors.values()) - 1.0) > 1e-6:
        total = Sentence("file.sum", total=sum(priors.values()))
        yield ["priors"], total, Sentence("file.a_sum_of_1"), Sentence("file.scale_the_shares")
