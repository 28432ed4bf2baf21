### What is refused, and why.

# $field: minutes
# $found: -3
# $wanted: whole minutes from 0 to 600
refusals-bad-input = { $field }: found { $found }, wanted { $wanted }
# $field: Length, cm
# $found: 50000
# $wanted: a whole number from 1 to 10000
refusals-typed = “{ $field }”: { $found } does not fit. Wanted: { $wanted }.

## What was found, where it is no text.

refusals-found-nothing = nothing
refusals-found-decimals = a number with decimals
# $count (count): 3
refusals-found-list = a list of { $count }
# $count (count): 3
refusals-found-object = an object with { $count } keys
refusals-found-else = something else
refusals-found-half-pair = half of a character pair

## What would be right in its place.

refusals-object = an object
refusals-field-there = the field to be there
refusals-no-such-field = no field of this name
refusals-list = a list
# $most (count): 200
refusals-list-at-most = a list of at most { $most }
# $most (count): 24
refusals-positions = a list of 1 to { $most } positions
# $most (count): 600
refusals-minutes = whole minutes from 0 to { $most }
refusals-layout-file = a file that holds a layout of Swaptrail
refusals-layout-version = version 1: a newer app made this file
# $most (count): 100000
refusals-layout-size = at most { $most } characters
refusals-place-on-plan = a whole number from 0 to 1000
refusals-id-taken = an id that no other position has
refusals-name-taken = a name that no other position has
refusals-flag = true or false
# $choices: good, bad, unclear
refusals-one-of = one of { $choices }
# $least (count): 1
# $most (count): 80
refusals-text = text of { $least } to { $most } characters
# $most (count): 2000
refusals-text-at-most = text of at most { $most } characters
refusals-reason = a reason in a few words
# $count (count): 64
refusals-hex = { $count } hex digits
refusals-name-once = each name once
# $least (count): 1
refusals-whole-from = a whole number from { $least }
# $most (count): 1000000000
refusals-whole-most = a whole number of at most { $most }
refusals-rate = 0 to 1000000 parts per million
# $least: -90
# $most: 90
refusals-between = a whole number from { $least } to { $most }
refusals-confidence = 0 (as it was) or 500000 to 999999 parts per million
refusals-cause = circuit:POSITION, feed:GROUP or "control"
refusals-position = a position of the job
refusals-on-job = a position or feed of the job
refusals-vehicle = a vehicle that is on record
refusals-unit = a sensor that is on record
refusals-unit-or-code = a unit's id or the code on its label
refusals-job = a job that is on record
refusals-batch = the number of a batch that was printed here

## The same, of what programs hand over.

refusals-json = JSON
refusals-kind-known = a kind of entry that says what happened
refusals-entry = an entry that can be put right
refusals-operation = the name of an operation
refusals-arguments = those of the operation
refusals-random = more random bytes
refusals-device = "d" and 16 hex digits
refusals-first-prev = "" for the first event of a device
refusals-prev = 64 hex digits, the hash of the event before
refusals-whole-characters = whole Unicode characters
refusals-integer = an integer within ±(2^53 − 1)
refusals-id = letters from a to z, digits, "-", "_" and "."
refusals-time = a time before the year 9999
refusals-keys-text = keys that are text
refusals-keys-ascii = keys of ASCII characters
refusals-json-value = text, a whole number, true, false, null, a list or an object
refusals-compact = scalars, shapes and an object as value

## Why an entry is not understood, or not recorded.

