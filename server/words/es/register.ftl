### El registro de devoluciones que comparten los mostradores de una cadena: lo dice el servidor.

register-no-driver = Un registro necesita el paquete psycopg. Instala swaptrail con él: pip install 'swaptrail[register]'
register-no-address = Esa no es la dirección de un registro. Tiene la forma postgresql://USUARIO@HOST/BASE.
register-trouble = El registro { $register } no hace lo que se le pide: { $error }
register-no-tables = { $register } no tiene las tablas de un registro. Créalas: swaptrail register init URL
register-other-form = Las tablas de { $register } son de otra versión de swaptrail.
register-stands = { $register }: { $returns ->
    [one] una devolución
   *[other] { $returns } devoluciones
} de { $counters ->
    [one] un mostrador
   *[other] { $counters } mostradores
}.
register-contradictions = { $count ->
    [0] Ninguna decisión contradice a otra.
    [one] Un par de decisiones se contradice.
   *[other] { $count } pares de decisiones se contradicen.
}
register-look-up = Una consulta tardó { $milliseconds } ms.
register-contradiction-title = { $decision ->
    [accept] { $code } también se aceptó en { $place }
   *[refuse] { $code } se rechazó en { $place }
}
register-contradiction = { $decision ->
    [accept] Dos mostradores lo aceptaron. Llama a { $place } y retira una de las decisiones.
   *[refuse] Otro mostrador rechazó lo que aquí se aceptó. Llama a { $place } y retira una de las decisiones.
}
