### El único paso siguiente de un trabajo, sus movimientos y lo que dice una etiqueta leída en un paso.

guide-stage-look = mirar
guide-stage-test = probar
guide-stage-label = marcar
guide-stage-swap = cambiar
guide-stage-prove = validar
guide-stage-close = cerrar

guide-progress-position = Posición
guide-progress-photo = Foto
guide-progress-label = Etiqueta
guide-progress-check = Revisión
guide-progress-exchange = Intercambio
guide-progress-fit = Montaje
guide-progress-replacement = Sustitución
guide-progress-home = Volver a su sitio

guide-stop-move = Parar este movimiento
guide-position = { CAP($position) }

guide-cautions-title = Antes de empezar
guide-cautions-read = Lo he leído
guide-photo-title = Fotografía cada posición
guide-photo-take = Hacer la foto
guide-photo-skip = Seguir sin foto
guide-look-title = Testigos y un vistazo
guide-look-title-alone = Un vistazo
guide-look-text = Toca lo que no sea así.
guide-look-all-right = Todo como debe ser

guide-test-run = Haz { PART($sort, form: "the-test") }
guide-test-again = Repite { PART($sort, form: "the-test") }
guide-test-mixed-up = Prueba de nuevo: se mezclaron
guide-test-prove = Prueba de nuevo, para comprobarlo
guide-test-no-fault = Aún no ha salido ningún fallo
guide-test-unplugged = Quita el contacto, desenchufa { $position }, da el contacto y empieza { PART($sort, form: "the-test") }.
guide-test-more-than-one = Un fallo que va y viene pide más de una prueba.
guide-test-enter = Anotar el resultado
## Las respuestas probables de una prueba, con un toque; todas menos la última dicen que se oyó el zumbador.

guide-test-went = Se movió: fallo en { $positions }
guide-test-stayed = Se quedó: fallo en { $positions }
guide-test-still = Sigue ahí: fallo en { $positions }
guide-test-gone = Ha desaparecido: ningún fallo
guide-test-not-heard = { CAP($proof) }

## Pruebas que no muestran nada.
guide-nothing-title = { CAP(PART($sort, form: "the-test")) } no muestra ningún fallo
guide-nothing-text = O ha desaparecido, o va y viene.
guide-nothing-comes-and-goes = Va y viene
guide-nothing-close = Cerrar sin hallazgo
guide-nothing-enough-title = Ningún fallo en { $count } pruebas
guide-nothing-enough-text = Ya habría salido. Cierra, o prueba otra vez tras conducir, con lluvia o con calor.
guide-nothing-at-once-text = Una tras otra prueban poco. Cierra, o prueba otra vez tras conducir, con lluvia o con calor.

guide-thinking = Buscando el siguiente movimiento
guide-moves-other = Otros movimientos
guide-start-retest = Anotar la nueva prueba
guide-start-clean = Empezar por limpiar
guide-start-exchange = Cambiar { $positions }
guide-start-exchange-several = Empezar el intercambio
guide-start-fitting = Empezar a montar
guide-start-unplug = Desenchufar y probar
guide-start-meter = Empezar las revisiones
guide-start-listen = Escuchar
guide-start-replace = Montar { PART($sort, form: "a-new") }

guide-move-repair = Busca y repara { $cause }
guide-move-retest = Repite { PART($sort, form: "the-test") }
guide-move-clean = { $count ->
    [one] Limpia { $positions } y prueba de nuevo
   *[other] Limpia { $positions } y después prueba de nuevo
}
guide-move-unplug = Desenchufa { $position } y prueba
guide-move-meter = Revisa el cableado en { $position }
guide-move-listen = Escucha en { $position }
guide-move-replace = Monta { PART($sort, form: "a-new") } en { $position }
guide-move-replace-several = Monta { PART($sort, form: "new-many") } en { $positions }
guide-move-exchange = { CAP($moves) }

