"""German."""

_NAMES = {
    "location.drive_module": "Steuergerät",
    "location.engine_harness": "Motorkabelbaum",
    "location.pass_through_connector": "Deckelstecker",
    "location.under_cover_harness": "Innenkabelbaum",
    "location.solenoid_coil": "Magnetspule",
    "location.armature": "Anker",
    "location.module_power": "Batterie und Steuergeräteversorgung",
    "side.feed": "Zuleitung",
    "side.return": "Rückleitung",
    "heard.louder": "lauter",
    "heard.even": "unauffällig",
    "heard.weak": "schwach",
    "heard.dull": "dumpf",
    "heard.very_faint": "sehr leise",
    "heard.nothing": "nichts",
    "slot.one": "Takt {number}",
    "slot.all": "alle zusammen",
    "percent.plain": "{percent:.1f} %",
    "percent.under": "< 0,1 %",
    "percent.over": "> 99,9 %",
    "slot.cylinders_out": "Zylinder {cylinders}",
    "slot.cylinders_several": "Zylinder {cylinders}",
    "certainty.0.5": "geraten (50 %)",
    "certainty.0.75": "ziemlich sicher (75 %)",
    "certainty.0.95": "so gut wie sicher (95 %)",
    "test.actuation_test": "Ansteuertest",
    "test.codes": "Fehlercodes",
    "test.look": "Stecker ansehen",
    "test.pin_drag": "Haltekraft der Kontakte prüfen",
    "test.module_ohms": "Widerstand am Steuergerätestecker",
    "test.pass_through_ohms": "Widerstand an einem Deckelstecker",
    "test.injector_ohms": "Widerstand an einem Injektorstecker",
    "test.pin_to_ground": "Pin gegen Masse",
    "test.move_harness": "Kabelbaum bewegen",
    "test.load_drop": "Spannungsabfall unter Last",
    "test.current_trace": "Stromverlauf",
    "test.swap_returns": "Rückleitungen tauschen",
    "test.dummy_load": "Ersatzlast",
    "test.heat": "eine Stelle erwärmen",
    "work.try": "{what}, Versuch {number}, {effort}",
    "effort.gentle": "vorsichtig",
    "effort.thorough": "kräftig und länger",
    "location.under_bank": "{place}, Bank {bank}",
    "test.cover_off": "Deckel ab",
    "test.module_substitution": "Probetausch Steuergerät",
    "test.injector_swap": "geprüfter Injektor",
    "test.volts_at_rest": "Ruhespannung",
    "test.live_preparation": "Arbeit unter Spannung vorbereiten",
    "test.clamp": "Zange an einer Rückleitung",
    "test.lamp_load": "Prüflampe an abgezogener Leitung",
    "test.crank": "Batterie beim Anlassen",
    "test.power_drop": "Spannungsabfall Batterie bis Steuergerät",
    "test.warm_run": "Warmlauf",
    "test.contribution": "Zylinderbeitrag",
    "test.compression": "relative Kompression",
    "test.repair_wire": "Leitung reparieren",
    "test.repair_connector": "Stecker reparieren",
}

_CODES = {
    "code.open": "Injektorkreis unterbrochen oder Strom zu niedrig, Zylinder {cylinder}",
    "code.over": "Injektorkreis Signal zu hoch oder Strom zu hoch, Zylinder {cylinder}",
    "code.tripped": "Injektorkreis Signal zu niedrig, Zylinder {cylinder}",
    "code.uncommanded": "Injektorkreis Signal zu hoch oder Strom zu hoch, Zylinder {cylinder}",
    "code.held_high": "Injektorkreis Signal zu hoch oder Strom zu hoch, Zylinder {cylinder}",
    "code.group_open": "Versorgung einer Injektorgruppe unterbrochen",
    "code.group_low": "Versorgung einer Injektorgruppe zu niedrig, nach zu hohem Strom abgeschaltet",
    "code.supply_low": "Leistung des Injektor-Steuergeräts: Endstufenspannung zu niedrig",
    "code.unnamed": "Injektorkreis, kein Zylinder angegeben",
    "codes.none": "Keine Fehlercodes.",
    "codes.stored": "Im Speicher von einem früheren Fehler: {codes}",
    "codes.place": "Ein Fehlercode sagt, was das Steuergerät bemerkt hat, aber nie, wo.",
    "codes.cleared": "Fehlercodes gelöscht. Mach den Test noch mal und lies neu aus.",
}


