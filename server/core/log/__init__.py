"""How facts travel.

`envelope` is the frame of an entry (device, seq, prev, ...) and its hash, `canon` the canonical text that is
hashed, `chain` finds the first fault in the entries of one device, `ids` is the pattern of ids. Nothing
here knows what an entry says.
Public: `envelope.check`, `envelope.bound`, `envelope.hash_of`, `envelope.identity`, `canon.dumps`,
`canon.check`, `canon.answer`, `chain.first_fault`, `ids.bound`, `ids.fits`.
"""
