### A job on the phone: the list of jobs, opening one, its pages. The steps of a job are in steps.ftl.

## The page of a job

job-links = More about this job
job-links-more = More
job-link-trail = What the tests say
job-link-trail-note = the trail and how sure it is
job-link-moves = Other moves
# $count (count): 4
job-link-moves-note = { $count } to choose from
job-link-hand = In hand
# $sort: parking-sensor
# $count (count): 2
job-link-hand-note = { $count ->
    [one] { $count } { PART($sort) }
   *[other] { $count } { PART($sort, form: "many") }
}
job-link-photos = Pictures
# $count (count): 3
job-link-photos-note = { $count ->
    [0] none yet
    [one] { $count } picture
   *[other] { $count } pictures
}
job-link-history = History
# $count (count): 12
job-link-history-note = { $count ->
    [one] { $count } entry
   *[other] { $count } entries
}
job-link-report = Report for the customer
job-link-report-note = to print or to hand on
job-link-assumptions = What the figures rest on
job-link-assumptions-note = chances, codes, money

## The list of jobs

job-list-start = Start here
job-list-open-one = Open a job
job-list-scan = Scan a label
# $count (count): 2
job-list-shared = { $count ->
    [one] { $count } shared picture waits
   *[other] { $count } shared pictures wait
} for a job.
# $which: open
job-list-group = { $which ->
    [open] Open jobs
    [waiting] Waiting
   *[closed] Closed
}
job-list-none = No job stands so.
# $count (count): 3
job-list-found = { $count ->
    [0] No job found
    [one] { $count } job found
   *[other] { $count } jobs found
}
# $count (count): 2
job-list-found-elsewhere = { $count ->
    [one] One stands otherwise: show it
   *[other] { $count } stand otherwise: show them
}
job-list-found-none = Try fewer letters, or only a part of the plate or name.
job-list-near = Nothing has exactly that. This comes close.
job-list-sensors = Sensors
job-list-vehicles = Vehicles
# $count (count): 3
job-list-vehicle = { $count ->
    [one] { $count } job
   *[other] { $count } jobs
}
# $count (count): 30
job-list-more = { $count ->
    [one] Show { $count } more
   *[other] Show more: { $count } left
}
# $count (count): 1950
job-list-older = { $count ->
    [one] { $count } job was closed earlier
   *[other] { $count } jobs were closed earlier
}
job-list-more-to-come = More jobs are still on their way to this phone. They are not counted here yet.
job-search = Search
job-search-by = Vehicle, plate, label, person
job-search-clear = Clear the search
job-search-stands = Which jobs
# $which: open
job-search-filter = { $which ->
    [all] All
    [open] Open
    [waiting] Waiting
   *[closed] Closed
}
job-list-empty = No job yet
job-list-empty-lead = A parking sensor is reported bad? Open a job.
job-list-take-in = I have a file from another phone
# $step: Fit the new sensor
job-list-next = Next: { $step }
# $opened: 28 Nov
# $count (count): 3
# $closed: yes
job-list-standing = { $opened } · { $count ->
    [0] no test yet
    [one] { $count } test
   *[other] { $count } tests
}{ $closed ->
    [yes] {""} · closed
   *[no] {""}
}
# $sort: parking-sensor
# $count (count): 2
job-list-out = { $count ->
    [one] { $count } { PART($sort) } is out
   *[other] { $count } { PART($sort, form: "many") } are out
}
# $count (count): 1
job-list-disputed = { $count } in dispute

## The history

# $job: Blue estate
job-history-title = History · { $job }
job-history-lead = Nothing is ever deleted. Tap an entry that was a mistake to put it right.
job-history-mixed = They got mixed up in hand
job-back = Back to the job
job-go-on = Go on with the job
job-history-no-name = no name
# $reason: wrong corner
job-history-undone = Taken back: { $reason }
# $actor: Ines
# $reason: wrong corner
job-history-undone-by = Taken back by { $actor }: { $reason }
job-history-reason = Why was it wrong?
job-history-reason-note = The entry stays, struck through, with your reason.
job-history-take-back = Take it back
job-history-bring-back = It was so after all
job-history-leave = Leave it
job-right-here = Something here is wrong
job-right-open = Enter what is right
job-right-note = Change what is wrong. The entry keeps its place; what it said stays in the history.
job-right-look = See what it changes
job-right-save = Save the correction
job-right-leave = Leave it
job-right-unfit = These later entries no longer fit. Put them right as well:
job-right-was = Put right. It said:
# $actor: Ben
job-right-by = Put right by { $actor }. It said:

