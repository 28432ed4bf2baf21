### Jobs, units, returns and reports: what their pages show, and what the customer reads.

## What a line begins with.

views-heading = { CAP($words) }

## The parts counter.

views-counter-by-hand = Revisado a mano
views-counter-agreed = Acordado por teléfono
views-counter-record-later = El registro llega después
views-counter-decide = { $decision ->
    [accept] Aceptar
    [hold] Retener
   *[refuse] Rechazar
}
views-counter-decided = { $decision ->
    [accept] Aceptado
    [hold] Retenido
   *[refuse] Rechazado
}
views-counter-then = { $place ->
    [stock] Guardado en el almacén
    [customer] Devuelto al cliente
   *[scrapped] Desechado
}
views-counter-origin = { $position } de { $vehicle }
views-counter-all-for-it = Todo el registro está a favor
views-counter-picture = { PART($sort, form: "the") }
views-counter-labelled = Con su etiqueta en el taller, { $ago }

## The returns of a unit.

views-returned-received = Recepción en el mostrador, { $how ->
    [scanned] etiqueta leída
    [typed] código tecleado
    [tapped] sin leer la etiqueta
   *[other] { $how }
}.
views-returned-read-both = Leído en la pieza: número { $part }, serie { $serial }.
views-returned-read-part = Leído en la pieza: número { $part }.
views-returned-read-serial = Leído en la pieza: serie { $serial }.
views-returned-decided = { $decision ->
    [accept] Aceptado
    [hold] Retenido
   *[refuse] Rechazado
}.
views-returned-overruled = Según el registro: { $proposed ->
    [accept] aceptar
    [hold] retener
   *[refuse] rechazar
}. Se decidió otra cosa porque: { $because }.
views-returned-against = En contra: { $about }.
views-returned-signed = Lo registró { $actor }, en nombre de { $signed }.
views-returned-phone = Se firmó en el teléfono de { $name }.

## What the tests of a job say about a unit.

views-finding-sure = { $sure } de seguridad.
views-finding-cleared = No fue { PART($sort, form: "this") }.
views-finding-chance = Probabilidad de que { PART($sort, form: "this") } esté mal: { $chance }.

## A job.

views-job-mark = { $mark ->
    [fault] fallo
    [clean] sin fallo
    [aside] no cuenta
    [empty] vacío
   *[untested] sin probar
}
views-job-entry-newer = Lo registró una versión más nueva de la aplicación. Se guarda, y cuenta cuando esta aplicación se actualice.
views-job-entry-unknown = Una anotación que esta aplicación no entiende. Se guarda.

views-history-phone = { $how ->
    [shared] { $actor }, en el teléfono de { $name }
    [nobody] en el teléfono de { $name }, sin nombre
   *[said] lo dijo { $actor } en el teléfono de { $name }
}
views-history-not-said = Nadie ha dicho que { $actor } use este teléfono.
views-history-role = { $role ->
    [counter] Lo registró un teléfono del mostrador de recambios. Eso se registra en el taller.
   *[bench] Lo registró un teléfono del taller. Eso se registra en el mostrador de recambios.
}

## What a job comes to.

views-summary-new = { CAP($unit) } es nuevo en { $position }.
views-summary-off = { CAP($unit) } se quitó; está { $place }.
views-summary-loose = sin guardar todavía

## The report for the customer.

