"""The unit is where one comes to the counter from: in hand, in stock, with the customer, or here."""

from .. import phrases
from ..state.state import MIXED
from ..state.unit import Unit
from ..words import places
from ..words import words
from .check import check


def look(state, case):
    """Hold a unit in dispute, mixed up, or on record as fitted or scrapped."""
    unit = case["unit"]
    if unit is None or case["unknown"]:
        return None
    name = case["shown"]
    if unit["claims"]:
        said = phrases.listed([claim["words"] for claim in places.claims(state, unit)])
        return check(
            "hold", "In dispute", "Two places are on record: {}. A scan has to settle it.".format(said)
        )
    where = words.place_words(Unit(state, unit["id"]))
    if unit["place"] == MIXED:
        return check("hold", "It got mixed up", "{} is {}.".format(name, where))
    if unit["place"] == "fitted":
        return check("hold", "On record it is on a vehicle", "{} is still {}.".format(name, where))
    if unit["place"] == "scrapped":
        return check("hold", "On record it was scrapped", "{} was scrapped.".format(name))
    return check("pass", "Place on record fits", "On record it is {}.".format(where))
