"""The zip file of a record: every byte of it follows from its members, so any change shows.

An unpacking program reads past much that stands in a zip file. Here the whole file is compared with
the one way in which its members are written. Nothing is compressed: a file cannot unfold to more
than it is. Source of the layout: APPNOTE.TXT 4.3.7, 4.3.12, 4.3.16.
"""

import re
import struct
import zlib
from collections.abc import Iterable
from collections.abc import Iterator

from server.core.messages import message
from server.core.record.file import MOST_MEMBERS
from server.words.spoken import Told

# The only names there are; a name is never used as a path either.
NAME = re.compile(r"record\.json|entries\.jsonl|hashes\.json|seal\.json|photos/[0-9a-f]{64}\.jpg")

Member = tuple[str, "bytes | memoryview"]

_LOCAL = struct.Struct("<4s5H3L2H")
_CENTRAL = struct.Struct("<4s6H3L5H2L")
_END = struct.Struct("<4s4H2LH")
_LOCAL_MARK, _CENTRAL_MARK, _END_MARK = b"PK\3\4", b"PK\1\2", b"PK\5\6"
_VERSION, _FLAGS, _STORED, _TIME, _DATE = 20, 0, 0, 0, 0x21  # 1 January 1980: no clock is told


class Broken(Told):
    """The bytes are no whole container; the text says where they break."""


class Cut(Broken):
    """The bytes end before the container does."""


def pieces(members: Iterable[Member]) -> Iterator[tuple[object, "bytes | memoryview"]]:
    """Yields the file piece by piece, each with a word for it."""
    directory, at, count = [], 0, 0
    for name, content in members:
        common = (_VERSION, _FLAGS, _STORED, _TIME, _DATE, zlib.crc32(content))
        sizes = (len(content), len(content))
        header = _LOCAL.pack(_LOCAL_MARK, *common, *sizes, len(name), 0) + name.encode()
        entry = _CENTRAL.pack(_CENTRAL_MARK, _VERSION, *common, *sizes, len(name), 0, 0, 0, 0, 0, at)
        directory.append(entry + name.encode())
        yield message("keeping-head-of", file=name), header
        yield name, content
        at += len(header) + len(content)
        count += 1
    listed = b"".join(directory)
    yield (
        message("keeping-list-at-end"),
        listed + _END.pack(_END_MARK, 0, 0, count, count, len(listed), at, 0),
    )


def unpack(data: bytes) -> list[Member]:
    """Returns the members as they stand one behind the other; raises Broken where that ends."""
    view, at = memoryview(data), 0
    last: object = message("keeping-its-beginning")
    members: list[Member] = []
    while view[at : at + 4] == _LOCAL_MARK:
        if at + _LOCAL.size > len(view):
            raise _cut(data, message("keeping-cut-after", last=last))
        _mark, _version, _flags, method, _time, _date, _crc, held, size, length, _extra = _LOCAL.unpack_from(
            view, at
        )
        begin = at + _LOCAL.size + length
        if begin > len(view):
            raise _cut(data, message("keeping-cut-after", last=last))
        name = bytes(view[at + _LOCAL.size : begin]).decode("ascii", "replace")
        if not NAME.fullmatch(name):
            raise Broken(message("keeping-foreign-after", last=last))
        if name in dict(members):
            raise Broken(message("keeping-member-twice", file=name))
        if method != _STORED or held != size:
            raise Broken(message("keeping-packed", file=name))
        if begin + size > len(view):
            raise _cut(data, message("keeping-cut-in", file=name))
        members.append((name, view[begin : begin + size]))
        at, last = begin + size, name
        if len(members) > MOST_MEMBERS:
            raise Broken(message("keeping-many", most=MOST_MEMBERS))
    if view[at : at + 4] != _CENTRAL_MARK:
        if at + 4 > len(view):
            raise _cut(data, message("keeping-cut-after", last=last))
        raise Broken(message("keeping-foreign-after", last=last))
    return members


def _cut(data: bytes, what: dict) -> Broken:
    """Tells a file whose end is missing from one that has its end, but says of a part that it is longer."""
    return Broken(what) if data[-_END.size :].startswith(_END_MARK) else Cut(what)


def first_difference(data: bytes, members: list[Member]) -> Broken | None:
    """Names the first piece in which `data` differs from these members as they are written, or None.

    Cut where it is as they are written as far as it goes, and ends too early.
    """
    view, at = memoryview(data), 0
    for what, piece in pieces(members):
        rest = view[at : at + len(piece)]
        if rest != piece:
            if len(rest) == len(piece):
                return Broken(message("keeping-changed", file=what))
            how = Cut if rest == piece[: len(rest)] else Broken
            return how(message("keeping-cut-in", file=what))
        at += len(piece)
    return None if at == len(view) else Broken(message("keeping-more-at-end"))


def offsets(members: list[Member]) -> dict[str, list[int]]:
    """Returns where each member's own bytes lie in the file: [offset, length]."""
    places, at = {}, 0
    for name, content in members:
        at += _LOCAL.size + len(name)
        places[name] = [at, len(content)]
        at += len(content)
    return places
