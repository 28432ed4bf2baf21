### Sensores de aparcamiento: lo que solo esta pieza tiene o cómo se llama.

part-parking-sensor =
    .one = sensor
    .many = sensores
    .a = un sensor
    .the = el sensor
    .the-many = los sensores
    .full-many = sensores de aparcamiento
    .system = ayuda de aparcamiento
    .the-system = la ayuda de aparcamiento
    .shares-a-feed = parachoques
    .a-new = un sensor nuevo
    .the-new = el sensor nuevo
    .the-old = el sensor viejo
    .new-many = sensores nuevos
    .another = otro sensor
    .none = ningún sensor
    .this = este sensor
    .one-of = uno de los sensores de aparcamiento
    .the-full-many = los sensores de aparcamiento
    .test = autodiagnóstico
    .tests = autodiagnósticos
    .the-test = el autodiagnóstico
    .whose-test = el autodiagnóstico de la unidad de control
    .circuit = el cableado
    .wiring = el conector, el cable o la entrada de la unidad de control
    .channel = el canal de la unidad de control

parking-sensor-layout-rear-4 = Detrás, 4 sensores
parking-sensor-layout-rear-6 = Detrás, 6 sensores
parking-sensor-layout-front-4 = Delante, 4 sensores
parking-sensor-layout-front-6 = Delante, 6 sensores
parking-sensor-layout-both-8 = Delante y detrás, 8 sensores
parking-sensor-layout-both-12 = Delante y detrás, 12 sensores
parking-sensor-layout-around-12 = Todo alrededor, 12 sensores

parking-sensor-complaint-beeps = Pita sin motivo
parking-sensor-complaint-silent = No suena
parking-sensor-complaint-lamp = Muestra un fallo

parking-sensor-key-on-heading = Con el contacto: el testigo de la ayuda
parking-sensor-key-on-text = Si no se enciende nunca: puede que la unidad de control no tenga alimentación. O el testigo o su botón no está conectado.
parking-sensor-key-on-right = Se enciende y luego se apaga
parking-sensor-key-on-stays = Se queda encendido
parking-sensor-key-on-flashes = Parpadea
parking-sensor-key-on-never = No se enciende nunca
parking-sensor-lamps-not-sure = No lo sé
parking-sensor-reverse-heading = Mete la marcha atrás: la ayuda
parking-sensor-reverse-text = Un fallo presente suele apagar el sistema.
parking-sensor-reverse-right = Está activa
parking-sensor-reverse-wrong = Está apagada o muestra un fallo

parking-sensor-look-heading = Mira cada sensor
parking-sensor-look-text = Suciedad, hielo, pintura gruesa, un sensor hundido, un parachoques reparado hace poco. Toca lo que veas.
parking-sensor-found-dirt = suciedad
parking-sensor-found-ice = hielo
parking-sensor-found-paint = pintura gruesa
parking-sensor-found-pushed-in = hundido
parking-sensor-found-repaired-bumper = parachoques reparado
parking-sensor-photograph = Antes de que nadie lo toque.

parking-sensor-test-start = Inícialo en la centralita y escucha su avisador.
parking-sensor-test-start-again = Inícialo y escucha.
parking-sensor-test-provoke = Mueve los cables con la mano, rocía agua, caliéntalo y prueba de nuevo.
parking-sensor-test-question = ¿Oíste el zumbador?
parking-sensor-test-asked = Oíste su avisador, y el fallo…
parking-sensor-test-ran = la prueba se hizo
parking-sensor-test-not-proven = nada prueba que se hizo
parking-sensor-test-not-heard = no se oyó el zumbador
parking-sensor-test-whose-heard = en los que se oyó el zumbador

parking-sensor-take-out = Quita el contacto, desenchúfalo y suelta las dos pestañas.
parking-sensor-put-in = Empuja cada uno hasta que encajen las dos grapas.
parking-sensor-plug = Enchúfalo recto hasta que haga clic y cierra su cierre.
parking-sensor-fit-bore = El alojamiento está limpio y seco
parking-sensor-fit-right-way = El sensor está bien orientado
parking-sensor-fit-catches = Las dos pestañas están encajadas
parking-sensor-fit-flush = Queda a ras del parachoques
parking-sensor-fit-connector = El conector entró recto
parking-sensor-fit-lock = Su cierre está cerrado

