### Who held a unit: each handover, how the unit was identified at it, its labels, where it could be.

## What was done with it.

custody-fitted-at = Se montó en { $position } de { $vehicle }
custody-fitted = Se montó en { $vehicle }
custody-pulled = Se quitó de { $position } de { $vehicle }
custody-in-hand-for = Se tomó en la mano para { $vehicle }
custody-in-hand = Se tomó en la mano
custody-stock = Se guardó en el almacén
custody-counter = Se entregó en el mostrador de recambios
custody-customer = Se entregó al cliente
custody-scrapped = Se desechó
custody-disputed = Dos lugares registrados
custody-displaced = No estaba donde se registró
custody-mixed = Se mezcló con piezas iguales
custody-told-apart = Se identificó de nuevo
custody-label-on = Etiqueta { $code } puesta
custody-label-on-unread = Etiqueta puesta
custody-label-off = Etiqueta { $code } anulada
custody-label-off-unread = Etiqueta anulada
custody-else = { CAP($what) }
custody-no-name = sin nombre
custody-other-part = Otro número de pieza, porque: { $reason }

## How it was identified.

custody-how = { $how ->
    [scanned] etiqueta leída
    [typed] código tecleado
    [tapped] sin leer la etiqueta
    [written] código escrito a mano
   *[other] { $how }
}
custody-how-labelled = etiqueta puesta enseguida, { $how ->
    [scanned] leída
    [typed] código tecleado
    [written] código escrito a mano
   *[other] { $how }
}

## The whole custody in one sentence.

custody-short-none = No se ha movido desde que se vio por primera vez.
custody-short-way = { $how ->
    [scanned] con la etiqueta leída
    [typed] con el código tecleado
    [written] con el código escrito a mano
   *[tapped] sin leer la etiqueta
}
custody-short-one = { $count ->
    [one] { $count } entrega, { $way }.
   *[other] { $count } entregas, todas { $way }.
}
custody-short-counted = { $count } { $way }
custody-short-several = { $count ->
    [one] { $count } entrega
   *[other] { $count } entregas
}: { $ways }.

## Its labels.

custody-label-now = Está ahora en { PART($sort, form: "the") }.
custody-label-void = Anulada.
custody-label-void-note = Anulada: { $note }.
custody-label-double = { $codes } están registradas en { PART($sort, form: "a") } a la vez. Mira qué etiqueta lleva; anula la otra.
custody-label-shared = Dos { PART($sort, form: "many") } llevan la etiqueta { $code }. Quítala de una de las piezas y anúlala ahí.

## Where it could be.

custody-place = { $place ->
    [stock] en tu almacén
    [counter] en el mostrador de recambios
    [customer] con el cliente
    [scrapped] fuera de uso
   *[out] en la mano
}
custody-place-fitted = en { $position } de { $vehicle }
