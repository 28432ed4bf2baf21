### Lo que dice cada anotación en el historial de un trabajo: un mensaje por tipo de anotación.

facts-job-opened = Trabajo abierto en { $vehicle }: { $complaint }
facts-job-opened-without-complaint = Trabajo abierto en { $vehicle }: sin queja
facts-left-fitted = { CAP($unit) } se queda en { $position }: { $reason }.
facts-left-empty = { CAP($position) } queda vacío: { $reason }.
facts-taken-back = Anotación { $seq } retirada: { $reason }
facts-put-right = Anotación { $seq } corregida: { $entry }
facts-job-closed = Trabajo cerrado.
facts-job-closed-unrepaired = Trabajo cerrado sin reparar: { $why ->
    [customer] el cliente lo deja aquí
    [no_part] la pieza no se consigue
    [elsewhere] se repara en otro sitio
    [not_worth] no merece la pena
    [not_found] no se encontró la causa
   *[other] otro motivo
}.
facts-paused = Trabajo en pausa: { $why ->
    [part] a la espera de una pieza
    [customer] a la espera del cliente
    [weather] a la espera de mejor tiempo o luz
    [help] a la espera de ayuda o de una herramienta
   *[other] a la espera
}.
facts-paused-part = Para pedir: { $part }.
# $to: Ben
facts-handed-over = Entregado a { $to }.
facts-resumed = El trabajo sigue.
facts-heard-ticks = tictac en { $positions }
facts-heard-nothing = nada que oír en { $positions }
facts-heard-none = nadie dijo dónde
facts-listened = Escuchado: { $found }.
facts-listened-both = Escuchado: { $one }; { $other }.
facts-sounder-checked = { PART($sort, form: "unproven") }; revisado { $check }: { $found ->
    [good] bien
    [mended] encontrado y arreglado
   *[unclear] no está claro
}.

facts-caution-read = Advertencia leída: { $caution }.
facts-lamp = Testigo { $when ->
    [key_on] con contacto dado
   *[reverse] en marcha atrás
}: { $result ->
    [as_it_should] como debe estar
    [not_as_it_should] no está como debe
    [never_on] no se encendió nunca
    [stays_on] se queda encendido
    [flashes] parpadea
   *[not_sure] no es seguro
}.
facts-looked = Mirado: { $seen }.
facts-nothing-seen = Mirado: nada que ver.
facts-seen-at = { $found } en { $position }
facts-picture-of-position = Foto { JOIN("de", $position) }.
facts-picture-of-repair = Foto { $when ->
    [before] antes
   *[after] después
} de la reparación{ $position ->
    [none] .
   *[other] { " " }en { $position }.
}
facts-pictures-skipped = Se siguió sin foto de { $positions }.
facts-picture = Foto { $shows ->
    [unit] { JOIN("de", PART($sort, form: "the")) }
    [screen] de la pantalla
    [position] de la posición
   *[work] del trabajo
}.
facts-walk = { CAP($walk) }: { $heard }.
facts-distance = { CAP($position) }: { $shown } cm en pantalla, { $tape } cm con cinta. { $how ->
    [fits] Coincide
    [temperature] El aire a { $celsius } °C puede explicarlo
   *[off] No coincide: mira adónde apunta, cómo asienta y qué más hay cerca
}.

facts-test-not-heard = { CAP(PART($sort, form: "test")) }, { $proof }.
facts-test-fault = { CAP(PART($sort, form: "test")) }: fallo en { $positions }.
facts-test-good = { CAP(PART($sort, form: "test")) }: sin fallo.
facts-test-provoked = Antes: { $what }.
facts-provoked = { $what ->
    [at_once] nada, enseguida otra vez
    [water] agua
    [heat] calor
    [cold] frío
    [loom] mover los cables
    [drive] un recorrido
   *[another_day] otro día
}
facts-cleaned = Limpiado: { $position }.
facts-connector-locked = Conector cerrado en { $position }.
facts-fit-checked = Montaje repasado en { $position }.
facts-measured = { CAP($check) } en { $position }: { $reads ->
    [good] bien
    [bad] mal
   *[unclear] no está claro
}.
facts-measured-value = { CAP($check) } en { $position }: { $reads ->
    [good] bien
    [bad] mal
   *[unclear] no está claro
} ({ $value }{ $unit ->
    [none] { "" }
   *[other] { " " }{ $unit }
}).
facts-measured-compared = Donde funciona: { $value }{ $unit ->
    [none] { "" }
   *[other] { " " }{ $unit }
}.
facts-measured-all-the-same = A pesar de todo, porque: { $reason }.
facts-repaired = Reparado: { $cause }.
facts-repaired-where = Reparado: { $cause }, { $where }.
facts-repaired-what = Qué se hizo: { $what }
facts-reading-not-retaken = { CAP($check) } en { $position }{ $warm }: no se repitió, { $reason }.
facts-reading-after = { $what ->
    [heat] , calentado con aire
    [drive] , caliente tras un viaje largo
   *[other] , tras { $after }
}
facts-wire-noted = Cable en { $position }: { $size }, { $metres } m, { $celsius } °C.
facts-wires-marked = Cables en { $position }.
facts-wire-colour = Color: { $colour }.
facts-wire-colour-of = { $line ->
    [signal] Cable de señal
    [supply] Cable de alimentación
   *[ground] Cable de masa
}: { $colour }.
facts-wire-pins = Contactos: { $pins }.

