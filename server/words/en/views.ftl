### Jobs, units, returns and reports: what their pages show, and what the customer reads.

## What a line begins with.

# $words: the sensor from right outer
views-heading = { CAP($words) }

## The parts counter.

views-counter-by-hand = Looked at by hand
views-counter-agreed = Agreed on the phone
views-counter-record-later = The record comes later
# $decision: accept
views-counter-decide = { $decision ->
    [accept] Accept
    [hold] Hold
   *[refuse] Refuse
}
# $decision: accept
views-counter-decided = { $decision ->
    [accept] Accepted
    [hold] Held
   *[refuse] Refused
}
# $place: stock
views-counter-then = { $place ->
    [stock] Put into stock
    [customer] Handed back
   *[scrapped] Scrapped
}
# $position: right outer
# $vehicle: Estate, blue
views-counter-origin = { $position } of { $vehicle }
views-counter-all-for-it = Everything on record speaks for it
# $sort: parking-sensor
views-counter-picture = { PART($sort, form: "the") }
# $ago: 2 days ago
views-counter-labelled = With its label at the bench, { $ago }

## The returns of a unit.

# $how: scanned
views-returned-received = Received at the counter, { $how ->
    [scanned] label scanned
    [typed] code typed in
    [tapped] not scanned
   *[other] { $how }
}.
# $part: 12-3456
# $serial: 7890
views-returned-read-both = Read off it: part { $part }, serial { $serial }.
# $part: 12-3456
views-returned-read-part = Read off it: part { $part }.
# $serial: 7890
views-returned-read-serial = Read off it: serial { $serial }.
# $decision: accept
views-returned-decided = { $decision ->
    [accept] Accepted
    [hold] Held
   *[refuse] Refused
}.
# $proposed: hold
# $because: Looked at by hand
views-returned-overruled = The record spoke for: { $proposed ->
    [accept] accepted
    [hold] held
   *[refuse] refused
}. Decided otherwise because: { $because }.
# $about: custody and pictures
views-returned-against = What stood against it: { $about }.
# $actor: Jo
# $signed: Kim
views-returned-signed = { $actor } recorded it, in the name of { $signed }.
# $name: Jo
views-returned-phone = It was signed on the phone of { $name }.

## What the tests of a job say about a unit.

# $sure: 98.8 %
views-finding-sure = { $sure } sure.
# $sort: parking-sensor
views-finding-cleared = It was not this { PART($sort) }.
# $sort: parking-sensor
# $chance: 3.2 %
views-finding-chance = Chance that this { PART($sort) } is bad: { $chance }.

## A job.

# $mark: fault
views-job-mark = { $mark ->
    [fault] fault
    [clean] clean
    [aside] set aside
    [empty] empty
   *[untested] not tested
}
views-job-entry-newer = Recorded by a newer version of this app. It is kept, and counts once this app is as new.
views-job-entry-unknown = An entry that this app does not understand. It is kept.

# $how: said
# $actor: Bo
# $name: Ana
views-history-phone = { $how ->
    [shared] { $actor }, on the phone of { $name }
    [nobody] on the phone of { $name }, without a name
   *[said] said by { $actor } on the phone of { $name }
}
# $actor: Bo
views-history-not-said = Nobody has said that { $actor } uses this phone.
# $role: counter
views-history-role = { $role ->
    [counter] A phone of the parts counter recorded this. It is for the bench to record.
   *[bench] A phone of the bench recorded this. It is for the parts counter to record.
}

## What a job comes to.

# $unit: K7F-3M
# $position: right outer
views-summary-new = { CAP($unit) } is new at { $position }.
# $unit: K7F-3M
# $place: in your stock
views-summary-off = { CAP($unit) } came off; it is { $place }.
views-summary-loose = not put away yet

## The report for the customer.

