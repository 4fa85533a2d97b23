"""English."""

_NAMES = {
    "location.drive_module": "drive module",
    "location.engine_harness": "engine harness",
    "location.pass_through_connector": "pass-through connector",
    "location.under_cover_harness": "under-cover harness",
    "location.solenoid_coil": "solenoid coil",
    "location.armature": "armature",
    "location.module_power": "battery and module power",
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
    "slot.cylinders_several": "cylinders {cylinders}",
    "certainty.0.5": "a guess (50 %)",
    "certainty.0.75": "fairly sure (75 %)",
    "certainty.0.95": "would bet the job on it (95 %)",
    "test.actuation_test": "actuation test",
    "test.codes": "codes",
    "test.look": "look at the connectors",
    "test.pin_drag": "pin drag test",
    "test.module_ohms": "ohms at the module connector",
    "test.pass_through_ohms": "ohms at a pass-through connector",
    "test.injector_ohms": "ohms at an injector plug",
    "test.pin_to_ground": "pin to ground",
    "test.move_harness": "moving the harness",
    "test.load_drop": "voltage drop under load",
    "test.current_trace": "current trace",
    "test.swap_returns": "swapping two returns",
    "test.dummy_load": "dummy load",
    "test.heat": "warming a place",
    "work.try": "{what}, try {number}, {effort}",
    "effort.gentle": "gently",
    "effort.thorough": "hard, for longer",
    "location.under_bank": "{place}, {bank} bank",
    "test.cover_off": "cover off",
    "test.module_substitution": "module substitution",
    "test.injector_swap": "known-good injector",
    "test.volts_at_rest": "volts at rest",
    "test.live_preparation": "preparing live work",
    "test.clamp": "clamp on a return",
    "test.lamp_load": "lamp on an isolated wire",
    "test.crank": "battery under crank",
    "test.power_drop": "voltage drop, battery to module",
    "test.warm_run": "warm run",
    "test.contribution": "cylinder contribution",
    "test.compression": "relative compression",
    "test.repair_wire": "wire repair",
    "test.repair_connector": "connector repair",
}

_CODES = {
    "code.open": "injector circuit open or too little current, cylinder {cylinder}",
    "code.over": "injector circuit high or current too high, cylinder {cylinder}",
    "code.tripped": "injector circuit low, cylinder {cylinder}",
    "code.uncommanded": "injector circuit high or current too high, cylinder {cylinder}",
    "code.held_high": "injector circuit high or current too high, cylinder {cylinder}",
    "code.group_open": "injector group supply open",
    "code.group_low": "injector group supply low, shut off after too much current",
    "code.supply_low": "injector module performance: drive supply too low",
    "code.unnamed": "injector circuit, no cylinder given",
    "codes.none": "No codes.",
    "codes.stored": "In memory from an earlier fault: {codes}",
    "codes.place": "A code says what the module sensed. It never says where.",
    "codes.cleared": "Codes cleared. Run the test and read again.",
}


_EXPLANATION = {
    "reason.even": "{slot} is {heard}. Its coil gets {own:.1f} A and its armature moves: {under}.",
    "reason.short_of_lift": (
        "{slot} is {heard}. Its coil gets only {own:.1f} A, too little to lift the armature: {under}."
    ),
    "reason.stuck": "{slot} is {heard}. Its coil gets {own:.1f} A, but its armature does not move: {under}.",
    "reason.hum": (
        "{slot} is {heard}. Its own coil gets {own:.1f} A. What you hear is {others:.1f} A of background current "
        "through each of {count} others, {under}."
    ),
    "reason.shared": (
        "{slot} is {heard}. It shares one current limit with {cylinders}. Each gets {own:.1f} A, so no armature "
        "lifts: {under}."
    ),
    "level.quieter": "{decibel:.0f} dB quieter than {good}",
    "level.louder": "{decibel:.0f} dB louder than {good}",
    "level.same": "as loud as {good}",
    "level.good_slot": "a good slot",
    "level.good_engine": "a good engine",
    "reason.another_way": "The module's output carries {output:.1f} A, so the current takes another path.",
    "reason.silent": "{slot}: {heard}. No current flows through its own coil or through the others, so nothing hums.",
    "reason.also": "Moving out of turn: {cylinders}.",
    "reason.elsewhere": "What moves belongs to {cylinders}, so the sound comes from another place.",
    "reason.tripped": "The current was too high, and the module shut off the feed.",
    "reason.burst": "All together: {moved} of {count} armatures move, {under}.",
}