guide-exchange-pairs = intercambia { $pairs }
guide-exchange-pair = { $one } con { $other }
guide-exchange-pair-more = { $before }, y { $pair }
guide-exchange-then = { $before }; después { $next }
guide-exchange-spare = monta tu repuesto { $unit } en { $position }
guide-exchange-mixed = monta { $unit } en { $position }
guide-exchange-in-hand = monta { $unit }, que tienes en la mano, en { $position }
guide-exchange-goes-on = { $before }; lo que había en { $start } va a { $goal }
guide-exchange-ring = { $count ->
    [2] mueve dos en círculo, en este orden: { $positions }
    [3] mueve tres en círculo, en este orden: { $positions }
    [4] mueve cuatro en círculo, en este orden: { $positions }
    [5] mueve cinco en círculo, en este orden: { $positions }
    [6] mueve seis en círculo, en este orden: { $positions }
   *[other] mueve { $count } en círculo, en este orden: { $positions }
}

guide-impossible-title = Este movimiento no se puede terminar
guide-impossible-text = { CAP($unit) } está { $place }.

guide-clean-title = Limpia { $position }
guide-clean-then-test = Después repite { PART($sort, form: "the-test") }.
guide-clean-then-next = Después sigue con { $position }.
guide-clean-then-check = Después prueba de nuevo.
guide-clean-done = { CAP($position) }: limpio

guide-measure-title = { CAP($position) }: { $check }
guide-measure-title-warm = { CAP($position) }, en caliente: { $check }
guide-measure-warm = { $what ->
    [drive] Mide justo tras un viaje largo, antes de que se enfríe.
   *[heat] Calienta antes el sitio con aire caliente, tibio al tacto y no más.
}
guide-measure-begin-warm = { $what ->
    [drive] Revisar justo tras un viaje largo
   *[heat] Revisar calentando con aire caliente
}
guide-measure-copper = Resta lo que marquen las puntas juntas. { $metres } m de cobre sano, { $size }, tienen { $cool } Ω a 20 °C. A 85 °C tienen { $hot } Ω.
guide-measure-unclear = No se sabe
guide-measure-done-title = Las revisiones del cableado en { $position } están hechas
guide-measure-done-text = Lecturas malas: { $bad } de { $count }.{ $unclear ->
    [0] { "" }
   *[other] { " " }Sin poder hacer: { $unclear }.
}
guide-measure-go-on = Seguir
guide-found-title = { CAP($position) }: está en { $segment }
guide-harness-in = El fallo está en { $segments }.
guide-harness-likely = Lo más probable es que esté en { $segment }: { $chance }.
guide-harness-open = Pueden tener el fallo { $count } de { $total } sitios.
guide-harness-why = Abarca { $segments }: { $chance } de lo que queda.
guide-harness-read-warm = { $read }, tras { $what }
guide-harness-apart = El intercambio de dos canales los distingue: un fallo de los cables se va con ellos.
guide-harness-warm = Un contacto que se abre en caliente se nota al calentar conector y cable.
guide-wire-good = { $most } Ω o menos
guide-wire-bad = Más de { $most } Ω, o abierto
guide-wire-copper = Resta lo que marquen las puntas juntas. { $metres } m de cobre sano, { $size }, tienen { $ohms } Ω a { $celsius } °C.
guide-wire-square = { $size } mm²
guide-wire-noted = { $size }, { $metres } m, { $celsius } °C

