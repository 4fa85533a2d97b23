"""Spanish: who, settings, sound set-up, words, the guide."""

TEXTS: dict[str, str] = {
    "who.title": "¿Quién trabaja?",
    "who.job": (
        "Oye una prueba de accionamiento de inyectores, reúne indicios, nombra el lugar de la avería y di "
        "cuánta seguridad tienes."
    ),
    "who.name": "Nombre o código (sin contraseña; no sale de este equipo)",
    "who.second": "Segunda persona: una escucha, otra mide, y cambian en cada caso",
    "who.go": "seguir",
    "who.two": "dos en este banco",
    "who.one": "uno en este banco",
    "who.empty": "Escribe antes un nombre o un código.",
    "waiting.title": "Lo que espera a {who}",
    "waiting.begun": "Empezado y sin acabar",
    "waiting.code": "Un número de trabajo, un código o un archivo",
    "waiting.begin": "empezar",
    "waiting.all": "todos los casos",
    "waiting.hide": "ocultar los casos",
    "waiting.case": "{title} · {engine} · nivel {difficulty}",
    "waiting.done_before": " · ya hecho",
    "waiting.progress": "mi progreso",
    "waiting.someone_else": "otra persona",
    "common.free": "banco libre",
    "common.setup": "ajuste de sonido",
    "common.glossary": "palabras",
    "common.settings": "ajustes",
    "common.doctor": "este equipo",
    "common.end": "terminar",
    "progress.title": "Progreso de {who}",
    "progress.count": "Casos acabados: {count}. Bien: {right}.",
    "progress.kinds": "Por tipo de avería: bien de acabados",
    "progress.nothing": "Nada acabado todavía.",
    "progress.of": "{right} de {count}",
    "progress.certainty": "Seguridad dicha y aciertos",
    "progress.said": "Dicho {said}: {count}, de ellos bien: {right}",
    "settings.title": "Ajustes de este puesto",
    "settings.theme": "Aspecto",
    "settings.theme.dark": "banco oscuro",
    "settings.theme.light": "banco claro",
    "settings.language": "Idioma",
    "settings.language.en": "English",
    "settings.language.es": "Español",
    "settings.trace": "Contorno del sonido en la tira, en práctica",
    "settings.trace.fading": "se desvanece a medida que oyes mejor",
    "settings.trace.shown": "siempre",
    "settings.trace.off": "nunca",
    "settings.scale": "Tamaño del texto (Ctrl + y Ctrl -)",
    "settings.device": "El sonido sale por",
    "settings.device_default": "la salida del sistema",
    "settings.level": "Nivel aquí: {level:.0f} dB; solo sube con la tecla.",
    "settings.station": (
        "Modo puesto: pantalla completa, siguiente persona tras tres minutos quietos, un PIN de cifras para salir"
    ),
    "settings.station_on": "empezar modo puesto",
    "settings.station_off": "acabar modo puesto",
    "settings.pin_short": "Un PIN tiene al menos {count} cifras.",
    "settings.damaged": (
        "Algunos ajustes en {path} están dañados: {which}. En su lugar se usan los habituales. Cuando se guarden "
        "ajustes otra vez, el archivo dañado queda como {aside}."
    ),
    "station.ask": "PIN de este puesto",
    "station.limits": (
        "Esto mantiene a la clase en su trabajo. No bloquea el equipo: para eso usa la cuenta de quiosco del sistema."
    ),
    "station.leave": "terminar el programa",
    "station.wrong": "Ese no es el PIN.",
    "doctor.exam.memory_good": "otros programas de esta cuenta no pueden leer un examen en la memoria",
    "doctor.exam.memory_bad": "aquí otros programas de esta cuenta pueden leer un examen en la memoria",
    "doctor.exam.memory_mend": "Haz los exámenes en Linux, o vigila qué más se ejecuta en el puesto.",
    "doctor.exam.start_good": "un examen arranca sin los ajustes de Python de esta cuenta",
    "doctor.exam.start_bad": "los ajustes de Python de esta cuenta llegan al examen y pueden meter otro código en él",
    "doctor.exam.start_mend": "Instala el programa con pip e inicia los exámenes con: python -I -m trainer",
    "doctor.compiled": "compilado (rápido)",
    "doctor.not_compiled": "sin compilar: todo funciona, pero los sonidos y las pistas tardan más",
    "doctor.title": "Lo que tiene este equipo",
    "glossary.title": "Palabras",
    "stage.waiting": "Trabajando ...",
    "stage.sounding": "Resolviendo el circuito y generando el sonido ...",
    "stage.codes": "Leyendo los códigos ...",
    "stage.measuring": "Midiendo ...",
    "stage.reasoning": "Resolviendo cada avería posible de este motor: {percent:.0f} %",
    "sound.silent": (
        "Aquí no hay salida de sonido. Los sonidos se escriben en archivos, que se borran al cerrar el programa. "
        "Todo lo demás funciona igual."
    ),
    "banner.unkept": (
        "Aquí no se guarda nada: lo que hagas se pierde al terminar. Para guardarlo, abre el programa con --data "
        "CARPETA."
    ),
    "sound.to_file": "Escrito en {path}. Cópialo si quieres conservarlo.",
    "sound.void": "El ordenador cortó el sonido: no cuenta.",
    "sound.again": "oírlo otra vez, sin coste",
    "sound.lost": "La salida de sonido ha desaparecido. No cuesta nada; sigue desde el inicio del turno.",
    "sound.go_on": "probar otra vez y seguir",
    "sound.rest": "Llevas {minutes:.0f} minutos escuchando. Un descanso ayuda al oído.",
    "sound.level": "Nivel {level:.0f} dB",
    "setup.title": "Ajuste de sonido",
    "setup.why": (
        "Unos noventa segundos. Prueba que el zumbido tenue se oye aquí antes de juzgar nada por él. No "
        "excluye a nadie."
    ),
    "setup.device": "El sonido sale por: {name}",
    "setup.begin": "empezar",
    "setup.begin_headphones": "empezar, con prueba de auriculares (40 s más)",
    "setup.step": "Pregunta {done} de {count}",
    "setup.ask.side": "¿De qué lado suena?",
    "setup.ask.comfort": "Ajusta el nivel: cómodo, nunca fuerte. Empieza bajo y solo sube con la tecla.",
    "setup.ask.bed": "¿Oyes el ruido de fondo suave por encima de la sala?",
    "setup.ask.hum": "¿Cuántos zumbidos tenues hay en el fondo?",
    "setup.ask.low": "Dos sonidos cortos: ¿oíste los dos?",
    "setup.ask.phase": "Tres tonos: ¿cuál es el más flojo?",
    "setup.answer.side.left": "izquierda",
    "setup.answer.side.right": "derecha",
    "setup.answer.side.both": "ambos",
    "setup.answer.side.none": "nada",
    "setup.answer.comfort.comfortable": "cómodo",
    "setup.answer.bed.yes": "sí",
    "setup.answer.bed.barely": "apenas",
    "setup.answer.bed.no": "no",
    "setup.answer.low.both": "los dos",
    "setup.answer.low.first": "solo el primero",
    "setup.answer.low.second": "solo el segundo",
    "setup.answer.low.none": "ninguno",
    "setup.level": "Nivel {level:.0f} dB",
    "setup.softer": "más suave",
    "setup.louder": "más fuerte",
    "setup.again": "oír otra vez",
    "setup.undo": "retirar la última respuesta",
    "setup.leave": "dejar el ajuste",
    "setup.result": "Lo que mostró el ajuste",
    "setup.once_more": "repetirlo",
    "setup.none": "El sonido de este puesto no se ha ajustado.",
    "setup.hum.ready": "El zumbido se oye aquí con margen.",
    "setup.hum.usable": "El zumbido se oye aquí, sin margen.",
    "setup.hum.not_heard": "El zumbido no se oyó aquí.",
    "setup.hum.guessed": "Se contaron zumbidos donde no había.",
    "setup.sides.stereo": "Los dos lados funcionan y están bien puestos.",
    "setup.sides.swapped": "Los lados están cambiados.",
    "setup.sides.mono": "Los dos lados suenan igual: mono.",
    "setup.sides.unsure": "Los lados no están claros.",
    "setup.bed.yes": "El fondo supera a la sala.",
    "setup.bed.barely": "El fondo apenas supera a la sala.",
    "setup.bed.no": "La sala suena más que el fondo.",
    "setup.lows.all": "Los graves se oyen.",
    "setup.lows.no_lows": "Aquí faltan los graves; el zumbido tiene bastante por encima.",
    "setup.lows.unsure": "Los graves no están claros.",
    "setup.headphones.likely": "Probablemente auriculares.",
    "setup.headphones.unlikely": "Probablemente altavoces o mono.",
    "setup.advice.ready": "Listo: puedes fiarte de lo que oyes aquí.",
    "setup.advice.usable": (
        "Utilizable; los resultados llevan una nota. Ayudarían auriculares cerrados o un sitio más tranquilo."
    ),
    "setup.advice.not_heard": (
        "No tomes aquí el silencio por un circuito mudo. Prueba auriculares cerrados, un sitio más "
        "tranquilo, o trabaja con códigos y lecturas."
    ),
    "setup.advice.guessed": "Prueba otra vez con calma, contando solo lo seguro.",
    "term.actuation_test": "prueba de accionamiento",
    "meaning.actuation_test": (
        "El módulo de mando acciona todas las bobinas a la vez y luego cada una en orden numérico."
    ),
    "term.slot": "turno",
    "meaning.slot": "El tiempo en que se manda un cilindro, o todos.",
    "term.burst": "todos a la vez",
    "meaning.burst": (
        "El primer turno: todos los inyectores juntos, más fuerte que cualquiera solo. Es lo que más carga "
        "la alimentación."
    ),
    "term.background": "corriente de fondo",
    "meaning.background": (
        "La corriente por los inyectores que no se accionan: hasta 2 A en cada uno; el accionado recibe de 8 a 10 A."
    ),
    "term.hum": "zumbido",
    "meaning.hum": (
        "El sonido de la corriente de fondo: muy tenue. Donde solo se oye eso, el inyector accionado tiene casi "
        "seguro el circuito abierto. Mide antes de decirlo."
    ),
    "term.even": "parejo",
    "meaning.even": (
        "Tan fuerte como en un motor sano, con pocos decibelios de diferencia. El circuito funciona ahora; una "
        "falla intermitente puede estar en reposo."
    ),
    "term.weak": "débil",
    "meaning.weak": "El golpe está, claramente más suave que sus vecinos.",
    "term.dull": "apagado",
    "meaning.dull": "Corriente, pero sin clic: un golpe sordo sin brillo.",
    "term.mate": "vecino",
    "meaning.mate": "La misma pieza de otro cilindro, medida igual: muestra qué valor es bueno aquí.",
    "term.nulled": "puntas a cero",
    "meaning.nulled": "Las puntas del medidor juntas y puestas a cero, para leer bien unos pocos ohmios.",
    "term.bed": "ruido de fondo",
    "meaning.bed": "El ruido constante del taller bajo todo. Si no oyes ni eso, es tu altavoz.",
    "term.module": "módulo de mando",
    "meaning.module": "La caja que acciona los inyectores con más de 100 V.",
    "term.feed": "lado de alimentación",
    "meaning.feed": "Del módulo a la bobina; a menudo compartido por una bancada.",
    "term.return": "lado de retorno",
    "meaning.return": "De la bobina al módulo: un cable por inyector, donde se mide la corriente.",
    "term.break_point": "punto de corte",
    "meaning.break_point": (
        "Donde se puede abrir y medir el circuito: conector del módulo, conector pasante, conector del inyector."
    ),
    "term.pass_through": "conector pasante",
    "meaning.pass_through": "El conector que atraviesa la junta de la tapa. Es el que más falla.",
    "term.open": "OL",
    "meaning.open": "Fuera del alcance del medidor: su corriente no tiene camino.",
    "term.load": "caída bajo carga",
    "meaning.load": (
        "Voltios perdidos en un tramo mientras lleva la corriente de mando; el miliamperio del medidor no "
        "muestra una unión floja."
    ),
    "term.insulation": "aislamiento a masa",
    "meaning.insulation": (
        "Lo bien aislado que está un cable del motor. Nunca a través de un módulo, un inyector o un calentador."
    ),
    "term.finding": "dictamen",
    "meaning.finding": "Lo que entregas: cilindros, lugar, lado, tipo y tu seguridad.",
    "term.passes": "el circuito está bien",
    "meaning.passes": "Un dictamen propio. Nunca es 'inyector bueno': no muestra toberas, juntas ni compresión.",
    "term.certainty": "seguridad",
    "meaning.certainty": "0,50, 0,75 o 0,95: se puntúa aparte, para que se vea quien está seguro y se equivoca.",
    "term.proof": "prueba",
    "meaning.proof": "Hasta dónde tus indicios por sí solos prueban tu dictamen.",
    "term.numeric": "orden numérico",
    "meaning.numeric": "1, 2, 3 ... No es el orden de encendido, y cada bancada numera a su manera.",
    "wrong.no_such_pair": "Un medidor en estos dos pines no muestra nada útil aquí.",
    "mend.no_such_pair": (
        "Usa alimentación y retorno de un cilindro en una mitad, dos retornos en una mitad, los dos extremos "
        "de un cable, o un pin y masa."
    ),
    "wrong.two_probes": "Hacen falta dos puntas: pines, o un pin y masa del motor.",
    "mend.two_probes": "Ve a un pin con Tab y pulsa Intro; G pone la segunda punta a masa.",
    "wrong.worker_gone": "La parte del programa que calcula se ha parado.",
    "mend.worker_gone": "Se ha vuelto a arrancar: repite el último paso.",
    "wrong.no_screen": "Aquí no se puede abrir una ventana: {reason}.",
    "mend.no_screen": (
        "Trabaja en el terminal con 'injector-trainer practice --text' o inicia una sesión de escritorio."
    ),
    "wrong.no_browser": "No se pudo abrir un navegador: {reason}.",
    "mend.no_browser": "Abre el archivo tú mismo.",
    "wrong.worked_elsewhere": "Este intento se está haciendo en otra ventana o terminal.",
    "mend.worked_elsewhere": "Déjalo aquí y sigue allí, o deja los dos y retómalo desde la lista.",
    "wrong.worker_dead": "La parte del programa que calcula no se mantiene en marcha.",
    "mend.worker_dead": (
        "Termina el programa y ábrelo otra vez; tus registros siguen ahí. Si se repite, mira 'este equipo'."
    ),
}
