"""German: who, settings, sound set-up, words, the guide."""

TEXTS: dict[str, str] = {
    "who.title": "Wer arbeitet?",
    "who.job": "Hör dir den Ansteuertest an, sammle Befunde, finde den Fehlerort und sag, wie sicher du bist.",
    "who.name": "Dein Name oder ein Kürzel (kein Passwort; bleibt auf diesem Rechner)",
    "who.second": "Zweite Person: Einer hört, der andere misst. Wechselt euch bei jedem Fall ab.",
    "who.go": "Weiter",
    "who.two": "Zu zweit arbeiten",
    "who.one": "Allein arbeiten",
    "who.empty": "Tippe erst einen Namen oder ein Kürzel.",
    "waiting.title": "Hallo, {who}",
    "waiting.begun": "Angefangen und nicht fertig",
    "waiting.code": "Auftragsnummer, Fallcode oder Datei",
    "waiting.begin": "Starten",
    "waiting.all": "Alle Fälle",
    "waiting.hide": "Fälle ausblenden",
    "waiting.case": "{title} · {engine} · Stufe {difficulty}",
    "waiting.done_before": " · schon gemacht",
    "waiting.progress": "Mein Stand",
    "waiting.someone_else": "Jemand anders",
    "common.free": "Freie Werkbank",
    "common.setup": "Ton einrichten",
    "common.glossary": "Fachwörter",
    "common.settings": "Einstellungen",
    "common.doctor": "Dieser Rechner",
    "common.end": "Beenden",
    "progress.title": "Stand von {who}",
    "progress.count": "Fertige Fälle: {count}. Richtig: {right}.",
    "progress.kinds": "Richtige Antworten nach Fehlerart",
    "progress.nothing": "Du hast noch keinen Fall fertig.",
    "progress.of": "{right} von {count}",
    "progress.certainty": "Wie sicher du warst und wie oft richtig",
    "progress.said": "{said}: {right} von {count} richtig",
    "settings.title": "Einstellungen der Station",
    "settings.theme": "Farben",
    "settings.theme.dark": "Dunkel",
    "settings.theme.light": "Hell",
    "settings.language": "Sprache",
    "settings.language.en": "English",
    "settings.language.es": "Español",
    "settings.trace": "Bild vom Ton beim Üben",
    "settings.trace.fading": "Verblasst, je besser du hörst",
    "settings.trace.shown": "Immer sichtbar",
    "settings.trace.off": "Nie",
    "settings.scale": "Textgröße (Strg + und Strg -)",
    "settings.device": "Tonausgabe",
    "settings.device_default": "Standardausgabe des Systems",
    "settings.level": "Lautstärke hier: {level:.0f} dB. Nur du kannst lauter stellen.",
    "settings.station": (
        "Stationsmodus: Vollbild, nach drei Minuten Pause bereit für den Nächsten, Ausgang nur mit PIN"
    ),
    "settings.station_on": "Stationsmodus starten",
    "settings.station_off": "Stationsmodus beenden",
    "settings.pin_short": "Nimm für die PIN mindestens {count} Ziffern.",
    "settings.damaged": (
        "Einige Einstellungen in {path} sind beschädigt: {which}. Dafür gelten die üblichen Werte. Beim nächsten "
        "Speichern bleibt die beschädigte Datei als {aside} erhalten."
    ),
    "station.ask": "PIN dieser Station",
    "station.limits": (
        "Der Stationsmodus hält die Azubis bei der Sache. Er sperrt den Rechner nicht. Dafür gibt es das Kiosk-Konto "
        "des Systems."
    ),
    "station.leave": "Programm beenden",
    "station.wrong": "Das ist nicht die PIN.",
    "doctor.exam.memory_good": "andere Programme dieses Kontos können eine Prüfung im Speicher nicht lesen",
    "doctor.exam.memory_bad": "andere Programme dieses Kontos können hier eine Prüfung im Speicher lesen",
    "doctor.exam.memory_mend": "Nimm für Prüfungen Linux, oder achte darauf, was an der Station sonst läuft.",
    "doctor.exam.start_good": "eine Prüfung startet ohne die Python-Einstellungen dieses Kontos",
    "doctor.exam.start_bad": (
        "die Python-Einstellungen dieses Kontos wirken auf eine Prüfung und können fremden Code einschleusen"
    ),
    "doctor.exam.start_mend": "Installiere das Programm mit pip und starte Prüfungen mit: python -I -m trainer",
    "doctor.compiled": "kompiliert (schnell)",
    "doctor.not_compiled": "nicht kompiliert: alles geht, nur Töne und Tipps brauchen länger",
    "doctor.title": "Dieser Rechner",
    "glossary.title": "Fachwörter",
    "stage.waiting": "Arbeite ...",
    "stage.sounding": "Berechne den Ton ...",
    "stage.codes": "Lese Fehlercodes aus ...",
    "stage.measuring": "Messe ...",
    "stage.reasoning": "Rechne alle Fehler durch, die dieser Motor haben kann: {percent:.0f} %",
    "sound.silent": (
        "Hier gibt es keine Tonausgabe. Die Töne landen in Dateien, die beim Beenden gelöscht werden. Alles andere "
        "geht wie gewohnt."
    ),
    "banner.unkept": (
        "Hier wird nichts gespeichert, beim Beenden ist deine Arbeit weg. Soll sie bleiben, starte den Trainer mit "
        "--data ORDNER."
    ),
    "sound.to_file": "Gespeichert: {path}. Kopier die Datei, wenn sie bleiben soll.",
    "sound.void": "Der Computer hat den Ton unterbrochen, das zählt nicht.",
    "sound.again": "Noch mal abspielen, kostenlos",
    "sound.lost": (
        "Die Tonausgabe ist weg. Es wurde keine Zeit berechnet. Der Ton beginnt dann wieder am Anfang des Takts."
    ),
    "sound.go_on": "Noch mal versuchen",
    "sound.rest": "Du hörst jetzt seit {minutes:.0f} Minuten zu. Eine Pause tut den Ohren gut.",
    "sound.level": "Pegel {level:.0f} dB",
    "setup.title": "Ton einrichten",
    "setup.why": (
        "Das dauert etwa neunzig Sekunden. Es zeigt, ob du hier das leise Brummen hörst. Weitermachen kannst du in "
        "jedem Fall."
    ),
    "setup.device": "Tonausgabe: {name}",
    "setup.begin": "Starten",
    "setup.begin_headphones": "Starten, mit Kopfhörertest (40 s länger)",
    "setup.step": "Frage {done} von {count}",
    "setup.ask.side": "Von welcher Seite kommt das Klacken?",
    "setup.ask.comfort": "Stell eine angenehme Lautstärke ein, nie laut. Es fängt leise an, und nur du stellst lauter.",
    "setup.ask.bed": "Hörst du das leise Grundgeräusch trotz der Geräusche im Raum?",
    "setup.ask.hum": "Wie oft hörst du im Rauschen ein leises Brummen?",
    "setup.ask.low": "Zwei kurze Töne: Hast du beide gehört?",
    "setup.ask.phase": "Drei Töne: Welcher ist am leisesten?",
    "setup.answer.side.left": "Links",
    "setup.answer.side.right": "Rechts",
    "setup.answer.side.both": "Beide",
    "setup.answer.side.none": "Nichts",
    "setup.answer.comfort.comfortable": "Angenehm",
    "setup.answer.bed.yes": "Ja",
    "setup.answer.bed.barely": "Kaum",
    "setup.answer.bed.no": "Nein",
    "setup.answer.low.both": "Beide",
    "setup.answer.low.first": "Nur den ersten",
    "setup.answer.low.second": "Nur den zweiten",
    "setup.answer.low.none": "Keinen",
    "setup.level": "Pegel {level:.0f} dB",
    "setup.softer": "Leiser",
    "setup.louder": "Lauter",
    "setup.again": "Noch mal hören",
    "setup.undo": "Letzte Antwort zurücknehmen",
    "setup.leave": "Abbrechen",
    "setup.result": "Das kam dabei heraus",
    "setup.once_more": "Noch mal",
    "setup.none": "Der Ton dieser Station ist noch nicht eingerichtet.",
    "setup.hum.ready": "Das Brummen hörst du hier gut.",
    "setup.hum.usable": "Das Brummen hörst du hier gerade noch.",
    "setup.hum.not_heard": "Das Brummen konntest du hier nicht hören.",
    "setup.hum.guessed": "Du hast ein Brummen gezählt, wo keines war.",
    "setup.sides.stereo": "Beide Seiten gehen und sind richtig herum.",
    "setup.sides.swapped": "Die Seiten sind vertauscht.",
    "setup.sides.mono": "Beide Seiten klingen gleich: mono.",
    "setup.sides.unsure": "Welche Seite welche ist, ist nicht klar.",
    "setup.bed.yes": "Du hörst das Grundgeräusch trotz der Geräusche im Raum.",
    "setup.bed.barely": "Bei den Geräuschen im Raum hörst du das Grundgeräusch kaum.",
    "setup.bed.no": "Die Geräusche im Raum überdecken das Grundgeräusch.",
    "setup.lows.all": "Tiefe Töne hörst du hier.",
    "setup.lows.no_lows": "Tiefe Töne fehlen hier, aber den Rest des Brummens hörst du.",
    "setup.lows.unsure": "Ob du hier tiefe Töne hörst, ist nicht klar.",
    "setup.headphones.likely": "Du hast wahrscheinlich Kopfhörer auf.",
    "setup.headphones.unlikely": "Du hörst wahrscheinlich über Lautsprecher, oder der Ton ist mono.",
    "setup.advice.ready": "Alles bereit. Du kannst dich auf das verlassen, was du hier hörst.",
    "setup.advice.usable": (
        "Das reicht, aber deine Ergebnisse bekommen einen Vermerk. Geschlossene Kopfhörer oder ein ruhigerer Platz "
        "helfen."
    ),
    "setup.advice.not_heard": (
        "Stille heißt hier nicht, dass ein Stromkreis tot ist. Nimm geschlossene Kopfhörer oder einen ruhigeren Platz, "
        "oder halte dich an Fehlercodes und Messwerte."
    ),
    "setup.advice.guessed": (
        "Versuch es noch mal an einem ruhigen Platz. Zähl nur, wo du das Brummen sicher gehört hast."
    ),
    "term.actuation_test": "Ansteuertest",
    "meaning.actuation_test": (
        "Das Steuergerät lässt alle Injektoren zusammen klacken, dann jeden einzeln in der Zahlenfolge."
    ),
    "term.slot": "Takt",
    "meaning.slot": "Die Zeit, in der ein Zylinder oder alle zusammen angesteuert werden. Kein Arbeitstakt des Motors.",
    "term.burst": "Gesamttakt (alle zusammen)",
    "meaning.burst": (
        "Der erste Takt: alle Injektoren auf einmal. Er ist lauter als jeder einzelne Takt und belastet die Versorgung "
        "am stärksten."
    ),
    "term.background": "Grundstrom",
    "meaning.background": (
        "Der Strom durch die Injektoren, die nicht angesteuert werden: je bis zu 2 A. Ein angesteuerter bekommt "
        "8 bis 10 A."
    ),
    "term.hum": "Brummen",
    "meaning.hum": (
        "Das sehr leise Geräusch des Grundstroms. Hörst du nur das, hat der angesteuerte Injektor wahrscheinlich eine "
        "Unterbrechung. Miss nach, bevor du es sagst."
    ),
    "term.even": "unauffällig",
    "meaning.even": (
        "So laut wie an einem intakten Motor, auf wenige Dezibel genau. Jetzt geht der Stromkreis; ein zeitweiser "
        "Fehler zeigt sich vielleicht gerade nicht."
    ),
    "term.weak": "schwach",
    "meaning.weak": "Es klackt, aber deutlich leiser als bei den anderen Zylindern.",
    "term.dull": "dumpf",
    "meaning.dull": "Strom ist da, aber es klackt nicht. Du hörst nur einen dumpfen Schlag.",
    "term.mate": "Vergleichszylinder",
    "meaning.mate": (
        "Ein anderer Zylinder desselben Motors, der in Ordnung ist. Miss ihn genauso, dann weißt du, welcher Wert hier "
        "gut ist."
    ),
    "term.zeroed": "Messleitungen genullt",
    "meaning.zeroed": (
        "Halt die Prüfspitzen zusammen und stell das Messgerät auf null. Dann steckt ihr Widerstand nicht im Messwert."
    ),
    "term.bed": "Grundgeräusch",
    "meaning.bed": (
        "Der gleichmäßige Werkstattlärm hinter allem. Wenn du nicht einmal den hörst, liegt es am Lautsprecher."
    ),
    "term.module": "Steuergerät",
    "meaning.module": "Das Gerät, das die Injektoren mit über 100 V ansteuert.",
    "term.feed": "Zuleitung",
    "meaning.feed": "Die Leitung vom Steuergerät zur Spule. Oft haben die Injektoren einer Bank sie gemeinsam.",
    "term.return": "Rückleitung",
    "meaning.return": (
        "Die Leitung von der Spule zurück zum Steuergerät. Jeder Injektor hat seine eigene, und das Steuergerät misst "
        "darin den Strom."
    ),
    "term.break_point": "Trennstelle",
    "meaning.break_point": (
        "Eine Stelle, an der du den Stromkreis öffnen und messen kannst: Steuergerätestecker, Deckelstecker oder "
        "Injektorstecker."
    ),
    "term.pass_through": "Deckelstecker",
    "meaning.pass_through": "Der Stecker, der durch die Ventildeckeldichtung führt. Er fällt am häufigsten aus.",
    "term.open": "OL",
    "meaning.open": "Über dem Messbereich: Für den Strom des Messgeräts gibt es keinen Weg.",
    "term.load": "Spannungsabfall unter Last",
    "meaning.load": (
        "Die Volt, die an einem Leitungsstück verloren gehen, während der Ansteuerstrom fließt. Der winzige Strom "
        "eines Messgeräts zeigt keine schlechte Verbindung."
    ),
    "term.insulation": "Isolation gegen Masse",
    "meaning.insulation": (
        "Wie gut eine Leitung gegen den Motor isoliert ist. Prüf nie durch ein Steuergerät, einen Injektor oder ein "
        "Heizelement."
    ),
    "term.finding": "Diagnose",
    "meaning.finding": "Was du abgibst: Zylinder, Ort, Seite, Fehlerart und wie sicher du bist.",
    "term.passes": "Stromkreis in Ordnung",
    "meaning.passes": (
        "Auch das ist eine Diagnose. Es heißt nie „Injektor gut“: Düsen, Dichtungen und Kompression zeigt der Test "
        "nicht."
    ),
    "term.certainty": "Sicherheit",
    "meaning.certainty": (
        "Wie sicher du bist: 50, 75 oder 95 %. Das zählt extra, damit auffällt, wenn man sich sicher ist und falsch "
        "liegt."
    ),
    "term.proof": "Nachweis",
    "meaning.proof": "Wie weit deine eigenen Befunde deine Diagnose belegen.",
    "term.numeric": "Zahlenfolge",
    "meaning.numeric": (
        "1, 2, 3 ... Das ist nicht die Zündfolge. Welche Zahlen auf welcher Bank sitzen, ist je nach Motor anders."
    ),
    "wrong.no_such_pair": "Eine Messung zwischen diesen zwei Pins sagt dir nichts.",
    "mend.no_such_pair": (
        "Nimm auf einer Hälfte Zuleitung und Rückleitung eines Zylinders oder zwei Rückleitungen. Oder beide Enden "
        "einer Leitung, oder einen Pin und Motormasse."
    ),
    "wrong.two_probes": "Du brauchst beide Prüfspitzen: an zwei Pins oder an einem Pin und Motormasse.",
    "mend.two_probes": "Geh mit Tab zu einem Pin und drück Enter. G legt die zweite Prüfspitze an Masse.",
    "wrong.worker_gone": "Der Teil des Programms, der rechnet, ist stehen geblieben.",
    "mend.worker_gone": "Er läuft wieder. Wiederhol deinen letzten Schritt.",
    "wrong.no_screen": "Hier lässt sich kein Fenster öffnen: {reason}.",
    "mend.no_screen": ("Arbeite im Terminal mit 'injector-trainer practice --text', oder starte eine Desktop-Sitzung."),
    "wrong.no_browser": "Es ließ sich kein Browser öffnen: {reason}.",
    "mend.no_browser": "Öffne die Datei selbst.",
    "wrong.worked_elsewhere": "Dieser Fall ist in einem anderen Fenster oder Terminal offen.",
    "mend.worked_elsewhere": "Mach dort weiter, oder verlass beide und starte ihn neu aus der Liste.",
    "wrong.worker_dead": "Der Teil des Programms, der rechnet, bleibt immer wieder stehen.",
    "mend.worker_dead": (
        "Beende das Programm und starte es neu. Deine Ergebnisse sind sicher. Passiert es wieder, sieh bei 'Dieser "
        "Rechner' nach."
    ),
}
