"""What belongs to a sort of part: where its positions are, what is measured on its wiring, what to beware of.

What other rooms still say of parking sensors (steps, sentences) has to move here for another sort of part.
Public: `layouts` (ready-made and own positions), `wiring.CHECKS` (what to measure and what it means),
`cautions` (which one belongs to which step).
"""
