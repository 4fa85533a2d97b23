"""Faults: their names, what each teaches, and what eyes find, in English."""

TEXTS: dict[str, str] = {
    "kind.open": "open",
    "kind.added_resistance": "added resistance",
    "kind.fails_under_load": "joint that fails under load",
    "kind.film_on_contact": "contact film that the drive breaks through",
    "kind.burnt_pin": "burnt pin",
    "kind.pushed_back_pin": "pushed-back pin",
    "kind.spread_terminal": "spread terminal, open when moved",
    "kind.open_when_moved": "open when moved",
    "kind.open_when_hot": "open when hot",
    "kind.cured_by_reseating": "bad contact, cured for a while by re-seating",
    "kind.short_across_pair": "short across the pair",
    "kind.carbon_between_pins": "carbon track between two pins",
    "kind.short_to_ground": "short to ground",
    "kind.short_when_moved": "chafed wire, shorts to ground when moved",
    "kind.short_to_battery": "short to battery",
    "kind.return_to_return": "return shorted to another return",
    "kind.return_to_heater": "return shorted to a heater circuit",
    "kind.crossed_returns": "crossed returns",
    "kind.shorted_turns": "shorted turns",
    "kind.wrong_coil": "coil of the wrong type",
    "kind.dead_return_driver": "dead return driver",
    "kind.output_fails_hot": "return driver that fails when hot",
    "kind.return_driver_stuck_on": "return driver stuck on",
    "kind.dead_feed_driver": "dead feed driver",
    "kind.low_supply": "low drive supply",
    "kind.slow_recharge": "drive supply that recharges slowly",
    "kind.no_supply": "no drive supply",
    "kind.weak_battery": "weak battery",
    "kind.poor_module_feed": "high resistance in the module's power wire",
    "kind.poor_module_ground": "high resistance in the module's ground",
    "kind.stuck_armature": "stuck armature",
    "kind.sluggish_armature": "sluggish armature",
    "kind.sticks_when_cold": "armature that sticks when cold",
    "kind.worn_armature": "worn armature",
    "rule.open": "The very faint hum comes from the other injectors. The one whose turn it is gets no current.",
    "rule.added_resistance": (
        "The current limit hides a small resistance. Past a certain point the armature no longer lifts, and the slot "
        "goes dull, often without a code."
    ),
    "rule.fails_under_load": "A meter's tiny current does not load a joint. Measure the voltage drop under load.",
    "rule.film_on_contact": (
        "A film can read high on a meter and still carry the drive. Load the joint before you call it bad."
    ),
    "rule.burnt_pin": "A bad joint cooks its own pin. Look into the connector before you push a probe into it.",
    "rule.pushed_back_pin": (
        "A pushed-back pin reads open with the plug on and good on each half. Look along the terminals: all must "
        "sit level."
    ),
    "rule.spread_terminal": (
        "A spread terminal looks fine and holds until the loom moves. Feel its grip with a matching pin."
    ),
    "rule.open_when_moved": "Even when still proves nothing yet. Move it while you listen or measure.",
    "rule.open_when_hot": "Even when cold proves nothing yet. Warm one spot at a time and test again.",
    "rule.cured_by_reseating": "Unplugging a contact can cure it for a while. Measure before you unplug it.",
    "rule.short_across_pair": "Current without a coil's delay means a short. Codes say so, and ohms find the place.",
    "rule.carbon_between_pins": (
        "A carbon track carries current past the coil. Take both plugs off, then look and measure from pin to pin."
    ),
    "rule.short_to_ground": "A short to ground does not change the ohms of the pair. Only pin to ground shows it.",
    "rule.short_when_moved": (
        "A chafed wire shorts only where it is pushed against metal. Move it while you measure to ground."
    ),
    "rule.short_to_battery": "Look for voltage with the key off before you trust any ohms reading.",
    "rule.return_to_return": (
        "Two coils share one current limit, so each gets half and both may stay down: two dull slots."
    ),
    "rule.return_to_heater": (
        "The heater gives the current a way to ground, so the injector clicks in slots that are not its own."
    ),
    "rule.crossed_returns": (
        "Crossed returns leave each half good, so check wire by wire. In one bank the level stays even and only "
        "the place is wrong."
    ),
    "rule.shorted_turns": "Fewer turns and a closed ring on the core give low ohms, fast current and little pull.",
    "rule.wrong_coil": (
        "Compare the ohms with the other injectors. A coil of another type can click and still be the wrong part."
    ),
    "rule.dead_return_driver": (
        "The wiring and the coil read good, and after a swap the same slot is still dead. So it is the module."
    ),
    "rule.output_fails_hot": (
        "Good when cold, dead when the module is warm, and the wiring reads good. So it is the module's own output."
    ),
    "rule.return_driver_stuck_on": (
        "It clicks in every slot of its feed and the wiring is clean. So an output never lets go."
    ),
    "rule.dead_feed_driver": "A whole group is dead and its feed wiring is good, so the feed itself is dead.",
    "rule.low_supply": "All of them are wrong in the same way, so look for one cause. Measure the supply first.",
    "rule.slow_recharge": (
        "The burst loads the supply most. If they are even one by one but weak together, look at the supply."
    ),
    "rule.no_supply": "No hum anywhere means no drive. A whole row of injectors does not die at once.",
    "rule.weak_battery": "It cranks slowly and every slot is even. Test the battery under load before anything else.",
    "rule.poor_module_feed": (
        "The module can only pass on what the battery sends it. Measure the drop from battery plus to the "
        "module before you buy one."
    ),
    "rule.poor_module_ground": (
        "A bad ground looks like a bad module. Measure the drop from the module's ground to battery minus, under load."
    ),
    "rule.stuck_armature": "Full current but no dip: the armature is stuck. The wiring is fine.",
    "rule.sluggish_armature": "A late dip and a soft landing mean a slow armature. The circuit is fine.",
    "rule.sticks_when_cold": (
        "Cold oil can hold an armature on its seat. The slot is dull in frost and even once the injector is warm, so "
        "the wiring is fine."
    ),
    "rule.worn_armature": "A brighter click is not a better one: a worn armature travels further and lands harder.",
    "seen.burnt": "{where}: a burnt pin.",
    "seen.pushed_back": "{where}: a pushed-back pin.",
    "seen.spread": "{where}: a terminal that does not grip the pin.",
    "seen.bridge": "{where}: something touches two parts that should be apart.",
    "seen_at.engine_harness": "Module plug, {side}, {cylinders}",
    "seen_at.pass_through_connector": "Pass-through connector, {side}, {cylinders}",
    "seen_at.under_cover_harness": "Injector plug, {side}, {cylinders}",
}
