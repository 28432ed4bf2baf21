### What a clerk checks of a returned unit: how each check stands, in a heading and a sentence.

returns-about-label = label
returns-about-evidence = record from another shop
returns-about-place = place on record
returns-about-part = part number
returns-about-serial = serial number
returns-about-verdict = proof that it is bad
returns-about-custody = custody
returns-about-photos = pictures
returns-about-before = returned before
returns-about-record = record altered
returns-about-job = job not closed
returns-about-window = return window
returns-about-others = other counters
returns-about-unasked = other counters not asked
returns-before-title = Returned before
# $decision: accept
returns-before-decided-title = { $decision ->
    [accept] Accepted before
    [hold] Held before
   *[refuse] Refused before
}
# $decision: accept
# $ago: 3 days ago
# $signed: Kim
returns-before-decided = { $decision ->
    [accept] Accepted
    [hold] Held
   *[refuse] Refused
} { $ago }, signed by { $signed }.
# $decision: accept
# $signed: Kim
returns-before-signed = { $decision ->
    [accept] accepted
    [hold] held
   *[refuse] refused
} (signed by { $signed })
# $decisions: accepted (signed by Kim) and refused (signed by Lou)
returns-before-twice = Two counters decided on it: { $decisions }. Both stay on record.
returns-before-held-title = Not decided before
# $ago: 3 days ago
# $signed: Kim
returns-before-held = Held { $ago }, signed by { $signed }.
returns-before-not-title = Not returned before
returns-before-not = No earlier return is on record.
returns-others-title = At no other counter
returns-others = No other counter of the chain has decided on it.
returns-others-begun-title = Another counter has it in hand
# $place: north.example
# $ago: 3 days ago
returns-others-begun = The counter { $place } began to accept it { $ago }. Its record has not come yet.
# $decision: accept
returns-others-decided-title = { $decision ->
    [accept] Accepted at another counter
   *[refuse] Refused at another counter
}
# $decision: accept
# $place: north.example
# $ago: 3 days ago
returns-others-decided = { $decision ->
    [accept] Accepted
   *[refuse] Refused
} { $ago } at { $place }.
returns-unasked-title = Other counters not asked
returns-unasked = They could not be reached. Your own record decides. They are asked later, and what contradicts is shown.
returns-evidence-title = Its record is here
# $maker: North yard
# $rules: proof that it is bad and custody
returns-evidence = The record that { $maker } sealed stands for it: { $rules }.
returns-evidence-hold-title = Its record leaves something open
# $maker: North yard
# $rules: pictures
returns-evidence-hold = In the record that { $maker } sealed this is open: { $rules }.
returns-evidence-fail-title = Its record speaks against it
# $maker: North yard
# $rules: proof that it is bad
returns-evidence-fail = In the record that { $maker } sealed this speaks against it: { $rules }.
returns-label-evidence-title = A label from elsewhere, with its record
# $host: shop.example
# $maker: North yard
returns-label-evidence = Its record from { $host } is kept here, with the seal of { $maker }.
returns-gap-out = not scanned when it came into the hand
returns-gap-fitted = not scanned when it was fitted
returns-gap-stock = not scanned when it went into stock
returns-gap-counter = not scanned when it came to the counter
returns-gap-customer = not scanned when it went to the customer
returns-gap-scrapped = not scanned when it was scrapped
returns-gap-labelled = not scanned when it was labelled
returns-gap-void = its label was replaced on someone's word
returns-gap-disputed = two places were on record for a time
returns-gap-mixed = it got mixed up, and was told apart only as the last one left
returns-custody-gap-title = A gap in custody
# $gaps: not scanned when it was fitted
returns-custody-gaps = { CAP($gaps) }.
returns-custody-none = No handover is on record.
returns-custody-title = Custody unbroken
# $count (count): 4
returns-custody-read = Label read at { $count ->
    [one] its one handover
   *[other] each of { $count } handovers
}.
# $count (count): 4
# $typed (count): 1
returns-custody-read-typed = Label read at { $count ->
    [one] its one handover
   *[other] each of { $count } handovers
}, { $typed } of them typed.
returns-custody-alone = Its last place was tapped; nothing else was in hand.
returns-job-none-title = No job
returns-job-none = No job on record had it.
returns-job-open-title = Its job is not closed
# $vehicle: Estate, blue
returns-job-open = The job on { $vehicle } is still open.
returns-job-title = Job closed
# $vehicle: Estate, blue
returns-job = The job on { $vehicle } is closed.
returns-label-elsewhere-title = A label from elsewhere
# $host: shop.example
returns-label-elsewhere = Its record is at { $host }. Ask for the record as a file.
returns-label-unknown-title = No part on record has this label
# $code: K7F-3M
returns-label-unknown = { $code } is on no record here. The phone that put it on may not have sent its work yet.
# $sort: parking-sensor
returns-label-shared-title = Two { PART($sort, form: "many") } carry this label
# $code: K7F-3M
returns-label-shared = { $code } does not say which of the two this is.
returns-label-void-title = This label is void
# $code: K7F-3M
# $sort: parking-sensor
# $now: P4C-8T
returns-label-void = { $code } was taken out of use; the { PART($sort) } that had it has { $now } now.
# $code: K7F-3M
# $sort: parking-sensor
returns-label-void-none = { $code } was taken out of use; the { PART($sort) } that had it has no label now.
returns-label-two-title = Two labels on it
# $codes: K7F-3M and P4C-8T
# $sort: parking-sensor
returns-label-two = { $codes } are on record for one { PART($sort) }.
returns-label-unread-title = Label not read
# $sort: parking-sensor
returns-label-unread = Only its label says for sure which { PART($sort) } this is.
returns-label-title = Label known
# $code: K7F-3M
# $how: scanned
returns-label = { $code } is on record, { $how ->
    [scanned] scanned
    [typed] typed
    [written] written
   *[other] { $how }
}.
# $sort: parking-sensor
returns-part-other-title = Not the { PART($sort) } in the pictures
returns-part-other = Compared by eye: it is another one.
returns-part-differs-title = The label is on another part
# $field: serial
# $read: A-17
# $code: K7F-3M
# $recorded: A-18
returns-part-differs = Read off it: { $field ->
    [serial] serial number
   *[part] part number
} { $read }. The record of { $code } says { $recorded }.
# $field: serial
# $number: A-17
returns-part-number = { $field ->
    [serial] serial
   *[part] part
} { $number }
returns-part-title = It is the part claimed
# $numbers: part 12-34 and serial A-17
returns-part-read = Read off it: { $numbers }, as on record.
returns-part-by-eye = Compared with its pictures by eye.
returns-part-unknown-title = No part number on record
# $pictures: some
returns-part-unknown = { $pictures ->
    [none] Nothing says which part is claimed.
   *[some] Nothing says which part is claimed. Compare the pictures.
}
# $pictures: some
returns-part-alike = O and 0, or I and 1, are easily taken for each other. { $pictures ->
    [none] Read it once more.
   *[some] Read it once more, or compare the pictures.
}
returns-part-unread-title = Is it the part claimed?
returns-part-pictured-title = Is it the one in this picture?
# $pictures: some
returns-part-unread = No serial number read off it yet. Scan the maker's symbol on the part or its bag{ $pictures ->
    [none] .
   *[some] , or compare the pictures.
}
# $pictures: some
returns-part-alone = No serial number of it is on record, and others have the same part number. { $pictures ->
    [none] Nothing on record tells it from them.
   *[some] Compare the pictures.
}
returns-photos-none-title = No picture
returns-photos-none = No picture of it or of where it sat is on record.
returns-photos-title = Pictures there
# $count (count): 3
returns-photos = { $count ->
    [one] { $count } picture
   *[other] { $count } pictures
} on record.
returns-place-disputed-title = In dispute
# $places: in hand and in your stock
returns-place-disputed = Two places are on record: { $places }. A scan has to settle it.
returns-place-mixed-title = It got mixed up
# $code: K7F-3M
# $place: in your hand
returns-place-mixed = { $code } is { $place }.
returns-place-fitted-title = On record it is on a vehicle
# $code: K7F-3M
# $place: in your hand
returns-place-fitted = { $code } is still { $place }.
returns-place-scrapped-title = On record it was scrapped
# $code: K7F-3M
returns-place-scrapped = { $code } was scrapped.
returns-place-title = Place on record fits
# $place: in your hand
returns-place = On record it is { $place }.
# $seq: 12
returns-record-changed = Entry { $seq } was changed after it was recorded.
# $seq: 12
returns-record-missing = What comes before entry { $seq } is missing.
# $seq: 12
returns-record-other = Entry { $seq } does not continue the one before it.
returns-record-unchecked-title = Record not checked
returns-record-unchecked = This phone could not check the record for changes.
# $device: d0123456789abcdef
returns-record-phone = Phone { $device }.
returns-record-altered-title = The record was altered
returns-record-title = Record intact
returns-record = No event of it was changed, none is missing.
returns-serial-title = Serial number on no other
# $serial: A-17
returns-serial = Serial number { $serial } is on record for no other.
returns-serial-other-title = The serial number is another's
# $serial: A-17
# $codes: P4C-8T and K7F-3M
returns-serial-other = Serial number { $serial } is on record as { $codes }.
returns-serial-apart-title = Another part has this serial number
# $serial: A-17
# $codes: P4C-8T
# $settled: yes
returns-serial-apart = Serial number { $serial } is also on record as { $codes }, with another part number. { $settled ->
    [yes] So it is another one.
   *[no] Read the part number off this one.
}
returns-serial-alike-title = Another serial number looks the same
# $serial: A-17
# $codes: P4C-8T
returns-serial-alike = Serial number { $serial } looks like the one of { $codes }. O and 0, or I and 1, are easily taken for each other. Read it once more.
returns-serial-under-title = Here before under another label
# $serial: A-17
# $codes: P4C-8T
returns-serial-under = Serial number { $serial } was on a part with the label { $codes }. Find out who moved that label.
returns-serial-before-title = The serial number came back before
# $serial: A-17
# $code: P4C-8T
# $decision: accept
# $ago: 3 days ago
# $signed: Kim
returns-serial-before = Serial number { $serial } came back as { $code }. That was { $decision ->
    [accept] accepted
    [hold] held
   *[refuse] refused
} { $ago }, signed by { $signed }.
returns-verdict-no-test-title = No test of it is on record
returns-verdict-no-test = Nothing on record proves that it is bad.
returns-verdict-not-title = Not proven that it is bad
returns-verdict-else-title = The record blames something else
returns-verdict-title = Proven bad
# $share: 98.8 %
returns-verdict-sure = { CAP($share) } sure.
returns-window-unknown-title = Not known how old
returns-window-unknown = Nothing on record says when it came off a vehicle.
# $ago: 3 days ago
# $days (count): 30
returns-window = It came off { $ago }; the return window is { $days ->
    [one] { $days } day
   *[other] { $days } days
}.
returns-window-ahead-title = When did it come off?
returns-window-ahead = The phone at the bench has a day that is still to come. Ask when it was.
returns-window-late-title = Too late
returns-window-title = In time
