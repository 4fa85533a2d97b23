"""Las frases de los ejercicios, en español."""

from __future__ import annotations

TEXTS: dict[str, str] = {
    "exercise.fault": "{kind}, {location}, {cylinders}",
    "exercise.whole": "la prueba entera",
    "exercise.good_slot": "turno {number} en un motor sano",
    "exercise.this_slot": "turno {number} en este motor",
    "exercise.none": "ninguno: todos los turnos suenan parejos",
    "exercise.no_code": "ningún código",
    "exercise.which": "Oye la prueba entera. ¿Qué turnos no suenan parejos?",
    "exercise.which.right": "Cuenta en orden numérico después de la ráfaga. No suena parejo: {cylinders}.",
    "exercise.which.none": (
        "Todos los turnos suenan parejos. Las diferencias pequeñas entre inyectores buenos no son avería."
    ),
    "exercise.which.even": "{cylinders}: aquí suena parejo.",
    "exercise.which.missed": "Aquí no suena parejo: {cylinders}.",
    "exercise.which.one": "Falla más de uno: {cylinders} comparten una causa.",
    "exercise.which.firing": "El orden de encendido pondría ahí {said}. Los turnos van en orden numérico.",
    "exercise.which.burst": (
        "Sale {said} si cuentas la ráfaga como un turno. La ráfaga va primero y no es de ningún cilindro suelto."
    ),
    "exercise.which.rule": (
        "Primero la ráfaga, luego cada cilindro en orden numérico. Empieza a contar después de la ráfaga."
    ),
    "exercise.what": "Oye los dos. ¿Cómo suena el turno {number} en este motor?",
    "exercise.what.even": "parejo: a pocos decibelios de un turno bueno",
    "exercise.what.weak": "débil: hay clic, pero claramente más flojo",
    "exercise.what.dull": "apagado: un golpe sordo sin brillo, corriente sin clic",
    "exercise.what.very_faint": "muy tenue: ningún clic propio, solo un zumbido",
    "exercise.what.nothing": "nada: solo el ruido de fondo",
    "exercise.what.rule": "Parejo, débil, apagado, muy tenue, nada: cada uno te dice algo distinto del circuito.",
    "exercise.hum": "Oye el turno {number} en un motor sano y en este. ¿Qué oyes todavía en él?",
    "exercise.hum.own": "Su propio circuito lleva corriente: una parte del inyector {number} aún funciona.",
    "exercise.hum.hum": "El zumbido es la corriente de fondo de los demás. El circuito {number} no lleva nada.",
    "exercise.hum.bed": "Solo oyes el ruido del taller. Del motor no suena nada.",
    "exercise.hum.worn": "El inyector {number} está gastado y hace un clic flojo.",
    "exercise.hum.rule": (
        "Un zumbido sin corriente en su propia bobina viene de los demás. Un golpe sordo es corriente sin clic."
    ),
    "exercise.order": "Después de la ráfaga los turnos van uno por uno. ¿Qué cilindro es el número {count}?",
    "exercise.order.right": "Los turnos van en orden numérico, así que es el {number}.",
    "exercise.order.burst": "{said} se va por uno: la ráfaga va primero y no es de ningún cilindro suelto.",
    "exercise.order.other": "El {said} tiene su propio turno, en su sitio del orden numérico.",
    "exercise.counted": (
        "Cuenta todos los sonidos desde el principio, con la ráfaga como número 1. El tenue es el número {count}. "
        "¿Qué cilindro es?"
    ),
    "exercise.counted.right": "La ráfaga fue el número 1, así que el sonido {count} es el cilindro {number}.",
    "exercise.place": "¿Dónde está el cilindro {number} en este motor?",
    "exercise.place.right": "El {number} está ahí, {where}.",
    "exercise.place.other": "Ahí está el {said}: {where}.",
    "exercise.where": "bancada {bank}, puesto {place} desde delante",
    "exercise.shared": "Los turnos de {cylinders} fallaron a la vez. ¿Qué comparten solo entre ellos?",
    "exercise.shared.right": "Ahí están {cylinders}, y ninguno más.",
    "exercise.shared.other": "Ahí están otros: {cylinders}.",
    "exercise.shared.connector": "el conector pasante {name}",
    "exercise.shared.output": "la salida de alimentación {name} del módulo",
    "exercise.shared.bank": "la bancada {name}",
    "exercise.shared.nothing": "nada: cada uno tiene su propia avería",
    "exercise.shared.one_cause": (
        "Si varios fallan a la vez y comparten una pieza, es una sola avería en esa pieza, hasta que demuestres otra "
        "cosa."
    ),
    "exercise.numbering.rule": (
        "Los turnos siguen los números del motor. El orden de encendido, aquí {firing}, no cuenta en esta prueba."
    ),
    "exercise.says": "La memoria del módulo muestra esto después de la prueba. ¿Qué de esto demuestra {code}?",
    "exercise.says.right": "La corriente de este circuito estuvo fuera de los límites del código durante la prueba.",
    "exercise.says.right.why": "{meaning}. Un código nunca nombra un lugar.",
    "exercise.says.place": "La avería está en el circuito del cilindro {number} en este lugar: {place}.",
    "exercise.says.place.why": "El módulo mide en sus propios pines: no distingue un punto del cable de otro.",
    "exercise.says.injector": "El inyector {number} está mal.",
    "exercise.says.injector.why": (
        "Cableado, conector, módulo o bobina pueden dar este código. Así se acaban cambiando inyectores buenos."
    ),
    "exercise.could": "La prueba dio estos códigos. ¿Cuál de estas averías no pudo dar exactamente estos?",
    "exercise.could.right": "Esa daría {codes}.",
    "exercise.could.same": "Esta da exactamente estos códigos.",
    "exercise.old": "Se leyeron los códigos, se borraron y se repitió la prueba. ¿Qué te dice ahora {code}?",
    "exercise.old.first": "Leídos la primera vez: {codes}",
    "exercise.old.again": "Tras borrar y probar otra vez: {codes}",
    "exercise.old.today": "El circuito {number} no está hoy como debe.",
    "exercise.old.two": "Hoy hay dos averías, en {first} y en {second}.",
    "exercise.old.module": "El módulo ha perdido la memoria.",
    "exercise.codes.rule": "Lee, borra, prueba y lee otra vez. Un código nombra un circuito, nunca un lugar.",
    "exercise.reading": "¿Qué te dice esta lectura del circuito, de este punto en adelante?",
    "exercise.reading.mate": "Un cilindro bueno marca {display}",
    "exercise.reading.good": "buena: tan cerca del cilindro bueno como puede decir este multímetro",
    "exercise.reading.good.why": (
        "Dos lecturas que difieren en menos del doble de la precisión del multímetro no se distinguen."
    ),
    "exercise.reading.open": "abierto en algún sitio de este punto en adelante",
    "exercise.reading.open.why": "El óhmetro marca OL: no hay camino, esté donde esté el corte.",
    "exercise.reading.high": "demasiado alta: resistencia añadida",
    "exercise.reading.high.why": (
        "Supera al cilindro bueno en más del doble de la precisión del multímetro: una mala unión o un cable fino."
    ),
    "exercise.reading.low": "demasiado baja: un corto, o espiras en cortocircuito",
    "exercise.reading.low.why": (
        "Queda por debajo del cilindro bueno en más del doble de la precisión del multímetro: otro camino, o espiras "
        "en cortocircuito."
    ),
    "exercise.reading.rule": (
        "Compara con un cilindro bueno y cuenta con la precisión del multímetro, aquí ±({percent:.1f} % + {counts} "
        "cuentas)."
    ),
    "exercise.where_break": "Hay un corte en el retorno del cilindro {number}. ¿Dónde lo sitúan estas lecturas?",
    "exercise.where.engine_harness": "El cable marca OL de punta a punta, y todo lo que hay detrás marca bien.",
    "exercise.where.pass_through_connector": (
        "Las dos mitades marcan bien por separado, así que solo queda el contacto entre ellas."
    ),
    "exercise.where.under_cover_harness": (
        "OL desde el lado de la tapa y bien en el inyector: queda el cable entre los dos."
    ),
    "exercise.where.solenoid_coil": "Marca OL en los propios pines del inyector.",
    "exercise.where.other": "Si el corte estuviera ahí, una de estas lecturas sería distinta.",
    "exercise.where.rule": "Parte el circuito en cada conector. Si las dos mitades marcan bien, mira lo que las une.",
    "exercise.slip": "¿Qué vale esta lectura?",
    "exercise.slip.how.fine": "conector del módulo quitado, contacto quitado, puntas a cero",
    "exercise.slip.how.connected": (
        "pinchado por detrás en el inyector, conector puesto, contacto quitado, puntas a cero"
    ),
    "exercise.slip.how.leads": "conector del inyector quitado, contacto quitado, puntas sin poner a cero",
    "exercise.slip.how.live": "pinchado por detrás en el inyector, conector puesto, contacto dado",
    "exercise.slip.fine": "Es el valor de esta pieza.",
    "exercise.slip.fine.why": (
        "Conector quitado, contacto quitado, puntas a cero: entonces la lectura es solo de esta pieza."
    ),
    "exercise.slip.connected": "Puede ser demasiado baja y esconder un corte.",
    "exercise.slip.connected.why": "Con el conector puesto, la corriente toma también todos los demás caminos.",
    "exercise.slip.leads": "Se pasa unas décimas de ohmio.",
    "exercise.slip.leads.why": "Con tan pocos ohmios, las décimas de las puntas importan.",
    "exercise.slip.live": "No vale nada, y el multímetro puede dañarse.",
    "exercise.slip.live.why": (
        "Nunca se miden ohmios con tensión: quita el contacto, espera y comprueba que no hay tensión."
    ),
    "exercise.slip.rule": "Contacto quitado y comprobado, conector quitado, puntas a cero, y entonces lee.",
    "exercise.begun.heard": "Oído: {cylinders} no suena parejo, los demás sí",
    "exercise.next": "Esto es lo que sabes hasta ahora. ¿Qué prueba te dice más por sus minutos?",
    "exercise.next.best": (
        "Debería partir por dos lo que queda {bits:.1f} veces en {minutes:.0f} min, lo mejor por su tiempo."
    ),
    "exercise.next.less": (
        "Debería partir por dos lo que queda {bits:.1f} veces en {minutes:.0f} min, menos por su tiempo."
    ),
    "exercise.next.rule": (
        "Pregúntate qué puede descartar cada prueba y qué cuesta. Primero las baratas que parten por dos lo que queda."
    ),
    "exercise.stop": "¿Demuestra esto un dictamen?",
    "exercise.stop.done": "Hecho: {step}",
    "exercise.stop.likeliest": "Lo más probable hasta ahora: {findings}",
    "exercise.stop.commit": "Sí: entregarlo y reparar.",
    "exercise.stop.commit.why": (
        "Con estos indicios tiene un {sure} de probabilidad. Desde el 95 % lo damos por demostrado."
    ),
    "exercise.stop.on": "No: seguir midiendo.",
    "exercise.stop.on.why": (
        "Con estos indicios tiene un {sure} de probabilidad, y otros {others} dictámenes siguen siendo posibles."
    ),
    "exercise.stop.rule": "Para cuando los indicios dejen un solo dictamen, no cuando se te ocurra uno.",
    "exercise.unseen.nozzle": "una tobera gastada",
    "exercise.unseen.seat": "un asiento de válvula que pierde dentro de un inyector",
    "exercise.unseen.rail": "presión baja de combustible o de aceite de accionamiento",
    "exercise.unseen.compression": "compresión baja en un cilindro",
    "exercise.unseen.air": "aire en el combustible",
    "exercise.unseen.return_leak": "un inyector con demasiado retorno",
    "exercise.still": (
        "Oye la prueba. Todos los turnos suenan parejos y no hay códigos. ¿Cuál de estas averías podría estar ahí "
        "todavía?"
    ),
    "exercise.still.heard": "Eso se habría oído en esta prueba.",
    "exercise.shown": (
        "Oye la prueba. Todos los turnos suenan parejos y no hay códigos. ¿Cuál de estas averías descarta eso?"
    ),
    "exercise.shown.right": "Habría sonado muy distinto de parejo.",
    "exercise.shown.unseen": "Eso es mecánico o hidráulico. Una prueba pareja no dice nada de ello.",
    "exercise.shown.shy": (
        "Solo se nota cuando su sitio se mueve o está caliente. Una prueba pareja en reposo no la descarta."
    ),
    "exercise.after.not_shown": "Decir «aquí no se ve» y seguir con combustible, compresión y retorno.",
    "exercise.after.not_shown.why": (
        "Todavía no: lo que se sabe apunta a este circuito, y esta prueba aún puede dar más."
    ),
    "exercise.after.injector": "Cambiar el inyector {number}, pues es el que falla en carretera.",
    "exercise.after.injector.why": (
        "Nada de lo visto lo dice. Con mala compresión o combustible, el nuevo fallaría igual."
    ),
    "exercise.after.module": "Cambiar el módulo de mando, pues todos los inyectores hacen clic.",
    "exercise.after.module.why": "El módulo accionó todos los turnos.",
    "exercise.after.good": "Anotar «el inyector {number} está bien» en la hoja y cerrar el trabajo.",
    "exercise.after.good.why": (
        "«El circuito está bien» nunca es «el inyector está bien»: no se han probado ni la pulverización ni el cierre."
    ),
    "exercise.limits.rule": (
        "Esta prueba muestra si los circuitos funcionan y las armaduras se mueven. No muestra pulverización, cierre, "
        "presión ni compresión."
    ),
    "exercise.card": "Esta hoja de trabajo tiene un paso equivocado. ¿Cuál?",
    "exercise.card.step": "{number}. {step}",
    "exercise.card.choice": "paso {number}",
    "exercise.card.stands": "Ese paso está bien, y el motor lo confirma.",
    "exercise.card.heard": "Oído: el turno {cylinders} suena muy tenue, los demás parejos.",
    "exercise.card.code": "Código {code}: {meaning}.",
    "exercise.card.code_place": "Código {code}: {meaning}; así que la avería está en este lugar: {place}.",
    "exercise.card.not_nulled": "(conector quitado, puntas sin poner a cero)",
    "exercise.card.plug_on": "(conector puesto, puntas a cero)",
    "exercise.card.concluded": "Conclusión: {place}.",
    "exercise.card.slot": "El turno malo era otro. Empieza a contar después de la ráfaga.",
    "exercise.card.named_place": "Un código nunca nombra un lugar.",
    "exercise.card.connected": "Con el conector puesto, el multímetro lee todo lo que está conectado al cable.",
    "exercise.card.leads": "Esa lectura lleva dentro la resistencia de las puntas.",
    "exercise.card.conclusion": "Estas lecturas señalan otro lugar.",
    "exercise.card.rule": "Revisa cada paso por separado: qué se oyó, cómo se midió y qué se deduce.",
    "exercise.backwards": (
        "Cuenta hacia atrás, con el último turno como número 1. El tenue es el número {count}. ¿Qué cilindro es?"
    ),
    "exercise.still.shy": "Solo se nota cuando su sitio se mueve o está caliente; en reposo la prueba sale pareja.",
    "exercise.card.rightly": "(conector quitado, puntas a cero)",
    "exercise.next.choice": "{test} ({minutes:.0f} min)",
    "exercise.begun.all": "Oído: ningún turno suena parejo",
    "exercise.hum.hum.hum": (
        "En el turno {number} el módulo acciona un circuito abierto. Lo que oyes es la corriente de fondo por todos "
        "los demás inyectores."
    ),
    "exercise.hum.hum.own": (
        "Un zumbido tenue no es señal de vida: el sonido viene de los otros inyectores, no de {number}."
    ),
    "exercise.hum.hum.bed": (
        "El ruido de fondo está debajo de todos los turnos; este zumbido sobresale en el turno {number}."
    ),
    "exercise.hum.hum.worn": "Un inyector gastado todavía hace clic; aquí no se mueve nada del inyector {number}.",
    "exercise.hum.own.own": (
        "Un golpe sordo quiere decir que al inyector {number} le llega corriente pero no hace clic del todo: su "
        "circuito está cerrado."
    ),
    "exercise.hum.own.hum": "El zumbido de los demás es mucho más tenue: el circuito {number} lleva corriente.",
    "exercise.hum.own.bed": (
        "El ruido de fondo está debajo de todos los turnos; esto sobresale mucho en el turno {number}."
    ),
    "exercise.hum.own.worn": (
        "Una armadura gastada suena más brillante o más tarde, no apagada. Aquí el {number} no se mueve como debe."
    ),
    "exercise.hum.bed.bed": "Ni clic ni zumbido: en el turno {number} no pasa corriente, ni suya ni de los demás.",
    "exercise.hum.bed.hum": "Un zumbido sobresaldría del fondo en el turno {number}; aquí no sobresale nada.",
    "exercise.hum.bed.own": (
        "Si la bobina tuviera corriente, oirías un golpe o un clic. En el turno {number} no hay ni uno ni otro."
    ),
    "exercise.hum.bed.worn": "Un inyector gastado todavía hace clic; el turno {number} está vacío.",
    "exercise.unproved": "La memoria del módulo muestra esto después de la prueba. ¿Qué de esto no demuestra {code}?",
    "exercise.unproved.circuit": "Fue el circuito del cilindro {number}.",
    "exercise.unproved.once": "El módulo lo vio al menos una vez.",
    "exercise.unproved.proved": "Justo eso es lo que dice: {meaning}.",
    "exercise.unproved.right": "Esto no lo demuestra. {why}",
    "exercise.old.before": "Quedó de una avería anterior.",
    "exercise.old.gone.before": "Esta prueba no lo ha vuelto a poner. Es viejo, o su avería va y viene.",
    "exercise.old.gone.today": (
        "La prueba no lo ha vuelto a poner: esta vez su corriente estaba dentro de los límites del código."
    ),
    "exercise.old.gone.two": "Hoy solo está la avería cuyo código vuelve a poner la prueba.",
    "exercise.old.gone.module": "Borrar quita los códigos; para eso está.",
    "exercise.old.back.today": "La prueba acaba de ponerlo otra vez: lo que vio está hoy, sea donde sea.",
    "exercise.old.back.before": "Se borró, y esta prueba lo ha puesto otra vez, así que no es un resto.",
    "exercise.old.back.two": "Solo ha vuelto uno de los dos códigos; el otro es viejo.",
    "exercise.old.back.module": "Un código que vuelve se ha puesto otra vez, no se ha olvidado.",
    "exercise.still.unseen": "No afecta a ninguna bobina ni a ningún clic, así que esta prueba no puede mostrarlo.",
    "exercise.still.slight": (
        "Una avería tan leve cambia la corriente demasiado poco para que la noten el oído o el módulo."
    ),
    "exercise.shown.slight": (
        "Una avería tan leve suena parejo y no pone código. La encuentra el multímetro, no el oído."
    ),
    "exercise.after.known.not_shown": (
        "Oye la prueba. Todos los turnos suenan parejos, no hay códigos y las lecturas son buenas. El motor sigue "
        "fallando en el cilindro {number}. ¿Y ahora?"
    ),
    "exercise.after.known.provoke": (
        "Oye la prueba. Todos los turnos suenan parejos. Había un código del cilindro {number} en memoria y no ha "
        "vuelto. El motor solo falla en malos caminos. ¿Y ahora?"
    ),
    "exercise.after.known.measure": (
        "Oye la prueba. Todos los turnos suenan parejos y no hay códigos. Pero el cilindro {number} marca dos ohmios "
        "más que los demás, de alimentación a retorno. ¿Y ahora?"
    ),
    "exercise.after.not_shown.right": (
        "La prueba ha hecho su parte. Lo que no puede mostrar se busca con otras, según el manual del fabricante."
    ),
    "exercise.after.provoke": (
        "Repetir la prueba mientras mueves y calientas los cables y conectores del cilindro {number}."
    ),
    "exercise.after.provoke.right": (
        "Una avería intermitente solo se nota mientras está. Mueve y calienta su sitio mientras escuchas."
    ),
    "exercise.after.provoke.why": "Por lo que se sabe, aquí nada va y viene.",
    "exercise.after.measure": "Partir el circuito del cilindro {number} con el multímetro, conector a conector.",
    "exercise.after.measure.right": (
        "Sigue una lectura distinta de las demás, aunque el oído y el módulo no digan nada."
    ),
    "exercise.after.measure.why": "En reposo ninguna lectura difiere de las demás, así que aún no hay nada que partir.",
}
