### The one next step of a job, its moves, and what a scanned label means at a step.

## The stages of a job. At most one short word each.

guide-stage-look = look
guide-stage-test = test
guide-stage-label = label
guide-stage-swap = swap
guide-stage-prove = prove
guide-stage-close = close

## What the steps of a kind are counted as: "Position 1 of 2".

guide-progress-position = Position
guide-progress-photo = Picture
guide-progress-label = Label
guide-progress-check = Check
guide-progress-exchange = Exchange
guide-progress-fit = Fit
guide-progress-replacement = Replacement
guide-progress-home = Putting back

guide-stop-move = Stop this move
# $position: right outer
guide-position = { CAP($position) }

## Before the first test.

guide-cautions-title = Before you start
guide-cautions-read = I have read these
guide-photo-title = Photograph each position
guide-photo-take = Take the picture
guide-photo-skip = Go on without
guide-look-title = Lamps, and a look round
guide-look-title-alone = A look round
guide-look-text = Tap what differs.
guide-look-all-right = All as it should be

## The self-test.

# $sort: parking-sensor
guide-test-run = Run the { PART($sort, form: "test") }
# $sort: parking-sensor
guide-test-again = Run the { PART($sort, form: "test") } again
guide-test-mixed-up = Test again: they got mixed up
guide-test-prove = Test again, to prove it
guide-test-no-fault = No fault shown yet
# $sort: parking-sensor
# $position: right outer
guide-test-unplugged = Key off, unplug { $position }, key on, then start the { PART($sort, form: "test") }.
guide-test-more-than-one = A fault that comes and goes needs more than one test.
guide-test-enter = Enter the result
## The likely answers of a test, one tap each; all but the last say that the sounder was heard.

# $positions: left outer
guide-test-went = Went along: fault at { $positions }
# $positions: right outer
guide-test-stayed = Stayed: fault at { $positions }
# $positions: right outer
guide-test-still = Still there: fault at { $positions }
guide-test-gone = Gone: no fault anywhere
# $proof: sounder not heard
guide-test-not-heard = { CAP($proof) }

## Tests that show nothing.
# $sort: parking-sensor
guide-nothing-title = The { PART($sort, form: "test") } shows no fault
guide-nothing-text = Either it is gone or it comes and goes.
guide-nothing-comes-and-goes = It comes and goes
guide-nothing-close = Close without a finding
# $count (count): 5
guide-nothing-enough-title = No fault in { $count } tests
guide-nothing-enough-text = It would have shown by now. Close, or test again after a drive, in rain or in heat.
guide-nothing-at-once-text = Straight after each other they prove little. Close, or test again after a drive, in rain or in heat.

## The moves.

guide-thinking = Working out the next move
guide-moves-other = Other moves
guide-start-retest = Enter the new test
guide-start-clean = Start with cleaning
# $positions: right outer and left outer
guide-start-exchange = Exchange { $positions }
guide-start-exchange-several = Start the exchange
guide-start-fitting = Start fitting
guide-start-unplug = Unplug and test
guide-start-meter = Start the checks
guide-start-listen = Listen
# $sort: parking-sensor
guide-start-replace = Fit a new { PART($sort, form: "one") }

# $cause: the wiring of right outer
guide-move-repair = Find and repair { $cause }
# $sort: parking-sensor
guide-move-retest = Run the { PART($sort, form: "test") } again
# $positions: left outer and right inner
# $count (count): 2
guide-move-clean = { $count ->
    [one] Clean { $positions } and test again
   *[other] Clean { $positions }, then test again
}
# $position: right outer
guide-move-unplug = Unplug { $position } and test
# $position: right outer
guide-move-meter = Check the wiring at { $position }
# $position: right outer
guide-move-listen = Listen at { $position }
# $position: right outer
# $sort: parking-sensor
guide-move-replace = Fit a new { PART($sort, form: "one") } at { $position }
# $positions: left outer and right inner
# $sort: parking-sensor
guide-move-replace-several = Fit new { PART($sort, form: "many") } at { $positions }
# $moves: exchange right outer with left outer
guide-move-exchange = { CAP($moves) }

