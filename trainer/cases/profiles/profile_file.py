"""Profile files: read, checked, and made into the profile as a value."""

from __future__ import annotations

import hashlib
import json
from dataclasses import asdict, fields
from pathlib import Path
from typing import Any

from trainer.cases.files.validation import validated
from trainer.cases.files.yaml_text import YamlText, read_text
from trainer.cases.profiles.profile_checks import contradictions
from trainer.cases.profiles.profile_schema import ProfileFile, WiringInFile
from trainer.circuit.profile import Connector, Profile, Wiring
from trainer.errors import ProblemsFoundError

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
    wiring = _fields(read.wiring) | {
        "outputs": {name: tuple(sorted(numbers)) for name, numbers in read.wiring.outputs.items()},
        "connectors": tuple(
            Connector(name, tuple(sorted(one.injectors)), one.feed_pins, one.engine_length_m, one.heater_pin)
            for name, one in read.wiring.connectors.items()
        ),
    }
    own = _fields(read) | {"wiring": Wiring(**wiring), "schedule": read.test, "digest": _digest(read)}
    del own["test"]
    return Profile(**own)


def _fields(read: ProfileFile | WiringInFile) -> dict[str, Any]:
    return {field.name: getattr(read, field.name) for field in fields(read)}


def _digest(read: ProfileFile) -> str:
    """Return a hash of everything in a file but its title."""
    plain = {"form": FORMAT, **asdict(read)}
    del plain["title"]
    # keys are words before they are sorted: 10 comes before 2
    plain["wiring"]["under_cover_length_m"] = {str(n): m for n, m in read.wiring.under_cover_length_m.items()}
    return hashlib.sha256(json.dumps(plain, sort_keys=True).encode("utf-8")).hexdigest()
