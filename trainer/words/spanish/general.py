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
    "certainty.0.5": "a ojo (0,50)",
    "certainty.0.75": "me inclino por ello (0,75)",
    "certainty.0.95": "me juego el trabajo (0,95)",
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
    "test.swap_returns": "intercambio de dos retornos",
    "test.dummy_load": "carga ficticia",
    "test.heat": "calentar un lugar",
    "work.try": "{what}, intento {number}, {effort}",
    "effort.gentle": "con suavidad",
    "effort.thorough": "con fuerza y tiempo",
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
    "test.warm_run": "calentar en marcha",
    "test.contribution": "aportación de cada cilindro",
    "test.compression": "compresión relativa",
    "test.repair_wire": "reparación de cable",
    "test.repair_connector": "reparación de conector",
}

_CODES = {
    "code.open": "circuito del inyector abierto o con muy poca corriente, cilindro {cylinder}",
    "code.over": "circuito del inyector alto o su corriente demasiado alta, cilindro {cylinder}",
    "code.tripped": "circuito del inyector bajo, cilindro {cylinder}",
    "code.uncommanded": "circuito del inyector alto o su corriente demasiado alta, cilindro {cylinder}",
    "code.held_high": "circuito del inyector alto o su corriente demasiado alta, cilindro {cylinder}",
    "code.group_open": "alimentación de un grupo de inyectores abierta",
    "code.group_low": "alimentación de un grupo de inyectores baja, cortada por exceso de corriente",
    "code.supply_low": "rendimiento del módulo de inyectores: alimentación de mando demasiado baja",
    "code.unnamed": "circuito de inyector, sin nombrar cilindro",
    "codes.none": "Ningún código.",
    "codes.stored": "En memoria, de algo anterior: {codes}",
    "codes.place": "Un código dice qué notó el módulo. Nunca dice dónde.",
    "codes.cleared": "Memoria borrada. Haz la prueba y vuelve a leer.",
}


_EXPLANATION = {
    "reason.even": "{slot}, {heard}: {own:.1f} A propios; la placa se mueve; {under:+.1f} dB frente a un turno bueno.",
    "reason.short_of_lift": (
        "{slot}, {heard}: solo {own:.1f} A propios: la placa no se levanta; {under:+.1f} dB frente a un turno bueno."
    ),
    "reason.stuck": (
        "{slot}, {heard}: {own:.1f} A propios y ningún movimiento: un empujón apagado, "
        "{under:+.1f} dB frente a un turno bueno."
    ),
    "reason.hum": (
        "{slot}, {heard}: casi sin corriente por su bobina ({own:.1f} A); una corriente de fondo de "
        "{others:.1f} A por cada uno de otros {count}. Ese es el zumbido de fondo que oíste, {under:+.1f} dB frente a "
        "un turno bueno."
    ),
    "reason.shared": (
        "{slot}, {heard}: {own:.1f} A propios y otros tantos por {cylinders}: comparten un solo límite de corriente y "
        "ninguna placa se levanta; {under:+.1f} dB frente a un turno bueno."
    ),
    "reason.another_way": "Su salida lleva {output:.1f} A: la corriente toma otro camino.",
    "reason.silent": "{slot}, {heard}: sin corriente por su bobina ni por las demás, así que nada zumba.",
    "reason.also": "También se mueve sin que lo llamen: {cylinders}.",
    "reason.elsewhere": "Lo que se mueve es {cylinders}: el sonido viene de otro sitio.",
    "reason.tripped": "La protección por sobrecorriente de la alimentación lo cortó.",
    "reason.burst": "todos a la vez: se mueven {moved} de {count} placas; {under:+.1f} dB frente al motor bueno.",
}

