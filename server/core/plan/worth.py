"""What a move is worth besides its minutes: what it tells, and what a part or a repair weighs."""

from ..infer.figures import hundredths
from .hypotheses import bits_open
from .hypotheses import weight_clear

# A move tells something from so many bits on. When it is as likely as this that all is clear, one more test
# may settle it, whatever it tells.
_TELLING = 0.1
_HOPE = 0.1
_NEARLY_ALWAYS = 0.8
_NOTICED = 0.002
# So many moves are looked at two moves ahead; a fifth never came first in hundreds of cases.
_DEEP = 4


def gained(look, uncertain: float) -> float:
    """Return the bits that a move is expected to tell of those that are open."""
    for outcome in look.outcomes:
        uncertain = uncertain - outcome.total * bits_open(outcome.hypotheses, outcome.total)
    return uncertain


def telling_first(deep: list, looks: list, uncertain: float, hypotheses: list) -> list:
    """Return (hundredths of minutes, number) of the moves, best first; those that tell nothing last.

    As long as a fault is there, one that tells nothing leads to itself again, however cheap it is.
    """
    here = weight_clear(hypotheses, looks[0].live) > _HOPE if looks else True
    rows = []
    for expected, n in deep:
        tells = here or gained(looks[n], uncertain) >= _TELLING
        rows.append((0 if tells else 1, hundredths(expected), n))
    return [(expected, n) for _, expected, n in sorted(rows)]


def besides(lookahead, state, move) -> float:
    """Return what a purchase weighs if it was not needed, or what a repair saves if it was."""
    weight = 0.0
    if move.kind == "replace":
        marginals = lookahead.marginals(state, lookahead.hypotheses)
        for place, _ in move.fitted:
            weight = weight + lookahead.case.minutes["part"] * (1.0 - marginals.unit[place])
    if move.kind == "repair":
        bits = lookahead.observation.belief.bit
        for mask, chance in lookahead.hypotheses:
            for cause in move.places:
                if mask >> bits[cause] & 1:
                    weight = weight - lookahead.case.minutes["repair"] * chance
    return weight


def told_by(lookahead, state, move, unit: int, sure: float) -> bool:
    """Tell whether a move would nearly always show a unit bad as surely as this."""
    told = 0.0
    look = lookahead.look(state, move, lookahead.hypotheses, _NOTICED)
    for outcome in look.outcomes:
        if outcome.hypotheses and lookahead.marginals(look.reached, outcome.hypotheses).spare[unit] >= sure:
            told = told + outcome.total
    return told >= _NEARLY_ALWAYS


def promising(rows: list, looks: list) -> list:
    """Return the moves to look at deeply: the best, but one of a kind and size.

    A price by the bit flatters the small moves, so that they must not crowd out the exchanges.
    """
    promising = []
    count = {}
    for _, n in rows:
        move = looks[n].move
        kind = (move.kind, len(move.fitted), len(move.places))
        count[kind] = count.get(kind, 0) + 1
        if count[kind] == 1 and len(promising) < _DEEP:
            promising.append(n)
    return promising
