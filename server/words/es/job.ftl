### A job on the phone: the list of jobs, opening one, its pages. The steps of a job are in steps.ftl.

## The page of a job

job-links = Más sobre este trabajo
job-links-more = Más
job-link-trail = Lo que dicen las pruebas
job-link-trail-note = el rastro y lo seguro que es
job-link-moves = Otros movimientos
job-link-moves-note = { $count } para elegir
job-link-hand = En la mano
job-link-hand-note = { $count ->
    [one] { $count } { PART($sort) }
   *[other] { $count } { PART($sort, form: "many") }
}
job-link-photos = Imágenes
job-link-photos-note = { $count ->
    [0] ninguna todavía
    [one] { $count } imagen
   *[other] { $count } imágenes
}
job-link-history = Historial
job-link-history-note = { $count ->
    [one] { $count } anotación
   *[other] { $count } anotaciones
}
job-link-report = Informe para el cliente
job-link-report-note = para imprimir o entregar
job-link-assumptions = En qué se basan las cifras
job-link-assumptions-note = probabilidades, códigos, dinero

## The list of jobs

job-list-start = Empieza aquí
job-list-open-one = Abrir un trabajo
job-list-scan = Leer una etiqueta
job-list-shared = { $count ->
    [one] { $count } imagen compartida espera
   *[other] { $count } imágenes compartidas esperan
} un trabajo.
job-list-group = { $which ->
    [open] Trabajos abiertos
    [waiting] En espera
   *[closed] Cerrados
}
job-list-none = No hay ningún trabajo así.
job-list-found = { $count ->
    [0] Ningún trabajo encontrado
    [one] { $count } trabajo encontrado
   *[other] { $count } trabajos encontrados
}
job-list-found-elsewhere = { $count ->
    [one] Hay uno en otro estado: mostrarlo
   *[other] Hay { $count } en otro estado: mostrarlos
}
job-list-found-none = Prueba con menos letras, o solo con parte de la matrícula o del nombre.
job-list-near = Nada coincide del todo. Esto se parece.
job-list-sensors = Sensores
job-list-vehicles = Vehículos
job-list-vehicle = { $count ->
    [one] { $count } trabajo
   *[other] { $count } trabajos
}
job-list-more = { $count ->
    [one] Mostrar { $count } más
   *[other] Mostrar más: quedan { $count }
}
job-list-older = { $count ->
    [one] { $count } trabajo se cerró antes
   *[other] { $count } trabajos se cerraron antes
}
job-list-more-to-come = Aún llegan trabajos a este teléfono. Aquí todavía no se cuentan.
job-search = Buscar
job-search-by = Vehículo, matrícula, etiqueta, persona
job-search-clear = Borrar la búsqueda
job-search-stands = Qué trabajos
job-search-filter = { $which ->
    [all] Todos
    [open] Abiertos
    [waiting] Esperan
   *[closed] Cerrados
}
job-list-empty = Ningún trabajo todavía
job-list-empty-lead = ¿Un sensor de aparcamiento da fallo? Abre un trabajo.
job-list-take-in = Tengo un archivo de otro teléfono
job-list-next = Ahora: { $step }
job-list-standing = { $opened } · { $count ->
    [0] ninguna prueba todavía
    [one] { $count } prueba
   *[other] { $count } pruebas
}{ $closed ->
    [yes] {""} · cerrado
   *[no] {""}
}
job-list-out = { $count ->
    [one] { $count } { PART($sort) } está fuera
   *[other] { $count } { PART($sort, form: "many") } están fuera
}
job-list-disputed = { $count } en disputa

## The history

job-history-title = Historial · { $job }
job-history-lead = Nunca se borra nada. Si una anotación fue un error, tócala para corregirla.
job-history-mixed = Se mezclaron en la mano
job-back = Volver al trabajo
job-go-on = Seguir con el trabajo
job-history-no-name = sin nombre
job-history-undone = Retirada: { $reason }
job-history-undone-by = Retirada por { $actor }: { $reason }
job-history-reason = ¿Por qué estaba mal?
job-history-reason-note = La anotación se queda, tachada, con tu motivo.
job-history-take-back = Retirarla
job-history-bring-back = Sí fue así
job-history-leave = Dejarla
job-right-here = Aquí hay algo mal
job-right-open = Anotar lo correcto
job-right-note = Cambia lo que está mal. La anotación sigue en su sitio; lo que decía queda en el historial.
job-right-look = Ver qué cambia
job-right-save = Guardar la corrección
job-right-leave = Dejarla
job-right-unfit = Estas anotaciones posteriores ya no encajan. Corrígelas también:
job-right-was = Corregida. Decía:
job-right-by = Corregida por { $actor }. Decía:

