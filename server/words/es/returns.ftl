### Lo que el encargado revisa de una devolución: cómo está cada punto, en un título y una frase.

returns-about-label = etiqueta
returns-about-evidence = registro de otro taller
returns-about-place = lugar registrado
returns-about-part = número de pieza
returns-about-serial = número de serie
returns-about-verdict = prueba de que está mal
returns-about-custody = custodia
returns-about-photos = fotos
returns-about-before = ya devuelto
returns-about-record = registro alterado
returns-about-job = trabajo sin cerrar
returns-about-window = plazo de devolución
returns-about-others = otros mostradores
returns-about-unasked = otros mostradores sin consultar
returns-before-title = Ya devuelto antes
returns-before-decided-title = { $decision ->
    [accept] Ya aceptado antes
    [hold] Ya retenido antes
   *[refuse] Ya rechazado antes
}
returns-before-decided = { $decision ->
    [accept] Aceptado
    [hold] Retenido
   *[refuse] Rechazado
} { $ago }, firmado por { $signed }.
returns-before-signed = { $decision ->
    [accept] aceptado
    [hold] retenido
   *[refuse] rechazado
} (firmado por { $signed })
returns-before-twice = Dos mostradores decidieron: { $decisions }. Ambas decisiones quedan registradas.
returns-before-held-title = Sin decisión anterior
returns-before-held = Retenido { $ago }, firmado por { $signed }.
returns-before-not-title = No devuelto antes
returns-before-not = No hay ninguna devolución anterior registrada.
returns-others-title = En ningún otro mostrador
returns-others = Ningún otro mostrador de la cadena ha decidido.
returns-others-begun-title = Otro mostrador lo tiene en la mano
# $place: north.example
# $ago: hace 3 días
returns-others-begun = El mostrador { $place } empezó a aceptarlo { $ago }. Su registro aún no ha llegado.
# $decision: accept
returns-others-decided-title = { $decision ->
    [accept] Aceptado en otro mostrador
   *[refuse] Rechazado en otro mostrador
}
# $decision: accept
# $place: north.example
# $ago: hace 3 días
returns-others-decided = { $decision ->
    [accept] Aceptado
   *[refuse] Rechazado
} { $ago } en { $place }.
returns-unasked-title = Otros mostradores sin consultar
returns-unasked = No se ha podido llegar a ellos. Decide el registro propio. Se les consulta después, y lo que contradiga se muestra.
returns-evidence-title = Su registro está aquí
returns-evidence = El registro que selló { $maker } habla a su favor: { $rules }.
returns-evidence-hold-title = Su registro deja algo abierto
returns-evidence-hold = En el registro que selló { $maker } queda abierto: { $rules }.
returns-evidence-fail-title = Su registro habla en contra
returns-evidence-fail = En el registro que selló { $maker } hay en contra: { $rules }.
returns-label-evidence-title = Una etiqueta de otro sitio, con su registro
returns-label-evidence = Su registro de { $host } se guarda aquí, con el sello de { $maker }.
returns-gap-out = sin leer cuando llegó a la mano
returns-gap-fitted = sin leer cuando se montó
returns-gap-stock = sin leer cuando entró en el almacén
returns-gap-counter = sin leer cuando llegó al mostrador
returns-gap-customer = sin leer cuando fue al cliente
returns-gap-scrapped = sin leer cuando se desechó
returns-gap-labelled = sin leer cuando se etiquetó
returns-gap-void = su etiqueta se cambió por la palabra de alguien
returns-gap-disputed = hubo un tiempo dos lugares registrados
returns-gap-mixed = se mezcló con otros, y solo se distinguió por ser el último que quedaba
returns-custody-gap-title = Un hueco en la custodia
returns-custody-gaps = { CAP($gaps) }.
returns-custody-none = No hay ninguna entrega registrada.
returns-custody-title = Custodia sin huecos
returns-custody-read = Etiqueta leída en { $count ->
    [one] su única entrega
   *[other] cada una de las { $count } entregas
}.
returns-custody-read-typed = Etiqueta leída en { $count ->
    [one] su única entrega
   *[other] cada una de las { $count } entregas
}, { $typed ->
    [one] { $typed } tecleada
   *[other] { $typed } tecleadas
}.
returns-custody-alone = Su último lugar se tocó; no había otro en la mano.
returns-job-none-title = Sin trabajo
returns-job-none = Ningún trabajo registrado lo tuvo.
returns-job-open-title = Su trabajo no está cerrado
returns-job-open = El trabajo en { $vehicle } sigue abierto.
returns-job-title = Trabajo cerrado
returns-job = El trabajo en { $vehicle } está cerrado.
returns-label-elsewhere-title = Una etiqueta de otro sitio
returns-label-elsewhere = Su registro está en { $host }. Pide el registro en un fichero.
returns-label-unknown-title = Ninguna pieza registrada tiene esta etiqueta
returns-label-unknown = { $code } no está registrada aquí. El teléfono que la puso puede no haber enviado aún su trabajo.
returns-label-shared-title = Dos { PART($sort, form: "many") } llevan esta etiqueta
returns-label-shared = { $code } no dice cuál de los dos es este.
returns-label-void-title = Esta etiqueta está anulada
returns-label-void = { $code } se anuló; { PART($sort, form: "the") } que la tenía lleva ahora { $now }.
returns-label-void-none = { $code } se anuló; { PART($sort, form: "the") } que la tenía ya no lleva etiqueta.
returns-label-two-title = Lleva dos etiquetas
returns-label-two = { $codes } están registradas para { PART($sort, form: "a") } a la vez.
returns-label-unread-title = Etiqueta sin leer
returns-label-unread = Solo la etiqueta dice con seguridad qué { PART($sort) } es.
returns-label-title = Etiqueta conocida
returns-label = { $code } está registrada, { $how ->
    [scanned] leída
    [typed] tecleada
    [written] escrita a mano
   *[other] { $how }
}.
returns-part-other-title = No es { PART($sort, form: "the") } de las fotos
returns-part-other = Comparado a ojo: es otro.
returns-part-differs-title = La etiqueta está en otra pieza
returns-part-differs = Leído en la pieza: { $field ->
    [serial] número de serie
   *[part] número de pieza
} { $read }. El registro de { $code } dice { $recorded }.
returns-part-number = { $field ->
    [serial] serie
   *[part] pieza
} { $number }
returns-part-title = Es la pieza reclamada
returns-part-read = Leído en la pieza: { $numbers }, como en el registro.
returns-part-by-eye = Comparado a ojo con sus fotos.
returns-part-unknown-title = Sin número de pieza registrado
returns-part-unknown = { $pictures ->
    [none] Nada dice qué pieza se reclama.
   *[some] Nada dice qué pieza se reclama. Compara las fotos.
}
returns-part-alike = La O y el 0, o la I y el 1, se confunden con facilidad. { $pictures ->
    [none] Léelo otra vez.
   *[some] Léelo otra vez, o compara las fotos.
}
returns-part-unread-title = ¿Es la pieza reclamada?
returns-part-pictured-title = ¿Es el de esta foto?
returns-part-unread = Aún no se ha leído el número de serie. Lee el símbolo del fabricante en la pieza o en su bolsa{ $pictures ->
    [none] .
   *[some] , o compara las fotos.
}
returns-part-alone = No hay ningún número de serie suyo registrado, y otros llevan el mismo número de pieza. { $pictures ->
    [none] Nada en el registro lo distingue de ellos.
   *[some] Compara las fotos.
}
returns-photos-none-title = Sin fotos
returns-photos-none = No hay ninguna foto registrada de la pieza ni de donde estaba.
returns-photos-title = Hay fotos
returns-photos = { $count ->
    [one] { $count } foto registrada
   *[other] { $count } fotos registradas
}.
returns-place-disputed-title = En disputa
returns-place-disputed = Hay dos lugares registrados: { $places }. Lo decide una lectura.
returns-place-mixed-title = Se mezcló con otros
returns-place-mixed = { $code } está { $place }.
returns-place-fitted-title = Según el registro está en un vehículo
returns-place-fitted = { $code } sigue { $place }.
returns-place-scrapped-title = Según el registro se desechó
returns-place-scrapped = { $code } se desechó.
returns-place-title = El lugar registrado encaja
returns-place = Según el registro está { $place }.
returns-record-changed = La anotación { $seq } se cambió después de registrarse.
returns-record-missing = Falta lo que va antes de la anotación { $seq }.
returns-record-other = La anotación { $seq } no continúa la anterior.
returns-record-unchecked-title = Registro sin revisar
returns-record-unchecked = Este teléfono no pudo revisar si el registro tiene cambios.
returns-record-phone = Teléfono { $device }.
returns-record-altered-title = El registro fue alterado
returns-record-title = Registro intacto
returns-record = Ninguna anotación se cambió ni falta.
returns-serial-title = Número de serie de ningún otro
returns-serial = El número de serie { $serial } no está registrado en ningún otro.
returns-serial-other-title = El número de serie es de otro
returns-serial-other = El número de serie { $serial } está registrado como { $codes }.
returns-serial-apart-title = Otra pieza tiene este número de serie
returns-serial-apart = El número de serie { $serial } también está registrado como { $codes }, con otro número de pieza. { $settled ->
    [yes] Así que es otra pieza.
   *[no] Lee el número de pieza de esta.
}
returns-serial-alike-title = Otro número de serie se le parece
returns-serial-alike = El número de serie { $serial } se parece al de { $codes }. La O y el 0, o la I y el 1, se confunden con facilidad. Léelo otra vez.
returns-serial-under-title = Estuvo aquí con otra etiqueta
returns-serial-under = El número de serie { $serial } estaba en una pieza con la etiqueta { $codes }. Averigua quién movió esa etiqueta.
returns-serial-before-title = El número de serie ya se devolvió
returns-serial-before = El número de serie { $serial } ya vino como { $code }. Eso quedó { $decision ->
    [accept] aceptado
    [hold] retenido
   *[refuse] rechazado
} { $ago }, firmado por { $signed }.
returns-verdict-no-test-title = No hay ninguna prueba suya registrada
returns-verdict-no-test = Nada en el registro demuestra que esté mal.
returns-verdict-not-title = No está demostrado que esté mal
returns-verdict-else-title = El registro señala otra causa
returns-verdict-title = Demostrado que está mal
returns-verdict-sure = Seguro al { $share }.
returns-window-unknown-title = No se sabe de cuándo es
returns-window-unknown = Nada en el registro dice cuándo se quitó de un vehículo.
returns-window = Se quitó { $ago }; el plazo de devolución es de { $days ->
    [one] { $days } día
   *[other] { $days } días
}.
returns-window-ahead-title = ¿Cuándo se quitó?
returns-window-ahead = El teléfono del taller tiene un día que aún no ha llegado. Pregunta cuándo fue.
returns-window-late-title = Fuera de plazo
returns-window-title = A tiempo
