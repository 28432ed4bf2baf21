### Printing labels: layouts, batches, the sheet for the printer.

## A batch

labels-batch-title = Lote { $number }
labels-batch-new = Imprimir etiquetas nuevas
labels-batch-all = Todos los lotes
labels-again = La impresión falló o se perdió
labels-again-lead = { $count ->
    [one] La que no está
   *[other] Las { $count } que no están
} en ningún sensor se { $count ->
    [one] puede
   *[other] pueden
} hacer otra vez. Destruye antes lo que se imprimió: un código en dos sensores pone los dos en duda.
labels-again-unsent = Puede que un teléfono que aún no ha enviado haya usado alguna.
labels-again-button = Está destruido: { $count ->
    [one] hacer otra vez esta { $count }
   *[other] hacer otra vez estas { $count }
}
labels-gone = Algunas están rotas o perdidas
labels-gone-lead = Toca las que ya no están; si no tocas ninguna, se anulan las { $count }.
labels-gone-group = Etiquetas en papel
labels-gone-reason = Qué les pasó
labels-gone-reason-fault = Di en pocas palabras qué les pasó.
labels-gone-button = Anular { $count ->
    [one] esta etiqueta
   *[other] { $count } etiquetas
}
labels-on-sensor = En un sensor
labels-void = Anuladas
labels-void-was-on = el sensor en el que estaba

## All batches

labels-title = Etiquetas
labels-lead = Cada impresión es un lote. Ningún código se imprime para un segundo sensor.
labels-none = Todavía no se imprimieron etiquetas
labels-none-lead = Imprime una hoja o un rollo y lleva algunas en la bolsa de herramientas.
labels-help = Qué etiquetas aguantan
labels-print = Imprimir etiquetas
labels-batch-made = Lote { $number } · { $day }
labels-unfinished = Su archivo no se terminó.
labels-counts = { $paper } en papel · { $sensor } en un sensor · { $void ->
    [one] { $void } anulada
   *[other] { $void } anuladas
}

## What was just made

labels-ready = { $count ->
    [one] { $count } etiqueta lista
   *[other] { $count } etiquetas listas
} para imprimir
labels-ready-how = Imprime al 100 %, sin “ajustar a la página”, en papel mate. Lee una antes de imprimir el resto.
labels-save-page = Guardar la página { $number }
labels-save-kind = Guardar el { $kind }
labels-preview-one = Una etiqueta, más grande de lo que es
labels-preview-sheet = Una hoja con { $count } etiquetas
labels-few-codes = Solo quedan { $count } códigos que nunca se imprimieron. Imprime como mucho esos.
labels-to-printer = A la impresora
labels-format-pdf = PDF
labels-format-svg = SVG, un archivo por página

## Choosing a layout

labels-on-a4 = Hoja A4
labels-on-letter = Hoja tamaño carta
labels-on-roll = Rollo, una etiqueta por página
labels-dpi-203 = 203 ppp, 8 puntos por mm
labels-dpi-300 = 300 ppp, 12 puntos por mm
labels-distance-10 = 10 cm
labels-distance-20 = 20 cm
labels-distance-30 = 30 cm
labels-roll-50 = 50 x 30 mm
labels-roll-30 = 30 x 20 mm
labels-roll-58 = Rollo de 58 mm
labels-roll-80 = Rollo de 80 mm
labels-columns = Columnas
labels-rows = Filas
labels-width = Ancho de la etiqueta, mm
labels-height = Alto de la etiqueta, mm
labels-margin-left = Margen izquierdo, mm
labels-margin-top = Margen superior, mm
labels-gap-across = Hueco a lo ancho, mm
labels-gap-down = Hueco a lo alto, mm
labels-on = ¿En qué imprimes?
labels-distance = ¿A qué distancia está el teléfono al leer?
labels-how-many = Cuántas etiquetas
labels-how-many-roll = Vacío: { $count }.
labels-how-many-sheet = Vacío: una hoja llena.
labels-how-many-fault = Se encontró { $typed }; se pueden hacer de 1 a { $most } a la vez.
labels-format = ¿Qué clase de archivo?
labels-make = Hacer { $count ->
    [one] { $count } etiqueta
   *[other] { $count } etiquetas
}
labels-make-none = Hacer etiquetas
labels-roll = ¿Qué etiquetas lleva?
labels-dpi = ¿Con qué finura imprime la impresora de etiquetas?
labels-measures = Medidas de la hoja
labels-measures-lead = Vacío: tantas etiquetas de 26 x 32 mm como quepan, con marcas para cortar.
labels-precut = La hoja ya está cortada en etiquetas: sin marcas
labels-fault = Así no se puede imprimir
labels-force = Imprimirlas de todos modos: quizá nada las lea
labels-ask-again = Preguntar otra vez
labels-looking = Mirando cómo sale.
labels-hard-to-read = Difícil de leer
labels-outcome = Cómo sale
labels-outcome-one = Una etiqueta. Su código aquí no es ninguno de los que se imprimen.
labels-outcome-sheet = La hoja, { $count } etiquetas.

## The sheet for the printer

labels-file = Etiquetas del lote { $number }
labels-save-file = Guardar como archivo
labels-share-file = Compartir como archivo
labels-window = En la ventana de impresión elige papel de { $width } x { $height } mm, una escala del 100 % y sin márgenes.
labels-pages = { $count } páginas.
labels-page = Página { $number } con etiquetas
labels-print-them = { $count ->
    [one] Imprimirla
   *[other] Imprimir las { $count }
}
labels-bar = Luego mide la barra del pie: tiene 100 mm.
labels-before = Estas etiquetas ya fueron a la impresora
labels-before-lead = Una etiqueta dos veces en papel podría acabar en dos sensores. Si aquella impresión falló, abre el lote: lo que no está en ningún sensor se puede imprimir otra vez desde ahí.
labels-open-batch = Abrir el lote
