"""The phone app as one fixed set of files with a build id.

A phone takes a build whole or not at all, so every file is read once at start, hashed, and listed for the
service worker. Nothing on disk can change under a phone that is installing. The page names
its files with the build in their address, so that files of two builds never meet in one page.
"""

import base64
import functools
import gzip
import hashlib
import html
import json
import re
from collections.abc import Callable
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

from server.refusals import CommandRefused
from server.words.files import FIRST
from server.words.files import languages
from server.words.files import sent_source_of

# What is part of the app, and as what it is served: guessing differs between machines.
MIME_TYPES = {
    ".bin": "application/octet-stream",
    ".css": "text/css; charset=utf-8",
    ".ftl": "text/plain; charset=utf-8",
    ".html": "text/html; charset=utf-8",
    ".jpg": "image/jpeg",
    ".js": "text/javascript; charset=utf-8",
    ".json": "application/json",
    ".mjs": "text/javascript; charset=utf-8",
    ".mp3": "audio/mpeg",
    ".png": "image/png",
    ".svg": "image/svg+xml",
    ".wasm": "application/wasm",
    ".wav": "audio/wav",
    ".webmanifest": "application/manifest+json",
    ".webp": "image/webp",
    ".woff2": "font/woff2",
}

SHELL_URL = "/"
CORE_URL = "/app/core.json"
# Of a language.
HELP_URL = "/app/help/{}.json"
WORDS_URL = "/app/words/{}.ftl"
MANIFEST_URL = "/manifest.webmanifest"
# Works where the app does not start (static/plain.js).
PLAIN_URL = "/plain.html"
# The manifest names it: phones send shared pictures here, without a token and from no page of the app.
SHARE_URL = "/share"
WORKER_URL = "/sw.js"

# In static/sw.js, inside quotes: the worker parses it as JSON.
PLACEHOLDER = "__PRECACHE__"

# Of a build: names the scripts, and the part of the core, that nothing imports at once.
LATE = "late.json"

# Served, but not kept on phones: a browser asks for them while it puts the app on the home screen, which
# needs a network anyway, and the last one takes the place of sw.js.
NOT_KEPT = {
    "/app/icons/swaptrail-180.png",
    "/app/icons/swaptrail-192.png",
    "/app/icons/swaptrail-512.png",
    "/app/icons/swaptrail-maskable-512.png",
    "/app/sw-retire.js",
}

_PLAIN_SCRIPT = "/app/plain.js"
_OUTSIDE_APP = {"index.html", "plain.html", "sw.js", "manifest.webmanifest"}
_NEEDED = (*sorted(_OUTSIDE_APP), "vendor/micropython/micropython.wasm", "help/en/README.md")
_INLINE_SCRIPT = re.compile(rb"<script(?:\s[^>]*)?>(.+?)</script>", re.DOTALL)


# Takes index.html and a build, returns the page as it is sent.
Placed = Callable[[bytes, str], bytes]
_NO_BUILD = "0" * 16


class ShellIncomplete(CommandRefused):
    """Files of the phone app are missing; the text says how to get them."""


@dataclass(frozen=True)
class Asset:
    """One file, ready to send."""

    body: bytes
    brotli: bytes | None  # made at build time; a checkout has none
    sha256: str
    mime_type: str

    @functools.cached_property
    def gzip(self) -> bytes:
        """Returns the body compressed, once somebody takes it that way: most take the other or none."""
        return _gzipped(self.body)


@dataclass(frozen=True)
class Shell:
    """All files of one build by their address, and what the headers must allow."""

    build: str
    assets: dict[str, Asset]
    script_hashes: list[str]
    #: By language, the addresses of what a phone keeps of those in use alone.
    languages: dict[str, list[str]]
    #: Of what every phone keeps, what may come after the rest: the plain page, screens opened rarely.
    late: list[str]

    def kept(self) -> list[str]:
        """Returns the addresses of what every phone keeps, whatever its language."""
        return _kept(self.assets, self.languages)

    def precached_bytes(self) -> int:
        """Returns what a first visit takes before the app works offline, in the language that takes most.

        Compressed. What is `late`, the help and its pictures follow by themselves (sw.js).
        """
        every = self._bytes([*(url for url in self.kept() if url not in self.late), WORKER_URL])
        return every + max(self._bytes(urls[:1]) for urls in self.languages.values())

    def _bytes(self, urls: list[str]) -> int:
        return sum(len(self.assets[url].brotli or self.assets[url].gzip) for url in urls)


