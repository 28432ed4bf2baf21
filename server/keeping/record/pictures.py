"""The pictures that go into a record: as they are while there is room, where wanted the others smaller."""

import hashlib
from pathlib import Path
from typing import NamedTuple

from server.core.record.file import SMALLER_QUALITY
from server.core.record.file import SMALLER_SIDE
from server.core.record.file import over
from server.core.record.file import photo_member
from server.core.record.file import with_room
from server.photos import store as photo_store
from server.photos.small import small_version


class Taken(NamedTuple):
    """Bytes by member; photo -> its smaller version; the photos that are not in as they are.

    `photos` is how many can be seen, `roomless` how many of the others are here and had no room.
    """

    members: dict[str, bytes]
    smaller: dict[str, str]
    missing: list[str]
    photos: int
    roomless: int


def take(folder: Path, photos: list[str], text: int, *, make_smaller: bool) -> Taken:
    """Returns what goes in of these photos (their digests), beside so many bytes of text."""
    sizes = [_size(photo_store.path_of(folder, photo)) for photo in photos]
    versions = _versions(folder, photos, sizes, text) if make_smaller else {}
    members: dict[str, bytes] = {}
    smaller: dict[str, str] = {}
    missing: list[str] = []
    seen = roomless = 0
    for photo, size, fits in zip(photos, sizes, with_room(sizes, text), strict=True):
        version = versions.get(photo)
        data = (version or photo_store.whole(folder, photo)) if fits else None
        if data is None or version:
            missing.append(photo)
        if data is None:
            roomless += size is not None and not fits
            continue
        seen += 1
        digest = hashlib.sha256(data).hexdigest()
        members[photo_member(digest)] = data
        if version:
            smaller[photo] = digest
    return Taken(members, smaller, missing, seen, roomless)


def _versions(folder: Path, photos: list[str], sizes: list[int | None], text: int) -> dict[str, bytes]:
    """Returns smaller versions, from the last photo on until all have room; their sizes go into `sizes`."""
    versions: dict[str, bytes] = {}
    excess = over(sizes, text)
    for at in reversed(range(len(photos))):
        whole = photo_store.whole(folder, photos[at]) if excess > 0 else None
        size = sizes[at]
        if whole is None or size is None:
            continue
        version = small_version(whole, SMALLER_SIDE, SMALLER_QUALITY)
        if len(version) < size:
            versions[photos[at]] = version
            sizes[at] = len(version)
            excess -= size - len(version)
    return versions


def _size(path: Path) -> int | None:
    try:
        return path.stat().st_size
    except OSError:
        return None