_DEBRIEF = {
    "debrief.truth": "La verdad: {claims}",
    "debrief.answer": "Tu dictamen: {claims}, {certainty}",
    "debrief.passes": "el circuito está bien",
    "debrief.claim": "{kind}, {location}, {side}cilindro {cylinders}",
    "debrief.score": "Puntos: {points:.0f} de 100",
    "debrief.arithmetic": (
        "cilindros 25 × {cylinders:.2f} + lugar 30 × {location:.2f} + tipo 15 × {kind:.2f} "
        "+ demostración 20 × {proof:.2f} + economía 10 × {economy:.2f}"
    ),
    "debrief.certainty": "La seguridad puntúa aparte: Brier {brier:.3f} (0 es lo mejor, 1 lo peor).",
    "debrief.calibration": "Hasta ahora: {rows}.",
    "debrief.calibration_row": "dicho {said:.2f} en {count}, bien {right}",
    "debrief.rule": "La regla: {rule}",
    "debrief.passed_rule": (
        "«El circuito está bien» es un dictamen. Nunca es «inyector bueno»: esta prueba no muestra toberas, juntas, "
        "compresión ni aceite."
    ),
    "debrief.again": "Suena otra vez la verdad.",
    "debrief.yours": "Ahora, cómo habría sonado tu respuesta, con la misma semilla.",
    "debrief.take": "Para que te lo lleves: {question}",
}


