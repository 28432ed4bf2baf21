"""The server's clock, in the unit that events use."""

import time


def now_ms() -> int:
    """Returns UTC in milliseconds since 1970."""
    return time.time_ns() // 1_000_000
