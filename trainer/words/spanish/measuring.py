"""Frases sobre medir: errores y precauciones."""

_SLIPS = {
    "slip.still_connected": "Medido sin desconectar: la lectura es de todo lo que cuelga del cable.",
    "slip.live": (
        "Ohmios con tensión: el número no dice nada y el medidor puede dañarse. Quita el contacto, espera, comprueba "
        "que no hay tensión y entonces mide."
    ),
    "slip.not_proved_dead": (
        "No comprobaste la ausencia de tensión: no mediste voltios en reposo desde el último accionamiento."
    ),
    "slip.not_waited": "No esperaste: el módulo seguía cargado cuando mediste.",
    "slip.voltage_on_wire": "Con la llave quitada hay tensión en este cable: aquí no te fíes de ningún ohmio.",
    "slip.insulation_into_part": "Un medidor de aislamiento no se pasa por un módulo, un inyector ni un calentador.",
    "slip.lamp_into_part": "Una lámpara es para un cable suelto por ambos extremos: a través de una pieza hace daño.",
    "slip.probe_pushed": "Metiste la punta a la fuerza en el terminal: ha quedado dado de sí.",
    "slip.not_nulled": "No pusiste las puntas a cero: su propia resistencia está en la lectura.",
}


_CAUTIONS = {
    "caution.drive": (
        "Cuidado: el mando va por pulsos, a más de 100 V, y queda cargado. Quita el contacto, espera y comprueba que "
        "no hay tensión antes de tocar. Nunca pienses «solo son 100 V»."
    ),
    "caution.live": (
        "Precaución: trabajo con tensión, más de 100 V. Zona cerrada, una segunda persona, puntas aisladas puestas sin "
        "contacto y una mano lejos. Solo quien tus normas locales autoricen."
    ),
    "caution.cover": (
        "Cuidado: sin tapa y con el contacto dado hay terminales con tensión al aire. Aceite caliente. Apártate."
    ),
    "caution.under_cover": (
        "Precaución: bajo la tapa hay aceite caliente y piezas que se mueven. "
        "Motor parado, contacto quitado, manos fuera."
    ),
    "caution.lamp": "Precaución: lámpara solo en un cable suelto por ambos extremos. Nunca en una salida del módulo.",
    "caution.crank": "Precaución: correas y ventilador giran al arrancar. Sin combustible, manos y ropa fuera.",
    "caution.battery": (
        "Precaución con la batería: sin anillos, ojos protegidos, puntas con fusible. No puentees los bornes. "
        "Desprende gas explosivo."
    ),
    "caution.moving": "Cuidado: en motor real no muevas a mano cables con tensión: herramienta aislada, o sin tensión.",
    "caution.running": "Precaución: correas, ventilador y piezas calientes en marcha. Manos fuera, humos al exterior.",
    "caution.heat": "Cuidado: nada de llama viva ni calor sin control cerca de combustible y aceite.",
    "caution.repeat": (
        "Cuidado: en algunos motores cada prueba inyecta combustible y deja el sistema con presión. Repite solo lo que "
        "diga el fabricante, no arranques enseguida y nunca busques una fuga con la mano."
    ),
    "caution.real": (
        "En un motor real mandan el manual del fabricante, las normas locales y el personal autorizado. Este motor es "
        "de simulador: aquí ningún valor es una especificación."
    ),
    "caution.sound": "Empieza con el volumen bajo. Todos a la vez suena más fuerte que los turnos.",
}


TEXTS: dict[str, str] = {**_SLIPS, **_CAUTIONS}
