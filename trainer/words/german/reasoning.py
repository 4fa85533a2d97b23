"""German for reasoning: tests to do next, misconceptions, hints, paths and proofs."""

_TESTS = {
    "plan.hear": "den ganzen Test starten und vorn am Motor zuhören",
    "plan.through_cover": "jeden Injektor in seinem Takt durch den Deckel abhören",
    "plan.probe": "Stethoskop an jeden Injektor in seinem Takt, Bank {what}",
    "plan.codes": "nach dem Test die Fehlercodes auslesen",
    "plan.module_pairs": "Widerstand von der Zuleitung zu jeder Rückleitung, am Steuergerätestecker",
    "plan.module_returns": "Widerstand von Rückleitung zu Rückleitung, am Steuergerätestecker",
    "plan.module_grounds": "Widerstand von jedem Pin gegen Masse, am Steuergerätestecker",
    "plan.through_pairs": "Widerstand an den Deckelsteckern, Deckelseite, Bank {what}",
    "plan.through_grounds": "Widerstand der Pins gegen Masse an den Deckelsteckern, Deckelseite, Bank {what}",
    "plan.wires_engine": "Leitungen im Motorkabelbaum von Ende zu Ende, Bank {what}",
    "plan.wires_cover": "Leitungen im Innenkabelbaum von Ende zu Ende, Bank {what}",
    "plan.engine_alone": "nur der Motorkabelbaum, Bank {what}: jede Leitung gegen Masse und gegen die anderen",
    "plan.cover_alone": "nur der Innenkabelbaum, Bank {what}: jede Leitung gegen Masse und gegen die anderen",
    "plan.plug_pairs": "Widerstand der Injektoren an ihren Steckern, Bank {what}",
    "plan.plug_grounds": "Widerstand der Injektor-Pins gegen Masse an den Injektorsteckern, Bank {what}",
    "plan.look_module": "die Kontakte im Steuergerätestecker ansehen",
    "plan.look_through": "in die offenen Deckelstecker schauen, Bank {what}",
    "plan.look_cover": "unter den Deckel schauen, Bank {what}",
    "plan.drag_module": "Prüfstift-Test am Steuergerätestecker",
    "plan.drag_through": "Prüfstift-Test in den Deckelsteckern, Bank {what}",
    "plan.drag_cover": "Prüfstift-Test an den Injektorsteckern, Bank {what}",
    "plan.module_volts": "Ruhespannung an jedem Pin des Steuergerätesteckers, alle Stecker drauf",
    "plan.through_volts": "Ruhespannung an beiden Hälften der offenen Deckelstecker, Bank {what}",
    "plan.plug_volts": "Ruhespannung an beiden Hälften der offenen Injektorstecker, Bank {what}",
    "plan.crank": "Batteriespannung, während der Anlasser dreht",
    "plan.power_drops": "Spannungsabfall von der Batterie zum Steuergerät, Plusseite und Masseseite",
    "plan.clamp": "Stromzange an jede Rückleitung, während der Nachbar angesteuert wird",
    "plan.lamp_engine": "Prüflampe an jede abgezogene Leitung im Motorkabelbaum, Bank {what}",
    "plan.lamp_cover": "Prüflampe an jede abgezogene Leitung im Innenkabelbaum, Bank {what}",
    "plan.engine_insulation": "Isolation zwischen den Rückleitungen, nur Motorkabelbaum, Bank {what}",
    "plan.cover_insulation": "Isolation zwischen den Rückleitungen, nur Innenkabelbaum, Bank {what}",
    "plan.warm_run": "den Motor warm laufen lassen, dann den Test starten",
    "plan.contribution": "Zylinderbeitrag bei laufendem Motor",
    "plan.compression": "relative Kompression aus dem Anlasserstrom",
    "plan.supply": "Endstufenspannung, während alle zusammen angesteuert werden",
    "plan.trace": "Stromverlauf, Zylinder {what}",
    "plan.drops": "Spannungsabfall unter Last bis zum Deckelstecker, Zylinder {what}",
    "plan.drops_cover": "Spannungsabfall unter Last unter dem Deckel, Zylinder {what}",
    "plan.move": "während des Tests am Kabelbaum wackeln: {what}",
    "plan.try": "{test} (Versuch {number})",
    "plan.heat": "eine Stelle erwärmen und den Test starten: {what}",
    "plan.reseat_module": "die Stecker am Steuergerät abziehen und wieder stecken, dann den Test starten",
    "plan.reseat": "die Deckelstecker abziehen und wieder stecken, dann den Test starten, Bank {what}",
    "plan.reseat_plugs": "die Injektorstecker abziehen und wieder stecken, dann den Test starten, Bank {what}",
    "plan.lend_module": "den Test mit einem geprüften Steuergerät starten",
    "plan.lend_injector": "den Test mit einem geprüften Injektor starten, Zylinder {what}",
    "plan.swap": "die Rückleitung mit der des Nachbarn tauschen und beide anhören, Zylinder {what}",
    "plan.dummy": "Ersatzlast statt Injektor {what}",
    "plan.complaint": "die Beanstandung nachprüfen: Wann tritt sie auf?",
    "plan.pairs_moved": "Widerstand am Steuergerätestecker, während du am Kabelbaum wackelst: {what}",
    "plan.grounds_moved": (
        "Widerstand von jedem Pin gegen Masse am Steuergerätestecker, während du am Kabelbaum wackelst: {what}"
    ),
    "plan.pairs_warm": "Widerstand am Steuergerätestecker, während eine Stelle warm ist: {what}",
    "plan.trace_moved": "Stromverlauf, während du am Kabelbaum wackelst: {what}",
    "plan.trace_warm": "Stromverlauf, während eine Stelle warm ist: {what}",
    "plan.pairs_reseated": (
        "die Deckelstecker abziehen und wieder stecken, dann den Widerstand am Steuergerätestecker messen, Bank {what}"
    ),
    "plan.pairs_reseated_plugs": (
        "die Injektorstecker abziehen und wieder stecken, dann den Widerstand am Steuergerätestecker messen, Bank "
        "{what}"
    ),
    "plan.repair_and_retest": "die richtige Reparatur, dann noch mal der Test",
    "kind_of_step.begin": "Starte zuerst den Test und hör zu.",
    "kind_of_step.listen": "Hör noch mal hin, näher dran oder von einem anderen Platz. Deine Ohren verraten dir mehr.",
    "kind_of_step.memory": "Frag das Steuergerät selbst, was ihm aufgefallen ist.",
    "kind_of_step.outside": "Nimm das Messgerät und miss an einem Stecker, an den du von außen kommst.",
    "kind_of_step.inside": "Von außen erfährst du nicht mehr. Jetzt heißt es aufmachen.",
    "kind_of_step.driven": "Miss, während Strom fließt. In Ruhe kann alles gut aussehen.",
    "kind_of_step.running": "Lass dir vom laufenden Motor zeigen, welcher Zylinder schwach ist.",
    "kind_of_step.provoke": "Vielleicht kommt und geht der Fehler. Lock ihn hervor, während du prüfst.",
    "kind_of_step.exchange": "Tausch ein Teil und schau, ob der Fehler mitwandert.",
    "kind_of_step.eyes": "Schau erst hin, bevor du weitermisst.",
    "kind_of_step.feel": "Fühl, wie fest die Kontakte halten. Sehen kannst du das nicht.",
}

