### What went wrong on the phone, and what to do.

troubles-no-start-heading = Swaptrail could not start
# $error: Error: no storage
troubles-no-start = What was recorded is not touched. Close the app and open it again. ({ $error })
troubles-no-record = Swaptrail cannot record here
troubles-not-secure = This address is not secure, so the browser keeps camera and offline storage shut, and nothing could be recorded. Open the app by its https address.
troubles-too-old = This browser is too old to keep your records. Update it, or use another one.

troubles-full = Not saved: this phone is full
troubles-not-written = Not saved: this phone could not write
troubles-not-written-do = What you entered is still here. Save again; if it fails again, close the app and open it.

## The checks do not run.

troubles-restarted-meanwhile = The core was started again meanwhile.
troubles-no-webassembly = This browser cannot run the checks (no WebAssembly).
# $why: No answer within 30 seconds.
troubles-not-started = The checks could not be started. { $why }
# $why: This browser cannot run the checks (no WebAssembly).
troubles-unchecked = { $why } What you enter is saved on this phone, marked as unchecked.
# $address: https://yard.example/core.json
# $status: 404
troubles-answered = { $address } answered { $status }
troubles-self-check = its self-check came back changed
troubles-restarted = The checks stopped and were started again.
# $why: No answer within 30 seconds.
troubles-restarted-after = { $why } The checks were started again.
troubles-core-not-running = the core is not running
# $times (count): 20
troubles-asked-too-often = It asked { $times } times for more.
# $why: No answer within 30 seconds.
troubles-log-not-read-again = The checks could not read the log again. { $why }
# $seconds: 30
troubles-no-answer = No answer within { $seconds } seconds.
# $fault: out of memory
troubles-core-failed = The core failed: { $fault }.
# $fault: Uncaught SyntaxError
troubles-worker-failed = { $fault }
troubles-worker-not-loaded = Its worker did not load.
# $error: CoreError: out of memory
troubles-log-not-read = The checks could not read the log: { $error }.

## The storage of this phone.

troubles-storage-lost = This phone lost touch with its own storage. What you entered is still on the screen. Close the app and open it again.
troubles-older-tab = Swaptrail is open in another tab with an older version. Close that tab.
troubles-newer-tab = A newer version was opened in another tab. Load this page again.

## A file that is not taken in.

troubles-altered = This file was altered
# $place: Line 3
# $what: it is not as it was written
troubles-altered-place = { $place }: { $what }. Nothing was taken in. Pass the file on once more from the phone that made it.
# $device: d0123456789abcdef
troubles-proof = the signature of device { $device }
troubles-not-as-written = it is not as it was written
# $line: 3
troubles-line = Line { $line }
troubles-first-line = Its first line
# $entries (count): 9
# $photos (count): 2
# $entries_there (count): 8
# $photos_there (count): 2
troubles-incomplete = it names { $entries } entries and { $photos } photos, and { $entries_there } and { $photos_there } are there
troubles-after-end = it stands after the end of the file
troubles-two-files = These are two files in one
# $line: 3
troubles-two-files-do = On line { $line } a second file begins. Nothing was taken in. Get each file by itself from the phone that made it, and take in one after the other.
troubles-not-ours = This file was not made by this app
troubles-not-ours-do = Nothing was taken in. Pick the file that the other phone made; its name begins with swaptrail.
troubles-first-or-last-line = Its first or its last line
# $seq: 4
# $device: d0123456789abcdef
troubles-entry = Entry { $seq } of phone { $device }
troubles-bytes = its bytes do not match its hash
troubles-missing = it is missing
troubles-not-next = it does not continue the entry before it
troubles-newer-file = This file is from a newer version
# $version: 9
# $known: 2
troubles-newer-file-do = It has version { $version }; this phone reads up to { $known }. Bring the app up to date, then take it in again.
# $line: 3
troubles-photo-line = The photo on line { $line }
troubles-elsewhere = This phone holds something else there
# $seq: 4
# $device: d0123456789abcdef
troubles-elsewhere-do = Entry { $seq } of phone { $device } is not the one that this phone has, or leaves a gap after it: two phones have used one identity. Nothing was taken in. Have the file taken in on the server: swaptrail take-in FILE.
troubles-outside = This file holds what no phone can show
# $seq: 4
# $device: d0123456789abcdef
# $message: data.position: found "ä", wanted letters from a to z
troubles-outside-do = Entry { $seq } of phone { $device } – { $message }. Nothing was taken in.
troubles-begins-middle = This file begins in the middle
# $count (count): 3
# $first: 2
# $last: 4
# $device: d0123456789abcdef
troubles-begins-middle-do = { $count ->
    [one] Entry { $last }
   *[other] Entries { $first } to { $last }
} of phone { $device } are neither in it nor here: it holds only what that phone had not sent to its server. Nothing was taken in. Take it in there.
troubles-two-phones = Two phones have used one identity
# $seq: 4
# $device: d0123456789abcdef
troubles-two-phones-do = Entry { $seq } of phone { $device } is not the one that is here. Nothing was taken in. Two phones use one identity. Carry the other phone's file to the phone that made this one, and take it in there: it gets an identity of its own. Then take in its file here.
troubles-no-server = This app works without a server, so this cannot be asked for here.

