### What the yard's own jobs teach: said by the server, to phones and in the terminal.

lessons-title = What your jobs teach
lessons-span-all = All
lessons-span-year = A year
lessons-span-quarter = A quarter
# $closed (count): 48
# $counted (count): 45
# $proven (count): 40
lessons-summary = { $closed ->
    [one] One job closed
   *[other] { $closed } jobs closed
}; { $counted ->
    [one] one counts
   *[other] { $counted } count
}, { $proven ->
    [0] none
    [one] one
   *[other] { $proven }
} with a proven cause.
# $count (count): 3
lessons-waiting = { $count ->
    [one] One job is
   *[other] { $count } jobs are
} not counted in yet. Look again in a moment.
lessons-none = No job is closed in this time.
lessons-none-yet = No job is closed yet. Closed jobs show here what was wrong, how verdicts came out, how long it took.

## Of so many; a percentage only where there are enough.

# $right (count): 18
# $count (count): 19
lessons-of = { $right } of { $count }
# $share: 94.7 %
# $right (count): 18
# $count (count): 19
lessons-share-of = { $share } ({ $right } of { $count })
# $count (count): 4
lessons-jobs = { $count ->
    [one] { $count } job
   *[other] { $count } jobs
}

lessons-reliability = Were the verdicts right?
lessons-reliability-note = What was likeliest before the repair, beside what was proven after it.
# $start: 80 %
# $end: 95 %
lessons-claimed = Claimed from { $start } to { $end }
# $start: 99 %
lessons-claimed-over = Claimed from { $start }
# $end: 80 %
lessons-claimed-under = Claimed up to { $end }
# $low (count): 17
# $high (count): 19
lessons-chance-allows = { $low ->
    [0] Chance allows { $high } at most.
   *[other] Chance allows { $low } to { $high }.
}
# $expected: 17.6
lessons-expected = Expected: { $expected }.

lessons-comebacks = Comebacks
# $days (count): 90
lessons-comebacks-note = The same position of the same vehicle shows a fault again within { $days } days.
lessons-came-back = Came back
# $count (count): 2
lessons-came-back-open = { $count ->
    [one] One of them is not closed yet: its first self-test showed the fault again.
   *[other] { $count } of them are not closed yet: their first self-tests showed the fault again.
}

lessons-causes = What was wrong
lessons-causes-note = By class and by position: what was proven, and where nothing was, what is likeliest.
# $what: unit
lessons-class = { $what ->
    [unit] Sensor
    [circuit] Wiring of a position
    [blocked] Dirt, ice, paint or aim
    [feed] Supply or ground of a bumper
   *[control] Control unit
}
# $count (count): 4
lessons-causes-count = { $count ->
    [0] no cause
    [one] { $count } cause
   *[other] { $count } causes
}

lessons-rates = Rates by your own jobs
# $jobs (count): 20
lessons-rates-note = How the causes share is learned, how often something fails at all is not. The default weighs as { $jobs } jobs.
# $yards (count): 0
lessons-rates-bar = The bar is where the rate lies by { $yards ->
    [0] your jobs alone
   *[other] your jobs and those of other yards
}, nine times in ten. Of what was hardly ever found it is rough.
# $default: 5 %
lessons-default = Default { $default }
# $low: 4.1 %
# $high: 6.2 %
# $yards (count): 0
lessons-between = { $low } to { $high } by { $yards ->
    [0] your jobs alone
   *[other] your jobs and those of other yards
}.
# $count: 43.5
lessons-found = Found: { $count }
# $count (count): 43
# $readings (count): 45
lessons-readings = { $count } of { $readings } readings

lessons-minutes = Minutes of work
lessons-minutes-note = From one entry of a phone to its next; pauses are left out.
lessons-minutes-bar = The figure is the middle one, the bar the middle half.
# $what: pull
lessons-action = { $what ->
    [reach] Reach and pull a sensor
    [pull] Pull it again
    [plug] Plug it in, hanging
    [fit] Fit it
    [test] Self-test
    [clean] Clean a position
    [meter] One check of the wiring
    [listen] Listen
   *[repair] Repair
}
# $minutes: 4.3
lessons-minutes-of = { $minutes } min
# $plan: 3.5
lessons-minutes-plan-alone = Plan { $plan } min
# $plan: 3.5
# $count (count): 120
lessons-minutes-plan = Plan { $plan } min · { $count ->
    [one] once
   *[other] { $count } times
}
# $count (count): 2
lessons-cut = { $count ->
    [one] One pause left out.
   *[other] { $count } pauses left out.
}
lessons-work = A job
# $plan: 15.4
lessons-work-plan-alone = Plan { $plan } min for the same work
# $plan: 15.4
# $count (count): 40
lessons-work-plan = Plan { $plan } min for the same work · { $count ->
    [one] one job
   *[other] { $count } jobs
}
lessons-reach = Reach and pull, by position
lessons-models = Reach and pull, by model

lessons-parts = Parts
lessons-bought = Bought
lessons-saved = Saved by a test
lessons-saved-note = Positions that showed a fault and got no new sensor.
# $count (count): 12
lessons-pieces = { $count ->
    [one] { $count } sensor
   *[other] { $count } sensors
}

lessons-returns = Returns
# $decision: accept
lessons-decision = { $decision ->
    [accept] Accepted
    [hold] Held
   *[refuse] Refused
}
# $decision: Held
# $reason: custody
lessons-decision-for = { $decision }: { $reason }

