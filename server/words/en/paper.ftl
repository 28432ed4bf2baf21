### Sheets to print or hand on: the report, the slip, the record of a sensor.

## Any sheet

paper-size-a5 = A5
paper-size-page = A4 or Letter
paper-size-80 = 80 mm roll
paper-size-58 = 58 mm roll
paper-print = Print it
paper-share = Share it
paper-save = Save as a file
paper-size = Paper
paper-shop = The name of your shop
paper-shop-name = Stands at the head of all you print

## The report for the customer

# $vehicle: Blue estate
paper-report-title = Report · { $vehicle }
paper-report-before = Before the work
paper-report-trail = The tests as a picture
# $sort: parking-sensor
paper-report-trail-lead = Each column is a { PART($sort, form: "test") }, each row a place on the vehicle, each line { PART($sort, form: "a") }. The broad band shows where the fault was.
paper-report-replaced = What was replaced
paper-report-during = While working
paper-report-after = After the work
paper-report-proof = What proves it
paper-report-note = Please note
paper-report-no-picture = There is no picture from after the work yet.
paper-report-take = Take one
# $sort: parking-sensor
paper-report-kind = Report on the { PART($sort, form: "full-many") }
paper-report-vin = Vehicle number
paper-report-complaint = Complaint
paper-report-no-complaint = none noted
paper-report-begun = Begun
paper-report-finished = Finished
paper-report-clock = The clock of the phone was wrong. The days on this page may be wrong; their order is right.
paper-report-done = What was done
# $shows: Right outer
# $day: 28 Nov 2026
paper-report-picture = { $shows }, { $day }
# $count: 6
paper-report-more = { $count ->
    [one] One more picture is with the job.
   *[other] { $count } more pictures are with the job.
}
# $by: Ines, Tom
paper-report-by = Work by { $by }.
paper-report-unnamed = someone unnamed

## Sheets of a sensor

paper-no-label = no label
paper-part = Part
paper-serial = Serial
paper-not-noted = not noted
# $code: 4KD-7F
paper-symbol = The label { $code } as a QR code
paper-no-test = No test with it is on record.
# $vehicle: Blue estate
# $day: 28 Nov 2026
paper-tested = On { $vehicle }, tested { $day }.
# $complaint: beeps all the time
paper-complaint = Complaint: { $complaint }.
# $at: 28 Nov 2026, 09:05
paper-printed = Printed { $at }.
# $at: 28 Nov 2026, 09:05
# $actor: Ines
paper-printed-by = Printed { $at } by { $actor }.
# $where: on the phone that keeps it
paper-copy = The paper is a copy: scan the code for the record itself, { $where }.

## The return slip

# $code: 4KD-7F
paper-slip-title = Return slip { $code }
paper-slip = Return slip
paper-tests = What the tests say
paper-custody = Who had it
# $what: handed over to the parts counter
# $at: 28 Nov 2026, 09:05
# $actor: Ines
# $how: scanned
paper-slip-last = Last: { $what }, { $at }, { $actor } ({ $how }).
paper-slip-decision = Decision
# $signed: Kim
# $at: 28 Nov 2026, 09:05
paper-slip-signed = Signed: { $signed }, { $at }.
paper-slip-accepted = accepted
paper-slip-on-hold = on hold
paper-slip-refused = refused
paper-slip-reason = Reason
paper-slip-name = Name, date
paper-slip-signature = Signature

## The record of a sensor

# $sort: parking-sensor
# $code: 4KD-7F
paper-record-title = Record of { PART($sort) } { $code }
# $sort: parking-sensor
paper-record = Record of { PART($sort, form: "a") }
# $where: at right outer
paper-record-where = It is { $where }.
paper-record-trail = Its trail
paper-record-tests = Tests
paper-record-when = When
paper-record-what = What
paper-record-how = Known by
paper-record-who = Who
paper-record-labels = Labels
# $code: 4KD-7F
# $told: in use
paper-record-label = { $code }: { $told }
# $code: 4KD-7F
# $day: 28 Nov 2026
# $told: in use
paper-record-label-put-on = { $code }, put on { $day }: { $told }
paper-record-returns = Returns
# $signed: Kim
paper-record-signed = Signed: { $signed }.
paper-record-undecided = Not decided yet.
paper-record-lost = Identity lost
# $at: 28 Nov 2026, 09:05
# $how: mixed up with another
paper-record-lost-how = On { $at }, { $how }.
