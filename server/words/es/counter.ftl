### El mostrador de recambios: propuestas, decisiones, el día.

counter-part = pieza { $part }
counter-part-from = pieza { $part }, de { $where }
counter-all-checks = Las { $count } comprobaciones
counter-same-part = Es la misma pieza
counter-other-part = Es otra pieza
counter-compare-again = Comparar otra vez
counter-otherwise-on = Decidir otra cosa sobre { $code }
counter-proposed = Propuesta: { $decision }. { $why }
counter-your-decision = Tu decisión
counter-your-reason = Tu motivo, queda en el registro
counter-own-words = O con tus palabras
counter-reason-wanted = Di qué decides y da un motivo.
counter-no-record = Sin registro aquí
counter-record-file = Su registro como archivo
counter-pictures-in-record = Sus fotos están en su registro. Guárdalo como archivo y ábrelo en «Comprobar un registro».
counter-record-not-here = El registro no ha llegado
counter-signed-by = { $moment }, firmado por { $name }
counter-twice = Decidido en dos mostradores; ambas decisiones quedan en el registro
counter-others-not-asked = No se llega a otros mostradores
counter-others-waiting = { $count ->
    [one] Una decisión
   *[other] { $count } decisiones
} aún sin comunicar a otros mostradores

## Leer una tras otra.

counter-title = Mostrador
counter-title-today = Mostrador · { $count } hoy
counter-type = Teclear un código
counter-aim = Etiqueta y luego el símbolo de la pieza
counter-take-back = Anular la decisión
counter-ready = Listo para la próxima etiqueta.
counter-show-label = Muestra la etiqueta de la pieza.
counter-decide = Decidir
counter-decide-on = { $decision } { $code }
counter-as-proposed = Volver a la propuesta
counter-later = Decidir después
counter-receive = Recibirlo
counter-leave = Solo mirar
counter-only-looked = Nada registrado
counter-only-looked-at = { $code } solo se miró. Léelo otra vez para decidir.
counter-entered-kept = Guardado, no registrado
counter-entered-kept-of = Lo que anotaste de { $code } se conserva. Léelo otra vez para decidir.
counter-whole-record = Todo su registro
counter-otherwise = Otra cosa
counter-look-up = Buscarlo

## Lo que espera, y hoy.

counter-wait = { $count ->
    [0] No espera nada
    [one] { $count } espera una decisión
   *[other] { $count } esperan una decisión
}
counter-scan-lead = Lee la etiqueta de una pieza que vuelve.
counter-today = Hoy
counter-day-file = Lista del día y archivo
counter-search-records = Buscar en lo registrado
counter-scan-returns = Leer devoluciones
counter-held = retenido { $ago }: { $why }
counter-received = recibido { $ago }
counter-who = ¿Quién decide aquí?
counter-your-name = Tu nombre
counter-your-name-note = Firma cada decisión que se toma en este teléfono.
counter-sign = Firmar con este nombre
counter-unchecked = Esto no se pudo comprobar
counter-taken-back = Retirada en el acto

## La lista de un día.

counter-day-list = Lista del día
counter-day = Día
counter-day-before = El día anterior
counter-day-after = El día siguiente
counter-day-empty = Ese día no se decidió nada.
counter-save = Guardar como archivo (CSV)
counter-search = Buscar
counter-file-problem = El archivo lo hace el servidor. { $why }
counter-search-for = ¿Qué buscas?
counter-search-note = Un código, pieza, número de serie, vehículo, queja o nombre. Basta el comienzo de cada palabra.
counter-found = { $count ->
    [0] No hay nada
    [one] { $count } resultado
   *[other] { $count } resultados
} { $where ->
    [server] en el servidor
   *[phone] en este teléfono
}.
counter-found-nothing = Escribe menos, u otra cosa: su código, su número de serie, el vehículo.
counter-found-nothing-here = No se preguntó al servidor. Puede saber más.
counter-found-scan = Leer o teclear su etiqueta

## Un símbolo y la pieza en la que está.

counter-whose = ¿En qué pieza está este símbolo?
counter-whose-why = No se leyó junto con la etiqueta { $code }.
counter-whose-this = En { $code }
counter-whose-other = En otra
counter-label-first = Primero la etiqueta
counter-label-first-do = Lee la etiqueta de esa pieza y luego su símbolo.
counter-bag-first = Contiene { $numbers }. Lee la etiqueta de esa pieza y luego su símbolo.
counter-serial = Teclear su número de serie
counter-serial-field = Número de serie, como está impreso en la pieza
counter-serial-enter = Compararlo
counter-serial-known = Este número de serie está registrado
counter-serial-known-of = { $serial } ya se leyó en una pieza. Toca la pieza para seguir con ella.
counter-no-serial = Ninguna pieza lo tiene aquí como número de serie.

## Un lector de mano que teclea.

counter-keys-title = { $what ->
    [caps] Mayúsculas y minúsculas están cambiadas
    [separators] El lector omite los separadores
   *[layout] El lector teclea para otro teclado
}
counter-keys-do = { $what ->
    [caps] Quita el bloqueo de mayúsculas, aquí y en el ajuste del lector, y lee otra vez.
    [separators] Ajústalo para que envíe los caracteres de control como teclas Ctrl y lee otra vez.
   *[layout] Ajústalo a la distribución del teclado de este equipo y lee otra vez.
} De esta lectura no se tomó nada.
counter-hand-scanner = Lector de mano
counter-hand-scanner-is = Uno que teclea no pide ningún toque: lee en cualquier pantalla de aquí.
counter-held-back = Se espera el resto de { $text }
counter-held-end = Pulsa Intro si ya está todo.
counter-prefix = Lo que teclea antes de cada código
counter-prefix-note = Déjalo vacío si no teclea nada más.
counter-prefix-keep = Guardarlo

## Varios a la vez, y la pantalla de un mostrador con ordenador.

counter-together = Decidir estos { $count } juntos: { $why }
counter-several = Retenidos por: { $why }
counter-together-reason = Tu motivo, si decides otra cosa que lo propuesto
counter-decide-several = { $decision }: { $count }

## What changed while a proposal stood there.

counter-changed = Ahora se propone otra cosa
counter-changed-do = El registro de { $code } cambió entretanto. No se decidió nada: mira otra vez.
counter-changed-of = No se decidió nada sobre { $codes }. Mira cada uno por separado.

## Resguardos.

counter-slip = Un resguardo tras cada decisión
counter-slip-way = { $way ->
    [printer] De la impresora del servidor
    [paper] Mostrarlo, para imprimirlo aquí
    [print] Imprimirlo aquí en el acto
   *[none] Ninguno
}
counter-slip-state = { $state ->
    [sent] Su resguardo se imprime.
    [waits] Decidido. Su resguardo espera: la impresora no responde.
   *[failed] Decidido. Su resguardo no se imprimió: no se llega al servidor o a la impresora.
}
counter-slip-again = Imprimir otra vez el resguardo
counter-slip-paper = Resguardo en papel
counter-slips-aside = { $count ->
    [one] Un resguardo no se imprimió
   *[other] { $count } resguardos no se imprimieron
}
counter-slip-of = { $heading } { $code }, { $ago }
counter-slip-begun = La impresora se interrumpió. Puede que ya esté en papel.
counter-slips-print = Imprimir ahora
counter-slips-leave = Ya no hace falta