parking-sensor-check-connector = mira dentro del conector
parking-sensor-check-connector-text = Contactos rectos, ninguno hundido, sin costra verde ni blanca, con junta y con el cierre entero. Mueve los cables: no puede salirse ninguno.
parking-sensor-check-connector-good = Limpio y firme
parking-sensor-check-connector-bad = Doblado, flojo, mojado o corroído
parking-sensor-check-ground = mide el cable de masa
parking-sensor-check-ground-text = Contacto quitado, sensor desenchufado. Ohmios entre el contacto de masa del conector y el metal desnudo de la carrocería.
parking-sensor-check-ground-good = 1 Ω o menos
parking-sensor-check-ground-bad = Más de 1 Ω, o abierto
parking-sensor-check-supply = mide la alimentación
parking-sensor-check-supply-text = Motor parado, contacto dado, freno de mano puesto, marcha atrás metida. Voltios entre el contacto de alimentación y el de masa del conector. Compara con el conector de un sensor que funciona.
parking-sensor-check-supply-good = Menos de 0,5 V de diferencia con el que funciona
parking-sensor-check-supply-bad = Menos, o nada
parking-sensor-check-signal = mide el cable de señal
parking-sensor-check-signal-text = Contacto quitado y el conector de la unidad de control también fuera. Ohmios a lo largo del cable de señal, de punta a punta, y después del cable a masa.
parking-sensor-check-signal-good = 2 Ω o menos a lo largo, abierto a masa
parking-sensor-check-signal-bad = Mucho a lo largo, o con paso a masa

parking-sensor-listen-text = Contacto puesto, marcha atrás metida. Acerca el oído o la yema de un dedo: un sensor que funciona hace un tictac suave.
parking-sensor-listen-ticks = Hace tictac
parking-sensor-listen-silent = No se oye nada
parking-sensor-clean = Limpia la cara del sensor y el borde alrededor.
parking-sensor-clean-and-look = Limpia la cara del sensor y el borde alrededor, y mira adónde apunta.
parking-sensor-blocked-for-customer = suciedad, hielo, pintura gruesa o mala orientación
parking-sensor-blocked-state = tapado o mal orientado

parking-sensor-walk-heading = Camina por detrás con un poste
parking-sensor-walk-text = Motor parado. Pon o sostén un poste derecho ante cada uno. Toca el que siga callado.
parking-sensor-walk-all = Suenan todos
parking-sensor-walk-again-heading = Escucha otra vez
parking-sensor-walk-again-text = Sin sonido en { $positions }, aunque el autodiagnóstico no da fallo. Mira adónde apunta y cómo asienta, límpialo y haz otra ronda.
parking-sensor-walk-works = suena
parking-sensor-walk-fails = no suena
parking-sensor-walk-left = por escuchar
parking-sensor-walk-first = Escucha primero los demás.
parking-sensor-walk-accepted = no suena ante el poste
parking-sensor-walk-name = comprobación con el poste
parking-sensor-walk-missed = sin sonido en { $positions }
parking-sensor-walk-all-well = sonaron todos
parking-sensor-walk-report-name = Comprobación en uso con un poste
parking-sensor-walk-report-all-well = sonaron todos los sensores

parking-sensor-caution-ground = Suelo llano, freno de mano puesto, ruedas calzadas.
parking-sensor-caution-ground-short = Llano, freno, calzos
parking-sensor-caution-reverse = Motor parado y pie en el freno antes de meter la marcha atrás.
parking-sensor-caution-reverse-short = Motor parado, pie en el freno
parking-sensor-caution-listen = Motor parado. Nunca a la vez un pie en el freno y una mano en el parachoques.
parking-sensor-caution-listen-short = Motor parado, nadie al freno
parking-sensor-caution-key-off = Quita el contacto antes de desenchufar nada.
parking-sensor-caution-key-off-short = Contacto quitado
parking-sensor-caution-stand = Nadie debajo de un vehículo que solo está sobre un gato.
parking-sensor-caution-stand-short = Nunca bajo un gato solo
parking-sensor-caution-hot = El escape cerca del parachoques sigue caliente mucho tiempo.
parking-sensor-caution-hot-short = Escape caliente
parking-sensor-caution-airbag = No toques el cableado del airbag cerca del parachoques.
parking-sensor-caution-airbag-short = No tocar el airbag
parking-sensor-caution-battery = Para trabajos largos con el contacto dado, pon un mantenedor de batería.
parking-sensor-caution-battery-short = Apoyar la batería
parking-sensor-caution-aid = La ayuda de aparcamiento es una ayuda. Mira también hacia atrás.
parking-sensor-caution-aid-short = Solo es una ayuda: mira atrás
parking-sensor-caution-local = Las normas locales y la práctica autorizada van primero.
parking-sensor-caution-local-short = Primero, las normas locales

