"""English for reasoning: tests to do next, misconceptions, hints, paths and proofs."""

_TESTS = {
    "plan.hear": "run the whole test and listen from the front",
    "plan.through_cover": "listen through the cover over each injector in its own slot",
    "plan.probe": "stethoscope on each injector of the {what} bank in its own slot",
    "plan.codes": "read the codes after the test",
    "plan.module_pairs": "ohms, feed to each return, at the module connector",
    "plan.module_returns": "ohms, return to return, at the module connector",
    "plan.module_grounds": "ohms from every pin to ground at the module connector",
    "plan.through_pairs": "ohms at the pass-through connectors of the {what} bank, cover side",
    "plan.through_grounds": "ohms from pins to ground at the pass-through connectors of the {what} bank, cover side",
    "plan.wires_engine": "engine-harness wires end to end, {what} bank",
    "plan.wires_cover": "under-cover wires end to end, {what} bank",
    "plan.engine_alone": "engine harness alone, {what} bank: each wire to ground and to the others",
    "plan.cover_alone": "under-cover harness alone, {what} bank: each wire to ground and to the others",
    "plan.plug_pairs": "ohms of the injectors at their plugs, {what} bank",
    "plan.plug_grounds": "ohms from injector pins to ground at their plugs, {what} bank",
    "plan.look_module": "look at the terminals of the module plug",
    "plan.look_through": "look into the open pass-through connectors, {what} bank",
    "plan.look_cover": "look under the cover, {what} bank",
    "plan.drag_module": "pin drag test at the module plug",
    "plan.drag_through": "pin drag test in the pass-through connectors, {what} bank",
    "plan.drag_cover": "pin drag test at the injector plugs, {what} bank",
    "plan.module_volts": "volts at rest on every pin of the module connector, all plugs on",
    "plan.through_volts": "volts at rest on both halves of the open pass-through connectors, {what} bank",
    "plan.plug_volts": "volts at rest on both halves of the open injector plugs, {what} bank",
    "plan.crank": "battery volts while the starter turns",
    "plan.power_drops": "voltage drop from the battery to the module, plus and ground side",
    "plan.clamp": "clamp on each return while its neighbour is driven",
    "plan.lamp_engine": "a lamp on each isolated engine-harness wire, {what} bank",
    "plan.lamp_cover": "a lamp on each isolated under-cover wire, {what} bank",
    "plan.engine_insulation": "insulation between the returns of the engine harness alone, {what} bank",
    "plan.cover_insulation": "insulation between the returns under the cover alone, {what} bank",
    "plan.warm_run": "run the engine until it is warm, then run the test",
    "plan.contribution": "cylinder contribution with the engine running",
    "plan.compression": "relative compression from the starter current",
    "plan.supply": "drive supply while all are driven together",
    "plan.trace": "current trace of cylinder {what}",
    "plan.drops": "voltage drop under load up to the pass-through connector, cylinder {what}",
    "plan.drops_cover": "voltage drop under load under the cover, cylinder {what}",
    "plan.move": "move the harness during the test: {what}",
    "plan.try": "{test} (try {number})",
    "plan.heat": "warm a place and run the test: {what}",
    "plan.reseat_module": "unplug the module and plug it in again, then run the test",
    "plan.reseat": "unplug the pass-through connectors of the {what} bank and plug them in again, then run the test",
    "plan.reseat_plugs": "unplug the injectors of the {what} bank and plug them in again, then run the test",
    "plan.lend_module": "run the test with a known-good module",
    "plan.lend_injector": "run the test with a known-good injector in cylinder {what}",
    "plan.swap": "swap the return of cylinder {what} with its neighbour's and hear both",
    "plan.dummy": "a dummy load in place of injector {what}",
    "plan.complaint": "verify the complaint: when does it show?",
    "plan.pairs_moved": "ohms at the module connector while you move the harness: {what}",
    "plan.grounds_moved": "ohms from every pin to ground at the module connector while you move the harness: {what}",
    "plan.pairs_warm": "ohms at the module connector with one place warm: {what}",
    "plan.trace_moved": "current trace while you move the harness: {what}",
    "plan.trace_warm": "current trace with one place warm: {what}",
    "plan.pairs_reseated": (
        "unplug the pass-through connectors of the {what} bank and plug them in again, then read ohms at the module "
        "connector"
    ),
    "plan.pairs_reseated_plugs": (
        "unplug the injectors of the {what} bank and plug them in again, then read ohms at the module connector"
    ),
    "plan.repair_and_retest": "the right repair, then the test again",
    "kind_of_step.begin": "Run the test and listen first.",
    "kind_of_step.listen": "Listen again, closer or from another place. Your ears can tell you more.",
    "kind_of_step.memory": "Ask what the module itself has noticed.",
    "kind_of_step.outside": "Use a meter at a connector that you can reach from outside.",
    "kind_of_step.inside": "You know all that you can learn from outside. It is time to open up.",
    "kind_of_step.driven": "Measure while current flows. At rest it may look good.",
    "kind_of_step.running": "Let the running engine show you which cylinder is weak.",
    "kind_of_step.provoke": "Something may come and go. Provoke it while you test.",
    "kind_of_step.exchange": "Exchange one thing and see whether the fault moves with it.",
    "kind_of_step.eyes": "Look before you take another reading.",
    "kind_of_step.feel": "Feel how the terminals grip. Your eyes cannot see that.",
}

