### What the reasoning says of moves: why, and what their results would mean.

## What a result would mean; it stands after the result, so it begins small. `$share` is "none" where several results mean the same.

reasons-then-unlikely = no se espera; prueba otra vez antes de concluir nada
reasons-then-open = eso no decide nada; el paso siguiente se calcula entonces
reasons-then-gone = el fallo ha desaparecido por ahora; prueba otra vez
reasons-then-no-fault = no se ha visto ningún fallo; si va y viene, prueba otra vez
reasons-then-watched = la prueba vigila esta posición, así que sus resultados cuentan
reasons-then-not-watched = la prueba no vigila esta posición, así que una prueba sin fallo no demuestra nada
reasons-then-it-is = { $share ->
    [none] es { $cause }
   *[figure] es { $cause }, { $share }
}
reasons-then-causes = { $share ->
    [none] las causas son { $cause }
   *[figure] las causas son { $cause }, { $share }
}
reasons-then-likely = { $share ->
    [none] lo más probable: { $cause }; aún sin decidir
   *[figure] lo más probable: { $cause }, { $share }; aún sin decidir
}
reasons-then-nothing-left = { $share ->
    [none] no queda nada por reparar
   *[figure] no queda nada por reparar, { $share }
}
reasons-then-circuit = es el cableado en { $position }, { $share }
reasons-then-circuit-likely = lo más probable: el cableado en { $position }, { $share }; aún sin decidir
reasons-then-circuit-stays = el cableado en { $position } sigue siendo sospechoso, { $share }
reasons-then-circuit-out = el cableado en { $position } queda casi descartado, { $share }

## Why a move is proposed, and what speaks against it.

reasons-why-first = Aún no se ha probado nada.
reasons-why-no-fault = Ninguna prueba que cuente ha mostrado un fallo. Si va y viene, prueba otra vez.
reasons-why-aside = La última prueba no cuenta.
reasons-why-changed = Algo se cambió desde la última prueba.
reasons-why-gone = Las causas encontradas están resueltas. Ahora lo demuestran pruebas sin fallo.
reasons-why-shared = Lo más probable es { $about }: revisa ahí primero y prueba otra vez.
reasons-why-repair = Busca y repara { $about }, y prueba otra vez.
reasons-why-before-buying = Otra vez antes de comprar una pieza: cuesta poco y te asegura.
reasons-why-before-buying-elsewhere = Antes de comprar otra pieza: muestra si la culpa es de la posición.
reasons-why-before-a-spare = Otra vez antes de poner el repuesto: entre medias salió sin fallo.
reasons-why-retest = No hay que desmontar nada: muestra si el fallo sigue ahí.
reasons-why-clean = { CAP($blocked) }: se vería igual.
reasons-why-clean-several = { CAP($blocked) }: se vería igual, y una sola prueba sirve para todas las posiciones.
reasons-why-meter = El conector y el cable en { $about } siguen siendo sospechosos.
reasons-why-listen = Sin desmontar nada se oye si { $about } funciona.
reasons-why-verdict-replace = Sustituye { $about } y demuéstralo con una prueba sin fallo.
reasons-why-verdict-spare = Es { $about }: lo que tienes a mano ocupa su lugar.
reasons-why-verdict-clean = Es { $about }: límpialo, { $check }, y compruébalo.
reasons-why-unplug = Muestra si la prueba vigila { $about }; nada sobre la causa.
reasons-why-replace = No queda { PART($sort, form: "none") } que funcione para el intercambio: lo dirá una pieza nueva.
reasons-why-unplug-doubt = Ninguna prueba ha mostrado nunca un fallo en { $about }: ¿lo vigila la prueba?
reasons-why-spare = Entra tu repuesto: solo hay que desmontar una posición.
reasons-why-easiest = Pasó la prueba sin fallo y es el más fácil de alcanzar.
reasons-why-cleared = Pasó la prueba sin fallo, así que el fallo puede mostrarse donde está.
reasons-why-same-part-easiest = La misma pieza, y la más fácil de alcanzar.
reasons-why-same-part = La misma pieza, y pasó la prueba sin fallo.
reasons-why-bench = Hay un sospechoso en el banco de trabajo: donde todo funciona, una prueba lo descarta o lo confirma.
reasons-why-back = Con tu repuesto todo sale sin fallo. De vuelta en su sitio, el que salió muestra si está mal.
reasons-why-fill = Hay que montarlos otra vez, y así se tarda menos.
reasons-why-fill-elsewhere = Hay que montarlos otra vez. Así el fallo puede salir donde le toca.
reasons-why-several = Resuelve varios sospechosos en una sola prueba, cada uno con otro que la pasó sin fallo.
reasons-why-ring = Resuelve varios sospechosos en una sola prueba: cada { PART($sort) } pasa al lugar siguiente.
reasons-why-chain = Entra tu repuesto, y los sospechosos avanzan un lugar.
reasons-why-spares = Entran tus repuestos, todos en una sola prueba.
reasons-why-suspects-first = Lo menos que desmontar. El fallo que se mueve está en { PART($sort, form: "the-many") }; el que se queda, en el cableado.
reasons-why-suspects = Dos sospechosos entre sí: si los dos están mal, nada se mueve.
reasons-not-heard = { CAP($why) }: nada demuestra que la prueba se hiciera.
reasons-waits = Cuenta en cuanto se aclare lo que dos teléfonos anotaron por separado.
reasons-not-watching = { CAP($position) } estaba desenchufado y aun así no dio fallo: la prueba no lo vigilaba.
reasons-with-retest = { $why } Cerca de { $length } con la nueva prueba.
reasons-without-test = { $why } Cerca de { $length }.
reasons-half-minute = medio minuto
reasons-not-suspects = Los sospechosos solo cambian de sitio: si vuelven a fallar, apenas dice más que antes.
reasons-not-untested = Nadie ha probado este repuesto: si falla, es un sospechoso más.
reasons-not-same = Lo más probable es que la prueba saliera igual en los dos casos.
reasons-not-same-checks = Lo más probable es que las mediciones no encontraran nada.
reasons-not-same-heard = Lo más probable es que sonara igual en los dos casos.
reasons-not-unplug = No dice nada sobre la causa.
