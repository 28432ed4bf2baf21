### What the reasoning says of moves: why, and what their results would mean.

## What a result would mean; it stands after the result, so it begins small. `$share` is "none" where several results mean the same.

reasons-then-unlikely = no se espera; prueba otra vez antes de concluir nada
reasons-then-open = eso no decide nada; el paso siguiente se calcula entonces
reasons-then-gone = el fallo ha desaparecido por ahora; prueba otra vez
reasons-then-no-fault = no se ha visto ningún fallo; si va y viene, prueba otra vez
reasons-then-watched = la prueba vigila esta posición, así que sus resultados cuentan
reasons-then-not-watched = la prueba no vigila esta posición, así que salir sin fallo no prueba nada
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
