### Lo que se rechaza de un caso para `swaptrail reason`, y de su archivo: lo que estaría bien.

case-key-there = esta clave, que falta
case-keys = una de las claves { $keys }
case-text = un texto que no esté vacío
case-text-or-none = un texto
case-id = un id sin #
case-chance = un número de 0 a 1
case-confidence = un número mayor que 0 y menor que 1
case-shows = un número mayor que 0, hasta 1
case-false-alarm = un número desde 0, menor que 1
case-minutes = un número de minutos de 0 a { $most }
case-money = un número entero de céntimos o similar de 0 a { $most }
case-doubt = un número de { $least } a { $most }
case-factor = un número de { $least } a { $most }
case-whole-from-1 = un número entero desde 1
case-generation = un número entero de 1 a { $most }
case-some-position = al menos una posición
case-unit-id-taken = un id que no tenga otra pieza
case-unit-elsewhere = una pieza que no esté también en { $position }
case-position = el id de una de las posiciones
case-unit-once = cada pieza una sola vez
case-position-once = cada posición una sola vez
case-not-silent = una posición que no esté callada en esta prueba
case-fitted = una posición montada o desenchufada en esta prueba
case-listen-fitted = una posición montada y enchufada
case-repair = circuit: y una posición, feed: y un grupo, o control
case-repair-once = cada reparación una sola vez
case-cause = unit: y una pieza del caso, circuit: o blocked: y una posición, feed: y un grupo, o control
case-prior-cause = circuit: o blocked: y una posición, feed: y un grupo, o control; un sensor tiene su propio prior
case-cause-once = cada causa una sola vez

case-ruled-out = "lecturas que se excluyen entre sí"
case-possible = lecturas que puedan darse juntas con estas tasas

case-file = un archivo que se pueda leer
case-file-no-access = "sin acceso"
case-file-none = "ningún archivo con ese nombre"
case-file-at-most = un archivo de { $most } bytes como máximo
case-file-larger = "un archivo más grande"
case-bytes = "otros bytes en el byte { $at }"
case-utf-8 = texto en UTF-8
# $wrong: Expecting value
case-no-json = "algo que no es JSON en la línea { $line }, columna { $column }"
case-nested = "listas u objetos anidados a demasiada profundidad"
case-case = un caso
case-number-long = "un número demasiado largo"
case-number = un número de tamaño corriente
case-key-twice = "la clave dos veces en un objeto"
case-key-once = cada clave una sola vez
case-json-numbers = números que JSON tenga
