"""Spanish."""

_NAMES = {
    "location.drive_module": "módulo de mando",
    "location.engine_harness": "cableado del motor",
    "location.pass_through_connector": "conector pasante",
    "location.under_cover_harness": "cableado bajo tapa",
    "location.solenoid_coil": "bobina",
    "location.armature": "armadura",
    "location.module_power": "batería y alimentación del módulo",
    "side.feed": "lado de alimentación",
    "side.return": "lado de retorno",
    "heard.louder": "más fuerte",
    "heard.even": "parejo",
    "heard.weak": "débil",
    "heard.dull": "apagado",
    "heard.very_faint": "muy tenue",
    "heard.nothing": "nada",
    "slot.one": "turno {number}",
    "slot.all": "todos a la vez",
    "percent.plain": "{percent:.1f} %",
    "percent.under": "< 0,1 %",
    "percent.over": "> 99,9 %",
    "slot.cylinders_out": "cilindro {cylinders}",
    "slot.cylinders_several": "cilindros {cylinders}",
    "certainty.0.5": "a ojo (50 %)",
    "certainty.0.75": "bastante seguro (75 %)",
    "certainty.0.95": "me juego el trabajo (95 %)",
    "test.actuation_test": "prueba de accionamiento",
    "test.codes": "códigos",
    "test.look": "mirar los conectores",
    "test.pin_drag": "prueba de agarre de los terminales",
    "test.module_ohms": "ohmios en el conector del módulo",
    "test.pass_through_ohms": "ohmios en un conector pasante",
    "test.injector_ohms": "ohmios en el conector de un inyector",
    "test.pin_to_ground": "pin a masa",
    "test.move_harness": "mover el cableado",
    "test.load_drop": "caída de tensión bajo carga",
    "test.current_trace": "curva de corriente",
    "test.swap_returns": "cruzar dos retornos",
    "test.dummy_load": "carga ficticia",
    "test.heat": "calentar un sitio",
    "work.try": "{what}, intento {number}, {effort}",
    "effort.gentle": "con suavidad",
    "effort.thorough": "con fuerza, más tiempo",
    "location.under_bank": "{place}, bancada {bank}",
    "test.cover_off": "quitar la tapa",
    "test.module_substitution": "sustitución del módulo",
    "test.injector_swap": "inyector bueno conocido",
    "test.volts_at_rest": "voltios en reposo",
    "test.live_preparation": "preparar el trabajo con tensión",
    "test.clamp": "pinza en un retorno",
    "test.lamp_load": "lámpara en un cable aislado",
    "test.crank": "batería al arrancar",
    "test.power_drop": "caída de tensión de la batería al módulo",
    "test.warm_run": "motor en marcha hasta calentarse",
    "test.contribution": "aportación de cada cilindro",
    "test.compression": "compresión relativa",
    "test.repair_wire": "reparación de cable",
    "test.repair_connector": "reparación de conector",
}

_CODES = {
    "code.open": "circuito del inyector abierto o con muy poca corriente, cilindro {cylinder}",
    "code.over": "circuito del inyector alto o corriente demasiado alta, cilindro {cylinder}",
    "code.tripped": "circuito del inyector bajo, cilindro {cylinder}",
    "code.uncommanded": "circuito del inyector alto o corriente demasiado alta, cilindro {cylinder}",
    "code.held_high": "circuito del inyector alto o corriente demasiado alta, cilindro {cylinder}",
    "code.group_open": "alimentación de un grupo de inyectores abierta",
    "code.group_low": "alimentación de un grupo de inyectores baja, cortada por exceso de corriente",
    "code.supply_low": "rendimiento del módulo de inyectores: alimentación de mando demasiado baja",
    "code.unnamed": "circuito de inyector, sin indicar cilindro",
    "codes.none": "No hay códigos.",
    "codes.stored": "En memoria, de una avería anterior: {codes}",
    "codes.place": "Un código dice qué notó el módulo. Nunca dice dónde.",
    "codes.cleared": "Códigos borrados. Haz la prueba y lee otra vez.",
}


