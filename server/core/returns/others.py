"""No other counter of the chain has decided on the unit, by what the register says that they share."""

from ..messages import message
from ..words import words
from .check import check


def look(state, case):
    """Refuse what another counter accepted or refused; hold what one is about to accept."""
    register = case["register"]
    if register is None or not register["asked"]:
        return None
    if not register["found"]:
        return check("pass", message("returns-others-title"), message("returns-others"))
    settled = [each for each in register["found"] if each["settled"]]
    first = (settled or register["found"])[0]
    about = {"place": first["place"], "ago": words.ago(first["at"], case["now"])}
    if not settled:
        return check("hold", message("returns-others-begun-title"), message("returns-others-begun", **about))
    return check(
        "fail",
        message("returns-others-decided-title", decision=first["decision"]),
        message("returns-others-decided", decision=first["decision"], **about),
    )
