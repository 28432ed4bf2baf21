### What is refused, and why.

refusals-bad-input = { $field }: hay { $found }, se espera { $wanted }
refusals-typed = «{ $field }»: { $found } no sirve. Se espera { $wanted }.

## What was found, where it is no text.

refusals-found-nothing = nada
refusals-found-decimals = un número con decimales
refusals-found-list = una lista de { $count }
refusals-found-object = un objeto con { $count } claves
refusals-found-else = otra cosa
refusals-found-half-pair = la mitad de un par de caracteres

## Lo que estaría bien en su lugar.

refusals-object = un objeto
refusals-field-there = el campo, que falta
refusals-no-such-field = ningún campo con este nombre
refusals-list = una lista
refusals-list-at-most = una lista de { $most } como máximo
refusals-positions = una lista de 1 a { $most } posiciones
refusals-minutes = minutos enteros de 0 a { $most }
refusals-layout-file = un archivo que contenga una disposición de Swaptrail
refusals-layout-version = la versión 1: este archivo lo hizo una aplicación más nueva
refusals-layout-size = como mucho { $most } caracteres
refusals-place-on-plan = un número entero de 0 a 1000
refusals-id-taken = un id que no tenga otra posición
refusals-name-taken = un nombre que no tenga otra posición
refusals-flag = true o false
refusals-one-of = uno de estos: { $choices }
refusals-text = un texto de { $least } a { $most } caracteres
refusals-text-at-most = un texto de { $most } caracteres como máximo
refusals-reason = un motivo en pocas palabras
refusals-hex = { $count } cifras hexadecimales
refusals-name-once = cada nombre una sola vez
refusals-whole-from = un número entero desde { $least }
refusals-whole-most = un número entero de { $most } como máximo
refusals-rate = de 0 a 1000000 partes por millón
refusals-between = un número entero de { $least } a { $most }
refusals-confidence = 0 (como estaba) o de 500000 a 999999 partes por millón
refusals-cause = circuit:POSITION, feed:GROUP o "control"
refusals-position = una posición del trabajo
refusals-on-job = una posición o una alimentación del trabajo
refusals-vehicle = un vehículo que esté registrado
refusals-unit = un sensor que esté registrado
refusals-unit-or-code = el identificador de un sensor o el código de su etiqueta
refusals-job = un trabajo que esté registrado
refusals-batch = el número de un lote que se imprimió aquí

## Lo mismo, de lo que entregan los programas.

refusals-json = JSON
refusals-kind-known = un tipo de anotación que diga qué pasó
refusals-entry = una anotación que se pueda corregir
refusals-operation = el nombre de una operación
refusals-arguments = los de la operación
refusals-random = más bytes al azar
refusals-device = "d" y 16 cifras hexadecimales
refusals-first-prev = "" para la primera anotación de un teléfono
refusals-prev = 64 cifras hexadecimales, la huella de la anotación anterior
refusals-whole-characters = caracteres Unicode enteros
refusals-integer = un número entero dentro de ±(2^53 − 1)
refusals-id = letras de la a a la z, cifras, "-", "_" y "."
refusals-time = una hora anterior al año 9999
refusals-keys-text = claves que sean texto
refusals-keys-ascii = claves de caracteres ASCII
refusals-json-value = texto, un número entero, true, false, null, una lista o un objeto
refusals-compact = escalares, formas y un objeto como valor

## Por qué una anotación no se entiende o no se registra.

