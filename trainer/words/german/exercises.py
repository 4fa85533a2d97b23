"""Sentences of the exercises, in German."""

from __future__ import annotations

TEXTS: dict[str, str] = {
    "exercise.fault": "{kind}, {location}, {cylinders}",
    "exercise.whole": "der ganze Test",
    "exercise.good_slot": "Takt {number} an einem intakten Motor",
    "exercise.this_slot": "Takt {number} an diesem Motor",
    "exercise.none": "keiner: alle Takte sind unauffällig",
    "exercise.no_code": "kein Fehlercode",
    "exercise.which": "Hör dir den ganzen Test an. Welche Takte sind auffällig?",
    "exercise.which.right": "Zähl nach dem Gesamttakt in der Zahlenfolge. Auffällig: {cylinders}.",
    "exercise.which.none": (
        "Alle Takte sind unauffällig. Kleine Unterschiede zwischen intakten Injektoren sind kein Fehler."
    ),
    "exercise.which.even": "{cylinders}: hier unauffällig.",
    "exercise.which.missed": "Hier auffällig: {cylinders}.",
    "exercise.which.one": "Nicht nur einer: {cylinders} haben dieselbe Ursache.",
    "exercise.which.firing": "Nach der Zündfolge käme dort {said}. Die Takte gehen aber nach der Zahlenfolge.",
    "exercise.which.burst": (
        "Auf {said} kommst du, wenn du den Gesamttakt mitzählst. Der kommt zuerst und gehört zu keinem einzelnen "
        "Zylinder."
    ),
    "exercise.which.rule": (
        "Erst der Gesamttakt, dann jeder Zylinder in der Zahlenfolge. Fang erst nach dem Gesamttakt an zu zählen."
    ),
    "exercise.what": "Hör dir beide an. Wie klingt Takt {number} an diesem Motor?",
    "exercise.what.even": "unauffällig: auf wenige Dezibel wie ein intakter Takt",
    "exercise.what.weak": "schwach: es klackt, aber deutlich leiser",
    "exercise.what.dull": "dumpf: ein Schlag, an dem nichts Helles ist, Strom ohne Klacken",
    "exercise.what.very_faint": "sehr leise: kein eigenes Klacken, nur ein Brummen",
    "exercise.what.nothing": "nichts: nur das Grundgeräusch",
    "exercise.what.rule": (
        "Unauffällig, schwach, dumpf, sehr leise, nichts: Jedes sagt dir etwas anderes über den Stromkreis."
    ),
    "exercise.hum": "Hör dir Takt {number} an einem intakten und an diesem Motor an. Was hörst du darin noch?",
    "exercise.hum.own": "Der eigene Stromkreis führt Strom: Ein Teil von Injektor {number} arbeitet noch.",
    "exercise.hum.hum": "Das Brummen ist der Grundstrom der anderen. Stromkreis {number} selbst führt nichts.",
    "exercise.hum.bed": "Du hörst nur den Werkstattlärm. Vom Motor ist nichts zu hören.",
    "exercise.hum.worn": "Injektor {number} ist verschlissen und klackt leise.",
    "exercise.hum.rule": (
        "Ein Brummen ohne Strom in der eigenen Spule kommt von den anderen. Ein dumpfer Schlag ist Strom ohne Klacken."
    ),
    "exercise.order": "Nach dem Gesamttakt kommen die Takte einzeln. Zu welchem Zylinder gehört Nummer {count} davon?",
    "exercise.order.right": "Die Takte gehen nach der Zahlenfolge, also ist es {number}.",
    "exercise.order.burst": (
        "{said} liegt um eins daneben: Der Gesamttakt kommt zuerst und gehört zu keinem einzelnen Zylinder."
    ),
    "exercise.order.other": "{said} hat seinen eigenen Takt, an seiner Stelle in der Zahlenfolge.",
    "exercise.counted": (
        "Zähl jedes Geräusch von Anfang an, der Gesamttakt ist Nummer 1. Das sehr leise ist Nummer {count}. Welcher "
        "Zylinder ist das?"
    ),
    "exercise.counted.right": "Der Gesamttakt war Nummer 1, also ist Geräusch {count} Zylinder {number}.",
    "exercise.place": "Wo sitzt an diesem Motor Zylinder {number}?",
    "exercise.place.right": "Dort sitzt {number}: {where}.",
    "exercise.place.other": "Dort sitzt {said}: {where}.",
    "exercise.where": "Bank {bank}, Platz {place} von vorn",
    "exercise.shared": (
        "Diese Takte wurden zusammen auffällig: {cylinders}. Was haben sie mit keinem anderen Zylinder gemeinsam?"
    ),
    "exercise.shared.right": "Daran hängen {cylinders}, und sonst keiner.",
    "exercise.shared.other": "Daran hängen {cylinders}.",
    "exercise.shared.connector": "der Deckelstecker {name}",
    "exercise.shared.output": "der Zuleitungsausgang {name} am Steuergerät",
    "exercise.shared.bank": "die Bank {name}",
    "exercise.shared.nothing": "nichts: jeder hat seinen eigenen Fehler",
    "exercise.shared.one_cause": (
        "Fallen mehrere zusammen aus und haben ein Teil gemeinsam, ist es ein Fehler in diesem Teil, bis du etwas "
        "anderes nachweist."
    ),
    "exercise.numbering.rule": (
        "Die Takte folgen den Zahlen des Motors. Die Zündfolge, hier {firing}, spielt in diesem Test keine Rolle."
    ),
    "exercise.says": "Das steht nach dem Test im Fehlerspeicher. Was davon beweist {code}?",
    "exercise.says.right": "Der Strom in diesem Kreis lag beim Test außerhalb der Grenzen des Fehlercodes.",
    "exercise.says.right.why": "{meaning}. Ein Fehlercode nennt nie einen Ort.",
    "exercise.says.place": "Der Fehler liegt im Stromkreis von Zylinder {number} an diesem Ort: {place}.",
    "exercise.says.place.why": (
        "Das Steuergerät misst an seinen eigenen Pins: Es kann Stellen auf der Leitung nicht unterscheiden."
    ),
    "exercise.says.injector": "Injektor {number} ist defekt.",
    "exercise.says.injector.why": (
        "Leitung, Stecker, Steuergerät oder Spule können diesen Fehlercode setzen. So werden gute Injektoren getauscht."
    ),
    "exercise.could": (
        "Der Test hat diese Fehlercodes gesetzt. Welcher dieser Fehler kann genau diese nicht gesetzt haben?"
    ),
    "exercise.could.right": "Der setzt: {codes}.",
    "exercise.could.same": "Der setzt genau diese Fehlercodes.",
    "exercise.old": (
        "Die Fehlercodes wurden ausgelesen und gelöscht, dann lief der Test noch mal. Was sagt dir {code} jetzt?"
    ),
    "exercise.old.first": "Zuerst ausgelesen: {codes}",
    "exercise.old.again": "Nach Löschen und neuem Test: {codes}",
    "exercise.old.today": "Stromkreis {number} ist heute nicht in Ordnung.",
    "exercise.old.two": "Heute gibt es zwei Fehler, bei {first} und bei {second}.",
    "exercise.old.module": "Das Steuergerät hat sein Gedächtnis verloren.",
    "exercise.codes.rule": (
        "Auslesen, löschen, testen, wieder auslesen. Ein Fehlercode nennt einen Stromkreis, nie einen Ort."
    ),
    "exercise.reading": "Was sagt dir dieser Messwert über den Stromkreis ab dieser Stelle?",
    "exercise.reading.mate": "Der Vergleichszylinder zeigt {display}",
    "exercise.reading.good": "gut: so nah am Vergleichszylinder, wie das Messgerät es sagen kann",
    "exercise.reading.good.why": (
        "Zwei Messwerte lassen sich nicht unterscheiden, wenn sie weniger als die doppelte Messgenauigkeit "
        "auseinanderliegen."
    ),
    "exercise.reading.open": "Unterbrechung irgendwo ab dieser Stelle",
    "exercise.reading.open.why": "Das Ohmmeter zeigt OL: Es gibt keinen Weg, egal, wo die Unterbrechung sitzt.",
    "exercise.reading.high": "zu hoch: Übergangswiderstand",
    "exercise.reading.high.why": (
        "Er liegt um mehr als die doppelte Messgenauigkeit über dem Vergleichszylinder: eine schlechte Verbindung oder "
        "eine zu dünne Leitung."
    ),
    "exercise.reading.low": "zu niedrig: Kurzschluss oder Windungsschluss",
    "exercise.reading.low.why": (
        "Er liegt um mehr als die doppelte Messgenauigkeit unter dem Vergleichszylinder: ein zweiter Weg oder ein "
        "Windungsschluss in der Spule."
    ),
    "exercise.reading.rule": (
        "Vergleich mit einem guten Zylinder, und rechne die Messgenauigkeit ein, hier ±({percent:.1f} % + {counts} "
        "Digits)."
    ),
    "exercise.where_break": (
        "In der Rückleitung von Zylinder {number} gibt es eine Unterbrechung. Wo liegt sie nach diesen Messwerten?"
    ),
    "exercise.where.engine_harness": "Die Leitung zeigt von Ende zu Ende OL, und alles dahinter zeigt gute Werte.",
    "exercise.where.pass_through_connector": (
        "Getrennt zeigen beide Hälften gute Werte, also bleibt nur der Kontakt zwischen ihnen."
    ),
    "exercise.where.under_cover_harness": (
        "OL von der Deckelseite und gut am Injektor: Übrig bleibt die Leitung dazwischen."
    ),
    "exercise.where.solenoid_coil": "Direkt an den Pins des Injektors zeigt das Ohmmeter OL.",
    "exercise.where.other": "Läge die Unterbrechung dort, wäre einer dieser Messwerte anders.",
    "exercise.where.rule": (
        "Teil den Stromkreis an jedem Stecker. Wo beide Hälften gut sind, sieh dir an, was sie verbindet."
    ),
    "exercise.slip": "Was taugt dieser Messwert?",
    "exercise.slip.how.fine": "Steuergerätestecker ab, Zündung aus, Messleitungen genullt",
    "exercise.slip.how.connected": (
        "am Injektor von hinten angestochen, Stecker drauf, Zündung aus, Messleitungen genullt"
    ),
    "exercise.slip.how.leads": "Injektorstecker ab, Zündung aus, Messleitungen nicht genullt",
    "exercise.slip.how.live": "am Injektor von hinten angestochen, Stecker drauf, Zündung ein",
    "exercise.slip.fine": "Er ist der Wert dieses Teils.",
    "exercise.slip.fine.why": (
        "Stecker ab, Zündung aus, Messleitungen genullt: Dann gehört der Messwert nur zu diesem Teil."
    ),
    "exercise.slip.connected": "Er kann zu niedrig sein und eine Unterbrechung verdecken.",
    "exercise.slip.connected.why": "Mit Stecker drauf nimmt der Strom auch jeden anderen Weg.",
    "exercise.slip.leads": "Er ist ein paar Zehntelohm zu hoch.",
    "exercise.slip.leads.why": "Bei so wenig Ohm zählen auch die Zehntel der Messleitungen.",
    "exercise.slip.live": "Er sagt nichts, und das Messgerät kann Schaden nehmen.",
    "exercise.slip.live.why": (
        "Miss nie Widerstand an einem Stromkreis unter Spannung. Zündung aus, warten, Spannungsfreiheit prüfen."
    ),
    "exercise.slip.rule": (
        "Zündung aus, Spannungsfreiheit geprüft, Stecker ab, Messleitungen genullt: Dann lies den Wert ab."
    ),
    "exercise.begun.heard": "Gehört: {cylinders} auffällig, die anderen unauffällig",
    "exercise.next": "Das weißt du bis jetzt. Welcher dieser Tests sagt dir am meisten für seine Minuten?",
    "exercise.next.best": (
        "Er halbiert, was übrig ist, voraussichtlich {bits:.1f}-mal in {minutes:.0f} min, am meisten für seine Zeit."
    ),
    "exercise.next.less": (
        "Er halbiert, was übrig ist, voraussichtlich {bits:.1f}-mal in {minutes:.0f} min, weniger für seine Zeit."
    ),
    "exercise.next.rule": (
        "Frag dich, was jeder Test ausschließen kann und was er kostet. Billige Tests, die den Rest halbieren, kommen "
        "zuerst."
    ),
    "exercise.stop": "Ist damit eine Diagnose nachgewiesen?",
    "exercise.stop.done": "Gemacht: {step}",
    "exercise.stop.likeliest": "Bis jetzt am wahrscheinlichsten: {findings}",
    "exercise.stop.commit": "Ja: abgeben und reparieren.",
    "exercise.stop.commit.why": (
        "Nach diesen Befunden liegt die Wahrscheinlichkeit bei {sure}. Ab 95 % nennen wir es nachgewiesen."
    ),
    "exercise.stop.on": "Nein: weiter messen.",
    "exercise.stop.on.why": (
        "Nach diesen Befunden liegt die Wahrscheinlichkeit bei {sure}. Andere Diagnosen, die noch in Frage kommen: "
        "{others}."
    ),
    "exercise.stop.rule": "Hör auf, wenn die Befunde nur eine Diagnose übrig lassen, nicht, wenn dir eine einfällt.",
    "exercise.unseen.nozzle": "eine verschlissene Düse",
    "exercise.unseen.seat": "ein undichter Ventilsitz in einem Injektor",
    "exercise.unseen.rail": "zu niedriger Kraftstoff- oder Steueröldruck",
    "exercise.unseen.compression": "zu wenig Kompression in einem Zylinder",
    "exercise.unseen.air": "Luft im Kraftstoff",
    "exercise.unseen.return_leak": "ein Injektor mit zu viel Rücklaufmenge",
    "exercise.still": (
        "Hör dir den Test an. Alle Takte sind unauffällig, kein Fehlercode. Welcher dieser Fehler kann trotzdem da "
        "sein?"
    ),
    "exercise.still.heard": "Den hättest du in diesem Test gehört.",
    "exercise.shown": (
        "Hör dir den Test an. Alle Takte sind unauffällig, kein Fehlercode. Welcher dieser Fehler ist damit "
        "ausgeschlossen?"
    ),
    "exercise.shown.right": "Der hätte sehr auffällig geklungen.",
    "exercise.shown.unseen": "Das ist mechanisch oder hydraulisch. Ein unauffälliger Test sagt darüber nichts.",
    "exercise.shown.shy": (
        "Er zeigt sich nur, wenn die Stelle bewegt wird oder warm ist. Ein unauffälliger Test in Ruhe schließt ihn "
        "nicht aus."
    ),
    "exercise.after.not_shown": (
        "Sag „hier nicht gezeigt“, und mach mit Kraftstoff, Kompression und Rücklaufmenge weiter."
    ),
    "exercise.after.not_shown.why": (
        "Noch nicht: Was bekannt ist, deutet auf diesen Stromkreis, und dieser Test gibt noch mehr her."
    ),
    "exercise.after.injector": "Tausch Injektor {number}, denn der macht auf der Straße die Aussetzer.",
    "exercise.after.injector.why": (
        "Nichts davon ist gezeigt. Bei schlechter Kompression oder schlechtem Kraftstoff würde der neue auch aussetzen."
    ),
    "exercise.after.module": "Tausch das Steuergerät, denn die Injektoren klacken ja alle.",
    "exercise.after.module.why": "Das Steuergerät hat jeden Takt angesteuert.",
    "exercise.after.good": "Schreib „Injektor {number} gut“ auf die Karte und schließ den Auftrag ab.",
    "exercise.after.good.why": (
        "„Stromkreis in Ordnung“ heißt nie „Injektor gut“: Zerstäubung und Dichtheit wurden nicht geprüft."
    ),
    "exercise.limits.rule": (
        "Dieser Test zeigt, ob Stromkreise arbeiten und Anker sich bewegen. Zerstäubung, Dichtheit, Druck und "
        "Kompression zeigt er nicht."
    ),
    "exercise.card": "Auf dieser Auftragskarte ist ein Schritt falsch. Welcher?",
    "exercise.card.step": "{number}. {step}",
    "exercise.card.choice": "Schritt {number}",
    "exercise.card.stands": "Dieser Schritt stimmt, und der Motor bestätigt ihn.",
    "exercise.card.heard": "Gehört: Takt {cylinders} sehr leise, alle anderen unauffällig.",
    "exercise.card.code": "Fehlercode {code}: {meaning}.",
    "exercise.card.code_place": "Fehlercode {code}: {meaning}; also liegt der Fehler an diesem Ort: {place}.",
    "exercise.card.not_nulled": "(Stecker ab, Messleitungen nicht genullt)",
    "exercise.card.plug_on": "(Stecker drauf, Messleitungen genullt)",
    "exercise.card.concluded": "Folgerung: {place}.",
    "exercise.card.slot": "Ein anderer Takt war auffällig. Fang erst nach dem Gesamttakt an zu zählen.",
    "exercise.card.named_place": "Ein Fehlercode nennt nie einen Ort.",
    "exercise.card.connected": "Mit Stecker drauf misst das Messgerät alles, was an der Leitung hängt.",
    "exercise.card.leads": "In diesem Messwert steckt der Widerstand der Messleitungen.",
    "exercise.card.conclusion": "Diese Messwerte deuten auf einen anderen Ort.",
    "exercise.card.rule": "Prüf jeden Schritt für sich: was gehört, wie gemessen und was daraus geschlossen wurde.",
    "exercise.backwards": (
        "Zähl rückwärts, der letzte Takt ist Nummer 1. Der sehr leise ist Nummer {count}. Welcher Zylinder ist das?"
    ),
    "exercise.still.shy": (
        "Er zeigt sich nur, wenn die Stelle bewegt wird oder warm ist; in Ruhe ist der Test unauffällig."
    ),
    "exercise.card.rightly": "(Stecker ab, Messleitungen genullt)",
    "exercise.next.choice": "{test} ({minutes:.0f} min)",
    "exercise.begun.all": "Gehört: kein Takt ist unauffällig",
    "exercise.hum.hum.hum": (
        "In Takt {number} arbeitet das Steuergerät auf einen unterbrochenen Stromkreis. Du hörst den Grundstrom durch "
        "alle anderen Injektoren."
    ),
    "exercise.hum.hum.own": (
        "Ein leises Brummen ist kein Lebenszeichen: Das Geräusch kommt von den anderen Injektoren, nicht von {number}."
    ),
    "exercise.hum.hum.bed": (
        "Das Grundgeräusch liegt unter jedem Takt; dieses Brummen hebt sich in Takt {number} davon ab."
    ),
    "exercise.hum.hum.worn": ("Ein verschlissener Injektor klackt noch; hier bewegt sich in Injektor {number} nichts."),
    "exercise.hum.own.own": (
        "Ein dumpfer Schlag heißt: Injektor {number} bekommt Strom, klackt aber nicht richtig. Sein Stromkreis ist "
        "also geschlossen."
    ),
    "exercise.hum.own.hum": ("Das Brummen der anderen ist viel leiser als das hier: Stromkreis {number} führt Strom."),
    "exercise.hum.own.bed": "Das Grundgeräusch liegt unter jedem Takt. Was du in Takt {number} hörst, ist viel lauter.",
    "exercise.hum.own.worn": (
        "Ein verschlissener Anker klingt heller oder später, nicht dumpf. Hier bewegt sich Injektor {number} nicht, "
        "wie er soll."
    ),
    "exercise.hum.bed.bed": (
        "Kein Klacken, kein Brummen: In Takt {number} fließt kein Strom, nicht in der eigenen Spule und nicht in den "
        "anderen."
    ),
    "exercise.hum.bed.hum": ("Ein Brummen würdest du in Takt {number} über dem Grundgeräusch hören. Hier ist keines."),
    "exercise.hum.bed.own": (
        "Hätte die Spule Strom, würdest du einen Schlag oder ein Klacken hören. In Takt {number} ist beides nicht da."
    ),
    "exercise.hum.bed.worn": "Ein verschlissener Injektor klackt noch; Takt {number} ist leer.",
    "exercise.unproved": "Das steht nach dem Test im Fehlerspeicher. Was davon beweist {code} nicht?",
    "exercise.unproved.circuit": "Es war der Stromkreis von Zylinder {number}.",
    "exercise.unproved.once": "Das Steuergerät sah es mindestens einmal.",
    "exercise.unproved.proved": "Genau das sagt er: {meaning}.",
    "exercise.unproved.right": "Das beweist er nicht. {why}",
    "exercise.old.before": "Er stammt von einem früheren Fehler.",
    "exercise.old.gone.before": (
        "Dieser Test hat ihn nicht wieder gesetzt. Er ist alt, oder sein Fehler kommt und geht."
    ),
    "exercise.old.gone.today": (
        "Der Test hat ihn nicht wieder gesetzt: Diesmal lag der Strom innerhalb der Grenzen des Fehlercodes."
    ),
    "exercise.old.gone.two": "Heute ist nur der Fehler da, dessen Code der Test wieder setzt.",
    "exercise.old.gone.module": "Löschen nimmt Fehlercodes weg; dafür ist es da.",
    "exercise.old.back.today": (
        "Der Test hat ihn gerade wieder gesetzt: Was er gesehen hat, ist heute da, egal, an welchem Ort."
    ),
    "exercise.old.back.before": "Er war gelöscht, und dieser Test hat ihn neu gesetzt. Er ist also nicht von früher.",
    "exercise.old.back.two": "Nur einer der zwei Fehlercodes kam wieder; der andere ist alt.",
    "exercise.old.back.module": "Ein Fehlercode, der wiederkommt, wurde neu gesetzt, nicht vergessen.",
    "exercise.still.unseen": "Das berührt keine Spule und kein Klacken, also kann dieser Test es nicht zeigen.",
    "exercise.still.slight": (
        "So ein kleiner Fehler ändert den Strom zu wenig, als dass Ohr oder Steuergerät ihn bemerken."
    ),
    "exercise.shown.slight": (
        "So ein kleiner Fehler klingt unauffällig und setzt keinen Fehlercode. Den findet das Messgerät, nicht das Ohr."
    ),
    "exercise.after.known.not_shown": (
        "Hör dir den Test an. Alle Takte sind unauffällig, kein Fehlercode, die Messwerte sind gut. Der Motor hat "
        "immer noch Aussetzer auf Zylinder {number}. Und jetzt?"
    ),
    "exercise.after.known.provoke": (
        "Hör dir den Test an. Alle Takte sind unauffällig. Ein Fehlercode für Zylinder {number} war gespeichert und "
        "kam nicht wieder. Aussetzer gibt es nur auf schlechten Straßen. Und jetzt?"
    ),
    "exercise.after.known.measure": (
        "Hör dir den Test an. Alle Takte sind unauffällig, kein Fehlercode. Aber Zylinder {number} zeigt zwei Ohm mehr "
        "als die anderen, Zuleitung gegen Rückleitung. Und jetzt?"
    ),
    "exercise.after.not_shown.right": (
        "Der Test hat seinen Teil getan. Was er nicht zeigen kann, such mit anderen Prüfungen nach Herstellerhandbuch."
    ),
    "exercise.after.provoke": (
        "Starte den Test noch mal. Beweg und erwärm dabei Leitungen und Stecker von Zylinder {number}."
    ),
    "exercise.after.provoke.right": (
        "Ein zeitweiser Fehler zeigt sich nur, solange er da ist. Beweg und erwärm die Stelle, während du hörst."
    ),
    "exercise.after.provoke.why": "Dass hier etwas kommt und geht, ist nicht bekannt.",
    "exercise.after.measure": "Teil den Stromkreis von Zylinder {number} mit dem Messgerät, Stecker für Stecker.",
    "exercise.after.measure.right": (
        "Geh einem Messwert nach, der von den anderen abweicht, auch wenn Ohr und Steuergerät nichts sagen."
    ),
    "exercise.after.measure.why": (
        "In Ruhe weicht hier kein Messwert von den anderen ab, also gibt es noch nichts zu teilen."
    ),
}
