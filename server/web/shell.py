"""The phone app as one fixed set of files with a build id.

A phone takes a build whole or not at all, so every file is read once at start, hashed, and listed for the
service worker. Nothing on disk can change under a phone that is installing. The page names
its files with the build in their address, so that files of two builds never meet in one page.
"""

import functools
import gzip
import hashlib
import json
from collections.abc import Callable
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

from server.web.core_files import core_bundle
from server.web.shell_pages import ShellIncomplete
from server.web.shell_pages import at_whole_addresses
from server.web.shell_pages import script_sources
from server.web.shell_pages import with_own_words
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


# Takes index.html and a build, returns the page as it is sent.
Placed = Callable[[bytes, str], bytes]
_NO_BUILD = "0" * 16


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
        url: with_own_words((static / name).read_bytes(), area)
        for url, name, area in ((SHELL_URL, "index.html", "begin"), (PLAIN_URL, "plain.html", "plain"))
    }
    placed = placed or at_whole_addresses
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
