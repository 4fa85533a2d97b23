"""Frases sobre medir: errores y precauciones."""

_SLIPS = {
    "slip.still_connected": (
        "Mediste con el conector puesto, así que el multímetro leyó todo lo que está conectado al cable."
    ),
    "slip.live": (
        "Mediste ohmios con tensión. El número no vale nada y el multímetro puede dañarse. Quita el contacto, espera, "
        "comprueba que no hay tensión y entonces mide."
    ),
    "slip.not_proved_dead": (
        "No comprobaste antes que no había tensión. No has leído voltios en reposo desde el último accionamiento."
    ),
    "slip.not_waited": "No esperaste. El módulo seguía cargado cuando mediste.",
    "slip.voltage_on_wire": "Este cable tiene tensión con el contacto quitado, así que aquí no te fíes de los ohmios.",
    "slip.insulation_into_part": "Nunca pases un medidor de aislamiento por un módulo, un inyector o un calentador.",
    "slip.lamp_into_part": (
        "Usa la lámpara solo en un cable desconectado por los dos extremos. A través de un módulo o un inyector hace "
        "daño."
    ),
    "slip.probe_pushed": "Metiste la punta a la fuerza en el terminal, y ahora está abierto de boca.",
    "slip.not_nulled": "No pusiste las puntas a cero, así que su resistencia está en esta lectura.",
}


_CAUTIONS = {
    "caution.drive": (
        "Precaución: el mando va por pulsos de más de 100 V y queda cargado. 100 voltios pueden matar. Quita el "
        "contacto. Espera. Comprueba que no hay tensión antes de tocar un terminal."
    ),
    "caution.live": (
        "Precaución: trabajo con tensión, más de 100 V. Cierra la zona. Ten a una segunda persona al lado. Con el "
        "contacto quitado, quien sea responsable según tus normas locales aísla la alimentación del módulo antes de "
        "poner o mover puntas aisladas. Una mano, lejos. Solo para quien esté autorizado por tus normas locales."
    ),
    "caution.cover": (
        "Precaución: sin tapa y con el contacto dado hay terminales con tensión al aire. El aceite quema. No te "
        "acerques."
    ),
    "caution.under_cover": (
        "Precaución: bajo la tapa el aceite quema y hay piezas que se mueven. Motor parado, contacto quitado, manos "
        "fuera."
    ),
    "caution.lamp": (
        "Precaución: usa la lámpara solo en un cable desconectado por los dos extremos. Nunca en una salida del módulo."
    ),
    "caution.crank": (
        "Precaución: al arrancar giran las correas y el ventilador. Corta el combustible. Manos y ropa fuera."
    ),
    "caution.battery": (
        "Precaución con la batería: quítate los anillos, protégete los ojos y usa puntas con fusible. No puentees los "
        "bornes. La batería desprende gas explosivo."
    ),
    "caution.moving": (
        "Precaución: en un motor real nunca muevas a mano cables con tensión. Usa una herramienta aislada, o muévelos "
        "sin tensión."
    ),
    "caution.running": (
        "Precaución: con el motor en marcha giran correas y ventilador, y hay piezas calientes. Manos y ropa fuera, y "
        "saca los humos al exterior."
    ),
    "caution.heat": "Precaución: no uses llama viva ni calor sin control cerca de combustible o aceite.",
    "caution.repeat": (
        "Precaución: en algunos motores cada prueba inyecta combustible y deja el sistema con presión. Repite solo lo "
        "que diga el fabricante, no arranques justo después y nunca busques una fuga con la mano."
    ),
    "caution.real": (
        "En un motor real, sigue el manual del fabricante y las normas locales, y deja a personal autorizado el "
        "trabajo que lo exige. Este motor es simulado: aquí ningún valor es una especificación."
    ),
    "caution.sound": "Empieza con el volumen bajo. La ráfaga suena más fuerte que los turnos.",
}


TEXTS: dict[str, str] = {**_SLIPS, **_CAUTIONS}
