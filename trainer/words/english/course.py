"""Sentences of practice that adapts: what comes next and why, lessons, progress."""

from __future__ import annotations

TEXTS: dict[str, str] = {
    "skill.hearing": "hearing",
    "skill.numbering": "numbering",
    "skill.codes": "codes",
    "skill.measuring": "measuring",
    "skill.reasoning": "reasoning",
    "skill.limits": "limits of the test",
    "skill.hearing.what": "faint, dull, weak, even; which slot; whole groups",
    "skill.numbering.what": "numbers and places; numeric order, not firing order",
    "skill.codes.what": "what a code says and what it does not",
    "skill.measuring.what": "where, which side, what a good value is",
    "skill.reasoning.what": "which test next, when to stop, finding a slip",
    "skill.limits.what": "what an even test does not show",
    "skill.beginning": "just begun: too few answers to tell",
    "skill.growing": "getting there: easy ones right, hard ones not yet",
    "skill.steady": "steady: mostly right",
    "skill.strong": "strong: the hard ones too",
    "task.case": "a case on the bench",
    "task.ear": "listening question",
    "task.numbering": "numbering question",
    "task.codes": "code question",
    "task.meter": "meter question",
    "task.reasoning": "reasoning question",
    "task.limits": "question about the test's limits",
    "task.job_card": "find the slip",
    "class.circuit_passes": "circuits that pass",
    "class.group": "faults in a whole group",
    "class.two_faults": "two faults at once",
    "class.drive_module": "drive module faults",
    "class.engine_harness": "engine harness faults",
    "class.pass_through_connector": "pass-through connector faults",
    "class.under_cover_harness": "under-cover harness faults",
    "class.solenoid_coil": "coil faults",
    "class.armature": "armature faults",
    "class.module_power": "battery and module power faults",
    "subject.ear.which": "which slots are not even",
    "subject.ear.what": "what a slot sounds like",
    "subject.ear.hum": "whose hum it is",
    "subject.ear.even": "what an even slot sounds like",
    "subject.ear.weak": "what a weak slot sounds like",
    "subject.ear.dull": "what a dull slot sounds like",
    "subject.ear.very_faint": "what a very faint slot sounds like",
    "subject.ear.nothing": "what an empty slot sounds like",
    "subject.numbering.order": "numeric order",
    "subject.numbering.counted": "counting with the burst",
    "subject.numbering.place": "where a number sits",
    "subject.numbering.shared": "what numbers share",
    "subject.numbering.backwards": "counting backwards",
    "subject.codes.says": "what a code proves",
    "subject.codes.could": "what could set a code",
    "subject.codes.old": "old codes",
    "subject.meter.says": "what a reading says",
    "subject.meter.where": "where the break is, from readings",
    "subject.meter.slip": "what a reading is worth",
    "subject.reasoning.next": "the next test",
    "subject.reasoning.stop": "when to stop",
    "subject.limits.still": "what could still be wrong",
    "subject.limits.shown": "what is ruled out",
    "subject.limits.after": "what to do after an even test",
    "subject.job_card.slip": "the wrong step on a card",
    "why.sure_wrong": "You were sure of this one and got it wrong — {about}.",
    "why.refute": "One idea to go over again — {about}.",
    "why.revisit": "You missed this before, so here it is again — {about}.",
    "why.probe": "Many people get this one wrong, so let us see how you do — {about}.",
    "why.weakest": "This is your level right now — {about}.",
    "why.asked": "You asked for this.",
    "course.difficulty": "difficulty {step} of 5",
    "course.next": "Next: {what}",
    "course.right": "Right.",
    "course.wrong": 'Not quite. "{said}" is the right answer.',
    "course.rule": "Remember: {rule}",
    "course.sure_before": "How sure are you?",
    "course.ten": "{minutes} minutes: a good place to stop. What you missed will come back when it is due.",
    "course.twenty": "{minutes} minutes of practice. Give your ears a rest before you go on.",
    "course.prepare": "Getting practice ready for these engines. This happens once on each machine.",
    "course.listen": "Listen: {label}",
    "course.lesson": "Lesson {number} of {count}",
    "course.lesson.1": "the first case, worked for you step by step",
    "course.lesson.2": "the second case, started for you; you finish it",
    "course.lesson.3": "the third case, on your own",
    "lesson.intro.1": (
        "This case is worked for you. Each step says what we do and why, and you hear and see the result."
    ),
    "lesson.intro.2": (
        "The test has been run. The codes have been read and cleared, and read again after another test. You go on "
        "from there: measure, decide, name the place."
    ),
    "lesson.intro.3": "This one is yours.",
    "lesson.taken_over": "You have taken over. Go on from here on your own.",
    "lesson.step": "Step {number} of {count}",
    "lesson.hear": (
        "Run the whole test first: the burst, then each cylinder in numeric order. Listen for the slot that does not "
        "click."
    ),
    "lesson.slots": (
        "One slot was only a faint hum. Hear it beside its neighbour: slot 2, then slot 3. The hum comes from the "
        "other injectors. Number 3 itself gets no current."
    ),
    "lesson.codes": (
        "Read the codes, then clear them. They say in which circuit the module saw a fault. They never say where "
        "along it."
    ),
    "lesson.cleared_test": (
        "Run the test again, now that the memory is empty. An old code stays away. A fault that is there sets its "
        "code again."
    ),
    "lesson.codes_again": "Read the codes once more. A code that has come back belongs to a fault that is there now.",
    "lesson.dead": (
        "Key off. Wait. Measure volts at rest on the terminal that you will touch. Under one volt it is dead, and you "
        "can measure ohms."
    ),
    "lesson.pair": (
        "Now the meter, outside first. Pull the module plug and measure ohms from the feed to return 3: OL. The "
        "circuit is open somewhere past this plug, so the module is not at fault."
    ),
    "lesson.mate": (
        "Measure a known-good cylinder to compare. Number 1 shows what a good circuit reads here, and that the meter "
        "works."
    ),
    "lesson.wire_feed": "Now the feed wire of the engine harness, end to end. A good wire reads next to nothing.",
    "lesson.wire_return": "Now the return wire. It is good too, so the engine harness is ruled out.",
    "lesson.cover": (
        "Measure from the cover side of the pass-through connector: good. Both halves are fine, so only the "
        "return contact that joins them is left."
    ),
    "lesson.look": (
        "While the connector is apart, look at its terminals. A burnt or pushed-back pin would show here. You see "
        "none, so the contact itself is open."
    ),
    "lesson.finding": (
        "The evidence leaves one finding: open in the pass-through connector, return side, cylinder 3. Now we commit "
        "it, and then you get the debrief."
    ),
    "lesson.go_on": "Do this step",
    "lesson.take_over": "Take over from here",
    "tour.sounds": "Listening tour",
    "tour.sounds.about": (
        "Labelled examples in pairs that differ in one thing. There are no questions. Hear both, then go on."
    ),
    "tour.pair": "Pair {number} of {count}",
    "tour.even_weak": "even beside weak: the weak one still clicks, but more softly",
    "tour.weak_dull": "weak beside dull: a weak slot still clicks, a dull one only thuds",
    "tour.dull_very_faint": "dull beside very faint: current without a click, beside no current at all",
    "tour.very_faint_nothing": (
        "very faint beside nothing: the others' hum, beside a slot in which nothing is driven at all"
    ),
    "tour.one_group": "one cylinder beside a whole group: injectors that drop out together share a part",
    "tour.quiet_loud": "the same hum in a quiet and in a loud bay: the noise hides it, but the fault is the same",
    "progress.skills": "Skills",
    "progress.counts": "{right} of {count} right",
    "progress.interval": "estimate {mean:+.1f} (0 is average), very likely between {low:+.1f} and {high:+.1f}",
    "progress.waits": "To revisit: {count}. Due now: {due}.",
    "progress.waits.line": "{what}: {when}",
    "progress.waits.now": "due now",
    "progress.waits.days": "in {days:.0f} days",
    "progress.waits.sure": "(you were sure)",
    "progress.over_time": "Your answers over time, oldest on the left, one line for each skill",
    "progress.mark.steady": "steady",
    "progress.mark.strong": "strong",
    "progress.ideas": "Ideas to go over again",
    "practice.title": "{who}'s practice",
    "practice.minutes": "{minutes:.0f} min this session",
    "practice.go": "Next",
    "practice.sounds": "Listening tour",
    "practice.rematch": "One-minute rematch",
    "practice.drills": "Or one kind only",
    "practice.record": "My record as a file",
    "practice.record.take": "Import",
    "practice.record.path": "Path of a record file",
    "practice.carried": "Record saved: {path} (attempts: {count}).",
    "practice.taken": "Record imported. New attempts: {new}. Already known: {known}. Continued: {longer}.",
    "practice.help": (
        "Press Enter to go on. 'skip' leaves the lessons, 'lesson 1' opens one. 'sounds' is the listening tour, "
        "'rematch' a one-minute rematch. 'drill KIND' gives you one kind only: ear, numbering, codes, meter, "
        "reasoning, limits or job_card. There are also 'progress' and 'leave'."
    ),
    "practice.prompt": "practice>",
    "practice.answer": "{choice}, 'hear 1' to listen again, or 'leave':",
    "practice.sure": "How sure? 1 {first}, 2 {second}, 3 {third}:",
    "practice.answer_silent": "{choice}, or 'leave':",
    "practice.answers": "Type {choice} to answer, or 'leave' to leave it open.",
    "practice.making": "One moment: this question is being worked out.",
    "practice.left_open": "This exercise will wait for you.",
    "practice.resumed": "You left this one unfinished, so here it is again.",
    "practice.rematch.pair": "Rematch: {first} against {second}, four sounds.",
    "practice.rematch.over": "The rematch is over: {right} of {count} right.",
    "waiting.practise": "Practise",
    "waiting.lesson": "Lesson {number}: {what}",
    "tour.slot": "slot {number}, {heard}, bed at {bed:.0f} dB(A)",
    "tour.whole": "the whole test, with {cylinders} not even",
    "lesson.again": (
        "Plug everything back in and run the test once more. A dirty contact would now work again. Slot 3 still hums, "
        "so it is proved."
    ),
    "lesson.done": "Done: {what}",
    "record.a_record": "a learner's record written by this program",
    "record.found.no_record": "it does not start like a record",
    "record.found.damaged": "damaged or cut short: its checksum does not match",
    "record.found.of_another": "the record of {of}",
    "record.mend.a_record_of": "Write it again on the other machine; nothing was changed here",
    "record.mend.copy_again": "Copy it again from where it was written; nothing was changed here",
    "record.mend.be_that_learner": "Import it as {of} (--learner), whose record it is; nothing was changed here",
    "practice.record.write": "Save my record",
    "practice.record.nowhere": "Nothing is kept on this machine, so the record cannot be saved.",
    "exercise.engine_hidden": "You will see the engine once you have answered.",
    "exercise.mark_right": "← right answer",
    "tour.before": "Previous",
    "waiting.choose": "Choose what to practise",
    "waiting.due": "{count} to revisit today",
    "stage.practice": "Getting practice ready: {percent:.0f} %",
    "stage.exercise": "Making the question ...",
    "practice.left": "Stopped here. Your work is saved.",
    "practice.apart": "These attempts went differently on the two machines, so the ones here were kept: {count}.",
    "why.case.sure_wrong": "You were sure of a case like this one and got it wrong.",
    "why.case.refute": "One idea to go over again, in a whole case.",
    "why.case.revisit": "You missed a case like this before, so here is another.",
    "why.case.probe": "A whole case with something that many people get wrong.",
    "why.case.weakest": "A whole case puts your skills together, at your level.",
    "progress.waits.day": "tomorrow",
    "record.found.unknown": "it has something that this version of the program does not know",
    "practice.lesson_keys": (
        "In a lesson, Enter does the next step and 'skip' leaves the lessons. Press Enter now to go on with this one."
    ),
    "why.rematch": "Rematch, sound {number} of {count}: {first} against {second}.",
    "skill.low": "just starting: the easy ones still need thought",
}
