"""What the machine's storage may refuse, told apart: full, not writable, busy, broken."""

import errno
import sqlite3

from server.words.spoken import say

_FULL = {errno.ENOSPC, errno.EDQUOT, errno.EFBIG}
_SHUT = {errno.EROFS, errno.EACCES, errno.EPERM}
_BROKEN = {errno.EIO, errno.EISDIR, errno.ENOTDIR}  # the last two: something else lies where a file belongs
_IO_FULL = {sqlite3.SQLITE_FULL}
_IO_SHUT = {sqlite3.SQLITE_READONLY, sqlite3.SQLITE_CANTOPEN, sqlite3.SQLITE_PERM, sqlite3.SQLITE_AUTH}
_IO_BUSY = {sqlite3.SQLITE_BUSY, sqlite3.SQLITE_LOCKED}


def trouble(error: OSError | sqlite3.Error) -> str | None:
    """Returns "full", "shut", "busy" or "broken"; None where the storage is not to blame."""
    if isinstance(error, OSError):
        if error.errno in _FULL:
            return "full"
        if error.errno in _SHUT:
            return "shut"
        return "broken" if error.errno in _BROKEN else None
    code = getattr(error, "sqlite_errorcode", sqlite3.SQLITE_ERROR) & 0xFF
    if code in _IO_FULL:
        return "full"
    if code in _IO_SHUT:
        return "shut"
    if code in _IO_BUSY:
        return "busy"
    # Also what a file size limit gives: SQLite tells only one reason, a full disk, from the others.
    return "broken" if code in {sqlite3.SQLITE_IOERR, sqlite3.SQLITE_CORRUPT, sqlite3.SQLITE_NOTADB} else None


def storage_words(error: OSError | sqlite3.Error) -> str:
    """Returns one line about what stands against a command."""
    place = f"{error.filename}: " if isinstance(error, OSError) and error.filename else ""
    words = _WORDS.get(trouble(error) or "")
    return place + (say(words, error=str(error)) if words else f"{error}.")


# The kind of trouble -> what a command says.
_WORDS = {
    "full": "server-disk-full",
    "shut": "server-disk-shut",
    "busy": "server-disk-busy",
    "broken": "server-disk-broken",
}
