"""Puts the server together: one app for one data folder at one address."""

from dataclasses import dataclass
from dataclasses import field
from datetime import timedelta
from pathlib import Path
from urllib.parse import urlsplit

from flask import Flask
from flask_wtf.csrf import CSRFProtect

from server.keeping.record import routes as records
from server.labelling import routes as labelling
from server.lessons import routes as lessons
from server.lessons import yards_routes
from server.log import brought
from server.log import sync
from server.news import board
from server.news import routes as news
from server.phones import installation
from server.phones import paired
from server.phones import pairing
from server.phones import sessions
from server.phones.cookies import AgelessCookies
from server.phones.try_limit import TryLimit
from server.photos import routes as photos
from server.photos.store import MOST_BYTES
from server.queries import projection
from server.queries import returns
from server.register import routes as register
from server.slips import routes as slips
from server.storage import DataFolder
from server.web import assets
from server.web import bodies
from server.web import database
from server.web import errors
from server.web import forwarded
from server.web import language
from server.web import row_number
from server.web import security
from server.web.shell import CORE_URL
from server.web.shell import find_static
from server.web.shell import load_shell

PAIRING_TRIES = 10
PAIRING_SECONDS = 300
PAIRING_FAILURES_NOTED = 60  # of all addresses together: each is a write to the disk
SESSION_DAYS = 400  # what browsers keep a cookie for at most; every visit begins them anew


@dataclass(frozen=True)
class Config:
    """Where the data lies, under which address it is served, and from where the app's files come."""

    data: Path
    base: str
    static: Path = field(default_factory=find_static)
    behind_proxy: bool = False


def create_app(config: Config) -> Flask:
    """Returns the app; nothing is opened before this call."""
    folder = DataFolder(config.data)
    shell = load_shell(config.static)
    app = Flask("server", static_folder=None, template_folder=None)
    database.init_app(app, folder)
    address = urlsplit(config.base)
    app.config.update(
        BASE_ADDRESS=config.base,
        SECRET_KEY=folder.secret_key(),
        MAX_CONTENT_LENGTH=MOST_BYTES,
        # Cookies do not tell ports apart, so two installations on one machine need two names.
        SESSION_COOKIE_NAME=f"swaptrail-{address.port or address.scheme}",
        SESSION_COOKIE_HTTPONLY=True,
        SESSION_COOKIE_SAMESITE="Strict",
        SESSION_COOKIE_SECURE=address.scheme == "https",
        SESSION_REFRESH_EACH_REQUEST=False,  # /api/session does; files of the app carry no cookie
        PERMANENT_SESSION_LIFETIME=timedelta(days=SESSION_DAYS),
        WTF_CSRF_TIME_LIMIT=None,  # a phone may come back after weeks; the session itself ends it
        WTF_CSRF_SSL_STRICT=False,  # wants a Referer, which some phones leave out; Origin is checked
    )
    app.session_interface = AgelessCookies()
    app.extensions["pairing_tries"] = TryLimit(PAIRING_TRIES, PAIRING_SECONDS)
    app.extensions["pairing_failures_noted"] = TryLimit(PAIRING_FAILURES_NOTED, PAIRING_SECONDS)
    language.init_app(app)
    errors.init_app(app)
    if config.behind_proxy:
        forwarded.init_app(app)
    security.init_app(app, config.base, shell.script_hashes)
    bodies.init_app(app)
    row_number.init_app(app)
    records.init_app(app)
    yards_routes.init_app(app)
    CSRFProtect(app).exempt(assets.shared)
    sessions.init_app(app)
    assets.init_app(app, shell)
    board.init_app(app)
    projection.init_app(app, shell.assets[CORE_URL].sha256)
    for part in (
        brought, installation, labelling, lessons, news, paired, pairing,
        photos, register, returns, slips, sync,
    ):  # fmt: skip
        app.register_blueprint(part.blueprint)
    return app
