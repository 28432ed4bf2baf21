"""What belongs to a sort of part: where its positions are, what is measured on its wiring, what to beware of.

Another sort of part is described here and nowhere else.
Public: `layouts` (ready-made and own positions), `wiring.CHECKS` (what to measure and what it means),
`cautions` (which one belongs to which step).
"""
