"""Puts a Brotli copy beside each file that is sent: packing this well takes too long at each start."""

from pathlib import Path

from server.web.shell import MIME_TYPES

SUFFIX = ".br"
_PACKED_ALREADY = {".png", ".jpg", ".webp", ".woff2", ".mp3"}
_FILLED_IN_LATER = {
    "index.html",
    "plain.html",
    "sw.js",
    "manifest.webmanifest",
}  # by the server, at its start


def pack(folder: Path) -> None:
    """Packs every file in `folder` for which it is worth it."""
    import brotli  # a build requirement only

    for file in sorted(folder.rglob("*")):
        if file.suffix not in MIME_TYPES or file.suffix in _PACKED_ALREADY or file.name in _FILLED_IN_LATER:
            continue
        body = file.read_bytes()
        packed = brotli.compress(body, quality=11, lgwin=24)
        if len(packed) < len(body):
            file.with_name(file.name + SUFFIX).write_bytes(packed)
