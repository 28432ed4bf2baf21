### Records as files: taking one along, and checking one from elsewhere.

## Checking a record from elsewhere

sealed-check-shown = Record from elsewhere
sealed-check-title = Check a record
sealed-check-label = The record file
sealed-check-away = Put it away
sealed-check-checking = Checking the file
sealed-check-another = Another file
sealed-check-choose = Choose the file
sealed-check-heading = Is this record as it was made?
# $checker: server
sealed-check-lead = Whoever recorded a sensor can hand over its record as a file. { $checker ->
    [server] The server
   *[phone] This phone
} checks every byte of it and which seal it bears. Nothing of it is kept here, unless a counter takes it as evidence.
sealed-check-own = Your own records bear this fingerprint
sealed-check-read-out = Read it out to whoever takes one of them.
sealed-check-altered = It is not shown, for none of it can be relied on. Ask whoever made it for a fresh one.
sealed-check-cut = Its end is missing: it was not sent or saved whole. Ask for the file again; it is not shown, for it cannot be checked.
sealed-view-unchanged = Not changed since it was sealed
# $maker: phone
# $at: 28 Nov 2026, 09:05
sealed-view-sealed = Sealed { $maker ->
    [phone] by a phone on
   *[installation] on
} { $at }, with the fingerprint
sealed-view-phone = The maker is a phone, not an installation. Whose phone it is, the file cannot say. The seal shows every change since then, and none from before.
sealed-view-from-file = From the file
sealed-view-from-phone = From a phone that works by itself
sealed-view-from-installation = From another installation
sealed-view-own-server = This server sealed it itself.
sealed-view-own-phone = This phone sealed it itself.
# $since: 28 Nov 2026
sealed-view-known = This seal was first seen here on { $since }. That proves nothing of whose it is.
sealed-whose-unknown = Nobody has confirmed whose seal this is
sealed-whose-unknown-do = Anyone can seal a record. Let its owner read the fingerprint out to you before you rely on it.
sealed-whose-confirm = Confirm the fingerprint
sealed-whose-name = Whose seal it is
sealed-whose-ask = How did you compare it?
# $how: called
sealed-whose-way = { $how ->
    [called] They read it out by telephone
    [written] They wrote it, in something I know to be theirs
   *[met] They were here
}
sealed-whose-same = The fingerprint is the same
sealed-whose-wanted = Say whose seal it is, and how you compared it.
# $name: North Street yard
sealed-whose-confirmed = The seal of { $name }
# $how: called
# $by: Jo
# $at: 28 Nov 2026
sealed-whose-how = { $by } compared the fingerprint on { $at }, { $how ->
    [called] by telephone
    [written] with what its owner wrote
   *[met] with its owner here
}.
sealed-view-otherwise = It does not come to what was sealed
# $count (count): 2
sealed-view-missing = { $count ->
    [one] { $count } picture is
   *[other] { $count } pictures are
} named in it and not in the file.
# $count (count): 2
sealed-view-smaller = { $count ->
    [one] { $count } picture in it is a smaller version. That it shows
   *[other] { $count } pictures in it are smaller versions. That they show
} the same as the original, only the seal says.
# $maker: phone
sealed-view-smaller-one = Smaller version; the original is on the { $maker ->
    [phone] phone
   *[installation] server
} that sealed it.
sealed-view-no-photo = In its place is something that is no photo of ours. It is not drawn.
sealed-view-no-label = no label
# $vehicle: Blue estate
sealed-view-job = The job on { $vehicle }
sealed-view-closed = closed
sealed-view-open = still open
sealed-view-no-test = No test was made.
sealed-view-pictures = Pictures
sealed-view-entries = Every entry of it
sealed-view-no-name = no name
# $reason: wrong corner
sealed-view-undone = Taken back: { $reason }

## A record as evidence at the counter

sealed-evidence-heading = As evidence here
sealed-evidence-unconfirmed = Confirm the fingerprint first.
sealed-evidence-none = No sensor with this label from another shop waits here. Scan it, and take it in.
# $host: north.example
sealed-evidence-use = Keep the record for the one from { $host }

## Taking a record along

sealed-phone-heading = The seal of this phone
sealed-phone-kicker = The records made here bear this fingerprint
# $since: 28 Nov 2026
sealed-phone-kept = Read it out to whoever takes one of them. It is this phone's since { $since } and in no file: another phone, or a browser that lost its data, has another. Records made before stay good.
sealed-phone-not-kept = This browser keeps no keys, so the fingerprint is another each time the app is opened. Read it out while you hand the file over. Nothing that you recorded hangs on it.
sealed-server-busy = The server seals it
sealed-server-sealed = Sealed by the server
sealed-server-lead = For a parts counter that does not use this server. It holds whole jobs: the entries, the tests and the pictures. Of any other job nothing can be read in it.
sealed-server-seal = The server seals it, so that every later change shows. It can be opened with any program that unpacks zip files.
sealed-server-unreachable = Only the server can seal a record, and it cannot be reached now. Try again when it can.
sealed-phone-busy = Making it
sealed-phone-sealed = Sealed by this phone
sealed-phone-lead = For a parts counter. It holds whole jobs: the entries, the tests and the pictures. Of any other job nothing can be read in it.
sealed-phone-seal = This phone seals it with a key of its own, so that every later change shows. Whoever has this app can check it; it can also be opened with any program that unpacks zip files.
# $subject: sensor 4KD-7F
sealed-take-title = Record · { $subject }
sealed-take-ready = The record is ready
sealed-take-heading = The record as one file
sealed-take-none = No record was made
# $code: 4KD-7F
sealed-take-sensor = sensor { $code }
sealed-take-sensor-unlabelled = a sensor without a label
sealed-take-unsent = Not all of it has reached the server
# $content: 3 entries and 1 picture
# $count (count): 4
sealed-take-unsent-what = { $content } on this phone { $count ->
    [one] is
   *[other] are
} not in the record.
sealed-take-make = Make the file
# $count (count): 2
sealed-take-roomless = { $count ->
    [one] { $count } picture has no room in it
   *[other] { $count } pictures have no room in it
}
sealed-take-roomless-what = The file is full. Smaller pictures would fit, or more of them.
sealed-take-smaller-make = With smaller pictures
# $count (count): 2
# $maker: server
sealed-take-smaller = { $count ->
    [one] { $count } picture is in it as a smaller version. The original stays
   *[other] { $count } pictures are in it as smaller versions. The originals stay
} on { $maker ->
    [server] the server
   *[phone] this phone
}.
sealed-take-save = Save it
sealed-take-share = Share it
