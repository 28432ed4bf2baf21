"""What an unpacking program reads past in a zip file: bytes in front of, between and behind the files in it.

Each file's bytes are held against a hash elsewhere. Here its head is held against the list at the end, and
every byte has to belong to a file or to that list. Source of the layout: APPNOTE.TXT 4.3.7, 4.3.12, 4.3.14
to 4.3.16.
"""

import struct
import zipfile
from pathlib import Path
from typing import BinaryIO

from server.core.messages import message

_HEAD = struct.Struct("<4s5H3L2H")
_HEAD_MARK, _END_MARK = b"PK\3\4", b"PK\5\6"
_LISTED, _END = 46, 22  # bytes of one entry of the list, without its texts, and of what ends the file
_LARGE_END = 56 + 20  # what stands in front of that where offsets or counts are large


def changed(path: Path, archive: zipfile.ZipFile) -> dict | None:
    """Returns a message on the first thing in a zip file that is not as it was written; None where all is."""
    at = 0
    with path.open("rb") as file:
        for info in sorted(archive.infolist(), key=lambda info: info.header_offset):
            length = _head_length(file, info) if info.header_offset == at else None
            if length is None:
                return message("keeping-changed", file=message("keeping-head-of", file=info.filename))
            at += length + info.compress_size
        if at != archive.start_dir:
            return message("keeping-changed", file=message("keeping-list-at-end"))
        at += sum(_LISTED + len(info.filename) + len(info.extra) for info in archive.infolist()) + _END
        file.seek(-_END, 2)
        if file.read(len(_END_MARK)) != _END_MARK or file.seek(0, 2) not in {at, at + _LARGE_END}:
            return message("keeping-more-at-end")
    return None


def _head_length(file: BinaryIO, info: zipfile.ZipInfo) -> int | None:
    """Returns how long a file's head is, its name in it; None where it does not say what the list says."""
    file.seek(info.header_offset)
    head = file.read(_HEAD.size)
    if len(head) < _HEAD.size:
        return None
    mark, _version, flags, method, time, date, crc, _held, _size, name_length, extra_length = _HEAD.unpack(
        head
    )
    year, month, day, hour, minute, second = info.date_time
    listed = (
        info.flag_bits,
        info.compress_type,
        hour << 11 | minute << 5 | second // 2,
        (year - 1980) << 9 | month << 5 | day,
        info.CRC,
        info.filename.encode(),
    )
    if mark != _HEAD_MARK or (flags, method, time, date, crc, file.read(name_length)) != listed:
        return None
    return _HEAD.size + name_length + extra_length
