"""Faults: their names, what each teaches, and what eyes find, in Spanish."""

TEXTS: dict[str, str] = {
    "kind.open": "circuito abierto",
    "kind.added_resistance": "resistencia añadida",
    "kind.fails_under_load": "unión que falla bajo carga",
    "kind.film_on_contact": "película de contacto que el mando rompe",
    "kind.burnt_pin": "pin quemado",
    "kind.pushed_back_pin": "pin hundido",
    "kind.spread_terminal": "terminal abierto de boca, se corta al moverlo",
    "kind.open_when_moved": "circuito abierto al moverlo",
    "kind.open_when_hot": "circuito abierto en caliente",
    "kind.cured_by_reseating": "mal contacto que se cura un tiempo al reconectar",
    "kind.short_across_pair": "cortocircuito dentro del par",
    "kind.carbon_between_pins": "pista de carbón entre dos pines",
    "kind.short_to_ground": "cortocircuito a masa",
    "kind.short_when_moved": "cable rozado, hace masa al moverlo",
    "kind.short_to_battery": "cortocircuito a batería",
    "kind.return_to_return": "retorno en corto con otro retorno",
    "kind.return_to_heater": "retorno en corto con un circuito de calentador",
    "kind.crossed_returns": "retornos cruzados",
    "kind.shorted_turns": "espiras en cortocircuito",
    "kind.wrong_coil": "bobina de otro tipo",
    "kind.dead_return_driver": "etapa de retorno muerta",
    "kind.output_fails_hot": "etapa de retorno que falla en caliente",
    "kind.return_driver_stuck_on": "etapa de retorno siempre activada",
    "kind.dead_feed_driver": "etapa de alimentación muerta",
    "kind.low_supply": "tensión de mando baja",
    "kind.slow_recharge": "tensión de mando que se recupera despacio",
    "kind.no_supply": "sin tensión de mando",
    "kind.weak_battery": "batería débil",
    "kind.poor_module_feed": "resistencia alta en el cable de alimentación del módulo",
    "kind.poor_module_ground": "resistencia alta en la masa del módulo",
    "kind.stuck_armature": "armadura agarrotada",
    "kind.sluggish_armature": "armadura perezosa",
    "kind.sticks_when_cold": "armadura que se pega en frío",
    "kind.worn_armature": "armadura desgastada",
    "rule.open": "El zumbido muy tenue viene de los demás inyectores. Al que le toca no le llega corriente.",
    "rule.added_resistance": (
        "El límite de corriente esconde una resistencia pequeña. A partir de cierto punto la armadura ya no se "
        "levanta y el turno suena apagado, a menudo sin código."
    ),
    "rule.fails_under_load": (
        "La corriente mínima de un multímetro no carga una unión. Mide la caída de tensión bajo carga."
    ),
    "rule.film_on_contact": (
        "Una película puede marcar muchos ohmios y aun así dejar pasar el mando. Carga la unión antes de darla por "
        "mala."
    ),
    "rule.burnt_pin": "Una mala unión quema su propio pin. Mira dentro del conector antes de meter una punta.",
    "rule.pushed_back_pin": (
        "Un pin hundido marca abierto con el conector puesto y bien en cada mitad. Mira los terminales: todos deben "
        "estar a ras."
    ),
    "rule.spread_terminal": (
        "Un terminal abierto de boca parece bueno y aguanta hasta que se mueve el cableado. Pásale un pin igual."
    ),
    "rule.open_when_moved": "Parejo en reposo todavía no demuestra nada. Muévelo mientras escuchas o mides.",
    "rule.open_when_hot": "Parejo en frío todavía no demuestra nada. Calienta un sitio cada vez y prueba otra vez.",
    "rule.cured_by_reseating": "Desconectar un contacto puede curarlo un tiempo. Mide antes de desconectarlo.",
    "rule.short_across_pair": (
        "Corriente sin el retardo de la bobina es un corto. Los códigos lo dicen, y los ohmios encuentran el sitio."
    ),
    "rule.carbon_between_pins": (
        "Una pista de carbón se salta la bobina. Quita los dos conectores, mira y mide de pin a pin."
    ),
    "rule.short_to_ground": "Un corto a masa no cambia los ohmios del par. Solo se ve midiendo del pin a masa.",
    "rule.short_when_moved": "Un cable rozado solo hace masa cuando toca metal. Muévelo mientras mides a masa.",
    "rule.short_to_battery": "Busca tensión con el contacto quitado antes de fiarte de los ohmios.",
    "rule.return_to_return": (
        "Dos bobinas comparten un límite de corriente. A cada una le llega la mitad y quizá ninguna se levanta: dos "
        "turnos apagados."
    ),
    "rule.return_to_heater": (
        "El calentador le da a la corriente un camino a masa, y el inyector hace clic en turnos que no son suyos."
    ),
    "rule.crossed_returns": (
        "Con los retornos cruzados cada mitad está bien, así que comprueba cable por cable. En una misma bancada el "
        "nivel sigue parejo y solo cambia el sitio."
    ),
    "rule.shorted_turns": (
        "Menos espiras y un anillo cerrado en el núcleo dan pocos ohmios, corriente rápida y poca fuerza."
    ),
    "rule.wrong_coil": (
        "Compara los ohmios con los demás inyectores. Una bobina de otro tipo puede hacer clic y no ser la pieza "
        "correcta."
    ),
    "rule.dead_return_driver": (
        "El cableado y la bobina miden bien, y tras cruzar retornos sigue muerto el mismo turno. Así que es el módulo."
    ),
    "rule.output_fails_hot": (
        "Bien en frío, muerto con el módulo caliente, y el cableado mide bien. Así que es la salida del módulo."
    ),
    "rule.return_driver_stuck_on": (
        "Hace clic en todos los turnos de su alimentación y el cableado está sano. Así que una salida no suelta nunca."
    ),
    "rule.dead_feed_driver": (
        "Todo un grupo está muerto y su cableado de alimentación está bien, así que la muerta es la alimentación."
    ),
    "rule.low_supply": "Todos fallan de la misma manera, así que busca una sola causa. Mide primero la alimentación.",
    "rule.slow_recharge": (
        "La ráfaga es lo que más carga la alimentación. Si suenan parejos uno a uno y flojos a la vez, mira la "
        "alimentación."
    ),
    "rule.no_supply": "Si no zumba nada, no hay mando. Una fila entera de inyectores no muere a la vez.",
    "rule.weak_battery": (
        "Gira despacio al arrancar y todos los turnos suenan parejos. Prueba la batería con carga antes que nada."
    ),
    "rule.poor_module_feed": (
        "El módulo solo entrega lo que le llega de la batería. Mide la caída del positivo al módulo antes de "
        "comprar otro."
    ),
    "rule.poor_module_ground": (
        "Una masa mala parece un módulo malo. Mide la caída de la masa del módulo al negativo de la batería, con carga."
    ),
    "rule.stuck_armature": "Corriente plena pero sin muesca: la armadura está agarrotada. El cableado está bien.",
    "rule.sluggish_armature": "Una muesca tardía y un golpe blando son de una armadura lenta. El circuito está bien.",
    "rule.sticks_when_cold": (
        "El aceite frío puede pegar una armadura a su asiento. El turno suena apagado con helada y parejo en cuanto "
        "se templa el inyector, así que el cableado está bien."
    ),
    "rule.worn_armature": "Un clic más brillante no es mejor: una armadura gastada recorre más y golpea más fuerte.",
    "seen.burnt": "{where}: un pin quemado.",
    "seen.pushed_back": "{where}: un pin hundido.",
    "seen.spread": "{where}: un terminal que no agarra el pin.",
    "seen.bridge": "{where}: algo une dos partes que deben estar separadas.",
    "seen_at.engine_harness": "Conector del módulo, {side}, {cylinders}",
    "seen_at.pass_through_connector": "Conector pasante, {side}, {cylinders}",
    "seen_at.under_cover_harness": "Conector del inyector, {side}, {cylinders}",
}
