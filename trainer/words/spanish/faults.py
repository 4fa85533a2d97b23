"""Faults: their names, what each teaches, and what eyes find, in Spanish."""

TEXTS: dict[str, str] = {
    "kind.open": "circuito abierto",
    "kind.added_resistance": "resistencia añadida",
    "kind.fails_under_load": "unión que falla bajo carga",
    "kind.film_on_contact": "película en un contacto que el mando perfora",
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
    "kind.return_to_return": "retorno en contacto con otro retorno",
    "kind.return_to_heater": "retorno en contacto con un circuito de calentador",
    "kind.crossed_returns": "retornos cruzados",
    "kind.shorted_turns": "espiras en cortocircuito",
    "kind.wrong_coil": "bobina de otro tipo",
    "kind.dead_return_driver": "etapa de retorno muerta",
    "kind.output_fails_hot": "etapa de retorno que falla en caliente",
    "kind.return_driver_stuck_on": "etapa de retorno siempre activada",
    "kind.dead_feed_driver": "etapa de alimentación muerta",
    "kind.low_supply": "tensión de mando baja",
    "kind.slow_recharge": "tensión de mando que se recarga despacio",
    "kind.no_supply": "sin tensión de mando",
    "kind.weak_battery": "batería débil",
    "kind.poor_module_feed": "resistencia alta en el cable de alimentación del módulo",
    "kind.poor_module_ground": "resistencia alta en la masa del módulo",
    "kind.stuck_armature": "armadura agarrotada",
    "kind.sluggish_armature": "armadura perezosa",
    "kind.sticks_when_cold": "placa que se pega en frío",
    "kind.worn_armature": "armadura desgastada",
    "rule.open": "Un zumbido muy tenue viene de los demás inyectores. Por el inyector del turno no pasa corriente.",
    "rule.added_resistance": (
        "El límite de corriente esconde una resistencia pequeña; pasado ese punto la placa no se levanta y el turno "
        "suena apagado, a menudo sin código."
    ),
    "rule.fails_under_load": "El miliamperio del multímetro no carga la unión. Mide la caída mientras pasa corriente.",
    "rule.film_on_contact": (
        "Una película puede dar muchos ohmios con el voltio del medidor y aun así llevar el mando. Carga la "
        "unión antes de darla por mala."
    ),
    "rule.burnt_pin": "Una mala unión cuece su propio pin. Mira dentro del conector antes de meter una punta.",
    "rule.pushed_back_pin": (
        "Un pin hundido da circuito abierto con el conector puesto y bueno en cada mitad. Todos los "
        "terminales deben quedar a ras."
    ),
    "rule.spread_terminal": (
        "Un terminal abierto de boca parece bueno y aguanta hasta que se mueve el mazo. Pásale un pin igual."
    ),
    "rule.open_when_moved": "Parejo ahora es «no demostrado», nunca «bueno»: muévelo mientras escuchas o mides.",
    "rule.open_when_hot": "Parejo en frío es «no demostrado», nunca «bueno»: calienta un lugar cada vez.",
    "rule.cured_by_reseating": "Solo con desenchufar puedes curar un contacto un tiempo. Mide antes de reconectar.",
    "rule.short_across_pair": "Corriente sin retardo de bobina es un corto: lo dicen los códigos; los ohmios, dónde.",
    "rule.carbon_between_pins": (
        "Una pista de carbón lleva corriente sin pasar por la bobina. Quita los dos conectores, mira y mide "
        "de pin a pin."
    ),
    "rule.short_to_ground": "Un corto a masa no cambia el par; de todos los ohmios, solo el de pin a masa lo muestra.",
    "rule.short_when_moved": "Un cable rozado solo hace masa donde toca metal. Muévelo mientras mides a masa.",
    "rule.short_to_battery": "Busca tensión con la llave quitada antes de fiarte de ningún ohmio.",
    "rule.return_to_return": (
        "Dos bobinas que comparten un límite de corriente reciben la mitad cada una: quizá ninguna levanta, dos "
        "apagados."
    ),
    "rule.return_to_heater": "Un calentador es un camino a masa: el inyector hace clic en turnos que no son el suyo.",
    "rule.crossed_returns": (
        "Con los retornos cruzados cada mitad parece buena: comprueba cable por cable. En una misma bancada el nivel "
        "sigue parejo y solo cambia el sitio."
    ),
    "rule.shorted_turns": "Menos espiras y un anillo cerrado en el núcleo: pocos ohmios, corriente rápida, poco tiro.",
    "rule.wrong_coil": (
        "Compara los ohmios con los compañeros: una bobina de otro tipo puede hacer clic y no ser la pieza correcta."
    ),
    "rule.dead_return_driver": "Cableado y bobina miden bien, y tras el cambio sigue muerto el mismo turno: el módulo.",
    "rule.output_fails_hot": (
        "Bueno en frío, muerto con el módulo caliente y el cableado sano: es la salida del propio módulo."
    ),
    "rule.return_driver_stuck_on": "Clics en cada turno de su alimentación y cableado sano: una salida que no suelta.",
    "rule.dead_feed_driver": "Un grupo que muere con el cableado de alimentación bueno tiene la alimentación muerta.",
    "rule.low_supply": "Todos iguales y todos mal es una sola causa: mide primero la tensión de mando.",
    "rule.slow_recharge": "Todos a la vez es lo que más carga: parejo uno a uno y pobre todos a la vez es la fuente.",
    "rule.no_supply": "Sin zumbido en ningún turno, no hay mando. Una fila entera de inyectores no muere a la vez.",
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
    "rule.stuck_armature": "Corriente plena sin muesca es una placa que no se mueve. El circuito está bien.",
    "rule.sluggish_armature": "Muesca tardía y aterrizaje blando: la placa es lenta, el circuito no.",
    "rule.sticks_when_cold": (
        "El aceite frío pega la placa a su asiento: si se apaga con helada y suena parejo con el inyector templado, "
        "el cable está bien."
    ),
    "rule.worn_armature": "Más brillante no es mejor: con más recorrido golpea más fuerte y más tarde.",
    "seen.burnt": "{where}: un pin quemado.",
    "seen.pushed_back": "{where}: un pin hundido.",
    "seen.spread": "{where}: un terminal que no agarra el pin.",
    "seen.bridge": "{where}: algo une lo que no debe tocarse.",
    "seen_at.engine_harness": "Conector del módulo, {side}, {cylinders}",
    "seen_at.pass_through_connector": "Conector pasante, {side}, {cylinders}",
    "seen_at.under_cover_harness": "Conector del inyector, {side}, {cylinders}",
}
