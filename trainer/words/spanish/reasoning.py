"""Spanish for reasoning: tests to do next, misconceptions, hints, paths and proofs."""

_TESTS = {
    "plan.hear": "hacer la prueba entera y escuchar desde delante",
    "plan.through_cover": "escuchar a través de la tapa sobre cada inyector durante su turno",
    "plan.probe": "estetoscopio en cada inyector de la bancada {what} durante su turno",
    "plan.codes": "leer los códigos después de la prueba",
    "plan.module_pairs": "ohmios, de alimentación a cada retorno, en el conector del módulo",
    "plan.module_returns": "ohmios, de retorno a retorno, en el conector del módulo",
    "plan.module_grounds": "ohmios de cada pin a masa en el conector del módulo",
    "plan.through_pairs": "ohmios en los conectores pasantes de la bancada {what}, lado tapa",
    "plan.through_grounds": "ohmios de los pines a masa en los conectores pasantes de la bancada {what}, lado tapa",
    "plan.wires_engine": "cables del cableado del motor de punta a punta, bancada {what}",
    "plan.wires_cover": "cables bajo tapa de punta a punta, bancada {what}",
    "plan.engine_alone": "solo el cableado del motor de la bancada {what}: cada cable a masa y a los demás",
    "plan.cover_alone": "solo el cableado bajo tapa de la bancada {what}: cada cable a masa y a los demás",
    "plan.plug_pairs": "ohmios de los inyectores en sus conectores, bancada {what}",
    "plan.plug_grounds": "ohmios de los pines de los inyectores a masa en sus conectores, bancada {what}",
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
    "plan.lamp_engine": "una lámpara en cada cable aislado del cableado del motor, bancada {what}",
    "plan.lamp_cover": "una lámpara en cada cable aislado bajo tapa, bancada {what}",
    "plan.engine_insulation": "aislamiento entre los retornos del cableado del motor solo, bancada {what}",
    "plan.cover_insulation": "aislamiento entre los retornos bajo tapa solos, bancada {what}",
    "plan.warm_run": "calentar el motor en marcha y hacer la prueba",
    "plan.contribution": "aportación de cada cilindro con el motor en marcha",
    "plan.compression": "compresión relativa por la corriente del arranque",
    "plan.supply": "tensión de mando mientras se accionan todos a la vez",
    "plan.trace": "curva de corriente del cilindro {what}",
    "plan.drops": "caída de tensión bajo carga hasta el conector pasante, cilindro {what}",
    "plan.drops_cover": "caída de tensión bajo carga debajo de la tapa, cilindro {what}",
    "plan.move": "mover el cableado durante la prueba: {what}",
    "plan.try": "{test} (intento {number})",
    "plan.heat": "calentar un sitio y hacer la prueba: {what}",
    "plan.reseat_module": "desconectar y volver a conectar el módulo, y hacer la prueba",
    "plan.reseat": "desconectar y volver a conectar los conectores pasantes de la bancada {what}, y hacer la prueba",
    "plan.reseat_plugs": "desconectar y volver a conectar los inyectores de la bancada {what}, y hacer la prueba",
    "plan.lend_module": "hacer la prueba con un módulo bueno conocido",
    "plan.lend_injector": "hacer la prueba con un inyector bueno conocido en el {what}",
    "plan.swap": "cruzar el retorno del cilindro {what} con el de su vecino y escuchar los dos",
    "plan.dummy": "una carga ficticia en lugar del inyector {what}",
    "plan.complaint": "comprobar la queja: ¿cuándo aparece?",
    "plan.pairs_moved": "ohmios en el conector del módulo mientras mueves el cableado: {what}",
    "plan.grounds_moved": "ohmios de cada pin a masa en el conector del módulo mientras mueves el cableado: {what}",
    "plan.pairs_warm": "ohmios en el conector del módulo con un sitio caliente: {what}",
    "plan.trace_moved": "curva de corriente mientras mueves el cableado: {what}",
    "plan.trace_warm": "curva de corriente con un sitio caliente: {what}",
    "plan.pairs_reseated": (
        "desconectar y volver a conectar los conectores pasantes de la bancada {what}, y leer ohmios en el módulo"
    ),
    "plan.pairs_reseated_plugs": (
        "desconectar y volver a conectar los inyectores de la bancada {what}, y leer ohmios en el módulo"
    ),
    "plan.repair_and_retest": "la reparación correcta, y otra vez la prueba",
    "kind_of_step.begin": "Primero haz la prueba y escucha.",
    "kind_of_step.listen": "Escucha otra vez, más cerca o desde otro sitio. Tu oído puede decirte más.",
    "kind_of_step.memory": "Pregunta al propio módulo qué ha notado.",
    "kind_of_step.outside": "Usa el multímetro en un conector al que llegues desde fuera.",
    "kind_of_step.inside": "Ya sabes todo lo que se puede saber desde fuera. Toca abrir.",
    "kind_of_step.driven": "Mide mientras pasa corriente. En reposo puede parecer bueno.",
    "kind_of_step.running": "Deja que el motor en marcha te diga qué cilindro flojea.",
    "kind_of_step.provoke": "Puede que algo vaya y venga. Provócalo mientras pruebas.",
    "kind_of_step.exchange": "Cambia una sola cosa y mira si la avería se va con ella.",
    "kind_of_step.eyes": "Mira bien antes de hacer otra lectura.",
    "kind_of_step.feel": "Comprueba cómo agarran los terminales: a simple vista no se nota.",
}

