ways-link = Otras salidas
ways-link-note = Anotar una reparación, pausar, entregar, cerrar sin reparar
ways-title = Otras salidas: { $job }
ways-heading = ¿Qué haces en su lugar?

ways-pause = Poner el trabajo en pausa
ways-pause-text = No tienes nada en la mano. La lista muestra a qué espera.
ways-pause-why = { $why ->
    [part] A la espera de una pieza
    [customer] A la espera del cliente
    [weather] A la espera de mejor tiempo o luz
    [help] A la espera de ayuda o de una herramienta
   *[other] Otra cosa
}
ways-paused-title = { $why ->
    [part] A la espera de una pieza
    [customer] A la espera del cliente
    [weather] A la espera de mejor tiempo o luz
    [help] A la espera de ayuda o de una herramienta
   *[other] El trabajo está en pausa
}
ways-order = Para pedir: { $part }.
ways-paused-text = Todo está en su sitio. Cualquier paso en el trabajo acaba la pausa.
ways-in-hand = { $count ->
    [one] Tienes en la mano { $units }: guárdalo donde nadie lo confunda.
   *[other] Tienes en la mano { $units }: guárdalos donde nadie los confunda.
}
ways-plug-off = El conector en { $position } está quitado.
ways-hanging = { $count ->
    [one] El de { $positions } cuelga de su cable. Encájalo antes de que alguien conduzca.
   *[other] Los de { $positions } cuelgan de su cable. Encájalos antes de que alguien conduzca.
}
ways-go-on = Seguir
ways-part = Número de pieza para pedir, si lo sabes
ways-note = Una palabra para el registro
ways-note-wanted = Di por qué en una palabra.
ways-pause-save = Poner en pausa

ways-repair = He reparado algo
ways-repair-text = ¿Qué era? Después toca una prueba.
ways-repair-save = Anotar la reparación

## Escuchar en cualquier paso.

ways-listen = Escuchar los sensores
ways-listen-none = Toca lo que oyes en cada uno que pruebes.
ways-listen-save = Guardar lo que has oído
ways-hear = Que escuche el teléfono
ways-hear-stop = Dejar de escuchar
ways-hear-held = El teléfono retiene el sonido. Toca abajo para dejarlo pasar.
ways-hear-go = Escuchar ahora
ways-hear-listening = Escuchando. Tenlo cerca y quieto.
ways-hear-ticks = { $count } tictacs por segundo
ways-hear-nothing = Nada regular
ways-hear-yours = Lo que vale es tu oído: márcalo arriba.
ways-hear-altered = Este teléfono filtra el sonido y puede perder tictacs débiles. Fíate del oído.
ways-hear-not-allowed = El micrófono no está permitido. Permítelo en los ajustes del navegador para esta página, o escucha de oído.
ways-hear-none = Este aparato no tiene micrófono. Escucha de oído.
ways-hear-busy = El micrófono no da sonido; quizá lo usa otra aplicación. Ciérrala o escucha de oído.
ways-hear-not-offered = Este navegador no deja que la página escuche. Escucha de oído.

ways-close = Cerrar sin reparar
ways-close-text = ¿Por qué acaba aquí? El motivo queda registrado.
ways-pushed-home = Encajado y repasado: { $positions }
ways-close-why = { $why ->
    [customer] El cliente lo deja aquí
    [no_part] La pieza no se consigue
    [elsewhere] Se repara en otro sitio
    [not_worth] No merece la pena
    [not_found] No se encontró la causa
   *[other] Otro motivo
}
ways-close-first = Aclara esto primero
ways-close-save = Cerrar sin reparar

ways-hand = Entregarlo a otra persona
ways-hand-text = Todo está en su sitio. ¿Quién sigue desde aquí?
ways-hand-people = Quién sigue
ways-hand-other = Otra persona
ways-hand-name = Nombre
ways-hand-name-wanted = Di quién sigue.
ways-hand-save = Entregar
ways-handed = Entregado a { $to }
ways-handed-sent = Está en la lista de cada teléfono del taller tras su próximo intercambio.
ways-handed-scan = { $to } también puede leer esto con la cámara del teléfono: abre el trabajo.
ways-handed-qr = Código QR que abre este trabajo
ways-handed-no-phone = Su teléfono es nuevo aquí: dale entrada
ways-handed-file = Hacer un archivo para el otro teléfono
ways-handed-file-note = Este teléfono no tiene servidor. El otro toma el trabajo de un archivo.
ways-handed-to = Desde aquí sigue { $to }.
ways-handed-you = { $by } te lo entregó.
ways-handed-list = con { $to }
ways-handed-mine = te lo entregaron
