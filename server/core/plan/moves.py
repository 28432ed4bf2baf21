"""What a move is, and what it changes.

A move is data only. `fitted` is a mapping from position to unit, so that one pair, several pairs, a
ring of three, a spare and a new unit are all the same kind of thing.
"""

from collections import namedtuple

# Stands for a unit that is still to be bought; it has the prior of any unit.
NEW = -2
# A position no more doubtful than this is good to exchange with.
CLEARED = 0.02

# What is where, which positions may still be blocked, which causes will be repaired by then, and at which
# positions a unit hangs on its wire: all that a move can change.
State = namedtuple("State", ("fitted", "blockable", "repaired", "hanging"))
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


def refit(case, hanging: list, places: list, home: bool) -> float:
    """Return the minutes to pull and plug in at the positions, each once, with the test.

    For a test a unit may hang on its wire; `home`: it is pushed home at once, for good.
    """
    minutes = case.minutes["test"]
    for place in sorted(places):
        minutes = minutes + handled(case, hanging, place, home)
    return minutes


def handled(case, hanging: list, place: int, home: bool) -> float:
    """Return the minutes to pull and plug in, or fit for good, at one position."""
    minutes = reach(case, hanging, place) + case.minutes["pull"] + plug(case)
    return minutes + seat(case) if home else minutes


def reach(case, hanging: list, place: int) -> float:
    """Return the minutes until a hand is on a unit: none where one hangs, for the position stays open."""
    return 0.0 if hanging[place] else case.positions[place].reach


def plug(case) -> float:
    """Return the minutes to plug a unit in and close its lock: the first part of fitting it."""
    return min(case.minutes["plug"], case.minutes["fit"])


def seat(case) -> float:
    """Return the minutes to push a unit home that hangs: the rest of fitting it."""
    return case.minutes["fit"] - plug(case)


def after(state: State, move: Move) -> State:
    """Return what is where once the move is made."""
    if move.kind == "clean":
        blockable = list(state.blockable)
        for place in move.places:
            blockable[place] = False
        return State(state.fitted, blockable, state.repaired, state.hanging)
    if move.kind == "repair":
        repaired = state.repaired + tuple(move.places)
        return State(state.fitted, state.blockable, repaired, state.hanging)
    if not move.fitted:
        return state
    fitted = list(state.fitted)
    blockable = list(state.blockable)
    hanging = list(state.hanging)
    for place, unit in move.fitted:
        fitted[place] = unit
        blockable[place] = False
        hanging[place] = move.kind != "replace"
    return State(fitted, blockable, state.repaired, hanging)


def because(move: Move, why: str) -> Move:
    """Return the same move, proposed for another reason."""
    return Move(move.kind, move.places, move.fitted, move.minutes, why)
