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
causes-segment = { $segment ->
    [pins] contactos { JOIN("de", PART($sort, form: "the")) }
    [connector] conector { JOIN("de", PART($sort, form: "the")) }
    [wire] cable
    [loom] cable a la unidad de control
    [splice] conector intermedio
    [control-plug] { PART($sort, form: "control-plug") }
    [channel] { PART($sort, form: "inside-control") }
    [supply] alimentación o fusible
    [ground] punto de masa
    [spark-plug] bujía
    [ring] corona que lee
    [hinge] cables en la bisagra de la puerta
   *[other] { $segment }
}
causes-fix-control = Revisa la alimentación, la masa y el conector de la propia unidad de control antes de sospechar de ella.