_DEBRIEF = {
    "debrief.right": "Right, and proved.",
    "debrief.unproved": "Right, but not proved.",
    "debrief.unmended": "Right, but the fault is still there.",
    "debrief.mended_later": "Right, but it took another repair.",
    "debrief.by_ear": "You went by ear and codes. Measure the part before you replace it.",
    "debrief.not_right": "Not quite.",
    "debrief.it_was": "It was: {claims}.",
    "debrief.truth": "Truth: {claims}",
    "debrief.answer": "You said: {claims}; {certainty}",
    "debrief.passes": "the circuit passes",
    "debrief.claim": "{kind}, {location}, {side}{cylinders}",
    "debrief.score": "Score: {points:.0f} of 100",
    "debrief.arithmetic": (
        "cylinders 25 × {cylinders:.2f} + place 30 × {location:.2f} + kind 15 × {kind:.2f} "
        "+ proof 20 × {proof:.2f} + economy 10 × {economy:.2f}"
    ),
    "debrief.certainty": "How sure you were is scored separately: Brier {brier:.3f} (0 is best, 1 is worst).",
    "debrief.calibration": "So far: {rows}.",
    "debrief.calibration_row": "when you said {said:.2f}, you were right {right} of the time (times: {count})",
    "debrief.rule": "Remember: {rule}",
    "debrief.passed_rule": (
        "'The circuit passes' is a finding. It never means 'the injector is good': this test does not show nozzles, "
        "seals, compression or oil."
    ),
    "debrief.again": "Here is the truth again.",
    "debrief.yours": "Now hear what your answer would have sounded like on the same engine.",
    "debrief.take": "Think about it: {question}",
}


