"""Spanish for reasoning: tests to do next, misconceptions, hints, paths and proofs."""

_TESTS = {
    "plan.hear": "hacer la prueba entera y escuchar desde delante",
    "plan.through_cover": "escuchar a través de la tapa sobre cada inyector durante su turno",
    "plan.probe": "estetoscopio en cada inyector de la bancada {what} durante su turno",
    "plan.codes": "leer los códigos después de la prueba",
    "plan.module_pairs": "ohmios, de alimentación a cada retorno, en el conector del módulo",
    "plan.module_returns": "ohmios, de retorno a retorno, en el conector del módulo",
    "plan.module_grounds": "cada pin a masa en el conector del módulo",
    "plan.through_pairs": "ohmios en los conectores pasantes de la bancada {what}, lado tapa",
    "plan.through_grounds": "pines a masa en los conectores pasantes de la bancada {what}, lado tapa",
    "plan.wires_engine": "cables del cableado del motor de punta a punta, bancada {what}",
    "plan.wires_cover": "cables bajo tapa de punta a punta, bancada {what}",
    "plan.engine_alone": "el cableado del motor de la bancada {what} solo: cables a masa y entre sí",
    "plan.cover_alone": "el cableado bajo tapa de la bancada {what} solo: cables a masa y entre sí",
    "plan.plug_pairs": "ohmios de los inyectores en sus conectores, bancada {what}",
    "plan.plug_grounds": "pines de los inyectores a masa en sus conectores, bancada {what}",
    "plan.look_module": "mirar los terminales del conector del módulo",
    "plan.look_through": "mirar dentro de los conectores pasantes abiertos, bancada {what}",
    "plan.look_cover": "mirar bajo la tapa, bancada {what}",
    "plan.drag_module": "prueba de agarre en el conector del módulo",
    "plan.drag_through": "prueba de agarre en los conectores pasantes, bancada {what}",
    "plan.drag_cover": "prueba de agarre en los conectores de los inyectores, bancada {what}",
    "plan.module_volts": "voltios en reposo en cada pin del conector del módulo, todo conectado",
    "plan.through_volts": "voltios en reposo en ambas mitades de los conectores pasantes abiertos, bancada {what}",
    "plan.plug_volts": "voltios en reposo en ambas mitades de los conectores de inyector abiertos, bancada {what}",
    "plan.crank": "voltios de la batería mientras gira el arranque",
    "plan.power_drops": "caída de tensión de la batería al módulo, lado positivo y lado masa",
    "plan.clamp": "pinza en cada retorno mientras se acciona su vecino",
    "plan.lamp_engine": "una lámpara a través de cada cable aislado del motor, bancada {what}",
    "plan.lamp_cover": "una lámpara a través de cada cable aislado bajo tapa, bancada {what}",
    "plan.engine_insulation": "aislamiento entre los retornos del cableado del motor solo, bancada {what}",
    "plan.cover_insulation": "aislamiento entre los retornos bajo tapa solos, bancada {what}",
    "plan.warm_run": "calentar el motor en marcha y hacer la prueba",
    "plan.contribution": "aportación de cada cilindro con el motor en marcha",
    "plan.compression": "compresión relativa por la corriente del arranque",
    "plan.supply": "tensión de mando mientras se accionan todos a la vez",
    "plan.trace": "curva de corriente del cilindro {what}",
    "plan.drops": "caídas de tensión hasta el conector pasante, cilindro {what}, accionado",
    "plan.drops_cover": "caídas de tensión bajo la tapa, cilindro {what}, accionado",
    "plan.move": "mover el cableado durante la prueba: {what}",
    "plan.try": "{test} (intento {number})",
    "plan.heat": "calentar un lugar y hacer la prueba: {what}",
    "plan.reseat_module": "quitar y volver a poner el conector del módulo, y luego hacer la prueba",
    "plan.reseat": "quitar y volver a poner los conectores pasantes de la bancada {what}, y luego hacer la prueba",
    "plan.reseat_plugs": (
        "quitar y volver a poner los conectores de los inyectores de la bancada {what}, y luego hacer la prueba"
    ),
    "plan.lend_module": "hacer la prueba con un módulo bueno conocido",
    "plan.lend_injector": "hacer la prueba con un inyector bueno conocido en el {what}",
    "plan.swap": "intercambiar el retorno del cilindro {what} con el de su vecino y escuchar los dos",
    "plan.dummy": "una carga ficticia en lugar del inyector {what}",
    "plan.complaint": "comprobar la queja: ¿cuándo aparece?",
    "plan.pairs_moved": "ohmios en el conector del módulo mientras mueves el cableado: {what}",
    "plan.grounds_moved": "cada pin a masa en el conector del módulo mientras mueves el cableado: {what}",
    "plan.pairs_warm": "ohmios en el conector del módulo con un lugar caliente: {what}",
    "plan.trace_moved": "curva de corriente mientras mueves el cableado: {what}",
    "plan.trace_warm": "curva de corriente con un lugar caliente: {what}",
    "plan.pairs_reseated": (
        "quitar y poner los conectores pasantes de la bancada {what}; luego, ohmios en el conector del módulo"
    ),
    "plan.pairs_reseated_plugs": (
        "quitar y poner los conectores de los inyectores de la bancada {what}; luego, ohmios en el módulo"
    ),
    "plan.repair_and_retest": "la reparación correcta, y la prueba una vez más",
    "kind_of_step.begin": "Primero haz la prueba y escucha.",
    "kind_of_step.listen": "Escucha otra vez, más cerca o desde otro sitio: el oído aún no ha dicho todo lo que puede.",
    "kind_of_step.memory": "Pregunta qué ha notado el propio módulo.",
    "kind_of_step.outside": "El multímetro, en un conector al que se llega desde fuera.",
    "kind_of_step.inside": "Desde fuera ya nada dice más: toca abrir.",
    "kind_of_step.driven": "Mide mientras pasa corriente: en reposo puede parecer bueno.",
    "kind_of_step.running": "Que el propio motor diga qué cilindro flojea.",
    "kind_of_step.provoke": "Lo que va y viene hay que provocarlo.",
    "kind_of_step.exchange": "Cambia una sola cosa y mira si la avería se va con ella.",
    "kind_of_step.eyes": "Usa los ojos antes de otra lectura.",
    "kind_of_step.feel": "Comprueba cómo agarran los terminales: a simple vista no se nota.",
}

