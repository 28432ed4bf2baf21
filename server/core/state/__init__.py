"""What is true: vehicles, units, labels, jobs, conflicts.

`state` holds it, built by the fold and read by all rooms above; `exchange` says how far an exchange has got,
`printed` what a phone printed, `own_label`
whose label a text is by what is on record. Nothing here decides or words anything.
Public: `State`, `exchange`, `printed`, `own_label.read`.
"""
