"""A limit on failed tries from one address, so that guessing gets nowhere."""

import threading
import time
from collections.abc import Callable

from server.web.errors import TooManyTries


class TryLimit:
    """Counts failures of the last `seconds` by asker; safe for the server's threads."""

    def __init__(self, most: int, seconds: int, clock: Callable[[], float] = time.monotonic):
        self.most = most
        self.seconds = seconds
        self._clock = clock
        self._lock = threading.Lock()
        self._failures: dict[str, list[float]] = {}

    def is_used_up(self, asker: str) -> bool:
        """Tells whether an asker failed as often as it may."""
        with self._lock:
            return len(self._recent(self._clock()).get(asker, [])) >= self.most

    def check(self, asker: str) -> None:
        """Refuses an asker who failed too often lately."""
        now = self._clock()
        with self._lock:
            recent = self._recent(now).get(asker, [])
            if len(recent) >= self.most:
                raise TooManyTries("token", int(recent[0] + self.seconds - now) + 1)

    def count(self, asker: str) -> None:
        """Notes a failure."""
        now = self._clock()
        with self._lock:
            self._recent(now).setdefault(asker, []).append(now)

    def _recent(self, now: float) -> dict[str, list[float]]:
        """Forgets what is past, so that the table stays small."""
        kept = {
            asker: [at for at in times if at > now - self.seconds] for asker, times in self._failures.items()
        }
        self._failures = {asker: times for asker, times in kept.items() if times}
        return self._failures