_HINTS = {
    "hint.first": "Pista 1 de 3: {step} (Tu hoja de trabajo muestra que la has usado. La siguiente es más fuerte.)",
    "hint.second": (
        "Pista 2 de 3: {test}. Lleva {minutes:.0f} min y debería partir por dos lo que queda {bits:.1f} veces."
    ),
    "hint.saves": "De media ahorra {saved:.0f} min de reparaciones equivocadas.",
    "hint.third": "Pista 3 de 3, desarrollada: {test}. Antes de esta prueba, tus indicios dejan:",
    "hint.finding": "  {percent:>8}  {finding}  → respuesta {lead}",
    "hint.same": "Esta prueba no distingue los dictámenes con la misma letra.",
    "hint.proved": "Tus indicios ya demuestran un dictamen. Piensa en lo que tienes y entrégalo.",
    "hint.nothing": "Ninguna otra prueba de aquí dice más. Entrega tu dictamen y di cuánta seguridad tienes.",
    "hint.repairs": "Reparaciones, de la más barata en adelante, {minutes:.0f} min de media:",
    "hint.repair": "  {what}: {percent}, {minutes:.0f} min con la nueva prueba",
    "card.hint": "Pista {strength}: {test}",
    "card.hint_first": "Pista 1",
    "expect.noted": "Anotado. Haz la lectura y compara.",
    "expect.beside": "Esperabas {predicted}. La pantalla marca {display}.",
    "reasoning.wait": "Calculando qué demuestran tus indicios. En un motor nuevo tarda unos segundos.",
}

