### How numbers, lists and dates are written. Every argument here is text that is ready.

figures-mark-decimal = ,
figures-mark-group = .
figures-mark-group-from = 5
figures-mark-minus = −

figures-percent = { $number } %
figures-percent-over = más del { $number } %
figures-percent-under = menos del { $number } %

## A list grows by one item at a time: what stands before it, and the item.

figures-then = { $before }, { $item }
figures-and = { $sounds ->
    [hi] { $before } e { $item }
    [i] { $before } e { $item }
    [im] { $before } e { $item }
    [in] { $before } e { $item }
    [iz] { $before } e { $item }
   *[other] { $before } y { $item }
}
figures-or = { $sounds ->
    [o] { $before } u { $item }
    [ot] { $before } u { $item }
    [ho] { $before } u { $item }
   *[other] { $before } o { $item }
}

figures-day = { $day } de { $month } de { $year }
figures-time = { $hour }:{ $minute }
figures-moment = { $day }, { $time }
figures-unknown-day = día desconocido
figures-unknown-time = hora desconocida
figures-month-1 = enero
figures-month-2 = febrero
figures-month-3 = marzo
figures-month-4 = abril
figures-month-5 = mayo
figures-month-6 = junio
figures-month-7 = julio
figures-month-8 = agosto
figures-month-9 = septiembre
figures-month-10 = octubre
figures-month-11 = noviembre
figures-month-12 = diciembre

figures-minutes = { $count ->
    [one] { $count } minuto
   *[other] { $count } minutos
}

## What a word and the article after it become: JOIN("de", $unit).

join-de-el = del
join-a-el = al

## A list some items of which are lists themselves.

figures-also = { $before }, y { $item }
