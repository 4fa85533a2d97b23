"""English for reasoning: tests to do next, misconceptions, hints, paths and proofs."""

_TESTS = {
    "plan.hear": "run the whole test and listen from the front",
    "plan.through_cover": "listen through the cover over each injector in its own slot",
    "plan.probe": "stethoscope on each injector of bank {what} in its own slot",
    "plan.codes": "read the codes after the test",
    "plan.module_pairs": "ohms, feed to each return, at the module connector",
    "plan.module_returns": "ohms, return to return, at the module connector",
    "plan.module_grounds": "every pin to ground at the module connector",
    "plan.through_pairs": "ohms at the pass-through connectors of bank {what}, cover side",
    "plan.through_grounds": "pins to ground at the pass-through connectors of bank {what}, cover side",
    "plan.wires_engine": "engine-harness wires end to end, bank {what}",
    "plan.wires_cover": "under-cover wires end to end, bank {what}",
    "plan.engine_alone": "the engine harness of bank {what} alone: wires to ground and to each other",
    "plan.cover_alone": "the under-cover harness of bank {what} alone: wires to ground and to each other",
    "plan.plug_pairs": "ohms of the injectors at their plugs, bank {what}",
    "plan.plug_grounds": "injector pins to ground at their plugs, bank {what}",
    "plan.look_module": "look at the terminals of the module plug",
    "plan.look_through": "look into the open pass-through connectors, bank {what}",
    "plan.look_cover": "look under the cover, bank {what}",
    "plan.drag_module": "pin drag test at the module plug",
    "plan.drag_through": "pin drag test in the pass-through connectors, bank {what}",
    "plan.drag_cover": "pin drag test at the injector plugs, bank {what}",
    "plan.module_volts": "volts at rest on every pin of the module connector, all plugs on",
    "plan.through_volts": "volts at rest on both halves of the open pass-through connectors, bank {what}",
    "plan.plug_volts": "volts at rest on both halves of the open injector plugs, bank {what}",
    "plan.crank": "battery volts while the starter turns",
    "plan.power_drops": "voltage drop from the battery to the module, plus and ground side",
    "plan.clamp": "clamp on each return while its neighbour is driven",
    "plan.lamp_engine": "a lamp through each isolated engine-harness wire, bank {what}",
    "plan.lamp_cover": "a lamp through each isolated under-cover wire, bank {what}",
    "plan.engine_insulation": "insulation between the returns of the engine harness alone, bank {what}",
    "plan.cover_insulation": "insulation between the returns under the cover alone, bank {what}",
    "plan.warm_run": "run the engine until it is warm, then run the test",
    "plan.contribution": "cylinder contribution with the engine running",
    "plan.compression": "relative compression from the starter's current",
    "plan.supply": "drive supply while all are driven together",
    "plan.trace": "current trace of cylinder {what}",
    "plan.drops": "voltage drops up to the pass-through connector, cylinder {what}, driven",
    "plan.drops_cover": "voltage drops under the cover, cylinder {what}, driven",
    "plan.move": "move the harness during the test: {what}",
    "plan.try": "{test} (try {number})",
    "plan.heat": "warm a place and run the test: {what}",
    "plan.reseat_module": "take the module's plug off and on again, then run the test",
    "plan.reseat": "take the pass-through connectors of bank {what} off and on again, then run the test",
    "plan.reseat_plugs": "take the injector plugs of bank {what} off and on again, then run the test",
    "plan.lend_module": "run the test with a known-good module",
    "plan.lend_injector": "run the test with a known-good injector {what}",
    "plan.swap": "swap the return of cylinder {what} with its neighbour's and hear both",
    "plan.dummy": "a dummy load in place of injector {what}",
    "plan.complaint": "verify the complaint: when does it show?",
    "plan.pairs_moved": "ohms at the module connector while you move the harness: {what}",
    "plan.grounds_moved": "every pin to ground at the module connector while you move the harness: {what}",
    "plan.pairs_warm": "ohms at the module connector with one place warm: {what}",
    "plan.trace_moved": "current trace while you move the harness: {what}",
    "plan.trace_warm": "current trace with one place warm: {what}",
    "plan.pairs_reseated": (
        "take the pass-through connectors of bank {what} off and on again, then ohms at the module connector"
    ),
    "plan.pairs_reseated_plugs": (
        "take the injector plugs of bank {what} off and on again, then ohms at the module connector"
    ),
    "plan.repair_and_retest": "the right repair, and the test once more",
    "kind_of_step.begin": "Run the test and listen first.",
    "kind_of_step.listen": "Listen again, closer or from another place: hearing has not told all it can.",
    "kind_of_step.memory": "Ask what the module itself has noticed.",
    "kind_of_step.outside": "A meter, at a connector that can be reached from outside.",
    "kind_of_step.inside": "Nothing outside tells more: it is time to open up.",
    "kind_of_step.driven": "Measure while current flows: at rest it may look good.",
    "kind_of_step.running": "Let the engine itself say which cylinder is weak.",
    "kind_of_step.provoke": "What comes and goes must be provoked.",
    "kind_of_step.exchange": "Exchange one thing, and see whether the fault goes with it.",
    "kind_of_step.eyes": "Use your eyes before another reading.",
    "kind_of_step.feel": "Feel how the terminals grip: eyes do not see that.",
}

