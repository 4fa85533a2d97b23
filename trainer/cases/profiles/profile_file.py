"""Reads and checks profile files, and builds the `Profile`."""

from __future__ import annotations

import hashlib
import json
from dataclasses import asdict, replace
from pathlib import Path

from trainer.cases.files.validation import validated
from trainer.cases.files.yaml_text import YamlText, read_text
from trainer.cases.profiles.profile_checks import contradictions, with_later_places
from trainer.cases.profiles.profile_schema import ProfileFile
from trainer.circuit.faults import LATER_WEIGHTS
from trainer.circuit.profile import DISCHARGE_S, STICK_N, SUPPLY_LOW_SHARE, Profile, Wiring
from trainer.errors import ProblemsFoundError
from trainer.instruments.bench_tests import USUAL_MINUTES

FORMAT = "profile/1"


def profile_from(content: str, file: str) -> Profile:
    """Return the profile in a file's content; raises ProblemsFoundError with every problem in it."""
    parsed = YamlText(content, file)
    read = validated(ProfileFile, parsed, FORMAT)
    problems = [parsed.problem(path, found, allowed, mend) for path, found, allowed, mend in contradictions(read)]
    if problems:
        raise ProblemsFoundError(problems)
    return _profile(read)


def read_profile(path: Path) -> Profile:
    """Read a profile file; raises ProblemsFoundError."""
    return profile_from(read_text(path), path.name)


def _profile(read: ProfileFile) -> Profile:
    return Profile(
        name=read.name,
        title=read.title,
        digest=_digest(read),
        banks=read.banks,
        firing_order=read.firing_order,
        codes=read.codes,
        wiring=_in_order(read.wiring),
        module=read.module,
        schedule=read.test,
        solenoid=read.solenoid,
        body=read.body,
        room=read.room,
        meter=read.meter,
        minutes={**{str(name): least for name, least in USUAL_MINUTES.items()}, **read.minutes},
        priors=with_later_places(read.priors),
        kinds={**{kind.value: weight for kind, weight in LATER_WEIGHTS.items()}, **read.kinds},
        translations=tuple((read.translations or {}).items()),
    )


def _in_order(wiring: Wiring) -> Wiring:
    """Return the wiring with every list of cylinders in numeric order."""
    return replace(
        wiring,
        outputs={name: tuple(sorted(numbers)) for name, numbers in wiring.outputs.items()},
        connectors={
            name: replace(one, injectors=tuple(sorted(one.injectors))) for name, one in wiring.connectors.items()
        },
    )


def _digest(read: ProfileFile) -> str:
    """Return a hash of everything in a file but its title in every language."""
    plain = {"form": FORMAT, **asdict(read)}
    del plain["title"], plain["translations"]
    # as text before sorting, which puts 10 before 2 and keeps digests as they are
    plain["wiring"]["under_cover_length_m"] = {str(n): m for n, m in read.wiring.under_cover_length_m.items()}
    # what files of earlier versions do not say is left out, so that their digests and what was signed with them hold
    if read.module.supply_low_share == SUPPLY_LOW_SHARE:
        del plain["module"]["supply_low_share"]
    if read.module.discharge_s == DISCHARGE_S:
        del plain["module"]["discharge_s"]
    for connector in plain["wiring"]["connectors"].values():
        if connector["in_gasket"]:
            del connector["in_gasket"]
    if read.solenoid.stick_n == STICK_N:
        del plain["solenoid"]["stick_n"]
    for mode in plain["body"]["modes"]:
        if mode["elastic"] is None:
            del mode["elastic"]
    return hashlib.sha256(json.dumps(plain, sort_keys=True).encode("utf-8")).hexdigest()