_TERMINAL = {
    "card.head": "Job card",
    "card.predicted": "(expected {predicted})",
    "card.heard": "Heard: {slots} ({place})",
    "card.codes": "Codes: {codes}",
    "card.no_codes": "none",
    "card.move": "Moving: {what}",
    "card.warm_run": "Engine run until warm",
    "card.heat": "Warming: {what}",
    "card.swap": "Returns swapped: {what}",
    "card.substitute": "Known-good part: {what}",
    "card.give_back": "Known-good part: {what}",
    "card.look": "Looked at what is open: {what}",
    "card.drag": "Drew a matching pin through the open terminals: {what}",
    "card.repair": "Repaired: {place}, {cylinders}",
    "card.stopped": "stopped",
    "card.taken_out": "taken out",
    "card.total": "Total: {minutes:.0f} min",
    "request.pair": "ohms, cylinder {cylinder}, {point}",
    "request.returns": "ohms, return {cylinder} to return {other}, {point}",
    "request.ground": "ohms to ground, {side} {cylinder}, {point}",
    "request.wire": "ohms end to end, {place}, {side} {cylinder}",
    "request.insulation": "insulation to ground, {side} {cylinder}, {point}",
    "request.volts": "volts at rest to ground, {side} {cylinder}, {point}",
    "request.insulation_between": "insulation, return {cylinder} to return {other}, {point}",
    "request.lamp": "lamp on the wire, {place}, {side} {cylinder}",
    "request.clamp": "clamp on return {cylinder} while {other} is driven",
    "request.crank": "battery voltage while the starter turns",
    "request.plus_drop": "voltage drop, battery plus to module, all driven together",
    "request.ground_drop": "voltage drop, module ground to battery minus, all driven together",
    "request.contribution": "cylinder contribution with the engine running",
    "request.compression": "relative compression while cranking",
    "request.drop": "voltage drop under load, {place}, {side} {cylinder}",
    "request.supply": "lowest drive supply with all driven together",
    "request.trace": "current trace, return {cylinder}",
    "request.dummy": "current into a dummy load in place of injector {cylinder}",
    "card.minutes": "{minutes:.0f} min",
    "case.head": "{heading}",
    "case.code": "Case code: {code}",
    "case.drawn_story": "The engine misfires. Nobody has measured anything yet.",
    "engine.head": "{title}. Numeric order: {numbers}. Firing order: {firing}.",
    "engine.bank": "{bank}: {numbers}, front to back",
    "engine.connector": "Pass-through connector {name} serves {cylinders}, with {pins}.",
    "engine.pins.shared": "one feed pin for all of them",
    "engine.pins.single": "a feed pin for each",
    "engine.live.all": "Every feed is live in every slot, so all the other injectors can hum.",
    "engine.hall": "The engine is in a big, empty hall, so pulses run together. Lean over a bank to hear each one.",
    "engine.live.commanded": "Only the feed of the commanded bank is live in a slot, so only its own bank can hum.",
    "welcome.start": "Type 'hear' to run the test, or 'help' for everything else.",
    "hear.whole": "the whole test",
    "stand.now": "You are standing here: {place}.",
    "choice.again": "Type a number from 1 to {count}.",
    "side.none": "no side",
    "finding.check": "You are about to commit: {claims}.",
    "finding.sure": "Commit it? You cannot take it back. (yes/no): ",
    "finding.dropped": "Not committed.",
    "finding.passes_next": "There is nothing to repair in this circuit. Type 'debrief'.",
    "debrief.why": "Why each slot sounded like that:",
    "debrief.path": "What you did:",
    "prompt": "{minutes:.0f} min{state} > ",
    "prompt.moving": "moving: {place}",
    "prompt.ran_warm": "warm all over",
    "prompt.warm": "warm: {place}",
    "prompt.swapped": "returns {first} and {second} swapped",
    "prompt.lent": "known-good part fitted: {what}",
    "resumed": "You worked on this case before. Steps so far: {count}. To start again, use practice --new.",
    "hear.playing": "Playing {what} ({place}, {seconds:.0f} s).",
    "hear.void": "The computer interrupted the sound, so it does not count. Play it again; it costs nothing.",
    "hear.stopped": "Stopped. Playing it again costs nothing.",
    "hear.file": "Saved to {path}",
    "hear.files": (
        "Sounds are saved as WAV files here, and each path is shown. They are deleted when the program ends. To keep "
        "a sound, use 'injector-trainer hear CASE -o FILE.wav'."
    ),
    "hear.back": "The sound output is back.",
    "hear.codes_later": "The test is over. You can read the codes now.",
    "suspects.head": "Places you ruled out: {places}",
    "suspects.none": "none yet",
    "look.nothing": "nothing unusual",
    "drag.nothing": "every terminal grips the pin",
    "work.drag_nothing": "Every terminal grips the pin.",
    "work.move": "Moving: {what}. Type 'move none' to stop.",
    "work.warm_run": "The engine has run and is warm all over. Run the test before it cools.",
    "work.heat": "Warm: {what}. Type 'heat none' to let it cool.",
    "work.none": "Stopped.",
    "work.swap": "Returns {first} and {second} are swapped at the module connector.",
    "work.substitute": "Known-good part fitted: {what}. Run the test again.",
    "reading.elsewhere": "Still unplugged: {places}. 'hear' plugs everything back in.",
    "work.look_off": "Unplugged: {places}. 'hear' plugs everything back in.",
    "finding.cancel": "Type 'cancel' to get out of these questions.",
    "finding.count_again": "Type 0, 1 or 2.",
    "work.look": "All plugs are on. From outside, nothing looks burnt or wet. To look inside, unplug a connector.",
    "reading": "{what}: {display}",
    "codes.line": "{code}  {meaning}",
    "finding.ask_count": "How many faults? 0 (circuit passes), 1 or 2",
    "finding.ask_cylinders": "Cylinders of fault {number}, for example 3 or 1,3",
    "finding.ask_location": "Place of fault {number}",
    "finding.ask_kind": "Kind of fault {number}",
    "finding.ask_side": "Side of fault {number} (n for none)",
    "finding.ask_certainty": "How sure are you",
    "finding.committed": "You committed: {claims}; {certainty}.",
    "repair.ask": "Now the repair. Type 'repair PLACE CYLINDERS', then 'retest', then 'debrief'.",
    "repair.done": "Done: {what}. It took {minutes:.0f} min. Type 'retest' to see whether that was the fault.",
    "retest.proved": "Every slot is even and there is no code.",
    "retest.provoke": (
        "No test before the repair showed the fault, so an even one proves nothing yet. Check it the way you found "
        "it: move it, warm it, or measure again."
    ),
    "retest.not_proved": "A slot is not even, or a code has come back. The fault is still there.",
    "work.given_back": "The known-good parts are out, and the engine's own parts are back in.",
    "typed.yes": "yes y",
    "live.ask": (
        "This is live work. With the preparation it takes {minutes:.0f} min. Has a person authorised by your local "
        "rules closed off the area? (yes/no): "
    ),
    "price.ask": "This takes {minutes:.0f} min. Go ahead? (yes/no): ",
    "price.left": "Not done. No time was charged.",
    "left": "Stopped here. Nothing is lost: the same command brings you back to this case.",
    "left_unkept": "Stopped here. Nothing could be saved on this machine, so your work is gone.",
    "closed": "Case closed.",
    "unknown_command": "I do not know '{word}'. Type 'help'.",
    "silent_ask": (
        "Do you hear nothing at all? The workshop noise is always there. If you cannot hear that either, it is your "
        "loudspeaker."
    ),
    "memory_store": "Nothing you do now will be saved. {reason}",
    "window.absent": "The window needs a screen and there is none here, so practice runs in the terminal.",
    "doctor.good": "good",
    "doctor.bad": "to fix",
    "check.tries_move": "{file}: moving the {place} shows the fault on try {count}.",
    "check.tries_heat": "{file}: warming the {place} shows the fault on try {count}.",
    "check.good": "Files read: {count}. No problems.",
    "check.bad": "Problems found: {problems}. Files read: {count}.",
}

