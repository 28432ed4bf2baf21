### Cómo se llaman los sensores, las posiciones y los lugares.

names-unit-unknown = { PART($sort, form: "a") } sin registrar
names-unit-mixed = uno de los { $count } que se mezclaron
names-unit-from = { $count ->
    [one] { PART($sort, form: "the") }
   *[other] { PART($sort, form: "the-many") }
} { JOIN("de", $position) }
names-unit-unlabelled = { PART($sort, form: "a") } sin etiqueta
names-place-stock = en { $whose ->
    [theirs] su
   *[yours] tu
} almacén
names-place-counter = en el mostrador de recambios
names-place-customer = con el cliente
names-place-scrapped = desechado
names-place-in-hand = en la mano
names-place-disputed = en duda: hay dos lugares registrados
names-place-fitted-at = montado en { $position }
names-place-fitted-on = montado en { $vehicle }
names-place-hand-from = en { $whose ->
    [theirs] su
   *[yours] tu
} mano, quitado { JOIN("de", $position) }
names-place-hand = en { $whose ->
    [theirs] su
   *[yours] tu
} mano
names-place-other-job = fuera, en otro trabajo
names-place-mixed = uno de { $count } en la mano que se mezclaron
names-ago = { $days ->
    [0] hoy
    [one] hace { $days } día
   *[other] hace { $days } días
}
