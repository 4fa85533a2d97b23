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
    "skill.beginning": "just begun: too few answers to say",
    "skill.growing": "growing: the plain ones go well, the harder ones not yet",
    "skill.steady": "steady: right on most of what comes",
    "skill.strong": "strong: right on the hard ones too",
    "task.case": "a case on the bench",
    "task.ear": "a question for the ear",
    "task.numbering": "a question of numbering",
    "task.codes": "a question of codes",
    "task.meter": "a question of readings",
    "task.reasoning": "a question of reasoning",
    "task.limits": "a question of limits",
    "task.job_card": "find the slip",
    "class.circuit_passes": "circuits that pass",
    "class.group": "faults of a whole group",
    "class.two_faults": "two faults at once",
    "class.drive_module": "faults of the drive module",
    "class.engine_harness": "faults of the engine harness",
    "class.pass_through_connector": "faults of the pass-through connector",
    "class.under_cover_harness": "faults of the under-cover harness",
    "class.solenoid_coil": "faults of the coil",
    "class.armature": "faults of the armature",
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
    "subject.codes.could": "what could leave a code",
    "subject.codes.old": "old codes",
    "subject.meter.says": "what a reading says",
    "subject.meter.where": "where between readings",
    "subject.meter.slip": "what a reading is worth",
    "subject.reasoning.next": "the next test",
    "subject.reasoning.stop": "when to stop",
    "subject.limits.still": "what could still be wrong",
    "subject.limits.shown": "what is ruled out",
    "subject.limits.after": "what to do then",
    "subject.job_card.slip": "the wrong step of a card",
    "why.sure_wrong": "Why this: you were sure and it was wrong — {about}.",
    "why.refute": "Why this: one idea once more — {about}.",
    "why.revisit": "Why this: missed before, and its day has come — {about}.",
    "why.probe": "Why this: something that many get wrong, to see where you stand — {about}.",
    "why.weakest": "Why this: at this level an answer teaches most now — {about}.",
    "why.asked": "You asked for this.",
    "course.difficulty": "difficulty {step} of 5",
    "course.next": "Next: {what}",
    "course.right": "Right.",
    "course.wrong": "Not so. Right is: {said}",
    "course.rule": "The rule: {rule}",
    "course.sure_before": "How sure are you?",
    "course.ten": "{minutes} minutes: a good place to stop. What waits comes back by itself.",
    "course.twenty": "{minutes} minutes of practice: give your ears a rest before the next one.",
    "course.prepare": "Getting practice ready for these engines; once on this machine.",
    "course.listen": "listen: {label}",
    "course.lesson": "Lesson {number} of {count}",
    "course.lesson.1": "the first case worked for you, step by step",
    "course.lesson.2": "the second case begun for you, yours to complete",
    "course.lesson.3": "the third case, alone",
    "lesson.intro.1": (
        "This case is worked for you. Each step says what is done and why; you hear and see what it gives."
    ),
    "lesson.intro.2": (
        "The test was heard and the codes were read for you. Go on from there: measure, decide, name the place."
    ),
    "lesson.intro.3": "This one is yours alone.",
    "lesson.step": "Step {number} of {count}",
    "lesson.hear": (
        "Run the whole test first: the burst, then each cylinder in numeric order. Listen for the slot that does not "
        "click."
    ),
    "lesson.slots": (
        "One slot was only a faint hum. Hear it beside its neighbour: slot 2, then slot 3. The hum is the others; "
        "number 3 itself carries nothing."
    ),
    "lesson.codes": "Read the codes: they say what the module saw in which circuit, and never where along it.",
    "lesson.dead": (
        "Key off. Wait. Volts at rest on the terminal you will touch: under one volt, it is dead. "
        "Now ohms mean something."
    ),
    "lesson.pair": (
        "Now the meter, outside first. Module plug off, ohms from the feed to return 3: OL. The circuit is open "
        "somewhere past this plug, so the module is not the place."
    ),
    "lesson.mate": (
        "Measure a good mate beside it: number 1 shows what a whole circuit reads here, and that the meter is right."
    ),
    "lesson.wire_feed": "The engine harness, feed wire end to end: a good wire reads next to nothing.",
    "lesson.wire_return": "And its return wire. Good too: the engine harness is ruled out.",
    "lesson.cover": (
        "From the cover side of the pass-through connector: good. Both halves are whole; what joins them is left, "
        "the contact of the return."
    ),
    "lesson.look": (
        "While the connector is apart, look at its terminals. A burnt or pushed-back pin would show here. You see "
        "none, so the contact itself is open."
    ),
    "lesson.finding": (
        "The evidence leaves one finding: open in the pass-through connector, return side, cylinder 3. It is "
        "committed now; then comes the debrief."
    ),
    "lesson.go_on": "do this step",
    "lesson.take_over": "take over from here",
    "tour.sounds": "Listening tour",
    "tour.sounds.about": (
        "Labelled examples in pairs that differ in one thing. Nothing is asked; hear both, then go on."
    ),
    "tour.pair": "Pair {number} of {count}",
    "tour.even_weak": "even beside weak: the click is there, with its edge taken off",
    "tour.weak_dull": "weak beside dull: a weak slot still clicks, a dull one only thuds",
    "tour.dull_very_faint": "dull beside very faint: current without a click, beside no current at all",
    "tour.very_faint_nothing": (
        "very faint beside nothing: the others' hum, beside a slot in which nothing is driven at all"
    ),
    "tour.one_group": "one cylinder beside a whole group: what falls out together shares a part",
    "tour.quiet_loud": "the same hum in a quiet and in a loud bay: the bed hides it, the fault is the same",
    "progress.skills": "Skills",
    "progress.counts": "{right} right of {count}",
    "progress.interval": (
        "estimate {mean:+.1f} (0 is the middle), between {low:+.1f} and {high:+.1f} with nine chances in ten"
    ),
    "progress.waits": "Waiting to be revisited: {count}, of them due now: {due}",
    "progress.waits.line": "{what}: {when}",
    "progress.waits.now": "due now",
    "progress.waits.days": "in {days:.0f} days",
    "progress.waits.sure": "(you were sure)",
    "progress.over_time": "Over your answers, oldest left: each skill a line",
    "progress.mark.steady": "steady",
    "progress.mark.strong": "strong",
    "progress.ideas": "Ideas to look at again",
    "practice.title": "Practice of {who}",
    "practice.minutes": "{minutes:.0f} min this session",
    "practice.go": "next",
    "practice.sounds": "listening tour",
    "practice.rematch": "one-minute rematch",
    "practice.drills": "Or one kind only",
    "practice.record": "My record as a file",
    "practice.record.take": "take in",
    "practice.record.path": "path of a record file",
    "practice.carried": "Record written: {path} ({count} attempts)",
    "practice.taken": "Record taken in: {new} new attempts, {known} known already, {longer} gone on with",
    "practice.help": (
        "Enter goes on · 'skip' the lessons, or 'lesson 1' · 'sounds' listening tour · 'rematch' · 'drill KIND' "
        "(ear, numbering, codes, meter, reasoning, limits, job_card) · 'progress' · 'leave'"
    ),
    "practice.prompt": "practice>",
    "practice.answer": "{choice}, 'hear 1' to listen again, or 'leave':",
    "practice.sure": "sure? 1 {first}, 2 {second}, 3 {third}:",
    "practice.answer_silent": "{choice}, or 'leave':",
    "practice.answers": "Type {choice} to answer, or 'leave' to leave it open.",
    "practice.making": "One moment: this question is being worked out.",
    "practice.left_open": "The exercise waits where it is.",
    "practice.resumed": "You left this one open.",
    "practice.rematch.pair": "Rematch: {first} against {second}, four sounds.",
    "practice.rematch.over": "Rematch over: {right} right of {count}.",
    "waiting.practise": "practise",
    "waiting.lesson": "lesson {number}: {what}",
    "tour.slot": "slot {number}, {heard}, bed at {bed:.0f} dB(A)",
    "tour.whole": "the whole test, {cylinders} off",
    "lesson.again": (
        "Plug everything back and run the test once more. A contact that was only dirty would have come back; slot 3 "
        "still hums: now it is proved."
    ),
    "lesson.done": "done: {what}",
    "record.a_record": "a learner's record written by this program",
    "record.found.no_record": "no record at its beginning",
    "record.found.damaged": "damaged or cut short: its checksum does not fit",
    "record.found.of_another": "the record of {of}",
    "record.mend.a_record_of": "Write it anew on the other machine; nothing was changed here",
    "record.mend.copy_again": "Copy it again from where it was written; nothing was changed here",
    "record.mend.be_that_learner": "Take it in as {of} (--learner), whose record it is; nothing was changed here",
    "practice.record.write": "write my record",
    "practice.record.nowhere": "Nothing is kept on this machine, so there is nowhere to write to.",
    "exercise.engine_hidden": "The engine is shown once you have answered.",
    "exercise.mark_right": "← right",
    "tour.before": "before",
    "waiting.choose": "choose what to practise",
    "waiting.due": "{count} to revisit today",
    "stage.practice": "Getting practice ready: {percent:.0f} %",
    "stage.exercise": "Making the question ...",
    "practice.left": "Stopped here; what you did is kept.",
    "practice.apart": "Worked differently on both machines, so what is here stays: {count}.",
    "why.case.sure_wrong": "Why this: you were sure of a case like it, and it was not so.",
    "why.case.refute": "Why this: one idea once more, in a whole case.",
    "why.case.revisit": "Why this: a case like it was missed before, and its day has come.",
    "why.case.probe": "Why this: a whole case with something that many get wrong.",
    "why.case.weakest": "Why this: a whole case puts the skills together, at your level.",
    "progress.waits.day": "tomorrow",
    "record.found.unknown": "holding what this version of the program does not know",
    "practice.lesson_keys": (
        "In a lesson Enter does the step, 'skip' leaves the lessons; Enter now goes on with this one."
    ),
    "why.rematch": "Rematch, sound {number} of {count}: {first} against {second}.",
    "skill.low": "at its beginning: the plain ones do not come by themselves yet",
}
