### Lo que `swaptrail` escribe en un terminal.

commands-usage = Uso:
commands-options = Opciones
commands-heading = Órdenes
commands-program = Lleva las cuentas de las pruebas de intercambio de sensores de aparcamiento.
commands-more = `swaptrail COMMAND --help` dice qué admite una orden.
commands-help = Muestra esto y termina.
commands-language = El idioma de lo que se escribe: el nombre de su carpeta, como es.
commands-data = La carpeta de datos ({ $folder }).
commands-port = Queda fijado en el primer arranque ({ $port }).
commands-ends = Ctrl-C lo termina.
commands-warning = Aviso: { $what }

## Qué falla en lo que se tecleó.

commands-misuse = { $wrong } (uso: { $usage }; --help dice más)
commands-no-such-option = No existe la opción '{ $name }'.
commands-no-such-command = No existe la orden '{ $name }'.
commands-missing = Falta { $name }.
commands-bad-value = { $name }: { $why }
commands-found = hay { $found }, se espera { $wanted }
commands-whole-number = un número entero de 18 cifras como máximo
commands-wants-value = { $name } necesita un valor detrás.
commands-no-value = { $name } no lleva valor.
commands-left-over = Sobra { $given }.
commands-stopped = Detenido antes de terminar.

## Qué hace cada orden, en una línea.

commands-demo = la demostración, lista para probar, en este equipo
commands-serve = sirve una carpeta de datos
commands-trust = la autoridad en la que confían los teléfonos: huella, fin, cómo quitarla de un teléfono
commands-site = la aplicación sola en ficheros estáticos: una persona, sin servidor
commands-reason = solo el razonamiento: entra JSON, sale JSON
commands-labels = etiquetas para imprimir, y qué fue de las impresas
commands-record = el registro de un sensor o de un trabajo en un fichero propio
commands-lessons = lo que enseñan los trabajos cerrados: tasas, minutos, cómo salieron
commands-verify = si lo guardado está como se anotó
commands-backup = toda la carpeta de datos en un fichero, mientras se sirve
commands-restore = una carpeta de datos nueva a partir de una copia de seguridad
commands-take-in = lo que anotó un teléfono, del fichero que creó
commands-rebuild = vuelve a crear lo que se deduce de las anotaciones, y compara
commands-rejoin = dice de una carpeta de datos que ha vuelto de otro sitio
commands-register = el registro de devoluciones que comparten los mostradores de una cadena
commands-make-room = pasa a un fichero lo que se apartó

## backup, restore, rebuild, rejoin, make-room, take-in, verify, site, reason

commands-backup-help =
    Pone toda la carpeta de datos en un fichero, también mientras se sirve.

    FILE.zip es un fichero que aún no existe.
commands-restore-help =
    Crea una carpeta de datos nueva a partir de una copia de seguridad; no sobrescribe nada.

    FILE.zip es la copia de seguridad.
commands-rebuild-help = Vuelve a crear todo lo que se deduce de las anotaciones, y dice qué era distinto.
commands-rejoin-help = Dice de una carpeta de datos que ha vuelto de otro sitio. Los teléfonos vuelven a enviar entonces lo que tienen, y lo piden todo.
commands-make-room-help = Pasa a un fichero las anotaciones sin prueba que alguien apartó, y con ellas las que se bifurcaron. Así queda sitio para otras. No contaban.
commands-make-room-out = Un fichero nuevo, con una anotación por línea. Las fotos no van en él.
commands-register-help = Crea el registro de devoluciones que comparten los mostradores de una cadena (init) o dice cómo está (check). URL es postgresql://USUARIO@HOST/BASE.
commands-take-in-help =
    Recoge lo que anotó un teléfono: lo que no pudo enviar, o todo. Hacerlo dos veces no daña nada.

    FILE es el fichero que creó el teléfono.
commands-verify-help =
    Dice si lo guardado está como se anotó, y dónde no.

    FILE es un registro, una copia de seguridad, el fichero de un teléfono o una carpeta de datos. Termina con 0 si está intacto, con 1 si fue alterado, con 2 si no es nada de eso.
commands-verify-data = La carpeta de datos que sabe de quién es cada sello.
commands-site-help = Escribe la aplicación sola en ficheros estáticos: una persona, sin servidor.
commands-site-out = Una carpeta nueva, o una con un sitio anterior.
commands-reason-help =
    Ejecuta solo el razonamiento: entra JSON, sale JSON.

    CASE.json dice qué posiciones, sensores y pruebas hay.

## record

commands-record-help =
    Escribe el registro de un sensor o de un trabajo en un fichero propio. Las fotos que no caben van en versión más pequeña.

    UNIT-OR-JOB es el código de una etiqueta, o el identificador de un sensor o de un trabajo.