_HELP = {
    "help": (
        "Listen     hear [SLOT ...]                 run the whole test, or replay slots (all, 1, 2, ...)\n"
        "           compare A B                     two slots one after the other, at the same volume\n"
        "           stand PLACE                     front, a bank, 'cover N' (on the cover), 'probe N' (cover off)\n"
        "Codes      codes · clear\n"
        "Measure    pair POINT N                    feed to return of cylinder N\n"
        "           returns POINT N M               return to return\n"
        "           ground POINT N | ground POINT feed N     pin to engine ground\n"
        "           wire engine|cover N [feed]      one wire end to end\n"
        "           insulation POINT N [M]          insulation to ground, or to return M\n"
        "           volts POINT N | volts POINT feed N       volts at rest to ground, to prove it dead\n"
        "           drop module|engine|connector|cover|coil N [feed]     voltage drop under load\n"
        "           lamp engine|cover N [feed]      a lamp on a wire that is unplugged at both ends\n"
        "           supply · crank · plusdrop · grounddrop · compression · contribution · trace N · dummy N\n"
        "           clamp N [M]                     a clamp on return N while M is driven\n"
        "             POINT: module, plug (injector side), plug harness, or a connector's name [engine|cover]\n"
        "             add 'connected', 'firm', 'live', 'leads' or 'nowait' to make that mistake on purpose\n"
        "             add 'minmax' to keep the lowest and highest reading while you move something\n"
        "Work       move PLACE [BANK] [gentle] | move none · heat PLACE [BANK] [gentle] | heat none\n"
        "           warmrun · swap N M · look · drag\n"
        "           lend injector N | lend module | lend none     fit a known-good part, or take it out\n"
        "Think      out PLACE · back PLACE          rule a place out, or put it back · card\n"
        "           expect WORDS                    say what you expect before you take the next reading\n"
        "           hint                            three hints, each stronger than the last; the card shows them\n"
        "Answer     finding · then repair PLACE N[,M] [feed|return] · retest [moving PLACE | warm PLACE] · debrief\n"
        "           why [N]                         after the finding: what your evidence leaves, and why\n"
        "Other      engine · help · leave\n"
        "PLACE of a fault: module, engine, connector, cover, coil, armature, power"
    ),
}

TEXTS: dict[str, str] = {
    **_NAMES, **_CODES, **_EXPLANATION, **_DEBRIEF, **_TERMINAL, **_HELP,
}  # fmt: skip