_TERMINAL = {
    "card.head": "Hoja de trabajo",
    "card.predicted": "(esperabas {predicted})",
    "card.heard": "oído: {slots}, desde: {place}",
    "card.codes": "códigos: {codes}",
    "card.no_codes": "ninguno",
    "card.move": "en movimiento: {what}",
    "card.warm_run": "motor en marcha hasta calentarse",
    "card.heat": "calentado: {what}",
    "card.swap": "retornos intercambiados: {what}",
    "card.substitute": "pieza buena conocida puesta en: {what}",
    "card.give_back": "piezas propias otra vez en: {what}",
    "card.look": "mirado lo que está abierto: {what}",
    "card.drag": "pasado un pin de prueba por los terminales abiertos: {what}",
    "card.repair": "reparado: {place}, cilindro {cylinders}",
    "card.total": "Total {minutes:.0f} min",
    "request.pair": "ohmios, alimentación a retorno {cylinder}, {point}",
    "request.returns": "ohmios, retorno {cylinder} a retorno {other}, {point}",
    "request.ground": "ohmios a masa, {side} {cylinder}, {point}",
    "request.wire": "ohmios de punta a punta, {place}, {side} {cylinder}",
    "request.insulation": "aislamiento a masa, {side} {cylinder}, {point}",
    "request.volts": "voltios en reposo a masa, {side} {cylinder}, {point}",
    "request.insulation_between": "aislamiento, retorno {cylinder} a retorno {other}, {point}",
    "request.lamp": "lámpara a través del cable, {place}, {side} {cylinder}",
    "request.clamp": "pinza en el retorno {cylinder} mientras se acciona {other}",
    "request.crank": "batería mientras gira el arranque",
    "request.plus_drop": "caída de tensión del positivo de la batería al módulo, accionando todos a la vez",
    "request.ground_drop": (
        "caída de tensión de la masa del módulo al negativo de la batería, accionando todos a la vez"
    ),
    "request.contribution": "aportación de cada cilindro, motor en marcha",
    "request.compression": "compresión relativa, al arrancar",
    "request.drop": "voltios de caída en {place}, {side} {cylinder}, accionado",
    "request.supply": "tensión de mando, la más baja, accionando todos a la vez",
    "request.trace": "curva de corriente, retorno {cylinder}",
    "request.dummy": "corriente en una carga ficticia en lugar del inyector {cylinder}",
    "card.minutes": "{minutes:.0f} min",
    "case.head": "{heading}",
    "case.code": "código de caso {code}",
    "case.drawn_story": "El motor falla; todavía no se ha medido nada.",
    "engine.head": "{title}; orden numérico {numbers}; orden de encendido {firing}",
    "engine.bank": "{bank}: {numbers}, de delante hacia atrás",
    "engine.connector": "conector pasante {name}: inyectores {cylinders}, {pins}",
    "engine.pins.shared": "un solo pin de alimentación para todos",
    "engine.pins.single": "un pin de alimentación para cada uno",
    "engine.live.all": "en cada turno todas las alimentaciones tienen tensión: los demás inyectores pueden zumbar",
    "engine.live.commanded": "en un turno solo tiene tensión la bancada mandada: solo pueden zumbar los de su bancada",
    "welcome.start": "Escribe 'hear' para hacer la prueba, 'help' para todo lo demás.",
    "hear.whole": "la prueba entera",
    "stand.now": "Estás en: {place}.",
    "choice.again": "Escribe un número del 1 al {count}.",
    "side.none": "ningún lado",
    "finding.check": "Vas a entregar: {claims}.",
    "finding.sure": "¿Lo entregas? No hay vuelta atrás. (sí/no): ",
    "finding.dropped": "No entregado.",
    "finding.passes_next": "En este circuito no hay nada que reparar. Escribe 'debrief'.",
    "debrief.why": "Por qué sonó así, turno por turno:",
    "debrief.path": "Tu camino:",
    "prompt": "{minutes:.0f} min{state} > ",
    "prompt.moving": "en movimiento: {place}",
    "prompt.ran_warm": "caliente por todas partes",
    "prompt.warm": "caliente: {place}",
    "prompt.swapped": "retornos {first} y {second} intercambiados",
    "prompt.lent": "prestado: {what}",
    "resumed": "Ya estuviste en este caso: sigues tras {count} acciones. Para empezar de cero: practice --new.",
    "hear.playing": "Suena {what}, desde el lugar: {place} ({seconds:.0f} s).",
    "hear.void": "El ordenador cortó la reproducción y no cuenta. Escúchala otra vez; no cuesta nada.",
    "hear.stopped": "Parado. Escucharlo otra vez no cuesta nada.",
    "hear.file": "Escrito en {path}",
    "hear.files": (
        "Aquí los sonidos van a archivos WAV y se muestra cada ruta. Se borran al terminar el programa. "
        "Para conservar uno, usa 'injector-trainer hear CASE -o FILE.wav'."
    ),
    "hear.back": "La salida de sonido ha vuelto.",
    "hear.codes_later": "Secuencia terminada. Ya se pueden leer los códigos.",
    "suspects.head": "Descartado, a mi juicio: {places}",
    "suspects.none": "nada todavía",
    "look.nothing": "nada a la vista",
    "drag.nothing": "todos los terminales agarran el pin",
    "work.move": "En movimiento: {what}. Sigue hasta 'move none'.",
    "work.warm_run": "El motor ha funcionado y está caliente por todas partes. Haz la prueba antes de que se enfríe.",
    "work.heat": "Calentado: {what}. Sigue caliente hasta 'heat none'.",
    "work.none": "Suelto.",
    "work.swap": "Retornos {first} y {second} intercambiados en el conector del módulo.",
    "work.substitute": "Pieza buena conocida puesta: {what}. Vuelve a hacer la prueba.",
    "reading.elsewhere": "Aún desconectado en otro sitio: {places}. 'hear' lo vuelve a conectar todo.",
    "work.look_off": "Desconectado: {places}. 'hear' lo vuelve a conectar todo.",
    "finding.cancel": "'cancel' te saca de estas preguntas.",
    "finding.count_again": "Escribe 0, 1 o 2.",
    "work.look": "Todo está conectado. Por fuera nada parece quemado ni mojado; para ver dentro hay que desconectar.",
    "reading": "{what}: {display}",
    "codes.line": "{code}  {meaning}",
    "finding.ask_count": "¿Cuántas averías? 0 (el circuito está bien), 1 o 2",
    "finding.ask_cylinders": "Cilindros tras la avería {number}, por ejemplo 3 o 1,3",
    "finding.ask_location": "Lugar de la avería {number}",
    "finding.ask_kind": "Tipo de la avería {number}",
    "finding.ask_side": "Lado de la avería {number} (n si no hay)",
    "finding.ask_certainty": "Qué seguridad tienes",
    "finding.committed": "Dictamen entregado: {claims}, {certainty}.",
    "repair.ask": "Ahora la reparación. Escribe 'repair PLACE CYLINDERS', luego 'retest', luego 'debrief'.",
    "repair.done": "Hecho: {what}. {minutes:.0f} min. Con 'retest' verás si esa era la avería.",
    "retest.proved": "Todos los turnos parejos y ningún código, tal como está ahora el motor.",
    "retest.provoke": (
        "Ninguna prueba antes de reparar mostró la avería, así que una pareja aún no demuestra nada. "
        "Repite lo que la mostró: muévela, caliéntala o vuelve a medir."
    ),
    "retest.not_proved": "No está parejo, o ha vuelto un código: la avería sigue ahí.",
    "work.given_back": "Las piezas buenas conocidas están fuera y las del motor otra vez puestas.",
    "typed.yes": "sí si s yes y",
    "live.ask": (
        "Es trabajo con tensión y lleva {minutes:.0f} min con su preparación. ¿Ha aislado la zona una persona que "
        "tus normas locales nombren? (sí/no): "
    ),
    "price.ask": "Eso lleva {minutes:.0f} min. ¿Lo haces? (sí/no): ",
    "price.left": "No se ha hecho; no se cobra nada.",
    "left": "Lo dejas aquí. No se pierde nada; el mismo comando sigue con este caso.",
    "left_unkept": "Lo dejas aquí. En este equipo no se pudo guardar nada, así que lo hecho se ha perdido.",
    "closed": "Caso cerrado.",
    "unknown_command": "No conozco '{word}'. Escribe 'help'.",
    "silent_ask": "¿No oyes nada? El ruido de fondo está debajo de todo: si tampoco lo oyes, es tu altavoz.",
    "memory_store": "Nada de lo que hagas ahora se guardará. {reason}",
    "window.absent": "La ventana necesita una pantalla y aquí no hay; la práctica va en el terminal.",
    "doctor.good": "bien",
    "doctor.bad": "arreglar",
    "check.tries_move": "{file}: al mover {place}, el fallo aparece en el intento {count}.",
    "check.tries_heat": "{file}: al calentar {place}, el fallo aparece en el intento {count}.",
    "check.good": "{count} archivos leídos, ningún problema.",
    "check.bad": "{problems} problemas en {count} archivos.",
}

