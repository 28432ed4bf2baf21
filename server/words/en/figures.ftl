### How numbers, lists and dates are written. Every argument here is text that is ready.

figures-mark-decimal = .
figures-mark-group = ,
figures-mark-group-from = 5
figures-mark-minus = −

figures-percent = { $number } %
figures-percent-over = over { $number } %
figures-percent-under = under { $number } %

## A list grows by one item at a time: what stands before it, and the item.

figures-then = { $before }, { $item }
figures-and = { $before } and { $item }
figures-or = { $before } or { $item }

figures-day = { $day } { $month } { $year }
figures-time = { $hour }:{ $minute }
figures-moment = { $day }, { $time }
figures-month-1 = January
figures-month-2 = February
figures-month-3 = March
figures-month-4 = April
figures-month-5 = May
figures-month-6 = June
figures-month-7 = July
figures-month-8 = August
figures-month-9 = September
figures-month-10 = October
figures-month-11 = November
figures-month-12 = December
