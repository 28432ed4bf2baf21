"""Points in time as certificates have them: aware datetimes in UTC."""

from collections.abc import Callable
from datetime import UTC
from datetime import datetime

Clock = Callable[[], datetime]


def now() -> datetime:
    """Returns the time by the clock of this machine."""
    return datetime.now(UTC)


def readable(instant: datetime) -> str:
    """Returns the day, which is what a person compares a clock or an expiry by."""
    return instant.strftime("%Y-%m-%d")