views-report-finished = The job is finished.
views-report-unrepaired = The job ended without a repair.
views-report-unfinished = The job is not finished. This is what is known so far.
views-report-untested = Nothing has been tested yet.
views-report-several = Several faults were found.
views-report-several-over = The faults were found and put right.
views-report-no-fault = No test has shown a fault.
views-report-gone = The fault is gone.
views-report-uncertain = The cause is not certain yet.
# $sort: parking-sensor
views-report-unit = One of the { PART($sort, form: "full-many") } is bad.
# $sort: parking-sensor
views-report-unit-over = One of the { PART($sort, form: "full-many") } was bad and has been taken out.
# $sort: parking-sensor
# $where: right outer
views-report-circuit = { CAP(PART($sort, form: "circuit")) } at { $where } is at fault.
# $sort: parking-sensor
# $where: right outer
views-report-circuit-over = { CAP(PART($sort, form: "circuit")) } at { $where } was at fault and has been repaired.
# $sort: parking-sensor
# $where: right outer
# $state: covered or misaligned
views-report-blocked = The { PART($sort) } at { $where } is { $state }.
# $sort: parking-sensor
# $where: right outer
# $state: covered or misaligned
views-report-blocked-over = The { PART($sort) } at { $where } was { $state }.
# $sort: parking-sensor
# $where: rear
views-report-feed = The supply of the { $where } { PART($sort, form: "many") } is at fault.
# $sort: parking-sensor
# $where: rear
views-report-feed-over = The supply of the { $where } { PART($sort, form: "many") } was at fault.
views-report-control = The control unit is at fault.
views-report-control-over = The control unit was at fault.
# $sort: parking-sensor
# $positions: right inner and right outer
views-report-first-fault = { CAP(PART($sort, form: "whose-test")) } showed a fault at { $positions }.
# $sort: parking-sensor
# $unit: sensor K7F-3M
# $first: right outer
# $last: left outer
views-report-unit-moved = { CAP($unit) } was moved from { $first } to { $last }, and the fault moved along with it. A fault in the wiring would have stayed behind. So the { PART($sort) } itself is bad.
# $unit: sensor K7F-3M
views-report-unit-left = { CAP($unit) } is bad: that is what the tests leave as the explanation.
# $sort: parking-sensor
# $position: right outer
views-report-circuit-stayed = Another { PART($sort) } was fitted at { $position }, and the fault stayed there. So the { PART($sort) } is good. The fault is in that position's { PART($sort, form: "wiring") }.
# $sort: parking-sensor
# $position: right outer
views-report-circuit-left = The fault is in the { PART($sort, form: "wiring") } at { $position }.
# $sort: parking-sensor
# $obstruction: dirt, ice, thick paint or a wrong aim
# $position: right outer
views-report-blocked-found = { CAP($obstruction) } at { $position } kept a good { PART($sort) } from working.
# $sort: parking-sensor
# $group: rear
views-report-feed-found = The { $group } { PART($sort, form: "many") } share one supply and ground. The fault is there, not in the { PART($sort, form: "many") }.
# $sort: parking-sensor
views-report-control-found = The { PART($sort, form: "many") } and their wires are good. The fault is in the control unit or its own supply.
# $sort: parking-sensor
# $count (count): 3
# $heard: whose sounder was heard
views-report-rests = worked out from { $count ->
    [one] { $count } { PART($sort, form: "test") }
   *[other] { $count } { PART($sort, form: "tests") }
} { $heard }
# $sure: 98.8 %
# $rests: worked out from 3 self-tests whose sounder was heard
views-report-sure = How sure this is: { $sure }, { $rests }.
# $cause: the wiring at right outer
# $chance: 1.1 %
views-report-else = What else it could be: { $cause }, { $chance }.
# $sure: 98.8 %
# $rests: worked out from 3 self-tests whose sounder was heard
views-report-clear = That nothing is left to fix: { $sure } sure, { $rests }.
# $sort: parking-sensor
# $count (count): 2
# $sure: 98.8 %
views-report-clean-tests = { $count ->
    [one] { $count } { PART($sort, form: "test") }
   *[other] { $count } { PART($sort, form: "tests") } in a row
} without any fault at the end. That nothing is left to fix: { $sure } sure.
# $against: water, wiggling the wiring and another day
views-report-against = Tested after: { $against }.
# $check: Walk-behind check with a pole
# $heard: every sensor sounded
views-report-walk = { $check }: { $heard }.
# $check: measure the ground wire
# $position: right outer
# $warm: , warmed with hot air
# $stands: good
# $before: (12 Ω)
# $now: (0.2 Ω)
# $reason: out of reach now
views-report-reading = { CAP($check) } at { $position }{ $warm }: bad{ $before } before the repair, { $stands ->
    [good] good{ $now } after it.
    [left] not done again: { $reason }.
    [still] still bad{ $now } after it.
   *[again] not done again yet.
}
# $value: 12
# $unit: Ω
views-report-figure = { " " }({ $value }{ $unit ->
    [none] )
   *[other] { " " }{ $unit })
}
views-report-unproven = Nothing proves a repair yet.
# $sort: parking-sensor
views-report-not-proven = The repair is not proven. Do not rely on the { PART($sort, form: "system") } until it is.
views-report-came-and-went = This fault came and went. If it shows again, note the weather and what you did, and come back.
# $sort: parking-sensor
views-report-not-back = Not every { PART($sort) } is back in its place yet.
# $sort: parking-sensor
# $shows: screen
views-report-photo = { $shows ->
    [screen] Screen of the { PART($sort, form: "test") }
    [work] The work
   *[unit] { CAP(PART($sort, form: "a")) }
}

