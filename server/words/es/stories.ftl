### Lo que dos teléfonos anotaron por separado y se contradice: quién dijo qué, y la pregunta que lo aclara.

stories-progress = Por aclarar
stories-two-places = { CAP($unit) }: en dos lugares
stories-two-units = Dos { PART($sort, form: "many") } en { $position }
stories-where = { CAP($unit) }: ¿dónde está?
stories-scan = Lee la etiqueta donde está de verdad.
stories-asked = ¿Dónde está de verdad { PART($sort, form: "the") }?
stories-scan-now = Leer ahora
stories-waits = { $count ->
    [one] La prueba { $tests } cuenta cuando esto se aclare.
   *[other] Las pruebas { $tests } cuentan cuando esto se aclare.
}
stories-scan-wrong = Este es { $code }. Se pregunta por { $unit }.
stories-scan-wrong-more = Busca { $unit } y lee su etiqueta.

## Quién hizo qué; el nombre y la hora van delante.

stories-at = en { $position }
stories-fitted = montó { $unit } { $place }
stories-pulled = quitó { $unit } { JOIN("de", $position) }
stories-put = { $place ->
    [stock] guardó { $unit } en el almacén
    [counter] entregó { $unit } en el mostrador de recambios
    [customer] entregó { $unit } al cliente
    [scrapped] desechó { $unit }
   *[out] tomó { $unit } en la mano
}
stories-found = encontró { $unit } { $place }
stories-mixed = mezcló { $unit } con otros
stories-on-record = Registrado antes: { $unit } { $place }
stories-test-fault = fallo en { $positions }
stories-test-clean = sin fallo
stories-test-unheard = { $proof }
stories-closed = cerró el trabajo

## Lo que es verdad.

stories-answer = { CAP($place) }
stories-answer-then = { $count ->
    [one] { CAP($place) } ahora; { $before } en la prueba { $tests }
   *[other] { CAP($place) } ahora; { $before } en las pruebas { $tests }
}
stories-tests-title = ¿Una prueba anotada { $count ->
    [2] dos
   *[other] { $count }
} veces?
stories-tests-two = { $count ->
    [one] Fue una prueba
    [2] Fueron dos pruebas
   *[other] Fueron { $count } pruebas
}
stories-tests-one = { $phone ->
    [other] Una prueba. Lo correcto: { $read } ({ $who })
   *[own] Una prueba, y { $who } la tiene bien: { $read }
}
stories-corrected-one = { $phone ->
    [other] Correcto: { $read } ({ $who })
   *[own] { $who } tiene razón: { $read }
}
stories-corrected-both = { $count ->
    [2] Las dos son correctas
   *[other] Todas son correctas
}
stories-corrected-title = Una anotación, corregida de { $count ->
    [2] dos maneras
   *[other] { $count } maneras
}
stories-corrected-first = anotó al principio: { $said }
stories-corrected-asked = ¿Qué corrección es la correcta?
stories-took-back = la retiró: no fue así
stories-silent = { $count ->
    [0] se informó de todas las posiciones
   *[other] no se dijo nada de { $positions }
}
stories-of-unit = era { $unit }
stories-field = { $field ->
    [name] nombre: { $value }
    [called] posición: { $value }
    [plate] matrícula: { $value }
    [vin] VIN: { $value }
    [complaint] queja: { $value }
    [note] nota: { $value }
    [compared] en el que funciona: { $value }
    [part] número de pieza: { $value }
    [serial] número de serie: { $value }
    [model] modelo: { $value }
   *[value] medido: { $value }
}
stories-field-none = { $field ->
    [plate] sin matrícula
    [vin] sin VIN
    [complaint] sin queja
    [note] sin nota
    [compared] nada en el que funciona
    [part] sin número de pieza
    [serial] sin número de serie
    [model] sin modelo
   *[value] nada medido
}
stories-before = Registrado antes: { $said }
stories-numbers-title = { $count ->
    [1] { CAP($unit) }: ¿qué número tiene?
   *[other] { CAP($unit) }: ¿qué números tiene?
}
stories-numbers-asked = Léelo otra vez en { PART($sort, form: "the") }.
stories-mixed-title = ¿Se mezclaron { $units }?
stories-mixed-yes = Sí, se mezclaron
stories-mixed-no = No: cada uno está donde se puso
stories-closed-title = ¿Está terminado este trabajo?
stories-go-on = No: seguir con él
stories-settled-already = { $move ->
    [exchange] Las pruebas ya aclararon qué falla. El intercambio no puede decir nada más.
   *[other] Las pruebas ya aclararon qué falla. La siguiente revisión no puede decir nada más.
}
stories-go-on-without = { $move ->
    [exchange] No: seguir sin el intercambio
   *[other] No: seguir sin esa revisión
}
stories-go-on-with = { $move ->
    [exchange] No: terminar antes el intercambio
   *[other] No: terminar antes esa revisión
}
stories-close = Sí: cerrarlo
