"""German: results, reports, exports and handouts."""

TEXTS = {
    "handout.title": "Was der Injektortest gezeigt hat",
    "handout.heard": "Was wir gehört haben",
    "handout.where": "Wo der Fehler sitzt",
    "handout.wiring": (
        "Der Motor von oben. Durchgezogene Linien sind Rückleitungen, gestrichelte sind Zuleitungen. Der Kreis mit "
        "Kreuz markiert die Stelle."
    ),
    "handout.next": "Als Nächstes prüfen",
    "handout.cautions": "Vorsicht",
    "handout.limits": (
        "Töne und Bilder sind für einen Übungsmotor berechnet. Der Test steuert nur Spulen an und bewegt Anker. Über "
        "Düsen, Dichtungen, Kompression oder Öl sagt er nichts. Das Handbuch des Herstellers und die örtlichen "
        "Vorschriften gehen vor."
    ),
    "handout.good": "{slot}, an einem intakten Motor:",
    "handout.faulty": "{slot}, an diesem Motor:",
    "handout.next.circuit_passes": (
        "Der Stromkreis ist in Ordnung. Prüf Kraftstoff, Öl, Kompression und die Hydraulik des Injektors, denn die "
        "zeigt dieser Test nicht."
    ),
    "handout.next.drive_module": (
        "Prüf Versorgung, Massen und Stecker des Steuergeräts, bevor du eins kaufst. Miss seinen Ausgang mit einer "
        "Ersatzlast."
    ),
    "handout.next.engine_harness": (
        "Such den Motorkabelbaum nach Scheuer- und Brandstellen ab. Miss ohne Spannung und mit abgezogenen Steckern "
        "jede Leitung von Ende zu Ende und gegen Masse."
    ),
    "handout.next.pass_through_connector": (
        "Öffne den Stecker in der Ventildeckeldichtung. Such nach Öl, Hitzespuren, losen und zurückgedrückten Pins. "
        "Miss von beiden Seiten."
    ),
    "handout.next.under_cover_harness": (
        "Such bei abgenommenem Deckel nach Leitungen, an denen bewegte Teile scheuern, und nach losen Steckern an den "
        "Injektoren."
    ),
    "handout.next.solenoid_coil": (
        "Miss die Spule direkt am Injektor und vergleiche sie mit einer guten am selben Motor."
    ),
    "handout.next.armature": (
        "Spule und Verkabelung sind gut, aber der Anker bewegt sich nicht richtig. Vergleiche den Stromverlauf mit dem "
        "eines guten Injektors, bevor du etwas tauschst."
    ),
    "handout.next.module_power": (
        "Prüf die Batterie unter Last und reinige ihre Pole und den Massepunkt des Steuergeräts. Miss dann beide "
        "Spannungsabfälle neu, während alle Injektoren angesteuert werden."
    ),
    "handout.next.retest": (
        "Starte nach der Reparatur den Test noch mal. Jeder Takt muss unauffällig sein, ohne Fehlercode. Der Messwert "
        "muss stehen bleiben, wenn du am Kabelbaum wackelst."
    ),
    "fate.new": "neu",
    "fate.already_there": "schon vorhanden",
    "fate.cut_short": "abgeschnitten, kopiere sie noch mal",
    "fate.altered": "nach dem Schreiben verändert",
    "fate.wrong_key": "mit einem anderen Kennwort erstellt",
    "fate.other_set": "gehört zu einem anderen Satz",
    "fate.unreadable": "keine Ergebnisdatei",
    "fate.special": "keine normale Datei, darum nicht angefasst",
    "fate.closed": "nicht lesbar: Prüf deine Rechte und den USB-Stick",
    "collect.line": "{file}: {fate} (Durchgänge: {count})",
    "collect.nothing": "Dort liegen keine Ergebnisdateien.",
    "mark.going": "Bewerte: {done} von {count} ...",
    "mark.done": "Bewertet: {marked}. Nicht abgegeben: {unfinished}. Gestrichen: {voided}.",
    "mark.refused": "Nicht bewertbar: {count}. Grund: {why}.",
    "mark.other_case": "ein anderer Fall, als dieser Satz vorgibt",
    "mark.other_model": (
        "aus Modellversion {version}, dieses Programm hat {now}; bewerte sie mit einem Programm jener Version"
    ),
    "mark.unnumbered_model": "aus der Zeit vor den Modellversionen; bewerte sie mit dem Programm, das sie erstellt hat",
    "mark.damaged": "die Schritte passen nicht aneinander",
    "records.not_there": "nicht vorhanden",
    "fate.missing": "nicht vorhanden",
    "records.set": "{name}: {title}, Fälle: {size} ({id})",
    "records.no_sets": "Hier wurden noch keine Ergebnisse eingesammelt.",
    "records.written": "{path}",
    "roster.three_cells": "drei Zellen: learner, name, class",
    "roster.at_most": "höchstens {count} Zeichen je Zelle",
    "roster.mend": (
        "fang mit der Zeile learner,name,class an und schreib eine Person je Zeile: ann7,Ann Meyer,Tagklasse"
    ),
    "roster.taken": "Personen auf der Namensliste: {count}.",
    "note.taken": "Notiert.",
    "note.void": "zählt nicht",
    "note.comment": "Bemerkung",
    "note.answer": "auch richtig",
    "keep.taken": "{title}: aufbewahrt bis {day}.",
    "delete.ask_learner": "Alles von {learner} löschen? Das lässt sich nicht rückgängig machen.",
    "delete.ask_sets": (
        "Alle Ergebnisse dieser Sätze löschen ({count}): {titles}? Das lässt sich nicht rückgängig machen."
    ),
    "delete.done": "Gelöschte Durchgänge: {count}.",
    "backup.done": "In {path} gesicherte Zeilen: {count}",
    "restore.done": "Wiederhergestellte Zeilen: {count}.",
    "delivery.done": "Übertragene Einträge: {count}. Noch offen: {waiting}.",
    "delivery.forked": (
        "Durchgang {attempt} wurde an zwei Stationen fortgesetzt. Beide bleiben erhalten, dieser bleibt auf diesem "
        "Rechner."
    ),
    "class.circuit_passes": "Stromkreis in Ordnung",
    "class.group": "eine ganze Gruppe",
    "class.two_faults": "zwei Fehler",
    "counts.first": "zählt der erste Versuch",
    "counts.best": "zählt der beste Versuch",
    "counts.last": "zählt der letzte Versuch",
    "xapi.question": "Wo sitzt der Fehler?",
    "report.title": "{title}: Was die Klasse hört",
    "report.rule": (
        "Höchstens 100 Punkte: das gewichtete Mittel der Fälle. Von jedem Fall kommen {share:.0f} % aus der Sicherheit "
        "(100 minus 100 mal Brier-Wert). Ein nicht abgegebener Fall zählt null. Bei mehreren Versuchen {counts}."
    ),
    "report.counts": "Azubis: {learners}. Gewertete Ergebnisse: {results}. Fälle je Azubi: {size}.",
    "report.mean": (
        "Durchschnitt: {mean:.1f} Punkte. Mindestens {passes_at:.0f} Punkte haben: {passed} von {learners} Azubis."
    ),
    "report.unsupported": "Ohne die Azubis mit Unterstützung liegt der Durchschnitt bei {mean:.1f} Punkten.",
    "report.voided": "Vom Ausbilder gestrichene Ergebnisse: {count}.",
    "report.confused": "{truth} → {said}",
    "report.play": "erst {first}, dann {second}",
    "report.alpha": "Zuverlässigkeit (Cronbachs Alpha, n={count}): {value:.2f} {rough}",
    "report.alpha_hidden": (
        "Für die Zuverlässigkeit braucht es mindestens zehn Azubis mit allen Fällen. Hier sind es {count}."
    ),
    "report.rough": "(grob: weniger als 30 Azubis)",
    "report.word.evident": (
        "Bei einem versiegelten Satz sieht, wer das Kennwort hat, ob jemand etwas verändert hat. Verhindern kann das "
        "Siegel es nicht."
    ),
    "report.word.teach": "Als Nächstes üben",
    "report.word.slip": "was schiefging",
    "report.word.slips": "Was schiefging, mit der Nummer aus der Tabelle",
    "report.word.often": "wie oft",
    "report.word.sure": "nach Sicherheit gewichtet",
    "report.word.findings": "falsche Diagnosen",
    "report.word.most_confused": "am häufigsten verwechselt (richtig → geantwortet)",
    "report.word.play": "nacheinander anhören",
    "report.word.no_slips": "Alle Diagnosen waren richtig.",
    "report.word.marks": "Punkte",
    "report.word.mark": "Punkte",
    "report.word.learner": "Azubi",
    "report.word.learners": "Azubis",
    "report.word.passed": "bestanden",
    "report.word.right": "Anteil richtig",
    "report.word.right_of": "richtig von allen",
    "report.word.solid": "immer richtig",
    "report.word.weak": "mindestens einmal falsch",
    "report.word.path": "Minuten des besten Wegs im Verhältnis zu denen des Azubis",
    "report.word.supported": "mit Unterstützung",
    "report.word.yes": "ja",
    "report.word.no": "nein",
    "report.word.more_learners": "Weitere Azubis in der Punkteliste:",
    "report.word.places": "Verwechselte Orte und Zylinder",
    "report.word.places_how": "Zeilen zeigen die Lösung, Spalten die Antwort. Richtige Antworten sind fett.",
    "report.word.cylinders_how": "Zylinder, in Fällen mit Fehler:",
    "report.word.truth": "richtig",
    "report.word.said": "geantwortet",
    "report.word.others": "andere",
    "report.word.all": "alle",
    "report.word.detection": "Fehler oder keiner",
    "report.word.hits": "Fehler, die als Fehler erkannt wurden:",
    "report.word.alarms": "Intakte Stromkreise, die als defekt galten:",
    "report.word.calibration": "Wie sicher, und wie oft richtig",
    "report.word.certainty": "Sicherheit",
    "report.word.count": "wie oft",
    "report.word.effort": "Arbeit je Fall",
    "report.word.plays": "Angehörte Töne, Median:",
    "report.word.readings": "Messungen, Median:",
    "report.word.minutes": "Arbeitsminuten, Mittelwert:",
    "report.word.best": "auf dem besten Weg:",
    "report.word.cases": "Fälle",
    "report.word.case": "Fall",
    "report.word.facility": "Anteil richtig",
    "report.word.mean_mark": "Durchschnitt",
    "report.word.discrimination": "Trennschärfe",
    "report.word.hidden": "zu wenige",
    "report.word.rough": "grob",
    "report.word.no_spread": "alle gleich",
    "report.word.items_how": (
        "Die Trennschärfe sagt, wie gut die Punkte eines Falls zu den übrigen Punkten des Azubis passen. Nur Azubis "
        "mit allen Fällen zählen. Unter 10 Azubis bleibt sie verborgen, unter 30 ist sie grob. Bekommt jeder Azubi "
        "eigene Fälle ausgelost, steht eine Nummer für eine Zeile des Satzes. Die Tabelle darunter zählt dann nach "
        "Fehlerklasse zusammen."
    ),
    "report.word.class": "Fehlerklasse",
    "report.word.notes": "Notizen",
    "report.word.made": "Erstellt",
    "wrong.note_needs_text": "Eine Notiz braucht etwas Text.",
    "mend.note_needs_text": "Sag in wenigen Worten, warum.",
    "wrong.no_answer": "'{words}' ist kein Fehler, den ein Motor dieses Satzes haben kann.",
    "mend.no_answer": (
        "Schreib Zylinder, Ort und Fehlerart, zum Beispiel: 3 pass_through_connector open. Oder schreib: "
        "circuit_passes."
    ),
    "wrong.which_set": "'{named}' sagt nicht, welchen Satz du meinst.",
    "mend.which_set": "Nenn einen von diesen: {sets}.",
    "wrong.delete_what": "Nenn genau eine Sache zum Löschen.",
    "mend.delete_what": "Nimm --learner, --set oder --overdue.",
    "wrong.no_store_url": "Dieser Rechner kennt keine gemeinsame Ablage.",
    "mend.no_store_url": "Nenn sie mit --store, oder trag sie in den Einstellungen ein.",
    "wrong.nothing_to_bundle": "{learner} hat diesen Satz an diesem Rechner nicht bearbeitet.",
    "mend.nothing_to_bundle": "Prüf den Namen und den Satz.",
    "wrong.store_not_empty": "In {place} liegen schon Ergebnisse.",
    "mend.store_not_empty": "Stell in einem leeren Ordner wieder her: --data ORDNER.",
    "wrong.backup_damaged": "{file} ist keine Sicherung, oder sie ist beschädigt.",
    "mend.backup_damaged": "Nimm eine andere Kopie.",
    "wrong.backup_version": "{file} hat Version {version}, dieses Programm liest Version {known}.",
    "mend.backup_version": "Stell sie mit dem Programm wieder her, das sie erstellt hat, und aktualisiere danach.",
    "report.word.path_how": (
        "Über 100 % in der letzten Spalte heißt: weniger Minuten als der beste Weg. Da hat der Azubi den Fehler "
        "genannt, bevor er nachgewiesen war."
    ),
    "report.repeated": (
        "Ergebnisse, die nicht zählen, weil der Azubi denselben Fall schon abgegeben hatte: {count} ({who}). Das war "
        "an einer anderen Station oder nach einem Neustart. Frag nach dem Grund."
    ),
    "mark.to_settle": (
        "Fragen, die du mit Azubis klären musst, bevor die Punkte zählen: {count}. Sie stehen im Klassenbericht."
    ),
    "report.word.settle": "Fragen an die Azubis",
    "report.word.settle_how": (
        "Frag diese Azubis, bevor die Punkte zählen. Es kann einen guten Grund geben, etwa eine falsch gestellte Uhr. "
        "Die Zeiten sind in UTC."
    ),
    "settle.clock_back": "{who}, Fall {item}: Die Uhr der Station sprang zurück von {before} auf {at}.",
    "settle.looked_back": "{who} hat am {at} eine Auswertung geöffnet und danach weitergearbeitet.",
    "settle.before_opening": "{who}, Fall {item}: Datum {at}, also bevor der Satz offen war.",
    "settle.ahead": "{who}, Fall {item}: abgegeben am {at}. Nach der Uhr dieses Rechners liegt das in der Zukunft.",
    "settle.unguarded": (
        "Wo diese Azubis gearbeitet haben ({count}), konnten andere Programme die Prüfung lesen: {who}."
    ),
    "mark.altered": "die Schritte wurden nachträglich verändert",
    "roster.twice": "{learner} steht zweimal drin",
    "roster.each_once": "jedes Kürzel einmal",
    "delivery.refused": "Die gemeinsame Ablage kann Durchgang {attempt} nicht annehmen. Er bleibt hier gespeichert.",
    "wrong.no_results_yet": "Hier wurden noch keine Ergebnisse eingesammelt.",
    "mend.no_results_yet": "Sammle erst welche ein: injector-trainer records collect.",
    "wrong.no_learner": "{learner} hat hier keine Ergebnisse und steht nicht auf der Namensliste.",
    "mend.no_learner": "Prüf das Kürzel. Groß- und Kleinschreibung zählt.",
    "wrong.day_is_over": "{day} ist schon vorbei.",
    "mend.day_is_over": "Nenn einen Tag, der noch kommt.",
    "wrong.regrade_drawn": "Fall {item} wurde ausgelost, also hatte womöglich jeder Azubi einen anderen.",
    "mend.regrade_drawn": "Streich ihn bei den betroffenen Azubis: injector-trainer records void.",
    "doctor.shared": "{place}, Einträge, die hier warten: {waiting}",
    "collect.claims": "{file}: {fate}; nach eigener Angabe von {learner}",
    "wrong.store_damaged": "Die Ablage in {place} ist beschädigt: {reason}. Es wurde nichts geändert.",
    "mend.store_damaged": (
        "Kopiere die Datei an einen sicheren Ort. Stell dann deine letzte Sicherung in einem leeren Ordner wieder her: "
        "injector-trainer --data ORDNER records restore SICHERUNG."
    ),
    "damage.no_version": "die Versionsangabe fehlt",
    "wrong.attempt_damaged": (
        "Durchgang {attempt} in {place} ist beschädigt: Schritt {number} ist nicht lesbar. Es wurde nichts geändert, "
        "und deine anderen Durchgänge sind in Ordnung."
    ),
    "mend.attempt_damaged": (
        "Gehört er zu einem Satz, gib deinem Ausbilder den ganzen Ordner mit der Ablage. Er kann den Rest bewerten."
    ),
    "wrong.set_damaged": "Die Ergebnisse dieses Satzes in {place} sind beschädigt.",
    "mend.set_damaged": "Bewerte den Satz aus seiner Datei neu: injector-trainer records mark --set DATEI.",
    "wrong.results_damaged": "Von diesem Satz sind mehr als {most} Ergebnisse beschädigt.",
    "mend.results_damaged": "Bewerte sie aus den Durchgängen neu: injector-trainer records mark --set DATEI --again.",
    "wrong.not_shredded": (
        "Die Durchgänge sind gelöscht. Aber die Datei {place} ist beschädigt, darum ließen sich Spuren nicht "
        "entfernen: {reason}."
    ),
    "mend.not_shredded": (
        "Leg eine Sicherung an, stell sie in einem leeren Ordner wieder her und mach dort weiter. Lösch diese Datei "
        "danach selbst."
    ),
    "damage.no_tables": "das Verzeichnis der Tabellen ist nicht lesbar",
    "damage.not_closed": "die Datei wurde nicht richtig geschlossen, und Teile davon passen nicht mehr zusammen",
    "damage.no_identity": "der Name dieser Station fehlt",
    "damage.left_out": (
        "Beschädigt und ausgelassen: {count} ({which}). Alles andere wurde gelesen, und nichts wurde gelöscht. Eine "
        "frühere Sicherung hat sie vielleicht noch."
    ),
    "restore.left_out": "Zeilen, die nicht zu den anderen passen und darum fehlen: {count}.",
    "backup.left_out": "Beschädigte Zeilen, die in der Sicherung fehlen: {count}. In der Ablage sind sie noch.",
}
