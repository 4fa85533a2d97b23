"""Las frases de los ejercicios, en español."""

from __future__ import annotations

TEXTS: dict[str, str] = {
    "exercise.fault": "{kind}, {location}, cilindro {cylinders}",
    "exercise.whole": "la prueba entera",
    "exercise.good_slot": "turno {number} en un motor sano",
    "exercise.this_slot": "turno {number} en este motor",
    "exercise.none": "ninguno: todos los turnos son parejos",
    "exercise.no_code": "ningún código",
    "exercise.which": "Oye la prueba entera. ¿Qué turnos no son parejos?",
    "exercise.which.right": "Correcto: no suena parejo {cylinders}, contado en orden numérico después de la ráfaga.",
    "exercise.which.none": (
        "Correcto: todos los turnos son parejos; pequeñas diferencias entre inyectores sanos no son avería."
    ),
    "exercise.which.even": "Aquí los turnos de {cylinders} son parejos.",
    "exercise.which.missed": "Aquí no suena parejo: {cylinders}.",
    "exercise.which.one": "Hay más de uno: {cylinders} comparten una causa.",
    "exercise.which.firing": "{said} es lo que pone ahí el orden de encendido; los turnos van en orden numérico.",
    "exercise.which.burst": "{said} cuenta la ráfaga conjunta como un turno; la ráfaga va primero y no es de nadie.",
    "exercise.which.rule": (
        "Primero la ráfaga, luego cada cilindro en orden numérico: se cuenta desde después de la ráfaga."
    ),
    "exercise.what": "Oye los dos. ¿Cómo suena el turno {number} en este motor?",
    "exercise.what.even": "parejo: a pocos decibelios de su sonido sano",
    "exercise.what.weak": "débil: el golpe está, claramente más suave",
    "exercise.what.dull": "apagado: un golpe sordo sin brillo, corriente sin clic",
    "exercise.what.very_faint": "muy tenue: ningún clic propio, queda un zumbido",
    "exercise.what.nothing": "nada: solo el fondo",
    "exercise.what.rule": "Parejo, débil, apagado, muy tenue, nada: cada uno dice otra cosa del circuito.",
    "exercise.hum": "Oye el turno {number}, sano y en este motor. ¿Qué dice lo que queda de él?",
    "exercise.hum.own": "Su propio circuito lleva corriente: algo del inyector {number} trabaja.",
    "exercise.hum.hum": "Es la corriente de fondo de los demás; el circuito {number} mismo no lleva nada.",
    "exercise.hum.bed": "Es el fondo del taller.",
    "exercise.hum.worn": "El inyector {number} está gastado y golpea suave.",
    "exercise.hum.faint.hum": (
        "Correcto: en el turno {number} el módulo alimenta un circuito que no está entero, y se oye la pequeña "
        "corriente que pasa por todos los demás."
    ),
    "exercise.hum.faint.own": (
        "Un zumbido tenue no es señal de vida: el sonido viene de los otros inyectores, no de {number}."
    ),
    "exercise.hum.faint.bed": "El fondo está bajo todos los turnos; este zumbido sobresale de él en el turno {number}.",
    "exercise.hum.faint.worn": "Un inyector gastado todavía golpea; aquí no se mueve nada de {number}.",
    "exercise.hum.dull.own": (
        "Correcto: un golpe sordo es corriente propia sin clic completo, así que el circuito {number} está cerrado."
    ),
    "exercise.hum.dull.hum": "El zumbido de los demás es mucho más tenue: el circuito {number} lleva corriente.",
    "exercise.hum.dull.bed": "El fondo está bajo todos los turnos; esto sobresale mucho en el turno {number}.",
    "exercise.hum.dull.worn": (
        "Las placas gastadas suenan más brillantes o más tarde, no apagadas: aquí {number} no se mueve como debe."
    ),
    "exercise.hum.rule": (
        "Un zumbido sin corriente en su propia bobina es de los otros. Un golpe sordo es corriente sin clic."
    ),
    "exercise.order": "Después de la ráfaga los turnos llegan uno a uno. ¿Qué cilindro es el número {count}?",
    "exercise.order.right": "Correcto: los turnos van en orden numérico, así que es el {number}.",
    "exercise.order.burst": "{said} se va por uno: la ráfaga va primero y no es turno de nadie.",
    "exercise.order.other": "El {said} tiene su propio turno, en su lugar del orden numérico.",
    "exercise.counted": (
        "Contando todos los sonidos desde el principio, ráfaga incluida, el tenue es el número {count}. ¿Qué "
        "cilindro es?"
    ),
    "exercise.counted.right": "Correcto: la ráfaga fue el número 1, así que el sonido {count} es el cilindro {number}.",
    "exercise.place": "¿Dónde está el cilindro {number} en este motor?",
    "exercise.place.right": "Correcto: el {number} está ahí, {where}.",
    "exercise.place.other": "Ahí está el {said}: {where}.",
    "exercise.where": "bancada {bank}, número {place} desde delante",
    "exercise.shared": "Los turnos de {cylinders} fallaron juntos. ¿Qué comparten estos, y ningún otro?",
    "exercise.shared.right": "Correcto: {cylinders} y nada más están detrás.",
    "exercise.shared.other": "Detrás de eso están {cylinders}.",
    "exercise.shared.connector": "el conector pasamuros {name}",
    "exercise.shared.output": "la salida de alimentación {name} del módulo",
    "exercise.shared.bank": "la bancada {name}",
    "exercise.shared.nothing": "nada: cada uno tiene su propia avería",
    "exercise.shared.one_cause": (
        "Varios a la vez que comparten una pieza son una sola avería en ella mientras no se demuestre otra cosa."
    ),
    "exercise.numbering.rule": (
        "Los números siguen el plano del motor, los turnos siguen los números; el orden de encendido es {firing} y "
        "no ordena nada en esta prueba."
    ),
    "exercise.says": "Después de la prueba esto queda en memoria. ¿Qué prueba {code}?",
    "exercise.says.right": "La corriente de este circuito no fue la debida; el lugar queda abierto.",
    "exercise.says.right.why": "Correcto: {meaning}. Un código nunca nombra un lugar.",
    "exercise.says.place": "La avería está en el circuito del cilindro {number} en este lugar: {place}.",
    "exercise.says.place.why": "El módulo mide en sus propios bornes: no distingue un lugar del cable de otro.",
    "exercise.says.injector": "El inyector {number} está mal.",
    "exercise.says.injector.why": (
        "Cableado, conector, módulo y bobina pueden dejar este código; así se compra un inyector que estaba bien."
    ),
    "exercise.could": "La prueba dejó estos códigos. ¿Cuál de estas averías no pudo dejar exactamente estos?",
    "exercise.could.right": "Correcto: esa dejaría {codes}.",
    "exercise.could.same": "Esta deja justo estos códigos.",
    "exercise.old": "Se leyeron los códigos, se borraron y se repitió la prueba. ¿Qué hay de {code}?",
    "exercise.old.first": "leídos primero: {codes}",
    "exercise.old.again": "tras borrar y probar de nuevo: {codes}",
    "exercise.old.right": "Es de antes de probar ahora el {number}: cierto una vez, no prueba lo que falla hoy.",
    "exercise.old.right.why": "Correcto: esta prueba no lo volvió a poner. Es viejo, o de algo que va y viene.",
    "exercise.old.today": "El cilindro {number} es lo que falla hoy, pues su código estaba en memoria.",
    "exercise.old.today.why": "La prueba no lo volvió a poner: su circuito llevó corriente como debe.",
    "exercise.old.two": "Hay dos averías, en {first} y en {second}.",
    "exercise.old.module": "El módulo olvida códigos y está mal.",
    "exercise.old.module.why": "Borrar quita los códigos; para eso sirve.",
    "exercise.codes.rule": "Leer, borrar, probar, leer otra vez; un código nombra un circuito, nunca un lugar.",
    "exercise.reading": "¿Qué dice esta lectura del circuito desde aquí?",
    "exercise.reading.mate": "su vecino sano marca {display}",
    "exercise.reading.good": "buena: dentro de los límites del medidor respecto al vecino",
    "exercise.reading.good.why": "Dos lecturas más cercanas que dos veces los límites del medidor no se distinguen.",
    "exercise.reading.open": "abierto en algún punto desde aquí",
    "exercise.reading.open.why": "Fuera de rango en el óhmetro: no hay camino, esté donde esté el corte.",
    "exercise.reading.high": "demasiado alta: resistencia añadida",
    "exercise.reading.high.why": (
        "Más que el vecino por encima de dos veces los límites: una mala unión o un cable fino."
    ),
    "exercise.reading.low": "demasiado baja: un corto, o faltan espiras",
    "exercise.reading.low.why": (
        "Menos que el vecino por encima de dos veces los límites: otro camino, o una bobina más corta."
    ),
    "exercise.reading.rule": (
        "Juzga por un vecino sano y los límites del medidor, aquí ±({percent:.1f} % + {counts} cuentas)."
    ),
    "exercise.where_break": "Un corte en el retorno del cilindro {number}. ¿Qué lugar dejan estas lecturas?",
    "exercise.where.engine_harness": (
        "Correcto: el cable de punta a punta está fuera de rango, y todo lo de detrás marca bien."
    ),
    "exercise.where.pass_through_connector": (
        "Correcto: las dos mitades marcan bien por separado; solo queda el contacto entre ellas."
    ),
    "exercise.where.under_cover_harness": (
        "Correcto: fuera de rango desde el lado de la tapa, bien en el inyector: queda el cable entre ambos."
    ),
    "exercise.where.solenoid_coil": "Correcto: fuera de rango en los propios bornes del inyector.",
    "exercise.where.other": "Una de estas lecturas habría sido otra si el corte estuviera ahí.",
    "exercise.where.rule": "Parte el circuito en cada conector; si las dos mitades marcan bien, mira lo que las une.",
    "exercise.slip": "¿Qué vale esta lectura?",
    "exercise.slip.how.fine": "conector del módulo quitado, sin contacto, puntas a cero",
    "exercise.slip.how.connected": "pinchado por detrás con el enchufe puesto, sin contacto, puntas a cero",
    "exercise.slip.how.leads": "enchufe del inyector quitado, sin contacto, puntas sin poner a cero",
    "exercise.slip.how.live": "conector del módulo quitado, con contacto",
    "exercise.slip.fine": "Se puede confiar en ella tal cual.",
    "exercise.slip.fine.why": (
        "Enchufe quitado, sin contacto, puntas a cero: entonces la lectura es solo de esta parte."
    ),
    "exercise.slip.connected": "Es de todo lo que cuelga del cable.",
    "exercise.slip.connected.why": "Con el enchufe puesto, la corriente toma también los demás caminos.",
    "exercise.slip.leads": "Lleva dentro la resistencia de las puntas.",
    "exercise.slip.leads.why": "Con tan pocos ohmios las puntas cuentan: ponlas a cero antes.",
    "exercise.slip.live": "No vale nada, y el medidor puede dañarse.",
    "exercise.slip.live.why": "Nunca se miden ohmios con tensión: sin contacto, esperar, comprobar que no hay tensión.",
    "exercise.slip.rule": "Sin contacto y comprobado, enchufe quitado, puntas a cero, y entonces leer.",
    "exercise.begun.heard": "oído: los turnos de {cylinders} suenan distintos, los demás parejos",
    "exercise.next": "Hasta aquí se sabe esto. ¿Cuál de estas pruebas dice ahora más por minuto?",
    "exercise.next.best": "Correcto: se esperan {bits:.2f} bit en {minutes:.0f} min, lo que más por su tiempo.",
    "exercise.next.less": "Se esperan {bits:.2f} bit en {minutes:.0f} min: menos por su tiempo.",
    "exercise.next.rule": (
        "Pregunta a cada prueba qué podría descartar y qué cuesta; primero lo barato que parte en dos."
    ),
    "exercise.stop": "¿Queda probado un diagnóstico con esto?",
    "exercise.stop.done": "hecho: {step}",
    "exercise.stop.likeliest": "lo que todo esto deja: {findings}",
    "exercise.stop.commit": "Sí: darlo por bueno y reparar.",
    "exercise.stop.commit.why": "Su probabilidad con estas pruebas es {sure}; desde el 95 % se llama probado.",
    "exercise.stop.on": "No: seguir midiendo.",
    "exercise.stop.on.why": (
        "Su probabilidad con estas pruebas es {sure}, y {others} otros diagnósticos siguen siendo probables."
    ),
    "exercise.stop.rule": "Para cuando las pruebas dejen un solo diagnóstico, no cuando se te ocurra uno.",
    "exercise.unseen.nozzle": "una tobera gastada",
    "exercise.unseen.seat": "un asiento de válvula que pierde dentro de un inyector",
    "exercise.unseen.rail": "presión baja de combustible o de aceite de mando",
    "exercise.unseen.compression": "compresión baja en un cilindro",
    "exercise.unseen.air": "aire en el combustible",
    "exercise.unseen.return_leak": "un retorno excesivo de un inyector",
    "exercise.still": "Oye la prueba: pareja, y no dejó ningún código. ¿Cuál de estas podría fallar todavía?",
    "exercise.still.right": (
        "Correcto: no mueve ninguna bobina ni cambia ningún clic, así que esta prueba no puede mostrarlo."
    ),
    "exercise.still.heard": "Eso se habría oído en esta prueba.",
    "exercise.shown": "Oye la prueba: pareja, sin código. ¿Cuál de estas queda descartada?",
    "exercise.shown.right": "Correcto: habría sonado muy distinto de parejo.",
    "exercise.shown.unseen": "Mecánico e hidráulico: una prueba pareja no dice nada de eso.",
    "exercise.shown.shy": "Solo se muestra al mover o calentar su sitio: una prueba pareja en reposo no la descarta.",
    "exercise.after": (
        "Oye la prueba: pareja, sin código, lecturas buenas. El motor sigue fallando en el {number}. ¿Y ahora?"
    ),
    "exercise.after.not_shown": "Decir «aquí no se muestra» y seguir con combustible, compresión y retorno.",
    "exercise.after.not_shown.why": (
        "Correcto, según el manual del fabricante: la prueba ha hecho su parte. Lo que no puede mostrar se busca con "
        "otras."
    ),
    "exercise.after.injector": "Cambiar el inyector {number}, pues es el que falla en carretera.",
    "exercise.after.injector.why": (
        "Nada de lo mostrado lo dice; por compresión o combustible fallaría también el nuevo."
    ),
    "exercise.after.module": "Cambiar el módulo de mando, pues todos los inyectores golpean.",
    "exercise.after.module.why": "El módulo alimentó cada turno como debe.",
    "exercise.after.good": "Anotar «el inyector {number} está bien» en la hoja y cerrar el trabajo.",
    "exercise.after.good.why": (
        "«El circuito pasa» nunca es «el inyector está bien»: ni la pulverización ni el cierre se han probado."
    ),
    "exercise.limits.rule": (
        "Esta prueba muestra circuitos y armaduras que se mueven. Pulverización, cierre, presión y compresión no se "
        "muestran."
    ),
    "exercise.card": "Esta hoja de trabajo tiene un paso equivocado. ¿Cuál?",
    "exercise.card.step": "{number}. {step}",
    "exercise.card.choice": "paso {number}",
    "exercise.card.stands": "Ese paso se sostiene: el modelo lo confirma.",
    "exercise.card.heard": "Oído: el turno {cylinders} es muy tenue, los demás parejos.",
    "exercise.card.code": "Código {code}: {meaning}.",
    "exercise.card.code_place": "Código {code}: {meaning}; luego el lugar es: {place}.",
    "exercise.card.not_nulled": "(enchufe quitado, puntas sin poner a cero)",
    "exercise.card.plug_on": "(enchufe puesto, puntas a cero)",
    "exercise.card.concluded": "Queda por todo ello: {place}.",
    "exercise.card.slot": "Encontrado: el turno distinto es otro; cuenta de nuevo desde después de la ráfaga.",
    "exercise.card.named_place": "Encontrado: un código nunca nombra un lugar.",
    "exercise.card.connected": "Encontrado: con el enchufe puesto, la lectura es de todo lo que cuelga del cable.",
    "exercise.card.leads": "Encontrado: esa lectura lleva dentro la resistencia de las puntas.",
    "exercise.card.conclusion": "Encontrado: estas lecturas, bien tomadas, dejan otro lugar.",
    "exercise.card.rule": "Revisa cada paso por sí mismo: qué se oyó, cómo se midió, qué se sigue.",
    "exercise.backwards": (
        "Contando hacia atrás desde el último turno, que es el 1, el tenue es el número {count}. ¿Qué cilindro es?"
    ),
    "exercise.still.shy": "Correcto: solo se muestra al mover o calentar su sitio; en reposo la prueba es pareja.",
    "exercise.card.rightly": "(enchufe quitado, puntas a cero)",
    "exercise.next.choice": "{test} ({minutes:.0f} min)",
    "exercise.begun.all": "oído: todos los turnos suenan distintos",
}
