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
}; { $counted ->
    [one] cuenta uno
   *[other] cuentan { $counted }
}, { $proven ->
    [0] ninguno
    [one] uno
   *[other] { $proven }
} con causa probada.
# $count (count): 3
lessons-waiting = { $count ->
    [one] Un trabajo no está contado aún.
   *[other] { $count } trabajos no están contados aún.
} Mira otra vez dentro de un momento.
lessons-none = En este tiempo no se cerró ningún trabajo.
lessons-none-yet = Aún no se cerró ningún trabajo. Los trabajos cerrados dirán aquí qué fallaba, si acertó el veredicto y cuánto se tardó.

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
lessons-expected = Esperados: { $expected }.

lessons-comebacks = Fallos que vuelven
# $days (count): 90
lessons-comebacks-note = La misma posición del mismo vehículo muestra otra vez un fallo en { $days } días.
lessons-came-back = Volvieron
lessons-came-back-open = { $count ->
    [one] Uno aún no está cerrado: su primer autodiagnóstico mostró otra vez el fallo.
   *[other] { $count } aún no están cerrados: su primer autodiagnóstico mostró otra vez el fallo.
}

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
lessons-rates-note = Se aprende cómo se reparten las causas; no se aprende cada cuánto falla algo. El valor normal pesa como { $jobs } trabajos.
# $yards (count): 0
lessons-rates-bar = La barra es donde está la tasa según { $yards ->
    [0] tus propios trabajos
   *[other] tus trabajos y los de otros talleres
}, nueve veces de diez. De lo que casi nunca se halló, es aproximada.
# $default: 5 %
lessons-default = Valor normal { $default }
# $low: 4,1 %
# $high: 6,2 %
# $yards (count): 0
lessons-between = Del { $low } al { $high } según { $yards ->
    [0] tus propios trabajos
   *[other] tus trabajos y los de otros talleres
}.
# $count: 43,5
lessons-found = Halladas: { $count }
# $count (count): 43
# $readings (count): 45
lessons-readings = { $count } de { $readings } lecturas

lessons-minutes = Minutos de trabajo
lessons-minutes-note = De una anotación de un teléfono a la siguiente; las pausas quedan fuera.
lessons-minutes-bar = La cifra es la del medio; la barra, la mitad central.
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
lessons-minutes-plan-alone = Plan: { $plan } min
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
lessons-work-plan-alone = Plan: { $plan } min para lo mismo
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
    [sent_late] Enviados en este tiempo, pero cerrados antes según el reloj de su teléfono
   *[wrong_clock] Un reloj que iba mal
}
lessons-times-left-out = Tiempos que van hacia atrás, retirados, o con trabajo de otro teléfono dentro
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
lessons-behind = Ver los trabajos

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
lessons-as-default = Tus tasas coinciden con los valores normales: no hace falta tomarlas.
# $what: rates_learned
lessons-take = { $what ->
    [rates_learned] Tomar estas tasas para tu taller
   *[minutes_learned] Tomar estos minutos para tu taller
}
lessons-take-back = Deshacerlo
lessons-jobs-to-come = Lo que tomes rige en los trabajos que se abran después. Los abiertos conservan lo suyo.

## Cifras entre talleres.

lessons-yards = Cifras de otros talleres
lessons-yards-note = Un trabajo suyo cuenta tanto como le dejes pesar. Viajan las tasas y nada más: ni vehículo, ni nombre, ni código, ni día.
# $jobs (count): 12
# $first: 2026-Q1
# $last: 2026-Q3
lessons-yard-jobs = { $jobs ->
    [one] Un trabajo
   *[other] { $jobs } trabajos
}, de { $first } a { $last }
# $jobs (count): 12
# $quarter: 2026-Q1
lessons-yard-jobs-in = { $jobs ->
    [one] Un trabajo
   *[other] { $jobs } trabajos
} en { $quarter }
# $key: 3f0a 11c2 9e47 77b0 d8e1
lessons-yard-seal = Sello { $key }
# $yard: Taller Norte
# $weight: 50 %
lessons-yard-weighs = { $yard } ({ $weight })
# $yards: Taller Norte (50 %)
lessons-taken-with = Con cifras de otros talleres: { $yards }.
lessons-yards-none = Aquí no cuentan cifras de otros talleres.
# $least (count): 10
lessons-yards-give-from = Desde { $least } trabajos que cuenten puedes dar tus propias cifras a otros.
lessons-yards-give = Guardar tus cifras
lessons-yards-choose = Un fichero de otro taller
lessons-yards-weight = Lo que pesa un trabajo suyo junto a uno tuyo
lessons-yards-weigh-in = Contarlo
lessons-yards-out = Quitarlas
# $how: new
# $jobs (count): 120
# $yard: Taller Norte
# $weight: 50 %
lessons-weighed = { $how ->
    [new] { $yard }: { $jobs ->
        [one] un trabajo cuenta
       *[other] { $jobs } trabajos cuentan
    } ahora, con el { $weight } del peso de los tuyos.
    [replaced] { $yard }: estas cifras sustituyen a las anteriores. Pesan el { $weight }.
   *[weighed_anew] { $yard }: estas cifras ya contaban. Ahora pesan el { $weight }.
}
# $yard: Taller Norte
# $jobs (count): 120
lessons-taken-out = { $yard }: { $jobs ->
    [one] su trabajo ya no cuenta
   *[other] sus { $jobs } trabajos ya no cuentan
}. Las tasas que tomaste quedan hasta que las retires.
# $file: norte.json
# $jobs (count): 120
lessons-gave = { $file } tiene las cifras de { $jobs ->
    [one] un trabajo
   *[other] { $jobs } trabajos
}.
# $jobs (count): 4
# $least (count): 10
lessons-give-few = Cuentan muy pocos trabajos ({ $jobs }). Desde { $least } ninguna cifra muestra un solo trabajo.
lessons-given-none = Este fichero no tiene cifras de un taller.
lessons-given-version = Una versión más nueva escribió estas cifras. Actualiza Swaptrail y cuéntalas después.
lessons-given-altered = Estas cifras se alteraron después de sellarlas. Pide al taller un fichero nuevo.
# $place: causes[3].count
lessons-given-nonsense = Estas cifras no pueden ser ciertas, en { $place }. Ninguna cuenta.
lessons-given-own = Son tus propias cifras. Ya cuentan.
lessons-given-older = Ya cuentan cifras más nuevas de este taller. Quita antes esas.
# $key: 3f0a 11c2 9e47 77b0 d8e1
lessons-seal-unconfirmed = Nadie ha confirmado de quién es este sello: { $key }. Antes, que el taller te lea el suyo.
# $weight: 3
lessons-weight-wanted = { $weight } no es un peso. Va de 0,01 a 1.
lessons-weight-missing = Falta el peso. Va de 0,01 a 1.
# $yard: Taller Sur
lessons-no-such-yard = Aquí no cuentan cifras de { $yard }.
# $yards: Taller Norte
lessons-yards-count = Cuentan las de: { $yards }.
# $yard: Taller Sur
lessons-yards-alike = Varios talleres se llaman { $yard }. Indica el sello del que es.
