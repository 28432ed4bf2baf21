### Causas de un fallo, como partes de una frase, y qué hacer con ellas.

causes-unit = { $count ->
    [one] { PART($sort, form: "the") }
   *[other] { PART($sort, form: "the-many") }
} { $unit }
causes-circuit = { PART($sort, form: "circuit") } en { $position }
causes-circuit-again = { PART($sort, form: "circuit") } en { $position } (tras la reparación)
causes-blocked = { $blocked } en { $position }
causes-feed = la alimentación o la masa de { PART($sort, form: "the-many") } del lado { $group }
causes-feed-again = la alimentación o la masa de { PART($sort, form: "the-many") } del lado { $group } (tras la reparación)
causes-control = la unidad de control
causes-control-again = la unidad de control (tras la reparación)
causes-new = { PART($sort, form: "the-new") }
causes-group = { $group ->
    [rear] trasero
    [front] delantero
    [left] izquierdo
   *[right] derecho
}
causes-fix-unit = Sustituye { $cause }.
causes-fix-circuit = Búscalo en { PART($sort, form: "wiring") } de { $position }.
causes-fix-blocked = Limpia { $position } y { $check }.
causes-fix-feed = Mide la alimentación y la masa que comparten { PART($sort, form: "the-many") } del lado { $group }.
causes-fix-control = Revisa la alimentación, la masa y el conector de la propia unidad de control antes de sospechar de ella.