guide-take-title = Saca { $unit } de tu almacén
guide-take-text = { $by ->
    [tap] Toca su código, para que sea justo la pieza del plan.
   *[scan] Lee su etiqueta, para que sea justo la pieza del plan.
}
guide-scan-its-label = Leer su etiqueta
guide-pull-title = Quita { $unit } en { $position }
guide-pull-title-bare = Quita { PART($sort, form: "the") } en { $position }
guide-pull-title-out = Etiqueta { PART($sort, form: "the") } de { $position }
guide-pull-title-hand = Etiqueta { PART($sort, form: "the") } que tienes en la mano
guide-pull-scan = { $by ->
    [tap] Toca su código antes de dejarlo.
   *[scan] Lee su etiqueta antes de dejarlo.
}
guide-pull-label = Pégale una etiqueta y léela antes de dejarlo.
guide-whole = { $move ->
    [exchange] Cambiar { $positions }
    [fit] Montar en { $positions }
    [replace] Reemplazar en { $positions }
   *[home] Devolver a { $positions }
}
guide-fit-title = Monta { $unit } en { $position }
guide-fit-scan = { $by ->
    [tap] Toca primero el código que lleva { PART($sort, form: "the") } que tienes en la mano.
   *[scan] Lee primero { PART($sort, form: "the") } que tienes en la mano.
}
guide-fit-scan-action = Leer { PART($sort, form: "the") }
guide-fit-is-back = Está de nuevo en su sitio
guide-lock-title = { $count ->
    [one] ¿Enchufado en { $positions }?
    [2] ¿Los dos puestos y con el cierre echado?
   *[other] ¿Todos puestos y con el cierre echado?
}
guide-lock-pull = { $count ->
    [one] Tira una vez del cable. Para la prueba puede colgar.
   *[other] Tira una vez de cada cable. Para la prueba pueden colgar.
}
guide-lock-done = { $count ->
    [one] Puesto y cerrado
    [2] Los dos puestos y cerrados
   *[other] Todos puestos y cerrados
}
guide-seat-title = Encaja { $positions }
guide-seat-text = Toca lo que no sea así.
guide-seat-done = { $count ->
    [one] Todo está bien
    [2] Todo está bien en los dos
   *[other] Todo está bien en cada uno
}
guide-plug-back-title = Enchufa { $position } de nuevo
guide-plug-back-key-off = Primero quita el contacto.

guide-mixed-title = Se mezclaron { $count } { PART($sort, form: "many") }
guide-mixed-scan = Lee una etiqueta, vieja o nueva
guide-mixed-fit-title = Monta { $where } y después prueba
guide-mixed-fit-at = { $unit } en { $position }
guide-mixed-fit-text = Se mezclaron y todavía no hay pruebas: vale cualquier sitio.
guide-mixed-fit-again = Monta los que se mezclaron y después prueba

guide-replace-title = Sustituye { $cause }
guide-replace-text = Los números de pieza deben coincidir.
guide-replace-fit = Montar { PART($sort, form: "the-new") }
guide-replace-use = Usar { $unit }
guide-fill-title = { CAP($position) }: no hay nada
guide-fill-text = Monta { PART($sort, form: "a") }: una pieza nueva o una que tengas a mano.
guide-fill-leave = Dejarlo vacío
guide-spare-not-title = ALTO: { PART($sort, form: "this") } no
guide-spare-not-more = Toma uno bueno, o uno nuevo con una etiqueta nueva.
guide-spare-takes = { $code } va en { $position }.
guide-spare-bad = { CAP($unit) } salió malo en { $vehicle }.
# $sort: parking-sensor
guide-spare-faulted = { CAP($unit) } dio fallo en su última prueba.
guide-spare-mixed = { CAP($unit) } se mezcló con otros: no se sabe cuál es.
guide-spare-sort = { CAP($unit) } es otro tipo de pieza.
guide-spare-part = { CAP($unit) } tiene el número de pieza { $part }; aquí va { $wanted }.
guide-repaired = Lo he reparado
guide-repair-segment = { CAP($segment) }
guide-again-title = Otra vez en { $position }: { $check }
guide-again-read = Antes de reparar marcó { $value }{ $unit ->
    [none] .
   *[other] { " " }{ $unit }.
}
guide-again-left = { $reason ->
    [no-meter] Ahora no hay tester a mano
   *[out-of-reach] Ahora no se llega
}
guide-still-title = Sigue mal en { $position }: { $check }
guide-still-text = La reparación no llegó ahí. Busca más adelante en { PART($sort, form: "circuit") }.
guide-still-measure = Repasar otra vez las revisiones
guide-shared-title = Revisa { $cause }
guide-shared-text = La caída de tensión bajo carga, en la alimentación y en la masa, dice más que los ohmios de un cable sin tensión.
guide-shared-several-title = Revisa lo que todos comparten
# $sort: parking-sensor
guide-shared-several-text = Ninguna prueba puede distinguirlos.
guide-shared-several-repaired = Encontrado y reparado: { $cause }

