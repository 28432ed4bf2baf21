### What is said of backups, records as files, phones' files and the check of what is kept.

# $what: it is missing
keeping-fault = { $what }.
# $device: d0123456789abcdef
# $seq: 7
# $what: it is missing
keeping-fault-entry = device { $device }, entry { $seq }: { $what }.
# $error: disk I/O error
keeping-unread = the database cannot be read ({ $error })
# $before: 3
# $after: 5
keeping-missing-between = an entry is missing between the entries received as { $before } and { $after }, the last of its device
# $last: 12
keeping-missing-after = an entry is missing after the entry received as { $last }, the last of its device
keeping-bytes = its bytes do not match its hash
keeping-no-entry = it is no entry
keeping-filed = it is filed under other words than its own
keeping-missing = it is missing
# $seq: 7
keeping-twice = entry { $seq } comes twice
keeping-bad-certificate = its certificate was not signed by the installation that it names
keeping-bad-signature = the signature of its phone does not fit
keeping-signed-other = its phone signed another entry in its place
keeping-not-next = it does not continue the entry before it
keeping-added = it was added after the backup
keeping-head = its hash is not the one that the backup names
keeping-apart = it was kept apart, and its bytes do not match its hash
# $error: row 3 missing from index
keeping-damaged = the database is damaged ({ $error })
# $table: event_units
keeping-dangling = the table { $table } names something that is not there
# $file: k7f.zip
# $wanted: a record or a backup
keeping-no-file = { $file } does not exist. Name { $wanted }.
# $file: k7f.zip
# $wanted: a record or a backup
keeping-not-ours = { $file } is nothing that this program made, or was cut short. Name { $wanted }.
# $file: k7f.zip
# $sort: a record
keeping-intact = Intact: { $file }, { $sort }.
# $file: k7f.zip
# $sort: a record
# $place: it is missing.
keeping-altered = Altered: { $file }, { $sort }. First place: { $place }
# $file: k7f.zip
# $sort: a record of a sensor or a job
# $place: it is cut short in entries.jsonl.
keeping-incomplete = Incomplete: { $file }, { $sort }. Its end is missing: { $place } Get the file again.
keeping-sort-backup = a backup
keeping-sort-folder = a data folder
keeping-sort-record = a record
keeping-sort-phone-file = a file that a phone made
# $file: swaptrail.db
keeping-not-in = { $file } is missing in it
# $file: swaptrail.db
keeping-other-database = { $file } is not the one that the backup was made with
# $file: more.txt
keeping-put-in = { $file } was added to it
# $file: keys/signing.pem
keeping-changed = { $file } was changed
# $key: 1a2b 3c4d
keeping-sealed-phone = Sealed by a phone, fingerprint { $key }. Whose phone it is, the file cannot say.
# $key: 1a2b 3c4d
keeping-sealed = Sealed by an installation, fingerprint { $key }.
keeping-unconfirmed = Whose key that is, the file cannot say. Let its owner read the fingerprint out, each time until you have compared it.
keeping-own-seal = This data folder sealed it itself.
# $name: North Street yard
# $how: called
# $by: Jo
keeping-confirmed = It is the seal of { $name }; { $by } compared the fingerprint { $how ->
    [called] by telephone
    [written] with what its owner wrote
   *[met] with its owner there
}.
# $unit: K7F-3M
keeping-of-unit = It is the record of sensor { $unit }.
# $count (count): 2
keeping-smaller = { $count ->
    [one] { $count } picture in it is a smaller version. That it shows
   *[other] { $count } pictures in it are smaller versions. That they show
} the same as the original, only the seal says.
# $entries (count): 3
# $of_entries (count): 9
# $photos (count): 0
# $of_photos (count): 2
keeping-cut-off = it was cut off: { $entries } of { $of_entries } entries and { $photos } of { $of_photos } photos are there
# $photo: 0a1b2c
keeping-photo-missing = the photo { $photo } is missing
# $photo: 0a1b2c
keeping-photo-changed = the photo { $photo } is another one, or was changed
# $file: yard.zip
# $entries (count): 41
# $photos (count): 6
keeping-backup-made = { $file }: { $entries ->
    [one] { $entries } entry
   *[other] { $entries } entries
}, { $photos ->
    [one] { $photos } photo
   *[other] { $photos } photos
}. Keep it like a key: it holds the keys as well.
# $photo: 0a1b2c
# $folder: data
keeping-backup-without = The photo { $photo } is damaged or missing in { $folder } and is not in the backup.
# $file: yard.zip
keeping-exists = { $file } exists, and nothing is overwritten. Give another name.
keeping-no-stream = The file - has no name. What is written is a whole new file: give it one.
# $file: safe/yard.zip
# $folder: safe
keeping-no-folder = { $file }: the folder { $folder } does not exist. Make it first.
# $folder: data
keeping-not-empty = { $folder } is not empty, and restoring overwrites nothing. Name a new folder.
# $file: k7f.zip
# $sort: a record
keeping-no-backup = { $file } is { $sort }, not a backup. Name a file made by `backup`.
# $file: yard.zip
# $place: it is missing.
keeping-backup-altered = { $file } is altered, nothing was restored. { $place }
# $folder: data
# $entries (count): 41
keeping-restored = { $folder }: { $entries ->
    [one] { $entries } entry
   *[other] { $entries } entries
} restored. Serve it; phones notice and send again what they have.
# $folder: data
# $entries (count): 41
keeping-rejoined = { $folder } is marked as come back, with { $entries ->
    [one] { $entries } entry
   *[other] { $entries } entries
}. Phones notice, send again what they have and fetch everything.
keeping-room-none = Nothing was set aside, so there is nothing to move.
# $file: aside.txt
# $entries (count): 41
keeping-room-made = { $entries ->
    [one] { $entries } entry
   *[other] { $entries } entries
} moved into { $file }. They are no longer in the database.
# $name: swaptrail.db
# $file: yard.zip
keeping-changed-meanwhile = { $name } in { $file } changed while it was read. Nothing was restored.
# $photos (count): 2
# $days (count): 30
keeping-swept = { $photos ->
    [one] { $photos } photo file
   *[other] { $photos } photo files
} that nothing names in { $days } days, or that were cut off: taken away.
# $entries (count): 41
keeping-rebuilt = { $entries ->
    [one] { $entries } entry
   *[other] { $entries } entries
} folded anew: everything was as it should be.
# $entries (count): 41
keeping-rebuilt-but = { $entries ->
    [one] { $entries } entry
   *[other] { $entries } entries
} folded anew. What follows from them was as it should be.
# $photos (count): 2
keeping-lost = { $photos ->
    [one] { $photos } photo is
   *[other] { $photos } photos are
} missing or damaged. Every phone that sends is asked for them:
# $entries (count): 41
# $count (count): 2
keeping-rebuilt-other = { $entries ->
    [one] { $entries } entry
   *[other] { $entries } entries
} folded anew. { $count ->
    [one] { $count } thing differed, and is right now:
   *[other] { $count } things differed, and are right now:
}
# $first: job
# $second: j000000000001
keeping-row-state = { $first } { $second }
# $first: job
# $second: j000000000001
keeping-row-link = link { $first } { $second }
# $first: job
# $second: j000000000001
keeping-row-correction = correction of { $first } { $second }
# $first: job
# $second: j000000000001
keeping-row-job = job { $first }{ $second } in the list
# $first: job
# $second: j000000000001
keeping-row-words = words of { $first } { $second }
# $first: job
# $second: j000000000001
keeping-row-unit = unit { $first } in entry { $second }
# $first: job
# $second: j000000000001
keeping-row-photo = photo { $first } in entry { $second }
# $first: job
# $second: j000000000001
keeping-row-wanted = request for photo { $first } of entry { $second }
# $row: link a b
# $what: extra
keeping-row = { $row } { $what ->
    [other] was another
    [extra] was too much
   *[missing] was missing
}
keeping-its-beginning = its beginning
# $last: record.json
keeping-cut-after = it is cut short after { $last }
# $last: record.json
keeping-foreign-after = what stands after { $last } does not belong in it
# $file: record.json
keeping-member-twice = { $file } stands in it twice
# $file: record.json
keeping-packed = { $file } is packed otherwise than in a record
# $file: record.json
keeping-cut-in = it is cut short in { $file }
# $most (count): 4000
keeping-many = it holds more than { $most } files
keeping-more-at-end = something was added at its end
# $file: record.json
keeping-head-of = the head of { $file }
# $code: K7F-3M
keeping-no-label = No sensor on record has the label { $code }.
# $name: u0123456789ab
keeping-unknown = { $name } is not on record here.
# $name: "K7"
keeping-no-name = { $name } is no name of anything.
# $why: A letter is wrong.
keeping-bad-name = { $why } Give the code on a label, a sensor's id or a job's id.
# $name: K7F-3M
# $size (count): 70
# $most (count): 48
keeping-record-large = The record of { $name } would hold { $size } MB of entries, and { $most } is the most. Take the record of one job.
# $most (count): 64
keeping-too-large = it is larger than the { $most } MB that a record takes at most
keeping-no-record = This file is no record of a sensor or a job.
# $place: it is missing.
keeping-first-place = First place: { $place }
# $place: it is cut short in entries.jsonl.
keeping-cut-place = { CAP($place) }
# $line: 3
keeping-line = line { $line }
keeping-ends = its first or its last line
# $place: line 3
keeping-not-as-written = { $place } is not as it was written
# $entries (count): 9
# $photos (count): 2
# $entries_there (count): 8
# $photos_there (count): 2
keeping-head-names = its first line names { $entries } entries and { $photos } photos, and { $entries_there } and { $photos_there } are there
keeping-no-phone-file = is no file that a phone makes of its records
# $version: 9
# $known: 2
keeping-phone-file-version = is a phone's file of version { $version }; up to { $known } is known
# $line: 5
keeping-photo-line = the photo on line { $line } does not match its hash
# $line: 9
keeping-second-file = line { $line } begins a second file; take in each file by itself
# $line: 9
keeping-after-end = line { $line } stands after the end of the file
keeping-name-or-serve = Name the folder with --data, or start `swaptrail serve` on it once.
# $file: swaptrail.jsonl
# $entries (count): 12
# $photos (count): 2
# $known (count): 4
keeping-taken-in = { $file }: { $entries ->
    [one] { $entries } entry
   *[other] { $entries } entries
} and { $photos ->
    [one] { $photos } photo
   *[other] { $photos } photos
} taken in, { $known ->
    [one] { $known } entry was here already
   *[other] { $known } entries were here already
}.
# $phones (count): 1
keeping-taken-in-keyless = { $phones ->
    [one] It is of { $phones } phone without a key
   *[other] It is of { $phones } phones without a key
}: nothing proves who recorded it. You answer for it.
# $entries (count): 12
# $photos (count): 2
keeping-missing-of-it = The file was cut off: { $entries ->
    [one] { $entries } entry
   *[other] { $entries } entries
} and { $photos ->
    [one] { $photos } photo
   *[other] { $photos } photos
} of it are missing.
# $file: notes.txt
# $why: is no file that a phone makes of its records
keeping-name-phone-file = { $file } { $why }. Name the file that the phone made; its name begins with swaptrail.
# $file: swaptrail.jsonl
# $place: it is missing.
keeping-altered-not-taken = { $file } was altered, nothing was taken in. First place: { $place }
# $seq: 4
# $device: d0123456789abcdef
# $why: It is kept apart.
keeping-entry-not-taken = Entry { $seq } of device { $device }: { $why }
# $photo: 0a1b2c
# $why: It ends too early.
keeping-photo-not-taken = Photo { $photo }: { $why }
keeping-list-at-end = the list at its end
