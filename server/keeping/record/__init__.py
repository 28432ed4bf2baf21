"""The record of one sensor or one job as a file that stands alone.

A plain zip file, nothing in it compressed, so that any unpacking program opens it:

    record.json     whose record it is, when, by which installation (or phone) and with what core it was
                    made, and what was concluded there from all that is known there
    entries.jsonl   the entries that the record rests on, each as it was hashed, in order of receipt
    hashes.json     their order, and of each device the hashes of all its entries from the first to
                    the last one in here. Of an entry of another job its hash is all that is told. Also the
                    certificates of the phones, and their signatures over ends of their chains
    seal.json       the digest of every part, signed with the key of the installation, or of the phone
    photos/…        each under the SHA-256 of its bytes

Photos that bring the file over its limit may lie in it as smaller versions. `hashes.json` says which
version is whose; `record.json` lists these photos as missing, for as they are they are not in the file.

`server/core/record/entries.py` picks the entries and `gather` finds them, `pictures` takes the photos, `make`
writes the file, `container` is the zip, `check` finds the first place that is not as it was sealed. Whoever
holds another key can seal another record: who made one is told by the fingerprint of its key, and by
nothing else.

A phone without a server writes the same file (`static/record/`) and seals it with a key of its own. That
names itself as such in `record.json` and `seal.json`; a program from before knows neither and says that
the file is no record, rather than an altered one.
"""
