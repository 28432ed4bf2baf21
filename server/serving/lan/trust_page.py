"""The page by which a phone gets to trust the installation, over plain HTTP on a port of its own.

It hands out the authority's certificate and nothing else: no cookie, no data, no word about jobs. HTTPS
would need the very trust that is fetched here, and HTTPS-only headers (HSTS) would shut the page, for they
hold for every port of a name.
"""

from importlib.resources import files
from urllib.parse import urlsplit

from flask import Blueprint
from flask import Flask
from flask import Response
from flask import render_template
from flask import request

from server.serving.lan.authority import Authority
from server.serving.lan.instants import readable
from server.serving.lan.phone_steps import FAMILIES
from server.serving.lan.phone_steps import family_of
from server.web import language
from server.words.spoken import say
from server.words.spoken import spoken

CERTIFICATE_TYPE = "application/x-x509-ca-cert"

# The app's colours in the light theme and in the dark one (static/styles/tokens.css).
_DARK = {
    "#15191d": "#f5f0e6",
    "#484e55": "#c3c7cb",
    "#d8d0c0": "#474e54",
    "#ffffff": "#1e2327",
    "#123c69": "#a5cdf7",
    "#e4edf7": "#1b2f45",
    "#fbf8f1": "#14171a",
    "#fff0c2": "#392c08",
}

# Asked for by the trust page from the app's own HTTPS address: it comes only where that is trusted.
check = Blueprint("trusted", __name__)


@check.get("/trusted.svg")
def trusted() -> Response:
    """Answers the trust page, which is of another origin."""
    response = Response('<svg xmlns="http://www.w3.org/2000/svg" width="1" height="1"/>')
    response.headers["Content-Type"] = "image/svg+xml"
    response.headers["Cache-Control"] = "no-store"
    response.headers["Cross-Origin-Resource-Policy"] = "cross-origin"
    return response


def create_trust_page(base: str, page: str, authority: Authority) -> Flask:
    """Returns the app of the trust page at `page` for an installation at `base`."""
    app = Flask(__name__, static_folder=None, template_folder="page")
    language.init_app(app)
    app.config["MAX_CONTENT_LENGTH"] = 1024  # nothing is sent to this page
    host = urlsplit(base).hostname or ""
    file = certificate_name(host)
    sent = _fixed_files()
    sent[f"/{file}"] = (CERTIFICATE_TYPE, authority.der())
    policy = (
        f"default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' {base} {page}; "
        "base-uri 'none'; form-action 'none'; frame-ancestors 'none'"
    )

    @app.get("/")
    def steps() -> str:
        return render_template(
            "trust.html",
            base=base,
            page=page,
            host=host,
            file=file,
            authority=authority.common_name,
            ends=readable(authority.ends),
            fingerprint=authority.fingerprint.split(":"),
            families=FAMILIES,
            say=say,
            language=spoken().language,
            opened=family_of(request.user_agent.string),
        )

    @app.get("/<path:name>")
    def fixed(name: str) -> Response:
        if f"/{name}" not in sent:
            return Response(say("serving-page-nothing"), 404, content_type="text/plain; charset=utf-8")
        kind, body = sent[f"/{name}"]
        response = Response(body)
        # No Content-Disposition: an iPhone would put the certificate with its files and offer no profile.
        response.headers["Content-Type"] = kind
        return response

    @app.after_request
    def _headers(response: Response) -> Response:
        response.headers["Content-Security-Policy"] = policy
        response.headers["X-Content-Type-Options"] = "nosniff"
        response.headers["Referrer-Policy"] = "no-referrer"
        response.headers["Cache-Control"] = "no-store"  # another authority may answer here one day
        return response

    return app


def certificate_name(host: str) -> str:
    """Returns the name of the file that a phone downloads, one that is told again in its list."""
    label = host if host[:1].isdigit() or ":" in host else host.partition(".")[0]
    label = label.replace(":", "-").replace(".", "-")
    return f"{label if label.startswith('swaptrail') else f'swaptrail-{label}'}.crt"


def _fixed_files() -> dict[str, tuple[str, bytes]]:
    """Returns what is sent as it is, by address: (type, bytes); each picture for both themes."""
    folder = files(__package__) / "page"
    sent = {
        "/trust.css": ("text/css; charset=utf-8", _styles()),
        "/trust.js": ("text/javascript; charset=utf-8", (folder / "trust.js").read_bytes()),
    }
    for picture in (folder / "pictures").iterdir():
        drawn = picture.read_text("utf-8")
        sent[f"/pictures/{picture.name}"] = ("image/svg+xml", drawn.encode())
        for light, dark in _DARK.items():
            drawn = drawn.replace(light, dark)
        sent[f"/pictures/dark/{picture.name}"] = ("image/svg+xml", drawn.encode())
    return sent


def _styles() -> bytes:
    """Returns both style sheets as one: a request less on a phone that trusts nothing yet."""
    folder = files(__package__) / "page"
    return b"\n".join((folder / name).read_bytes() for name in ("trust-colours.css", "trust.css"))
