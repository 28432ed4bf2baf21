### Lo que un teléfono dice de sí mismo: qué está enviado o guardado, dónde está la app.

phone-this = Este teléfono
phone-no-checks = No hay comprobaciones
phone-read = Ya lo leí
phone-not-on-record = Aún sin registrar
phone-save-again = Guardar otra vez
phone-do-not-save = No guardarlo

## Una versión nueva; el reloj.

phone-version = Hay una versión nueva lista
phone-version-waits = Espera hasta que lo que escribiste esté registrado.
phone-version-here = Está completa en este teléfono. Lo que empezaste a escribir queda como está.
phone-version-change = Cambiar ahora
phone-clock = El reloj de este teléfono
phone-clock-off = Va { $span } { $way ->
    [ahead] por delante
   *[behind] por detrás
} del reloj del servidor. Lo que registras lleva la hora de este teléfono; el orden no depende de ella. Pon el reloj en hora en los ajustes del teléfono.

## Lo que espera a ser enviado.

phone-unpaired = Este teléfono no está emparejado
phone-unpaired-note = Puedes trabajar y todo se guarda aquí, pero nada llega al servidor.
phone-pair = Emparejar este teléfono
phone-not-sent = { $what } sin enviar
phone-the-oldest = , desde { $ago }.
# $count (count): 3
phone-jobs = { $count ->
    [one] { $count } trabajo
   *[other] { $count } trabajos
}
# $count (count): 3
phone-loose = { $count ->
    [one] { $count } otra anotación
   *[other] { $count } otras anotaciones
}
phone-entries = { $count ->
    [one] { $count } anotación
   *[other] { $count } anotaciones
}
phone-pictures = { $count ->
    [one] { $count } foto
   *[other] { $count } fotos
}
phone-all-sent = Todo enviado
phone-saved-here = Guardado en este teléfono.
phone-saved-here-since = Guardado en este teléfono, lo más antiguo { $ago }.
phone-pictures-take = Las fotos ocupan { $size }.
phone-nothing-waits = No espera nada en este teléfono.
phone-last-exchange = Último contacto con el servidor { $ago }.
phone-no-exchange = Sin contacto con el servidor desde que se abrió la aplicación.
phone-sent-entries = { $done } de { $all } anotaciones
phone-sent-pictures = { $done } de { $all } fotos
phone-sent-so-far = Enviado hasta ahora: { $what }
phone-how-much = Cuánto está enviado
phone-again-in = Nuevo intento en { $span }

## La marca en la cabecera de cada pantalla.

phone-mark-unpaired = { $count ->
    [0] sin emparejar
   *[other] sin emparejar, { $count }
}
phone-mark-not-taken = { $count } sin aceptar
phone-mark-sending = enviando { $count }
phone-mark-not-sent = { $count } sin enviar
phone-mark-server = servidor con fallo
phone-mark-offline = sin red
phone-mark-sent = todo enviado
phone-mark-nothing = nada que enviar
phone-mark-no-file = { $count } solo aquí
phone-mark-saved = todo en archivo
phone-mark-empty = nada registrado

## El recordatorio de guardar el archivo.

phone-in-no-file = solo en este teléfono. Mira cómo guardarlo.
phone-only-here = Solo en este teléfono
phone-save-file = Guardar el archivo
phone-stake = { $stage ->
    [urgent] { $count ->
        [one] se perdería con este teléfono
       *[other] se perderían con este teléfono
    }
   *[due] { $count ->
        [one] está solo en este teléfono
       *[other] están solo en este teléfono
    }
}.
phone-stake-since = { $stage ->
    [urgent] { $count ->
        [one] se perdería con este teléfono
       *[other] se perderían con este teléfono
    }
   *[due] { $count ->
        [one] está solo en este teléfono
       *[other] están solo en este teléfono
    }
}, lo más antiguo desde hace { $span }.
phone-last-file = El último archivo es de { $ago }.
phone-no-file = Aún no hay archivo.
phone-page-cleared = Algunos teléfonos borran tras una semana sin visita una página que no está en la pantalla de inicio.
phone-may-remove = El navegador puede borrar los datos si falta espacio.

