### What may not be done: what is wrong, in a heading and a sentence, and what to do now.

## What several rules say.

rules-go-on = Go on.
# $unit: K7F-3M
# $place: in your stock
rules-unit-is = { CAP($unit) } is { $place }.
rules-not-recorded-title = This can't be recorded

## Closing a job.

rules-closing-title = Not everything is accounted for
rules-closing-do = Settle it first.
# $unit: K7F-3M
rules-closing-disputed = { CAP($unit) } is in dispute; scan it where it really is.
rules-closing-move = A move is under way. Finish it, or stop it.
# $check: measure the ground wire
# $position: right outer
# $warm: , warmed with hot air
# $stands: again
rules-closing-reading = { CAP($check) } at { $position }{ $warm }: { $stands ->
    [still] still bad after the repair.
   *[again] bad before the repair, and not done again since.
}
rules-closing-reading-do = Do it again, or say why that cannot be done.
# $position: right outer
rules-closing-hangs = The one at { $position } hangs on its wire. Push it home.
# $position: right outer
rules-closing-empty = { CAP($position) } is empty.
# $position: right outer
rules-closing-plug = The plug at { $position } is off. Put it back on.

## A label code.

# $sort: parking-sensor
rules-bad-stock-title = This { PART($sort, form: "one") } is bad
# $unit: K7F-3M
# $vehicle: Red van
rules-bad-stock = { CAP($unit) } was found bad on { $vehicle }. In stock it could be taken for a good one.
rules-bad-stock-do = Say why it goes there, or choose another place.
rules-code-none-title = Not a label code
# $code: K7F-3M
rules-code-none = { $code } is no label code.
rules-code-none-do = Read it again.
rules-code-same-title = It has this label
# $code: K7F-3M
# $sort: parking-sensor
rules-code-same = { $code } is on this { PART($sort) } already.
rules-code-void-title = This label is void
# $code: K7F-3M
rules-code-void = { $code } was taken out of use.
rules-code-void-do = Take a fresh label.
# $sort: parking-sensor
rules-code-other-title = This label is on another { PART($sort) }
# $sort: parking-sensor
rules-code-other-do = Take a fresh label, and check that you hold the { PART($sort) } you think you hold.
rules-code-second-title = It has a label already
# $code: K7F-3M
# $sort: parking-sensor
rules-code-second = { $code } is on this { PART($sort) }.
# $code: K7F-3M
# $sort: parking-sensor
rules-code-second-do = If { $code } is torn or lost, take it out of use first, on the page of the { PART($sort) }.

## Taking back an entry.

rules-correction-title = This can't be taken back
rules-correction-unknown = There is no such entry to take back.
rules-correction-unknown-do = Look in the history.
rules-correction-again = It was taken back before.
rules-correction-opening = Everything else in the job rests on its opening.
rules-correction-opening-do = Close the job instead.
rules-correction-later = Later entries rest on this one.
rules-correction-later-do = Take back the later ones first, the newest before the older.
rules-correction-not-back = What was entered later does not go with it.
rules-correction-not-back-do = Enter what is so now.
# $sort: parking-sensor
rules-correction-bare = { CAP(PART($sort, form: "a")) } that is not fitted would be without its label.
rules-correction-bare-do = Give it another label instead.
rules-correction-right-title = This can't be put right
rules-correction-kind = A correction says what the entry should have said, not something else.
rules-correction-kind-do = Take the entry back and enter the other thing.
rules-correction-same = It says what is on record already.
rules-correction-same-do = Change what is wrong, or leave it as it is.
rules-correction-stays = Later entries find the thing by this.
rules-correction-stays-do = Take the entry back and enter it anew.
rules-correction-how = Nobody scanned this label at that moment.
rules-correction-how-do = Say that it was tapped or typed.

## A figure of a meter.

