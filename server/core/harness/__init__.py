"""A circuit as a chain of segments: where its fault is by the checks made so far, and which check comes next.

`chain` has the segments, the kinds of fault in each and what a check reads of them, and weighs them exactly;
`order` chooses the check that finds the fault at the least expected cost. Neither knows the log or a sort of
part: a sort declares its chain (`parts/parking_wiring.py`), `evidence/checks.py` says what was read.
Public: `chain.Segment`, `chain.Probe`, `chain.Chain`, `order.best`.
"""
