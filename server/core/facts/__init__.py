"""The kinds of event, and how facts become state: `state = fold(events)`.

`kinds` declares what an event of each kind says, `roles` who records it, `draft` is one that may be
recorded; `fold` takes the entries in order and calls the handlers of `fold_job`, `fold_custody`,
`fold_labels`, `fold_mixed`, `fold_evidence`, `fold_returns` and `fold_printing`. Nothing is refused here:
what does not fit is kept and flagged.
Public: `Fold`, `kinds.KINDS`, `kinds.problem`, `roles.may_record`.
"""