_HINTS = {
    "hint.first": (
        "Tipp 1 von 3: {step} (Auf deiner Auftragskarte steht, dass du ihn genommen hast. Der nächste verrät mehr.)"
    ),
    "hint.second": (
        "Tipp 2 von 3: {test}. Das dauert {minutes:.0f} min und dürfte die Auswahl {bits:.1f}-mal halbieren."
    ),
    "hint.saves": "Im Schnitt spart das {saved:.0f} min an falschen Reparaturen.",
    "hint.third": "Tipp 3 von 3, ausgearbeitet: {test}. Vor diesem Test lassen deine Befunde noch zu:",
    "hint.finding": "  {percent:>8}  {finding}  → Antwort {lead}",
    "hint.same": "Diagnosen mit demselben Buchstaben kann dieser Test nicht unterscheiden.",
    "hint.proved": "Deine Befunde weisen schon eine Diagnose nach. Überleg, was du hast, und gib sie ab.",
    "hint.nothing": "Hier bringt dich kein weiterer Test voran. Gib deine Diagnose ab und sag, wie sicher du bist.",
    "hint.repairs": "Reparaturen, die günstigste zuerst, im Schnitt {minutes:.0f} min:",
    "hint.repair": "  {what}: {percent}, {minutes:.0f} min mit Nachtest",
    "card.hint": "Tipp {strength}: {test}",
    "card.hint_first": "Tipp 1",
    "expect.noted": "Notiert. Miss jetzt und vergleiche.",
    "expect.beside": "Erwartet hast du {predicted}. Die Anzeige zeigt {display}.",
    "reasoning.wait": "Ich rechne aus, was deine Befunde nachweisen. Ein neuer Motor braucht ein paar Sekunden.",
}