# $field: value
rules-figure-title = { $field ->
    [compared] The figure where it works can't be read
   *[value] The figure can't be read
}
# $found: "1e9"
# $wanted: volts, as in 12.4, 12,4 or 850 mV
rules-figure = Found { $found }, wanted { $wanted }.
# $unit: V
rules-figure-wanted = { $unit ->
    [V] volts from 0 to 60, as in 12.4, 12,4 or 850 mV
   *[other] ohms from 0, as in 0.8, 0,8, 4k7 or 5 kΩ; OL if the meter shows open
}
# $field: value
rules-figure-thousands = { $field ->
    [compared] Where it works: thousands, or decimals?
   *[value] Thousands, or decimals?
}
# $thousands: 1000
# $decimals: 1,00
rules-figure-either = { $thousands } or { $decimals }
# $problem: minus
# $unit: V
rules-figure-do = { $problem ->
    [minus] { $unit ->
        [V] Minus: the probes are swapped. Swap them and measure again.
       *[other] Minus: there is a voltage on the wire. Take it off and measure again.
    }
    [open] OL is a reading in ohms. Set the meter to volts.
    [other] { $unit ->
        [V] That is a reading in ohms. Set the meter to volts and measure again.
       *[other] That is a voltage. Key off, set the meter to ohms and measure again.
    }
    [space] Type the digits without a space between them, as the meter shows them.
    [thousands] Some read the mark as thousands, some as decimals. Type it so that nobody can doubt it.
    [most] That is too much for this wire. Look at the unit and at the point.
   *[number] Type the digits that the meter shows, and its unit.
}

## A reading beside its figure.

rules-reading-title = Which is right, figure or reading?
# $value: 5000
# $unit: Ω
# $position: left outer
# $says: bad
# $limit: More than 1 Ω, or open
rules-reading = { CAP($position) } has { $value }{ $unit ->
    [none] { "" }
   *[other] { " " }{ $unit }
}. By the limit that is { $says ->
    [good] good
   *[bad] bad
}: { $limit }.
# $says: bad
rules-reading-do = Look at the meter again, then type the figure anew or tap { $says ->
    [good] Good
   *[bad] Bad
}. If both are right, say why.

## The form of an entry.

# $kind: unit_pulled
rules-form-kind = The kind { $kind } is not known.
rules-form-do = Go back and enter it again.

## A job that is open, or closed.

rules-open-title = This job is open already
rules-open = It was opened before.
rules-open-do = Go on with it.
rules-closed-title = This job is closed
rules-closed = Nothing can be added to a closed job.
rules-closed-do = Open a new job on this vehicle, or take back the closing in the history.

## A label before the next sensor.

rules-label-title = Label it first
# $unit: the sensor from right outer
rules-label = { CAP($unit) } has no label yet.
rules-label-do = Stick a label on it and scan it, or put it straight back where it came from.

## What got mixed up.

rules-mixed-title = Which one it is, is not known
rules-mixed-do = Scan its old label if it is still on, or use the new label of the one in your hand.
rules-mixed-which-title = Which ones got mixed up?
# $sort: parking-sensor
rules-mixed-which = It takes at least two { PART($sort, form: "many") }.
rules-mixed-which-do = Tap them.
# $sort: parking-sensor
rules-mixed-unknown = { CAP(PART($sort, form: "a")) } is not on record.
rules-mixed-unknown-do = Go back.
rules-mixed-elsewhere-title = It is not in your hand
rules-mixed-elsewhere-do = Only what lies together can be mixed up.

## A unit is at one place.

# $sort: parking-sensor
rules-place-added-title = This { PART($sort) } is on record
rules-place-added = It was added before.
rules-place-added-do = Go on with it.
rules-place-disputed-title = Two places are on record
# $unit: K7F-3M
rules-place-disputed = { CAP($unit) } is in dispute.
rules-place-disputed-do = Scan it where it really is; that settles it.
rules-place-not-there-title = It does not sit there
# $unit: K7F-3M
# $place: in your stock
# $position: right outer
rules-place-not-there = { CAP($unit) } is { $place }, not at { $position }.
# $sort: parking-sensor
rules-place-not-there-do = Look again at which { PART($sort) } you hold.
rules-place-read-title = Read its label
# $sort: parking-sensor
rules-place-read = Only the label says for sure which { PART($sort) } this is.
rules-place-read-do = Scan it, or type its code.
rules-place-fitted-title = It is still fitted
rules-place-fitted-do = Pull it first.
rules-place-already-title = It is there already
rules-place-elsewhere-title = It is somewhere else
# $sort: parking-sensor
# $position: right outer
rules-place-elsewhere-do = Only { PART($sort, form: "a") } that is in hand on this job can be fitted at { $position }.
# $position: right outer
rules-place-taken-title = { CAP($position) } is taken
# $unit: K7F-3M
# $position: right outer
rules-place-taken = { CAP($unit) } sits at { $position }.
rules-place-taken-do = Pull that one first.

