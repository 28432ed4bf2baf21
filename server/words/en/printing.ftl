### Printing labels: how they lie on paper, what will be hard to read, what a sheet says below them.

## A layout.

# $width: 26
# $height: 31.5
printing-size = { $width } x { $height } mm
# $paper: a4
# $columns (count): 7
# $rows (count): 8
# $size: 26 x 32 mm
printing-layout-sheet = { $paper ->
    [letter] US Letter
   *[a4] A4
}, { $columns } by { $rows } labels of { $size }
# $size: 30 x 20 mm
# $dpi: 203
printing-layout-roll = Roll, labels of { $size }, { $dpi } dpi
printing-layout-other = Another layout

## What comes out of it.

# $count (count): 3
printing-dots = { $count ->
    [one] { $count } dot
   *[other] { $count } dots
}
# $layout: A4, 7 by 8 labels of 26 x 32 mm
# $version: 4
# $level: Q
# $covered (count): 25
# $dots: 7 dots
# $length: 0.59
# $farthest (count): 23
printing-summary = { $layout }. Symbol version { $version }, level { $level } (about { $covered } % of it may be covered), { $dots } or { $length } mm a module; scans from up to { $farthest } cm.
# $dots: 3 dots
# $least (count): 4
printing-too-fine = Too fine for this printer: a module is { $dots } wide, and fewer than { $least } smear.
# $distance (count): 20
# $length: 0.38
# $farthest (count): 12
printing-too-small = Too small to scan from { $distance } cm: a module of { $length } mm scans from up to { $farthest } cm.
# $side (count): 24
printing-larger = The symbol wants { $side } mm with its margin: take larger labels or a shorter distance.
# $high: 1.9
printing-type-small = The code in letters is only { $high } mm high. Where the symbol is dirty, nobody can type it.
# $edge: 1.6
# $left: 0.4
printing-near-edge = The print comes to { $left } mm of the label's edge. Labels that are cut already want { $edge } mm: parts of a code may be lost.
# $dots (count): 4
# $pixels (count): 3
# $across: 1280
# $degrees (count): 65
printing-rule = The rule: a module is the smallest square of the symbol. It is at least { $dots } dots of the printer (qrcode.com). It is at least { $pixels } pixels of the camera's picture (measured with this app's reader). A picture of { $across } pixels for { $degrees } degrees is assumed; phones differ.

## At the foot of a sheet.

# $length (count): 100
# at most 85 characters
printing-note-scale = Print at 100 %, not "fit to page", on matt stock. The bar is { $length } mm long.
# $address: https://yard.example.org
# at most 85 characters
printing-note-address = These labels belong to { $address } and open there only.

## What is wanted of a layout, and what was found.

# $options: a4, letter
printing-wanted-one-of = one of { $options }
printing-wanted-yes-or-no = yes or no
printing-wanted-no-roll = nothing beside a roll: it is an option of sheets
# $example: 30x20
printing-wanted-lengths = two lengths in millimetres with an x between, such as { $example }
# $most (count): 40
printing-wanted-grid = columns and rows with an x between, 1 to { $most } each, such as 7x8
# $least: 8
printing-wanted-few = few enough for labels of { $least } mm and more
# $least: 8
# $most: 300
printing-wanted-sides = sides of { $least } to { $most } mm
# $columns (count): 7
# $rows (count): 8
# $size: 40 x 30 mm
# $span: 280
# $side: wide
printing-found-span = "{ $columns } by { $rows } labels of { $size }: { $span } mm { $side ->
    [wide] wide
   *[high] high
}"
# $dots: 1 dot
# $layout: Roll, labels of 8 x 40 mm, 203 dpi
printing-found-dots = { $layout }: modules of { $dots }, which nothing can read
# $side: 17
printing-wanted-dots = labels with { $side } mm for the symbol, or that you force it
# $most: 210
printing-wanted-span = at most { $most } mm, margin included
# $address: https://yard.example.org
printing-wanted-room = labels that have room for a symbol with the address { $address }
# $least (count): 5
# $most (count): 100
printing-wanted-distance = { $least } to { $most } cm