_MISCONCEPTIONS = {
    "misconception.insisted": "nombrar una avería cuando el circuito está bien",
    "misconception.overlooked": "pasar por alto un turno que no suena parejo",
    "misconception.one_of_two": "encontrar una avería y dejarse la segunda",
    "misconception.even_slot": "nombrar un turno parejo",
    "misconception.burst_or_order": "contar la ráfaga como un turno, o guiarse por el orden de encendido",
    "misconception.not_shown": "tomar «no se ve» por «está bien»",
    "misconception.silent_loudspeaker": "tomar un altavoz mudo por un circuito mudo",
    "misconception.module_for_its_power": "culpar al módulo de lo que lo alimenta",
    "misconception.one_for_group": "nombrar un turno de todo un grupo",
    "misconception.counted_burst": "contar la ráfaga como un turno",
    "misconception.firing_order": "guiarse por el orden de encendido en vez del numérico",
    "misconception.measured_connected": "medir con el conector puesto",
    "misconception.hum_for_circuit": "tomar el zumbido por un circuito que funciona",
    "misconception.open_for_short": "tomar un abierto por un corto, o un corto por un abierto",
    "misconception.code_for_location": "tomar un código por un lugar",
    "misconception.code_of_another": "tomar un código viejo por la avería de hoy",
    "misconception.wrong_side": "elegir el lado equivocado de un conector",
    "misconception.by_ear_alone": "nombrar un lugar solo de oído",
    "misconception.unclassified": "otra cosa",
    "refute.insisted": (
        "Los {count} turnos están a menos de {spread:.1f} dB de un motor sano, y todas las armaduras se mueven. La "
        "causa no está en este circuito."
    ),
    "refute.not_shown": (
        "La avería es {true}. Tus pruebas no la sacaron a la luz, y «el circuito está bien» queda en {passes}. «No se "
        "ve» habla de la prueba, nunca de la pieza."
    ),
    "refute.overlooked": (
        "La avería es {true}. El turno {true_slot} se aparta {under:.0f} dB de su nivel bueno, y a «el circuito está "
        "bien» solo le queda {passes}."
    ),
    "refute.one_of_two": (
        "Lo que nombraste está ahí, pero hay una segunda avería: {true}. Sigue hasta explicar todos los turnos que no "
        "suenan parejos."
    ),
    "refute.even_slot": (
        "Nombraste {said}, que sonaba parejo. El turno {true_slot} se aparta {under:.0f} dB de uno bueno. Cuenta en "
        "voz alta después de la ráfaga: 1, 2, 3 …"
    ),
    "refute.burst_or_order": (
        "El turno malo es el {true_slot}. Si cuentas la ráfaga, o vas por orden de encendido ({firing}), sale {said}. "
        "Empieza tras la ráfaga: 1, 2, 3 …"
    ),
    "refute.silent_loudspeaker": (
        "No oíste nada, pero {even} de {count} turnos suenan a {level:.0f} dB(A) sobre un ruido de {bed:.0f}. Si no "
        "oyes ese ruido, revisa tu altavoz."
    ),
    "refute.module_for_its_power": (
        "El módulo estaba bien: {true}. Un módulo solo entrega lo que le llega de la batería. Parejos: {even} "
        "de {count} turnos. Mide las dos caídas de tensión antes de pedir otro."
    ),
    "refute.one_for_group": (
        "Nombraste {said}, pero {group} comparten lo que está roto. Todos se apartan {under:.0f} dB. Escucha toda la "
        "fila antes de nombrar uno."
    ),
    "refute.counted_burst": (
        "El primer sonido es de todos a la vez y no es de ningún cilindro suelto. El turno {true_slot} se aparta "
        "{under:.0f} dB. Si cuentas la ráfaga, te sale {said}."
    ),
    "refute.firing_order": (
        "Los turnos van 1, 2, 3 …, no {firing}. El turno malo es el {true_slot}. En el orden de encendido, el puesto "
        "{true_slot} sería el cilindro {said}."
    ),
    "refute.measured_connected": (
        "Mediste con el conector puesto, y el multímetro leyó todo lo que hay en ese cable. De ahí sale {display}. "
        "Primero desconecta, luego mide."
    ),
    "refute.hum_for_circuit": (
        "A la bobina del turno {true_slot} le llegan {own:.2f} A: circuito abierto. Oíste {others:.1f} A por cada uno "
        "de otros {humming}. El inyector puede estar bien."
    ),
    "refute.open_for_short": (
        "En el turno {true_slot} la salida lleva {output:.1f} A y la bobina {own:.1f} A. Un abierto no lleva nada; un "
        "corto se salta la bobina. Mide el par."
    ),
    "refute.code_for_location": (
        "La avería es {true}. Un código nombra un cilindro, nunca un lugar. Cualquier corte de ese cable da el mismo "
        "código. Mide en un punto de corte tras otro."
    ),
    "refute.code_of_another": (
        "La avería es {true}. Un código nombraba {said}, pero el turno que no suena parejo es el {true_slot}. Los "
        "códigos viejos se quedan en memoria: borra, haz la prueba y lee otra vez."
    ),
    "refute.wrong_side": (
        "El cilindro es ese, pero la avería es {true}. Desconecta ahí y mide los dos lados. Si los dos están bien, es "
        "el contacto entre ellos."
    ),
    "refute.by_ear_alone": (
        "Cualquier corte del circuito suena igual, {under:.0f} dB menos. Tus indicios daban a tu lugar {said_chance} "
        "y al verdadero {left}. Otra vez, mide."
    ),
    "refute.unclassified": "La verdad es {true}. Tus indicios daban a tu dictamen {said_chance} y a la verdad {left}.",
}

