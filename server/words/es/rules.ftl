### What may not be done: what is wrong, in a heading and a sentence, and what to do now.

## What several rules say.

rules-go-on = Sigue.
rules-unit-is = { CAP($unit) } está { $place }.
rules-not-recorded-title = Esto no se puede registrar

## Closing a job.

rules-closing-title = Falta algo por aclarar
rules-closing-do = Aclara eso primero.
rules-closing-disputed = { CAP($unit) } está en disputa; lee su etiqueta donde de verdad está.
rules-closing-move = Hay un cambio a medias. Termínalo o páralo.
rules-closing-reading = { CAP($check) } en { $position }{ $warm }: { $stands ->
    [still] sigue mal tras la reparación.
   *[again] mal antes de la reparación, y no se ha repetido.
}
rules-closing-reading-do = Repítela, o di por qué no se puede.
rules-closing-hangs = El de { $position } cuelga de su cable. Encájalo.
rules-closing-empty = { CAP($position) }: no hay nada montado.
rules-closing-plug = El conector en { $position } está quitado. Vuelve a enchufarlo.

## A label code.

rules-bad-stock-title = { CAP(PART($sort, form: "this")) } está mal
rules-bad-stock = { CAP($unit) } salió malo en { $vehicle }. En el almacén parecería bueno.
rules-bad-stock-do = Di por qué va allí, o elige otro sitio.
rules-code-none-title = No es un código de etiqueta
rules-code-none = { $code } no es ningún código de etiqueta.
rules-code-none-do = Léelo otra vez.
rules-code-same-title = Ya tiene esta etiqueta
rules-code-same = { $code } ya está en { PART($sort, form: "this") }.
rules-code-void-title = Esta etiqueta está anulada
rules-code-void = { $code } fue anulada.
rules-code-void-do = Toma una etiqueta nueva.
rules-code-other-title = Esta etiqueta está en { PART($sort, form: "another") }
rules-code-other-do = Toma una etiqueta nueva y comprueba que tienes en la mano { PART($sort, form: "the") } que crees.
rules-code-second-title = Ya tiene una etiqueta
rules-code-second = { $code } está en { PART($sort, form: "this") }.
rules-code-second-do = Si { $code } está rota o perdida, anúlala primero, en la página { JOIN("de", PART($sort, form: "the")) }.

## Taking back an entry.

rules-correction-title = Esto no se puede retirar
rules-correction-unknown = No hay tal anotación que retirar.
rules-correction-unknown-do = Mira en el historial.
rules-correction-again = Ya se retiró antes.
rules-correction-opening = Todo lo demás del trabajo depende de su apertura.
rules-correction-opening-do = Cierra el trabajo en su lugar.
rules-correction-later = Hay anotaciones posteriores que dependen de esta.
rules-correction-later-do = Retira primero las posteriores, de la más nueva a la más antigua.
rules-correction-not-back = Lo que se anotó después no concuerda con ello.
rules-correction-not-back-do = Anota lo que es así ahora.
rules-correction-bare = { CAP(PART($sort, form: "a")) } sin montar se quedaría sin su etiqueta.
rules-correction-bare-do = Ponle otra etiqueta en su lugar.
rules-correction-right-title = Esto no se puede corregir
rules-correction-kind = Una corrección dice lo que la anotación tenía que decir, no otra cosa.
rules-correction-kind-do = Retira la anotación y anota lo otro.
rules-correction-same = Dice lo que ya está registrado.
rules-correction-same-do = Cambia lo que está mal o déjalo como está.
rules-correction-stays = Las anotaciones posteriores lo encuentran por esto.
rules-correction-stays-do = Retira la anotación y anótala de nuevo.
rules-correction-how = Nadie leyó esta etiqueta en ese momento.
rules-correction-how-do = Di que se tocó o se escribió.

## A figure of a meter.

