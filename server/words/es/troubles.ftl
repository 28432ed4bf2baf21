### Qué salió mal en el teléfono y qué hacer.

troubles-no-start-heading = Swaptrail no pudo empezar
troubles-no-start = Lo registrado sigue intacto. Cierra la aplicación y ábrela otra vez. ({ $error })
troubles-no-record = Swaptrail no puede registrar aquí
troubles-not-secure = Esta dirección no es segura: el navegador no deja usar la cámara ni el almacenamiento, y no se podría registrar nada. Abre la aplicación por su dirección https.
troubles-too-old = Este navegador es demasiado antiguo para guardar tus registros. Actualízalo, o usa otro.

troubles-full = No guardado: este teléfono está lleno
troubles-not-written = No guardado: este teléfono no pudo escribir
troubles-not-written-do = Lo que escribiste sigue aquí. Guarda otra vez; si falla de nuevo, cierra la aplicación y ábrela.

## Las comprobaciones no funcionan.

troubles-restarted-meanwhile = Mientras tanto se reinició el núcleo.
troubles-no-webassembly = Este navegador no puede hacer las comprobaciones (sin WebAssembly).
troubles-not-started = No se pudieron iniciar las comprobaciones. { $why }
troubles-unchecked = { $why } Lo que escribes se guarda en este teléfono, marcado como sin comprobar.
troubles-answered = { $address } respondió { $status }
troubles-self-check = su propia comprobación volvió cambiada
troubles-restarted = Las comprobaciones se pararon y se reiniciaron.
troubles-restarted-after = { $why } Las comprobaciones se reiniciaron.
troubles-core-not-running = el núcleo no está en marcha
troubles-asked-too-often = Pidió más { $times } veces.
troubles-log-not-read-again = Las comprobaciones no pudieron leer de nuevo el registro. { $why }
troubles-no-answer = Sin respuesta en { $seconds } segundos.
troubles-core-failed = El núcleo falló: { $fault }.
troubles-worker-failed = { $fault }
troubles-worker-not-loaded = Su proceso no se cargó.
troubles-log-not-read = Las comprobaciones no pudieron leer el registro: { $error }.

## El almacenamiento de este teléfono.

troubles-storage-lost = Este teléfono perdió el contacto con su almacenamiento. Lo que escribiste sigue en la pantalla. Cierra la aplicación y ábrela otra vez.
troubles-older-tab = Swaptrail está abierta en otra pestaña con una versión anterior. Cierra esa pestaña.
troubles-newer-tab = Se abrió una versión más nueva en otra pestaña. Carga esta página otra vez.

## Un archivo que no se recoge.

troubles-altered = Este archivo fue alterado
troubles-altered-place = { $place }: { $what }. No se recogió nada. Pasa el archivo otra vez desde el teléfono que lo creó.
troubles-proof = la firma del aparato { $device }
troubles-not-as-written = no está como se escribió
troubles-line = Línea { $line }
troubles-first-line = Su primera línea
troubles-incomplete = nombra { $entries } anotaciones y { $photos } fotos, y hay { $entries_there } y { $photos_there }
troubles-after-end = está después del final del archivo
troubles-two-files = Son dos archivos en uno
troubles-two-files-do = En la línea { $line } empieza un segundo archivo. No se recogió nada. Pide cada archivo por separado al teléfono que lo creó y recoge uno tras otro.
troubles-not-ours = Este archivo no lo creó esta aplicación
troubles-not-ours-do = No se recogió nada. Elige el archivo que creó el otro teléfono; su nombre empieza por swaptrail.
troubles-first-or-last-line = Su primera o su última línea
troubles-entry = Anotación { $seq } del teléfono { $device }
troubles-bytes = sus bytes no coinciden con su huella
troubles-missing = falta
troubles-not-next = no continúa la anotación anterior
troubles-newer-file = Este archivo es de una versión más nueva
troubles-newer-file-do = Tiene la versión { $version }; este teléfono lee hasta la { $known }. Actualiza la aplicación y recógelo otra vez.
troubles-photo-line = La foto de la línea { $line }
troubles-elsewhere = Este teléfono tiene otra cosa ahí
troubles-elsewhere-do = La anotación { $seq } del teléfono { $device } no es la que tiene este teléfono, o deja un hueco: dos teléfonos usaron una misma identidad. No se recogió nada. Haz que se recoja el archivo en el servidor: swaptrail take-in FILE.
troubles-outside = Este archivo tiene algo que ningún teléfono puede mostrar
troubles-outside-do = Anotación { $seq } del teléfono { $device } – { $message }. No se recogió nada.
troubles-begins-middle = Este archivo empieza por la mitad
troubles-begins-middle-do = { $count ->
    [one] La anotación { $last } del teléfono { $device } no está
   *[other] Las anotaciones { $first } a { $last } del teléfono { $device } no están
} ni en él ni aquí: solo contiene lo que ese teléfono no había enviado a su servidor. No se recogió nada. Recógelo allí.
troubles-two-phones = Dos teléfonos usaron una misma identidad
troubles-two-phones-do = La anotación { $seq } del teléfono { $device } no es la que está aquí. No se recogió nada. Recoge el archivo del teléfono cuyas anotaciones están aquí en el teléfono que creó este archivo; ese recibe una identidad propia. Luego recoge aquí su archivo.
troubles-no-server = Esta aplicación funciona sin servidor, así que esto no se puede pedir aquí.

