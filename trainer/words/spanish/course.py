"""Las frases de la práctica que se adapta: qué sigue y por qué, lecciones, progreso."""

from __future__ import annotations

TEXTS: dict[str, str] = {
    "skill.hearing": "oído",
    "skill.numbering": "numeración",
    "skill.codes": "códigos",
    "skill.measuring": "medición",
    "skill.reasoning": "razonamiento",
    "skill.limits": "límites de la prueba",
    "skill.hearing.what": "tenue, apagado, débil, parejo; qué turno; grupos enteros",
    "skill.numbering.what": "números y lugares; orden numérico, no de encendido",
    "skill.codes.what": "qué dice un código y qué no",
    "skill.measuring.what": "dónde, qué lado, qué es un buen valor",
    "skill.reasoning.what": "qué prueba sigue, cuándo parar, hallar un desliz",
    "skill.limits.what": "lo que una prueba pareja no muestra",
    "skill.beginning": "recién empezado: pocas respuestas para decir algo",
    "skill.growing": "en progreso: lo llano va bien, lo difícil todavía no",
    "skill.steady": "firme: acierta casi todo lo que llega",
    "skill.strong": "fuerte: acierta también lo difícil",
    "task.case": "un caso en el banco",
    "task.ear": "una pregunta para el oído",
    "task.numbering": "una pregunta de numeración",
    "task.codes": "una pregunta de códigos",
    "task.meter": "una pregunta de lecturas",
    "task.reasoning": "una pregunta de razonamiento",
    "task.limits": "una pregunta de límites",
    "task.job_card": "hallar el desliz",
    "class.circuit_passes": "circuitos que pasan",
    "class.group": "averías de un grupo entero",
    "class.two_faults": "dos averías a la vez",
    "class.drive_module": "averías del módulo de mando",
    "class.engine_harness": "averías del cableado del motor",
    "class.pass_through_connector": "averías del conector pasamuros",
    "class.under_cover_harness": "averías del cableado bajo la tapa",
    "class.solenoid_coil": "averías de la bobina",
    "class.armature": "averías de la armadura",
    "class.module_power": "averías de batería y alimentación del módulo",
    "subject.ear.which": "qué turnos no son parejos",
    "subject.ear.what": "cómo suena un turno",
    "subject.ear.hum": "de quién es el zumbido",
    "subject.ear.even": "cómo suena un turno parejo",
    "subject.ear.weak": "cómo suena un turno débil",
    "subject.ear.dull": "cómo suena un turno apagado",
    "subject.ear.very_faint": "cómo suena un turno muy tenue",
    "subject.ear.nothing": "cómo suena un turno vacío",
    "subject.numbering.order": "orden numérico",
    "subject.numbering.counted": "contar con la ráfaga",
    "subject.numbering.place": "dónde está un número",
    "subject.numbering.shared": "qué comparten los números",
    "subject.numbering.backwards": "contar hacia atrás",
    "subject.codes.says": "qué prueba un código",
    "subject.codes.could": "qué podría dejar un código",
    "subject.codes.old": "códigos viejos",
    "subject.meter.says": "qué dice una lectura",
    "subject.meter.where": "dónde entre lecturas",
    "subject.meter.slip": "qué vale una lectura",
    "subject.reasoning.next": "la próxima prueba",
    "subject.reasoning.stop": "cuándo parar",
    "subject.limits.still": "qué podría fallar todavía",
    "subject.limits.shown": "qué queda descartado",
    "subject.limits.after": "qué hacer entonces",
    "subject.job_card.slip": "el paso equivocado de una hoja",
    "why.sure_wrong": "Por qué esto: estabas seguro y no era así — {about}.",
    "why.refute": "Por qué esto: una idea, otra vez — {about}.",
    "why.revisit": "Por qué esto: falló antes y le ha llegado el día — {about}.",
    "why.probe": "Por qué esto: algo que muchos confunden, para ver dónde estás — {about}.",
    "why.weakest": "Por qué esto: a este nivel es lo que más enseña ahora — {about}.",
    "why.asked": "Tú lo has pedido.",
    "course.difficulty": "dificultad {step} de 5",
    "course.next": "Sigue: {what}",
    "course.right": "Correcto.",
    "course.wrong": "No es así. Lo correcto es: {said}",
    "course.rule": "La regla: {rule}",
    "course.sure_before": "¿Qué tan seguro estás?",
    "course.ten": "{minutes} minutos: un buen momento para parar. Lo pendiente vuelve solo.",
    "course.twenty": "{minutes} minutos de práctica: deja descansar los oídos antes de seguir.",
    "course.prepare": "Preparando la práctica de estos motores; una vez en este equipo.",
    "course.listen": "oír: {label}",
    "course.lesson": "Lección {number} de {count}",
    "course.lesson.1": "el primer caso, resuelto paso a paso",
    "course.lesson.2": "el segundo caso, empezado, para que lo termines tú",
    "course.lesson.3": "el tercer caso, solo",
    "lesson.intro.1": "Este caso se resuelve para ti. Cada paso dice qué se hace y por qué; tú oyes y ves lo que da.",
    "lesson.intro.2": (
        "La prueba se oyó y los códigos se leyeron por ti. Sigue desde ahí: mide, decide, nombra el lugar."
    ),
    "lesson.intro.3": "Este es solo tuyo.",
    "lesson.step": "Paso {number} de {count}",
    "lesson.hear": (
        "Primero la prueba entera: la ráfaga, luego cada cilindro en orden numérico. Escucha el turno que no golpea."
    ),
    "lesson.slots": (
        "Un turno fue solo un zumbido tenue. Óyelo junto a su vecino: turno 2, luego 3. El zumbido es de los otros; "
        "el 3 no lleva nada."
    ),
    "lesson.codes": "Lee los códigos: dicen qué vio el módulo en qué circuito, y nunca en qué parte de él.",
    "lesson.dead": (
        "Sin contacto. Espera. Voltios en reposo en el terminal que vas a tocar: menos de uno, sin "
        "tensión. Ahora los ohmios valen."
    ),
    "lesson.pair": (
        "Ahora el medidor, primero desde fuera. Conector del módulo quitado, ohmios entre alimentación y retorno "
        "3: OL. El circuito está abierto más allá de este conector, así que no es el módulo."
    ),
    "lesson.mate": (
        "Mide al lado un vecino sano: el 1 muestra lo que marca aquí un circuito entero, y que el medidor está bien."
    ),
    "lesson.wire_feed": "El cableado del motor, hilo de alimentación de punta a punta: un hilo bueno marca casi nada.",
    "lesson.wire_return": "Y su hilo de retorno. También bueno: el cableado del motor queda descartado.",
    "lesson.cover": (
        "Desde el lado de la tapa del conector pasamuros: bueno. Las dos mitades están enteras; queda lo que las "
        "une, el contacto del retorno."
    ),
    "lesson.look": (
        "Con el conector abierto, mira sus terminales. Un pin quemado o hundido se vería aquí. No ves ninguno: lo "
        "abierto es el propio contacto."
    ),
    "lesson.finding": (
        "Las pruebas dejan un solo diagnóstico: abierto en el conector pasamuros, retorno, cilindro 3. Ahora se da "
        "por bueno; luego viene el repaso."
    ),
    "lesson.go_on": "hacer este paso",
    "lesson.take_over": "seguir por mi cuenta",
    "tour.sounds": "Paseo de sonidos",
    "tour.sounds.about": (
        "Ejemplos rotulados por parejas que difieren en una cosa. No se pregunta nada; oye los dos y sigue."
    ),
    "tour.pair": "Pareja {number} de {count}",
    "tour.even_weak": "parejo junto a débil: el clic está, pero sin filo",
    "tour.weak_dull": "débil junto a apagado: el débil todavía golpea, el apagado solo retumba",
    "tour.dull_very_faint": "apagado junto a muy tenue: corriente sin clic, junto a ninguna corriente",
    "tour.very_faint_nothing": (
        "muy tenue junto a nada: el zumbido de los otros, junto a un turno en que no se alimenta nada"
    ),
    "tour.one_group": "un cilindro junto a un grupo entero: lo que falla junto comparte una pieza",
    "tour.quiet_loud": (
        "el mismo zumbido en un taller callado y en uno ruidoso: el fondo lo tapa, la avería es la misma"
    ),
    "progress.skills": "Habilidades",
    "progress.counts": "{right} aciertos de {count}",
    "progress.interval": (
        "estimación {mean:+.1f} (0 es el medio), entre {low:+.1f} y {high:+.1f} con nueve de diez probabilidades"
    ),
    "progress.waits": "Pendiente de repasar: {count}, de ello para hoy: {due}",
    "progress.waits.line": "{what}: {when}",
    "progress.waits.now": "para hoy",
    "progress.waits.days": "en {days:.0f} días",
    "progress.waits.sure": "(estabas seguro)",
    "progress.over_time": "A lo largo de tus respuestas, las primeras a la izquierda: una línea por habilidad",
    "progress.mark.steady": "firme",
    "progress.mark.strong": "fuerte",
    "progress.ideas": "Ideas para mirar otra vez",
    "practice.title": "Práctica de {who}",
    "practice.minutes": "{minutes:.0f} min en esta sesión",
    "practice.go": "siguiente",
    "practice.sounds": "paseo de sonidos",
    "practice.rematch": "revancha de un minuto",
    "practice.drills": "O solo un tipo",
    "practice.record": "Mi registro como archivo",
    "practice.record.take": "incorporar",
    "practice.record.path": "ruta de un archivo de registro",
    "practice.carried": "Registro escrito: {path} ({count} intentos)",
    "practice.taken": "Registro incorporado: {new} intentos nuevos, {known} ya conocidos, {longer} continuados",
    "practice.help": (
        "Intro sigue · 'skip' salta las lecciones, o 'lesson 1' · 'sounds' paseo de sonidos · 'rematch' revancha · "
        "'drill TIPO' (ear, numbering, codes, meter, reasoning, limits, job_card) · 'progress' · 'leave'"
    ),
    "practice.prompt": "práctica>",
    "practice.answer": "{choice}, 'hear 1' para oír otra vez, o 'leave':",
    "practice.sure": "¿seguro? 1 {first}, 2 {second}, 3 {third}:",
    "practice.answer_silent": "{choice}, o 'leave':",
    "practice.answers": "Escribe {choice} para responder, o 'leave' para dejarlo abierto.",
    "practice.making": "Un momento: se está preparando esta pregunta.",
    "practice.left_open": "El ejercicio espera donde está.",
    "practice.resumed": "Dejaste este abierto.",
    "practice.rematch.pair": "Revancha: {first} contra {second}, cuatro sonidos.",
    "practice.rematch.over": "Fin de la revancha: {right} aciertos de {count}.",
    "waiting.practise": "practicar",
    "waiting.lesson": "lección {number}: {what}",
    "tour.slot": "turno {number}, {heard}, fondo a {bed:.0f} dB(A)",
    "tour.whole": "la prueba entera, {cylinders} distintos",
    "lesson.again": (
        "Vuelve a enchufar todo y repite la prueba. Un contacto solo sucio habría vuelto; el turno 3 sigue zumbando: "
        "ahora está probado."
    ),
    "lesson.done": "hecho: {what}",
    "record.a_record": "un registro de alumno escrito por este programa",
    "record.found.no_record": "ningún registro al comienzo",
    "record.found.damaged": "dañado o cortado: su suma no coincide",
    "record.found.of_another": "el registro de {of}",
    "record.mend.a_record_of": "Escríbelo de nuevo en la otra máquina; aquí no se cambió nada",
    "record.mend.copy_again": "Cópialo otra vez desde donde se escribió; aquí no se cambió nada",
    "record.mend.be_that_learner": "Incorpóralo como {of} (--learner), de quien es; aquí no se cambió nada",
    "practice.record.write": "escribir mi registro",
    "practice.record.nowhere": "En este equipo no se guarda nada: no hay dónde escribir.",
    "exercise.engine_hidden": "El motor se muestra cuando hayas respondido.",
    "exercise.mark_right": "← correcto",
    "tour.before": "anterior",
    "waiting.choose": "elegir qué practicar",
    "waiting.due": "{count} para repasar hoy",
    "stage.practice": "Preparando la práctica: {percent:.0f} %",
    "stage.exercise": "Preparando la pregunta ...",
    "practice.left": "Hasta aquí; lo que hiciste queda guardado.",
    "practice.apart": "Trabajados distinto en las dos máquinas, así que queda lo de aquí: {count}.",
    "why.case.sure_wrong": "Por qué esto: estabas seguro en un caso parecido, y no era así.",
    "why.case.refute": "Por qué esto: una idea, otra vez, en un caso entero.",
    "why.case.revisit": "Por qué esto: un caso parecido falló antes y le ha llegado el día.",
    "why.case.probe": "Por qué esto: un caso entero con algo que muchos confunden.",
    "why.case.weakest": "Por qué esto: un caso entero junta las habilidades, a tu nivel.",
    "progress.waits.day": "mañana",
    "record.found.unknown": "tiene algo que esta versión del programa no conoce",
    "practice.lesson_keys": (
        "En una lección Intro hace el paso y 'skip' deja las lecciones; Intro sigue ahora con esta."
    ),
    "why.rematch": "Revancha, sonido {number} de {count}: {first} contra {second}.",
    "skill.low": "al principio: las sencillas aún no salen solas",
}
