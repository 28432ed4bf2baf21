"""Gathers one request from the bytes of a connection, within its limits; h11 does the reading.

What goes on is a request without anything two programs could read in two ways: its length is
known, no header stands twice, none has a name that another would be mistaken for.
"""

import tempfile
from collections.abc import Callable
from typing import NamedTuple

import h11

from server.serving.connections.limits import Limits
from server.serving.connections.refusal import ConnectionRefusal

# (method, path) -> the largest body that the route takes
LargestBody = Callable[[str, str], int]

_OWN = {b"expect", b"content-length", b"transfer-encoding", b"trailer", b"te", b"upgrade"}
_LEAST_MEAN_CHUNK = 256  # a body cut finer than this on average costs more to read than it brings
_CHUNKS_FREE = 64


class WholeRequest(NamedTuple):
    """A request that came in full: its head as bytes, its body as a file, what came behind it."""

    head: bytes
    body: "tempfile.SpooledTemporaryFile[bytes]"
    rest: bytes


class RequestReader:
    """One request in the making."""

    def __init__(self, largest_body: LargestBody, limits: Limits):
        self._largest_body = largest_body
        self._http = h11.Connection(h11.SERVER, max_incomplete_event_size=limits.head_bytes)
        self._request: h11.Request | None = None
        self._body = tempfile.SpooledTemporaryFile(limits.memory_bytes)  # noqa: SIM115 # its own life
        self._limit = 0
        self._chunks = 0
        self.begun = False
        self.body_bytes = 0

    @property
    def in_body(self) -> bool:
        """Tells whether the head is complete."""
        return self._request is not None

    def feed(self, data: bytes) -> WholeRequest | None:
        """Takes bytes (none: the client has ended its side); returns the request once it is whole.

        Raises ConnectionRefusal for one that is not taken, EOFError where the client ends in the middle.
        """
        self.begun = self.begun or bool(data)
        try:
            self._http.receive_data(data)
            while True:
                event = self._http.next_event()
                if event is h11.NEED_DATA:
                    return None
                if isinstance(event, h11.Request):
                    self._begin_body(event)
                elif isinstance(event, h11.Data):
                    self._take(event.data)
                elif isinstance(event, h11.EndOfMessage):
                    return self._whole()
                else:
                    raise EOFError
        except OSError as error:
            raise ConnectionRefusal.of_storage(error) from None
        except h11.RemoteProtocolError as error:
            if not data:
                raise EOFError from None
            raise ConnectionRefusal.of_protocol(error.error_status_hint, str(error)) from None

    def go_ahead(self) -> bytes:
        """Returns what tells a client to send the body that it holds back, or nothing."""
        if not self._http.they_are_waiting_for_100_continue:
            return b""
        return self._http.send(h11.InformationalResponse(status_code=100, headers=[])) or b""

    def close(self) -> None:
        """Frees the place of a body that is not wanted any more."""
        self._body.close()

    def _begin_body(self, request: h11.Request) -> None:
        path = request.target.partition(b"?")[0].decode("ascii", "replace")
        self._request = request
        self._limit = self._largest_body(request.method.decode("ascii"), path)
        _refuse_what_is_for_a_proxy(request)
        if {b"content-length", b"transfer-encoding"} <= {name for name, _ in request.headers}:
            # A proxy that goes by the other one would see another request behind it (RFC 9112, 6.1 and 11.2).
            raise ConnectionRefusal.of_protocol(400, "a body with a length and in chunks")
        for name, value in request.headers:
            if name == b"content-length" and int(value) > self._limit:
                raise ConnectionRefusal.too_large(f"{int(value)} bytes", self._limit)

    def _take(self, data: bytes) -> None:
        self.body_bytes += len(data)
        self._chunks += 1
        if self.body_bytes > self._limit:
            raise ConnectionRefusal.too_large(f"more than {self._limit} bytes", self._limit)
        if self._chunks > _CHUNKS_FREE + self.body_bytes // _LEAST_MEAN_CHUNK and self._is_chunked():
            raise ConnectionRefusal.of_protocol(400, "a body in chunks of a few bytes each")
        self._body.write(data)

    def _is_chunked(self) -> bool:
        return self._request is not None and any(
            name == b"transfer-encoding" for name, _ in self._request.headers
        )

    def _whole(self) -> WholeRequest:
        assert self._request is not None
        self._body.seek(0)
        return WholeRequest(_head(self._request, self.body_bytes), self._body, self._http.trailing_data[0])


def _refuse_what_is_for_a_proxy(request: h11.Request) -> None:
    """Refuses a target that is no path of ours, and a version that is none of HTTP/1.

    Cheroot refuses most of them, too, but in another shape, and would take some for a host.
    """
    if request.http_version not in {b"1.0", b"1.1"}:
        raise ConnectionRefusal.of_protocol(505, f"HTTP/{request.http_version.decode()}")
    target = request.target
    if not target.startswith(b"/") or target.startswith(b"//") or b"#" in target:
        raise ConnectionRefusal.of_protocol(400, "an address that is no path on this server")


def _head(request: h11.Request, length: int) -> bytes:
    """Returns the head in one reading: each header once, of known length."""
    headers: dict[bytes, bytes] = {}
    for name, value in request.headers:
        # "X_Forwarded_For" would be "X-Forwarded-For" by the time the app sees it.
        if name in _OWN or b"_" in name:
            continue
        between = b"; " if name == b"cookie" else b", "
        headers[name] = headers[name] + between + value if name in headers else value
    if b"close" in {each.strip().lower() for each in headers.get(b"connection", b"").split(b",")}:
        headers[b"connection"] = b"close"  # cheroot hears no word beside it
    if length or request.method not in {b"GET", b"HEAD"}:
        headers[b"content-length"] = b"%d" % length
    lines = [b"%b %b HTTP/%b" % (request.method, request.target, request.http_version)]
    lines += [b"%b: %b" % header for header in headers.items()]
    return b"\r\n".join([*lines, b"", b""])