_EXPLANATION = {
    "reason.even": "{slot}: {heard}. Die Spule bekommt {own:.1f} A, und der Anker bewegt sich: {under}.",
    "reason.short_of_lift": (
        "{slot}: {heard}. Die Spule bekommt nur {own:.1f} A. Das reicht nicht, der Anker zieht nicht an: {under}."
    ),
    "reason.stuck": "{slot}: {heard}. Die Spule bekommt {own:.1f} A, aber der Anker bewegt sich nicht: {under}.",
    "reason.hum": (
        "{slot}: {heard}. Die eigene Spule bekommt {own:.1f} A. Du hörst nur den Grundstrom der anderen "
        "({count} Injektoren mit je {others:.1f} A), {under}."
    ),
    "reason.shared": (
        "{slot}: {heard}. Er teilt sich eine Strombegrenzung mit {cylinders}. Jeder bekommt {own:.1f} A, also zieht "
        "kein Anker an: {under}."
    ),
    "level.quieter": "{decibel:.0f} dB leiser als {good}",
    "level.louder": "{decibel:.0f} dB lauter als {good}",
    "level.same": "so laut wie {good}",
    "level.good_slot": "ein intakter Takt",
    "level.good_engine": "ein intakter Motor",
    "reason.another_way": "Der Ausgang des Steuergeräts führt {output:.1f} A, der Strom nimmt also einen anderen Weg.",
    "reason.silent": (
        "{slot}: {heard}. Weder durch die eigene Spule noch durch die anderen fließt Strom, also brummt nichts."
    ),
    "reason.also": "Außer der Reihe bewegt sich: {cylinders}.",
    "reason.elsewhere": "Was sich bewegt, gehört zu {cylinders}. Das Geräusch kommt also von einer anderen Stelle.",
    "reason.tripped": "Der Strom war zu hoch, und das Steuergerät hat die Zuleitung abgeschaltet.",
    "reason.burst": "Alle zusammen: {moved} von {count} Ankern bewegen sich, {under}.",
}

_DEBRIEF = {
    "debrief.right": "Richtig, und nachgewiesen.",
    "debrief.unproved": "Richtig, aber nicht nachgewiesen.",
    "debrief.unmended": "Richtig, aber der Fehler ist noch da.",
    "debrief.by_ear": "Du bist nach Gehör und Fehlercodes gegangen. Miss das Teil, bevor du es tauschst.",
    "debrief.not_right": "Nicht ganz.",
    "debrief.it_was": "Es war: {claims}.",
    "debrief.truth": "Lösung: {claims}",
    "debrief.answer": "Deine Diagnose: {claims}; {certainty}",
    "debrief.passes": "Stromkreis in Ordnung",
    "debrief.claim": "{kind}, {location}, {side}{cylinders}",
    "debrief.score": "Punkte: {points:.0f} von 100",
    "debrief.arithmetic": (
        "Zylinder 25 × {cylinders:.2f} + Ort 30 × {location:.2f} + Fehlerart 15 × {kind:.2f} "
        "+ Nachweis 20 × {proof:.2f} + Zeitaufwand 10 × {economy:.2f}"
    ),
    "debrief.certainty": "Wie sicher du warst, zählt extra: Brier {brier:.3f} (0 ist am besten, 1 am schlechtesten).",
    "debrief.calibration": "Bisher: {rows}.",
    "debrief.calibration_row": "bei {said:.2f} lagst du zu {right} richtig (Anzahl: {count})",
    "debrief.rule": "Merk dir: {rule}",
    "debrief.passed_rule": (
        "„Stromkreis in Ordnung“ ist eine Diagnose. Es heißt nie „Injektor gut“: Düsen, Dichtungen, Kompression und "
        "Öl zeigt dieser Test nicht."
    ),
    "debrief.again": "Hier noch mal die Lösung.",
    "debrief.yours": "Jetzt hörst du, wie deine Antwort am selben Motor geklungen hätte.",
    "debrief.take": "Denk darüber nach: {question}",
}


