### Lo que se dice de copias de seguridad, registros, ficheros de teléfonos y la revisión de lo guardado.

keeping-fault = { $what }.
keeping-fault-entry = aparato { $device }, anotación { $seq }: { $what }.
keeping-unread = la base de datos no se puede leer ({ $error })
keeping-missing-between = falta una anotación entre las recibidas como { $before } y { $after }, la última de su aparato
keeping-missing-after = falta una anotación después de la recibida como { $last }, la última de su aparato
keeping-bytes = sus bytes no coinciden con su huella
keeping-no-entry = no es una anotación
keeping-filed = está archivada con otros datos que los suyos
keeping-missing = falta
keeping-twice = la anotación { $seq } aparece dos veces
keeping-bad-certificate = su certificado no está firmado por la instalación que nombra
keeping-bad-signature = la firma de su teléfono no encaja
keeping-signed-other = su teléfono firmó otra anotación en su lugar
keeping-not-next = no continúa la anotación anterior
keeping-added = se añadió después de la copia de seguridad
keeping-head = su huella no es la que nombra la copia de seguridad
keeping-apart = se guardó aparte, y sus bytes no coinciden con su huella
keeping-damaged = la base de datos está dañada ({ $error })
keeping-dangling = la tabla { $table } nombra algo que no está
keeping-no-file = { $file } no existe. Indica { $wanted }.
keeping-not-ours = { $file } no es nada que haya creado este programa, o está cortado. Indica { $wanted }.
keeping-intact = Intacto: { $file }, { $sort }.
keeping-altered = Alterado: { $file }, { $sort }. Primer lugar: { $place }
keeping-incomplete = Incompleto: { $file }, { $sort }. Le falta el final: { $place } Consigue otra vez el archivo.
keeping-sort-backup = una copia de seguridad
keeping-sort-folder = una carpeta de datos
keeping-sort-record = un registro
keeping-sort-phone-file = un fichero creado por un teléfono
keeping-not-in = falta en ella { $file }
keeping-other-database = { $file } no es la base con la que se hizo la copia
keeping-put-in = se le añadió { $file }
keeping-changed = se cambió { $file }
keeping-sealed-phone = Sellado por un teléfono, huella { $key }. De quién es el teléfono, el fichero no puede decirlo.
keeping-sealed = Sellado por una instalación, huella { $key }.
keeping-unconfirmed = De quién es esa clave, el fichero no puede decirlo. Pide a su dueño que te lea la huella, cada vez hasta que la hayas comparado.
keeping-own-seal = Esta carpeta de datos lo selló ella misma.
keeping-confirmed = Es el sello de { $name }; { $by } comparó la huella { $how ->
    [called] por teléfono
    [written] con lo que escribió su dueño
   *[met] con su dueño presente
}.
keeping-of-unit = Es el registro del sensor { $unit }.
keeping-smaller = { $count ->
    [one] { $count } imagen es una versión más pequeña. Que muestra
   *[other] { $count } imágenes son versiones más pequeñas. Que muestran
} lo mismo que el original, solo lo dice el sello.
keeping-cut-off = se cortó: hay { $entries } de { $of_entries } anotaciones y { $photos } de { $of_photos } fotos
keeping-photo-missing = falta la foto { $photo }
keeping-photo-changed = la foto { $photo } es otra, o se cambió
keeping-backup-made = { $file }: { $entries ->
    [one] { $entries } anotación
   *[other] { $entries } anotaciones
}, { $photos ->
    [one] { $photos } foto
   *[other] { $photos } fotos
}. Guárdalo como una llave: también contiene las claves.
keeping-backup-without = La foto { $photo } está dañada o falta en { $folder } y no está en la copia de seguridad.
keeping-exists = { $file } ya existe, y no se sobrescribe nada. Da otro nombre.
keeping-no-stream = El fichero - no tiene nombre. Lo que se escribe es un fichero nuevo y entero: dale uno.
keeping-no-folder = { $file }: la carpeta { $folder } no existe. Créala primero.
keeping-not-empty = { $folder } no está vacía, y no se sobrescribe nada. Indica una carpeta nueva.
keeping-no-backup = { $file } es { $sort }, no una copia de seguridad. Indica un fichero creado con `backup`.
keeping-backup-altered = { $file } está alterado; no se ha restaurado nada. { $place }
keeping-restored = { $folder }: { $entries ->
    [one] { $entries } anotación restaurada
   *[other] { $entries } anotaciones restauradas
}. Sírvela; los teléfonos lo notan y vuelven a enviar lo que tienen.
keeping-rejoined = { $folder } queda marcada como recuperada, con { $entries ->
    [one] { $entries } anotación
   *[other] { $entries } anotaciones
}. Los teléfonos lo notan, vuelven a enviar lo que tienen y lo piden todo.
keeping-room-none = No se apartó nada, así que no hay nada que pasar.
keeping-room-made = { $entries ->
    [one] { $entries } anotación pasada
   *[other] { $entries } anotaciones pasadas
} a { $file }. Ya no están en la base de datos.
keeping-changed-meanwhile = { $name } de { $file } cambió mientras se leía. No se ha restaurado nada.
keeping-swept = { $photos ->
    [one] { $photos } fichero de foto
   *[other] { $photos } ficheros de fotos
} que nada nombra en { $days } días, o que estaban cortados: retirados.
keeping-rebuilt = { $entries ->
    [one] { $entries } anotación
   *[other] { $entries } anotaciones
} de nuevo en cuenta: todo estaba como debe.
keeping-rebuilt-but = { $entries ->
    [one] { $entries } anotación
   *[other] { $entries } anotaciones
} de nuevo en cuenta. Lo que se deduce de ellas estaba como debe.
keeping-lost = { $photos ->
    [one] Falta { $photos } foto o está dañada
   *[other] Faltan { $photos } fotos o están dañadas
}. Se piden a cada teléfono que envía:
keeping-rebuilt-other = { $entries ->
    [one] { $entries } anotación
   *[other] { $entries } anotaciones
} de nuevo en cuenta. { $count ->
    [one] { $count } cosa era distinta, y ahora está bien:
   *[other] { $count } cosas eran distintas, y ahora están bien:
}
keeping-row-state = { $first } { $second }
keeping-row-link = enlace { $first } { $second }
keeping-row-correction = corrección de { $first } { $second }
keeping-row-job = trabajo { $first }{ $second } en la lista
keeping-row-words = palabras de { $first } { $second }
keeping-row-unit = sensor { $first } en la anotación { $second }
keeping-row-photo = foto { $first } en la anotación { $second }
keeping-row-wanted = petición de la foto { $first } de la anotación { $second }
keeping-row = { $row } { $what ->
    [other] era otro
    [extra] sobraba
   *[missing] faltaba
}
keeping-its-beginning = su principio
keeping-cut-after = está cortado después de { $last }
keeping-foreign-after = lo que sigue a { $last } no es suyo
keeping-member-twice = { $file } aparece dos veces
keeping-packed = { $file } está empaquetado de otro modo que en un registro
keeping-cut-in = está cortado en { $file }
keeping-many = contiene más de { $most } ficheros
keeping-more-at-end = se añadió algo al final
keeping-head-of = la cabecera de { $file }
keeping-no-label = Ningún sensor registrado tiene la etiqueta { $code }.
keeping-unknown = { $name } no está registrado aquí.
keeping-no-name = { $name } no es nombre de nada.
keeping-bad-name = { $why } Da el código de una etiqueta, o el identificador de un sensor o de un trabajo.
keeping-record-large = El registro de { $name } tendría { $size } MB de anotaciones, y el máximo es { $most }. Toma el registro de un solo trabajo.
keeping-too-large = ocupa más de los { $most } MB que admite un registro
keeping-no-record = Este fichero no es el registro de un sensor ni de un trabajo.
keeping-first-place = Primer lugar: { $place }
keeping-cut-place = { CAP($place) }
keeping-line = la línea { $line }
keeping-ends = su primera o su última línea
keeping-not-as-written = { $place } no está como se escribió
keeping-head-names = su primera línea nombra { $entries } anotaciones y { $photos } fotos, y hay { $entries_there } y { $photos_there }
keeping-no-phone-file = no es un fichero de los que un teléfono crea con lo anotado
keeping-phone-file-version = es el fichero de un teléfono, de la versión { $version }; se conocen hasta la { $known }
keeping-photo-line = la foto de la línea { $line } no coincide con su huella
keeping-second-file = la línea { $line } empieza un segundo fichero; recoge cada fichero por separado
keeping-after-end = la línea { $line } está después del final del fichero
keeping-name-or-serve = Indica la carpeta con --data, o arranca una vez `swaptrail serve` sobre ella.
keeping-taken-in = { $file }: { $entries ->
    [one] { $entries } anotación
   *[other] { $entries } anotaciones
} y { $photos ->
    [one] { $photos } foto
   *[other] { $photos } fotos
} recogidas; { $known ->
    [one] { $known } anotación ya estaba aquí
   *[other] { $known } anotaciones ya estaban aquí
}.
keeping-taken-in-keyless = { $phones ->
    [one] Es de { $phones } teléfono sin clave
   *[other] Es de { $phones } teléfonos sin clave
}: nada prueba quién lo anotó. Respondes tú por ello.
keeping-missing-of-it = El fichero se cortó: faltan { $entries ->
    [one] { $entries } anotación
   *[other] { $entries } anotaciones
} y { $photos ->
    [one] { $photos } foto
   *[other] { $photos } fotos
}.
keeping-name-phone-file = { $file } { $why }. Indica el fichero que creó el teléfono; su nombre empieza por swaptrail.
keeping-altered-not-taken = { $file } fue alterado; no se ha recogido nada. Primer lugar: { $place }
keeping-entry-not-taken = Anotación { $seq } del aparato { $device }: { $why }
keeping-photo-not-taken = Foto { $photo }: { $why }
keeping-list-at-end = la lista del final
