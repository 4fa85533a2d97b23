"""Profile files: read, checked, and made into the profile as a value."""

from __future__ import annotations

import hashlib
import json
from pathlib import Path

from trainer.cases.files.forms import filled
from trainer.cases.files.yaml_text import YamlText, read_text
from trainer.cases.profiles.profile_checks import contradictions
from trainer.cases.profiles.profile_form import ProfileForm
from trainer.circuit.profile import (
    Body,
    Connector,
    DriveModule,
    FeedTrip,
    Meter,
    Mode,
    Profile,
    Room,
    Schedule,
    Solenoid,
    Wiring,
)
from trainer.errors import ProblemsFoundError


def profile_from(content: str, file: str) -> Profile:
    """Return the profile in a file's content; raises ProblemsFoundError with every problem in it."""
    parsed = YamlText(content, file)
    form = filled(ProfileForm, parsed)
    problems = [parsed.problem(path, found, allowed, mend) for path, found, allowed, mend in contradictions(form)]
    if problems:
        raise ProblemsFoundError(problems)
    return _profile(form)


def read_profile(path: Path) -> Profile:
    """Read a profile file; raises ProblemsFoundError."""
    return profile_from(read_text(path), path.name)


def _profile(form: ProfileForm) -> Profile:
    plain = form.model_dump(mode="json", exclude={"title"})
    digest = hashlib.sha256(json.dumps(plain, sort_keys=True).encode("utf-8")).hexdigest()
    module = form.module.model_dump(exclude={"trip"})
    wiring = form.wiring
    return Profile(
        name=form.name,
        title=form.title,
        digest=digest,
        banks={name: tuple(numbers) for name, numbers in form.banks.items()},
        firing_order=tuple(form.firing_order),
        codes=form.codes,
        wiring=Wiring(
            outputs={name: tuple(sorted(numbers)) for name, numbers in wiring.outputs.items()},
            connectors=tuple(
                Connector(name, tuple(sorted(c.injectors)), c.feed_pins, c.engine_length_m, c.heater_pin)
                for name, c in wiring.connectors.items()
            ),
            **wiring.model_dump(exclude={"outputs", "connectors"}),
        ),
        module=DriveModule(trip=FeedTrip(**form.module.trip.model_dump()), **module),
        schedule=Schedule(**form.test.model_dump()),
        solenoid=Solenoid(**form.solenoid.model_dump()),
        body=Body(
            modes=tuple(Mode(**mode.model_dump()) for mode in form.body.modes),
            **form.body.model_dump(exclude={"modes"}),
        ),
        room=Room(**form.room.model_dump()),
        meter=Meter(**form.meter.model_dump()),
        minutes=dict(form.minutes),
        priors=dict(form.priors),
        kinds=dict(form.kinds),
    )