## What was done, test by test, for the customer.

# $sort: parking-sensor
# $number: 2
# $why: its sounder was not heard
views-work-not-heard = { CAP(PART($sort, form: "test")) } { $number }: { $why }, so it does not count.
# $sort: parking-sensor
# $number: 2
# $positions: right inner and right outer
views-work-fault = { CAP(PART($sort, form: "test")) } { $number }: fault at { $positions }.
# $sort: parking-sensor
# $number: 2
views-work-clean = { CAP(PART($sort, form: "test")) } { $number }: no fault.
views-work-not-tested = Not tested since.
# $position: right outer
views-work-cleaned = Cleaned { $position }.
# $cause: the wiring at right outer
views-work-repaired = Repaired { $cause }.
# $cause: the wiring at right outer
# $where: sensor plug
views-work-repaired-where = Repaired { $cause }, { $where }.
# $what: Pin seated and locked
views-work-done = What was done: { $what }.
# $positions: right inner and right outer
views-work-unplugged = Unplugged { $positions } for the test.
# $sort: parking-sensor
# $positions: right inner and right outer
views-work-exchanged = Exchanged the { PART($sort, form: "many") } at { $positions }.
# $sort: parking-sensor
# $positions: right outer
views-work-moved = Moved { PART($sort, form: "a") } to { $positions }.
# $sort: parking-sensor
# $unit: K7F-3M
# $position: right outer
views-work-fitted = Fitted { PART($sort) } { $unit } at { $position }.
# $sort: parking-sensor
# $positions: right outer
views-work-taken-out = Took out the { PART($sort) } at { $positions }.

## What a verdict rests on.

