### Lo que el servidor dice a un teléfono, y las órdenes de una carpeta de datos.

server-busy = El servidor está ocupado con otros. Prueba de nuevo en un momento.
server-many-tries = demasiados intentos
server-pause = una pausa de { $seconds } segundos
server-wait = Demasiados intentos. Espera { $seconds } segundos y prueba otra vez.
server-full-found = un disco lleno
server-full-wanted = espacio libre en el servidor
server-full = El disco del servidor está lleno. Lo que hay en el teléfono está a salvo y se enviará de nuevo.
server-shut-found = datos que no se pueden escribir
server-shut-wanted = una carpeta de datos en la que el servidor pueda escribir
server-shut = El servidor no puede escribir sus datos: el disco o la carpeta solo admite lectura. Lo que hay en el teléfono está a salvo y se enviará de nuevo.
server-database-found = una base de datos ocupada
server-database-wanted = la misma petición en un momento
server-database = El servidor está ocupado. Lo que hay en el teléfono está a salvo y se enviará de nuevo.
server-broken-found = un disco que falla
server-broken-wanted = una revisión del disco del servidor
server-broken = El disco del servidor no guarda o no da los datos como debe. Lo que hay en el teléfono está a salvo y se enviará de nuevo.
server-own-error = un error propio
server-same-again = la misma petición otra vez
server-went-wrong = Algo ha fallado en el servidor. Lo que hay en el teléfono está a salvo y se enviará de nuevo.
server-proxy = Este servidor responde solo a través de su proxy, y { $header } trae { $found }; se espera { $wanted }. Haz que el proxy fije esa cabecera, diga lo que diga el cliente.
server-other-role = Esto es para teléfonos { $wanted ->
    [counter] del mostrador de recambios
   *[other] del taller
}; este es { $role ->
    [counter] del mostrador de recambios
   *[other] del taller
}.
server-counter-grants = Un teléfono del mostrador de recambios empareja y retira teléfonos del mostrador. Para uno del taller, usa un teléfono del taller.
server-not-paired = Este teléfono no está emparejado, o se le retiró el emparejamiento. Abre un enlace de un teléfono emparejado, o arranca el servidor con --pair para obtener uno.
server-own-phone = Este es el teléfono que tienes en la mano. Retíralo desde otro.
server-phone-gone = Este teléfono ya no está emparejado.
server-link-used = un enlace usado o caducado
server-link-fresh = un enlace de emparejamiento nuevo
server-link = Este enlace de emparejamiento ya se usó o ha caducado. Pide uno nuevo.
server-key-damaged = { $file } está dañado. Toma el de una copia de seguridad.
server-no-jpeg = Esto no es un JPEG. { $why }
server-photo-extras = La foto lleva { $extras }, que puede decir dónde y cuándo se hizo. Codifícala otra vez sin eso.
server-photo-damaged = La foto está dañada y no se puede mostrar.
server-photo-changed = Los bytes de la foto no coinciden con su huella: se cambiaron o se cortaron por el camino. Envíala otra vez.
server-jpeg-begin = No empieza como un JPEG.
server-jpeg-one = No contiene exactamente una imagen.
server-jpeg-scans = Tiene demasiados barridos.
server-jpeg-empty = No contiene ninguna imagen.
server-jpeg-segment = Falta un segmento en el byte { $byte }.
server-jpeg-end = Acaba demasiado pronto.
server-event-deep = La anotación está anidada a más de { $most } niveles.
server-event-large = La anotación tiene { $size } bytes; se admiten { $most } como máximo.
server-event-changed = La anotación { $seq } no coincide con su huella: se cambió un byte.
server-event-twice = Ya se guarda otra anotación { $seq } de este aparato: dos teléfonos usan una misma identidad. Se guardan las dos; este teléfono sigue como aparato nuevo.
server-events-missing = Faltan las anotaciones { $first } a { $last } de este aparato. Envíalas primero.
server-event-forked = La anotación { $seq } no continúa la { $kept } que se guarda. Se guarda aparte; este teléfono sigue como aparato nuevo.
server-other-phone = Otro teléfono usa este identificador de aparato.
server-other-phone-pair = Otro teléfono usa este identificador de aparato. Empareja otra vez este teléfono para recuperarlo.
server-unsigned = Esto llega sin la firma del teléfono que usa este identificador de aparato. El teléfono sigue con uno nuevo.
server-bad-signature = La firma no es la del teléfono que usa este identificador de aparato. El teléfono sigue con uno nuevo.
server-unproven = Nada prueba qué teléfono registró esto. Se guarda aparte y no cuenta, hasta que lo acepte alguien a quien corresponda ese trabajo.
server-no-room = Nada prueba qué teléfono registró esto. El servidor no tiene más sitio para anotaciones así de este teléfono. Esta se queda en el teléfono. Acepta las que esperan y habrá sitio otra vez.
server-no-room-for-any = Nada prueba qué teléfono registró esto. De todos los teléfonos el servidor guarda { $entries } anotaciones así, { $kilobytes } kB. Tiene sitio para { $most }, { $most_kilobytes } kB. Esta se queda en el teléfono. Acepta las que esperan, o pide que hagan sitio donde está el servidor.
server-device-ended = El teléfono con este identificador de aparato fue retirado, y el identificador terminó con él. Este teléfono necesita uno nuevo.
server-device-bound = Otro teléfono tiene la llave de este identificador de aparato. Este teléfono necesita uno nuevo. Si el otro se perdió, retíralo.
server-brought-bound = Este teléfono tiene llave propia y puede probar lo que registró. Si se perdió, retíralo primero.
server-device-role = Este identificador de aparato es de un teléfono con otra tarea, y así queda. { $role ->
    [counter] Un teléfono del mostrador de piezas
   *[other] Un teléfono del taller
  } necesita uno propio.
