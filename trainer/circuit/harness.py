"""A profile's wiring as circuit elements: the tree from the feed outputs through the coils to the return outputs.

Every mating contact is an element of its own between two terminals: `x.plug` on the side of the module,
`x.socket` on the side of the injector. A wire is two halves with a middle node, where a chafe can touch.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from trainer.circuit.copper import copper_factor, wire_resistance_ohm
from trainer.circuit.elements import (
    GROUND,
    HEATER,
    Circuit,
    Element,
    FeedDriver,
    Location,
    Part,
    Power,
    Rail,
    ReturnDriver,
    Side,
    coil_node,
    core_node,
    feed_pin,
    return_pin,
)
from trainer.circuit.oil import drag_factor, thicker
from trainer.circuit.profile import Profile

Named = tuple[str, Element]

COLD_SOURCE_PER_K = 0.02
"""How much more a supply fed by a cold battery resists, for each kelvin under 20 °C: from memory."""


POWER_WIRE_OHM = 0.002
"""A sound wire between battery and module, with its two ends: from memory."""


def scope_name(cylinders: tuple[int, ...]) -> str:
    """Return the name of what shares a segment: its cylinder numbers."""
    return "-".join(str(number) for number in cylinders)


def circuit_of(profile: Profile, temperature_c: float = 20.0) -> Circuit:
    """Return the sound circuit of a profile with copper, oil and battery at one temperature."""
    named = dict(_elements(profile, temperature_c))
    module, solenoid = profile.module, profile.solenoid
    oiled = replace(
        solenoid,
        viscous_n_s_per_m=solenoid.viscous_n_s_per_m * drag_factor(temperature_c),
        stick_n=solenoid.stick_n * thicker(temperature_c),
    )
    return Circuit(
        profile=profile,
        temperature_c=temperature_c,
        elements=named,
        solenoids=dict.fromkeys(profile.cylinders, oiled),
        returns={
            number: ReturnDriver(module.return_on_ohm, module.background_ohm, module.supply_v, module.clamp_v)
            for number in profile.cylinders
        },
        feeds={name: FeedDriver(module.feed_on_ohm, module.feed_off_ohm) for name in profile.wiring.outputs},
        rail=Rail(module.supply_v, module.source_ohm * source_factor(temperature_c), module.reservoir_f),
        power=Power(module.battery_ohm * source_factor(temperature_c), POWER_WIRE_OHM, POWER_WIRE_OHM),
    )


def seen_from_rail_ohm(profile: Profile, power: Power) -> float:
    """Return how much everything before the module's converter resists, as seen from its supply.

    The module steps the battery's voltage up. A resistance before it counts as many times more as the square of the two
    voltages' ratio (an ideal transformer, here of direct current), and for the share of the current that is drawn.
    """
    ohm = power.battery_ohm + power.plus_ohm + power.ground_ohm
    return ohm * drawn_share(profile) * (profile.module.supply_v / profile.module.battery_v) ** 2


def drawn_share(profile: Profile) -> float:
    """Return what a chopping module draws of the current that the model's averaged limiter draws.

    A chopper connects a coil for the share of the time in which the supply is what the coil itself needs at the limit.
    """
    return min(profile.module.limit_a * profile.solenoid.coil_ohm_20c / profile.module.supply_v, 1.0)


def source_factor(temperature_c: float) -> float:
    """Return the resistance of a supply over its resistance at 20 °C and above."""
    return 1.0 + COLD_SOURCE_PER_K * max(0.0, 20.0 - temperature_c)


def _elements(profile: Profile, temperature_c: float) -> Iterator[Named]:
    yield (
        "heater",
        Element(HEATER, GROUND, profile.module.heater_ohm, Location.ENGINE_HARNESS, Part.LINK),
    )
    for output, behind in profile.wiring.outputs.items():
        yield from _trunk(profile, output, behind, temperature_c)
    for connector in profile.wiring.connectors.values():
        scopes = [connector.injectors] if connector.feed_pins == "shared" else [(n,) for n in connector.injectors]
        for scope in scopes:
            yield from _feed_through(profile, scope, connector.engine_length_m, temperature_c)
    for cylinder in profile.cylinders:
        yield from _injector(profile, cylinder, temperature_c)


def middle_node(location: Location, side: Side, scope: tuple[int, ...], run: str = "wire") -> str:
    """Return the node in the middle of a wire; run is `trunk` for the piece from the module to the splice."""
    return f"{location}.{run}.{side}.{scope_name(scope)}.middle"


def _wire(
    start: str, end: str, ohm: float, location: Location, side: Side, scope: tuple[int, ...], run: str = "wire"
) -> Iterator[Named]:
    middle = middle_node(location, side, scope, run)
    for half, (a, b) in (("near", (start, middle)), ("far", (middle, end))):
        name = f"{location}.{run}.{side}.{scope_name(scope)}.{half}"
        yield name, Element(a, b, ohm / 2.0, location, Part.WIRE, side, scope)


def _contact(
    start: str, end: str, ohm: float, location: Location, side: Side, scope: tuple[int, ...]
) -> Iterator[Named]:
    yield (
        f"{location}.contact.{side}.{scope_name(scope)}",
        Element(start, end, ohm, location, Part.CONTACT, side, scope),
    )


def splice_node(output: str) -> str:
    """Return the node where an output's trunk meets the wires to its connectors."""
    return f"splice.{output}"


