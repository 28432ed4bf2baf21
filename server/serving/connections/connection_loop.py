"""The one thread that all connections belong to: it accepts, gathers requests and sends answers.

Nothing in it waits for a single client. What a client may take of time and place is bounded by
`Limits`; only a request that is whole is handed on to a worker thread.
"""

import logging
import selectors
import socket
import threading
import time
from collections import deque
from collections.abc import Callable
from contextlib import suppress
from functools import partial

from server.serving.connections import eviction
from server.serving.connections.bell import Bell
from server.serving.connections.connection import Connection
from server.serving.connections.connection import Stage
from server.serving.connections.entrance import Entrance
from server.serving.connections.entrance import GiveContext
from server.serving.connections.entrance import NoDescriptors
from server.serving.connections.limits import Limits
from server.serving.connections.peer import Peer
from server.serving.connections.refusal import ConnectionRefusal
from server.serving.connections.request_reader import LargestBody
from server.serving.connections.request_reader import WholeRequest
from server.serving.connections.worker_request import WorkerRequest

log = logging.getLogger(__name__)

_TICK = 0.25  # seconds between two looks at who is late
_SAID_EVERY = 60  # seconds between two lines in the log about the same trouble

HandOn = Callable[[Connection, WholeRequest], None]


class ConnectionLoop:
    """Keeps every connection from its arrival to its end."""

    def __init__(
        self,
        listening: socket.socket,
        hand_on: HandOn,
        largest_body: LargestBody,
        limits: Limits,
        context: GiveContext | None,
    ):
        """`context` gives what to serve TLS with; None serves plain HTTP."""
        self._hand_on = hand_on
        self._largest_body = largest_body
        self._limits = limits
        self._inside: set[Connection] = set()
        self._resting: set[Connection] = set()
        self._answers: deque[tuple[Connection, WorkerRequest, bool]] = deque()
        self._released: deque[Connection] = deque()
        self._open = True
        self._handing_on = threading.Lock()
        self._ends_at: float | None = None
        self._late_from = self._quiet_until = 0.0
        self._selector = selectors.DefaultSelector()
        self._entrance = Entrance(listening, self._selector, context)
        self._bell = Bell()
        self._selector.register(self._bell.waits_on, selectors.EVENT_READ)

    # What other threads may call.

    def take_back(self, connection: Connection, handed: WorkerRequest, keep: bool) -> None:
        """Takes an answer from a worker."""
        self._answers.append((connection, handed, keep))
        self._bell.ring()

    def shut(self) -> None:
        """Lets nobody in any more, and sends away whoever has no whole request here.

        After it nothing is handed on to a worker: those that end would leave it unanswered.
        """
        with self._handing_on:
            self._open = False
        self._bell.ring()

    def end(self) -> None:
        """Lets `run` return as soon as the answers under way are sent, or their time is up."""
        self._ends_at = time.monotonic() + self._limits.closing
        self._bell.ring()

    def is_empty(self) -> bool:
        """Tells whether nobody is inside."""
        return not self._inside

    # Everything below belongs to the thread that calls `run`.

    def run(self) -> None:
        """Serves the connections until `end` was called."""
        try:
            while not self._is_over():
                try:
                    self._take_turn()
                except Exception:  # a fault of ours must not shut everybody out
                    log.exception("the connection loop failed")
                    time.sleep(_TICK)
        finally:
            for connection in list(self._inside):
                self._drop(connection)
            self._entrance.close()
            self._selector.close()
            self._bell.close()

    def _take_turn(self) -> None:
        for key, _ in self._selector.select(self._patience()):
            self._attend(key.fileobj, key.data)
        self._send_answers()
        at = time.monotonic()
        self._wake_rested(at)
        if self._open:
            self._entrance.wake(at)
        if at >= self._late_from:
            self._late_from = at + _TICK
            self._release_late(at)
            self._send_away_late(at)

    def _is_over(self) -> bool:
        if self._ends_at is None:
            return False
        return not self._inside or time.monotonic() > self._ends_at

    def _patience(self) -> float:
        return self._limits.rest if self._resting else _TICK

    def _attend(self, fileobj: object, connection: Connection | None) -> None:
        if fileobj is self._bell.waits_on:
            self._bell.hush()
            if not self._open:
                self._empty()
        elif connection is None:
            self._accept()
        else:
            self._step(connection, connection.step)

    def _step(self, connection: Connection, take: Callable[[float], WholeRequest | None]) -> None:
        """Lets a connection take a step; a fault of ours costs that connection and no other."""
        at = time.monotonic()
        try:
            whole = take(at)
            if connection.gathered:
                self._bound_bodies(at)
            if whole is not None:
                self._hand_on_while_open(connection, whole)
        except Exception:
            log.exception("a connection from %s failed", connection.peer.address)
            connection.close()
        self._watch(connection, at)

    def _hand_on_while_open(self, connection: Connection, whole: WholeRequest) -> None:
        with self._handing_on:
            if self._open:
                self._hand_on(connection, whole)
                return
        whole.body.close()
        connection.close()

    def _watch(self, connection: Connection, at: float) -> None:
        """Has the selector wait for what a connection now waits for."""
        if connection.stage is Stage.GONE or (not self._open and connection.stage is Stage.IDLE):
            self._drop(connection)
            return
        if connection.rests_until > at:
            self._resting.add(connection)
        events = connection.events(at)
        if events == connection.watched:
            return
        if not events:
            self._selector.unregister(connection.socket)
        elif connection.watched:
            self._selector.modify(connection.socket, events, connection)
        else:
            self._selector.register(connection.socket, events, connection)
        connection.watched = events

    def _drop(self, connection: Connection) -> None:
        self._inside.discard(connection)
        self._resting.discard(connection)
        if connection.watched:
            connection.watched = 0
            with suppress(KeyError, ValueError):
                self._selector.unregister(connection.socket)
        connection.close()

    def _accept(self) -> None:
        if not self._open:
            return
        try:
            for sock, peer in self._entrance.newcomers():
                self._let_in(sock, peer)
                if not self._open:
                    return
        except NoDescriptors:
            self._make_room_for_descriptors()

    def _let_in(self, sock: socket.socket, peer: Peer) -> None:
        at = time.monotonic()
        newcomer = Connection(sock, peer, self._limits, self._largest_body, at)
        self._inside.add(newcomer)
        while (leaving := eviction.to_leave(self._inside, newcomer, self._limits, at)) is not None:
            self._drop(leaving)
            if leaving is newcomer:
                return
        self._watch(newcomer, at)

    def _make_room_for_descriptors(self) -> None:
        """The process may open no more files: the slowest gives way, and the rest is tried again.

        Where nobody can give way, the entrance rests for a while.
        """
        at = time.monotonic()
        waiting = [each for each in self._inside if each.stage is not Stage.WORK]
        if waiting:
            self._drop(eviction.slowest(waiting, self._limits, at))
        else:
            self._entrance.rest(at)
        if at >= self._quiet_until:
            self._quiet_until = at + _SAID_EVERY
            log.warning("No more connections can be opened; %d are.", len(self._inside))

    def _bound_bodies(self, at: float) -> None:
        """Keeps what lies here of unfinished bodies within its limit."""
        while sum(each.gathered for each in self._inside) > self._limits.bodies_bytes:
            sending = [each for each in self._inside if each.gathered]
            slow = min(sending, key=lambda each: each.pace(at))
            slow.refuse(ConnectionRefusal.crowded(), at)
            self._watch(slow, at)

    def _send_answers(self) -> None:
        while self._answers:
            connection, handed, keep = self._answers.popleft()
            if handed.hold:
                handed.hold.begin(partial(self._release, connection))
            self._step(connection, partial(connection.answer_with, handed.answer, keep, handed.hold))
        while self._released:
            connection = self._released.popleft()
            self._step(connection, connection.let_go)

    def _release(self, connection: Connection) -> None:
        """Lets an answer go that was kept back; any thread may call it."""
        self._released.append(connection)
        self._bell.ring()

    def _release_late(self, at: float) -> None:
        for connection in list(self._inside):
            until = connection.holds_until()
            if until is not None and until <= at:
                self._step(connection, connection.let_go)

    def _wake_rested(self, at: float) -> None:
        for connection in [each for each in self._resting if each.rests_until <= at]:
            self._resting.discard(connection)
            self._watch(connection, at)

    def _send_away_late(self, at: float) -> None:
        for connection in [each for each in self._inside if each.is_late(at)]:
            if connection.stage in {Stage.HEAD, Stage.BODY}:
                connection.refuse(ConnectionRefusal.too_slow(), at)
                self._watch(connection, at)
            else:
                self._drop(connection)

    def _empty(self) -> None:
        """Closes the server: nothing is accepted, and only what a worker has in hand is still answered."""
        self._entrance.close()
        for connection in list(self._inside):
            if connection.stage not in {Stage.WORK, Stage.ANSWER, Stage.LINGER}:
                self._drop(connection)
