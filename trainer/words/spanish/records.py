"""Spanish: results, reports, exports and handouts."""

TEXTS = {
    "handout.title": "Lo que mostró la prueba de inyectores",
    "handout.heard": "Lo que se oyó",
    "handout.where": "Dónde está",
    "handout.wiring": (
        "El motor desde arriba. Continua: retornos; a trazos: alimentaciones. El círculo con aspa es el lugar."
    ),
    "handout.next": "Qué comprobar ahora",
    "handout.cautions": "Precauciones",
    "handout.limits": (
        "Los sonidos y dibujos se calcularon para un motor de enseñanza. La prueba mueve bobinas y placas: "
        "nada dice de toberas, juntas, compresión o aceite. El manual del fabricante y las normas locales "
        "van primero."
    ),
    "handout.good": "{slot}, como suena uno bueno:",
    "handout.faulty": "{slot}, como sonó aquí:",
    "handout.next.circuit_passes": (
        "El circuito pasa: mire combustible, aceite, compresión y la hidráulica del inyector, que esta "
        "prueba no muestra."
    ),
    "handout.next.drive_module": (
        "Compruebe alimentación, masas y conector del módulo antes de comprar uno; mida su salida con una carga."
    ),
    "handout.next.engine_harness": (
        "Recorra el mazo del motor en busca de roces o quemaduras; mida cada hilo de punta a punta y a masa, "
        "sin tensión y desenchufado."
    ),
    "handout.next.pass_through_connector": (
        "Abra el conector de la junta de la tapa: aceite, marcas de calor, patillas flojas o metidas; mida "
        "por sus dos lados."
    ),
    "handout.next.under_cover_harness": (
        "Con la tapa quitada, busque hilos rozados por piezas móviles y enchufes flojos en los inyectores."
    ),
    "handout.next.solenoid_coil": "Mida la bobina en el propio inyector junto a otra buena del mismo motor.",
    "handout.next.armature": (
        "Bobina e hilos están bien: la placa no se mueve como debe. Compare un trazo de corriente con el de "
        "un inyector bueno antes de cambiarlo."
    ),
    "handout.next.module_power": (
        "Pruebe la batería con carga, limpie los bornes y el punto de masa del módulo, y vuelva a medir las "
        "dos caídas mientras se accionan todos los inyectores."
    ),
    "handout.next.retest": (
        "Tras la reparación repita la prueba: todos los turnos parejos, ningún código y una medida que no "
        "cambie al mover el mazo."
    ),
    "fate.new": "nuevo",
    "fate.already_there": "ya estaba",
    "fate.cut_short": "cortado: cópielo otra vez",
    "fate.altered": "alterado: no está como se escribió",
    "fate.wrong_key": "hecho con otra frase de paso",
    "fate.other_set": "de otro conjunto",
    "fate.unreadable": "no es un paquete de resultados",
    "fate.special": "no es un archivo normal: no se tocó",
    "fate.closed": "no se puede leer: comprueba los permisos y la memoria",
    "collect.line": "{file}: {fate} ({count} intentos)",
    "collect.nothing": "No se encontró ningún paquete.",
    "mark.going": "Se califica: {done} de {count} ...",
    "mark.done": "{marked} calificados, {unfinished} sin entregar, {voided} anulados.",
    "mark.refused": "{count} no se pueden calificar: {why}.",
    "mark.other_case": "su caso no es el que les da este conjunto",
    "mark.other_model": "se hicieron con la versión {version} del modelo y este programa tiene la {now}; "
    "califícalos con uno de esa versión",
    "mark.unnumbered_model": "se hicieron antes de que el modelo tuviera números de versión; califícalos con el "
    "programa que los hizo",
    "mark.damaged": "sus sucesos no se siguen unos a otros",
    "records.not_there": "no está",
    "fate.missing": "no está",
    "records.set": "{name}: {title}, casos: {size} ({id})",
    "records.no_sets": "Aún no hay resultados de ningún conjunto.",
    "records.written": "{path}",
    "roster.three_cells": "tres celdas: learner, name, class",
    "roster.at_most": "como mucho {count} caracteres por celda",
    "roster.mend": (
        "empiece con la línea learner,name,class y escriba una persona por línea: ann7,Ana Ruiz,turno de día"
    ),
    "roster.taken": "En la lista ahora: {count}.",
    "note.taken": "Anotado.",
    "note.void": "no cuenta",
    "note.comment": "comentario",
    "note.answer": "también correcto",
    "keep.taken": "{title}: se guarda hasta {day}.",
    "delete.ask_learner": "¿Borrar todo lo de {learner} para siempre?",
    "delete.ask_sets": "¿Borrar para siempre los resultados de {count} conjuntos: {titles}?",
    "delete.done": "{count} intentos borrados.",
    "backup.done": "{count} filas en {path}",
    "restore.done": "{count} filas han vuelto.",
    "delivery.done": "{count} sucesos entregados, {waiting} esperan.",
    "delivery.forked": "El intento {attempt} siguió en dos puestos por separado: se guardan ambos, este solo aquí.",
    "class.circuit_passes": "el circuito pasa",
    "class.group": "un grupo entero",
    "class.two_faults": "dos averías",
    "counts.first": "cuenta el primer intento",
    "counts.best": "cuenta el mejor intento",
    "counts.last": "cuenta el último intento",
    "xapi.question": "¿Dónde está la avería?",
    "report.title": "{title}: lo que oye la clase",
    "report.rule": (
        "Nota sobre 100: la media de los casos según su peso, un {share:.0f} % de cada uno por la certeza "
        "(100 menos 100 veces la puntuación de Brier); un caso sin entregar cuenta cero; de varios intentos, "
        "{counts}."
    ),
    "report.counts": "{learners} aprendices, {results} resultados que cuentan, {size} casos cada uno.",
    "report.mean": "Nota media {mean:.1f}; {passed} de {learners} llegaron a {passes_at:.0f}.",
    "report.unsupported": "Sin los aprendices con ajustes de apoyo la media es {mean:.1f}.",
    "report.voided": "{count} resultados no cuentan por decisión del instructor.",
    "report.confused": "{truth} → {said}",
    "report.play": "{first} frente a {second}",
    "report.alpha": "Fiabilidad (alfa de Cronbach, n={count}): {value:.2f} {rough}",
    "report.alpha_hidden": "La fiabilidad se muestra desde diez aprendices con todos los casos; aquí hay {count}.",
    "report.rough": "(aproximada: menos de 30 aprendices)",
    "report.word.evident": (
        "Lo hecho con un conjunto sellado muestra manipulaciones a quien tiene la frase de paso; no puede impedirlas."
    ),
    "report.word.teach": "Qué enseñar ahora",
    "report.word.slip": "qué falló",
    "report.word.slips": "Qué falló, por número de la tabla",
    "report.word.often": "cuántas veces",
    "report.word.sure": "pesado por la certeza",
    "report.word.findings": "dictámenes erróneos",
    "report.word.most_confused": "lo más confundido (real → dicho)",
    "report.word.play": "escuchar uno frente a otro",
    "report.word.no_slips": "Todos los dictámenes fueron correctos.",
    "report.word.marks": "Notas",
    "report.word.mark": "nota",
    "report.word.learner": "aprendiz",
    "report.word.learners": "aprendices",
    "report.word.passed": "aprobado",
    "report.word.right": "parte correcta",
    "report.word.right_of": "bien / todos",
    "report.word.solid": "bien siempre",
    "report.word.weak": "fallado al menos una vez",
    "report.word.path": "minutos del mejor camino sobre los propios",
    "report.word.supported": "con apoyo",
    "report.word.yes": "sí",
    "report.word.no": "no",
    "report.word.more_learners": "Más aprendices están en el libro de notas:",
    "report.word.places": "Confusión de lugares y cilindros",
    "report.word.places_how": "Las filas son la verdad, las columnas lo dicho; en negrita lo correcto.",
    "report.word.cylinders_how": "Cilindros, donde hubo avería:",
    "report.word.truth": "real",
    "report.word.said": "dicho",
    "report.word.others": "otros",
    "report.word.all": "todos",
    "report.word.detection": "Avería o ninguna",
    "report.word.hits": "Averías llamadas avería:",
    "report.word.alarms": "Circuitos buenos llamados averiados:",
    "report.word.calibration": "Cuánta certeza y cuánto acierto",
    "report.word.certainty": "certeza",
    "report.word.count": "cuenta",
    "report.word.effort": "Esfuerzo por caso",
    "report.word.plays": "Sonidos, mediana:",
    "report.word.readings": "Medidas, mediana:",
    "report.word.minutes": "Minutos de trabajo, media:",
    "report.word.best": "por el mejor camino:",
    "report.word.cases": "Casos",
    "report.word.case": "caso",
    "report.word.facility": "aciertos",
    "report.word.mean_mark": "nota media",
    "report.word.discrimination": "discriminación",
    "report.word.hidden": "muy pocos",
    "report.word.rough": "aprox.",
    "report.word.no_spread": "todos iguales",
    "report.word.items_how": (
        "Discriminación: correlación de la nota de un caso con las otras del aprendiz, entre quienes tienen "
        "todos los casos; oculta con menos de 10, aproximada con menos de 30. Donde cada aprendiz tiene sus "
        "propios sorteos, un número es la línea del conjunto y no un caso: la tabla de abajo reúne por "
        "clase."
    ),
    "report.word.class": "clase de avería",
    "report.word.notes": "Notas del instructor",
    "report.word.made": "Hecho",
    "wrong.note_needs_text": "Una nota necesita texto.",
    "mend.note_needs_text": "Diga por qué en pocas palabras.",
    "wrong.no_answer": "'{words}' no es avería que pueda tener un motor de este conjunto.",
    "mend.no_answer": (
        "Escriba cilindros, lugar y clase, por ejemplo: 3 pass_through_connector open; o: circuit_passes."
    ),
    "wrong.which_set": "'{named}' no dice qué conjunto es.",
    "mend.which_set": "Nombre uno de: {sets}.",
    "wrong.delete_what": "Diga una sola cosa que borrar.",
    "mend.delete_what": "Use --learner, --set o --overdue.",
    "wrong.no_store_url": "Aquí no se conoce ningún almacén común.",
    "mend.no_store_url": "Nómbrelo con --store o póngalo en los ajustes.",
    "wrong.nothing_to_bundle": "{learner} no ha hecho este conjunto en esta máquina.",
    "mend.nothing_to_bundle": "Compruebe el nombre y el conjunto.",
    "wrong.store_not_empty": "Ya hay registros en {place}.",
    "mend.store_not_empty": "Restaure en una carpeta vacía: --data CARPETA.",
    "wrong.backup_damaged": "{file} no es una copia, o está dañada.",
    "mend.backup_damaged": "Tome otra copia.",
    "wrong.backup_version": "{file} es de la versión {version}; este programa conoce {known}.",
    "mend.backup_version": "Restáurela con el programa que la hizo y actualice después.",
    "report.word.path_how": (
        "Más de 100 % en la última columna: menos minutos que el mejor camino, así que un dictamen antes de "
        "estar probado."
    ),
    "report.repeated": (
        "{count} resultados no cuentan porque el mismo aprendiz ya había entregado el caso, en otro puesto o "
        "tras un reinicio: {who}. Pregunte por qué."
    ),
    "mark.to_settle": (
        "Para aclarar con los aprendices antes de contar las notas: {count}. Está en el informe de clase."
    ),
    "report.word.settle": "Para aclarar",
    "report.word.settle_how": (
        "Pregunta a estos aprendices antes de contar las notas. Puede haber un buen motivo, como un reloj mal puesto. "
        "Las horas son UTC."
    ),
    "settle.clock_back": "{who}, caso {item}: el reloj del puesto volvió de {before} a {at}.",
    "settle.looked_back": "{who} miró un análisis el {at} y después siguió trabajando.",
    "settle.before_opening": "{who}, caso {item}: con fecha {at}, antes de que se abriera el conjunto.",
    "settle.ahead": "{who}, caso {item}: entregado el {at}. Según el reloj de este equipo, eso aún no ha llegado.",
    "settle.unguarded": "Donde trabajaron estos aprendices, otros programas alcanzaban el examen ({count}): {who}.",
    "mark.altered": "sus sucesos se cambiaron después de ocurrir",
    "roster.twice": "{learner} dos veces",
    "roster.each_once": "cada código una vez",
    "delivery.refused": "El almacén común no puede tomar el intento {attempt}; queda guardado aquí.",
    "wrong.no_results_yet": "Aún no hay resultados de ningún conjunto.",
    "mend.no_results_yet": "Recoja algunos primero: injector-trainer records collect.",
    "wrong.no_learner": "{learner} no tiene resultados aquí ni está en la lista.",
    "mend.no_learner": "Compruebe el código; las mayúsculas cuentan.",
    "wrong.day_is_over": "{day} ya pasó.",
    "mend.day_is_over": "Nombre un día futuro.",
    "wrong.regrade_drawn": "El caso {item} se sorteó: bajo su número cada aprendiz pudo tener otro.",
    "mend.regrade_drawn": "Anúlelo a quienes afecte: injector-trainer records void.",
    "doctor.shared": "{place}, {waiting} sucesos esperan aquí",
    "collect.claims": "{file}: {fate}; dice ser de {learner}",
    "wrong.store_damaged": "Los registros en {place} están dañados: {reason}. Lo dañado quedó como estaba.",
    "mend.store_damaged": (
        "Copia ese archivo a un lugar seguro. Después pon tu última copia de seguridad en una carpeta vacía: "
        "injector-trainer --data CARPETA records restore COPIA."
    ),
    "damage.no_version": "no dicen de qué versión son",
    "wrong.attempt_damaged": (
        "El intento {attempt} en {place} está dañado: el paso {number} no se puede leer. Quedó como estaba; los otros "
        "intentos no están afectados."
    ),
    "mend.attempt_damaged": (
        "Si es de un conjunto, da la carpeta entera de registros a tu instructor, que puede calificar allí el resto."
    ),
    "wrong.set_damaged": "Lo que los registros en {place} guardan de este conjunto está dañado.",
    "mend.set_damaged": "Haz que se califique otra vez desde su archivo: injector-trainer records mark --set ARCHIVO.",
    "wrong.results_damaged": "Más de {most} resultados de este conjunto están dañados.",
    "mend.results_damaged": "Haz que se calculen otra vez: injector-trainer records mark --set ARCHIVO --again.",
    "wrong.not_shredded": (
        "Los intentos están borrados, pero el archivo {place} está dañado y no se pudo limpiar de ellos: {reason}."
    ),
    "mend.not_shredded": (
        "Haz una copia de seguridad, restáurala en una carpeta vacía, sigue allí y borra después este archivo tú mismo."
    ),
    "damage.no_tables": "lo que dicen de sus tablas no se puede leer",
    "damage.not_closed": "el archivo no se cerró bien y hay partes que ya no encajan",
    "damage.no_identity": "falta el nombre que distingue este puesto de otros",
    "damage.left_out": (
        "Dañado en los registros y no tomado: {count} ({which}). Todo lo demás se leyó y no se borró nada. "
        "Una copia anterior quizá los tenga todavía."
    ),
    "restore.left_out": "{count} filas no encajan con las otras y no se tomaron.",
    "backup.left_out": "Fuera de la copia porque están dañadas: {count} filas. Siguen en los registros.",
}
