"""What a reverse proxy in front says of a request: taken from exactly one hop, refused where it is amiss.

The server believes whoever connects, so it listens where only the proxy reaches it, and takes nothing
that a client could have put in itself: a proxy as it should be writes each header afresh, once.
"""

from ipaddress import ip_address

from flask import Flask
from flask import request
from werkzeug.middleware.proxy_fix import ProxyFix

from server.core.errors import shorten
from server.core.messages import message
from server.web.errors import BadRequest

_FOR, _PROTO, _HOST = "X-Forwarded-For", "X-Forwarded-Proto", "X-Forwarded-Host"


class NotThroughProxy(BadRequest):
    """The request did not come by the one proxy, or that one does not say what it has to."""


def init_app(app: Flask) -> None:
    """Makes an app believe the one hop in front of it; called before anything looks at the address."""
    # Never a prefix: it would be put in front of every address that the app writes.
    app.wsgi_app = ProxyFix(  # type: ignore[method-assign]
        app.wsgi_app, x_for=1, x_proto=1, x_host=1, x_port=0, x_prefix=0
    )
    app.before_request(_check)


def _check() -> None:
    address = _only(_FOR, "the phone's address")
    try:
        ip_address(address)
    except ValueError:
        raise _amiss(_FOR, shorten(address), "the phone's address") from None
    scheme = _only(_PROTO, "https")
    if scheme != "https":
        raise _amiss(_PROTO, shorten(scheme), "https")
    _only(_HOST, "the name that the phone asked for")  # which name, is checked where all names are


def _only(name: str, wanted: str) -> str:
    """Returns the one value of a header; several hops come with commas between them."""
    value = request.headers.get(name, "").strip()
    if not value:
        raise _amiss(name, "nothing", wanted)
    if "," in value:
        raise _amiss(name, shorten(value), f"{wanted}, once")
    return value


def _amiss(name: str, found: object, wanted: str) -> NotThroughProxy:
    return NotThroughProxy(
        name,
        found,
        wanted,
        message("server-proxy", header=name, found=found, wanted=wanted),
    )
