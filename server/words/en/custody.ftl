### Who held a unit: each handover, how the unit was identified at it, its labels, where it could be.

## What was done with it.

# $position: right outer
# $vehicle: Estate, blue
custody-fitted-at = Fitted at { $position } of { $vehicle }
# $vehicle: Estate, blue
custody-fitted = Fitted on { $vehicle }
# $position: right outer
# $vehicle: Estate, blue
custody-pulled = Pulled from { $position } of { $vehicle }
# $vehicle: Estate, blue
custody-in-hand-for = Taken in hand for { $vehicle }
custody-in-hand = Taken in hand
custody-stock = Put into stock
custody-counter = Handed to the parts counter
custody-customer = Given to the customer
custody-scrapped = Scrapped
custody-disputed = Two places on record
custody-displaced = Not where it was on record
custody-mixed = Got mixed up with others
custody-told-apart = Told apart again
# $code: K7F-3M
custody-label-on = Label { $code } put on
custody-label-on-unread = Label put on
# $code: K7F-3M
custody-label-off = Label { $code } taken out of use
custody-label-off-unread = Label taken out of use
# $what: lent
custody-else = { CAP($what) }
custody-no-name = no name
# $reason: the maker's newer number
custody-other-part = Another part number, because: { $reason }

## How it was identified.

# $how: scanned
custody-how = { $how ->
    [scanned] label scanned
    [typed] code typed in
    [tapped] not scanned
    [written] code written by hand
   *[other] { $how }
}
# $how: typed
custody-how-labelled = label put on at once, { $how ->
    [scanned] scanned
    [typed] code typed in
    [written] code written by hand
   *[other] { $how }
}

## The whole custody in one sentence.

custody-short-none = It has not been moved since it was first seen.
# $how: scanned
custody-short-way = { $how ->
    [scanned] with its label scanned
    [typed] with its code typed in
    [written] with its code written by hand
   *[tapped] without a scan
}
# $count (count): 3
# $way: with its label scanned
custody-short-one = { $count ->
    [one] { $count } handover, { $way }.
   *[other] { $count } handovers, each { $way }.
}
# $count (count): 2
# $way: with its label scanned
custody-short-counted = { $count } { $way }
# $count (count): 3
# $ways: 2 with its label scanned and 1 without a scan
custody-short-several = { $count ->
    [one] { $count } handover
   *[other] { $count } handovers
}: { $ways }.

## Its labels.

# $sort: parking-sensor
custody-label-now = On the { PART($sort) } now.
custody-label-void = Void.
# $note: torn in the car wash
custody-label-void-note = Void: { $note }.
# $codes: K7F-3M and P4C-8T
# $sort: parking-sensor
custody-label-double = { $codes } are on record for one { PART($sort) }. Look which label is on it; take the other out of use.
# $code: K7F-3M
# $sort: parking-sensor
custody-label-shared = Two { PART($sort, form: "many") } carry the label { $code }. Take it off one of them, and out of use there.

## Where it could be.

# $place: stock
custody-place = { $place ->
    [stock] in your stock
    [counter] at the parts counter
    [customer] with the customer
    [scrapped] scrapped
   *[out] in hand
}
# $position: right outer
# $vehicle: Estate, blue
custody-place-fitted = fitted at { $position } of { $vehicle }