# $pairs: right outer with left outer
guide-exchange-pairs = exchange { $pairs }
# $one: right outer
# $other: left outer
guide-exchange-pair = { $one } with { $other }
# $before: right outer with left outer
# $pair: right inner with left inner
guide-exchange-pair-more = { $before }, and { $pair }
# $before: exchange right outer with left outer
# $next: fit your spare K7F-3M at left inner
guide-exchange-then = { $before }; then { $next }
# $unit: K7F-3M
# $position: left outer
guide-exchange-spare = fit your spare { $unit } at { $position }
# $unit: K7F-3M
# $position: left outer
guide-exchange-mixed = fit { $unit } at { $position }
# $unit: K7F-3M
# $position: right outer
guide-exchange-in-hand = fit { $unit }, the one in your hand, at { $position }
# $before: fit your spare K7F-3M at left outer
# $start: left outer
# $goal: right inner
guide-exchange-goes-on = { $before }; the one from { $start } goes to { $goal }
# $positions: left outer, left inner and right inner
# $count (count): 3
guide-exchange-ring = { $count ->
    [2] move two in a ring, in this order: { $positions }
    [3] move three in a ring, in this order: { $positions }
    [4] move four in a ring, in this order: { $positions }
    [5] move five in a ring, in this order: { $positions }
    [6] move six in a ring, in this order: { $positions }
   *[other] move { $count } in a ring, in this order: { $positions }
}

guide-impossible-title = This move can't be finished
# $unit: the sensor from right outer
# $place: with the customer
guide-impossible-text = { CAP($unit) } is { $place }.

## Cleaning.

# $position: right outer
guide-clean-title = Clean { $position }
# $sort: parking-sensor
guide-clean-then-test = Then run the { PART($sort, form: "test") } again.
# $position: left outer
guide-clean-then-next = Then go on to { $position }.
guide-clean-then-check = Then test again.
# $position: right outer
guide-clean-done = { CAP($position) } is clean

## The wiring checks.

# $position: right outer
# $check: measure the supply
guide-measure-title = { CAP($position) }: { $check }
# $position: right outer
# $check: measure the supply
guide-measure-title-warm = { CAP($position) }, warm: { $check }
# $what: heat
guide-measure-warm = { $what ->
    [drive] Read it straight after a long drive, before it cools.
   *[heat] Warm the place with hot air first, hand-warm and no hotter.
}
# $what: heat
guide-measure-begin-warm = { $what ->
    [drive] Check it straight after a long drive
   *[heat] Check it warmed with hot air
}
guide-measure-unclear = Can't tell
# $metres (count): 5
# $size: 0.5 mm²
# $cool: 0.20
# $hot: 0.24
guide-measure-copper = Take off what the probes read when held together. { $metres } m of sound copper, { $size }, have { $cool } Ω at 20 °C. At 85 °C: { $hot } Ω.
# $position: right outer
guide-measure-done-title = The wiring checks at { $position } are done
# $bad (count): 1
# $count (count): 4
# $unclear (count): 1
guide-measure-done-text = { $bad } of { $count } read bad.{ $unclear ->
    [0] { "" }
   *[other] { " " }Could not be made: { $unclear }.
}
guide-measure-go-on = Go on

## The circuit as a chain.

# $position: right outer
# $segment: the wire to the bumper plug
guide-found-title = { CAP($position) }: it is in { $segment }
# $segments: the sensor's plug or the bumper plug
guide-harness-in = The fault is in { $segments }.
# $segment: the wire to the bumper plug
# $chance: 74 %
guide-harness-likely = Most likely it is in { $segment }: { $chance }.
# $count (count): 5
# $total (count): 7
guide-harness-open = { $count } of { $total } places can have the fault.
# $segments: the sensor's plug and the bumper plug
# $count (count): 2
# $chance: 62 %
guide-harness-why = Looks at { $segments }: { $chance } of what is left.
# $read: 0.5 Ω or less
# $what: warming up
guide-harness-read-warm = { $read }, after { $what }
guide-harness-apart = The exchange of two channels tells them apart: a fault in the wires moves along.
guide-harness-warm = A contact that opens when warm shows when plug and wire are warmed.
# $most: 0.78
guide-wire-good = { $most } Ω or less
# $most: 0.78
guide-wire-bad = More than { $most } Ω, or open
# $metres: 4.50
# $size: 0.5 mm²
# $ohms: 0.20
# $celsius: 20
guide-wire-copper = Take off what the probes read when held together. { $metres } m of sound copper, { $size }, have { $ohms } Ω at { $celsius } °C.
# $size: 0.5
guide-wire-square = { $size } mm²
# $size: 0.5 mm²
# $metres: 4.50
# $celsius: 20
guide-wire-noted = { $size }, { $metres } m, { $celsius } °C

