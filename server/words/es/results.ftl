### The possible results of a move: what would be seen. Each stands alone, or after its chance.

results-else = cualquier otra cosa
results-then-who = { $then }; { $who }
results-rarely = prueba otra vez antes de concluir nada
results-often = el paso siguiente se calcula con lo que anotes
results-or-at = { $result } (o solo en { $count ->
    [2] una
   *[other] algunas
})
results-checks-good = todas las comprobaciones están bien
results-check-bad = una comprobación está mal
results-ticks = hace tictac
results-silent = no se oye nada
results-shown-at = muestra fallo en { $position }
results-not-shown-at = no muestra fallo en { $position }
results-none = ningún fallo
results-none-this-time = esta vez, ningún fallo
results-fault = fallo en { $positions }
results-again = otra vez fallo en { $positions }
results-still = el fallo sigue en { $positions }
results-both = fallo en ambos: { $positions }
results-moves = { $only ->
    [yes] el fallo pasa solo a { $positions }
   *[no] el fallo pasa a { $positions }
}
results-stays = { $only ->
    [yes] el fallo se queda solo en { $positions }
   *[no] el fallo se queda en { $positions }
}
results-moves-and-stays = el fallo pasa a { $moved } y se queda en { $stayed }

## Positions, in a list that stays short.

results-every-position = todas las posiciones
results-every-at-edge = { $edge ->
    [rear] todas las posiciones traseras
    [front] todas las posiciones delanteras
    [left] todas las posiciones izquierdas
    [right] todas las posiciones derechas
   *[other] todas las posiciones de { $edge }
}
results-more = { $count } más
