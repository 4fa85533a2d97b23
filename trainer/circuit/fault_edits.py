"""What each kind of fault does to the elements of a circuit."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable
from dataclasses import replace

from trainer.circuit.elements import (
    OPEN_OHM,
    Circuit,
    Damage,
    Element,
    Location,
    Part,
    Power,
    Rail,
    ReturnDriver,
    Side,
    coil_node,
)
from trainer.circuit.fault import Conditions, Fault
from trainer.circuit.harness import (
    feed_scope,
    injector_plug_node,
    middle_node,
    pass_through_node,
    scope_name,
    seen_from_rail_ohm,
)
from trainer.circuit.oil import thicker
from trainer.circuit.profile import Solenoid

Edit = Callable[[Circuit, Fault, Conditions], Circuit]

FILM_LOADED_OHM = 0.05
"""A film that the drive has broken through: 0.4 V at 8 A (contact voltage after fritting, Holm 1967; from memory)."""


NO_WAY_N_S_PER_M = 4e7
"""A viscous loss in which a plate does not move within a test."""


def segment_name(circuit: Circuit, fault: Fault) -> str:
    """Return the element that a series fault of a stated part sits in; raises KeyError where there is none."""
    scope = scope_name(fault.cylinders)
    if fault.location is Location.COIL:
        return _known(circuit, [f"{Location.COIL}.winding.{scope}"])
    if fault.part is Part.CONTACT:
        return _known(circuit, [f"{fault.location}.contact.{fault.side}.{scope}"])
    runs = [f"{fault.location}.{run}.{fault.side}.{scope}.near" for run in ("wire", "trunk")]
    return _known(circuit, runs)


def _known(circuit: Circuit, names: Iterable[str]) -> str:
    wanted = tuple(names)
    for name in wanted:
        if name in circuit.elements:
            return name
    raise KeyError(wanted[0])


def touch_node(circuit: Circuit, location: Location, side: Side, cylinders: tuple[int, ...]) -> str:
    """Return the node that a short at a place touches; raises KeyError where the profile has no such segment."""
    if location is Location.COIL:
        return coil_node(cylinders[0], side)
    if location is Location.PASS_THROUGH:
        node = pass_through_node(side, cylinders, "cover")
    else:
        node = middle_node(location, side, cylinders)
    trunk = middle_node(location, side, cylinders, "trunk")
    for candidate in (node, trunk):
        if any(candidate in (element.a, element.b) for element in circuit.elements.values()):
            return candidate
    raise KeyError(node)


def _series(circuit: Circuit, fault: Fault, ohm: float, loaded_ohm: float | None = None) -> Circuit:
    name = segment_name(circuit, fault)
    base = circuit.elements[name].ohm
    return circuit.with_resistance(name, base + ohm, None if loaded_ohm is None else base + loaded_ohm)


def _link(circuit: Circuit, fault: Fault, a: str, b: str, ohm: float) -> Circuit:
    name = f"fault.{fault.kind}.{fault.location}.{fault.side}.{scope_name(fault.cylinders)}"
    return circuit.with_element(name, Element(a, b, ohm, fault.location, Part.LINK, fault.side, fault.cylinders))


def opened(circuit: Circuit, fault: Fault, _conditions: Conditions) -> Circuit:
    """No way through."""
    return _series(circuit, fault, OPEN_OHM)


def added_resistance(circuit: Circuit, fault: Fault, _conditions: Conditions) -> Circuit:
    """A joint of so many ohms, under a meter and under the drive alike."""
    return _series(circuit, fault, fault.amount())


def fails_under_load(circuit: Circuit, fault: Fault, _conditions: Conditions) -> Circuit:
    """Good for a meter's milliampere, so many ohms under the drive."""
    return _series(circuit, fault, 0.0, fault.amount())


def film(circuit: Circuit, fault: Fault, _conditions: Conditions) -> Circuit:
    """So many ohms at a meter's volt; the drive's voltage breaks through it."""
    return _series(circuit, fault, fault.amount(), FILM_LOADED_OHM)


def while_moved(inner: Edit) -> Edit:
    """Do the inner edit while the fault's place is moved."""

    def edit(circuit: Circuit, fault: Fault, conditions: Conditions) -> Circuit:
        return inner(circuit, fault, conditions) if conditions.moved == fault.location else circuit

    return edit


