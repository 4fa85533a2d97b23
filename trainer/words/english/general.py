"""English."""

_NAMES = {
    "kind.open": "open",
    "kind.added_resistance": "added resistance",
    "kind.fails_under_load": "joint that fails under load",
    "kind.open_when_moved": "open when moved",
    "kind.open_when_hot": "open when hot",
    "kind.cured_by_reseating": "bad contact, cured for a while by re-seating",
    "kind.short_across_pair": "short across the pair",
    "kind.short_to_ground": "short to ground",
    "kind.short_to_battery": "short to battery",
    "kind.return_to_return": "return touching another return",
    "kind.return_to_heater": "return touching a heater circuit",
    "kind.crossed_returns": "crossed returns",
    "kind.shorted_turns": "shorted turns",
    "kind.dead_return_driver": "dead return driver",
    "kind.return_driver_stuck_on": "return driver stuck on",
    "kind.dead_feed_driver": "dead feed driver",
    "kind.low_supply": "low drive supply",
    "kind.slow_recharge": "slowly recharging supply",
    "kind.no_supply": "no drive supply",
    "kind.stuck_armature": "stuck armature",
    "kind.sluggish_armature": "sluggish armature",
    "kind.worn_armature": "worn armature",
    "location.drive_module": "drive module",
    "location.engine_harness": "engine harness",
    "location.pass_through_connector": "pass-through connector",
    "location.under_cover_harness": "under-cover harness",
    "location.solenoid_coil": "solenoid coil",
    "location.armature": "armature",
    "side.feed": "feed side",
    "side.return": "return side",
    "heard.louder": "louder",
    "heard.even": "even",
    "heard.weak": "weak",
    "heard.dull": "dull",
    "heard.very_faint": "very faint",
    "heard.nothing": "nothing",
    "slot.one": "slot {number}",
    "slot.all": "all together",
    "percent.plain": "{percent:.1f} %",
    "percent.under": "< 0.1 %",
    "percent.over": "> 99.9 %",
    "slot.cylinders_out": "cylinder {cylinders}",
    "certainty.0.5": "a guess (0.50)",
    "certainty.0.75": "leaning (0.75)",
    "certainty.0.95": "would bet the job on it (0.95)",
    "test.actuation_test": "actuation test",
    "test.codes": "codes",
    "test.look": "look at the connectors",
    "test.module_ohms": "ohms at the module connector",
    "test.pass_through_ohms": "ohms at a pass-through connector",
    "test.injector_ohms": "ohms at an injector plug",
    "test.pin_to_ground": "pin to ground",
    "test.move_harness": "moving the harness",
    "test.load_drop": "drop under load",
    "test.current_trace": "current trace",
    "test.swap_returns": "swap of two returns",
    "test.dummy_load": "dummy load",
    "test.heat": "warming a place",
    "test.cover_off": "cover off",
    "test.module_substitution": "module substitution",
    "test.injector_swap": "known-good injector",
    "test.repair_wire": "wire repair",
    "test.repair_connector": "connector repair",
}

_CODES = {
    "code.open": "injector circuit open or too little current, cylinder {cylinder}",
    "code.over": "injector circuit high or its current too high, cylinder {cylinder}",
    "code.tripped": "injector circuit low, cylinder {cylinder}",
    "code.uncommanded": "injector circuit high or its current too high, cylinder {cylinder}",
    "code.held_high": "injector circuit high or its current too high, cylinder {cylinder}",
    "code.group_open": "injector group supply open",
    "code.group_low": "injector group supply low, shut after too much current",
    "code.supply_low": "injector module performance: drive supply too low",
    "code.unnamed": "injector circuit, no cylinder named",
    "codes.none": "No code.",
    "codes.stored": "In memory from something earlier: {codes}",
    "codes.place": "A code says what the module sensed. It never says where.",
    "codes.cleared": "Memory cleared. Run the test and read again.",
}

_SLIPS = {
    "slip.still_connected": "Measured while still connected: the reading is of everything that hangs on the wire.",
    "slip.live": "Ohms on a live circuit: the meter's fuse is blown. Key off, wait, prove dead, then measure.",
    "slip.voltage_on_wire": "There is voltage on this wire with the key off: no ohms can be trusted here.",
    "slip.insulation_into_part": "An insulation tester does not go through a module, an injector or a heater.",
    "slip.probe_pushed": "The probe was pushed into the terminal: it is spread now.",
    "slip.not_nulled": "Leads not nulled: their own resistance is in the reading.",
}