_HINTS = {
    "hint.first": "Pista 1 de 3: {step} (Que se tomó consta en la hoja de trabajo. La siguiente es más fuerte.)",
    "hint.second": "Pista 2 de 3: {test}. {minutes:.0f} min; se espera que diga {bits:.1f} bits.",
    "hint.saves": "De media ahorra {saved:.0f} min de reparaciones equivocadas.",
    "hint.third": "Pista 3 de 3, desarrollada: {test}. Antes de hacerla, tus indicios dejan esto:",
    "hint.finding": "  {percent:>8}  {finding}  → respuesta {lead}",
    "hint.same": "Los dictámenes con la misma letra de respuesta no se distinguen con esta prueba.",
    "hint.proved": "Tus indicios ya demuestran un dictamen. Piensa en lo que tienes y entrégalo.",
    "hint.nothing": "Ninguna prueba de las ofrecidas dice más. Entrega el dictamen y di cómo de seguro lo tienes.",
    "hint.repairs": "Reparaciones en el orden que menos cuesta, {minutes:.0f} min de media:",
    "hint.repair": "  {what}: {percent}, {minutes:.0f} min con la nueva prueba",
    "card.hint": "pista {strength}: {test}",
    "card.hint_first": "pista 1",
    "expect.noted": "Anotado. Haz la lectura y compara.",
    "expect.beside": "Esperabas {predicted}; la pantalla dice {display}.",
    "reasoning.wait": "Calculando qué demuestran los indicios (unos segundos si el motor es nuevo).",
}

