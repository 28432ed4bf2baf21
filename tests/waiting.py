"""Waits for what another thread or process brings about; of a page, `browser_support.wait_until` does."""

import time
from collections.abc import Callable


def wait_for(holds: Callable[[], object], seconds: float = 30) -> None:
    """Look again and again until it holds, as long as a busy machine may need."""
    ends = time.monotonic() + seconds
    while not holds():
        assert time.monotonic() < ends, f"it did not come about in {seconds} seconds"
        time.sleep(0.02)