_DEBRIEF = {
    "debrief.proof": (
        "Demostración: con tus indicios, tu dictamen tiene un {percent} de probabilidad. Desde el 95 % lo damos por "
        "demostrado."
    ),
    "debrief.proof_open": (
        "Demostración: con tus indicios, tu dictamen tiene un {percent}. Este caso queda abierto: todas sus pruebas "
        "juntas llegan a {reachable}."
    ),
    "debrief.economy": (
        "Tiempo: usaste {used:.0f} min, incluidas la reparación correcta y su prueba. El mejor camino lleva "
        "{best:.0f} min. La economía cuenta cuando el lugar es correcto y está demostrado."
    ),
    "debrief.economy_passes": (
        "Tiempo: usaste {used:.0f} min. El mejor camino hasta «el circuito está bien» lleva {best:.0f} min. La "
        "economía cuenta cuando está demostrado."
    ),
    "debrief.side": "Lado: dijiste {said}, pero es el {true}. Si reparas el otro cable, la avería sigue ahí.",
    "debrief.retest_failed": (
        "Al repetir la prueba la avería seguía ahí, así que esa reparación no la quitó. Eso cuesta {lost:.0f} puntos."
    ),
    "debrief.retest_again": "Al repetir la prueba la avería seguía ahí.",
    "debrief.the_place": "«{place}»",
    "debrief.another_place": "una avería en otro sitio",
    "debrief.unmeasured": (
        "Nombraste {place}, pero ninguna medición descarta {rival}. Por eso el lugar y la demostración cuentan solo "
        "la mitad, y el dictamen no es correcto. Esa reparación lleva {repair:.0f} min y piezas. Si no era eso, la "
        "paga el taller o el cliente."
    ),
    "debrief.unmeasured_passes": (
        "Que los turnos suenen parejos no demuestra que el circuito esté bien. Compara los ohmios o la curva de "
        "corriente con un cilindro bueno. Sin eso, la demostración cuenta la mitad."
    ),
    "debrief.hides": (
        "{first} tapa {second}: con la primera avería, ninguna prueba de aquí muestra la segunda. Repara la primera y "
        "prueba otra vez."
    ),
    "debrief.would_tell": "Esto te habría dicho más: {test}.",
    "debrief.misconception": "Qué falló: {name}.",
    "debrief.step": "           dio {bits:.1f} bits; el mejor dictamen está ahora en {percent}{out}",
    "debrief.step_out": "; descartado: {names}",
    "debrief.step_strange": "           ninguna avería de este motor explica esa respuesta",
    "debrief.best": "El mejor camino hasta esta avería:",
    "debrief.best_step": "{minutes:>5.0f} min  {test}  (se esperan {bits:.1f} bits; después {percent})",
    "debrief.best_open": "Este camino no llega a probar la avería, así que termina sin repararla.",
    "debrief.shown_at": "La avería va y viene, así que suena cuando se nota: {place}, en movimiento y en caliente.",
    "debrief.left": "Lo que dejan tus indicios:",
    "debrief.left_line": "  {percent:>8}  {finding}",
    "debrief.suspects_right": "Descartaste {places}, y acertaste.",
    "debrief.suspects_wrong": "Descartaste {places}, y ahí está la avería.",
    "debrief.suspects_early": "Descartaste {places} demasiado pronto: tus indicios todavía le daban {percent}.",
    "debrief.other_reading": "  {what}: leíste {display}; con tu respuesta habrías leído {other}",
    "debrief.other_readings": "Tus lecturas, junto a las de un motor con tu respuesta:",
    "debrief.even_alike": "  Todas tus lecturas habrían sido iguales, así que ninguna apoya tu respuesta.",
    "take.opens": "¿Qué te dijo que no pasa corriente, y qué te dijo dónde se para?",
    "take.shorts": "¿Por dónde se fue la corriente, y qué lectura lo mostró?",
    "take.others": "¿Qué lectura distinguió esta avería de un simple circuito abierto?",
    "take.passes": "¿Qué te faltaría por comprobar antes de decir «está bien»?",
    "why.head": "{finding}: {percent}. Su rival: {rival}, {other}. A favor (+) o en contra (−), en bits:",
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
    "check.own_fault": "demasiado para este programa: se paró con un {kind}",
    "check.an_engine_to_solve": "un motor cuya prueba se pueda resolver",
    "check.engine_runs_away": "un motor cuyas corrientes o armaduras se disparan",
    "check.mend.engine_runs_away": "acerca los valores de solenoid y module a los de un motor incluido",
    "check.engine_never_rests": "un motor que no se asienta: cada pulso se mete en el siguiente",
    "check.mend.engine_never_rests": "amortigua la armadura y su tope, refuerza la alimentación o manda menos pulsos",
    "check.can_be_checked": "un archivo que se pueda comprobar",
    "check.send_trace": "envía el archivo y las líneas que empiezan por Traceback a quien cuida este programa",
    "check.more": "y {count} más",
    "check.nothing_separates": "ninguna prueba los distingue: elige otra avería, o añade stays_open",
    "check.not_open": "está puesto, aunque los indicios demuestran {finding} ({percent})",
    "check.take_open_out": "quita stays_open, u ofrece menos indicios",
    "check.inaudible": "demasiado fuerte: {bed:.1f} dB(A), y el turno {slot} está a {level:.1f} dB(A)",
    "check.audible": "el sonido que decide, al menos {margin:.0f} dB por encima del ruido de fondo",
    "check.quieter_bed": "baja el ruido de fondo a {bed:.1f} dB(A) o menos",
    "fair.case": "Caso",
    "fair.listener.good_headphones": "auriculares buenos",
    "fair.listener.cheap_headphones": "auriculares baratos",
    "fair.listener.laptop": "altavoz del portátil",
    "fair.listener.phone": "altavoz del móvil",
    "fair.listener.age_45": "45 años",
    "fair.listener.age_60": "60 años",
    "fair.listener.age_60_laptop": "60 años, altavoz del portátil",
    "fair.fair": "justo",
    "fair.lost_one": "el turno {slots} se pierde",
    "fair.lost_several": "los turnos {slots} se pierden",
    "fair.lost_every": "se pierden todos los turnos",
    "fair.alike_one": "el turno {slots} suena bien",
    "fair.alike_several": "los turnos {slots} suenan bien",
    "fair.alike_every": "todos los turnos suenan bien",
    "fair.sum": "{listener}: {fair} de {count} casos son justos",
    "fair.sum_one": "{listener}: {fair} de {count} caso es justo",
    "fair.listening": "Escuchando el caso {number} de {count}.",
    "fair.meaning": (
        "Un turno se pierde cuando el ruido del taller lo tapa, o cuando es demasiado débil para esos oídos. "
        "Un turno suena bien cuando está a menos de {limit:.0f} dB de uno bueno."
    ),
    "fair.note": (
        "Se trata de salidas de sonido y de los oídos típicos de una edad. No es una prueba del oído de nadie."
    ),
    "fair.no_case_in_it": "sin ningún caso ni conjunto",
    "fair.an_engine": "un perfil de motor",
    "fair.a_case": "un caso, un conjunto, o una carpeta que los contenga",
}

TEXTS: dict[str, str] = {**_TESTS, **_HINTS, **_MISCONCEPTIONS, **_DEBRIEF}
