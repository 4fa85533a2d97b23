"""English: who, settings, sound set-up, words, the guide."""

TEXTS: dict[str, str] = {
    "who.title": "Who is working?",
    "who.job": "Hear an injector actuation test, gather evidence, find where the fault is, and say how sure you are.",
    "who.name": "Your name or a code (no password; it stays on this machine)",
    "who.second": "Second person: one of you listens and the other measures. Change roles with every case.",
    "who.go": "Continue",
    "who.two": "Two at this bench",
    "who.one": "One at this bench",
    "who.empty": "Type a name or a code first.",
    "waiting.title": "Hello, {who}",
    "waiting.begun": "Started and not finished",
    "waiting.code": "Job number, case code or file",
    "waiting.begin": "Start",
    "waiting.all": "All cases",
    "waiting.hide": "Hide the cases",
    "waiting.case": "{title} · {engine} · difficulty {difficulty}",
    "waiting.done_before": " · done before",
    "waiting.progress": "My progress",
    "waiting.someone_else": "Someone else",
    "common.free": "Free bench",
    "common.setup": "Sound set-up",
    "common.glossary": "Glossary",
    "common.settings": "Settings",
    "common.doctor": "This machine",
    "common.end": "Quit",
    "progress.title": "{who}'s progress",
    "progress.count": "Cases finished: {count}. Right: {right}.",
    "progress.kinds": "Right answers by kind of fault",
    "progress.nothing": "You have not finished a case yet.",
    "progress.of": "{right} of {count}",
    "progress.certainty": "How sure you were, and how often you were right",
    "progress.said": "{said}: {right} of {count} right",
    "settings.title": "Station settings",
    "settings.theme": "Colours",
    "settings.theme.dark": "Dark",
    "settings.theme.light": "Light",
    "settings.language": "Language",
    "settings.language.en": "English",
    "settings.language.es": "Español",
    "settings.trace": "Picture of the sound during practice",
    "settings.trace.fading": "Fades as your ear gets better",
    "settings.trace.shown": "Always shown",
    "settings.trace.off": "Never shown",
    "settings.scale": "Text size (Ctrl + and Ctrl -)",
    "settings.device": "Sound output",
    "settings.device_default": "The system's default output",
    "settings.level": "Volume here: {level:.0f} dB. Only you can turn it up.",
    "settings.station": (
        "Station mode: full screen, ready for the next learner after three idle minutes, and a PIN to leave"
    ),
    "settings.station_on": "Start station mode",
    "settings.station_off": "End station mode",
    "settings.pin_short": "Use at least {count} digits for the PIN.",
    "settings.damaged": (
        "Some settings in {path} are damaged: {which}. The usual values are used instead. The next time settings are "
        "saved, the damaged file is kept as {aside}."
    ),
    "station.ask": "PIN of this station",
    "station.limits": (
        "Station mode keeps learners on task. It does not lock the machine. To do that, use the system's own kiosk "
        "account."
    ),
    "station.leave": "Quit the program",
    "station.wrong": "That is not the PIN.",
    "doctor.exam.memory_good": "other programs of this account cannot read an exam in memory",
    "doctor.exam.memory_bad": "other programs of this account can read an exam in memory here",
    "doctor.exam.memory_mend": "Run exams on Linux, or watch what else runs at the station.",
    "doctor.exam.start_good": "an exam starts without this account's Python settings",
    "doctor.exam.start_bad": "this account's Python settings reach an exam and can put other code into it",
    "doctor.exam.start_mend": "Install the program with pip, and start exams with: python -I -m trainer",
    "doctor.compiled": "compiled (fast)",
    "doctor.not_compiled": "not compiled: everything works, but sounds and hints take longer to compute",
    "doctor.title": "This machine",
    "glossary.title": "Glossary",
    "stage.waiting": "Working ...",
    "stage.sounding": "Computing the sound ...",
    "stage.codes": "Reading the codes ...",
    "stage.measuring": "Measuring ...",
    "stage.reasoning": "Working out every fault that this engine can have: {percent:.0f} %",
    "sound.silent": (
        "There is no sound output here. Sounds are written to files, which are deleted when you close the trainer. "
        "Everything else works as usual."
    ),
    "banner.unkept": (
        "Nothing is saved here, so your work will be gone when you quit. To keep it, start the trainer with --data "
        "FOLDER."
    ),
    "sound.to_file": "Saved to {path}. Copy it if you want to keep it.",
    "sound.void": "The computer interrupted the sound, so it does not count.",
    "sound.again": "Play it again, free of charge",
    "sound.lost": "The sound output is gone. No time was charged. The sound starts again at the beginning of the slot.",
    "sound.go_on": "Try again",
    "sound.rest": "You have listened for {minutes:.0f} minutes. A rest helps your ears.",
    "sound.level": "Level {level:.0f} dB",
    "setup.title": "Sound set-up",
    "setup.why": (
        "This takes about ninety seconds. It shows whether you can hear the faint hum here. You can go on whatever "
        "the result."
    ),
    "setup.device": "Sound output: {name}",
    "setup.begin": "Start",
    "setup.begin_headphones": "Start, with a headphone check (40 s more)",
    "setup.step": "Question {done} of {count}",
    "setup.ask.side": "Which side does the click come from?",
    "setup.ask.comfort": "Set a comfortable level, never loud. It starts low, and only you can turn it up.",
    "setup.ask.bed": "Can you hear the soft background noise over the noise in your room?",
    "setup.ask.hum": "How many faint hums do you hear in the noise?",
    "setup.ask.low": "Two short sounds: did you hear both?",
    "setup.ask.phase": "Three tones: which one is the quietest?",
    "setup.answer.side.left": "Left",
    "setup.answer.side.right": "Right",
    "setup.answer.side.both": "Both",
    "setup.answer.side.none": "Nothing",
    "setup.answer.comfort.comfortable": "Comfortable",
    "setup.answer.bed.yes": "Yes",
    "setup.answer.bed.barely": "Barely",
    "setup.answer.bed.no": "No",
    "setup.answer.low.both": "Both",
    "setup.answer.low.first": "Only the first",
    "setup.answer.low.second": "Only the second",
    "setup.answer.low.none": "Neither",
    "setup.level": "Level {level:.0f} dB",
    "setup.softer": "Softer",
    "setup.louder": "Louder",
    "setup.again": "Play again",
    "setup.undo": "Take back the last answer",
    "setup.leave": "Leave the set-up",
    "setup.result": "What the set-up showed",
    "setup.once_more": "Do it again",
    "setup.none": "The sound of this station has not been set up yet.",
    "setup.hum.ready": "You can hear the hum here easily.",
    "setup.hum.usable": "You can only just hear the hum here.",
    "setup.hum.not_heard": "You could not hear the hum here.",
    "setup.hum.guessed": "You counted hums where there were none.",
    "setup.sides.stereo": "Both sides work and are the right way round.",
    "setup.sides.swapped": "The sides are swapped.",
    "setup.sides.mono": "Both sides sound the same: mono.",
    "setup.sides.unsure": "It is not clear which side is which.",
    "setup.bed.yes": "You can hear the background noise over the noise in your room.",
    "setup.bed.barely": "You can barely hear the background noise over the noise in your room.",
    "setup.bed.no": "The noise in your room covers the background noise.",
    "setup.lows.all": "You can hear low sounds here.",
    "setup.lows.no_lows": "Low sounds are missing here, but you can still hear the rest of the hum.",
    "setup.lows.unsure": "It is not clear whether you can hear low sounds here.",
    "setup.headphones.likely": "You are probably using headphones.",
    "setup.headphones.unlikely": "You are probably using loudspeakers, or the sound is mono.",
    "setup.advice.ready": "You are ready. You can trust what you hear here.",
    "setup.advice.usable": (
        "This will do, and your results carry a note. Closed headphones or a quieter place would help."
    ),
    "setup.advice.not_heard": (
        "Here, silence does not mean a dead circuit. Try closed headphones or a quieter place, or work from codes and "
        "readings."
    ),
    "setup.advice.guessed": "Try again in a quiet place. Count only the hums that you are sure of.",
    "term.actuation_test": "actuation test",
    "meaning.actuation_test": "The drive module clicks all the injectors together, then each one in numeric order.",
    "term.slot": "slot",
    "meaning.slot": "The time in which one cylinder, or all of them, is driven.",
    "term.burst": "burst (all together)",
    "meaning.burst": (
        "The first slot: every injector at once. It is louder than any single slot, and it loads the supply most."
    ),
    "term.background": "background current",
    "meaning.background": (
        "The current through the injectors that are not being driven: up to 2 A each, "
        "where a driven one gets 8 to 10 A."
    ),
    "term.hum": "hum",
    "meaning.hum": (
        "The very faint sound of the background current. If that is all you hear, the injector being driven most "
        "likely has an open circuit. Measure before you say so."
    ),
    "term.even": "even",
    "meaning.even": (
        "As loud as on a good engine, within a few decibels. The circuit works now; an intermittent fault may not be "
        "showing."
    ),
    "term.weak": "weak",
    "meaning.weak": "There is a click, but it is clearly softer than on the other cylinders.",
    "term.dull": "dull",
    "meaning.dull": "There is current but no click, only a thud.",
    "term.mate": "good cylinder",
    "meaning.mate": (
        "Another cylinder of the same engine that works well. Measure it in the same way, and you know what a good "
        "value is here."
    ),
    "term.zeroed": "leads zeroed",
    "meaning.zeroed": ("Hold the leads together and zero the meter. Then their own resistance is not in the reading."),
    "term.bed": "bed",
    "meaning.bed": "The steady workshop noise behind everything. If you cannot hear even that, it is your loudspeaker.",
    "term.module": "drive module",
    "meaning.module": "The box that drives the injectors with over 100 V.",
    "term.feed": "feed side",
    "meaning.feed": "The wiring from the module to the coil. The injectors of a bank often share it.",
    "term.return": "return side",
    "meaning.return": (
        "The wiring from the coil back to the module. Each injector has its own, and the module senses the current in "
        "it."
    ),
    "term.break_point": "break point",
    "meaning.break_point": (
        "A place where you can open the circuit and measure: module connector, pass-through connector or injector plug."
    ),
    "term.pass_through": "pass-through connector",
    "meaning.pass_through": "The connector that goes through the valve-cover gasket. It fails most often.",
    "term.open": "OL",
    "meaning.open": "Over the meter's range: there is no path for its current.",
    "term.load": "drop under load",
    "meaning.load": (
        "The volts lost over a piece of wiring while the drive's current flows through it. A meter's tiny current "
        "does not show a weak joint."
    ),
    "term.insulation": "insulation to ground",
    "meaning.insulation": (
        "How well a wire is insulated from the engine. Never test it through a module, an injector or a heater."
    ),
    "term.finding": "finding",
    "meaning.finding": "What you commit to: cylinders, place, side, kind, and how sure you are.",
    "term.passes": "circuit passes",
    "meaning.passes": (
        "This is a finding too. It never means 'the injector is good': nozzles, seals and compression are not shown."
    ),
    "term.certainty": "certainty",
    "meaning.certainty": (
        "How sure you are: 50, 75 or 95 %. It is scored separately, so that being sure and wrong shows."
    ),
    "term.proof": "proof",
    "meaning.proof": "How far your own evidence proves your finding.",
    "term.numeric": "numeric order",
    "meaning.numeric": (
        "1, 2, 3 ... It is not the firing order. Which numbers are on which bank differs from engine to engine."
    ),
    "wrong.no_such_pair": "A meter on these two pins tells you nothing useful.",
    "mend.no_such_pair": (
        "On one half, use feed and return of one cylinder, or two returns. Or use both ends of one wire, or a pin and "
        "engine ground."
    ),
    "wrong.two_probes": "You need both probes: on two pins, or on a pin and engine ground.",
    "mend.two_probes": "Go to a pin with Tab and press Enter. G puts the second probe on ground.",
    "wrong.worker_gone": "The part of the program that does the computing has stopped.",
    "mend.worker_gone": "It has been started again. Repeat your last step.",
    "wrong.no_screen": "No window can be opened here: {reason}.",
    "mend.no_screen": "Work in the terminal with 'injector-trainer practice --text', or start a desktop session.",
    "wrong.no_browser": "No browser could be opened: {reason}.",
    "mend.no_browser": "Open the file yourself.",
    "wrong.worked_elsewhere": "This case is open in another window or terminal.",
    "mend.worked_elsewhere": "Carry on there, or leave both and start it again from the list.",
    "wrong.worker_dead": "The part of the program that does the computing keeps stopping.",
    "mend.worker_dead": (
        "Quit the program and start it again. Your records are safe. If it happens again, look at 'This machine'."
    ),
}
