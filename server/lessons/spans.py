"""Which jobs a look at the figures is over: all, or those that were closed since a moment.

Entries carry the time of their phone. A job that by its times was closed before it was opened, or after now,
has been recorded by a clock that was wrong: its times count nowhere, and a span that begins leaves it out.
"""

from typing import Any

DAY_MS = 86_400_000
#: Span -> days back from now; 0 has no beginning.
SPANS = {"all": 0, "year": 365, "quarter": 91}


def has_wrong_clock(job: dict[str, Any], now: int) -> bool:
    """Tells whether the times of a job cannot be so; a day is let pass, for clocks of two phones differ."""
    return not job["opened"] <= job["closed"] + DAY_MS or job["closed"] > now + DAY_MS


def within(jobs: list[dict[str, Any]], since: int, now: int) -> list[dict[str, Any]]:
    """Returns the jobs that were closed since a moment; 0 takes all of them."""
    if not since:
        return jobs
    return [job for job in jobs if job["closed"] >= since and not has_wrong_clock(job, now)]
