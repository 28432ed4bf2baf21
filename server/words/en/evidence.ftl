### What the tests say so far, what the figures rest on, and what got mixed up.

# $test: 2
# $why: The last test does not count.
evidence-aside = Test { $test } is set aside. { $why }
evidence-no-fault = No test has shown a fault.
evidence-no-fault-detail = If it comes and goes, test again, and say so.
evidence-unplugged = Only what is unplugged shows a fault.
# $share: 98.8 %
evidence-unplugged-detail = A plug that is off needs no other cause. Nothing else is left to fix: { $share } sure.
evidence-gone = The fault is gone.
# $share: 98.8 %
evidence-nothing-left = That nothing is left to fix is { $share } sure.
# $share: 98.8 %
# $wanted: 95 %
evidence-nothing-left-yet = That nothing is left to fix is { $share } sure; { $wanted } is wanted.
evidence-open = Not settled yet.
# $cause: sensor K7F-3M
# $count (count): 1
evidence-known = { CAP($cause) } { $count ->
    [one] is a cause
   *[other] are causes
}.
evidence-known-detail = Whether anything else is wrong is not settled yet.
evidence-last-clean = No fault in the last test.
# $cause: sensor K7F-3M
evidence-followed = The fault followed { $cause }.
# $position: right outer
evidence-stayed = The fault stayed at { $position }.
# $cause: sensor K7F-3M
evidence-cause = { CAP($cause) } is the cause.
# $count (count): 2
# $cause: sensor K7F-3M
evidence-faults = { $count ->
    [2] Two faults
    [3] Three faults
    [4] Four faults
   *[other] { $count } faults
}: { $cause }.
# $share: 98.8 %
evidence-sure = { CAP($share) } sure.
evidence-proved = It is dealt with, and testing has proved it.
evidence-to-read-again = It is dealt with. Do the check that was bad again: nothing else proves this repair.
evidence-to-prove = It is dealt with. Clean tests now prove the repair.
# $cause: sensor K7F-3M
# $share: 98.8 %
evidence-likely = Most likely so far: { $cause }, { $share }.
# $cause: sensor K7F-3M
# $share: 98.8 %
evidence-likely-was = Most likely it was { $cause }, { $share }.
# $cause: sensor K7F-3M
# $share: 98.8 %
# $other: the wiring at left inner
evidence-likely-two = Most likely so far: { $cause }, { $share }; about as likely: { $other }.
# $cause: sensor K7F-3M
# $share: 98.8 %
# $other: the wiring at left inner
evidence-likely-two-was = Most likely it was { $cause }, { $share }; about as likely: { $other }.
evidence-went-meter = Only the meter read bad: no test has shown a fault.
evidence-went-away = What caused it is no longer there.
# $sort: parking-sensor
# $positions: right outer
evidence-went-fresh = It went away with another { PART($sort) } at { $positions }.
# $sort: parking-sensor
evidence-went-handled = It went away when the { PART($sort, form: "many") } were handled.
evidence-went-repair = It went away with the repair.
# $positions: right outer
# $count (count): 1
evidence-went-cleaned = It went away when { $positions } { $count ->
    [one] was
   *[other] were
} cleaned.
# $count (count): 2
evidence-went-stayed = It has not come back in { $count ->
    [one] { $count } clean test
   *[other] { $count } clean tests
}.
evidence-no-fault-at-all = no fault at all
# $cause: sensor K7F-3M
# $share: 98.8 %
evidence-else = { CAP($cause) }, { $share }
# $causes: dirt, ice, paint or aim at right outer
evidence-past = { CAP($causes) }
# $test: 1
# $heard: sounder heard
evidence-carries-one = Test { $test }, { $heard }.
# $tests: 1 and 2
# $heard: sounder heard
evidence-carries = Tests { $tests }, { $heard } each time.
# $rate: wiring faults
# $count (count): 13
evidence-stands = Stands even if { $rate } were { $count ->
    [2] twice
   *[other] { $count } times
} as common as assumed.
# $rate: wiring faults
# $times: 1.3
evidence-stands-barely = Just stands: not if { $rate } were { $times } times as common as assumed.
evidence-stands-all = Stands even if any sort of fault were 100 times as common as assumed.
# $rate: wiring faults
# $times: 3
evidence-if-common = if { $rate } were { $times } times as common
# $rate: wiring faults
# $times: 3
evidence-if-rare = if { $rate } were { $times } times as rare
# $condition: if wiring faults were 3 times as common
# $share: 86 %
evidence-not-yet = Not yet: { $condition }, it would be only { $share } sure.
# $what: circuit
# $sort: parking-sensor
# $blocked: dirt, ice, paint or aim
evidence-rate-of = { $what ->
    [unit] bad { PART($sort, form: "many") }
    [circuit] wiring faults
    [blocked] { $blocked }
    [feed] faults in supply and ground
    [control] bad control units
    [miss] missed faults
   *[false_alarm] false alarms
}
# $sort: parking-sensor
evidence-rate-unit = { CAP(PART($sort, form: "a")) } is bad, before any test
# $sort: parking-sensor
evidence-rate-circuit = The wiring of one position is bad: { PART($sort, form: "wiring") }
# $blocked: dirt, ice, paint or aim
evidence-rate-blocked = One position is blocked: { $blocked }
# $sort: parking-sensor
evidence-rate-feed = The supply or ground that one { PART($sort, form: "shares-a-feed") } shares is bad
evidence-rate-control = The control unit is bad
# $sort: parking-sensor
evidence-rate-shows = A fault that is there shows in one { PART($sort, form: "test") }
evidence-rate-again = A clean test straight after another, as part of a full one
evidence-rate-false-alarm = A position with no fault shows one all the same
evidence-rate-meter-sees = The wiring checks find a wiring fault
evidence-rate-meter-false = The wiring checks read bad on good wiring
# $sort: parking-sensor
evidence-rate-tick-unit = A bad { PART($sort) } does not tick
# $sort: parking-sensor
evidence-rate-tick-circuit = A wiring fault keeps { PART($sort, form: "a") } from ticking
# $sort: parking-sensor
evidence-rate-tick-feed = Without supply { PART($sort, form: "a") } does not tick
# $sort: parking-sensor
evidence-rate-tick-control = With a bad control unit { PART($sort, form: "a") } does not tick
# $sort: parking-sensor
evidence-rate-tick-false = { CAP(PART($sort, form: "a")) } that works is not heard to tick
evidence-money-labour = Labour, per hour
# $sort: parking-sensor
evidence-money-part = Price of a new { PART($sort) }
# $sort: parking-sensor
evidence-money-wrong = What { PART($sort, form: "a") } bought for nothing costs you
evidence-common = common practice, no source
# $jobs (count): 52
evidence-learned = from { $jobs } own jobs
# $jobs (count): 52
evidence-yard-learned = Your yard goes by { $jobs } own jobs; this job does not.
evidence-yard-use = Take it for this job
evidence-confidence = How sure a verdict has to be before it is called one
# $share: 40 %
evidence-use = Use { $share }
evidence-comes-and-goes = The fault comes and goes.
evidence-there-all-the-time = The fault is there all the time.
# $sort: parking-sensor
evidence-comes-and-goes-note = A present fault then shows in half of the { PART($sort, form: "tests") } only, so proof takes more of them.
evidence-switch-all-the-time = It is there all the time
evidence-switch-comes-and-goes = It comes and goes
# $code: B1A2B-13
# $position: right outer
# $words: open circuit
# $why: a fault in the wiring is 3 times as likely
evidence-code = { $code } at { $position }: { $words }, so { $why }.
# $source: common practice, no source
evidence-source = { CAP($source) }.
evidence-code-counts = It counts
evidence-code-aside = It does not count
evidence-code-leave-out = Leave it out
evidence-code-let-count = Let it count
evidence-type-open-source = that 1x means electrical is openly explained; how much it counts is common practice, no source
evidence-type-memory = what it means is from memory; how much it counts is common practice, no source
# $factor (count): 3
evidence-why-electrical = a fault in the wiring is { $factor } times as likely
# $sort: parking-sensor
# $factor (count): 3
evidence-why-inside = a bad { PART($sort) } is { $factor } times as likely
# $blocked: dirt, ice, paint or aim
# $factor (count): 3
evidence-why-blocked = { $blocked } is { $factor } times as likely
# $count (count): 2
evidence-proof = { $count ->
    [one] { $count } clean test
   *[other] { $count } clean tests
} in a row.
# $count (count): 3
# $against: water, wiggling the wiring and another day
evidence-proof-against = { $count ->
    [one] { $count } clean test
   *[other] { $count } clean tests
} in a row: { $against }.
# $count (count): 2
evidence-proof-at-once = { $count ->
    [one] { $count } came straight after another, so it counts for less.
   *[other] { $count } came straight after another, so they count for less.
}
evidence-proof-not-soon = Clean tests alone will not get there soon.
# $count (count): 3
evidence-proof-more = { $count ->
    [one] { $count } more clean test is expected to do.
   *[other] About { $count } more clean tests are expected to do.
}
evidence-run-half = every second test
# $share: 90 %
evidence-run-share = { $share } of the tests
# $count (count): 5
# $often: every second test
# $share: 95 %
evidence-run = The success-run rule alone would ask for { $count ->
    [one] { $count } clean test
   *[other] { $count } clean tests in a row
}: a fault that shows in { $often } would have shown by then, { $share } sure.
evidence-mixed-by-scan = ; settled by a scan
evidence-mixed-as-last = ; settled, as the last one left
evidence-mixed-open = { "" }
evidence-mixed-no-label = No label is on record for any of them.
# $units: K7F-3M or P4C-8T
evidence-mixed-scan = Look for a label that is still on ({ $units }) and scan it: it settles it and costs nothing.
evidence-mixed-other = The other one is then known too.
evidence-mixed-fresh = Without one, a fresh label on each is enough: none of them is a suspect.
evidence-mixed-tests = Without one, put a fresh label on each. Tests then tell which one is bad.
# $units: K7F-3M and P4C-8T
evidence-mixed = { CAP($units) } got mixed up: which is which is not known.
# $position: right outer
evidence-who-from = the one from { $position }
# $unit: K7F-3M
# $was: the one from right outer
# $share: 97 %
evidence-who-is = { CAP($unit) } is { $was }, { $share } sure.
# $unit: K7F-3M
# $others: the one from right outer or the one from right inner
evidence-who-may = { CAP($unit) } may be { $others }.
# $count (count): 6
evidence-who-several = any of { $count }
# $unit: K7F-3M
# $was: the one from right outer
evidence-who-then = { $unit } is { $was }
evidence-who-open = which is which stays open
# $count (count): 2
# $sort: parking-sensor
# $settled: ; settled by a scan
evidence-mixed-involved = { $count } { PART($sort, form: "many") } involved{ $settled }
# $unit: K7F-3M
# $vehicle: Red van
# $share: 97 %
evidence-unit-condemned = { CAP($unit) } was found bad on { $vehicle }; chance that it is bad { $share }.
# $unit: K7F-3M
# $share: 5 %
# $sort: parking-sensor
evidence-unit-untested = { CAP($unit) } has no test on another job; chance that it is bad { $share }, as for any { PART($sort) }.
# $count (count): 3
evidence-unit-passed = passed { $count ->
    [one] { $count } test
   *[other] { $count } tests
}
# $count (count): 1
evidence-unit-faulted = showed a fault in { $count ->
    [one] { $count } test
   *[other] { $count } tests
} that nothing else explains
evidence-unit-bystander = was only there while something else was at fault
# $unit: K7F-3M
# $said: passed 3 tests
# $vehicles (count): 2
# $driven: yes
# $share: 2 %
evidence-unit-trusted = { CAP($unit) } is trusted: it { $said } on { $vehicles ->
    [one] { $vehicles } vehicle
   *[other] { $vehicles } vehicles
}{ $driven ->
    [yes] , and was driven since
   *[no] { "" }
}; chance that it is bad { $share }.
# $unit: K7F-3M
# $said: passed 3 tests
# $vehicles (count): 2
# $driven: yes
# $share: 2 %
evidence-unit = { CAP($unit) } { $said } on { $vehicles ->
    [one] { $vehicles } vehicle
   *[other] { $vehicles } vehicles
}{ $driven ->
    [yes] , and was driven since
   *[no] { "" }
}; chance that it is bad { $share }.
# $shown (count): 2
# $repeats (count): 5
# $share: 43 %
# $default: 90 %
evidence-estimate = It showed in { $shown } of { $repeats } tests that were run again with nothing changed. That makes { $share }; the default is { $default }.
evidence-laplace = Laplace's rule of succession: (k + 1) / (n + 2).
# $share: 49 %
# $wanted: 95 %
evidence-proof-left = That nothing is left to fix is { $share } sure; { $wanted } is wanted.
evidence-bayes = Bayes' rule on the odds; the rates are common practice, no source.

