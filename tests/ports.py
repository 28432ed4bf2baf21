"""Ports for servers that are started, ended and started again at the same one.

They lie below those that a system gives to whoever asks for any port, and to connections that go out: one
that it named free a moment ago may belong to another test's connection by the time that a server wants it.
"""

import random
import socket

_FIRST, _LAST = 12_000, 32_000  # Linux gives away 32768 and up (ip_local_port_range), others later ones
_dice = random.SystemRandom()  # each worker of a run has its own ones


def free_port() -> int:
    """Return a port that nobody has."""
    return free_ports(1)


def free_ports(number: int) -> int:
    """Return the first of so many free ports in a row."""
    while True:
        first = _dice.randrange(_FIRST, _LAST)
        if all(_is_free(port) for port in range(first, first + number)):
            return first


def _is_free(port: int) -> bool:
    with socket.socket() as probe:
        try:
            probe.bind(("127.0.0.1", port))
        except OSError:
            return False
    return True
