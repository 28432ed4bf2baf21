### A record as a file: what is wrong with one, and what it says beside what comes out here.

# $file: entries.jsonl
record-not-in = { $file } is missing in it
# $file: entries.jsonl
record-larger = { $file } is larger than in any record
# $file: entries.jsonl
record-no-seal = { $file }: it is not written as a seal is
# $file: entries.jsonl
record-unsigned = { $file }: its signature does not fit
# $most (count): 12
record-levels = no more than { $most } levels
# $file: entries.jsonl
record-changed-form = { $file } was changed; it is not written as a record is
# $version: 9
record-later = This record is of version { $version }, later than this program. Update it.
# $file: entries.jsonl
# $field: told
record-field-missing = { $file }: { $field } is missing
# $file: entries.jsonl
# $field: told
record-field-added = { $file }: { $field } was added
# $file: entries.jsonl
# $field: told
record-field-changed = { $file }: { $field } was changed
# $file: entries.jsonl
record-no-record = { $file } is not written as a record is
# $file: entries.jsonl
record-other-key = { $file }: it names another key than the seal
# $file: entries.jsonl
record-changed = { $file } was changed
# $file: entries.jsonl
record-no-hashes = { $file } is not written as a list of hashes is
record-added = it was added
record-entry-added = an entry was added
# $file: entries.jsonl
record-changed-end = { $file } was changed at its end
record-another = another entry stands in its place
record-missing = it is missing
record-bytes = its bytes do not match its hash
record-no-entry = it is no entry
record-bad-certificate = the certificate of its phone does not fit
record-bad-signature = the signature of its phone does not fit
record-signed-other = its phone signed another entry in its place
record-not-next = it does not continue the entry before it
# $photo: 0a1b2c
record-photo-missing = the photo { $photo } is missing
# $photo: 0a1b2c
record-photo-changed = the photo { $photo } is another one, or was changed
# $file: entries.jsonl
record-put-in = { $file } was added to it
# $vehicle: Estate, blue
record-title-job = the job on { $vehicle }
# $sort: parking-sensor
# $unit: K7F-3M
record-title-unit = { PART($sort) } { $unit }
record-what-label = Its label.
record-what-part = Its part number.
record-what-serial = Its serial.
record-what-place = Where it is.
record-what-disputed = Whether two places are on record.
record-what-tests = Its tests.
record-what-lost = Whether it got mixed up.
record-what-elsewhere = What it did elsewhere.
record-same = Worked out again here from these entries alone, it comes to the same.
record-otherwise = Worked out again here from these entries alone, it does not come to what was sealed.
# $what: Its serial.
# $there: S-1
# $here: S-7
record-value = { $what } There: { $there }. Here: { $here }.
record-nothing = nothing
# $title: Estate, blue
# $standing: No test.
record-concludes = { $title }: { $standing }
# $title: Estate, blue
# $there: No test.
# $here: No test.
record-reads = { $title }: there it said: { $there } Here it says: { $here }
record-no-test = No test.
# $sentence: It is sensor K7F-3M.
# $clear: 12 %
record-standing = { $sentence } (Nothing is left to fix: { $clear } sure.)
# $sentence: It is sensor K7F-3M.
# $sure: 98.8 %
# $clear: 12 %
record-standing-sure = { $sentence } ({ CAP($sure) } sure; nothing is left to fix: { $clear } sure.)
record-no-label = a sensor without a label
# $units: K7F-3M and P4C-8T
record-elsewhere = { CAP($units) } came from other work, which is not in this file.
# $place: in their stock
record-where = By this record it is { $place }.
