"""Sends the phone app: its one page for every route of it, its files, its service worker."""

from flask import Blueprint
from flask import Flask
from flask import Response
from flask import current_app
from flask import redirect
from flask import request
from werkzeug.wrappers import Response as WerkzeugResponse

from server.web.bodies import larger_bodies
from server.web.errors import NotFound
from server.web.shell import MANIFEST_URL
from server.web.shell import PLAIN_URL
from server.web.shell import SHARE_URL
from server.web.shell import SHELL_URL
from server.web.shell import WORKER_URL
from server.web.shell import Asset
from server.web.shell import Shell

blueprint = Blueprint("assets", __name__)

_MOST_SHARED_BYTES = 40 * 1024 * 1024  # a picture of the largest size that the app takes

_FOREVER = "public, max-age=31536000, immutable"
_ASK_AGAIN = "no-cache"


def init_app(app: Flask, shell: Shell) -> None:
    """Serves `shell` from this app."""
    app.extensions["shell"] = shell
    larger_bodies(app)["POST", SHARE_URL] = _MOST_SHARED_BYTES
    app.register_blueprint(blueprint)


def current_shell() -> Shell:
    """Returns the build that the running app serves."""
    shell: Shell = current_app.extensions["shell"]
    return shell


@blueprint.get("/")
@blueprint.get("/pair")
@blueprint.get("/U/<code>")
@blueprint.get("/u/<code>")
@blueprint.get("/job/<path:rest>")
def page(code: str = "", rest: str = "") -> Response:
    """Answers every route of the app with its one page; the app reads the address itself."""
    return _send(current_shell().assets[SHELL_URL], _ASK_AGAIN)


@blueprint.get(PLAIN_URL)
def plain_page() -> Response:
    """Sends the page that works where the app does not start."""
    return _send(current_shell().assets[PLAIN_URL], _ASK_AGAIN)


@blueprint.post(SHARE_URL)
def shared() -> WerkzeugResponse:
    """Leads a phone whose service worker did not take the shared pictures to a screen that says so.

    Nothing is read or kept: what a phone shares is taken by the app on it, with or without a network.
    """
    return redirect("./#/shared/missed", 303)


@blueprint.get("/app/<path:name>")
def app_file(name: str) -> Response:
    """Sends one file of the app; with a build in front, only of that build, and to be kept for good."""
    shell = current_shell()
    build, _, rest = name.partition("/")
    of_this_build = build == shell.build
    asset = shell.assets.get(f"/app/{rest if of_this_build else name}")
    if asset is None:
        raise NotFound("path", name, f"a file of the app, build {shell.build}")
    return _send(asset, _FOREVER if of_this_build else _ASK_AGAIN)


@blueprint.get("/manifest.webmanifest")
def manifest() -> Response:
    """Sends what a phone needs to put the app on its home screen."""
    return _send(current_shell().assets[MANIFEST_URL], _ASK_AGAIN)


@blueprint.get("/sw.js")
def service_worker() -> Response:
    """Sends the service worker with the list of this build's files in it."""
    return _send(current_shell().assets[WORKER_URL], _ASK_AGAIN)


def _send(asset: Asset, cache: str) -> Response:
    encoding, body = _encoded(asset)
    response = Response(body)
    response.headers["Content-Type"] = asset.mime_type
    if encoding:
        response.content_encoding = encoding
    response.headers["Vary"] = "Accept-Encoding"
    response.headers["Cache-Control"] = cache
    # Two encodings are two representations and must not share a tag (RFC 9110, 8.8.3.3).
    response.set_etag(f"{asset.sha256}-{encoding}" if encoding else asset.sha256)
    response.make_conditional(request)
    return response


def _encoded(asset: Asset) -> tuple[str, bytes]:
    """Returns the smallest form of a file that the phone takes, and what that form is called."""
    # Not `in`: a name with the weight 0 is on the list, too.
    taken = request.accept_encodings.quality
    if asset.brotli is not None and taken("br"):
        return "br", asset.brotli
    if taken("gzip"):
        return "gzip", asset.gzip
    return "", asset.body