def find_static() -> Path:
    """Returns the app's folder: inside an installed package, or beside it in a checkout."""
    here = Path(__file__).resolve().parents[1]
    packaged = here / "_static"
    return packaged if packaged.is_dir() else here.parent / "static"


def load_shell(
    static: Path,
    placed: Placed | None = None,
    beside: Mapping[str, bytes] | None = None,
    placed_manifest: Placed | None = None,
) -> Shell:
    """Reads the whole app into memory.

    `placed` gives the page its addresses, for a server's own when left out; `beside` are further pages by
    address that belong to the build; `placed_manifest` gives the manifest its addresses, which a server
    leaves as they are.
    """
    missing = [name for name in _NEEDED if not (static / name).is_file()]
    if missing:
        raise ShellIncomplete(
            f"The phone app in {static} lacks {', '.join(missing)}. Install the project again "
            "with pip, which fetches what the app is made of."
        )
    pages = {
        url: _with_own_words((static / name).read_bytes(), area)
        for url, name, area in ((SHELL_URL, "index.html", "begin"), (PLAIN_URL, "plain.html", "plain"))
    }
    placed = placed or _placed
    assets = {url: _packed(placed(page, _NO_BUILD), ".html") for url, page in pages.items()}
    for url, body in (beside or {}).items():
        assets[url] = _packed(body, ".html")
    assets[MANIFEST_URL] = _asset(static / "manifest.webmanifest")
    for file in app_files(static):
        assets[f"/app/{file.relative_to(static).as_posix()}"] = _asset(file)
    compiled = static / "core.json"
    assets[CORE_URL] = _asset(compiled) if compiled.is_file() else _packed(core_bundle(), ".json")
    of_languages = _add_languages(static, assets)
    late = _late(static)
    worker = (static / "sw.js").read_text("utf-8")
    build = _build_id(assets, worker)
    for url, page in pages.items():
        assets[url] = _packed(placed(page, build), ".html")
    if placed_manifest:
        assets[MANIFEST_URL] = _packed(
            placed_manifest(assets[MANIFEST_URL].body, build), Path(MANIFEST_URL).suffix
        )
    script_hashes = script_sources(assets[SHELL_URL].body)
    assets[WORKER_URL] = _packed(_fill(worker, build, assets, of_languages, late).encode(), ".js")
    return Shell(build, assets, script_hashes, of_languages, late)


def _late(static: Path) -> list[str]:
    """Returns the addresses of what a first visit does without: the plain page, and what is imported later.

    The latter a bundled app names; a checkout has none.
    """
    file = static / LATE
    later = json.loads(file.read_text("utf-8")) if file.is_file() else []
    return sorted({PLAIN_URL, _PLAIN_SCRIPT, *(f"/app/{name}" for name in later)})


def _add_languages(static: Path, assets: dict[str, Asset]) -> dict[str, list[str]]:
    """Puts words and help of each language among the assets; returns the addresses of what is its alone."""
    # Here: a build, which has no Markdown reader, needs the rest.
    from server.web.help_pages import help_bundle
    from server.web.help_pages import help_folder
    from server.web.help_pages import help_pages

    folders = {language: help_folder(static / "help", language) for language in languages()}
    pages = {folder: help_pages(folder) for folder in set(folders.values())}
    of_languages = {}
    for language, folder in folders.items():
        words, told = WORDS_URL.format(language), HELP_URL.format(language)
        # A wheel brings the words packed.
        assets.setdefault(words, _packed(sent_source_of(language), ".ftl"))
        assets[told] = _packed(help_bundle(folder, pages[folder]), ".json")
        shown = {picture.relative_to(static.resolve()) for page in pages[folder] for picture in page.pictures}
        of_languages[language] = [words, told, *sorted(f"/app/{each.as_posix()}" for each in shown)]
    return of_languages


def _kept(assets: dict[str, Asset], of_languages: dict[str, list[str]]) -> list[str]:
    return sorted(
        assets.keys() - NOT_KEPT - {WORKER_URL} - {url for urls in of_languages.values() for url in urls}
    )


def app_files(static: Path) -> list[Path]:
    """Returns the files served under /app/."""
    return sorted(
        file
        for file in static.rglob("*")
        if file.is_file()
        and file.suffix in MIME_TYPES
        and file.suffix != ".json"  # npm's own files
        and "node_modules" not in file.parts
        and file.relative_to(static).as_posix() not in _OUTSIDE_APP
    )


