### The steps of a job: what stands on their screens beside the words of the core.

## Every step

steps-cautions = Precauciones
steps-checklist-not = no
steps-checklist-first = Corrígelo y tócalo otra vez.
steps-checklist-left = { $count } por corregir
steps-settle-where = ¿Dónde está { $unit } ahora?
steps-close-blocked = El trabajo sigue abierto hasta que esto se resuelva
steps-close-history = Ver el historial
steps-close-note = Última palabra para el registro, si la hay
steps-close-add-note = Añadir una última palabra
steps-done-trail = Ver el rastro
steps-done-history = Historial
steps-summary-replaced = Cambiado
steps-summary-where = Dónde está cada { PART($sort) }
steps-summary-more = En qué quedó

## Looking, picture, repair

steps-look-fine = Bien
steps-look-note = Algo que añadir
steps-look-record = Registrar lo que vi
steps-look-group = Qué ves en { $position }
steps-photo-guide = { CAP(PART($sort)) } y alrededor
steps-photo-open = Abrir la cámara
steps-photo-shutter = Foto: { $position }
steps-photo-retake = Otra vez: { $position }
steps-repair-where = ¿Dónde fue?
steps-repair-where-wanted = Toca dónde fue.
steps-repair-guide = Enseña el sitio que se repara.
# $when: before
steps-repair-picture = { $when ->
    [before] Foto antes
   *[after] Foto después
}
steps-repair-what = ¿Qué se hizo?
steps-repair-pin = Contacto encajado y asegurado
steps-repair-lock = Conector a fondo y cerrado
steps-repair-plug = Conector limpio y seco
steps-repair-wire = Cable reparado
steps-repair-note = Con tus palabras: qué contacto, qué cable

## A check of the wiring

steps-measure-good = Bien
steps-measure-bad = Mal
steps-measure-unclear = No está claro
steps-measure-back = Volver a la comprobación
steps-measure-found = ¿Qué encontraste?
steps-measure-value = Medido, si tienes una cifra
steps-measure-compared = Lo mismo donde funciona, si lo mediste
steps-measure-figure = Cuánto tiene un cable sano
steps-measure-unit = Unidad

## The circuit of a position, drawn

# $place: the pins of the sensor's plug
steps-circuit-look = Aquí: { $place }.
# $from: the pins of the sensor's plug
# $to: the control unit's plug
# $line: signal
steps-circuit-probe-ends = Puntas en los extremos del cable de { $line }: { $place }.
steps-circuit-probe-along = Puntas en el cable de { $line }: { $from }, { $to }.
# $place: the pins of the sensor's plug
# $line: signal
steps-circuit-probe-metal = Una punta en { $line }: { $place }; la otra en metal desnudo.
# $place: the pins of the sensor's plug
# $line: signal
steps-circuit-probe-neighbour = Una punta en { $line }: { $place }; la otra en el cable de al lado.
steps-circuit-signal = señal
steps-circuit-supply = alimentación
steps-circuit-ground = masa
steps-circuit-parts = Partes y lecturas
steps-circuit-sound = En orden
steps-circuit-possible = Aún posible
steps-circuit-named = La avería
# $minutes: 3
steps-circuit-minutes = Unos { $minutes }.
steps-circuit-read = Lo que se leyó
steps-circuit-wire = Cable y contactos
steps-circuit-wire-why = Colores y contactos se pueden guardar sin lo demás. Con sección y longitud, los límites de las comprobaciones se ajustan a este cable.
steps-circuit-size = Sección del cable
# $size: 0.5
steps-circuit-length = Longitud, cm
steps-circuit-celsius = Temperatura, °C
# $line: signal
steps-circuit-colour = Color, { $line }
# $colour: white and blue
steps-circuit-coloured = Cable: { $colour }
# $line: signal
# $colour: white and blue
steps-circuit-line-coloured = { $line } ({ $colour })
steps-circuit-pins = Contactos, como: 1 señal
steps-circuit-keep = Guardar el cable
steps-found-further = Lo dudo: una comprobación más
steps-found-back = Volver a lo hallado

## A move

steps-moves-not-this = Esto no
steps-moves-why-not = Por qué no:
steps-moves-outlook = Qué significa cada resultado

## A new sensor

