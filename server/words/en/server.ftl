### What the server says to a phone, and what commands say of a data folder.

server-busy = The server is busy with others. Try again in a moment.
server-many-tries = too many tries
# $seconds (count): 40
server-pause = a pause of { $seconds } seconds
# $seconds (count): 40
server-wait = Too many tries. Wait { $seconds } seconds, then try once more.
server-full-found = a full disk
server-full-wanted = free space on the server
server-full = The server's disk is full. What is on the phone is safe and is sent again.
server-shut-found = data that cannot be written
server-shut-wanted = a data folder that the server may write
server-shut = The server cannot write its data: the disk or folder is open for reading alone. What is on the phone is safe and is sent again.
server-database-found = a busy database
server-database-wanted = the same request in a moment
server-database = The server is busy. What is on the phone is safe and is sent again.
server-broken-found = a disk that fails
server-broken-wanted = a look at the server's disk
server-broken = The server's disk does not take or give data as it should. What is on the phone is safe and is sent again.
server-own-error = an error of its own
server-same-again = the same request again
server-went-wrong = Something went wrong on the server. What is on the phone is safe and is sent again.
# $header: X-Forwarded-For
# $found: nothing
# $wanted: https
server-proxy = This server answers only through its proxy, and { $header } has { $found }; wanted is { $wanted }. Have the proxy set that header itself, over whatever the client sent.
# $wanted: counter
# $role: bench
server-other-role = This is for phones { $wanted ->
    [counter] at the parts counter
   *[other] at the bench
}; this one is { $role ->
    [counter] at the parts counter
   *[other] at the bench
}.
server-counter-grants = A phone at the parts counter lets in and puts out phones at the counter. For one at the bench, use a phone at the bench.
server-not-paired = This phone is not paired, or its pairing was withdrawn. Open a pairing link from a phone that is paired, or start the server with --pair to get one.
server-own-phone = This is the phone in your hand. Put it out from another one.
server-phone-gone = This phone is not paired any more.
server-link-used = a link that was used or has expired
server-link-fresh = a fresh pairing link
server-link = This pairing link was used already or has expired. Ask for a fresh one.
# $file: data/keys/signing.pem
server-key-damaged = { $file } is damaged. Take the one from a backup.
# $why: It ends too early.
server-no-jpeg = This is no JPEG. { $why }
# $extras: Exif
server-photo-extras = The photo carries { $extras }, which can tell where and when it was taken. Encode it again without that.
server-photo-damaged = The photo is damaged and cannot be shown.
server-photo-changed = The photo's bytes do not match its hash: they were changed or cut off on the way. Send it again.
server-jpeg-begin = It does not begin like a JPEG.
server-jpeg-one = It does not hold exactly one picture.
server-jpeg-scans = It has too many scans.
server-jpeg-empty = It holds no picture.
# $byte (count): 412
server-jpeg-segment = A segment is missing at byte { $byte }.
server-jpeg-end = It ends too early.
# $most (count): 16
server-event-deep = The event is nested deeper than { $most } levels.
# $size (count): 70000
# $most (count): 65536
server-event-large = The event has { $size } bytes, at most { $most } are taken.
# $seq: 12
server-event-changed = Event { $seq } does not match its hash: a byte was changed.
# $seq: 12
server-event-twice = Another event { $seq } of this device is kept already, so two phones use one identity. Both are kept; this phone goes on as a new device.
# $first: 4
# $last: 9
server-events-missing = Events { $first } to { $last } of this device are missing. Send them first.
# $seq: 12
# $kept: 11
server-event-forked = Event { $seq } does not continue the event { $kept } that is kept. It is kept apart; this phone goes on as a new device.
server-other-phone = Another phone uses this device id.
server-other-phone-pair = Another phone uses this device id. Pair this phone again to take it over.
server-unsigned = This comes without the signature of the phone that uses this device id. The phone goes on under a new one.
server-bad-signature = The signature is not that of the phone which uses this device id. The phone goes on under a new one.
server-unproven = Nothing proves which phone recorded this. It is kept apart and counts for nothing, until somebody whose work it is accepts it.
server-no-room = Nothing proves which phone recorded this. The server has no more room for such entries from this phone. This one stays on the phone. Accept those that wait, then there is room again.
# $entries (count): 100000
# $kilobytes (count): 48000
# $most (count): 100000
# $most_kilobytes (count): 163840
server-no-room-for-any = Nothing proves which phone recorded this. Of all phones the server keeps { $entries } such entries, { $kilobytes } kB. It has room for { $most }, { $most_kilobytes } kB. This one stays on the phone. Accept those that wait, or have room made where the server runs.
server-device-ended = The phone with this device id was put out, and the id ended with it. This phone needs a new id.
server-device-bound = Another phone has the key to this device id. This phone needs a new id. If the other one is lost, put it out.
server-brought-bound = This phone has a key of its own and can prove what it recorded. If it is lost, put it out first.
# $role: counter
server-device-role = This device id is of a phone with another task, and stays so. { $role ->
    [counter] A phone at the parts counter
   *[other] A phone at the bench
  } needs an id of its own.
server-name-folder = Name the folder with --data.
# $folder: data
# $advice: Name the folder with --data.
server-no-data = { $folder } holds no data of this program. { $advice }
# $folder: data
server-newer-data = A newer version of Swaptrail has changed { $folder }. Update Swaptrail, then try again.
# $folder: notes.txt
server-data-in-file = { $folder } is a file, or lies in one. Name a folder with --data.
# $days: -3
# $most (count): 3650
server-warranty-days = --warranty-days { $days } is no warranty. Give 1 to { $most } days, or 0 to leave it to each phone.
# $days: -3
# $most (count): 3650
server-return-days = --return-days { $days } is no return window. Give 1 to { $most } days, or 0 for none.
# $error: disk I/O error
server-disk-full = The disk is full. Free some space, then try again.
# $error: disk I/O error
server-disk-shut = This cannot be written or opened. Look at its permissions, and whether the disk is mounted for reading alone.
# $error: disk I/O error
server-disk-busy = Another program holds the database. Try again in a moment.
# $error: disk I/O error
server-disk-broken = The disk or the database does not answer as it should ({ $error }). Look at the disk, then run `swaptrail verify` on the data folder.
# $choices: svg or pdf
server-one-of = one of { $choices }
# $least (count): 1
# $most (count): 500
server-range = { $least } to { $most }
server-codes = a list of codes; an empty one means all that are left
# $pages (count): 20
server-pdf-for-more = pdf for more than { $pages } pages
server-batch-number = the number of a batch that was printed here
server-batch-left = one with a label left that is neither on a sensor nor void
server-reason = what happened, in a few words
# $code: K7F-3M
# $state: on-a-sensor
server-label-use = { $code }, { $state ->
    [elsewhere] of another batch
    [on-paper] on paper
    [on-a-sensor] on a sensor
   *[void] void
}
server-label-free = one on no sensor; else it is done on the sensor's page
# $count (count): 12
server-codes-left = at most { $count }: no more codes are left that were never issued
# $found: headers that are too long
server-unread = This is no request that the server can read: { $found }. Send it again.
# $found: 9000000 bytes
# $most (count): 8388608
server-request-large = The request carries { $found }; at most { $most } bytes are taken here. Send less at once.
server-request-slow = The request did not arrive in time. Move to a better signal; it is sent again.
server-crowded = The server takes in too much at once. Try again in a minute.
server-seal-unconfirmed = Nobody has confirmed whose seal this is. Compare its fingerprint with its owner first.