## The guided exchange.

# $unit: K7F-3M
guide-take-title = Take { $unit } out of your stock
# $by: tap
guide-take-text = { $by ->
    [tap] Tap its code, so that it is the one the plan means.
   *[scan] Scan its label, so that it is the one the plan means.
}
guide-scan-its-label = Scan its label
# $unit: K7F-3M
# $position: right outer
guide-pull-title = Pull { $unit } at { $position }
# $position: right outer
# $sort: parking-sensor
guide-pull-title-bare = Pull the { PART($sort, form: "one") } at { $position }
# $position: right outer
# $sort: parking-sensor
guide-pull-title-out = Label the { PART($sort, form: "one") } from { $position }
# $sort: parking-sensor
guide-pull-title-hand = Label the { PART($sort, form: "one") } in your hand
# $by: tap
guide-pull-scan = { $by ->
    [tap] Tap its code before you put it down.
   *[scan] Scan its label before you put it down.
}
guide-pull-label = Stick a label on it and scan the label before you put it down.
# $move: exchange
# $positions: right outer and left outer
guide-whole = { $move ->
    [exchange] Exchange { $positions }
    [fit] Fit at { $positions }
    [replace] Replace at { $positions }
   *[home] Put back at { $positions }
}
# $unit: K7F-3M
# $position: right outer
guide-fit-title = Fit { $unit } at { $position }
# $sort: parking-sensor
# $by: tap
guide-fit-scan = { $by ->
    [tap] Tap the code on the { PART($sort, form: "one") } in your hand first.
   *[scan] Scan the { PART($sort, form: "one") } in your hand first.
}
# $sort: parking-sensor
guide-fit-scan-action = Scan the { PART($sort, form: "one") }
guide-fit-is-back = It is back in its place
# $positions: right outer and right inner
# $count (count): 2
guide-lock-title = { $count ->
    [one] Plugged in at { $positions }?
    [2] Both in, and locked?
   *[other] All in, and locked?
}
# $count (count): 2
guide-lock-pull = { $count ->
    [one] Pull once at the wire. It may hang for the test.
   *[other] Pull once at each wire. They may hang for the test.
}
# $count (count): 2
guide-lock-done = { $count ->
    [one] It is in and locked
    [2] Both in and locked
   *[other] All in and locked
}
# $positions: right outer and right inner
guide-seat-title = Push home { $positions }
guide-seat-text = Tap what is not so.
# $count (count): 2
guide-seat-done = { $count ->
    [one] All of it is right
    [2] All of it is right at both
   *[other] All of it is right at each
}
# $position: right outer
guide-plug-back-title = Plug { $position } back in
guide-plug-back-key-off = Key off first.

## After a mix-up.

# $count (count): 2
# $sort: parking-sensor
guide-mixed-title = { $count } { PART($sort, form: "many") } got mixed up
guide-mixed-scan = Scan a label, old or new
# $where: K7F-3M at right outer
guide-mixed-fit-title = Fit { $where }, then test
# $unit: K7F-3M
# $position: right outer
guide-mixed-fit-at = { $unit } at { $position }
guide-mixed-fit-text = They got mixed up, and nothing has been tested yet: any place will do.
guide-mixed-fit-again = Fit those that got mixed up, then test

## Once the cause is known.