lessons-left-out = Left out
lessons-left-out-note = Closed jobs that do not count towards the rates, and times that do not count.
# $why: untested
lessons-why = { $why ->
    [untested] No self-test that counts
    [mixed_up] Sensors got mixed up
    [another_sort] Another sort of part
    [impossible] Readings that contradict the rates set on the job
    [sent_late] Sent in this time, but closed before it by the clock of their phone
   *[wrong_clock] A clock that was wrong
}
lessons-times-left-out = Times that run backwards, were taken back, or have another phone's work in them
# $count (count): 4
lessons-times = { $count ->
    [one] { $count } time
   *[other] { $count } times
}
# $said: Default 5 %
lessons-sentence = { $said }.
lessons-csv = Save as CSV
lessons-json = Save as JSON
lessons-print = Print
lessons-axis = The bar is where the figure may lie, the dot the figure, the diamond the plan, the default or what was expected.
lessons-behind = Jobs behind it

## What is offered to go by.

# $what: unit
lessons-rate = { $what ->
    [unit] bad sensors
    [circuit] wiring faults
    [blocked] dirt, ice, paint or aim
    [feed] faults in supply and ground
    [control] bad control units
    [shows] how often a fault shows
    [false_alarm] false alarms
    [meter_sees] wiring checks that find a fault
    [meter_false] wiring checks that read bad on good wiring
   *[tick] what listening hears
}
# $rates: false alarms
lessons-unlike-default = Your jobs say something else than the default of: { $rates }.
lessons-as-default = Your rates agree with the defaults: there is no need to take them.
# $what: rates_learned
lessons-take = { $what ->
    [rates_learned] Take these rates for your yard
   *[minutes_learned] Take these minutes for your yard
}
lessons-take-back = Take it back
lessons-jobs-to-come = Jobs opened after you take them go by them. Open jobs keep theirs.

## Figures between yards.

lessons-yards = Figures of other yards
lessons-yards-note = A job of theirs counts for as much as you let it weigh. Rates travel and nothing else: no vehicle, no name, no code, no day.
# $jobs (count): 12
# $first: 2026-Q1
# $last: 2026-Q3
lessons-yard-jobs = { $jobs ->
    [one] One job
   *[other] { $jobs } jobs
}, { $first } to { $last }
# $jobs (count): 12
# $quarter: 2026-Q1
lessons-yard-jobs-in = { $jobs ->
    [one] One job
   *[other] { $jobs } jobs
} in { $quarter }
# $key: 3f0a 11c2 9e47 77b0 d8e1
lessons-yard-seal = Seal { $key }
# $yard: North Street yard
# $weight: 50 %
lessons-yard-weighs = { $yard } ({ $weight })
# $yards: North Street yard (50 %)
lessons-taken-with = Figures of other yards weighed in: { $yards }.
lessons-yards-none = No figures of other yards count here.
# $least (count): 10
lessons-yards-give-from = From { $least } jobs that count on, you can give your own figures to others.
lessons-yards-give = Save your own figures
lessons-yards-choose = A file of another yard
lessons-yards-weight = What one of its jobs weighs beside one of yours
lessons-yards-weigh-in = Weigh it in
lessons-yards-out = Take them out
# $how: new
# $jobs (count): 120
# $yard: North Street yard
# $weight: 50 %
lessons-weighed = { $how ->
    [new] { $yard }: { $jobs ->
        [one] one job counts
       *[other] { $jobs } jobs count
    } now, with { $weight } of the weight of yours.
    [replaced] { $yard }: these figures replace its older ones. They weigh { $weight }.
   *[weighed_anew] { $yard }: these figures counted already. They weigh { $weight } now.
}
# $yard: North Street yard
# $jobs (count): 120
lessons-taken-out = { $yard }: its { $jobs ->
    [one] job counts
   *[other] { $jobs } jobs count
} no more. What you took of the rates stays until you take it back.
# $file: north.json
# $jobs (count): 120
lessons-gave = { $file } holds the figures of { $jobs ->
    [one] one job
   *[other] { $jobs } jobs
}.
# $jobs (count): 4
# $least (count): 10
lessons-give-few = Too few jobs count ({ $jobs }). From { $least } on no figure shows a single job.
lessons-given-none = This file holds no figures of a yard.
lessons-given-version = A newer version wrote these figures. Update Swaptrail, then weigh them in.
lessons-given-altered = These figures were altered after they were sealed. Ask the yard for a fresh file.
# $place: causes[3].count
lessons-given-nonsense = These figures cannot be true, at { $place }. None of them counts.
lessons-given-own = These are your own figures. They count already.
lessons-given-older = Newer figures of this yard count already. Take those out first.
# $key: 3f0a 11c2 9e47 77b0 d8e1
lessons-seal-unconfirmed = Nobody has confirmed whose seal this is: { $key }. Let the yard read its own out to you first.
# $weight: 3
lessons-weight-wanted = { $weight } is no weight. It lies from 0.01 to 1.
lessons-weight-missing = No weight was given. It lies from 0.01 to 1.
# $yard: South yard
lessons-no-such-yard = No figures of { $yard } count here.
# $yards: North Street yard
lessons-yards-count = These count: { $yards }.
# $yard: South yard
lessons-yards-alike = Several yards are called { $yard }. Name the seal of the one.
