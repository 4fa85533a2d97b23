"""Las frases de los ejercicios, en español."""

from __future__ import annotations

TEXTS: dict[str, str] = {
    "exercise.fault": "{kind}, {location}, {cylinders}",
    "exercise.whole": "la prueba entera",
    "exercise.good_slot": "turno {number} en un motor sano",
    "exercise.this_slot": "turno {number} en este motor",
    "exercise.none": "ninguno: todos los turnos son parejos",
    "exercise.no_code": "ningún código",
    "exercise.which": "Oye la prueba entera. ¿Qué turnos no son parejos?",
    "exercise.which.right": "No suena parejo {cylinders}, contado en orden numérico después de la ráfaga.",
    "exercise.which.none": ("Todos los turnos son parejos; pequeñas diferencias entre inyectores sanos no son avería."),
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
    "exercise.hum": "Oye el turno {number}, sano y en este motor. ¿Qué queda en él?",
    "exercise.hum.own": "Su propio circuito lleva corriente: algo del inyector {number} trabaja.",
    "exercise.hum.hum": "Es la corriente de fondo de los demás; el circuito {number} mismo no lleva nada.",
    "exercise.hum.bed": "Es solo el fondo del taller; del motor no suena nada.",
    "exercise.hum.worn": "El inyector {number} está gastado y golpea suave.",
    "exercise.hum.rule": (
        "Un zumbido sin corriente en su propia bobina es de los otros. Un golpe sordo es corriente sin clic."
    ),
    "exercise.order": "Después de la ráfaga los turnos llegan uno a uno. ¿Qué cilindro es el número {count}?",
    "exercise.order.right": "Los turnos van en orden numérico, así que es el {number}.",
    "exercise.order.burst": "{said} se va por uno: la ráfaga va primero y no es turno de nadie.",
    "exercise.order.other": "El {said} tiene su propio turno, en su lugar del orden numérico.",
    "exercise.counted": (
        "Contando todos los sonidos desde el principio, ráfaga incluida, el tenue es el número {count}. ¿Qué "
        "cilindro es?"
    ),
    "exercise.counted.right": "La ráfaga fue el número 1, así que el sonido {count} es el cilindro {number}.",
    "exercise.place": "¿Dónde está el cilindro {number} en este motor?",
    "exercise.place.right": "El {number} está ahí, {where}.",
    "exercise.place.other": "Ahí está el {said}: {where}.",
    "exercise.where": "bancada {bank}, número {place} desde delante",
    "exercise.shared": "Los turnos de {cylinders} fallaron juntos. ¿Qué comparten estos, y ningún otro?",
    "exercise.shared.right": "{cylinders} y nada más están detrás.",
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
    "exercise.says": "Después de la prueba esto queda en memoria. ¿Qué de esto demuestra {code}?",
    "exercise.says.right": "La corriente de este circuito estuvo fuera de los límites del código durante la prueba.",
    "exercise.says.right.why": "{meaning}. Un código nunca nombra un lugar.",
    "exercise.says.place": "La avería está en el circuito del cilindro {number} en este lugar: {place}.",
    "exercise.says.place.why": "El módulo mide en sus propios bornes: no distingue un lugar del cable de otro.",
    "exercise.says.injector": "El inyector {number} está mal.",
    "exercise.says.injector.why": (
        "Cableado, conector, módulo y bobina pueden dejar este código; así se compra un inyector que estaba bien."
    ),
    "exercise.could": "La prueba dejó estos códigos. ¿Cuál de estas averías no pudo dejar exactamente estos?",
    "exercise.could.right": "Esa dejaría {codes}.",
    "exercise.could.same": "Esta deja justo estos códigos.",
    "exercise.old": "Se leyeron los códigos, se borraron y se repitió la prueba. ¿Qué hay de {code}?",
    "exercise.old.first": "leídos primero: {codes}",
    "exercise.old.again": "tras borrar y probar de nuevo: {codes}",
    "exercise.old.today": "El circuito {number} no está hoy como debe.",
    "exercise.old.two": "Hoy hay dos averías, en {first} y en {second}.",
    "exercise.old.module": "El módulo olvida códigos y está mal.",
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
    "exercise.reading.low": "demasiado baja: un corto, o espiras en cortocircuito",
    "exercise.reading.low.why": (
        "Menos que el vecino por encima de dos veces los límites: otro camino, o espiras en cortocircuito."
    ),
    "exercise.reading.rule": (
        "Juzga por un vecino sano y los límites del medidor, aquí ±({percent:.1f} % + {counts} cuentas)."
    ),
    "exercise.where_break": "Un corte en el retorno del cilindro {number}. ¿Qué lugar dejan estas lecturas?",
    "exercise.where.engine_harness": ("El cable de punta a punta está fuera de rango, y todo lo de detrás marca bien."),
    "exercise.where.pass_through_connector": (
        "Las dos mitades marcan bien por separado; solo queda el contacto entre ellas."
    ),
    "exercise.where.under_cover_harness": (
        "Fuera de rango desde el lado de la tapa, bien en el inyector: queda el cable entre ambos."
    ),
    "exercise.where.solenoid_coil": "Fuera de rango en los propios bornes del inyector.",
    "exercise.where.other": "Una de estas lecturas habría sido otra si el corte estuviera ahí.",
    "exercise.where.rule": "Parte el circuito en cada conector; si las dos mitades marcan bien, mira lo que las une.",
    "exercise.slip": "¿Qué vale esta lectura?",
    "exercise.slip.how.fine": "conector del módulo quitado, llave quitada, puntas a cero",
    "exercise.slip.how.connected": "pinchado por detrás en el inyector, enchufe puesto, llave quitada, puntas a cero",
    "exercise.slip.how.leads": "enchufe del inyector quitado, llave quitada, puntas sin poner a cero",
    "exercise.slip.how.live": "pinchado por detrás en el inyector, enchufe puesto, llave puesta",
    "exercise.slip.fine": "Es el valor de esta parte.",
    "exercise.slip.fine.why": (
        "Enchufe quitado, llave quitada, puntas a cero: entonces la lectura es solo de esta parte."
    ),
    "exercise.slip.connected": "Puede ser demasiado baja y esconder un corte.",
    "exercise.slip.connected.why": "Con el enchufe puesto, la corriente toma también los demás caminos.",
    "exercise.slip.leads": "Es unas décimas de ohmio demasiado alta.",
    "exercise.slip.leads.why": "Lo que no se pone a cero va dentro; con tan pocos ohmios eso cuenta.",
    "exercise.slip.live": "No es ningún valor, y el medidor puede dañarse.",
    "exercise.slip.live.why": (
        "Nunca se miden ohmios con tensión: llave quitada, esperar, comprobar que no hay tensión."
    ),
    "exercise.slip.rule": "Llave quitada y comprobado, enchufe quitado, puntas a cero, y entonces leer.",
    "exercise.begun.heard": "oído: los turnos de {cylinders} suenan distintos, los demás parejos",
    "exercise.next": "Hasta aquí se sabe esto. ¿Cuál de estas pruebas dice ahora más por minuto?",
    "exercise.next.best": (
        "Se espera que parta por dos lo que queda {bits:.1f} veces en {minutes:.0f} min: lo que más por su tiempo."
    ),
    "exercise.next.less": (
        "Se espera que parta por dos lo que queda {bits:.1f} veces en {minutes:.0f} min: menos por su tiempo."
    ),
    "exercise.next.rule": (
        "Pregunta a cada prueba qué podría descartar y qué cuesta; primero lo barato que parte en dos."
    ),
    "exercise.stop": "¿Queda probado un diagnóstico con esto?",
    "exercise.stop.done": "hecho: {step}",
    "exercise.stop.likeliest": "lo más probable con todo esto: {findings}",
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
    "exercise.still.heard": "Eso se habría oído en esta prueba.",
    "exercise.shown": "Oye la prueba: pareja, sin código. ¿Cuál de estas queda descartada?",
    "exercise.shown.right": "Habría sonado muy distinto de parejo.",
    "exercise.shown.unseen": "Mecánico e hidráulico: una prueba pareja no dice nada de eso.",
    "exercise.shown.shy": "Solo se muestra al mover o calentar su sitio: una prueba pareja en reposo no la descarta.",
    "exercise.after.not_shown": "Decir «aquí no se muestra» y seguir con combustible, compresión y retorno.",
    "exercise.after.not_shown.why": (
        "Todavía no: lo que se sabe apunta a este circuito, y esta prueba aún puede dar más."
    ),
    "exercise.after.injector": "Cambiar el inyector {number}, pues es el que falla en carretera.",
    "exercise.after.injector.why": (
        "Nada de lo mostrado lo dice; por compresión o combustible fallaría también el nuevo."
    ),
    "exercise.after.module": "Cambiar el módulo de mando, pues todos los inyectores golpean.",
    "exercise.after.module.why": "El módulo alimentó cada turno.",
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
    "exercise.still.shy": "Solo se muestra al mover o calentar su sitio; en reposo la prueba es pareja.",
    "exercise.card.rightly": "(enchufe quitado, puntas a cero)",
    "exercise.next.choice": "{test} ({minutes:.0f} min)",
    "exercise.begun.all": "oído: todos los turnos suenan distintos",
    "exercise.hum.hum.hum": (
        "En el turno {number} el módulo alimenta un circuito abierto. Lo que oyes es la corriente de fondo por todos "
        "los demás inyectores."
    ),
    "exercise.hum.hum.own": (
        "Un zumbido tenue no es señal de vida: el sonido viene de los otros inyectores, no de {number}."
    ),
    "exercise.hum.hum.bed": "El fondo está bajo todos los turnos; este zumbido sobresale de él en el turno {number}.",
    "exercise.hum.hum.worn": "Un inyector gastado todavía golpea; aquí no se mueve nada de {number}.",
    "exercise.hum.own.own": (
        "Un golpe sordo es corriente propia sin clic completo, así que el circuito {number} está cerrado."
    ),
    "exercise.hum.own.hum": "El zumbido de los demás es mucho más tenue: el circuito {number} lleva corriente.",
    "exercise.hum.own.bed": "El fondo está bajo todos los turnos; esto sobresale mucho en el turno {number}.",
    "exercise.hum.own.worn": (
        "Las placas gastadas suenan más brillantes o más tarde, no apagadas: aquí {number} no se mueve como debe."
    ),
    "exercise.hum.bed.bed": "Ni clic ni zumbido: en el turno {number} no pasa corriente, ni suya ni de los demás.",
    "exercise.hum.bed.hum": "Un zumbido sobresaldría del fondo en el turno {number}; aquí no sobresale nada.",
    "exercise.hum.bed.own": "La corriente propia da un golpe o un clic; en el turno {number} no hay nada.",
    "exercise.hum.bed.worn": "Un inyector gastado todavía golpea; el turno {number} está vacío.",
    "exercise.unproved": "Después de la prueba esto queda en memoria. ¿Qué de esto no demuestra {code}?",
    "exercise.unproved.circuit": "Fue el circuito del cilindro {number}.",
    "exercise.unproved.once": "El módulo lo vio al menos una vez.",
    "exercise.unproved.proved": "Justo eso es lo que dice: {meaning}.",
    "exercise.unproved.right": "Esto queda abierto. {why}",
    "exercise.old.before": "Quedó de una avería anterior.",
    "exercise.old.gone.before": "Esta prueba no lo volvió a poner. Es viejo, o de algo que va y viene.",
    "exercise.old.gone.today": (
        "La prueba no lo volvió a poner: esta vez su corriente estuvo dentro de los límites del código."
    ),
    "exercise.old.gone.two": "Solo lo que la prueba vuelve a poner está hoy.",
    "exercise.old.gone.module": "Borrar quita los códigos; para eso sirve.",
    "exercise.old.back.today": "La prueba acaba de ponerlo otra vez: lo que vio está hoy, esté donde esté.",
    "exercise.old.back.before": "Se borró, y esta prueba lo puso otra vez: no es un recuerdo.",
    "exercise.old.back.two": "Solo volvió uno de los dos códigos; el otro es viejo.",
    "exercise.old.back.module": "Un código que vuelve se recuerda, no se olvida.",
    "exercise.still.unseen": "No mueve ninguna bobina ni cambia ningún clic, así que esta prueba no puede mostrarlo.",
    "exercise.still.slight": "Tan poca quita menos corriente de la que un oído o el módulo distinguen.",
    "exercise.shown.slight": "Tan poca suena pareja y no pone código: la encuentra el medidor, no el oído.",
    "exercise.after.known.not_shown": (
        "Oye la prueba: pareja, sin código, lecturas buenas. El motor sigue fallando en el {number}. ¿Y ahora?"
    ),
    "exercise.after.known.provoke": (
        "Oye la prueba: pareja. Había un código del {number} en memoria y no volvió; solo falla en mal camino. ¿Y"
        " ahora?"
    ),
    "exercise.after.known.measure": (
        "Oye la prueba: pareja, sin código. Pero el par del {number} marca dos ohmios más que sus vecinos. ¿Y ahora?"
    ),
    "exercise.after.not_shown.right": (
        "Según el manual del fabricante: la prueba ha hecho su parte. Lo que no puede mostrar se busca con otras."
    ),
    "exercise.after.provoke": "Repetir la prueba mientras se mueven y calientan cables y conectores del {number}.",
    "exercise.after.provoke.right": (
        "Lo que va y viene solo se muestra mientras está: mover y calentar su sitio, y escuchar."
    ),
    "exercise.after.provoke.why": "Aquí nada de lo sabido va y viene.",
    "exercise.after.measure": "Partir el circuito del {number} con el medidor, conector a conector.",
    "exercise.after.measure.right": (
        "Una lectura distinta de sus vecinos se sigue, aunque el oído y el módulo no digan nada."
    ),
    "exercise.after.measure.why": "En reposo ninguna lectura difiere de sus vecinos: aún no hay nada que partir.",
}