_EXPLANATION = {
    "reason.even": "{slot}, {heard}: {own:.1f} A of its own; the plate moves; {under:+.1f} dB beside a good slot.",
    "reason.short_of_lift": (
        "{slot}, {heard}: only {own:.1f} A of its own: the plate does not lift; {under:+.1f} dB beside a good slot."
    ),
    "reason.stuck": (
        "{slot}, {heard}: {own:.1f} A of its own and no movement: a dull push, {under:+.1f} dB beside a good slot."
    ),
    "reason.hum": (
        "{slot}, {heard}: almost no current through its own coil ({own:.1f} A); a background current of "
        "{others:.1f} A through each of {count} others. That is the hum you heard, {under:+.1f} dB beside a good slot."
    ),
    "reason.shared": (
        "{slot}, {heard}: {own:.1f} A of its own and as much through {cylinders}: they share one current limit, "
        "and no plate lifts; {under:+.1f} dB beside a good slot."
    ),
    "reason.another_way": "Its output carries {output:.1f} A: the current takes another way.",
    "reason.silent": "{slot}, {heard}: no current through its own coil and none through the others, so nothing hums.",
    "reason.also": "Also moving without being called: {cylinders}.",
    "reason.elsewhere": "What moves is {cylinders}: the sound comes from another place.",
    "reason.tripped": "The feed's over-current trip shut it.",
    "reason.burst": "all together: {moved} of {count} plates move; {under:+.1f} dB beside the good engine's burst.",
}

_DEBRIEF = {
    "debrief.truth": "Truth: {claims}",
    "debrief.answer": "Your finding: {claims}, {certainty}",
    "debrief.passes": "the circuit passes",
    "debrief.claim": "{kind}, {location}, {side}cylinder {cylinders}",
    "debrief.score": "Score {points:.0f} of 100",
    "debrief.arithmetic": (
        "cylinders 25 × {cylinders:.2f} + place 30 × {location:.2f} + kind 15 × {kind:.2f} "
        "+ proof 20 × {proof:.2f} + economy 10 × {economy:.2f}"
    ),
    "debrief.certainty": "Certainty, scored apart: Brier {brier:.3f} (0 is best, 1 is worst).",
    "debrief.calibration": "So far: {rows}.",
    "debrief.calibration_row": "said {said:.2f} in {count}, right {right}",
    "debrief.rule": "The rule: {rule}",
    "debrief.passed_rule": (
        "Circuit passes is a finding. It is never 'injector good': this test does not show nozzles, seals, "
        "compression or oil."
    ),
    "debrief.again": "Playing the truth again.",
    "debrief.yours": "Now what your answer would have sounded like, same seed.",
    "debrief.take": "To take away: {question}",
    "rule.open": "A very faint hum comes from the other injectors. No current gets through the one whose turn it is.",
    "rule.added_resistance": (
        "A current limit hides a small resistance; past it the plate does not lift and the slot goes dull, "
        "often without a code."
    ),
    "rule.fails_under_load": "A meter's milliampere does not load a joint. Measure the drop while it carries current.",
    "rule.open_when_moved": "Even now is 'not shown', never 'good': move it while you listen or measure.",
    "rule.open_when_hot": "Even cold is 'not shown', never 'good': warm one place at a time.",
    "rule.cured_by_reseating": "Your own unplugging can cure a contact for a while. Measure before you re-seat.",
    "rule.short_across_pair": "Current without a coil's delay is a short: codes say so; ohms find the place.",
    "rule.short_to_ground": "A short to ground does not change the pair; of all ohms only pin to ground shows it.",
    "rule.short_to_battery": "Look for voltage with the key off before you trust any ohms.",
    "rule.return_to_return": (
        "Two coils that share one current limit get half each, and both may stay down: two dull slots."
    ),
    "rule.return_to_heater": "A heater is a way to ground: the injector clicks in slots that are not its own.",
    "rule.crossed_returns": (
        "Crossed returns leave each half good: check wire by wire. In one bank the level stays even and only the place "
        "is wrong."
    ),
    "rule.shorted_turns": "Fewer turns and a closed ring on the core: low ohms, fast current, little pull.",
    "rule.dead_return_driver": "Wiring and coil read well, and after a swap the same slot is dead: the module.",
    "rule.return_driver_stuck_on": "Clicks in every slot of its feed and clean wiring: an output that never lets go.",
    "rule.dead_feed_driver": "A group that dies with good feed wiring has a dead feed.",
    "rule.low_supply": "All alike and all wrong is one cause: measure the supply first.",
    "rule.slow_recharge": "The burst loads the supply most: even one by one and thin together is the supply.",
    "rule.no_supply": "No hum anywhere means no drive. A whole row of injectors does not die at once.",
    "rule.stuck_armature": "Full current without a dip is a plate that does not move. The circuit passes.",
    "rule.sluggish_armature": "A late dip and a soft landing: the plate is slow, the circuit is not.",
    "rule.worn_armature": "Brighter is not better: a longer way lands harder and later.",
}