views-report-finished = El trabajo está terminado.
views-report-unrepaired = El trabajo terminó sin reparación.
views-report-unfinished = El trabajo no está terminado. Esto es lo que se sabe hasta ahora.
views-report-untested = Aún no se ha probado nada.
views-report-several = Se encontraron varios fallos.
views-report-several-over = Se encontraron los fallos y se repararon.
views-report-no-fault = Ninguna prueba ha mostrado un fallo.
views-report-gone = El fallo ha desaparecido.
views-report-uncertain = La causa aún no es segura.
views-report-unit = { CAP(PART($sort, form: "one-of")) } está mal.
views-report-unit-over = { CAP(PART($sort, form: "one-of")) } estaba mal; ya no está en el vehículo.
views-report-circuit = { CAP(PART($sort, form: "circuit")) } en { $where } tiene un fallo.
views-report-circuit-over = { CAP(PART($sort, form: "circuit")) } en { $where } tenía un fallo y se ha reparado.
views-report-blocked = { CAP(PART($sort, form: "the")) } en { $where }: { $state }.
views-report-blocked-over = Así estaba { PART($sort, form: "the") } en { $where }: { $state }.
views-report-feed = La alimentación { JOIN("de", PART($sort, form: "the-many")) } { $where ->
    [front] delanteros
    [rear] traseros
   *[other] { $where }
} tiene un fallo.
views-report-feed-over = La alimentación { JOIN("de", PART($sort, form: "the-many")) } { $where ->
    [front] delanteros
    [rear] traseros
   *[other] { $where }
} tenía un fallo.
views-report-control = La unidad de control tiene un fallo.
views-report-control-over = La unidad de control tenía un fallo.
views-report-first-fault = { CAP(PART($sort, form: "whose-test")) } mostró un fallo en { $positions }.
views-report-unit-moved = { CAP($unit) } se pasó de { $first } a { $last }, y el fallo fue detrás. Un fallo del cableado se habría quedado en su sitio. Así que lo que está mal es { PART($sort, form: "the") }.
views-report-unit-left = { CAP($unit) } está mal: es la explicación que dejan las pruebas.
views-report-circuit-stayed = Se montó { PART($sort, form: "another") } en { $position }, y el fallo se quedó allí. Así que { PART($sort, form: "the") } está bien. El fallo está en { PART($sort, form: "wiring") } de esa posición.
views-report-circuit-left = El fallo está en { PART($sort, form: "wiring") } de { $position }.
views-report-blocked-found = { CAP($obstruction) } en { $position } no dejaba funcionar { JOIN("a", PART($sort, form: "the")) }, que está bien.
views-report-feed-found = { CAP(PART($sort, form: "the-many")) } { $group ->
    [front] delanteros
    [rear] traseros
   *[other] { $group }
} comparten alimentación y masa. El fallo está ahí, no en { PART($sort, form: "the-many") }.
views-report-control-found = { CAP(PART($sort, form: "the-many")) } y sus cables están bien. El fallo está en la unidad de control o en su propia alimentación.
views-report-rests = según { $count ->
    [one] { $count } { PART($sort, form: "test") }
   *[other] { $count } { PART($sort, form: "tests") }
} { $heard }
views-report-sure = Seguridad de esta conclusión: { $sure }, { $rests }.
views-report-else = Qué más podría ser: { $cause }, { $chance }.
views-report-clear = Que no queda nada por reparar: { $sure } de seguridad, { $rests }.
# $sort: parking-sensor
views-report-clean-tests = Pruebas sin ningún fallo al final: { $count }. Que no queda nada por reparar: { $sure } de seguridad.
views-report-against = Probado después de: { $against }.
views-report-walk = { $check }: { $heard }.
views-report-reading = { CAP($check) } en { $position }{ $warm }: mal{ $before } antes de reparar, { $stands ->
    [good] bien{ $now } después.
    [left] sin repetir: { $reason }.
    [still] sigue mal{ $now } después.
   *[again] aún sin repetir.
}
views-report-figure = { " " }({ $value }{ $unit ->
    [none] )
   *[other] { " " }{ $unit })
}
views-report-unproven = Aún nada comprueba una reparación.
views-report-not-proven = La reparación no está comprobada. Hasta entonces, no te fíes { JOIN("de", PART($sort, form: "the-system")) }.
views-report-came-and-went = Este fallo iba y venía. Si vuelve, anota el tiempo que hacía y qué hacías, y ven de nuevo.
views-report-not-back = Aún no todos { PART($sort, form: "the-many") } están en su sitio.
views-report-photo = { $shows ->
    [screen] Pantalla { JOIN("de", PART($sort, form: "the-test")) }
    [work] El trabajo
   *[unit] { CAP(PART($sort, form: "a")) }
}

## What was done, test by test, for the customer.

