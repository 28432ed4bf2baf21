"""A backup as a sort of file to verify: every file in it, its log, and the heads it was made with."""

import hashlib
import os
import struct
import zipfile
import zlib
from collections.abc import Iterator
from contextlib import closing
from pathlib import Path

from server.core.messages import message
from server.keeping.manifest import DATABASE
from server.keeping.manifest import MANIFEST
from server.keeping.manifest import ChangedManifest
from server.keeping.manifest import Manifest
from server.keeping.manifest import NoManifest
from server.keeping.manifest import photo_name
from server.keeping.verify import log_check
from server.keeping.verify import photo_check
from server.keeping.verify import zip_layout
from server.keeping.verify.data_folder import open_only
from server.keeping.verify.sort import Sort
from server.log.fault import Fault
from server.storage.parts import scratch_folder

_BLOCK = 1 << 20
_LENGTHS_AT = 26  # in a file's header, those of its name and its extra field; APPNOTE.TXT 4.3.7
_UNREADABLE = (zipfile.BadZipFile, zlib.error, OSError, EOFError, NotImplementedError, struct.error)


def fits(path: Path) -> bool:
    """Tells whether `path` is a backup of this program."""
    if not path.is_file() or not zipfile.is_zipfile(path):
        return False
    try:
        with zipfile.ZipFile(path) as archive:
            Manifest.read(archive)
    except ChangedManifest:
        return True
    except (NoManifest, *_UNREADABLE):
        return False
    return True


def first_fault(path: Path) -> Fault | None:
    """Returns the first fault of a backup: the log first, for it names the place best."""
    with zipfile.ZipFile(path) as archive, scratch_folder() as scratch:
        try:
            manifest = Manifest.read(archive)
        except ChangedManifest:
            return Fault("", 0, message("keeping-changed", file=MANIFEST))
        names = set(archive.namelist())
        copy = scratch / DATABASE
        digest = hash_of(archive, DATABASE, copy) if DATABASE in names else None
        if digest is None and not copy.exists():
            return Fault("", 0, message("keeping-not-in", file=DATABASE))
        with closing(open_only(copy)) as connection:
            fault = log_check.first_fault(connection, manifest.heads)
            if fault is None and digest == manifest.files[DATABASE]:
                faults = photo_check.faults(
                    connection, lambda photo: hash_of(archive, photo_name(photo)) if photo else None
                )
                fault = next(faults, None)
        if fault:
            return fault
        if digest != manifest.files[DATABASE]:
            return Fault("", 0, message("keeping-other-database", file=DATABASE))
        return _fault_in_files(archive, manifest, names) or _fault_between(path, archive)


def hash_of(archive: zipfile.ZipFile, name: str, copy: Path | None = None) -> str | None:
    """Returns the hash of a file's bytes, written to `copy` on the way; None where it cannot be read."""
    digest = hashlib.sha256()
    try:
        with open(copy or os.devnull, "wb") as out:
            for block in _blocks(archive, archive.getinfo(name)):
                digest.update(block)
                out.write(block)
    except (KeyError, *_UNREADABLE):
        return None
    return digest.hexdigest()


def _blocks(archive: zipfile.ZipFile, info: zipfile.ZipInfo) -> Iterator[bytes]:
    """Yields a file's bytes; those of one stored plainly also where its checksum is wrong.

    The checksum only says that something was changed; the log inside says what.
    """
    if info.compress_type != zipfile.ZIP_STORED or archive.filename is None:
        with archive.open(info) as packed:
            yield from iter(lambda: packed.read(_BLOCK), b"")
        return
    with open(archive.filename, "rb") as file:
        file.seek(info.header_offset + _LENGTHS_AT)
        name_length, extra_length = struct.unpack("<HH", file.read(4))
        file.seek(name_length + extra_length, os.SEEK_CUR)
        left = info.file_size
        while left and (block := file.read(min(left, _BLOCK))):
            left -= len(block)
            yield block


def _fault_in_files(archive: zipfile.ZipFile, manifest: Manifest, names: set[str]) -> Fault | None:
    for name in sorted(names - {*manifest.files, MANIFEST}):
        return Fault("", 0, message("keeping-put-in", file=name))
    for name in sorted(manifest.files):
        if name not in names:
            return Fault("", 0, message("keeping-not-in", file=name))
        if name != DATABASE and hash_of(archive, name) != manifest.files[name]:
            return Fault("", 0, message("keeping-changed", file=name))
    return None


def _fault_between(path: Path, archive: zipfile.ZipFile) -> Fault | None:
    what = zip_layout.changed(path, archive)
    return Fault("", 0, what) if what else None


BACKUP = Sort(message("keeping-sort-backup"), fits, first_fault)