## What the lamps speak for.

# $result: never_on
# $factor (count): 10
evidence-lamp = { $result ->
    [never_on] The lamp never came on
   *[flashes] The lamp flashes
}: the control unit or its supply counts as { $factor } times likelier.

## What earlier jobs on the vehicle speak for.

# $position: right outer
# $days (count): 40
# $factor: 5.4
# $sort: parking-sensor
# $blocked: dirt, ice or paint
evidence-comeback-replaced = { CAP($position) }: a { PART($sort) } was replaced there { $days ->
    [0] on the day that this job began
    [one] one day before this job
   *[other] { $days } days before this job
}. A second failure there speaks for the wiring or { $blocked }: each counts as { $factor } times likelier.
# $cause: the wiring at right outer
# $days (count): 40
# $was: 97 %
# $share: 88 %
evidence-comeback-left = { CAP($cause) } was left unrepaired { $days ->
    [0] on the day that this job began
    [one] one day before this job
   *[other] { $days } days before this job
}, then { $was } likely. This job starts from { $share }.
evidence-comeback-source = Our own model and figures, no source.
# $factor (count): 6
evidence-comeback-factor = { $factor ->
    [1] not at all
   *[other] { $factor } times
}
# $months (count): 6
evidence-comeback-months = { $months ->
    [one] one month
   *[other] { $months } months
}
