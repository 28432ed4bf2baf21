"""The cookie by which a phone is known again, whatever the server's clock says.

Flask takes no cookie that is too old or from a time to come, and answers with an empty one. So a machine
whose clock was set back, or that started with none, would lose every phone that asks meanwhile, for good.
How long a phone may stay away is asked of the database alone (`sessions.UNUSED_DAYS`).
"""

from flask import Flask
from flask import Request
from flask.sessions import SecureCookieSession
from flask.sessions import SecureCookieSessionInterface
from itsdangerous import BadSignature


class AgelessCookies(SecureCookieSessionInterface):
    """Reads a signed cookie without asking when it was signed."""

    def open_session(self, app: Flask, request: Request) -> SecureCookieSession | None:
        """Returns what the request's cookie holds, nothing where the server did not sign it."""
        serializer = self.get_signing_serializer(app)
        if serializer is None:
            return None
        try:
            return self.session_class(serializer.loads(request.cookies.get(self.get_cookie_name(app), "")))
        except BadSignature:
            return self.session_class()
