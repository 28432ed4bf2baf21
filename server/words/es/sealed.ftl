### Records as files: taking one along, and checking one from elsewhere.

## Checking a record from elsewhere

sealed-check-shown = Registro de otro sitio
sealed-check-title = Comprobar un registro
sealed-check-label = El archivo del registro
sealed-check-away = Quitarlo de la vista
sealed-check-checking = Comprobando el archivo
sealed-check-another = Otro archivo
sealed-check-choose = Elegir el archivo
sealed-check-heading = ¿Está este registro como se hizo?
sealed-check-lead = Quien registró un sensor puede entregar su registro como archivo. { $checker ->
    [server] El servidor
   *[phone] Este teléfono
} comprueba cada byte y qué sello lleva. Aquí no se guarda nada de él, salvo que un mostrador lo tome como prueba.
sealed-check-own = Tus propios registros llevan esta huella
sealed-check-read-out = Léesela a quien reciba uno.
sealed-check-altered = No se muestra, porque no se puede confiar en nada de él. Pide otro nuevo a quien lo hizo.
sealed-check-cut = Le falta el final: no se envió o no se guardó entero. Pide otra vez el archivo; no se muestra, porque no se puede comprobar.
sealed-view-unchanged = Sin cambios desde que se selló
sealed-view-sealed = Sellado { $maker ->
    [phone] por un teléfono el
   *[installation] el
} { $at }, con la huella
sealed-view-phone = Lo hizo un teléfono, no una instalación. El archivo no puede decir de quién es el teléfono. El sello muestra todo cambio desde entonces, y ninguno de antes.
sealed-view-from-file = Del archivo
sealed-view-from-phone = De un teléfono que funciona solo
sealed-view-from-installation = De otra instalación
sealed-view-own-server = Este mismo servidor lo selló.
sealed-view-own-phone = Este mismo teléfono lo selló.
sealed-view-known = Este sello se vio aquí por primera vez el { $since }. Eso no prueba de quién es.
sealed-whose-unknown = Nadie ha confirmado de quién es este sello
sealed-whose-unknown-do = Cualquiera puede sellar un registro. Antes de fiarte, pide a su dueño que te lea la huella.
sealed-whose-confirm = Confirmar la huella
sealed-whose-name = De quién es el sello
sealed-whose-ask = ¿Cómo la has comparado?
sealed-whose-way = { $how ->
    [called] Me la leyó por teléfono
    [written] La escribió en algo que sé que es suyo
   *[met] Estaba aquí
}
sealed-whose-same = La huella es la misma
sealed-whose-wanted = Di de quién es el sello y cómo has comparado la huella.
sealed-whose-confirmed = El sello de { $name }
sealed-whose-how = { $by } comparó la huella el { $at }, { $how ->
    [called] por teléfono
    [written] con lo que escribió su dueño
   *[met] con su dueño presente
}.
sealed-view-otherwise = No sale lo que se selló
sealed-view-missing = { $count ->
    [one] { $count } imagen se nombra en él y no está
   *[other] { $count } imágenes se nombran en él y no están
} en el archivo.
sealed-view-smaller = { $count ->
    [one] { $count } imagen es una versión más pequeña. Que muestra
   *[other] { $count } imágenes son versiones más pequeñas. Que muestran
} lo mismo que el original, solo lo dice el sello.
sealed-view-smaller-one = Versión más pequeña; el original está en el { $maker ->
    [phone] teléfono
   *[installation] servidor
} que lo selló.
sealed-view-no-photo = En su lugar hay algo que no es una foto nuestra. No se muestra.
sealed-view-no-label = sin etiqueta
sealed-view-job = El trabajo de { $vehicle }
sealed-view-closed = cerrado
sealed-view-open = todavía abierto
sealed-view-no-test = No se hizo ninguna prueba.
sealed-view-pictures = Imágenes
sealed-view-entries = Todas sus anotaciones
sealed-view-no-name = sin nombre
sealed-view-undone = Retirada: { $reason }

## A record as evidence at the counter

sealed-evidence-heading = Como prueba aquí
sealed-evidence-unconfirmed = Confirma antes la huella.
sealed-evidence-none = Aquí no espera ningún sensor con esta etiqueta de otro taller. Escanéalo y recíbelo.
sealed-evidence-use = Guardar el registro para el de { $host }

## Taking a record along

sealed-phone-heading = El sello de este teléfono
sealed-phone-kicker = Los registros hechos aquí llevan esta huella
sealed-phone-kept = Léesela a quien reciba uno. Es de este teléfono desde el { $since } y no está en ningún archivo: otro teléfono, o un navegador que perdió sus datos, tiene otra. Los registros hechos antes siguen valiendo.
sealed-phone-not-kept = Este navegador no guarda claves, así que la huella es otra cada vez que se abre la aplicación. Léela mientras entregas el archivo. Nada de lo que registraste depende de ella.
sealed-server-busy = El servidor lo sella
sealed-server-sealed = Sellado por el servidor
sealed-server-lead = Para un mostrador de recambios que no usa este servidor. Contiene trabajos enteros: las anotaciones, las pruebas y las imágenes. De ningún otro trabajo se puede leer nada en él.
sealed-server-seal = El servidor lo sella, para que todo cambio posterior se note. Se abre con cualquier programa que descomprima archivos zip.
sealed-server-unreachable = Solo el servidor puede sellar un registro, y ahora no responde. Inténtalo de nuevo cuando responda.
sealed-phone-busy = Haciéndolo
sealed-phone-sealed = Sellado por este teléfono
sealed-phone-lead = Para un mostrador de recambios. Contiene trabajos enteros: las anotaciones, las pruebas y las imágenes. De ningún otro trabajo se puede leer nada en él.
sealed-phone-seal = Este teléfono lo sella con una clave propia, para que todo cambio posterior se note. Quien tenga esta aplicación puede comprobarlo; también se abre con cualquier programa que descomprima archivos zip.
sealed-take-title = Registro · { $subject }
sealed-take-ready = El registro está listo
sealed-take-heading = El registro en un archivo
sealed-take-none = No se hizo ningún registro
sealed-take-sensor = sensor { $code }
sealed-take-sensor-unlabelled = un sensor sin etiqueta
sealed-take-unsent = No todo ha llegado al servidor
sealed-take-unsent-what = { $content } de este teléfono no { $count ->
    [one] está
   *[other] están
} en el registro.
sealed-take-make = Hacer el archivo
sealed-take-roomless = { $count ->
    [one] { $count } imagen no cabe en él
   *[other] { $count } imágenes no caben en él
}
sealed-take-roomless-what = El archivo está lleno. Más pequeñas cabrían, o más de ellas.
sealed-take-smaller-make = Con imágenes más pequeñas
sealed-take-smaller = { $count ->
    [one] { $count } imagen está en él en versión más pequeña. El original queda
   *[other] { $count } imágenes están en él en versión más pequeña. Los originales quedan
} en { $maker ->
    [server] el servidor
   *[phone] este teléfono
}.
sealed-take-save = Guardarlo
sealed-take-share = Compartirlo
