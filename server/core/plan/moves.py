"""What a move is, and what it changes.

A move is data only. `fitted` is a mapping from position to unit, so that one pair, several pairs, a
ring of three, a spare and a new unit are all the same kind of thing.
"""

from collections import namedtuple

# Stands for a unit that is still to be bought; it has the prior of any unit.
NEW = -2
# A position no more doubtful than this is good to exchange with.
CLEARED = 0.02

# What is where, which positions may still be blocked, and which causes will be repaired by then: all that
# a move can change.
State = namedtuple("State", ("fitted", "blockable", "repaired"))
# `places` are the positions cleaned, or the one unplugged or measured, for a repair its causes; `fitted` a
# list of (position, unit); `why` names the sentence that explains the choice (words.py).
Move = namedtuple("Move", ("kind", "places", "fitted", "minutes", "why"))


class Marginals:
    """How likely each position's own causes are, as far as they still act.

    `spare` is how likely each unit is bad wherever it is, `suspected` whether a fault speaks against it.
    """

    def __init__(self, unit: list, circuit: list, blocked: list, spare: list, suspected: list):
        self.unit = unit
        self.circuit = circuit
        self.blocked = blocked
        self.spare = spare
        self.suspected = suspected

    def place(self, place: int) -> float:
        """Return how suspect a position is altogether."""
        return self.unit[place] + self.circuit[place] + self.blocked[place]


def same_part(case, one: int, other: int) -> bool:
    """Tell whether two units may be exchanged: not when the parts of both are known and differ."""
    if one < 0 or other < 0:
        return False
    part = case.units[one].part
    return part is None or case.units[other].part in (None, part)


def refit(case, places: list) -> float:
    """Return the minutes to pull and fit at the positions, each once, with the test."""
    minutes = case.minutes["test"]
    for place in sorted(places):
        minutes = minutes + handled(case, place)
    return minutes


def handled(case, place: int) -> float:
    """Return the minutes to pull and fit at one position."""
    return case.positions[place].reach + case.minutes["pull"] + case.minutes["fit"]


def after(state: State, move: Move) -> State:
    """Return what is where once the move is made."""
    if move.kind == "clean":
        blockable = list(state.blockable)
        for place in move.places:
            blockable[place] = False
        return State(state.fitted, blockable, state.repaired)
    if move.kind == "repair":
        return State(state.fitted, state.blockable, state.repaired + tuple(move.places))
    if not move.fitted:
        return state
    fitted = list(state.fitted)
    blockable = list(state.blockable)
    for place, unit in move.fitted:
        fitted[place] = unit
        blockable[place] = False
    return State(fitted, blockable, state.repaired)


def because(move: Move, why: str) -> Move:
    """Return the same move, proposed for another reason."""
    return Move(move.kind, move.places, move.fitted, move.minutes, why)