views-support-others = Others matter too, but less.
# $how_many: one
# $tests: 3
views-support-confirms = { $how_many ->
    [one] Test { $tests } confirms it; without it this still stands.
   *[several] Tests { $tests } confirm it; without any one of them this still stands.
}
# $position: right outer
views-support-checks-carry = The checks of the wiring at { $position } carry this: without them
# $position: right outer
views-support-heard-carries = What was heard at { $position } carries this: without it
# $how_many: several
# $tests: 1 and 3
views-support-tests-carry = { $how_many ->
    [one] Test { $tests } carries this: without it
   *[several] Tests { $tests } carry this: without any one of them
}
# $carrier: Test 3 carries this: without it
# $sure: 62 %
views-support-weaker = { $carrier }, you would be only { $sure } sure.
# $carrier: Test 3 carries this: without it
views-support-nothing-left = { $carrier }, nothing would point to a cause.
# $carrier: Test 3 carries this: without it
# $cause: the wiring at right outer
views-support-as-likely = { $carrier }, { $cause } would be just as likely.
# $carrier: Test 3 carries this: without it
# $cause: the wiring at right outer
# $chance: 62 %
views-support-other = { $carrier }, it would most likely be { $cause }, { $chance }.
# $positions: right inner
views-support-fault-at = the fault at { $positions }
# $positions: right inner
views-support-clean-at = that { $positions } tested clean
# $readings: the fault at right inner
views-support-counts = What counts is { $readings }.
# $chance: 96.2 %
views-support-none-alone = No single test carries this: leave out any one of them, and the others still make it { $chance }.
# $count (count): 2
views-support-alone = No other { $count ->
    [0] set of no causes
    [1] single cause
    [2] pair of causes
    [3] set of three causes
    [4] set of four causes
   *[other] set of { $count } causes
} fits all that was seen.
# $cause: the wiring at right outer
# $chance: 1.1 %
views-support-next = The next likeliest is { $cause }, { $chance }.
views-support-no-fault = no fault at all
# $what: the fault at right inner in test 2
views-support-misses = It does not explain { $what }.
# $count (count): 3
views-support-missed-many = { $count } of the faults seen
# $position: right outer
views-support-missed-check = the bad check at { $position }
# $position: right inner
# $number: 2
views-support-missed-fault = the fault at { $position } in test { $number }
# $one: the fault at right inner in test 2
# $other: the fault at left inner in test 2
views-support-missed-two = { $one } nor { $other }
views-support-same = A test made now would show the same either way.
views-support-no-test = No single test made now tells the two apart.
# $move: Exchange right outer with left outer
views-support-apart = { $move }.
# $kind: one
# $cause: the wiring at right outer
views-support-then = { $kind ->
    [one] it is { $cause }
    [several] the causes are { $cause }
   *[leans] speaks for { $cause }
}

## The trail.

# $number: 2
views-trail-test = test { $number }

## A unit.

# $number: 2
# $vehicle: Estate, blue
# $position: right outer
# $mark: fault
views-unit-test = Test { $number } on { $vehicle }, at { $position }: { $mark ->
    [fault] fault shown
    [clean] clean
    [aside] set aside, proves nothing
   *[untested] not reported
}.
views-unit-no-test = No test with it is on record.
# $count (count): 3
# $mark: fault
views-unit-tests-read = { $mark ->
    [fault] { $count } showed a fault
    [clean] { $count } clean
    [aside] { $count } set aside
   *[untested] { $count } not reported
}
# $count (count): 3
# $read: 1 showed a fault and 2 clean
views-unit-tests = { $count ->
    [one] { $count } test
   *[other] { $count } tests
} with it: { $read }.
# $sort: parking-sensor
views-unit-photo = { CAP(PART($sort, form: "the")) }
# $position: right outer
# $vehicle: Estate, blue
views-unit-photo-at = At { $position } of { $vehicle }

## What may be done with a unit next: what to do first, its button, and the places it can go to.

views-unit-next-dispute = Two places are on record. Scan its label where it really is.
# $vehicle: Red van
views-unit-bad = found bad on { $vehicle }
views-unit-next-mixed = It is one of several that got mixed up. The job says how to tell them apart.
views-unit-next-label = Put a fresh label on it and scan that.
views-unit-next-open = Its job is open.
views-unit-next-decided = The counter has decided on it.
views-unit-next-counter = The slip says what was found.
views-unit-next-bad = It was found bad. Take it to the parts counter with its slip.
views-unit-next-stock = It can be used on a job.
views-unit-next-last = Nothing has to be done with it.
views-unit-next-nothing = Nothing has to be done with it.
views-unit-next-scan = Scan its label
views-unit-next-scan-fresh = Scan a fresh label
views-unit-next-job = Go to the job
views-unit-next-last-job = Go to its last job
views-unit-next-slip = Show the return slip
views-unit-next-jobs = Show the jobs
# $place: stock
views-unit-next-place = { $place ->
    [stock] Into my stock
    [counter] To the parts counter
    [customer] The customer keeps it
   *[scrapped] Scrapped
}

## The list of jobs: how each stands, and what comes next where only the job itself can say more.