## The unit that an exchange names.

# $sort: parking-sensor
rules-planned-title = STOP: wrong { PART($sort) } in your hand
# $unit: K7F-3M
# $planned: P4C-8T
rules-planned = This is { $unit }. { CAP($planned) } belongs here.
# $unit: K7F-3M
# $planned: P4C-8T
rules-planned-do = Put { $unit } down and pick up { $planned }.

## Printed codes.

rules-printed-none-title = Not a label code
# $code: K7F-3M
rules-printed-none = { $code } is no code that is printed.
rules-printed-none-do = Draw others.
rules-printed-used-title = This label is in use
# $code: K7F-3M
# $sort: parking-sensor
rules-printed-used = { $code } is on { PART($sort, form: "a") }, or was.
rules-printed-used-do = Print the others: open the batch again.
rules-printed-spoiled-do = Leave it out: open the batch again.
rules-printed-before-title = This label was printed before
# $code: K7F-3M
rules-printed-before = { $code } belongs to another batch.
rules-printed-before-do = Print new labels once more: others are drawn.

## Assumptions.

rules-rates-title = This can't be assumed
# $count (count): 900
rules-rates-minutes = { $count ->
    [one] { $count } minute is too long.
   *[other] { $count } minutes is too long.
}
# $most (count): 600
rules-rates-minutes-do = Give at most { $most } minutes.
# $sort: parking-sensor
rules-rates-money = That is more money than { PART($sort, form: "a") } costs.
rules-rates-money-do = Give the figure again.
# $name: luck
rules-rates-unknown = There is no assumption called { $name }.
rules-rates-unknown-do = Go back and choose one.
rules-rates-chance = This can't be such a chance.
# $wanted: at most 100 %
rules-rates-chance-do = Give a figure { $wanted }.
rules-rates-certain = No test makes anything certain.
rules-rates-certain-do = Give a confidence below 100 %.

## A decision at the counter.

rules-returns-title = This can't be decided yet
# $sort: parking-sensor
rules-returns-not-received = Nobody has received this { PART($sort) } at the counter.
rules-returns-not-received-do = Scan its label first.
# $unit: K7F-3M
# $decision: accept
# $signed: Kim
rules-returns-decided = { CAP($unit) } was { $decision ->
    [accept] accepted
    [hold] held
   *[refuse] refused
} already, signed by { $signed }.
# $sort: parking-sensor
rules-returns-decided-do = Take that decision back first, or scan the { PART($sort) } again if it came in once more.
rules-returns-against = It goes against what the record says.
rules-returns-against-do = Give your reason in a few words.

## What a phone is for, and its version.

rules-role-title = Not on this phone
rules-role-do = Record it on a phone that is paired for it, or pair this one anew.
rules-old-title = This version of the app is too old for a new job
rules-old = The server asks for a newer one. A job that is begun can be gone on with, and everything is sent.
rules-old-do = Change over to the new version in the list of jobs. It comes by itself when the server is in reach.

## A label's code where the part number is asked for.

rules-label-part-title = Is this the label?
# $part: K7F3M
# $code: K7F-3M
rules-label-part = { $part } reads as the code on a label, { $code }. The part number is printed on the part itself.
rules-label-part-do = Type the part number, or leave it empty. If this is the part number, say where it stands.

## Another part number.

rules-part-title = Another part number
# $unit: K7F-3M
# $part: 12-3456
# $position: right outer
# $wanted: 12-3457
rules-part = { CAP($unit) } is part { $part }. { CAP($position) } takes { $wanted }.
rules-part-do = Use the same part, or give a reason that stays on record.

rules-rates-comeback = No vehicle's past can count so.
# $factor (count): 100
# $months (count): 120
rules-rates-comeback-do = Give 1 to { $factor } times, and 1 to { $months } months.
