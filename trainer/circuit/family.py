"""Makes pulses differ a little from one to the next, as real ones do, in supply voltage, friction and bounce.

A slot is solved once with its whole network. Each plate in it that moves, or could, is then stepped again VARIANTS
times behind what the network gives its coil: the voltage of the solved pulse, changed by the supply's ripple, less the
drop of the changed current in the resistance that the coil sees. The variant with nothing changed is the solved pulse.
"""

from __future__ import annotations

from collections.abc import Collection, Sequence
from dataclasses import dataclass, fields, replace

import numpy as np

from trainer.arrays import Floats, Integers
from trainer.circuit.chance import Stream
from trainer.circuit.drive import OutputLaw, pulse_law, quiet_law
from trainer.circuit.solenoid import Magnets, magnets_of_rows
from trainer.circuit.stepping import SWITCH_PARTS, Row

VARIANTS = 16

RIPPLE, FRICTION, DRAG, BOUNCE = 0.005, 0.028, 0.02, 0.15
"""One standard deviation, from pulse to pulse, of the supply's voltage, of the force that holds a plate on its seat, of
its viscous loss and of what its stops damp, each as a share: from memory."""

MOST_DEVIATIONS = 2.0
NEAR_LIFT = 0.6
"""A plate is stepped again where the pull comes to this share of what holds it on its seat."""

REST_SPEED_M_S, CHECK_STEPS = 2e-3, 24


@dataclass(frozen=True, slots=True)
class Families:
    """Pulses of plates in slots: shapes (family,) for slot and column, (step, family, variant) for motion and force.

    `lift` is how far each variant's plate came, as a share of its lift, shape (family, variant).
    """

    slot: Integers
    column: Integers
    acceleration_m_s2: Floats
    force_n: Floats
    position_m: Floats
    lift: Floats

    def of_slot(self, slot: int) -> list[int]:
        """Return the families of one slot, by index."""
        return [int(place) for place in np.flatnonzero(self.slot == slot)]

    def of(self, slots: Collection[int]) -> Families:
        """Return the families of some slots."""
        kept = np.flatnonzero(np.isin(self.slot, sorted(slots)))
        return Families(
            self.slot[kept], self.column[kept], self.acceleration_m_s2[:, kept], self.force_n[:, kept],
            self.position_m[:, kept], self.lift[kept],
        )  # fmt: skip

    def joined(self, others: Families) -> Families:
        """Return these families and others; the shorter pulses stay at rest at the end."""
        if not self.slot.size or not others.slot.size:
            return self if self.slot.size else others
        steps = max(len(self.force_n), len(others.force_n))
        traces = []
        for name in ("acceleration_m_s2", "force_n", "position_m"):
            parts = [getattr(one, name) for one in (self, others)]
            held = [part[-1:] if name != "acceleration_m_s2" else np.zeros_like(part[-1:]) for part in parts]
            padded = [
                np.concatenate([part, np.repeat(last, steps - len(part), axis=0)])
                for part, last in zip(parts, held, strict=True)
            ]
            traces.append(np.concatenate(padded, axis=1))
        slot, column, lift = (
            np.concatenate([getattr(self, name), getattr(others, name)]) for name in ("slot", "column", "lift")
        )
        return Families(slot, column, traces[0], traces[1], traces[2], lift)


_NONE, _NOTHING = np.zeros(0, dtype=np.int64), np.zeros((0, 0, VARIANTS))
NO_FAMILIES = Families(_NONE, _NONE, _NOTHING, _NOTHING, _NOTHING, np.zeros((0, VARIANTS)))


@dataclass(frozen=True, slots=True)
class Last:
    """A slot's last solved pulse and the feeds that were on in it; shapes (step, cylinder), the rail (step,)."""

    row: Row
    live: frozenset[str]
    coil_a: Floats
    return_a: Floats
    linkage_wb: Floats
    position_m: Floats
    force_n: Floats
    rail_v: Floats