## What the tests say

job-evidence-carries = Qué lo sostiene
job-evidence-other = Qué más podría ser
job-evidence-apart = Qué distinguiría los dos casos
job-verdict-rests = En qué se basa
job-verdict-past = Pudo estar también; ninguna prueba lo muestra ya
job-verdict-why = Por qué
job-verdict-causes = Lo probable que es cada causa, por separado
job-proof-proven = Comprobado
job-proof-so-far = Comprobación hasta ahora
job-trail-key = Leyenda del dibujo
job-trail-suspect = el sospechoso
job-trail-moved = { PART($sort, form: "a") } que cambió de lugar
job-trail-maybe = se mezclaron: uno de estos
job-trail-band = por dónde fue el fallo
job-trail-none = Ninguna prueba todavía
# $sort: parking-sensor
job-trail-none-lead = El rastro empieza con la primera prueba.

## The moves

job-moves-title = Próximos movimientos
job-moves-none = Ahora no hay movimiento que elegir
job-moves-elsewhere = El trabajo está en otro paso: { $step }
job-moves-others = O uno de estos
job-moves-more = { $count ->
    [one] Un movimiento más
   *[other] { $count } movimientos más
}

## Sensors in hand

job-hand-title = En la mano · { $job }
job-hand-lead = Quitados y sin montar de nuevo.
job-hand-none = No hay nada en la mano
job-hand-mixed = Estos se mezclaron
job-hand-mixed-kicker = Confundidos
job-hand-from = quitado de { $from }
job-mixing-heading = ¿Cuáles se mezclaron?
job-mixing-lead = Los que perdieron la etiqueta o ya no distingues. Las pruebas hechas siguen contando.
job-mixing-group = { CAP(PART($sort, form: "many")) } en la mano
job-mixing-from = , de { $from }
job-mixing-note = Qué pasó
job-mixing-note-why = Si quieres que quede registrado.
job-mixing-record = Estos { $count } se mezclaron
job-mixing-too-few = Toca al menos dos
job-mixing-none = No se mezcló nada

## What the figures rest on

job-assumptions-lead = No se encontraron cifras publicadas de cuánto fallan { PART($sort, form: "many") } y cables; estas son la práctica común. Cambia lo que sepas mejor.
job-assumptions-chances = Probabilidades
job-assumptions-sure = Con qué seguridad
job-assumptions-codes = A favor de qué hablan los códigos
job-assumptions-changed = cambiado; lo normal es { $value }
job-assumptions-percent = En tanto por ciento
job-assumptions-percent-fault = Pon un porcentaje, por ejemplo 5 o 0,5.
job-assumptions-set = Ponerlo
job-assumptions-reset = Volver a { $value }
job-money-heading = Dinero
job-money-given = El trabajo y las piezas se comparan entre sí.
job-money-none = Sin datos: los movimientos se comparan solo por minutos.
job-money-change = Cambiar mano de obra y precios
job-money-give = Poner mano de obra y precios
job-money-lead = En tu moneda. Deja vacío lo que no sepas.
job-money-fault = Pon una cantidad, por ejemplo 45 o 45,50.
job-money-record = Registrar estas cantidades

## Opening a job