# $cause: sensor K7F-3M
guide-replace-title = Replace { $cause }
guide-replace-text = Part numbers must match.
# $sort: parking-sensor
guide-replace-fit = Fit the new { PART($sort, form: "one") }
# $unit: sensor K7F-3M
guide-replace-use = Use { $unit }
# $position: right outer
guide-fill-title = { CAP($position) } is empty
# $sort: parking-sensor
guide-fill-text = Fit { PART($sort, form: "a") }: a new one, or one that is at hand.
guide-fill-leave = Leave it empty
# $sort: parking-sensor
guide-spare-not-title = STOP: not this { PART($sort, form: "one") }
guide-spare-not-more = Take one that is good, or a new one with a fresh label.
# $code: K7F-3M
# $position: right outer
guide-spare-takes = { $code } goes to { $position }.
# $unit: K7F-3M
# $vehicle: Red van
guide-spare-bad = { CAP($unit) } was found bad on { $vehicle }.
# $sort: parking-sensor
# $unit: K7F-3M
guide-spare-faulted = { CAP($unit) } showed a fault in its last { PART($sort, form: "test") }.
# $unit: K7F-3M
guide-spare-mixed = { CAP($unit) } got mixed up with others: which one it is is not known.
# $unit: K7F-3M
guide-spare-sort = { CAP($unit) } is another sort of part.
# $unit: K7F-3M
# $part: PS-2
# $wanted: PS-1
guide-spare-part = { CAP($unit) } has part number { $part }; { $wanted } belongs here.
guide-repaired = I have repaired it
# $segment: sensor plug
guide-repair-segment = { CAP($segment) }
# $position: right outer
# $check: measure the ground wire
guide-again-title = Once more at { $position }: { $check }
# $value: 12
# $unit: Ω
guide-again-read = Before the repair it read { $value }{ $unit ->
    [none] .
   *[other] { " " }{ $unit }.
}
# $reason: no-meter
guide-again-left = { $reason ->
    [no-meter] No meter at hand now
   *[out-of-reach] It is out of reach now
}
# $position: right outer
# $check: measure the ground wire
guide-still-title = Still bad at { $position }: { $check }
# $sort: parking-sensor
guide-still-text = The repair did not reach it. Look further along { PART($sort, form: "circuit") }.
guide-still-measure = Go through the checks again
# $cause: the control unit
guide-shared-title = Check { $cause }
guide-shared-text = Measure the voltage drop under load, on the supply side and on the ground side. It tells more than ohms on a dead wire.
guide-shared-several-title = Check what they all share
# $sort: parking-sensor
guide-shared-several-text = No { PART($sort, form: "test") } can tell these apart.
# $cause: the control unit
guide-shared-several-repaired = Found and repaired: { $cause }

## The end of a job.

guide-done-title = This job is closed
# $name: Ana
guide-done-by = Closed by { $name }. Its record stays.
guide-done-by-unnamed = Closed by someone unnamed. Its record stays.
guide-walk-leave = Leave it as it is
# $count (count): 2
guide-home-title = { $count ->
    [one] Leave the good one where it is?
   *[other] Leave the good ones where they are?
}
# $unit: K7F-3M
# $position: right outer
guide-home-sits = { $unit } sits at { $position }
# $where: K7F-3M sits at right outer
# $same: yes
# $count (count): 2
guide-home-text = { $same ->
    [yes] { $count ->
        [one] { CAP($where) }. It is the same part and passed there. Putting it back means one more test.
       *[other] { CAP($where) }. They are the same part and passed there. Putting them back means one more test.
    }
   *[other] { $count ->
        [one] { CAP($where) }. It passed there. Putting it back means one more test.
       *[other] { CAP($where) }. They passed there. Putting them back means one more test.
    }
}
# $unit: K7F-3M
# $count (count): 2
guide-home-put-back = { $count ->
    [one] Put { $unit } back
   *[other] Put them back
}
# $count (count): 2
guide-home-leave = { $count ->
    [one] Leave it there
   *[other] Leave them there
}
# $count (count): 2
guide-finish-leave = { $count ->
    [one] Leave it there and close
   *[other] Leave them there and close
}
# $unit: K7F-3M
guide-finish-title = Last: where does { $unit } go?
# $where: K7F-3M sits at right outer
guide-finish-text = { CAP($where) } and stays.
# $unit: K7F-3M
# $position: right outer
guide-stock-title = Put { $unit } back at { $position }?
# $chance: 3 %
# $spare: D4H-PX
guide-stock-text = It came from there and went into your stock; the chance that it is bad is { $chance }. { $spare } sits in its place. Putting it back means one more test.
guide-stock-put-back = Put it back
guide-stock-leave = Leave it so
# $unit: K7F-3M
guide-where-title = Where does { $unit } go?
guide-where-text = It is in your hand. Scan it to be sure that it is this one, then say where it goes.
guide-where-text-alone = It is the only one in your hand.
guide-where-counter = To the parts counter
guide-where-customer = The customer keeps it
guide-where-stock = Into my stock
guide-where-scrapped = Scrapped
# $position: right outer
guide-where-back = Back to { $position }
guide-close-title = Close the job
guide-close-title-not-yet = Not everything is accounted for
# $sort: parking-sensor
guide-close-text = Every { PART($sort, form: "one") } is accounted for.
# $check: walk-behind check
# $positions: right outer
guide-close-missed = The { $check } missed { $positions }; that stays on record.

