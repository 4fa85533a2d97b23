"""German: sentences about measuring: slips and cautions."""

_SLIPS = {
    "slip.still_connected": (
        "Der Stecker war beim Messen noch drauf, also hat das Messgerät alles an der Leitung mitgemessen."
    ),
    "slip.live": (
        "Du hast den Widerstand unter Spannung gemessen. Der Wert sagt nichts, und das Messgerät kann Schaden nehmen. "
        "Zündung aus, warten, Spannungsfreiheit prüfen, dann messen."
    ),
    "slip.not_proved_dead": (
        "Du hast nicht auf Spannungsfreiheit geprüft. Seit der letzten Ansteuerung hast du die Ruhespannung nicht "
        "gemessen."
    ),
    "slip.not_waited": "Du hast nicht gewartet. Beim Messen war das Steuergerät noch geladen.",
    "slip.voltage_on_wire": (
        "Hier liegt Spannung an, obwohl die Zündung aus ist. Auf keine Widerstandsmessung ist hier Verlass."
    ),
    "slip.insulation_into_part": (
        "Miss die Isolation nie durch ein Steuergerät, einen Injektor oder einen Heizkreis hindurch."
    ),
    "slip.lamp_into_part": (
        "Nimm die Prüflampe nur an einer Leitung, die an beiden Enden abgezogen ist. An einem Steuergerät oder "
        "Injektor richtet sie Schaden an."
    ),
    "slip.probe_pushed": "Du hast die Prüfspitze in den Kontakt gedrückt, und jetzt ist er aufgeweitet.",
    "slip.not_nulled": "Du hast die Messleitungen nicht genullt, darum steckt ihr Widerstand im Messwert.",
}


_CAUTIONS = {
    "caution.drive": (
        "Vorsicht: Das Steuergerät gibt Impulse mit über 100 V ab und bleibt geladen. 100 Volt können tödlich sein. "
        "Zündung aus. Warten. Prüf die Spannungsfreiheit, bevor du einen Kontakt anfasst."
    ),
    "caution.live": (
        "Vorsicht: Arbeiten unter Spannung, über 100 V. Sperr den Bereich ab. Hol eine zweite Person dazu. Setz "
        "isolierte Prüfspitzen bei Zündung aus an. Halt eine Hand fern. Nur für Leute, die nach den örtlichen "
        "Vorschriften unter Spannung arbeiten dürfen."
    ),
    "caution.cover": (
        "Vorsicht: Ist der Deckel ab und die Zündung ein, liegen Kontakte unter Spannung offen. Das Öl ist heiß. Halt "
        "Abstand."
    ),
    "caution.under_cover": (
        "Vorsicht: Unter dem Deckel ist das Öl heiß, und Teile bewegen sich. Motor aus, Zündung aus, Hände weg."
    ),
    "caution.lamp": (
        "Vorsicht: Prüflampe nur an eine Leitung, die an beiden Enden abgezogen ist. Nie an einen Ausgang des "
        "Steuergeräts."
    ),
    "caution.crank": (
        "Vorsicht: Beim Anlassen drehen sich Riemen und Lüfter. Stell den Kraftstoff ab. Halt Hände und Kleidung fern."
    ),
    "caution.battery": (
        "Vorsicht an der Batterie: Ringe ab, Schutzbrille auf, abgesicherte Messleitungen nehmen. Überbrück nie die "
        "Pole. Die Batterie gibt explosives Gas ab."
    ),
    "caution.moving": (
        "Vorsicht: Beweg am echten Motor Leitungen unter Spannung nie mit der Hand. Nimm ein isoliertes Werkzeug, oder "
        "mach sie vorher spannungsfrei."
    ),
    "caution.running": (
        "Vorsicht: Bei laufendem Motor drehen sich Riemen und Lüfter, und Teile sind heiß. Halt Hände und Kleidung "
        "fern, und leite die Abgase nach draußen."
    ),
    "caution.heat": "Vorsicht: keine offene Flamme und keine unkontrollierte Hitze in der Nähe von Kraftstoff und Öl.",
    "caution.repeat": (
        "Vorsicht: Bei manchen Motoren spritzt jeder Test Kraftstoff ein, und die Anlage bleibt unter Druck. "
        "Wiederhole nur so oft, wie der Hersteller erlaubt, und starte den Motor danach nicht gleich. Such ein Leck "
        "nie mit der Hand."
    ),
    "caution.real": (
        "Am echten Motor gelten das Handbuch des Herstellers und die örtlichen Vorschriften. Arbeiten, für die man "
        "eine Berechtigung braucht, überlass den Berechtigten. Dieser Motor ist simuliert: Kein Wert hier ist eine "
        "Vorgabe."
    ),
    "caution.sound": "Fang leise an. Der Gesamttakt ist lauter als die einzelnen Takte.",
}


TEXTS: dict[str, str] = {**_SLIPS, **_CAUTIONS}