_MISCONCEPTIONS = {
    "misconception.insisted": "empeñarse en una avería donde el circuito está bien",
    "misconception.overlooked": "pasar por alto un turno malo",
    "misconception.one_of_two": "encontrar una avería y dejarse la segunda",
    "misconception.even_slot": "nombrar un turno parejo",
    "misconception.burst_or_order": (
        "contar el «todos a la vez» como un turno, o tomar el orden de encendido por el numérico"
    ),
    "misconception.not_shown": "tomar lo no demostrado por bueno",
    "misconception.silent_loudspeaker": "tomar un altavoz mudo por un circuito mudo",
    "misconception.module_for_its_power": "culpar al módulo de lo que le falta",
    "misconception.one_for_group": "un solo turno por todo un grupo",
    "misconception.counted_burst": "contar el «todos a la vez» como un turno",
    "misconception.firing_order": "tomar el orden de encendido por el orden numérico",
    "misconception.measured_connected": "medir sin desconectar",
    "misconception.hum_for_circuit": "tomar el zumbido de fondo por un circuito que funciona",
    "misconception.open_for_short": "tomar un circuito abierto por un corto, o un corto por un circuito abierto",
    "misconception.code_for_location": "tomar un código por un lugar",
    "misconception.code_of_another": "tomar un código viejo por la avería de hoy",
    "misconception.wrong_side": "el lado equivocado de un conector",
    "misconception.by_ear_alone": "nombrar un lugar solo de oído",
    "misconception.unclassified": "sin clasificar",
    "refute.insisted": (
        "Los {count} turnos están parejos, a menos de {spread:.1f} dB del motor sano, y todas las placas se mueven. "
        "Una queja no demuestra nada de este circuito: el circuito está bien, y la avería está en otra parte."
    ),
    "refute.not_shown": (
        "La avería es {true}. Lo que hiciste no la ha mostrado, ni tampoco que no esté: tus indicios dejan "
        "«el circuito está bien» en {passes}. «No demostrado» es una respuesta sobre la prueba, nunca sobre la pieza."
    ),
    "refute.overlooked": (
        "El turno {true_slot} está {under:.0f} dB por debajo de su nivel bueno, y tus indicios solo dejan a "
        "«el circuito está bien» {passes}. La avería es {true}."
    ),
    "refute.one_of_two": (
        "Lo que nombraste está ahí, y otra avería más: {true}. La explicación tiene que cubrir todos los turnos "
        "que no están parejos."
    ),
    "refute.even_slot": (
        "El turno de {said} está parejo. El que no lo está es el {true_slot}, a {under:.0f} dB de su nivel bueno. "
        "Cuenta los turnos en voz alta después de «todos a la vez»: 1, 2, 3 …"
    ),
    "refute.burst_or_order": (
        "El turno malo es el número {true_slot}. Si cuentas el «todos a la vez» te sale {said}, y con el orden de "
        "encendido ({firing}) también: el «todos a la vez» no es de nadie, y la prueba va 1, 2, 3 …"
    ),
    "refute.silent_loudspeaker": (
        "No oíste nada en ningún sitio, pero {even} de {count} turnos están a {level:.0f} dB(A) sobre un ruido de "
        "fondo de {bed:.0f}. Si el ruido de fondo tampoco se oye, es tu altavoz."
    ),
    "refute.module_for_its_power": (
        "El módulo estaba bien: {true}. Un módulo solo entrega lo que le llega de la batería. Parejos: {even} "
        "de {count} turnos. Mide las dos caídas de tensión antes de pedir otro."
    ),
    "refute.one_for_group": (
        "Nombraste {said}; {group} comparten lo que está roto. Escucha toda la fila antes de nombrar uno: "
        "todos están {under:.0f} dB por debajo de su nivel bueno."
    ),
    "refute.counted_burst": (
        "El primer sonido es todos a la vez y no es de nadie. El turno {true_slot} es el que está "
        "{under:.0f} dB por debajo; si cuentas el «todos a la vez» te sale {said}."
    ),
    "refute.firing_order": (
        "La prueba va 1, 2, 3 …, no {firing}. El turno malo es el número {true_slot}; en el orden de encendido "
        "el puesto {true_slot} sería el cilindro {said}."
    ),
    "refute.measured_connected": (
        "Con el conector puesto, tu multímetro midió todo lo que cuelga del cable: {display} no dice nada de una sola "
        "pieza. Abre primero el punto de corte y mide ahí."
    ),
    "refute.hum_for_circuit": (
        "En el turno {true_slot} su propia bobina lleva {own:.2f} A: no hay circuito. Lo que oíste son {others:.1f} A "
        "por cada uno de otros {humming}. Al inyector no le ha llegado la orden; su circuito está abierto."
    ),
    "refute.open_for_short": (
        "Turno {true_slot}: su salida lleva como mucho {output:.1f} A y su bobina {own:.1f} A. En un circuito abierto "
        "no hay ni lo uno ni lo otro; en un corto, lo primero sin lo segundo. Los ohmios del par los distinguen."
    ),
    "refute.code_for_location": (
        "El código nombra un cilindro, nunca un lugar. Todos los lugares de un mismo cable dan el mismo código; "
        "la verdad es {true}. Los ohmios en un punto de corte tras otro te lo habrían dicho."
    ),
    "refute.code_of_another": (
        "Un código nombraba {said}, y su turno está en orden; el que no lo está es el {true_slot}. Un código en "
        "memoria puede ser viejo: bórralo, haz la prueba y lee otra vez. La verdad es {true}."
    ),
    "refute.wrong_side": (
        "Cilindro correcto, pero es la puerta de al lado en el mismo cable: la verdad es {true}. Desconecta ahí y mide "
        "los dos lados: el que mide mal la tiene; si los dos miden bien, es el contacto que hay entre ellos."
    ),
    "refute.by_ear_alone": (
        "De oído, todos los cortes de un mismo circuito son los mismos {under:.0f} dB. Tus indicios daban a tu lugar "
        "{said_chance} y al verdadero {left}. El oído nombra el cilindro; el multímetro nombra el lugar."
    ),
    "refute.unclassified": "La verdad es {true}. Tus indicios daban a tu dictamen {said_chance} y a la verdad {left}.",
}

