### The page *You and this phone*.

## The choice of language: as the phone has it, or a language by its own name.

you-language-heading = Idioma
you-language-phone = Como en el teléfono
you-language-lacks = { $language } no está aún en este teléfono. Elígelo otra vez cuando haya red.
you-language-after = Cambia primero a la versión nueva.

you-title = Tú y este teléfono

## Para qué es este teléfono.

you-role = { $role ->
    [counter] en el mostrador de recambios
   *[bench] en el taller
}

## La página.

you-theme-phone = Según el teléfono
you-theme-light = Claro
you-theme-dark = Oscuro
you-file = Tu archivo
you-send-now = Enviar ahora
you-take-in-other = Recoger un archivo de otro teléfono
you-name = Tu nombre
you-name-note = Va junto a todo lo que registras desde ahora.
you-use-name = Usar este nombre
you-people = Quién más usa este teléfono. Toca un nombre para seguir como esa persona.
you-labels = Etiquetas
you-print-labels = Imprimir etiquetas, ver qué fue de ellas
you-lessons = Lo que enseñan tus trabajos
you-theme = Claro u oscuro
you-tone = Cuando se leyó un código
you-tone-sound = Dar un tono corto
you-voice = Con las dos manos ocupadas
you-voice-say = Decir los pasos en voz alta
you-voice-note = Los pasos y los avisos de alto, con una voz de este teléfono. Nada sale de él.
you-voice-none = Este teléfono no tiene voz propia para este idioma. Añade una en sus ajustes.
you-voice-like-this = Así se dice cada paso.
you-about = Sobre este teléfono
you-id = Su identidad
you-version = Versión
you-version-unknown = aún desconocida
you-exchange = Último contacto
you-exchange-none = aún ninguno

## Aquello para lo que este teléfono no se emparejó.

you-at-bench = Se hace en el taller
you-is-at-counter = Este teléfono está en el mostrador de recambios
you-at-bench-note = Los trabajos y las etiquetas se hacen en teléfonos del taller.
you-at-bench-read = Lo registrado de este trabajo se puede leer aquí.
you-read-trail = Leer su recorrido
you-to-counter = Al mostrador
you-its-history = Su historial
you-at-counter = Se decide en el mostrador
you-is-at-bench = Este teléfono está en el taller
you-at-counter-note = Las devoluciones se deciden en teléfonos emparejados para el mostrador de recambios.

## Lo que espera y lo que no se aceptó.

you-not-sent = Aún sin enviar
you-what-waits = Lo que espera
you-unknown-job = Un trabajo que no está en este teléfono
you-no-job = Fuera de un trabajo
you-later-entries = Y { $count } anotaciones posteriores.
you-saved-here = { $what }, en este teléfono
you-entry-not-taken = El servidor no lo aceptó
you-entry-of = Una anotación de { $job }, { $moment }: { $why }
you-this-phone = este teléfono
you-more-wait = Detrás esperan { $count } más.
you-entry-not-taken-do = Queda en el registro de aquí. Crea un archivo de lo que espera y muéstraselo a quien cuida el servidor.
you-picture-not-sent = Una foto no se envía
you-picture-of = { $job }, { $moment }: { $why }
you-a-picture = Una foto
you-lost = Faltan fotos en el servidor
you-lost-do = { $count ->
    [one] La copia del servidor de { $count } foto se perdió o está dañada.
   *[other] Las copias del servidor de { $count } fotos se perdieron o están dañadas.
} Las pide a cada teléfono, y el que aún las tiene las envía por sí mismo.
you-picture-not-sent-alt = La foto que no se envía
you-picture-again = Probar a enviarla otra vez
you-picture-leave = Dejarla en este teléfono
you-no-network = ¿No hay red a la vista?
you-no-network-do = Crea un archivo de lo que espera y llévalo a otro teléfono emparejado o al servidor. Todo queda también aquí hasta que lo tenga el servidor.
you-make-afresh = Crearlo de nuevo
you-make-file = Crear un archivo de lo que espera
you-file-holds = { $what }, { $size }:
you-share-file = Compartir el archivo
you-other-file = Un archivo de otro teléfono
you-other-file-note = Lo que otro teléfono no pudo enviar queda registrado aquí al momento y va al servidor con lo tuyo.
you-reading-file = Leyendo el archivo
you-take-in = Recoger un archivo

## Emparejar este teléfono.