_HINTS = {
    "hint.first": "Hint 1 of 3: {step} (That it was taken stands on the job card. The next one is stronger.)",
    "hint.second": "Hint 2 of 3: {test}. {minutes:.0f} min; expected to tell {bits:.1f} bits.",
    "hint.saves": "On average it saves {saved:.0f} min of wrong repairs.",
    "hint.third": "Hint 3 of 3, worked: {test}. Before it, this is what your evidence leaves:",
    "hint.finding": "  {percent:>8}  {finding}  → answer {lead}",
    "hint.same": "Findings with the same answer letter are not told apart by this test.",
    "hint.proved": "Your evidence already proves one finding. Think what you have, then commit.",
    "hint.nothing": "No test on offer tells more. Commit, and say how sure you are.",
    "hint.repairs": "Repairs in the order that costs least, {minutes:.0f} min on average:",
    "hint.repair": "  {what}: {percent}, {minutes:.0f} min with the retest",
    "card.hint": "hint {strength}: {test}",
    "card.hint_first": "hint 1",
    "expect.noted": "Noted. Take the reading and compare.",
    "expect.beside": "You expected {predicted}; the display says {display}.",
    "reasoning.wait": "Working out what the evidence proves (a few seconds for a new engine).",
}

_MISCONCEPTIONS = {
    "misconception.insisted": "fault insisted on where the circuit passes",
    "misconception.overlooked": "a wrong slot overlooked",
    "misconception.one_of_two": "one fault found, a second left",
    "misconception.even_slot": "an even slot named",
    "misconception.burst_or_order": "the burst counted as a slot, or firing order for numeric order",
    "misconception.not_shown": "not shown taken for good",
    "misconception.silent_loudspeaker": "a silent loudspeaker taken for a silent circuit",
    "misconception.module_for_its_power": "the module blamed for what feeds it",
    "misconception.one_for_group": "one slot for a whole group",
    "misconception.counted_burst": "the all-together burst counted as a slot",
    "misconception.firing_order": "firing order for numeric order",
    "misconception.measured_connected": "measured while connected",
    "misconception.hum_for_circuit": "hum taken for a working circuit",
    "misconception.open_for_short": "open taken for short, or short for open",
    "misconception.code_for_location": "a code taken for a location",
    "misconception.code_of_another": "an old code taken for today's fault",
    "misconception.wrong_side": "wrong side of a connector",
    "misconception.by_ear_alone": "a place named by ear alone",
    "misconception.unclassified": "unclassified",
    "refute.insisted": (
        "All {count} slots are even, within {spread:.1f} dB of the sound engine, and every plate moves. "
        "A complaint is no proof of this circuit: it passes, and the fault is elsewhere."
    ),
    "refute.not_shown": (
        "The fault is {true}. What you did has not shown it, nor that it is not there: your evidence leaves "
        "'circuit passes' at {passes}. 'Not shown' is an answer about the test, never about the part."
    ),
    "refute.overlooked": (
        "Slot {true_slot} lies {under:.0f} dB under its good level, and your evidence leaves 'circuit passes' only "
        "{passes}. The fault is {true}."
    ),
    "refute.one_of_two": (
        "What you named is there, and a second one with it: {true}. One explanation has to cover every slot that is "
        "not even."
    ),
    "refute.even_slot": (
        "The slot of {said} is even. The one that is not is {true_slot}, {under:.0f} dB from its good level. "
        "Count the slots aloud after the burst: 1, 2, 3 …"
    ),
    "refute.burst_or_order": (
        "The bad slot is number {true_slot}. Counting the burst makes it {said}, and so does firing order "
        "({firing}): the burst belongs to nobody, and the test goes 1, 2, 3 …"
    ),
    "refute.silent_loudspeaker": (
        "You heard nothing anywhere, but {even} of {count} slots stand at {level:.0f} dB(A) over a bed of {bed:.0f}. "
        "If the bed is silent too, it is your loudspeaker."
    ),
    "refute.module_for_its_power": (
        "The module was fine: {true}. A module can only pass on what the battery sends it. {even} of {count} "
        "slots were even. Measure both voltage drops before you order one."
    ),
    "refute.one_for_group": (
        "You named {said}; {group} share what is broken. Listen to the whole row before you name one: "
        "all of them stand {under:.0f} dB under their good level."
    ),
    "refute.counted_burst": (
        "The first sound is all together and belongs to nobody. Slot {true_slot} is the one "
        "{under:.0f} dB down; counting the burst makes it {said}."
    ),
    "refute.firing_order": (
        "The test goes 1, 2, 3 …, not {firing}. The bad slot is number {true_slot}; in firing order "
        "place {true_slot} would be cylinder {said}."
    ),
    "refute.measured_connected": (
        "With the plug on, your meter read everything that hangs on the wire: {display} says nothing of one part. "
        "Open the break point first, then measure there."
    ),
    "refute.hum_for_circuit": (
        "In slot {true_slot} its own coil carries {own:.2f} A: no circuit. What you heard is {others:.1f} A "
        "through each of {humming} others. The injector has not been asked; the circuit to it is open."
    ),
    "refute.open_for_short": (
        "Slot {true_slot}: its output carries {output:.1f} A at most and its coil {own:.1f} A. "
        "An open has neither; a short has the first without the second. The pair in ohms tells them apart."
    ),
    "refute.code_for_location": (
        "The code names a cylinder, never a place. Every place along one wire sets the same code; "
        "the truth is {true}. Ohms at successive break points would have told."
    ),
    "refute.code_of_another": (
        "A code named {said}, and its slot is in order; the one that is not is {true_slot}. A code in memory may be "
        "old: clear it, run the test, read again. The truth is {true}."
    ),
    "refute.wrong_side": (
        "Right cylinder, next door along the wire: the truth is {true}. Unplug there and measure both sides: "
        "the side that reads wrong has it; if both read well, it is the contact between."
    ),
    "refute.by_ear_alone": (
        "By ear every break along one circuit is the same {under:.0f} dB. Your evidence gave your place "
        "{said_chance} and the true one {left}. The ear names the cylinder; the meter names the place."
    ),
    "refute.unclassified": ("The truth is {true}. Your evidence gave your finding {said_chance} and the truth {left}."),
}

