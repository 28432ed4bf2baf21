"""Sentences that several rooms need: places, causes, what a test says, who held a unit, whose phone it was.

What a sentence says is decided elsewhere; this room only words it.
Public: `words`, `sentences` (one an event), `results`, `causes`, `custody`, `labels_on_unit`, `places`,
`people`.
"""