views-work-not-heard = { CAP(PART($sort, form: "test")) } { $number }: { $why }; no cuenta.
views-work-fault = { CAP(PART($sort, form: "test")) } { $number }: fallo en { $positions }.
views-work-clean = { CAP(PART($sort, form: "test")) } { $number }: sin fallo.
views-work-not-tested = Sin probar desde entonces.
views-work-cleaned = Limpiado: { $position }.
views-work-repaired = Reparado: { $cause }.
views-work-repaired-where = Reparado: { $cause }, { $where }.
views-work-done = Qué se hizo: { $what }.
views-work-unplugged = Desenchufado para la prueba: { $positions }.
views-work-exchanged = Se intercambiaron { PART($sort, form: "the-many") } en { $positions }.
views-work-moved = Se pasó { PART($sort, form: "a") } a { $positions }.
views-work-fitted = Se montó { PART($sort, form: "the") } { $unit } en { $position }.
views-work-taken-out = Se quitó { PART($sort, form: "the") } en { $positions }.

## What a verdict rests on.

views-support-others = Otras también pesan, pero menos.
views-support-confirms = { $how_many ->
    [one] La prueba { $tests } lo confirma; sin ella, la conclusión se mantiene.
   *[several] Las pruebas { $tests } lo confirman; sin cualquiera de ellas, la conclusión se mantiene.
}
views-support-checks-carry = Las comprobaciones del cableado en { $position } lo sostienen: sin ellas
views-support-heard-carries = Lo que se oyó en { $position } lo sostiene: sin ello
views-support-tests-carry = { $how_many ->
    [one] La prueba { $tests } lo sostiene: sin ella
   *[several] Las pruebas { $tests } lo sostienen, cada una: sin una de ellas
}
views-support-weaker = { $carrier }, solo tendrías { $sure } de seguridad.
views-support-nothing-left = { $carrier }, nada señalaría una causa.
views-support-as-likely = { $carrier }, { $cause } sería igual de probable.
views-support-other = { $carrier }, lo más probable sería { $cause }, { $chance }.
views-support-fault-at = el fallo en { $positions }
views-support-clean-at = que { $positions } salió sin fallo
views-support-counts = Lo que cuenta es { $readings }.
views-support-none-alone = Ninguna prueba lo sostiene sola: quita una cualquiera, y las demás aún dan { $chance }.
views-support-alone = { $count ->
    [0] Ningún otro conjunto sin causas
    [1] Ninguna otra causa sola
    [2] Ningún otro par de causas
    [3] Ningún otro conjunto de tres causas
    [4] Ningún otro conjunto de cuatro causas
   *[other] Ningún otro conjunto de { $count } causas
} explica todo lo visto.
views-support-next = La siguiente más probable es { $cause }, { $chance }.
views-support-no-fault = ningún fallo
views-support-misses = No explica { $what }.
views-support-missed-many = { $count } de los fallos vistos
views-support-missed-check = la comprobación mala en { $position }
views-support-missed-fault = el fallo en { $position } en la prueba { $number }
views-support-missed-two = { $one } ni { $other }
views-support-same = Una prueba hecha ahora mostraría lo mismo en los dos casos.
views-support-no-test = Ninguna prueba hecha ahora distingue entre las dos.
views-support-apart = { $move }.
views-support-then = { $kind ->
    [one] es { $cause }
    [several] las causas son { $cause }
   *[leans] apunta a { $cause }
}

## The trail.

views-trail-test = n.º { $number }

## A unit.

views-unit-test = Prueba { $number } en { $vehicle }, en { $position }: { $mark ->
    [fault] mostró fallo
    [clean] sin fallo
    [aside] no cuenta, no prueba nada
   *[untested] sin informar
}.
views-unit-no-test = No hay ninguna prueba registrada.
views-unit-tests-read = { $mark ->
    [fault] { $count } con fallo
    [clean] { $count } sin fallo
    [aside] { $count ->
        [one] { $count } que no cuenta
       *[other] { $count } que no cuentan
    }
   *[untested] { $count } sin informar
}
views-unit-tests = { $count ->
    [one] { $count } prueba
   *[other] { $count } pruebas
}: { $read }.
views-unit-photo = { CAP(PART($sort, form: "the")) }
views-unit-photo-at = En { $position } de { $vehicle }

## What may be done with a unit next: what to do first, its button, and the places it can go to.