rules-figure-title = { $field ->
    [compared] La cifra de donde funciona no se entiende
   *[value] La cifra no se entiende
}
rules-figure = Pone { $found }, se esperaban { $wanted }.
rules-figure-wanted = { $unit ->
    [V] voltios de 0 a 60, como 12,4, 12.4 u 850 mV
   *[other] ohmios desde 0, como 0,8, 0.8, 4k7 o 5 kΩ; OL si el multímetro marca abierto
}
rules-figure-thousands = { $field ->
    [compared] Donde funciona: ¿miles o decimales?
   *[value] ¿Miles o decimales?
}
rules-figure-either = { $thousands } o { $decimals }
rules-figure-do = { $problem ->
    [minus] { $unit ->
        [V] Menos: las puntas están cambiadas. Cámbialas y mide otra vez.
       *[other] Menos: hay tensión en el cable. Quítala y mide otra vez.
    }
    [open] OL es una lectura en ohmios. Pon el multímetro en voltios.
    [other] { $unit ->
        [V] Eso es una lectura en ohmios. Pon el multímetro en voltios y mide otra vez.
       *[other] Eso es una tensión. Quita el contacto, pon el multímetro en ohmios y mide otra vez.
    }
    [space] Escribe las cifras sin espacio entre ellas, como las marca el multímetro.
    [thousands] Unos leen la marca como miles, otros como decimales. Escríbela de modo que nadie dude.
    [most] Es demasiado para este cable. Mira la unidad y la coma.
   *[number] Escribe las cifras que marca el multímetro, y su unidad.
}

## A reading beside its figure.

rules-reading-title = ¿Qué es correcto, la cifra o la lectura?
rules-reading = { CAP($position) } tiene { $value }{ $unit ->
    [none] { "" }
   *[other] { " " }{ $unit }
}. Según el límite eso está { $says ->
    [good] bien
   *[bad] mal
}: { $limit }.
rules-reading-do = Mira otra vez el multímetro y escribe la cifra de nuevo o toca { $says ->
    [good] Bien
   *[bad] Mal
}. Si las dos cosas son correctas, di por qué.

## The form of an entry.

rules-form-kind = La clase { $kind } no se conoce.
rules-form-do = Vuelve atrás y anótalo otra vez.

## A job that is open, or closed.

rules-open-title = Este trabajo ya está abierto
rules-open = Se abrió antes.
rules-open-do = Sigue con él.
rules-closed-title = Este trabajo está cerrado
rules-closed = A un trabajo cerrado no se le puede añadir nada.
rules-closed-do = Abre un trabajo nuevo en este vehículo, o retira el cierre en el historial.

## A label before the next sensor.

rules-label-title = Primero ponle etiqueta
rules-label = { CAP($unit) } aún no tiene etiqueta.
rules-label-do = Pégale una etiqueta y léela, o devuélvelo enseguida a su sitio.

## What got mixed up.

rules-mixed-title = No se sabe cuál es
rules-mixed-do = Lee su etiqueta vieja si aún la tiene, o usa la etiqueta nueva del que tienes en la mano.
rules-mixed-which-title = ¿Cuáles se mezclaron?
rules-mixed-which = Hacen falta al menos dos { PART($sort, form: "many") }.
rules-mixed-which-do = Tócalos.
rules-mixed-unknown = { CAP(PART($sort, form: "a")) } no está en el registro.
rules-mixed-unknown-do = Vuelve atrás.
rules-mixed-elsewhere-title = No está en tu mano
rules-mixed-elsewhere-do = Solo se puede mezclar lo que está junto.

## A unit is at one place.

rules-place-added-title = { CAP(PART($sort, form: "this")) } ya está en el registro
rules-place-added = Se añadió antes.
rules-place-added-do = Sigue con él.
rules-place-disputed-title = Hay dos lugares registrados
rules-place-disputed = { CAP($unit) } está en disputa.
rules-place-disputed-do = Lee su etiqueta donde de verdad está; eso lo aclara.
rules-place-not-there-title = No está montado ahí
rules-place-not-there = { CAP($unit) } está { $place }, no en { $position }.
rules-place-not-there-do = Mira otra vez qué { PART($sort) } tienes en la mano.
rules-place-read-title = Lee su etiqueta
rules-place-read = Solo la etiqueta dice con seguridad qué { PART($sort) } es.
rules-place-read-do = Léela o teclea su código.
rules-place-fitted-title = Sigue montado
rules-place-fitted-do = Quítalo primero.
rules-place-already-title = Ya está ahí
rules-place-elsewhere-title = Está en otro sitio
rules-place-elsewhere-do = En { $position } solo se puede montar { PART($sort, form: "a") } que está en la mano en este trabajo.
rules-place-taken-title = { CAP($position) }: ocupado
rules-place-taken = { CAP($unit) } está montado en { $position }.
rules-place-taken-do = Quita ese primero.

