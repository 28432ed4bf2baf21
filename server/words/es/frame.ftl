### Lo que comparten todas las pantallas: botones, el camino atrás, horas y tamaños.

frame-back = Atrás
frame-stages = Etapas del trabajo
frame-one-moment = Un momento
frame-undo = Deshacer
frame-mark-of = Este teléfono:

## Botones que tienen muchas pantallas.

frame-the-jobs = Los trabajos
frame-show-jobs = Ver los trabajos
frame-try-again = Probar otra vez

## Pantallas para lo que no se puede mostrar.

frame-nowhere = No hay tal pantalla
frame-nowhere-heading = Esta dirección no lleva a ninguna parte
frame-nowhere-do = Vuelve a la lista de trabajos.
frame-missing = { $what ->
    [job] Este trabajo no está en este teléfono
    [unit] Este sensor no está en este teléfono
    [position] Este trabajo no tiene esa posición
   *[batch] Estas etiquetas no se imprimieron aquí
}
frame-missing-do = { $what ->
    [position] Abre el trabajo desde la lista y toca allí la posición.
   *[other] { $alone ->
        [yes] Búscalo en la lista de trabajos.
       *[no] Puede que otro teléfono aún no lo haya enviado. Búscalo en la lista, o mira de nuevo más tarde.
    }
}
frame-look-again = Mirar de nuevo
frame-not-found = No encontrado
frame-not-shown = Esto no se pudo mostrar
frame-part-broken = Esta parte no se puede mostrar. Lo registrado se conserva.
frame-part-open = Abrirlo
frame-nothing-lost = No se perdió nada de lo registrado.

## Filas que llevan a archivos, comprobaciones y ayuda.

frame-record-file = El registro como archivo
frame-record-file-note = sellado, para otro mostrador
frame-check-record = Comprobar un registro
frame-check-record-note = un archivo de otro taller
frame-help = Ayuda
frame-help-note = primeros pasos, precauciones

## Lo que una regla rechazó.

frame-refused = No registrado
frame-refused-leave = Dejarlo
frame-refused-understood = Entendido
frame-refused-reason = Motivo, queda en el registro
frame-refused-override = Registrarlo por este motivo

## Junto a lo que se muestra.

frame-step-count = { $now } de { $total }

## Horas y tamaños.

frame-short-month = { $month ->
    [1] ene
    [2] feb
    [3] mar
    [4] abr
    [5] may
    [6] jun
    [7] jul
    [8] ago
    [9] sep
    [10] oct
    [11] nov
   *[12] dic
}
frame-day-of-this-year = { $day } { $month }
frame-just-now = ahora mismo
frame-ago = hace { $span }
frame-seconds = { $count ->
    [one] { $count } segundo
   *[other] { $count } segundos
}
frame-minutes = { $count ->
    [one] { $count } minuto
   *[other] { $count } minutos
}
frame-hours = { $count ->
    [one] { $count } hora
   *[other] { $count } horas
}
frame-days = { $count ->
    [one] { $count } día
   *[other] { $count } días
}
frame-kilobytes = { $number } kB
frame-megabytes = { $number } MB
frame-gigabytes = { $number } GB
frame-help-missing = La ayuda no está aún en este teléfono. Ábrela otra vez con red.
frame-screen-missing = Esta pantalla no está aún en el teléfono. Necesita la red una vez.