views-unit-next-dispute = Hay dos lugares registrados. Lee su etiqueta donde está de verdad.
views-unit-bad = salió malo en { $vehicle }
views-unit-next-mixed = Es uno de varios que se mezclaron. El trabajo dice cómo distinguirlos.
views-unit-next-label = Ponle una etiqueta nueva y léela.
views-unit-next-open = Su trabajo está abierto.
views-unit-next-decided = El mostrador ya ha decidido.
views-unit-next-counter = El comprobante dice qué se encontró.
views-unit-next-bad = Se encontró que está mal. Va al mostrador de recambios con su comprobante.
views-unit-next-stock = Se puede usar en un trabajo.
views-unit-next-last = No hay nada que hacer.
views-unit-next-nothing = No hay nada que hacer.
views-unit-next-scan = Leer su etiqueta
views-unit-next-scan-fresh = Leer una etiqueta nueva
views-unit-next-job = Ir al trabajo
views-unit-next-last-job = Ir a su último trabajo
views-unit-next-slip = Ver el comprobante
views-unit-next-jobs = Ver los trabajos
views-unit-next-place = { $place ->
    [stock] A mi almacén
    [counter] Al mostrador de recambios
    [customer] Se lo queda el cliente
   *[scrapped] Desechado
}

views-list-move = { $move ->
    [exchange] Intercambio a medias
    [replace] Cambio de pieza a medias
    [home] De vuelta a su sitio
    [clean] Limpieza a medias
    [meter] Revisión del cableado a medias
    [unplug] Prueba desenchufada a medias
   *[other] Falta la nueva prueba
}
views-list-untested = Aún sin prueba
views-list-not-heard = Prueba sin confirmar
views-list-clean = Última prueba: sin fallo
views-list-fault = { $count ->
    [one] Fallo en { $positions }
   *[other] Fallos en { $positions }
}
views-list-find = Busca la causa
views-list-see = Compruébalo y cierra
views-code-means = «{ $means }», como se dijo en { $vehicle }
views-list-found = { $sort ->
    [vin] VIN { $what }
    [part] Pieza { $what }
    [sensor] Sensor { $what }
    [serial] N.º de serie { $what }
    [code] Código { $what }
    [means] Se dijo de un código: { $what }
    [vehicle] Vehículo { $what }
    [plate] Matrícula { $what }
    [complaint] Queja: { $what }
    [said] Dicho o firmado: { $what }
   *[person] Trabajó en él { $what }
}

## Pictures of a job: the moment at which each was taken.

# $when: before
views-picture-repair = { $when ->
    [before] antes de la reparación
   *[after] después de la reparación
}
# $when: before
# $position: right outer
views-picture-of-repair = { $when ->
    [before] Antes de la reparación
   *[after] Después de la reparación
}{ $position ->
    [none] { "" }
   *[other] : { $position }
}
views-picture-untouched = antes de quitar nada aquí
# $unit: K7F-3M
views-picture-fitted = con { $unit } montado
views-picture-empty = sin nada montado aquí
views-picture-before-tests = antes de la primera prueba
# $number: 2
views-picture-after-test = después de la prueba { $number }

## Quién más está en un trabajo.

views-others = { $what ->
    [look] { $person } está mirando el coche.
    [test] { $person } está haciendo { PART($sort, form: "the-test") }.
    [photo] { $person } está haciendo fotos.
    [exchange] { $person } está intercambiando { PART($sort, form: "many") }.
    [replace] { $person } está cambiando { PART($sort, form: "a") }.
    [home] { $person } está devolviendo { PART($sort, form: "many") } a su sitio.
    [clean] { $person } está limpiando.
    [meter] { $person } está revisando el cableado.
    [unplug] { $person } está desenchufando para una prueba.
    [plug] { $person } está enchufando.
    [choose] { $person } está eligiendo qué sigue.
    [walk] { $person } está comprobando en uso.
    [finish] { $person } está terminando.
   *[other] { $person } tiene abierto este trabajo.
}
views-others-at = { $what ->
    [exchange] { $person } está intercambiando: { $positions }.
    [replace] { $person } está cambiando: { $positions }.
    [home] { $person } está devolviendo a su sitio: { $positions }.
    [clean] { $person } está limpiando: { $positions }.
    [meter] { $person } está revisando el cableado: { $positions }.
    [unplug] { $person } está desenchufando para una prueba: { $positions }.
    [plug] { $person } está enchufando: { $positions }.
   *[other] { $person } está en: { $positions }.
}
views-others-more = { $count ->
    [one] { $person } también está en él.
   *[other] Hay { $count } personas más.
}

