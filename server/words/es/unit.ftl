### Un sensor: su página, su etiqueta, sus lugares.

unit-title = { CAP(PART($sort)) } { $code }
unit-title-unlabelled = { CAP(PART($sort, form: "a")) } sin etiqueta
unit-no-label = aún sin etiqueta
unit-lead = Está { $where }.
unit-trail = Su recorrido
unit-hand-on = Para entregar
unit-slip = Vale de devolución
unit-slip-note = para llevar al mostrador
unit-paper = Su registro
unit-paper-note = recorrido, pruebas, quién lo tuvo
unit-lost = Identidad perdida
unit-lost-when = El { $moment }, { $what }.
unit-elsewhere = Qué hizo en otros trabajos
unit-tests = Pruebas
unit-test = Prueba { $number } en { $position }
unit-custody = Quién lo tuvo
unit-labels = Etiquetas
unit-put-on = Puesta el { $moment }
unit-returns = Devoluciones
unit-signed = Firmado: { $name }, { $moment }.
unit-undecided = Aún sin decidir.
unit-pictures = Fotos
unit-jobs = Trabajos
unit-entries = Anotado fuera de los trabajos
unit-entries-none = No se anotó nada fuera de un trabajo.
unit-entries-jobs = En sus trabajos
unit-entries-link = Lo anotado fuera de los trabajos
unit-no-test = Sin pruebas en este trabajo.
unit-now = Ahora: { $where }
unit-since = desde el { $day }
unit-part = Número de pieza
unit-serial = Número de serie
unit-not-noted = sin anotar

## Dónde está.

unit-elsewhere-goes = Va a otro lugar
unit-two-places = Hay dos lugares registrados
unit-two-places-scan = Lee su etiqueta donde está de verdad.
unit-scan-now = Leerla ahora
unit-two-places-where = ¿Dónde está, ahora que lo tienes delante?
unit-claim = { CAP($where) }
unit-somewhere-else = En otro lugar

## Lo que se puede corregir.

unit-printed = Anotar lo que lleva impreso
unit-record-numbers = Registrar estos números
unit-look-at-label = Mira su etiqueta
unit-label-trouble = Su etiqueta está rota, perdida o mal
unit-label-out = { $count ->
    [one] La etiqueta se anula para siempre. El sensor conserva su registro y recibe otra etiqueta.
   *[other] La etiqueta se anula para siempre. El sensor conserva su registro.
}
unit-label-reason = Qué pasó con la etiqueta
unit-label-reason-wanted = Di en pocas palabras qué pasó con la etiqueta.
unit-void = Anular { $code }
unit-was-labelled = Ahora no tiene etiqueta. Era { $code }.
unit-scan-fresh = Leer una etiqueta nueva para él
unit-label-waiting = Ponla en un sensor que perdió su etiqueta
unit-was-where = Era { $code }, { $where }

## Una etiqueta que se buscó.

unit-not-a-label = No es una etiqueta
unit-look-up-another = Buscar otra
unit-fresh = Una etiqueta nueva
unit-fresh-heading = Ningún sensor tiene aún esta etiqueta
unit-fresh-lead = En un trabajo, la aplicación pide una etiqueta cuando se quita un sensor. Aquí puede ir en un repuesto.
unit-fresh-unpaired = Este teléfono no está emparejado: no sabe dónde pusieron otros la etiqueta.
unit-spare = Ponla en un repuesto de tu almacén
unit-part-note = Léelo en el repuesto.
unit-serial-note = Si lo tiene.
unit-add-spare = Añadir el repuesto
unit-a-label = Una etiqueta
unit-phone-unpaired = Este teléfono no está emparejado
unit-phone-empty = Este teléfono no tiene aún registros
unit-kept-by = Lo registrado de este sensor lo guarda { $host }, y solo lo muestran los teléfonos emparejados con él.
unit-work-here = Trabajas aquí
unit-work-here-do = Pide un enlace de emparejamiento a alguien con un teléfono emparejado. Ábrelo aquí y lee la etiqueta otra vez.
unit-kept-elsewhere = Lo registrado de este sensor está en el teléfono de quien le puso la etiqueta.
unit-your-label = Es tu etiqueta
unit-your-label-do = Recoge el archivo que guardó tu otro teléfono y lee la etiqueta otra vez.
unit-take-in = Recoger mi archivo
unit-home-screen = Tienes Swaptrail en la pantalla de inicio
unit-home-screen-do = Ábrela allí y lee allí la etiqueta. No comparte nada con esta página.
unit-came-across = Encontraste este sensor
unit-came-across-do = Deja la etiqueta puesta. Llévalo, con su vale si lo hay, a quien te lo dio o a su mostrador de recambios.
unit-find = Buscar una etiqueta
unit-find-which = ¿Qué sensor es?
unit-find-lead = Lee su etiqueta y verás dónde va y qué leyó.
unit-find-scan = Leer una etiqueta
unit-find-type = Teclearla
