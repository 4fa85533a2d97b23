"""Faults: their names, what each teaches, and what eyes find, in German."""

TEXTS: dict[str, str] = {
    "kind.open": "Unterbrechung",
    "kind.added_resistance": "Übergangswiderstand",
    "kind.fails_under_load": "Kontaktfehler unter Last",
    "kind.film_on_contact": "Kontaktbelag, den die Ansteuerung durchbricht",
    "kind.burnt_pin": "verschmorter Pin",
    "kind.pushed_back_pin": "zurückgedrückter Pin",
    "kind.spread_terminal": "aufgeweiteter Kontakt, öffnet bei Bewegung",
    "kind.open_when_moved": "Unterbrechung bei Bewegung",
    "kind.open_when_hot": "Unterbrechung bei Wärme",
    "kind.cured_by_reseating": "schlechter Kontakt, nach dem Stecken eine Weile gut",
    "kind.short_across_pair": "Kurzschluss Zu- gegen Rückleitung",
    "kind.carbon_between_pins": "Kriechspur zwischen zwei Pins",
    "kind.short_to_ground": "Masseschluss",
    "kind.short_when_moved": "Scheuerstelle, Masseschluss bei Bewegung",
    "kind.short_to_battery": "Kurzschluss nach Plus",
    "kind.return_to_return": "Kurzschluss zwischen zwei Rückleitungen",
    "kind.return_to_heater": "Kurzschluss der Rückleitung mit einem Heizkreis",
    "kind.crossed_returns": "Rückleitungen vertauscht",
    "kind.shorted_turns": "Windungsschluss",
    "kind.wrong_coil": "falscher Spulentyp",
    "kind.dead_return_driver": "Rückleitungsendstufe defekt",
    "kind.output_fails_hot": "Rückleitungsendstufe fällt warm aus",
    "kind.return_driver_stuck_on": "Rückleitungsendstufe dauernd ein",
    "kind.dead_feed_driver": "Zuleitungsendstufe defekt",
    "kind.low_supply": "niedrige Endstufenspannung",
    "kind.slow_recharge": "Endstufenspannung lädt zu langsam nach",
    "kind.no_supply": "keine Endstufenspannung",
    "kind.weak_battery": "schwache Batterie",
    "kind.poor_module_feed": "hoher Widerstand in der Plusleitung des Steuergeräts",
    "kind.poor_module_ground": "hoher Widerstand in der Masse des Steuergeräts",
    "kind.stuck_armature": "klemmender Anker",
    "kind.sluggish_armature": "schwergängiger Anker",
    "kind.sticks_when_cold": "Anker, der kalt klebt",
    "kind.worn_armature": "verschlissener Anker",
    "rule.open": (
        "Das sehr leise Brummen kommt von den anderen Injektoren. Der Injektor, der dran ist, bekommt keinen Strom."
    ),
    "rule.added_resistance": (
        "Einen kleinen Widerstand verdeckt die Strombegrenzung. Ab einem gewissen Wert zieht der Anker nicht mehr an. "
        "Dann klingt der Takt dumpf, oft ohne Fehlercode."
    ),
    "rule.fails_under_load": (
        "Der winzige Strom eines Messgeräts belastet keine Verbindung. Miss den Spannungsabfall unter Last."
    ),
    "rule.film_on_contact": (
        "Ein Belag kann am Messgerät hochohmig aussehen und die Ansteuerung trotzdem durchlassen. Belaste die "
        "Verbindung, bevor du sie für schlecht erklärst."
    ),
    "rule.burnt_pin": (
        "Eine schlechte Verbindung verschmort ihren eigenen Pin. Schau in den Stecker, bevor du eine Prüfspitze "
        "hineinsteckst."
    ),
    "rule.pushed_back_pin": (
        "Ein zurückgedrückter Pin misst sich zusammengesteckt offen und auf jeder Hälfte gut. Schau die Kontakte "
        "entlang: Alle müssen auf einer Höhe sitzen."
    ),
    "rule.spread_terminal": (
        "Ein aufgeweiteter Kontakt sieht gut aus und hält, bis sich der Kabelbaum bewegt. Prüf die Haltekraft mit "
        "einem passenden Stift."
    ),
    "rule.open_when_moved": ("Unauffällig in Ruhe beweist noch nichts. Beweg die Stelle, während du hörst oder misst."),
    "rule.open_when_hot": (
        "Unauffällig im kalten Zustand beweist noch nichts. Erwärm eine Stelle nach der anderen und teste noch mal."
    ),
    "rule.cured_by_reseating": (
        "Wer einen Kontakt trennt, kann ihn für eine Weile heilen. Miss, bevor du ihn abziehst."
    ),
    "rule.short_across_pair": (
        "Steigt der Strom ohne die Verzögerung einer Spule, ist es ein Kurzschluss. Das sagt der Fehlercode, den Ort "
        "findest du mit dem Ohmmeter."
    ),
    "rule.carbon_between_pins": (
        "Eine Kriechspur führt Strom an der Spule vorbei. Zieh beide Stecker ab, dann schau nach und miss von Pin zu "
        "Pin."
    ),
    "rule.short_to_ground": (
        "Ein Masseschluss ändert den Widerstand von Zuleitung gegen Rückleitung nicht. Nur die Messung Pin gegen Masse "
        "zeigt ihn."
    ),
    "rule.short_when_moved": (
        "Eine durchgescheuerte Leitung hat nur Schluss, wo sie ans Metall gedrückt wird. Beweg sie, während du gegen "
        "Masse misst."
    ),
    "rule.short_to_battery": "Such bei Zündung aus nach Spannung, bevor du einem Ohmwert traust.",
    "rule.return_to_return": (
        "Zwei Spulen teilen sich eine Strombegrenzung. Jede bekommt die Hälfte, und beide Anker bleiben vielleicht "
        "liegen: zwei dumpfe Takte."
    ),
    "rule.return_to_heater": (
        "Über den Heizkreis findet der Strom nach Masse. Darum klackt der Injektor auch in fremden Takten."
    ),
    "rule.crossed_returns": (
        "Bei vertauschten Rückleitungen ist jede Hälfte gut, also prüf Leitung für Leitung. Innerhalb einer Bank "
        "stimmt die Lautstärke, nur der Platz ist falsch."
    ),
    "rule.shorted_turns": (
        "Weniger Windungen und ein geschlossener Ring auf dem Kern: wenig Ohm, schneller Strom, wenig Zugkraft."
    ),
    "rule.wrong_coil": (
        "Vergleich den Widerstand mit den anderen Injektoren. Eine Spule anderen Typs kann klacken und trotzdem das "
        "falsche Teil sein."
    ),
    "rule.dead_return_driver": (
        "Leitungen und Spule messen sich gut, und nach dem Tausch ist derselbe Takt noch tot. Also ist es das "
        "Steuergerät."
    ),
    "rule.output_fails_hot": (
        "Kalt geht es, mit warmem Steuergerät nicht, und die Leitungen messen sich gut. Also ist es der Ausgang im "
        "Steuergerät."
    ),
    "rule.return_driver_stuck_on": (
        "Der Injektor klackt in jedem Takt seiner Zuleitung, und die Leitungen sind sauber. Also schaltet ein Ausgang "
        "nie ab."
    ),
    "rule.dead_feed_driver": (
        "Eine ganze Gruppe ist tot, und ihre Zuleitung ist gut. Also kommt aus der Endstufe nichts heraus."
    ),
    "rule.low_supply": (
        "Alle sind auf dieselbe Art daneben, also such eine einzige Ursache. Miss zuerst die Versorgung."
    ),
    "rule.slow_recharge": (
        "Der Gesamttakt belastet die Versorgung am stärksten. Sind sie einzeln unauffällig, aber zusammen schwach, "
        "sieh dir die Versorgung an."
    ),
    "rule.no_supply": (
        "Nirgends ein Brummen heißt: keine Ansteuerung. Eine ganze Reihe Injektoren stirbt nicht auf einmal."
    ),
    "rule.weak_battery": (
        "Er dreht langsam durch, und alle Takte sind unauffällig. Prüf zuerst die Batterie unter Last."
    ),
    "rule.poor_module_feed": (
        "Das Steuergerät kann nur weitergeben, was von der Batterie kommt. Miss den Spannungsabfall von "
        "Batterie-Plus bis zum Steuergerät, bevor du eins kaufst."
    ),
    "rule.poor_module_ground": (
        "Eine schlechte Masse sieht aus wie ein defektes Steuergerät. Miss den Spannungsabfall von dessen Masse bis "
        "Batterie-Minus unter Last."
    ),
    "rule.stuck_armature": "Voller Strom, aber kein Knick: Der Anker klemmt. Die Leitungen sind in Ordnung.",
    "rule.sluggish_armature": (
        "Ein später Knick und ein weicher Anschlag heißen: Der Anker ist schwergängig. Der Stromkreis ist in Ordnung."
    ),
    "rule.sticks_when_cold": (
        "Kaltes Öl kann einen Anker auf seinem Sitz festhalten. Bei Frost ist der Takt dumpf, mit warmem Injektor "
        "unauffällig. Die Leitungen sind also in Ordnung."
    ),
    "rule.worn_armature": (
        "Ein helleres Klacken ist kein besseres: Ein verschlissener Anker hat mehr Weg und schlägt härter auf."
    ),
    "seen.burnt": "{where}: ein verschmorter Pin.",
    "seen.pushed_back": "{where}: ein zurückgedrückter Pin.",
    "seen.spread": "{where}: ein Kontakt, der den Stift nicht hält.",
    "seen.bridge": "{where}: Etwas verbindet zwei Teile, die getrennt sein müssen.",
    "seen_at.engine_harness": "Steuergerätestecker, {side}, {cylinders}",
    "seen_at.pass_through_connector": "Deckelstecker, {side}, {cylinders}",
    "seen_at.under_cover_harness": "Injektorstecker, {side}, {cylinders}",
}
