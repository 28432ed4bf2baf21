### What each entry says, in the history of a job: one message a kind of entry.

# $vehicle: Blue estate
# $complaint: it beeps all the time
facts-job-opened = Job opened on { $vehicle }: { $complaint }
# $vehicle: Blue estate
facts-job-opened-without-complaint = Job opened on { $vehicle }: no complaint
# $unit: K7F-3M
# $position: right outer
# $reason: tested there
facts-left-fitted = { CAP($unit) } stays at { $position }: { $reason }.
# $position: right outer
# $reason: left empty
facts-left-empty = { CAP($position) } stays empty: { $reason }.
# $seq: 12
# $reason: wrong position
facts-taken-back = Taken back entry { $seq }: { $reason }
# $seq: 12
# $entry: test 1 was not heard
facts-put-right = Put right entry { $seq }: { $entry }
facts-job-closed = Job closed.
# $why: customer
facts-job-closed-unrepaired = Job closed without a repair: { $why ->
    [customer] the customer stops here
    [no_part] the part is not to be had
    [elsewhere] it is repaired elsewhere
    [not_worth] it is not worth it
    [not_found] the cause was not found
   *[other] another reason
}.
# $why: part
facts-paused = Job paused: { $why ->
    [part] waiting for a part
    [customer] waiting for the customer
    [weather] waiting for weather or light
    [help] waiting for help or a tool
   *[other] waiting
}.
# $part: PS-1
facts-paused-part = To order: { $part }.
# $to: Ben
facts-handed-over = Handed over to { $to }.
facts-resumed = Work goes on.
# $positions: right outer and left outer
facts-heard-ticks = ticking at { $positions }
# $positions: right outer and left outer
facts-heard-nothing = nothing to hear at { $positions }
facts-heard-none = nobody said where
# $found: ticking at right outer
facts-listened = Listened: { $found }.
# $one: ticking at right inner
# $other: nothing to hear at right outer
facts-listened-both = Listened: { $one }; { $other }.
# $sort: parking-sensor
# $check: the fuse
# $found: good
facts-sounder-checked = { PART($sort, form: "unproven") }, so checked { $check }: { $found ->
    [good] fine
    [mended] found and put right
   *[unclear] not clear
}.

# $caution: Key off to unplug
facts-caution-read = Caution read: { $caution }.
# $when: key_on
# $result: not_as_it_should
facts-lamp = Lamp at { $when ->
    [key_on] key-on
   *[reverse] reverse
}: { $result ->
    [as_it_should] as it should be
    [not_as_it_should] not as it should be
    [never_on] never came on
    [stays_on] stays on
    [flashes] flashes
   *[not_sure] not sure
}.
# $seen: dirt at left outer and ice at left inner
facts-looked = Looked: { $seen }.
facts-nothing-seen = Looked: nothing to see.
# $found: dirt
# $position: left outer
facts-seen-at = { $found } at { $position }
# $position: left outer
facts-picture-of-position = Picture of { $position }.
# $when: before
# $position: left outer
facts-picture-of-repair = Picture { $when ->
    [before] before
   *[after] after
} the repair{ $position ->
    [none] .
   *[other] { " " }at { $position }.
}
# $positions: right outer and left outer
facts-pictures-skipped = Went on without a picture of { $positions }.
# $shows: unit
# $sort: parking-sensor
facts-picture = Picture of { $shows ->
    [unit] { PART($sort, form: "the") }
    [screen] the screen
    [position] the position
   *[work] the work
}.
# $walk: walk-behind check
# $heard: left inner stayed quiet
facts-walk = { CAP($walk) }: { $heard }.
# $how: temperature
# $position: right outer
# $tape: 50
# $shown: 54
# $celsius: -20
facts-distance = { CAP($position) }: { $shown } cm shown, { $tape } cm by tape. { $how ->
    [fits] That fits
    [temperature] Air of { $celsius } °C can explain it
   *[off] That is off: look at its aim and seat, and at what else stands near
}.

