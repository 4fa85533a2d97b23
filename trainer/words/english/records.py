"""English: results, reports, exports and handouts."""

TEXTS = {
    "handout.title": "What the injector test showed",
    "handout.heard": "What was heard",
    "handout.where": "Where it lies",
    "handout.wiring": "The engine from above. Solid: returns, dashed: feeds. The crossed circle is the place.",
    "handout.next": "What to check next",
    "handout.cautions": "Cautions",
    "handout.limits": (
        "The sounds and pictures were computed for a training engine. The test clicks coils and plates: it "
        "says nothing about nozzles, seals, compression or oil. The maker's manual and local rules come "
        "first."
    ),
    "handout.good": "{slot}, as a good one sounds:",
    "handout.faulty": "{slot}, as it sounded here:",
    "handout.next.circuit_passes": (
        "The circuit passes: look at fuel, oil, compression and the injector's hydraulics, which this test cannot show."
    ),
    "handout.next.drive_module": (
        "Check the module's supply and grounds and its connector before a module is bought; measure its "
        "output on a dummy load."
    ),
    "handout.next.engine_harness": (
        "Look along the engine harness for rubbed or burnt places; measure each wire end to end and to "
        "ground, dead and unplugged."
    ),
    "handout.next.pass_through_connector": (
        "Open the connector in the valve-cover gasket: oil, heat marks, loose or pushed-back pins; measure "
        "from both of its sides."
    ),
    "handout.next.under_cover_harness": (
        "With the cover off, look for wires rubbed by moving parts and for loose plugs at the injectors."
    ),
    "handout.next.solenoid_coil": "Measure the coil at the injector itself beside a good one of the same engine.",
    "handout.next.armature": (
        "Coil and wiring are good: the plate does not move as it should. Compare a current trace with a good "
        "injector's before it is replaced."
    ),
    "handout.next.module_power": (
        "Load-test the battery, clean its posts and the module's ground point, and measure both voltage drops "
        "again while all injectors are driven."
    ),
    "handout.next.retest": (
        "After the repair run the test again: every slot even, no code, and a reading that stays put when "
        "the harness is moved."
    ),
    "fate.new": "new",
    "fate.already_there": "already there",
    "fate.cut_short": "cut short: copy it again",
    "fate.altered": "altered: not as it was written",
    "fate.wrong_key": "made with another passphrase",
    "fate.other_set": "of another set",
    "fate.unreadable": "no bundle of results",
    "fate.special": "no ordinary file: left alone",
    "fate.closed": "cannot be read: check the rights and the stick",
    "collect.line": "{file}: {fate} ({count} attempts)",
    "collect.nothing": "No bundle was found there.",
    "mark.going": "Marking: {done} of {count} ...",
    "mark.done": "{marked} marked, {unfinished} not handed in, {voided} voided.",
    "mark.refused": "{count} cannot be marked: {why}.",
    "mark.other_case": "their case is not the one this set gives them",
    "mark.other_model": "they were made with model version {version}, and this program has {now}; mark them with a "
    "program of that version",
    "mark.unnumbered_model": "they were made before models had version numbers; mark them with the program that "
    "made them",
    "mark.damaged": "their events do not follow one another",
    "records.not_there": "it is not there",
    "fate.missing": "is not there",
    "records.set": "{name}: {title}, cases: {size} ({id})",
    "records.no_sets": "No results of a set are here yet.",
    "records.written": "{path}",
    "roster.three_cells": "three cells: learner, name, class",
    "roster.at_most": "at most {count} characters a cell",
    "roster.mend": "begin with the line learner,name,class and write one person to a line: ann7,Ann Meyer,day class",
    "roster.taken": "On the roster now: {count}.",
    "note.taken": "Noted.",
    "note.void": "does not count",
    "note.comment": "comment",
    "note.answer": "also right",
    "keep.taken": "{title}: kept until {day}.",
    "delete.ask_learner": "Delete everything of {learner}, for good?",
    "delete.ask_sets": "Delete the results of {count} sets for good: {titles}?",
    "delete.done": "{count} attempts deleted.",
    "backup.done": "{count} rows in {path}",
    "restore.done": "{count} rows are back.",
    "delivery.done": "{count} events delivered, {waiting} wait.",
    "delivery.forked": "Attempt {attempt} went on at two stations apart: both logs are kept, this one only here.",
    "class.circuit_passes": "the circuit passes",
    "class.group": "a whole group",
    "class.two_faults": "two faults",
    "counts.first": "the first try counts",
    "counts.best": "the best try counts",
    "counts.last": "the last try counts",
    "xapi.question": "Where is the fault?",
    "report.title": "{title}: what the class hears",
    "report.rule": (
        "Mark of 100: the mean of the cases' scores by their weights, {share:.0f} % of each by the certainty "
        "(100 less 100 times the Brier score); a case not handed in counts nought; of several tries, "
        "{counts}."
    ),
    "report.counts": "{learners} learners, {results} results that count, {size} cases each.",
    "report.mean": "Mean mark {mean:.1f}; {passed} of {learners} reached {passes_at:.0f}.",
    "report.unsupported": "Without the learners who have support settings the mean is {mean:.1f}.",
    "report.voided": "{count} results do not count by the instructor's word.",
    "report.confused": "{truth} → {said}",
    "report.play": "{first} against {second}",
    "report.alpha": "Reliability (Cronbach's alpha, n={count}): {value:.2f} {rough}",
    "report.alpha_hidden": "Reliability is shown from ten learners with every case on; here are {count}.",
    "report.rough": "(rough: under 30 learners)",
    "report.word.evident": (
        "What was worked under a sealed set shows tampering to whoever has its passphrase; it cannot prevent it."
    ),
    "report.word.teach": "What to teach next",
    "report.word.slip": "what went wrong",
    "report.word.slips": "What went wrong, by number in the table",
    "report.word.often": "how often",
    "report.word.sure": "weighed by certainty",
    "report.word.findings": "wrong findings",
    "report.word.most_confused": "most confused (true → said)",
    "report.word.play": "play against each other",
    "report.word.no_slips": "Every finding was right.",
    "report.word.marks": "Marks",
    "report.word.mark": "mark",
    "report.word.learner": "learner",
    "report.word.learners": "learners",
    "report.word.passed": "passed",
    "report.word.right": "share right",
    "report.word.right_of": "right / all",
    "report.word.solid": "right every time",
    "report.word.weak": "missed at least once",
    "report.word.path": "minutes of the best path over own",
    "report.word.supported": "supported",
    "report.word.yes": "yes",
    "report.word.no": "no",
    "report.word.more_learners": "More learners stand in the gradebook:",
    "report.word.places": "Confusion of places and cylinders",
    "report.word.places_how": "Rows are the truth, columns what was said; right ones are bold.",
    "report.word.cylinders_how": "Cylinders, where there was a fault:",
    "report.word.truth": "true",
    "report.word.said": "said",
    "report.word.others": "others",
    "report.word.all": "all",
    "report.word.detection": "Fault or no fault",
    "report.word.hits": "Faults that were called a fault:",
    "report.word.alarms": "Good circuits that were called faulty:",
    "report.word.calibration": "How sure, and how often right",
    "report.word.certainty": "certainty",
    "report.word.count": "count",
    "report.word.effort": "Effort for each case",
    "report.word.plays": "Sounds, median:",
    "report.word.readings": "Readings, median:",
    "report.word.minutes": "Minutes of labour, mean:",
    "report.word.best": "by the best path:",
    "report.word.cases": "Cases",
    "report.word.case": "case",
    "report.word.facility": "right",
    "report.word.mean_mark": "mean mark",
    "report.word.discrimination": "discrimination",
    "report.word.hidden": "too few",
    "report.word.rough": "rough",
    "report.word.no_spread": "all alike",
    "report.word.items_how": (
        "Discrimination: correlation of a case's mark with the learner's other marks, over learners with "
        "every case; hidden under 10, rough under 30. Where each learner has draws of their own, a number "
        "stands for the line of the set, not for one case: the table below pools by class."
    ),
    "report.word.class": "class of fault",
    "report.word.notes": "Notes",
    "report.word.made": "Made",
    "wrong.note_needs_text": "A note needs a text.",
    "mend.note_needs_text": "Say why in a few words.",
    "wrong.no_answer": "'{words}' is no fault that an engine of this set can have.",
    "mend.no_answer": (
        "Write cylinders, place and kind, for example: 3 pass_through_connector open; or: circuit_passes."
    ),
    "wrong.which_set": "'{named}' does not say which set is meant.",
    "mend.which_set": "Name one of: {sets}.",
    "wrong.delete_what": "Say one thing to delete.",
    "mend.delete_what": "Take --learner, --set or --overdue.",
    "wrong.no_store_url": "No shared store is known here.",
    "mend.no_store_url": "Name it with --store, or set it in the settings.",
    "wrong.nothing_to_bundle": "{learner} has not worked this set on this machine.",
    "mend.nothing_to_bundle": "Check the name and the set.",
    "wrong.store_not_empty": "There are records in {place} already.",
    "mend.store_not_empty": "Restore into an empty folder: --data FOLDER.",
    "wrong.backup_damaged": "{file} is no backup, or it is damaged.",
    "mend.backup_damaged": "Take another copy.",
    "wrong.backup_version": "{file} is of version {version}; this program knows {known}.",
    "mend.backup_version": "Restore it with the program that made it, then update.",
    "report.word.path_how": (
        "Over 100 % in the last column: fewer minutes than the best path takes, so a finding before it was proved."
    ),
    "report.repeated": (
        "{count} results do not count because the same learner had handed the case in before, at another "
        "station or after a restart: {who}. Ask why."
    ),
    "mark.to_settle": "To settle with learners before marks count: {count}. The class report lists it.",
    "report.word.settle": "To settle",
    "report.word.settle_how": (
        "Ask these learners before the marks count. There may be a good reason, like a clock that was wrong. "
        "Times are UTC."
    ),
    "settle.clock_back": "{who}, case {item}: the station's clock went back from {before} to {at}.",
    "settle.looked_back": "{who} looked at a debrief on {at}, and worked on afterwards.",
    "settle.before_opening": "{who}, case {item}: dated {at}, before the set opened.",
    "settle.ahead": "{who}, case {item}: handed in on {at}. By this computer's clock that is still to come.",
    "settle.unguarded": "Where these learners worked, other programs could reach the exam ({count}): {who}.",
    "mark.altered": "their events were changed after they happened",
    "roster.twice": "{learner} twice",
    "roster.each_once": "each code once",
    "delivery.refused": "The shared store cannot take attempt {attempt}; it is kept here.",
    "wrong.no_results_yet": "No results of a set are here yet.",
    "mend.no_results_yet": "Collect some first: injector-trainer records collect.",
    "wrong.no_learner": "{learner} has no results here and is not on the roster.",
    "mend.no_learner": "Check the code; capitals count.",
    "wrong.day_is_over": "{day} is over already.",
    "mend.day_is_over": "Name a day to come.",
    "wrong.regrade_drawn": "Case {item} was drawn: under its number each learner may have had another one.",
    "mend.regrade_drawn": "Void it for those whom it concerns: injector-trainer records void.",
    "doctor.shared": "{place}, {waiting} events wait here",
    "collect.claims": "{file}: {fate}; it says it is of {learner}",
    "wrong.store_damaged": "The records in {place} are damaged: {reason}. What is damaged was left as it is.",
    "mend.store_damaged": (
        "Copy that file to a safe place. Then put your latest backup into an empty folder: "
        "injector-trainer --data FOLDER records restore BACKUP."
    ),
    "damage.no_version": "they do not say which version they are",
    "wrong.attempt_damaged": (
        "Attempt {attempt} in {place} is damaged: step {number} cannot be read. It was left as it is; other "
        "attempts are not affected."
    ),
    "mend.attempt_damaged": (
        "If it belongs to a set, give the whole records folder to your instructor, who can mark the rest there."
    ),
    "wrong.set_damaged": "What the records in {place} keep of this set is damaged.",
    "mend.set_damaged": "Have the set marked again from its file: injector-trainer records mark --set FILE.",
    "wrong.results_damaged": "More than {most} results of this set are damaged.",
    "mend.results_damaged": "Have them made again from the attempts: injector-trainer records mark --set FILE --again.",
    "wrong.not_shredded": (
        "The attempts are deleted, but the file {place} is damaged and could not be cleaned of them: {reason}."
    ),
    "mend.not_shredded": (
        "Write a backup, restore it into an empty folder, go on there, and then delete this file yourself."
    ),
    "damage.no_tables": "what they say of their tables is unreadable",
    "damage.not_closed": "the file was not closed properly, and parts of it no longer fit together",
    "damage.no_identity": "the name that tells this station from others is missing",
    "damage.left_out": (
        "Damaged in the records and left out: {count} ({which}). Everything else was read, and nothing was deleted. "
        "A backup made earlier may still hold them."
    ),
    "restore.left_out": "{count} rows do not fit to the others and were left out.",
    "backup.left_out": "Left out of the backup because they are damaged: {count} rows. They are still in the records.",
}
