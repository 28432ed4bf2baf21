"""Walks the segments of a JPEG, to know its size and everything that rides along in it.

Source: ITU-T T.81, annex B. A picture from a phone may carry where and when it was taken; the app
re-encodes, and the server takes only what came out of that.

Pillow decodes afterwards (`store.check`), but what has to be refused it does not tell: it lists segments
up to the first scan alone, so that a comment between two scans or data behind the end would pass unseen, and
it decodes scan after scan without a limit.
"""

from typing import NamedTuple

from server.core.messages import message
from server.words.spoken import Told

MOST_SCANS = 64  # a progressive file may repeat scans without end to keep a decoder busy

MOST_PROFILE = 4096

_END_BYTES = 64  # of a scan: so many show several blocks, however even the picture

_JFIF_BYTES, _ADOBE_BYTES = 14, 12
_ICC = b"ICC_PROFILE\0"

_START, _END, _SCAN = 0xD8, 0xD9, 0xDA
_QUANTIZATION, _HUFFMAN, _INTERVAL = 0xDB, 0xC4, 0xDD
_BASELINE = (0xC0, 0xC1)
_FRAMES = {*range(0xC0, 0xD0)} - {0xC4, 0xC8, 0xCC}
_RESTARTS = range(0xD0, 0xD8)


class NotJpeg(Told):
    """The bytes are no whole JPEG; the text says where it breaks."""


class Picture(NamedTuple):
    """A JPEG's size in pixels, and the names of segments that may tell more than the picture."""

    width: int
    height: int
    extras: list[str]
    scan: tuple[int, int] | None
    """Where the entropy-coded data of the one scan of a sequential picture begins and ends."""


def read(data: bytes) -> Picture:
    """Returns what the segments say; raises NotJpeg where they do not add up."""
    if data[:3] != b"\xff\xd8\xff":
        raise NotJpeg(message("server-jpeg-begin"))
    at, scans, size = 2, 0, None
    extras: list[str] = []
    unused: set[tuple[int, int]] = set()
    scan = None
    sequential = False
    while True:
        before = at
        marker, at = _marker(data, at)
        if at - before > 2:
            extras.append("filling between segments")
        if marker == _END:
            break
        body, at = _body(data, at)
        if marker in _FRAMES:
            if size is not None or len(body) < 5:
                raise NotJpeg(message("server-jpeg-one"))
            size = (int.from_bytes(body[3:5]), int.from_bytes(body[1:3]))
            sequential = marker in _BASELINE
        elif marker == _SCAN:
            scans += 1
            if scans > MOST_SCANS:
                raise NotJpeg(message("server-jpeg-scans"))
            scan = at, _after_scan(data, at)
            at = scan[1]
            unused.clear()
        elif marker in (_QUANTIZATION, _HUFFMAN):
            for table in _tables(marker, body):
                if table in unused:
                    extras.append("a table that nothing uses")
                unused.add(table)
        else:
            extra = _extra(marker, body)
            if extra:
                extras.append(extra)
    if size is None or not scans or 0 in size:
        raise NotJpeg(message("server-jpeg-empty"))
    if at != len(data):
        extras.append("data behind the picture")
    if unused:
        extras.append("a table that nothing uses")
    return Picture(*size, extras, scan if sequential and scans == 1 else None)


def without_end(data: bytes, scan: tuple[int, int]) -> bytes | None:
    """Returns a JPEG without the last bytes of its scan; None where a picture may be done without so many.

    A decoder makes the blocks that are missing grey (T.81 leaves it open; so does libjpeg): where the last
    one is, these bytes belong to the picture. One that shows the same without has all its blocks before them.
    """
    start, end = scan
    return data[: end - _END_BYTES] + data[end:] if end - start >= 2 * _END_BYTES else None


def _tables(marker: int, body: bytes) -> list[tuple[int, int]]:
    """Returns the tables of a segment, each by its sort and destination (B.2.4.1 and B.2.4.2)."""
    found, at = [], 0
    while at < len(body):
        which = body[at]
        if marker == _HUFFMAN:
            found.append((marker, which))
            at += 17 + sum(body[at + 1 : at + 17])
        else:
            found.append((marker, which & 0x0F))
            at += 129 if which >> 4 else 65
    if at != len(body):
        raise NotJpeg(message("server-jpeg-end"))
    return found


def _marker(data: bytes, at: int) -> tuple[int, int]:
    if data[at : at + 1] != b"\xff":
        raise NotJpeg(message("server-jpeg-segment", byte=at))
    while data[at : at + 1] == b"\xff":  # fill bytes are allowed, B.1.1.2
        at += 1
    if at >= len(data):
        raise NotJpeg(message("server-jpeg-end"))
    return data[at], at + 1


def _body(data: bytes, at: int) -> tuple[bytes, int]:
    length = int.from_bytes(data[at : at + 2])
    if length < 2 or at + length > len(data):
        raise NotJpeg(message("server-jpeg-end"))
    return data[at + 2 : at + length], at + length


def _after_scan(data: bytes, at: int) -> int:
    """Returns where the next segment begins behind entropy-coded data."""
    while True:
        at = data.find(b"\xff", at)
        if at < 0 or at + 1 >= len(data):
            raise NotJpeg(message("server-jpeg-end"))
        following = data[at + 1]
        if following not in _RESTARTS and following not in (0x00, 0xFF):
            return at
        at += 1 if following == 0xFF else 2


def _extra(marker: int, body: bytes) -> str | None:
    """Names a segment that is not needed to show the picture, or returns None."""
    if marker == 0xE1:
        return "XMP" if body.startswith(b"http://ns.adobe.com/") else "EXIF"
    if marker == 0xED:
        return "IPTC"
    if marker == 0xFE:
        return "a comment"
    if not 0xE0 <= marker <= 0xEF and marker != _INTERVAL:
        return f"a segment {marker:02X} that no picture needs"
    if 0xE0 <= marker <= 0xEF and not _is_needed(marker, body):
        return f"an application segment {marker - 0xE0}"
    return None


def _is_needed(marker: int, body: bytes) -> bool:
    """Tells whether an application segment is one that a decoder needs, with room for nothing else in it.

    JFIF without its small picture (ITU-T T.871, 10.1), Adobe's colour transform (T.872, 6.5.3), and a colour
    profile in one part (ICC.1:2022, annex B.4 and 7.2: its length in bytes 0 to 3, 'acsp' in 36 to 39).
    Browsers write profiles of at most 3,144 bytes (from memory).
    """
    if marker == 0xE0:
        return body.startswith(b"JFIF\0") and len(body) == _JFIF_BYTES and body[-2:] == b"\0\0"
    if marker == 0xEE:
        return body.startswith(b"Adobe") and len(body) == _ADOBE_BYTES
    profile = body[len(_ICC) + 2 :]
    is_whole = body.startswith(_ICC + b"\1\1") and profile[36:40] == b"acsp"
    return marker == 0xE2 and is_whole and int.from_bytes(profile[:4]) == len(profile) <= MOST_PROFILE
