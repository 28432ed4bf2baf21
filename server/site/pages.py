"""What differs between the app on a host of files and the app of a server.

Such a host sets no headers, so the policy stands in the page, as the first thing in its head: it holds from
there on. What only a header can say (who may frame the page, the type of a file) is in a file that some hosts
read. The app's folder is known only when it is opened, so every address is relative.
"""

from pathlib import Path

from server.web.security import content_security_policy
from server.web.shell import PLAIN_URL
from server.web.shell import Shell
from server.web.shell import load_shell
from server.web.shell_pages import script_sources

NOT_FOUND = "404.html"
HEADERS = "_headers"

# A page cannot say these of itself.
_ONLY_BY_HEADER = ("frame-ancestors", "report-uri", "sandbox")
# Asked for anew each time; everything under app/ carries its build in its address and never changes.
_CHANGING = ("/", "/index.html", PLAIN_URL, f"/{NOT_FOUND}", "/sw.js", "/manifest.webmanifest")


def site_shell(static: Path) -> Shell:
    """Returns the app of `static` for a host of files."""
    missing_page = (Path(__file__).parent / NOT_FOUND).read_bytes()
    return load_shell(static, _placed, {f"/{NOT_FOUND}": _with_policy(missing_page)}, _placed_manifest)


def site_files(shell: Shell) -> dict[str, bytes]:
    """Returns the files of a site by their place in its folder."""
    files = {}
    for url, asset in shell.assets.items():
        name = url.removeprefix("/") or "index.html"
        if name.startswith("app/"):
            name = name.replace("app/", f"app/{shell.build}/", 1)
        files[name] = asset.body
    return files


def headers_file(shell: Shell) -> str:
    """Returns the file of headers, in the form that several hosts of files read."""
    # Where a page has two policies, both hold; so this one allows what either page has in it.
    scripts = [*shell.script_hashes, *script_sources(shell.assets[f"/{NOT_FOUND}"].body)]
    lines = [
        "/*",
        f"  Content-Security-Policy: {content_security_policy(scripts)}",
        "  X-Content-Type-Options: nosniff",
        "  Referrer-Policy: same-origin",
        "  Cross-Origin-Opener-Policy: same-origin",
        "/app/*",
        "  Cache-Control: public, max-age=31536000, immutable",
    ]
    for name in _CHANGING:
        lines += [name, "  Cache-Control: no-cache"]
    return "\n".join([*lines, ""])


def _placed(page: bytes, build: str) -> bytes:
    marked = page.replace(b"<html ", b'<html data-server="none" ', 1)
    assert marked != page, "the page has no <html ...>"
    return _with_policy(marked.replace(b'"./app/', f'"./app/{build}/'.encode()))


def _placed_manifest(manifest: bytes, build: str) -> bytes:
    return manifest.replace(b'"app/', f'"app/{build}/'.encode())


def _with_policy(page: bytes) -> bytes:
    """Returns a page with its own policy; the scripts in it may run as they stand, and no others."""
    policy = "; ".join(
        directive
        for directive in content_security_policy(script_sources(page)).split("; ")
        if not directive.startswith(_ONLY_BY_HEADER)
    )
    meta = f'<head>\n    <meta http-equiv="Content-Security-Policy" content="{policy}">'
    return page.replace(b"<head>", meta.encode(), 1)
