"""Sentences about measuring: slips and cautions."""

_SLIPS = {
    "slip.still_connected": "Measured while still connected: the reading is of everything that hangs on the wire.",
    "slip.live": (
        "Ohms on a live circuit: the number means nothing and the meter may be harmed. Key off, wait, prove it dead, "
        "then measure."
    ),
    "slip.not_proved_dead": "You did not prove it dead first: no volts at rest were read since the module last drove.",
    "slip.not_waited": "You did not wait: the module was still charged when you read.",
    "slip.voltage_on_wire": "There is voltage on this wire with the key off: no ohms can be trusted here.",
    "slip.insulation_into_part": "An insulation tester does not go through a module, an injector or a heater.",
    "slip.lamp_into_part": "A lamp is for a wire that is off at both ends: through a module or injector it does harm.",
    "slip.probe_pushed": "The probe was pushed into the terminal: it is spread now.",
    "slip.not_nulled": "Leads not nulled: their own resistance is in the reading.",
}


_CAUTIONS = {
    "caution.drive": (
        "Caution: the drive is pulsed, over 100 V, and stays charged. Key off, wait, prove dead before you touch. "
        "Never think 'only 100 V'."
    ),
    "caution.live": (
        "Caution: live work, over 100 V. Area closed off, a second person there, insulated probes fitted with the key "
        "off, one hand away. Only for people your local rules allow to work live."
    ),
    "caution.cover": "Caution: with a cover off and the key on, live terminals are bare. Hot oil. Keep clear.",
    "caution.under_cover": "Caution: under the cover oil is hot and parts move. Engine off, key off, hands clear.",
    "caution.lamp": "Caution: a lamp only on a wire that is off at both ends. Never on a module output.",
    "caution.crank": "Caution: belts and fan turn while it cranks. Fuel shut off, hands and clothes clear.",
    "caution.moving": "Caution: never move live wiring by hand on a real engine: insulated tool, or move it dead.",
    "caution.running": "Caution: belts, fan and hot parts while it runs. Hands and clothes clear, exhaust led away.",
    "caution.heat": "Caution: no open flame and no uncontrolled heat near fuel and oil.",
    "caution.repeat": (
        "Caution: on some engines each test injects fuel and leaves the fuel system under pressure. Limit repeats as "
        "the maker says, do not crank straight after, and never feel for a leak by hand."
    ),
    "caution.real": (
        "On a real engine the maker's manual, local codes and licensed practice come first. This is a simulator's "
        "engine: no value here is a specification."
    ),
    "caution.sound": "Start with the volume low. The burst is louder than the slots.",
}


TEXTS: dict[str, str] = {**_SLIPS, **_CAUTIONS}