# $sort: parking-sensor
# $proof: sounder not heard
facts-test-not-heard = { CAP(PART($sort, form: "test")) }, { $proof }.
# $sort: parking-sensor
# $positions: left outer and left inner
facts-test-fault = { CAP(PART($sort, form: "test")) }: fault at { $positions }.
# $sort: parking-sensor
facts-test-good = { CAP(PART($sort, form: "test")) }: no fault.
# $what: water
facts-test-provoked = Before it: { $what }.
# $what: water
facts-provoked = { $what ->
    [at_once] nothing, straight again
    [water] water
    [heat] heat
    [cold] cold
    [loom] wiggling the wiring
    [drive] a drive
   *[another_day] another day
}
# $position: left outer
facts-cleaned = Cleaned { $position }.
# $position: left outer
facts-connector-locked = Connector locked at { $position }.
# $position: left outer
facts-fit-checked = Fit checked at { $position }.
# $check: Look into the connector
# $position: left outer
# $reads: good
facts-measured = { CAP($check) } at { $position }: { $reads ->
    [good] good
    [bad] bad
   *[unclear] unclear
}.
# $check: Measure the supply
# $position: left outer
# $reads: bad
# $value: 8.1
# $unit: V
facts-measured-value = { CAP($check) } at { $position }: { $reads ->
    [good] good
    [bad] bad
   *[unclear] unclear
} ({ $value }{ $unit ->
    [none] { "" }
   *[other] { " " }{ $unit }
}).
# $value: 12.1
# $unit: V
facts-measured-compared = Where it works: { $value }{ $unit ->
    [none] { "" }
   *[other] { " " }{ $unit }
}.
# $reason: the leads read 0.6
facts-measured-all-the-same = All the same, because: { $reason }.
# $cause: the wiring at left outer
facts-repaired = Repaired: { $cause }.
# $cause: the wiring at left outer
# $where: sensor plug
facts-repaired-where = Repaired: { $cause }, { $where }.
# $what: Pin seated and locked
facts-repaired-what = What was done: { $what }
# $check: measure the ground wire
# $position: left outer
# $warm: , warmed with hot air
# $reason: out of reach now
facts-reading-not-retaken = { CAP($check) } at { $position }{ $warm }: not done again, { $reason }.
# $what: heat
# $after: heat
facts-reading-after = { $what ->
    [heat] , warmed with hot air
    [drive] , warm from a long drive
   *[other] , after { $after }
}
# $position: left outer
# $size: 0.5 mm²
# $metres: 4.50
# $celsius: 20
facts-wire-noted = Wire at { $position }: { $size }, { $metres } m, { $celsius } °C.
# $position: left outer
facts-wires-marked = Wires at { $position }.
# $colour: white and blue
facts-wire-colour = Colour: { $colour }.
# $line: signal
# $colour: white and blue
facts-wire-colour-of = { $line ->
    [signal] Signal wire
    [supply] Supply wire
   *[ground] Ground wire
}: { $colour }.
# $pins: 1 signal, 2 supply, 3 ground
facts-wire-pins = Pins: { $pins }.

# $sort: parking-sensor
facts-a-unit = { PART($sort, form: "a") }
# $unit: K7F-3M
facts-unit-added = { CAP($unit) } added.
# $unit: K7F-3M
# $part: 4L0014
facts-unit-added-with-part = { CAP($unit) } added, part { $part }.
# $code: K7F-3M
# $how: scanned
facts-unit-labelled = Label { $code } put on ({ $how }).
# $code: K7F-3M
# $reason: torn off
facts-label-void = Label { $code } void: { $reason }
# $unit: K7F-3M
# $part: 4L0014
facts-part-noted = { CAP($unit) }: part { $part }.
# $unit: K7F-3M
# $serial: 0815
facts-serial-noted = { CAP($unit) }: serial { $serial }.
# $unit: K7F-3M
# $part: 4L0014
# $serial: 0815
facts-numbers-noted = { CAP($unit) }: part { $part } { $serial }.

## How it was known which one it is.

# $chosen: typed
facts-how = { $chosen ->
    [scanned] scanned
    [typed] code typed
    [tapped] no scan
    [written] code by hand
   *[other] { $chosen }
}