_TERMINAL = {
    "card.head": "Auftragskarte",
    "card.predicted": "(erwartet: {predicted})",
    "card.heard": "Gehört: {slots} ({place})",
    "card.codes": "Fehlercodes: {codes}",
    "card.no_codes": "keine",
    "card.move": "Bewegen: {what}",
    "card.warm_run": "Motor warmlaufen lassen",
    "card.heat": "Erwärmen: {what}",
    "card.swap": "Rückleitungen getauscht: {what}",
    "card.substitute": "Geprüftes Teil: {what}",
    "card.give_back": "Geprüftes Teil: {what}",
    "card.look": "Angesehen, was offen ist: {what}",
    "card.drag": "Prüfstift durch die offenen Kontakte gezogen: {what}",
    "card.repair": "Repariert: {place}, {cylinders}",
    "card.stopped": "beendet",
    "card.taken_out": "wieder ausgebaut",
    "card.total": "Gesamt: {minutes:.0f} min",
    "request.pair": "Widerstand, Zylinder {cylinder}, {point}",
    "request.returns": "Widerstand, Rückleitung {cylinder} gegen Rückleitung {other}, {point}",
    "request.ground": "Widerstand gegen Masse, {side} {cylinder}, {point}",
    "request.wire": "Widerstand von Ende zu Ende, {place}, {side} {cylinder}",
    "request.insulation": "Isolation gegen Masse, {side} {cylinder}, {point}",
    "request.volts": "Ruhespannung gegen Masse, {side} {cylinder}, {point}",
    "request.insulation_between": "Isolation, Rückleitung {cylinder} gegen Rückleitung {other}, {point}",
    "request.lamp": "Prüflampe an der Leitung, {place}, {side} {cylinder}",
    "request.clamp": "Stromzange an Rückleitung {cylinder}, angesteuert wird Zylinder {other}",
    "request.crank": "Batteriespannung, während der Anlasser dreht",
    "request.plus_drop": "Spannungsabfall Batterie-Plus bis Steuergerät, alle zusammen angesteuert",
    "request.ground_drop": "Spannungsabfall Steuergerätemasse bis Batterie-Minus, alle zusammen angesteuert",
    "request.contribution": "Zylinderbeitrag bei laufendem Motor",
    "request.compression": "relative Kompression beim Anlassen",
    "request.drop": "Spannungsabfall unter Last, {place}, {side} {cylinder}",
    "request.supply": "niedrigste Endstufenspannung, alle zusammen angesteuert",
    "request.trace": "Stromverlauf, Rückleitung {cylinder}",
    "request.dummy": "Strom durch eine Ersatzlast anstelle von Injektor {cylinder}",
    "card.minutes": "{minutes:.0f} min",
    "case.head": "{heading}",
    "case.code": "Fallcode: {code}",
    "case.drawn_story": "Der Motor hat Aussetzer. Gemessen hat noch keiner etwas.",
    "engine.head": "{title}. Zahlenfolge: {numbers}. Zündfolge: {firing}.",
    "engine.bank": "{bank}: {numbers}, von vorn nach hinten",
    "engine.connector": "Deckelstecker {name} gehört zu {cylinders}, mit {pins}.",
    "engine.pins.shared": "einem gemeinsamen Zuleitungspin",
    "engine.pins.single": "je einem eigenen Zuleitungspin",
    "engine.live.all": (
        "In jedem Takt haben alle Zuleitungen Spannung, also können alle anderen Injektoren mitbrummen."
    ),
    "engine.hall": (
        "Der Motor steht in einer großen, leeren Halle, da verschwimmen die Impulse. Beug dich über eine Bank, dann "
        "hörst du jeden einzeln."
    ),
    "engine.live.commanded": (
        "In einem Takt hat nur die Zuleitung der angesteuerten Bank Spannung, also kann nur diese Bank mitbrummen."
    ),
    "welcome.start": "Tippe 'hear', um den Test zu starten, oder 'help' für alles andere.",
    "hear.whole": "der ganze Test",
    "stand.now": "Du stehst hier: {place}.",
    "choice.again": "Tippe eine Zahl von 1 bis {count}.",
    "side.none": "keine Seite",
    "finding.check": "Du willst abgeben: {claims}.",
    "finding.sure": "Wirklich abgeben? Zurücknehmen geht nicht. (ja/nein): ",
    "finding.dropped": "Nicht abgegeben.",
    "finding.passes_next": "An diesem Stromkreis gibt es nichts zu reparieren. Tippe 'debrief'.",
    "debrief.why": "Darum klang jeder Takt so:",
    "debrief.path": "Das hast du gemacht:",
    "prompt": "{minutes:.0f} min{state} > ",
    "prompt.moving": "in Bewegung: {place}",
    "prompt.ran_warm": "überall warm",
    "prompt.warm": "warm: {place}",
    "prompt.swapped": "Rückleitungen {first} und {second} getauscht",
    "prompt.lent": "geprüftes Teil eingebaut: {what}",
    "resumed": "An diesem Fall warst du schon. Schritte bisher: {count}. Von vorn geht es mit practice --new.",
    "hear.playing": "Du hörst: {what} ({place}, {seconds:.0f} s).",
    "hear.void": "Der Computer hat den Ton unterbrochen, das zählt nicht. Spiel ihn noch mal ab, es kostet nichts.",
    "hear.stopped": "Angehalten. Noch mal abspielen kostet nichts.",
    "hear.file": "Gespeichert: {path}",
    "hear.files": (
        "Die Töne werden hier als WAV-Dateien gespeichert, jeder Pfad wird angezeigt. Beim Beenden werden sie "
        "gelöscht. Einen Ton behältst du mit 'injector-trainer hear CASE -o FILE.wav'."
    ),
    "hear.back": "Die Tonausgabe ist wieder da.",
    "hear.codes_later": "Der Test ist vorbei. Jetzt kannst du die Fehlercodes auslesen.",
    "suspects.head": "Orte, die du ausgeschlossen hast: {places}",
    "suspects.none": "noch keine",
    "look.nothing": "nichts Auffälliges",
    "drag.nothing": "alle Kontakte halten den Stift",
    "work.drag_nothing": "Alle Kontakte halten den Stift.",
    "work.move": "In Bewegung: {what}. Mit 'move none' hörst du auf.",
    "work.warm_run": "Der Motor ist gelaufen und überall warm. Mach den Test, bevor er abkühlt.",
    "work.heat": "Warm: {what}. Mit 'heat none' lässt du es abkühlen.",
    "work.none": "Beendet.",
    "work.swap": "Rückleitungen {first} und {second} sind am Steuergerätestecker getauscht.",
    "work.substitute": "Geprüftes Teil eingebaut: {what}. Mach den Test noch mal.",
    "reading.elsewhere": "Noch abgezogen: {places}. 'hear' steckt alles wieder zusammen.",
    "work.look_off": "Abgezogen: {places}. 'hear' steckt alles wieder zusammen.",
    "finding.cancel": "Mit 'cancel' kommst du aus diesen Fragen heraus.",
    "finding.count_again": "Tippe 0, 1 oder 2.",
    "work.look": (
        "Alle Stecker sind drauf. Von außen sieht nichts verschmort oder nass aus. Für den Blick hinein zieh einen "
        "Stecker ab."
    ),
    "reading": "{what}: {display}",
    "codes.line": "{code}  {meaning}",
    "finding.ask_count": "Wie viele Fehler? 0 (Stromkreis in Ordnung), 1 oder 2",
    "finding.ask_cylinders": "Zylinder von Fehler {number}, zum Beispiel 3 oder 1,3",
    "finding.ask_location": "Ort von Fehler {number}",
    "finding.ask_kind": "Art von Fehler {number}",
    "finding.ask_side": "Seite von Fehler {number} (n für keine)",
    "finding.ask_certainty": "Wie sicher bist du",
    "finding.committed": "Du hast abgegeben: {claims}; {certainty}.",
    "repair.ask": "Jetzt die Reparatur. Tippe 'repair PLACE CYLINDERS', dann 'retest', dann 'debrief'.",
    "repair.done": "Erledigt: {what}. Dauer: {minutes:.0f} min. Tippe 'retest', um zu sehen, ob es das war.",
    "retest.proved": "Alle Takte sind unauffällig, und es gibt keinen Fehlercode.",
    "retest.provoke": (
        "Vor der Reparatur hat kein Test den Fehler gezeigt, also beweist ein unauffälliger noch nichts. Prüf so, wie "
        "du ihn gefunden hast: bewegen, erwärmen oder noch mal messen."
    ),
    "retest.not_proved": "Ein Takt ist auffällig, oder ein Fehlercode ist wieder da. Der Fehler ist noch nicht weg.",
    "work.given_back": "Die geprüften Teile sind draußen, die Teile des Motors wieder drin.",
    "typed.yes": "ja j yes y",
    "live.ask": (
        "Das ist Arbeit unter Spannung. Mit Vorbereitung dauert sie {minutes:.0f} min. Hat eine nach euren "
        "Vorschriften befugte Person den Bereich abgesperrt? (ja/nein): "
    ),
    "price.ask": "Das dauert {minutes:.0f} min. Machst du das? (ja/nein): ",
    "price.left": "Nicht gemacht. Es wurde keine Zeit berechnet.",
    "left": "Hier unterbrochen. Nichts geht verloren: Derselbe Befehl bringt dich zu diesem Fall zurück.",
    "left_unkept": (
        "Hier unterbrochen. Auf diesem Rechner konnte nichts gespeichert werden, deine Arbeit ist also weg."
    ),
    "closed": "Fall geschlossen.",
    "unknown_command": "'{word}' kenne ich nicht. Tippe 'help'.",
    "silent_ask": (
        "Hörst du gar nichts? Der Werkstattlärm ist immer da. Wenn du auch den nicht hörst, liegt es am Lautsprecher."
    ),
    "memory_store": "Was du jetzt machst, wird nicht gespeichert. {reason}",
    "window.absent": "Das Fenster braucht einen Bildschirm, hier ist keiner. Die Übung läuft deshalb im Terminal.",
    "doctor.good": "gut",
    "doctor.bad": "zu beheben",
    "check.tries_move": "{file}: Bewegen zeigt den Fehler bei Versuch {count} ({place}).",
    "check.tries_heat": "{file}: Erwärmen zeigt den Fehler bei Versuch {count} ({place}).",
    "check.good": "Gelesene Dateien: {count}. Keine Probleme.",
    "check.bad": "Gefundene Probleme: {problems}. Gelesene Dateien: {count}.",
}

