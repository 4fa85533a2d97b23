"""Sentences about measuring: slips and cautions."""

_SLIPS = {
    "slip.still_connected": "You measured with the plug still on, so the meter read everything connected to the wire.",
    "slip.live": (
        "You measured ohms on a live circuit. The number means nothing and the meter may be damaged. Key off, "
        "wait, prove it dead, then measure."
    ),
    "slip.not_proved_dead": (
        "You did not prove it dead first. You have not read volts at rest since the module was last driven."
    ),
    "slip.not_waited": "You did not wait. The module was still charged when you read.",
    "slip.voltage_on_wire": "There is voltage on this wire with the key off, so no ohms reading can be trusted here.",
    "slip.insulation_into_part": "Never use an insulation tester through a module, an injector or a heater.",
    "slip.lamp_into_part": (
        "Use a lamp only on a wire that is unplugged at both ends. Through a module or an injector it does damage."
    ),
    "slip.probe_pushed": "You pushed the probe into the terminal, and now it is spread.",
    "slip.not_nulled": "You did not zero the leads, so their resistance is in this reading.",
}


_CAUTIONS = {
    "caution.drive": (
        "Caution: the drive is pulsed at over 100 V and stays charged. 100 volts can kill. Key off. Wait. Prove "
        "it dead before you touch a terminal."
    ),
    "caution.live": (
        "Caution: live work at over 100 V. Close off the area. Have a second person there. With the "
        "key off, the person responsible under your local rules isolates the drive module's supply before insulated "
        "probes are fitted or moved. Keep one hand away. Only for people whom your local rules allow to work live."
    ),
    "caution.cover": "Caution: with a cover off and the key on, live terminals are bare. The oil is hot. Keep clear.",
    "caution.under_cover": (
        "Caution: under the cover the oil is hot and parts move. Engine off, key off, hands clear."
    ),
    "caution.lamp": "Caution: use a lamp only on a wire that is unplugged at both ends. Never on a module output.",
    "caution.crank": "Caution: belts and fan turn while it cranks. Shut off the fuel. Keep hands and clothes clear.",
    "caution.battery": (
        "Caution at the battery: take off rings, wear eye protection, use fused leads. Never bridge the posts. The "
        "battery gives off explosive gas."
    ),
    "caution.moving": (
        "Caution: never move live wiring by hand on a real engine. Use an insulated tool, or make the wiring dead "
        "first."
    ),
    "caution.running": (
        "Caution: while the engine runs, belts and fan turn and parts are hot. Keep hands and clothes clear, and lead "
        "the exhaust outside."
    ),
    "caution.heat": "Caution: use no open flame and no uncontrolled heat near fuel and oil.",
    "caution.repeat": (
        "Caution: on some engines each test injects fuel and leaves the fuel system under pressure. Limit repeats as "
        "the maker says, do not crank straight after, and never feel for a leak by hand."
    ),
    "caution.real": (
        "On a real engine, follow the maker's manual and your local rules, and leave licensed work to licensed "
        "people. This engine is simulated: no value here is a specification."
    ),
    "caution.sound": "Start with the volume low. The burst is louder than the slots.",
}


TEXTS: dict[str, str] = {**_SLIPS, **_CAUTIONS}
