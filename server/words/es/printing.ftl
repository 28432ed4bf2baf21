### Printing labels: how they lie on paper, what will be hard to read, what a sheet says below them.

## A layout.

printing-size = { $width } x { $height } mm
printing-layout-sheet = { $paper ->
    [letter] US Letter
   *[a4] A4
}, { $columns } por { $rows } etiquetas de { $size }
printing-layout-roll = Rollo, etiquetas de { $size }, { $dpi } ppp
printing-layout-other = Otra disposición

## What comes out of it.

printing-dots = { $count ->
    [one] { $count } punto
   *[other] { $count } puntos
}
printing-summary = { $layout }. Símbolo de versión { $version }, nivel { $level } (se puede tapar cerca del { $covered } %), { $dots } o { $length } mm por módulo; se lee hasta a { $farthest } cm.
printing-too-fine = Demasiado fino para esta impresora: un módulo mide { $dots } de ancho, y con menos de { $least } se emborrona.
printing-too-small = Demasiado pequeño para leerlo a { $distance } cm: un módulo de { $length } mm se lee hasta a { $farthest } cm.
printing-larger = El símbolo necesita { $side } mm con su margen: usa etiquetas más grandes o una distancia menor.
printing-type-small = El código en letras solo mide { $high } mm de alto; si el símbolo se ensucia, nadie podrá teclearlo.
printing-near-edge = Lo impreso llega a { $left } mm del borde de la etiqueta. Las etiquetas ya cortadas piden { $edge } mm: puede perderse parte de un código.
printing-rule = La regla: un módulo, el cuadrado más pequeño del símbolo, mide al menos { $dots } puntos de la impresora (qrcode.com) y { $pixels } píxeles de la imagen de la cámara (medido con el lector de esta aplicación). Se supone una imagen de { $across } píxeles para { $degrees } grados; cada teléfono es distinto.

## At the foot of a sheet.

printing-note-scale = Imprime al 100 %, sin "ajustar a la página", en papel mate. La barra mide { $length } mm.
printing-note-address = Estas etiquetas son de { $address } y solo se abren allí.

## What is wanted of a layout, and what was found.

printing-wanted-one-of = uno de { $options }
printing-wanted-yes-or-no = yes o no
printing-wanted-no-roll = nada junto a un rollo: es una opción de las hojas
printing-wanted-lengths = dos medidas en milímetros con una x en medio, como { $example }
printing-wanted-grid = columnas y filas con una x en medio, de 1 a { $most } cada una, como 7x8
printing-wanted-few = menos, para etiquetas de { $least } mm o más
printing-wanted-sides = lados de { $least } a { $most } mm
printing-found-span = "{ $columns } por { $rows } etiquetas de { $size }: { $span } mm de { $side ->
    [wide] ancho
   *[high] alto
}"
printing-found-dots = { $layout }: módulos de { $dots }, que nada puede leer
printing-wanted-dots = etiquetas con { $side } mm para el símbolo, o que lo fuerces
printing-wanted-span = como máximo { $most } mm, con el margen
printing-wanted-room = etiquetas con sitio para un símbolo con la dirección { $address }
printing-wanted-distance = de { $least } a { $most } cm