## What the tests say

job-evidence-carries = What carries this
job-evidence-other = What else it could be
job-evidence-apart = What would tell the two apart
job-verdict-rests = What this rests on
# of dirt that went when its place was handled
job-verdict-past = May have been there too; no test shows it any more
job-verdict-why = Why
job-verdict-causes = How likely each cause is, on its own
job-proof-proven = Proven
job-proof-so-far = Proof so far
job-trail-key = Key to the picture
job-trail-suspect = the suspect
# $sort: parking-sensor
job-trail-moved = { PART($sort, form: "a") } that changed places
job-trail-maybe = mixed up: one of these
job-trail-band = where the fault went
job-trail-none = No test yet
# $sort: parking-sensor
job-trail-none-lead = The trail begins with the first { PART($sort, form: "test") }.

## The moves

job-moves-title = Next moves
job-moves-none = No move to choose now
# $step: Run the self-test
job-moves-elsewhere = The job is at another step: { $step }
job-moves-others = Or one of these
# $count (count): 2
job-moves-more = { $count ->
    [one] One more move
   *[other] { $count } more moves
}

## Sensors in hand

# $job: Blue estate
job-hand-title = In hand · { $job }
job-hand-lead = Pulled and not fitted again.
job-hand-none = Nothing is in hand
job-hand-mixed = These got mixed up
job-hand-mixed-kicker = Mixed up
# $from: right outer
job-hand-from = pulled from { $from }
job-mixing-heading = Which ones got mixed up?
job-mixing-lead = Those whose label is gone, or that you can no longer tell apart. The tests so far keep counting.
# $sort: parking-sensor
job-mixing-group = { CAP(PART($sort, form: "many")) } in hand
# $from: right outer
job-mixing-from = , from { $from }
job-mixing-note = What happened
job-mixing-note-why = If you want it on record.
# $count (count): 3
job-mixing-record = These { $count } got mixed up
job-mixing-too-few = Tap at least two
job-mixing-none = Nothing got mixed up

## What the figures rest on

# $sort: parking-sensor
job-assumptions-lead = No published figures were found for how often { PART($sort, form: "many") } and wires fail; these are common practice. Change what you know better.
job-assumptions-chances = Chances
job-assumptions-sure = How sure
job-assumptions-codes = What the codes speak for
# $value: 0.5 %
job-assumptions-changed = changed; the default is { $value }
job-assumptions-percent = In percent
job-assumptions-percent-fault = Give a percentage, for instance 5 or 0.5.
job-assumptions-set = Set it
# $value: 0.5 %
job-assumptions-reset = Back to { $value }
job-money-heading = Money
job-money-given = Work and parts are weighed against each other.
job-money-none = Not given: moves are compared by minutes alone.
job-money-change = Change labour and prices
job-money-give = Give labour and prices
job-money-lead = In your own currency. Leave empty what you do not know.
job-money-fault = Give an amount, for instance 45 or 45.50.
job-money-record = Record these amounts

## Opening a job

