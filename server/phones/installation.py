"""Which installation answers, in what build, and what a phone may do here."""

from flask import Blueprint
from flask import Response
from flask import current_app
from flask import session as cookie
from flask_wtf.csrf import generate_csrf
from sqlite_utils import Database

from server.clock import now_ms
from server.core.log.envelope import FORMAT_VERSION
from server.core.log.envelope import OLDEST_TO_BEGIN
from server.phones.sessions import current_session
from server.phones.signing import Signer
from server.phones.signing import signer
from server.storage.folder import setting
from server.storage.kept_days import RETURN_WINDOW
from server.storage.kept_days import WARRANTY
from server.web.answers import json_answer
from server.web.assets import current_shell
from server.web.database import data_folder
from server.web.database import database

blueprint = Blueprint("installation", __name__)


@blueprint.get("/api/ping")
def ping() -> Response:
    """Proves that this server answers, and not a network's sign-in page."""
    return json_answer({"ok": True, "now": now_ms()})


@blueprint.get("/api/session")
def session() -> Response:
    """Tells a phone whether it is paired, and gives it the token that its writes need."""
    current = current_session()
    cookie.modified = True  # begins the cookie's days anew
    return json_answer(
        {
            "csrf": generate_csrf(),
            "paired": current is not None,
            "name": current.name if current else "",
            "role": current.role if current else "",
            "return_days": RETURN_WINDOW.of(database()),
            # Whether other counters of a chain are asked: `server.register`.
            "register": "register" in current_app.extensions,
            "warranty_days": WARRANTY.of(database()),
            "installation": installation_id(database()),
            "build": current_shell().build,
            "format": FORMAT_VERSION,
            "oldest_format": OLDEST_TO_BEGIN,
            "now": now_ms(),
            # Where a phone gets to trust this server, for the day it does not any more; empty elsewhere.
            "trust_page": current_app.config.get("TRUST_PAGE", ""),
        }
    )


def installation_signer() -> Signer:
    """Returns what signs for this installation; its key is read once."""
    held: Signer | None = current_app.extensions.get("signer")
    if held is None:
        held = current_app.extensions["signer"] = signer(data_folder())
    return held


def installation_id(db: Database) -> str:
    """Returns the random id of this data folder."""
    return setting(db, "installation") or ""
