"""Sentences of practice that adapts: what comes next and why, lessons, progress; in German."""

from __future__ import annotations

TEXTS: dict[str, str] = {
    "skill.hearing": "Hören",
    "skill.numbering": "Zählen",
    "skill.codes": "Fehlercodes",
    "skill.measuring": "Messen",
    "skill.reasoning": "Schlussfolgern",
    "skill.limits": "Grenzen des Tests",
    "skill.hearing.what": "sehr leise, dumpf, schwach, unauffällig; welcher Takt; ganze Gruppen",
    "skill.numbering.what": "Zahlen und Plätze; Zahlenfolge, nicht Zündfolge",
    "skill.codes.what": "was ein Fehlercode sagt und was nicht",
    "skill.measuring.what": "wo, welche Seite, welcher Wert gut ist",
    "skill.reasoning.what": "welcher Test als nächster, wann Schluss ist, Fehler finden",
    "skill.limits.what": "was ein unauffälliger Test nicht zeigt",
    "skill.beginning": "gerade angefangen: noch zu wenige Antworten",
    "skill.growing": "wird: Leichtes sitzt, Schweres noch nicht",
    "skill.steady": "sicher: meistens richtig",
    "skill.strong": "stark: auch das Schwere sitzt",
    "task.case": "ein Fall an der Werkbank",
    "task.ear": "Hörfrage",
    "task.numbering": "Zählfrage",
    "task.codes": "Frage zu Fehlercodes",
    "task.meter": "Messfrage",
    "task.reasoning": "Denkfrage",
    "task.limits": "Frage zu den Grenzen des Tests",
    "task.job_card": "finde den Fehlschritt",
    "class.circuit_passes": "Stromkreise in Ordnung",
    "class.group": "Fehler einer ganzen Gruppe",
    "class.two_faults": "zwei Fehler auf einmal",
    "class.drive_module": "Fehler im Steuergerät",
    "class.engine_harness": "Fehler im Motorkabelbaum",
    "class.pass_through_connector": "Fehler am Deckelstecker",
    "class.under_cover_harness": "Fehler im Innenkabelbaum",
    "class.solenoid_coil": "Fehler der Spule",
    "class.armature": "Fehler am Anker",
    "class.module_power": "Fehler an Batterie und Steuergeräteversorgung",
    "subject.ear.which": "welche Takte auffällig sind",
    "subject.ear.what": "wie ein Takt klingt",
    "subject.ear.hum": "wer da brummt",
    "subject.ear.even": "wie ein unauffälliger Takt klingt",
    "subject.ear.weak": "wie ein schwacher Takt klingt",
    "subject.ear.dull": "wie ein dumpfer Takt klingt",
    "subject.ear.very_faint": "wie ein sehr leiser Takt klingt",
    "subject.ear.nothing": "wie ein leerer Takt klingt",
    "subject.numbering.order": "Zahlenfolge",
    "subject.numbering.counted": "Zählen mit Gesamttakt",
    "subject.numbering.place": "wo eine Zahl sitzt",
    "subject.numbering.shared": "was Zahlen gemeinsam haben",
    "subject.numbering.backwards": "rückwärts zählen",
    "subject.codes.says": "was ein Fehlercode beweist",
    "subject.codes.could": "was einen Code setzen kann",
    "subject.codes.old": "alte Fehlercodes",
    "subject.meter.says": "was ein Messwert sagt",
    "subject.meter.where": "wo die Unterbrechung ist, nach Messwerten",
    "subject.meter.slip": "was ein Messwert taugt",
    "subject.reasoning.next": "der nächste Test",
    "subject.reasoning.stop": "wann Schluss ist",
    "subject.limits.still": "was noch defekt sein kann",
    "subject.limits.shown": "was ausgeschlossen ist",
    "subject.limits.after": "was nach einem unauffälligen Test kommt",
    "subject.job_card.slip": "der falsche Schritt auf einer Karte",
    "why.sure_wrong": "Hier warst du dir sicher und lagst falsch — {about}.",
    "why.refute": "Das schauen wir uns noch mal an — {about}.",
    "why.revisit": "Das ging schon mal daneben, darum kommt es wieder — {about}.",
    "why.probe": "Da liegen viele daneben, mal sehen, wie du es machst — {about}.",
    "why.weakest": "Das ist gerade dein Niveau — {about}.",
    "why.asked": "Das wolltest du üben.",
    "course.difficulty": "Stufe {step} von 5",
    "course.next": "Jetzt: {what}",
    "course.right": "Richtig.",
    "course.wrong": "Nicht ganz. Richtig ist: „{said}“.",
    "course.rule": "Merk dir: {rule}",
    "course.sure_before": "Wie sicher bist du?",
    "course.ten": "{minutes} Minuten: ein guter Punkt zum Aufhören. Was falsch war, kommt wieder, wenn es fällig ist.",
    "course.twenty": "{minutes} Minuten geübt. Gönn deinen Ohren eine Pause, bevor du weitermachst.",
    "course.prepare": "Die Übung für diese Motoren wird vorbereitet. Das passiert auf jedem Rechner nur einmal.",
    "course.listen": "Anhören: {label}",
    "course.lesson": "Lektion {number} von {count}",
    "course.lesson.1": "der erste Fall, Schritt für Schritt vorgemacht",
    "course.lesson.2": "der zweite Fall, angefangen; den Rest machst du",
    "course.lesson.3": "der dritte Fall, ganz allein",
    "lesson.intro.1": (
        "Diesen Fall machen wir dir vor. Jeder Schritt sagt, was wir tun und warum, und du hörst und siehst das "
        "Ergebnis."
    ),
    "lesson.intro.2": (
        "Der Test ist gelaufen, die Fehlercodes sind ausgelesen. Ab da machst du weiter: messen, entscheiden, den Ort "
        "nennen."
    ),
    "lesson.intro.3": "Dieser gehört dir.",
    "lesson.taken_over": "Du hast übernommen. Mach von hier an allein weiter.",
    "lesson.step": "Schritt {number} von {count}",
    "lesson.hear": (
        "Starte erst den ganzen Test: den Gesamttakt, dann jeden Zylinder in der Zahlenfolge. Achte auf den Takt, der "
        "nicht klackt."
    ),
    "lesson.slots": (
        "Ein Takt war nur ein leises Brummen. Hör ihn neben seinem Nachbarn: Takt 2, dann Takt 3. Das Brummen kommt "
        "von den anderen Injektoren. Nummer 3 selbst bekommt keinen Strom."
    ),
    "lesson.codes": (
        "Lies die Fehlercodes aus. Sie sagen, in welchem Stromkreis das Steuergerät einen Fehler gesehen hat. Sie "
        "sagen nie, an welcher Stelle."
    ),
    "lesson.dead": (
        "Zündung aus. Warten. Miss die Ruhespannung an dem Kontakt, den du gleich anfasst. Unter einem Volt ist er "
        "spannungsfrei, und du darfst den Widerstand messen."
    ),
    "lesson.pair": (
        "Jetzt das Messgerät, von außen nach innen. Zieh den Steuergerätestecker ab und miss von der Zuleitung zur "
        "Rückleitung 3: OL. Die Unterbrechung liegt also hinter diesem Stecker, das Steuergerät ist es nicht."
    ),
    "lesson.mate": (
        "Miss zum Vergleich einen Zylinder, der in Ordnung ist. Nummer 1 zeigt, was ein guter Stromkreis hier anzeigt "
        "und dass das Messgerät geht."
    ),
    "lesson.wire_feed": (
        "Jetzt die Zuleitung im Motorkabelbaum, von Ende zu Ende. Eine gute Leitung zeigt fast nichts."
    ),
    "lesson.wire_return": "Jetzt die Rückleitung. Sie ist auch gut, also ist der Motorkabelbaum ausgeschlossen.",
    "lesson.cover": (
        "Miss von der Deckelseite des Deckelsteckers: gut. Beide Hälften sind in Ordnung. Übrig bleibt nur der Kontakt "
        "der Rückleitung, der sie verbindet."
    ),
    "lesson.look": (
        "Schau dir die Kontakte an, solange der Stecker getrennt ist. Einen verschmorten oder zurückgedrückten Pin "
        "würdest du hier sehen. Da ist keiner, also ist der Kontakt selbst offen."
    ),
    "lesson.finding": (
        "Die Befunde lassen eine Diagnose übrig: Unterbrechung, Deckelstecker, Rückleitung, Zylinder 3. Die geben wir "
        "jetzt ab, dann kommt die Auswertung."
    ),
    "lesson.go_on": "Schritt ausführen",
    "lesson.take_over": "Ab hier allein weiter",
    "tour.sounds": "Hörrundgang",
    "tour.sounds.about": (
        "Beispiele mit Namen, immer zwei, die sich in einer Sache unterscheiden. Keine Fragen. Hör dir beide an, dann "
        "weiter."
    ),
    "tour.pair": "Paar {number} von {count}",
    "tour.even_weak": "unauffällig neben schwach: der schwache klackt noch, aber leiser",
    "tour.weak_dull": "schwach neben dumpf: ein schwacher Takt klackt noch, vom dumpfen hörst du nur einen Schlag",
    "tour.dull_very_faint": "dumpf neben sehr leise: Strom ohne Klacken, daneben gar kein eigener Strom",
    "tour.very_faint_nothing": (
        "sehr leise neben nichts: das Brummen der anderen, daneben ein Takt, in dem gar nichts angesteuert wird"
    ),
    "tour.one_group": (
        "ein Zylinder neben einer ganzen Gruppe: Injektoren, die zusammen ausfallen, haben ein Teil gemeinsam"
    ),
    "tour.quiet_loud": (
        "dasselbe Brummen in einer leisen und einer lauten Werkstatt: der Lärm verdeckt es, der Fehler ist derselbe"
    ),
    "progress.skills": "Fähigkeiten",
    "progress.counts": "{right} von {count} richtig",
    "progress.interval": (
        "Schätzung {mean:+.1f} (0 ist Durchschnitt), sehr wahrscheinlich zwischen {low:+.1f} und {high:+.1f}"
    ),
    "progress.waits": "Zu wiederholen: {count}. Jetzt fällig: {due}.",
    "progress.waits.line": "{what}: {when}",
    "progress.waits.now": "jetzt fällig",
    "progress.waits.days": "in {days:.0f} Tagen",
    "progress.waits.sure": "(du warst dir sicher)",
    "progress.over_time": "Deine Antworten im Lauf der Zeit, die älteste links, eine Zeile je Fähigkeit",
    "progress.mark.steady": "sicher",
    "progress.mark.strong": "stark",
    "progress.ideas": "Das schau dir noch mal an",
    "practice.title": "Übung von {who}",
    "practice.minutes": "{minutes:.0f} min in dieser Sitzung",
    "practice.go": "Weiter",
    "practice.sounds": "Hörrundgang",
    "practice.rematch": "Revanche (1 Minute)",
    "practice.drills": "Oder nur eine Art",
    "practice.record": "Mein Lernstand als Datei",
    "practice.record.take": "Einlesen",
    "practice.record.path": "Pfad zu einem Lernstand",
    "practice.carried": "Lernstand gespeichert: {path} (Durchgänge: {count}).",
    "practice.taken": "Lernstand eingelesen. Neue Durchgänge: {new}. Schon bekannt: {known}. Weitergeführt: {longer}.",
    "practice.help": (
        "Mit Enter geht es weiter. 'skip' verlässt die Lektionen, 'lesson 1' öffnet eine. 'sounds' ist der "
        "Hörrundgang, 'rematch' eine Revanche von einer Minute. 'drill KIND' gibt dir nur eine Art: ear, numbering, "
        "codes, meter, reasoning, limits oder job_card. Außerdem gibt es 'progress' und 'leave'."
    ),
    "practice.prompt": "Übung>",
    "practice.answer": "{choice}, 'hear 1' zum Anhören oder 'leave':",
    "practice.sure": "Wie sicher? 1 {first}, 2 {second}, 3 {third}:",
    "practice.answer_silent": "{choice} oder 'leave':",
    "practice.answers": "Tippe {choice} als Antwort, oder 'leave', um es offen zu lassen.",
    "practice.making": "Einen Moment: Diese Frage wird gerade berechnet.",
    "practice.left_open": "Diese Aufgabe wartet auf dich.",
    "practice.resumed": "Die war noch nicht fertig, darum kommt sie noch mal.",
    "practice.rematch.pair": "Revanche: {first} gegen {second}, vier Töne.",
    "practice.rematch.over": "Die Revanche ist vorbei: {right} von {count} richtig.",
    "waiting.practise": "Üben",
    "waiting.lesson": "Lektion {number}: {what}",
    "tour.slot": "Takt {number}, {heard}, Grundgeräusch {bed:.0f} dB(A)",
    "tour.whole": "der ganze Test, auffällig: {cylinders}",
    "lesson.again": (
        "Steck alles wieder zusammen und starte den Test noch mal. Ein schmutziger Kontakt würde jetzt wieder gehen. "
        "Takt 3 brummt immer noch, also ist es nachgewiesen."
    ),
    "lesson.done": "Erledigt: {what}",
    "record.a_record": "ein Lernstand, von diesem Programm geschrieben",
    "record.found.no_record": "fängt nicht wie ein Lernstand an",
    "record.found.damaged": "beschädigt oder abgeschnitten: die Prüfsumme passt nicht",
    "record.found.of_another": "der Lernstand von {of}",
    "record.mend.a_record_of": "Schreib ihn auf dem anderen Rechner noch mal; hier wurde nichts geändert",
    "record.mend.copy_again": "Kopier ihn noch mal von dort, wo er geschrieben wurde; hier wurde nichts geändert",
    "record.mend.be_that_learner": "Er gehört {of}: Lies ihn so ein (--learner); hier wurde nichts geändert",
    "practice.record.write": "Lernstand speichern",
    "practice.record.nowhere": "Auf diesem Rechner bleibt nichts erhalten, auch der Lernstand nicht.",
    "exercise.engine_hidden": "Den Motor siehst du, wenn du geantwortet hast.",
    "exercise.mark_right": "← richtige Antwort",
    "tour.before": "Voriges",
    "waiting.choose": "Übung auswählen",
    "waiting.due": "heute zu wiederholen: {count}",
    "stage.practice": "Die Übung wird vorbereitet: {percent:.0f} %",
    "stage.exercise": "Die Frage entsteht ...",
    "practice.left": "Hier unterbrochen. Deine Arbeit ist gespeichert.",
    "practice.apart": (
        "Diese Durchgänge liefen auf den zwei Rechnern verschieden, darum bleiben die von hier: {count}."
    ),
    "why.case.sure_wrong": "Bei so einem Fall warst du dir sicher und lagst falsch.",
    "why.case.refute": "Das schauen wir uns noch mal an, in einem ganzen Fall.",
    "why.case.revisit": "So ein Fall ging schon mal daneben, darum kommt noch einer.",
    "why.case.probe": "Ein ganzer Fall mit etwas, bei dem viele danebenliegen.",
    "why.case.weakest": "Ein ganzer Fall bringt dein Können zusammen, auf deinem Niveau.",
    "progress.waits.day": "morgen",
    "record.found.unknown": "enthält etwas, das diese Programmversion nicht kennt",
    "practice.lesson_keys": (
        "In einer Lektion macht Enter den nächsten Schritt, und 'skip' verlässt die Lektionen. Drück jetzt Enter, um "
        "mit dieser weiterzumachen."
    ),
    "why.rematch": "Revanche, Ton {number} von {count}: {first} gegen {second}.",
    "skill.low": "am Anfang: auch Leichtes ist noch schwer",
}