_HINTS = {
    "hint.first": "Hint 1 of 3: {step} (Your job card shows that you took it. The next hint is stronger.)",
    "hint.second": (
        "Hint 2 of 3: {test}. It takes {minutes:.0f} min and should halve what is left {bits:.1f} times over."
    ),
    "hint.saves": "On average this saves {saved:.0f} min of wrong repairs.",
    "hint.third": "Hint 3 of 3, worked out: {test}. Before this test, your evidence leaves:",
    "hint.finding": "  {percent:>8}  {finding}  → answer {lead}",
    "hint.same": "This test cannot tell apart findings with the same letter.",
    "hint.proved": "Your evidence already proves one finding. Think about what you have, then commit.",
    "hint.nothing": "No other test here tells you more. Commit, and say how sure you are.",
    "hint.repairs": "Repairs in the cheapest order, {minutes:.0f} min on average:",
    "hint.repair": "  {what}: {percent}, {minutes:.0f} min with the retest",
    "card.hint": "Hint {strength}: {test}",
    "card.hint_first": "Hint 1",
    "expect.noted": "Noted. Take the reading and compare.",
    "expect.beside": "You expected {predicted}. The display shows {display}.",
    "reasoning.wait": "Working out what your evidence proves. On a new engine this takes a few seconds.",
}

