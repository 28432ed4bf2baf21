"""Work in a thread beside the server, for as long as it serves."""

import threading
from collections.abc import Callable
from collections.abc import Iterator
from contextlib import contextmanager


@contextmanager
def beside(name: str, work: Callable[[threading.Event], None]) -> Iterator[None]:
    """Runs `work` in a thread called `name` until the block ends; the event that it gets says so."""
    ended = threading.Event()
    thread = threading.Thread(target=work, args=(ended,), name=name)
    thread.start()
    try:
        yield
    finally:
        ended.set()
        thread.join()