## Un archivo que se crea, un archivo que se recoge.

phone-file-failed = No se pudo crear el archivo: { $error }. Todo sigue en este teléfono. Cierra la aplicación, ábrela y prueba otra vez.
phone-not-shared = Este teléfono no compartió el archivo. Guárdalo en el teléfono y cópialo desde ahí.
phone-full-title = No recogido: este teléfono está lleno
phone-unreadable = No se pudo leer el archivo
phone-unreadable-do = Este teléfono ya no lo entrega; quizá está en otra aplicación o en una unidad. No se cambió nada. Cópialo en el teléfono y elígelo otra vez.
phone-came-in = Recogido: { $what }.
phone-known = { $count ->
    [one] { $count } anotación ya estaba aquí.
   *[other] { $count } anotaciones ya estaban aquí.
}
phone-taken-in = Recogido
phone-file-empty = El archivo está vacío.
phone-cut-off = El archivo está cortado: { $count ->
    [0] falta su última línea
    [one] falta { $what }
   *[other] faltan { $what }
}. Pásalo otra vez desde el teléfono que lo creó.
phone-taken-in-partly = Recogido hasta donde llega
phone-way-back = Es
phone-way-back-holds = del { $moment }, con { $what }.
phone-take-in-that = Recoger ese archivo

## Si se confía en el servidor.

phone-no-trust = Este teléfono no confía en el servidor
phone-no-trust-note = La aplicación se abrió pese a un aviso del navegador, así que no se abrirá sin red. Lo que registras aquí se guarda.
phone-maybe-no-trust = El servidor: sin conexión o sin confianza
phone-maybe-no-trust-note = ¿Está este teléfono en su red y el servidor encendido? Si es así, quizá el teléfono perdió la confianza o su reloj va mal.
phone-trust = Confiar en el servidor

## Si este teléfono lo conserva.

phone-keeps = ¿Lo conserva este teléfono?
phone-promised = El navegador prometió conservar los datos
phone-not-promised = El navegador puede borrar los datos si falta espacio
phone-installed = La aplicación está en la pantalla de inicio
phone-not-installed = La aplicación no está en la pantalla de inicio
phone-offline-ready = Arranca sin red
phone-offline-not-ready = Necesita red para arrancar
phone-short = Falta espacio: { $room }
phone-how-to-keep = Cómo proteger los datos
phone-ask-browser = Pedir al navegador que los conserve
phone-send-soon = El navegador no prometió conservar lo que falta por enviar. Envíalo pronto.
phone-short-notice = Falta espacio en este teléfono: { $room }. Mira qué ayuda.
phone-room-unknown = { $used } en uso; el navegador no dice cuánto queda
phone-room = { $used } en uso, quedan { $left } como mucho
phone-take-pictures-off = Quitar de este teléfono las fotos enviadas
phone-how-to-install = Cómo ponerla en la pantalla de inicio

## En la pantalla de inicio.

