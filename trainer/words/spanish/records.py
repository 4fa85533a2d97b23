"""Spanish: results, reports, exports and handouts."""

TEXTS = {
    "handout.title": "Qué mostró la prueba de inyectores",
    "handout.heard": "Lo que oímos",
    "handout.where": "Dónde está la avería",
    "handout.wiring": (
        "El motor visto desde arriba. Línea continua, retornos; línea a trazos, alimentaciones. El círculo con aspa "
        "marca el lugar."
    ),
    "handout.next": "Qué comprobar ahora",
    "handout.cautions": "Precauciones",
    "handout.limits": (
        "Los sonidos y dibujos se calcularon para un motor de enseñanza. La prueba solo acciona bobinas y mueve "
        "armaduras. No dice nada de toberas, juntas, compresión ni aceite. El manual del fabricante y las normas "
        "locales van primero."
    ),
    "handout.good": "{slot}, en un motor sano:",
    "handout.faulty": "{slot}, en este motor:",
    "handout.next.circuit_passes": (
        "El circuito está bien. Mira combustible, aceite, compresión y la hidráulica del inyector, que esta prueba no "
        "puede mostrar."
    ),
    "handout.next.drive_module": (
        "Comprueba la alimentación, las masas y el conector del módulo antes de comprar uno. Mide su salida con una "
        "carga ficticia."
    ),
    "handout.next.engine_harness": (
        "Recorre el cableado del motor buscando roces o quemaduras. Sin tensión y desconectado, mide cada cable de "
        "punta a punta y a masa."
    ),
    "handout.next.pass_through_connector": (
        "Abre el conector de la junta de la tapa. Busca aceite, marcas de calor y pines flojos o hundidos. Mide por "
        "los dos lados."
    ),
    "handout.next.under_cover_harness": (
        "Con la tapa quitada, busca cables rozados por piezas móviles y conectores flojos en los inyectores."
    ),
    "handout.next.solenoid_coil": "Mide la bobina en el propio inyector y compárala con una buena del mismo motor.",
    "handout.next.armature": (
        "La bobina y el cableado están bien, pero la armadura no se mueve como debe. Compara la curva de corriente "
        "con la de un inyector bueno antes de cambiar nada."
    ),
    "handout.next.module_power": (
        "Prueba la batería con carga y limpia los bornes y la masa del módulo. Después mide las dos caídas con todos "
        "los inyectores accionados."
    ),
    "handout.next.retest": (
        "Después de reparar, repite la prueba. Todos los turnos deben sonar parejos y sin códigos. La lectura no debe "
        "cambiar cuando mueves el cableado."
    ),
    "fate.new": "nuevo",
    "fate.already_there": "ya estaba",
    "fate.cut_short": "cortado, cópialo otra vez",
    "fate.altered": "cambiado después de escribirlo",
    "fate.wrong_key": "hecho con otra contraseña",
    "fate.other_set": "de otro conjunto",
    "fate.unreadable": "no es un archivo de resultados",
    "fate.special": "no es un archivo normal, así que no se ha tocado",
    "fate.closed": "no se puede leer: revisa tus permisos y la memoria USB",
    "collect.line": "{file}: {fate} (intentos: {count})",
    "collect.nothing": "Ahí no hay archivos de resultados.",
    "mark.going": "Calificando: {done} de {count} ...",
    "mark.done": "Calificados: {marked}. Sin entregar: {unfinished}. Anulados: {voided}.",
    "mark.refused": "{count} no se pueden calificar: {why}.",
    "mark.other_case": "su caso no es el que les da este conjunto",
    "mark.other_model": (
        "se hicieron con la versión {version} del modelo y este programa tiene la {now}; califícalos con un programa "
        "de esa versión"
    ),
    "mark.unnumbered_model": "se hicieron antes de que el modelo tuviera números de versión; califícalos con el "
    "programa que los hizo",
    "mark.damaged": "sus pasos no se siguen unos a otros",
    "records.not_there": "no está",
    "fate.missing": "no está",
    "records.set": "{name}: {title}, casos: {size} ({id})",
    "records.no_sets": "Aquí todavía no se han recogido resultados.",
    "records.written": "{path}",
    "roster.three_cells": "tres celdas: learner, name, class",
    "roster.at_most": "como mucho {count} caracteres en una celda",
    "roster.mend": (
        "empieza con la línea learner,name,class y pon una persona en cada línea: ann7,Ana Ruiz,turno de día"
    ),
    "roster.taken": "Personas en la lista ahora: {count}.",
    "note.taken": "Anotado.",
    "note.void": "no cuenta",
    "note.comment": "comentario",
    "note.answer": "también vale",
    "keep.taken": "{title}: se guarda hasta {day}.",
    "delete.ask_learner": "¿Borro todo lo de {learner}? No hay vuelta atrás.",
    "delete.ask_sets": "¿Borro todos los resultados de estos conjuntos ({count}): {titles}? No hay vuelta atrás.",
    "delete.done": "Intentos borrados: {count}.",
    "backup.done": "Filas guardadas en {path}: {count}",
    "restore.done": "Filas restauradas: {count}.",
    "delivery.done": "Acciones entregadas: {count}. Siguen esperando: {waiting}.",
    "delivery.forked": (
        "El intento {attempt} se continuó en dos puestos. Se guardan los dos, y este se queda en este equipo."
    ),
    "class.circuit_passes": "el circuito está bien",
    "class.group": "un grupo entero",
    "class.two_faults": "dos averías",
    "counts.first": "cuenta el primer intento",
    "counts.best": "cuenta el mejor intento",
    "counts.last": "cuenta el último intento",
    "xapi.question": "¿Dónde está la avería?",
    "report.title": "{title}: lo que oye la clase",
    "report.rule": (
        "Las notas van sobre 100: la media de los casos según su peso. De cada caso, un {share:.0f} % viene de la "
        "seguridad (100 menos 100 veces la puntuación de Brier). Un caso sin entregar cuenta cero. Si hay varios "
        "intentos, {counts}."
    ),
    "report.counts": "Aprendices: {learners}. Resultados que cuentan: {results}. Casos de cada uno: {size}.",
    "report.mean": "Nota media {mean:.1f}. Llegaron a {passes_at:.0f}: {passed} de {learners} aprendices.",
    "report.unsupported": "Sin los aprendices que tienen ajustes de apoyo, la media es {mean:.1f}.",
    "report.voided": "Resultados que ha quitado el instructor: {count}.",
    "report.confused": "{truth} → {said}",
    "report.play": "{first} y luego {second}",
    "report.alpha": "Fiabilidad (alfa de Cronbach, n={count}): {value:.2f} {rough}",
    "report.alpha_hidden": "La fiabilidad necesita al menos diez aprendices con todos los casos. Aquí hay {count}.",
    "report.rough": "(aproximada: menos de 30 aprendices)",
    "report.word.evident": (
        "En un conjunto sellado, quien tiene la contraseña puede ver si alguien lo manipuló. El sello no puede "
        "impedirlo."
    ),
    "report.word.teach": "Qué enseñar ahora",
    "report.word.slip": "qué falló",
    "report.word.slips": "Qué falló, por su número en la tabla",
    "report.word.often": "cuántas veces",
    "report.word.sure": "según la seguridad",
    "report.word.findings": "dictámenes equivocados",
    "report.word.most_confused": "lo más confundido (real → respondido)",
    "report.word.play": "oír uno tras otro",
    "report.word.no_slips": "Todos los dictámenes fueron correctos.",
    "report.word.marks": "Notas",
    "report.word.mark": "nota",
    "report.word.learner": "aprendiz",
    "report.word.learners": "aprendices",
    "report.word.passed": "aprobado",
    "report.word.right": "parte bien",
    "report.word.right_of": "bien de todos",
    "report.word.solid": "siempre bien",
    "report.word.weak": "mal al menos una vez",
    "report.word.path": "minutos del mejor camino como parte de los del aprendiz",
    "report.word.supported": "con apoyo",
    "report.word.yes": "sí",
    "report.word.no": "no",
    "report.word.more_learners": "Hay más aprendices en el libro de notas:",
    "report.word.places": "Lugares y cilindros que se confundieron",
    "report.word.places_how": "Las filas son la verdad y las columnas las respuestas. Lo correcto va en negrita.",
    "report.word.cylinders_how": "Cilindros, en los casos con avería:",
    "report.word.truth": "real",
    "report.word.said": "respondido",
    "report.word.others": "otros",
    "report.word.all": "todos",
    "report.word.detection": "Avería o ninguna",
    "report.word.hits": "Averías que se reconocieron como tales:",
    "report.word.alarms": "Circuitos buenos que se dieron por averiados:",
    "report.word.calibration": "Cuánta seguridad y cuántos aciertos",
    "report.word.certainty": "seguridad",
    "report.word.count": "veces",
    "report.word.effort": "Trabajo en cada caso",
    "report.word.plays": "Sonidos oídos, mediana:",
    "report.word.readings": "Lecturas hechas, mediana:",
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
        "La discriminación dice si la nota de un caso va con las demás notas del aprendiz. Solo cuentan quienes "
        "tienen todos los casos. Con menos de 10 se oculta y con menos de 30 es aproximada. Si cada aprendiz sortea "
        "sus casos, un número es una línea del conjunto. La tabla de abajo suma por clase de avería."
    ),
    "report.word.class": "clase de avería",
    "report.word.notes": "Notas del instructor",
    "report.word.made": "Escrito",
    "wrong.note_needs_text": "Una nota necesita algo de texto.",
    "mend.note_needs_text": "Di por qué en pocas palabras.",
    "wrong.no_answer": "'{words}' no es una avería que pueda tener un motor de este conjunto.",
    "mend.no_answer": (
        "Escribe cilindros, lugar y tipo, por ejemplo: 3 pass_through_connector open. O escribe: circuit_passes."
    ),
    "wrong.which_set": "'{named}' no dice a qué conjunto te refieres.",
    "mend.which_set": "Indica uno de estos: {sets}.",
    "wrong.delete_what": "Di una sola cosa que borrar.",
    "mend.delete_what": "Usa --learner, --set o --overdue.",
    "wrong.no_store_url": "Este equipo no conoce ningún almacén común.",
    "mend.no_store_url": "Indícalo con --store, o ponlo en los ajustes.",
    "wrong.nothing_to_bundle": "{learner} no ha hecho este conjunto en este equipo.",
    "mend.nothing_to_bundle": "Revisa el nombre y el conjunto.",
    "wrong.store_not_empty": "En {place} ya hay registros.",
    "mend.store_not_empty": "Restaura en una carpeta vacía: --data CARPETA.",
    "wrong.backup_damaged": "{file} no es una copia de seguridad, o está dañada.",
    "mend.backup_damaged": "Usa otra copia.",
    "wrong.backup_version": "{file} es de la versión {version}, y este programa lee la {known}.",
    "mend.backup_version": "Restáurala con el programa que la hizo, y actualiza después.",
    "report.word.path_how": (
        "Más de 100 % en la última columna son menos minutos que el mejor camino. Ese aprendiz nombró la avería antes "
        "de tenerla demostrada."
    ),
    "report.repeated": (
        "Resultados que no cuentan, porque el aprendiz ya había entregado ese mismo caso: {count} ({who}). Fue en "
        "otro puesto o tras un reinicio. Pregunta por qué."
    ),
    "mark.to_settle": (
        "Preguntas que aclarar con los aprendices antes de que cuenten las notas: {count}. Están en el informe de "
        "clase."
    ),
    "report.word.settle": "Preguntas para los aprendices",
    "report.word.settle_how": (
        "Pregunta a estos aprendices antes de que cuenten las notas. Puede haber un buen motivo, como un reloj mal "
        "puesto. Las horas son UTC."
    ),
    "settle.clock_back": "{who}, caso {item}: el reloj del puesto saltó atrás de {before} a {at}.",
    "settle.looked_back": "{who} abrió un repaso el {at} y después siguió trabajando.",
    "settle.before_opening": "{who}, caso {item}: con fecha {at}, antes de que se abriera el conjunto.",
    "settle.ahead": "{who}, caso {item}: entregado el {at}, que según el reloj de este equipo aún no ha llegado.",
    "settle.unguarded": "Donde trabajaron estos aprendices, otros programas podían leer el examen ({count}): {who}.",
    "mark.altered": "sus pasos se cambiaron después",
    "roster.twice": "con {learner} dos veces",
    "roster.each_once": "cada código una vez",
    "delivery.refused": "El almacén común no puede aceptar el intento {attempt}. Queda guardado aquí.",
    "wrong.no_results_yet": "Aquí todavía no se han recogido resultados.",
    "mend.no_results_yet": "Recoge algunos primero: injector-trainer records collect.",
    "wrong.no_learner": "{learner} no tiene resultados aquí ni está en la lista.",
    "mend.no_learner": "Revisa el código. Las mayúsculas cuentan.",
    "wrong.day_is_over": "{day} ya pasó.",
    "mend.day_is_over": "Indica un día que esté por llegar.",
    "wrong.regrade_drawn": "El caso {item} se sorteó, así que cada aprendiz pudo tener uno distinto.",
    "mend.regrade_drawn": "Anúlalo a los aprendices afectados: injector-trainer records void.",
    "doctor.shared": "{place}, acciones que esperan aquí: {waiting}",
    "collect.claims": "{file}: {fate}; dice que es de {learner}",
    "wrong.store_damaged": "Los registros de {place} están dañados: {reason}. No se ha cambiado nada.",
    "mend.store_damaged": (
        "Copia ese archivo a un lugar seguro. Después restaura tu última copia de seguridad en una carpeta vacía: "
        "injector-trainer --data CARPETA records restore COPIA."
    ),
    "damage.no_version": "no dicen de qué versión son",
    "wrong.attempt_damaged": (
        "El intento {attempt} de {place} está dañado: no se puede leer el paso {number}. No se ha cambiado nada, y "
        "tus otros intentos están bien."
    ),
    "mend.attempt_damaged": (
        "Si es de un conjunto, da toda la carpeta de registros a tu instructor, que puede calificar el resto."
    ),
    "wrong.set_damaged": "Los resultados de este conjunto en {place} están dañados.",
    "mend.set_damaged": "Califica otra vez el conjunto desde su archivo: injector-trainer records mark --set ARCHIVO.",
    "wrong.results_damaged": "Más de {most} resultados de este conjunto están dañados.",
    "mend.results_damaged": (
        "Califícalos otra vez desde los intentos: injector-trainer records mark --set ARCHIVO --again."
    ),
    "wrong.not_shredded": (
        "Los intentos se han borrado. Pero el archivo {place} está dañado y no se pudo quitar su rastro: {reason}."
    ),
    "mend.not_shredded": (
        "Haz una copia de seguridad, restáurala en una carpeta vacía y sigue allí. Después borra tú este archivo."
    ),
    "damage.no_tables": "no se puede leer la lista de sus tablas",
    "damage.not_closed": "el archivo no se cerró bien y hay partes que ya no encajan",
    "damage.no_identity": "falta el nombre de este puesto",
    "damage.left_out": (
        "Dañado y dejado fuera: {count} ({which}). Todo lo demás se leyó y no se borró nada. Una copia anterior quizá "
        "los tenga."
    ),
    "restore.left_out": "Filas que se dejaron fuera porque no encajan con las demás: {count}.",
    "backup.left_out": "Filas dañadas que quedaron fuera de la copia: {count}. Siguen en los registros.",
}
