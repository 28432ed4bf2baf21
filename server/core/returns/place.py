"""The unit is where one comes to the counter from: in hand, in stock, with the customer, or here."""

from ..messages import all_of
from ..messages import message
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
        said = all_of([claim["words"] for claim in places.claims(state, unit)])
        return check(
            "hold", message("returns-place-disputed-title"), message("returns-place-disputed", places=said)
        )
    where = words.place_words(Unit(state, unit["id"]))
    if unit["place"] == MIXED:
        return check(
            "hold",
            message("returns-place-mixed-title"),
            message("returns-place-mixed", code=name, place=where),
        )
    if unit["place"] == "fitted":
        return check(
            "hold",
            message("returns-place-fitted-title"),
            message("returns-place-fitted", code=name, place=where),
        )
    if unit["place"] == "scrapped":
        return check(
            "hold", message("returns-place-scrapped-title"), message("returns-place-scrapped", code=name)
        )
    return check("pass", message("returns-place-title"), message("returns-place", place=where))
