### What two phones entered apart and what contradicts: who said what, and the question that settles it.

stories-progress = To settle
# $unit: 4KD-7F
stories-two-places = { CAP($unit) } in two places
# $sort: parking-sensor
# $position: right outer
stories-two-units = Two { PART($sort, form: "many") } at { $position }
# $unit: 4KD-7F
stories-where = Where is { $unit }?
stories-scan = Scan the label where it really is.
# $sort: parking-sensor
stories-asked = Where is the { PART($sort) } really?
stories-scan-now = Scan it now
# $tests: 2 and 3
# $count (count): 2
stories-waits = { $count ->
    [one] Test { $tests } counts once this is settled.
   *[other] Tests { $tests } count once this is settled.
}
# $code: P2W-9D
# $unit: 4KD-7F
stories-scan-wrong = This is { $code }. The question is about { $unit }.
# $unit: 4KD-7F
stories-scan-wrong-more = Look for { $unit } and scan that.

## Who did what; the name and the time stand before it.

# $position: right outer
stories-at = at { $position }
# $unit: 4KD-7F
# $place: at right outer
stories-fitted = fitted { $unit } { $place }
# $unit: 4KD-7F
# $position: right outer
stories-pulled = pulled { $unit } from { $position }
# $unit: 4KD-7F
# $place: stock
stories-put = { $place ->
    [stock] put { $unit } into stock
    [counter] gave { $unit } to the parts counter
    [customer] gave { $unit } to the customer
    [scrapped] scrapped { $unit }
   *[out] took { $unit } in hand
}
# $unit: 4KD-7F
# $place: at right outer
stories-found = found { $unit } { $place }
# $unit: 4KD-7F
stories-mixed = mixed up { $unit } with others
# $unit: 4KD-7F
# $place: at right outer
stories-on-record = On record before: { $unit } { $place }
# $positions: right outer and left inner
stories-test-fault = fault at { $positions }
stories-test-clean = no fault
# $proof: sounder not heard
stories-test-unheard = { $proof }
stories-closed = closed the job

## What is true.

# $place: at right outer
stories-answer = { CAP($place) }
# $place: in your stock
# $before: at right outer
# $tests: 2 and 3
# $count (count): 2
stories-answer-then = { $count ->
    [one] { CAP($place) } now; { $before } for test { $tests }
   *[other] { CAP($place) } now; { $before } for tests { $tests }
}
# $count (count): 2
stories-tests-title = One test, entered { $count ->
    [2] twice
   *[other] { $count } times
}?
# $count (count): 2
stories-tests-two = { $count ->
    [one] It was one test
    [2] They were two tests
   *[other] They were { $count } tests
}
# $phone: other
# $who: Ben
# $read: fault at right outer
stories-tests-one = { $phone ->
    [other] One test. Right: { $read } ({ $who })
   *[own] One test, and { $who } has it right: { $read }
}
# $who: Ben
# $phone: other
# $read: Test: fault at right outer
stories-corrected-one = { $phone ->
    [other] Right: { $read } ({ $who })
   *[own] { $who } has it right: { $read }
}
# $count (count): 2
stories-corrected-both = { $count ->
    [2] Both are right
   *[other] All are right
}
# $count (count): 2
stories-corrected-title = One entry, corrected in { $count ->
    [2] two ways
   *[other] { $count } ways
}
# $said: Test: fault at right outer.
stories-corrected-first = entered at first: { $said }
stories-corrected-asked = Which correction is right?
stories-took-back = took it back: it was not so
# $positions: right outer
# $count (count): 1
stories-silent = { $count ->
    [0] every position was reported on
   *[other] nothing was said about { $positions }
}
# $unit: 4KD-7F
stories-of-unit = it was { $unit }
# $field: plate
# $value: AB 12
stories-field = { $field ->
    [name] name: { $value }
    [called] position: { $value }
    [plate] plate: { $value }
    [vin] VIN: { $value }
    [complaint] complaint: { $value }
    [note] note: { $value }
    [compared] at the one that works: { $value }
    [part] part number: { $value }
    [serial] serial number: { $value }
    [model] model: { $value }
   *[value] measured: { $value }
}
# $field: plate
stories-field-none = { $field ->
    [plate] no plate
    [vin] no VIN
    [complaint] no complaint
    [note] no note
    [compared] nothing at the one that works
    [part] no part number
    [serial] no serial number
    [model] no model
   *[value] nothing measured
}
# $said: part number: PS-1
stories-before = On record before: { $said }
# $unit: 4KD-7F
# $count (count): 1
stories-numbers-title = { $count ->
    [1] Which number does { $unit } have?
   *[other] Which numbers does { $unit } have?
}
# $sort: parking-sensor
stories-numbers-asked = Read it off the { PART($sort) } once more.
# $units: 4KD-7F and K7F-3M
stories-mixed-title = Did { $units } get mixed up?
stories-mixed-yes = Yes, they got mixed up
stories-mixed-no = No: each is where it was put
stories-closed-title = Is this job done?
stories-go-on = No: go on with it
# $move: exchange
stories-settled-already = { $move ->
    [exchange] The tests have settled already what is wrong. The exchange can tell nothing more.
   *[other] The tests have settled already what is wrong. The next check can tell nothing more.
}
# $move: exchange
stories-go-on-without = { $move ->
    [exchange] No: go on without the exchange
   *[other] No: go on without that check
}
# $move: exchange
stories-go-on-with = { $move ->
    [exchange] No: finish the exchange first
   *[other] No: finish that check first
}
stories-close = Yes: close it