## El servidor y la línea hasta él.

troubles-server-fault = El servidor tiene un fallo. No se perdió nada.
troubles-unreachable = No se puede contactar con el servidor. Todo se guarda en este teléfono.
troubles-unreachable-untrusted = No se puede contactar con el servidor, o este teléfono no confía en él. Todo se guarda en este teléfono.
troubles-untrusted = Respondió otra cosa en lugar del servidor, quizá la página de acceso de esta red. Todo se guarda en este teléfono.
troubles-no-agreement = El servidor y este teléfono no están de acuerdo en lo enviado.
troubles-damaged-answer = La respuesta del servidor llegó dañada. Se pide otra vez.
troubles-not-paired = Este teléfono no está aún emparejado con el servidor.
troubles-older-server = El servidor tiene una versión anterior a la de esta aplicación y aún no acepta todo. Se guarda aquí y se envía cuando el servidor esté al día.
troubles-full-noting = Este teléfono está lleno y no puede anotar lo enviado. Lo que escribiste se conserva. Libera espacio en él.
troubles-not-finished = Este teléfono no pudo terminar de enviar. { $error }
troubles-entry-refused = El servidor no acepta una anotación de este teléfono. { $why }
troubles-photo-refused = No se puede enviar una foto: { $why }
troubles-photo-missing = sus bytes faltan en este teléfono.
troubles-photo-damaged = se dañó en este teléfono.

## Fotos.

troubles-heic = Este navegador no abre fotos HEIC
troubles-heic-do = No se guardó nada. Haz la foto aquí en la aplicación, o pon la cámara del teléfono en JPEG.
troubles-no-picture = Este archivo no es una foto
troubles-no-picture-do = No se guardó nada. Elige una foto, o haz una aquí en la aplicación.
troubles-broken-picture = Esta foto está dañada
troubles-broken-picture-do = No se pudo leer hasta el final y no se guardó nada. Hazla otra vez.
troubles-not-drawn = Este teléfono no pudo dibujar la foto
troubles-picture-not-saved = Este teléfono no pudo guardar la foto
troubles-picture-not-saved-do = No se guardó nada. Cierra otras aplicaciones y hazla otra vez.
troubles-points = { $count } millones de puntos
troubles-too-large = Esta foto es demasiado grande
troubles-too-large-do = Tiene { $found }; esta aplicación acepta hasta { $points } millones de puntos y { $megabytes } MB. No se guardó nada. Hazla aquí en la aplicación, o pon la cámara del teléfono en un tamaño menor.
troubles-picture-absent = Esta foto no está en este teléfono

## Un registro como archivo.

troubles-record-none = No es un registro
troubles-record-larger = { $file } es mayor que cualquier registro.
troubles-record-not-here = No se puede mostrar aquí
troubles-record-unread = Está como se selló, pero esta aplicación no puede leerlo. { $why }
troubles-record-not-shown = No se puede mostrar
troubles-record-server = Para esto hace falta el servidor
troubles-record-server-do = Solo el servidor puede comprobar un sello, y ahora no se puede contactar. Guarda el archivo y prueba otra vez.
troubles-record-unchecked = No se pudo comprobar
troubles-record-again = Prueba otra vez. { $why }
troubles-record-no-key = Este navegador no puede comprobarlo
troubles-record-no-key-do = El registro lo selló una instalación, y este navegador no conoce su tipo de clave. Actualízalo, o abre el archivo en otro navegador.
troubles-record-altered = Este registro fue alterado
troubles-record-cut = Este registro está incompleto
troubles-record-no-picture = Esta foto no está en el archivo
troubles-record-large = Tendría { $size } MB de anotaciones; { $most } es el máximo. Haz el registro de un solo trabajo.
troubles-record-gap = En este teléfono faltan anotaciones entre las de este registro, así que no probaría nada.
troubles-record-no-record = Este archivo no es un registro de un sensor ni de un trabajo.
troubles-record-between = se cambió lo que hay entre sus partes
troubles-first-place = Primer lugar: { $place }.
troubles-record-cut-place = { CAP($place) }.
troubles-record-beginning = su principio
troubles-record-cut-after = está cortado después de { $last }
troubles-record-foreign-after = lo que está después de { $last } no es suyo
troubles-record-twice = { $file } está dos veces
troubles-record-packed = { $file } está comprimido de otro modo que en un registro
troubles-record-cut-in = está cortado en { $file }
troubles-record-cut-end = está cortado en la lista de su final
troubles-record-entry = aparato { $device }, anotación { $seq }: { $what }
