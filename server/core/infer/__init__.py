"""From a case to probabilities and explanations: the exact inference of the design, section 5.

`case` reads and checks CASE.json, `model` makes causes and readings of it, `belief` infers (with
`elimination` for what is too large to enumerate), `explanations` lists subsets of the suspects. README.md
has the way through.
Public: `case.read`, `Model`, `Belief`, `explanations`, `figures` (parts per billion),
`decimals.to_decimals`.
"""
