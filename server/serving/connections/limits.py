"""How long, how much and how many: what a connection may take before it costs others anything."""

from typing import NamedTuple

KILO = 1024


class Limits(NamedTuple):
    """Times in seconds, sizes in bytes. Chosen for phones on weak signals, by judgement, no source.

    None of the times holds a thread: they bound how long a connection takes a place.
    """

    handshake: float = 8
    head: float = 8  # from the first byte of a request to the end of its headers
    idle: float = 60  # between two requests
    linger: float = 2  # after a refusal, so that the client reads it before the connection goes
    closing: float = 5  # for answers under way when the server is told to end

    # A body, or an answer, must come or go this fast on average once the grace is over, and end in time.
    grace: float = 20
    rate: int = 1 * KILO
    transfer: float = 15 * 60

    head_bytes: int = 64 * KILO
    body_bytes: int = 1 * KILO * KILO  # where a route sets no limit of its own
    memory_bytes: int = 256 * KILO  # of one body; a longer one goes to a temporary file
    answer_memory_bytes: int = 1 * KILO * KILO  # of one answer, likewise
    bodies_bytes: int = 256 * KILO * KILO  # of all bodies that are not whole yet

    connections: int = 1000  # or as many files as the system lets the process open, less what the app needs
    connections_an_address: int = 500
    young: float = 2  # so long after it came a connection is let be while there are older ones

    small_read: int = 512  # a client that sends so little at a time …
    small_reads: int = 16  # … so often in one request is then read from only …
    rest: float = 0.1  # … once in this time, and less and less often