steps-new-label = Etiqueta { PART($sort, form: "the-new") }
steps-type = Teclear el código
steps-write = Escribir un código a mano
steps-new-fit = Montar { $code }
steps-new-none = Aún falta la pieza
steps-new-at-hand = Ya a mano
steps-new-old-at = { CAP(PART($sort, form: "the-old")) }, en { $position }
steps-new-read = { CAP(PART($sort, form: "the-new")) }: léelo en la pieza
steps-new-same = También dice { $part }
steps-new-part-fault = Lee primero el número de pieza en { PART($sort, form: "the-new") }.
steps-new-reason = Por qué se usa de todos modos
steps-new-reason-fault = Otro número de pieza necesita un motivo.
steps-new-reason-note = Queda registrado con el montaje.
steps-new-serial = Número de serie, si lo tiene
steps-new-ways = De otro modo, número de serie
steps-new-old-read = { CAP(PART($sort, form: "the-old")) }: léelo en la pieza
steps-new-old-note = Su número de pieza aún no está registrado.
steps-compare-same = El mismo número de pieza
steps-compare-so-far = Igual hasta aquí, { $count ->
    [one] falta { $count } carácter
   *[other] faltan { $count } caracteres
}
steps-compare-other = Otro número de pieza: difiere desde el carácter { $place }

## Scanning

steps-scan-write = Sin etiqueta a mano: escribir un código a mano
steps-scan = Leer su etiqueta
steps-scan-from = Lo quitaste de { $from }.
steps-scan-tap = ¿Cuál tienes en la mano?
steps-scan-part = Número de pieza
steps-where-skip = No se puede leer ni escribir
steps-where-asked = ¿Adónde va?
steps-where-first = Toca primero adónde va.
steps-bad-why = ¿Por qué va al almacén? Salió malo.
steps-bad-fault = Di por qué: en el almacén parecería bueno.
steps-where-note = Nota, si ayuda
steps-where-save = Guardar adónde va
steps-where-not-scanned = Sin leer
steps-where-unproven = Nadie ha comprobado qué { PART($sort) } es. El registro lo dirá.
steps-where-proven = Este es { $code }, { $how ->
    [scanned] leído
    [typed] escrito
   *[tapped] tocado
}.

## A test

steps-codes-enter = Escribir los códigos de la pantalla
steps-codes-at = Código en { $position }
steps-codes-code = Código
steps-codes-failure = Tipo de fallo
steps-codes-means = Qué significa, según lo sabes
steps-codes-use = Usarlo
steps-codes-open-list = Los tipos de fallo siguen la lista abierta
steps-codes-open-list-note = Márcalo solo si el aparato o su manual dice SAE J2012 o ISO 15031-6. Los antiguos significan otra cosa.
steps-codes-elsewhere = Código de ninguna posición
steps-test-clean = bien
steps-test-fault = fallo
steps-test-silent = sin informar
steps-test-guide = La pantalla, de modo que se lea
steps-test-screen = La pantalla de la prueba
steps-test-photograph = Fotografiar la pantalla
steps-test-take = Hacer la foto
steps-test-back = Volver
steps-test-help = Cómo iniciar { PART($sort, form: "the-test") }
steps-test-first = Toca antes qué mostró
steps-test-record = { CAP($proof) }: registrar
steps-test-empty = vacío
steps-test-empty-but = vacío, { $reading }
steps-test-unplugged = { $reading }, desenchufado
steps-test-which = Toca lo que da fallo
steps-test-none = Ningún fallo
steps-test-other = Otra cosa
steps-test-not-heard-button = { CAP($proof) }
steps-test-more = Más: códigos, foto, nota
steps-test-which-how = Toca un fallo otra vez si la prueba no informa de él.
steps-test-was-unplugged = { $position }: estaba desenchufado
steps-test-came-and-went = El fallo iba y venía
steps-test-provoked = Qué hubo antes de esta prueba
steps-test-provoked-else = nada de esto
steps-test-again = Hacerla otra vez
steps-test-note = Nota
steps-test-found = Prueba { $number }: { $heard }, { $count ->
    [0] ningún fallo
   *[other] fallo en { $faulted }
}{ $unreported ->
    [some] ; sin informe de { $silent }
   *[none] {""}
}.
steps-test-summary-went = El fallo iba y venía.

## The check in use

steps-walk-save = Guardar: { $count } { $what }
steps-stand = Dónde ponerse
steps-stand-alone = ¿A solas? Motor parado, freno de mano puesto y un soporte para el poste. O lo sostiene otra persona.
steps-stand-pole = Poste: 75 mm de grueso, 1 m de alto. Va a { $far } cm; la cuadrícula es de 10 cm, hasta 1 m.
steps-stand-memory = Poste, cuadrícula y 1 m siguen ISO 17386 en lo que se conoce públicamente. { $far } cm y el giro en los extremos son nuestros.
steps-stand-even = Repartidos por igual hasta que midas: es una suposición.
steps-stand-drawing = Dónde va el poste, visto desde arriba
steps-stand-width = Ancho del parachoques, cm
steps-stand-celsius = Aire, °C
steps-stand-left = Desde el extremo izquierdo, cm
steps-stand-tape = Con cinta, cm
steps-stand-shown = En pantalla, cm