_DEBRIEF = {
    "debrief.proof": "Proof: what you gathered gives your finding {percent}; 95 % is full proof.",
    "debrief.proof_open": (
        "Proof: your finding has {percent}; this case stays open, and its own tests lead to {reachable}."
    ),
    "debrief.economy": (
        "Minutes: {used:.0f} with the right repair and its retest; the best path takes {best:.0f}. "
        "Economy counts once proof is full and the place right."
    ),
    "debrief.economy_passes": (
        "Minutes: {used:.0f}; the best path to 'circuit passes' takes {best:.0f}. Economy counts once proof is full."
    ),
    "debrief.side": "Side: you said {said}, it is the {true}. Mend the wrong wire and the fault is still there.",
    "debrief.retest_failed": (
        "The retest showed the fault again, so it is not repaired. That costs {lost:.0f} points."
    ),
    "debrief.the_place": "the {place}",
    "debrief.another_place": "a fault elsewhere",
    "debrief.unmeasured": (
        "You named {place} without a measurement that rules out {rival}. Place and proof count half, and "
        "the finding is not right. "
        "That repair takes {repair:.0f} min and parts; if it is the wrong one, the shop pays for it or the "
        "customer does."
    ),
    "debrief.unmeasured_passes": (
        "Even slots alone do not prove a circuit. Compare the ohms or the trace with a good mate; without "
        "that, proof counts half."
    ),
    "debrief.hides": (
        "{first} hides {second}: with the first one there, no test on offer shows the second. Mend the first and "
        "test again."
    ),
    "debrief.would_tell": "What would have told more: {test}.",
    "debrief.misconception": "What happened: {name}.",
    "debrief.step": "           told {bits:.1f} bits; best finding now {percent}{out}",
    "debrief.step_out": "; ruled out: {names}",
    "debrief.step_strange": "           nothing on this engine explains that answer",
    "debrief.best": "The best path to this fault:",
    "debrief.best_step": "{minutes:>5.0f} min  {test}  ({bits:.1f} bits expected; then {percent})",
    "debrief.shown_at": "The fault comes and goes. It is played at work: {place} moved and warm.",
    "debrief.left": "What your evidence leaves:",
    "debrief.left_line": "  {percent:>8}  {finding}",
    "debrief.suspects_right": "You had ruled out {places}: rightly.",
    "debrief.suspects_wrong": "You had ruled out {places}, and that is where it is.",
    "debrief.suspects_early": "You had ruled out {places} while your evidence still gave it {percent}.",
    "debrief.other_reading": "  {what}: you read {display}; your answer would have read {other}",
    "debrief.other_readings": "Your readings beside those of an engine with your answer in it:",
    "debrief.even_alike": "  every reading you took would have been the same: none of them speaks for your answer",
    "take.opens": "What in this case told you that no current flows, and what told you where it stops?",
    "take.shorts": "Where did the current go instead, and which reading showed it?",
    "take.others": "Which reading told this fault from a plain open?",
    "take.passes": "What would you still have to do before you said 'good'?",
    "why.head": "{finding}: {percent}, beside {rival}: {other}. For (+) or against (−) it, in bits:",
    "why.prior": "  {bits:+7.1f}  before any evidence",
    "why.line": "  {bits:+7.1f}  {question}",
    "why.rest": "  {bits:+7.1f}  everything else",
    "why.total": "  {bits:+7.1f}  together",
    "question.slot": "{slot} heard from {place}{work}",
    "question.codes": "codes{work}",
    "question.ohms": "ohms {pins}{work}",
    "question.volts": "volts at rest {pins}{work}",
    "question.lamp": "lamp {pins}{work}",
    "question.clamp": "clamp {pins} in {slot}{work}",
    "question.crank": "battery under crank{work}",
    "question.plus_drop": "voltage drop, battery plus to module{work}",
    "question.ground_drop": "voltage drop, module ground to battery minus{work}",
    "question.contribution": "cylinder contribution{work}",
    "question.compression": "relative compression{work}",
    "question.insulation": "insulation {pins}{work}",
    "question.drop": "drop {pins}, {slot} driven{work}",
    "question.supply": "drive supply{work}",
    "question.trace": "current trace, {slot}{work}",
    "question.dummy": "dummy load, {slot}{work}",
    "question.look": "a look at what is open{work}",
    "question.drag": "a pin drag test of what is open{work}",
    "question.ground": "ground",
    "question.pin": "{side} {name} at {point} ({half})",
    "question.moved": ", {place} moved",
    "question.ran_warm": ", warm everywhere",
    "question.warm": ", {place} warm",
    "question.changed": ", with {what}",
    "inspect.posterior": "Posterior with every offered piece of evidence:",
    "inspect.path": "Best path:",
    "check.unsolvable": "too little to single out the truth: it leaves {left}",
    "check.solvable": "the truth at 95 % with all offered evidence, or stays_open with the right answer",
    "check.offer": "offer {words} too",
    "check.own_fault": "more than this program can take: a {kind} stopped it",
    "check.an_engine_to_solve": "an engine whose test can be solved",
    "check.engine_runs_away": "an engine whose currents or plates run away",
    "check.mend.engine_runs_away": "bring the figures under solenoid and module nearer to those of a shipped engine",
    "check.engine_never_rests": "an engine that does not settle: each of its pulses goes on into the next",
    "check.mend.engine_never_rests": "damp the plate and its stop, strengthen the supply, or send fewer pulses",
    "check.can_be_checked": "a file that can be checked",
    "check.send_trace": "send the file and the lines that begin with Traceback to whoever looks after this program",
    "check.more": "and {count} more",
    "check.nothing_separates": "no test separates them: take another fault, or add stays_open",
    "check.not_open": "set, though the evidence proves {finding} ({percent})",
    "check.take_open_out": "take stays_open out, or offer less evidence",
    "check.inaudible": "too loud: {bed:.1f} dB(A), and slot {slot} stands at {level:.1f} dB(A)",
    "check.audible": "decisive sound at least {margin:.0f} dB over the bed",
    "check.quieter_bed": "lower the bed to {bed:.1f} dB(A) or less",
}

TEXTS: dict[str, str] = {**_TESTS, **_HINTS, **_MISCONCEPTIONS, **_DEBRIEF}