## What a scanned label means.

# $code: K7F-3M
# $place: in your stock
guide-scan-is = { $code } is { $place }.
# $code: K7F-3M
guide-scan-fresh = { $code } is a fresh label.
# $code: K7F-3M
guide-scan-this = This is { $code }.
guide-scan-void-title = This label is void
# $code: K7F-3M
guide-scan-void-text = { $code } was taken out of use.
guide-scan-take-fresh = Take a fresh label.
guide-scan-mixed-title = This label got mixed up
# $code: K7F-3M
# $place: in your hand
guide-scan-mixed-text = { $code } is { $place }, and has a new label by now.
guide-scan-mixed-more = Scan the new label instead.
guide-scan-mixed-other = The other one is known now too.
# $code: K7F-3M
guide-scan-mixed-labelled = One of those that got mixed up is now { $code }.
guide-scan-mixed-take-fresh = Take a fresh label for the next one.
# $sort: parking-sensor
guide-scan-on-another = This label is on another { PART($sort, form: "one") }
# $sort: parking-sensor
guide-scan-on-another-stop = STOP: this label is on another { PART($sort, form: "one") }
# $position: right outer
# $sort: parking-sensor
guide-scan-on-another-more = Take a fresh label for the { PART($sort, form: "one") } from { $position }.
# $position: right outer
# $sort: parking-sensor
guide-scan-on-another-back = If you pulled that one, put it back. Take a fresh label for the { PART($sort, form: "one") } from { $position }.
# $sort: parking-sensor
guide-scan-on-another-hand = Take a fresh label for the { PART($sort, form: "one") } in your hand.
# $code: K7F-3M
# $position: right outer
guide-scan-out = { $code } is out of { $position }.
# $code: K7F-3M
# $position: right outer
# $sort: parking-sensor
guide-scan-labelled = The { PART($sort, form: "one") } from { $position } is now { $code }.
# $code: K7F-3M
# $sort: parking-sensor
guide-scan-labelled-hand = The { PART($sort, form: "one") } in your hand is now { $code }.
# $code: K7F-3M
# $position: right outer
guide-scan-belongs = { $code } belongs at { $position }.
# $sort: parking-sensor
guide-scan-unknown-title = STOP: no { PART($sort, form: "one") } has this label yet
# $unit: K7F-3M
# $place: in your stock
# $sort: parking-sensor
guide-scan-unknown-more = Look for the { PART($sort, form: "one") } labelled { $unit }; it is { $place }.
# $sort: parking-sensor
guide-scan-wrong-title = STOP: wrong { PART($sort, form: "one") } in your hand
# $code: K7F-3M
# $unit: D4H-PX
guide-scan-wrong-text = This is { $code }. { CAP($unit) } belongs here.
# $code: K7F-3M
# $where: came from right inner
# $unit: D4H-PX
# $wanted: you pulled from right outer
guide-scan-wrong-more = { $code } { $where }. Put it down and pick up { $unit }, which { $wanted }.
# $code: K7F-3M
# $where: came from right inner
# $unit: D4H-PX
# $position: right outer
guide-scan-wrong-pull = { $code } { $where }. Put it down, then pull { $unit } at { $position }.
# $code: K7F-3M
# $at: right inner
# $unit: D4H-PX
# $wanted: you pulled from right outer
guide-scan-wrong-back = { $code } goes at { $at }. Put it back there and pick up { $unit }, which { $wanted }.
# $code: K7F-3M
# $at: right inner
# $unit: D4H-PX
# $position: right outer
guide-scan-wrong-back-pull = { $code } goes at { $at }. Put it back there, then pull { $unit } at { $position }.
# $position: right inner
guide-scan-came-from = came from { $position }
# $position: right outer
guide-scan-you-pulled = you pulled from { $position }
# $place: in your stock
guide-scan-is-at = is { $place }