commands-record-out = Un archivo zip que aún no existe.
commands-record-ending = --out { $file }: lo que se escribe es un archivo zip. Ponle el nombre { $better }.
commands-record-written = { $file }: el registro de { $title }, { $entries ->
    [one] { $entries } anotación
   *[other] { $entries } anotaciones
}, { $photos ->
    [one] { $photos } foto
   *[other] { $photos } fotos
}.
commands-record-smaller = En él, por falta de sitio, en versión más pequeña: { $photos ->
    [one] { $photos } foto. El original queda aquí.
   *[other] { $photos } fotos. Los originales quedan aquí.
}
commands-record-absent = Se nombran en él, pero no están aquí o son demasiado grandes: { $photos ->
    [one] { $photos } foto
   *[other] { $photos } fotos
}.
commands-record-signed = Firmado con la clave { $key }; léesela en voz alta a quien reciba el fichero.

## demo

commands-demo-help = Muestra la demostración, lista para probar, en este equipo.
commands-demo-data = Guarda aquí los datos de la demostración; sin esto desaparecen cuando termina.
commands-demo-building = Preparando los datos de la demostración. Tarda hasta un minuto.
commands-demo-ready = La demostración está lista. Abre este enlace en un navegador de este equipo:
commands-demo-counter = Y este en otro navegador, o en una ventana privada, para el mostrador de recambios:
commands-demo-kept = Se usan los datos de la última vez, tal como quedaron.
commands-demo-other-data = { $folder } contiene datos que no son de la demostración. Indica otra carpeta con --data, o sirve esta con `swaptrail serve`.

## trust

commands-trust-help = Informa de la autoridad en la que confían los teléfonos: su huella, su fin, cómo quitarla de un teléfono.
commands-trust-none = { $folder } no tiene autoridad de certificación: nunca se sirvió con --lan. Los teléfonos que la abren confían en el certificado que se le dio por otra vía.
commands-trust-by = Confían en { $address } los teléfonos que tienen esta autoridad de certificación:
commands-trust-name = Nombre
commands-trust-until = Válida hasta
commands-trust-for = Válida para
commands-trust-fingerprint = Huella
commands-trust-off = Para quitarla de un teléfono:
commands-trust-no-leaf = El servidor no tiene ahora certificado propio; lo crea al arrancar.
commands-trust-leaf = El certificado del servidor es válido hasta el { $until }; se renueva a tiempo mientras sirve.

## serve