guide-done-title = Este trabajo está cerrado
guide-done-by = Cerrado por { $name }. Su registro queda.
guide-done-by-unnamed = Cerrado por alguien sin nombre. Su registro queda.
guide-walk-leave = Dejarlo como está
guide-home-title = { $count ->
    [one] ¿Dejas la pieza buena donde está?
   *[other] ¿Dejas las piezas buenas donde están?
}
guide-home-sits = { $unit } está en { $position }
guide-home-text = { $same ->
    [yes] { $count ->
        [one] { CAP($where) }. Es la misma pieza y allí pasó la prueba. Devolverla a su sitio pide una prueba más.
       *[other] { CAP($where) }. Son la misma pieza y allí pasaron la prueba. Devolverlas a su sitio pide una prueba más.
    }
   *[other] { $count ->
        [one] { CAP($where) }. Allí pasó la prueba. Devolverla a su sitio pide una prueba más.
       *[other] { CAP($where) }. Allí pasaron la prueba. Devolverlas a su sitio pide una prueba más.
    }
}
guide-home-put-back = { $count ->
    [one] Devolver { $unit } a su sitio
   *[other] Devolverlas a su sitio
}
guide-home-leave = { $count ->
    [one] Dejarla allí
   *[other] Dejarlas allí
}
guide-finish-leave = { $count ->
    [one] Dejarla ahí y cerrar
   *[other] Dejarlas ahí y cerrar
}
guide-finish-title = Por último: ¿adónde va { $unit }?
guide-finish-text = { CAP($where) } y ahí se queda.
guide-stock-title = ¿Devuelves { $unit } a { $position }?
guide-stock-text = Salió de allí y fue a tu almacén; la probabilidad de que esté mal es: { $chance }. En su sitio está { $spare }. Devolver la pieza pide una prueba más.
guide-stock-put-back = Devolver la pieza
guide-stock-leave = Dejarlo así
guide-where-title = ¿Adónde va { $unit }?
guide-where-text = Está en tu mano. Lee la etiqueta para estar seguro de que es esta pieza y di adónde va.
guide-where-text-alone = No tienes otra pieza en la mano.
guide-where-counter = Al mostrador de recambios
guide-where-customer = Se la queda el cliente
guide-where-stock = A mi almacén
guide-where-scrapped = Desechado
guide-where-back = De vuelta a { $position }
guide-close-title = Cierra el trabajo
guide-close-title-not-yet = Aún falta algo
guide-close-text = No falta { PART($sort, form: "none") }.
guide-close-missed = { CAP($check) }: sin respuesta en { $positions }; eso queda registrado.

guide-scan-is = { $code } está { $place }.
guide-scan-fresh = { $code } es una etiqueta nueva.
guide-scan-this = Es { $code }.
guide-scan-void-title = Esta etiqueta está anulada
guide-scan-void-text = { $code } ya no se usa.
guide-scan-take-fresh = Toma una etiqueta nueva.
guide-scan-mixed-title = Esta etiqueta se mezcló
guide-scan-mixed-text = { $code } está { $place } y ya tiene una etiqueta nueva.
guide-scan-mixed-more = Lee la etiqueta nueva.
guide-scan-mixed-other = Ahora también se sabe cuál es la otra pieza.
guide-scan-mixed-labelled = Una de las piezas mezcladas es ahora { $code }.
guide-scan-mixed-take-fresh = Toma una etiqueta nueva para la siguiente pieza.
guide-scan-on-another = Esta etiqueta está en { PART($sort, form: "another") }
guide-scan-on-another-stop = ALTO: esta etiqueta está en { PART($sort, form: "another") }
guide-scan-on-another-more = Toma una etiqueta nueva para { PART($sort, form: "the") } de { $position }.
guide-scan-on-another-back = Si quitaste ese, ponlo otra vez en su sitio. Toma una etiqueta nueva para { PART($sort, form: "the") } de { $position }.
guide-scan-on-another-hand = Toma una etiqueta nueva para { PART($sort, form: "the") } que tienes en la mano.
guide-scan-out = { $code } está fuera de { $position }.
guide-scan-labelled = { CAP(PART($sort, form: "the")) } de { $position } es ahora { $code }.
guide-scan-labelled-hand = { CAP(PART($sort, form: "the")) } que tienes en la mano es ahora { $code }.
guide-scan-belongs = { $code } va en { $position }.
guide-scan-unknown-title = ALTO: { PART($sort, form: "none") } tiene aún esta etiqueta
guide-scan-unknown-more = Busca { PART($sort, form: "the") } con la etiqueta { $unit }; está { $place }.
guide-scan-wrong-title = ALTO: en la mano tienes { PART($sort, form: "another") }
guide-scan-wrong-text = Es { $code }. Aquí va { $unit }.
guide-scan-wrong-more = { $code } { $where }. Déjalo y toma { $unit }, que { $wanted }.
guide-scan-wrong-pull = { $code } { $where }. Déjalo y quita { $unit } en { $position }.
guide-scan-wrong-back = { $code } va en { $at }. Ponlo otra vez allí y toma { $unit }, que { $wanted }.
guide-scan-wrong-back-pull = { $code } va en { $at }. Ponlo otra vez allí y quita { $unit } en { $position }.
guide-scan-came-from = salió de { $position }
guide-scan-you-pulled = quitaste de { $position }
guide-scan-is-at = está { $place }