views-back = { $count ->
    [one] Este vehículo ya estuvo aquí, { $days ->
        [0] hoy mismo
        [one] hace un día
       *[other] hace { $days } días
    }.
   *[other] Este vehículo ya estuvo aquí { $count } veces, la última { $days ->
        [0] hoy mismo
        [one] hace un día
       *[other] hace { $days } días
    }.
}
views-back-replaced = Se cambió entonces: { PART($sort, form: "the") } de { $positions }.
views-back-nothing = Entonces no hubo ninguna causa segura.
views-back-shown = Entonces el fallo salió en { $positions }; no hubo ninguna causa segura.

views-vehicle-empty = vacía
views-vehicle-open = Sin terminar.
views-vehicle-warranty = { $days ->
    [one] Garantía de este trabajo: un día más.
   *[other] Garantía de este trabajo: { $days } días más.
}
views-vehicle-warranty-over = { $days ->
    [0] La garantía de este trabajo terminó hoy.
    [one] La garantía de este trabajo terminó hace un día.
   *[other] La garantía de este trabajo terminó hace { $days } días.
}

views-report-only-spare = Nada habla ya en contra de { PART($sort, form: "the-many") } con los que vino tu vehículo.
views-report-spare-likely = { CAP($unit) }, un repuesto nuestro, parece estar mal. No sería un fallo de tu vehículo.
views-report-spare = { CAP($unit) }, un repuesto nuestro, resultó estar mal { $still ->
    [yes] y sigue en tu vehículo. Se pone otro.
   *[no] y no está en tu vehículo. No era un fallo de tu vehículo.
}
views-summary-moved = { CAP($unit) } está ahora en { $position }; vino de { $before }.

## Putting an entry right.

views-correct-field = { $field ->
    [name] Vehículo
    [plate] Matrícula
    [vin] VIN
    [reason] Motivo
    [complaint] Queja
    [faulted] Fallos en
    [silent] No dijo nada de
    [heard] El zumbador
    [note] Nota
    [position] Posición
    [reads] La lectura
    [value] Medido
    [compared] En el que funciona
    [cause] Qué se reparó
    [segment] Dónde estaba
    [what] Qué se hizo
    [code] Código de la etiqueta
    [part] Número de pieza
    [serial] Número de serie
    [unit] Sensor
    [units] Mezclados
    [colour] Color
    [signal_colour] Color del cable de señal
    [supply_colour] Color del cable de alimentación
    [ground_colour] Color del cable de masa
    [pins] Contactos
    [ticks] Hace tictac en
    [unheard] Nada que oír en
    [missed] Algo no va en
    [result] El testigo
    [to] Entregado a
    [model] Modelo de vehículo
    [why] Por qué
    [check] Qué se revisó
    [found] Qué se encontró
   *[place] Lugar
}
views-correct-called = Cómo se llama { $position }
views-correct-seen = Visto en { $position }
views-correct-code = Código de avería{ $position ->
    [none] , sin posición
   *[other] { " " }en { $position }
}
views-correct-means = Qué significa { $code }
views-correct-reads = { $reads ->
    [good] buena
    [bad] mala
   *[unclear] no está clara
}
views-correct-sounder = { $found ->
    [good] bien
    [mended] encontrado y arreglado
   *[unclear] no está claro
}
views-correct-heard = { $heard ->
    [yes] se oyó
   *[no] no se oyó
}
views-correct-verdict = El veredicto era: { $before } Ahora es: { $after }
views-correct-stays = El veredicto se mantiene: { $verdict }
views-correct-untested = aún no contaba ninguna prueba
views-correct-unit = Hasta ahora consta: { $before }. Después: { $now }.
views-correct-unit-stays = Sigue constando: { $now }.
views-correct-unit-none = nada
views-correct-unit-is = { $numbers ->
    [both] { $unit }, número de pieza { $part }, número de serie { $serial }, está { $where }
    [part] { $unit }, número de pieza { $part }, está { $where }
    [serial] { $unit }, número de serie { $serial }, está { $where }
   *[none] { $unit } está { $where }
}

## Layouts that a person drew.

views-layout-kept = { $model }, { $count }
