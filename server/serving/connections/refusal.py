"""How a request is refused before it reaches the app, in the one shape of every refusal."""

import json
from http import HTTPStatus

from server.core.messages import message
from server.storage.trouble import trouble
from server.web.errors import NotStored
from server.web.errors import Refusal
from server.words.spoken import spoken


class ConnectionRefusal(Refusal):
    """A request that is not let through; the connection ends with the answer."""

    def __init__(self, status: int, field: str, found: object, wanted: object, told: object):
        super().__init__(field, found, wanted, told)
        self.status = status

    @classmethod
    def of_protocol(cls, status: int, found: str) -> "ConnectionRefusal":
        """Returns the refusal of what is no proper HTTP."""
        if status == HTTPStatus.REQUEST_HEADER_FIELDS_TOO_LARGE:
            found = "headers that are too long"
        return cls(status, "request", found, "HTTP/1.1 as in RFC 9112", message("server-unread", found=found))

    @classmethod
    def too_large(cls, found: str, limit: int) -> "ConnectionRefusal":
        """Returns the refusal of a body over the limit of its route."""
        told = message("server-request-large", found=found, most=limit)
        return cls(413, "body", found, f"at most {limit} bytes", told)

    @classmethod
    def too_slow(cls) -> "ConnectionRefusal":
        """Returns the refusal of a request that did not come in time."""
        return cls(408, "request", "a part of it", "all of it in time", message("server-request-slow"))

    @classmethod
    def crowded(cls) -> "ConnectionRefusal":
        """Returns the refusal of a body that has to make room for others."""
        found, wanted = "too many large requests at once", "the same one in a minute"
        return cls(503, "request", found, wanted, message("server-crowded"))

    @classmethod
    def of_storage(cls, error: OSError) -> "ConnectionRefusal":
        """Returns the refusal of a body that there is no place for."""
        refusal = NotStored(trouble(error) or "broken")
        return cls(refusal.status, refusal.field, refusal.found, refusal.wanted, refusal.message)

    def as_http(self) -> bytes:
        """Returns the whole answer as bytes."""
        body = json.dumps({"error": spoken().render(self.as_dict())}, separators=(",", ":")).encode()
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