def while_hot(inner: Edit) -> Edit:
    """Do the inner edit from a temperature on, which is how bad the fault is.

    The inner edit must not use `fault.amount()`, which is that temperature.
    """

    def edit(circuit: Circuit, fault: Fault, conditions: Conditions) -> Circuit:
        hot = conditions.local_c(fault.location) >= fault.amount()
        return inner(circuit, fault, conditions) if hot else circuit

    return edit


def seen_as(damage: Damage, inner: Edit) -> Edit:
    """Do the inner edit, and leave damage on the contact for eyes to find."""

    def edit(circuit: Circuit, fault: Fault, conditions: Conditions) -> Circuit:
        damaged = {**circuit.damaged, segment_name(circuit, fault): damage}
        return replace(inner(circuit, fault, conditions), damaged=damaged)

    return edit


def until_reseated(circuit: Circuit, fault: Fault, conditions: Conditions) -> Circuit:
    """A bad contact until it was off and on again."""
    cured = segment_name(circuit, fault) in conditions.reseated
    return circuit if cured else _series(circuit, fault, fault.amount())


def across_pair(circuit: Circuit, fault: Fault, _conditions: Conditions) -> Circuit:
    """A bridge between feed and return: of two wires, or of two pins of one plug."""
    (cylinder,) = fault.cylinders
    if fault.location is Location.UNDER_COVER and fault.part is Part.CONTACT:
        feed, back = (injector_plug_node(side, cylinder) for side in (Side.FEED, Side.RETURN))
        return _link(circuit, fault, feed, back, fault.amount())
    shared = fault.location in (Location.ENGINE_HARNESS, Location.PASS_THROUGH)
    scope = feed_scope(circuit.profile, cylinder) if shared else (cylinder,)
    feed = touch_node(circuit, fault.location, Side.FEED, scope)
    back = touch_node(circuit, fault.location, Side.RETURN, (cylinder,))
    return _link(circuit, fault, feed, back, fault.amount())


def touching(other: str) -> Edit:
    """Link the place to another node: ground, battery, a heater."""

    def edit(circuit: Circuit, fault: Fault, _conditions: Conditions) -> Circuit:
        node = touch_node(circuit, fault.location, fault.side or Side.RETURN, fault.cylinders)
        return _link(circuit, fault, node, other, fault.amount())

    return edit


def return_to_return(circuit: Circuit, fault: Fault, _conditions: Conditions) -> Circuit:
    """Link two returns."""
    first, second = fault.cylinders
    a, b = (touch_node(circuit, fault.location, Side.RETURN, (n,)) for n in (first, second))
    return _link(circuit, fault, a, b, fault.amount())


def crossed_returns(circuit: Circuit, fault: Fault, _conditions: Conditions) -> Circuit:
    """Each return in the other one's pin."""
    names = [f"{Location.ENGINE_HARNESS}.wire.{Side.RETURN}.{n}.far" for n in fault.cylinders]
    first, second = (circuit.elements[name] for name in names)
    swapped = circuit.with_element(names[0], replace(first, b=second.b))
    return swapped.with_element(names[1], replace(second, b=first.b))


def shorted_turns(circuit: Circuit, fault: Fault, _conditions: Conditions) -> Circuit:
    """Fewer turns, and the shorted ones a closed ring on the core: seen from the coil, a resistance across it."""
    (cylinder,) = fault.cylinders
    share = fault.amount()
    winding, ring = f"{Location.COIL}.winding.{cylinder}", f"{Location.COIL}.ring.{cylinder}"
    ohm = circuit.elements[winding].ohm
    left = 1.0 - share
    closed = 1.0 / (ohm * left * left / share) + 1.0 / (circuit.elements[ring].ohm * left * left)
    solenoid = circuit.solenoids[cylinder]
    edited = circuit.with_resistance(winding, ohm * left).with_resistance(ring, 1.0 / closed)
    fewer = {cylinder: replace(solenoid, turns=solenoid.turns * left)}
    return replace(edited, solenoids={**circuit.solenoids, **fewer})


def wrong_coil(circuit: Circuit, fault: Fault, _conditions: Conditions) -> Circuit:
    """Another winding in the same space: its resistance goes by the square of its turns, its core's loop with it."""
    (cylinder,) = fault.cylinders
    times = fault.amount()
    winding, ring = f"{Location.COIL}.winding.{cylinder}", f"{Location.COIL}.ring.{cylinder}"
    solenoid = circuit.solenoids[cylinder]
    other = {cylinder: replace(solenoid, turns=solenoid.turns * math.sqrt(times))}
    edited = circuit.with_resistance(winding, circuit.elements[winding].ohm * times)
    edited = edited.with_resistance(ring, circuit.elements[ring].ohm * times)
    return replace(edited, solenoids={**circuit.solenoids, **other})