refusals-newer = A newer version of the app recorded it.
refusals-no-job = It names no job.
refusals-job-unknown = Its job is not known.
refusals-not-on-record = This sensor is not on record.
# $position: rear-left-outer
refusals-no-position = The job has no position { $position }.
# $cause: feed:roof
refusals-no-cause = The job has nothing that { $cause } could mean.
refusals-seen-without-job = It names no job, whose vehicle the sensor would be fitted on.
refusals-seen-without-position = It names no position.
# $what: A unit left its position
refusals-at-the-bench = "{ $what }" is recorded at the bench; this phone is at the parts counter.
# $what: A clerk at the parts counter has the unit in hand
refusals-at-the-counter = "{ $what }" is recorded at the parts counter; this phone is at the bench.
refusals-corrects-unknown = It corrects an entry that is not on record here.
# $what: A unit went to another place
refusals-of-another-phone = "{ $what }" was recorded on another phone; at the parts counter a phone corrects what it recorded itself, and decisions.
refusals-place-of-the-bench = A phone at the parts counter says that a sensor is at the counter, in stock, with the customer or scrapped, and nowhere else.
# $actor: Jo
# $signed: Kim
refusals-signed-by-another = A decision is signed by whoever records it: { $actor }, not { $signed }.
# $kind: unit_pulled
refusals-kind = { $kind ->
    [job_opened] A job begins on a vehicle
    [left_deliberately] A good unit stays where the exchange put it
    [corrected] An earlier event was a mistake
    [put_right] An earlier event should have said something else
    [job_closed] The job is done
    [job_paused] The job rests
    [job_handed_over] Somebody else works on from here
    [job_resumed] Work on the job goes on
    [caution_acknowledged] A caution was read
    [lamp_checked] What the lamps showed at key-on or in reverse
    [looked] What could be seen from outside
    [photo_taken] A picture, named by its digest
    [photos_skipped] Work went on without pictures of positions
    [walk_checked] The walk-behind check with a test pole
    [test_run] The control unit tested itself
    [listened] What was heard of units with nothing taken apart
    [sounder_checked] Something was checked because no sounder was heard
    [cleaned] A position was cleaned
    [connector_locked] A connector is home and its lock closed
    [fit_checked] The fit of a unit was gone through
    [circuit_measured] A reading on a circuit
    [wire_noted] Which wire it is at a position, and how warm
    [wires_marked] What the wires at a position look like
    [circuit_repaired] A connector, wire, feed or control unit was repaired
    [reading_not_retaken] A bad reading was not taken again after a repair
    [unit_added] A unit that was not on a vehicle before
    [unit_labelled] A label was put on a unit
    [label_voided] A label is torn or lost
    [part_noted] The part number or serial was read off a unit
    [unit_pulled] A unit left its position
    [unit_fitted] A unit was put into a position
    [unit_moved] A unit went to another place
    [unit_seen] A fresh scan says where a unit is; it settles a dispute
    [tests_told_apart] Tests that two phones entered apart are tests of their own
    [work_went_on] A job that one phone closed goes on
    [units_mixed] Units got mixed up; which is which is not known
    [mixup_stopped] A wrong unit was stopped
    [move_started] A next move was begun
    [move_dropped] A move was given up
    [comes_and_goes_set] Whether the fault comes and goes
    [rates_set] Assumptions of this job, in parts per million
    [rates_learned] Rates that the yard's own jobs taught
    [minutes_learned] Minutes that the yard's own jobs taught
    [comeback_set] How far the earlier jobs of the vehicle count
    [code_weight_set] Whether the failure type of a position's code counts towards the cause
    [reach_set] How many minutes until a hand is on the unit at a position
    [money_set] Labour and prices, in minor units of the user's currency; 0 is not given
    [labels_printed] Labels were printed, by a phone without a server
    [labels_spoiled] Printed labels that nothing carries went out of use
    [return_received] A clerk at the parts counter has the unit in hand
    [record_received] A record from elsewhere was checked for a returned unit
    [return_decided] A clerk took a returned unit back, held it or refused it, and signed
   *[other] An entry of the kind { $kind }
}

## What does not fit between the entries of one phone.

# $first: 4
# $last: 9
refusals-chain-gap = events { $first } to { $last } are missing
# $seq: 12
refusals-chain-twice = event { $seq } comes a second time
# $seq: 12
refusals-chain-broken = event { $seq } does not continue the event before it