_MISCONCEPTIONS = {
    "misconception.insisted": "einen Fehler genannt, obwohl der Stromkreis in Ordnung ist",
    "misconception.overlooked": "einen auffälligen Takt überhört",
    "misconception.one_of_two": "einen Fehler gefunden und den zweiten übersehen",
    "misconception.even_slot": "einen unauffälligen Takt genannt",
    "misconception.burst_or_order": "den Gesamttakt mitgezählt oder nach Zündfolge gezählt",
    "misconception.not_shown": "„zeigt sich nicht“ mit „in Ordnung“ verwechselt",
    "misconception.silent_loudspeaker": "einen stummen Lautsprecher für einen stummen Stromkreis gehalten",
    "misconception.module_for_its_power": "dem Steuergerät angelastet, was an seiner Versorgung liegt",
    "misconception.one_for_group": "nur einen Takt aus einer ganzen Gruppe genannt",
    "misconception.counted_burst": "den Gesamttakt als Takt mitgezählt",
    "misconception.firing_order": "nach Zündfolge gezählt statt nach Zahlenfolge",
    "misconception.measured_connected": "gemessen, obwohl der Stecker noch drauf war",
    "misconception.hum_for_circuit": "das Brummen für einen intakten Stromkreis gehalten",
    "misconception.open_for_short": "Unterbrechung und Kurzschluss verwechselt",
    "misconception.code_for_location": "einen Fehlercode für einen Fehlerort gehalten",
    "misconception.code_of_another": "einen alten Fehlercode für den heutigen Fehler gehalten",
    "misconception.wrong_side": "die falsche Seite einer Steckverbindung gewählt",
    "misconception.by_ear_alone": "einen Ort nur nach Gehör genannt",
    "misconception.unclassified": "etwas anderes",
    "refute.insisted": (
        "Alle {count} Takte weichen höchstens {spread:.1f} dB von einem intakten Motor ab, und jeder Anker bewegt "
        "sich. Die Ursache der Beanstandung liegt nicht in diesem Stromkreis."
    ),
    "refute.not_shown": (
        "Der Fehler: {true}. Deine Tests haben ihn nicht hervorgeholt, darum steht „Stromkreis in Ordnung“ bei "
        "{passes}. „Zeigt sich nicht“ sagt etwas über den Test, nie über das Teil."
    ),
    "refute.overlooked": (
        "Der Fehler: {true}. Takt {true_slot} weicht {under:.0f} dB von seinem guten Pegel ab. Für „Stromkreis in "
        "Ordnung“ bleiben nur {passes}."
    ),
    "refute.one_of_two": (
        "Dein Fehler ist da, aber es gibt noch einen zweiten: {true}. Such weiter, bis du jeden auffälligen Takt "
        "erklären kannst."
    ),
    "refute.even_slot": (
        "Du hast {said} genannt, das klang aber unauffällig. Takt {true_slot} weicht {under:.0f} dB von einem intakten "
        "ab. Zähl nach dem Gesamttakt laut mit: 1, 2, 3 …"
    ),
    "refute.burst_or_order": (
        "Auffällig ist Takt {true_slot}. Wer den Gesamttakt mitzählt oder nach Zündfolge geht ({firing}), landet bei "
        "{said}. Fang nach dem Gesamttakt an: 1, 2, 3 …"
    ),
    "refute.silent_loudspeaker": (
        "Du hast nichts gehört, aber {even} von {count} Takten kommen mit {level:.0f} dB(A) über {bed:.0f} dB(A) "
        "Grundgeräusch. Hörst du auch das nicht, prüf deinen Lautsprecher."
    ),
    "refute.module_for_its_power": (
        "Das Steuergerät war in Ordnung, der Fehler ist: {true}. Weitergeben kann es nur, was von der Batterie kommt. "
        "Unauffällig waren {even} von {count} Takten. Miss beide Spannungsabfälle, bevor du eins bestellst."
    ),
    "refute.one_for_group": (
        "Du hast {said} genannt, aber der Fehler trifft mehrere: {group}. Alle weichen {under:.0f} dB ab. Hör dir die "
        "ganze Reihe an, bevor du einen nennst."
    ),
    "refute.counted_burst": (
        "Zuerst klacken alle zusammen, das gehört zu keinem einzelnen Zylinder. Takt {true_slot} weicht {under:.0f} dB "
        "ab. Zählst du den Gesamttakt mit, landest du bei {said}."
    ),
    "refute.firing_order": (
        "Die Takte laufen 1, 2, 3 …, nicht {firing}. Auffällig ist Takt {true_slot}. In der Zündfolge käme an Stelle "
        "{true_slot} Zylinder {said}."
    ),
    "refute.measured_connected": (
        "Der Stecker war beim Messen noch drauf. Da misst das Gerät alles mit, was an der Leitung hängt. Daher kommt "
        "{display}. Erst abziehen, dann messen."
    ),
    "refute.hum_for_circuit": (
        "Die Spule in Takt {true_slot} bekommt {own:.2f} A, ihr Stromkreis ist unterbrochen. Gehört hast du {humming} "
        "andere mit je {others:.1f} A. Der Injektor kann gut sein."
    ),
    "refute.open_for_short": (
        "In Takt {true_slot} liefert der Ausgang {output:.1f} A, die Spule bekommt {own:.1f} A. Bei einer "
        "Unterbrechung fließt nirgends Strom, bei einem Kurzschluss nur an der Spule vorbei. Miss Zuleitung gegen "
        "Rückleitung."
    ),
    "refute.code_for_location": (
        "Der Fehler: {true}. Ein Fehlercode nennt einen Zylinder, nie den Ort. Jede Unterbrechung dieser Leitung setzt "
        "denselben Code. Miss eine Trennstelle nach der anderen."
    ),
    "refute.code_of_another": (
        "Der Fehler: {true}. Ein Code nannte {said}, aber auffällig ist Takt {true_slot}. Alte Codes bleiben im "
        "Speicher: löschen, Test starten, neu auslesen."
    ),
    "refute.wrong_side": (
        "Der Zylinder stimmt, aber der Fehler ist: {true}. Zieh dort den Stecker ab und miss auf beiden Seiten. Sind "
        "beide gut, ist es der Kontakt dazwischen."
    ),
    "refute.by_ear_alone": (
        "Im selben Stromkreis klingt jede Unterbrechung gleich, {under:.0f} dB leiser. Deine Befunde gaben deinem Ort "
        "{said_chance} und dem richtigen {left}. Miss beim nächsten Mal."
    ),
    "refute.unclassified": (
        "Die Lösung: {true}. Deine Befunde gaben deiner Diagnose {said_chance} und der Lösung {left}."
    ),
}

