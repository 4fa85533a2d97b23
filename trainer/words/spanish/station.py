"""Spanish: who, settings, sound set-up, words, the guide."""

TEXTS: dict[str, str] = {
    "who.title": "¿Quién trabaja?",
    "who.job": (
        "Oye una prueba de accionamiento de inyectores, reúne indicios, encuentra la avería y di cuánta seguridad "
        "tienes."
    ),
    "who.name": "Tu nombre o un código (sin contraseña; no sale de este equipo)",
    "who.second": "Segunda persona: una escucha y la otra mide. Cambiad de papel en cada caso.",
    "who.go": "Seguir",
    "who.two": "Dos en este banco",
    "who.one": "Uno en este banco",
    "who.empty": "Escribe primero un nombre o un código.",
    "waiting.title": "Hola, {who}",
    "waiting.begun": "Empezado y sin terminar",
    "waiting.code": "Número de trabajo, código de caso o archivo",
    "waiting.begin": "Empezar",
    "waiting.all": "Todos los casos",
    "waiting.hide": "Ocultar los casos",
    "waiting.case": "{title} · {engine} · dificultad {difficulty}",
    "waiting.done_before": " · ya hecho",
    "waiting.progress": "Mi progreso",
    "waiting.someone_else": "Otra persona",
    "common.free": "Banco libre",
    "common.setup": "Ajuste de sonido",
    "common.glossary": "Glosario",
    "common.settings": "Ajustes",
    "common.doctor": "Este equipo",
    "common.end": "Salir",
    "progress.title": "Progreso de {who}",
    "progress.count": "Casos terminados: {count}. Bien: {right}.",
    "progress.kinds": "Aciertos por tipo de avería",
    "progress.nothing": "Todavía no has terminado ningún caso.",
    "progress.of": "{right} de {count}",
    "progress.certainty": "Cuánta seguridad tenías y cuánto acertaste",
    "progress.said": "{said}: {right} de {count} bien",
    "settings.title": "Ajustes de este puesto",
    "settings.theme": "Colores",
    "settings.theme.dark": "Oscuro",
    "settings.theme.light": "Claro",
    "settings.language": "Idioma",
    "settings.language.en": "English",
    "settings.language.es": "Español",
    "settings.trace": "Dibujo del sonido durante la práctica",
    "settings.trace.fading": "Se desvanece según mejora tu oído",
    "settings.trace.shown": "Siempre a la vista",
    "settings.trace.off": "Nunca",
    "settings.scale": "Tamaño del texto (Ctrl + y Ctrl -)",
    "settings.device": "Salida de sonido",
    "settings.device_default": "La salida normal del sistema",
    "settings.level": "Volumen aquí: {level:.0f} dB. Solo lo subes tú.",
    "settings.station": (
        "Modo puesto: pantalla completa, listo para otra persona tras tres minutos sin uso y un PIN para salir"
    ),
    "settings.station_on": "Empezar el modo puesto",
    "settings.station_off": "Terminar el modo puesto",
    "settings.pin_short": "Usa al menos {count} cifras en el PIN.",
    "settings.damaged": (
        "Algunos ajustes de {path} están dañados: {which}. En su lugar se usan los valores normales. La próxima vez "
        "que se guarden ajustes, el archivo dañado queda como {aside}."
    ),
    "station.ask": "PIN de este puesto",
    "station.limits": (
        "El modo puesto ayuda a que la clase siga en lo suyo. No bloquea el equipo. Para eso usa la cuenta de quiosco "
        "del sistema."
    ),
    "station.leave": "Salir del programa",
    "station.wrong": "Ese no es el PIN.",
    "doctor.exam.memory_good": "otros programas de esta cuenta no pueden leer un examen en la memoria",
    "doctor.exam.memory_bad": "aquí otros programas de esta cuenta pueden leer un examen en la memoria",
    "doctor.exam.memory_mend": "Haz los exámenes en Linux, o vigila qué más se ejecuta en el puesto.",
    "doctor.exam.start_good": "un examen arranca sin los ajustes de Python de esta cuenta",
    "doctor.exam.start_bad": "los ajustes de Python de esta cuenta llegan al examen y pueden meter otro código en él",
    "doctor.exam.start_mend": "Instala el programa con pip e inicia los exámenes con: python -I -m trainer",
    "doctor.compiled": "compilado (rápido)",
    "doctor.not_compiled": "sin compilar: todo funciona, pero los sonidos y las pistas tardan más",
    "doctor.title": "Este equipo",
    "glossary.title": "Glosario",
    "stage.waiting": "Trabajando ...",
    "stage.sounding": "Calculando el sonido ...",
    "stage.codes": "Leyendo los códigos ...",
    "stage.measuring": "Midiendo ...",
    "stage.reasoning": "Calculando todas las averías posibles de este motor: {percent:.0f} %",
    "sound.silent": (
        "Aquí no hay salida de sonido. Los sonidos se escriben en archivos, que se borran al cerrar el programa. "
        "Todo lo demás funciona igual."
    ),
    "banner.unkept": (
        "Aquí no se guarda nada: tu trabajo se pierde al salir. Para guardarlo, abre el programa con --data CARPETA."
    ),
    "sound.to_file": "Guardado en {path}. Cópialo si quieres conservarlo.",
    "sound.void": "El equipo cortó el sonido, así que no cuenta.",
    "sound.again": "Oírlo otra vez, sin cargo",
    "sound.lost": (
        "La salida de sonido ha desaparecido. No se ha cargado tiempo. El sonido vuelve a empezar desde el principio "
        "del turno."
    ),
    "sound.go_on": "Probar otra vez",
    "sound.rest": "Llevas {minutes:.0f} minutos escuchando. Un descanso ayuda al oído.",
    "sound.level": "Nivel {level:.0f} dB",
    "setup.title": "Ajuste de sonido",
    "setup.why": (
        "Son unos noventa segundos. Muestra si aquí puedes oír el zumbido tenue. Puedes seguir sea cual sea el "
        "resultado."
    ),
    "setup.device": "Salida de sonido: {name}",
    "setup.begin": "Empezar",
    "setup.begin_headphones": "Empezar, con prueba de auriculares (40 s más)",
    "setup.step": "Pregunta {done} de {count}",
    "setup.ask.side": "¿De qué lado viene el clic?",
    "setup.ask.comfort": "Ajusta un nivel cómodo, nunca fuerte. Empieza bajo y solo lo subes tú.",
    "setup.ask.bed": "¿Oyes el ruido de fondo suave por encima del ruido de tu sala?",
    "setup.ask.hum": "¿Cuántos zumbidos tenues oyes en el ruido?",
    "setup.ask.low": "Dos sonidos cortos: ¿oíste los dos?",
    "setup.ask.phase": "Tres tonos: ¿cuál es el más flojo?",
    "setup.answer.side.left": "Izquierda",
    "setup.answer.side.right": "Derecha",
    "setup.answer.side.both": "Los dos",
    "setup.answer.side.none": "Nada",
    "setup.answer.comfort.comfortable": "Cómodo",
    "setup.answer.bed.yes": "Sí",
    "setup.answer.bed.barely": "Apenas",
    "setup.answer.bed.no": "No",
    "setup.answer.low.both": "Los dos",
    "setup.answer.low.first": "Solo el primero",
    "setup.answer.low.second": "Solo el segundo",
    "setup.answer.low.none": "Ninguno",
    "setup.level": "Nivel {level:.0f} dB",
    "setup.softer": "Más flojo",
    "setup.louder": "Más fuerte",
    "setup.again": "Oír otra vez",
    "setup.undo": "Retirar la última respuesta",
    "setup.leave": "Dejar el ajuste",
    "setup.result": "Lo que mostró el ajuste",
    "setup.once_more": "Repetirlo",
    "setup.none": "El sonido de este puesto todavía no se ha ajustado.",
    "setup.hum.ready": "Aquí oyes bien el zumbido.",
    "setup.hum.usable": "Aquí oyes el zumbido muy justo.",
    "setup.hum.not_heard": "Aquí no pudiste oír el zumbido.",
    "setup.hum.guessed": "Contaste zumbidos donde no había.",
    "setup.sides.stereo": "Los dos lados funcionan y están bien puestos.",
    "setup.sides.swapped": "Los lados están cambiados.",
    "setup.sides.mono": "Los dos lados suenan igual: mono.",
    "setup.sides.unsure": "No está claro cuál es cada lado.",
    "setup.bed.yes": "Oyes el ruido de fondo por encima del ruido de tu sala.",
    "setup.bed.barely": "Apenas oyes el ruido de fondo por encima del ruido de tu sala.",
    "setup.bed.no": "El ruido de tu sala tapa el ruido de fondo.",
    "setup.lows.all": "Aquí oyes los graves.",
    "setup.lows.no_lows": "Aquí faltan los graves, pero oyes el resto del zumbido.",
    "setup.lows.unsure": "No está claro si aquí oyes los graves.",
    "setup.headphones.likely": "Seguramente llevas auriculares.",
    "setup.headphones.unlikely": "Seguramente usas altavoces, o el sonido es mono.",
    "setup.advice.ready": "Listo. Puedes fiarte de lo que oyes aquí.",
    "setup.advice.usable": (
        "Sirve, y tus resultados llevan una nota. Ayudarían unos auriculares cerrados o un sitio más tranquilo."
    ),
    "setup.advice.not_heard": (
        "Aquí el silencio no quiere decir circuito muerto. Prueba con auriculares cerrados o en un sitio más "
        "tranquilo, o guíate por códigos y lecturas."
    ),
    "setup.advice.guessed": "Prueba otra vez en un sitio tranquilo. Cuenta solo los zumbidos seguros.",
    "term.actuation_test": "prueba de accionamiento",
    "meaning.actuation_test": (
        "El módulo de mando acciona todos los inyectores a la vez, y luego uno por uno en orden numérico."
    ),
    "term.slot": "turno",
    "meaning.slot": "El tiempo en que se acciona un cilindro, o todos.",
    "term.burst": "ráfaga (todos a la vez)",
    "meaning.burst": (
        "El primer turno: todos los inyectores a la vez. Suena más fuerte que un turno suelto y es lo que más carga "
        "la alimentación."
    ),
    "term.background": "corriente de fondo",
    "meaning.background": (
        "La corriente por los inyectores que no se accionan: hasta 2 A en cada uno; el accionado recibe de 8 a 10 A."
    ),
    "term.hum": "zumbido",
    "meaning.hum": (
        "El sonido muy tenue de la corriente de fondo. Si solo oyes eso, lo más probable es que el inyector accionado "
        "tenga el circuito abierto. Mide antes de decirlo."
    ),
    "term.even": "parejo",
    "meaning.even": (
        "Tan fuerte como en un motor sano, con pocos decibelios de diferencia. El circuito funciona ahora; una avería "
        "intermitente puede no estar dando la cara."
    ),
    "term.weak": "débil",
    "meaning.weak": "Hay clic, pero claramente más flojo que en los demás cilindros.",
    "term.dull": "apagado",
    "meaning.dull": "Hay corriente pero no clic, solo un golpe sordo.",
    "term.mate": "cilindro bueno",
    "meaning.mate": "Otro cilindro del mismo motor que funciona bien. Mídelo igual y sabrás qué valor es bueno aquí.",
    "term.zeroed": "puntas a cero",
    "meaning.zeroed": (
        "Junta las puntas y pon el multímetro a cero. Así la resistencia de los cables no entra en la lectura."
    ),
    "term.bed": "ruido de fondo",
    "meaning.bed": "El ruido constante del taller, detrás de todo. Si no oyes ni eso, es tu altavoz.",
    "term.module": "módulo de mando",
    "meaning.module": "La caja que acciona los inyectores con más de 100 V.",
    "term.feed": "lado de alimentación",
    "meaning.feed": "El cableado del módulo a la bobina. Los inyectores de una bancada suelen compartirlo.",
    "term.return": "lado de retorno",
    "meaning.return": (
        "El cableado de la bobina de vuelta al módulo. Cada inyector tiene el suyo, y el módulo mide en él la "
        "corriente."
    ),
    "term.break_point": "punto de corte",
    "meaning.break_point": (
        "Un sitio donde puedes abrir el circuito y medir: conector del módulo, conector pasante o conector del "
        "inyector."
    ),
    "term.pass_through": "conector pasante",
    "meaning.pass_through": "El conector que atraviesa la junta de la tapa. Es el que más falla.",
    "term.open": "OL",
    "meaning.open": "Fuera del alcance del multímetro: su corriente no tiene camino.",
    "term.load": "caída bajo carga",
    "meaning.load": (
        "Los voltios que se pierden en un tramo mientras pasa la corriente de mando. La corriente mínima del "
        "multímetro no muestra una unión floja."
    ),
    "term.insulation": "aislamiento a masa",
    "meaning.insulation": (
        "Lo bien aislado que está un cable del motor. Nunca lo midas a través de un módulo, un inyector o un "
        "calentador."
    ),
    "term.finding": "dictamen",
    "meaning.finding": "Lo que entregas: cilindros, lugar, lado, tipo y cuánta seguridad tienes.",
    "term.passes": "el circuito está bien",
    "meaning.passes": (
        "También es un dictamen. Nunca quiere decir «el inyector está bien»: no se ven toberas, juntas ni compresión."
    ),
    "term.certainty": "seguridad",
    "meaning.certainty": (
        "Cuánta seguridad tienes: 50, 75 o 95 %. Puntúa aparte, para que se note quien está seguro y se equivoca."
    ),
    "term.proof": "demostración",
    "meaning.proof": "Hasta dónde tus propios indicios demuestran tu dictamen.",
    "term.numeric": "orden numérico",
    "meaning.numeric": (
        "1, 2, 3 ... No es el orden de encendido. Qué números van en cada bancada cambia de un motor a otro."
    ),
    "wrong.no_such_pair": "El multímetro en estos dos pines no te dice nada útil.",
    "mend.no_such_pair": (
        "En una misma mitad, usa alimentación y retorno de un cilindro, o dos retornos. O usa los dos extremos de un "
        "cable, o un pin y masa."
    ),
    "wrong.two_probes": "Hacen falta las dos puntas: en dos pines, o en un pin y masa del motor.",
    "mend.two_probes": "Ve a un pin con Tab y pulsa Intro. G pone la segunda punta a masa.",
    "wrong.worker_gone": "La parte del programa que hace los cálculos se ha parado.",
    "mend.worker_gone": "Ya está otra vez en marcha. Repite el último paso.",
    "wrong.no_screen": "Aquí no se puede abrir una ventana: {reason}.",
    "mend.no_screen": (
        "Trabaja en el terminal con 'injector-trainer practice --text', o inicia una sesión de escritorio."
    ),
    "wrong.no_browser": "No se pudo abrir un navegador: {reason}.",
    "mend.no_browser": "Abre tú el archivo.",
    "wrong.worked_elsewhere": "Este caso está abierto en otra ventana o terminal.",
    "mend.worked_elsewhere": "Sigue allí, o deja los dos y empieza otra vez desde la lista.",
    "wrong.worker_dead": "La parte del programa que hace los cálculos se para una y otra vez.",
    "mend.worker_dead": (
        "Sal del programa y ábrelo otra vez. Tus registros están a salvo. Si se repite, mira 'Este equipo'."
    ),
}