# $count (count): 2
job-open-faults = { $count ->
    [one] One thing is
   *[other] { $count } things are
} missing or not right. Each is marked below.
job-open-actor = Your name
job-open-actor-note = Stands beside everything you record on this phone. Asked once.
job-open-actor-fault = Say who is working.
job-open-complaint = What is wrong
job-open-complaint-own = Something else
job-open-part = Part number
job-open-part-note = If known.
job-open-button = Open the job
job-open-name-fault = Give the vehicle a name that you will recognise.
job-open-vin-fault = Correct the number, or leave it empty.
job-open-vehicle = Vehicle
job-open-vehicle-note = Its name or its plate.
# $typed: yes
job-open-on-record = { $typed ->
    [yes] On record: is it one of these?
   *[no] Here lately
}
job-open-plate = Plate
job-open-plate-vin = Plate, VIN
job-open-another = Another vehicle
job-open-new-one = None of these, it is new here
job-open-on-record-fault = That plate or VIN is on record. Tap which vehicle it is.
job-open-vin = VIN
job-open-vin-note = If you have it. It ties later jobs to this vehicle.
# $count (count): 4
job-open-known = { $count ->
    [one] { $count } position
   *[other] { $count } positions
}
job-open-still = A job on this vehicle is still open.
job-open-still-go = Go on with it
job-layout-heading = Which parts?
# $count (count): 4
job-layout-as-before = As last time, { $count ->
    [one] { $count } position
   *[other] { $count } positions
}
job-layout-own = My own
job-layout-fault = Choose which parts, and where they sit.
job-layout-no-names = Put at least one position on the plan.
job-draw-lead = Tap the plan where one sits, and drag it to its place.
# $sort: parking-sensor
job-draw-sort = { CAP(PART($sort, form: "full-many")) }
job-draw-positions = Positions
job-draw-add = Add one
job-draw-move = Move the chosen one
# $way: left
job-draw-way = { $way ->
    [left] To the left
    [right] To the right
    [up] Up
   *[down] Down
}
# $number (count): 2
job-draw-chosen = Position { $number }
job-draw-name = Name
job-draw-group = Shares supply and ground
job-draw-part = Part number here, if another
job-draw-pins = Pins of its plug
job-draw-pins-note = Such as: 1 supply, 2 ground, 3 signal.
job-draw-remove = Take it off
job-draw-model = Which model of vehicle?
job-draw-model-note = In your own words. The next one of them is offered this layout.
job-draw-save = Save as a file
job-draw-read = Read a file
job-draw-change = Change this layout
# $pins: 1 supply, 2 ground
job-position-pins = Pins: { $pins }
# $numbers: 2 and 5
job-draw-covered = { $numbers } lie one on another. Drag one away.
job-layout-checking = The names are still being checked. Tap again.
# $of: model
# $found: a list of 25
# $wanted: a list of 1 to 24 positions
job-layout-wanted = { $of ->
    [model] The model of vehicle is
    [positions] Positions:
    [sort] The sort of part is
    [v] The file's version is
   *[file] The file is
} { $found }; wanted is { $wanted }.
# $of: name
# $number (count): 2
# $found: "left"
# $wanted: a name that no other position has
job-layout-wanted-of = { $of ->
    [x] Place
    [y] Place
    [reach_minutes] Minutes of
    [part] Part number of
    [pins] Pins of
    [group] Group of
    [positions] Position
   *[name] Name
} { $number } is { $found }; wanted is { $wanted }.

## Pictures

job-photos-work = The work
# $job: Blue estate
job-photos-title = Pictures · { $job }
job-photos-guide = The work, before or after
job-photos-none = No picture yet
job-photos-none-lead = The job asks for one of each position before a hand touches it.
job-photos-take = Take a picture

## One picture, large

job-picture-enlarge = Look at it large
job-picture-all = All pictures
job-picture-beside = Before and after
job-picture-one = This one alone
job-picture-before = The picture before
job-picture-next = The next picture
job-picture-larger = Larger
job-picture-smaller = Smaller
# $number: 2
# $count (count): 7
job-picture-count = { $number } of { $count }
job-picture-keys = Pictures: plus and minus change the size, arrows move
job-picture-small = Small version. The whole one needs the network.

## A position

# $sort: parking-sensor
job-position-guide = { CAP(PART($sort, form: "the")) } and what is around it
job-position-again = Take another picture
job-position-job = The job
job-position-no-picture = No picture of this position yet.
# $sort: parking-sensor
job-position-no-sensor = No { PART($sort) } sits here now.
job-position-reach = Until a hand is on it
# $sort: parking-sensor
job-position-sensor = { CAP(PART($sort, form: "the")) } here
job-position-no-label = no label yet
# $sort: parking-sensor
job-position-all = Everything about this { PART($sort) }
job-position-read = Read here
# $position: right outer
job-reach-group = Minutes to get to { $position }
job-reach-less = One minute less
job-reach-more = One minute more
# $count (count): 3
job-reach-minutes = { $count } min
job-reach-heading = How easy to reach?
job-reach-lead = Minutes until a hand is on it. The easiest are exchanged first.

