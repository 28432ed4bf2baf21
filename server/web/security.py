"""The headers that every response carries, and the one name under which requests are taken."""

from urllib.parse import quote

from flask import Flask
from flask import Response
from flask import redirect
from flask import request
from werkzeug.wrappers import Response as BaseResponse

from server.core.errors import shorten
from server.web.errors import NotAllowed
from server.web.errors import WrongAddress
from server.web.shell import SHARE_URL

_NOT_USED = (
    "accelerometer",
    "display-capture",
    "geolocation",
    "gyroscope",
    "magnetometer",
    "midi",
    "payment",
    "serial",
    "usb",
)


def content_security_policy(script_hashes: list[str]) -> str:
    """Returns the policy: own origin only; wasm for the two hosts that need it; named inline scripts.

    A worker obeys the policy of its own response, so the same header goes out with everything.
    """
    scripts = " ".join(["'self'", "'wasm-unsafe-eval'", *script_hashes])
    return (
        f"default-src 'self'; script-src {scripts}; img-src 'self' blob:; object-src 'none'; "
        "base-uri 'none'; form-action 'self'; frame-ancestors 'none'"
    )


def init_app(app: Flask, base: str, script_hashes: list[str]) -> None:
    """Puts the headers on every response and keeps requests to the installation's own address."""
    policy = content_security_policy(script_hashes)
    permissions = ", ".join(["camera=(self)", "microphone=(self)", *(f"{name}=()" for name in _NOT_USED)])
    own_host = base.partition("://")[2]

    @app.before_request
    def _own_address_only() -> BaseResponse | None:
        if request.host.lower() != own_host:  # labels spell the name in capitals
            # Also what stops a page elsewhere from pointing its own name at this machine.
            if request.method in {"GET", "HEAD"} and not request.path.startswith("/api/"):
                return redirect(base + _asked_for(), 307)
            raise WrongAddress("Host", shorten(request.host), own_host)
        origin = request.headers.get("Origin")
        if request.path == SHARE_URL:  # sent by the phone itself, as "null" or nobody
            return None
        if origin is not None and origin != base and request.method not in {"GET", "HEAD"}:
            raise NotAllowed("Origin", shorten(origin), base)
        return None

    @app.after_request
    def _headers(response: Response) -> Response:
        response.headers["Content-Security-Policy"] = policy
        response.headers["Permissions-Policy"] = permissions
        response.headers["X-Content-Type-Options"] = "nosniff"
        response.headers["Referrer-Policy"] = "same-origin"
        response.headers["Cross-Origin-Opener-Policy"] = "same-origin"
        # One picture is for the trust page, which is of another origin, and says so itself.
        response.headers.setdefault("Cross-Origin-Resource-Policy", "same-origin")
        if request.path.startswith("/api/"):
            response.headers["Cache-Control"] = "no-store"
        return response


def _asked_for() -> str:
    """Returns path and question of the request, with every sign that may not stand in a header quoted."""
    question = request.query_string.decode("latin-1")
    return quote(request.path) + ("?" + quote(question, safe="%=&+/?:;,@!$'()*~") if question else "")
