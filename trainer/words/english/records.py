"""English: results, reports, exports and handouts."""

TEXTS = {
    "handout.title": "What the injector test showed",
    "handout.heard": "What we heard",
    "handout.where": "Where the fault is",
    "handout.wiring": (
        "The engine from above. Solid lines are returns, dashed lines are feeds. The crossed circle marks the place."
    ),
    "handout.next": "What to check next",
    "handout.cautions": "Cautions",
    "handout.limits": (
        "The sounds and pictures were computed for a training engine. The test only drives coils and moves armatures. "
        "It says nothing about nozzles, seals, compression or oil. The maker's manual and local rules come first."
    ),
    "handout.good": "{slot}, on a good engine:",
    "handout.faulty": "{slot}, on this engine:",
    "handout.next.circuit_passes": (
        "The circuit passes. Look at fuel, oil, compression and the injector's hydraulics, which this test cannot show."
    ),
    "handout.next.drive_module": (
        "Check the module's supply, grounds and connector before you buy a module. Measure its output into a dummy "
        "load."
    ),
    "handout.next.engine_harness": (
        "Look along the engine harness for rubbed or burnt places. With the power off and the plugs off, measure each "
        "wire end to end and to ground."
    ),
    "handout.next.pass_through_connector": (
        "Open the connector in the valve-cover gasket. Look for oil, heat marks, loose pins and pushed-back pins. "
        "Measure from both sides."
    ),
    "handout.next.under_cover_harness": (
        "With the cover off, look for wires rubbed by moving parts, and for loose plugs at the injectors."
    ),
    "handout.next.solenoid_coil": (
        "Measure the coil at the injector itself, and compare it with a good one on the same engine."
    ),
    "handout.next.armature": (
        "The coil and the wiring are good, but the armature does not move as it should. Compare the current trace "
        "with a good injector's before you replace anything."
    ),
    "handout.next.module_power": (
        "Load-test the battery, clean its posts and the module's ground point, and measure both voltage drops "
        "again while all injectors are driven."
    ),
    "handout.next.retest": (
        "After the repair, run the test again. Every slot must be even, with no code. The reading must stay the same "
        "when you move the harness."
    ),
    "fate.new": "new",
    "fate.already_there": "already there",
    "fate.cut_short": "cut short, so copy it again",
    "fate.altered": "changed since it was written",
    "fate.wrong_key": "made with another passphrase",
    "fate.other_set": "belongs to another set",
    "fate.unreadable": "not a results file",
    "fate.special": "not an ordinary file, so it was left alone",
    "fate.closed": "cannot be read: check your permissions and the USB stick",
    "collect.line": "{file}: {fate} (attempts: {count})",
    "collect.nothing": "There are no results files there.",
    "mark.going": "Marking: {done} of {count} ...",
    "mark.done": "Marked: {marked}. Not handed in: {unfinished}. Voided: {voided}.",
    "mark.refused": "{count} cannot be marked: {why}.",
    "mark.other_case": "their case is not the one that this set gives them",
    "mark.other_model": "they were made with model version {version}, and this program has {now}; mark them with a "
    "program of that version",
    "mark.unnumbered_model": "they were made before models had version numbers; mark them with the program that "
    "made them",
    "mark.damaged": "their steps do not follow one another",
    "records.not_there": "it is not there",
    "fate.missing": "is not there",
    "records.set": "{name}: {title}, cases: {size} ({id})",
    "records.no_sets": "No results have been collected here yet.",
    "records.written": "{path}",
    "roster.three_cells": "three cells: learner, name, class",
    "roster.at_most": "at most {count} characters in a cell",
    "roster.mend": "start with the line learner,name,class and put one person on each line: ann7,Ann Meyer,day class",
    "roster.taken": "People on the roster now: {count}.",
    "note.taken": "Noted.",
    "note.void": "does not count",
    "note.comment": "comment",
    "note.answer": "also right",
    "keep.taken": "{title}: kept until {day}.",
    "delete.ask_learner": "Delete everything by {learner}? This cannot be undone.",
    "delete.ask_sets": "Delete all results of these sets ({count}): {titles}? This cannot be undone.",
    "delete.done": "Attempts deleted: {count}.",
    "backup.done": "Rows saved in {path}: {count}",
    "restore.done": "Rows restored: {count}.",
    "delivery.done": "Events delivered: {count}. Still waiting: {waiting}.",
    "delivery.forked": (
        "Attempt {attempt} was continued at two stations. Both are kept, and this one stays on this machine."
    ),
    "class.circuit_passes": "the circuit passes",
    "class.group": "a whole group",
    "class.two_faults": "two faults",
    "counts.first": "the first try counts",
    "counts.best": "the best try counts",
    "counts.last": "the last try counts",
    "xapi.question": "Where is the fault?",
    "report.title": "{title}: what the class hears",
    "report.rule": (
        "Marks are out of 100: the weighted mean of the case scores. Of each score, {share:.0f} % comes from "
        "certainty (100 less 100 times the Brier score). A case that was not handed in counts zero. With several "
        "tries, {counts}."
    ),
    "report.counts": "Learners: {learners}. Results that count: {results}. Cases for each learner: {size}.",
    "report.mean": "Mean mark {mean:.1f}. {passed} of {learners} learners reached {passes_at:.0f}.",
    "report.unsupported": "Without the learners who have support settings, the mean is {mean:.1f}.",
    "report.voided": "Results that the instructor took out: {count}.",
    "report.confused": "{truth} → {said}",
    "report.play": "{first} and then {second}",
    "report.alpha": "Reliability (Cronbach's alpha, n={count}): {value:.2f} {rough}",
    "report.alpha_hidden": "Reliability needs at least ten learners who did every case. Here there are {count}.",
    "report.rough": "(rough: fewer than 30 learners)",
    "report.word.evident": (
        "With a sealed set, whoever has the passphrase can see tampering. The seal cannot prevent it."
    ),
    "report.word.teach": "What to teach next",
    "report.word.slip": "what went wrong",
    "report.word.slips": "What went wrong, by its number in the table",
    "report.word.often": "how often",
    "report.word.sure": "weighted by certainty",
    "report.word.findings": "wrong findings",
    "report.word.most_confused": "most confused (true → answered)",
    "report.word.play": "play one after the other",
    "report.word.no_slips": "Every finding was right.",
    "report.word.marks": "Marks",
    "report.word.mark": "mark",
    "report.word.learner": "learner",
    "report.word.learners": "learners",
    "report.word.passed": "passed",
    "report.word.right": "share right",
    "report.word.right_of": "right of all",
    "report.word.solid": "right every time",
    "report.word.weak": "wrong at least once",
    "report.word.path": "best path's minutes as a share of the learner's",
    "report.word.supported": "had support",
    "report.word.yes": "yes",
    "report.word.no": "no",
    "report.word.more_learners": "The gradebook has more learners:",
    "report.word.places": "Places and cylinders that were confused",
    "report.word.places_how": "Rows are the truth, columns are the answers. Right answers are bold.",
    "report.word.cylinders_how": "Cylinders, in cases with a fault:",
    "report.word.truth": "true",
    "report.word.said": "answered",
    "report.word.others": "others",
    "report.word.all": "all",
    "report.word.detection": "Fault or no fault",
    "report.word.hits": "Faults that learners recognised as faults:",
    "report.word.alarms": "Good circuits that learners called faulty:",
    "report.word.calibration": "How sure, and how often right",
    "report.word.certainty": "certainty",
    "report.word.count": "how often",
    "report.word.effort": "Work on each case",
    "report.word.plays": "Sounds played, median:",
    "report.word.readings": "Readings taken, median:",
    "report.word.minutes": "Working minutes, mean:",
    "report.word.best": "on the best path:",
    "report.word.cases": "Cases",
    "report.word.case": "case",
    "report.word.facility": "share right",
    "report.word.mean_mark": "mean mark",
    "report.word.discrimination": "discrimination",
    "report.word.hidden": "too few",
    "report.word.rough": "rough",
    "report.word.no_spread": "all alike",
    "report.word.items_how": (
        "Discrimination is how well a case's mark goes with the learner's other marks. Only learners with every case "
        "count. It is hidden below 10 learners and rough below 30. Where each learner draws their own cases, a number "
        "means a line of the set. The table below adds up by class of fault instead."
    ),
    "report.word.class": "class of fault",
    "report.word.notes": "Notes",
    "report.word.made": "Written",
    "wrong.note_needs_text": "A note needs some text.",
    "mend.note_needs_text": "Say why in a few words.",
    "wrong.no_answer": "'{words}' is not a fault that an engine of this set can have.",
    "mend.no_answer": (
        "Write cylinders, place and kind, for example: 3 pass_through_connector open. Or write: circuit_passes."
    ),
    "wrong.which_set": "'{named}' does not say which set you mean.",
    "mend.which_set": "Name one of these: {sets}.",
    "wrong.delete_what": "Say exactly one thing to delete.",
    "mend.delete_what": "Use --learner, --set or --overdue.",
    "wrong.no_store_url": "This machine does not know a shared store.",
    "mend.no_store_url": "Name it with --store, or enter it in the settings.",
    "wrong.nothing_to_bundle": "{learner} has not done this set on this machine.",
    "mend.nothing_to_bundle": "Check the name and the set.",
    "wrong.store_not_empty": "{place} already has records.",
    "mend.store_not_empty": "Restore into an empty folder: --data FOLDER.",
    "wrong.backup_damaged": "{file} is not a backup, or it is damaged.",
    "mend.backup_damaged": "Use another copy.",
    "wrong.backup_version": "{file} is version {version}, and this program reads version {known}.",
    "mend.backup_version": "Restore it with the program that made it, then update.",
    "report.word.path_how": (
        "Over 100 % in the last column means fewer minutes than the best path takes. That learner named the fault "
        "before it was proved."
    ),
    "report.repeated": (
        "Results that do not count, because the learner had already handed in the same case: {count} ({who}). It was "
        "at another station or after a restart. Ask why."
    ),
    "mark.to_settle": "Questions to settle with learners before the marks count: {count}. The class report lists them.",
    "report.word.settle": "Questions for learners",
    "report.word.settle_how": (
        "Ask these learners before the marks count. There may be a good reason, such as a wrong clock. Times are in "
        "UTC."
    ),
    "settle.clock_back": "{who}, case {item}: the station's clock jumped back from {before} to {at}.",
    "settle.looked_back": "{who} opened a debrief on {at} and went on working after that.",
    "settle.before_opening": "{who}, case {item}: dated {at}, before the set opened.",
    "settle.ahead": "{who}, case {item}: handed in on {at}, which is in the future by this computer's clock.",
    "settle.unguarded": "Other programs could read the exam where these learners worked ({count}): {who}.",
    "mark.altered": "their steps were changed afterwards",
    "roster.twice": "naming {learner} twice",
    "roster.each_once": "each code once",
    "delivery.refused": "The shared store cannot take attempt {attempt}. It is kept here.",
    "wrong.no_results_yet": "No results have been collected here yet.",
    "mend.no_results_yet": "Collect some first: injector-trainer records collect.",
    "wrong.no_learner": "{learner} has no results here and is not on the roster.",
    "mend.no_learner": "Check the code. Capitals matter.",
    "wrong.day_is_over": "{day} is in the past.",
    "mend.day_is_over": "Name a day that is still to come.",
    "wrong.regrade_drawn": "Case {item} was drawn, so each learner may have had a different one.",
    "mend.regrade_drawn": "Void it for the learners it affects: injector-trainer records void.",
    "doctor.shared": "{place}, events waiting here: {waiting}",
    "collect.claims": "{file}: {fate}; it says that it belongs to {learner}",
    "wrong.store_damaged": "The records in {place} are damaged: {reason}. Nothing was changed.",
    "mend.store_damaged": (
        "Copy that file to a safe place. Then restore your latest backup into an empty folder: injector-trainer "
        "--data FOLDER records restore BACKUP."
    ),
    "damage.no_version": "they do not say which version they are",
    "wrong.attempt_damaged": (
        "Attempt {attempt} in {place} is damaged: step {number} cannot be read. Nothing was changed, and your other "
        "attempts are fine."
    ),
    "mend.attempt_damaged": (
        "If it belongs to a set, give the whole records folder to your instructor, who can mark the rest."
    ),
    "wrong.set_damaged": "The results of this set in {place} are damaged.",
    "mend.set_damaged": "Mark the set again from its file: injector-trainer records mark --set FILE.",
    "wrong.results_damaged": "More than {most} results of this set are damaged.",
    "mend.results_damaged": "Mark them again from the attempts: injector-trainer records mark --set FILE --again.",
    "wrong.not_shredded": (
        "The attempts are deleted. But the file {place} is damaged, so traces of them could not be removed: {reason}."
    ),
    "mend.not_shredded": (
        "Make a backup, restore it into an empty folder and go on there. Then delete this file yourself."
    ),
    "damage.no_tables": "the list of their tables cannot be read",
    "damage.not_closed": "the file was not closed properly, and parts of it no longer fit together",
    "damage.no_identity": "the name of this station is missing",
    "damage.left_out": (
        "Damaged and left out: {count} ({which}). Everything else was read, and nothing was deleted. An earlier "
        "backup may still have them."
    ),
    "restore.left_out": "Rows left out because they do not fit the others: {count}.",
    "backup.left_out": "Damaged rows left out of the backup: {count}. They are still in the records.",
}