## Pictures from another app

job-shared-full = This phone is full
job-shared-full-what = Nothing was kept. The pictures are still where you shared them from. Free some space, then share them again.
job-shared-missed = The pictures did not arrive
job-shared-missed-what = The app was not ready for them, and nothing was kept. It is ready now: share them again.
job-shared-nothing = No picture came along
job-shared-nothing-what = Nothing was kept. Share one or more pictures with this app.
job-shared-title = Shared pictures
job-shared-counter = This phone is at the parts counter
job-shared-bench = A picture belongs to a job at the bench.
job-shared-to-counter = To the counter
job-shared-show-jobs = Show the jobs
# $title: This picture cannot be read
# $sentence: Take it again.
job-shared-problem = { $title }. { $sentence }
job-shared-no-job = No job is open
job-shared-belongs = A picture belongs to a job.
job-shared-open-first = Open a job, then share again.
# $count (count): 2
job-shared-not-kept = { $count ->
    [one] { $count } picture was
   *[other] { $count } pictures were
} not kept; what you shared is still where it was.
job-shared-which = Which job do they belong to?
job-shared-keep-none = Keep none
# $job: Blue estate
job-shared-title-job = Shared pictures · { $job }
job-shared-what = What do they show?
# $count (count): 2
job-shared-keep = { $count ->
    [one] Keep this picture
   *[other] Keep { $count } pictures
}
job-shared-alt = A shared picture
job-shared-shows = It shows
job-shared-choose = Choose
job-shared-screen = The screen of the test
job-shared-work = The work, or something else
job-shared-shows-fault = Say what this picture shows.
# $name: scan.gif
job-shared-refused-name = Not kept: { $name }
job-shared-refused = Not kept

## While the checks do not run

job-unchecked-guide = The part and its label
job-unchecked-alt = The picture just taken
job-unchecked-take = Take the picture
job-unchecked-back = Go back
job-unchecked-heading = Record a picture and a label
# $later: when the checks run again
job-unchecked-lead = The app cannot say what comes next. Pictures and labels are saved all the same; they are put in order { $later }.
job-unchecked-again = Take it again
job-unchecked-label = Label of the part in your hand
job-unchecked-label-note = As it stands on the label. Leave it empty if none is in your hand.
job-unchecked-saved = Saved on this phone, unchecked.
job-unchecked-save = Save it unchecked
job-unchecked-not-now = Not available now
job-unchecked-needs = This needs the checks
job-unchecked-needs-lead = They do not run in this browser now. On an open job you can still save pictures and labels.
job-unchecked-position = Which position does the picture show?
job-unchecked-no-position = none of them

## The page of a vehicle, and what its past says.

job-back-changes = What that changes
job-back-vehicle = What was done on it
job-link-vehicle = The vehicle
job-link-vehicle-note = earlier jobs, what is fitted since when
job-comeback = The vehicle was here before
job-comeback-factor = A position repaired before counts
job-comeback-half = Half of that goes in
job-vehicle-now = What is on it
job-vehicle-jobs = Its jobs
# $days (count): 365
job-vehicle-warranty-yard = Your yard answers for its work for { $days ->
    [one] { $days } day
   *[other] { $days } days
}.
job-vehicle-warranty-days = Warranty on your work, in days
job-vehicle-warranty-save = Save the days
job-vehicle-warranty-fault = Give whole days, 0 for none.
job-vehicle-vin = VIN
job-vehicle-first = since before its first job
# $day: 12 Mar 2026
job-vehicle-since = since { $day }
# $day: 12 Mar 2026
# $said: The wiring at right outer is bad.
job-vehicle-on = { $day }: { $said }
job-vehicle-elsewhere = Found besides