_HELP = {
    "help": (
        "Hören      hear [SLOT ...]                 ganzen Test starten oder Takte wiederholen (all, 1, 2, ...)\n"
        "           compare A B                     zwei Takte nacheinander, gleich laut abgespielt\n"
        "           stand PLACE                     front, Bank, 'cover N' (auf dem Deckel), 'probe N' (Deckel ab)\n"
        "Codes      codes · clear\n"
        "Messen     pair POINT N                    Zuleitung gegen Rückleitung von Zylinder N\n"
        "           returns POINT N M               Rückleitung gegen Rückleitung\n"
        "           ground POINT N | ground POINT feed N     Pin gegen Motormasse\n"
        "           wire engine|cover N [feed]      eine Leitung von Ende zu Ende\n"
        "           insulation POINT N [M]          Isolation gegen Masse oder gegen Rückleitung M\n"
        "           volts POINT N | volts POINT feed N       Ruhespannung gegen Masse: spannungsfrei?\n"
        "           drop module|engine|connector|cover|coil N [feed]     Spannungsabfall unter Last\n"
        "           lamp engine|cover N [feed]      Prüflampe an einer Leitung, beide Enden abgezogen\n"
        "           supply · crank · plusdrop · grounddrop · compression · contribution · trace N · dummy N\n"
        "           clamp N [M]                     Stromzange an Rückleitung N, während M angesteuert wird\n"
        "             POINT: module, plug (Injektorseite), plug harness oder Name eines Steckers [engine|cover]\n"
        "             mit 'connected', 'firm', 'live', 'leads' oder 'nowait' machst du den Fehler mit Absicht\n"
        "             mit 'minmax' bleiben kleinster und größter Messwert stehen, während du etwas bewegst\n"
        "Arbeiten   move PLACE [BANK] [gentle] | move none · heat PLACE [BANK] [gentle] | heat none\n"
        "           warmrun · swap N M · look · drag\n"
        "           lend injector N | lend module | lend none     geprüftes Teil ein- oder ausbauen\n"
        "Denken     out PLACE · back PLACE          Ort ausschließen oder zurückholen · card\n"
        "           expect WORDS                    sag, was du beim nächsten Messwert erwartest\n"
        "           hint                            drei Tipps, jeder deutlicher; sie stehen auf der Karte\n"
        "Diagnose   finding · dann repair PLACE N[,M] [feed|return] · retest [moving PLACE | warm PLACE] · debrief\n"
        "           why [N]                         nach der Diagnose: was deine Befunde übrig lassen und warum\n"
        "Sonstiges  engine · help · leave\n"
        "PLACE eines Fehlers: module, engine, connector, cover, coil, armature, power"
    ),
}

TEXTS: dict[str, str] = {
    **_NAMES, **_CODES, **_EXPLANATION, **_DEBRIEF, **_TERMINAL, **_HELP,
}  # fmt: skip