guide-noted-stopped-by-hand = parado a mano
guide-noted-settled-already = las pruebas ya lo habían resuelto
guide-noted-checks-done = todas las revisiones hechas
guide-noted-tested-there = probado allí
guide-noted-spare-stays = se queda el repuesto
guide-noted-same-test = la misma prueba, anotada dos veces
guide-noted-mixed-by-then = ya se habían mezclado
guide-noted-not-mixed = no se mezcló nada
guide-noted-no-repair = cerrado sin reparar
guide-noted-out-of-reach = ya no se llegaba
guide-noted-no-meter = sin tester a mano
guide-noted-slip = un desliz
guide-noted-no-fault-shown = no salió ningún fallo
guide-noted-left-empty = queda vacío

# $check: the fuse
guide-sounder-title = { PART($sort, form: "unproven") }: revisa { $check }
guide-sounder-mended = Estaba mal y ya está arreglado
guide-sounder-unclear = Está mal, o no lo sé
guide-sounder-rest-title = { $count ->
    [one] { PART($sort, form: "unproven") }, y todo está revisado
   *[other] { PART($sort, form: "unproven") } { $count } veces, y todo está revisado
}
guide-sounder-rest-repaired = La unidad de control ya se cambió o se reparó. Pregunta a quien conozca este vehículo.
guide-sounder-untold-title = { PART($sort, form: "unproven") }, y no todo se pudo saber
guide-sounder-untold = Queda abierto: { $checks }. Pregunta a quien lo sepa, o toca lo que ya sabes.
guide-sounder-control = He cambiado o reparado la unidad de control
guide-sounder-help = Pausa: necesito ayuda

guide-stuck-title = { $count ->
    [one] { CAP($position) }: las revisiones no dieron nada
   *[other] { CAP($position) }: revisado { $count } veces, sin hallazgo
}
guide-stuck-text = Queda un corte que va y viene, o { PART($sort, form: "channel") }.
guide-stuck-missed-title = { CAP($position) }: no se pudo revisar todo
guide-stuck-missed = { $few ->
    [yes] Sin hacer: { $checks }.
   *[no] { $count } revisiones no se pudieron hacer.
} Llega al lugar, o pide ayuda a quien llegue.
guide-stuck-missed-again = Hacer estas revisiones
guide-stuck-moved = El fallo se fue con los cables: lo más probable es un corte que va y viene.
guide-stuck-again = Revisar otra vez, moviendo los cables
guide-stuck-found = Lo encontré y lo reparé
guide-stuck-control = Se cambió la unidad de control

## Dónde va el poste, y distancias.

guide-stand-wanted = { $name }: «{ $typed }» no sirve. Se espera { $wanted }.
guide-stand-row = { CAP($position) }, { $name }
guide-stand-beyond = { CAP($position) } quedaría más allá del extremo. Mide desde la izquierda, mirando el parachoques.
guide-stand-sound = A { $celsius } °C el sonido va a { $speed } m por segundo. Desde { $far } cm el eco vuelve en { $echo } ms.
guide-stand-cold = Una unidad de control que no lo tiene en cuenta muestra { $shown } cm por { $far } cm.