## The unit that an exchange names.

rules-planned-title = ALTO: tienes { PART($sort, form: "another") } en la mano
rules-planned = Este es { $unit }. Aquí va { $planned }.
rules-planned-do = Deja { $unit } y toma { $planned }.

## Printed codes.

rules-printed-none-title = No es un código de etiqueta
rules-printed-none = { $code } no es un código que se imprima.
rules-printed-none-do = Saca otros.
rules-printed-used-title = Esta etiqueta está en uso
rules-printed-used = { $code } está en { PART($sort, form: "a") }, o lo estuvo.
rules-printed-used-do = Imprime las demás: abre el lote otra vez.
rules-printed-spoiled-do = Déjala fuera: abre el lote otra vez.
rules-printed-before-title = Esta etiqueta ya se imprimió
rules-printed-before = { $code } es de otro lote.
rules-printed-before-do = Imprime etiquetas nuevas otra vez: se sacan otros códigos.

## Assumptions.

rules-rates-title = Esto no se puede suponer
rules-rates-minutes = { $count ->
    [one] { $count } minuto es demasiado.
   *[other] { $count } minutos es demasiado.
}
rules-rates-minutes-do = Da { $most } minutos como máximo.
rules-rates-money = Es más dinero de lo que cuesta { PART($sort, form: "a") }.
rules-rates-money-do = Da la cifra otra vez.
rules-rates-unknown = No hay ninguna suposición llamada { $name }.
rules-rates-unknown-do = Vuelve atrás y elige otra.
rules-rates-chance = Esa probabilidad no puede ser.
rules-rates-chance-do = Da una cifra { $wanted }.
rules-rates-certain = Ninguna prueba da certeza absoluta.
rules-rates-certain-do = Da una confianza por debajo del 100 %.

## A decision at the counter.

rules-returns-title = Esto aún no se puede decidir
rules-returns-not-received = Nadie ha recibido { PART($sort, form: "this") } en el mostrador.
rules-returns-not-received-do = Lee primero su etiqueta.
rules-returns-decided = { CAP($unit) } ya fue { $decision ->
    [accept] aceptado
    [hold] retenido
   *[refuse] rechazado
}, con la firma de { $signed }.
rules-returns-decided-do = Retira primero esa decisión, o lee otra vez { PART($sort, form: "the") } si volvió a entrar.
rules-returns-against = Va en contra de lo que dice el registro.
rules-returns-against-do = Da tu motivo en pocas palabras.

## What a phone is for, and its version.

rules-role-title = En este teléfono no
rules-role-do = Regístralo en un teléfono emparejado para eso, o empareja este de nuevo.
rules-old-title = Esta versión de la aplicación es demasiado vieja para un trabajo nuevo
rules-old = El servidor pide una más nueva. Un trabajo empezado se puede continuar, y todo se envía.
rules-old-do = Pasa a la versión nueva en la lista de trabajos. Llega sola cuando el servidor está al alcance.

## A label's code where the part number is asked for.

rules-label-part-title = ¿Es la etiqueta?
rules-label-part = { $part } se lee como el código de una etiqueta, { $code }. El número de pieza está impreso en la pieza.
rules-label-part-do = Escribe el número de pieza, o deja el campo vacío. Si este es el número de pieza, di dónde está.

## Another part number.

rules-part-title = Otro número de pieza
rules-part = { CAP($unit) } es la pieza { $part }. { CAP($position) } lleva { $wanted }.
rules-part-do = Usa la misma pieza, o da un motivo que quede registrado.

rules-rates-comeback = El pasado de un vehículo no puede contar así.
rules-rates-comeback-do = Pon de 1 a { $factor } veces, y de 1 a { $months } meses.
