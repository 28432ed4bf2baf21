### The app without a server: its file, and what stands where only a server has something.

## The file of this phone

alone-file-last-shared = compartido
alone-file-last-downloaded = guardado en las descargas
alone-file-last-taken-in = este teléfono se preparó con él
alone-file-title = Tu archivo
alone-file-waits = { $content } todavía en ningún archivo
alone-file-all = Todo está en tu último archivo
alone-file-none = Nada que guardar todavía
alone-file-at-once = Lo que registras se guarda al momento en este teléfono.
alone-file-holds = Este teléfono tiene { $content }.
alone-file-holds-unsaved = Este teléfono tiene { $content }; lo más antiguo sin guardar es de { $ago }.
alone-file-last = Último archivo:
alone-file-last-how = { $how }, { $at }.
alone-file-failed = No se hizo ningún archivo
alone-file-making = Haciendo el archivo
alone-file-progress = Haciendo el archivo: { $done } de { $all } imágenes
alone-file-progress-label = Cuánto del archivo está hecho
alone-file-ready = El archivo está listo, sin guardar todavía
alone-file-content = { $content }, { $size }
alone-file-damaged = { $count ->
    [one] { $count } imagen está dañada en este teléfono y no está en el archivo.
   *[other] { $count } imágenes están dañadas en este teléfono y no están en el archivo.
} Todo lo demás sí.
alone-file-handed-on = Entregado
alone-file-download = La descarga ha empezado
alone-file-handed-on-lead = La otra aplicación tiene el archivo. Mira allí si llegó: esta no puede verlo.
alone-file-download-lead = Búscalo en las descargas de este teléfono y guarda una copia en otro sitio: un teléfono perdido se lleva sus descargas.
alone-file-not-there = No está ahí
alone-file-about = Para qué es el archivo
alone-file-about-lead = Contiene todo lo de este teléfono: trabajos, sensores, imágenes. Otro teléfono se prepara con él, y un servidor lo recibe. Guárdalo donde un teléfono perdido no se lo lleve. Quien lo tenga puede leerlo.
alone-file-take-in = Recibir un archivo de otro teléfono
alone-show-jobs = Ver los trabajos
alone-file-to-downloads = A las descargas
alone-file-save = Guardarlo
alone-file-share = Compartirlo
alone-file-make = Hacer el archivo

## What only a server has

alone-pairing-title = Un enlace para vincular
alone-pairing-heading = Aquí no hay nada que vincular
alone-pairing-what = Esta aplicación funciona sola, para una persona. Un enlace para vincular pertenece a un servidor: ábrelo en la dirección de ese servidor, tal como te la dieron.
alone-pairing-file = Lo que registraste aquí llega allí como archivo.
alone-phones-title = Teléfonos
alone-phones-heading = Aquí no se conocen otros teléfonos
alone-phones-what = Un segundo teléfono se prepara con tu archivo. Si trabajaste en los dos, cada uno recibe el archivo del otro.
alone-returns-title = Devoluciones
alone-returns-heading = Las devoluciones se deciden en otro sitio
alone-returns-what = Lleva el sensor al mostrador de recambios con su hoja de devolución y su registro. Los dos están en la página del sensor.
alone-returns-scan = Leer una etiqueta

## Taking in the file of another phone

alone-take-in-title = Un archivo de otro teléfono
alone-take-in-heading = Recibir un archivo
alone-take-in-adds = Se añade lo que está en el archivo y no en este teléfono. Lo que hay aquí se queda como está.
alone-take-in-sets-up = Elige el archivo que guardó el otro teléfono. Sus trabajos, sensores e imágenes estarán también en este.
alone-take-in-name = Su nombre empieza por swaptrail y una fecha. Si aún no está en este teléfono, compártelo desde el otro o cópialo aquí.
alone-take-in-label = El archivo del otro teléfono
alone-take-in-reading = Leyendo el archivo
alone-take-in-another = Elegir otro archivo
alone-take-in-choose = Elegir el archivo
alone-take-in-checking = Comprobando el archivo
alone-take-in-progress = Recibiendo: { $done } de { $all } imágenes
alone-take-in-progress-label = Cuánto se recibió