@functools.cache
def core_bundle() -> bytes:
    """Returns the core's Python files as the JSON that the phone writes into its interpreter.

    Read once in a process: it is the core that this process concludes by.
    """
    return json.dumps(
        {"digest": core_digest(), "files": core_files()}, ensure_ascii=False, sort_keys=True
    ).encode()


@functools.cache
def core_digest() -> str:
    """Returns by which core's files this program concludes, whether or not they were compiled for a phone."""
    files = json.dumps({"files": core_files()}, ensure_ascii=False, sort_keys=True)
    return hashlib.sha256(files.encode()).hexdigest()


def core_files() -> dict[str, str]:
    """Returns the core's Python files by the name under which the phone keeps them."""
    package = Path(__file__).resolve().parents[1]
    files = {"server/__init__.py": (package / "__init__.py").read_text("utf-8")}
    for file in (package / "core").rglob("*.py"):
        files[f"server/{file.relative_to(package).as_posix()}"] = file.read_text("utf-8")
    return files


def _asset(file: Path) -> Asset:
    packed = file.with_name(f"{file.name}.br")
    return _packed(file.read_bytes(), file.suffix, packed.read_bytes() if packed.is_file() else None)


def _packed(body: bytes, suffix: str, brotli: bytes | None = None) -> Asset:
    return Asset(body, brotli, hashlib.sha256(body).hexdigest(), MIME_TYPES[suffix])


@functools.lru_cache(maxsize=512)  # more than an app has files; a process that serves several packs once
def _gzipped(body: bytes) -> bytes:
    return gzip.compress(body, 9, mtime=0)  # mtime 0: the same bytes at every start


def _build_id(assets: dict[str, Asset], worker: str) -> str:
    digest = hashlib.sha256(worker.encode())
    for url in sorted(assets):
        digest.update(f"{url} {assets[url].sha256}\n".encode())
    return digest.hexdigest()[:16]


def _with_own_words(page: bytes, name: str) -> bytes:
    """Returns a page with what it says itself, the area `name`, in every language.

    Scripts find it in an attribute, and with it which languages there are; `{begin-purpose}` in the page
    becomes the text in the first language, `{begin-no-script}`, which no script can change, in all.
    """
    from server.words.sheet import area

    said = {language: area(name, language) for language in languages()}
    text = page.decode()
    marked = text.replace(
        "<html ", f'<html data-words="{html.escape(json.dumps(said, ensure_ascii=False))}" ', 1
    )
    if marked == text:
        raise ShellIncomplete(f"A page of static/ has no <html ...> to take the words of {name}.")
    for each, first in said[FIRST].items():
        everywhere = " ".join(own[each] for own in said.values() if each in own)
        marked = marked.replace(
            f"{{{each}}}", html.escape(everywhere if each.endswith("-no-script") else first)
        )
    return marked.encode()


def _placed(page: bytes, build: str) -> bytes:
    """Returns the page with whole addresses: it is the answer at /u/<code>, too, so none may be relative."""
    return page.replace(b'"./', b'"/').replace(b'"/app/', f'"/app/{build}/'.encode())


def _fill(
    worker: str, build: str, assets: dict[str, Asset], of_languages: dict[str, list[str]], late: list[str]
) -> str:
    if worker.count(PLACEHOLDER) != 1:
        raise ShellIncomplete(f"static/sw.js must hold {PLACEHOLDER} exactly once.")

    def listed(urls: list[str]) -> list[dict[str, str]]:
        return [{"url": url[1:] or "./", "sha256": assets[url].sha256} for url in urls]

    precache = {
        "build": build,
        "files": listed([url for url in _kept(assets, of_languages) if url not in late]),
        "late": listed(late),
        "languages": {language: listed(urls) for language, urls in of_languages.items()},
    }
    return worker.replace(PLACEHOLDER, json.dumps(precache))


def script_sources(page: bytes) -> list[str]:
    """Returns the CSP sources of the page's inline scripts, in practice its import map.

    An import map cannot be a file of its own, and the policy allows no inline script unnamed.
    """
    return [
        "'sha256-" + base64.b64encode(hashlib.sha256(script).digest()).decode() + "'"
        for script in _INLINE_SCRIPT.findall(page)
    ]
