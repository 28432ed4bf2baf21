"""The connections to a register: made beside the server, lent for one short question, given up when late.

Who asks never waits for a connection to be made: there is one, or the register is not reached.
"""

import os
import queue
import socket
import threading
from collections.abc import Callable
from collections.abc import Iterator
from contextlib import contextmanager
from contextlib import suppress
from typing import TypeVar

import psycopg
from psycopg import IsolationLevel

from server.register.address import RegisterAddress
from server.register.transaction import serializable
from server.register.trouble import NotReached

CONNECT_SECONDS = 3  # libpq takes no less than 2
ASK_SECONDS = 1.5  # a clerk waits no longer, whatever the register does
CONNECTIONS = 4

Result = TypeVar("Result")


class Link:
    """Connections to one register."""

    def __init__(self, address: RegisterAddress, *, seconds: float = ASK_SECONDS, most: int = CONNECTIONS):
        """Opens nothing; `seconds` is how long a question may take, `most` how many go on at once."""
        self.address = address
        self.seconds = seconds
        self.wanted = threading.Event()  # somebody found it not reached, or there is something to enter
        self._most = most
        self._idle: queue.SimpleQueue[psycopg.Connection] = queue.SimpleQueue()
        self._open: set[psycopg.Connection] = set()
        self._lock = threading.Lock()

    @property
    def is_reached(self) -> bool:
        """Tells whether there are connections that nothing is known against."""
        return bool(self._open)

    def connect(self) -> None:
        """Opens what connections are missing; raises NotReached where that fails."""
        while len(self._open) < self._most:
            try:
                connection = opened(self.address)
            except psycopg.Error as error:
                raise NotReached(str(error)) from error
            with self._lock:
                self._open.add(connection)
                self._idle.put(connection)

    @contextmanager
    def lent(self, seconds: float | None = None) -> Iterator[psycopg.Connection]:
        """Lends a connection; raises NotReached where there is none, or where it fails or is late."""
        allowed = self.seconds if seconds is None else seconds
        connection = self._taken(allowed)
        try:
            with _given_up_after(connection, allowed):
                yield connection
        except psycopg.Error as error:
            self.close()  # what one cannot do the others cannot: they lead to the same server
            raise NotReached(str(error)) from error
        finally:
            self._take_back(connection)

    def done(self, work: Callable[[psycopg.Cursor], Result], seconds: float | None = None) -> Result:
        """Returns what one serializable transaction came to; raises NotReached."""
        with self.lent(seconds) as connection:
            return serializable(connection, work)

    def close(self) -> None:
        """Gives all connections up; one that is lent is closed when it comes back."""
        with self._lock:
            self._open.clear()
        self.wanted.set()
        with suppress(queue.Empty):
            while True:
                _close(self._idle.get_nowait())

    def _taken(self, seconds: float) -> psycopg.Connection:
        if self._open:
            with suppress(queue.Empty):
                return self._idle.get(timeout=seconds)
        self.wanted.set()
        raise NotReached

    def _take_back(self, connection: psycopg.Connection) -> None:
        with self._lock:
            if connection in self._open:
                self._idle.put(connection)
                return
        _close(connection)


def _close(connection: psycopg.Connection) -> None:
    with suppress(psycopg.Error):
        connection.close()


def opened(address: RegisterAddress) -> psycopg.Connection:
    """Opens a connection whose every transaction is serializable."""
    connection = psycopg.connect(address.given, connect_timeout=CONNECT_SECONDS)
    connection.isolation_level = IsolationLevel.SERIALIZABLE
    return connection


@contextmanager
def _given_up_after(connection: psycopg.Connection, seconds: float) -> Iterator[None]:
    """Breaks off a connection that is not done in time; neither network nor server has to help with it."""

    def break_off() -> None:
        with suppress(OSError, psycopg.Error), socket.socket(fileno=os.dup(connection.fileno())) as same:
            same.shutdown(socket.SHUT_RDWR)

    timer = threading.Timer(seconds, break_off)
    timer.daemon = True
    timer.start()
    try:
        yield
    finally:
        timer.cancel()