_HELP = {
    "help": (
        "Escuchar   hear [SLOT ...]                 la prueba entera, o repetir turnos (all, 1, 2, ...)\n"
        "           compare A B                     dos turnos seguidos, con la misma ganancia\n"
        "           stand PLACE                     front, una bancada, 'cover N' (en la tapa), 'probe N' (sin tapa)\n"
        "Códigos    codes · clear\n"
        "Medir      pair POINT N                    alimentación a retorno del cilindro N\n"
        "           returns POINT N M               retorno a retorno\n"
        "           ground POINT N | ground POINT feed N     pin a masa del motor\n"
        "           wire engine|cover N [feed]      un cable de punta a punta\n"
        "           insulation POINT N [M]          aislamiento a masa, o al retorno M\n"
        "           volts POINT N | volts POINT feed N       voltios en reposo a masa: ausencia de tensión\n"
        "           drop module|engine|connector|cover|coil N [feed]     caída de tensión mientras se acciona\n"
        "           lamp engine|cover N [feed]      una lámpara a través de un cable suelto por ambos extremos\n"
        "           supply · crank · plusdrop · grounddrop · compression · contribution · trace N · dummy N\n"
        "           clamp N [M]                     una pinza en el retorno N mientras se acciona M\n"
        "             POINT: module, plug (lado inyector), plug harness o el nombre de un conector [engine|cover]\n"
        "             añade 'connected', 'firm', 'live', 'leads' o 'nowait' para medir así (y aprender qué pasa)\n"
        "             añade 'minmax' para guardar el mínimo y el máximo mientras mueves algo\n"
        "Trabajar   move PLACE [BANK] [gentle] | move none · heat PLACE [BANK] [gentle] | heat none\n"
        "           warmrun · swap N M · look · drag\n"
        "           lend injector N | lend module | lend none     pieza buena conocida: ponerla o quitarla\n"
        "Pensar     out PLACE · back PLACE          descartar un lugar, o recuperarlo · card\n"
        "           expect WORDS                    di qué debe dar la próxima lectura, antes de hacerla\n"
        "           hint                            tres pistas, cada vez más fuertes; quedan en la hoja\n"
        "Responder  finding · luego repair PLACE N[,M] [feed|return] · retest [moving PLACE | warm PLACE] · debrief\n"
        "           why [N]                         tras el dictamen: qué dejan tus indicios, y por qué\n"
        "Otros      engine · help · leave\n"
        "PLACE de una avería: module, engine, connector, cover, coil, armature, power"
    ),
}

TEXTS: dict[str, str] = {
    **_NAMES, **_CODES, **_EXPLANATION, **_DEBRIEF, **_TERMINAL, **_HELP,
}  # fmt: skip