_EXPLANATION = {
    "reason.even": "{slot}: {heard}. Por su bobina pasan {own:.1f} A y su armadura se mueve: {under}.",
    "reason.short_of_lift": (
        "{slot}: {heard}. Por su bobina pasan solo {own:.1f} A, muy poco para levantar la armadura: {under}."
    ),
    "reason.stuck": "{slot}: {heard}. Por su bobina pasan {own:.1f} A, pero su armadura no se mueve: {under}.",
    "reason.hum": (
        "{slot}: {heard}. Por su propia bobina pasan {own:.1f} A. Lo que oyes son {others:.1f} A de corriente de "
        "fondo por cada uno de otros {count}, {under}."
    ),
    "reason.shared": (
        "{slot}: {heard}. Comparte un solo límite de corriente con {cylinders}. A cada uno le llegan {own:.1f} A y "
        "ninguna armadura se levanta: {under}."
    ),
    "level.quieter": "{decibel:.0f} dB más flojo que {good}",
    "level.louder": "{decibel:.0f} dB más fuerte que {good}",
    "level.same": "tan fuerte como {good}",
    "level.good_slot": "un turno bueno",
    "level.good_engine": "un motor sano",
    "reason.another_way": "La salida del módulo lleva {output:.1f} A, así que la corriente toma otro camino.",
    "reason.silent": "{slot}: {heard}. No pasa corriente por su bobina ni por las demás, así que nada zumba.",
    "reason.also": "Se mueve fuera de turno: {cylinders}.",
    "reason.elsewhere": "Lo que se mueve es de {cylinders}, así que el sonido viene de otro sitio.",
    "reason.tripped": "La corriente fue demasiado alta y el módulo cortó la alimentación.",
    "reason.burst": "Todos a la vez: se mueven {moved} de {count} armaduras, {under}.",
}

_DEBRIEF = {
    "debrief.right": "Correcto, y demostrado.",
    "debrief.unproved": "Correcto, pero sin demostrar.",
    "debrief.unmended": "Correcto, pero la avería sigue ahí.",
    "debrief.mended_later": "Correcto, pero hizo falta otra reparación.",
    "debrief.by_ear": "Te guiaste por el oído y los códigos. Mide la pieza antes de cambiarla.",
    "debrief.not_right": "No es así.",
    "debrief.it_was": "Era: {claims}.",
    "debrief.truth": "La verdad: {claims}",
    "debrief.answer": "Dijiste: {claims}; {certainty}",
    "debrief.passes": "el circuito está bien",
    "debrief.claim": "{kind}, {location}, {side}{cylinders}",
    "debrief.score": "Puntos: {points:.0f} de 100",
    "debrief.arithmetic": (
        "cilindros 25 × {cylinders:.2f} + lugar 30 × {location:.2f} + tipo 15 × {kind:.2f} "
        "+ demostración 20 × {proof:.2f} + economía 10 × {economy:.2f}"
    ),
    "debrief.certainty": "Tu seguridad puntúa aparte: Brier {brier:.3f} (0 es lo mejor, 1 lo peor).",
    "debrief.calibration": "Hasta ahora: {rows}.",
    "debrief.calibration_row": "con {said:.2f} acertaste el {right} de las veces (veces: {count})",
    "debrief.rule": "Recuerda: {rule}",
    "debrief.passed_rule": (
        "«El circuito está bien» es un dictamen. Nunca quiere decir «el inyector está bien»: esta prueba no muestra "
        "toberas, juntas, compresión ni aceite."
    ),
    "debrief.again": "Escucha otra vez la verdad.",
    "debrief.yours": "Ahora escucha cómo habría sonado tu respuesta en el mismo motor.",
    "debrief.take": "Para pensar: {question}",
}