def module_plug_node(side: Side, name: str | int) -> str:
    """Return the engine-harness terminal of the module's plug."""
    return f"module_plug.{side}.{name}"


def pass_through_node(side: Side, scope: tuple[int, ...], half: str) -> str:
    """Return a terminal of a pass-through connector; half is `engine` or `cover`."""
    return f"pass_through.{half}.{side}.{scope_name(scope)}"


def injector_plug_node(side: Side, cylinder: int) -> str:
    """Return the harness terminal of an injector's plug; its other half is the coil's terminal."""
    return f"injector_plug.{side}.{cylinder}"


def feed_scope(profile: Profile, cylinder: int) -> tuple[int, ...]:
    """Return the cylinders that share a feed pin of the pass-through connector with this one."""
    connector = profile.connector_of(cylinder)
    return connector.injectors if connector.feed_pins == "shared" else (cylinder,)


def _trunk(profile: Profile, output: str, behind: tuple[int, ...], temperature_c: float) -> Iterator[Named]:
    wiring = profile.wiring
    plug = module_plug_node(Side.FEED, output)
    ohm = wire_resistance_ohm(wiring.trunk_length_m, wiring.engine_feed_mm2, temperature_c)
    yield from _contact(feed_pin(output), plug, wiring.contact_ohm, Location.ENGINE_HARNESS, Side.FEED, behind)
    yield from _wire(plug, splice_node(output), ohm, Location.ENGINE_HARNESS, Side.FEED, behind, "trunk")


def _feed_through(
    profile: Profile, scope: tuple[int, ...], engine_length_m: float, temperature_c: float
) -> Iterator[Named]:
    wiring = profile.wiring
    engine = pass_through_node(Side.FEED, scope, "engine")
    ohm = wire_resistance_ohm(engine_length_m, wiring.engine_feed_mm2, temperature_c)
    start = splice_node(profile.output_of(scope[0]))
    yield from _wire(start, engine, ohm, Location.ENGINE_HARNESS, Side.FEED, scope)
    cover = pass_through_node(Side.FEED, scope, "cover")
    yield from _contact(engine, cover, wiring.contact_ohm, Location.PASS_THROUGH, Side.FEED, scope)


def _injector(profile: Profile, cylinder: int, temperature_c: float) -> Iterator[Named]:
    wiring, own = profile.wiring, (cylinder,)
    under_ohm = wire_resistance_ohm(wiring.under_cover_length_m[cylinder], wiring.under_cover_mm2, temperature_c)
    length_m = profile.connector_of(cylinder).engine_length_m + wiring.trunk_length_m
    engine_ohm = wire_resistance_ohm(length_m, wiring.engine_return_mm2, temperature_c)
    solenoid = profile.solenoid
    feed_cover = pass_through_node(Side.FEED, feed_scope(profile, cylinder), "cover")
    plugs = {side: injector_plug_node(side, cylinder) for side in Side}
    terminals = {side: coil_node(cylinder, side) for side in Side}
    engine, cover = (pass_through_node(Side.RETURN, own, half) for half in ("engine", "cover"))
    module_plug = module_plug_node(Side.RETURN, cylinder)

    if feed_scope(profile, cylinder) == own:
        yield from _wire(feed_cover, plugs[Side.FEED], under_ohm, Location.UNDER_COVER, Side.FEED, own)
    else:
        shared = feed_scope(profile, cylinder)
        branch = f"under_splice.{scope_name(shared)}"
        # the shared piece under the cover belongs to the group; whoever is first in the group yields it
        if cylinder == shared[0]:
            piece_ohm = wire_resistance_ohm(0.1, wiring.under_cover_mm2, temperature_c)
            yield from _wire(feed_cover, branch, piece_ohm, Location.UNDER_COVER, Side.FEED, shared)
        yield from _wire(branch, plugs[Side.FEED], under_ohm, Location.UNDER_COVER, Side.FEED, own)
    for side in Side:
        ends = (plugs[side], terminals[side])
        yield from _contact(*ends, wiring.contact_ohm, Location.UNDER_COVER, side, own)
    winding = Element(
        terminals[Side.FEED],
        core_node(cylinder),
        solenoid.coil_ohm_20c * copper_factor(temperature_c),
        Location.COIL,
        Part.WINDING,
        None,
        own,
    )
    yield f"{Location.COIL}.winding.{cylinder}", winding
    ring = Element(core_node(cylinder), terminals[Side.RETURN], solenoid.ring_ohm, Location.COIL, Part.RING, None, own)
    yield f"{Location.COIL}.ring.{cylinder}", ring
    yield from _wire(plugs[Side.RETURN], cover, under_ohm, Location.UNDER_COVER, Side.RETURN, own)
    yield from _contact(engine, cover, wiring.contact_ohm, Location.PASS_THROUGH, Side.RETURN, own)
    yield from _wire(module_plug, engine, engine_ohm, Location.ENGINE_HARNESS, Side.RETURN, own)
    ends = (return_pin(cylinder), module_plug)
    yield from _contact(*ends, wiring.contact_ohm, Location.ENGINE_HARNESS, Side.RETURN, own)
