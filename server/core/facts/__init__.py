"""The kinds of event, and how facts become state: `state = fold(events)`.

Each kind is one declaration (`kind`) of `fields` and of `naming` fields, beside its handler and its
sentence, in the module of its group: `fold_job`, `fold_evidence`, `fold_custody`, `fold_moves`,
`fold_settings`, `fold_printing`, `fold_returns`; `kinds` has them all. `fold` takes the entries in order
and calls the handlers; nothing is refused here: what does not fit is kept and flagged.
Public: `Fold`, `kinds.KINDS`, `roles.may_record`, `draft`.
"""