job-open-faults = { $count ->
    [one] Falta una cosa o no está bien. Está marcada abajo.
   *[other] Faltan { $count } cosas o no están bien. Cada una está marcada abajo.
}
job-open-actor = Tu nombre
job-open-actor-note = Aparece junto a todo lo que registras en este teléfono. Se pide una vez.
job-open-actor-fault = Di quién trabaja.
job-open-complaint = Qué está mal
job-open-complaint-own = Otra cosa
job-open-part = Número de pieza
job-open-part-note = Si lo sabes.
job-open-button = Abrir el trabajo
job-open-name-fault = Dale al vehículo un nombre que reconozcas.
job-open-vin-fault = Corrige el número o déjalo vacío.
job-open-vehicle = Vehículo
job-open-vehicle-note = Su nombre o su matrícula.
job-open-on-record = { $typed ->
    [yes] Ya en el registro: ¿es uno de estos?
   *[no] Los últimos que estuvieron aquí
}
job-open-plate = Matrícula
job-open-plate-vin = Matrícula, VIN
job-open-another = Otro vehículo
job-open-new-one = Ninguno de estos, es nuevo aquí
job-open-on-record-fault = Esa matrícula o ese VIN ya está en el registro. Toca qué vehículo es.
job-open-vin = VIN
job-open-vin-note = Si lo tienes. Une trabajos posteriores a este vehículo.
job-open-known = { $count ->
    [one] { $count } posición
   *[other] { $count } posiciones
}
job-open-still = Un trabajo de este vehículo sigue abierto.
job-open-still-go = Seguir con él
job-layout-heading = ¿Qué piezas?
job-layout-as-before = Como la última vez, { $count ->
    [one] { $count } posición
   *[other] { $count } posiciones
}
job-layout-own = Las mías
job-layout-fault = Elige qué piezas y dónde están.
job-layout-no-names = Pon al menos una posición en el plano.
job-draw-lead = Toca el plano donde hay una y arrástrala a su lugar.
job-draw-sort = { CAP(PART($sort, form: "full-many")) }
job-draw-positions = Posiciones
job-draw-add = Añadir una
job-draw-move = Mover la elegida
job-draw-way = { $way ->
    [left] A la izquierda
    [right] A la derecha
    [up] Arriba
   *[down] Abajo
}
job-draw-chosen = Posición { $number }
job-draw-name = Nombre
job-draw-group = Comparte alimentación y masa
job-draw-part = Número de pieza aquí, si es otro
job-draw-pins = Contactos de su conector
job-draw-pins-note = Por ejemplo: 1 alimentación, 2 masa, 3 señal.
job-draw-remove = Quitarla
job-draw-model = ¿Qué modelo de vehículo?
job-draw-model-note = Con tus palabras. Al siguiente igual se le ofrece esta disposición.
job-draw-save = Guardar como archivo
job-draw-read = Leer un archivo
job-draw-change = Cambiar esta disposición
job-position-pins = Contactos: { $pins }
job-draw-covered = { $numbers } están una sobre otra. Arrastra una a un lado.
job-layout-checking = Los nombres aún se están revisando. Toca otra vez.
job-layout-wanted = { $of ->
    [model] El modelo de vehículo es
    [positions] Posiciones:
    [sort] El tipo de pieza es
    [v] La versión del archivo es
   *[file] El archivo es
} { $found }; se pide { $wanted }.
job-layout-wanted-of = { $of ->
    [x] El lugar
    [y] El lugar
    [reach_minutes] El tiempo de
    [part] El número de pieza de
    [pins] El texto de contactos de
    [group] El grupo de
    [positions] La posición
   *[name] El nombre
} { $number } es { $found }; se pide { $wanted }.

## Pictures

job-photos-work = El trabajo
job-photos-title = Imágenes · { $job }
job-photos-guide = El trabajo, antes o después
job-photos-none = Ninguna imagen todavía
job-photos-none-lead = El trabajo pide una de cada posición antes de que nadie la toque.
job-photos-take = Hacer una foto

## One picture, large

job-picture-enlarge = Ver en grande
job-picture-all = Todas las imágenes
job-picture-beside = Antes y después
job-picture-one = Solo esta
job-picture-before = La imagen anterior
job-picture-next = La imagen siguiente
job-picture-larger = Más grande
job-picture-smaller = Más pequeño
# $number: 2
# $count (count): 7
job-picture-count = { $number } de { $count }
job-picture-keys = Imágenes: más y menos cambian el tamaño, las flechas mueven
job-picture-small = Versión pequeña. La entera necesita la red.

## A position

job-position-guide = { CAP(PART($sort, form: "the")) } y lo que hay alrededor
job-position-again = Hacer otra foto
job-position-job = El trabajo
job-position-no-picture = Ninguna imagen de esta posición todavía.
job-position-no-sensor = Aquí no hay { PART($sort, form: "none") } ahora.
job-position-reach = Hasta poner la mano en él
job-position-sensor = { CAP(PART($sort, form: "the")) } de aquí
job-position-no-label = sin etiqueta
job-position-all = Todo sobre { PART($sort, form: "this") }
job-position-read = Leído aquí
job-reach-group = Minutos para llegar a { $position }
job-reach-less = Un minuto menos
job-reach-more = Un minuto más
job-reach-minutes = { $count } min
job-reach-heading = ¿Qué tan accesibles?
job-reach-lead = Minutos hasta poner la mano en él. Los más fáciles se intercambian primero.