_TERMINAL = {
    "card.head": "Hoja de trabajo",
    "card.predicted": "(esperabas {predicted})",
    "card.heard": "Escuchado: {slots} ({place})",
    "card.codes": "Códigos: {codes}",
    "card.no_codes": "ninguno",
    "card.move": "Moviendo: {what}",
    "card.warm_run": "Motor en marcha hasta calentarse",
    "card.heat": "Calentando: {what}",
    "card.swap": "Retornos cruzados: {what}",
    "card.substitute": "Pieza buena conocida: {what}",
    "card.give_back": "Pieza buena conocida: {what}",
    "card.look": "Mirado lo que está abierto: {what}",
    "card.drag": "Pasado un pin de prueba por los terminales abiertos: {what}",
    "card.repair": "Reparado: {place}, {cylinders}",
    "card.stopped": "parado",
    "card.taken_out": "quitada",
    "card.total": "Total: {minutes:.0f} min",
    "request.pair": "ohmios, cilindro {cylinder}, {point}",
    "request.returns": "ohmios, retorno {cylinder} a retorno {other}, {point}",
    "request.ground": "ohmios a masa, {side} {cylinder}, {point}",
    "request.wire": "ohmios de punta a punta, {place}, {side} {cylinder}",
    "request.insulation": "aislamiento a masa, {side} {cylinder}, {point}",
    "request.volts": "voltios en reposo a masa, {side} {cylinder}, {point}",
    "request.insulation_between": "aislamiento, retorno {cylinder} a retorno {other}, {point}",
    "request.lamp": "lámpara en el cable, {place}, {side} {cylinder}",
    "request.clamp": "pinza en el retorno {cylinder} mientras se acciona {other}",
    "request.crank": "tensión de batería mientras gira el arranque",
    "request.plus_drop": "caída de tensión del positivo de la batería al módulo, accionando todos a la vez",
    "request.ground_drop": (
        "caída de tensión de la masa del módulo al negativo de la batería, accionando todos a la vez"
    ),
    "request.contribution": "aportación de cada cilindro con el motor en marcha",
    "request.compression": "compresión relativa al arrancar",
    "request.drop": "caída de tensión bajo carga, {place}, {side} {cylinder}",
    "request.supply": "tensión de mando más baja, accionando todos a la vez",
    "request.trace": "curva de corriente, retorno {cylinder}",
    "request.dummy": "corriente en una carga ficticia en lugar del inyector {cylinder}",
    "card.minutes": "{minutes:.0f} min",
    "case.head": "{heading}",
    "case.code": "Código de caso: {code}",
    "case.drawn_story": "El motor falla. Nadie ha medido nada todavía.",
    "engine.head": "{title}. Orden numérico: {numbers}. Orden de encendido: {firing}.",
    "engine.bank": "{bank}: {numbers}, de delante hacia atrás",
    "engine.connector": "El conector pasante {name} lleva {cylinders}, con {pins}.",
    "engine.pins.shared": "un solo pin de alimentación para todos",
    "engine.pins.single": "un pin de alimentación para cada uno",
    "engine.live.all": (
        "Todas las alimentaciones tienen tensión en cada turno, así que pueden zumbar todos los demás inyectores."
    ),
    "engine.live.commanded": (
        "En un turno solo tiene tensión la alimentación de la bancada mandada, así que solo puede zumbar esa bancada."
    ),
    "engine.hall": "Está en una nave grande y vacía y los golpes se mezclan. Inclínate sobre una bancada para oírlos.",
    "welcome.start": "Escribe 'hear' para hacer la prueba, o 'help' para todo lo demás.",
    "hear.whole": "la prueba entera",
    "stand.now": "Estás aquí: {place}.",
    "choice.again": "Escribe un número del 1 al {count}.",
    "side.none": "ningún lado",
    "finding.check": "Vas a entregar: {claims}.",
    "finding.sure": "¿Lo entregas? No hay vuelta atrás. (sí/no): ",
    "finding.dropped": "No se ha entregado.",
    "finding.passes_next": "En este circuito no hay nada que reparar. Escribe 'debrief'.",
    "debrief.why": "Por qué sonó así cada turno:",
    "debrief.path": "Lo que hiciste:",
    "prompt": "{minutes:.0f} min{state} > ",
    "prompt.moving": "en movimiento: {place}",
    "prompt.ran_warm": "caliente por todas partes",
    "prompt.warm": "caliente: {place}",
    "prompt.swapped": "retornos {first} y {second} cruzados",
    "prompt.lent": "pieza buena conocida puesta: {what}",
    "resumed": "Ya trabajaste en este caso. Acciones hasta ahora: {count}. Para empezar de cero, usa practice --new.",
    "hear.playing": "Suena {what} ({place}, {seconds:.0f} s).",
    "hear.void": "El equipo cortó el sonido, así que no cuenta. Escúchalo otra vez; no cuesta nada.",
    "hear.stopped": "Parado. Escucharlo otra vez no cuesta nada.",
    "hear.file": "Guardado en {path}",
    "hear.files": (
        "Aquí los sonidos se guardan como archivos WAV y se muestra cada ruta. Se borran al terminar el programa. "
        "Para conservar uno, usa 'injector-trainer hear CASE -o FILE.wav'."
    ),
    "hear.back": "La salida de sonido ha vuelto.",
    "hear.codes_later": "La prueba ha terminado. Ya puedes leer los códigos.",
    "suspects.head": "Lugares que has descartado: {places}",
    "suspects.none": "ninguno todavía",
    "look.nothing": "nada raro",
    "drag.nothing": "todos los terminales agarran el pin",
    "work.drag_nothing": "Todos los terminales agarran el pin.",
    "work.move": "Moviendo: {what}. Escribe 'move none' para parar.",
    "work.warm_run": "El motor ha funcionado y está caliente por todas partes. Haz la prueba antes de que se enfríe.",
    "work.heat": "Caliente: {what}. Escribe 'heat none' para dejarlo enfriar.",
    "work.none": "Parado.",
    "work.swap": "Los retornos {first} y {second} están cruzados en el conector del módulo.",
    "work.substitute": "Pieza buena conocida puesta: {what}. Vuelve a hacer la prueba.",
    "reading.elsewhere": "Sigue desconectado: {places}. 'hear' lo conecta todo otra vez.",
    "work.look_off": "Desconectado: {places}. 'hear' lo conecta todo otra vez.",
    "finding.cancel": "Escribe 'cancel' para salir de estas preguntas.",
    "finding.count_again": "Escribe 0, 1 o 2.",
    "work.look": (
        "Todo está conectado. Por fuera nada parece quemado ni mojado. Para mirar dentro, desconecta un conector."
    ),
    "reading": "{what}: {display}",
    "codes.line": "{code}  {meaning}",
    "finding.ask_count": "¿Cuántas averías? 0 (el circuito está bien), 1 o 2",
    "finding.ask_cylinders": "Cilindros de la avería {number}, por ejemplo 3 o 1,3",
    "finding.ask_location": "Lugar de la avería {number}",
    "finding.ask_kind": "Tipo de la avería {number}",
    "finding.ask_side": "Lado de la avería {number} (n si no hay)",
    "finding.ask_certainty": "Cuánta seguridad tienes",
    "finding.committed": "Has entregado: {claims}; {certainty}.",
    "repair.ask": "Ahora la reparación. Escribe 'repair PLACE CYLINDERS', luego 'retest', luego 'debrief'.",
    "repair.done": "Hecho: {what}. Ha llevado {minutes:.0f} min. Escribe 'retest' para ver si esa era la avería.",
    "retest.proved": "Todos los turnos suenan parejos y no hay códigos.",
    "retest.provoke": (
        "Ninguna prueba antes de reparar mostró la avería, así que una pareja aún no demuestra nada. Repite lo "
        "que la mostró: muévela, caliéntala o vuelve a medir."
    ),
    "retest.not_proved": "Un turno no suena parejo, o ha vuelto un código. La avería sigue ahí.",
    "work.given_back": "Las piezas buenas conocidas están fuera, y las del motor otra vez puestas.",
    "typed.yes": "sí si s yes y",
    "live.ask": (
        "Es trabajo con tensión. Con la preparación lleva {minutes:.0f} min. ¿Ha cerrado la zona una persona "
        "autorizada por tus normas locales? (sí/no): "
    ),
    "price.ask": "Eso lleva {minutes:.0f} min. ¿Lo haces? (sí/no): ",
    "price.left": "No se ha hecho. No se ha cargado tiempo.",
    "left": "Lo dejas aquí. No se pierde nada: la misma orden te trae de vuelta a este caso.",
    "left_unkept": "Lo dejas aquí. En este equipo no se pudo guardar nada, así que tu trabajo se ha perdido.",
    "closed": "Caso cerrado.",
    "unknown_command": "No conozco '{word}'. Escribe 'help'.",
    "silent_ask": "¿No oyes nada de nada? El ruido del taller está siempre ahí. Si tampoco lo oyes, es tu altavoz.",
    "memory_store": "Nada de lo que hagas ahora se guardará. {reason}",
    "window.absent": "La ventana necesita una pantalla y aquí no la hay, así que la práctica va en el terminal.",
    "doctor.good": "bien",
    "doctor.bad": "por arreglar",
    "check.tries_move": "{file}: al mover {place}, la avería aparece en el intento {count}.",
    "check.tries_heat": "{file}: al calentar {place}, la avería aparece en el intento {count}.",
    "check.good": "Archivos leídos: {count}. Ningún problema.",
    "check.bad": "Problemas encontrados: {problems}. Archivos leídos: {count}.",
}