@dataclass(frozen=True, slots=True)
class _Coils:
    """What drives each family's coil, over time; shapes (step, family)."""

    volt: Floats
    ampere: Floats
    per_ripple_v: Floats
    ohm: Floats


def families_of(lasts: Sequence[Last], step_s: float, on_steps: int) -> Families:
    """Step again every plate that lifts or nearly does, once for each variant; `lasts` are of one profile."""
    period_steps = round(1.0 / lasts[0].row.circuit.profile.schedule.pulses_per_s / step_s)
    cylinders = lasts[0].row.circuit.profile.cylinders
    magnets = magnets_of_rows([[one.row.circuit.solenoids[n] for n in cylinders] for one in lasts])
    holding = magnets.preload_n + magnets.stick_n
    pulled = np.array([one.force_n.max(axis=0) for one in lasts])
    slots, columns = np.nonzero(pulled >= NEAR_LIFT * holding)
    if not len(slots):
        return NO_FAMILIES
    coils = _coils(lasts, slots, columns, step_s, on_steps, period_steps)
    names = [(lasts[0].row.circuit.profile.name, cylinders[column]) for column in columns]
    chances = {name: _chances(*name) for name in dict.fromkeys(names)}
    ripple, friction, drag, bounce = np.moveaxis(np.array([chances[name] for name in names]), 1, 0)
    own = _picked(magnets, slots, columns)
    varied = replace(
        own, preload_n=own.preload_n * (1.0 + FRICTION * friction), viscous=own.viscous * (1.0 + DRAG * drag),
        stop_damping=own.stop_damping * (1.0 + BOUNCE * bounce),
    )  # fmt: skip
    start = [(one.linkage_wb[0], one.position_m[0], one.position_m[1] - one.position_m[0]) for one in lasts]
    linkage, position, way = np.moveaxis(np.array(start), 1, 0)[:, slots, columns]
    state = [np.repeat(part[:, None], VARIANTS, axis=1) for part in (linkage, position, way / step_s)]
    acceleration, force, way = _step(varied, coils, RIPPLE * ripple, state, step_s, on_steps)
    return Families(slots, columns, acceleration, force, way, way.max(axis=0) / (2.0 * own.half_lift_m))


def _chances(name: str, cylinder: int) -> Floats:
    """Return each variant's offset in standard deviations, shape (what, variant).

    Each row has one value from every sixteenth of a normal distribution, in random order.
    """
    chance = Stream(0, f"family of {name} {cylinder}")
    spread = np.sort(Stream(0, "spread of a family").normal(1024)).reshape(VARIANTS, -1).mean(axis=1)
    spread = np.clip(spread - spread.mean(), -MOST_DEVIATIONS, MOST_DEVIATIONS)
    return np.array([spread[np.argsort(chance.uniform(VARIANTS))] for _what in range(4)])


def _picked(magnets: Magnets, slots: Integers, columns: Integers) -> Magnets:
    names = [field.name for field in fields(magnets) if field.name != "doublings"]
    return replace(magnets, **{name: getattr(magnets, name)[slots, columns][:, None] for name in names})