_DEBRIEF = {
    "debrief.proof": "Demostración: lo que reuniste da a tu dictamen {percent}; con 95 % está demostrado del todo.",
    "debrief.proof_open": (
        "Demostración: tu dictamen tiene {percent}; este caso queda abierto; sus propias pruebas llegan a {reachable}."
    ),
    "debrief.economy": (
        "Minutos: {used:.0f} con la reparación correcta y su nueva prueba; el mejor camino lleva {best:.0f}. "
        "La economía cuenta cuando está demostrado del todo y el lugar es el correcto."
    ),
    "debrief.economy_passes": (
        "Minutos: {used:.0f}; el mejor camino hasta «el circuito está bien» lleva {best:.0f}. "
        "La economía cuenta cuando está demostrado del todo."
    ),
    "debrief.side": "Lado: dijiste {said}, es el {true}. Si arreglas el otro cable, la avería sigue ahí.",
    "debrief.retest_failed": (
        "La nueva prueba volvió a mostrar la avería: no quedó arreglada. Eso cuesta {lost:.0f} puntos."
    ),
    "debrief.the_place": "«{place}»",
    "debrief.another_place": "una avería en otra parte",
    "debrief.unmeasured": (
        "Diste por malo {place} sin una medición que descarte {rival}. Lugar y demostración cuentan la "
        "mitad, y el dictamen no es correcto. "
        "Esa reparación lleva {repair:.0f} min y piezas; si no era eso, la paga el taller o el cliente."
    ),
    "debrief.unmeasured_passes": (
        "Que suene parejo no demuestra el circuito. Compara los ohmios o la curva con un compañero bueno; "
        "sin eso cuenta la mitad."
    ),
    "debrief.hides": (
        "{first} tapa {second}: con la primera avería, ninguna prueba ofrecida muestra la segunda. Arregla la "
        "primera y prueba otra vez."
    ),
    "debrief.would_tell": "Lo que habría dicho más: {test}.",
    "debrief.misconception": "Lo que pasó: {name}.",
    "debrief.step": "           dijo {bits:.1f} bits; el mejor dictamen está ahora en {percent}{out}",
    "debrief.step_out": "; descartado: {names}",
    "debrief.step_strange": "           nada en este motor explica esa respuesta",
    "debrief.best": "El mejor camino hasta esta avería:",
    "debrief.best_step": "{minutes:>5.0f} min  {test}  (se esperan {bits:.1f} bits; después {percent})",
    "debrief.shown_at": "La avería va y viene. Suena cuando actúa: {place}, en movimiento y en caliente.",
    "debrief.left": "Lo que dejan tus indicios:",
    "debrief.left_line": "  {percent:>8}  {finding}",
    "debrief.suspects_right": "Habías descartado: {places}. Con razón.",
    "debrief.suspects_wrong": "Habías descartado: {places}. Y justo ahí está.",
    "debrief.suspects_early": "Habías descartado: {places}, cuando tus indicios aún le daban {percent}.",
    "debrief.other_reading": "  {what}: leíste {display}; con tu respuesta habrías leído {other}",
    "debrief.other_readings": "Tus lecturas junto a las de un motor que tuviera lo que respondiste:",
    "debrief.even_alike": "  todas tus lecturas habrían sido iguales: ninguna habla a favor de tu respuesta",
    "take.opens": "¿Qué te dijo en este caso que no pasa corriente, y qué te dijo dónde se para?",
    "take.shorts": "¿Por dónde se fue la corriente, y qué lectura lo mostró?",
    "take.others": "¿Qué lectura distinguió esta avería de un simple circuito abierto?",
    "take.passes": "¿Qué te faltaría por hacer antes de decir «bueno»?",
    "why.head": "{finding}: {percent}, frente a {rival}: {other}. A favor (+) o en contra (−), en bits:",
    "why.prior": "  {bits:+7.1f}  antes de cualquier indicio",
    "why.line": "  {bits:+7.1f}  {question}",
    "why.rest": "  {bits:+7.1f}  todo lo demás",
    "why.total": "  {bits:+7.1f}  en total",
    "question.slot": "{slot}, oído desde {place}{work}",
    "question.codes": "códigos{work}",
    "question.ohms": "ohmios {pins}{work}",
    "question.volts": "voltios en reposo {pins}{work}",
    "question.lamp": "lámpara {pins}{work}",
    "question.clamp": "pinza {pins} en {slot}{work}",
    "question.crank": "batería al arrancar{work}",
    "question.plus_drop": "caída de tensión, positivo de la batería al módulo{work}",
    "question.ground_drop": "caída de tensión, masa del módulo al negativo{work}",
    "question.contribution": "aportación de cada cilindro{work}",
    "question.compression": "compresión relativa{work}",
    "question.insulation": "aislamiento {pins}{work}",
    "question.drop": "caída de tensión {pins}, {slot}, accionado{work}",
    "question.supply": "tensión de mando{work}",
    "question.trace": "curva de corriente, {slot}{work}",
    "question.dummy": "carga ficticia, {slot}{work}",
    "question.look": "una mirada a lo que está abierto{work}",
    "question.drag": "una prueba de agarre de lo que está abierto{work}",
    "question.ground": "masa",
    "question.pin": "{side} {name} en {point} ({half})",
    "question.moved": ", en movimiento: {place}",
    "question.ran_warm": ", caliente por todas partes",
    "question.warm": ", en caliente: {place}",
    "question.changed": ", con {what}",
    "inspect.posterior": "Probabilidad a posteriori con todos los indicios ofrecidos:",
    "inspect.path": "Mejor camino:",
    "check.unsolvable": "no basta para señalar la verdad: deja {left}",
    "check.solvable": "la verdad al 95 % con todos los indicios ofrecidos, o stays_open con la respuesta correcta",
    "check.offer": "ofrece también {words}",
    "check.own_fault": "más de lo que este programa aguanta: lo detuvo un {kind}",
    "check.an_engine_to_solve": "un motor cuya prueba se pueda resolver",
    "check.engine_runs_away": "un motor cuyas corrientes o placas se disparan",
    "check.mend.engine_runs_away": "acerca los valores de solenoid y module a los de un motor incluido",
    "check.engine_never_rests": "un motor que no se asienta: cada uno de sus pulsos llega hasta el siguiente",
    "check.mend.engine_never_rests": "amortigua la placa y su tope, refuerza la alimentación o envía menos pulsos",
    "check.can_be_checked": "un archivo que se pueda comprobar",
    "check.send_trace": "envía el archivo y las líneas que empiezan por Traceback a quien cuida este programa",
    "check.more": "y {count} más",
    "check.nothing_separates": "ninguna prueba los separa: pon otra avería, o añade stays_open",
    "check.not_open": "está puesto, aunque los indicios demuestran {finding} ({percent})",
    "check.take_open_out": "quita stays_open, u ofrece menos indicios",
    "check.inaudible": "demasiado fuerte: {bed:.1f} dB(A), y el turno {slot} está a {level:.1f} dB(A)",
    "check.audible": "el sonido que decide, al menos {margin:.0f} dB por encima del ruido de fondo",
    "check.quieter_bed": "baja el ruido de fondo a {bed:.1f} dB(A) o menos",
}

TEXTS: dict[str, str] = {**_TESTS, **_HINTS, **_MISCONCEPTIONS, **_DEBRIEF}