## What else keeps a good sensor from working; its sounder.

parking-sensor-blocked = suciedad, hielo, pintura u orientación
parking-sensor-blocked-check = comprueba su orientación
parking-sensor-test-heard = se oyó el zumbador
parking-sensor-test-was-not-heard = no se oyó su zumbador

## Positions.

parking-sensor-at-left-outer = exterior izquierdo
parking-sensor-at-left-middle = central izquierdo
parking-sensor-at-left-inner = interior izquierdo
parking-sensor-at-right-inner = interior derecho
parking-sensor-at-right-middle = central derecho
parking-sensor-at-right-outer = exterior derecho
parking-sensor-at-front-left-outer = delantero exterior izquierdo
parking-sensor-at-front-left-middle = delantero central izquierdo
parking-sensor-at-front-left-inner = delantero interior izquierdo
parking-sensor-at-front-right-inner = delantero interior derecho
parking-sensor-at-front-right-middle = delantero central derecho
parking-sensor-at-front-right-outer = delantero exterior derecho
parking-sensor-at-rear-left-outer = trasero exterior izquierdo
parking-sensor-at-rear-left-middle = trasero central izquierdo
parking-sensor-at-rear-left-inner = trasero interior izquierdo
parking-sensor-at-rear-right-inner = trasero interior derecho
parking-sensor-at-rear-right-middle = trasero central derecho
parking-sensor-at-rear-right-outer = trasero exterior derecho
parking-sensor-at-left-front-side = lateral delantero izquierdo
parking-sensor-at-left-rear-side = lateral trasero izquierdo
parking-sensor-at-right-front-side = lateral delantero derecho
parking-sensor-at-right-rear-side = lateral trasero derecho

parking-sensor-sounder-fuse = el fusible
parking-sensor-sounder-fuse-text = Busca en los datos del vehículo el fusible de la ayuda de aparcamiento. Quítalo y míralo, o mide a través de él.
parking-sensor-sounder-fuse-good = El fusible está entero
parking-sensor-sounder-supply = alimentación y masa
parking-sensor-sounder-supply-text = Mide en el conector de la unidad de control, contacto dado: tensión de batería contra su masa.
parking-sensor-sounder-supply-good = 11,5 V o más
parking-sensor-sounder-switch = el botón
parking-sensor-sounder-switch-text = Pulsa una vez el botón de la ayuda de aparcamiento. Si está conectado, su testigo cambia.
parking-sensor-sounder-switch-good = El testigo cambia
parking-sensor-sounder-reverse = la señal de marcha atrás
parking-sensor-sounder-reverse-text = Mete la marcha atrás, contacto dado. ¿Se encienden las luces de marcha atrás?
parking-sensor-sounder-reverse-good = Se encienden
parking-sensor-sounder-itself = el zumbador
parking-sensor-sounder-itself-text = Busca el zumbador, aprieta su conector y mira si hay un cable roto.
parking-sensor-sounder-itself-good = Conector y cables están bien
parking-sensor-sounder-start = cómo se empieza la prueba
parking-sensor-sounder-start-text = Lee en los datos del vehículo cómo se empieza su autodiagnóstico. Radio apagada, volumen alto.
parking-sensor-sounder-start-good = Así lo empiezo
parking-sensor-sounder-control = la unidad de control
parking-sensor-sounder-control-text = Desenchufa la unidad de control, mira cada contacto y enchúfala hasta que suene el cierre.
parking-sensor-sounder-control-good = Contactos y cierre están bien
parking-sensor-sounder-rest = Alimentación, botón y zumbador están bien. Queda la unidad de control, o una prueba que este vehículo hace sin sonido.
