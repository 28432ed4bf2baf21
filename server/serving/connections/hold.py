"""An answer that waits: the request is answered by a worker, and the loop keeps the answer back for a while.

So a client can be told as soon as something happens, and no thread waits with it. An app asks for one by
`held_back`; served by anything else than our own server there is none, and the client has to ask again.
"""

import math
import time
from collections.abc import Callable

IN_ENVIRON = "swaptrail.hold"


class Hold:
    """How long an answer is kept back; any thread may release it sooner."""

    def __init__(self, seconds: float):
        """Keeps it back for so many seconds at most."""
        self.until = time.monotonic() + seconds
        self._ring: Callable[[], None] | None = None
        self._ended: Callable[[], None] | None = None

    def release(self, seconds: float = 0.0) -> None:
        """Has the answer go out now, or in so many seconds at the latest."""
        self.until = min(self.until, time.monotonic() + seconds if seconds else -math.inf)
        ring = self._ring
        if not seconds and ring:
            ring()

    def is_due(self, at: float) -> bool:
        """Tells whether the answer is to go out by now."""
        return self.until <= at

    def when_ended(self, tell: Callable[[], None]) -> None:
        """Has `tell` called once nothing is kept back any more: it was sent, or nobody waits for it."""
        self._ended = tell

    def begin(self, ring: Callable[[], None]) -> None:
        """Has `ring` called when it is released; the connection loop's."""
        self._ring = ring

    def end(self) -> None:
        """Says that nothing is kept back any more; the connection loop's."""
        self._ring = None
        told, self._ended = self._ended, None
        if told:
            told()


def held_back(environ: dict, seconds: float) -> Hold | None:
    """Has the answer to a request kept back; None where the server that runs the app cannot."""
    begin: Callable[[float], Hold] | None = environ.get(IN_ENVIRON)
    return begin(seconds) if begin else None