## Pictures from another app

job-shared-full = Este teléfono está lleno
job-shared-full-what = No se guardó nada. Las imágenes siguen donde estaban. Libera espacio y compártelas otra vez.
job-shared-missed = Las imágenes no llegaron
job-shared-missed-what = La aplicación no estaba lista para recibirlas y no se guardó nada. Ya está lista: compártelas otra vez.
job-shared-nothing = No llegó ninguna imagen
job-shared-nothing-what = No se guardó nada. Comparte una o más imágenes con esta aplicación.
job-shared-title = Imágenes compartidas
job-shared-counter = Este teléfono está en el mostrador de recambios
job-shared-bench = Una imagen pertenece a un trabajo del taller.
job-shared-to-counter = Al mostrador
job-shared-show-jobs = Ver los trabajos
job-shared-problem = { $title }. { $sentence }
job-shared-no-job = No hay ningún trabajo abierto
job-shared-belongs = Una imagen pertenece a un trabajo.
job-shared-open-first = Abre un trabajo y comparte otra vez.
job-shared-not-kept = { $count ->
    [one] { $count } imagen no se guardó
   *[other] { $count } imágenes no se guardaron
}; lo que compartiste sigue donde estaba.
job-shared-which = ¿A qué trabajo pertenecen?
job-shared-keep-none = No guardar ninguna
job-shared-title-job = Imágenes compartidas · { $job }
job-shared-what = ¿Qué muestran?
job-shared-keep = { $count ->
    [one] Guardar esta imagen
   *[other] Guardar { $count } imágenes
}
job-shared-alt = Una imagen compartida
job-shared-shows = Muestra
job-shared-choose = Elige
job-shared-screen = La pantalla de la prueba
job-shared-work = El trabajo, u otra cosa
job-shared-shows-fault = Di qué muestra esta imagen.
job-shared-refused-name = Sin guardar: { $name }
job-shared-refused = Sin guardar

## While the checks do not run

job-unchecked-guide = La pieza y su etiqueta
job-unchecked-alt = La imagen recién hecha
job-unchecked-take = Hacer la foto
job-unchecked-back = Volver
job-unchecked-heading = Registra una imagen y una etiqueta
job-unchecked-lead = La aplicación no puede decir qué viene ahora. Las imágenes y etiquetas se guardan igualmente; se ordenan { $later }.
job-unchecked-again = Hacerla otra vez
job-unchecked-label = Etiqueta de la pieza que tienes en la mano
job-unchecked-label-note = Tal como está en la etiqueta. Déjalo vacío si no tienes ninguno en la mano.
job-unchecked-saved = Guardado en este teléfono, sin comprobar.
job-unchecked-save = Guardar sin comprobar
job-unchecked-not-now = No disponible ahora
job-unchecked-needs = Esto necesita las comprobaciones
job-unchecked-needs-lead = Ahora no funcionan en este navegador. En un trabajo abierto aún puedes guardar imágenes y etiquetas.
job-unchecked-position = ¿Qué posición muestra la imagen?
job-unchecked-no-position = ninguna de ellas

job-back-changes = Lo que eso cambia
job-back-vehicle = Lo que se hizo en él
job-link-vehicle = El vehículo
job-link-vehicle-note = trabajos anteriores, qué está montado y desde cuándo
job-comeback = El vehículo ya estuvo aquí
job-comeback-factor = Una posición ya reparada cuenta
job-comeback-half = La mitad se va en
job-vehicle-now = Lo que lleva montado
job-vehicle-jobs = Sus trabajos
job-vehicle-warranty-yard = Tu taller responde por su trabajo durante { $days ->
    [one] { $days } día
   *[other] { $days } días
}.
job-vehicle-warranty-days = Garantía de tu trabajo, en días
job-vehicle-warranty-save = Guardar los días
job-vehicle-warranty-fault = Pon días enteros, 0 para ninguna.
job-vehicle-vin = VIN
job-vehicle-first = desde antes de su primer trabajo
job-vehicle-since = desde el { $day }
job-vehicle-on = { $day }: { $said }
job-vehicle-elsewhere = Encontrado además
