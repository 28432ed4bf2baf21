"""Tests that repeat something do so a few times in the ordinary run and often in a long one.

SWAPTRAIL_LONG=1 makes it long.
"""

import os

LONG = os.environ.get("SWAPTRAIL_LONG") == "1"


def times(ordinary: int, long: int) -> int:
    """Return how often to repeat."""
    return long if LONG else ordinary
