### La cámara: etiquetas, símbolos, fotos.

scan-again = Leer otra vez
scan-mixed = Los mezclé
scan-type = Teclear el código
scan-check = Comprobar el código
scan-use-camera = Usar la cámara
scan-written = Está escrito
scan-another-way = De otro modo
scan-nothing-typed = Aún no hay nada tecleado
scan-nothing-typed-do = Mira la etiqueta y teclea sus cinco caracteres.
scan-unchecked = No se pudo comprobar la etiqueta
scan-hold = A unos 20 cm
scan-hold-marks = Etiquétalo, marcas a la vista
scan-pictured = { $wanted ->
    [no] Guardar una foto
   *[yes] Sin foto
}
scan-write = Escribir un código a mano
scan-close = Cerrar la cámara
scan-code = Código de la etiqueta
scan-code-note = Cinco caracteres. El guion puede faltar. De un código dañado, escribe dos que se lean.
scan-near = { $count ->
    [one] ¿Es esta?
   *[other] ¿Es una de estas?
}
scan-near-ask = Tócala solo si coincide todo lo que aún se lee.
scan-near-more = { $count ->
    [one] Hay { $count } más que también lo tiene: escribe otro carácter.
   *[other] Hay { $count } más que también lo tienen: escribe otro carácter.
}
scan-no-label = No hay etiqueta: escribir un código a mano
scan-write-lead = Escribe este código en un trozo de cinta con rotulador y pégalo ya.
scan-write-note = Ninguna otra pieza lo tiene. Compáralo una vez, carácter a carácter, antes de soltar la pieza.
scan-which = Hay { $count } etiquetas a la vista
scan-which-ask = ¿Cuál está en la pieza que tienes en la mano?

## El símbolo del fabricante.

scan-maker-again = Leer el símbolo otra vez
scan-maker = Leer el símbolo del fabricante
scan-maker-where = El símbolo del fabricante, en la pieza o en su bolsa
scan-maker-aim = Barras, o un cuadrado de puntos
scan-maker-close = Cerrar la cámara y teclear
scan-maker-unchecked = No se pudo comprobar el símbolo
scan-maker-none = Ninguno de estos
scan-nothing-opened = No se abrió nada ni se registró nada.

## Fotos.

scan-no-picture = Aún no hay imagen. Espera a verla, o usa un archivo.
scan-keep = Guardar esta foto
scan-take-again = Hacerla otra vez
scan-take = Hacer la foto
scan-go-back = Volver

## La cámara misma.

scan-hold-code = Ten el código a unos 20 cm
scan-from-picture = De una foto
scan-show-position = Muestra toda la posición
scan-use-picture = Usar una foto
scan-no-reading = Este teléfono no puede leer códigos. Teclea el código impreso al lado.
scan-reading = Leyendo la foto
scan-no-code = No hay código en esta foto. Hazla más de cerca, o teclea el código.
scan-not-opened = No se pudo abrir esta foto. Haz otra, o teclea el código.
scan-start = Encender la cámara otra vez
scan-light-off = Apagar la luz
scan-light-on = Encender la luz
scan-other-camera = Otra cámara
scan-closer = Más cerca
scan-camera-not-allowed = La cámara no está permitida
scan-camera-not-allowed-do = Permite la cámara para esta página en los ajustes del navegador y enciéndela otra vez.
scan-camera-none = No hay cámara
scan-camera-none-do = Este aparato no muestra ninguna cámara al navegador.
scan-camera-silent = La cámara no responde
scan-camera-silent-do = Quizá la usa otra aplicación. Cierra esa aplicación y enciéndela otra vez.
scan-camera-unfit = Esta cámara no sirve
scan-camera-unfit-do = Elige otra cámara y enciéndela otra vez.
scan-camera-insecure = El navegador no deja usar la cámara
scan-camera-insecure-do = Las cámaras solo funcionan en una dirección segura. Abre la aplicación por su dirección https.
scan-camera-stopped = La cámara se paró al encenderse
scan-camera-stopped-do = Enciéndela otra vez.
scan-camera-not-in-front = La página no estaba delante
scan-camera-not-in-front-do = Enciende la cámara otra vez.
scan-camera-not-offered = Este navegador no ofrece cámara
scan-camera-not-offered-do = Abre la aplicación por su dirección https en un navegador al día.
scan-camera-unknown = La cámara no se encendió
scan-camera-unknown-do = Enciéndela otra vez.