facts-a-unit = { PART($sort, form: "a") }
facts-unit-added = { CAP($unit) } añadido.
facts-unit-added-with-part = { CAP($unit) } añadido, pieza { $part }.
facts-unit-labelled = Etiqueta { $code } puesta ({ $how }).
facts-label-void = Etiqueta { $code } anulada: { $reason }
facts-part-noted = { CAP($unit) }: pieza { $part }.
facts-serial-noted = { CAP($unit) }: número de serie { $serial }.
facts-numbers-noted = { CAP($unit) }: pieza { $part } { $serial }.

## Cómo se supo cuál es.

facts-how = { $chosen ->
    [scanned] etiqueta leída
    [typed] código tecleado
    [tapped] sin leer la etiqueta
    [written] código a mano
   *[other] { $chosen }
}

## Adónde fue.

facts-unit-pulled = { CAP($unit) } quitado { JOIN("de", $position) } ({ $how }).
facts-unit-fitted = { CAP($unit) } montado en { $position } ({ $how }).
facts-unit-fitted-other-part = Otro número de pieza, porque: { $reason }
facts-unit-fitted-hanging = Cuelga de su cable, sin encajar.
facts-unit-moved = { CAP($unit) } está ahora { $place }.
facts-tests-told-apart = { $count ->
    [0] Se distinguieron unas pruebas.
    [one] La prueba { $tests } fue una prueba distinta.
   *[other] Las pruebas { $tests } fueron pruebas distintas.
}
facts-work-went-on = El trabajo siguió después del cierre.
facts-unit-seen-fitted = { CAP($unit) } visto en { $position }.
facts-unit-seen = { CAP($unit) } visto { $place }.
facts-units-mixed = { CAP($units) } se mezclaron: no se sabe cuál es cuál.
facts-mixup-stopped = Detenido: había { $seen } donde va { $expected }.
facts-exchange-begun = { $move ->
    [replace] Sustitución empezada
    [home] Vuelta a su sitio empezada
   *[exchange] Intercambio empezado
}: { $positions }.
facts-move-begun-at = Empezado: { $move ->
    [clean] limpiar
    [unplug] desenchufar
    [meter] medidas del cableado
   *[retest] probar de nuevo
} en { $positions }.
facts-move-begun = Empezado: { $move ->
    [clean] limpiar
    [unplug] desenchufar
    [meter] medidas del cableado
   *[retest] probar de nuevo
}.
facts-move-dropped = Paso abandonado: { $reason }.

facts-comes-and-goes = El fallo va y viene.
facts-stays = El fallo no va y viene.
facts-rates-set = Supuestos cambiados.
# $jobs (count): 52
facts-rates-learned = Tasas tomadas de { $jobs } trabajos propios.
# $jobs (count): 52
facts-minutes-learned = Minutos tomados de { $jobs } trabajos propios.
facts-code-counts = El tipo de fallo del código en { $position } cuenta para la causa.
facts-code-does-not-count = El tipo de fallo del código en { $position } no cuenta para la causa.
facts-reach-set = { CAP($position) }: { $minutes } hasta tener la mano en él.
facts-money-set = Mano de obra y precios puestos.
facts-labels-printed = { $count ->
    [one] { $count } etiqueta impresa.
   *[other] { $count } etiquetas impresas.
}
facts-labels-spoiled = { $count ->
    [one] { $count } etiqueta impresa queda anulada: { $reason }
   *[other] { $count } etiquetas impresas quedan anuladas: { $reason }
}

facts-return-received = { CAP($unit) } está en el mostrador de recambios, en la mano del encargado ({ $how }).
facts-return-numbers = Leído en la pieza: { $numbers }.
facts-record-received = El registro de { $unit } que selló { $maker } se comprobó y se guarda aquí.
facts-return-decided = { CAP($unit) } { $decision ->
    [accept] aceptado
    [hold] retenido
   *[refuse] rechazado
} en el mostrador de recambios, firmado por { $signed }.
facts-return-overruled = En contra del registro, porque: { $reason }

facts-comeback-set = Una posición ya reparada cuenta { $factor } veces al principio; la mitad se va en { $months } meses.