## The server and the line to it.

troubles-server-fault = The server has a fault. Nothing is lost.
troubles-unreachable = The server cannot be reached. Everything is kept on this phone.
troubles-unreachable-untrusted = The server cannot be reached, or this phone does not trust it. Everything is kept on this phone.
troubles-untrusted = Something else answered in place of the server, perhaps the sign-in page of this network. Everything is kept on this phone.
troubles-no-agreement = The server and this phone cannot agree on what was sent.
troubles-damaged-answer = The answer of the server arrived damaged. It is asked for again.
troubles-not-paired = This phone is not paired with the server yet.
troubles-older-server = The server runs an older version than this app and does not take everything yet. It is kept here and sent once the server is as new.
troubles-full-noting = This phone is full and cannot note what was sent. What you entered is kept. Free some space on it.
# $error: Error: no storage
troubles-not-finished = This phone could not finish sending. { $error }
# $why: job: found nothing, wanted an id
troubles-entry-refused = The server does not take an entry of this phone. { $why }
# $why: it was damaged on this phone.
troubles-photo-refused = A photo cannot be sent: { $why }
troubles-photo-missing = its bytes are missing on this phone.
troubles-photo-damaged = it was damaged on this phone.

## Pictures.

troubles-heic = This browser cannot open HEIC pictures
troubles-heic-do = Nothing was saved. Take the picture here in the app, or set the phone camera to JPEG.
troubles-no-picture = This file is not a picture
troubles-no-picture-do = Nothing was saved. Pick a photo, or take one here in the app.
troubles-broken-picture = This picture is damaged
troubles-broken-picture-do = It could not be read to its end, and nothing was saved. Take it again.
troubles-not-drawn = This phone could not draw the picture
troubles-picture-not-saved = This phone could not save the picture
troubles-picture-not-saved-do = Nothing was saved. Close other apps and take it again.
# $count (count): 40
troubles-points = { $count } million points
troubles-too-large = This picture is too large
# $found: 40 million points
# $points (count): 24
# $megabytes (count): 30
troubles-too-large-do = It has { $found }; this app takes up to { $points } million points and { $megabytes } MB. Nothing was saved. Take it here in the app, or set the phone camera to a smaller size.
troubles-picture-absent = This picture is not on this phone

## A record as a file.

troubles-record-none = No record
# $file: k7f.zip
troubles-record-larger = { $file } is larger than any record.
troubles-record-not-here = It cannot be shown here
# $why: It is of a later version.
troubles-record-unread = It is as it was sealed, but this app cannot read it. { $why }
troubles-record-not-shown = It cannot be shown
troubles-record-server = The server is needed for this
troubles-record-server-do = Only the server can check a seal, and it cannot be reached now. Keep the file and try again.
troubles-record-unchecked = It could not be checked
# $why: No answer within 30 seconds.
troubles-record-again = Try it again. { $why }
troubles-record-no-key = This browser cannot check it
troubles-record-no-key-do = The record was sealed by an installation, and this browser does not know its kind of key. Update it, or open the file in another browser.
troubles-record-altered = This record was altered
troubles-record-cut = This record is incomplete
troubles-record-no-picture = This picture is not in the file
# $size (count): 70
# $most (count): 48
troubles-record-large = It would hold { $size } MB of entries; { $most } is the most. Take the record of one job.
troubles-record-gap = Entries between those of this record are missing on this phone, so it would prove nothing.
troubles-record-no-record = This file is no record of a sensor or a job.
troubles-record-between = what lies between its parts was changed
# $place: it is missing
troubles-first-place = First place: { $place }.
# $place: it is cut short in entries.jsonl
troubles-record-cut-place = { CAP($place) }.
troubles-record-beginning = its beginning
# $last: record.json
troubles-record-cut-after = it is cut short after { $last }
# $last: record.json
troubles-record-foreign-after = what stands after { $last } does not belong in it
# $file: record.json
troubles-record-twice = { $file } stands in it twice
# $file: record.json
troubles-record-packed = { $file } is packed otherwise than in a record
# $file: record.json
troubles-record-cut-in = it is cut short in { $file }
troubles-record-cut-end = it is cut short in the list at its end
# $device: d0123456789abcdef
# $seq: 4
# $what: it is missing
troubles-record-entry = device { $device }, entry { $seq }: { $what }