_HELP = {
    "help": (
        "Escuchar   hear [SLOT ...]                 la prueba entera, o repetir turnos (all, 1, 2, ...)\n"
        "           compare A B                     dos turnos seguidos, con el mismo volumen\n"
        "           stand PLACE                     front, una bancada, 'cover N' (en la tapa), 'probe N' (sin tapa)\n"
        "Códigos    codes · clear\n"
        "Medir      pair POINT N                    alimentación a retorno del cilindro N\n"
        "           returns POINT N M               retorno a retorno\n"
        "           ground POINT N | ground POINT feed N     pin a masa del motor\n"
        "           wire engine|cover N [feed]      un cable de punta a punta\n"
        "           insulation POINT N [M]          aislamiento a masa, o al retorno M\n"
        "           volts POINT N | volts POINT feed N       voltios en reposo a masa, por si hay tensión\n"
        "           drop module|engine|connector|cover|coil N [feed]     caída de tensión bajo carga\n"
        "           lamp engine|cover N [feed]      una lámpara en un cable suelto por los dos extremos\n"
        "           supply · crank · plusdrop · grounddrop · compression · contribution · trace N · dummy N\n"
        "           clamp N [M]                     una pinza en el retorno N mientras se acciona M\n"
        "             POINT: module, plug (lado inyector), plug harness o el nombre de un conector [engine|cover]\n"
        "             añade 'connected', 'firm', 'live', 'leads' o 'nowait' para cometer ese error a propósito\n"
        "             añade 'minmax' para guardar el mínimo y el máximo mientras mueves\n"
        "Trabajar   move PLACE [BANK] [gentle] | move none · heat PLACE [BANK] [gentle] | heat none\n"
        "           warmrun · swap N M · look · drag\n"
        "           lend injector N | lend module | lend none     poner o quitar una pieza buena conocida\n"
        "Pensar     out PLACE · back PLACE          descartar un lugar, o recuperarlo · card\n"
        "           expect WORDS                    di qué esperas antes de la próxima lectura\n"
        "           hint                            tres pistas, cada una más fuerte; quedan en la hoja\n"
        "Responder  finding · luego repair PLACE N[,M] [feed|return] · retest [moving PLACE | warm PLACE] · debrief\n"
        "           why [N]                         tras el dictamen: qué dejan tus indicios, y por qué\n"
        "Otros      engine · help · leave\n"
        "PLACE de una avería: module, engine, connector, cover, coil, armature, power"
    ),
}

TEXTS: dict[str, str] = {
    **_NAMES, **_CODES, **_EXPLANATION, **_DEBRIEF, **_TERMINAL, **_HELP,
}  # fmt: skip
