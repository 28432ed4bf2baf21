### How numbers, lists and dates are written. Every argument here is text that is ready.

figures-mark-decimal = .
figures-mark-group = ,
figures-mark-group-from = 5
figures-mark-minus = −

# $number: 95.3
figures-percent = { $number } %
# $number: 95.3
figures-percent-over = over { $number } %
# $number: 95.3
figures-percent-under = under { $number } %

## A list grows by one item at a time: what stands before it, and the item.

# $before: left outer
# $item: right outer
figures-then = { $before }, { $item }
# $before: left outer, left inner
# $item: right outer
# $sounds: ri
figures-and = { $before } and { $item }
# $before: left outer, left inner
# $item: right outer
# $sounds: ri
figures-or = { $before } or { $item }

# $day: 28
# $month: November
# $year: 2026
figures-day = { $day } { $month } { $year }
# $hour: 09
# $minute: 05
figures-time = { $hour }:{ $minute }
# $day: 28 November 2026
# $time: 09:05
figures-moment = { $day }, { $time }
figures-unknown-day = unknown day
figures-unknown-time = unknown time
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

# $count (count): 12
figures-minutes = { $count ->
    [one] { $count } minute
   *[other] { $count } minutes
}

## A list some items of which are lists themselves.

# $before: left outer and left inner
# $item: right outer
# $sounds: ri
figures-also = { $before }, and { $item }