commands-serve-help = Sirve una carpeta de datos hasta Ctrl-C: solo en este equipo, si no se pide otra vía.
commands-serve-in-lan = En la red local
commands-serve-own-name = Con un nombre propio
commands-serve-host = Nombre en la dirección; queda fijado en el primer arranque ({ $host }).
commands-serve-pair = Escribe un enlace de emparejamiento aunque ya haya un teléfono emparejado, para un teléfono del taller o, con ROLE counter, del mostrador de recambios.
commands-serve-warranty-days = Cuántos días responde el taller por su trabajo, en todos sus teléfonos (se guarda; con 0 cada uno tiene los suyos).
commands-serve-return-days = Cuántos días después de desmontarlo se admite la devolución de un sensor (se guarda; { $days }).
commands-serve-register = Consulta a los demás mostradores de una cadena por este registro (postgresql://USUARIO@HOST/BASE).
commands-serve-printer = Imprime un resguardo tras cada decisión en el mostrador, en ZPL o ESC/POS: zpl:LUGAR o escpos:LUGAR, donde LUGAR es un fichero, un dispositivo o tcp://HOST:PORT.
commands-serve-lan = Para los teléfonos de la misma red, con HTTPS propio.
commands-serve-name = NAME.local, un nombre DNS propio o una dirección privada; queda fijado en el primer arranque (un nombre nuevo).
commands-serve-trust-port = El de la página para los teléfonos (uno más que --port).
commands-serve-interface = La red, por nombre o dirección (la que lleva al router).
commands-serve-cert = Por HTTPS con este certificado para --host, PEM, con su cadena.
commands-serve-key = Su clave, PEM; ambos se vuelven a leer cuando cambian.
commands-serve-behind-proxy = Para un proxy inverso que tiene el certificado para --host y envía X-Forwarded-For, -Proto, -Host.
commands-serve-bind = Escucha solo en esta dirección (--cert: todas las de este equipo; --behind-proxy: 127.0.0.1).
commands-serve-half = Se ha dado { $given } sin { $missing }. Da los dos ficheros, o ninguno.
commands-serve-two-ways = { $first } y { $second } se excluyen: cada una es una vía de entrada para los teléfonos, y una carpeta de datos tiene una sola dirección. Da una de las dos.
commands-serve-lan-only = { $given } va con --lan. Añade --lan, o quítalo.
commands-serve-host-in-lan = --host { $host } no va con --lan. Da el nombre con --name.
commands-serve-bind-alone = --bind { $address } va con --cert y --key, o con --behind-proxy. Quítalo.

## labels

commands-labels-help =
    Imprime etiquetas nuevas, muestra qué fue de las impresas, o anula algunas.

    Una sola de --count, --list, --again y --void dice cuál de las tres cosas.
commands-labels-layout = Formato
commands-labels-count = Imprime este número de etiquetas nuevas.
commands-labels-list = Muestra los lotes y qué fue de ellos.
commands-labels-again = Vuelve a escribir las etiquetas de un lote que no están en ningún sensor.
commands-labels-void = Anula una etiqueta, o lo que queda de un lote.
commands-labels-out = Un fichero nuevo que acaba en .svg o .pdf.
commands-labels-reason = Por qué se anula.
commands-labels-force = Imprimir aunque nada pueda leerlas.
commands-labels-distance = Se lee desde esta distancia ({ $cm }).
commands-labels-paper = Una hoja (a4).
commands-labels-grid = Columnas y filas (las que quepan).
commands-labels-label = Tamaño de una etiqueta en la hoja, mm (26x32).
commands-labels-margin = Desde el borde izquierdo y el superior del papel, mm.
commands-labels-gap = Entre columnas y entre filas, mm (0x0).
commands-labels-precut = La hoja ya está cortada: sin marcas ni nota.
commands-labels-roll = Un rollo con una etiqueta por página, mm.
commands-labels-dpi = Puntos de la impresora (rollo 203, hoja 300).
commands-labels-no-way = Falta una de estas: { $ways }.
commands-not-together = { $second } no va con { $first }.
commands-labels-count-range = --count { $given } está fuera de rango. Toma de 1 a { $most }.
commands-labels-written-before =
    Estas ya se escribieron antes: destruye lo que se imprimió de ellas, para que ninguna esté en dos sensores.
    Un teléfono que aún no ha enviado puede haber usado algunas.
commands-labels-made =
    Lote { $batch }: { $count ->
        [one] { $count } etiqueta
       *[other] { $count } etiquetas
    } para { $address },
    una dirección que queda ligada a los datos de { $folder }.
commands-labels-title = Etiquetas, lote { $batch }
commands-labels-none = Aquí aún no se han impreso etiquetas.
commands-labels-head-batch = lote
commands-labels-head-made = creado (UTC)
commands-labels-head-labels = etiquetas
commands-labels-head-free = en papel
commands-labels-head-on = en un sensor
commands-labels-head-void = anuladas
commands-labels-head-layout = formato
commands-labels-unfinished = { "       " }su fichero quedó sin terminar: --again { $batch } lo escribe
commands-labels-void-wrong = --void { $code }: { $why }
commands-labels-void-foreign = --void { $code }: esta etiqueta no se imprimió aquí.
commands-labels-gone = { $count ->
    [one] { $count } etiqueta del lote { $batch } queda anulada.
   *[other] { $count } etiquetas del lote { $batch } quedan anuladas.
}
commands-labels-out-missing = Falta --out. Indica el fichero que se escribe; acaba en .svg o .pdf.
commands-labels-out-ending = --out { $file } no acaba en .svg ni en .pdf. Dale una de las dos.
commands-labels-out-folder = --out { $file }: la carpeta { $folder } no existe. Créala primero.

## lessons

commands-lessons-help = Muestra lo que enseñan los trabajos cerrados de una carpeta de datos: tasas, minutos y cómo salió el trabajo.
commands-lessons-json = Como JSON: probabilidades en partes por millón, minutos en centésimas.
commands-lessons-csv = Como CSV, con las mismas cifras.
commands-lessons-since = Trabajos cerrados desde este día, como 2026-03-01.
commands-lessons-give = Escribe las cifras propias, selladas, para otro taller: ni vehículo, ni nombre, ni código, ni día.
commands-lessons-weigh-in = Deja contar las cifras de otro taller, una vez confirmado su sello.
commands-lessons-weight = Lo que pesa un trabajo suyo junto a uno tuyo, de 0,01 a 1 (1).
commands-lessons-whose = De quién es el sello, dicho tras comparar su huella con su dueño.
commands-lessons-compared = Cómo se comparó la huella.
commands-lessons-yards = Enumera los talleres cuyas cifras cuentan, cada uno con su peso.
commands-lessons-take-out = Deja de contar las cifras de un taller, por nombre o sello.
commands-lessons-date = un día como 2026-03-01
# $option: --weight
# $other: --weigh-in
commands-lessons-goes-with = { $option } va con { $other }.
# $what: file
commands-lessons-wanted = { $what ->
    [file] el nombre de un fichero
    [name] el nombre del taller
   *[yard] el nombre o el sello de un taller; --yards los enumera
}
# $words: Autodiagnóstico
# $figure: 1,4 min
commands-lessons-row = { "" }  { $words }: { $figure }