_MISCONCEPTIONS = {
    "misconception.insisted": "naming a fault although the circuit passes",
    "misconception.overlooked": "missing a slot that is not even",
    "misconception.one_of_two": "finding one fault and missing the second",
    "misconception.even_slot": "naming an even slot",
    "misconception.burst_or_order": "counting the burst as a slot, or going by firing order",
    "misconception.not_shown": "taking 'not shown' for 'good'",
    "misconception.silent_loudspeaker": "taking a silent loudspeaker for a silent circuit",
    "misconception.module_for_its_power": "blaming the module for what feeds it",
    "misconception.one_for_group": "naming one slot of a whole group",
    "misconception.counted_burst": "counting the burst as a slot",
    "misconception.firing_order": "going by firing order instead of numeric order",
    "misconception.measured_connected": "measuring with the plug still on",
    "misconception.hum_for_circuit": "taking the hum for a working circuit",
    "misconception.open_for_short": "taking an open for a short, or a short for an open",
    "misconception.code_for_location": "taking a code for a place",
    "misconception.code_of_another": "taking an old code for today's fault",
    "misconception.wrong_side": "choosing the wrong side of a connector",
    "misconception.by_ear_alone": "naming a place by ear alone",
    "misconception.unclassified": "something else",
    "refute.insisted": (
        "All {count} slots are within {spread:.1f} dB of a good engine, and every armature moves. The cause of the "
        "complaint is not in this circuit."
    ),
    "refute.not_shown": (
        "The fault is {true}. Your tests did not bring it out, so 'the circuit passes' is at {passes}. 'Not shown' "
        "says something about the test, never about the part."
    ),
    "refute.overlooked": (
        "The fault is {true}. Slot {true_slot} is {under:.0f} dB off its good level, which leaves 'the circuit "
        "passes' only {passes}."
    ),
    "refute.one_of_two": (
        "What you named is there, but so is a second fault: {true}. Go on until you can explain every slot that is "
        "not even."
    ),
    "refute.even_slot": (
        "You named {said}, which sounded even. Slot {true_slot} is {under:.0f} dB away from a good one. Count aloud "
        "after the burst: 1, 2, 3 …"
    ),
    "refute.burst_or_order": (
        "The bad slot is number {true_slot}. Counting the burst, or going by firing order ({firing}), gives {said}. "
        "Start after the burst: 1, 2, 3 …"
    ),
    "refute.silent_loudspeaker": (
        "You heard nothing, but {even} of {count} slots play at {level:.0f} dB(A) over a noise of {bed:.0f}. If you "
        "cannot hear that noise, check your loudspeaker."
    ),
    "refute.module_for_its_power": (
        "The module was fine: {true}. A module can only pass on what the battery sends it. {even} of {count} "
        "slots were even. Measure both voltage drops before you order one."
    ),
    "refute.one_for_group": (
        "You named {said}, but {group} share what is broken. All of them are {under:.0f} dB off. Listen to the whole "
        "row before you name one."
    ),
    "refute.counted_burst": (
        "The first sound is all together and belongs to no single cylinder. Slot {true_slot} is {under:.0f} dB off. "
        "Count the burst, and you get {said}."
    ),
    "refute.firing_order": (
        "The slots go 1, 2, 3 …, not {firing}. The bad slot is number {true_slot}. In firing order, place {true_slot} "
        "would be cylinder {said}."
    ),
    "refute.measured_connected": (
        "You measured with the plug still on, so the meter read everything on that wire. That is where {display} "
        "comes from. Unplug first, then measure."
    ),
    "refute.hum_for_circuit": (
        "The coil in slot {true_slot} gets {own:.2f} A: its circuit is open. You heard {others:.1f} A through each of "
        "{humming} others. The injector may be good."
    ),
    "refute.open_for_short": (
        "In slot {true_slot} the output carries {output:.1f} A, the coil {own:.1f} A. With an open, neither carries "
        "current. With a short, only the coil does not. Measure the pair's ohms."
    ),
    "refute.code_for_location": (
        "The fault is {true}. A code names a cylinder, never a place. Any break along that wire sets the same code. "
        "Measure at one break point after another."
    ),
    "refute.code_of_another": (
        "The fault is {true}. A code named {said}, but slot {true_slot} is the one that is not even. Old codes stay "
        "in memory: clear, run the test, read again."
    ),
    "refute.wrong_side": (
        "The cylinder is right, but the fault is {true}. Unplug there and measure both sides. If both are good, it is "
        "the contact between them."
    ),
    "refute.by_ear_alone": (
        "Every break in one circuit sounds the same, {under:.0f} dB down. Your evidence gave your place {said_chance} "
        "and the true one {left}. Measure next time."
    ),
    "refute.unclassified": ("The truth is {true}. Your evidence gave your finding {said_chance} and the truth {left}."),
}