_CAUTIONS = {
    "caution.drive": (
        "Caution: the drive is pulsed, over 100 V, and stays charged. Key off, wait, prove dead before you touch. "
        "Never think 'only 100 V'."
    ),
    "caution.cover": "Caution: with a cover off and the key on, live terminals are bare. Hot oil. Keep clear.",
    "caution.moving": "Caution: never move live wiring by hand on a real engine: insulated tool, or move it dead.",
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

_TERMINAL = {
    "card.head": "Job card",
    "card.predicted": "(expected {predicted})",
    "card.heard": "heard: {slots}, from: {place}",
    "card.codes": "codes: {codes}",
    "card.no_codes": "none",
    "card.move": "moving: {what}",
    "card.heat": "warmed: {what}",
    "card.swap": "returns swapped: {what}",
    "card.substitute": "known-good part in: {what}",
    "card.give_back": "own parts back in: {what}",
    "card.look": "looked at what is open: {what}",
    "card.repair": "repaired: {place}, cylinder {cylinders}",
    "card.total": "Total {minutes:.0f} min",
    "request.pair": "ohms, feed to return {cylinder}, {point}",
    "request.returns": "ohms, return {cylinder} to return {other}, {point}",
    "request.ground": "ohms to ground, {side} {cylinder}, {point}",
    "request.wire": "ohms end to end, {place}, {side} {cylinder}",
    "request.insulation": "insulation to ground, {side} {cylinder}, {point}",
    "request.drop": "volts dropped over {place}, {side} {cylinder}, driven",
    "request.supply": "drive supply, lowest, all driven together",
    "request.trace": "current trace, return {cylinder}",
    "request.dummy": "current into a dummy load in place of injector {cylinder}",
    "card.minutes": "{minutes:.0f} min",
    "case.head": "{heading}",
    "case.code": "case code {code}",
    "case.drawn_story": "The engine misses; nothing has been measured yet.",
    "engine.head": "{title}; numeric order {numbers}; firing order {firing}",
    "engine.bank": "{bank}: {numbers}, front to back",
    "engine.connector": "pass-through connector {name}: injectors {cylinders}, {pins}",
    "engine.pins.shared": "one feed pin for all of them",
    "engine.pins.single": "a feed pin each",
    "engine.live.all": "every feed is live in each slot: all the other injectors can hum",
    "engine.live.commanded": "only the commanded bank's feed is live in a slot: only bank-mates can hum",
    "welcome.start": "Type 'hear' to run the test, 'help' for everything else.",
    "hear.whole": "the whole test",
    "stand.now": "You stand at: {place}.",
    "choice.again": "Type a number from 1 to {count}.",
    "side.none": "no side",
    "finding.check": "You would commit: {claims}.",
    "finding.sure": "Commit it? It cannot be taken back. (yes/no): ",
    "finding.dropped": "Not committed.",
    "finding.passes_next": "Nothing to repair in this circuit. Type 'debrief'.",
    "debrief.why": "Why it sounded so, slot by slot:",
    "debrief.path": "Your path:",
    "prompt": "{minutes:.0f} min{state} > ",
    "prompt.moving": "moving: {place}",
    "prompt.warm": "warm: {place}",
    "prompt.swapped": "returns {first} and {second} swapped",
    "prompt.lent": "lent: {what}",
    "resumed": "You were at this case before: going on after {count} events. To start afresh: practice --new.",
    "hear.playing": "Playing {what}, from the place: {place} ({seconds:.0f} s).",
    "hear.void": "The playing was torn by the computer and does not count. Hear it again; it costs nothing.",
    "hear.stopped": "Stopped. Hearing it again costs nothing.",
    "hear.file": "Written to {path}",
    "hear.files": (
        "Sounds go to WAV files here, and each path is shown. They are deleted when the program ends. "
        "To keep a sound, use 'injector-trainer hear CASE -o FILE.wav'."
    ),
    "hear.back": "The sound output is back.",
    "hear.codes_later": "Sequence ended. Codes can be read now.",
    "suspects.head": "Ruled out, in my view: {places}",
    "suspects.none": "nothing yet",
    "look.nothing": "nothing seen",
    "work.move": "Moving: {what}. It goes on until 'move none'.",
    "work.heat": "Warmed: {what}. It stays warm until 'heat none'.",
    "work.none": "Let go.",
    "work.swap": "Returns {first} and {second} swapped at the module connector.",
    "work.substitute": "Known-good part in: {what}. Run the test again.",
    "reading.elsewhere": "Still unplugged elsewhere: {places}. 'hear' plugs everything back.",
    "work.look_off": "Unplugged: {places}. 'hear' plugs everything back.",
    "finding.cancel": "'cancel' takes you out of these questions.",
    "finding.count_again": "Type 0, 1 or 2.",
    "work.look": "All plugs are home. From outside nothing looks burnt or wet; inside you would have to unplug.",
    "reading": "{what}: {display}",
    "codes.line": "{code}  {meaning}",
    "finding.ask_count": "How many faults? 0 (circuit passes), 1 or 2",
    "finding.ask_cylinders": "Cylinders behind fault {number}, for example 3 or 1,3",
    "finding.ask_location": "Place of fault {number}",
    "finding.ask_kind": "Kind of fault {number}",
    "finding.ask_side": "Side of fault {number} (n where none)",
    "finding.ask_certainty": "How sure are you",
    "finding.committed": "Finding committed: {claims}, {certainty}.",
    "repair.ask": "Now the repair. Type 'repair PLACE CYLINDERS', then 'retest', then 'debrief'.",
    "repair.done": "Done: {what}. {minutes:.0f} min. Run 'retest' to see whether it was the fault.",
    "retest.proved": "Every slot even and no code, as the engine stands now.",
    "retest.provoke": "No test before the repair left a code: what comes and goes is proved moving or warm only.",
    "retest.not_proved": "Not even, or a code has come back: the fault is still there.",
    "work.look_seen": "Something bridges what should not touch, at: {places}.",
    "work.given_back": "Known-good parts are out again, the engine's own are back in.",
    "typed.yes": "yes y",
    "price.ask": "That takes {minutes:.0f} min. Do it? (yes/no): ",
    "price.left": "Not done; nothing is charged.",
    "left": "Stopped here. Nothing is lost; the same command goes on with this case.",
    "left_unkept": "Stopped here. Nothing could be kept on this machine, so what you did is gone.",
    "closed": "Case closed.",
    "unknown_command": "I do not know '{word}'. Type 'help'.",
    "silent_ask": (
        "Nothing heard? The bed is under everything: if you do not hear the bed either, it is your loudspeaker."
    ),
    "memory_store": "Nothing you do now will be kept. {reason}",
    "window.absent": "The window needs a screen and there is none here; practice runs in the terminal.",
    "doctor.good": "good",
    "doctor.bad": "mend",
    "check.good": "{count} files read, no problem.",
    "check.bad": "{problems} problems in {count} files.",
}

_HELP = {
    "help": (
        "Listen     hear [SLOT ...]                 run the whole test, or replay slots (all, 1, 2, ...)\n"
        "           compare A B                     two slots after one another, same gain\n"
        "           stand PLACE                     front, a bank, or 'probe N'; moves where you listen\n"
        "Codes      codes · clear\n"
        "Measure    pair POINT N                    feed to return of cylinder N\n"
        "           returns POINT N M               return to return\n"
        "           ground POINT N | ground POINT feed N     pin to engine ground\n"
        "           wire engine|cover N [feed]      one wire end to end\n"
        "           insulation POINT N\n"
        "           drop module|engine|connector|cover|coil N [feed]     voltage drop while driven\n"
        "           supply · trace N · dummy N\n"
        "             POINT: module, plug (injector side), plug harness, or a connector's name [engine|cover]\n"
        "             add 'connected', 'firm', 'live' or 'leads' to measure so (and learn what that does)\n"
        "Work       move PLACE | move none · heat PLACE | heat none · swap N M · look\n"
        "           lend injector N | lend module | lend none     known-good part in, or out again\n"
        "Think      out PLACE · back PLACE          rule a place out, or take it back · card\n"
        "           expect WORDS                    say what the next reading should be, before you take it\n"
        "           hint                            three of rising strength; they stand on the card\n"
        "Answer     finding · then repair PLACE N[,M] [feed|return] · retest [moving PLACE | warm PLACE] · debrief\n"
        "           why [N]                         after the finding: what your evidence leaves, and why\n"
        "Other      engine · help · leave\n"
        "PLACE of a fault: module, engine, connector, cover, coil, armature"
    ),
}

TEXTS: dict[str, str] = {
    **_NAMES, **_CODES, **_SLIPS, **_EXPLANATION, **_DEBRIEF, **_CAUTIONS, **_TERMINAL, **_HELP,
}  # fmt: skip
