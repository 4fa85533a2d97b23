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
    "certainty.0.5": "a guess (0.50)",
    "certainty.0.75": "leaning (0.75)",
    "certainty.0.95": "would bet the job on it (0.95)",
    "test.actuation_test": "actuation test",
    "test.codes": "codes",
    "test.look": "look at the connectors",
    "test.pin_drag": "pin drag test",
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
    "work.try": "{what}, try {number}, {effort}",
    "effort.gentle": "gently",
    "effort.thorough": "hard and long",
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
}


_TERMINAL = {
    "card.head": "Job card",
    "card.predicted": "(expected {predicted})",
    "card.heard": "heard: {slots}, from: {place}",
    "card.codes": "codes: {codes}",
    "card.no_codes": "none",
    "card.move": "moving: {what}",
    "card.warm_run": "engine run until warm",
    "card.heat": "warmed: {what}",
    "card.swap": "returns swapped: {what}",
    "card.substitute": "known-good part in: {what}",
    "card.give_back": "own parts back in: {what}",
    "card.look": "looked at what is open: {what}",
    "card.drag": "drew a matching pin through the open terminals: {what}",
    "card.repair": "repaired: {place}, cylinder {cylinders}",
    "card.total": "Total {minutes:.0f} min",
    "request.pair": "ohms, feed to return {cylinder}, {point}",
    "request.returns": "ohms, return {cylinder} to return {other}, {point}",
    "request.ground": "ohms to ground, {side} {cylinder}, {point}",
    "request.wire": "ohms end to end, {place}, {side} {cylinder}",
    "request.insulation": "insulation to ground, {side} {cylinder}, {point}",
    "request.volts": "volts at rest to ground, {side} {cylinder}, {point}",
    "request.insulation_between": "insulation, return {cylinder} to return {other}, {point}",
    "request.lamp": "lamp through the wire, {place}, {side} {cylinder}",
    "request.clamp": "clamp on return {cylinder} while {other} is driven",
    "request.crank": "battery while the starter turns",
    "request.plus_drop": "voltage drop, battery plus to module, all driven together",
    "request.ground_drop": "voltage drop, module ground to battery minus, all driven together",
    "request.contribution": "cylinder contribution, engine running",
    "request.compression": "relative compression, cranking",
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
    "prompt.ran_warm": "warm everywhere",
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
    "drag.nothing": "every terminal grips the pin",
    "work.move": "Moving: {what}. It goes on until 'move none'.",
    "work.warm_run": "The engine has run and is warm everywhere. Run the test before it cools.",
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
    "retest.provoke": (
        "No test before the repair showed the fault, so an even one proves nothing yet. Show it as you found it: "
        "move it, warm it, or read it again."
    ),
    "retest.not_proved": "Not even, or a code has come back: the fault is still there.",
    "work.given_back": "Known-good parts are out again, the engine's own are back in.",
    "typed.yes": "yes y",
    "live.ask": (
        "This is live work and takes {minutes:.0f} min with its preparation. Is the area isolated by a person whom "
        "your local rules name? (yes/no): "
    ),
    "price.ask": "That takes {minutes:.0f} min. Go ahead? (yes/no): ",
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
    "check.tries_move": "{file}: moving the {place} shows the fault in try {count}.",
    "check.tries_heat": "{file}: warming the {place} shows the fault in try {count}.",
    "check.good": "{count} files read, no problem.",
    "check.bad": "{problems} problems in {count} files.",
}

_HELP = {
    "help": (
        "Listen     hear [SLOT ...]                 run the whole test, or replay slots (all, 1, 2, ...)\n"
        "           compare A B                     two slots after one another, same gain\n"
        "           stand PLACE                     front, a bank, 'cover N' (on the cover), 'probe N' (cover off)\n"
        "Codes      codes · clear\n"
        "Measure    pair POINT N                    feed to return of cylinder N\n"
        "           returns POINT N M               return to return\n"
        "           ground POINT N | ground POINT feed N     pin to engine ground\n"
        "           wire engine|cover N [feed]      one wire end to end\n"
        "           insulation POINT N [M]                   to ground, or to return M\n"
        "           volts POINT N | volts POINT feed N       volts at rest to ground: prove it dead\n"
        "           drop module|engine|connector|cover|coil N [feed]     voltage drop while driven\n"
        "           lamp engine|cover N [feed]      a lamp through a wire that is off at both ends\n"
        "           supply · crank · plusdrop · grounddrop · compression · contribution · trace N · dummy N\n"
        "           clamp N [M]                     a clamp on return N while M is driven\n"
        "             POINT: module, plug (injector side), plug harness, or a connector's name [engine|cover]\n"
        "             add 'connected', 'firm', 'live', 'leads' or 'nowait' to measure so (and learn what that does)\n"
        "             add 'minmax' to keep the least and the most while something is moved\n"
        "Work       move PLACE [BANK] [gentle] | move none · heat PLACE [BANK] [gentle] | heat none\n"
        "           warmrun · swap N M · look · drag\n"
        "           lend injector N | lend module | lend none     known-good part in, or out again\n"
        "Think      out PLACE · back PLACE          rule a place out, or take it back · card\n"
        "           expect WORDS                    say what the next reading should be, before you take it\n"
        "           hint                            three of rising strength; they stand on the card\n"
        "Answer     finding · then repair PLACE N[,M] [feed|return] · retest [moving PLACE | warm PLACE] · debrief\n"
        "           why [N]                         after the finding: what your evidence leaves, and why\n"
        "Other      engine · help · leave\n"
        "PLACE of a fault: module, engine, connector, cover, coil, armature, power"
    ),
}

TEXTS: dict[str, str] = {
    **_NAMES, **_CODES, **_EXPLANATION, **_DEBRIEF, **_TERMINAL, **_HELP,
}  # fmt: skip
