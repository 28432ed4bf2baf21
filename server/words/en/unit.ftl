### A sensor: its page, its label, its places.

# $sort: parking-sensor
# $code: 7K2-M4
unit-title = { CAP(PART($sort)) } { $code }
# $sort: parking-sensor
unit-title-unlabelled = { CAP(PART($sort, form: "a")) } without a label
unit-no-label = no label yet
# $where: in stock
unit-lead = It is { $where }.
unit-trail = Its trail
unit-hand-on = To hand on
unit-slip = Return slip
unit-slip-note = goes with it to the counter
unit-paper = Its record
unit-paper-note = trail, tests, who had it
unit-lost = Identity lost
# $moment: 28 Nov, 09:05
# $what: it was mixed up with another
unit-lost-when = On { $moment }, { $what }.
unit-elsewhere = What it did elsewhere
unit-tests = Tests
# $number (count): 3
# $position: right outer
unit-test = Test { $number } at { $position }
unit-custody = Who had it
unit-labels = Labels
# $moment: 28 Nov, 09:05
unit-put-on = Put on { $moment }
unit-returns = Returns
# $name: Sam
# $moment: 28 Nov, 09:05
unit-signed = Signed: { $name }, { $moment }.
unit-undecided = Not decided yet.
unit-pictures = Pictures
unit-jobs = Jobs
unit-entries = Recorded outside any job
unit-entries-none = Nothing was recorded of it outside a job.
unit-entries-jobs = On its jobs
unit-entries-link = What was recorded of it outside any job
unit-no-test = No test with it on this job.
# $where: in stock
unit-now = Now: { $where }
# $day: 28 Nov 2026
unit-since = since { $day }
unit-part = Part number
unit-serial = Serial
unit-not-noted = not noted

## Where it is.

unit-elsewhere-goes = It goes somewhere else
unit-two-places = Two places are on record
unit-two-places-scan = Scan its label where it really is.
unit-scan-now = Scan it now
unit-two-places-where = Where is it, now that you have it before you?
# $where: in stock
unit-claim = { CAP($where) }
unit-somewhere-else = Somewhere else

## What can be set right about it.

unit-printed = Note what is printed on it
unit-record-numbers = Record these numbers
unit-look-at-label = Look at its label
unit-label-trouble = Its label is torn, lost or wrong
# $count (count): 1
unit-label-out = { $count ->
    [one] A label goes out of use for good. The sensor keeps its record and gets another label.
   *[other] A label goes out of use for good. The sensor keeps its record.
}
unit-label-reason = What happened to the label
unit-label-reason-wanted = Say in a few words what happened to the label.
# $code: 7K2-M4
unit-void = Take { $code } out of use
# $code: 7K2-M4
unit-was-labelled = It has no label now. It was { $code }.
unit-scan-fresh = Scan a fresh label for it
unit-label-waiting = Put it on a sensor that lost its label
# $code: 7K2-M4
# $where: in stock
unit-was-where = It was { $code }, { $where }

## A label that was looked up.

unit-not-a-label = Not a label
unit-look-up-another = Look up another
unit-fresh = A fresh label
unit-fresh-heading = No sensor has this label yet
unit-fresh-lead = On a job, the app asks for a label when a sensor is pulled. Here it can go on a spare.
unit-fresh-unpaired = This phone is not paired, so it does not know what others put the label on.
unit-spare = Put it on a spare in your stock
unit-part-note = Read it off the spare.
unit-serial-note = If it has one.
unit-add-spare = Add the spare
unit-a-label = A label
unit-phone-unpaired = This phone is not paired
unit-phone-empty = This phone holds no records yet
# $host: yard.local
unit-kept-by = { $host } keeps the record of this sensor. Only phones that are paired with it show it.
unit-work-here = You work here
unit-work-here-do = Ask someone with a paired phone for a pairing link. Open it here, then scan the label again.
unit-kept-elsewhere = What is on record about this sensor is on the phone of whoever put the label on it.
unit-your-label = It is your label
unit-your-label-do = Take in the file that your other phone saved, then scan the label again.
unit-take-in = Take in my file
unit-home-screen = You have Swaptrail on the home screen
unit-home-screen-do = Open it there, and scan the label there. It shares nothing with this page.
unit-came-across = You came across this sensor
unit-came-across-do = Leave the label on it. Take it, with its slip if there is one, to whoever gave it to you or to their parts counter.
unit-find = Look up a label
unit-find-which = Which sensor is it?
unit-find-lead = Scan its label, and see where it belongs and what it read.
unit-find-scan = Scan a label
unit-find-type = Type it
