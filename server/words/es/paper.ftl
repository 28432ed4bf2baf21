### Sheets to print or hand on: the report, the slip, the record of a sensor.

## Any sheet

paper-size-a5 = A5
paper-size-page = A4 o carta
paper-size-80 = Rollo de 80 mm
paper-size-58 = Rollo de 58 mm
paper-print = Imprimirlo
paper-share = Compartirlo
paper-save = Guardar como archivo
paper-size = Papel
paper-shop = El nombre de tu taller
paper-shop-name = Encabeza todo lo que imprimes

## The report for the customer

paper-report-title = Informe · { $vehicle }
paper-report-before = Antes del trabajo
paper-report-trail = Las pruebas en un dibujo
paper-report-trail-lead = Cada columna es una prueba, cada fila un lugar del vehículo, cada línea { PART($sort, form: "a") }. La banda ancha muestra dónde estaba el fallo.
paper-report-replaced = Qué se cambió
paper-report-during = Durante el trabajo
paper-report-after = Después del trabajo
paper-report-proof = Qué lo comprueba
paper-report-note = Ten en cuenta
paper-report-no-picture = Todavía no hay imagen de después del trabajo.
paper-report-take = Hacer una
paper-report-kind = Informe sobre { PART($sort, form: "the-full-many") }
paper-report-vin = Número del vehículo
paper-report-complaint = Queja
paper-report-no-complaint = ninguna anotada
paper-report-begun = Empezado
paper-report-finished = Terminado
paper-report-clock = El reloj del teléfono estaba mal. Los días de esta página pueden estar mal; su orden es correcto.
paper-report-done = Qué se hizo
paper-report-picture = { $shows }, { $day }
paper-report-more = { $count ->
    [one] Hay una foto más en el trabajo.
   *[other] Hay { $count } fotos más en el trabajo.
}
paper-report-by = Trabajo de { $by }.
paper-report-unnamed = alguien sin nombre

## Sheets of a sensor

paper-no-label = sin etiqueta
paper-part = Pieza
paper-serial = Serie
paper-not-noted = sin anotar
paper-symbol = La etiqueta { $code } como código QR
paper-no-test = No hay ninguna prueba registrada.
paper-tested = En { $vehicle }, probado el { $day }.
paper-complaint = Queja: { $complaint }.
paper-printed = Impreso el { $at }.
paper-printed-by = Impreso el { $at } por { $actor }.
paper-copy = El papel es una copia: lee el código para ver el registro mismo, { $where }.

## The return slip

paper-slip-title = Hoja de devolución { $code }
paper-slip = Hoja de devolución
paper-tests = Lo que dicen las pruebas
paper-custody = Quién lo tuvo
paper-slip-last = Último: { $what }, { $at }, { $actor } ({ $how }).
paper-slip-decision = Decisión
paper-slip-signed = Firmado: { $signed }, { $at }.
paper-slip-accepted = aceptado
paper-slip-on-hold = retenido
paper-slip-refused = rechazado
paper-slip-reason = Motivo
paper-slip-name = Nombre, fecha
paper-slip-signature = Firma

## The record of a sensor

paper-record-title = Registro de { PART($sort) } { $code }
paper-record = Registro de { PART($sort, form: "a") }
paper-record-where = Está { $where }.
paper-record-trail = Su rastro
paper-record-tests = Pruebas
paper-record-when = Cuándo
paper-record-what = Qué
paper-record-how = Cómo se sabe
paper-record-who = Quién
paper-record-labels = Etiquetas
paper-record-label = { $code }: { $told }
paper-record-label-put-on = { $code }, puesta el { $day }: { $told }
paper-record-returns = Devoluciones
paper-record-signed = Firmado: { $signed }.
paper-record-undecided = Sin decidir todavía.
paper-record-lost = Identidad perdida
paper-record-lost-how = El { $at }, { $how }.