phone-can-get-lost = Esto se puede perder
phone-so-it-stays = Para que no se pierda
phone-install = Pon Swaptrail en la pantalla de inicio
phone-see-what-waits = Ver lo que espera
phone-not-now = Ahora no
phone-install-line = Ten Swaptrail en la pantalla de inicio
phone-put-it-there = Ponerla ahí
phone-show-how = Ver cómo
phone-install-iphone = Esto es una página del navegador, que olvida una página sin abrir en una semana. La aplicación de la pantalla de inicio empieza vacía: mira antes cómo.
phone-install-calm = Esto es una página del navegador. Desde la pantalla de inicio arranca con un toque, y el teléfono guarda sus datos más tiempo.
phone-install-strong = Solo esta página tiene { $what }. El navegador no prometió conservarlo. Envíalo pronto.
phone-on-home-screen = En la pantalla de inicio
phone-is-installed = Está en la pantalla de inicio
phone-install-lead = Así arranca con un toque, y los teléfonos tardan más en borrar lo que guarda.
phone-install-button = Ponerla en la pantalla de inicio
phone-android = En un teléfono Android
phone-android-1 = Toca los tres puntos en la barra del navegador.
phone-android-2 = Toca «Añadir a pantalla de inicio» o «Instalar aplicación» y confirma.
phone-android-note = Sin internet algunos teléfonos solo pueden crear un acceso directo a esta página. También sirve, con los mismos registros.
phone-iphone = En un iPhone
phone-iphone-1 = En Safari, toca el cuadrado con una flecha hacia arriba. En los nuevos está tras los tres puntos.
phone-iphone-2 = Toca «Añadir a pantalla de inicio» más abajo en la lista, luego «Añadir».
phone-starts-empty = Allí empieza vacía
phone-shares-nothing = En un iPhone la aplicación de la pantalla de inicio no comparte nada con esta página.
phone-save-first = Guarda antes tu archivo y recógelo allí.
phone-save-your-file = Guardar tu archivo
phone-pair-there = Ponla ahí primero. Luego ábrela ahí y emparéjala.
phone-send-only-here = { $paired ->
    [no] Empareja esta página y envía
   *[yes] Envía
} lo que está solo aquí:
phone-nothing-only-here = Aquí no espera nada: todo se envió.
phone-make-link = Crea un enlace de emparejamiento y cópialo:
phone-pair-with-link = Pon la aplicación en la pantalla de inicio, ábrela ahí y emparéjala con el enlace copiado.
phone-menu-iphone = Un teléfono: 1, el cuadrado con una flecha hacia arriba en la barra de abajo. 2, Añadir a pantalla de inicio en la lista que abre.
phone-menu-iphone-entry = Añadir a inicio
phone-menu-android = Un teléfono: 1, los tres puntos arriba a la derecha. 2, Añadir a pantalla de inicio, o Instalar aplicación, en la lista que abren.
phone-menu-android-entry = Añadir a inicio
phone-menu-android-or = o Instalar aplicación

## Lo que conserva un registro, con servidor y sin él.

phone-lost = Este teléfono perdió sus datos: el navegador los borró. Lo enviado está a salvo en el servidor; lo que no se envió se perdió.
phone-lost-alone = Este teléfono perdió sus datos: el navegador los borró. Solo el último archivo que guardaste los tiene aún.
phone-forked = La misma identidad de teléfono se usó dos veces, quizá tras restaurar una copia de seguridad. Este teléfono tiene ahora una nueva; lo que no había enviado se conserva y se enviará.
phone-forked-alone = La misma identidad se usó en dos teléfonos, quizá tras copiar uno al otro. Este teléfono tiene ahora una nueva; todo lo que registró se conserva.
phone-renewed = Este teléfono tiene una identidad nueva: la anterior había terminado, o se perdió su llave. Lo que no había enviado se conserva y se enviará.
phone-full-save = Lo que escribiste sigue aquí. Libera espacio en el teléfono, o envía lo que espera, y guarda otra vez.
phone-full-save-alone = Lo que escribiste sigue aquí. Libera espacio en el teléfono y guarda otra vez.
phone-full-take-in = No se cambió nada. Libera espacio en el teléfono, o envía lo que espera, y recoge el archivo otra vez.
phone-full-take-in-alone = No se cambió nada. Libera espacio en el teléfono y recoge el archivo otra vez.
phone-safe = Si se pierde el teléfono, solo está a salvo lo enviado.
phone-safe-alone = Si se pierde el teléfono, solo está a salvo lo que hay en un archivo guardado en otro sitio.
phone-safe-either-way = Lo enviado está a salvo de todos modos.
phone-safe-either-way-alone = Guarda tu archivo de todos modos.
phone-no-room = Envía lo que espera y borra otra cosa del teléfono. Las fotos que tiene el servidor pueden irse de este teléfono: se muestran desde allí.
phone-no-room-alone = Guarda antes el archivo y borra otra cosa del teléfono: los vídeos y otras aplicaciones ocupan más.
phone-checks-later = cuando vuelvan las comprobaciones, aquí o en el servidor
phone-checks-later-alone = cuando vuelvan las comprobaciones
phone-of-record = en un teléfono emparejado con { $host }
phone-of-record-alone = en el teléfono que lo guarda
