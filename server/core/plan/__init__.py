"""Which move comes next: candidates, what each would show, what it costs, and what would be left.

`candidates` lists the moves, `observation` and `outcomes` say what they can show, `lookahead` prices them
two moves ahead and `endgame` to the end, `remaining` estimates what an outcome leaves, `outlook` and
`description` tell them; `planner` puts that together and
`answer` both halves of the reasoning.
Public: `answer.reason`, `planner.next_moves`.
"""
