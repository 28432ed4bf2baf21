"""The record of a unit or a job as a file: which entries go in, its form, its seal, what it is held against.

`entries` gathers from a log that is asked, not read (`named` says what an entry names), `file` and `form` are
how it is written, `check` reads one that somebody brings (`events` its entries, `altered` is what may stand
against it), `comparison` holds its conclusions against ours.
Public: `entries.gather`, `file.parts`, `check.opened`, `check.check`, `comparison.compared`.
"""
