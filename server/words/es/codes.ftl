### Qué es un código leído o tecleado: nuestras etiquetas, los símbolos del fabricante, códigos de avería, números de vehículo.

## Etiquetas.

codes-text-wanted = el texto que se leyó o se tecleó
codes-elsewhere-title = Una etiqueta de otro sitio
codes-elsewhere = Esta etiqueta es de { $host }, no de esta instalación. Pega una de tus etiquetas.
codes-not-whole-title = El código no está entero
codes-not-whole = { $count ->
    [one] { $code } tiene { $count } carácter; un código tiene { $whole }. Lee otra vez la etiqueta.
   *[other] { $code } tiene { $count } caracteres; un código tiene { $whole }. Lee otra vez la etiqueta.
}
codes-no-label-title = No es un código de etiqueta
codes-no-such-character = { $code } tiene el carácter { $character }, que ninguna etiqueta usa. Lee otra vez la etiqueta.
codes-check-does-not-fit = { $code }: el carácter de control no encaja, así que al menos un carácter está mal. Lee otra vez la etiqueta.
codes-foreign-title = Esta no es una de tus etiquetas
codes-foreign = Contiene: { $text }

## El símbolo del fabricante.

codes-symbol-texts-wanted = una lista de los textos leídos en los símbolos
codes-symbol-text-wanted = el texto leído en un símbolo
codes-own-label-title = Esta es una etiqueta tuya
codes-own-label = Dice qué pieza es, no sus números. Enseña el símbolo del fabricante.
codes-web-address-title = Este símbolo contiene una dirección web
codes-web-address = No se abre, y no contiene números. Enseña el otro símbolo o teclea los números.
codes-symbol-two-title = Dos códigos llegaron como uno
codes-symbol-two = Lee uno, espera su sonido y lee después el otro.
codes-symbol-not-whole-title = Este símbolo no está entero
codes-symbol-not-whole = Empieza como un símbolo de fabricante, pero sigue de otra manera. Teclea los números.
codes-no-numbers-title = Este símbolo no contiene un número de pieza
codes-no-format = Su formato está vacío, y aquí solo { $wanted } lleva número de pieza y de serie. Tecléalos.
codes-other-format = Su formato es { $formats }, y aquí solo { $wanted } lleva número de pieza y de serie. Tecléalos.
codes-holds-nothing = No contiene nada. Enseña otro símbolo o teclea los números.
codes-holds-others = Contiene { $held }. Enseña otro símbolo o teclea los números.
codes-held = { $meaning ->
    [customer-part] número de pieza del cliente { $value }
    [supplier-part] número de pieza del proveedor { $value }
    [serial] número de serie { $value }
    [lot] lote { $value }
    [supplier-lot] lote del proveedor { $value }
    [date] fecha { $value }
    [quantity] cantidad { $value }
   *[supplier] proveedor { $value }
}
codes-held-marked = { $mark } { $value }
codes-held-text = el texto { $value }
codes-empty-symbol-title = Este símbolo está vacío
codes-empty-symbol = Enseña otro símbolo o teclea los números.
codes-read-both = Leído: número de pieza { $part }, número de serie { $serial }. Compáralos con lo impreso.
codes-read-one = Leído: { $field ->
    [part] número de pieza
   *[serial] número de serie
} { $value }. Compáralo con lo impreso.
codes-choice = { $field ->
    [part] Número de pieza
   *[serial] Número de serie
} { $value }
codes-choice-noted = { $choice } ({ $note })
codes-meaning = { $meaning ->
    [customer-part] número de pieza del cliente
   *[supplier-part] número de pieza del proveedor
}
codes-marked = con la marca { $mark }
codes-meaning-marked = { $meaning }, con la marca { $mark }
codes-which-title = ¿Qué número es cuál?
codes-which = Compara con lo impreso y toca lo que quieres anotar.
codes-symbol-unreadable-title = Este símbolo no encaja
codes-symbol-unreadable = Contiene caracteres que ningún número tiene, o más de { $most }. Teclea los números.

## Códigos de avería, y lo que dice un tipo de fallo de la lista abierta.

codes-trouble-form = { $code } no tiene la forma de un código de avería: una letra P, C, B o U, una cifra de 0 a 3 y tres de 0-9 A-F. Se guarda como lo tecleaste.
codes-trouble-bytes = Si el lector de averías lo mostró como bytes en hexadecimal, es { $code }.
codes-failure-form = { $type } no es un tipo de fallo: son dos de 0-9 A-F.
codes-trouble-whose = { $letter ->
    [P] Código de motor y transmisión
    [C] Código de chasis
    [B] Código de carrocería
   *[U] Código de red
}, { $whose ->
    [standard] de la norma
    [maker] propio del fabricante
    [maker-memory] propio del fabricante (de memoria)
   *[reserved] de un rango reservado (de memoria)
}.
codes-failure-meant = { $type }: { $meant }.
codes-failure-as-it-is = { $type } se guarda tal cual.
codes-told-failure = { $code } ({ $failure })
codes-told-at = { $code } en { $position }
codes-told-means = { $code }: «{ $means }»
codes-told = Código { $code }.
codes-failure-general = general
codes-failure-electrical = eléctrico: corto, abierto, tensión o corriente
codes-failure-signal = señal: nivel, ritmo o forma
codes-failure-control-unit = dentro de la unidad de control
codes-failure-mechanical = mecánico
codes-failure-short-to-ground = cortocircuito a masa
codes-failure-short-to-battery = cortocircuito a positivo
codes-failure-open = circuito abierto
codes-failure-ground-or-open = cortocircuito a masa o circuito abierto
codes-failure-battery-or-open = cortocircuito a positivo o circuito abierto
codes-failure-no-signal = sin señal
codes-failure-wrong-place = montado en mal sitio
codes-failure-no-message = falta un mensaje
codes-failure-performance = funciona mal
codes-failure-no-operation = no funciona
codes-failure-comes-and-goes = va y viene
codes-failure-electronic = fallo electrónico interno
codes-failure-component = fallo de un componente interno
codes-failure-blocked = tapado u obstruido

## El número de identificación del vehículo.

codes-vin-character = El carácter { $place } es { $character }. Un VIN lleva cifras y letras, pero nunca I, O ni Q.
codes-vin-incomplete = { $count } de { $whole } caracteres.
codes-vin-fits = La cifra de control (carácter 9) encaja.
codes-vin-does-not-fit = El carácter 9 es { $character }; la cifra de control sería { $digit }. Los números norteamericanos siempre la llevan; los demás no tienen por qué. Lee el número otra vez.