refusals-newer = La registró una versión más nueva de la aplicación.
refusals-no-job = No nombra ningún trabajo.
refusals-job-unknown = No se conoce su trabajo.
refusals-not-on-record = Este sensor no está registrado.
refusals-no-position = El trabajo no tiene la posición { $position }.
refusals-no-cause = El trabajo no tiene nada que { $cause } pueda significar.
refusals-seen-without-job = No nombra ningún trabajo, en cuyo vehículo estaría montado el sensor.
refusals-seen-without-position = No nombra ninguna posición.
refusals-at-the-bench = «{ $what }» se registra en el taller; este teléfono está en el mostrador de recambios.
refusals-at-the-counter = «{ $what }» se registra en el mostrador de recambios; este teléfono está en el taller.
refusals-corrects-unknown = Corrige una anotación que aquí no está registrada.
refusals-of-another-phone = «{ $what }» se registró en otro teléfono; en el mostrador un teléfono corrige lo que registró él mismo y las decisiones.
refusals-place-of-the-bench = Un teléfono del mostrador dice que un sensor está en el mostrador, en almacén, con el cliente o desechado, y en ningún otro sitio.
refusals-signed-by-another = Una decisión la firma quien la registra: { $actor }, no { $signed }.
# $kind: unit_pulled
refusals-kind = { $kind ->
    [job_opened] Empieza un trabajo en un vehículo
    [left_deliberately] Un sensor bueno se queda donde lo puso el intercambio
    [corrected] Una anotación anterior fue un error
    [put_right] Una anotación anterior tenía que decir otra cosa
    [job_closed] El trabajo está terminado
    [job_paused] El trabajo está en pausa
    [job_handed_over] Otra persona sigue desde aquí
    [job_resumed] El trabajo sigue
    [caution_acknowledged] Se leyó una advertencia
    [lamp_checked] Lo que mostraron los testigos con contacto dado o en marcha atrás
    [looked] Lo que se veía por fuera
    [photo_taken] Una foto, con su huella como nombre
    [photos_skipped] Se siguió sin fotos de algunas posiciones
    [walk_checked] La comprobación en uso con un palo
    [test_run] La unidad de control hizo su autodiagnóstico
    [listened] Lo que se oyó de las unidades sin desmontar nada
    [sounder_checked] Se revisó algo porque no se oyó el zumbador
    [cleaned] Se limpió una posición
    [connector_locked] Un conector está a fondo y su cierre cerrado
    [fit_checked] Se repasó el montaje de un sensor
    [circuit_measured] Una medida en un cableado
    [wire_noted] Qué cable hay en una posición, y a qué temperatura
    [wires_marked] Cómo son los cables de una posición
    [circuit_repaired] Se reparó un conector, un cable, una alimentación o la unidad de control
    [reading_not_retaken] Una lectura mala no se repitió tras una reparación
    [unit_added] Un sensor que antes no estaba en ningún vehículo
    [unit_labelled] Se puso una etiqueta a un sensor
    [label_voided] Una etiqueta está rota o perdida
    [part_noted] Se leyó en un sensor su número de pieza o de serie
    [unit_pulled] Un sensor salió de su posición
    [unit_fitted] Se montó un sensor en una posición
    [unit_moved] Un sensor pasó a otro lugar
    [unit_seen] Una lectura nueva dice dónde está un sensor y resuelve la duda
    [tests_told_apart] Dos pruebas anotadas por separado son pruebas distintas
    [work_went_on] Un trabajo que un teléfono cerró sigue adelante
    [units_mixed] Se mezclaron sensores; no se sabe cuál es cuál
    [mixup_stopped] Se detuvo un sensor equivocado
    [move_started] Se empezó el siguiente paso
    [move_dropped] Se abandonó un paso
    [comes_and_goes_set] Si el fallo va y viene
    [rates_set] Supuestos de este trabajo, en partes por millón
    [rates_learned] Tasas que enseñaron los propios trabajos del taller
    [minutes_learned] Minutos que enseñaron los propios trabajos del taller
    [comeback_set] Hasta dónde cuentan los trabajos anteriores del vehículo
    [code_weight_set] Si el tipo de fallo del código de una posición cuenta para la causa
    [reach_set] Cuántos minutos pasan hasta tener la mano en el sensor de una posición
    [money_set] Mano de obra y precios, en céntimos de la moneda del usuario; 0 es sin dato
    [labels_printed] Un teléfono sin servidor imprimió etiquetas
    [labels_spoiled] Unas etiquetas impresas que nada lleva quedaron anuladas
    [return_received] Un encargado del mostrador de recambios tiene el sensor en la mano
    [record_received] Se comprobó un registro de otro sitio para un sensor devuelto
    [return_decided] Un encargado aceptó, retuvo o rechazó un sensor devuelto, y firmó
   *[other] Una anotación del tipo { $kind }
}

## Lo que no encaja entre las anotaciones de un teléfono.

refusals-chain-gap = faltan las anotaciones { $first } a { $last }
refusals-chain-twice = la anotación { $seq } viene por segunda vez
refusals-chain-broken = la anotación { $seq } no continúa la anterior