_DEBRIEF = {
    "debrief.proof": (
        "Nachweis: Nach deinen Befunden ist deine Diagnose zu {percent} wahrscheinlich. Ab 95 % gilt sie als "
        "nachgewiesen."
    ),
    "debrief.proof_open": (
        "Nachweis: Nach deinen Befunden ist deine Diagnose zu {percent} wahrscheinlich. Dieser Fall bleibt offen: Alle "
        "seine Tests zusammen kommen auf {reachable}."
    ),
    "debrief.economy": (
        "Zeit: Du hast {used:.0f} min gebraucht, richtige Reparatur und Nachtest eingerechnet. Der beste Weg dauert "
        "{best:.0f} min. Die Wirtschaftlichkeit zählt, sobald der Ort stimmt und nachgewiesen ist."
    ),
    "debrief.economy_passes": (
        "Zeit: Du hast {used:.0f} min gebraucht. Der beste Weg zu „Stromkreis in Ordnung“ dauert {best:.0f} min. Die "
        "Wirtschaftlichkeit zählt, sobald das nachgewiesen ist."
    ),
    "debrief.side": (
        "Seite: Du hast „{said}“ gesagt, richtig ist: {true}. Reparierst du die falsche Leitung, bleibt der Fehler."
    ),
    "debrief.retest_failed": (
        "Im Nachtest war der Fehler noch da, er ist also nicht repariert. Das kostet {lost:.0f} Punkte."
    ),
    "debrief.the_place": "„{place}“",
    "debrief.another_place": "einen Fehler an anderer Stelle",
    "debrief.unmeasured": (
        "Du hast {place} genannt, aber keine Messung schließt {rival} aus. Darum zählen Ort und Nachweis nur halb, und "
        "die Diagnose gilt nicht als richtig. Diese Reparatur dauert {repair:.0f} min und braucht Teile. War es die "
        "falsche, zahlt sie die Werkstatt oder der Kunde."
    ),
    "debrief.unmeasured_passes": (
        "Unauffällige Takte allein weisen keinen intakten Stromkreis nach. Vergleiche Widerstand oder Stromverlauf mit "
        "einem Vergleichszylinder. Ohne das zählt der Nachweis nur halb."
    ),
    "debrief.hides": (
        "Der erste Fehler ({first}) verdeckt den zweiten ({second}). Solange der erste da ist, zeigt hier kein Test "
        "den zweiten. Repariere den ersten, dann teste noch mal."
    ),
    "debrief.would_tell": "Das hätte dir mehr gesagt: {test}.",
    "debrief.misconception": "Was schiefging: {name}.",
    "debrief.step": "           brachte {bits:.1f} Bit; die beste Diagnose steht jetzt bei {percent}{out}",
    "debrief.step_out": "; ausgeschlossen: {names}",
    "debrief.step_strange": "           kein Fehler an diesem Motor erklärt diese Antwort",
    "debrief.best": "Der beste Weg zu diesem Fehler:",
    "debrief.best_step": "{minutes:>5.0f} min  {test}  ({bits:.1f} Bit erwartet; danach {percent})",
    "debrief.shown_at": (
        "Der Fehler kommt und geht. Du hörst ihn so, wie er sich zeigt, bei Bewegung und Wärme: {place}."
    ),
    "debrief.left": "Was deine Befunde noch zulassen:",
    "debrief.left_line": "  {percent:>8}  {finding}",
    "debrief.suspects_right": "Ausgeschlossen hast du: {places}. Das war richtig.",
    "debrief.suspects_wrong": "Ausgeschlossen hast du: {places}. Genau dort sitzt der Fehler.",
    "debrief.suspects_early": "Zu früh ausgeschlossen: {places}. Deine Befunde gaben dem Ort noch {percent}.",
    "debrief.other_reading": "  {what}: gemessen {display}; mit deiner Antwort wären es {other}",
    "debrief.other_readings": "Deine Messwerte, daneben die von einem Motor mit deiner Antwort:",
    "debrief.even_alike": "  Jeder Messwert wäre gleich gewesen. Keiner davon stützt also deine Antwort.",
    "take.opens": "Woran hast du erkannt, dass kein Strom fließt, und woran, wo er aufhört?",
    "take.shorts": "Wo ist der Strom stattdessen hin, und welcher Messwert hat es gezeigt?",
    "take.others": "Welcher Messwert hat diesen Fehler von einer einfachen Unterbrechung unterschieden?",
    "take.passes": "Was müsstest du noch prüfen, bevor du „in Ordnung“ sagst?",
    "why.head": (
        "{finding}: {percent}. Stärkster Konkurrent: {rival}, {other}. Spricht dafür (+) oder dagegen (−), in Bit:"
    ),
    "why.prior": "  {bits:+7.1f}  vor allen Befunden",
    "why.line": "  {bits:+7.1f}  {question}",
    "why.rest": "  {bits:+7.1f}  alles Übrige",
    "why.total": "  {bits:+7.1f}  zusammen",
    "question.slot": "{slot}, angehört ({place}){work}",
    "question.codes": "Codes{work}",
    "question.ohms": "Widerstand {pins}{work}",
    "question.volts": "Ruhespannung {pins}{work}",
    "question.lamp": "Prüflampe {pins}{work}",
    "question.clamp": "Stromzange {pins}, {slot}{work}",
    "question.crank": "Batterie beim Anlassen{work}",
    "question.plus_drop": "Spannungsabfall, Batterie-Plus zum Steuergerät{work}",
    "question.ground_drop": "Spannungsabfall, Steuergerätemasse zum Batterie-Minus{work}",
    "question.contribution": "Zylinderbeitrag{work}",
    "question.compression": "relative Kompression{work}",
    "question.insulation": "Isolation {pins}{work}",
    "question.drop": "Spannungsabfall {pins}, {slot} angesteuert{work}",
    "question.supply": "Endstufenspannung{work}",
    "question.trace": "Stromverlauf, {slot}{work}",
    "question.dummy": "Ersatzlast, {slot}{work}",
    "question.look": "ein Blick auf das, was offen ist{work}",
    "question.drag": "ein Prüfstift-Test an dem, was offen ist{work}",
    "question.ground": "Masse",
    "question.pin": "{side} {name}, {point} ({half})",
    "question.moved": ", bewegt: {place}",
    "question.ran_warm": ", überall warm",
    "question.warm": ", warm: {place}",
    "question.changed": ", mit {what}",
    "inspect.posterior": "Wahrscheinlichkeiten mit allen angebotenen Befunden:",
    "inspect.path": "Bester Weg:",
    "check.unsolvable": "zu wenig, um den Fehler einzugrenzen: übrig bleiben {left}",
    "check.solvable": "der Fehler zu 95 % mit allen angebotenen Befunden, oder stays_open mit der richtigen Antwort",
    "check.offer": "biete auch das an: {words}",
    "check.own_fault": "zu viel für dieses Programm, Abbruch mit {kind}",
    "check.an_engine_to_solve": "ein Motor, dessen Test sich berechnen lässt",
    "check.engine_runs_away": "ein Motor, dessen Ströme oder Anker davonlaufen",
    "check.mend.engine_runs_away": "bring die Werte unter solenoid und module näher an die eines mitgelieferten Motors",
    "check.engine_never_rests": "ein Motor, der nicht zur Ruhe kommt: Jeder Impuls läuft in den nächsten",
    "check.mend.engine_never_rests": (
        "dämpfe Anker und Anschlag stärker, mach die Versorgung kräftiger oder schick weniger Impulse"
    ),
    "check.can_be_checked": "eine Datei, die sich prüfen lässt",
    "check.send_trace": "schick die Datei und die Zeilen ab Traceback an den, der das Programm betreut",
    "check.more": "und {count} weitere",
    "check.nothing_separates": "kein Test unterscheidet sie: nimm einen anderen Fehler oder ergänze stays_open",
    "check.not_open": "gesetzt, obwohl die Befunde das nachweisen: {finding} ({percent})",
    "check.take_open_out": "nimm stays_open heraus oder biete weniger Befunde an",
    "check.inaudible": "zu laut: {bed:.1f} dB(A), bei Takt {slot} mit {level:.1f} dB(A)",
    "check.audible": "das entscheidende Geräusch mindestens {margin:.0f} dB über dem Grundgeräusch",
    "check.quieter_bed": "senk das Grundgeräusch auf {bed:.1f} dB(A) oder weniger",
    "fair.case": "Fall",
    "fair.listener.good_headphones": "gute Kopfhörer",
    "fair.listener.cheap_headphones": "billige Kopfhörer",
    "fair.listener.laptop": "Laptop-Lautsprecher",
    "fair.listener.phone": "Handy-Lautsprecher",
    "fair.listener.age_45": "45 Jahre",
    "fair.listener.age_60": "60 Jahre",
    "fair.listener.age_60_laptop": "60 Jahre, Laptop-Lautsprecher",
    "fair.fair": "fair",
    "fair.lost_one": "Takt {slots} geht unter",
    "fair.lost_several": "Takte {slots} gehen unter",
    "fair.lost_every": "alle Takte gehen unter",
    "fair.alike_one": "Takt {slots} klingt intakt",
    "fair.alike_several": "Takte {slots} klingen intakt",
    "fair.alike_every": "alle Takte klingen intakt",
    "fair.sum": "{listener}: {fair} von {count} Fällen sind fair",
    "fair.sum_one": "{listener}: {fair} von {count} Fall ist fair",
    "fair.listening": "Fall {number} von {count} wird angehört.",
    "fair.meaning": (
        "Ein Takt geht unter, wenn die Werkstatt ihn übertönt oder wenn er für diese Ohren zu leise ist. Ein Takt "
        "klingt intakt, wenn er höchstens {limit:.0f} dB von einem intakten abweicht."
    ),
    "fair.note": (
        "Hier geht es um Wiedergabegeräte und um das typische Gehör eines Alters. Das ist kein Hörtest für eine Person."
    ),
    "fair.no_case_in_it": "ohne einen Fall oder Aufgabensatz",
    "fair.an_engine": "ein Motorprofil",
    "fair.a_case": "ein Fall, ein Aufgabensatz oder ein Ordner damit",
}

TEXTS: dict[str, str] = {**_TESTS, **_HINTS, **_MISCONCEPTIONS, **_DEBRIEF}