def return_driver(change: Callable[[ReturnDriver], ReturnDriver]) -> Edit:
    """Change the return outputs of the fault's cylinders."""

    def edit(circuit: Circuit, fault: Fault, _conditions: Conditions) -> Circuit:
        changed = {n: change(circuit.returns[n]) for n in fault.cylinders}
        return replace(circuit, returns={**circuit.returns, **changed})

    return edit


dead_output = return_driver(lambda driver: replace(driver, on_ohm=driver.off_ohm, limit_v=0.0))
stuck_output = return_driver(lambda driver: replace(driver, off_ohm=driver.on_ohm, limit_v=0.0, clamp_v=0.0))


def dead_feed(circuit: Circuit, fault: Fault, _conditions: Conditions) -> Circuit:
    """A feed output that never switches on."""
    output = circuit.profile.output_of(fault.cylinders[0])
    dead = replace(circuit.feeds[output], on_ohm=OPEN_OHM)
    return replace(circuit, feeds={**circuit.feeds, output: dead})


def low_supply(circuit: Circuit, fault: Fault, _conditions: Conditions) -> Circuit:
    """A drive supply at a share of its voltage."""
    return replace(circuit, rail=replace(circuit.rail, supply_v=circuit.rail.supply_v * fault.amount()))


def no_supply(circuit: Circuit, _fault: Fault, _conditions: Conditions) -> Circuit:
    """No drive supply at all."""
    return replace(circuit, rail=replace(circuit.rail, supply_v=0.0))


def slow_recharge(circuit: Circuit, fault: Fault, _conditions: Conditions) -> Circuit:
    """A drive supply behind so many times its resistance."""
    return replace(circuit, rail=replace(circuit.rail, source_ohm=circuit.rail.source_ohm * fault.amount()))


def fed_by(rail: Rail, before: Circuit, power: Power) -> Rail:
    """Return the rail of a circuit, fed from now on through another battery and other wires."""
    if power == before.power:
        return rail
    more_ohm = seen_from_rail_ohm(before.profile, power) - seen_from_rail_ohm(before.profile, before.power)
    return replace(rail, source_ohm=rail.source_ohm + more_ohm)


def power_edit(change: Callable[[Power, Fault], Power]) -> Edit:
    """Change what the module's supply is made from."""

    def edit(circuit: Circuit, fault: Fault, _conditions: Conditions) -> Circuit:
        new = change(circuit.power, fault)
        return replace(circuit, power=new, rail=fed_by(circuit.rail, circuit, new))

    return edit


weak_battery = power_edit(lambda old, fault: replace(old, battery_ohm=old.battery_ohm * fault.amount()))
poor_feed = power_edit(lambda old, fault: replace(old, plus_ohm=old.plus_ohm + fault.amount()))
poor_ground = power_edit(lambda old, fault: replace(old, ground_ohm=old.ground_ohm + fault.amount()))


def armature(change: Callable[[Solenoid, Fault, Conditions], Solenoid]) -> Edit:
    """Change an injector's armature, computed from the present one."""

    def edit(circuit: Circuit, fault: Fault, conditions: Conditions) -> Circuit:
        (cylinder,) = fault.cylinders
        new = change(circuit.solenoids[cylinder], fault, conditions)
        return replace(circuit, solenoids={**circuit.solenoids, cylinder: new})

    return edit


def _stuck(old: Solenoid, _fault: Fault, _conditions: Conditions) -> Solenoid:
    return replace(old, viscous_n_s_per_m=NO_WAY_N_S_PER_M)


def _sluggish(old: Solenoid, fault: Fault, _conditions: Conditions) -> Solenoid:
    return replace(old, viscous_n_s_per_m=old.viscous_n_s_per_m * fault.amount())


def _sticks(old: Solenoid, fault: Fault, conditions: Conditions) -> Solenoid:
    colder = thicker(conditions.local_c(fault.location), than_at_c=0.0)
    return replace(old, stick_n=old.stick_n + fault.amount() * colder)


def _worn(old: Solenoid, fault: Fault, _conditions: Conditions) -> Solenoid:
    times = fault.amount()
    damping = 0.5 * old.stop_damping_n_s_per_m
    return replace(old, lift_m=old.lift_m * times, preload_n=old.preload_n / times, stop_damping_n_s_per_m=damping)


stuck_plate, sluggish_plate, sticking_plate, worn_plate = map(armature, (_stuck, _sluggish, _sticks, _worn))