def _coils(
    lasts: Sequence[Last], slots: Integers, columns: Integers, step_s: float, on_steps: int, period_steps: int
) -> _Coils:
    """Return what each coil is driven with, held after the end of what was solved."""
    count = len(lasts[0].row.circuit.profile.cylinders)
    used = list(dict.fromkeys(int(slot) for slot in slots))
    driven = [(lasts[slot].row.circuit, lasts[slot].row.slot) for slot in used]
    law = {True: pulse_law(driven), False: quiet_law([circuit for circuit, _slot in driven])}
    parts: list[list[Floats]] = [[], [], [], []]
    for slot, column in zip(slots.tolist(), columns.tolist(), strict=True):
        last, place = lasts[slot], used.index(slot)
        linkage, ampere = _held(last.linkage_wb[:, column], period_steps), _held(last.coil_a[:, column], period_steps)
        volt = np.diff(linkage, append=linkage[-1]) / step_s
        per_ripple, ohm = np.zeros(period_steps), np.empty(period_steps)
        for feeding, steps in ((True, slice(on_steps)), (False, slice(on_steps, period_steps))):
            live = last.live if feeding else frozenset[str]()
            ports = last.row.reductions.of(live)
            back = count + column
            through = _slope(law[feeding], place, column, _held(last.return_a[:, column], period_steps)[steps])
            across = ports.impedance_ohm[column, back] / (ports.impedance_ohm[back, back] + through)
            ohm[steps] = ports.impedance_ohm[column, column] - across * ports.impedance_ohm[back, column]
            rail = _held(last.rail_v, period_steps)[steps]
            per_ripple[steps] = rail * (ports.rail[column] - across * ports.rail[back])
        for part, values in zip(parts, (volt, ampere, per_ripple, ohm), strict=True):
            part.append(values)
    return _Coils(*(np.ascontiguousarray(np.array(part).T) for part in parts))


def _held(values: Floats, steps: int) -> Floats:
    """Return a trace of so many steps, its last value held."""
    return np.concatenate([values, np.full(steps - len(values), values[-1])]) if len(values) < steps else values[:steps]


def _slope(law: OutputLaw, place: int, column: int, current_a: Floats) -> Floats:
    """Return the slope of an output's law at currents, in ohm."""
    away = (current_a - law.centre_a[place, column]) / law.width_a[place, column]
    steep = 1.0 - np.tanh(away) ** 2
    return np.asarray(law.ohm[place, column] + law.swing_v[place, column] * steep / law.width_a[place, column])


def _step(
    magnets: Magnets, coils: _Coils, ripple: Floats, state: Sequence[Floats], step_s: float, on_steps: int
) -> tuple[Floats, Floats, Floats]:
    """Step all variants until every plate rests; return accelerations, forces and positions."""
    linkage, position, speed = state
    count = len(coils.volt)
    acceleration, force, way = (np.empty((count, *linkage.shape)) for _ in range(3))
    rise = np.diff(coils.ampere, axis=0, append=coils.ampere[-1:])
    ends = np.full(linkage.shape[0], count)
    for step in range(count):
        # right after a switch the solver takes a step in parts, and so it is taken here
        parts = SWITCH_PARTS if step in (0, on_steps) else 1
        part_s, before = step_s / parts, speed
        ohm, volt = coils.ohm[step][:, None], coils.volt[step][:, None] + ripple * coils.per_ripple_v[step][:, None]
        for part in range(parts):
            ampere = coils.ampere[step][:, None] + (part + 0.5) / parts * rise[step][:, None]
            amperes, slope, by_motion, pull = magnets.magnetise(linkage, position)
            stop, damping = magnets.stop_force_n(position)
            push = pull - magnets.preload_n - magnets.spring * position + stop
            loss = magnets.viscous + damping
            speed = speed - np.expm1(-part_s / magnets.mass_kg * loss) * (push / loss - speed)
            moved = part_s * speed
            position = position + moved
            # how far the current is off the solved one in the middle of this part, its own motion counted
            aside = amperes + 0.5 * by_motion * moved - ampere
            linkage = linkage + part_s * (volt - ohm * aside) / (1.0 + 0.5 * part_s * ohm * slope)
        acceleration[step], force[step], way[step] = (speed - before) / step_s, pull, position
        if step > on_steps and step % CHECK_STEPS == 0:
            still = (np.abs(speed) < REST_SPEED_M_S).all(axis=1) & (pull < 1.0).all(axis=1)
            ends[still & (ends == count)] = step + 1
            if (ends < count).all():
                break
    # what is at rest stays as it is, however long the slowest of the others is followed
    for family, end in enumerate(ends):
        acceleration[end:, family] = 0.0
        force[end:, family], way[end:, family] = force[end - 1, family], way[end - 1, family]
    end = int(ends.max())
    return acceleration[:end], force[:end], way[:end]
