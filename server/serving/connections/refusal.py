"""How a request is refused before it reaches the app, in the one shape of every refusal."""

import json
from http import HTTPStatus

from server.storage.trouble import trouble
from server.web.errors import NotStored
from server.web.errors import Refusal
from server.words.spoken import text


class ConnectionRefusal(Refusal):
    """A request that is not let through; the connection ends with the answer."""

    def __init__(self, status: int, field: str, found: str, wanted: str, message: str):
        super().__init__(field, found, wanted, message)
        self.status = status

    @classmethod
    def of_protocol(cls, status: int, found: str) -> "ConnectionRefusal":
        """Returns the refusal of what is no proper HTTP."""
        if status == HTTPStatus.REQUEST_HEADER_FIELDS_TOO_LARGE:
            found = "headers that are too long"
        message = f"This is no request that the server can read: {found}. Send it again."
        return cls(status, "request", found, "HTTP/1.1 as in RFC 9112", message)

    @classmethod
    def too_large(cls, found: str, limit: int) -> "ConnectionRefusal":
        """Returns the refusal of a body over the limit of its route."""
        message = f"The request carries {found}; at most {limit} bytes are taken here. Send less at once."
        return cls(413, "body", found, f"at most {limit} bytes", message)

    @classmethod
    def too_slow(cls) -> "ConnectionRefusal":
        """Returns the refusal of a request that did not come in time."""
        message = "The request did not arrive in time. Move to a better signal; it is sent again."
        return cls(408, "request", "a part of it", "all of it in time", message)

    @classmethod
    def crowded(cls) -> "ConnectionRefusal":
        """Returns the refusal of a body that has to make room for others."""
        message = "The server takes in too much at once. Try again in a minute."
        return cls(503, "request", "too many large requests at once", "the same one in a minute", message)

    @classmethod
    def of_storage(cls, error: OSError) -> "ConnectionRefusal":
        """Returns the refusal of a body that there is no place for."""
        refusal = NotStored(trouble(error) or "broken")
        return cls(refusal.status, refusal.field, text(refusal.found), text(refusal.wanted), str(refusal))

    def as_http(self) -> bytes:
        """Returns the whole answer as bytes."""
        body = json.dumps({"error": self.as_dict()}, separators=(",", ":")).encode()
        return _http(self.status, "application/json", body)


def plain_http_told() -> bytes:
    """Returns the answer to a browser that was pointed at the HTTPS port without https://."""
    words = b"This address answers over HTTPS. Put https:// in front of it.\n"
    return _http(400, "text/plain; charset=utf-8", words)


def _http(status: int, kind: str, body: bytes) -> bytes:
    lines = [
        f"HTTP/1.1 {status} {HTTPStatus(status).phrase}",
        f"Content-Type: {kind}",
        f"Content-Length: {len(body)}",
        "Cache-Control: no-store",
        "Content-Security-Policy: default-src 'none'; frame-ancestors 'none'",
        "X-Content-Type-Options: nosniff",
        "Connection: close",
        *(["Retry-After: 60"] if status == HTTPStatus.SERVICE_UNAVAILABLE else []),
    ]
    return "\r\n".join([*lines, "", ""]).encode() + body
