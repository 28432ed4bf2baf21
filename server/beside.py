"""Work in a thread beside the server, for as long as it serves."""

import threading
from collections.abc import Callable
from collections.abc import Iterator
from contextlib import contextmanager


@contextmanager
def beside(
    name: str, work: Callable[[threading.Event], None], wake: Callable[[], None] | None = None
) -> Iterator[None]:
    """Runs `work` in a thread called `name` until the block ends; the event that it gets says so.

    `wake` ends what `work` waits for besides that event; it is called once the event is set.
    """
    ended = threading.Event()
    thread = threading.Thread(target=work, args=(ended,), name=name)
    thread.start()
    try:
        yield
    finally:
        ended.set()
        if wake:
            wake()
        thread.join()


def turns(wanted: threading.Event, ended: threading.Event) -> Iterator[None]:
    """Yields for each turn of work that waits for `wanted` between two of them, until `ended` is set.

    `wanted` is cleared before the look at the end: a wake that comes with that is kept.
    """
    while True:
        wanted.clear()
        if ended.is_set():
            return
        yield
