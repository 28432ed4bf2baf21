### The steps of a job: what stands on their screens beside the words of the core.

## Every step

steps-cautions = Cautions
steps-checklist-not = not so
steps-checklist-first = Put it right, then tap it once more.
# $count (count): 2
steps-checklist-left = { $count } to put right
# $unit: 4KD-7F
steps-settle-where = Where is { $unit } now?
steps-close-blocked = The job stays open until this is settled
steps-close-history = See the history
steps-close-note = Last word for the record, if there is one
steps-close-add-note = Add a last word
steps-done-trail = See the trail
steps-done-history = History
steps-summary-replaced = Replaced
# $sort: parking-sensor
steps-summary-where = Where each { PART($sort) } is
steps-summary-more = What it came to

## Looking, picture, repair

steps-look-fine = Fine
steps-look-note = Anything to add
steps-look-record = Record what I saw
# $position: right outer
steps-look-group = What you see at { $position }
# $sort: parking-sensor
steps-photo-guide = { CAP(PART($sort)) } and surroundings
steps-photo-open = Open the camera
# $position: right outer
steps-photo-shutter = Take { $position }
# $position: right outer
steps-photo-retake = Again: { $position }
steps-repair-where = Where was it?
steps-repair-where-wanted = Tap where it was.
steps-repair-guide = Show the place that is repaired.
# $when: before
steps-repair-picture = { $when ->
    [before] Picture before
   *[after] Picture after
}
steps-repair-what = What was done?
steps-repair-pin = Pin seated and locked
steps-repair-lock = Plug pushed home and locked
steps-repair-plug = Plug cleaned and dried
steps-repair-wire = Wire mended
steps-repair-note = In your own words: which pin, which wire

## A check of the wiring

steps-measure-good = Good
steps-measure-bad = Bad
steps-measure-unclear = Not clear
steps-measure-back = Back to the check
steps-measure-found = What did you find?
steps-measure-value = Measured, if you have a figure
steps-measure-compared = The same where it works, if you measured it
steps-measure-figure = What a sound wire has
steps-measure-unit = Unit

## The circuit of a position, drawn

# $place: the pins of the sensor's plug
steps-circuit-look = Here: { $place }.
# $line: signal
# $place: the wire to the bumper plug
steps-circuit-probe-ends = Probes on both ends of the { $line } wire: { $place }.
# $from: the pins of the sensor's plug
# $to: the control unit's plug
# $line: signal
steps-circuit-probe-along = Probes on the { $line } wire: { $from }, { $to }.
# $place: the pins of the sensor's plug
# $line: signal
steps-circuit-probe-metal = One probe on { $line } at { $place }, one on bare metal.
# $place: the pins of the sensor's plug
# $line: signal
steps-circuit-probe-neighbour = One probe on { $line } at { $place }, one on the wire beside it.
steps-circuit-signal = signal
steps-circuit-supply = supply
steps-circuit-ground = ground
steps-circuit-parts = Parts and readings
steps-circuit-sound = Sound
steps-circuit-possible = Still open
steps-circuit-named = The fault
# $minutes: 3
steps-circuit-minutes = About { $minutes }.
steps-circuit-read = What was read
steps-circuit-wire = Wire and pins
steps-circuit-wire-why = Colours and pins can be kept alone. With size and length, the limits of the checks fit this wire.
steps-circuit-size = Size of the wire
steps-circuit-length = Length, cm
steps-circuit-celsius = Warm as, °C
# $line: signal
steps-circuit-colour = Colour, { $line }
# $colour: white and blue
steps-circuit-coloured = Wire: { $colour }
# $line: signal
# $colour: white and blue
steps-circuit-line-coloured = { $line } ({ $colour })
steps-circuit-pins = Pins, such as: 1 signal
steps-circuit-keep = Keep the wire
steps-found-further = I doubt it: one check more
steps-found-back = Back to the find

## A move

steps-moves-not-this = Not this
steps-moves-why-not = Why not:
steps-moves-outlook = What results mean

## A new sensor