you-will-be = Será un teléfono { $role ->
    [counter] del mostrador de recambios
   *[bench] del taller
}. Desde entonces envía lo que registras a { $host } y muestra lo que registraron los demás.
you-not-paired = Sin emparejar
you-pair-name-note = Va junto a todo lo que registras en este teléfono.
you-pair-name-wanted = Di quién usa este teléfono.
you-not-yet = Todavía no
you-send-first = Antes hay que enviar { $what }
you-send-first-note = Este teléfono era { $was ->
    [counter] del mostrador de recambios
   *[bench] del taller
} cuando se registraron. Uno { $role ->
    [counter] del mostrador de recambios
   *[bench] del taller
} no puede enviarlas. Envíalas, o emparéjalo antes como teléfono { $was ->
    [counter] del mostrador de recambios
   *[bench] del taller
}, y abre este enlace otra vez.
you-install-first = Primero la pantalla de inicio, luego empareja allí
you-install-first-1 = Copia este enlace con el botón de abajo.
you-install-first-2 = Pon Swaptrail en la pantalla de inicio: en Safari, el cuadrado con una flecha hacia arriba, luego «Añadir a pantalla de inicio».
you-show-me = Ver cómo
you-install-first-3 = Ábrela allí, toca «Emparejar este teléfono» y pega el enlace.
you-copy-link = Copiar el enlace
you-pair-page = Emparejar esta página
you-link-copied = El enlace está copiado.
you-no-copy-below = Este navegador no copia. Mantén el dedo sobre el enlace de abajo y cópialo.
you-scan-link = Leer el enlace de emparejamiento
you-scan-aim = El código de la otra pantalla
you-paste = Pegar el enlace
you-link-where = Su código está en la pantalla de un teléfono emparejado, en «Tú y este teléfono», o donde funciona el servidor.
you-link = Enlace de emparejamiento
you-link-note = O pega aquí el enlace, si lo copiaste.
you-scan-code = Leer el código
you-use-link = Usar este enlace
you-no-link = Esto no es un enlace de emparejamiento. Es como { $example } con letras tras #.
you-link-elsewhere = Este enlace es para { $host }, pero esta aplicación es de { $own }. Abre el enlace en el navegador, o crea uno para esta aplicación.
you-link-cut = Este enlace no está completo: falta la parte tras #. Copia el enlace entero.

## Emparejar otro teléfono.

you-unpaired-note = Un teléfono emparejado crea un enlace para él; el servidor escribió uno al arrancar por primera vez.
you-pair-another = Emparejar otro teléfono
you-counter-too = Será también del mostrador de recambios.
you-fresh-link = Crear un enlace nuevo
you-make-link = Crear un enlace de emparejamiento
you-see-phones = Ver los teléfonos emparejados
you-other-for = Para qué es el otro teléfono
you-no-copy = Este navegador no copia. Mantén el dedo sobre el enlace.
you-link-qr = El enlace de emparejamiento como código QR
you-link-scan = Léelo con la cámara del otro teléfono: será un teléfono { $role ->
    [counter] del mostrador de recambios
   *[bench] del taller
}. Sirve una vez, hasta el { $moment }.

## Los teléfonos emparejados.

you-phones = Teléfonos emparejados
you-phones-lead = Retira un teléfono que se perdió o que alguien se llevó. Lo que no envió queda en él.
you-look-again = Mirar otra vez
you-no-name = Sin nombre
you-role-this = { $role ->
    [counter] en el mostrador de recambios
   *[bench] en el taller
}, este teléfono
you-seen = visto { $ago }, emparejado el { $day }
you-put-out = Retirar
you-put-out-ask = { $phone } no podrá enviar ni ver nada hasta que se empareje otra vez.
you-put-out-now = Retirarlo ya
you-brought = Traído, sin prueba
you-brought-lead = Un teléfono pasó estas anotaciones, y nada prueba qué teléfono las registró. Todavía no cuentan. Si es tu trabajo, acéptalo; si no, apártalo: sigue en el registro.
you-brought-by = Lo trajo { $name }, { $moment }
you-brought-of = { $entries ->
    [one] { $entries } anotación
   *[other] { $entries } anotaciones
} a nombre de { $name }, de { $first } a { $last }.
you-brought-accept = Aceptar
you-brought-set-aside = Apartar
you-brought-all = { $name } trajo { $entries ->
    [one] { $entries } anotación
   *[other] { $entries } anotaciones
} de { $devices ->
    [one] { $devices } teléfono
   *[other] { $devices } teléfonos
}.
you-brought-all-aside = Apartarlas todas
you-set-aside = Apartado
you-set-aside-lead = Estas no cuentan y siguen en el registro. Lo que se apartó por error, recupéralo.
you-set-aside-of = { $entries ->
    [one] { $entries } anotación
   *[other] { $entries } anotaciones
} que trajo { $name }, apartado { $moment }
you-set-aside-back = Recuperar
you-came-and-went = Quién vino y se fue
you-failed-note = Quien no entró no tenía un enlace bueno y no vio nada. Si no fue nadie del taller, pregunta quién usa tu red.
you-line-from = { $moment }, desde { $address }
you-nameless = Un teléfono sin nombre
you-let-in = { $name } entró { $role ->
    [counter] en el mostrador de recambios
   [bench] en el taller
   *[unknown] { "" }
}
you-was-put-out = { $name } fue retirado
you-was-put-out-by = { $name } fue retirado por { $by }
you-someone-failed = No se dejó entrar a alguien
you-name-failed = No se dejó entrar a alguien que dijo ser { $name }
you-keeps-installed = en la pantalla de inicio
you-keeps-page = solo una página del navegador
you-keeps-promised = su navegador conserva los datos
you-keeps-may-remove = su navegador puede borrar lo no enviado
