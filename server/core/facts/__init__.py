"""The kinds of event, and how facts become state: `state = fold(events)`.

Each kind is one declaration (`kind`) of its fields (`fields`; `amounts`, which hold numbers; `naming` and
`several`, which name positions and units) beside its handler and its sentence, in the module of its group:
`job`, `evidence`, `measuring`, `repairing`, `units`, `custody`, `moves`, `settings`, `printing`, `returns`;
`kinds` has them all. `places`, `labelling`, `mixups`, `settling` and `conflicts` are what handlers share.
`fold` takes the entries in order, `apply` calls the handler of one; nothing is refused here: what does not
fit is kept and flagged. A correction or a late entry is folded again with its group (`connected`), whose
state replaces the old (`partial`).
Public: `Fold`, `kinds.KINDS`, `roles.against`, `draft`.
"""