# $sort: parking-sensor
steps-new-label = Label the new { PART($sort) }
steps-type = Type the code
steps-write = Write a code by hand
# $code: K7F-3M
steps-new-fit = Fit { $code }
steps-new-none = No new one yet
steps-new-at-hand = At hand already
# $sort: parking-sensor
# $position: right outer
steps-new-old-at = Old { PART($sort) }, at { $position }
# $sort: parking-sensor
steps-new-read = New { PART($sort) }: read it off
# $part: PS-1
steps-new-same = It reads { $part } too
# $sort: parking-sensor
steps-new-part-fault = Read the part number off the new { PART($sort) } first.
steps-new-reason = Why it is used all the same
steps-new-reason-fault = Another part number needs a reason.
steps-new-reason-note = It stays on record with the fit.
steps-new-serial = Serial number, if it has one
steps-new-ways = Other ways, serial number
# $sort: parking-sensor
steps-new-old-read = Old { PART($sort) }: read it off
steps-new-old-note = Its part number is not on record yet.
steps-compare-same = Same part number
# $count (count): 3
steps-compare-so-far = The same so far, { $count ->
    [one] { $count } character
   *[other] { $count } characters
} to go
# $place (count): 4
steps-compare-other = Another part number: it differs from character { $place }

## Scanning

steps-scan-write = No label at hand: write a code by hand
steps-scan = Scan its label
# $from: right outer
steps-scan-from = You pulled it from { $from }.
steps-scan-tap = Which one is in your hand?
steps-scan-part = Part number on it
steps-where-skip = It cannot be scanned or typed
steps-where-asked = Where does it go?
steps-where-first = Tap where it goes first.
steps-bad-why = Why does it go into stock? It was found bad.
steps-bad-fault = Say why: in stock it could be taken for a good one.
steps-where-note = Note, if one helps
steps-where-save = Save where it goes
steps-where-not-scanned = Not scanned
# $sort: parking-sensor
steps-where-unproven = Nobody has checked which { PART($sort) } this is. The record will say so.
# $code: 4KD-7F
# $how: scanned
steps-where-proven = This is { $code }, { $how ->
    [scanned] scanned
    [typed] typed
   *[tapped] tapped
}.

## A test

steps-codes-enter = Enter the codes on the screen
# $position: right outer
steps-codes-at = Code at { $position }
steps-codes-code = Code
steps-codes-failure = Failure type
steps-codes-means = What it means, as you know it
steps-codes-use = Use it
steps-codes-open-list = The failure types follow the open list
steps-codes-open-list-note = Tick it only if the tool or its book says SAE J2012 or ISO 15031-6. Older ones mean other things.
steps-codes-elsewhere = Code of no single position
steps-test-clean = clean
steps-test-fault = fault
steps-test-silent = not reported
steps-test-guide = The screen, so that it can be read
steps-test-screen = The screen of the test
steps-test-photograph = Photograph the screen
steps-test-take = Take the picture
steps-test-back = Go back
# $sort: parking-sensor
steps-test-help = How to start the { PART($sort, form: "test") }
steps-test-first = First tap what it showed
# $proof: sounder heard
steps-test-record = { CAP($proof) }: record
steps-test-empty = empty
# $reading: fault
steps-test-empty-but = empty, { $reading }
# $reading: fault
steps-test-unplugged = { $reading }, unplugged
steps-test-which = Tap what shows a fault
steps-test-none = No fault anywhere
steps-test-other = Something else
# $proof: sounder not heard
steps-test-not-heard-button = { CAP($proof) }
steps-test-more = More: codes, picture, note
steps-test-which-how = Tap a fault once more if the test does not report on it.
# $position: Right outer
steps-test-was-unplugged = { $position } was unplugged
steps-test-came-and-went = The fault came and went
steps-test-provoked = What came before this test
steps-test-provoked-else = none of these
steps-test-again = Take it again
steps-test-note = Note
# $number (count): 2
# $heard: sounder heard
# $count (count): 1
# $faulted: right outer
# $unreported: some
# $silent: left inner
steps-test-found = Test { $number }: { $heard }, { $count ->
    [0] no fault anywhere
   *[other] fault at { $faulted }
}{ $unreported ->
    [some] ; nothing reported on { $silent }
   *[none] {""}
}.
steps-test-summary-went = The fault came and went.

## The check in use

# $count (count): 1
# $what: quiet
steps-walk-save = Save: { $count } { $what }
steps-stand = Where to stand
steps-stand-alone = Alone? Engine off, parking brake on, a stand for the pole. Or a second person holds it.
# $far: 60
steps-stand-pole = Pole: 75 mm thick, 1 m high. It stands { $far } cm off; the grid has 10 cm, up to 1 m.
# $far: 60
steps-stand-memory = Pole, grid and 1 m follow ISO 17386 as far as it is openly known. { $far } cm and the turn at the ends are ours.
steps-stand-even = Spread evenly until you measure: an assumption.
steps-stand-drawing = Where the pole stands, from above
steps-stand-width = Bumper's width, cm
steps-stand-celsius = Air, °C
steps-stand-left = From the left end, cm
steps-stand-tape = By tape, cm
steps-stand-shown = Shown, cm
