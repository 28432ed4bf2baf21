### Lo que dicen las pruebas hasta ahora, en qué se apoyan las cifras, y lo que se mezcló.

evidence-aside = La prueba { $test } se deja aparte. { $why }
evidence-no-fault = Ninguna prueba ha mostrado un fallo.
evidence-no-fault-detail = Si va y viene, prueba otra vez y dilo.
evidence-unplugged = Solo lo desenchufado muestra un fallo.
evidence-unplugged-detail = Un conector suelto no necesita otra causa. No queda nada más que reparar: seguro al { $share }.
evidence-gone = El fallo ya no está.
evidence-nothing-left = No queda nada que reparar: seguro al { $share }.
evidence-nothing-left-yet = No queda nada que reparar: seguro al { $share }; se pide el { $wanted }.
evidence-open = Aún sin resolver.
evidence-known = { CAP($cause) } { $count ->
    [one] es una causa
   *[other] son causas
}.
evidence-known-detail = Aún no se sabe si hay algo más mal.
evidence-last-clean = Sin fallo en la última prueba.
evidence-followed = El fallo siguió { JOIN("a", $cause) }.
evidence-stayed = El fallo se quedó en { $position }.
evidence-cause = La causa es { $cause }.
evidence-faults = { $count ->
    [2] Dos fallos
    [3] Tres fallos
    [4] Cuatro fallos
   *[other] { $count } fallos
}: { $cause }.
evidence-sure = Seguro al { $share }.
evidence-proved = Está resuelto, y las pruebas lo han demostrado.
evidence-to-read-again = Está resuelto. Repite la revisión que salió mal: nada más demuestra esta reparación.
evidence-to-prove = Está resuelto. Ahora lo demuestran pruebas sin fallo.
evidence-likely = Lo más probable hasta ahora: { $cause }, { $share }.
evidence-likely-was = Lo más probable es que fuera { $cause }, { $share }.
evidence-likely-two = Lo más probable hasta ahora: { $cause }, { $share }; casi igual de probable: { $other }.
evidence-likely-two-was = Lo más probable es que fuera { $cause }, { $share }; casi igual de probable: { $other }.
evidence-went-meter = Solo la medición salió mal: ninguna prueba ha mostrado un fallo.
evidence-went-away = Lo que lo causaba ya no está.
evidence-went-fresh = Se fue al poner { PART($sort, form: "another") } en { $positions }.
evidence-went-handled = Se fue al manipular { PART($sort, form: "the-many") }.
evidence-went-repair = Se fue con la reparación.
# $count (count): 1
evidence-went-cleaned = Se fue al limpiar { $positions }.
evidence-went-stayed = No ha vuelto en { $count ->
    [one] { $count } prueba sin fallo
   *[other] { $count } pruebas sin fallo
}.
evidence-no-fault-at-all = ningún fallo
evidence-else = { CAP($cause) }, { $share }
evidence-past = { CAP($causes) }
evidence-carries-one = Prueba { $test }, { $heard }.
evidence-carries = Pruebas { $tests }, { $heard } cada vez.
evidence-stands = Se mantiene aunque { $rate } fueran { $count ->
    [2] el doble de
   *[other] { $count } veces más
} frecuentes de lo supuesto.
evidence-stands-barely = Se mantiene por poco: no si { $rate } fueran { $times } veces más frecuentes de lo supuesto.
evidence-stands-all = Se mantiene aunque cualquier tipo de fallo fuera 100 veces más frecuente de lo supuesto.
evidence-if-common = si { $rate } fueran { $times } veces más frecuentes
evidence-if-rare = si { $rate } fueran { $times } veces menos frecuentes
evidence-not-yet = Aún no: { $condition }, solo sería seguro al { $share }.
evidence-rate-of = { $what ->
    [unit] { PART($sort, form: "the-many") } en mal estado
    [circuit] los fallos de cableado
    [blocked] los casos de { $blocked }
    [feed] los fallos de alimentación y masa
    [control] las unidades de control en mal estado
    [miss] los fallos no detectados
   *[false_alarm] las falsas alarmas
}
evidence-rate-unit = { CAP(PART($sort, form: "a")) } está mal, antes de cualquier prueba
evidence-rate-circuit = El cableado de una posición está mal: { PART($sort, form: "wiring") }
evidence-rate-blocked = Una posición está tapada: { $blocked }
evidence-rate-feed = La alimentación o masa que comparte un { PART($sort, form: "shares-a-feed") } está mal
evidence-rate-control = La unidad de control está mal
# $sort: parking-sensor
evidence-rate-shows = Un fallo presente se muestra en una sola prueba
evidence-rate-again = Una prueba sin fallo justo después de otra, como parte de una completa
evidence-rate-false-alarm = Una posición sin fallo muestra uno de todos modos
evidence-rate-meter-sees = Las mediciones del cableado encuentran un fallo del cableado
evidence-rate-meter-false = Las mediciones salen mal en un cableado bueno
evidence-rate-tick-unit = { CAP(PART($sort, form: "a")) } en mal estado no hace tictac
evidence-rate-tick-circuit = Un fallo del cableado deja { PART($sort, form: "a") } sin tictac
evidence-rate-tick-feed = Sin alimentación { PART($sort, form: "a") } no hace tictac
evidence-rate-tick-control = Con una unidad de control en mal estado { PART($sort, form: "a") } no hace tictac
evidence-rate-tick-false = No se oye el tictac de { PART($sort, form: "a") } que funciona
evidence-money-labour = Mano de obra, por hora
evidence-money-part = Precio de { PART($sort, form: "a-new") }
evidence-money-wrong = Lo que te cuesta { PART($sort, form: "a") } comprado para nada
evidence-common = práctica común, sin fuente
# $jobs (count): 52
evidence-learned = de { $jobs } trabajos propios
# $jobs (count): 52
evidence-yard-learned = Tu taller se guía por { $jobs } trabajos propios; este trabajo no.
evidence-yard-use = Tomarlo para este trabajo
evidence-confidence = Cuánta seguridad hace falta para llamarlo veredicto
evidence-use = Usar { $share }
evidence-comes-and-goes = El fallo va y viene.
evidence-there-all-the-time = El fallo está siempre.
# $sort: parking-sensor
evidence-comes-and-goes-note = Un fallo presente se muestra entonces solo en la mitad de las pruebas: demostrarlo lleva más.
evidence-switch-all-the-time = Está siempre
evidence-switch-comes-and-goes = Va y viene
evidence-code = { $code } en { $position }: { $words }; por eso { $why }.
evidence-source = { CAP($source) }.
evidence-code-counts = Cuenta
evidence-code-aside = No cuenta
evidence-code-leave-out = Déjalo fuera
evidence-code-let-count = Haz que cuente
evidence-type-open-source = que 1x significa eléctrico está explicado públicamente; cuánto cuenta es práctica común, sin fuente
evidence-type-memory = lo que significa es de memoria; cuánto cuenta es práctica común, sin fuente
evidence-why-electrical = un fallo del cableado es { $factor } veces más probable
evidence-why-inside = { PART($sort, form: "a") } en mal estado es { $factor } veces más probable
evidence-why-blocked = { $blocked }: { $factor } veces más probable
evidence-proof = { $count ->
    [one] { $count } prueba sin fallo
   *[other] { $count } pruebas sin fallo seguidas
}.
evidence-proof-against = { $count ->
    [one] { $count } prueba sin fallo
   *[other] { $count } pruebas sin fallo seguidas
}: { $against }.
evidence-proof-at-once = { $count ->
    [one] { $count } fue justo después de otra y cuenta menos.
   *[other] { $count } fueron justo después de otra y cuentan menos.
}
evidence-proof-not-soon = Solo con pruebas sin fallo se tardará mucho.
evidence-proof-more = { $count ->
    [one] Se espera que baste { $count } prueba sin fallo más.
   *[other] Se espera que basten unas { $count } pruebas sin fallo más.
}
evidence-run-half = una de cada dos pruebas
evidence-run-share = el { $share } de las pruebas
evidence-run = La sola regla de éxitos seguidos pediría { $count ->
    [one] { $count } prueba sin fallo
   *[other] { $count } pruebas sin fallo seguidas
}: un fallo que se muestra en { $often } ya se habría mostrado, seguro al { $share }.
evidence-mixed-by-scan = ; resuelto por una lectura
evidence-mixed-as-last = ; resuelto, como el último que quedaba
evidence-mixed-open = { "" }
evidence-mixed-no-label = No hay ninguna etiqueta registrada para ellos.
evidence-mixed-scan = Busca una etiqueta que siga puesta ({ $units }) y léela: lo resuelve y no cuesta nada.
evidence-mixed-other = Entonces también se sabe cuál es el otro.
evidence-mixed-fresh = Si no la hay, basta una etiqueta nueva en cada uno: ninguno es sospechoso.
evidence-mixed-tests = Si no la hay, pon una etiqueta nueva en cada uno. Después las pruebas dicen cuál está mal.
evidence-mixed = { CAP($units) } se mezclaron: no se sabe cuál es cuál.
evidence-who-from = el de { $position }
evidence-who-is = { CAP($unit) } es { $was }, seguro al { $share }.
evidence-who-may = { CAP($unit) } puede ser { $others }.
evidence-who-several = cualquiera de { $count }
evidence-who-then = { $unit } es { $was }
evidence-who-open = sigue sin saberse cuál es cuál
evidence-mixed-involved = { $count } { PART($sort, form: "many") } en la mezcla{ $settled }
evidence-unit-condemned = { CAP($unit) } salió malo en { $vehicle }; probabilidad de que esté mal: { $share }.
evidence-unit-untested = { CAP($unit) } no tiene pruebas en otro trabajo; probabilidad de que esté mal: { $share }, como cualquier { PART($sort) }.
evidence-unit-passed = superó { $count ->
    [one] { $count } prueba
   *[other] { $count } pruebas
}
evidence-unit-faulted = mostró un fallo en { $count ->
    [one] { $count } prueba
   *[other] { $count } pruebas
} que nada más explica
evidence-unit-bystander = solo estaba allí cuando fallaba otra cosa
evidence-unit-trusted = { CAP($unit) } es de confianza: { $said } en { $vehicles ->
    [one] { $vehicles } vehículo
   *[other] { $vehicles } vehículos
}{ $driven ->
    [yes] , y ha rodado desde entonces
   *[no] { "" }
}; probabilidad de que esté mal: { $share }.
evidence-unit = { CAP($unit) } { $said } en { $vehicles ->
    [one] { $vehicles } vehículo
   *[other] { $vehicles } vehículos
}{ $driven ->
    [yes] , y ha rodado desde entonces
   *[no] { "" }
}; probabilidad de que esté mal: { $share }.
evidence-estimate = Se mostró en { $shown } de { $repeats } pruebas repetidas sin cambiar nada. Eso da { $share }; lo normal es { $default }.
evidence-laplace = Regla de sucesión de Laplace: (k + 1) / (n + 2).
evidence-proof-left = No queda nada que reparar: seguro al { $share }; se pide el { $wanted }.
evidence-bayes = Regla de Bayes sobre las probabilidades; las tasas son práctica común, sin fuente.

evidence-lamp = { $result ->
    [never_on] El testigo no se encendió nunca
   *[flashes] El testigo parpadea
}: la unidad de control o su alimentación cuenta como { $factor } veces más probable.

evidence-comeback-replaced = { CAP($position) }: allí se cambió { PART($sort, form: "a") } { $days ->
    [0] el día en que empezó este trabajo
    [one] un día antes de este trabajo
   *[other] { $days } días antes de este trabajo
}. Un segundo fallo allí apunta al cableado o a { $blocked }: cada uno cuenta como { $factor } veces más probable.
evidence-comeback-left = { CAP($cause) }: quedó sin reparar { $days ->
    [0] el día en que empezó este trabajo
    [one] un día antes de este trabajo
   *[other] { $days } días antes de este trabajo
}, entonces probable al { $was }. Este trabajo parte del { $share }.
evidence-comeback-source = Modelo y cifras nuestros, sin fuente.
evidence-comeback-factor = { $factor ->
    [1] nada
   *[other] { $factor } veces
}
evidence-comeback-months = { $months ->
    [one] un mes
   *[other] { $months } meses
}
