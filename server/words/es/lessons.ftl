### Lo que enseñan los propios trabajos del taller: lo dice el servidor, a los teléfonos y en la terminal.

lessons-title = Lo que enseñan tus trabajos
lessons-span-all = Todo
lessons-span-year = Un año
lessons-span-quarter = Un trimestre
# $closed (count): 48
# $counted (count): 45
# $proven (count): 40
lessons-summary = { $closed ->
    [one] Un trabajo cerrado
   *[other] { $closed } trabajos cerrados
}; cuentan { $counted }, { $proven } con causa probada.
# $count (count): 3
lessons-waiting = { $count ->
    [one] Un trabajo no está contado aún.
   *[other] { $count } trabajos no están contados aún.
} Mira otra vez dentro de un momento.
lessons-none = En este tiempo no se cerró ningún trabajo.

## De tantos; un porcentaje solo donde hay bastantes.

# $right (count): 18
# $count (count): 19
lessons-of = { $right } de { $count }
# $share: 94,7 %
# $right (count): 18
# $count (count): 19
lessons-share-of = { $share } ({ $right } de { $count })
# $count (count): 4
lessons-jobs = { $count ->
    [one] { $count } trabajo
   *[other] { $count } trabajos
}

lessons-reliability = ¿Acertaron los veredictos?
lessons-reliability-note = Lo más probable antes de la reparación, junto a lo que se probó después.
# $start: 80 %
# $end: 95 %
lessons-claimed = Afirmado del { $start } al { $end }
# $start: 99 %
lessons-claimed-over = Afirmado desde el { $start }
# $end: 80 %
lessons-claimed-under = Afirmado hasta el { $end }
# $low (count): 17
# $high (count): 19
lessons-chance-allows = { $low ->
    [0] El azar permite { $high } como mucho.
   *[other] El azar permite de { $low } a { $high }.
}
# $expected: 17,6
lessons-expected = Eran de esperar { $expected }.

lessons-comebacks = Fallos que vuelven
# $days (count): 90
lessons-comebacks-note = La misma posición del mismo vehículo muestra otra vez un fallo en { $days } días.
lessons-came-back = Volvieron

lessons-causes = Qué fallaba
lessons-causes-note = Por clase y por posición: lo probado y, donde nada se probó, lo más probable.
# $what: unit
lessons-class = { $what ->
    [unit] Sensor
    [circuit] Cableado de una posición
    [blocked] Suciedad, hielo, pintura u orientación
    [feed] Alimentación o masa de un parachoques
   *[control] Unidad de control
}
# $count (count): 4
lessons-causes-count = { $count ->
    [0] ninguna causa
    [one] { $count } causa
   *[other] { $count } causas
}

lessons-rates = Tasas según tus propios trabajos
# $jobs (count): 20
lessons-rates-note = Se aprende cómo se reparten las causas; no se aprende cada cuánto falla algo. El valor normal pesa como { $jobs } trabajos. La barra es donde está la tasa según tus trabajos solos, nueve veces de diez.
# $default: 5 %
lessons-default = Valor normal { $default }
# $low: 4,1 %
# $high: 6,2 %
lessons-between = Del { $low } al { $high } según tus trabajos solos.
# $count: 43,5
lessons-found = { $count } halladas
# $count (count): 43
# $readings (count): 45
lessons-readings = { $count } de { $readings } lecturas

lessons-minutes = Minutos de trabajo
lessons-minutes-note = De una anotación de un teléfono a la siguiente. El valor del medio, y en la barra la mitad central; las pausas quedan fuera.
# $what: pull
lessons-action = { $what ->
    [reach] Llegar a un sensor y sacarlo
    [pull] Sacarlo otra vez
    [plug] Enchufarlo, colgando
    [fit] Montarlo
    [test] Autodiagnóstico
    [clean] Limpiar una posición
    [meter] Una comprobación del cableado
    [listen] Escuchar
   *[repair] Reparar
}
# $minutes: 4,3
lessons-minutes-of = { $minutes } min
# $plan: 3,5
# $count (count): 120
lessons-minutes-plan = Plan: { $plan } min · { $count ->
    [one] una vez
   *[other] { $count } veces
}
# $count (count): 2
lessons-cut = { $count ->
    [one] Una pausa fuera.
   *[other] { $count } pausas fuera.
}
lessons-work = Un trabajo
# $plan: 15,4
# $count (count): 40
lessons-work-plan = Plan: { $plan } min para lo mismo · { $count ->
    [one] un trabajo
   *[other] { $count } trabajos
}
lessons-reach = Llegar y sacar, por posición
lessons-models = Llegar y sacar, por modelo

lessons-parts = Piezas
lessons-bought = Compradas
lessons-saved = Ahorradas por una prueba
lessons-saved-note = Posiciones que mostraban un fallo y no llevan sensor nuevo.
# $count (count): 12
lessons-pieces = { $count ->
    [one] { $count } sensor
   *[other] { $count } sensores
}

lessons-returns = Devoluciones
# $decision: accept
lessons-decision = { $decision ->
    [accept] Aceptadas
    [hold] Retenidas
   *[refuse] Rechazadas
}
# $decision: Retenidas
# $reason: custodia
lessons-decision-for = { $decision }: { $reason }

lessons-left-out = Fuera de la cuenta
lessons-left-out-note = Trabajos cerrados que no cuentan para las tasas, y tiempos que no cuentan.
# $why: untested
lessons-why = { $why ->
    [untested] Ningún autodiagnóstico que cuente
    [mixed_up] Sensores confundidos
    [another_sort] Otra clase de pieza
    [impossible] Lecturas que contradicen las tasas puestas en el trabajo
   *[wrong_clock] Un reloj que iba mal
}
lessons-times-left-out = Tiempos que van hacia atrás, o retirados
# $count (count): 4
lessons-times = { $count ->
    [one] { $count } tiempo
   *[other] { $count } tiempos
}
# $said: Valor normal 5 %
lessons-sentence = { $said }.
lessons-csv = Guardar como CSV
lessons-json = Guardar como JSON
lessons-print = Imprimir
lessons-axis = La barra es donde puede estar la cifra, el punto la cifra, el rombo el plan, el valor normal o lo esperado.
lessons-behind = Los trabajos detrás

## Lo que se ofrece para guiarse.

# $what: unit
lessons-rate = { $what ->
    [unit] sensores malos
    [circuit] fallos del cableado
    [blocked] suciedad, hielo, pintura u orientación
    [feed] fallos de alimentación y masa
    [control] unidades de control malas
    [shows] cada cuánto se muestra un fallo
    [false_alarm] falsas alarmas
    [meter_sees] comprobaciones del cableado que hallan un fallo
    [meter_false] comprobaciones que salen mal con el cableado bien
   *[tick] lo que se oye al escuchar
}
# $rates: falsas alarmas
lessons-unlike-default = Tus trabajos se apartan de los valores normales en: { $rates }.
lessons-as-default = Tus trabajos coinciden con los valores normales.
# $what: rates_learned
lessons-take = { $what ->
    [rates_learned] Tomar estas tasas para tu taller
   *[minutes_learned] Tomar estos minutos para tu taller
}
lessons-take-back = Deshacerlo
lessons-jobs-to-come = Los trabajos que se abran desde ahora se guían por ellos. Los abiertos conservan los suyos.