_DEBRIEF = {
    "debrief.proof": "Proof: on your evidence, your finding is {percent} likely. From 95 % we call it proved.",
    "debrief.proof_open": (
        "Proof: on your evidence, your finding is {percent} likely. This case stays open: all its tests together "
        "reach {reachable}."
    ),
    "debrief.economy": (
        "Time: you used {used:.0f} min, including the right repair and its retest. The best path takes {best:.0f} "
        "min. Economy counts once the place is right and proved."
    ),
    "debrief.economy_passes": (
        "Time: you used {used:.0f} min. The best path to 'the circuit passes' takes {best:.0f} min. Economy counts "
        "once that is proved."
    ),
    "debrief.side": (
        "Side: you said {said}, but it is the {true}. If you repair the wrong wire, the fault is still there."
    ),
    "debrief.retest_failed": (
        "The retest showed the fault again, so that repair did not cure it. That costs {lost:.0f} points."
    ),
    "debrief.retest_again": "The retest showed the fault again.",
    "debrief.the_place": "the {place}",
    "debrief.another_place": "a fault somewhere else",
    "debrief.unmeasured": (
        "You named {place}, but no measurement rules out {rival}. So place and proof count only half, and the finding "
        "is not right. That repair takes {repair:.0f} min and needs parts. If it is the wrong one, the shop or the "
        "customer pays for it."
    ),
    "debrief.unmeasured_passes": (
        "Even slots alone do not prove a circuit good. Compare the ohms or the current trace with a good cylinder. "
        "Without that, proof counts only half."
    ),
    "debrief.hides": (
        "{first} hides {second}: while the first fault is there, no test here shows the second. Repair the first, "
        "then test again."
    ),
    "debrief.would_tell": "This would have told you more: {test}.",
    "debrief.misconception": "What went wrong: {name}.",
    "debrief.step": "           gave {bits:.1f} bits; the best finding is now at {percent}{out}",
    "debrief.step_out": "; ruled out: {names}",
    "debrief.step_strange": "           no fault on this engine explains that answer",
    "debrief.best": "The best path to this fault:",
    "debrief.best_step": "{minutes:>5.0f} min  {test}  ({bits:.1f} bits expected; then {percent})",
    "debrief.best_open": "This path does not prove the fault, so it ends without a repair.",
    "debrief.shown_at": "The fault comes and goes, so we play it while it shows: {place} moved and warm.",
    "debrief.left": "What your evidence leaves:",
    "debrief.left_line": "  {percent:>8}  {finding}",
    "debrief.suspects_right": "You ruled out {places}, and you were right.",
    "debrief.suspects_wrong": "You ruled out {places}, and that is where the fault is.",
    "debrief.suspects_early": "You ruled out {places} too early: your evidence still gave it {percent}.",
    "debrief.other_reading": "  {what}: you read {display}; with your answer you would have read {other}",
    "debrief.other_readings": "Your readings, beside those of an engine with your answer in it:",
    "debrief.even_alike": "  Every reading would have been the same, so none of them supports your answer.",
    "take.opens": "What told you that no current flows, and what told you where it stops?",
    "take.shorts": "Where did the current go instead, and which reading showed it?",
    "take.others": "Which reading told this fault apart from a plain open circuit?",
    "take.passes": "What would you still have to check before you said 'good'?",
    "why.head": "{finding}: {percent}. Its rival: {rival}, {other}. For (+) or against (−) it, in bits:",
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
    "inspect.posterior": "Posterior with all the offered evidence:",
    "inspect.path": "Best path:",
    "check.unsolvable": "too little to single out the truth: it leaves {left}",
    "check.solvable": "the truth at 95 % with all offered evidence, or stays_open with the right answer",
    "check.offer": "offer {words} too",
    "check.own_fault": "too much for this program: it stopped with a {kind}",
    "check.an_engine_to_solve": "an engine whose test can be solved",
    "check.engine_runs_away": "an engine whose currents or armatures run away",
    "check.mend.engine_runs_away": "bring the values under solenoid and module closer to those of a shipped engine",
    "check.engine_never_rests": "an engine that does not settle: each of its pulses runs into the next",
    "check.mend.engine_never_rests": (
        "add damping to the armature and its stop, strengthen the supply, or send fewer pulses"
    ),
    "check.can_be_checked": "a file that can be checked",
    "check.send_trace": "send the file and the lines that begin with Traceback to whoever looks after this program",
    "check.more": "and {count} more",
    "check.nothing_separates": "no test tells them apart: choose another fault, or add stays_open",
    "check.not_open": "set, although the evidence proves {finding} ({percent})",
    "check.take_open_out": "take stays_open out, or offer less evidence",
    "check.inaudible": "too loud: {bed:.1f} dB(A), when slot {slot} is at {level:.1f} dB(A)",
    "check.audible": "a deciding sound at least {margin:.0f} dB above the bed",
    "check.quieter_bed": "lower the bed to {bed:.1f} dB(A) or less",
    "fair.case": "Case",
    "fair.listener.good_headphones": "good headphones",
    "fair.listener.cheap_headphones": "cheap headphones",
    "fair.listener.laptop": "laptop speaker",
    "fair.listener.phone": "phone speaker",
    "fair.listener.age_45": "age 45",
    "fair.listener.age_60": "age 60",
    "fair.listener.age_60_laptop": "age 60, laptop speaker",
    "fair.fair": "fair",
    "fair.lost_one": "slot {slots} is lost",
    "fair.lost_several": "slots {slots} are lost",
    "fair.lost_every": "every slot is lost",
    "fair.alike_one": "slot {slots} sounds good",
    "fair.alike_several": "slots {slots} sound good",
    "fair.alike_every": "every slot sounds good",
    "fair.sum": "{listener}: {fair} of {count} cases are fair",
    "fair.sum_one": "{listener}: {fair} of {count} case is fair",
    "fair.listening": "Listening to case {number} of {count}.",
    "fair.meaning": (
        "A slot is lost when the bay hides it, or when it is too quiet for these ears. "
        "A slot sounds good when it is within {limit:.0f} dB of a good one."
    ),
    "fair.note": "This is about outputs and the typical ears of an age. It is not a test of anybody's hearing.",
    "fair.no_case_in_it": "without a case or a set",
    "fair.an_engine": "an engine profile",
    "fair.a_case": "a case, a set, or a folder with them",
}

TEXTS: dict[str, str] = {**_TESTS, **_HINTS, **_MISCONCEPTIONS, **_DEBRIEF}
