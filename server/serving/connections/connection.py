"""One connection of the loop: where it stands, and each step it takes without blocking."""

import socket
import ssl
from contextlib import suppress
from enum import Enum
from selectors import EVENT_READ
from selectors import EVENT_WRITE

from server.serving.connections.answer import Answer
from server.serving.connections.hold import Hold
from server.serving.connections.limits import Limits
from server.serving.connections.peer import Peer
from server.serving.connections.peer import network_of
from server.serving.connections.refusal import ConnectionRefusal
from server.serving.connections.refusal import plain_http_told
from server.serving.connections.request_reader import LargestBody
from server.serving.connections.request_reader import RequestReader
from server.serving.connections.request_reader import WholeRequest

_BLOCK = 64 * 1024
_SENT_AT_ONCE = 16  # blocks, until others have their turn
_LONGEST_REST = 10  # times the first one


class Stage(Enum):
    """What a connection is at."""

    HANDSHAKE = "shaking hands for TLS"
    IDLE = "between two requests"
    HEAD = "sending the head of a request"
    BODY = "sending the body of a request"
    WORK = "waiting for the app"
    HELD = "waiting for news, its answer kept back"
    ANSWER = "taking an answer"
    LINGER = "refused, given time to read why"
    GONE = "closed"


class Connection:
    """A client's socket, never blocking, with the request or the answer that is on its way.

    All of it runs in the thread of the connection loop. `at` is that thread's clock, in seconds.
    """

    def __init__(self, sock: socket.socket, peer: Peer, limits: Limits, largest_body: LargestBody, at: float):
        self.socket = sock
        self.peer = peer
        self.network = network_of(peer.address)
        self.opened = at
        self.answered = 0
        self.rests_until = 0.0
        self.watched = 0  # what the selector waits for on its behalf; the connection loop's note
        self._limits = limits
        self._largest_body = largest_body
        self._secure = isinstance(sock, ssl.SSLSocket)
        self._reader = RequestReader(largest_body, limits)
        self._answer: Answer | None = None
        self._hold: Hold | None = None
        self._block = memoryview(b"")
        self._keep = False
        self._rest = b""  # of a next request, sent before this one was answered
        self._small_reads = 0
        self._came, self._came_from = 0, at  # bytes of this request, and since when it could come
        self._wants = EVENT_READ
        self.stage = Stage.IDLE
        self._enter(Stage.HANDSHAKE if self._secure else Stage.IDLE, at)

    @property
    def secure(self) -> bool:
        """Tells whether it runs under TLS."""
        return self._secure

    @property
    def gathered(self) -> int:
        """Returns the bytes kept of a body that is not whole yet."""
        return self._reader.body_bytes if self.stage is Stage.BODY else 0

    def events(self, at: float) -> int:
        """Returns what of the socket to wait for; 0 for nothing, while it works or rests."""
        if self.stage in {Stage.WORK, Stage.GONE} or self.rests_until > at:
            return 0
        return self._wants

    def step(self, at: float) -> WholeRequest | None:
        """Goes on as far as the socket lets it; returns a request that has become whole."""
        try:
            match self.stage:
                case Stage.HANDSHAKE:
                    self._shake_hands(at)
                case Stage.IDLE | Stage.HEAD | Stage.BODY:
                    return self._receive(at)
                case Stage.HELD:
                    return self._overhear(at)
                case Stage.ANSWER:
                    return self._send(at)
                case Stage.LINGER:
                    if not self.socket.recv(_BLOCK):
                        self.close()
        except (ssl.SSLWantReadError, BlockingIOError):
            self._wants = EVENT_READ
        except ssl.SSLWantWriteError:
            self._wants = EVENT_WRITE
        except (EOFError, OSError):
            self.close()
        return None

    def answer_with(self, answer: Answer, keep: bool, hold: Hold | None, at: float) -> WholeRequest | None:
        """Begins to send an answer, after which the connection is kept or ends.

        With a `hold`, the answer is kept back until that is due.
        """
        if self.stage is Stage.GONE:
            answer.close()
            if hold:
                hold.end()
            return None
        answer.rewind()
        self._answer, self._keep, self._hold = answer, keep, hold
        self._enter(Stage.HELD, at)
        return None if hold and not hold.is_due(at) else self.let_go(at)

    def holds_until(self) -> float | None:
        """Returns until when its answer is kept back, None where none is."""
        return self._hold.until if self._hold else None

    def let_go(self, at: float) -> WholeRequest | None:
        """Begins to send the answer that was kept back."""
        if self.stage is not Stage.HELD:
            return None
        self._end_hold()
        self._enter(Stage.ANSWER, at, EVENT_WRITE)
        return self.step(at)

    def refuse(self, refusal: ConnectionRefusal, at: float) -> None:
        """Says no in one go, and lets the client read it before the connection ends."""
        self._reader.close()
        self._say_last(refusal.as_http(), at)

    def is_late(self, at: float) -> bool:
        """Tells whether it has used up the time of its stage."""
        limits, spent = self._limits, at - self.since
        match self.stage:
            case Stage.HANDSHAKE:
                return spent > limits.handshake
            case Stage.HEAD:
                return spent > limits.head
            case Stage.IDLE:
                return spent > limits.idle
            case Stage.LINGER:
                return spent > limits.linger
            case Stage.BODY | Stage.ANSWER:
                return spent > limits.transfer or self.moved < (spent - limits.grace) * limits.rate
        return False

    def pace(self, at: float) -> float:
        """Returns how many bytes a second it moves: of its request so far, or of the answer it takes."""
        if self.stage is Stage.ANSWER:
            return self.moved / max(at - self.since, 1.0)
        return self._came / max(at - self._came_from, 1.0)

    def close(self) -> None:
        """Ends it at once."""
        if self.stage is Stage.GONE:
            return
        self.stage = Stage.GONE
        self._reader.close()
        self._end_hold()
        if self._answer:
            self._answer.close()
        with suppress(OSError):
            self.socket.close()

    def _enter(self, stage: Stage, at: float, wants: int = EVENT_READ) -> None:
        self.stage, self.since, self.moved = stage, at, 0
        self._wants = wants

    def _shake_hands(self, at: float) -> None:
        assert isinstance(self.socket, ssl.SSLSocket)
        try:
            self.socket.do_handshake()
        except ssl.SSLWantReadError:
            self._came_little(at)
            raise
        except ssl.SSLError as error:
            if error.reason != "HTTP_REQUEST":
                raise
            self._secure = False
            self._say_last(plain_http_told(), at)
            return
        self._small_reads = 0
        self._enter(Stage.IDLE, at)

    def _receive(self, at: float) -> WholeRequest | None:
        data = self.socket.recv(_BLOCK)
        self._wants = EVENT_READ
        self.moved += len(data)
        self._came += len(data)
        whole = self._feed(data, at)
        if whole is None and len(data) < self._limits.small_read:
            self._came_little(at)
        return whole

    def _came_little(self, at: float) -> None:
        """Has a client that sends crumbs rest between them: each costs more to read than it brings."""
        self._small_reads += 1
        over = self._small_reads - self._limits.small_reads
        if over > 0:
            self.rests_until = at + self._limits.rest * min(over, _LONGEST_REST)

    def _feed(self, data: bytes, at: float) -> WholeRequest | None:
        try:
            whole = self._reader.feed(data)
        except ConnectionRefusal as refusal:
            self.refuse(refusal, at)
            return None
        if whole is not None:
            self._rest = whole.rest
            self._enter(Stage.WORK, at)
            return whole
        if self._reader.in_body and self.stage is not Stage.BODY:
            self._enter(Stage.BODY, at)
            self._put(self._reader.go_ahead())
        elif self._reader.begun and self.stage is Stage.IDLE:
            self._enter(Stage.HEAD, at)
        return None

    def _overhear(self, at: float) -> WholeRequest | None:
        """While its answer is kept back: a client that goes is let go, one that asks on is answered first."""
        data = self.socket.recv(_BLOCK)
        if not data:
            raise EOFError
        self._rest += data
        return self.let_go(at)

    def _end_hold(self) -> None:
        hold, self._hold = self._hold, None
        if hold:
            hold.end()

    def _send(self, at: float) -> WholeRequest | None:
        assert self._answer is not None
        for _ in range(_SENT_AT_ONCE):
            if not self._block:
                self._block = self._answer.read(_BLOCK)
            if not self._block:
                return self._answered(at)
            sent = self.socket.send(self._block)
            self.moved += sent
            self._block = self._block[sent:]
        self._wants = EVENT_WRITE
        return None

    def _answered(self, at: float) -> WholeRequest | None:
        assert self._answer is not None
        self._answer.close()
        self._answer = None
        self.answered += 1
        if not self._keep:
            self._end_sending()
            self._enter(Stage.LINGER, at)
            return None
        self._reader = RequestReader(self._largest_body, self._limits)
        self._small_reads = 0
        self._came, self._came_from = 0, at
        self._enter(Stage.IDLE, at)
        return self._feed(self._rest, at) if self._rest else None

    def _say_last(self, data: bytes, at: float) -> None:
        with suppress(OSError):  # a client that is in the middle of sending may not take it: its loss
            self._put(data)
        self._end_sending()
        self._enter(Stage.LINGER, at)

    def _put(self, data: bytes) -> None:
        """Sends a few bytes, which a socket that has sent nothing yet takes at once."""
        if data and self._secure:
            self.socket.send(data)
        elif data:
            socket.socket.send(self.socket, data)  # past TLS, where the client speaks none

    def _end_sending(self) -> None:
        with suppress(OSError):
            if self._secure:
                assert isinstance(self.socket, ssl.SSLSocket)
                self.socket.unwrap()  # says that this was all; the client's own word is not waited for
        with suppress(OSError):
            socket.socket.shutdown(self.socket, socket.SHUT_WR)
