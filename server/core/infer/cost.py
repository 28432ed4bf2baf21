"""What money says, turned into minutes: so that testing ends when more of it costs more than it saves."""

from collections import namedtuple

from ..errors import BadInput
from ..messages import message
from . import validate

# Minor units (cents, pence): for an hour of work, a new part, and one that was not needed.
_KEYS = ["labour_per_hour", "part_price", "wrong_purchase"]
Money = namedtuple("Money", ("labour_per_hour", "part_price", "wrong_purchase"))

MOST_MONEY = 1000000000  # minor units
_WANTED = message("case-money", most=str(MOST_MONEY))


def read(raw, field: str):
    """Return the checked Money, None when no rate of labour is given; 0 and left out are the same."""
    if raw is None:
        return None
    validate.an_object(raw, field, _KEYS, [])
    amounts = []
    for key in _KEYS:
        value = raw.get(key, 0)
        if isinstance(value, bool) or not isinstance(value, int) or not 0 <= value <= MOST_MONEY:
            raise BadInput(field + "." + key, value, _WANTED)
        amounts.append(value)
    money = Money(*amounts)
    return money if money.labour_per_hour else None


def weight_of_part(money, otherwise: float) -> float:
    """Return the minutes of work that pay for a part that was not needed.

    It costs its price, unless the case says otherwise: it can be given back for less, or brings a
    second visit with it.
    """
    lost = money.wrong_purchase or money.part_price
    return lost * 60.0 / money.labour_per_hour if lost else otherwise


def cost(money, minutes_x100: int, parts: int) -> int:
    """Return what a move costs in minor units: the work, and the parts it takes."""
    return (minutes_x100 * money.labour_per_hour + 3000) // 6000 + parts * money.part_price