# $move: exchange
views-list-move = { $move ->
    [exchange] Exchange under way
    [replace] Replacement under way
    [home] Going back home
    [clean] Cleaning under way
    [meter] Wiring checks under way
    [unplug] Plug-off test under way
   *[other] New test wanted
}
views-list-untested = Not tested yet
views-list-not-heard = Test not proven
views-list-clean = Last test: no fault
# $positions: right outer
# $count (count): 1
views-list-fault = { $count ->
    [one] Fault at { $positions }
   *[other] Faults at { $positions }
}
views-list-find = Find the cause
views-list-see = Prove it and close
# $means: wire to the right outer one
# $vehicle: Blue van
views-code-means = “{ $means }”, as said at { $vehicle }
# $sort: vin
# $what: 1M8GDM9AXKP042788
views-list-found = { $sort ->
    [vin] VIN { $what }
    [part] Part { $what }
    [sensor] Sensor { $what }
    [serial] Serial { $what }
    [code] Code { $what }
    [means] Said of a code: { $what }
    [vehicle] Vehicle { $what }
    [plate] Plate { $what }
    [complaint] Complaint: { $what }
    [said] Said or signed: { $what }
   *[person] Worked on by { $what }
}

## Pictures of a job: the moment at which each was taken.

# $when: before
views-picture-repair = { $when ->
    [before] before the repair
   *[after] after the repair
}
# $when: before
# $position: right outer
views-picture-of-repair = { $when ->
    [before] Before the repair
   *[after] After the repair
}{ $position ->
    [none] { "" }
   *[other] : { $position }
}
views-picture-untouched = before anything was pulled here
# $unit: K7F-3M
views-picture-fitted = with { $unit } fitted
views-picture-empty = with nothing fitted here
views-picture-before-tests = before the first test
# $number: 2
views-picture-after-test = after test { $number }

## Who else is at a job, in one line on its screen. "is": right now, at another phone.

# $person: Ben
# $what: test
# $sort: parking-sensor
views-others = { $what ->
    [look] { $person } is looking it over.
    [test] { $person } is running the { PART($sort, form: "test") }.
    [photo] { $person } is taking pictures.
    [exchange] { $person } is exchanging { PART($sort, form: "many") }.
    [replace] { $person } is replacing { PART($sort, form: "a") }.
    [home] { $person } is putting { PART($sort, form: "many") } back.
    [clean] { $person } is cleaning.
    [meter] { $person } is checking the wiring.
    [unplug] { $person } is unplugging for a test.
    [plug] { $person } is plugging in.
    [choose] { $person } is choosing what comes next.
    [walk] { $person } is checking it in use.
    [finish] { $person } is finishing up.
   *[other] { $person } has this job open.
}
# $person: Ben
# $what: exchange
# $positions: right inner
views-others-at = { $what ->
    [exchange] { $person } is exchanging { $positions }.
    [replace] { $person } is replacing { $positions }.
    [home] { $person } is putting back { $positions }.
    [clean] { $person } is cleaning { $positions }.
    [meter] { $person } is checking the wiring of { $positions }.
    [unplug] { $person } is unplugging { $positions } for a test.
    [plug] { $person } is plugging in { $positions }.
   *[other] { $person } is at { $positions }.
}
# $count (count): 2
# $person: Ben
views-others-more = { $count ->
    [one] { $person } is on it too.
   *[other] { $count } more are on it.
}

## A vehicle that was here before.

# $days (count): 40
# $count (count): 2
views-back = { $count ->
    [one] This vehicle was here before, { $days ->
        [0] earlier today
        [one] one day ago
       *[other] { $days } days ago
    }.
   *[other] This vehicle was here { $count } times before, last { $days ->
        [0] earlier today
        [one] one day ago
       *[other] { $days } days ago
    }.
}
# $positions: right outer
# $sort: parking-sensor
views-back-replaced = Replaced then: the { PART($sort) } from { $positions }.
views-back-nothing = No cause was certain then.
# $positions: right outer
views-back-shown = Then the fault showed at { $positions }; no cause was certain.

## The page of a vehicle.