server-name-folder = Indica la carpeta con --data.
server-no-data = { $folder } no contiene datos de este programa. { $advice }
server-newer-data = Una versión más nueva de Swaptrail ha cambiado { $folder }. Actualiza Swaptrail y prueba otra vez.
server-data-in-file = { $folder } es un fichero, o está dentro de uno. Indica una carpeta con --data.
server-warranty-days = --warranty-days { $days } no es una garantía. Da de 1 a { $most } días, o 0 para dejarla a cada teléfono.
server-return-days = --return-days { $days } no es un plazo de devolución. Da de 1 a { $most } días, o 0 para ninguno.
server-disk-full = El disco está lleno. Libera espacio y prueba otra vez.
server-disk-shut = No se puede escribir ni abrir. Mira sus permisos, y si el disco está montado solo para lectura.
server-disk-busy = Otro programa ocupa la base de datos. Prueba otra vez en un momento.
server-disk-broken = El disco o la base de datos no responde como debe ({ $error }). Revisa el disco y luego ejecuta `swaptrail verify` sobre la carpeta de datos.
server-one-of = uno de estos: { $choices }
server-range = de { $least } a { $most }
server-codes = una lista de códigos; vacía significa todos los que quedan
server-pdf-for-more = pdf para más de { $pages } páginas
server-batch-number = el número de un lote impreso aquí
server-batch-left = uno al que le quede una etiqueta que no esté en un sensor ni anulada
server-reason = qué ha pasado, en pocas palabras
server-label-use = { $code }, { $state ->
    [elsewhere] de otro lote
    [on-paper] en papel
    [on-a-sensor] en un sensor
   *[void] anulada
}
server-label-free = una que no esté en un sensor; si lo está, se hace en la página del sensor
server-codes-left = como máximo { $count }: no quedan más códigos sin emitir
server-unread = El servidor no puede leer esta petición: { $found }. Envíala otra vez.
server-request-large = La petición trae { $found }; aquí se admiten { $most } bytes como máximo. Envía menos de una vez.
server-request-slow = La petición no llegó a tiempo. Ve adonde haya mejor señal; se enviará de nuevo.
server-crowded = El servidor recibe demasiado a la vez. Prueba otra vez en un minuto.
server-seal-unconfirmed = Nadie ha confirmado de quién es este sello. Compara antes su huella con su dueño.
