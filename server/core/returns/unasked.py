"""Says so where the other counters of a chain could not be asked; the counter's own record then decides."""

from ..messages import message
from .check import check


def look(state, case):
    """Note that nobody knows what other counters have; it stands against nothing."""
    register = case["register"]
    if register is None or register["asked"]:
        return None
    return check("note", message("returns-unasked-title"), message("returns-unasked"))