## Where it went.

# $unit: K7F-3M
# $position: left outer
# $how: scanned
facts-unit-pulled = { CAP($unit) } pulled from { $position } ({ $how }).
# $unit: K7F-3M
# $position: left outer
# $how: scanned
facts-unit-fitted = { CAP($unit) } fitted at { $position } ({ $how }).
# $reason: the successor of the old one
facts-unit-fitted-other-part = Another part number, because: { $reason }
facts-unit-fitted-hanging = It hangs on its wire, not pushed home.
# $unit: K7F-3M
# $place: in your stock
facts-unit-moved = { CAP($unit) } is now { $place }.
# $tests: 2 and 3
# $count (count): 2
facts-tests-told-apart = { $count ->
    [0] Tests were told apart.
    [one] Test { $tests } was a test of its own.
   *[other] Tests { $tests } were tests of their own.
}
facts-work-went-on = The work went on after the closing.
# $unit: K7F-3M
# $position: left outer
facts-unit-seen-fitted = { CAP($unit) } seen at { $position }.
# $unit: K7F-3M
# $place: in your stock
facts-unit-seen = { CAP($unit) } seen { $place }.
# $units: K7F-3M and E6D-Y9
facts-units-mixed = { CAP($units) } got mixed up: which is which is not known.
# $seen: K7F-3M
# $expected: E6D-Y9
facts-mixup-stopped = Stopped: { $seen } was held where { $expected } belongs.
# $move: exchange
# $positions: left outer and left inner
facts-exchange-begun = { $move ->
    [replace] Replacement
    [home] Putting back
   *[exchange] Exchange
} begun: { $positions }.
# $move: clean
# $positions: left outer
facts-move-begun-at = Begun: { $move ->
    [clean] clean
    [unplug] unplug
    [meter] wiring checks
   *[retest] test again
} at { $positions }.
# $move: retest
facts-move-begun = Begun: { $move ->
    [clean] clean
    [unplug] unplug
    [meter] wiring checks
   *[retest] test again
}.
# $reason: stopped by hand
facts-move-dropped = Move given up: { $reason }.

facts-comes-and-goes = The fault comes and goes.
facts-stays = The fault does not come and go.
facts-rates-set = Assumptions changed.
# $jobs (count): 52
facts-rates-learned = Rates taken from { $jobs } own jobs.
# $jobs (count): 52
facts-minutes-learned = Minutes taken from { $jobs } own jobs.
# $position: left outer
facts-code-counts = The failure type of the code at { $position } counts towards the cause.
# $position: left outer
facts-code-does-not-count = The failure type of the code at { $position } does not count towards the cause.
# $position: left outer
# $minutes: 12 minutes
facts-reach-set = { CAP($position) }: { $minutes } until a hand is on it.
facts-money-set = Labour and prices set.
# $count (count): 12
facts-labels-printed = { $count ->
    [one] { $count } label printed.
   *[other] { $count } labels printed.
}
# $count (count): 3
# $reason: the paper jammed
facts-labels-spoiled = { $count ->
    [one] { $count } printed label out of use: { $reason }
   *[other] { $count } printed labels out of use: { $reason }
}

# $unit: K7F-3M
# $how: scanned
facts-return-received = { CAP($unit) } is at the parts counter, in the clerk's hand ({ $how }).
# $numbers: 4L0014 0815
facts-return-numbers = Read off it: { $numbers }.
# $unit: K7F-3M
# $maker: North yard
facts-record-received = The record of { $unit } that { $maker } sealed was checked and is kept here.
# $unit: K7F-3M
# $decision: accept
# $signed: R. Clerk
facts-return-decided = { CAP($unit) } { $decision ->
    [accept] accepted
    [hold] held
   *[refuse] refused
} at the parts counter, signed by { $signed }.
# $reason: the maker asked for it
facts-return-overruled = Against the record, because: { $reason }

# $factor (count): 6
# $months (count): 6
facts-comeback-set = A position repaired before counts { $factor } times at first; half of that goes in { $months } months.
