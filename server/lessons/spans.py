"""Which jobs a look at the figures is over: all, or those that were closed since a moment.

Entries carry the time of their phone. A job that by its times was closed before it was opened, or after now,
has been recorded by a clock that was wrong: its times count nowhere, and a span that begins leaves it out.
"""

from datetime import UTC
from datetime import datetime
from math import inf

from server.core.words.words import DAY_MS

#: Span -> days back from now; 0 has no beginning.
SPANS = {"all": 0, "year": 365, "quarter": 91}


def quarter(at: int) -> str:
    """Returns the quarter of a moment, such as 2026-Q3."""
    day = datetime.fromtimestamp(at / 1000, UTC)
    return f"{day.year}-Q{(day.month + 2) // 3}"


def right_from(opened: int, closed: int) -> float:
    """Returns from which moment in ms on the times of a job can be so, infinity where they never can.

    A day is let pass, for clocks of two phones differ.
    """
    return closed - DAY_MS if opened <= closed + DAY_MS else inf
