"""Sentences of the exercises, in English."""

from __future__ import annotations

TEXTS: dict[str, str] = {
    "exercise.fault": "{kind}, {location}, {cylinders}",
    "exercise.whole": "the whole test",
    "exercise.good_slot": "slot {number} on a good engine",
    "exercise.this_slot": "slot {number} on this engine",
    "exercise.none": "none: all slots are even",
    "exercise.no_code": "no code",
    "exercise.which": "Hear the whole test. Which slots are not even?",
    "exercise.which.right": "Count in numeric order after the burst. Not even: {cylinders}.",
    "exercise.which.none": "Every slot is even. Small differences between good injectors are no fault.",
    "exercise.which.even": "{cylinders}: even here.",
    "exercise.which.missed": "Not even here: {cylinders}.",
    "exercise.which.one": "More than one is off: {cylinders} share a cause.",
    "exercise.which.firing": "The firing order would put {said} there. Slots come in numeric order.",
    "exercise.which.burst": (
        "You get {said} if you count the burst as a slot. The burst comes first and belongs to no single cylinder."
    ),
    "exercise.which.rule": "First the burst, then each cylinder in numeric order. Start counting after the burst.",
    "exercise.what": "Hear both. What does slot {number} sound like on this engine?",
    "exercise.what.even": "even: within a few decibels of a good slot",
    "exercise.what.weak": "weak: the click is there, but clearly softer",
    "exercise.what.dull": "dull: a thud without brightness, current without a click",
    "exercise.what.very_faint": "very faint: no click of its own, only a hum",
    "exercise.what.nothing": "nothing: only the bed",
    "exercise.what.rule": (
        "Even, weak, dull, very faint, nothing: each tells you something different about the circuit."
    ),
    "exercise.hum": "Hear slot {number} on a good engine and on this one. What do you still hear in it?",
    "exercise.hum.own": "Its own circuit carries current: part of injector {number} still works.",
    "exercise.hum.hum": "The hum is the others' background current. Circuit {number} itself carries nothing.",
    "exercise.hum.bed": "You hear only the workshop noise. Nothing on the engine makes a sound.",
    "exercise.hum.worn": "Injector {number} is worn and clicks softly.",
    "exercise.hum.rule": (
        "A hum without current in its own coil comes from the others. A dull thud is current without a click."
    ),
    "exercise.order": "After the burst the slots come one by one. Which cylinder is number {count} of them?",
    "exercise.order.right": "Slots come in numeric order, so it is {number}.",
    "exercise.order.burst": "{said} is one off: the burst comes first and belongs to no single cylinder.",
    "exercise.order.other": "{said} has its own slot, at its own place in numeric order.",
    "exercise.counted": (
        "Count every sound from the start, with the burst as number 1. The faint one is number {count}. Which "
        "cylinder is it?"
    ),
    "exercise.counted.right": "The burst was number 1, so sound {count} is cylinder {number}.",
    "exercise.place": "Where on this engine is cylinder {number}?",
    "exercise.place.right": "{number} sits there, {where}.",
    "exercise.place.other": "{said} sits there: {where}.",
    "exercise.where": "{bank} bank, position {place} from the front",
    "exercise.shared": "The slots of {cylinders} went bad together. What do they share with no other cylinder?",
    "exercise.shared.right": "{cylinders} are on it, and no others.",
    "exercise.shared.other": "That one has {cylinders} on it.",
    "exercise.shared.connector": "the {name} pass-through connector",
    "exercise.shared.output": "the module's {name} feed output",
    "exercise.shared.bank": "the {name} bank",
    "exercise.shared.nothing": "nothing: each has its own fault",
    "exercise.shared.one_cause": (
        "Several that fail together and share a part are one fault in that part, until you show otherwise."
    ),
    "exercise.numbering.rule": (
        "Slots follow the engine's numbers. The firing order, here {firing}, does not matter in this test."
    ),
    "exercise.says": "The module's memory shows this after the test. Which of these does {code} prove?",
    "exercise.says.right": "The current in this circuit was outside the code's limits during the test.",
    "exercise.says.right.why": "{meaning}. A code never names a place.",
    "exercise.says.place": "The fault is in cylinder {number}'s circuit at this place: {place}.",
    "exercise.says.place.why": (
        "The module measures at its own pins: it cannot tell one place along the wire from another."
    ),
    "exercise.says.injector": "Injector {number} is bad.",
    "exercise.says.injector.why": (
        "Wiring, connector, module or coil can set this code. That is how good injectors get replaced."
    ),
    "exercise.could": "The test set these codes. Which of these faults could not have set exactly these?",
    "exercise.could.right": "That one would set {codes}.",
    "exercise.could.same": "This one sets exactly these codes.",
    "exercise.old": "The codes were read and cleared, and the test was run again. What does {code} tell you now?",
    "exercise.old.first": "Read first: {codes}",
    "exercise.old.again": "After clearing and testing again: {codes}",
    "exercise.old.today": "Circuit {number} is not as it should be today.",
    "exercise.old.two": "There are two faults today, at {first} and at {second}.",
    "exercise.old.module": "The module has lost its memory.",
    "exercise.codes.rule": "Read, clear, test, read again. A code names a circuit, never a place.",
    "exercise.reading": "What does this reading tell you about the circuit from this point on?",
    "exercise.reading.mate": "A good cylinder reads {display}",
    "exercise.reading.good": "good: as close to the good cylinder as this meter can tell",
    "exercise.reading.good.why": (
        "Two readings that differ by less than twice the meter's accuracy cannot be told apart."
    ),
    "exercise.reading.open": "open somewhere from this point on",
    "exercise.reading.open.why": "The ohmmeter reads OL: there is no path, wherever the break is.",
    "exercise.reading.high": "too high: resistance added",
    "exercise.reading.high.why": (
        "It is above the good cylinder by more than twice the meter's accuracy: a bad joint or a thin wire."
    ),
    "exercise.reading.low": "too low: a short, or shorted turns",
    "exercise.reading.low.why": (
        "It is below the good cylinder by more than twice the meter's accuracy: another path, or shorted turns in the "
        "coil."
    ),
    "exercise.reading.rule": (
        "Compare with a good cylinder, and allow for the meter's accuracy, here ±({percent:.1f} % + {counts} counts)."
    ),
    "exercise.where_break": "There is one break in the return of cylinder {number}. Where do these readings put it?",
    "exercise.where.engine_harness": "The wire reads OL end to end, and everything behind it reads good.",
    "exercise.where.pass_through_connector": "Both halves read good apart, so only the contact between them is left.",
    "exercise.where.under_cover_harness": (
        "OL from the cover side and good at the injector: the wire between them is left."
    ),
    "exercise.where.solenoid_coil": "It reads OL at the injector's own pins.",
    "exercise.where.other": "One of these readings would be different if the break were there.",
    "exercise.where.rule": (
        "Split the circuit at each connector. Where both halves read good, look at what joins them."
    ),
    "exercise.slip": "What is this reading worth?",
    "exercise.slip.how.fine": "plug off at the module, key off, leads zeroed",
    "exercise.slip.how.connected": "back-probed at the injector, plug on, key off, leads zeroed",
    "exercise.slip.how.leads": "plug off at the injector, key off, leads not zeroed",
    "exercise.slip.how.live": "back-probed at the injector, plug on, key on",
    "exercise.slip.fine": "It is the value of this part.",
    "exercise.slip.fine.why": "Plug off, key off, leads zeroed: then the reading is of this part alone.",
    "exercise.slip.connected": "It may be too low, and hide a break.",
    "exercise.slip.connected.why": "With the plug on, current takes every other path as well.",
    "exercise.slip.leads": "It is a few tenths of an ohm too high.",
    "exercise.slip.leads.why": "A few tenths of an ohm from the leads matter at this scale.",
    "exercise.slip.live": "It means nothing, and the meter may be damaged.",
    "exercise.slip.live.why": "Never measure ohms on a live circuit. Key off, wait, prove it dead.",
    "exercise.slip.rule": "Key off and proved dead, plug off, leads zeroed, then read.",
    "exercise.begun.heard": "Heard: {cylinders} not even, the others even",
    "exercise.next": "This is what you know so far. Which of these tests tells you the most for its minutes?",
    "exercise.next.best": "It should halve what is left {bits:.1f} times in {minutes:.0f} min, the most for its time.",
    "exercise.next.less": "It should halve what is left {bits:.1f} times in {minutes:.0f} min, less for its time.",
    "exercise.next.rule": (
        "Ask what each test could rule out and what it costs. Cheap tests that halve what is left come first."
    ),
    "exercise.stop": "Does this prove a finding?",
    "exercise.stop.done": "Done: {step}",
    "exercise.stop.likeliest": "Most likely so far: {findings}",
    "exercise.stop.commit": "Yes: commit to it and repair.",
    "exercise.stop.commit.why": "On this evidence it is {sure} likely. From 95 % we call it proved.",
    "exercise.stop.on": "No: go on measuring.",
    "exercise.stop.on.why": (
        "On this evidence it is {sure} likely, and {others} other findings are still likely enough to matter."
    ),
    "exercise.stop.rule": "Stop when the evidence leaves one finding, not when one comes to mind.",
    "exercise.unseen.nozzle": "a worn nozzle",
    "exercise.unseen.seat": "a valve seat that leaks inside an injector",
    "exercise.unseen.rail": "low fuel or actuation-oil pressure",
    "exercise.unseen.compression": "low compression in a cylinder",
    "exercise.unseen.air": "air in the fuel",
    "exercise.unseen.return_leak": "an injector with too much return leak",
    "exercise.still": (
        "Hear the test. Every slot is even and there is no code. Which of these faults could still be there?"
    ),
    "exercise.still.heard": "You would have heard that in this test.",
    "exercise.shown": (
        "Hear the test. Every slot is even and there is no code. Which of these faults does that rule out?"
    ),
    "exercise.shown.right": "It would have sounded far from even.",
    "exercise.shown.unseen": "That is mechanical or hydraulic. An even test says nothing about it.",
    "exercise.shown.shy": (
        "It shows only when its place is moved or warm. One even test at rest does not rule it out."
    ),
    "exercise.after.not_shown": 'Say "not shown here", and go on to fuel, compression and return leak.',
    "exercise.after.not_shown.why": "Not yet: what is known points at this circuit, and this test has more to give.",
    "exercise.after.injector": "Replace injector {number}, since it is the one that misfires on the road.",
    "exercise.after.injector.why": (
        "Nothing that was shown says so. With bad compression or fuel, the new one would misfire as well."
    ),
    "exercise.after.module": "Replace the drive module, since all of the injectors do click.",
    "exercise.after.module.why": "The module drove every slot.",
    "exercise.after.good": 'Write "injector {number} is good" on the card, and close the job.',
    "exercise.after.good.why": (
        '"The circuit passes" is never "the injector is good": spray and sealing were not tested.'
    ),
    "exercise.limits.rule": (
        "This test shows whether circuits work and armatures move. It does not show spray, sealing, pressure or "
        "compression."
    ),
    "exercise.card": "This job card has one wrong step. Which one?",
    "exercise.card.step": "{number}. {step}",
    "exercise.card.choice": "step {number}",
    "exercise.card.stands": "That step is right, and the engine confirms it.",
    "exercise.card.heard": "Heard: slot {cylinders} is very faint, all others even.",
    "exercise.card.code": "Code {code}: {meaning}.",
    "exercise.card.code_place": "Code {code}: {meaning}; so the fault is in this place: {place}.",
    "exercise.card.not_nulled": "(plug off, leads not zeroed)",
    "exercise.card.plug_on": "(plug on, leads zeroed)",
    "exercise.card.concluded": "Conclusion: {place}.",
    "exercise.card.slot": "Another slot was off. Start counting after the burst.",
    "exercise.card.named_place": "A code never names a place.",
    "exercise.card.connected": "With the plug on, the meter reads everything that is connected to the wire.",
    "exercise.card.leads": "The resistance of the leads is in that reading.",
    "exercise.card.conclusion": "These readings point to another place.",
    "exercise.card.rule": "Check each step on its own: what was heard, how it was measured, what follows from it.",
    "exercise.backwards": (
        "Count backwards, with the last slot as number 1. The faint one is number {count}. Which cylinder is it?"
    ),
    "exercise.still.shy": "It shows only when its place is moved or warm; at rest the test is even.",
    "exercise.card.rightly": "(plug off, leads zeroed)",
    "exercise.next.choice": "{test} ({minutes:.0f} min)",
    "exercise.begun.all": "Heard: no slot is even",
    "exercise.hum.hum.hum": (
        "In slot {number} the module drives an open circuit. What you hear is the background current through all the "
        "other injectors."
    ),
    "exercise.hum.hum.own": (
        "A faint hum is no sign of life: the sound comes from the other injectors, not from {number}."
    ),
    "exercise.hum.hum.bed": "The bed is under every slot; this hum rises above it in slot {number}.",
    "exercise.hum.hum.worn": "A worn injector still clicks; here nothing in injector {number} moves.",
    "exercise.hum.own.own": (
        "A dull thud means that injector {number} gets current but does not click fully, so its circuit is closed."
    ),
    "exercise.hum.own.hum": "The others' hum is far fainter than this: circuit {number} carries current.",
    "exercise.hum.own.bed": "The bed is under every slot. What you hear in slot {number} is far louder.",
    "exercise.hum.own.worn": (
        "A worn armature sounds brighter or later, not dull. Here {number} does not move as it should."
    ),
    "exercise.hum.bed.bed": "No click and no hum: no current flows in slot {number}, neither its own nor the others'.",
    "exercise.hum.bed.hum": "You would hear a hum above the bed in slot {number}. Here there is none.",
    "exercise.hum.bed.own": (
        "If the coil had current, you would hear a thud or a click. In slot {number} there is neither."
    ),
    "exercise.hum.bed.worn": "A worn injector still clicks; slot {number} is empty.",
    "exercise.unproved": "The module's memory shows this after the test. Which of these does {code} not prove?",
    "exercise.unproved.circuit": "It was the circuit of cylinder {number}.",
    "exercise.unproved.once": "The module saw it at least once.",
    "exercise.unproved.proved": "That is just what it says: {meaning}.",
    "exercise.unproved.right": "It does not prove this. {why}",
    "exercise.old.before": "It is left over from an earlier fault.",
    "exercise.old.gone.before": "This test did not set it again. It is old, or its fault comes and goes.",
    "exercise.old.gone.today": "The test did not set it again: this time its current was within the code's limits.",
    "exercise.old.gone.two": "Only a fault whose code the test sets again is there today.",
    "exercise.old.gone.module": "Clearing takes codes away; that is what it is for.",
    "exercise.old.back.today": "The test has just set it again: what it saw is there today, wherever its place is.",
    "exercise.old.back.before": "It was cleared, and this test set it again, so it is not left over.",
    "exercise.old.back.two": "Only one of the two codes came back; the other is old.",
    "exercise.old.back.module": "A code that comes back was set again, not forgotten.",
    "exercise.still.unseen": "It affects no coil and no click, so this test cannot show it.",
    "exercise.still.slight": "A fault this slight changes the current too little for an ear or the module to notice.",
    "exercise.shown.slight": "A fault this slight sounds even and sets no code. The meter finds it, not the ear.",
    "exercise.after.known.not_shown": (
        "Hear the test. Every slot is even, there is no code, and the readings are good. The engine still misfires on "
        "cylinder {number}. What now?"
    ),
    "exercise.after.known.provoke": (
        "Hear the test. Every slot is even. A code for cylinder {number} was in memory and did not come back. The "
        "engine misfires only on bad roads. What now?"
    ),
    "exercise.after.known.measure": (
        "Hear the test. Every slot is even and there is no code. But cylinder {number} reads two ohms more, feed to "
        "return, than the others. What now?"
    ),
    "exercise.after.not_shown.right": (
        "The test has done its part. Look for what it cannot show with other tests, following the maker's manual."
    ),
    "exercise.after.provoke": (
        "Run the test again while you move and warm the wiring and connectors of cylinder {number}."
    ),
    "exercise.after.provoke.right": (
        "An intermittent fault shows only while it is there. Move and warm its place while you listen."
    ),
    "exercise.after.provoke.why": "Nothing here is known to come and go.",
    "exercise.after.measure": "Split the circuit of cylinder {number} with the meter, connector by connector.",
    "exercise.after.measure.right": (
        "Follow a reading that differs from the others, even when your ear and the module say nothing."
    ),
    "exercise.after.measure.why": "At rest no reading here differs from the others, so there is nothing to split yet.",
}
