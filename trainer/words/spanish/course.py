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
    "skill.numbering.what": "números y lugares; orden numérico, no el de encendido",
    "skill.codes.what": "qué dice un código y qué no dice",
    "skill.measuring.what": "dónde, en qué lado, qué valor es bueno",
    "skill.reasoning.what": "qué prueba toca ahora, cuándo parar, encontrar un error",
    "skill.limits.what": "lo que una prueba pareja no muestra",
    "skill.beginning": "recién empezado: pocas respuestas para saberlo",
    "skill.growing": "va bien: lo fácil sale, lo difícil todavía no",
    "skill.steady": "firme: casi siempre acierta",
    "skill.strong": "fuerte: acierta también lo difícil",
    "task.case": "un caso en el banco",
    "task.ear": "pregunta de oído",
    "task.numbering": "pregunta de numeración",
    "task.codes": "pregunta de códigos",
    "task.meter": "pregunta de lecturas",
    "task.reasoning": "pregunta de razonamiento",
    "task.limits": "pregunta sobre los límites de la prueba",
    "task.job_card": "encuentra el error",
    "class.circuit_passes": "circuitos que están bien",
    "class.group": "averías de un grupo entero",
    "class.two_faults": "dos averías a la vez",
    "class.drive_module": "averías del módulo de mando",
    "class.engine_harness": "averías del cableado del motor",
    "class.pass_through_connector": "averías del conector pasante",
    "class.under_cover_harness": "averías del cableado bajo tapa",
    "class.solenoid_coil": "averías de la bobina",
    "class.armature": "averías de la armadura",
    "class.module_power": "averías de batería y alimentación del módulo",
    "subject.ear.which": "qué turnos no suenan parejos",
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
    "subject.codes.says": "qué demuestra un código",
    "subject.codes.could": "qué pudo dar un código",
    "subject.codes.old": "códigos viejos",
    "subject.meter.says": "qué dice una lectura",
    "subject.meter.where": "dónde está el corte, según las lecturas",
    "subject.meter.slip": "qué vale una lectura",
    "subject.reasoning.next": "la prueba que toca ahora",
    "subject.reasoning.stop": "cuándo parar",
    "subject.limits.still": "qué podría fallar todavía",
    "subject.limits.shown": "qué queda descartado",
    "subject.limits.after": "qué hacer tras una prueba pareja",
    "subject.job_card.slip": "el paso equivocado de una hoja de trabajo",
    "why.sure_wrong": "Aquí tenías mucha seguridad y fallaste — {about}.",
    "why.refute": "Una idea que conviene repasar — {about}.",
    "why.revisit": "Esto lo fallaste antes, así que aquí está otra vez — {about}.",
    "why.probe": "Mucha gente falla aquí, a ver qué tal tú — {about}.",
    "why.weakest": "Este es tu nivel ahora mismo — {about}.",
    "why.asked": "Tú lo has pedido.",
    "course.difficulty": "dificultad {step} de 5",
    "course.next": "Ahora: {what}",
    "course.right": "Correcto.",
    "course.wrong": "No es así. «{said}» es la respuesta correcta.",
    "course.rule": "Recuerda: {rule}",
    "course.sure_before": "¿Cuánta seguridad tienes?",
    "course.ten": "{minutes} minutos: buen momento para parar. Lo que fallaste volverá cuando toque.",
    "course.twenty": "{minutes} minutos de práctica. Deja descansar el oído antes de seguir.",
    "course.prepare": "Preparando la práctica de estos motores. En cada equipo pasa una sola vez.",
    "course.listen": "Oír: {label}",
    "course.lesson": "Lección {number} de {count}",
    "course.lesson.1": "el primer caso, resuelto paso a paso",
    "course.lesson.2": "el segundo caso, empezado; lo terminas tú",
    "course.lesson.3": "el tercer caso, por tu cuenta",
    "lesson.intro.1": (
        "Este caso lo resolvemos nosotros. Cada paso dice qué hacemos y por qué, y tú oyes y ves el resultado."
    ),
    "lesson.intro.2": (
        "La prueba ya está hecha. Los códigos se han leído y borrado, y leído otra vez tras otra prueba. Sigue tú "
        "desde ahí: mide, decide, nombra el lugar."
    ),
    "lesson.intro.3": "Este es tuyo.",
    "lesson.taken_over": "Ahora llevas tú el caso. Sigue desde aquí por tu cuenta.",
    "lesson.step": "Paso {number} de {count}",
    "lesson.hear": (
        "Haz primero la prueba entera: la ráfaga y luego cada cilindro en orden numérico. Busca con el oído el turno "
        "que no hace clic."
    ),
    "lesson.slots": (
        "Un turno era solo un zumbido tenue. Óyelo junto a su vecino: turno 2 y luego turno 3. El zumbido viene de "
        "los otros inyectores. Al número 3 no le llega corriente."
    ),
    "lesson.codes": (
        "Lee los códigos y luego bórralos. Dicen en qué circuito vio el módulo una avería. Nunca dicen en qué punto."
    ),
    "lesson.cleared_test": (
        "Repite la prueba, ahora con la memoria vacía. Un código viejo no vuelve. Una avería que está ahí pone otra "
        "vez su código."
    ),
    "lesson.codes_again": "Lee los códigos una vez más. Un código que ha vuelto es de una avería que está ahí ahora.",
    "lesson.dead": (
        "Quita el contacto. Espera. Mide voltios en reposo en el terminal que vas a tocar. Con menos de un voltio no "
        "hay tensión, y ya puedes medir ohmios."
    ),
    "lesson.pair": (
        "Ahora el multímetro, empezando por fuera. Quita el conector del módulo y mide ohmios de la alimentación al "
        "retorno 3: OL. El circuito está abierto más allá de este conector, así que el módulo no es."
    ),
    "lesson.mate": (
        "Mide un cilindro bueno para comparar. El número 1 muestra qué marca aquí un circuito bueno, y que el "
        "multímetro funciona."
    ),
    "lesson.wire_feed": (
        "Ahora el cable de alimentación del cableado del motor, de punta a punta. Un cable bueno marca casi nada."
    ),
    "lesson.wire_return": (
        "Ahora el cable de retorno. También está bien, así que el cableado del motor queda descartado."
    ),
    "lesson.cover": (
        "Mide desde el lado de la tapa del conector pasante: bien. Las dos mitades están enteras, así que solo queda "
        "el contacto del retorno que las une."
    ),
    "lesson.look": (
        "Con el conector abierto, mira sus terminales. Un pin quemado o hundido se vería aquí. No hay ninguno, así "
        "que lo abierto es el propio contacto."
    ),
    "lesson.finding": (
        "Los indicios dejan un solo dictamen: abierto en el conector pasante, lado de retorno, cilindro 3. Ahora lo "
        "entregamos, y luego viene el repaso."
    ),
    "lesson.go_on": "Hacer este paso",
    "lesson.take_over": "Seguir por mi cuenta",
    "tour.sounds": "Paseo de sonidos",
    "tour.sounds.about": (
        "Ejemplos con su nombre, por parejas que se diferencian en una cosa. No hay preguntas. Oye los dos y sigue."
    ),
    "tour.pair": "Pareja {number} de {count}",
    "tour.even_weak": "parejo junto a débil: el débil todavía hace clic, pero más flojo",
    "tour.weak_dull": "débil junto a apagado: el débil todavía hace clic, el apagado solo da un golpe sordo",
    "tour.dull_very_faint": "apagado junto a muy tenue: corriente sin clic, junto a ninguna corriente",
    "tour.very_faint_nothing": (
        "muy tenue junto a nada: el zumbido de los demás, junto a un turno en que no se acciona nada"
    ),
    "tour.one_group": "un cilindro junto a un grupo entero: los inyectores que fallan a la vez comparten una pieza",
    "tour.quiet_loud": (
        "el mismo zumbido en un taller tranquilo y en uno ruidoso: el ruido lo tapa, pero la avería es la misma"
    ),
    "progress.skills": "Habilidades",
    "progress.counts": "{right} de {count} bien",
    "progress.interval": "estimación {mean:+.1f} (0 es lo normal), casi seguro entre {low:+.1f} y {high:+.1f}",
    "progress.waits": "Por repasar: {count}. Para hoy: {due}.",
    "progress.waits.line": "{what}: {when}",
    "progress.waits.now": "para hoy",
    "progress.waits.days": "en {days:.0f} días",
    "progress.waits.sure": "(con mucha seguridad)",
    "progress.over_time": "Tus respuestas en el tiempo, las más viejas a la izquierda, una línea por habilidad",
    "progress.mark.steady": "firme",
    "progress.mark.strong": "fuerte",
    "progress.ideas": "Ideas que conviene repasar",
    "practice.title": "Práctica de {who}",
    "practice.minutes": "{minutes:.0f} min en esta sesión",
    "practice.go": "Siguiente",
    "practice.sounds": "Paseo de sonidos",
    "practice.rematch": "Revancha de un minuto",
    "practice.drills": "O solo un tipo",
    "practice.record": "Mi registro como archivo",
    "practice.record.take": "Importar",
    "practice.record.path": "Ruta de un archivo de registro",
    "practice.carried": "Registro guardado: {path} (intentos: {count}).",
    "practice.taken": "Registro importado. Intentos nuevos: {new}. Ya conocidos: {known}. Continuados: {longer}.",
    "practice.help": (
        "Pulsa Intro para seguir. 'skip' deja las lecciones, 'lesson 1' abre una. 'sounds' es el paseo de sonidos, "
        "'rematch' una revancha de un minuto. 'drill KIND' te da un solo tipo: ear, numbering, codes, meter, "
        "reasoning, limits o job_card. También hay 'progress' y 'leave'."
    ),
    "practice.prompt": "práctica>",
    "practice.answer": "{choice}, 'hear 1' para oír otra vez, o 'leave':",
    "practice.sure": "¿Cuánta seguridad? 1 {first}, 2 {second}, 3 {third}:",
    "practice.answer_silent": "{choice}, o 'leave':",
    "practice.answers": "Escribe {choice} para responder, o 'leave' para dejarlo abierto.",
    "practice.making": "Un momento: se está preparando esta pregunta.",
    "practice.left_open": "Este ejercicio te espera.",
    "practice.resumed": "Este lo dejaste a medias, así que aquí está otra vez.",
    "practice.rematch.pair": "Revancha: {first} contra {second}, cuatro sonidos.",
    "practice.rematch.over": "Se acabó la revancha: {right} de {count} bien.",
    "waiting.practise": "Practicar",
    "waiting.lesson": "Lección {number}: {what}",
    "tour.slot": "turno {number}, {heard}, fondo a {bed:.0f} dB(A)",
    "tour.whole": "la prueba entera, sin sonar parejos: {cylinders}",
    "lesson.again": (
        "Conecta todo otra vez y repite la prueba. Un contacto sucio volvería a funcionar ahora. El turno 3 sigue "
        "zumbando, así que ya está demostrado."
    ),
    "lesson.done": "Hecho: {what}",
    "record.a_record": "un registro de aprendiz escrito por este programa",
    "record.found.no_record": "no empieza como un registro",
    "record.found.damaged": "dañado o cortado: su suma de control no coincide",
    "record.found.of_another": "el registro de {of}",
    "record.mend.a_record_of": "Escríbelo otra vez en el otro equipo; aquí no se ha cambiado nada",
    "record.mend.copy_again": "Cópialo otra vez de donde se escribió; aquí no se ha cambiado nada",
    "record.mend.be_that_learner": "Impórtalo como {of} (--learner), de quien es; aquí no se ha cambiado nada",
    "practice.record.write": "Guardar mi registro",
    "practice.record.nowhere": "En este equipo no se guarda nada, así que el registro no se puede guardar.",
    "exercise.engine_hidden": "Verás el motor cuando hayas respondido.",
    "exercise.mark_right": "← respuesta correcta",
    "tour.before": "Anterior",
    "waiting.choose": "Elegir qué practicar",
    "waiting.due": "{count} para repasar hoy",
    "stage.practice": "Preparando la práctica: {percent:.0f} %",
    "stage.exercise": "Preparando la pregunta ...",
    "practice.left": "Lo dejas aquí. Tu trabajo está guardado.",
    "practice.apart": "Estos intentos fueron distintos en los dos equipos, así que se quedan los de aquí: {count}.",
    "why.case.sure_wrong": "En un caso como este tenías mucha seguridad y fallaste.",
    "why.case.refute": "Una idea que conviene repasar, en un caso entero.",
    "why.case.revisit": "Un caso como este lo fallaste antes, así que aquí tienes otro.",
    "why.case.probe": "Un caso entero con algo en lo que mucha gente falla.",
    "why.case.weakest": "Un caso entero junta lo que sabes, a tu nivel.",
    "progress.waits.day": "mañana",
    "record.found.unknown": "tiene algo que esta versión del programa no conoce",
    "practice.lesson_keys": (
        "En una lección, Intro hace el siguiente paso y 'skip' deja las lecciones. Pulsa Intro ahora para seguir con "
        "esta."
    ),
    "why.rematch": "Revancha, sonido {number} de {count}: {first} contra {second}.",
    "skill.low": "empezando: lo fácil todavía cuesta",
}