## Reasons that the app gives, as they stand in the history: "Move given up: stopped by hand."

guide-noted-stopped-by-hand = stopped by hand
guide-noted-settled-already = the tests had settled it
guide-noted-checks-done = all checks done
guide-noted-tested-there = tested there
guide-noted-spare-stays = the spare stays
guide-noted-left-empty = left empty
guide-noted-same-test = the same test, entered twice
guide-noted-mixed-by-then = mixed up by then
guide-noted-not-mixed = nothing got mixed up
guide-noted-no-repair = closed without a repair
guide-noted-out-of-reach = out of reach by then
guide-noted-no-meter = no meter at hand
guide-noted-slip = a slip
guide-noted-no-fault-shown = no fault shown

## While nothing proves that a self-test ran.

# $sort: parking-sensor
# $check: the fuse
guide-sounder-title = { PART($sort, form: "unproven") }: check { $check }
guide-sounder-mended = It was wrong, and is put right
guide-sounder-unclear = It is wrong, or I can't tell
# $sort: parking-sensor
# $count (count): 2
guide-sounder-rest-title = { $count ->
    [one] { PART($sort, form: "unproven") }, and all checks are done
   *[other] { PART($sort, form: "unproven") } { $count } times, and all checks are done
}
guide-sounder-rest-repaired = The control unit was replaced or repaired already. Ask somebody who knows this vehicle.
# $sort: parking-sensor
guide-sounder-untold-title = { PART($sort, form: "unproven") }, and not all could be told
# $checks: the fuse and the switch
guide-sounder-untold = Still open: { $checks }. Ask somebody who can look, or tap what you know by now.
guide-sounder-control = I replaced or repaired the control unit
guide-sounder-help = Pause: I need help

## Where the fault stays and the checks of the wiring found nothing.

# $position: right outer
# $count (count): 2
guide-stuck-title = { $count ->
    [one] { CAP($position) }: the checks found nothing
   *[other] { CAP($position) }: checked { $count } times, nothing found
}
# $sort: parking-sensor
guide-stuck-text = A break that comes and goes is left, or { PART($sort, form: "channel") }.
# $position: right outer
guide-stuck-missed-title = { CAP($position) }: not everything could be checked
# $few: no
# $checks: look at the pins and wiggle the plug
# $count (count): 4
guide-stuck-missed = { $few ->
    [yes] Not made: { $checks }.
   *[no] { $count } checks could not be made.
} Reach the place, or ask someone who can.
guide-stuck-missed-again = Make these checks
guide-stuck-moved = The fault moved with the wires: most likely a break that comes and goes is left.
guide-stuck-again = Check again, moving the wires
guide-stuck-found = Found it and repaired it
guide-stuck-control = The control unit was replaced

## Where the pole stands, and distances.

# $name: Bumper's width, cm
# $typed: 1,8 m
# $wanted: a whole number from 60 to 300
guide-stand-wanted = { $name }: “{ $typed }” does not fit. Wanted: { $wanted }.
# $position: right outer
# $name: By tape, cm
guide-stand-row = { CAP($position) }, { $name }
# $position: right outer
guide-stand-beyond = { CAP($position) } would lie beyond the bumper's end. Measure from the left end, facing it.
# $celsius: 20
# $speed: 343.2
# $echo: 3.5
# $far: 60
guide-stand-sound = At { $celsius } °C sound goes { $speed } m a second. From { $far } cm the echo is back in { $echo } ms.
# $far: 100
# $shown: 108
guide-stand-cold = A control unit that does not allow for that shows { $shown } cm for { $far } cm.
