"""Photos on disk, each under the hash of its bytes: stored once, never changed, always checkable."""

import hashlib
import io
from pathlib import Path

from PIL import Image
from sqlite_utils import Database

from server.core.messages import message
from server.photos import jpeg
from server.storage import writing
from server.storage.durable import sync_folder
from server.storage.durable import write_whole
from server.storage.private import make_private_folder
from server.web.errors import NotTaken
from server.web.errors import TooLarge

MOST_BYTES = 4 * 1024 * 1024
# The app scales to 2048 on the long side; this leaves room and still bounds the memory to decode.
MOST_PIXELS = 16_777_216
_GREY = (128, 128, 128)  # of a block that says nothing


def check(data: bytes) -> jpeg.Picture:
    """Returns the picture's size; refuses anything but a plain, whole JPEG of bounded size."""
    if len(data) > MOST_BYTES:
        raise TooLarge("photo", f"{len(data)} bytes", f"at most {MOST_BYTES} bytes")
    try:
        picture = jpeg.read(data)
    except jpeg.NotJpeg as error:
        raise NotTaken(
            "photo", "no whole JPEG", "a JPEG", message("server-no-jpeg", why=error.message)
        ) from None
    if picture.width * picture.height > MOST_PIXELS:
        size = f"{picture.width} x {picture.height} pixels"
        raise TooLarge("photo", size, f"at most {MOST_PIXELS} pixels")
    _refuse_extras(picture.extras)
    shorter = jpeg.without_end(data, picture.scan) if picture.scan else None
    decoded = _decoded(shorter or data)
    if shorter and not (decoded and _ends_grey(decoded)):
        # Nearly no picture comes here, for decoding again takes as long as the rest.
        whole = _decoded(data)
        if decoded and whole and not _ends_grey(whole) and whole.tobytes() == decoded.tobytes():
            _refuse_extras(["data behind the picture"])
        decoded = whole
    if decoded is None or decoded.size != (picture.width, picture.height):
        raise NotTaken("photo", "a damaged JPEG", "a whole one", message("server-photo-damaged"))
    return picture


def _ends_grey(decoded: Image.Image) -> bool:
    """Tells whether the last block says nothing: it is not there, or really plain grey."""
    last = decoded.crop((decoded.width - 1, decoded.height - 1, decoded.width, decoded.height)).convert("RGB")
    return last.getpixel((0, 0)) == _GREY


def _refuse_extras(extras: list[str]) -> None:
    if extras:
        told = ", ".join(sorted(set(extras)))
        raise NotTaken(
            "photo", told, "a JPEG without added data", message("server-photo-extras", extras=told)
        )


def _decoded(data: bytes) -> Image.Image | None:
    try:
        with Image.open(io.BytesIO(data), formats=["JPEG"]) as image:
            image.load()
            return image
    except (OSError, ValueError, SyntaxError):
        return None


def path_of(folder: Path, digest: str) -> Path:
    """Returns where a photo lies; two levels, so that no folder grows without bound."""
    return folder / digest[:2] / f"{digest}.jpg"


def whole(folder: Path, digest: str) -> bytes | None:
    """Returns a photo's bytes if they are there and still match their hash.

    Whatever else lies at its place, a folder for instance, is no photo.
    """
    try:
        data = path_of(folder, digest).read_bytes()
    except (FileNotFoundError, IsADirectoryError, NotADirectoryError):
        return None
    return data if hashlib.sha256(data).hexdigest() == digest else None


def keep(db: Database, folder: Path, digest: str, data: bytes, now: int) -> None:
    """Stores a photo that must hash to `digest`; the same one again changes nothing."""
    actual = hashlib.sha256(data).hexdigest()
    if actual != digest:
        raise NotTaken(
            "photo",
            actual,
            digest,
            message("server-photo-changed"),
        )
    picture = check(data)
    if whole(folder, digest) is None:
        _write(path_of(folder, digest), data)
    with writing(db):
        # Looked at again now that nobody else writes: a sweep may just have taken it away.
        if not path_of(folder, digest).exists():
            _write(path_of(folder, digest), data)
        db.conn.execute(
            "INSERT OR IGNORE INTO photos (sha256, bytes, width, height, stored_at, checked_at) "
            "VALUES (?1, ?2, ?3, ?4, ?5, ?5)",
            [digest, len(data), picture.width, picture.height, now],
        )
        for table in ("photos_wanted", "photos_lost"):
            db.conn.execute(f"DELETE FROM {table} WHERE sha256 = ?", [digest])


def _write(path: Path, data: bytes) -> None:
    make_private_folder(path.parent)
    write_whole(path, data)
    sync_folder(path.parent.parent)