views-vehicle-empty = empty
views-vehicle-open = Not finished.
# $days (count): 12
views-vehicle-warranty = { $days ->
    [one] Warranty on this work: one more day.
   *[other] Warranty on this work: { $days } more days.
}
# $days (count): 12
views-vehicle-warranty-over = { $days ->
    [0] The warranty on this work ended today.
    [one] The warranty on this work ended one day ago.
   *[other] The warranty on this work ended { $days } days ago.
}

## The report: of the customer's car alone.

# $sort: parking-sensor
views-report-only-spare = Nothing is left that speaks against the { PART($sort, form: "many") } that your vehicle came with.
# $unit: sensor K7F-3M
views-report-spare-likely = { CAP($unit) }, a spare of ours, seems to be bad. That would be no fault of your vehicle.
# $unit: sensor K7F-3M
# $still: no
views-report-spare = { CAP($unit) }, a spare of ours, turned out to be bad { $still ->
    [yes] and is still on your vehicle. It gets another one.
   *[no] and is not on your vehicle. It was no fault of your vehicle.
}
# $unit: K7F-3M
# $position: right outer
# $before: right inner
views-summary-moved = { CAP($unit) } now sits at { $position }; it came from { $before }.

## Putting an entry right.

# $field: faulted
views-correct-field = { $field ->
    [name] Vehicle
    [plate] Plate
    [vin] VIN
    [reason] Reason
    [complaint] Complaint
    [faulted] Faults at
    [silent] Said nothing about
    [heard] The sounder
    [note] Note
    [position] Position
    [reads] The reading
    [value] Measured
    [compared] At the one that works
    [cause] What was repaired
    [segment] Where it was
    [what] What was done
    [code] Code on the label
    [part] Part number
    [serial] Serial number
    [unit] Sensor
    [units] Mixed up
    [colour] Colour
    [signal_colour] Colour of the signal wire
    [supply_colour] Colour of the supply wire
    [ground_colour] Colour of the ground wire
    [pins] Pins
    [ticks] Ticking at
    [unheard] Nothing to hear at
    [missed] Not right at
    [result] The lamp
    [to] Handed over to
    [model] Model of vehicle
    [why] Why
    [check] What was checked
    [found] What was found
   *[place] Place
}
# $position: near the hitch
views-correct-called = What { $position } is called
# $position: right outer
views-correct-seen = Seen at { $position }
# $position: right outer
views-correct-code = Trouble code{ $position ->
    [none] , no position
   *[other] { " " }at { $position }
}
# $code: B1B4C
views-correct-means = What { $code } means
# $reads: good
views-correct-reads = { $reads ->
    [good] good
    [bad] bad
   *[unclear] not clear
}
# $found: mended
views-correct-sounder = { $found ->
    [good] fine
    [mended] found and put right
   *[unclear] not clear
}
# $heard: yes
views-correct-heard = { $heard ->
    [yes] heard
   *[no] not heard
}
# $before: The fault stayed at right inner.
# $after: Sensor X9T-2C is bad.
views-correct-verdict = The verdict was: { $before } Now it is: { $after }
# $verdict: Sensor X9T-2C is bad.
views-correct-stays = The verdict stays: { $verdict }
views-correct-untested = no test counted yet
# $before: K7F-3M, PS-1, is in stock
# $now: K7F-3M, PS-2, is in stock
views-correct-unit = On record until now: { $before }. Afterwards: { $now }.
# $now: K7F-3M, PS-1, is in stock
views-correct-unit-stays = On record stays: { $now }.
views-correct-unit-none = nothing
# $unit: K7F-3M
# $part: PS-1
# $serial: 40021
# $numbers: both
# $where: in stock
views-correct-unit-is = { $numbers ->
    [both] { $unit }, part number { $part }, serial number { $serial }, is { $where }
    [part] { $unit }, part number { $part }, is { $where }
    [serial] { $unit }, serial number { $serial }, is { $where }
   *[none] { $unit } is { $where }
}

## Layouts that a person drew.

# $model: Blue estate, long
# $count (count): 10
views-layout-kept = { $model }, { $count }
