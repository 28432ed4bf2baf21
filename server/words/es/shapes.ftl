### Lo que va en los dibujos: marcas, el tablero, el recorrido, un código de etiqueta.

shapes-clean = bien
shapes-fault = fallo
shapes-untested = sin probar
shapes-aside = apartado
shapes-empty = vacío
shapes-no-label = sin etiqueta

## El tablero.

shapes-seen-rear = vista desde atrás
shapes-seen-front = vista desde delante
shapes-seen-around = visto desde arriba
shapes-edge-front = Delante
shapes-edge-left = Lado izquierdo
shapes-edge-right = Lado derecho
shapes-edge-rear = Detrás
# $count (count): 12
shapes-positions = { $count ->
    [one] { $count } posición
   *[other] { $count } posiciones
}
shapes-photo-taken = con foto
shapes-front = delante
shapes-rear = detrás
shapes-left = izquierda
shapes-right = derecha

## El recorrido.

shapes-test = n.º { $number }
shapes-position = posición
shapes-test-aside = { $test }, apartada
shapes-in-hand = en la mano
shapes-trail = recorrido de las pruebas
shapes-trail-earlier = { $count ->
    [one] 1 prueba anterior
   *[other] { $count } pruebas anteriores
}
shapes-trail-later = { $count ->
    [one] 1 prueba posterior
   *[other] { $count } pruebas posteriores
}
shapes-trail-folded = { $count ->
    [one] 1 posición más: sin fallo, nada se movió
   *[other] { $count } posiciones más: sin fallo, nada se movió
}
